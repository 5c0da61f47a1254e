"""The sentences that screens and pages share."""

import re

import pytest
from cases import AS_OF, rated

from scorecard.assessment import assess
from scorecard.criteria import Limit
from scorecard.sentences import (
    change_sentence,
    leader_change,
    of_hundred,
    range_sentence,
    reservation,
    rule_sentence,
    spread_of_points,
    supporting,
    unquoted_words,
    verdict_sentence,
    weightings_sentence,
)

NEAR = r"; if each weight is about right, Fernhill leads in \d\d of 100"


def assessed(case):
    return assess(case, as_of=AS_OF)


def two(fernhill, brightholm, weights=(3, 1), **more):
    return assessed(rated(weights, {"Fernhill": fernhill, "Brightholm": brightholm}, **more))


def verdict_on(fernhill, brightholm, **more):
    return verdict_sentence(two(fernhill, brightholm, **more))


# the verdict


def test_a_sure_leader_leads_whatever_the_open_answers():
    assert "Fernhill leads whatever the open answers turn out to be" == verdict_on([90, 90], [20, (10, 60)])


def test_one_answer_that_could_change_it_is_told_with_who_would_lead():
    # 75 + 10·¾ for Brightholm: above 80 on the first it beats Fernhill's 65
    answer = "Brightholm on “C1” (if it is between 80 and 90, Brightholm leads)"
    assert f"Fernhill leads, but one answer could change it: {answer}" == verdict_on(
        [80, 20], [(0, 90), 20], unknown="worst"
    )


def test_several_answers_that_only_together_change_it_are_told_so():
    expected = (
        "Fernhill leads; no one open answer could put another first by itself, but the open answers could change that"
    )
    assert expected == verdict_on([50, 50], [(20, 65), (20, 65)], weights=(1, 1), unknown="worst")


def test_a_close_call_names_both_and_the_weight_that_decides_it():
    # 50·(1 - t) against 52·t: level at t = 50/102 = 49.0 of 100, from 48 of 100
    expected = "Too close to call between Fernhill and Brightholm: moving 1.0 of 100 of weight decides it"
    assert expected == verdict_on([60, 40], [10, 92], weights=(52, 48))


def test_joint_leaders_are_all_named():
    rows = {"Fernhill": [60, 40], "Brightholm": [40, 60], "Cold Quay": [50, 50]}
    expected = "Too close to call between Fernhill, Brightholm and Cold Quay: the least change of weights decides it"
    assert expected == verdict_sentence(assessed(rated((1, 1), rows)))


def test_joint_leaders_with_the_same_points_are_told_apart_by_no_weighting():
    # what has no weight does not count
    expected = "Too close to call between Fernhill and Brightholm: no weighting tells them apart"
    assert expected == verdict_on([60, 40, 1], [60, 40, 2], weights=(1, 1, 0))


def test_of_joint_leaders_those_with_the_same_points_are_named():
    rows = {"Fernhill": [60, 40], "Brightholm": [40, 60], "Cold Quay": [40, 60]}
    expected = (
        "Too close to call between Fernhill, Brightholm and Cold Quay: the least change of weights decides it, "
        "though none tells Brightholm and Cold Quay apart"
    )
    assert expected == verdict_sentence(assessed(rated((1, 1), rows)))


def test_a_rival_that_can_at_best_draw_level_does_not_make_it_too_close():
    # moving 3 of 100 to the first brings Brightholm level, and nothing brings it ahead
    assert "Fernhill leads whatever the open answers turn out to be" == verdict_on([50, 50], [50, 40], weights=(97, 3))


@pytest.mark.parametrize(
    ("fernhill", "brightholm", "words"),
    [
        ([90, 90], [20, (10, 60)], "It leads whatever the open answers turn out to be"),
        ([90, 90], [20, 60], "No answer is open that could change that"),
        (
            [80, 20],
            [(0, 90), 20],
            "One answer could change it: Brightholm on “C1” (if it is between 80 and 90, Brightholm leads)",
        ),
        (
            [50, 50],
            [(20, 65), (20, 65)],
            "No one open answer could put another first by itself, but the open answers could change that",
        ),
    ],
)
def test_what_the_verdict_adds_is_told_without_the_leader(fernhill, brightholm, words):
    weights = (1, 1) if fernhill == [50, 50] else (3, 1)
    assert words == reservation(two(fernhill, brightholm, weights=weights, unknown="worst"))


def test_a_close_call_is_told_whole_beside_the_leader():
    found = two([60, 40], [10, 92], weights=(52, 48))
    assert verdict_sentence(found) == reservation(found)


def test_where_nobody_passes_the_verdict_says_so():
    assert "No maker passes every limit" == verdict_on([1, 1], [1, 1], limit=Limit(at_least=5))


def test_one_that_passes_is_the_only_one():
    expected = "Fernhill is the only maker that passes every limit"
    assert expected == verdict_on([9, 9], [9, 1], limit=Limit(at_least=5))


