"""The user's charges: bases, least and most, and where they apply.

USA: customs broker examination, October 2020, question 33: on 10,500, a processing fee of 0.3464 % is 36.37 and a
harbour fee of 0.125 %, by sea only, 13.13. Least and most of the fee as of 1 October 2025, from the Federal Register
notice.
"""

from dataclasses import replace
from decimal import Decimal

import pytest
from quoted import MAKER, charge, dollars, landed, lines, offer, quote, uk

from scorecard.brief import Brief
from scorecard.costing.amounts import Span
from scorecard.costing.currencies import Rate, Rates
from scorecard.costing.import_presets import preset_for
from scorecard.costing.inputs import CostSettings, MakerFacts

PROCESSING = charge("Processing fee", percent="0.3464", of="customs value", group="border", currency="USD")
HARBOUR = charge(
    "Harbour fee", percent="0.125", of="customs value", group="border", currency="USD", ways=frozenset({"sea"})
)
FY2026 = replace(PROCESSING, minimum=Decimal("33.58"), maximum=Decimal("651.50"))
HERE = Brief(item="mug", quantity=200, destination="US", currency="USD")


def usa(price, *charges, way="sea"):
    rules = replace(preset_for("US"), duty_percent=Span.of("14.9"), charges=charges)
    (cost,) = landed(
        quote(price, price_is_for="all", currency="USD"),
        offers=(offer(way, 900, currency="USD", covers="door to door"),),
        brief=HERE,
        rates=Rates(home="USD"),
        imports=rules,
    )
    return lines(cost)


def test_the_examination_s_fees_by_sea():
    found = usa(10500, PROCESSING, HARBOUR)

    assert (Decimal("1564.50"), Decimal("36.37"), Decimal("13.13")) == (
        found["duty"],
        found["charge:Processing fee"],
        found["charge:Harbour fee"],
    )


def test_a_charge_of_one_way_is_not_paid_by_another():
    assert "charge:Harbour fee" not in usa(10500, HARBOUR, way="air")


@pytest.mark.parametrize(
    ("price", "fee"), [(9693, "33.58"), (9695, "33.58"), (9700, "33.60"), (188000, "651.23"), (188100, "651.50")]
)
def test_the_fee_is_held_between_least_and_most(price, fee):
    assert Decimal(fee) == usa(price, FY2026)["charge:Processing fee"]


def working(*charges, **more):
    settings = CostSettings(charges=charges)
    (cost,) = landed(quote(5, **more), offers=(offer("express", 150),), settings=settings)
    return {line.name: (line.low, line.working) for line in cost.readings[0].lines}


def test_a_charge_by_the_piece_is_multiplied():
    assert (Decimal(50), "200 × 0.25 GBP") == working(charge("Boxes", "0.25", per="piece"))["Boxes"]


def test_a_flat_amount_and_a_percentage_are_added():
    found = working(charge("Bank", 12, percent=1, of="paid to the maker", group="payment"))["Bank"]

    assert (Decimal(22), "given: 12.00 GBP and 1 % of 1000.00 GBP (paid to the maker)") == found


@pytest.mark.parametrize(
    ("of", "cost"),
    [
        ("goods", "10.60"),
        ("goods and freight", "12.10"),
        ("paid to the maker", "11.05"),
        ("paid in another currency", "0"),
    ],
)
def test_each_base_is_its_own_sum(of, cost):
    # goods 1000, set-up 60, sample 30, postage 15, freight 150
    fee = charge("Fee", percent=1, of=of, group="payment")
    found = working(fee, setup=60, setup_per="order", sample_price=30, sample_postage=15)

    assert Decimal(cost) == found["Fee"][0]


def test_a_charge_on_duty_and_tax_comes_after_them():
    # duty 4 % of 1150 = 46; VAT 20 % of 1196 = 239.20; 2 % of 285.20
    assert Decimal("5.70") == working(charge("Advance", percent=2, of="duty and tax"))["Advance"][0]


def test_a_bound_that_binds_is_said():
    found = working(charge("Insurance", None, "insurance", percent="0.5", of="goods and freight", minimum=Decimal(25)))

    assert "0.5 % of 1150.00 GBP (goods and freight), at least 25.00 GBP" == found["Insurance"][1]


def test_what_is_paid_in_another_currency_bears_the_currency_charge():
    rates = replace(dollars(), charge_percent=Decimal("2.5"))
    (cost,) = landed(quote(5, currency="USD", covers="to my door, duty and tax paid"), rates=rates)

    assert {"goods": 800, "currency charge": 20} == lines(cost)


def test_what_is_paid_at_home_bears_none():
    rates = replace(dollars(), charge_percent=Decimal("2.5"))
    (cost,) = landed(quote(5, covers="to my door, duty and tax paid"), rates=rates)

    assert {"goods": 1000} == lines(cost)


def test_a_charge_in_another_currency_takes_its_base_into_it():
    # 1 % of 1000 GBP is 12.50 USD, at least 25 USD: 20 GBP
    rates = Rates(home="GBP", rates={"USD": Rate(currency="USD", figure=Decimal("0.8"))})
    fee = charge("Fee", percent=1, of="goods", currency="USD", minimum=Decimal(25))
    (cost,) = landed(
        quote(5, covers="to my door, duty and tax paid"), rates=rates, settings=CostSettings(charges=(fee,))
    )

    assert Decimal(20) == lines(cost)["charge:Fee"]


def test_a_charge_at_the_border_is_not_paid_without_one():
    near = {MAKER: MakerFacts(maker=MAKER, country="GB")}
    (cost,) = landed(
        quote(5),
        offers=(offer("road", 40),),
        makers=near,
        imports=uk(charges=(charge("Entry fee", 9, group="border"),)),
    )

    assert "charge:Entry fee" not in lines(cost)


def test_a_charge_at_the_border_is_the_maker_s_where_it_pays_the_duty():
    (cost,) = landed(
        quote(5, term="DDP", term_place="my door", covers=None),
        imports=uk(charges=(charge("Entry fee", 9, group="border"),)),
    )

    assert {"goods": 1000} == lines(cost)
