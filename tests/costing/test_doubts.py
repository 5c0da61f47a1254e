"""Warnings on quotes and freight, each at its cell."""

from dataclasses import replace
from datetime import timedelta
from decimal import Decimal

import pytest
from quoted import MAKER, TODAY, charge, inputs, offer, quote

from scorecard.brief import Brief
from scorecard.costing.amounts import Span
from scorecard.costing.currencies import Rate, Rates
from scorecard.costing.doubts import doubts
from scorecard.costing.inputs import MakerFacts
from scorecard.costing.landed import landed_costs
from scorecard.errors import Place


def warnings(*quotes, **more):
    case = inputs(*quotes, **more)
    return doubts(case, landed_costs(case))


def warned(*quotes, **more):
    return [(warning.code, warning.place.cell) for warning in warnings(*quotes, **more)]


def test_a_quote_past_its_day_warns_at_that_cell():
    assert [("quote-expired", "R2")] == warned(quote(5, valid_until=TODAY - timedelta(days=1)))


def test_a_quote_holds_on_its_last_day():
    assert [] == warned(quote(5, valid_until=TODAY))


def test_a_term_without_a_place_warns_at_the_place():
    assert [("term-without-place", "K2")] == warned(quote(5, term="FCA", covers=None))


@pytest.mark.parametrize(
    ("term", "place"),
    [
        ("EXW", "the maker's door"),
        ("FOB", "the port or airport that it leaves from"),
        ("CPT", "a port near you"),
        ("DAP", "your own address"),
    ],
)
def test_the_place_to_ask_for_is_where_such_a_term_ends(term, place):
    (warning,) = warnings(quote(5, term=term, covers=None))

    assert f"Ask for the place, such as {place}, and write it in" == warning.wanted


@pytest.mark.parametrize("term", ["FAS", "FOB", "CFR", "CIF"])
def test_a_sea_term_by_air_warns_at_the_term(term):
    offers = (offer("air", 150),)
    found = warned(quote(5, term=term, term_place="Ningbo port", way="air", covers=None), offers=offers)

    unused = [("freight-not-counted", "A2")] if term.startswith("C") else []

    assert [("sea-term-by-another-way", "J2"), *unused] == found


def test_a_sea_term_by_sea_is_well():
    assert [] == warned(quote(5, term="FOB", term_place="Ningbo port", covers=None), offers=(offer("sea", 90),))


def test_words_at_odds_with_the_term_warn_at_the_words():
    assert [("covers-against-term", "G2")] == warned(quote(5, term="DAP", term_place="my door", covers="goods"))


def test_words_that_agree_with_the_term_are_well():
    assert [] == warned(quote(5, term="DAP", term_place="my door", covers="goods and freight"))


def test_an_offer_for_other_pieces_warns_at_its_pieces():
    assert [("offer-for-other-pieces", "C2")] == warned(quote(5), offers=(offer("sea", 90, to_pieces=100),))


@pytest.mark.parametrize(("unit", "pieces"), [("order", "200"), ("design", "400"), (None, "200 to 400")])
def test_an_offer_for_other_pieces_names_those_to_be_ordered(unit, pieces):
    # a minimum of 100 for all 200 pieces, or for each of 4 designs
    brief = Brief(item="mug", quantity=200, designs=4, destination="GB", currency="GBP")
    facts = MakerFacts(maker=MAKER, country="CN", minimum=Span.of(100), minimum_per=unit)
    found = warnings(quote(5), offers=(offer("sea", 90, to_pieces=100),), brief=brief, makers={MAKER: facts})

    assert f"is not for the {pieces} pieces to be ordered" in found[0].found


def test_quotes_to_different_points_warn_once():
    found = warned(
        quote(5, term="EXW", term_place="the factory", covers=None),
        quote(5, maker="Oxlip", row=3, term="FOB", term_place="Ningbo port", covers=None),
    )

    assert [("quotes-to-different-points", "J3")] == found


