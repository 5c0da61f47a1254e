"""How many to order in words."""

from dataclasses import replace
from datetime import timedelta

import pytest
from quoted import MAKER, TODAY, inputs, quote, span, timing
from sized import ALL_PAID, planned, prices, selling, wanting

from scorecard.costing.timing import begin_words
from scorecard.ordering.plan import plan_of
from scorecard.quantity_words import (
    begin_lines,
    cheapest_words,
    kept_words,
    late_lines,
    maker_words,
    newsvendor_words,
    over_words,
    plan_words,
    steady_words,
)

TWO = (*prices(p100="5.00", p250="4.00"), *prices("Oxlip", 9, p1="4.50"))


def test_first_comes_what_leaves_most_by_money_alone():
    # 240 × 12.00 − 1000
    first = (
        "By money alone, of the sizes weighed: Fernhill, 250 pieces, leaves most, 1880.00 GBP if 240 are asked for, "
        "after everything"
    )

    assert first == plan_words(planned(*TWO, sold=selling("12.00", 240)))[0]


def test_a_loss_is_called_one():
    words = plan_words(planned(*prices(p1="5.00"), sold=selling("4.00")))

    assert "By money alone, of the sizes weighed: Fernhill, 200 pieces, loses least, 200.00 GBP" in words[0]


def test_an_expired_quote_is_said_to_be_so_after_what_leaves_most_whose_maker_is_named_first():
    # Oxlip leaves most: 200 × (18.00 − 4.50), Fernhill 200 × (18.00 − 5.00)
    late = TODAY - timedelta(days=1)
    over = [replace(row, valid_until=late) for row in (*prices(p100="5.00"), *prices("Oxlip", 9, p1="4.50"))]
    words = plan_words(planned(*over))

    assert (
        "The quotes of Oxlip (until 24 November 2026) and Fernhill (until 24 November 2026) have expired: ask whether "
        "the prices still hold" == words[1]
    )


def test_of_a_maker_with_prices_that_hold_the_sizes_whose_price_is_over_are_named():
    few, more = prices(p100="5.00", p250="4.00")
    unsaid = frozenset({"valid_until"})  # so that the one day is not taken for the other price
    over = replace(few, valid_until=TODAY - timedelta(days=1))
    words = over_words(planned(over, replace(more, unknown=unsaid)))

    assert [
        "The quote of Fernhill for 100 pieces and for 200 pieces (until 24 November 2026) has expired: ask whether the "
        "price still holds"
    ] == words


def test_nothing_is_said_of_quotes_that_hold():
    assert [] == over_words(planned(*TWO))


def test_who_is_the_cheapest_from_where_to_where():
    words = cheapest_words(planned(*TWO))

    assert ["Where a good piece of the order costs least: 100 to 249 pieces Oxlip; 250 pieces Fernhill"] == words


def test_one_that_is_always_the_cheapest_is_so_throughout():
    plan = planned(*prices(p100="4.00"), *prices("Oxlip", 9, p100="4.50"))

    assert ["From 100 to 200 pieces a good piece of the order costs least at Fernhill throughout"] == cheapest_words(
        plan
    )


def test_one_quantity_alone_is_no_stretch():
    plan = planned(*prices(p200="4.00"), *prices("Oxlip", 9, p200="4.50"))

    assert ["For 200 pieces a good piece of the order costs least at Fernhill"] == cheapest_words(plan)


def test_who_may_be_cheaper_in_a_stretch_is_named():
    lacks = quote("1.00", maker="Tansy", row=12, covers="goods")
    words = cheapest_words(planned(*prices(p100="4.00"), *prices("Oxlip", 9, p100="4.50"), lacks))

    assert [
        "From 100 to 200 pieces a good piece of the order costs least at Fernhill throughout (Tansy may be cheaper); "
        "counted by the middle of what each may cost, and only makers whose costs are all known"
    ] == words


def test_one_maker_alone_is_compared_with_nobody():
    assert [] == cheapest_words(planned(*prices(p100="4.00")))


def test_what_comes_off_the_price_is_listed():
    plan = planned(*TWO, sold=selling("12.00", packing="0.45", payment_fee="0.30"))

    assert (
        "Of 12.00 a piece 11.25 GBP are left to pay for the goods: payment fee 0.30 and packing 0.45 come off"
        == kept_words(plan)
    )


