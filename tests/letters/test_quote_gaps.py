"""What a quote leaves out, as questions to its maker."""

from dataclasses import replace

import pytest
from cases import AS_OF
from ordered import case_of
from quoted import quote, uk

from scorecard.assessment import assess
from scorecard.costed import with_costs
from scorecard.costing.inputs import MakerFacts
from scorecard.letters.messages import round_of
from scorecard.letters.quote_gaps import gap_questions
from scorecard.letters.wording import KINDS, Wording, shipped

WORDING = Wording(**{kind: shipped(kind) for kind in KINDS})


def assessed(**changed):
    case = case_of({"Ash": 90, "Birch": 70}, {"Ash": 5})
    (row,) = case.costs.quotes
    return assess(
        with_costs(replace(case, costs=replace(case.costs, quotes=(replace(row, **changed),))), AS_OF), as_of=AS_OF
    )


def test_a_whole_quote_leaves_nothing_to_ask():
    assert [] == list(gap_questions(assessed(), 0))


def test_a_maker_without_a_quote_is_not_asked_of_it():
    assert [] == list(gap_questions(assessed(), 1))


def test_currency_place_freight_and_further_costs_are_asked_for():
    asked = [text for text, _ in gap_questions(assessed(covers="goods", term="FOB", currency_named=False), 0)]

    assert "Your price names no currency. In which currency is it?" == asked[0]
    assert "Your price is FOB. Which place does it name?" == asked[1]
    assert "What does freight cost for " in asked[2]
    assert "arrival charges" in asked[3]
    assert not any("duty" in text for text in asked)


def test_what_a_quote_leaves_out_makes_a_message_due_and_is_counted():
    message = next(one for one in round_of(assessed(covers="goods"), WORDING).messages if one.maker == 0)

    assert (True, "short", len(message.questions)) == (message.has_quoted, message.due, message.number)
    assert "What does freight cost for " in message.short


@pytest.mark.parametrize(
    ("has_tax", "asked"),
    [
        (
            None,
            [
                (
                    "Does your price have sales tax inside, or does it come on top?",
                    "price_has_tax under [import] of the criteria file",
                )
            ],
        ),
        (True, []),
    ],
)
def test_a_maker_in_the_same_country_is_asked_whether_its_price_has_sales_tax_inside(has_tax, asked):
    near = {"Ash": MakerFacts(maker="Ash", country="GB")}
    row = quote(5, maker="Ash", covers="goods and freight", way="road", days=30)
    rules = uk(price_has_tax=has_tax)
    case = with_costs(case_of({"Ash": 90, "Birch": 70}, {"Ash": row}, makers=near, imports=rules), AS_OF)
    found = gap_questions(assess(case, as_of=AS_OF), 0)

    assert asked == [one for one in found if "sales tax" in one[0]]
