"""``start`` and ``demo``: new folders, never in place of anything."""

import json
import re
from datetime import date, timedelta

import jsonschema
import pytest
from process import schema_of, scorecard

from scorecard.reading.kinds import kinds


def test_start_lays_out_two_files_and_says_what_comes_next(tmp_path):
    said = scorecard("start", "mine", "--kind", "paper", cwd=tmp_path)

    assert 0 == said.status
    assert ["criteria.toml", "makers.xlsx"] == sorted(path.name for path in (tmp_path / "mine").iterdir())
    assert said.last.startswith("Next: ")


@pytest.mark.parametrize("kind", sorted(kinds()))
def test_what_start_lays_out_has_no_problem_but_no_makers_yet(tmp_path, kind):
    scorecard("start", "mine", "--kind", kind, cwd=tmp_path)
    checked = json.loads(scorecard("check", "--json", cwd=tmp_path / "mine").out)

    assert ["no-makers"] == [one["code"] for one in checked["warnings"]]


def test_a_laid_out_file_with_all_its_remarks_made_settings_passes_check(tmp_path):
    scorecard("start", "mugs", cwd=tmp_path)
    path = tmp_path / "mugs" / "criteria.toml"
    text = path.read_text("utf-8")
    path.write_text(re.sub(r"^# (?=\[{1,2}[a-z_.]+\]{1,2}|[A-Za-z_]+ = )", "", text, flags=re.MULTILINE), "utf-8")
    ran = scorecard("check", "--as-of", "2026-11-30", cwd=tmp_path / "mugs")

    assert "\n[selling]\n" in path.read_text("utf-8")
    assert (0, False) == (ran.status, "criteria.toml, " in ran.out + ran.err), ran.err


def test_an_unknown_kind_is_wrong_usage_and_lists_the_kinds(tmp_path):
    said = scorecard("start", "mine", "--kind", "spaceships", cwd=tmp_path)

    assert 2 == said.status
    assert all(kind in said.err for kind in kinds())
    assert not (tmp_path / "mine").exists()


@pytest.mark.parametrize("command", ["start", "demo"])
def test_a_folder_that_holds_anything_is_left_alone(tmp_path, command):
    (tmp_path / "mine").mkdir()
    (tmp_path / "mine" / "letter.txt").write_text("mine", "utf-8")
    said = scorecard(command, "mine", cwd=tmp_path)

    assert 2 == said.status
    assert ["letter.txt"] == [path.name for path in (tmp_path / "mine").iterdir()]


def test_a_second_demo_never_writes_into_the_first(tmp_path):
    scorecard("demo", cwd=tmp_path)
    before = {path: path.read_bytes() for path in (tmp_path / "demo").rglob("*") if path.is_file()}
    said = scorecard("demo", cwd=tmp_path)

    assert 2 == said.status
    assert before == {path: path.read_bytes() for path in (tmp_path / "demo").rglob("*") if path.is_file()}


def test_start_says_as_json_what_it_laid_out(tmp_path):
    result = json.loads(scorecard("start", "mine", "--kind", "paper", "--json", cwd=tmp_path).out)

    assert ("scorecard-start/1", "mine", "paper-goods") == (result["schema"], result["folder"], result["kind"])
    assert result["files"] == sorted(path.name for path in (tmp_path / "mine").iterdir())
    assert sorted(kinds()) == result["kinds"]
    jsonschema.validate(result, schema_of("start"))


def test_demo_says_as_json_what_it_laid_out_and_scored(tmp_path):
    result = json.loads(scorecard("demo", "mine", "--json", cwd=tmp_path).out)
    again = json.loads(scorecard("score", "--json", cwd=tmp_path / "mine").out)

    jsonschema.validate(result, schema_of("demo"))
    assert ("scorecard-demo/1", again) == (result["schema"], result["score"])


def test_without_a_kind_start_names_the_one_it_takes(tmp_path):
    said = scorecard("start", "mine", cwd=tmp_path)

    assert "The kind of goods is enamelware-and-ceramics; for another, say --kind" in said.out


