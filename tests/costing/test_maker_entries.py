"""What the maker is paid: goods, set-up by its unit, sample and its credit."""

from decimal import Decimal

import pytest
from quoted import MAKER, dollars, inputs, landed, lines, quote

from scorecard.brief import Brief
from scorecard.costing.amounts import OPEN, Span
from scorecard.costing.inputs import CostSettings, MakerFacts
from scorecard.costing.landed import landed_costs

ALL_PAID = {"covers": "to my door, duty and tax paid"}
FOUR = Brief(item="mug", quantity=200, designs=4, destination="GB", currency="GBP")
COLOURS = Brief(item="mug", quantity=200, designs=4, colours=3, destination="GB", currency="GBP")
REORDER = CostSettings(reorder=True)
SAMPLED = CostSettings(sampled=frozenset({MAKER}))


def setup(per, brief=FOUR, settings=None, **more):
    (cost,) = landed(quote(5, setup=60, setup_per=per, **ALL_PAID, **more), brief=brief, settings=settings)
    return next((line.low, line.high) for line in cost.readings[0].lines if line.key == "set-up")


@pytest.mark.parametrize(
    ("per", "brief", "cost"),
    [
        ("order", FOUR, (60, 60)),
        ("design", FOUR, (240, 240)),
        ("colour", COLOURS, (180, 180)),
        ("colour", FOUR, (60, 60)),  # the brief names no colours, and their number is a gap
        (None, FOUR, (60, 240)),  # it is not said per what
    ],
)
def test_set_up_is_charged_by_its_unit(per, brief, cost):
    assert cost == setup(per, brief)


@pytest.mark.parametrize(
    ("per", "count", "words"),
    [("design", 4, " (per design)"), (None, 1, " (it is not said per what)"), ("order", 1, " (per order)")],
)
def test_the_working_of_a_set_up_says_per_what_it_is(per, count, words):
    (cost,) = landed(quote(5, setup=60, setup_per=per, **ALL_PAID), brief=FOUR)

    assert f"60.00 GBP × {count}{words}" in cost.readings[0].lines[1].working.removeprefix("least: ").split("; most: ")


@pytest.mark.parametrize(("again", "cost"), [(True, (60, 60)), (False, (0, 0)), (None, (0, 60))])
def test_a_reorder_pays_set_up_only_where_it_is_charged_again(again, cost):
    assert cost == setup("order", settings=REORDER, setup_again=again)


def test_a_first_order_pays_set_up_whatever_holds_for_the_next():
    assert (60, 60) == setup("order", setup_again=False)


def test_a_price_range_reaches_from_the_one_end_to_the_other():
    (cost,) = landed(quote(("1.20", "1.50"), **ALL_PAID))

    assert (Decimal(240), Decimal(300)) == (cost.low, cost.high)
    assert "least: 200 × 1.20 GBP; most: 200 × 1.50 GBP" == cost.readings[0].lines[0].working


def test_sample_and_postage_are_part_of_the_cost_until_they_are_paid():
    (cost,) = landed(quote(5, sample_price=30, sample_postage=15, **ALL_PAID))

    assert {"goods": 1000, "sample": 30, "sample postage": 15} == lines(cost)


@pytest.mark.parametrize(("credited_from", "total"), [(200, 1015), (201, 1045), (None, 1045)])
def test_a_sample_is_credited_from_its_own_number_of_pieces(credited_from, total):
    (cost,) = landed(quote(5, sample_price=30, sample_postage=15, credited_from=credited_from, **ALL_PAID))

    assert total == cost.low


def test_what_is_already_paid_is_shown_and_left_out():
    (cost,) = landed(quote(5, sample_price=30, sample_postage=15, **ALL_PAID), settings=SAMPLED)

    assert (Decimal(1000), [("sample", 30), ("sample postage", 15)]) == (
        cost.low,
        [(line.key, line.low) for line in cost.spent],
    )


