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
from scorecard.costing.charge_entries import why_not
from scorecard.costing.charges import PARTS
from scorecard.costing.currencies import Rate, Rates
from scorecard.costing.freight import Carton
from scorecard.costing.import_presets import preset_for
from scorecard.costing.inputs import CostSettings, MakerFacts
from scorecard.words import listed

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


def working(*charges, way="express", **more):
    settings = CostSettings(charges=charges)
    (cost,) = landed(quote(5, **more), offers=(offer(way, 150),), settings=settings)
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


def test_only_the_least_of_a_charge_on_duty_and_tax_is_taxed_besides():
    # 20 % of 1000 + 150 + duty 46, the clearance of 10 and the 12 at least, each once
    clearance = charge("Clearance", 10, "clearance", group="border")
    fee = charge("Advance", percent=2, of="duty and tax", minimum=Decimal(12), in_tax_base=True, group="border")
    (cost,) = landed(quote(5), offers=(offer("express", 150),), imports=uk(charges=(clearance, fee)))

    assert Decimal("243.60") == lines(cost)["import tax"]


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


def test_of_what_is_paid_here_and_abroad_only_the_latter_bears_the_currency_charge():
    # 2.5 % of 1000 USD, which are 800 GBP; the freight of 150 GBP bears none
    rates = replace(dollars(), charge_percent=Decimal("2.5"))
    fees = (charge("Card fee", percent=1, of="paid in another currency", group="payment"), charge("Boxes", 30))
    (cost,) = landed(
        quote(5, currency="USD"),
        offers=(offer("express", 150),),
        rates=rates,
        settings=CostSettings(charges=fees),
    )

    assert (Decimal(20), Decimal(8)) == (lines(cost)["currency charge"], lines(cost)["charge:Card fee"])


def test_a_charge_on_goods_and_freight_counts_what_is_listed_after_it():
    # 2 % of 1000 + 150 + 50 for the collection
    found = working(
        charge("Insurance", None, "insurance", percent=2, of="goods and freight"),
        charge("Collection", 50, "collection"),
        way="air",
    )

    assert Decimal(24) == found["Insurance"][0]


def test_a_rate_per_kg_counts_by_the_rule_of_its_way():
    # 8 cartons of 48,000 cm³ at 5000 cm³ to a kg: 76.8 kg, up to the next half
    packed = Carton(pieces=25, length_cm=Decimal(60), width_cm=Decimal(40), height_cm=Decimal(20), kg=Decimal(5))
    (cost,) = landed(quote(5), offers=(offer("express", rate_per_kg=3, carton=packed),))

    assert Decimal(231) == lines(cost)["freight"]


FOB, DDP = (
    {"covers": None, "term": term, "term_place": place} for term, place in (("FOB", "port"), ("DDP", "my door"))
)
BUT_INSURED = [part for part in PARTS if part not in ("insurance", "unloading")]  # what DDP to the door pays for
BORDER = charge("Fee", 9, group="border")


def reason(fee, *, country="CN", imports=None, **more):
    """Return why a charge is not counted on a journey by air."""
    facts = {MAKER: MakerFacts(maker=MAKER, country=country)}
    (cost,) = landed(quote(5, **more), offers=(offer("air", 150),), makers=facts, imports=imports)
    return why_not(fee, cost.readings[0].situation)


@pytest.mark.parametrize(
    ("fee", "case", "why"),
    [
        (charge("Fee", 9, ways=frozenset({"sea"})), {}, "it is for sea alone"),
        (charge("Fee", 9, ways=frozenset({"rail", "sea"})), {}, "it is for sea or rail alone"),
        (charge("Fee", 9, ways=frozenset({"air"})), {}, ""),
        (charge("Fee", 9, "collection"), FOB, "collection is in the price (FOB)"),
        (
            charge("Fee", 9, "export clearance", "collection"),
            FOB,
            "collection and export clearance are in the price (FOB)",
        ),
        (charge("Fee", 9, "collection", "delivery"), FOB, ""),
        (charge("Fee", 9, *BUT_INSURED), DDP, f"{listed(BUT_INSURED)} are in the price (DDP)"),
        (charge("Fee", 9, "freight"), {}, "the freight by air pays for freight"),
        (charge("Fee", 9, "freight", "collection"), FOB, "the freight by air pays for collection and freight"),
        (charge("Fee", 9, "clearance"), {"country": "GB"}, "on this journey there is no clearance to pay for"),
        (
            charge("Fee", 9, "clearance", "export clearance"),
            {"country": "GB"},
            "on this journey there is no export clearance or clearance to pay for",
        ),
        (BORDER, {"country": "GB"}, "no customs border is crossed"),
        (charge("Fee", percent=1, of="customs value"), {"country": "GB"}, "no customs border is crossed"),
        (BORDER, DDP, "duty and tax are in the price (DDP)"),
        (BORDER, {}, "the destination's rules are not known"),
        (BORDER, {"imports": uk()}, ""),
        (charge("Fee", 9, "clearance", group="border"), {}, ""),  # due whatever the rules
        (charge("Fee", 9), {}, ""),
    ],
)
def test_why_a_charge_is_not_counted_is_said(fee, case, why):
    assert why == reason(fee, **case)


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
