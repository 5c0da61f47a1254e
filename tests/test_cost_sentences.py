"""What landed costs say when they are compared."""

from dataclasses import replace
from datetime import date, timedelta
from decimal import Decimal

import pytest
from ordered import PAID
from quoted import TODAY, charge, dollars, inputs, offer, quote, timing, uk

from scorecard.brief import Brief
from scorecard.cost_sentences import beside, change_words, compared, goods_each, rate_words, sampling_words
from scorecard.costed import Costed
from scorecard.costing.amounts import OPEN, Span
from scorecard.costing.paying import SampledMaker, Sampling

CLEARED = uk(charges=(charge("Clearance", 18, "clearance", group="border"),))


def costed(*quotes, **more):
    return Costed(inputs=inputs(*quotes, **more))


def by_two_ways(need_by=date(2027, 1, 25), **more):
    """Fernhill at 2 a piece by sea (90, 60 days) or air (700, 9 days), and Oxlip at 4 all paid."""
    brief = Brief(item="mug", quantity=200, destination="GB", currency="GBP", need_by=need_by)
    return costed(
        quote(2, days=20),
        quote(4, maker="Oxlip", row=3, covers=PAID, days=30),
        offers=(offer("sea", 90, days=60, covers="door to door"), offer("air", 700, days=9, covers="door to door")),
        imports=CLEARED,
        brief=brief,
        **more,
    )


def test_a_low_price_that_is_dear_at_the_door_is_named():
    # by air: 400 + 700 + 18, duty 4 % of 1100 = 44, VAT 20 % of 1162 = 232.40: 1394.40, 6.97 a piece
    assert (
        "Fernhill asks 2.00 GBP a piece for the goods, less than a piece costs at the door from anybody, but at your "
        "door a good piece costs 6.97 GBP: number 2 of 2 makers. Oxlip is the cheapest there, at 4.00 GBP"
        == compared(by_two_ways())[0]
    )


def test_a_price_that_holds_no_longer_comes_before_all_that_is_said_of_it():
    late = TODAY - timedelta(days=1)
    said = compared(costed(quote(4, covers=PAID, valid_until=late)), "[{}]".format)

    assert ["The quote of [Fernhill] (until 24 November 2026) has expired: ask whether the price still holds"] == said


def test_of_a_maker_by_two_ways_the_one_without_a_name_is_named_so():
    over = quote(4, covers=PAID, valid_until=TODAY - timedelta(days=1))
    said = compared(costed(over, quote(5, row=3, covers=PAID, way="air", valid_until=TODAY)))

    assert "The quote of Fernhill by a way not named (until 24 November 2026) has expired" in said[0]


def test_a_low_price_that_is_low_at_the_door_needs_no_word():
    assert [] == [words for words in compared(by_two_ways(need_by=date(2027, 6, 1))) if "asks" in words]


def test_each_way_of_a_maker_is_told_with_its_cost_days_and_which_stands_for_it():
    # by sea: 400 + 90 + 18, duty 19.60, VAT 105.52: 633.12, 3.17 a piece; 80 days from today are 13 February
    assert (
        "Fernhill: by sea 3.17 GBP a good piece, 80 days, too late; by air 6.97 GBP a good piece, 29 days, in time. "
        "Air stands for it, as the cheapest that is there by 25 January 2027" == compared(by_two_ways())[-1]
    )


def by_schedule(sea, air):
    """Fernhill by two ways, of which the schedule says so."""
    found = by_two_ways()
    timings = {("Fernhill", "sea"): timing(*sea), ("Fernhill", "air"): timing(*air)}
    return compared(Costed(inputs=replace(found.inputs, timings=timings)))[-1]


def test_a_way_that_the_schedule_knows_is_told_with_its_latest_days():
    assert (
        "Fernhill: by sea 3.17 GBP a good piece, 80 days as quoted, too late: the order was due by 1 November 2026; by "
        "air 6.97 GBP a good piece, 29 days as quoted, in time: ask for a sample by 30 November 2026 and order by 20 "
        "December 2026. Air stands for it, as the cheapest that is there by 25 January 2027"
    ) == by_schedule(("too late", date(2026, 11, 1)), ("in time",))


@pytest.mark.parametrize(
    ("sea", "air", "why"),
    [
        (("in time",), ("in time",), "Sea stands for it, as the cheapest that is there by 25 January 2027"),
        (
            ("in time", date(2026, 12, 20), "usual days"),
            ("in time",),
            "Air stands for it, as the cheapest that is surely there by 25 January 2027",
        ),
        (
            ("too late", date(2026, 11, 1)),
            ("no time for a sample",),
            "Air stands for it, as the quickest, since by none is there time for a sample before 25 January 2027",
        ),
        (
            ("too late", date(2026, 11, 1)),
            ("only if all goes quickly",),
            "Air stands for it, as the quickest, since none is surely there by 25 January 2027",
        ),
    ],
)
def test_why_a_way_stands_for_its_maker_follows_the_schedule(sea, air, why):
    assert by_schedule(sea, air).endswith(why)