def test_a_sample_already_paid_is_credited_all_the_same():
    (cost,) = landed(quote(5, sample_price=30, credited_from=100, **ALL_PAID), settings=SAMPLED)

    assert Decimal(970) == cost.low


def test_a_credit_of_an_uncertain_sample_lowers_the_least_by_the_most():
    (cost,) = landed(quote(5, sample_price=(30, 40), credited_from=100, **ALL_PAID), settings=SAMPLED)

    assert (Decimal(960), Decimal(970)) == (cost.low, cost.high)


def test_an_open_sample_price_that_is_credited_cancels_out():
    (cost,) = landed(quote(5, sample_price=Span(Decimal(30), None), credited_from=100, **ALL_PAID))

    assert (Decimal(1000), Decimal(1000)) == (cost.low, cost.high)


@pytest.mark.parametrize(
    ("price", "credited_from", "total"),
    [
        (Span.of(30, 40), 100, (1000, 1000)),  # each end comes off the bill as it was paid
        (Span.of(30, 40), None, (1030, 1040)),
        (Span(Decimal(30), None), None, (1030, OPEN)),
    ],
)
def test_an_uncertain_sample_price_reaches_the_total_only_where_it_is_not_credited(price, credited_from, total):
    (cost,) = landed(quote(5, sample_price=price, credited_from=credited_from, **ALL_PAID))

    assert total == (cost.low, cost.high)


def test_what_is_credited_is_not_paid():
    (cost,) = landed(quote(5, sample_price=30, credited_from=100, **ALL_PAID))
    (credit,) = (line for line in cost.readings[0].lines if line.key == "sample credited")

    assert [-30] * 4 == [credit.low, credit.high, credit.paid_low, credit.paid_high]


def test_set_up_named_in_another_reply_counts_here_too():
    sea = quote(5, setup=60, setup_per="order", covers="goods and freight", way="sea")
    air = quote(6, row=3, covers="goods and freight", way="air")
    costs = landed_costs(inputs(sea, air, imports=None))

    assert {"sea": 60, "air": 60} == {cost.way: lines(cost)["set-up"] for cost in costs}


def test_the_working_names_the_exchange():
    (cost,) = landed(quote(5, currency="USD", setup=60, setup_per="order", **ALL_PAID), rates=dollars())

    assert [
        "200 × 5.00 USD = 1000.00 USD, at 1.25 USD for 1 GBP",
        "60.00 USD × 1 (per order) = 60.00 USD, at 1.25 USD for 1 GBP",
    ] == [line.working for line in cost.readings[0].lines]


def test_of_a_set_up_that_costs_nothing_it_does_not_matter_per_what_it_is():
    (cost,) = landed(
        quote(5, setup=0), brief=Brief(item="mug", quantity=200, designs=4, destination="GB", currency="GBP")
    )

    assert ["0.00 GBP × 1"] == [line.working for line in cost.readings[0].lines if line.key == "set-up"]


# what is not known


def gaps_of(*rows, **more):
    (cost, *_) = landed(*rows, **more)
    return [gap.words for gap in cost.gaps]


BARE = {"covers": "to my door, duty and tax paid", "sample_price": 0, "sample_postage": 0}


def test_set_up_per_colour_of_an_unknown_number_of_colours_is_a_gap():
    words = "set-up: how many colours? Add colours = … under [brief] of the criteria file; until then one is counted"

    assert [words] == gaps_of(quote(3, setup=60, setup_per="colour", **BARE))


@pytest.mark.parametrize("per", ["design", "order", None])
def test_set_up_per_what_the_brief_counts_is_no_gap(per):
    assert [] == gaps_of(quote(3, setup=60, setup_per=per, **BARE), brief=FOUR)


@pytest.mark.parametrize(("setup", "settings"), [(0, None), (60, CostSettings(reorder=True))])
def test_set_up_that_is_not_charged_is_no_gap_however_many_colours(setup, settings):
    assert [] == gaps_of(quote(3, setup=setup, setup_per="colour", setup_again=False, **BARE), settings=settings)


