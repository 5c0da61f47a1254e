"""Duty and import tax of a whole order, and sales tax where there is no border."""

from dataclasses import replace
from decimal import Decimal

import pytest
from quoted import MAKER, charge, landed, lines, offer, quote, uk

from scorecard.brief import Brief
from scorecard.costing.amounts import OPEN, Money, Span
from scorecard.costing.border_entries import duty_percent, sales_tax_on_top, sales_tax_unsaid
from scorecard.costing.currencies import Rate, Rates
from scorecard.costing.importing import Supplied
from scorecard.costing.inputs import CostSettings, MakerFacts

EXPRESS = (offer("express", 150),)


def costed(imports, *, country="CN", offers=EXPRESS, **more):
    facts = {MAKER: MakerFacts(maker=MAKER, country=country)}
    (cost,) = landed(quote(5), imports=imports, offers=offers, makers=facts, **more)
    return cost


def test_duty_and_tax_are_worked_out_on_the_whole_order():
    # 4 % of 1,150; 20 % of 1,196
    assert {"goods": 1000, "freight": 150, "duty": 46, "import tax": Decimal("239.20")} == lines(costed(uk()))


def test_clearance_counts_in_the_tax_base_and_a_bank_fee_does_not():
    rules = uk(charges=(charge("Clearance", 10, "clearance", group="border"), charge("Other", 10, group="border")))

    assert Decimal("241.20") == lines(costed(rules))["import tax"]


@pytest.mark.parametrize(("taxed", "tax"), [(True, "243.20"), (False, "239.20"), (None, "239.20")])
def test_the_user_s_word_on_what_is_taxed_is_followed(taxed, tax):
    rules = uk(charges=(charge("Storage", 20, group="border", in_tax_base=taxed),))

    assert Decimal(tax) == lines(costed(rules))["import tax"]


def test_the_rate_of_the_maker_s_country_comes_first():
    rules = uk(duty_by_country={"CN": Span.of(12)})

    assert [138, 46] == [lines(costed(rules, country=country))["duty"] for country in ("CN", "VN")]


def test_a_missing_rate_is_a_gap():
    rules = uk(duty=None, tax=None)

    assert ["clearance", "duty", "import tax"] == [gap.name for gap in costed(rules).gaps]


def test_a_tax_that_comes_back_needs_no_rate():
    rules = uk(tax=None, tax_is="recoverable")

    assert ["clearance"] == [gap.name for gap in costed(rules).gaps]


def test_a_duty_of_nothing_is_no_gap():
    assert 0 == lines(costed(uk(duty=0)))["duty"]


def test_a_range_of_rates_is_costed_at_both_ends():
    cost = costed(uk(duty=(0, 12), tax=0))

    assert (1150, 1288) == (cost.low, cost.high)


def test_only_a_part_of_the_freight_counts_where_the_user_says_so():
    # 1000 + 70 % of 150 = 1105; 4 % = 44.20
    assert Decimal("44.20") == lines(costed(uk(freight_in_base_percent={"express": Decimal(70)})))["duty"]


@pytest.mark.parametrize(
    ("what", "made_in", "duty"),
    [
        ("artwork", "GB", 46),
        ("artwork", "IM", 46),  # no border between the two
        ("artwork", "IE", 62),
        ("artwork", None, 62),
        ("tools or materials", "GB", 62),
    ],
)
def test_artwork_made_at_home_is_not_added_to_the_customs_value(what, made_in, duty):
    drawings = Supplied(name="Drawings", what=what, value=Money(Span.of(400), "GBP"), made_in=made_in)

    assert duty == lines(costed(uk(supplied=(drawings,))))["duty"]


def test_what_is_supplied_is_no_cost_of_the_order_itself():
    tools = Supplied(name="Tools", what="tools or materials", value=Money(Span.of(400), "GBP"))

    assert {"goods": 1000, "freight": 150, "duty": 62, "import tax": Decimal("322.40")} == lines(
        costed(uk(supplied=(tools,)))
    )


@pytest.mark.parametrize(
    ("value", "duty"),
    [
        (Span.of(100, 400), 62),  # 4 % of 1150 + 400
        (Span(Decimal(400), None), 62),  # there is no most
    ],
)
def test_of_a_supplied_value_that_is_a_range_the_most_that_is_known_counts(value, duty):
    tools = Supplied(name="Tools", what="tools or materials", value=Money(value, "GBP"))

    assert duty == lines(costed(uk(supplied=(tools,))))["duty"]