def test_the_quickest_stands_where_none_is_in_time():
    assert compared(by_two_ways(need_by=date(2026, 12, 1)))[-1].endswith(
        "Air stands for it, as the quickest, since none is surely there by 1 December 2026"
    )


def test_the_cheapest_stands_where_there_is_no_date():
    assert compared(by_two_ways(need_by=None))[-1].endswith("Sea stands for it, as the cheapest")


def test_the_price_of_a_piece_is_of_those_ordered():
    (cost,) = costed(quote(Span.of(2, 3))).costs

    assert Decimal("2.5") == goods_each(cost)


def test_names_are_put_as_they_must_be_shown():
    said = compared(by_two_ways(), named=str.upper)

    assert (True, False) == (said[0].startswith("FERNHILL asks"), "Fernhill" in " ".join(said))


def test_rates_and_samples_stand_beside():
    rates = dollars()
    dated = replace(rates.rates["USD"], dated=date(2026, 11, 20), source="my bank")
    found = costed(
        quote(4, covers=PAID, sample_price=20, sample_postage=5),
        rates=replace(rates, rates={"USD": dated}),
    )

    assert [
        "Rate: 1 GBP = 1.25 USD (20 November 2026, my bank)",
        "Before you sample: 1 maker sampled costs 25.00 GBP in all (Fernhill 25.00)",
    ] == beside(found, ["Fernhill"])


def test_a_rate_is_told_in_its_own_direction():
    assert "1 GBP = 1.25 USD (no day given)" == rate_words(dollars().rates["USD"], "GBP")


def test_the_rate_at_which_the_cheapest_changes_is_told():
    quotes = (quote("4.00", covers=PAID), quote("5.50", maker="Oxlip", row=3, currency="USD", covers=PAID))
    costed = Costed(inputs=inputs(*quotes, rates=dollars()))
    (change,) = costed.changes

    # 5.50 USD cost 4.00 GBP at 1.375 USD for 1 GBP
    assert "Fernhill is the cheapest at 1.25 USD for 1 GBP; Oxlip from 1.37" in change_words(change, costed)


def test_a_cheapest_that_no_rate_changes_is_told():
    quotes = (quote("1.00", covers=PAID), quote("5.50", maker="Oxlip", row=3, currency="USD", covers=PAID))
    costed = Costed(inputs=inputs(*quotes, rates=dollars()))

    assert change_words(costed.changes[0], costed).endswith("and at any rate from half to twice that")


def test_samples_already_paid_for_are_left_out_of_the_sum():
    sampling = Sampling(makers=(ash(20),), already_paid=("Birch",))

    assert [
        "Before you sample: 1 maker sampled costs 20.00 EUR in all (Ash 20.00)",
        "Paid already, and left out of all sums: the sample of Birch",
    ] == sampling_words(sampling, "EUR")


def ash(low, *missing, maker="Ash"):
    return SampledMaker(maker=maker, low=Decimal(low), high=OPEN if missing else Decimal(low), missing=missing)


def test_a_sample_of_which_nothing_is_known_is_named_and_never_0():
    sampling = Sampling(makers=(ash(20), ash(0, "sample price", "sample postage", maker="Birch")))

    assert [
        "Before you sample: 1 maker sampled costs 20.00 EUR in all (Ash 20.00); not known, and in no sum: the sample "
        "price and sample postage of Birch"
    ] == sampling_words(sampling, "EUR")


def test_a_sample_without_its_postage_is_a_sum_from_below():
    sampling = Sampling(makers=(ash(20), ash(12, "sample postage", maker="Birch")))

    assert [
        "Before you sample: 2 makers sampled cost 32.00 EUR or more in all (Ash 20.00 and Birch at least 12.00); not "
        "known, and in no sum: the sample postage of Birch"
    ] == sampling_words(sampling, "EUR")


def test_where_no_sample_is_priced_there_is_no_sum():
    names = ("sample price", "sample postage")

    assert [
        "Before you sample: what it costs is not known; ask for the sample price and sample postage of Ash and Birch"
    ] == sampling_words(Sampling(makers=(ash(0, *names), ash(0, *names, maker="Birch"))), "EUR")


def ranged_rivals(**more):
    """Fernhill at 3.97 the goods alone and dear at the door; Oxlip at 4 to 6 and Tansy at 4.50 to 5, all paid."""
    return costed(
        quote("3.97", days=20),
        quote(Span.of(4, 6), maker="Oxlip", row=3, covers=PAID, days=30),
        quote(Span.of("4.50", 5), maker="Tansy", row=4, covers=PAID, days=30),
        offers=(offer("air", 700, days=9, covers="door to door"),),
        imports=CLEARED,
        **more,
    )