def test_one_by_itself_where_there_are_no_limits_is_the_only_one_so_far():
    found = assessed(rated([1, 1], {"Fernhill": [9, 9]}))

    assert "Fernhill is the only maker so far" == verdict_sentence(found)
    assert "It is the only maker so far" == reservation(found)


def test_one_that_may_yet_fail_is_told_so():
    expected = "Fernhill is the only maker that passes every limit, and it may yet fail one"
    assert expected == verdict_on([9, None], [9, 1], limit=Limit(at_least=5))


# weights


@pytest.mark.parametrize(
    ("part", "words"),
    [(0, "0.0 of 100"), (0.042, "4.2 of 100"), (0.0005, "0.1 of 100"), (0.0004, "less than 0.1 of 100")],
)
def test_a_part_of_1_is_so_many_of_100_and_never_rounded_to_nothing(part, words):
    assert words == of_hundred(part)


def test_a_change_names_where_weight_comes_from_and_goes_to():
    # level where 60·(1 - t) = 50·t, t = 54.5 of 100, from 25
    expected = "moving 29.5 of 100 from C1 to C2 brings Brightholm level"
    assert expected == change_sentence(two([80, 40], [20, 90]), 1)


def test_a_change_from_several_criteria_says_how_much_from_each():
    # leads 60, 20 and -50 at shares .2, .3, .5 … of all that goes to the third, 110 a unit from the first come first
    rows = {"Fernhill": [100, 80, 40], "Brightholm": [40, 60, 50]}
    found = change_sentence(assessed(rated((2, 3, 1), rows)), 1)
    # the lead (120 + 60 - 10)/6 = 28.33 is closed by 1/3·70 = 23.33 from the first, and 5/30 = 16.7 from the second
    assert "moving 50.0 of 100 from C1 (33.3) and C2 (16.7) to C3 brings Brightholm level" == found


def test_a_rival_that_no_weighting_brings_level_is_told_so():
    assert "no weighting brings Brightholm level" == change_sentence(two([80, 80], [20, 70]), 1)


def test_a_rival_that_is_level_already_is_told_so():
    assert "Brightholm is level already" == change_sentence(two([60, 40], [40, 60], weights=(1, 1)), 1)


def test_a_rival_with_the_same_points_is_level_under_every_weighting():
    assert "Brightholm is level under every weighting" == change_sentence(two([60, 40], [60, 40]), 1)


def test_a_range_says_up_to_where_and_who_is_next():
    # C2 beside 3: up to 60/50 · 3 = 3.6
    assert "Fernhill stays first from 0.0 to 3.6, then Brightholm" == range_sentence(two([80, 40], [20, 90]), 1)


def test_a_range_says_down_to_where_and_who_is_before():
    # C1 beside 1: down to 50/60
    expected = "Fernhill stays first from 0.8 upwards; below that, Brightholm"
    assert expected == range_sentence(two([80, 40], [20, 90]), 0)


def test_a_leader_that_no_weight_of_one_criterion_unseats_stays_first():
    assert "Fernhill stays first whatever this weight is" == range_sentence(two([80, 80], [20, 70]), 0)


def test_a_criterion_with_all_the_weight_has_nothing_to_move_against():
    expected = "it has all the weight, so there is nothing to move it against"
    assert expected == range_sentence(two([80, 80], [20, 70], weights=(1, 0)), 0)


def test_a_criterion_moves_makers_apart_by_its_share_of_their_spread():
    # three quarters of 80 - 20
    assert pytest.approx(45) == spread_of_points(two([80, 40], [20, 90]), 0)


def test_where_nobody_is_ranked_no_criterion_moves_makers_apart():
    assert 0.0 == spread_of_points(two([1, 1], [1, 1], limit=Limit(at_least=5)), 0)


def test_a_rival_that_can_only_join_is_told_so():
    # all weight on the first
    expected = "moving 25.0 of 100 from C2 to C1 brings Brightholm level; it can at best share first place"
    assert expected == change_sentence(two([50, 50], [50, 40]), 1)


# what else the verdict rests on


def test_leaders_that_differ_with_the_rule_are_told():
    rows = {"Fernhill": [50], "Brightholm": [(40, 64)], "Cold Quay": [(0, 100)]}
    expected = (
        "Fernhill leads if the open answers turn out at their worst, Brightholm if in the middle, "
        "and Cold Quay if at their best"
    )
    assert expected == rule_sentence(assessed(rated((1,), rows)))


def test_rules_with_the_same_leader_share_a_phrase():
    rows = {"Fernhill": [60], "Brightholm": [(0, 100)]}
    expected = (
        "Fernhill leads if the open answers turn out at their worst or in the middle, and Brightholm if at their best"
    )
    assert expected == rule_sentence(assessed(rated((1,), rows)))


