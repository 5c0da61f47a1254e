"""Landed cost as a whole: the composite example, what is covered, what is missing, and the laws of the sum.

Composite example, UK basis [derived; invented figures, worked out on paper line by line, half up to the penny]: 200
pieces at 1.20 USD, set-up 60, collection and export 45, air 58.90, insurance 5, 1 GBP = 1.25 USD, duty 4 %, VAT 20 %,
clearance 18 GBP, bank 12 GBP, 3 % faulty.
"""

from dataclasses import replace
from datetime import timedelta
from decimal import Decimal
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st
from quoted import MAKER, ORIGIN, TODAY, charge, inputs, landed, lines, offer, published, quote, uk

from scorecard.brief import Brief
from scorecard.costing.amounts import OPEN, Span, minor_unit
from scorecard.costing.currencies import Rate, Rates
from scorecard.costing.importing import DUTY_BASES, TAX_BASES
from scorecard.costing.inputs import CostSettings, MakerFacts
from scorecard.costing.landed import landed_costs

ALL_PAID = "to my door, duty and tax paid"


def test_the_composite_example_line_by_line():
    (cost,) = landed_costs(published())
    (reading,) = cost.readings

    assert [
        ("goods", Decimal("192.00")),
        ("set-up", Decimal("48.00")),
        ("charge:Collection and export", Decimal("36.00")),
        ("freight", Decimal("47.12")),
        ("charge:Insurance", Decimal("4.00")),
        ("charge:Clearance", Decimal("18.00")),
        ("duty", Decimal("13.08")),
        ("import tax", Decimal("71.64")),
        ("charge:Bank fee", Decimal("12.00")),
    ] == [(line.key, line.low) for line in reading.lines if line.low]
    assert () == reading.gaps


def test_the_composite_example_costs_441_84_and_2_2775_a_good_piece():
    (cost,) = landed_costs(published())

    assert (Decimal("441.84"), Decimal("441.84")) == (cost.low, cost.high)
    assert (Decimal("2.2775"), Decimal("2.2775")) == cost.per_good_piece


def test_a_cost_says_what_it_was_reckoned_from():
    read = published()
    (cost,) = landed_costs(read)

    assert read == cost.inputs


def test_with_the_tax_recoverable_it_costs_370_20_and_1_9082_a_good_piece():
    (cost,) = landed_costs(published(tax_is="recoverable"))

    assert (Decimal("370.20"), Decimal("1.9082")) == (cost.low, cost.per_good_piece[0])


def test_a_recoverable_tax_is_cash_and_not_cost():
    (cost,) = landed_costs(published(tax_is="recoverable"))
    (tax,) = [line for line in cost.readings[0].lines if line.key == "import tax"]

    assert (Decimal(0), Decimal("71.64")) == (tax.low, tax.paid_low)


def test_whether_a_tax_comes_back_is_costed_both_ways_where_it_is_not_said():
    (cost,) = landed_costs(published(tax_is=None))

    assert (Decimal("370.20"), Decimal("441.84")) == (cost.low, cost.high)


# replies as they come


def test_one_typed_line_is_costed_at_once():
    (cost,) = landed(quote(480, price_is_for="all", pieces=200, covers=ALL_PAID, way="air"))

    assert ("air", Decimal("480.00"), Decimal("2.40"), True) == (
        cost.way,
        cost.low,
        cost.per_good_piece[0],
        cost.is_complete,
    )


def test_goods_alone_leave_every_part_of_the_journey_as_a_gap():
    (cost,) = landed(quote("4.20"), imports=None)

    assert ["freight", *ORIGIN, "arrival charges", "clearance", "delivery", "duty", "import tax"] == [
        gap.name for gap in cost.gaps
    ]


def test_a_gap_says_that_the_total_is_too_low():
    (cost,) = landed(quote("4.20", term="DAP", term_place="my door", covers=None))

    assert ["clearance: no figure; the total is too low by that"] == [gap.words for gap in cost.gaps]


def test_an_offer_from_door_to_door_leaves_the_clearance_open():
    (cost,) = landed(quote("4.20"), offers=(offer("express", 150),))

    assert ["clearance"] == [gap.name for gap in cost.gaps]


def test_a_charge_closes_the_gap_of_what_it_pays_for():
    rules = uk(charges=(charge("Clearance", 18, "clearance", group="border"),))
    (cost,) = landed(quote("4.20"), offers=(offer("express", 150),), imports=rules)

    assert () == cost.gaps


