"""``record`` as a whole process: what is kept, what is said, what is refused."""

import json

import jsonschema
import pytest
from order_folder import DAY, ORDER_HEADINGS, ORDERS, QUOTES, lay_out
from process import schema_of, scorecard

BARE = ["Maker", "Ordered on", "Pieces"]


def record(folder, *words):
    ran = scorecard("record", *words, *DAY, cwd=folder)
    assert 0 == ran.status, ran.err
    return ran


def kept(folder):
    return json.loads((folder / "memory.json").read_text("utf-8"))["records"]


def orders(**changes):
    return [ORDER_HEADINGS, list((dict(zip(ORDER_HEADINGS, ORDERS[1], strict=True)) | changes).values())]


def test_it_says_what_really_happened(tmp_path):
    said = record(lay_out(tmp_path, Orders=ORDERS), "fern").out

    # quoted: 200 × 5 + 2 × 60 = 1120; 1176 / 1120 is 5.0 % more; 6 of 200 is 3 of 100
    assert (
        "ordered on 21 November 2026: 200 pieces, by road; promised for 24 November 2026, arrived on 25 November 2026, "
        "1 day late; faulty: 6 of 200 (3.0 of 100); paid 1176.00 EUR; quoted 1120.00 EUR, 5.0 % more."
    ) in said
    assert "1 own order: 0 of 1 on time; 6 of 200 pieces faulty (3.0 of 100); paid 5.0 % more than quoted." in said


def test_the_result_fits_its_schema(tmp_path):
    result = json.loads(record(lay_out(tmp_path, Orders=ORDERS), "fern", "--json").out)

    jsonschema.validate(result, schema_of("record"))
    totals = result["totals"]
    assert (1, 0) == (result["new"], result["earlier_records"])
    assert (0.0, 3.0) == (totals["on_time_share"], totals["faulty_share"])


def test_the_same_again_keeps_nothing_twice(tmp_path):
    record(lay_out(tmp_path, Orders=ORDERS), "fern")
    before = (tmp_path / "memory.json").read_bytes()
    record(tmp_path, "fern")

    assert before == (tmp_path / "memory.json").read_bytes()


def test_the_same_again_says_that_nothing_changed(tmp_path):
    first, second = (record(lay_out(tmp_path, Orders=ORDERS), "fern").out for _ in range(2))

    assert "Kept in memory.json: 1 order.\n" in first
    assert "Already recorded in memory.json; nothing changed.\n" in second


def test_what_changed_since_it_was_recorded_is_told(tmp_path):
    record(lay_out(tmp_path, Orders=ORDERS), "fern")
    lay_out(tmp_path, Orders=orders(**{"Faulty pieces": 9}))
    said = record(tmp_path, "fern").out

    assert "Changed in memory.json, order of 21 November 2026: faulty pieces 9 (before: 6).\n" in said
    assert "Kept in memory.json" not in said


def test_a_sample_is_recorded_as_one(tmp_path):
    heads = [*ORDER_HEADINGS, "Pieces opened"]
    result = json.loads(record(lay_out(tmp_path, Orders=[heads, [*ORDERS[1], 32]]), "fern", "--json").out)

    jsonschema.validate(result, schema_of("record"))
    # 6 of 32 is 18.75 of 100, not 3 of 100
    assert (32, 18.75, 1) == (
        result["orders"][0]["opened"],
        result["totals"]["faulty_share"],
        result["totals"]["in_part"],
    )


def test_earlier_records_are_kept_and_the_last_holds(tmp_path):
    record(lay_out(tmp_path, Orders=ORDERS), "fern")
    lay_out(tmp_path, Orders=orders(**{"Faulty pieces": 9}))
    result = json.loads(record(tmp_path, "fern", "--json").out)

    assert [6, 9] == [one["faulty"] for one in kept(tmp_path)]
    assert (1, 4.5) == (result["totals"]["orders"], result["totals"]["faulty_share"])


def test_what_was_quoted_stays_known_once_quotes_are_gone(tmp_path):
    record(lay_out(tmp_path, Orders=ORDERS), "fern")
    lay_out(tmp_path, Orders=orders(**{"Faulty pieces": 9}), Quotes=[QUOTES[0]], Freight=[["Maker", "Way"]])
    record(tmp_path, "fern")

    assert {"low": "1120.00", "high": "1120.00"} == kept(tmp_path)[-1]["quoted"]


def test_quotes_given_after_the_order_do_not_count(tmp_path):
    record(lay_out(tmp_path, Orders=orders(**{"Ordered on": "2026-11-19"})), "fern")

    assert None is kept(tmp_path)[0]["quoted"]


def test_an_order_under_way_is_kept_and_the_next_step_asks_for_its_arrival(tmp_path):
    rows = orders(**{"Arrived on": None, "Faulty pieces": None, "Paid in all": None, "Promised on": "2026-12-01"})
    said = record(lay_out(tmp_path, Orders=rows), "fern")

    assert "promised for 1 December 2026, not here yet" in said.out
    assert said.last.startswith(
        "Next: when the pieces have come, type the day into F2 (Arrived on) of the sheet Orders"
    )