def test_a_minimum_per_size_of_an_unknown_number_of_sizes_is_a_gap():
    facts = {"Fernhill": MakerFacts(maker="Fernhill", minimum=Span.of(60), minimum_per="size", country="CN")}
    words = "minimum order of 60 per size: how many sizes? Add sizes = … under [brief] of the criteria file"

    assert [f"{words}; until then one is counted"] == gaps_of(quote(3, setup=0, **BARE), makers=facts)


@pytest.mark.parametrize(
    ("field", "name"), [("setup", "set-up"), ("sample_price", "sample"), ("sample_postage", "sample postage")]
)
def test_a_charge_that_is_said_to_be_unknown_is_a_gap(field, name):
    row = quote(3, unknown=frozenset({field}), **{"setup": 0, **BARE, field: None})

    assert [f"{name}: no figure; the total is too low by that"] == gaps_of(row)


def test_an_unknown_charge_is_not_taken_from_the_makers_other_reply():
    own = quote(3, unknown=frozenset({"setup"}), way="sea", **BARE)
    other = quote(3, setup=60, way="air", row=3, **BARE)

    assert ["set-up: no figure; the total is too low by that"] == gaps_of(own, other)


@pytest.mark.parametrize(("again", "gaps"), [(False, []), (None, ["set-up: no figure; the total is too low by that"])])
def test_set_up_that_is_unknown_is_a_gap_of_a_reorder_unless_it_is_not_charged_again(again, gaps):
    row = quote(3, unknown=frozenset({"setup"}), setup_again=again, **BARE)

    assert gaps == gaps_of(row, settings=CostSettings(reorder=True))


def test_what_is_unknown_of_a_sample_that_was_bought_is_no_gap():
    row = quote(3, setup=0, unknown=frozenset({"sample_postage"}), **(BARE | {"sample_postage": None}))

    assert [] == gaps_of(row, settings=CostSettings(sampled=frozenset({"Fernhill"})))


def test_only_of_a_charge_left_blank_it_is_said_that_the_reply_names_none():
    (blank,) = landed(quote(3, **BARE))
    (unknown,) = landed(quote(3, unknown=frozenset({"setup"}), **BARE))
    words = "The reply names no charge for set-up: ask; the total holds only if there is none"

    assert [True, False] == [words in cost.notes for cost in (blank, unknown)]


def of_samples(sample):
    return {MAKER: MakerFacts(maker=MAKER, country="CN", sample=sample)}


BLANK = {"covers": "to my door, duty and tax paid", "setup": 0}


def gap_names(row, sample="paid", **more):
    (cost,) = landed(row, makers=of_samples(sample), **more)
    return [gap.name for gap in cost.gaps]


@pytest.mark.parametrize(("sample", "gaps"), [("paid", ["sample"]), ("free", []), (None, [])])
def test_a_sample_that_the_sheet_makers_calls_paid_is_a_gap_until_a_reply_says_how_much(sample, gaps):
    assert gaps == gap_names(quote(3, **BLANK), sample)


@pytest.mark.parametrize("price", [0, 30, (10, 30)])
def test_a_sample_with_a_price_is_no_gap_whatever_the_sheet_makers_says(price):
    assert [] == gap_names(quote(3, sample_price=price, **BLANK))


def test_a_reply_that_does_not_know_goes_before_the_sheet_makers():
    assert ["sample"] == gap_names(quote(3, unknown=frozenset({"sample_price"}), **BLANK), "free")
    assert ["sample"] == gap_names(quote(3, unknown=frozenset({"sample_price"}), **BLANK), "paid")


def test_a_paid_sample_is_no_gap_once_it_is_bought_or_the_order_placed():
    assert [] == gap_names(quote(3, **BLANK), settings=SAMPLED)
    assert [] == gap_names(quote(3, way="sea", **BLANK), ordered={MAKER: "sea"})
