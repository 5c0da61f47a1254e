"""The results workbook as a whole: formulas store what was computed, and other weights give what is computed then.

The figures that LibreOffice works out are compared with those of the calculation, whose own tests rest on published
worked examples.
"""

import random
import re
from dataclasses import replace

import pytest
from cases import AS_OF, choices, make_case, numbers
from hypothesis import given, settings
from hypothesis import strategies as st
from result_books import (
    MADE,
    differences,
    formulas,
    lines,
    opened,
    retyped,
    values,
    varied_case,
    weighted,
    with_wrong_value,
    written,
)

from scorecard.assessment import assess
from scorecard.criteria import Limit
from scorecard.workbooks.results import results_workbook

HOSTILE = [
    "=1+1",
    '=HYPERLINK("http://pots.example","pots")',
    "{=1+1}",
    "+1+1",
    "-1+1",
    "@SUM(A1)",
    "\t=1+1",
    "＝1+1",
    "http://pots.example",
    "mailto:a@pots.example",
    "12",
    "<b>&amp;\"'",
    "Pots\x00\x07\x1f\x7f",
    "Pots \ud800 and \udfff",
    "Pots \u202egnirts",
    "line\none\rtwo",
    "x" * 40_000,
    "#DIV/0!",
    "_x0041_",
    " ",
]


def names_and_ranks(case):
    ranking, names = assess(case, as_of=AS_OF).ranking, case.table.makers
    return [(ranking.ranks[maker], names[maker]) for maker in ranking.order]


def random_weightings(case, count):
    chance = random.Random(7)
    for _ in range(count):
        yield {key: float(chance.choice([0, 1, 5, 12.5, 40, 100 / 3])) for key in case.criteria.keys}


WEIGHTINGS = [
    *random_weightings(varied_case(), 3),
    {"years": 0, "rating": 0, "minimum": 1, "method": 0, "reply": 0, "sample": 0},  # many level
    {"years": 0, "rating": 0, "minimum": 0, "method": 0, "reply": 0, "sample": 7},
]


@pytest.mark.office
def test_every_formula_stores_what_libreoffice_works_out(recalc):
    content = written(varied_case())

    assert [] == differences(content, recalc(retyped(content, [])))


@pytest.mark.office
def test_a_wrong_stored_value_is_seen(recalc):
    content = with_wrong_value(written(varied_case()), 2, "C9", "12.5")

    assert [("Scores", "C9")] == differences(content, recalc(retyped(content, [])))


@pytest.mark.office
@pytest.mark.parametrize("weights", WEIGHTINGS, ids=str)
def test_other_weights_typed_there_give_what_is_computed_with_them(recalc, weights):
    case = varied_case()
    expected = values(written(weighted(case, weights)))

    again = recalc(retyped(written(case), list(weights.values())))

    assert names_and_ranks(weighted(case, weights)) == list(lines(again["Shortlist"], "GH"))
    for sheet, columns in (("Shortlist", "HIJKL"), ("Shortlist", "ADE"), ("Scores", "BCDEFA"), ("Ruled out", "AEG")):
        found = {line[0]: pytest.approx(line[1:], abs=1e-9) for line in lines(again[sheet], columns)}
        assert found == {line[0]: line[1:] for line in lines(expected[sheet], columns)}


@pytest.mark.office
def test_contributions_at_other_weights_are_share_times_points(recalc):
    case, weights = varied_case(), WEIGHTINGS[1]
    computed = assess(weighted(case, weights), as_of=AS_OF)
    expected = dict(zip(case.table.makers, (computed.points.counted * computed.shares).tolist(), strict=True))

    again = recalc(retyped(written(case), list(weights.values())))

    assert {line[0]: pytest.approx(line[1:], abs=1e-9) for line in lines(again["Contributions"], "ABCDEFG")} == {
        name: tuple(line) for name, line in expected.items()
    }


@pytest.mark.office
@pytest.mark.parametrize(
    ("weights", "said"),
    [
        ([0, 0, 0, 0, 0, 0], "All weights are 0: give at least one criterion a weight above 0"),
        ([-1, 1, 1, 1, 1, 1], "A weight is below 0: write a number of 0 or more into each marked cell"),
        (["many", 1, 1, 1, 1, 1], "A weight is not a number: write a number of 0 or more into each marked cell"),
        ([None, 1, 1, 1, 1, 1], "A weight is not a number: write a number of 0 or more into each marked cell"),
        ([1e308, 1e308, 1, 1, 1, 1], "A weight is not a number: write a number of 0 or more into each marked cell"),
    ],
    ids=["all 0", "below 0", "text", "empty", "too large"],
)
def test_weights_that_cannot_be_used_give_a_message_and_no_ranks(recalc, weights, said):
    again = recalc(retyped(written(varied_case()), weights))

    assert said == again["Shortlist"]["A4"].value
    assert [] == list(lines(again["Shortlist"], "G"))
    assert [] == [cell.coordinate for sheet in again for row in sheet for cell in row if cell.data_type == "e"]