@pytest.mark.parametrize(("at", "row"), [("2026-11-01", " --row 3,"), (None, ",")])
def test_the_next_step_names_the_row_where_the_maker_has_several_orders(tmp_path, at, row):
    heads, one = orders(**{"Faulty pieces": None})
    before = [heads, ["Fernhill", at, *ORDERS[1][2:4], None, at, *ORDERS[1][6:]]] if at else [heads]
    said = record(lay_out(tmp_path, Orders=[*before, one]), "fern")

    assert f"inspect --maker Fernhill{row}" in said.last


@pytest.mark.parametrize(
    ("rows", "cell", "words"),
    [
        ([BARE], "Orders", "no order names 'Fernhill'"),
        ([BARE, ["Brightholm", "2026-11-01", 5]], "Orders", "no order names 'Fernhill'"),
        ([BARE, ["Fernhill", None, 200]], "Orders!B2", "this order has no day"),
        (orders(**{"Arrived on": "2026-11-20"}), "Orders!F2", "comes before"),
        (orders(**{"Faulty pieces": 201}), "Orders!G2", "201 faulty pieces of 200"),
        (orders(**{"Arrived on": "2026-12-24"}), "Orders!F2", "2026-12-24"),
    ],
)
def test_bad_input_is_told_with_its_place_and_nothing_is_written(tmp_path, rows, cell, words):
    ran = scorecard("record", "fern", *DAY, cwd=lay_out(tmp_path, Orders=rows))

    assert (3, True, True) == (ran.status, f"makers.xlsx, {cell}" in ran.err, words in ran.err), ran.err
    assert not (tmp_path / "memory.json").exists()


@pytest.mark.parametrize("content", ["", "[]", "{", '{"schema": "scorecard-memory/2", "records": []}', "\0"])
def test_a_memory_that_cannot_be_read_is_told_and_left_alone(tmp_path, content):
    (lay_out(tmp_path, Orders=ORDERS) / "memory.json").write_text(content, "utf-8")
    ran = scorecard("record", "fern", *DAY, cwd=tmp_path)

    assert (3, True) == (ran.status, "memory.json: this is not what the tool keeps of your orders" in ran.err)
    assert content == (tmp_path / "memory.json").read_text("utf-8")


def test_a_record_that_was_damaged_is_told_with_its_place(tmp_path):
    record(lay_out(tmp_path, Orders=ORDERS), "fern")
    path = tmp_path / "memory.json"
    path.write_text(path.read_text("utf-8").replace('"2026-11-21"', '"soon"'), "utf-8")
    ran = scorecard("score", *DAY, cwd=tmp_path)

    assert (3, True) == (ran.status, "memory.json, records[0].ordered: this part of a kept order cannot be" in ran.err)


def test_the_shares_become_measures_and_stand_in_the_report(tmp_path):
    from order_folder import CRITERIA

    measures = """
[criteria.on_time]
weight = 1
measure = "on_time_share"
points = [[0, 0], [100, 100]]

[criteria.faulty]
weight = 1
measure = "faulty_share"
points = [[0, 100], [10, 0]]
"""
    record(lay_out(tmp_path, Orders=ORDERS, criteria=CRITERIA + measures), "fern")
    lay_out(tmp_path, criteria=CRITERIA + measures)  # the sheet Orders is gone: what is kept counts
    result = json.loads(scorecard("score", "--json", *DAY, cwd=tmp_path).out)
    answers = {one["maker"]: one["criteria"] for one in result["makers"]}

    jsonschema.validate(result, schema_of("score"))
    assert (0, 3, None) == (
        answers["Fernhill"]["on_time"]["answer"],
        answers["Fernhill"]["faulty"]["answer"],
        answers["Brightholm"]["on_time"]["answer"],
    )
    assert ["Fernhill"] == [one["maker"] for one in result["own_orders"]]
    assert "What your own orders say" in (tmp_path / "reports" / "shortlist.html").read_text("utf-8")


def test_what_is_kept_of_a_maker_without_an_order_in_the_sheet_is_shown(tmp_path):
    record(lay_out(tmp_path, Orders=ORDERS), "fern")
    lay_out(tmp_path)
    said = record(tmp_path, "fern")

    assert "paid 1176.00 EUR; quoted 1120.00 EUR" in said.out
    assert 1 == len(kept(tmp_path))


def test_the_next_message_asks_whether_all_is_as_it_was(tmp_path):
    record(lay_out(tmp_path, Orders=ORDERS), "fern")
    said = scorecard("enquire", "--json", *DAY, cwd=tmp_path)
    texts = {one["maker"]: one["short"] for one in json.loads(said.out)["messages"]}

    assert "1. We ordered 200 pieces from you on 21 November 2026." in texts["Fernhill"]
    assert "2. Is set-up charged again for this order?" in texts["Fernhill"]
    assert "We ordered" not in texts["Brightholm"]
