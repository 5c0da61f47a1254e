from datetime import date, datetime, timedelta

import pytest
from builders import codes, makers_csv, makers_xlsx
from sourcing import costs_of

from scorecard.errors import InputError
from scorecard.reading.folder import read_folder

CRITERIA = """
title = "Mugs for the fair"
[brief]
item = "enamel mug"
quantity = 200
[criteria.years]
title = "Years trading"
weight = 10
column = "Years trading"
unit = "years"
points = [[0, 0], [10, 100]]
"""
HEADINGS = ("Maker", "Years trading", "Asked on")
ROWS = [("Brightholm", 7, None), ("Otterwick", "3-5", None)]


@pytest.fixture
def folder(tmp_path):
    """Lay out a sourcing folder that has no problem."""
    (tmp_path / "criteria.toml").write_text(CRITERIA)
    makers_xlsx(tmp_path / "makers.xlsx", HEADINGS, ROWS)
    return tmp_path


def problems_of(*arguments, **options):
    """Return the problems with which a folder is turned away."""
    with pytest.raises(InputError) as error:
        read_folder(*arguments, **options)
    return error.value.problems


def test_a_sound_folder_becomes_a_case(folder):
    case = read_folder(folder)

    assert ("Mugs for the fair", ("years",), ("Brightholm", "Otterwick")) == (
        case.title,
        case.criteria.keys,
        case.table.makers,
    )
    assert ["criteria.toml", "makers.xlsx"] == [source.name for source in case.sources]
    assert ["read-as"] == [warning.code for warning in case.warnings]


def test_a_folder_may_be_named_as_text(folder):
    assert 2 == len(read_folder(str(folder)).table)


def test_problems_of_both_files_come_at_once(folder):
    (folder / "criteria.toml").write_text(CRITERIA.replace("weight = 10", 'weight = "ten"'))
    makers_xlsx(folder / "makers.xlsx", HEADINGS, [("Brightholm", "many", None)])
    problems = problems_of(folder)

    assert ["criteria.toml", "makers.xlsx"] == [problem.place.file for problem in problems]
    assert ("B2", "not-a-number") == codes(problems)[-1]


def test_makers_may_stand_in_a_csv(folder):
    (folder / "makers.xlsx").unlink()
    makers_csv(folder / "makers.csv", HEADINGS, ROWS)

    assert "makers.csv" == read_folder(folder).table.file


def test_of_two_files_of_makers_the_workbook_is_read_with_a_warning(folder):
    makers_csv(folder / "makers.csv", HEADINGS, [])
    case = read_folder(folder)

    assert ("makers.xlsx", "two-makers-files") == (case.table.file, case.warnings[0].code)


def test_single_files_stand_in_for_the_folders_own(folder, tmp_path_factory):
    elsewhere = tmp_path_factory.mktemp("elsewhere")
    (elsewhere / "mine.toml").write_text(CRITERIA.replace("fair", "shop"))
    makers_csv(elsewhere / "mine.csv", HEADINGS, [("Kilnside", 2, None)])
    case = read_folder(folder, criteria_file=elsewhere / "mine.toml", makers_file=elsewhere / "mine.csv")

    assert ("Mugs for the shop", ("Kilnside",)) == (case.title, case.table.makers)


def test_two_single_files_need_no_folder(folder):
    nowhere = folder / "nowhere"
    case = read_folder(nowhere, criteria_file=folder / "criteria.toml", makers_file=folder / "makers.xlsx")

    assert 2 == len(case.table)


def test_an_empty_folder_is_told_how_to_start(tmp_path):
    (problem,) = problems_of(tmp_path)

    assert "nothing-in-folder" == problem.code
    assert "scorecard start" in problem.wanted


def test_a_folder_that_is_not_there_is_one_problem(tmp_path):
    assert ["no-such-folder"] == [problem.code for problem in problems_of(tmp_path / "nowhere")]


def test_a_file_in_place_of_a_folder_is_one_problem(folder):
    assert ["not-a-folder"] == [problem.code for problem in problems_of(folder / "criteria.toml")]


def test_the_folder_one_is_in_is_named(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)

    assert [tmp_path.name] == [problem.place.file for problem in problems_of(".")]


def test_missing_files_are_told_of_in_one_way(folder):
    for name in ("criteria.toml", "makers.xlsx"):
        (folder / name).unlink()
    (folder / "makers.csv").mkdir()
    problems = problems_of(folder, criteria_file=folder / "a.toml", makers_file=folder / "b.xlsx")

    assert [f"there is no file of this name in the folder {folder}"] * 2 == [problem.found for problem in problems]


def test_a_folder_without_makers_misses_the_workbook(folder):
    (folder / "makers.xlsx").unlink()

    assert [("makers.xlsx", "file-missing")] == [(one.place.file, one.code) for one in problems_of(folder)]


def test_unreadable_answers_are_set_aside_on_the_users_word(folder):
    makers_xlsx(folder / "makers.xlsx", HEADINGS, [("Brightholm", "many", None)])

    assert [("B2", "not-a-number")] == codes(read_folder(folder, set_aside=True).set_aside)