def test_the_last_of_the_quotes_to_different_points_is_named_with_all_terms():
    (found,) = warnings(
        quote(5, term="EXW", term_place="the factory", covers=None),
        quote(5, maker="Oxlip", row=3, term="FOB", term_place=" Ningbo port", covers=None),
        quote(5, maker="Tansy", row=4, term="EXW", term_place="the factory", covers=None),
        quote(5, maker="Sorrel", row=5),
    )

    assert ("quotes-to-different-points", "J4") == (found.code, found.place.cell)
    assert "(EXW the factory, FOB Ningbo port)" in found.found


@pytest.mark.parametrize(
    "other",
    [
        {"term": "FOB", "term_place": "Ningbo Port ", "covers": None},
        {"covers": "goods"},  # without a term
    ],
)
def test_one_named_point_is_no_difference(other):
    assert [] == warned(
        quote(5, term="FOB", term_place="Ningbo port", covers=None), quote(5, maker="Oxlip", row=3, **other)
    )


def test_two_terms_of_one_maker_are_no_comparison():
    found = warned(
        quote(5, term="EXW", term_place="the factory", covers=None),
        quote(6, row=3, term="FCA", term_place="port", covers=None),
    )

    assert [] == found


def test_freight_of_a_maker_without_a_price_warns():
    assert [("freight-without-quote", "A2")] == warned(offers=(offer("sea", 90, maker=MAKER),))


def test_a_reply_that_a_later_one_replaces_is_named_at_its_price():
    earlier = [quote(5, pieces=100, quoted_on=TODAY - timedelta(days=9)), quote(4, row=3, pieces=200)]
    later = quote(6, row=9, pieces=100, quoted_on=TODAY - timedelta(days=2))
    case = inputs(*earlier, later)
    found = [one for one in doubts(case, landed_costs(case)) if one.code == "reply-replaced"]

    assert ["D2", "D3"] == [one.place.cell for one in found]
    assert (
        "The price of Fernhill is replaced by its later reply of 23 November 2026 in row 9, and not counted"
        == found[0].found
    )


def test_replies_on_other_terms_both_stand():
    by_sea = quote(5, quoted_on=TODAY - timedelta(days=9), way="sea")
    by_air = quote(6, row=9, quoted_on=TODAY - timedelta(days=2), way="air")

    assert [] == warned(by_sea, by_air)


def test_a_charge_that_no_sum_counts_warns_unless_one_cost_is_judged_by_itself():
    collection = charge("Collection", 30, "collection", group="freight", place=Place(key="shipping.charges[0]"))
    fob = quote(5, term="FOB", term_place="Ningbo port", covers=None)
    case = inputs(fob, shipping_charges=(collection,))
    costs = landed_costs(case)

    assert [("charge-not-counted", "shipping.charges[0]")] == [(one.code, one.place.key) for one in doubts(case, costs)]
    assert () == doubts(replace(case, quotes=(), offers=()), costs)


def test_an_offer_that_another_reply_counts_or_that_is_not_asked_about_is_well():
    freight_inside = quote(6, row=3, covers="goods and freight", way="sea")
    case = inputs(freight_inside, offers=(offer("sea", 90),))

    assert [("freight-not-counted", "A2")] == warned(freight_inside, offers=(offer("sea", 90),))
    assert [] == warned(quote(5), freight_inside, offers=(offer("sea", 90),))
    assert () == doubts(replace(case, quotes=(), offers=()), landed_costs(case))


@pytest.mark.parametrize(("age", "codes"), [(180, []), (181, ["rate-old"])])
def test_an_old_rate_of_exchange_in_use_warns_at_its_key(age, codes):
    rate = Rate(currency="USD", figure=Decimal("0.8"), dated=TODAY - timedelta(days=age))
    rates = Rates(
        home="GBP",
        rates={"USD": replace(rate, place=Place(key="currencies.USD")), "CNY": replace(rate, currency="CNY")},
    )
    case = inputs(quote(5, currency="USD", covers="to my door, duty and tax paid"), rates=rates)
    found = doubts(case, landed_costs(case))

    assert [(code, "currencies.USD") for code in codes] == [(one.code, one.place.key) for one in found]
