"""Answers and limits in words."""

import re

import numpy as np
import pytest
from cases import AS_OF, choices, make_case, numbers
from hypothesis import given
from hypothesis import strategies as st

from scorecard.brief import Brief
from scorecard.counting import count
from scorecard.criteria import Limit
from scorecard.reasons import answer_words, range_words, reasons_against, tidy, what_lets_in, why_ruled_out, with_unit
from scorecard.screening import screen

INF = np.inf
MUGS = Brief(item="enamel mug", quantity=200, designs=4)
METHODS = {"transfer": 100, "screen print": 80, "sticker": 0}


def said_of(criterion, typed, **more):
    case = make_case([criterion], {"Fernhill": [typed]}, **more)
    counting = count(criterion, case, AS_OF)
    return why_ruled_out(criterion, counting, 0), what_lets_in(criterion, counting, 0)


def minimum(limit=None):
    return numbers("minimum_order", 1, (1, 100), (2, 0), per_quantity=True, unit="pieces", limit=limit)


@pytest.mark.parametrize(
    ("low", "high", "words"),
    [
        (3, 3, "3"),
        (3, 5, "3 to 5"),
        (2.5, INF, "at least 2.5"),
        (-INF, 24, "up to 24"),
        (-INF, INF, "anything"),
        (1 / 3, 1, "0.3333 to 1"),
    ],
)
def test_a_range_reads_as_a_person_would_say_it(low, high, words):
    assert words == range_words(low, high)


def test_a_tidy_number_has_at_most_four_decimals():
    assert ("0.3333", "0.3", "12") == (tidy(1 / 3), tidy(0.1 + 0.2), tidy(12.0))


@pytest.mark.parametrize(("unit", "words"), [("", "5"), ("%", "5%"), ("days", "5 days")])
def test_a_unit_stands_after_the_number(unit, words):
    assert words == with_unit("5", unit)


@pytest.mark.parametrize(("low", "words"), [(np.nan, "unknown"), (1.0, "screen print")])
def test_a_choice_reads_as_the_criteria_file_spells_it(low, words):
    assert words == answer_words(choices("method", 1, METHODS), low, low)


def test_a_number_reads_with_its_unit():
    assert "3 to 5 days" == answer_words(numbers("response", 1, unit="days"), 3, 5)


def test_a_choice_that_is_not_accepted_says_so():
    criterion = choices("method", 1, METHODS, limit=Limit(none_of=("sticker",)))
    assert ("Method: “sticker” is not accepted", "Method: transfer or screen print") == said_of(criterion, "sticker")


def test_where_no_choice_passes_nothing_lets_a_maker_in():
    criterion = choices("method", 1, METHODS, limit=Limit(none_of=tuple(METHODS)))
    assert "Method: none of the choices passes" == said_of(criterion, "sticker")[1]


def test_a_number_below_its_limit_says_so():
    criterion = numbers("rating", 1, limit=Limit(at_least=4.0))
    assert ("Rating: 3.9 is below the limit of 4", "Rating: at least 4") == said_of(criterion, 3.9)


def test_a_number_above_its_limit_says_so():
    criterion = numbers("lead_time", 1, unit="days", limit=Limit(at_most=30))
    expected = "Lead time: 31 to 40 days is above the limit of 30", "Lead time: at most 30 days"
    assert expected == said_of(criterion, (31, 40))


@pytest.mark.parametrize(("typed", "why"), [(2, "below the limit of 3"), (6, "above the limit of 5")])
def test_a_number_beside_a_window_says_on_which_side(typed, why):
    criterion = numbers("size", 1, unit="cm", limit=Limit(at_least=3, at_most=5))
    assert (f"Size: {typed} cm is {why}", "Size: 3 to 5 cm") == said_of(criterion, typed)


def test_a_minimum_says_what_it_counts_as_and_what_to_bring_it_down_to():
    # 400 of the 50 of one design is 8; 2.5 of them are 125 pieces
    found = said_of(minimum(Limit(at_most=2.5)), 400, brief=MUGS, minimum_per=("design",))
    why = "Minimum order: 400 pieces per design is 8× what is wanted, above the limit of 2.5×"
    assert (why, "Minimum order: at most 125 pieces per design") == found


def test_per_an_unknown_unit_each_unit_has_its_own_number():
    # 2.5 times all 200 pieces, were the minimum per order; 2.5 times the 50 of a design, were it per design
    found = said_of(minimum(Limit(at_most=2.5)), 600, brief=MUGS, minimum_per=(None,))
    why = (
        "Minimum order: 600 pieces is 3× what is wanted if it is per order, 12× if per design, above the limit of 2.5×"
    )
    assert (why, "Minimum order: at most 500 pieces if per order, at most 125 pieces if per design") == found


