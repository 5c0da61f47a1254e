"""Limits: ruled out where every value allowed fails, an open question where some do; checked value by value."""

import numpy as np
import pytest
from cases import AS_OF, choices, make_case, numbers
from hypothesis import given
from hypothesis import strategies as st

from scorecard.answers import Answers
from scorecard.counting import count
from scorecard.criteria import Limit, Steady
from scorecard.screening import allowed_that_pass, allows, choices_against, numbers_against, screen

METHODS = ("transfer", "screen print", "sticker")
ENDS = st.tuples(st.integers(-9, 9), st.integers(-9, 9)).map(sorted)
BOUND = st.one_of(st.none(), st.integers(-9, 9))


def numbers_found(limit, low, high):
    fails, may_fail = numbers_against(limit, Answers(np.array([float(low)]), np.array([float(high)])))
    return bool(fails[0]), bool(may_fail[0])


def choice_found(limit, position):
    fails, may_fail = choices_against(limit, METHODS, Answers(np.array([position]), np.array([position])))
    return bool(fails[0]), bool(may_fail[0])


@pytest.mark.parametrize(
    ("low", "high", "found"),
    [
        (4.0, 4.0, (False, False)),
        (3.99, 3.99, (True, False)),
        (3.0, 3.9, (True, False)),
        (3.0, 4.0, (False, True)),
        (4.0, np.inf, (False, False)),
        (-np.inf, 3.5, (True, False)),
        (-np.inf, np.inf, (False, True)),
    ],
)
def test_at_least_4_looks_at_every_value_allowed(low, high, found):
    assert found == numbers_found(Limit(at_least=4.0), low, high)


@given(BOUND, BOUND, ENDS)
def test_who_fails_and_who_may_is_found_value_by_value(at_least, at_most, ends):
    low, high = ends
    passes = [(at_least is None or v >= at_least) and (at_most is None or v <= at_most) for v in range(low, high + 1)]
    assert (not any(passes), any(passes) and not all(passes)) == numbers_found(
        Limit(at_least=at_least, at_most=at_most), low, high
    )


def test_a_quotient_at_its_limit_passes_whatever_the_last_bit():
    # 0.1 + 0.2 is above 0.3 by the last bit alone
    assert (False, False) == numbers_found(Limit(at_most=0.3), 0.1 + 0.2, 0.1 + 0.2)


def test_a_limit_that_nothing_can_pass_rules_out_even_an_unknown_answer():
    assert (True, False) == numbers_found(Limit(at_least=5, at_most=3), -np.inf, np.inf)


@pytest.mark.parametrize(
    ("limit", "position", "found"),
    [
        (Limit(none_of=("sticker",)), 2.0, (True, False)),
        (Limit(none_of=("sticker",)), 0.0, (False, False)),
        (Limit(none_of=("sticker",)), np.nan, (False, True)),
        (Limit(one_of=("transfer",)), 1.0, (True, False)),
        (Limit(one_of=METHODS), np.nan, (False, False)),
        (Limit(none_of=METHODS), np.nan, (True, False)),
        (Limit(one_of=("transfer", "sticker"), none_of=("sticker",)), 2.0, (True, False)),
    ],
)
def test_a_limit_on_choices_looks_at_every_choice_there_is(limit, position, found):
    assert found == choice_found(limit, position)


@pytest.mark.parametrize(("choice", "passes"), [("transfer", True), ("sticker", False), ("screen print", False)])
def test_one_of_and_none_of_hold_together(choice, passes):
    assert passes == allows(Limit(one_of=("transfer", "sticker"), none_of=("sticker",)), choice)


def test_a_maker_is_ruled_out_by_any_one_limit():
    criteria = [
        numbers("service", 1, limit=Limit(at_least=3)),
        choices("method", 1, {"a": 1, "b": 0}, limit=Limit(none_of=("b",))),
        numbers("rating", 1),
    ]
    case = make_case(criteria, {"Fernhill": [3, "a", 0], "Brightholm": [2, "a", 0], "Cold Quay": [None, "b", 0]})
    found = screen(criteria, [count(criterion, case, AS_OF) for criterion in criteria])
    assert [False, True, True] == found.ruled_out.tolist()


def test_an_open_limit_rules_nobody_out():
    criteria = [numbers("service", 1, limit=Limit(at_least=3))]
    case = make_case(criteria, {"Fernhill": [None]})
    found = screen(criteria, [count(criteria[0], case, AS_OF)])
    assert (False, True) == (bool(found.ruled_out[0]), bool(found.may_fail[0, 0]))


def passing_span(typed, **more):
    criterion = numbers("a", 1, (0, 0), (10, 100), **more)
    counts = {"a": Answers(np.array([1.0]), np.array([1.0]))}
    case = make_case([criterion], {"Fernhill": [typed]}, counts=counts)
    found = allowed_that_pass(criterion, count(criterion, case, AS_OF))
    return pytest.approx(found.low[0]), pytest.approx(found.high[0])


def test_of_a_range_that_may_fail_only_what_passes_is_left():
    assert (3, 5) == passing_span((2, 5), limit=Limit(at_least=3))


def test_without_a_limit_everything_is_left():
    assert (2, 5) == passing_span((2, 5))


def test_what_passes_is_held_to_the_limit_before_it_is_steadied():
    # 3 to 5, drawn half way to 4
    steady = Steady(count_column="n", usual=4, usual_counts_as=1)
    assert (3.5, 4.5) == passing_span((2, 5), limit=Limit(at_least=3), steady=steady)


def test_open_limits_stand_by_maker_and_criterion():
    limited = [numbers(key, 1, limit=Limit(at_least=3)) for key in "abc"]
    case = make_case(limited, {"Fernhill": [3, None, 2], "Brightholm": [3, 3, None]})
    found = screen(limited, [count(criterion, case, AS_OF) for criterion in limited])

    assert [[False, True, False], [False, False, True]] == found.may_fail.tolist()
    assert [[False, False, True], [False, False, False]] == found.fails.tolist()


def test_a_limit_to_nothing_at_all_lets_nothing_at_all_pass():
    assert (False, False) == numbers_found(Limit(at_least=0, at_most=0), 0, 0)


def test_of_one_choice_alone_an_unknown_answer_is_settled():
    unknown = Answers(np.array([np.nan]), np.array([np.nan]))
    fails, may_fail = choices_against(Limit(one_of=("paid",)), ("paid",), unknown)

    assert ([False], [False]) == (fails.tolist(), may_fail.tolist())