def test_a_charge_for_what_the_price_covers_is_left_out():
    rules = uk(charges=(charge("Clearance", 18, "clearance", group="border"),))
    (cost,) = landed(quote("4.20", term="DDP", term_place="my door", covers=None), imports=rules)

    assert {"goods": Decimal("840.00")} == lines(cost)


def test_what_is_not_known_of_a_price_is_costed_every_way():
    rules = uk(charges=(charge("Clearance", 18, "clearance", group="border"),))
    (cost,) = landed(quote("4.20", covers=None), offers=(offer("express", 150),), imports=rules)

    # all paid: 840.00; goods only: 840 + 150 freight, duty 39.60, clearance 18, VAT on 1,047.60 = 209.52: 1,257.12
    assert (Decimal("840.00"), Decimal("1257.12")) == (cost.low, cost.high)
    assert (Decimal("4.20"), Decimal("6.2856")) == cost.per_good_piece  # of 200
    assert 3 == len(cost.readings)


def test_freight_by_another_way_than_the_price_s_own_is_read_as_not_in_it():
    sea, air = landed(quote("4.20", covers=None, way="air"), offers=(offer("sea", 90), offer("air", 150)))

    assert (1, 3) == (len(sea.readings), len(air.readings))


def test_a_price_with_freight_is_costed_by_its_own_way_alone():
    costs = landed(quote(5, covers="goods and freight", way="air"), offers=(offer("sea", 90),))

    assert ["air"] == [cost.way for cost in costs]


def test_each_way_that_is_offered_is_a_sum_of_its_own():
    costs = landed(quote(5), offers=(offer("air", 150), offer("sea", 90), offer("air", 170, row=4)))

    assert [("sea", Decimal("90.00")), ("air", Decimal("150.00"))] == [
        (cost.way, lines(cost)["freight"]) for cost in costs
    ]


def test_of_two_offers_the_one_with_the_lower_middle_is_taken():
    (cost,) = landed(quote(5), offers=(offer("sea", (50, 90)), offer("sea", (10, 100), row=3)))

    assert 10 == lines(cost)["freight"]


def test_a_cheaper_offer_for_other_pieces_does_not_count():
    (cost,) = landed(quote(5), offers=(offer("sea", 40, from_pieces=50, to_pieces=100), offer("sea", 90, row=3)))

    assert Decimal("90.00") == lines(cost)["freight"]


@pytest.mark.parametrize(("way", "left"), [("sea", ["arrival charges", "delivery"]), ("express", [])])
def test_freight_in_the_price_goes_as_far_as_freight_by_its_way(way, left):
    (cost,) = landed(quote(5, covers="goods and freight", way=way))

    assert left == [gap.name for gap in cost.gaps if gap.name in ("arrival charges", "delivery")]


def test_an_offer_for_other_pieces_is_a_gap_that_names_them():
    (cost,) = landed(quote(5), offers=(offer("sea", 90, from_pieces=50, to_pieces=100),))

    assert "freight: offered for 50 to 100 pieces, not for 200; the total is too low by that" == cost.gaps[0].words


def test_makers_without_a_quote_have_no_sum():
    assert () == landed(makers={"Oxlip": MakerFacts(maker="Oxlip")})


def test_makers_stand_in_the_order_of_their_sheet():
    facts = {name: MakerFacts(maker=name, country="CN") for name in ("Oxlip", MAKER)}

    assert ["Oxlip", MAKER] == [cost.maker for cost in landed(quote(5), quote(4, maker="Oxlip", row=3), makers=facts)]


# quantity


def test_a_minimum_makes_the_order_larger_and_the_wanted_piece_dearer():
    # 120 wanted, minimum 300 at 2.10: 5.25 for each wanted piece (a published example's figures, recomputed)
    small = Brief(item="mug", quantity=120, destination="GB", currency="GBP")
    facts = {MAKER: MakerFacts(maker=MAKER, minimum=Span.of(300), minimum_per="order", country="CN")}
    (cost,) = landed(quote("2.10", covers=ALL_PAID), brief=small, makers=facts)

    assert (Decimal("630.00"), Decimal("5.25"), (300, 300)) == (cost.low, cost.per_good_piece[0], cost.quantities)


def test_a_minimum_that_may_be_per_design_is_costed_both_ways():
    four = Brief(item="mug", quantity=200, designs=4, destination="GB", currency="GBP")
    facts = {MAKER: MakerFacts(maker=MAKER, minimum=Span.of(100), country="CN")}
    (cost,) = landed(quote(2, covers=ALL_PAID), brief=four, makers=facts)

    assert ((200, 400), Decimal(400), Decimal(800)) == (cost.quantities, cost.low, cost.high)


