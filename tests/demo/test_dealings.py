"""The demo's samples and checks: what they show."""

import json
from datetime import date

import pytest
from process import scorecard

from scorecard.demo.dealings import dealing_rows

DAY = date(2026, 11, 25)


@pytest.fixture(scope="module")
def laid_out(tmp_path_factory):
    place = tmp_path_factory.mktemp("demo")
    said = scorecard("demo", "d", "--json", "--as-of", DAY.isoformat(), cwd=place)
    return place / "d", json.loads(said.out)["score"]


def test_days_are_set_from_the_day_on_which_it_is_laid_out():
    rows = dealing_rows(DAY)

    assert (date(2026, 11, 12), date(2026, 11, 17)) == (rows["Samples"][0]["Asked on"], rows["Checks"][0]["Date"])


def test_one_maker_has_a_warning_sign_and_others_open_checks(laid_out):
    signs = {one["maker"]: len(one["warning_signs"]) for one in laid_out[1]["checks"]}

    assert {"Brightholm Enamel": 0, "Quillmoor Works": 0, "Oxlip Kilns": 1} == signs


def test_a_weight_on_sample_marks_changes_the_leader_and_the_report_says_so(laid_out):
    folder, score = laid_out
    changed = json.loads(scorecard("reweigh", "sample_marks=14", "--json", "--folder", str(folder), cwd=folder).out)
    page = (folder / "reports" / "shortlist.html").read_text("utf-8")

    assert ("Brightholm Enamel", ["Quillmoor Works"]) == (score["leader"], changed["after"]["leaders"])
    assert "They would change who leads." in page
