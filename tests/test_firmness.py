"""How firm first place is, in makers of the sheet: ruled-out makers have no part in it and shift no position."""

import numpy as np
import pytest
from cases import make_case, numbers, rated, standing_of
from hypothesis import given, settings
from hypothesis import strategies as st
from trying import passes, standings, tries, worth

from scorecard import firmness as module
from scorecard.criteria import Firmness, Limit
from scorecard.firmness import Change, examine

WEIGHTS = st.lists(st.integers(0, 5), min_size=3, max_size=3).filter(any)
ROWS = st.lists(st.lists(st.integers(0, 20).map(lambda n: 5 * n), min_size=3, max_size=3), min_size=1, max_size=5)


def examined(case):
    standing = standing_of(case)
    return examine(standing.points, standing.shares, standing.ranking, standing.screening, Firmness())


def with_one_ruled_out():
    """Brightholm (first in the sheet) is ruled out; Fernhill leads, and Cold Quay takes over as price gains weight."""
    criteria = [numbers("rating", 3, limit=Limit(at_least=10)), numbers("price", 1)]
    return make_case(criteria, {"Brightholm": [5, 100], "Cold Quay": [20, 90], "Fernhill": [80, 40]})


def test_ruled_out_makers_have_no_part():
    found = examined(with_one_ruled_out())
    assert ((1, 2), (1,)) == (found.ranked, found.rivals)


def test_ruled_out_makers_lead_by_no_rule():
    case = rated((1,), {"Brightholm": [90], "Fernhill": [50], "Cold Quay": [60]}, limit=Limit(at_most=80))
    assert {"worst": (2,), "middle": (2,), "best": (2,)} == examined(case).leaders_by_rule


def test_the_mix_that_beats_a_maker_is_of_positions_in_the_sheet():
    # half Cold Quay and half Fernhill have 50 and 65
    criteria = [numbers("rating", 3, limit=Limit(at_least=10)), numbers("price", 1)]
    rows = {"Brightholm": [5, 100], "Cold Quay": [20, 90], "Fernhill": [80, 40], "Dale": [45, 60]}
    by = [one.beaten_by for one in examined(make_case(criteria, rows)).can_lead]
    assert [None, {1, 2}, None] == [one and set(one) for one in by]
    assert (True, True) == (20 * by[1][1] + 80 * by[1][2] > 45, 90 * by[1][1] + 40 * by[1][2] > 60)


def test_a_maker_best_on_everything_is_first_in_every_kind_of_weightings():
    shares = examined(rated((1, 1), {"Fernhill": [20, 70], "Brightholm": [80, 80]})).rank_shares
    assert {kind: [[1, 0], [0, 1]] for kind in ("any", "ordered", "near")} == {
        kind: found.shares.tolist() for kind, found in shares.items()
    }


def test_who_takes_over_is_a_position_in_the_sheet():
    # 60·(1 - t) against 50·t: level at t = 60/110
    price = examined(with_one_ruled_out()).weight_ranges[1]
    assert (1, pytest.approx(60 / 110)) == (price.overtaken_above, price.high)


def test_the_smallest_change_speaks_of_a_position_in_the_sheet():
    # the share of price goes from 1/4 to 60/110
    assert pytest.approx(60 / 110 - 1 / 4) == examined(with_one_ruled_out()).change_against(1).moved


def test_every_rival_has_what_must_move():
    assert [(1, pytest.approx(60 / 110 - 1 / 4))] == examined(with_one_ruled_out()).moved()


def test_a_rival_that_is_beaten_on_everything_has_no_change():
    found = examined(rated((1, 1), {"Fernhill": [80, 80], "Brightholm": [20, 70]})).change_against(1)
    assert (None, None) == (found.moved, found.weights)


def test_where_nobody_is_ranked_nothing_is_known():
    found = examined(rated((1,), {"Fernhill": [5]}, limit=Limit(at_least=10)))
    assert ((), (), (), Change().moved) == (
        found.ranked,
        found.rivals,
        found.weight_ranges,
        found.change_against(0).moved,
    )


def test_ends_are_told_in_weights_as_typed_beside_the_others_as_they_are():
    # share 60/110 of price beside a rating of weight 3: 60/50 · 3
    case = with_one_ruled_out()
    assert (0.0, pytest.approx(3.6)) == examined(case).typed_ends(1, case.criteria)


