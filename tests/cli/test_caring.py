"""``care`` as a whole process."""

import json
from dataclasses import replace

import jsonschema
import pytest
from builders import workbook_bytes
from process import schema_of, scorecard
from sourcing import BRIEF, MAKERS

from scorecard.cli.caring import pieces_of
from scorecard.orders import OrderRow

FACTS = '[care]\ntouches_food = true\nfor_children = false\nflame = "neither"\n'


def folder_of(path, answer="wash by hand; not for the microwave", toml=FACTS, heading="Care"):
    rows = [[*MAKERS[0], heading], [*MAKERS[1], answer], [*MAKERS[2], None]]
    (path / "criteria.toml").write_text(f"{BRIEF}\n{toml}", "utf-8")
    (path / "makers.xlsx").write_bytes(workbook_bytes({"Makers": rows}))
    return path


def run(folder, *words):
    return scorecard("care", *words, "--as-of", "2026-11-25", cwd=folder)


def result_of(folder, *words):
    result = json.loads(run(folder, *words, "--json").out)
    jsonschema.validate(result, schema_of("care"))
    return result


def test_cards_hold_what_the_maker_answered_and_the_usual_cautions(tmp_path):
    result = result_of(folder_of(tmp_path), "fern")
    assert (["Wash by hand", "Not for the microwave"], 2, 8) == (
        result["lines"],
        len(result["cautions"]),
        result["per_page"],
    )
    assert (tmp_path / "reports" / "care-02-fernhill.html").exists()


def test_the_words_send_the_reader_to_local_rules(tmp_path):
    ran = run(folder_of(tmp_path), "Fernhill")
    assert (0, "") == (ran.status, ran.err)
    assert "ask your local authority or a licensed adviser." in ran.out
    assert "accredited laboratory" in ran.out


def test_a_dishwasher_without_cycles_is_warned_of_at_its_cell(tmp_path):
    result = result_of(folder_of(tmp_path, "Dishwasher safe"), "Fernhill")
    assert [("E2", "dishwasher-without-cycles")] == [(one["cell"], one["code"]) for one in result["warnings"]]


def refused(folder, *words):
    result = result_of(folder, *words)
    assert not (folder / "reports").exists()
    return [(one["cell"] or one["key"], one["code"]) for one in result["problems"]]


def test_what_is_not_known_is_asked_for_all_at_once(tmp_path):
    expected = [
        ("care.touches_food", "missing-key"),
        ("care.for_children", "missing-key"),
        ("care.flame", "missing-key"),
        ("E3", "no-care-answer"),
    ]
    assert expected == refused(folder_of(tmp_path, toml=""), "Brightholm")


@pytest.mark.parametrize("answer", [None, ";;", "-", "?", "unknown"])
def test_no_answer_is_told_at_its_cell(tmp_path, answer):
    assert [("E2", "no-care-answer")] == refused(folder_of(tmp_path, answer), "Fernhill")


def test_a_missing_column_is_told_at_the_maker(tmp_path):
    assert [("A2", "no-care-answer")] == refused(folder_of(tmp_path, heading="Mine"), "Fernhill")


def test_a_text_that_fits_on_no_card_is_told_at_its_cell(tmp_path):
    assert [("E2", "card-too-long")] == refused(folder_of(tmp_path, "wash;" * 40), "Fernhill")


def test_an_unknown_maker_is_a_wrong_use(tmp_path):
    ran = run(folder_of(tmp_path), "Nobody")
    assert (2, True) == (ran.status, ran.err.startswith("MAKER Nobody: no maker has this name"))


def test_an_answer_cannot_move_the_cursor(tmp_path):
    ran = run(folder_of(tmp_path, "wash\u202e by\u009b2J hand"), "Fernhill")
    assert (0, False) == (ran.status, any(sign in ran.out for sign in "\u202e\u009b"))


def test_the_cards_are_for_the_pieces_that_were_ordered():
    from cases import AS_OF, make_case, numbers

    case = make_case([numbers("years", 1)], {"Fernhill": [3], "Dale": [4]})
    case = replace(case, orders=(OrderRow(maker="Fernhill", row=2, pieces=150),))

    assert (150, case.brief.quantity) == (pieces_of(case, 0, AS_OF), pieces_of(case, 1, AS_OF))