def test_the_cheapest_at_the_door_is_not_called_so_where_another_may_be_cheaper():
    (words,) = compared(ranged_rivals())

    assert words.endswith(
        "number 3 of 3 makers. Tansy comes out cheapest there, at 4.50 to 5.00 GBP, but Oxlip (4.00 to 6.00) may be "
        "cheaper, until more is known: of Tansy the price; of Oxlip the price"
    )


def test_a_low_price_that_may_be_low_at_the_door_is_not_called_dear():
    # by sea 3.17 at the door, which lies between 2.50 and 4
    ranged = costed(
        quote(2, days=20),
        quote(Span.of("2.50", 4), maker="Oxlip", row=3, covers=PAID, days=30),
        offers=(offer("sea", 90, days=60, covers="door to door"),),
        imports=CLEARED,
    )

    assert [] == compared(ranged)


def test_a_way_that_may_not_be_the_cheapest_says_how_it_was_counted():
    two = costed(
        quote(2, days=20),
        offers=(
            offer("air", 150, days=9, covers="door to door"),
            offer("sea", (90, 200), days=60, covers="door to door"),
        ),
        imports=CLEARED,
    )

    assert compared(two)[-1].endswith("Sea stands for it, as the cheapest, by the middle of what each may cost")


def test_a_way_that_lacks_a_cost_is_not_counted():
    two = costed(
        quote(2, days=20),
        offers=(offer("air", 150, days=9, covers="door to door"), offer("sea", 90, days=60, covers="port to port")),
        imports=CLEARED,
    )

    assert compared(two)[-1].endswith("Air stands for it, as the cheapest, of those with every cost known")


def test_a_rate_says_who_may_be_cheaper_already():
    quotes = (
        quote("4.00", covers=PAID),
        quote("5.50", maker="Oxlip", row=3, currency="USD", covers=PAID),
        quote(Span(Decimal(3), None), maker="Tansy", row=4, covers=PAID),
    )
    costed = Costed(inputs=inputs(*quotes, rates=dollars()))
    words = change_words(costed.changes[0], costed)

    assert words.startswith("Fernhill comes out cheapest at 1.25 USD for 1 GBP; Oxlip from 1.37")
    assert words.endswith("Tansy may be cheaper at some of these rates")


def told_change(*quotes):
    costed = Costed(inputs=inputs(*quotes, rates=dollars()))
    return change_words(costed.changes[0], costed)


# 4.50 USD are 3.60 GBP today, 4.00 at 1.125, 4.50 at 1
OXLIP = quote("4.50", maker="Oxlip", row=3, currency="USD", covers=PAID)


def test_a_rate_from_which_a_range_may_be_cheaper_stands_before_the_one_by_the_middle():
    assert (
        "Oxlip is the cheapest at 1.25 USD for 1 GBP; Fernhill may be cheaper from 1.125 USD for 1 GBP down, and by "
        "the middle of what each may cost comes out cheapest from 1 USD for 1 GBP down"
    ) == told_change(quote(Span.of(4, 5), covers=PAID), OXLIP)


def test_another_than_comes_out_cheapest_may_be_cheaper_before():
    # 3.00 with duty of 4 % and VAT of 20 % are 3.744, or more: 4.50 USD at 1.2019
    lacks = quote("3.00", maker="Tansy", row=4, covers="goods")

    assert told_change(quote("4.50", covers=PAID), OXLIP, lacks).endswith(
        "; Tansy may be cheaper from 1.201 USD for 1 GBP down, and by the middle of what each may cost Fernhill comes "
        "out cheapest from 1 USD for 1 GBP down"
    )


def test_who_may_be_cheaper_is_told_where_nobody_comes_out_so():
    # 9.00 GBP is out of reach; 3.00 with duty and VAT at 1.2019, and 5.00 with them, 6.24, at 0.7212
    lacks = [
        quote("3.00", maker="Tansy", row=4, covers="goods"),
        quote("5.00", maker="Yarrow", row=5, covers="goods"),
    ]

    assert told_change(quote("9.00", covers=PAID), OXLIP, *lacks).endswith(
        "; Tansy may be cheaper from 1.201 USD for 1 GBP down. Yarrow may be cheaper at some of these rates, too"
    )


def test_a_free_sample_costs_nothing_but_its_postage():
    sampling = Sampling(makers=(ash(20), ash(0, "sample postage", maker="Birch")))

    assert [
        "Before you sample: 2 makers sampled cost 20.00 EUR or more in all (Ash 20.00 and Birch nothing but its "
        "postage); not known, and in no sum: the sample postage of Birch"
    ] == sampling_words(sampling, "EUR")