def test_one_thing_comes_off_and_several_come():
    assert kept_words(planned(*TWO, sold=selling("12.00", packing="0.45"))).endswith(": packing 0.45 comes off")


def test_a_price_without_fees_is_left_whole():
    assert "All of the price, 18.00 GBP, is left to pay for the goods" == kept_words(planned(*TWO))


def test_the_cost_that_the_wanted_margin_bears_names_who_is_below_it():
    words = plan_words(planned(*TWO, sold=selling("8.00", wanted_margin_percent="45")))

    assert "A margin of 45 % bears 4.40 GBP for a good piece of the order: Fernhill from 250 pieces" in words


def test_a_margin_that_nobody_allows_is_said():
    words = plan_words(planned(*TWO, sold=selling("8.00", wanted_margin_percent="90")))

    assert "A margin of 90 % bears 0.80 GBP for a good piece of the order: no maker is that cheap at any size" in words


def test_a_margin_that_the_fees_eat_up_cannot_be_had():
    words = plan_words(planned(*TWO, sold=selling("8.00", wanted_margin_percent="90", postage="2.00")))

    assert "A margin of 90 % cannot be had at this price, whatever a piece costs" in words


def test_what_is_not_given_is_said_to_count_as_nothing():
    words = plan_words(planned(*TWO))

    assert any(one.startswith("Not given in [selling], and taken as nothing: sales tax inside") for one in words)
    assert "No demand is given, so all that are wanted are taken to sell and no more" in words


def test_makers_that_are_ruled_out_are_named():
    plan = plan_of(inputs(*TWO), selling(), [MAKER])

    assert "Not weighed here, being ruled out or not among the first 1 with a quote: Oxlip" in plan_words(plan)


def test_a_guess_is_called_one():
    assert "No forecast is a promise" in plan_words(planned(*TWO))[-1]


def test_without_a_known_cost_nothing_is_weighed():
    assert "No maker has every cost known" in plan_words(planned(quote(5, covers="goods")))[0]


def advice(*rows, **sold):
    return newsvendor_words(planned(*rows, sold=selling("12.00", (120, 180, 240), **sold)).makers[0])


def test_a_sale_missed_is_weighed_against_a_piece_left_over():
    # the quantile of 7 ÷ 12 is 0.2104 deviations above: 0.2104 ÷ 1.2816 = 0.16 of the way; 180 + 9.85 = 189.85
    assert [
        "One more good piece costs 5.00 GBP, for the price, freight and border, what is paid once left out: a sale "
        "missed loses 12.00 − 5.00 = 7.00, a piece left over 5.00 − 0.00 = 5.00",
        "So it pays to have enough in 58 of 100 such seasons (7.00 ÷ (7.00 + 5.00)), which by the normal curve takes "
        "190 pieces: 180 + 0.16 × 60; of the sizes above, 200 leaves most on average",
    ] == advice(*prices(p1="5.00"))


def test_an_order_raised_to_a_break_is_said_to_be():
    (_, words) = advice(*prices(p1="5.00", p250="4.00"))

    assert words.endswith("takes 201 pieces: 180 + 0.34 × 60; 250 is the least to be had at that cost")


def test_a_sale_that_earns_nothing_and_a_piece_that_loses_nothing_are_said_to():
    (loss,) = advice(*prices(p1="13.00"))

    assert loss.endswith(
        "A sale brings no more than that, so that no order pays; of the sizes above, 200 loses least on average"
    )
    assert "A piece left over loses nothing" in advice(*prices(p1="5.00"), unsold_worth="5.00")[0]


def test_an_order_below_the_likely_demand_is_told_from_there():
    # 4 ÷ 12: 0.4307 deviations below, 0.34 of the way
    assert "takes 160 pieces: 180 − 0.34 × 60" in advice(*prices(p1="8.00"))[1]


def test_where_nobody_quotes_one_more_piece_that_is_said():
    lot = quote(900, pieces=200, price_is_for="all", covers=ALL_PAID)

    assert [
        "Only these sizes are quoted, not what one more piece costs; of them, 200 leaves most on average"
    ] == advice(lot)


