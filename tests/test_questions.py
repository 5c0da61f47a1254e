"""Open answers: whether one alone could change the leader, at which, and what it carries.

The second computation tries answers one by one on a fine grid, with points, limits and scores of its own.
"""

from itertools import product

import numpy as np
import pytest
from cases import choices, make_case, numbers, rated, standing_of
from hypothesis import assume, given, settings
from trying import passes, standings, tries, worth

from scorecard.answers import Answers
from scorecard.brief import Brief
from scorecard.criteria import Limit, Steady
from scorecard.questions import questions

INF = np.inf
MUGS = Brief(item="enamel mug", quantity=200, designs=4)


def asked(case):
    return questions(standing_of(case))


def first_asked(case):
    return asked(case)[0]


def first_with(standing, maker, at, answer):
    """Return who is strictly first once one answer is known; None where several are level, or nobody is left."""
    scores = {one: float(standing.ranking.scores[one]) for one in standing.ranking.order}
    if passes(standing.criteria[at], answer):
        change = worth(standing.criteria[at], answer) - standing.points.counted[maker, at]
        scores[maker] += standing.shares[at] * change
    else:
        del scores[maker]
    best = sorted(scores.items(), key=lambda one: -one[1])[:2]
    if not best or (len(best) == 2 and best[0][1] - best[1][1] <= 1e-9):
        return None
    return best[0][0]


def changes(standing, first):
    return first is not None and (first,) != standing.ranking.leaders


@settings(max_examples=100)
@given(standings())
def test_an_answer_on_the_grid_that_changes_the_leader_is_found(standing):
    found = {(one.maker, one.criterion): one for one in questions(standing)}
    for (maker, at), one in found.items():
        if any(changes(standing, first_with(standing, maker, at, answer)) for answer in tries(standing, maker, at)):
            assert one.could_change_leader


@settings(max_examples=100)
@given(standings())
def test_who_leads_then_does_so_just_inside_the_answers(standing):
    for one in questions(standing):
        for turn in one.turns:
            for low, high in turn.answers:
                inside = (max(low, -50.0) + min(high, 50.0)) / 2
                assert turn.leader_then == first_with(standing, one.maker, one.criterion, inside)


@settings(max_examples=100)
@given(standings())
def test_who_leads_then_does_so_all_over_the_answers(standing):
    for one in questions(standing):
        for turn, answer in product(one.turns, tries(standing, one.maker, one.criterion)):
            if any(low + 1e-6 < answer < high - 1e-6 for low, high in turn.answers):
                assert turn.leader_then == first_with(standing, one.maker, one.criterion, answer)


@settings(max_examples=100)
@given(standings())
def test_outside_the_answers_another_leads_or_several_are_level(standing):
    for one in questions(standing):
        if not one.could_change_leader:
            continue
        for answer in tries(standing, one.maker, one.criterion):
            if not any(low - 1e-6 <= answer <= high + 1e-6 for low, high in one.answers):
                assert one.leader_then != first_with(standing, one.maker, one.criterion, answer)


@settings(max_examples=100)
@given(standings())
def test_every_leader_that_an_answer_on_the_grid_makes_is_named(standing):
    for one in questions(standing):
        named = {turn.leader_then for turn in one.turns}
        firsts = {
            first_with(standing, one.maker, one.criterion, at) for at in tries(standing, one.maker, one.criterion)
        }
        assert {first for first in firsts if changes(standing, first)} <= named


@settings(max_examples=100)
@given(standings())
def test_whatever_could_change_the_leader_has_answers_that_do(standing):
    assert all(one.answers for one in questions(standing) if one.could_change_leader)


@settings(max_examples=50)
@given(standings())
def test_every_open_answer_of_a_ranked_maker_is_asked_once(standing):
    expected = {
        (maker, at)
        for maker in standing.ranking.order
        for at, counting in enumerate(standing.countings)
        if counting.typed.low[maker] != counting.typed.high[maker]
    }
    found = questions(standing)
    assert (expected, len(expected)) == ({(one.maker, one.criterion) for one in found}, len(found))


@given(standings())
def test_those_that_could_change_the_leader_come_first_then_by_what_they_carry(standing):
    order = [(not one.could_change_leader, -one.carries) for one in questions(standing)]
    assert sorted(order) == order


