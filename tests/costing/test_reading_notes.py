"""What is said beside a sum."""

from dataclasses import replace
from decimal import Decimal

import pytest
from quoted import MAKER, charge, landed, offer, quote, uk

from scorecard.brief import Brief
from scorecard.costing.amounts import Money, Span
from scorecard.costing.freight import Carton
from scorecard.costing.import_presets import preset_for
from scorecard.costing.importing import Supplied
from scorecard.costing.inputs import CostSettings, MakerFacts

ALL_PAID = {"covers": "to my door, duty and tax paid"}
NAMED = {"setup": 0, "sample_price": 0}


def notes(*quotes, **more):
    return landed(*quotes, **more)[0].notes


def test_what_a_reply_does_not_name_is_asked_for():
    assert ("The reply names no charge for set-up and a sample: ask; the total holds only if there is none",) == notes(
        quote(5, **ALL_PAID)
    )


@pytest.mark.parametrize(
    ("sample", "postage", "words"),
    [
        ("free", None, ["the postage of the free sample"]),
        ("free", 5, []),
        ("paid", None, []),  # which is a gap
    ],
)
def test_of_a_sample_it_is_asked_what_the_sheet_makers_does_not_say(sample, postage, words):
    facts = {MAKER: MakerFacts(maker=MAKER, country="CN", sample=sample)}
    asked = [f"The reply names no charge for {each}: ask; the total holds only if there is none" for each in words]

    assert tuple(asked) == notes(quote(5, setup=0, sample_postage=postage, **ALL_PAID), makers=facts)


@pytest.mark.parametrize(
    ("designs", "setup", "per", "said"),
    [(3, 40, "colour", True), (1, 40, "colour", False), (3, 40, "design", False), (3, 0, "colour", False)],
)
def test_it_is_said_that_a_set_up_per_colour_is_counted_once_for_all_designs(designs, setup, per, said):
    brief = Brief(item="towel", quantity=300, designs=designs, colours=2, destination="GB", currency="GBP")
    row = quote(5, setup=setup, setup_per=per, sample_price=0, **ALL_PAID)

    assert said == any("counted once for all 3 designs" in note for note in notes(row, brief=brief))


def test_a_charge_of_nothing_is_named():
    assert () == notes(quote(5, **ALL_PAID, **NAMED))


def test_a_sample_that_is_paid_for_is_not_asked_for():
    assert () == notes(quote(5, setup=0, **ALL_PAID), settings=CostSettings(sampled=frozenset({MAKER})))


@pytest.mark.parametrize(
    ("term", "place", "said"), [("FOB", "port", True), ("CIF", "port", False), ("DAP", "my door", False)]
)
def test_goods_on_the_way_uninsured_are_the_buyer_s_loss_unless_the_maker_bears_it(term, place, said):
    found = notes(quote(5, term=term, term_place=place, covers=None, **NAMED), offers=(offer("sea", 90),))

    assert said == any("insurance" in note for note in found)


def test_paid_insurance_is_not_missed():
    insurance = charge("Insurance", 5, "insurance", group="freight")

    assert not any("insurance" in note for note in notes(quote(5, **NAMED), shipping_charges=(insurance,)))


def test_a_currency_that_nobody_named_is_asked_for():
    assert ("Currency not named: taken as GBP; ask which it is",) == notes(
        quote(5, currency_named=False, **ALL_PAID, **NAMED)
    )


@pytest.mark.parametrize(
    ("country", "covers", "said"), [(None, "goods", True), ("CN", "goods", False), (None, ALL_PAID["covers"], False)]
)
def test_an_unknown_country_is_taken_as_beyond_the_border_where_that_matters(country, covers, said):
    found = notes(quote(5, covers=covers, **NAMED), makers={MAKER: MakerFacts(maker=MAKER, country=country)})

    assert said == ("Where the goods are made is not known: they are taken to cross a customs border" in found)


@pytest.mark.parametrize(
    ("country", "covers", "said"),
    [
        ("CA", "goods and freight", True),
        ("GB", "goods and freight", False),  # its duty base has the freight
        ("CA", "goods", False),  # no freight inside
        ("CA", ALL_PAID["covers"], False),  # no duty to pay
    ],
)
def test_freight_inside_the_price_is_said_where_duty_leaves_it_out(country, covers, said):
    rules = replace(preset_for(country), duty_percent=Span.of(4))
    found = notes(quote(5, covers=covers, way="air", **NAMED), imports=rules)

    assert said == any("the duty shown is the most" in note for note in found)


