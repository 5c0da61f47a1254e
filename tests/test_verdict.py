"""The verdict: one kind for each way that first place can stand, and sure only where no filling unseats it."""

from itertools import product

from cases import choices, make_case, numbers, rated, standing_of
from hypothesis import given, settings
from trying import passes, standings, tries, worth

from scorecard.criteria import Limit
from scorecard.questions import questions
from scorecard.verdict import could_lead, leaders_by_rule, reach_verdict, surely_lead


def verdict_on(case, moved=()):
    standing = standing_of(case)
    return reach_verdict(standing.ranking, standing.screening, questions(standing), moved)


def told(case, moved=()):
    found = verdict_on(case, moved)
    return found.kind, found.leader, found.rival


def test_where_every_maker_fails_a_limit_nobody_leads():
    assert ("nobody", None, None) == told(rated((1,), {"Fernhill": [5]}, limit=Limit(at_least=10)))


def test_one_maker_that_passes_stands_alone():
    case = rated((1,), {"Fernhill": [50], "Brightholm": [5]}, limit=Limit(at_least=10))
    assert ("alone", 0, None) == told(case)


def test_one_maker_that_may_yet_fail_still_stands_alone():
    case = rated((1,), {"Fernhill": [None], "Brightholm": [5]}, limit=Limit(at_least=10))
    assert ("alone", 0, None) == told(case)


def test_a_leader_above_all_bands_is_sure():
    assert ("sure", 0, None) == told(rated((1,), {"Fernhill": [50], "Brightholm": [(20, 40)]}), [(1, None)])


def test_a_leader_that_another_may_draw_level_with_at_best_is_sure():
    assert ("sure", 0, None) == told(rated((1,), {"Fernhill": [50], "Brightholm": [(20, 50)]}, unknown="worst"))


def test_a_joint_leader_that_may_fall_behind_is_one_answer():
    assert ("one answer", 0, 0) == told(rated((1,), {"Fernhill": [50], "Brightholm": [(20, 50)]}, unknown="best"))


def test_a_leader_that_may_be_ruled_out_before_two_that_are_level_is_not_sure():
    rows = {"Fernhill": [(70, 90)], "Brightholm": [50], "Cold Quay": [50]}
    assert ("several answers", 0, None) == told(rated((1,), rows, limit=Limit(at_most=80), unknown="best"))


def test_little_weight_that_decides_it_is_too_close_to_call():
    assert ("close", 0, 1) == told(rated((1,), {"Fernhill": [50], "Brightholm": [20]}), [(1, 0.05)])


def test_a_little_more_weight_is_not_too_close():
    assert ("sure", 0, None) == told(rated((1,), {"Fernhill": [50], "Brightholm": [20]}), [(1, 0.05 + 1e-9)])


def test_of_several_close_rivals_the_closest_is_named():
    rows = {"Fernhill": [50], "Brightholm": [20], "Cold Quay": [30]}
    found = verdict_on(rated((1,), rows), [(1, 0.4), (2, 0.03)])
    assert ("close", 2, 0.03) == (found.kind, found.rival, found.moved)


def test_one_answer_that_unseats_the_leader_is_named_with_who_would_lead():
    rows = {"Fernhill": [50], "Brightholm": [(20, 80)], "Cold Quay": [(20, 30)]}
    found = verdict_on(rated((1,), rows, unknown="worst"))
    assert ("one answer", 0, 1, 1) == (found.kind, found.leader, found.rival, found.question.maker)


def test_answers_that_unseat_the_leader_only_together_are_several():
    # 50 + 50 against 20 + 20, and 45 + 45 more together
    case = rated((1, 1), {"Fernhill": [50, 50], "Brightholm": [(20, 65), (20, 65)]}, unknown="worst")
    assert ("several answers", 0, None) == told(case)


def test_points_that_only_a_failing_answer_gives_leave_the_leader_sure():
    # 50 + 50 against at most 60 + 30; with 90 Brightholm would have 120, and be ruled out
    criteria = [numbers("rating", 1, limit=Limit(at_most=60), unknown="worst"), numbers("price", 1)]
    case = make_case(criteria, {"Fernhill": [50, 50], "Brightholm": [(20, 90), 30]})
    assert ("sure", 0, None) == told(case)


# every filling


def scores_to_come(standing, maker):
    """Return every score that a maker may turn out to have; None among them where it may be ruled out."""
    filled = [tries(standing, maker, at) for at in range(len(standing.criteria))]
    return {_score(standing, answers) for answers in product(*(_few(one) for one in filled))}