@given(standings())
def test_what_an_answer_carries_is_its_share_of_its_span(standing):
    for one in questions(standing):
        span = standing.points.high[one.maker, one.criterion] - standing.points.low[one.maker, one.criterion]
        assert pytest.approx(standing.shares[one.criterion] * span) == one.carries


@given(standings())
def test_a_criterion_without_weight_changes_the_leader_by_a_limit_alone(standing):
    weightless = [one for one in questions(standing) if standing.shares[one.criterion] == 0]
    assume(weightless)
    assert all(one.by in (None, "limit") for one in weightless)


# by hand


def test_the_answer_that_lifts_a_rival_is_named():
    # 50 leads; Brightholm's 30 counts for 20 to 80, and more than 50 puts it first
    one = first_asked(rated((1,), {"Fernhill": [50], "Brightholm": [(20, 80)]}, unknown=30))
    assert (1, "points", 1, ((50.0, 80.0),), 60.0) == (one.maker, one.by, one.leader_then, one.answers, one.carries)


def test_the_answer_that_sinks_the_leader_is_named():
    one = first_asked(rated((1,), {"Fernhill": [50], "Brightholm": [(20, 80)]}, unknown="best"))
    assert (1, "points", 0, ((20.0, 50.0),)) == (one.maker, one.by, one.leader_then, one.answers)


def test_an_answer_that_at_best_draws_level_changes_nothing():
    assert not first_asked(rated((1,), {"Fernhill": [50], "Brightholm": [(20, 50)]})).could_change_leader


def test_an_answer_of_a_joint_leader_that_parts_the_two_changes_the_leader():
    one = first_asked(rated((1,), {"Fernhill": [50], "Brightholm": [(50, 80)]}, unknown="worst"))
    assert (1, ((50.0, 80.0),)) == (one.leader_then, one.answers)


def test_an_answer_of_a_joint_leader_that_parts_the_two_does_so_either_way():
    one = first_asked(rated((1,), {"Fernhill": [50], "Brightholm": [(20, 80)]}, unknown="middle"))
    expected = [(1, "points", ((50.0, 80.0),)), (0, "points", ((20.0, 50.0),))]
    assert expected == [(turn.leader_then, turn.by, turn.answers) for turn in one.turns]


def test_nobody_follows_a_leader_whose_rivals_are_level():
    case = rated((1,), {"Fernhill": [(20, 80)], "Brightholm": [50], "Cold Quay": [50]}, unknown="best")
    assert not first_asked(case).could_change_leader


def test_one_maker_alone_keeps_its_lead():
    assert not first_asked(rated((1,), {"Fernhill": [None]})).could_change_leader


def test_where_nobody_is_ranked_nothing_is_asked():
    assert () == asked(rated((1, 1), {"Fernhill": [5, None]}, limit=Limit(at_least=10)))


def test_answers_of_a_ruled_out_maker_are_not_asked():
    case = rated((1, 1), {"Fernhill": [5, None], "Brightholm": [20, 20]}, limit=Limit(at_least=10))
    assert () == asked(case)


def two_rated(fernhill, **more):
    """Two makers on a rating and on price; Brightholm has 50 and 50."""
    criteria = [numbers("rating", 1, unknown="best", **more), numbers("price", 1)]
    return make_case(criteria, {"Fernhill": [fernhill, 80], "Brightholm": [50, 50]})


def test_a_limit_that_may_rule_the_leader_out_changes_the_leader():
    # at worst 30 + 80 against 50 + 50: by points Fernhill leads whatever the answer
    one = first_asked(two_rated((30, 60), limit=Limit(at_least=40)))
    assert ("limit", 1, ((30.0, 40.0),)) == (one.by, one.leader_then, one.answers)


def test_answers_that_sink_and_answers_that_rule_out_are_told_together():
    # below 20 by points; above 50 by the limit
    one = first_asked(two_rated((0, 60), limit=Limit(at_most=50)))
    assert ("points", 1, ((0.0, 20.0), (50.0, 60.0))) == (one.by, one.leader_then, one.answers)


