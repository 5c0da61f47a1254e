"""``check`` and ``score`` as whole processes: statuses, outputs, and every problem at its cell."""

import json
import shutil
from datetime import date, datetime, timedelta

import pytest
from builders import makers_csv, makers_xlsx
from process import scorecard

CRITERIA = """
format = 1
title = "Offices"
[brief]
item = "an office"
quantity = 1
"""
OFFICES = {  # Goodwin and Wright, Decision Analysis for Management Judgment, ch. 3, the office table [mixed]
    "closeness": (32, [100, 20, 80, 70, 40, 0, 60]),
    "visibility": (26, [60, 80, 70, 50, 60, 0, 100]),
    "image": (23, [100, 10, 0, 30, 90, 70, 20]),
    "size": (10, [75, 30, 0, 55, 100, 0, 50]),
    "comfort": (6, [0, 100, 10, 30, 60, 80, 50]),
    "parking": (3, [90, 30, 100, 90, 70, 0, 80]),
}


def office_folder(folder, offices="ABCDEFG"):
    """Lay out the published office table as a sourcing folder."""
    folder.mkdir()
    tables = [
        f"[criteria.{key}]\nweight = {weight}\npoints = [[0, 0], [100, 100]]\n" for key, (weight, _) in OFFICES.items()
    ]
    (folder / "criteria.toml").write_text(CRITERIA + "\n".join(tables), "utf-8")
    rows = [[name, *(values[at] for _, values in OFFICES.values())] for at, name in enumerate(offices)]
    makers_xlsx(folder / "makers.xlsx", ["Maker", *(key.capitalize() for key in OFFICES)], rows)
    return folder


@pytest.fixture
def offices(tmp_path):
    return office_folder(tmp_path / "offices")


def test_the_published_office_table_comes_out_of_the_command(offices):
    said = scorecard("score", "--json", "--as-of", "2026-11-25", cwd=offices)

    result = json.loads(said.out)
    totals = {"A": 80.8, "E": 64.8, "G": 60.2, "D": 52.3, "C": 47.4, "B": 39.4, "F": 20.9}
    assert totals == {maker["maker"]: maker["score"] for maker in result["makers"]}
    assert ("A", 16.0, "2026-11-25") == (result["leader"], pytest.approx(result["margin"]), result["as_of"])


def test_score_prints_verdict_table_report_and_next_step(offices):
    said = scorecard("score", cwd=offices)

    assert 0 == said.status
    assert "A leads whatever the open answers turn out to be." in said.out
    assert f"Report: {offices.resolve() / 'reports' / 'shortlist.html'}" in said.out
    assert said.last.startswith("Next: ")


@pytest.mark.parametrize(
    ("makers", "said"),
    [
        ([["One", 1, 2, 3, 4, 5, 6]], "write down more makers"),
        ([["One", 1, 2, 3, 4, 5, 6], ["Two", 1, 2, 3, 4, 5, 6]], "ask those in first place for a quote: "),
        ([["One", 1, 2, 3, 4, 5, 6], ["Two", 2, 1, 3, 4, 5, 6]], "try another weight, such as "),
    ],
)
def test_the_next_step_fits_where_the_folder_stands(offices, makers, said):
    makers_xlsx(offices / "makers.xlsx", ["Maker", *(key.capitalize() for key in OFFICES)], makers)

    assert scorecard("score", cwd=offices).last.startswith(f"Next: {said}")


def test_score_writes_page_workbook_result_and_history(offices):
    scorecard("score", cwd=offices, SOURCE_DATE_EPOCH="1764061200")

    reports = offices / "reports"
    names = sorted(str(path.relative_to(reports)) for path in reports.rglob("*") if path.is_file())
    assert [".written.json", "history/2025-11-25T09-00-00Z.json", "shortlist.html", "shortlist.json",
            "shortlist.xlsx"] == names  # fmt: skip


def test_the_same_input_gives_the_same_bytes(offices, tmp_path):
    written = []
    for hash_seed in ("1", "2"):
        folder = shutil.copytree(offices, tmp_path / hash_seed)
        scorecard(
            "score", "--as-of", "2026-11-25", cwd=folder, SOURCE_DATE_EPOCH="1764061200", PYTHONHASHSEED=hash_seed
        )
        written.append({path.name: path.read_bytes() for path in (folder / "reports").glob("shortlist.*")})

    assert 3 == len(written[0])
    assert written[0] == written[1]


@pytest.mark.parametrize("seconds", ["0", "1", "32503680000"])
def test_a_fixed_time_stamp_leaves_today_to_the_clock(tmp_path, seconds):
    scorecard("demo", "shown", cwd=tmp_path)
    said = scorecard("score", "--json", cwd=tmp_path / "shown", SOURCE_DATE_EPOCH=seconds)

    today = datetime.now().astimezone().date()
    assert 0 == said.status
    assert json.loads(said.out)["as_of"] in {str(today), str(today - timedelta(days=1))}