def either_200_or_400(*rows, **more):
    """Prices to the door for four designs, with a minimum of 100 that may be per order or per design."""
    four = Brief(item="mug", quantity=200, designs=4, destination="GB", currency="GBP")
    facts = {MAKER: MakerFacts(maker=MAKER, minimum=Span.of(100), country="CN")}
    (cost,) = landed(*(replace(row, covers=ALL_PAID) for row in rows), brief=four, makers=facts, **more)
    return cost


def test_a_note_on_either_quantity_is_said_once():
    cost = either_200_or_400(quote(2, setup=0))
    more = "400 pieces, 200 more than wanted: the minimum order is 100 per order or per design"

    assert [1, 1] == [sum(words in note for note in cost.notes) for words in (more, "no charge for a sample")]


def test_what_was_spent_on_a_sample_is_what_the_price_for_the_fewest_pieces_says():
    rows = (quote(3, pieces=200, sample_price=30), quote(2, row=3, pieces=400, sample_price=35))
    cost = either_200_or_400(*rows, settings=CostSettings(sampled=frozenset({MAKER})))

    assert [30] == [line.low for line in cost.spent]


@pytest.mark.parametrize(
    ("until_of_200", "until_of_400", "held_until"),
    [(-1, 0, -1), (0, -1, -1), (0, 0, None), (None, -1, -1), (None, None, None), (-2, -5, -5)],
)
def test_a_price_is_over_the_day_after_its_last_where_that_of_either_quantity_is(
    until_of_200, until_of_400, held_until
):
    first, then = (None if days is None else TODAY + timedelta(days) for days in (until_of_200, until_of_400))
    unsaid = frozenset({"valid_until"})  # so that the one is not taken from the other
    cost = either_200_or_400(
        quote(3, pieces=200, valid_until=first, unknown=unsaid),
        quote(2, row=3, pieces=400, valid_until=then, unknown=unsaid),
    )

    assert (None if held_until is None else TODAY + timedelta(held_until)) == cost.held_until
    assert (held_until is not None) is cost.is_expired


def test_an_open_price_has_an_open_total():
    (cost,) = landed(quote(Span(Decimal(2), None), covers=ALL_PAID))

    assert (Decimal(400), OPEN, True) == (cost.low, cost.high, cost.is_open)


def test_a_range_with_two_ends_is_not_open():
    (cost,) = landed(quote((2, 3), covers=ALL_PAID))

    assert cost.is_open is False


def test_an_open_price_with_duty_and_tax_on_it_has_an_open_total():
    (cost,) = landed(quote(Span(Decimal(2), None)), offers=(offer("express", 150),))

    assert cost.high == OPEN


# days


def test_days_are_production_and_journey():
    (cost,) = landed(quote(5, days=(20, 25)), offers=(offer("sea", 90, days=(30, 35)),))

    assert Span.of(50, 60) == cost.days


def test_a_price_with_freight_names_the_days_to_the_door_itself():
    (cost,) = landed(quote(5, days=25, covers="goods and freight", way="sea"), offers=(offer("sea", 90, days=30),))

    assert Span.of(25) == cost.days


def test_days_are_unknown_where_either_part_is():
    costs = landed(
        quote(5, days=20), quote(5, maker="Oxlip"), offers=(offer("sea", 90), offer("sea", 90, maker="Oxlip", days=30))
    )

    assert [None, None] == [cost.days for cost in costs]


@pytest.mark.parametrize(
    ("days", "all_days"), [((10, 15), Span.of(10, 40)), (Span(Decimal(10), None), Span(Decimal(10), None))]
)
def test_days_reach_from_the_least_of_any_quantity_to_the_most(days, all_days):
    rows = (quote(3, pieces=200, days=days), quote(2, row=3, pieces=400, days=(35, 40)))

    assert all_days == either_200_or_400(*rows).days


# laws

CENTS = st.decimals(0, 2000, places=2)
POSITIVE = st.decimals("0.01", 500, places=2)
PERCENT = st.decimals(0, 60, places=2)
FIGURES = st.fixed_dictionaries(
    {
        "price": POSITIVE,
        "setup": CENTS,
        "sample": CENTS,
        "freight": POSITIVE,
        "insurance": CENTS,
        "clearance": CENTS,
        "bank": PERCENT,
        "fee": PERCENT,
        "duty": PERCENT,
        "tax": PERCENT,
        "charge": PERCENT,
    }
)