def test_several_who_lead_by_a_rule_lead_together():
    rows = {"Fernhill": [60], "Brightholm": [(20, 60)]}
    found = rule_sentence(assessed(rated((1,), rows)))
    expected = "Fernhill leads if the open answers turn out at their worst or in the middle"
    assert f"{expected}, and Fernhill and Brightholm together if at their best" == found


def test_a_leader_that_is_the_same_by_every_rule_needs_no_sentence():
    assert rule_sentence(two([80, 80], [20, (10, 70)])) is None


def test_who_leads_for_want_of_answers_is_told_with_what_is_known():
    rows = {"Fernhill": [60, 60], "Brightholm": [None, 40], "Cold Quay": [None, 40]}
    known = "(known: 50 of 100)"
    found = rule_sentence(assessed(rated((1, 1), rows)))
    assert found.endswith(f"and Brightholm {known} and Cold Quay {known} together if at their best")


def test_another_that_leads_most_random_weightings_is_told_of():
    # 40 + 20t against 88 - 58t: Brightholm leads below t = 48/78 = .615
    found = weightings_sentence(two([60, 40], [30, 88], weights=(62, 38)))
    said = "If you are sure of no weight, Brightholm leads most often"
    assert re.fullmatch(rf"{said} \((6[12]) of 100 drawn at random\){NEAR}", found)


def test_the_order_of_importance_is_named_where_it_makes_the_difference():
    # 50 against 11 + 60t: level at t = .65, from .5 to 1 where the first matters more
    found = weightings_sentence(two([50, 50], [71, 11], weights=(60, 40)))
    said = "If you are sure of the order of your weights alone, Brightholm leads most often"
    assert re.fullmatch(rf"{said} \((69|70) of 100 drawn at random\){NEAR}", found)


def test_without_an_order_of_importance_any_weights_are_told_once():
    # Fernhill leads for t from .45 to .55 alone, Brightholm above
    rows = {"Fernhill": [50, 50], "Brightholm": [68, 28], "Cold Quay": [27, 67]}
    found = weightings_sentence(assessed(rated((1, 1), rows)))
    said = "If you are sure of no weight, Brightholm leads most often"
    assert re.fullmatch(rf"{said} \((4\d) of 100 drawn at random\)({NEAR})?", found)


def test_the_leader_that_leads_most_weightings_too_needs_no_sentence():
    assert weightings_sentence(two([80, 80], [20, 70])) is None


def test_one_maker_needs_no_weightings():
    assert weightings_sentence(assessed(rated((1,), {"Fernhill": [5]}))) is None


def test_an_answer_that_could_decide_a_close_call_is_told_beside_it():
    # 50.4 against 5.2 + 48 of 100 of the middle, 92: 2.1667 more are wanted
    found = supporting(two([60, 40], [10, (85, 99)], weights=(52, 48)))
    assert (
        "One open answer could decide it, too: Brightholm on “C2” (if it is between 94.1667 and 99, Brightholm leads)"
        == found[0]
    )


def test_a_sure_leader_needs_nothing_more():
    assert [] == supporting(two([90, 90], [20, (10, 60)]))


# other weights

PLACES = {"Fernhill": [60, 40], "Brightholm": [40, 60], "Cold Quay": [60, 40]}


@pytest.mark.parametrize(
    ("before", "after", "words"),
    [
        ((3, 1), (2, 1), "Fernhill and Cold Quay stay level in first place"),
        ((3, 1), (1, 1), "Brightholm now shares first place with Fernhill and Cold Quay"),
        ((1, 1), (3, 1), "Fernhill and Cold Quay lead without Brightholm now"),
        ((1, 1), (1, 3), "Brightholm leads without Fernhill and Cold Quay now"),
        ((1, 3), (1, 2), "The leader stays Brightholm"),
        ((1, 3), (3, 1), "The leader changes from Brightholm to Fernhill and Cold Quay"),
    ],
)
def test_other_weights_say_who_joins_and_who_drops_out(before, after, words):
    assert words == leader_change(*(assessed(rated(weights, PLACES)) for weights in (before, after)))


def test_one_may_join_as_another_drops_out():
    rows = {"Fernhill": [60, 40, 0], "Brightholm": [60, 0, 40], "Cold Quay": [0, 40, 40]}
    # 340, 340 and 80 before; 280, 240 and 280 after
    before, after = (assessed(rated(weights, rows)) for weights in ((5, 1, 1), (2, 4, 3)))
    expected = "Cold Quay now shares first place with Fernhill; Brightholm no longer does"
    assert expected == leader_change(before, after)


def test_where_nobody_is_ranked_no_leader_changes():
    nobody = two([1, 1], [1, 1], limit=Limit(at_least=5))
    assert "" == leader_change(nobody, nobody)


def test_a_price_that_could_not_be_read_is_not_called_unquoted():
    assert ["Not quoted yet: Ash", "Quoted, but the price could not be read: Birch"] == unquoted_words(
        ["Ash", "Birch"], {"Birch"}
    )