@pytest.mark.office
def test_hostile_names_come_through_libreoffice_as_text(recalc):
    names = [name for name in HOSTILE if name != "_x0041_"]  # which openpyxl, not the tool, writes as an escape
    makers = {name: [float(at)] for at, name in enumerate(names)}
    content = written(make_case([numbers("work", 1)], makers))

    again = recalc(retyped(content, []))

    assert [] == [at for at in differences(content, again) if values(content)[at[0]][at[1]].value]
    assert {"s"} == {again["Scores"].cell(row, 2).data_type for row in range(8, 8 + len(names))}


def hostile_case(names, title="Cups"):
    criteria = [
        numbers("work", 3, title=f"{title} work", unit=title, limit=Limit(at_least=1)),
        choices("sample", 1, {title: 100, "none": 0}, title=f"{title} sample"),
    ]
    return make_case(criteria, {name: [at % 3 or None, "none"] for at, name in enumerate(names)})


@pytest.mark.parametrize("title", HOSTILE)
def test_no_text_of_the_user_adds_a_formula_or_changes_one(title):
    plain = hostile_case([f"Maker {at}" for at in range(len(HOSTILE))])
    hostile = hostile_case(HOSTILE, title)

    assert formulas(written(plain)) == formulas(written(hostile))


def test_no_text_of_the_user_becomes_a_link():
    content = written(hostile_case(HOSTILE, "http://pots.example"))

    assert [] == [cell.coordinate for sheet in opened(content) for row in sheet for cell in row if cell.hyperlink]


@settings(max_examples=25, deadline=None)
@given(names=st.lists(st.text(min_size=1), min_size=1, max_size=6, unique=True))
def test_any_names_can_be_written_and_opened(names):
    assert "Shortlist" == opened(written(hostile_case(names))).sheetnames[0]


def test_only_the_weights_are_unlocked():
    book = opened(written(varied_case()))

    unlocked = [
        (sheet.title, cell.coordinate) for sheet in book for row in sheet for cell in row if not cell.protection.locked
    ]

    assert [("Shortlist", f"C{row}") for row in range(8, 14)] == unlocked


def test_every_sheet_is_locked_without_a_password_and_allows_sorting_and_column_widths():
    settings_of = [sheet.protection for sheet in opened(written(varied_case()))]

    assert {(True, None, False, False)} == {(s.sheet, s.password, s.sort, s.formatColumns) for s in settings_of}


def test_headings_stay_in_sight_on_every_table():
    book = opened(written(varied_case()))

    assert {8} == {int(sheet.freeze_panes.lstrip("AB C")) for sheet in book if sheet.title != "Notes"}


def test_the_same_input_gives_the_same_bytes():
    assert written(varied_case()) == written(varied_case())


def test_it_is_dated_by_when_it_was_made():
    assert MADE == opened(written(varied_case())).properties.created


def test_only_functions_that_every_spreadsheet_has_are_used():
    used = {name for text in formulas(written(varied_case())).values() for name in re.findall(r"[A-Z.]+(?=\()", text)}

    assert set() == used - {
        *("IF", "IFERROR", "AND", "COUNT", "COUNTIF", "MIN", "MAX", "SUM", "SUMPRODUCT"),
        *("INDEX", "MATCH", "RANK", "LARGE", "SMALL", "LEFT", "FIXED", "SUBSTITUTE"),
    }


def test_of_a_very_long_list_it_says_that_only_the_best_are_here():
    book = values(written(replace(varied_case(), left_out=20_000)))

    assert "Only the best at the saved weights are in this workbook" in book["Shortlist"]["A2"].value
    assert any("20000 makers of a very long list" in str(row[1]) for row in book["Notes"].values)


def test_where_nobody_passes_the_limits_it_says_so():
    case = make_case([numbers("work", 1, limit=Limit(at_least=50))], {"Ash": [10], "Birch": [20]})

    assert "No maker passes every limit" == values(written(case))["Shortlist"]["A4"].value


@pytest.mark.office
def test_where_nobody_passes_the_limits_no_cell_shows_an_error(recalc):
    case = make_case([numbers("work", 1, limit=Limit(at_least=50))], {"Ash": [10], "Birch": [20]})
    content = written(case)

    assert [] == differences(content, recalc(retyped(content, [])))


@pytest.mark.office
def test_beyond_500_makers_every_score_and_rank_is_still_worked_out(recalc):
    chance = random.Random(3)
    makers = {f"Maker {at}": [chance.choice([None, 10, 20, 30.5]), chance.random() * 100] for at in range(620)}
    case, weights = make_case([numbers("work", 3), numbers("speed", 1)], makers), {"work": 1, "speed": 4}
    expected = {name: rank for rank, name in names_and_ranks(weighted(case, weights))}

    again = recalc(retyped(results_workbook(assess(case, as_of=AS_OF), made=MADE), [1, 4]))

    assert expected == {name: rank for rank, name in lines(again["Scores"], "AB")}
    assert names_and_ranks(weighted(case, weights))[:500] == list(lines(again["Shortlist"], "GH"))
