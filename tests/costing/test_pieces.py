"""What a good piece costs as a value to compare."""

from dataclasses import replace
from decimal import Decimal

import pytest
from quoted import MAKER, charge, inputs, landed, offer, quote, span, uk
from sized import ALL_PAID, minimum

from scorecard.costing.cheapest import cheapest_of
from scorecard.costing.inputs import CostSettings, MakerFacts
from scorecard.costing.pieces import bare_piece, open_parts, piece_of

CLEARED = (charge("Clearance", 18, "clearance", group="border"),)
PACKED = CostSettings(charges=(charge("Boxes", 50, percent=5, of="goods", group="extra"),))
ABOUT_PACKED = CostSettings(charges=(charge("Boxes", (50, 60), group="extra"),))
NEAR = {"makers": {MAKER: MakerFacts(maker=MAKER, country="GB")}}
ABOUT_CLEARED = (charge("Clearance", (18, 30), "clearance", group="border"),)


def cost(row, **more):
    (one,) = landed(row, offers=(offer("express", (90, 90)),), **more)
    return one


def parts(row, **more):
    return open_parts(cost(row, **more))


def test_a_known_cost_has_nothing_open():
    assert () == parts(quote(5, covers=ALL_PAID))


@pytest.mark.parametrize(
    ("row", "more", "told"),
    [
        (quote((5, 6), covers=ALL_PAID), {}, ("the price",)),
        (quote(5, covers=ALL_PAID, setup=(10, 20), setup_per="order"), {}, ("set-up",)),
        (quote(5, covers=ALL_PAID), {"makers": minimum((100, 300))}, ("how many must be ordered",)),
        (quote(5), {"imports": uk(duty=(0, 12), charges=CLEARED)}, ("the rate of duty",)),
        (quote(5), {"imports": uk(tax_is=None, charges=CLEARED)}, ("whether import tax comes back",)),
        (quote(5), {"imports": uk(tax=(5, 20), charges=CLEARED)}, ("the rate of import tax",)),
        (
            quote(5),
            {"imports": uk(charges=ABOUT_CLEARED)},
            ("Clearance",),
        ),
        (quote(5), {}, ("clearance",)),
        # what follows from the price is no cause of its own
        (quote((5, 6), covers=ALL_PAID), {"settings": PACKED}, ("the price",)),
        (quote(5, covers=ALL_PAID), {"settings": ABOUT_PACKED}, ("Boxes",)),
        (
            quote(5, term="FCA", term_place="Leixoes", covers=None),
            {},
            ("what the price covers", "clearance"),
        ),  # the offer pays all but that
        # no border between maker and buyer
        (quote(5), NEAR | {"imports": uk()}, ("whether the price has sales tax inside (price_has_tax)",)),
        (quote(5), NEAR | {"imports": uk(price_has_tax=True, tax_is=None)}, ("whether sales tax comes back",)),
        (quote(5), NEAR | {"imports": uk(tax=(5, 20), price_has_tax=False)}, ("the rate of sales tax",)),
    ],
)
def test_what_is_open_is_named_by_its_cause_alone(row, more, told):
    assert told == parts(row, **more)


def test_what_a_price_covers_is_open_where_nobody_said():
    assert parts(quote(5, covers=None), imports=uk(charges=CLEARED))[0] == "what the price covers"


def test_freight_offered_as_a_range_is_open():
    (one,) = landed(quote(5), offers=(offer("express", (90, 120)),), imports=uk(charges=CLEARED))

    assert ("freight",) == open_parts(one)


def test_the_ends_are_those_of_the_cost_where_nothing_is_shared():
    one = cost(quote((5, 6), covers=ALL_PAID))

    assert (one.per_good_piece,) == piece_of(one).cases
    assert (MAKER, "Ash") == (piece_of(one).maker, piece_of(one, "Ash").maker)


def test_a_missing_cost_is_named():
    assert ("clearance",) == bare_piece(cost(quote(5))).missing


def test_what_is_open_for_all_alike_does_not_make_the_cheapest_unsure():
    rules = uk(duty=(0, 12), tax=(5, 20), tax_is=None, charges=CLEARED)
    rows = (quote(5), quote("5.40", maker="Oxlip", row=3))
    offers = (offer("express", 90), offer("express", 90, maker="Oxlip", row=3))
    found = cheapest_of(map(piece_of, landed(*rows, offers=offers, imports=rules)))

    assert (MAKER, True, 8) == (found.piece.maker, found.is_sure, len(found.piece.cases))


@pytest.mark.parametrize(
    ("rules", "cases"),
    [
        (uk(), [("6.60", "6.60")]),
        (uk(tax_is=None), [("6.60", "6.60"), ("5.50", "5.50")]),  # a cost, or it comes back
        (uk(duty=None, tax=(10, 20)), [("6.05", "6.05"), ("6.60", "6.60")]),
    ],
)
def test_each_case_that_all_share_has_its_own_ends(rules, cases):
    # 1000 for the goods and 100 for freight, no duty: 5.50 a piece and tax on it
    rules = replace(rules, duty_percent=span("0"), charges=())
    (one,) = landed(quote(5), offers=(offer("express", 100),), imports=rules)

    assert tuple((Decimal(low), Decimal(high)) for low, high in cases) == bare_piece(one).cases


def test_the_cases_span_what_the_cost_says():
    rules = uk(duty=(0, 12), tax_is=None, charges=CLEARED)
    one = cost(quote(5), imports=rules)

    assert one.per_good_piece == (piece_of(one).low, piece_of(one).high)


def test_one_that_pays_no_duty_may_be_the_dearer_or_the_cheaper():
    rules = uk(duty=(0, 12), charges=CLEARED)
    made = inputs(quote(5), quote("6.80", maker="Oxlip", row=3, covers=ALL_PAID), imports=rules)
    one = landed(*made.quotes, offers=(offer("express", 90),), imports=rules)
    found = cheapest_of(map(piece_of, one))

    # 1000 + 90 + 18, duty 0 to 130.80, VAT 20 %: 1329.60 to 1486.56, 6.648 to 7.4328 a piece
    assert ("Oxlip", [MAKER]) == (found.piece.maker, [rival.maker for rival in found.rivals])


def test_a_typed_span_is_read():
    assert span((5, 6)) == replace(quote((5, 6))).price
