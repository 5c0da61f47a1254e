"""The sheets Ruled out and Notes."""

from dataclasses import replace

from cases import make_case, numbers
from result_books import lines, values, varied_case, written

from scorecard.case import SourceFile
from scorecard.criteria import Limit
from scorecard.errors import Place, Problem


def notes(case):
    return [(row[0].value, row[1].value) for row in values(written(case))["Notes"].iter_rows(min_row=4)]


def problem(number, code="alike"):
    place = Place(file="makers.xlsx", sheet="Makers", cell=f"A{number}")
    return Problem(code=code, place=place, found="Pots and Potts look alike", wanted="Say if they are one")


def test_a_ruled_out_maker_is_shown_with_why_and_what_would_let_it_in():
    case = make_case([numbers("work", 1, limit=Limit(at_least=50))], {"Ash": [90], "Birch": [20], "Cedar": [60]})

    assert [
        ("Birch", 3, "Work: 20 is below the limit of 50", "Work: at least 50", 20, 2, 3),
    ] == list(lines(values(written(case))["Ruled out"], "ABCDEFG"))


def test_a_ruled_out_maker_level_with_a_ranked_one_would_share_its_rank():
    criteria = [numbers("work", 1), numbers("speed", 0, limit=Limit(at_least=50))]
    case = make_case(criteria, {"Ash": [90, 60], "Birch": [70, 60], "Cedar": [70, 10]})

    assert [("Cedar", 2)] == list(lines(values(written(case))["Ruled out"], "AG"))


def test_where_nobody_is_ranked_each_would_be_first():
    case = make_case([numbers("work", 1, limit=Limit(at_least=50))], {"Ash": [10], "Birch": [20]})

    assert [("Ash", 1), ("Birch", 1)] == list(lines(values(written(case))["Ruled out"], "AG"))


def test_notes_say_that_nothing_flows_back_and_how_to_keep_weights():
    said = dict(notes(varied_case()))["To keep weights"]

    assert "Nothing flows back to the folder" in said
    assert "scorecard reweigh NAME=WEIGHT --save" in said


def test_notes_say_what_was_read_by_which_version_and_when():
    case = replace(varied_case(), sources=(SourceFile(name="criteria.toml", digest="ab12"),))

    found = dict(notes(case))

    assert "criteria.toml (SHA-256 ab12)" == found["Read"]
    assert found["Made"].startswith("2026-11-25 09:30, Maker Scorecard ")


def test_notes_name_cautions_and_cells_taken_as_unknown_but_not_plain_readings():
    case = replace(varied_case(), warnings=(problem(2), problem(3, "read-as")), set_aside=(problem(4),))

    found = [note for note in notes(case) if note[0] in ("Caution", "Taken as unknown")]

    assert [("Taken as unknown", str(problem(4))), ("Caution", str(problem(2)))] == found


def test_a_flood_of_cautions_is_cut_and_counted():
    case = replace(varied_case(), warnings=tuple(problem(number) for number in range(1, 131)))

    assert ("Caution", "30 more; to see them all: scorecard check") == [
        note for note in notes(case) if note[0] == "Caution"
    ][-1]


def test_notes_say_what_an_unknown_counts_as_for_each_criterion():
    found = dict(notes(varied_case()))

    assert found["Reply"].endswith("An unknown or ranged answer counts as the worst that is possible.")
    assert found["Reply"].startswith("Named reply in the criteria file; from the column “Reply”.")
