"""Every maker at every size, and what follows from them together."""

from dataclasses import replace
from datetime import date, timedelta

import pytest
from quoted import MAKER, TODAY, inputs, offer, quote, uk
from sized import ALL_PAID, minimum, option, planned, prices, selling, wanting

from scorecard.costing.inputs import MakerFacts
from scorecard.ordering import plan as module
from scorecard.ordering.plan import plan_of
from scorecard.ordering.pricing import Pricing
from scorecard.ordering.sizes import Size, settled

TWO = (*prices(p100="5.00", p250="4.00"), *prices("Oxlip", 9, p1="4.50"))


def test_makers_come_in_the_order_given_and_those_without_a_quote_not_at_all():
    plan = plan_of(inputs(*TWO), selling(), ["Oxlip", "Nobody", MAKER])

    assert ["Oxlip", MAKER] == [one.maker for one in plan.makers]


def test_a_maker_that_is_not_asked_for_is_in_no_comparison():
    plan = plan_of(inputs(*TWO), selling(), [MAKER])

    assert {MAKER} == {one.maker for one in plan.stretches}


def test_stretches_run_over_the_real_sizes():
    plan = planned(*TWO)

    assert (100, 250) == (plan.stretches[0].start, plan.stretches[-1].end)


def test_sizes_far_beyond_what_is_wanted_or_sells_are_in_no_comparison():
    # 4 times the 200 wanted, or the 300 that may sell, and no more
    rows = prices(p100="5.00", p800="1.00", p801="0.99", p1200="0.98", p1201="0.97")
    plans = [planned(*rows, sold=selling(demand=demand)) for demand in (None, 240, (180, 240, 300))]

    assert [800, 800, 1200] == [plan.stretches[-1].end for plan in plans]


def test_where_every_size_is_far_beyond_the_least_is_in_the_comparison():
    plan = planned(*prices(p900="2.00", p1000="1.90"))

    assert (900, 900) == (plan.stretches[0].start, plan.stretches[-1].end)


def test_makers_with_a_quote_that_are_not_asked_for_are_named_once():
    rows = (*TWO, *prices("Sorrel", 12, p1="4.00", p100="3.50"))

    assert ("Oxlip", "Sorrel") == plan_of(inputs(*rows), selling(), [MAKER, "Nobody"]).left_out


def test_a_newsvendor_and_a_year_are_reckoned_from_any_quantity_of_the_maker():
    # price 600, cost 120, salvage 60, mean 200, deviation 60: 273.2 [stored, as in the tests of advice]
    plan = planned(*prices(p1="120.00"), sold=selling("600", (123, 200, 277), unsold_worth="60"))
    # √(2 · 5000 · 49 / (20 % of 5.00)) = 700
    yearly = selling(yearly_demand=5000, holding_percent="20", order_cost="49")

    assert 274 == plan.makers[0].newsvendor.pieces
    assert 700 == planned(*prices(p1="5.00"), sold=yearly).makers[0].steady.economic


@pytest.mark.parametrize(
    ("larger", "price", "less_from"),
    [
        (250, "4.50", 225),  # 1125.00 either way
        (250, "4.52", 226),  # 1130.00 either way
        (250, "4.98", 249),  # 1245.00 either way
        (250, "5.00", None),
        (225, "4.40", 200),  # 990.00, and 1000.00 for 200
    ],
)
def test_a_step_names_the_least_order_that_costs_as_much(larger, price, less_from):
    (step,) = planned(*prices(**{"p200": "5.00", f"p{larger}": price})).makers[0].steps

    assert less_from == step.less_from


def test_beyond_an_order_whose_cost_is_missing_none_is_named():
    # 250 at 4.00 and 50.00 are 1050.00; 5.00 each and 100.00 from 230 on, as much at 200, nobody says from 221 to 229
    rows = [quote(price, row=2 + at, pieces=pieces, term="EXW", way="air")
            for at, (pieces, price) in enumerate(((200, "5.00"), (250, "4.00")))]  # fmt: skip
    parts = ((200, 220, 100), (230, 249, 100), (250, 250, 50))
    offers = [offer("air", cost, from_pieces=low, to_pieces=high, covers="door to door") for low, high, cost in parts]
    at_home = {"makers": {MAKER: MakerFacts(maker=MAKER, country="GB")}, "imports": uk("0", "0")}
    (step,) = planned(*rows, offers=tuple(offers), **at_home).makers[0].steps

    assert 230 == step.less_from


