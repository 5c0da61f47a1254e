"""What the user typed and no sum counts is said, with the reason."""

from dataclasses import replace
from decimal import Decimal

import pytest
from quoted import charge, inputs, landed, offer, quote, uk

from scorecard.costing.amounts import Span
from scorecard.costing.doubts import doubts
from scorecard.costing.import_presets import preset_for
from scorecard.costing.inputs import CostSettings
from scorecard.costing.landed import landed_costs
from scorecard.errors import Place

FREIGHT = charge("Freight", 30, "freight", group="freight")
COLLECTION = charge("Collection", 30, "collection", group="freight")
CRATE = charge("Crate", 50, "packing")
BRITISH = uk()
ALL_PAID = "to my door, duty and tax paid"


def notes(*quotes, **more):
    """Return the notes that say what is counted, or is not."""
    return [note for cost in landed(*quotes, **more) for note in cost.notes if "counted" in note]


def warned(*quotes, **more):
    case = inputs(*quotes, **more)
    return [(warning.code, warning.place.key or warning.place.cell) for warning in doubts(case, landed_costs(case))]


def fob(**more):
    return quote(3, term="FOB", term_place="Ningbo port", covers=None, **more)


def test_charges_that_price_or_freight_pays_for_are_named_with_the_reason():
    found = notes(fob(), offers=(offer("sea", 20),), shipping_charges=(FREIGHT, COLLECTION))

    assert [
        "Freight: not counted, since the freight by sea pays for freight",
        "Collection: not counted, since collection is in the price (FOB)",
    ] == found


def test_packing_besides_the_usual_is_counted_under_a_term_and_that_is_said():
    (cost,) = landed(fob(), offers=(offer("sea", 20),), settings=CostSettings(charges=(CRATE,)))
    (said,) = [note for note in cost.notes if note.startswith("Crate")]

    assert 50 == next(line.low for line in cost.readings[0].lines if line.key == "charge:Crate")
    assert "counted besides the usual packing, which is in the price (FOB)" in said


def test_packing_is_in_a_price_that_pays_everything():
    found = notes(quote(3, covers=ALL_PAID), settings=CostSettings(charges=(CRATE,)))

    assert [f"Crate: not counted, since packing is in the price (the price is {ALL_PAID})"] == found


def test_a_charge_that_no_sum_counts_warns_at_its_key():
    unused = replace(COLLECTION, place=Place(key="shipping.charges[0]"))
    offers = (offer("sea", 20),)
    exw = quote(3, maker="Ash", row=3, term="EXW", term_place="factory", covers=None)

    assert [("charge-not-counted", "shipping.charges[0]")] == warned(fob(), offers=offers, shipping_charges=(unused,))
    assert "charge-not-counted" not in [
        code for code, _ in warned(fob(), exw, offers=offers, shipping_charges=(unused,))
    ]


def test_a_charge_for_a_way_that_nobody_ships_by_warns_and_is_no_note():
    by_air = charge("Screening", 9, ways=frozenset({"air"}), place=Place(key="shipping.charges[0]"))
    offers = (offer("sea", 20),)

    assert [] == notes(fob(), offers=offers, shipping_charges=(by_air,))
    assert [("charge-not-counted", "shipping.charges[0]")] == warned(fob(), offers=offers, shipping_charges=(by_air,))


@pytest.mark.parametrize("covers", ["goods and freight", ALL_PAID])
def test_a_freight_offer_beside_a_price_that_pays_freight_is_named_and_warns_at_its_row(covers):
    row, offers = quote(3, covers=covers, way="air"), (offer("sea", 40, row=5),)
    (said,) = notes(row, offers=offers)

    assert said.startswith("The freight offer by sea: not counted, since freight is in the price (the price ")
    assert ["freight-not-counted"] == [code for code, _ in warned(row, offers=offers)]


def test_an_offer_that_counts_in_one_reading_is_used():
    assert [] == warned(quote(3, covers=None), offers=(offer("sea", 40),))
    assert [] == notes(quote(3, covers=None), offers=(offer("sea", 40),))


def test_an_offer_of_another_maker_is_no_matter_of_this_one():
    row, offers = quote(3, covers=ALL_PAID, way="air"), (offer("sea", 40, maker="Oxlip", row=5),)

    assert [] == notes(row, offers=offers)


def test_a_tax_rate_where_no_tax_is_charged_is_named():
    rules = replace(preset_for("US"), currency="GBP", duty_percent=Span.of(4), tax_percent=Span.of(8))

    assert ["Import tax: your 8 % is not counted, since no tax is charged at this border (tax_base)"] == notes(
        quote(3), imports=rules
    )


CLEARED = ("clearance",)


@pytest.mark.parametrize(
    ("more", "words"),
    [
        # 600 of goods: duty 4 % is 24, and import tax some 20 % of what is at the door, so that 10 % is over 12 in all
        ({"percent": 10}, "none of it"),
        ({"percent": 10, "minimum": Decimal(12)}, "its least, 12.00 GBP, alone"),
        ({"percent": 10, "amount": 7}, "its least, 7.00 GBP, alone"),
        ({"percent": 10, "minimum": Decimal(1000)}, None),  # all of it is taxed
        ({"amount": 7}, None),
    ],
)
def test_tax_on_a_charge_that_hangs_on_the_tax_is_on_its_least(more, words):
    disbursement = charge("Disbursement", more.pop("amount", None), *CLEARED, of="duty and tax", group="border", **more)
    said = f"Disbursement: a part of the tax itself, so import tax is charged on {words}"

    assert ([said] if words else []) == circular(disbursement)


@pytest.mark.parametrize(
    ("country", "pays_for", "in_tax_base", "said"),
    [
        ("GB", CLEARED, None, True),
        ("GB", (), None, False),  # no part on the way to the door
        ("GB", (), True, True),
        ("CA", CLEARED, None, False),  # the tax is charged on customs value and duty alone
        ("CA", CLEARED, True, True),
        ("US", CLEARED, True, False),  # no tax is charged
    ],
)
def test_a_charge_is_in_the_tax_base_by_the_destination_or_as_the_user_says(country, pays_for, in_tax_base, said):
    rules = replace(preset_for(country), currency="GBP", duty_percent=Span.of(4), tax_percent=Span.of(20))
    fee = charge("Fee", None, *pays_for, percent=10, of="duty and tax", group="border", in_tax_base=in_tax_base)

    assert said == bool(circular(fee, rules))


def test_without_a_rate_of_tax_or_any_rules_nothing_hangs_on_it():
    fee = charge("Fee", None, *CLEARED, percent=10, of="duty and tax")

    assert ([], []) == (circular(fee, uk(tax=None)), circular(fee, None))


def circular(fee, rules=BRITISH):
    """Return the notes on a charge that is a part of the tax that is charged on it."""
    (cost,) = landed(quote(3), imports=rules, settings=CostSettings(charges=(fee,)))
    return [note for note in cost.notes if "a part of the tax itself" in note]


def test_what_is_counted_needs_no_word():
    exw = quote(3, term="EXW", term_place="factory", covers=None)

    assert [] == notes(exw, offers=(offer("sea", 20),), shipping_charges=(COLLECTION,), imports=uk())
