from decimal import Decimal

import pytest
from cases import AS_OF, make_case, numbers
from hypothesis import given
from hypothesis import strategies as st

from scorecard.assessment import assess
from scorecard.brief import Brief
from scorecard.report.receipts import receipts_of, signed, weightless_sentence


def amount(text):
    return Decimal(text.replace("\N{MINUS SIGN}", "-"))


def receipt(case):
    assessment = assess(case, as_of=AS_OF)
    return receipts_of(assessment, assessment.ranking.order)[0]


@given(
    st.lists(st.tuples(st.floats(0.1, 20), st.one_of(st.none(), st.floats(0, 100))), min_size=1, max_size=12),
)
def test_every_receipt_adds_up_as_it_is_written(pairs):
    criteria = [numbers(f"c{at}", weight) for at, (weight, _) in enumerate(pairs)]
    one = receipt(make_case(criteria, {"Brightholm": [answer for _, answer in pairs]}))
    lines = sum(amount(line.figure) for line in one.lines)
    assert Decimal(one.score) == 100 + lines + amount(one.rounding or "0.0")


@given(st.lists(st.floats(0, 100), min_size=2, max_size=9))
def test_the_largest_loss_comes_first(answers):
    criteria = [numbers(f"c{at}", 1) for at in range(len(answers))]
    losses = [amount(line.figure) for line in receipt(make_case(criteria, {"Brightholm": answers})).lines]
    assert sorted(losses) == losses


def test_there_is_a_line_for_every_criterion_that_has_a_weight():
    criteria = [numbers("a", 1), numbers("b", 0), numbers("c", 1), numbers("d", 0)]
    one = receipt(make_case(criteria, {"Brightholm": [100, 5, 100, None]}))
    assert ["A", "C"] == [line.title for line in one.lines]


@pytest.mark.parametrize(
    ("weights", "words"),
    [
        ((1, 1), None),
        ((1, 0), "B has weight 0, so no receipt lists it."),
        ((0, 1, 0), "A and C have weight 0, so no receipt lists them."),
    ],
)
def test_criteria_without_weight_are_listed_once(weights, words):
    criteria = [numbers(key, weight) for key, weight in zip("abc", weights, strict=False)]
    case = make_case(criteria, {"Brightholm": [5] * len(criteria)})
    assert words == weightless_sentence(assess(case, as_of=AS_OF))


def test_a_minimum_stands_beside_what_is_wanted():
    criterion = numbers("minimum_order", 1, (1, 100), (2, 0), per_quantity=True)
    case = make_case(
        [criterion, numbers("b", 4)],
        {"Brightholm": [400, 100]},
        minimum_per=("order",),
        brief=Brief(item="mug", quantity=200),
    )
    line = receipt(case).lines[0]
    assert "Minimum order: 400 for 200: −20.0" == f"{line.title}: {line.answer}: {line.figure}"


def test_rounded_lines_that_miss_the_score_say_by_how_much():
    # three criteria, each losing 100/3 · 0.1 = 3.333…: 100 − 3 · 3.3 = 90.1, and the score is 90.0
    one = receipt(make_case([numbers(key, 1) for key in "abc"], {"Brightholm": [90, 90, 90]}))
    assert ("−3.3", "−0.1", "90.0") == (one.lines[0].figure, one.rounding, one.score)


def test_lines_that_meet_the_score_need_no_more():
    assert receipt(make_case([numbers("a", 1)], {"Brightholm": [90]})).rounding is None


def test_nil_has_no_sign():
    assert "0.0" == signed(Decimal("-0.0"))