def test_where_any_weight_will_do_there_is_no_typed_end():
    case = rated((1, 1), {"Fernhill": [80, 80], "Brightholm": [20, 70]})
    assert (0.0, None) == examined(case).typed_ends(0, case.criteria)


def test_a_criterion_with_all_the_weight_has_no_typed_ends():
    case = rated((1, 0), {"Fernhill": [80, 80], "Brightholm": [20, 70]})
    assert (None, None) == examined(case).typed_ends(0, case.criteria)


def lead_at(case, criterion, share):
    """Return the leader's score less the best of the others with one criterion's share moved, by hand."""
    standing = standing_of(case)
    shares, points = standing.shares.copy(), standing.points.counted
    others = 1 - shares[criterion]
    shares = shares / others * (1 - share)
    shares[criterion] = share
    scores = points @ shares
    leader = standing.ranking.order[0]
    return scores[leader] - np.delete(scores, leader).max()


@settings(max_examples=60, deadline=None)
@given(ROWS, WEIGHTS)
def test_where_someone_takes_over_the_leader_is_level_at_the_end_and_beaten_just_beyond(rows, weights):
    case = rated(weights, {f"maker {at}": row for at, row in enumerate(rows)})
    for criterion, found in enumerate(examined(case).weight_ranges):
        if found is None:
            continue
        ends = (found.overtaken_below, found.low, -1), (found.overtaken_above, found.high, 1)
        for taker, end, step in ends:
            beyond = end + step * 1e-4
            if taker is not None and 0 <= beyond <= 1:
                at_end, after = lead_at(case, criterion, end), lead_at(case, criterion, beyond)
                assert (pytest.approx(0, abs=1e-8), True) == (at_end, after < 0)


@settings(max_examples=60, deadline=None)
@given(ROWS.filter(lambda rows: len(rows) > 1), WEIGHTS)
def test_all_over_a_weight_range_the_leader_is_not_beaten(rows, weights):
    case = rated(weights, {f"maker {at}": row for at, row in enumerate(rows)})
    for criterion, found in enumerate(examined(case).weight_ranges):
        if found is not None:
            sweep = np.linspace(found.low, found.high, 9)
            assert min(lead_at(case, criterion, share) for share in sweep) >= -1e-8


@settings(max_examples=60, deadline=None)
@given(ROWS.filter(lambda rows: len(rows) > 1), WEIGHTS)
def test_the_smallest_change_brings_the_rival_level_with_so_much_moved(rows, weights):
    case = rated(weights, {f"maker {at}": row for at, row in enumerate(rows)})
    standing, found = standing_of(case), examined(case)
    leader = standing.ranking.order[0]
    for rival in found.rivals:
        change = found.change_against(rival)
        if change.weights is not None:
            scores = standing.points.counted @ change.weights
            moved = np.abs(change.weights - standing.shares).sum() / 2
            assert (pytest.approx(scores[leader], abs=1e-8), pytest.approx(change.moved)) == (scores[rival], moved)


# open answers


def ends_by_trying(standing, maker):
    """Return the least and the greatest points of each criterion over answers that pass, and whether some do not."""
    tried = [(one, tries(standing, maker, at)) for at, one in enumerate(standing.criteria)]
    passing = [[worth(one, answer) for answer in answers if passes(one, answer)] for one, answers in tried]
    fails = any(not passes(one, answer) for one, answers in tried for answer in answers)
    return np.array([min(points) for points in passing]), np.array([max(points) for points in passing]), fails


def leads_by_trying(standing, shares):
    """Return the leader's least lead over all fillings, and its greatest, under some shares; -1 where it may be out."""
    leader, *rest = standing.ranking.order
    low, high, fails = ends_by_trying(standing, leader)
    rivals = [ends_by_trying(standing, maker) for maker in rest]
    sure = min((low @ shares - most @ shares for _, most, _ in rivals), default=100.0)
    possible = min((high @ shares - least @ shares for least, _, may_fail in rivals if not may_fail), default=100.0)
    return -1.0 if fails else sure, possible


