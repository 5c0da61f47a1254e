"""Sales tax on an order sheet in words."""

import pytest
from quoted import MAKER, landed, quote, uk

from scorecard.costing.inputs import MakerFacts
from scorecard.letters.sales_tax_words import sales_tax_words, tax_notes

INSIDE = "any is inside these prices, and none comes on top"


def situation(country="GB", **rules):
    facts = {MAKER: MakerFacts(maker=MAKER, country=country)}
    (cost,) = landed(quote(5), makers=facts, imports=uk(**rules))
    return cost.readings[0].situation


@pytest.mark.parametrize(
    ("country", "rules", "words"),
    [
        ("GB", {}, ""),
        ("GB", {"price_has_tax": True}, INSIDE),
        ("GB", {"price_has_tax": False}, None),  # the bill has a line of it
        ("GB", {"tax": 0}, None),
        ("CN", {"price_has_tax": True}, None),
    ],
)
def test_a_sheet_says_whether_the_price_has_sales_tax_inside(country, rules, words):
    assert words == sales_tax_words(situation(country, **rules))


@pytest.mark.parametrize(
    ("country", "has_tax", "notes"), [("IM", False, 1), ("IM", None, 1), ("IM", True, 0), ("GB", False, 0)]
)
def test_between_two_countries_without_a_border_the_tax_office_is_to_be_asked(country, has_tax, notes):
    found = list(tax_notes(situation(country, price_has_tax=has_tax)))

    assert [True] * notes == [one.endswith("ask your tax office before you sign") for one in found]
