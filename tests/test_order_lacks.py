"""What an order lacks of the sales tax, where no border lies between maker and buyer."""

import pytest
from quoted import MAKER, landed, quote, uk

from scorecard.costing.inputs import MakerFacts
from scorecard.order_lacks import of_sales_tax

PRICE_HAS_TAX, TAX_PERCENT = (f"{key} in [import] of the criteria file" for key in ("price_has_tax", "tax_percent"))
WHETHER = "whether the price has sales tax inside"


def lacks(imports, country="GB", covers="goods"):
    facts = {MAKER: MakerFacts(maker=MAKER, country=country)}
    (cost,) = landed(quote(5, covers=covers), makers=facts, imports=imports)
    return [(one.what, one.where) for one in of_sales_tax(cost.readings[0].situation)]


@pytest.mark.parametrize("imports", [uk(), uk(tax=None), None], ids=["a rate", "no rate", "no rules"])
def test_whether_the_price_has_the_tax_inside_is_missing_at_home(imports):
    assert [(WHETHER, PRICE_HAS_TAX)] == lacks(imports)


def test_it_is_missing_too_of_another_country_without_a_border():
    assert [(WHETHER, PRICE_HAS_TAX)] == lacks(uk(), country="IM")


@pytest.mark.parametrize(
    ("tax", "has_tax", "tax_is", "what"),
    [
        (None, False, "cost", "one exact rate of the sales tax that comes on top of the price"),
        ((10, 20), False, "cost", "one exact rate of the sales tax that comes on top of the price"),
        (None, True, "recoverable", "the rate of the sales tax inside the price, of which a part may come back"),
        (None, True, None, "the rate of the sales tax inside the price, of which a part may come back"),
    ],
)
def test_the_rate_is_missing_where_what_is_paid_hangs_on_it(tax, has_tax, tax_is, what):
    assert [(what, TAX_PERCENT)] == lacks(uk(tax=tax, price_has_tax=has_tax, tax_is=tax_is))


@pytest.mark.parametrize(
    ("imports", "where"),
    [
        (uk(price_has_tax=False), {}),
        (uk(price_has_tax=True), {}),
        (uk(tax=None, price_has_tax=True), {}),
        (uk(tax=(10, 20), price_has_tax=True), {}),
        (uk(tax=0), {}),
        (uk(), {"country": "CN"}),
        (uk(), {"country": None}),
        (uk(), {"covers": "to my door, duty and tax paid"}),
    ],
)
def test_nothing_is_missing_where_it_is_settled_or_does_not_matter(imports, where):
    assert [] == lacks(imports, **where)