def test_an_average_is_told_with_its_sum_and_its_weights():
    # 200 at 5.00: 120 sold leave 440, 180 leave 1160, all leave 1400; 132 + 464 + 420
    words = plan_words(planned(*prices(p200="5.00"), sold=selling("12.00", (120, 180, 240))))

    assert [
        "By money alone, of the sizes weighed: Fernhill, 200 pieces, leaves most, 1016.00 GBP on average, after "
        "everything (0.3 × 440.00 + 0.4 × 1160.00 + 0.3 × 1400.00)",
        "On average counts your low demand for 3 seasons of 10, the likely for 4 and the high for 3, which fits if "
        "fewer than the low are asked for in 1 season of 10, and more than the high in 1",
    ] == [words[0], next(one for one in words if one.startswith("On average"))]


def test_a_steady_year_names_the_order_that_costs_least():
    sold = selling("18.00", yearly_demand=5000, holding_percent="20", order_cost="49")
    (words,) = steady_words(planned(*prices(p1="5.00", p1000="4.80", p2000="4.75"), sold=sold, wanted=700).makers[0])

    assert (
        "At a steady 5000 a year orders of 1000 cost least, 24725.00 GBP a year in 5.0 orders, for pieces, ordering "
        "and keeping together"
    ) == words


def test_sizes_that_come_too_late_are_named():
    read = inputs(quote(5, covers=ALL_PAID, days=(10, 40)), brief=replace(wanting(200), need_by=TODAY + timedelta(30)))
    plan = plan_of(read, selling(), [MAKER])

    assert ["Too late for 25 December 2026 if ordered today: 200 pieces"] == late_lines(plan, plan.makers[0].options)
    assert plan_words(plan)[0].endswith("; but ordered today it is too late for 25 December 2026")


@pytest.mark.parametrize(
    ("status", "best", "line"),
    [
        ("in time", "", []),
        (
            "no time for a sample",
            "; but begun today there is no time for a sample if it is to be there by 25 December 2026",
            ["No time for a sample before 25 December 2026: 200 pieces"],
        ),
        (
            "only if all goes quickly",
            "; but ordered today it is there by 25 December 2026 only if all goes quickly",
            ["There by 25 December 2026 only if all goes quickly: 200 pieces"],
        ),
    ],
)
def test_sizes_stand_as_the_schedule_says(status, best, line):
    brief = replace(wanting(200), need_by=TODAY + timedelta(30))
    read = inputs(quote(5, covers=ALL_PAID, days=10, way="air"), brief=brief)
    plan = plan_of(replace(read, timings={(MAKER, "air"): timing(status)}), selling(), [MAKER])
    options = plan.makers[0].options

    assert (True, line) == (plan_words(plan)[0].endswith(best or "after everything"), late_lines(plan, options))
    assert [f"By air: {status}, {begin_words(timing(status))}"] == begin_lines(options)


def test_a_maker_is_told_of_its_sizes_steps_demands_and_cash():
    plan = planned(*prices(p200="5.00", p250="4.60"), sold=selling("12.00", (180, 240, 320)))
    words = maker_words(plan, plan.makers[0])

    assert ["200 pieces: 1", "250 pieces: 1", "250 instead o", "200 at the lo"] == [one[:13] for one in words[:4]]
    assert ["Cash for 200", "Cash for 250"] == [one.split(":")[0] for one in words if one.startswith("Cash")]


def test_one_that_would_leave_more_but_comes_too_late_is_said_to():
    late = [replace(row, way="sea", days=span(300)) for row in prices(p200="2.00")]
    soon = [replace(row, way="air", days=span(5)) for row in prices("Oxlip", 9, p200="9.00")]
    read = inputs(*late, *soon, brief=replace(wanting(200), need_by=TODAY + timedelta(days=60)))
    first, second = plan_words(plan_of(read, selling("20.00"), [MAKER, "Oxlip"]))[:2]

    # 200 × (20.00 − 9.00) and 200 × (20.00 − 2.00)
    assert first.startswith("By money alone, of those in time: Oxlip, 200 pieces, leaves most, 2200.00 GBP")
    assert (
        "Fernhill, 200 pieces, would leave 3600.00 GBP; but ordered today it is too late for 24 January 2027" == second
    )


def test_a_size_between_those_weighed_that_leaves_more_is_named():
    words = plan_words(planned(*prices(p1="2.00"), sold=selling("20.00", (60, 90, 120)), wanted=90))

    # 0.3 · 60 · 20 + 0.4 · 90 · 20 + 0.3 · 120 · 20 − 2 · 120 = 1560
    assert "Fernhill takes other sizes too: 120 pieces leave 1560.00 GBP on average" in words
