"""Landed costs in words."""

from dataclasses import replace
from decimal import Decimal

import pytest
from ordered import PAID, case_of
from quoted import MAKER, charge, inputs, landed, offer, published, quote, timing, uk

from scorecard.cost_words import AS_QUOTED, COUNTED, adds_words, days_counted, days_words, pieces_words, told
from scorecard.costed import Costed
from scorecard.costing.amounts import Span
from scorecard.costing.inputs import CostSettings, MakerFacts


def words(case):
    costed = Costed(inputs=case)
    return [told(costed, cost) for cost in costed.costs]


def test_the_composite_example_in_words():
    (one,) = words(published())

    assert ("by air", "2.28", "441.84", "200 pieces", "freight 20 %, border 23 %") == (
        one.way,
        one.per_piece,
        one.total,
        one.pieces,
        one.adds,
    )


def test_the_lines_of_a_sum_are_those_of_the_reading():
    (one,) = words(published())

    assert ("Goods", "the maker", "192.00", Decimal("192.00")) == (
        one.sums[0].lines[0].name,
        one.sums[0].lines[0].where,
        one.sums[0].lines[0].amount,
        one.sums[0].lines[0].low,
    )


def test_a_tax_that_comes_back_is_said_to_be_paid():
    (one,) = words(published(tax_is="recoverable"))

    assert [("Import tax", "0.00", "71.64")] == [
        (each.name, each.amount, each.paid) for each in one.sums[0].lines if each.paid
    ]


def test_a_sum_with_a_gap_is_at_least():
    (one,) = words(inputs(quote(5), offers=(offer("sea", 90),)))

    assert (True, "clearance" in one.missing) == (one.total.startswith("at least "), True)


def test_each_reading_of_a_reply_has_its_heading():
    (one,) = words(inputs(quote(5, covers=None, way="express")))

    assert ["If the price covers goods, 200 pieces", "If the price covers goods and freight, 200 pieces"] == [
        each.heading for each in one.sums[:2]
    ]


def test_what_is_already_spent_stands_apart():
    case = inputs(quote(5, covers=PAID, sample_price=20), settings=CostSettings(sampled=frozenset({"Fernhill"})))
    (one,) = words(case)

    assert (["Sample"], ["Goods"]) == ([each.name for each in one.spent], [each.name for each in one.sums[0].lines])


def test_pieces_beyond_those_wanted_are_said():
    facts = {"Fernhill": MakerFacts(maker="Fernhill", minimum=Span.of(250, 300), minimum_per="order", country="CN")}
    (cost,) = landed(quote(5, covers=PAID), makers=facts)

    assert "250 to 300 pieces, 50 to 100 more than wanted" == pieces_words(cost, 200)


@pytest.mark.parametrize(
    ("days", "said"),
    [(None, "days not known"), (Span.of(1), "1 day"), (Span(Decimal(20), None), "20 days or more")],
)
def test_days_in_words(days, said):
    assert said == days_words(days)


def test_whether_it_is_in_time_is_said_where_it_can_be_told():
    known, unknown = words(case_of({"Ash": 1}, {"Ash": 5, "Birch": quote(5, maker="Birch", covers=PAID)}).costs)

    assert ("30 days, in time", "days not known") == (known.when, unknown.when)


def timed(status, rests_on="", **more):
    """The words of Ash, of which the schedule says so."""
    read = case_of({"Ash": 1}, {"Ash": quote(5, maker="Ash", covers=PAID, way="road", **({"days": 30} | more))}).costs
    return words(replace(read, timings={("Ash", "road"): timing(status, rests_on=rests_on)}))[0]


def test_days_stand_as_quoted_beside_the_verdict_and_the_latest_day_to_begin():
    one = timed("in time")

    assert ("in time", "30 November 2026") == (one.time, one.begin_by)
    assert "30 days as quoted, in time: ask for a sample by 30 November 2026 and order by 20 December 2026" == one.when