def test_an_answer_that_would_lift_a_rival_but_rule_it_out_changes_nothing():
    # above 70 Fernhill would lead; only up to 60 passes
    criteria = [numbers("rating", 1, unknown="worst", limit=Limit(at_most=60)), numbers("price", 1)]
    case = make_case(criteria, {"Fernhill": [(40, 90), 30], "Brightholm": [50, 50]})
    assert not first_asked(case).could_change_leader


def test_answers_that_lift_end_where_the_limit_begins():
    # below 20 or above 60 Brightholm's points beat 50; only from 20 on it passes, and at 20 it is level
    knots = (0, 100), (20, 50), (40, 0), (60, 50), (80, 100)
    criterion = numbers("rating", 1, *knots, limit=Limit(at_least=20), unknown="worst")
    one = first_asked(make_case([criterion], {"Fernhill": [20], "Brightholm": [None]}))
    assert ((60.0, INF),) == one.answers


@pytest.mark.parametrize(
    ("knots", "unknown", "fernhill", "brightholm"),
    [
        (((0, 100), (10, 0), (20, 100)), "worst", [5, 50], [(0, 15), 50]),  # below 5, and above 15, it would rise
        (((0, 0), (10, 100), (20, 0)), "best", [(0, 15), 40], [5, 40]),  # and here sink
    ],
)
def test_an_end_that_is_only_level_is_no_answer_although_a_last_bit_is_over(knots, unknown, fernhill, brightholm):
    criteria = [numbers("rating", 2, *knots, unknown=unknown), numbers("price", 7)]
    one = first_asked(make_case(criteria, {"Fernhill": fernhill, "Brightholm": brightholm}))
    assert [(0.0, pytest.approx(5.0))] == list(one.answers)


def test_an_answer_that_leads_by_no_more_than_counts_for_level_is_no_answer():
    # at 15 and a hair the rating is worth 50 and 2e-9, of which 2/9 count
    criteria = [numbers("rating", 2, (0, 100), (10, 0), (20, 100), unknown="worst"), numbers("price", 7)]
    one = first_asked(make_case(criteria, {"Fernhill": [5, 50], "Brightholm": [(0, 15 + 2e-10), 50]}))
    assert [(0.0, pytest.approx(5.0))] == list(one.answers)


def test_an_answer_that_leads_by_just_what_counts_for_level_is_no_answer():
    valley = numbers("rating", 1, (-10, 100), (0, 0), (100, 100), unknown="worst")
    one = first_asked(make_case([valley], {"Fernhill": [0], "Brightholm": [(-10, 1e-9)]}))
    assert ((-10.0, 0.0),) == one.answers


@pytest.mark.parametrize(("fernhill", "brightholm", "unknown"), [(0, (0, 1e-9), "worst"), ((0, 1e-9), 1e-9, "best")])
def test_an_answer_that_moves_a_maker_by_just_what_counts_for_level_changes_nothing(fernhill, brightholm, unknown):
    case = rated((1,), {"Fernhill": [fernhill], "Brightholm": [brightholm]}, unknown=unknown)
    assert [False] == [one.could_change_leader for one in asked(case)]


@pytest.mark.parametrize(
    ("typed", "limit", "answers", "holds"),
    [
        # 80 + 20 against 50 and more than 50 below 5 or above 15: of these only what the range reaches
        ((0, 12), None, (0.0, 5.0), (True, False)),
        ((8, 18), None, (15.0, 18.0), (False, True)),
        ((2, 12), Limit(at_most=2), (2.0, 2.0), (True, True)),  # one answer alone passes
    ],
)
def test_answers_that_lift_lie_within_what_is_typed_and_allowed(typed, limit, answers, holds):
    valley = numbers("rating", 1, (0, 100), (10, 0), (20, 100), unknown="worst", limit=limit)
    case = make_case([valley, numbers("price", 1)], {"Fernhill": [2, 20], "Brightholm": [typed, 50]})
    (turn,) = first_asked(case).turns
    assert ((answers,), (holds,)) == (turn.answers, turn.holds)