@settings(max_examples=80, deadline=None)
@given(standings())
def test_ranges_over_open_answers_are_found_by_trying_answers(standing):
    if not standing.ranking.order:
        return
    found = examine(standing.points, standing.shares, standing.ranking, standing.screening, Firmness()).over_answers
    for at, one in enumerate(found):
        others = np.delete(standing.shares, at).sum()
        for share in (0, 0.2, 0.45, 0.7, 1) if others > 0 else ():
            shares = standing.shares * ((1 - share) / others)
            shares[at] = share
            for lead, span in zip(leads_by_trying(standing, shares), (one.guaranteed, one.possible), strict=True):
                inside = span is not None and span.low <= share <= span.high
                assert abs(lead) < 1e-6 or inside == (lead > 0)


def test_a_failing_answer_lifts_no_rival_over_a_guaranteed_lead():
    # with 90 Brightholm would lead on rating alone, but it would be ruled out; with 60 it is level
    criteria = [numbers("rating", 1, limit=Limit(at_most=60), unknown="worst"), numbers("price", 1)]
    case = make_case(criteria, {"Fernhill": [60, 50], "Brightholm": [(20, 90), 30]})
    sure = examined(case).over_answers[0].guaranteed
    assert (0.0, 1.0) == (sure.low, sure.high)


def test_nothing_is_guaranteed_to_a_leader_that_may_yet_be_ruled_out():
    criteria = [numbers("rating", 1, limit=Limit(at_least=60), unknown="best"), numbers("price", 1)]
    found = examined(make_case(criteria, {"Fernhill": [(50, 90), 90], "Brightholm": [10, 10]})).over_answers
    assert [None, None] == [one.guaranteed for one in found]


def test_a_rival_that_may_be_ruled_out_keeps_nobody_from_the_lead():
    # on rating alone Fernhill has nothing
    criteria = [numbers("rating", 1), numbers("price", 9, limit=Limit(at_least=20), unknown="worst")]
    found = examined(make_case(criteria, {"Fernhill": [0, 90], "Brightholm": [50, (10, 30)]})).over_answers
    assert [(0.0, 1.0)] * 2 == [(one.possible.low, one.possible.high) for one in found]


# rivals that never overtake


def test_a_rival_that_the_leader_beats_or_equals_everywhere_is_no_contender():
    case = rated((97, 3), {"Fernhill": [50, 50], "Brightholm": [50, 40], "Cold Quay": [45, 90]})
    found = examined(case)
    assert ([1, 2], [2]) == (sorted(rival for rival, _ in found.moved()), [rival for rival, _ in found.contenders()])


def test_a_rival_that_another_rival_beats_on_everything_is_a_contender():
    found = examined(rated((3, 1), {"Fernhill": [80, 20], "Brightholm": [50, 50], "Cold Quay": [40, 40]}))
    assert (((1, 2),), [1, 2]) == (found.beats, [rival for rival, _ in found.contenders()])


def test_a_maker_that_no_weighting_puts_first_alone_is_at_best_level():
    found = examined(rated((1, 1), {"Fernhill": [50, 50], "Brightholm": [50, 40], "Cold Quay": [40, 60]}))
    assert [False, True, False] == [found.at_best_level(maker) for maker in (0, 1, 2)]


def test_beyond_the_makers_in_front_the_shares_of_first_place_are_of_all(monkeypatch):
    monkeypatch.setattr(module, "MOST_IN_FRONT", 1)
    # second leads where its criterion weighs more than 2/3: 90·t against 60 and 60·(1 - t)
    case = rated((3, 1), {"Fernhill": [0, 90], "Brightholm": [60, 60], "Cold Quay": [60, 0]})
    found = examined(case)

    assert ((1,), (1, 2, 0)) == (found.front, (found.front[0], *found.rivals))
    assert [pytest.approx(2 / 3, abs=0.02), 0, pytest.approx(1 / 3, abs=0.02)] == found.first_shares.shares.tolist()


def test_two_hundred_makers_are_in_front():
    found = examined(rated((1,), {f"maker {at}": [at / 4] for at in range(201)}))
    assert tuple(range(200, 0, -1)) == found.front


def test_while_all_makers_are_in_front_there_are_no_further_shares():
    assert examined(rated((1, 1), {"Fernhill": [0, 90], "Brightholm": [60, 60]})).first_shares is None