def case(f, *, home="GBP", rate="1.25", wide="0", duty_base=DUTY_BASES[2], tax_base=TAX_BASES[3]):
    """Return a case with every kind of line, all money but the clearance in USD, each figure up to ``wide`` higher."""
    wide = Decimal(wide)
    rates = Rates(home=home, rates={"USD": Rate(currency="USD", figure=Decimal(rate))}, charge_percent=f["charge"])
    rules = uk(f["duty"], f["tax"], duty_base=duty_base, tax_base=tax_base, currency=home)
    clearance = charge("Clearance", (f["clearance"], f["clearance"] + wide), "clearance", group="border", currency=home)
    fee = charge("Advance fee", percent=f["fee"], of="duty and tax", group="border", currency=home)
    bank = charge("Bank", percent=f["bank"], of="paid to the maker", group="payment", currency=home)
    insurance = charge("Insurance", f["insurance"], "insurance", group="freight", currency="USD")
    return inputs(
        quote(
            (f["price"], f["price"] + wide),
            currency="USD",
            setup=(f["setup"], f["setup"] + wide),
            sample_price=f["sample"],
            sample_postage=f["sample"],
            credited_from=200,
        ),
        offers=(offer("express", (f["freight"], f["freight"] + wide), currency="USD"),),
        shipping_charges=(insurance,),
        imports=replace(rules, charges=(clearance, fee)),
        settings=CostSettings(charges=(bank,)),
        rates=rates,
        brief=Brief(item="mug", quantity=200, destination="GB", currency=home),
    )


@given(FIGURES, st.sampled_from(["GBP", "JPY", "KWD", "EUR"]), st.sampled_from(["0", "3.17"]))
def test_the_lines_add_up_to_the_total_to_the_last_minor_unit(figures, home, wide):
    (cost,) = landed_costs(case(figures, home=home, wide=wide))
    (reading,) = cost.readings

    assert (cost.low, cost.high) == (sum(line.low for line in reading.lines), sum(line.high for line in reading.lines))
    assert all(line.low % minor_unit(home) == line.high % minor_unit(home) == 0 for line in reading.lines)


@given(
    FIGURES,
    st.sampled_from(
        ["price", "setup", "sample", "freight", "insurance", "clearance", "bank", "fee", "duty", "tax", "charge"]
    ),
    st.decimals("0.01", 100, places=2),
    st.sampled_from(DUTY_BASES),
    st.sampled_from(TAX_BASES),
)
def test_a_landed_cost_never_falls_when_an_input_cost_rises(figures, which, rise, duty_base, tax_base):
    bases = {"duty_base": duty_base, "tax_base": tax_base}
    before, after = (
        landed_costs(case(each, **bases))[0] for each in (figures, figures | {which: figures[which] + rise})
    )

    assert before.low <= after.low


@given(FIGURES, st.sampled_from([2, 4, 10, 1000]))
def test_other_units_of_the_same_money_change_nothing_but_a_minor_unit_a_line(figures, factor):
    # every amount in USD times the factor, and the rate divided by it
    scaled = figures | {name: figures[name] * factor for name in ("price", "setup", "sample", "freight", "insurance")}
    (before,), (after,) = (
        landed_costs(case(each, rate=str(rate)))
        for each, rate in ((figures, "1.25"), (scaled, Decimal("1.25") / factor))
    )

    for old, new in zip(before.readings[0].lines, after.readings[0].lines, strict=True):
        assert abs(old.low - new.low) <= Decimal("0.01")


@given(FIGURES, st.sampled_from([2, 3, 7]))
def test_scaling_every_rate_scales_the_sum_within_a_minor_unit_a_line(figures, factor):
    # no flat fee in the brief's currency: then the total is in proportion to the rate
    plain = figures | {"clearance": Decimal(0)}
    (one,), (more,) = (landed_costs(case(plain, rate=str(Decimal("1.25") * times))) for times in (1, factor))
    spread = len(one.readings[0].lines) * (factor + 1) * Decimal("0.02")

    assert abs(one.low * factor - more.low) <= spread


@given(FIGURES, st.sampled_from(["GBP", "JPY", "KWD"]))
def test_the_whole_sum_is_that_of_fractions(figures, home):
    (cost,) = landed_costs(case(figures, home=home))

    assert by_fractions(figures, Fraction(str(minor_unit(home)))) == Fraction(cost.low)