def test_what_the_user_changed_is_kept(offices):
    scorecard("score", cwd=offices)
    (offices / "reports" / "shortlist.html").write_text("my own notes", "utf-8")

    said = scorecard("score", cwd=offices)

    assert "my own notes" == (offices / "reports" / "shortlist-edited-1.html").read_text("utf-8")
    assert "shortlist-edited-1.html" in said.err


def test_inputs_are_never_written_to(offices):
    before = {path.name: path.read_bytes() for path in offices.iterdir()}
    scorecard("check", cwd=offices)
    scorecard("score", cwd=offices)

    assert before == {name: (offices / name).read_bytes() for name in before}


def test_check_writes_nothing(offices):
    scorecard("check", cwd=offices)

    assert ["criteria.toml", "makers.xlsx"] == sorted(path.name for path in offices.iterdir())


def faulty(folder):
    """Lay out a folder with a fault in each of several places."""
    folder.mkdir()
    criteria = CRITERIA + (
        '[criteria.years]\nweight = "15"\ncolumn = "Years"\npoints = [[0, 0], [10, 100]]\n'
        "[criteria.rating]\nweight = 20\nwithin = [0, 5]\npoints = [[5, 0], [4, 100]]\n"
        '[criteria.days]\nweight = 5\nunit = "days"\npoints = [[1, 100], [9, 0]]\n'
    )
    (folder / "criteria.toml").write_text(criteria, "utf-8")
    rows = [["One", "~10", 4.5, "3 days"], [None, 3, 4, 1], ["one", 1, 4, date(2026, 5, 3)]]
    makers_xlsx(folder / "makers.xlsx", ["Maker", "Years", "Rating", "Days"], rows)
    return folder


def test_every_problem_of_both_files_is_listed_at_once(tmp_path):
    said = scorecard("score", "--json", cwd=faulty(tmp_path / "faulty"))

    result = json.loads(said.out)
    places = {(one["sheet"], one["cell"] or one["key"]) for one in result["problems"]}
    assert (3, "scorecard/1") == (said.status, result["schema"])
    assert {
        (None, "criteria.years.weight"), (None, "criteria.rating.points"), ("Makers", "B2"), ("Makers", "A3"),
        ("Makers", "A4"), ("Makers", "D4"),
    } == places  # fmt: skip


def test_problems_in_words_go_to_standard_error_with_their_cells(tmp_path):
    said = scorecard("check", cwd=faulty(tmp_path / "faulty"))

    assert (3, "") == (said.status, said.out)
    assert "Makers!D4" in said.err
    assert "Traceback" not in said.err


def test_set_aside_takes_unreadable_cells_as_unknown_and_says_so_first(offices):
    makers_xlsx(
        offices / "makers.xlsx",
        ["Maker", *(key.capitalize() for key in OFFICES)],
        [["A", 1, 2, 3, 4, 5, 6], ["B", "lots", 2, 3, 4, 5, 6]],
    )
    refused, said = scorecard("score", cwd=offices), scorecard("score", "--set-aside", cwd=offices)

    assert (3, 0) == (refused.status, said.status)
    assert "B3" in said.out.split("\n")[0]
    assert "B3" in (offices / "reports" / "shortlist.html").read_text("utf-8")


def test_what_was_set_aside_is_listed_where_another_problem_stops_the_run(tmp_path):
    folder = faulty(tmp_path / "faulty")
    said = scorecard("score", "--set-aside", cwd=folder)
    result = json.loads(scorecard("score", "--set-aside", "--json", cwd=folder).out)

    assert 3 == said.status
    told, aside = said.err.split("would be taken as unknown:")
    assert (True, False) == ("Makers!B2" in aside, "Makers!B2" in told)
    assert "B2" in [one["cell"] for one in result["set_aside"]]
    assert "B2" not in [one["cell"] for one in result["problems"]]


def test_warnings_follow_the_problems(tmp_path):
    folder = faulty(tmp_path / "faulty")
    makers_csv(folder / "makers.csv", ["Maker"], [])
    said = scorecard("check", cwd=folder)

    assert said.err.index("problems to mend") < said.err.index("warning besides:") < said.err.index("makers.csv: both")


@pytest.fixture(scope="module")
def demo_opened_elsewhere(tmp_path_factory):
    """Lay out the demo, its workbook open in an office program."""
    path = tmp_path_factory.mktemp("opened")
    scorecard("demo", "mugs", cwd=path)
    (path / "mugs" / ".~lock.makers.xlsx#").write_text("somebody", "utf-8")
    return path / "mugs"