def test_the_best_of_all_leaves_most():
    plan = planned(*TWO, sold=selling("12.00", (120, 240, 300)))

    assert (MAKER, 250) == (plan.best.maker, plan.best.pieces)


def needed(*rows, days):
    return inputs(*rows, brief=replace(wanting(200), need_by=TODAY + timedelta(days)))


def test_what_comes_too_late_is_not_best_while_anything_is_in_time():
    slow, quick = quote("3.00", covers=ALL_PAID, days=90), quote("5.00", maker="Oxlip", row=9, covers=ALL_PAID, days=20)
    plan = plan_of(needed(slow, quick, days=60), selling("12.00"), [MAKER, "Oxlip"])

    assert (["no", "yes"], "Oxlip") == ([one.options[0].in_time for one in plan.makers], plan.best.maker)


def test_where_all_comes_too_late_the_best_is_named_all_the_same():
    plan = plan_of(needed(quote("3.00", covers=ALL_PAID, days=90), days=60), selling("12.00"), [MAKER])

    assert (MAKER, "no") == (plan.best.maker, plan.best.in_time)


def test_without_a_need_by_date_nothing_is_late():
    assert planned(*TWO).best.in_time is None


def test_without_a_known_cost_nothing_is_best():
    plan = planned(quote(5, covers="goods"))

    assert (None, None) == (plan.best, plan.makers[0].best)


def test_the_first_sale_is_on_the_need_by_date_unless_it_is_said():
    sold = selling(sales_begin=date(2027, 6, 1))

    assert (None, date(2027, 6, 1)) == (planned(*TWO).first_sale, planned(*TWO, sold=sold).first_sale)


def test_where_the_minimum_is_open_an_option_is_of_just_its_pieces_and_not_sure():
    plan = plan_of(inputs(*prices(p1="5"), brief=wanting(200, 4), makers=minimum(100, None)), selling(), [MAKER])
    found = {one.pieces: (one.total[0], one.total[1], one.is_sure) for one in plan.makers[0].options}

    assert {100: (500, 500, False), 200: (1000, 1000, False), 400: (2000, 2000, True)} == found


def test_a_size_is_costed_by_a_reply_that_comes_to_just_so_many():
    # the second reply asks less for 500 than the first for 200, all paid
    rows = (
        quote(5, covers=ALL_PAID, pieces=200, way="sea"),
        quote("1.90", row=3, covers=ALL_PAID, pieces=500, way="air"),
    )
    found = {one.pieces: one.total[0] for one in planned(*rows).makers[0].options}

    assert {200: 1000, 500: 950} == found


def test_what_another_reply_leaves_open_makes_an_option_no_less_sure():
    # the first reply may be read in several ways, the second, which stands, in one
    rows = (quote(6, covers=None, pieces=1, way="sea"), quote(5, row=3, covers=ALL_PAID, pieces=1, way="air"))
    one = option(planned(*rows), 200)

    assert ("air", True) == (one.cost.way, one.is_sure)


def test_the_size_for_what_is_wanted_is_the_raised_one():
    plan = planned(*prices(p1="2.10"), wanted=120, makers=minimum(300))

    assert 300 == plan.makers[0].at_wanted.pieces


def test_without_a_quote_there_is_nothing_to_plan():
    plan = plan_of(inputs(), selling(), [MAKER])

    assert ((), (), None) == (plan.makers, plan.stretches, plan.best)


def test_the_sizes_of_which_most_is_said_are_the_one_wanted_and_the_one_that_leaves_most():
    (one,) = planned(*prices(p100="5.00", p200="4.50", p250="4.00", p300="3.99"), sold=selling("12.00", 240)).makers

    assert [200, 250] == [each.pieces for each in one.told]


def test_a_size_that_no_reply_comes_to_is_no_option():
    # 202 in 3 designs of at least 68 make 204
    read = settled(inputs(*prices(p1="4.00"), brief=wanting(202, designs=3), makers=minimum(68, "design")))

    assert module._option(Pricing(inputs=read), selling(), Size(pieces=202, whys=())) is None