def test_days_after_today_are_problems(folder):
    makers_xlsx(folder / "makers.xlsx", HEADINGS, [("Brightholm", 7, "2026-11-26")])

    assert [("C2", "day-to-come")] == codes(problems_of(folder, as_of=date(2026, 11, 25)))


def test_the_row_limit_can_be_set(folder):
    assert [("A3", "too-many-rows")] == codes(problems_of(folder, row_limit=1))


def test_no_makers_is_a_warning_and_an_empty_table(folder):
    makers_xlsx(folder / "makers.xlsx", HEADINGS, [])
    case = read_folder(folder)

    assert (0, ["no-makers"]) == (len(case.table), [warning.code for warning in case.warnings])


def test_the_decimal_mark_of_the_brief_is_heeded(folder):
    (folder / "criteria.toml").write_text(CRITERIA.replace("quantity = 200", 'quantity = 200\ndecimal = ","'))
    makers_xlsx(folder / "makers.xlsx", HEADINGS, [("Brightholm", "1,000", None)])

    assert 1 == read_folder(folder).table.answers["years"].low[0]


def test_without_a_day_the_clocks_day_stands_for_today(folder):
    tomorrow = date.today() + timedelta(days=2)
    makers_xlsx(folder / "makers.xlsx", HEADINGS, [("Brightholm", 7, tomorrow)])

    assert ["day-to-come"] == [problem.code for problem in problems_of(folder)]


@pytest.mark.parametrize("day", ["2026-11-25", datetime(2026, 11, 25, 12), 0])
def test_what_is_no_day_is_refused_in_words(folder, day):
    with pytest.raises(TypeError, match=r"as_of is .+, which is not a day\. Give a datetime\.date"):
        read_folder(folder, as_of=day)


@pytest.mark.parametrize(
    ("line", "code", "cells"),
    [
        ('choices = { "free" = 120, "paid" = 60 }', "points-outside-scale", [("C3", "not-a-choice")]),
        ("points = [[0, 0], [0, 100]]", "points-not-increasing", [("C2", "not-a-number"), ("C3", "not-a-number")]),
        ("", "no-points", []),
    ],
)
def test_a_column_is_known_and_checked_though_its_answers_worth_is_not(folder, line, code, cells):
    broken = f'[criteria.sample]\nweight = 5\ncolumn = "Sample"\n{line}\n'
    (folder / "criteria.toml").write_text(f"{CRITERIA}{broken}[criteria.marks]\nmeasure = 'sample_marks'\nweight = 1\n"
                                          "points = [[0, 0], [10, 100]]\n")  # fmt: skip
    makers_xlsx(
        folder / "makers.xlsx", ("Maker", "Years trading", "Sample"), [("Ash", 7, "free"), ("Elm", 3, "perhaps")]
    )
    with pytest.raises(InputError) as error:
        read_folder(folder)

    found = error.value
    assert [code, *(fault for _, fault in cells)] == [problem.code for problem in found.problems]
    assert [cell for cell, _ in cells] == [problem.place.cell for problem in found.problems if problem.place.cell]
    assert "near-heading" not in [warning.code for warning in found.warnings]


def test_makers_of_another_kind_are_told_of_rather_than_missed(folder):
    (folder / "makers.xlsm").write_bytes((folder / "makers.xlsx").read_bytes())
    (folder / "makers.xlsx").unlink()

    assert ["file-kind"] == [problem.code for problem in problems_of(folder)]


def test_a_sample_of_the_sheet_samples_is_paid_for(tmp_path):
    sheets = {
        "Quotes": [["Maker", "Price", "Price is for"], ["Fernhill", 3, "each"]],
        "Samples": [["Maker", "Round", "Asked on"], ["Fernhill", "sample", date(2026, 11, 13)]],
    }

    assert ({"Fernhill", "Brightholm"}, {"Fernhill"}) == (
        costs_of(tmp_path, sheets, '[cost]\nsampled = ["Brightholm"]\n').settings.sampled,
        costs_of(tmp_path, sheets).settings.sampled,
    )


def test_designs_below_a_minimum_per_design_are_a_warning_at_the_first_cell_that_says_it(folder):
    brief = CRITERIA.replace("quantity = 200\n", "quantity = 200\ndesigns = 2\n")
    designs = '[[order.designs]]\nname = "Gull"\npieces = 150\n[[order.designs]]\nname = "Tern"\npieces = 50\n'
    (folder / "criteria.toml").write_text(brief + designs)
    rows = [("Ash", 7, 100, "design"), ("Birch", 7, 100, "order"), ("Cedar", 7, 100, "design")]
    makers_xlsx(folder / "makers.xlsx", ("Maker", "Years trading", "Minimum order", "Minimum is per"), rows)

    found = "Tern: 50, below the minimum of 100 per design, here and in 1 more cell: Makers!D4"
    assert [("below-minimum", "D2", found)] == [
        (one.code, one.place.cell, one.found) for one in read_folder(folder).warnings
    ]