@pytest.mark.parametrize(
    ("status", "begin_by"),
    [
        ("in time", "30 November 2026"),
        ("no time for a sample", "20 December 2026"),
        ("only if all goes quickly", "(30 November 2026)"),
        ("too late", "(30 November 2026)"),
    ],
)
def test_begin_by_names_what_can_still_be_done_or_in_brackets_the_first_day_now_over(status, begin_by):
    assert begin_by == timed(status).begin_by


def test_what_misses_the_day_says_when_it_was_due():
    assert "30 days as quoted, too late: the order was due by 20 December 2026" == timed("too late").when


def test_days_that_nobody_has_said_are_not_called_quoted():
    one = timed("in time", "usual days", days=None)

    assert ("not known", True) == (one.quoted, one.when.startswith("days not known, in time, by usual days: ask for"))
    assert "not known, in time, by usual days" == one.stands  # in a column that is headed Days quoted


def test_what_the_days_count_is_said_once_anybody_has_named_any():
    silent = Costed(inputs=inputs(quote(5, covers=PAID)))
    plain = Costed(inputs=inputs(quote(5, covers=PAID, days=30)))
    both = Costed(inputs=replace(plain.inputs, timings={(MAKER, None): timing()}))

    assert [[], [AS_QUOTED], [AS_QUOTED, COUNTED]] == [days_counted(one) for one in (silent, plain, both)]


@pytest.mark.parametrize(
    ("freight", "duty", "said"),
    [
        (90, 0, "freight 8 %, nothing at the border"),
        (0, 4, "nothing for freight, border 4 %"),
        (90, "0.1", "freight 8 %, border under 1 %"),
    ],
)
def test_no_part_of_the_total_is_said_to_be_nought_per_cent(freight, duty, said):
    cleared = uk(duty=duty, tax="0", charges=(charge("Clearance", 0, "clearance", group="border"),))
    (cost,) = landed(quote(5), offers=(offer("sea", freight, covers="door to door"),), imports=cleared)

    assert said == adds_words(cost)


@pytest.mark.parametrize("tax", ["20", None])
def test_sales_tax_is_nothing_at_the_border_even_where_it_has_no_rate(tax):
    # 1000 for the goods, 90 for freight and 218 of tax: 90 of 1308; without a rate of 1090
    near = {MAKER: MakerFacts(maker=MAKER, country="GB")}
    (cost,) = landed(quote(5), offers=(offer("road", 90),), makers=near, imports=uk(tax=tax, price_has_tax=False))

    assert f"freight {7 if tax else 8} %, nothing at the border" == adds_words(cost)


def test_sales_tax_goes_to_the_maker():
    near = {MAKER: MakerFacts(maker=MAKER, country="GB")}
    (one,) = words(inputs(quote(5), offers=(offer("road", 90),), makers=near))

    assert [("Sales tax", "the maker")] == [(each.name, each.where) for each in one.sums[0].lines if "tax" in each.name]


def test_freight_and_border_inside_the_price_are_said_to_be():
    (cost,) = landed(quote(5, covers=PAID))

    assert "freight and border in the price" == adds_words(cost)


def test_freight_without_a_figure_is_not_said_to_add_nothing():
    (cost,) = landed(quote(5), imports=uk())

    assert "freight not known, border not known" == adds_words(cost)


def test_the_chosen_way_is_marked():
    case = case_of({"Ash": 1}, {"Ash": 5}).costs

    assert [True] == [one.is_chosen for one in words(case)]


def test_a_deposit_that_is_not_known_is_no_amount():
    case = inputs(quote(5, covers="to my door, duty and tax paid"))
    named = inputs(quote(5, covers="to my door, duty and tax paid", deposit_percent=30))

    assert words(case)[0].paid_how.startswith("how much of it is paid with the order is not known. ")
    assert words(named)[0].paid_how.startswith("300.00 of it with the order. ")


def test_a_range_that_lacks_a_cost_has_no_upper_end():
    (one,) = words(inputs(quote((5, 6)), offers=(offer("sea", 90),)))

    # 1000 + 90, duty 4 % = 43.60, VAT 20 % of 1133.60 = 226.72
    assert ("at least 1360.32", "at least 6.80") == (one.total, one.per_piece)