@pytest.mark.parametrize("part", ["collection", "insurance"])
@pytest.mark.parametrize("taxed", [None, True])
def test_what_counts_into_the_customs_value_is_taxed_once(part, taxed):
    # 4 % of 1000 + 150 + 30 = 47.20; 20 % of 1227.20 = 245.44, whatever the user says is taxed besides
    fee = charge("Fee", 30, part, group="freight", in_tax_base=taxed)
    found = lines(costed(uk(), offers=(offer("air", 150),), shipping_charges=(fee,)))

    assert (Decimal("47.20"), Decimal("245.44")) == (found["duty"], found["import tax"])


def test_the_authority_cuts_in_its_own_currency():
    # 1150 EUR are 920 GBP; 4.03 % are 37.076 GBP, cut down to 37.07: 46.3375 EUR
    rates = Rates(home="EUR", rates={"GBP": Rate(currency="GBP", figure=Decimal("0.8"), means="for one home")})
    (cost,) = landed(
        quote(5, currency="EUR"),
        offers=(offer("express", 150, currency="EUR"),),
        brief=Brief(item="mug", quantity=200, destination="GB", currency="EUR"),
        rates=rates,
        imports=uk(duty="4.03", tax=0),
    )

    assert Decimal("46.34") == lines(cost)["duty"]


def test_without_a_rate_for_the_authority_s_currency_the_brief_s_is_used():
    # nor is its relief, which is in a currency that cannot be compared
    (cost,) = landed(
        quote(5, currency="EUR"),
        offers=(offer("express", 150, currency="EUR"),),
        brief=Brief(item="mug", quantity=200, destination="GB", currency="EUR"),
        rates=Rates(home="EUR"),
        imports=replace(uk(use_relief=True), relief=replace(uk().relief, up_to=Decimal(5000))),
    )

    assert 46 == lines(cost)["duty"]


def test_relief_is_said_with_its_date():
    rules = replace(uk(use_relief=True, tax=0), relief=replace(uk().relief, up_to=Decimal(5000)))
    (duty,) = [line for line in costed(rules).readings[0].lines if line.key == "duty"]

    assert (0, True) == (duty.low, duty.working.startswith("none up to 5000.00 GBP, as you say ("))


def line_of(key, **more):
    """Return one line of a cost that comes by express, or by road where no border lies between."""
    cost = costed(uk(**more), **({"country": "GB", "offers": (offer("road", 200),)} if key == "sales tax" else {}))
    return next(line for line in cost.readings[0].lines if line.key == key)


def test_without_relief_the_rate_and_its_base_are_said():
    assert "4 % of 1150.00 GBP (price, freight and insurance)" == line_of("duty").working


@pytest.mark.parametrize(
    ("tax_is", "costs", "said"),
    [
        ("cost", ("239.20", "239.20"), ""),
        ("recoverable", (0, 0), "; comes back"),
        (None, (0, "239.20"), "; whether it comes back is not said"),
    ],
)
def test_import_tax_is_paid_whether_or_not_it_comes_back(tax_is, costs, said):
    tax = line_of("import tax", tax_is=tax_is)

    assert [*map(Decimal, costs), *[Decimal("239.20")] * 2] == [tax.low, tax.high, tax.paid_low, tax.paid_high]
    assert tax.working == f"20 % of 1196.00 GBP (customs value, duty and all costs to the door){said}"


def test_where_the_price_pays_the_duty_nothing_is_added_at_the_border():
    (cost,) = landed(quote(5, covers="to my door, duty and tax paid"), imports=uk())

    assert ({"goods": 1000}, ()) == (lines(cost), cost.gaps)


@pytest.mark.parametrize(("has_tax", "cash"), [(True, (0, 0)), (False, (240, 240)), (None, (0, 240))])
@pytest.mark.parametrize("tax_is", ["cost", "recoverable", None])
def test_sales_tax_inside_the_price_is_not_paid_again(has_tax, tax_is, cash):
    # 20 % of 1200, whatever becomes of it later; at least nothing where the price may have it
    tax = line_of("sales tax", price_has_tax=has_tax, tax_is=tax_is)

    assert cash == (tax.paid_low, tax.paid_high)


def test_sales_tax_is_of_what_the_maker_and_the_carrier_are_paid():
    # 20 % of 1000 + 200, and not of the 50 paid to somebody else
    cost = costed(
        uk(price_has_tax=False),
        country="GB",
        offers=(offer("road", 200),),
        settings=CostSettings(charges=(charge("Photographs", 50),)),
    )

    assert 240 == lines(cost)["sales tax"]


def test_sales_tax_goes_to_the_maker_after_all_else_that_it_is_paid():
    (reading,) = costed(uk(price_has_tax=False), country="GB", offers=(offer("road", 200),)).readings

    assert [("goods", "maker"), ("sales tax", "maker"), ("freight", "freight")] == [
        (line.key, line.group) for line in reading.lines
    ]