@pytest.mark.parametrize(
    ("term", "place", "asked"),
    [
        ("CIF", "Felixstowe port", ["CIF"]),
        ("CPT", "Felixstowe", ["CPT"]),  # to the port, or to the door: asked for in the first case alone
        ("CIP", "my door", []),
        ("FOB", "Ningbo port", []),
    ],
)
def test_a_c_term_to_a_port_asks_for_the_charges_at_arrival(term, place, asked):
    found = notes(quote(5, term=term, term_place=place, covers=None, **NAMED))

    assert [f"{one}: ask whether the freight in the price pays the charges at arrival too" for one in asked] == [
        note for note in found if "charges at arrival" in note
    ]


@pytest.mark.parametrize(
    ("made_in", "words"),
    [("GB", "artwork made in the importing country is not added"), ("IE", "added to the customs value")],
)
def test_supplied_artwork_is_explained(made_in, words):
    drawings = Supplied(name="Drawings", what="artwork", value=Money(Span.of(400), "GBP"), made_in=made_in)
    found = notes(quote(5, **NAMED), imports=uk(supplied=(drawings,)))

    assert any(words in note for note in found)


@pytest.mark.parametrize(
    ("country", "covers", "rules"),
    [("GB", "goods", True), ("CN", ALL_PAID["covers"], True), ("CN", "goods", False)],
)
def test_what_is_supplied_is_no_matter_where_no_duty_is_reckoned(country, covers, rules):
    moulds = Supplied(name="Moulds", what="tools or materials", value=Money(Span.of(400), "GBP"))
    facts = {MAKER: MakerFacts(maker=MAKER, country=country)}
    found = notes(quote(5, covers=covers, **NAMED), makers=facts, imports=uk(supplied=(moulds,)) if rules else None)

    assert not [note for note in found if "Moulds" in note]


def rated(pieces):
    carton = Carton(pieces=pieces, length_cm=Decimal(60), width_cm=Decimal(40), height_cm=Decimal(20), kg=Decimal(5))
    return notes(quote(5, **NAMED), offers=(offer("air", rate_per_kg=3, carton=carton),))


def test_a_last_carton_that_is_not_full_says_what_that_means():
    assert (
        "Freight by air counts the last carton as full, though it holds 20 of 36 pieces: ask whether a smaller one "
        "costs less; 16 more would cost no more freight" in rated(36)
    )


def test_full_cartons_need_no_word():
    assert not [note for note in rated(25) if "carton" in note]


def test_whose_cost_a_good_piece_bears_is_said_where_more_are_ordered_than_wanted():
    few = Brief(item="mug", quantity=120, destination="GB", currency="GBP")
    facts = {MAKER: MakerFacts(maker=MAKER, minimum=Span.of(300), minimum_per="order", country="CN")}
    spare = CostSettings(faulty_percent=Decimal(60))

    def said(**more):
        return [note for note in notes(quote(5), brief=few, makers=facts, **more) if "good piece" in note]

    assert 1 == len(said())
    assert "one of the 120 that you wanted" in said()[0]
    assert [] == said(settings=spare)


NEAR = {MAKER: MakerFacts(maker=MAKER, country="GB")}
SALES_TAX = (
    "Whether the price has sales tax inside is not known: ask, and write price_has_tax = true or false under [import]; "
    "it holds for every maker without a customs border between"
)


def tax_notes(row, rules):
    found = notes(row, makers=NEAR, imports=rules, offers=(offer("road", 90),))
    return [note for note in found if "sales tax" in note]


@pytest.mark.parametrize(
    ("term", "rules", "words"),
    [
        (
            {},
            uk(),
            f"{SALES_TAX}. Of this maker alone “to my door, duty and tax paid” under Price covers says it, if its "
            "price is so",
        ),
        (
            {"covers": None, "term": "EXW", "term_place": "works"},
            uk(),
            f"{SALES_TAX}. Of this maker alone the delivery term DDP says it, if its price is so",
        ),
        ({}, uk(tax_is="recoverable"), SALES_TAX),  # what is said to be paid in a price never comes back
        ({}, uk(tax_is=None), SALES_TAX),
        ({}, None, SALES_TAX),
    ],
)
def test_what_settles_whether_a_price_has_sales_tax_inside_is_said(term, rules, words):
    assert [words] == tax_notes(quote(5, **NAMED, **term), rules)


@pytest.mark.parametrize("has_tax", [True, False])
def test_once_it_is_said_whether_prices_have_sales_tax_nothing_is_noted(has_tax):
    assert [] == tax_notes(quote(5, **NAMED), uk(price_has_tax=has_tax))