def test_with_one_design_an_unknown_unit_makes_no_difference():
    brief = Brief(item="enamel mug", quantity=200)
    found = said_of(minimum(Limit(at_most=2.5)), 600, brief=brief, minimum_per=(None,))
    assert "Minimum order: at most 500 pieces" == found[1]


def test_a_unit_of_which_the_brief_gives_no_number_has_one_for_either_end():
    found = said_of(minimum(Limit(at_most=2.5)), 600, brief=MUGS, minimum_per=("colour",))
    expected = "Minimum order: at most 500 pieces per colour with 1 colour, less with more colours"
    assert expected == found[1]


def test_an_unknown_answer_that_cannot_pass_says_so():
    criterion = numbers("rating", 1, within=(0, 5), limit=Limit(at_least=6))
    assert "Rating: unknown is below the limit of 6" == said_of(criterion, None)[0]


@pytest.mark.parametrize("typed", [501, 600])
@pytest.mark.parametrize(
    ("unit", "named"), [("order", "order"), ("design", "design"), (None, "order"), (None, "design")]
)
def test_what_is_said_to_let_a_maker_in_does_for_the_unit_that_it_is_said_of(typed, unit, named):
    criterion = minimum(Limit(at_most=2.5))
    needed = said_of(criterion, typed, brief=MUGS, minimum_per=(unit,))[1]
    enough = float(re.search(rf"at most (\d+) pieces (if )?per {named}", needed)[1])
    case = make_case([criterion], {"Fernhill": [enough]}, brief=MUGS, minimum_per=(named,))
    assert 2.5 == count(criterion, case, AS_OF).tested.low[0]


@pytest.mark.parametrize(
    ("typed", "unit", "words"),
    [(1, "pieces", "1 piece"), (1, "working days", "1 working day"), (1, "cm", "1 cm"), (2, "days", "2 days"),
     (1, "%", "1%"), (1, "carats", "1 carats"), (0.5, "days", "0.5 days")],
)  # fmt: skip
def test_one_of_a_well_known_unit_is_singular(typed, unit, words):
    assert words == answer_words(numbers("a", 1, unit=unit), typed, typed)


def passes(criterion, typed, brief, unit):
    case = make_case([criterion], {"Fernhill": [typed]}, brief=brief, minimum_per=(unit,))
    return not screen([criterion], [count(criterion, case, AS_OF)]).fails[0, 0]


def test_pieces_that_let_a_maker_in_are_whole():
    # 100 pieces in 3 designs, twice as many at most: 66.67 of a design, of which 66 pass
    found = said_of(minimum(Limit(at_most=2)), 400, brief=Brief(item="mug", quantity=100, designs=3),
                    minimum_per=("design",))  # fmt: skip
    assert "Minimum order: at most 66 pieces per design" == found[1]


@given(st.integers(1, 500), st.integers(1, 9), st.floats(0.1, 9), st.sampled_from(["order", "design"]))
def test_the_most_pieces_said_to_let_a_maker_in_do_and_one_more_does_not(quantity, designs, most, unit):
    criterion, brief = minimum(Limit(at_most=most)), Brief(item="mug", quantity=quantity, designs=designs)
    needed = said_of(criterion, 99_999, brief=brief, minimum_per=(unit,))[1]
    enough = int(re.search(r"at most (\d+) piece", needed)[1])
    assert [True, False] == [passes(criterion, typed, brief, unit) for typed in (enough, enough + 1)]


@given(st.floats(0.001, 1e6), st.booleans())
def test_a_number_said_to_let_a_maker_in_does(end, is_most):
    criterion = numbers("weight", 1, unit="kg", limit=Limit(at_most=end) if is_most else Limit(at_least=end))
    needed = said_of(criterion, 1e7 if is_most else 0.0)[1]
    assert passes(criterion, float(needed.split()[-2]), Brief(item="mug", quantity=1), None)


def test_a_window_without_a_round_number_is_told_as_it_is():
    criterion = numbers("colours", 1, unit="colours", limit=Limit(at_least=3.2, at_most=3.8))
    assert "Colours: 3.2 to 3.8 colours" == said_of(criterion, 5)[1]


def test_each_limit_that_a_maker_fails_speaks_against_it():
    limited = choices("print_method", 1, METHODS, limit=Limit(none_of=("sticker",)))
    case = make_case([numbers("years", 1, (0, 0), (9, 100)), limited], {"Fernhill": [3, 2], "Dale": [3, 0]})

    assert [1, 0] == [len(reasons_against(case, maker, AS_OF)) for maker in (0, 1)]
    assert "sticker" in reasons_against(case, 0, AS_OF)[0]


def test_without_limits_nothing_speaks_against_a_maker():
    assert () == reasons_against(make_case([numbers("years", 1, (0, 0), (9, 100))], {"Fernhill": [3]}), 0, AS_OF)
