"""``order`` as a whole process: the sheet, what it lacks, and what it refuses."""

import json
from pathlib import Path

import jsonschema
import pytest
from order_folder import DAY, ORDER, ORDERS, lay_out
from process import schema_of, scorecard

from scorecard.cli.order_sheets import named_way
from scorecard.errors import UsageError


def order(folder, *words):
    ran = scorecard("order", *words, *DAY, cwd=folder)
    assert 0 == ran.status, ran.err
    return ran


@pytest.mark.parametrize(("maker", "complete"), [("fern", True), ("Cold Quay", False)])
def test_the_result_fits_its_schema(tmp_path, maker, complete):
    result = json.loads(order(lay_out(tmp_path), maker, "--json").out)

    jsonschema.validate(result, schema_of("order"))
    assert (complete, not complete) == (result["complete"], bool(result["missing"]))


def test_the_bill_of_the_result_is_in_the_currency_of_the_quote(tmp_path):
    bill = json.loads(order(lay_out(tmp_path), "Bright", "--way", "air", "--json").out)["bill"]

    # 200 × 2 + 40, half of it with the order
    assert ("USD", 440, 220, 220) == (bill["currency"], *(bill[key]["low"] for key in ("total", "deposit", "rest")))


def test_what_is_missing_is_listed_with_where_to_settle_it(tmp_path):
    said = order(lay_out(tmp_path, order=ORDER.replace('pay_by = "card, through the marketplace"\n', "")), "fern")

    assert (
        "Not complete: 1 thing still missing:\n  – how it is paid (pay_by in [order] of the criteria file)" in said.out
    )
    assert said.last.startswith("Next: settle how it is paid")


def test_a_complete_sheet_leads_on_to_the_check_of_what_comes(tmp_path):
    assert order(lay_out(tmp_path), "fern").last.endswith(" inspect --maker Fernhill")


def test_a_complete_sheet_is_kept_where_another_takes_its_place(tmp_path):
    order(lay_out(tmp_path), "fern")
    page = tmp_path / "reports" / "order-02-fernhill.html"
    sent = page.read_bytes()
    again = order(lay_out(tmp_path, order=ORDER.replace("complain_days = 30", "complain_days = 14")), "fern")
    order(tmp_path, "fern")  # the same again keeps no other

    assert "it is kept as reports/order-02-fernhill-earlier-1.html" in again.err
    assert [sent] == [one.read_bytes() for one in page.parent.glob("*earlier*")]


def test_a_draft_that_is_made_again_is_not_kept(tmp_path):
    order(lay_out(tmp_path), "Cold Quay")
    order(lay_out(tmp_path, order=""), "Cold Quay")

    assert ["order-04-cold-quay.html"] == [one.name for one in (tmp_path / "reports").glob("order-*")]


def placed(tmp_path, arrived=None, faulty=None, way="air"):
    orders = [ORDERS[0], ["Brightholm", "2026-11-21", 200, way, None, arrived, faulty, None]]
    return lay_out(tmp_path, Orders=orders)


def test_a_sheet_from_before_the_order_was_placed_is_named_as_not_to_be_sent(tmp_path):
    folder = lay_out(tmp_path)
    draft = Path(json.loads(order(folder, "Bright", "--json").out)["file"]).name
    before = order(folder, "Bright").out
    after = order(placed(tmp_path), "Bright").out

    warned = "From before the order was placed, and not to be sent any more:"
    assert (False, True) == (warned in before, f"{warned} {draft}" in " ".join(after.split()))


def test_the_sheet_of_a_placed_order_goes_by_its_way_on_its_day_and_leaves_the_one_that_was_sent(tmp_path):
    order(lay_out(tmp_path), "Bright")
    sent = (tmp_path / "reports" / "order-03-brightholm.html").read_bytes()
    said = order(placed(tmp_path), "Bright", "--json")
    result = json.loads(said.out)

    jsonschema.validate(result, schema_of("order"))
    assert ("air", "2026-11-21", "2026-11-25") == (result["delivery"]["way"], result["ordered_on"], result["as_of"])
    assert "reports/order-03-brightholm-2026-11-21.html" == result["file"]
    assert sent == (tmp_path / "reports" / "order-03-brightholm.html").read_bytes()
    assert result["notes"][0].startswith("It was ordered on 21 November 2026, by air (row 2 of the sheet Orders)")


def test_another_way_than_the_one_ordered_is_another_order(tmp_path):
    assert json.loads(order(placed(tmp_path), "Bright", "--way", "sea", "--json").out)["ordered_on"] is None


def test_the_ordered_way_stands_for_its_maker_and_is_not_judged_as_if_it_were_begun_today(tmp_path):
    for way, other in (("air", "sea"), ("sea", "air")):
        costs = json.loads(scorecard("cost", "--json", *DAY, cwd=placed(tmp_path, way=way)).out)["landed_costs"]
        of_maker = {one["way"]: one for one in costs if one["maker"] == "Brightholm"}
        assert (True, True, None) == tuple(of_maker[way][key] for key in ("chosen", "ordered", "status"))
        assert (False, False) == (of_maker[other]["chosen"], of_maker[other]["ordered"])


def test_the_page_stands_in_reports(tmp_path):
    order(lay_out(tmp_path), "fern")

    assert (tmp_path / "reports" / "order-02-fernhill.html").read_text("utf-8").startswith("<!doctype html>")


def test_each_way_that_is_asked_for_has_a_page_of_its_own(tmp_path):
    lay_out(tmp_path)
    for words in (("--way", "sea"), ("--way", "Air"), ()):
        order(tmp_path, "Bright", *words)

    assert ["order-03-brightholm-air.html", "order-03-brightholm-sea.html", "order-03-brightholm.html"] == sorted(
        path.name for path in (tmp_path / "reports").glob("order-*")
    )


def test_a_page_that_the_user_changed_is_kept(tmp_path):
    order(lay_out(tmp_path), "fern")
    page = tmp_path / "reports" / "order-02-fernhill.html"
    page.write_text("mine", "utf-8")
    order(tmp_path, "fern")

    assert "mine" == (tmp_path / "reports" / "order-02-fernhill-edited-1.html").read_text("utf-8")


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (("Fenhill",), "MAKER Fenhill: no maker has this name. Is Fernhill meant?"),
        (("fern", "--way", "boat"), "--way boat: there is no such way of shipping"),
        ((), "Missing argument 'MAKER'"),
    ],
)
def test_a_command_that_is_put_wrongly_is_told_and_nothing_is_written(tmp_path, words, told):
    ran = scorecard("order", *words, *DAY, cwd=lay_out(tmp_path))

    assert (2, True) == (ran.status, told in ran.err)
    assert not (tmp_path / "reports").exists()


def test_problems_of_the_table_stop_it_and_nothing_is_written(tmp_path):
    ran = scorecard("order", "fern", *DAY, cwd=lay_out(tmp_path, order="[order]\nover_percent = 200\nremdy = 'x'\n"))

    assert (3, "") == (ran.status, ran.out)
    assert "criteria.toml, order.over_percent: 200 is above 100" in ran.err
    assert "order.remdy: 'remdy' is not a key of [order]. Write 'remedy' if that is meant" in ran.err
    assert not (tmp_path / "reports").exists()


def test_a_way_is_named_in_any_case():
    assert ("sea", None) == (named_way(" Sea"), named_way(None))
    with pytest.raises(UsageError):
        named_way("")