@pytest.mark.parametrize(
    ("first", "last", "answers", "holds"), [(0, 100, (0.0, 5.0), (True, False)), (100, 0, (5.0, 12.0), (False, True))]
)
def test_a_limit_that_the_range_only_touches_adds_no_answer(first, last, answers, holds):
    criterion = numbers("a", 1, (0, first), (100, last), unknown="best", limit=Limit(at_least=0, at_most=12))
    (turn,) = first_asked(make_case([criterion], {"Fernhill": [(0, 12)], "Brightholm": [5]})).turns
    assert ((answers,), (holds,)) == (turn.answers, turn.holds)


def test_of_two_turns_the_first_is_the_rise():
    # at once level; above 50 Brightholm leads, and above 70 it is out
    one = first_asked(
        rated((1,), {"Fernhill": [50], "Brightholm": [(50, 80)]}, unknown="worst", limit=Limit(at_most=70))
    )
    assert ("points", ["points", "limit"]) == (one.by, [turn.by for turn in one.turns])


def test_a_choice_that_would_lift_a_rival_but_rule_it_out_is_not_among_the_answers():
    table = {"kiln": 80, "sticker": 100, "none": 0}
    criteria = [choices("method", 1, table, unknown="worst", limit=Limit(none_of=("sticker",)))]
    one = first_asked(make_case(criteria, {"Fernhill": [None], "Brightholm": ["none"]}))
    assert (0, ((0.0, 0.0),)) == (one.leader_then, one.answers)


def test_a_choice_that_only_draws_level_is_not_among_the_answers():
    criteria = [choices("method", 1, {"kiln": 100, "print": 50, "none": 0}, unknown="worst")]
    one = first_asked(make_case(criteria, {"Fernhill": ["print"], "Brightholm": [None]}))
    assert ((0.0, 0.0),) == one.answers


def test_answers_are_told_as_typed_before_they_are_divided():
    # points of 1 are 100, of 2 are 0: Brightholm needs more than 50, fewer than 1.5 orders of 200
    criterion = numbers("minimum", 1, (1, 100), (2, 0), per_quantity=True, unknown="worst")
    case = make_case([criterion], {"Fernhill": [300], "Brightholm": [(100, 400)]}, minimum_per=("order", "order"))
    assert ((100.0, 300.0),) == first_asked(case).answers


def unit_unknown(minimum, limit=None):
    criterion = numbers("minimum", 1, (1, 100), (2, 0), per_quantity=True, unknown="worst", limit=limit)
    rows = {"Fernhill": [60], "Brightholm": [minimum]}
    return make_case([criterion], rows, brief=MUGS, minimum_per=("design", None))


def test_an_unknown_unit_could_change_the_leader_at_no_answer_to_be_told():
    # 150 of 200 is below 1 and worth 100; 60 of 50 is 1.2 and worth 80
    one = first_asked(unit_unknown(150))
    assert ("points", 1, ()) == (one.by, one.leader_then, one.answers)


def test_a_limit_that_an_unknown_unit_leaves_open_is_a_question_whatever_it_carries():
    # 440 is 2.2 orders or 8.8 designs: worth nothing either way, but only the first passes
    found = asked(unit_unknown(440, Limit(at_most=2.5)))
    assert [(1, 0.0)] == [(one.maker, one.carries) for one in found]


def test_the_number_of_ratings_could_change_the_leader_at_no_answer_to_be_told():
    steady = Steady(count_column="Ratings counted", usual=4.0, usual_counts_as=20)
    criterion = numbers("rating", 1, (4, 0), (5, 100), steady=steady, unknown="worst")
    counts = {"rating": Answers(np.array([20.0, np.nan]), np.array([20.0, np.nan]))}
    one = first_asked(make_case([criterion], {"Fernhill": [4.8], "Brightholm": [5]}, counts=counts))
    assert ("points", 1, ()) == (one.by, one.leader_then, one.answers)


def steadied(fernhill, brightholm, counted=(30.0, 30.0), knots=((4, 0), (5, 100)), **more):
    """Two ratings, each drawn to 4.0, which counts as 20 ratings."""
    steady = Steady(count_column="Ratings counted", usual=4.0, usual_counts_as=20)
    criterion = numbers("rating", 1, *knots, steady=steady, within=(0, 5), **more)
    counts = {"rating": Answers(np.array(counted), np.array(counted))}
    return make_case([criterion], {"Fernhill": [fernhill], "Brightholm": [brightholm]}, counts=counts)