@pytest.mark.parametrize(
    ("has_tax", "tax_is", "span"),
    [
        (True, "cost", (1200, 1200)),
        (False, "cost", (1440, 1440)),
        (False, "recoverable", (1200, 1200)),
        (True, "recoverable", (1000, 1000)),  # 200 of 1200 come back
        (None, "cost", (1200, 1440)),
        (None, "recoverable", (1000, 1200)),
        (None, None, (1000, 1440)),
    ],
)
def test_sales_tax_without_a_border_is_in_the_price_or_on_top(has_tax, tax_is, span):
    cost = costed(uk(price_has_tax=has_tax, tax_is=tax_is), country="GB", offers=(offer("road", 200),))

    assert span == (cost.low, cost.high)


@pytest.mark.parametrize(
    ("has_tax", "tax_is", "span"),
    [
        (False, "cost", ("1320", "1440")),
        (True, "recoverable", ("1000", "1090.91")),  # 200.00 or 109.09 of 1200 come back
        (None, "recoverable", ("1000", "1200")),
        (None, None, ("1000", "1440")),
    ],
)
def test_a_sales_tax_of_10_to_20_percent_costs_the_least_where_the_most_comes_back(has_tax, tax_is, span):
    rules = uk(tax=(10, 20), price_has_tax=has_tax, tax_is=tax_is)
    cost = costed(rules, country="GB", offers=(offer("road", 200),))

    assert tuple(map(Decimal, span)) == (cost.low, cost.high)


@pytest.mark.parametrize(("tax_is", "least"), [("cost", 1200), ("recoverable", 1000), (None, 1000)])
def test_of_a_price_without_end_that_has_the_tax_the_most_stays_without_end(tax_is, least):
    facts = {MAKER: MakerFacts(maker=MAKER, country="GB")}
    rules = uk(price_has_tax=True, tax_is=tax_is)
    (cost,) = landed(quote(Span(Decimal(5), None)), imports=rules, offers=(offer("road", 200),), makers=facts)

    assert (least, OPEN) == (cost.low, cost.high)


def test_sales_tax_without_a_rate_is_a_gap_unless_it_is_settled():
    near, settled = uk(tax=None), uk(tax=None, price_has_tax=True)

    assert [["sales tax"], []] == [[gap.name for gap in costed(rules, country="GB").gaps] for rules in (near, settled)]


def test_without_import_rules_there_is_no_duty_rate():
    (reading,) = costed(None).readings

    assert duty_percent(reading.situation) is None


def taxed(fee):
    (cost,) = landed(
        quote(3, covers="goods"),
        offers=(offer("sea", 40, covers="door to door"),),
        imports=uk(charges=(fee,)),
        brief=Brief(item="mug", quantity=100, destination="GB", currency="GBP"),
    )
    return lines(cost)["import tax"], cost.notes


def test_a_fee_on_customs_value_is_in_the_tax_base_where_it_says_so():
    """By hand: 20 % of 340 + 13.60 + 3.40 = 357.00 (UK: VAT value holds costs to the door, HMRC manual IMPS04150)."""
    fee = charge("Fee", None, "clearance", percent=1, of="customs value", in_tax_base=True, group="border")
    ways = [fee, replace(fee, in_tax_base=None), replace(fee, in_tax_base=False)]

    assert [Decimal("71.40"), Decimal("71.40"), Decimal("70.72")] == [taxed(each)[0] for each in ways]


def test_a_fee_on_the_tax_itself_is_in_the_tax_base_at_its_least_alone_and_that_is_said():
    """By hand: 20 % of 353.60 + 12 = 73.12."""
    fee = charge("Fee", None, "clearance", percent="2.5", of="duty and tax", minimum=Decimal(12), group="border")
    found = [taxed(fee), taxed(replace(fee, minimum=Decimal(1))), taxed(replace(fee, minimum=None))]
    said = [[note for note in notes if note.startswith("Fee")] for _, notes in found]

    assert [Decimal("73.12"), Decimal("70.92"), Decimal("70.72")] == [tax for tax, _ in found]
    assert [
        [],
        ["Fee: a part of the tax itself, so import tax is charged on its least, 1.00 GBP, alone"],
        ["Fee: a part of the tax itself, so import tax is charged on none of it"],
    ] == said


def test_packing_that_the_buyer_pays_for_counts_into_the_customs_value():
    """By hand: 4 % of 300 + 50 + 40 (Agreement on customs valuation, article 8.1(a): from memory)."""
    (cost,) = landed(
        quote(3, covers=None, term="EXW", term_place="factory"),
        offers=(offer("sea", 40, covers="door to door"),),
        shipping_charges=(charge("Packing", 50, "packing", group="freight"),),
        brief=Brief(item="mug", quantity=100, destination="GB", currency="GBP"),
    )

    assert (Decimal("50.00"), Decimal("15.60")) == (lines(cost)["charge:Packing"], lines(cost)["duty"])


