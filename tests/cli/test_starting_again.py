"""``start --from`` as a whole process: the second brief starts knowing the first."""

import json
import re
import shlex
import tomllib

import jsonschema
import openpyxl
import pytest
from order_folder import CRITERIA, ORDERS, lay_out
from process import schema_of, scorecard

from scorecard.cli.laying_out import with_commands

LATER = ("--as-of", "2027-11-01")
MEASURE = """
[criteria.on_time]
weight = 1
measure = "on_time_share"
points = [[0, 0], [100, 100]]
"""


@pytest.fixture
def before(tmp_path):
    return lay_out(tmp_path / "old", Orders=ORDERS, criteria=CRITERIA + MEASURE)


def start(tmp_path, *words):
    ran = scorecard("start", "new", "--from", "old", *LATER, *words, cwd=tmp_path)
    assert 0 == ran.status, ran.err
    return ran


def test_the_result_fits_its_schema_and_counts_what_was_carried(tmp_path, before):
    result = json.loads(start(tmp_path, "--json").out)

    jsonschema.validate(result, schema_of("start"))
    assert (None, "old", 3, 1) == (result["kind"], result["from"], result["makers"], result["own_orders"])
    assert {"known", "to confirm"} == {line["state"] for line in result["last_time"]}


def test_the_new_folder_has_no_problems_and_no_prices(tmp_path, before):
    start(tmp_path)
    scored = json.loads(scorecard("score", "--json", *LATER, cwd=tmp_path / "new").out)

    assert ("write", []) == (scored["stage"], scored["landed_costs"])


def test_the_second_brief_knows_own_orders(tmp_path, before):
    start(tmp_path)
    scored = json.loads(scorecard("score", "--json", *LATER, cwd=tmp_path / "new").out)
    own = {one["maker"]: one for one in scored["own_orders"]}
    answers = {one["maker"]: one["criteria"]["on_time"]["answer"] for one in scored["makers"]}

    # never recorded in the old folder, and known all the same, with what was quoted then: 200 × 5 + 2 × 60
    assert (1, 0.0, "1176", "1120.00") == (
        own["Fernhill"]["orders"],
        own["Fernhill"]["on_time_share"],
        own["Fernhill"]["paid"]["low"],
        own["Fernhill"]["quoted"]["low"],
    )
    assert (0, None) == (answers["Fernhill"], answers["Brightholm"])


def test_the_second_enquiry_asks_whether_all_is_as_it_was(tmp_path, before):
    start(tmp_path)
    said = json.loads(scorecard("enquire", "--json", *LATER, cwd=tmp_path / "new").out)
    text = next(one["full"] for one in said["messages"] if one["maker"] == "Fernhill")

    assert "Are the blank article, the print method and the factory the same now?" in text
    assert "Is set-up charged again for this order?" in text


def test_old_figures_stand_on_a_sheet_that_is_not_read(tmp_path, before):
    start(tmp_path)
    book = openpyxl.load_workbook(tmp_path / "new" / "makers.xlsx")
    rows = [row[1:3] for row in book["From last time"].iter_rows(min_row=4, values_only=True)]

    assert ("price for 200 pieces", "5.00 EUR each, DAP my door, by road") in rows
    assert [] == list(book["Quotes"].iter_rows(min_row=2, values_only=True))


def test_a_rate_of_last_time_stands_there_with_its_day(tmp_path, before):
    lines = {line["what"]: line for line in json.loads(start(tmp_path, "--json").out)["last_time"]}

    assert ("0.5 EUR for 1 USD", "2026-11-20") == (lines["rate of USD"]["figure"], lines["rate of USD"]["as_of"])


def test_the_old_folder_stays_as_it_was(tmp_path, before):
    files = {path: path.read_bytes() for path in before.rglob("*") if path.is_file()}
    start(tmp_path)

    assert files == {path: path.read_bytes() for path in before.rglob("*") if path.is_file()}


def test_wording_of_ones_own_comes_along(tmp_path, before):
    (before / "enquiry-short.txt").write_text("Hello {maker}: {questions}", "utf-8")
    start(tmp_path)

    assert "Hello {maker}: {questions}" == (tmp_path / "new" / "enquiry-short.txt").read_text("utf-8")


def test_a_warning_sign_comes_along_and_is_told_again(tmp_path):
    checks = [["Maker", "Check", "State", "Date"], ["Fernhill", "bank name equals company name", "no", "2026-10-01"]]
    lay_out(tmp_path / "old", Orders=ORDERS, Checks=checks, criteria=CRITERIA + MEASURE)
    ran = start(tmp_path)
    scored = scorecard("score", *LATER, cwd=tmp_path / "new")
    page = (tmp_path / "new" / "reports" / "shortlist.html").read_text("utf-8")

    assert " 1 warning sign comes along on the sheet Checks." in ran.out
    assert (0, True) == (scored.status, "the account is in another name than the company" in page)


def test_the_day_that_is_over_comes_out(tmp_path, before):
    start(tmp_path)

    text = (tmp_path / "new" / "criteria.toml").read_text("utf-8")
    assert (True, False) == ("\n# need_by = 2027-05-14" in text, "need_by" in tomllib.loads(text)["brief"])