def test_of_a_steadied_rating_from_a_known_number_the_answers_are_told_as_typed():
    # both from 30: whoever has more leads; by the middle of its range, 4.8, the second is level
    (one,) = asked(steadied(4.8, (4.6, 5.0)))
    assert [(1, ((pytest.approx(4.8), 5.0),)), (0, ((4.6, pytest.approx(4.8)),))] == [
        (turn.leader_then, turn.answers) for turn in one.turns
    ]

    # 4.5 from 30 is drawn to 4.3, as is 4.9 from 10
    (one,) = asked(steadied(4.5, (4.6, 5.0), (30.0, 10.0), unknown="worst"))
    assert [(1, pytest.approx((4.9, 5.0)), (False, True))] == [
        (turn.leader_then, turn.answers[0], turn.holds[0]) for turn in one.turns
    ]


def test_of_a_steadied_rating_a_limit_is_on_what_is_typed():
    (one,) = asked(steadied(4.5, (3.0, 5.0), unknown="best", limit=Limit(at_least=3.5)))
    assert [("points", 0, ((3.0, pytest.approx(4.5)),))] == [
        (turn.by, turn.leader_then, turn.answers) for turn in one.turns
    ]
    # 3.0 from 30 is drawn to 3.4, which as a rating is the limit: the two are not compared
    (one,) = asked(steadied(3.0, (2.5, 3.4), unknown="worst", limit=Limit(at_most=3.4), knots=((0, 0), (5, 100))))
    assert [(1, ((pytest.approx(3.0), 3.4),))] == [(turn.leader_then, turn.answers) for turn in one.turns]
    (one,) = asked(steadied(4.5, (3.0, 5.0), unknown="worst", limit=Limit(at_least=4.6)))
    assert [] == [turn for turn in one.turns if turn.leader_then == 0]


@pytest.mark.parametrize("counted", [(30.0, 0.0), (30.0, np.nan)])
def test_from_no_ratings_or_an_unknown_number_no_rating_is_told(counted):
    assert all(
        not turn.answers for one in asked(steadied(4.1, (4.0, 5.0), counted, unknown="best")) for turn in one.turns
    )


def test_a_choice_that_sinks_the_leader_and_rules_it_out_is_told_once():
    method = choices("method", 1, {"transfer": 100, "screen": 80, "sticker": 0}, limit=Limit(none_of=("sticker",)))
    years = numbers("years", 3)
    rows = {"Ash": [None, 100], "Birch": ["screen", 30], "Cedar": ["screen", 85]}
    (one,) = asked(make_case([method, years], rows))
    assert (2, ((2.0, 2.0),)) == (one.leader_then, one.answers)


def test_more_makers_than_any_table_shows_are_all_asked():
    assert 500 == len(asked(rated((1,), {f"maker {at}": [(1, 2)] for at in range(500)})))


def test_the_best_of_the_others_is_nobody_where_there_are_none():
    assert (-INF, None) == standing_of(rated((1,), {"Fernhill": [5]})).best_of_others(0)


def test_the_best_of_the_others_is_found_among_makers_a_hair_apart():
    # the third in the sheet is the best of those behind the leader, by less than what counts as level
    rows = {"Fernhill": [60], "Brightholm": [50], "Cold Quay": [50], "Dale": [50 + 0.9e-9]}
    assert (50 + 0.9e-9, None) == standing_of(rated((1,), rows)).best_of_others(0)


def test_the_best_of_the_others_is_nobody_where_two_are_just_as_far_apart_as_counts_for_level():
    # the first two share a rank, and the third, level with the second alone, has the next
    rows = {"Fernhill": [1.5e-9], "Brightholm": [1e-9], "Cold Quay": [0]}
    assert (1e-9, None) == standing_of(rated((1,), rows)).best_of_others(0)


def test_a_maker_alone_can_lose_the_lead_to_nobody():
    limited = numbers("a", 1, (0, 0), (10, 100), limit=Limit(at_least=5))
    (one,) = asked(make_case([limited], {"Fernhill": [None]}))

    assert (False, ()) == (one.could_change_leader, one.turns)