def demo_result(tmp_path, day=date(2026, 11, 25)):
    """Return the demo's result, laid out on a day."""
    said = scorecard("demo", f"d{day}", "--json", "--as-of", day.isoformat(), cwd=tmp_path)
    return json.loads(said.out)["score"]


def test_the_demo_shows_what_it_is_for(tmp_path):
    result = demo_result(tmp_path)

    ruled_out = {maker["maker"]: maker["reasons"] for maker in result["makers"] if maker["status"] == "ruled out"}
    assert 12 == len(result["makers"])
    assert any("Minimum order fit" in reason for reasons in ruled_out.values() for reason in reasons)
    assert 0.05 < result["smallest_change"][0]["moved"] < 0.08
    assert result["questions"][0]["could_change_leader"]
    rating = next(maker for maker in result["makers"] if maker["maker"] == "Oxlip Kilns")["criteria"][
        "performance_rating"
    ]
    assert (5, pytest.approx((4 * 5 + 20 * 4.5) / 24)) == (rating["answer"], rating["counts_as"])
    assert any(isinstance(cell["answer"], dict) for maker in result["makers"] for cell in maker["criteria"].values())


def test_the_demo_shows_what_a_good_piece_costs_at_the_door(tmp_path):
    result = demo_result(tmp_path)
    pieces = {
        one["maker"]: one["per_good_piece"]["low"]
        for one in result["landed_costs"]
        if one["chosen"] and one["complete"]
    }
    goods = {
        one["maker"]: one["readings"][0]["lines"][0]["cost"]["low"] / one["quantity"]["low"]
        for one in result["landed_costs"]
    }
    ways = {one["way"]: one for one in result["landed_costs"] if one["maker"] == "Thistlewharf Enamel"}

    assert "order" == result["stage"]
    assert min(pieces, key=pieces.get) != result["leader"]  # the leader is not the cheapest
    assert "Thistlewharf Enamel" == min(goods, key=goods.get) == max(pieces, key=pieces.get)  # cheap by the piece
    assert (("no", False), ("yes", True)) == tuple(
        (ways[way]["in_time"], ways[way]["chosen"]) for way in ("sea", "air")
    )
    assert ways["sea"]["total"]["high"] < ways["air"]["total"]["low"]
    assert [["freight"]] == [[gap["name"] for gap in one["gaps"]][:1] for one in result["landed_costs"] if one["gaps"]]


def test_in_the_demo_landed_cost_as_a_criterion_changes_the_leader_and_the_report_says_why(tmp_path):
    scorecard("demo", "shown", "--as-of", "2026-11-25", cwd=tmp_path)
    folder = tmp_path / "shown"
    said = json.loads(scorecard("reweigh", "landed_cost=20", "--json", "--as-of", "2026-11-25", cwd=folder).out)
    page = (folder / "reports" / "shortlist.html").read_text("utf-8")
    text = " ".join(re.sub(r"<[^>]+>", "", page).split())

    assert ("Brightholm Enamel", "Quillmoor Works") == (said["before"]["leader"], said["after"]["leader"])
    assert (
        "Landed cost does not count yet: above a weight of 17.4 Quillmoor Works would lead, since a good piece costs "
        "8.26 EUR from Brightholm Enamel and 6.45 EUR from Quillmoor Works." in text
    )
    assert "Thistlewharf Enamel asks 1.79 EUR a piece for the goods, less than a piece costs at the door" in text


def test_the_demo_on_one_day_is_the_same_byte_for_byte(tmp_path):
    pages = []
    for name in ("one", "two"):
        (tmp_path / name).mkdir()
        scorecard("demo", "--as-of", "2027-02-01", cwd=tmp_path / name, SOURCE_DATE_EPOCH="1")
        pages.append((tmp_path / name / "demo" / "reports" / "shortlist.html").read_bytes())

    assert pages[0] == pages[1]


def test_the_demo_ranks_alike_on_whatever_weekday_it_is_laid_out(tmp_path):
    days = [date(2026, 11, 23) + timedelta(days=more) for more in range(7)]
    rankings = {tuple((m["maker"], m["score"]) for m in demo_result(tmp_path, day)["makers"]) for day in days}

    assert 1 == len(rankings)