def by_fractions(f, unit):
    """Return the total of ``case`` worked out a second time, in fractions: halves up, duty down, to the unit."""

    def up(amount):
        return (amount / unit + Fraction(1, 2)).__floor__() * unit

    x = {name: Fraction(value) for name, value in f.items()}
    rate = Fraction(5, 4)
    goods, setup = up(200 * x["price"] * rate), up(x["setup"] * rate)
    sample, post = up(x["sample"] * rate), up(x["sample"] * rate)
    freight, insurance = up(x["freight"] * rate), up(x["insurance"] * rate)
    clearance = up(x["clearance"])
    bank = up((goods + setup + post) * x["bank"] / 100)  # the sample is paid and credited
    value = goods + setup + freight + insurance
    duty = (value * x["duty"] / 100 / unit).__floor__() * unit
    tax = up((value + duty + clearance) * x["tax"] / 100)
    fee = up((duty + tax) * x["fee"] / 100)
    exchange = up((goods + setup + sample + post - sample + freight + insurance) * x["charge"] / 100)
    return goods + setup + post + freight + insurance + clearance + bank + duty + tax + fee + exchange


@pytest.mark.parametrize("wide", ["0.01", "40"])
def test_a_range_costs_at_its_ends_what_the_ends_cost(wide):
    low = dict.fromkeys(
        ("price", "setup", "sample", "freight", "insurance", "clearance", "bank", "fee", "duty", "tax", "charge"),
        Decimal(7),
    )
    high = low | {name: low[name] + Decimal(wide) for name in ("price", "setup", "freight", "clearance")}
    (cost,) = landed_costs(case(low, wide=wide))

    assert (landed_costs(case(low))[0].low, landed_costs(case(high))[0].low) == (cost.low, cost.high)


@given(FIGURES, st.sampled_from(["0", "3.17"]), st.sampled_from([None, "goods", "goods and freight"]))
def test_the_least_is_never_above_the_most(figures, wide, covers):
    base = case(figures, wide=wide)
    costs = landed_costs(replace(base, quotes=(replace(base.quotes[0], covers=covers, way="express"),)))

    assert all(cost.low <= cost.high and cost.per_good_piece[0] <= cost.per_good_piece[1] for cost in costs)


@given(FIGURES, st.decimals("0.01", 100, places=2), st.sampled_from(["price", "freight", "duty", "tax", "clearance"]))
def test_whatever_the_price_covers_no_end_falls_when_an_input_cost_rises(figures, rise, which):
    def cost(f):
        base = case(f, wide="2")
        return landed_costs(replace(base, quotes=(replace(base.quotes[0], covers=None, way="express"),)))[0]

    before, after = cost(figures), cost(figures | {which: figures[which] + rise})

    assert before.low <= after.low
    assert before.high <= after.high


# two offers by one way

BY_TERMS = {"covers": None, "term": "FOB", "term_place": "Ningbo", "setup": 0, "sample_price": 0}
TO_THE_DOOR = charge("Arrival and delivery", 200, "arrival charges", "delivery", group="freight")


def two_offers(port, door, charges=(TO_THE_DOOR,)):
    """100 pieces at 3.00 FOB to the UK by sea: one offer to the port, one to the door; duty 4 %, VAT 20 %."""
    (cost,) = landed(
        quote(3, pieces=100, **BY_TERMS),
        brief=Brief(item="mug", quantity=100, destination="GB", currency="GBP"),
        offers=(offer("sea", port, covers="port to port"), offer("sea", door, covers="door to door", row=3)),
        shipping_charges=charges,
        imports=uk(charges=(charge("Clearance", 18, "clearance", group="border"),)),
    )
    return cost


def test_of_two_offers_the_cheaper_total_wins_not_the_lower_freight():
    # on paper: 300 + 160 + 18 + duty 4 % of 460 + VAT 20 % of 496.40 = 595.68; by the other offer 760.80
    cost = two_offers(100, 160)

    assert (Decimal("595.68"), Decimal("160.00")) == (cost.low, lines(cost)["freight"])


def test_of_two_offers_one_that_leaves_no_cost_open_wins():
    cost = two_offers(100, 160, charges=())

    assert ((), Decimal("595.68")) == (cost.gaps, cost.low)


@given(st.integers(1, 500), st.integers(1, 500), st.integers(0, 300), st.integers(0, 200))
def test_a_total_never_falls_when_one_of_two_offers_or_the_charge_rises(port, door, arrival, more):
    def total(port, door, arrival):
        return two_offers(port, door, (replace(TO_THE_DOOR, amount=Span.of(arrival)),)).low

    before = total(port, door, arrival)

    assert before <= total(port + more, door, arrival)
    assert before <= total(port, door + more, arrival)
    assert before <= total(port, door, arrival + more)