@pytest.mark.parametrize(
    ("has_tax", "tax_is", "words"),
    [
        (True, "cost", "200.00 GBP at 20 % is in the price of 1200.00 GBP already"),
        (None, None, "20 % of 1200.00 GBP, inside the price or on top, as price_has_tax says; a cost or not"),
        (False, "recoverable", "20 % of 1200.00 GBP, on top of the price; comes back"),
    ],
)
def test_a_sales_tax_shows_how_much_it_is_and_of_what(has_tax, tax_is, words):
    assert words == line_of("sales tax", price_has_tax=has_tax, tax_is=tax_is).working


def test_where_tax_may_come_back_from_the_price_the_least_names_the_rate_that_comes_back():
    line = line_of("sales tax", tax=(10, 20), price_has_tax=None, tax_is="recoverable")

    assert Decimal(-200) == line.low  # 20 % inside 1200, not 10 %, which are 109.09
    assert "20 % of 1200.00 GBP, inside the price or on top, as price_has_tax says; comes back" == line.working


def test_where_it_is_a_cost_each_end_names_its_own_rate():
    line = line_of("sales tax", tax=(10, 20), price_has_tax=None, tax_is="cost")
    of = "of 1200.00 GBP, inside the price or on top, as price_has_tax says; a cost"

    assert (0, 240, f"least: 10 % {of}; most: 20 % {of}") == (line.low, line.high, line.working)


def test_what_is_known_of_a_sales_tax_without_a_rate_is_not_denied():
    rules = [uk(tax=None, tax_is=None, price_has_tax=has_tax) for has_tax in (None, True, False)]
    said = [costed(each, country="GB").gaps[0].words for each in rules]

    assert [True, False, False] == ["no word whether the price has it" in words for words in said]


@pytest.mark.parametrize(
    ("rules", "country", "covers", "unsaid"),
    [
        (uk(), "GB", "goods", True),
        (uk(tax=None), "GB", "goods", True),
        (None, "GB", "goods", True),
        (uk(tax=(0, 20)), "GB", "goods", True),
        (uk(tax=0), "GB", "goods", False),  # there is none
        (uk(price_has_tax=True), "GB", "goods", False),
        (uk(price_has_tax=False), "GB", "goods", False),
        (uk(), "CN", "goods", False),
        (uk(), "GB", "to my door, duty and tax paid", False),
    ],
)
def test_whether_a_price_has_sales_tax_inside_is_open_until_a_key_or_the_reply_says_so(rules, country, covers, unsaid):
    facts = {MAKER: MakerFacts(maker=MAKER, country=country)}
    (cost,) = landed(quote(5, covers=covers), imports=rules, offers=EXPRESS, makers=facts)

    assert unsaid is sales_tax_unsaid(cost.readings[0].situation)


@pytest.mark.parametrize(
    ("rules", "country", "covers", "on_top"),
    [
        (uk(price_has_tax=False), "GB", "goods", Span.of(20)),
        (uk(tax=(10, 20), price_has_tax=False), "GB", "goods", Span.of(10, 20)),
        (uk(), "GB", "goods", Span.of(0, 20)),  # it may be inside
        (None, "GB", "goods", Span(Decimal(0), None)),  # nor is there a rate
        (uk(tax=None, price_has_tax=False), "GB", "goods", Span(Decimal(0), None)),
        (uk(price_has_tax=True), "GB", "goods", None),
        (uk(tax=0, price_has_tax=False), "GB", "goods", None),
        (uk(price_has_tax=False), "CN", "goods", None),
        (uk(price_has_tax=False), "GB", "to my door, duty and tax paid", None),
    ],
)
def test_of_sales_tax_on_top_the_percent_is_told_from_0_where_it_may_be_inside(rules, country, covers, on_top):
    facts = {MAKER: MakerFacts(maker=MAKER, country=country)}
    (cost,) = landed(quote(5, covers=covers), imports=rules, offers=EXPRESS, makers=facts)

    assert on_top == sales_tax_on_top(cost.readings[0].situation)


@pytest.mark.parametrize("said", [{"covers": "to my door, duty and tax paid"}, {"covers": None, "term": "DDP"}])
def test_a_price_of_one_maker_that_pays_all_counts_as_it_stands(said):
    rows = quote(5, **said), quote(5, maker="Oxlip", row=3)
    facts = {maker: MakerFacts(maker=maker, country="GB") for maker in (MAKER, "Oxlip")}
    costs = landed(*rows, makers=facts, offers=(offer("road", 200, maker="Oxlip"),))

    assert [(1000, 1000), (1200, 1440)] == [(cost.low, cost.high) for cost in costs]