def _few(answers):
    """Return the whole answers of a grid in quarters, since all knots and limits are whole, and the last."""
    return answers if len(answers) < 5 else [*answers[::4], answers[-1]]


def _score(standing, answers):
    pairs = list(zip(standing.criteria, answers, strict=True))
    if not all(passes(criterion, answer) for criterion, answer in pairs):
        return None
    shares = standing.shares.tolist()
    return sum(share * worth(criterion, answer) for share, (criterion, answer) in zip(shares, pairs, strict=True))


@settings(max_examples=60, deadline=None)
@given(standings())
def test_a_leader_is_sure_where_no_filling_of_all_answers_unseats_it(standing):
    order = standing.ranking.order
    if len(order) < 2:
        return
    asked = questions(standing)
    kind = reach_verdict(standing.ranking, standing.screening, asked, ()).kind
    first, *rest = (scores_to_come(standing, maker) for maker in order)
    highest = max((score for scores in rest for score in scores if score is not None), default=-1.0)
    unseated = None in first or min(first) < highest - 1e-9
    assert (kind == "sure") == (not unseated and not any(one.could_change_leader for one in asked))
    assert kind == "sure" or unseated or min(first) <= highest + 1e-9


@settings(max_examples=60, deadline=None)
@given(standings())
def test_who_could_lead_is_found_by_filling_all_answers(standing):
    order = standing.ranking.order
    to_come = {maker: scores_to_come(standing, maker) for maker in order}
    lowest = {maker: 0.0 if None in scores else min(scores) for maker, scores in to_come.items()}
    highest = {maker: max(score for score in scores if score is not None) for maker, scores in to_come.items()}
    expected = tuple(
        maker for maker in order if all(highest[maker] >= lowest[other] - 1e-9 for other in order if other != maker)
    )
    assert expected == could_lead(standing.ranking, standing.screening)


@settings(max_examples=60, deadline=None)
@given(standings())
def test_who_surely_leads_is_found_by_filling_all_answers(standing):
    order = standing.ranking.order
    to_come = {maker: scores_to_come(standing, maker) for maker in order}
    highest = {maker: max(score for score in scores if score is not None) for maker, scores in to_come.items()}
    expected = tuple(
        maker
        for maker in order
        if None not in to_come[maker]
        and all(min(to_come[maker]) >= highest[other] - 1e-9 for other in order if other != maker)
    )
    assert expected == surely_lead(standing.ranking, standing.screening)


def test_level_makers_of_whom_all_is_known_surely_lead_together():
    standing = standing_of(rated((1,), {"Fernhill": [50], "Brightholm": [50], "Cold Quay": [(10, 50)]}))
    found = surely_lead(standing.ranking, standing.screening)
    assert ((0, 1), (0, 1, 2)) == (found, could_lead(standing.ranking, standing.screening))


def test_makers_just_as_far_apart_as_counts_for_level_lead_together():
    standing = standing_of(rated((1,), {"Fernhill": [1e-9], "Brightholm": [0]}))
    known = standing.ranking, standing.screening
    assert ((0, 1), (0, 1)) == (surely_lead(*known), could_lead(*known))


def test_who_reaches_the_lowest_score_of_the_best_could_lead():
    standing = standing_of(rated((1,), {"Fernhill": [60], "Brightholm": [(20, 50)], "Cold Quay": [(40, 70)]}))
    assert (0, 2) == could_lead(standing.ranking, standing.screening)


def test_where_every_maker_may_be_ruled_out_each_could_lead():
    standing = standing_of(rated((1,), {"Fernhill": [None], "Brightholm": [(5, 20)]}, limit=Limit(at_least=10)))
    assert (0, 1) == could_lead(standing.ranking, standing.screening)


# leaders by rule


def by_rule(case):
    standing = standing_of(case)
    return leaders_by_rule(standing.points, standing.shares, standing.screening.ruled_out)


def test_open_answers_at_their_worst_middle_and_best_may_have_three_leaders():
    rows = {"Fernhill": [50], "Brightholm": [(40, 64)], "Cold Quay": [(0, 100)]}
    assert {"worst": (0,), "middle": (1,), "best": (2,)} == by_rule(rated((1,), rows))


def test_each_rule_leaves_ruled_out_makers_out():
    method = choices("method", 1, {"kiln": 100, "sticker": 0}, limit=Limit(none_of=("sticker",)))
    case = make_case([numbers("rating", 9), method], {"Fernhill": [10, "kiln"], "Brightholm": [90, "sticker"]})
    assert {"worst": (0,), "middle": (0,), "best": (0,)} == by_rule(case)