@pytest.mark.parametrize("words", [("score",), ("reweigh", "years_trading=20"), ("enquire",), ("dates",)])
def test_every_run_tells_that_the_workbook_is_open_elsewhere(demo_opened_elsewhere, words):
    said = scorecard(*words, cwd=demo_opened_elsewhere)

    assert (0, True) == (said.status, "makers.xlsx: the file is open in another program" in said.err)
    assert "Save it there first: only what is saved is read" in said.err


def test_a_broken_minimum_is_told_by_every_score(tmp_path):
    criteria = CRITERIA.replace("quantity = 1", 'quantity = 200\ndecimal = ","')
    criteria += '[criteria.minimum]\nweight = 1\ncolumn = "Minimum order"\npoints = [[1, 100], [900, 0]]\n'
    (tmp_path / "criteria.toml").write_text(criteria, "utf-8")
    makers_xlsx(tmp_path / "makers.xlsx", ["Maker", "Minimum order"], [["A", "1,000"], ["B", 200]])
    said = scorecard("score", cwd=tmp_path)

    assert 0 == said.status
    assert "Makers!B2: '1,000' counts as 1, since the decimal mark is a comma here. If 1000 is meant" in said.err


def test_no_makers_at_all_stops_score_but_not_check(offices):
    makers_xlsx(offices / "makers.xlsx", ["Maker", *(key.capitalize() for key in OFFICES)], [])
    checked, scored = scorecard("check", cwd=offices), scorecard("score", "--json", cwd=offices)

    assert (0, 3) == (checked.status, scored.status)
    assert [("no-makers", "A2")] == [(one["code"], one["cell"]) for one in json.loads(scored.out)["problems"]]
    assert [] == json.loads(scored.out)["warnings"]
    assert "Warnings:" in checked.out


def test_an_empty_folder_is_told_how_to_begin(tmp_path):
    said = scorecard("score", cwd=tmp_path)

    assert 3 == said.status
    assert "scorecard start" in said.err


def test_a_day_that_is_none_is_wrong_usage(offices):
    said = scorecard("score", "--as-of", "25.11.2026", cwd=offices)

    assert (2, True) == (said.status, "2026-11-25" in said.err)


def test_single_files_can_be_named(offices, tmp_path):
    makers = makers_csv(tmp_path / "list.csv", ["Maker", *OFFICES], [["X", 1, 1, 1, 1, 1, 1], ["Y", 2, 2, 2, 2, 2, 2]])
    said = scorecard(
        "score", "--criteria", str(offices / "criteria.toml"), "--makers", str(makers), "--json", cwd=tmp_path
    )

    assert ["Y", "X"] == [maker["maker"] for maker in json.loads(said.out)["makers"]]


@pytest.mark.parametrize("name", ["makers.ods", "Makers.ODS", "makers.xls", "makers.numbers"])
def test_another_kind_of_file_in_the_folder_is_told_how_to_be_saved(offices, name):
    (offices / "makers.xlsx").unlink()
    (offices / name).write_bytes(b"anything")
    said = scorecard("score", cwd=offices)

    assert (3, False) == (said.status, "scorecard start" in said.err)
    assert f"{name}: the file is" in said.err
    assert "save a copy as .xlsx or .csv" in said.err


@pytest.mark.parametrize("name", ["makers.ods", "makers.xls", "makers.numbers", "makers.txt"])
def test_another_kind_of_file_is_told_how_to_be_saved(offices, name):
    (offices / name).write_bytes(b"anything")
    said = scorecard("check", "--makers", name, cwd=offices)

    assert 3 == said.status
    assert ".xlsx" in said.err


def test_joint_leaders_leave_the_leader_open(tmp_path):
    """A1 of Triantaphyllou (2000), recomputed: 21.5, 22, 22."""
    (tmp_path / "criteria.toml").write_text(
        CRITERIA + "".join(f"[criteria.c{n}]\nweight = {w}\npoints = [[0, 0], [100, 100]]\n"
                           for n, w in enumerate([0.20, 0.15, 0.40, 0.25])), "utf-8",
    )  # fmt: skip
    rows = [["A1", 25, 20, 15, 30], ["A2", 10, 30, 20, 30], ["A3", 30, 10, 30, 10]]
    makers_csv(tmp_path / "makers.csv", ["Maker", "c0", "c1", "c2", "c3"], rows)
    result = json.loads(scorecard("score", "--json", cwd=tmp_path).out)

    assert (None, ["A2", "A3"], 0.0) == (result["leader"], result["leaders"], result["margin"])
    assert [("A2", 1, 22.0), ("A3", 1, 22.0), ("A1", 3, 21.5)] == [
        (one["maker"], one["rank"], one["score"]) for one in result["makers"]
    ]