@pytest.mark.parametrize(
    ("words", "status", "told"),
    [
        (("--from", "nowhere"), 3, "nowhere: there is no folder of this name"),
        (("--from", "old", "--kind", "paper"), 2, "--kind and --from"),
        (("--from", "old", "--as-of", "soon"), 2, "--as-of soon"),
        (("--from", "old", "--as-of", "2026-11-01"), 3, "Orders!"),
    ],
)
def test_what_cannot_be_is_told_and_nothing_is_laid_out(tmp_path, before, words, status, told):
    ran = scorecard("start", "new", *words, cwd=tmp_path)

    assert (status, True) == (ran.status, told in ran.err), ran.err
    assert not (tmp_path / "new").exists()


def test_a_folder_with_problems_is_told_with_its_places(tmp_path, before):
    (before / "memory.json").write_text("{}", "utf-8")
    ran = scorecard("start", "new", "--from", "old", *LATER, cwd=tmp_path)

    assert (3, True) == (ran.status, "memory.json" in ran.err)
    assert not (tmp_path / "new").exists()


def test_a_second_brief_never_writes_into_the_first(tmp_path, before):
    ran = scorecard("start", "old", "--from", "old", *LATER, cwd=tmp_path)

    assert (2, True) == (ran.status, "holds something already" in ran.err)


def test_the_demo_goes_through_all_of_it(tmp_path):
    run = ("--folder", "old", "--as-of", "2026-11-25")
    scorecard("demo", "old", "--as-of", "2026-11-25", cwd=tmp_path)
    ordered = json.loads(scorecard("order", "Brightholm", "--json", *run, cwd=tmp_path).out)
    book = openpyxl.load_workbook(tmp_path / "old" / "makers.xlsx")
    headings = [cell.value for cell in book["Orders"][1]]
    row = {"Maker": "Brightholm Enamel", "Ordered on": "2026-11-26", "Pieces": 250, "Promised on": "2027-01-20"}
    row |= {"Arrived on": "2027-01-18", "Complain until": "2027-02-18", "Faulty pieces": 5, "Paid in all": 1712.58}
    book["Orders"].append([row.get(heading) for heading in headings])
    book.save(tmp_path / "old" / "makers.xlsx")
    later = ("--folder", "old", "--as-of", "2027-01-25")
    inspected = scorecard("inspect", "--opened", "250", "B1=3", "B3=2", *later, cwd=tmp_path)
    cared = scorecard("care", "Brightholm", *later, cwd=tmp_path)
    recorded = scorecard("record", "Brightholm", *later, cwd=tmp_path)
    start(tmp_path)
    scored = json.loads(scorecard("score", "--json", *LATER, cwd=tmp_path / "new").out)

    assert (False, 1652.0) == (ordered["complete"], ordered["bill"]["total"]["low"])
    assert (0, 0, 0) == (inspected.status, cared.status, recorded.status)
    assert "arrived on 18 January 2027, 2 days early; faulty: 5 of 250 (2.0 of 100)" in recorded.out
    # quoted: 250 × 6.20 + 4 × 30 − 18 credited = 1652, the sample being paid already; 1712.58 is 3.7 % more
    assert "paid 1712.58 EUR; quoted 1652.00 EUR, 3.7 % more" in recorded.out
    assert {"Brightholm Enamel": 100.0, "Quillmoor Works": 0.0, "Sedgewater Print": 100.0} == {
        one["maker"]: one["on_time_share"] for one in scored["own_orders"]
    }


def test_every_command_in_the_new_criteria_file_runs_on_the_new_folder(tmp_path):
    for words in (("demo", "my mugs"), ("start", "again", "--from", "my mugs"), ("start", "third", "--from", "again")):
        assert 0 == scorecard(*words, cwd=tmp_path).status
    text = (tmp_path / "third" / "criteria.toml").read_text("utf-8")
    written = re.findall(r"\bscorecard ([a-z]+[^\n]*? --folder third)", text)

    assert {"score", "reweigh", "cost", "inspect", "order", "care"} <= {one.split()[0] for one in written}
    assert (len(written), 0) == (text.count("--folder"), text.count("my mugs") + text.count("again --"))
    maker = json.loads(scorecard("score", "--folder", "third", "--json", cwd=tmp_path).out)["makers"][0]["maker"]
    for one in written:
        ran = scorecard(*shlex.split(one.replace("MAKER", f'"{maker}"')), cwd=tmp_path)
        assert "Usage" not in ran.err, one
        assert ran.status in (0, 3), f"{one}: {ran.err}"


@pytest.mark.parametrize(
    "before",
    [
        "scorecard score",
        ".venv/bin/scorecard score --folder demo",
        '".my venv/bin/scorecard" score --folder "my mugs" --rows 9',
        "'my $venv/scorecard' score --folder 'my $mugs'",
        "python -m scorecard score --criteria a.toml --makers b.xlsx --set-aside",
        '"my python/python3" -m scorecard score',
    ],
)
def test_a_command_of_the_folder_before_is_put_anew_whole(before):
    found = with_commands(f'# run "{before}" again\n'.encode(), lambda words: f"NEW {words} --folder x")

    assert b'# run "NEW score --folder x" again\n' == found


def test_artwork_that_is_named_and_stays_behind_is_told(tmp_path, before):
    assert "Not brought along: harbour-light.pdf and night-light.pdf." in start(tmp_path).out
