"""How firm first place is, as written in the result."""

import pytest
from cases import AS_OF, rated

from scorecard.assessment import assess
from scorecard.criteria import Limit

RANGE_KEYS = ["low", "high", "typed_low", "typed_high", "overtaken_below", "overtaken_above", "guaranteed", "possible"]


def result_on(weights, rows, **more):
    return assess(rated(weights, rows, **more), as_of=AS_OF).as_json()


def turning():
    """Fernhill leads by 60 on c1, weight 3; Brightholm by 50 on c2, weight 1."""
    return result_on((3, 1), {"Fernhill": [80, 40], "Brightholm": [20, 90]})


def beaten():
    return result_on((3, 1), {"Fernhill": [80, 80], "Brightholm": [20, 70]})


def test_a_weight_range_is_told_as_share_and_as_typed():
    # level where 60·(1 - t) = 50·t, t = 6/11; beside a typed 3, 6/5 · 3
    found = turning()["weight_ranges"]["c2"]
    expected = {"share": 0.25, "low": 0.0, "high": 0.545454545455, "typed_low": 0.0, "typed_high": 3.6}
    assert expected == {key: found[key] for key in expected}


def test_who_takes_over_is_named():
    found = turning()["weight_ranges"]
    assert ((None, "Brightholm"), ("Brightholm", None)) == tuple(
        (found[key]["overtaken_below"], found[key]["overtaken_above"]) for key in ("c2", "c1")
    )


def test_where_any_weight_will_do_the_typed_end_is_null():
    found = beaten()["weight_ranges"]["c1"]
    assert (1.0, None) == (found["high"], found["typed_high"])


def test_a_criterion_with_all_the_weight_has_no_range():
    found = result_on((1, 0), {"Fernhill": [80, 80], "Brightholm": [20, 70]})["weight_ranges"]["c1"]
    assert {"share": 1.0} | dict.fromkeys(RANGE_KEYS) == found


def test_a_criterion_of_weight_0_has_its_own_range():
    found = result_on((1, 0), {"Fernhill": [80, 40], "Brightholm": [20, 90]})["weight_ranges"]["c2"]
    assert (0.0, 0.0, 0.545454545455) == (found["share"], found["low"], found["high"])


def test_where_nobody_is_ranked_there_are_no_ranges():
    found = result_on((1,), {"Fernhill": [1]}, limit=Limit(at_least=5))["weight_ranges"]["c1"]
    assert {"share": 1.0} | dict.fromkeys(RANGE_KEYS) == found


def test_open_answers_narrow_the_range_that_is_guaranteed_and_widen_the_possible_one():
    # on c2 Brightholm may lead by 30 to 60, since no answer is worth more than 100: 60/90 and 60/120
    found = result_on((3, 1), {"Fernhill": [80, 40], "Brightholm": [20, (70, 110)]}, unknown="middle")
    both = found["weight_ranges"]["c2"]
    assert (pytest.approx(60 / 120), pytest.approx(60 / 90)) == (both["guaranteed"]["high"], both["possible"]["high"])


def test_a_lead_that_no_share_guarantees_has_no_guaranteed_range():
    found = result_on((1, 1), {"Fernhill": [60, 60], "Brightholm": [(0, 90), (0, 90)]}, unknown="worst")
    assert found["weight_ranges"]["c1"]["guaranteed"] is None


def test_the_smallest_change_is_told_with_every_share():
    expected = {"rival": "Brightholm", "moved": 0.295454545455, "shares": {"c1": 0.454545454545, "c2": 0.545454545455}}
    assert [expected] == turning()["smallest_change"]


def test_a_rival_that_nothing_brings_level_has_moved_null():
    assert [{"rival": "Brightholm", "moved": None, "shares": {}}] == beaten()["smallest_change"]


def test_a_joint_leader_has_moved_nothing():
    change = result_on((1,), {"Fernhill": [5], "Brightholm": [5]})["smallest_change"][0]
    assert ("Brightholm", 0.0, {"c1": 1.0}) == (change["rival"], change["moved"], change["shares"])


def test_rivals_come_in_the_order_of_rank():
    found = result_on((1,), {"Dale": [5], "Fernhill": [50], "Brightholm": [20]})["smallest_change"]
    assert ["Brightholm", "Dale"] == [one["rival"] for one in found]


def test_leaders_by_rule_are_named():
    rows = {"Fernhill": [50], "Brightholm": [(40, 64)], "Cold Quay": [(0, 100)]}
    expected = {"worst": ["Fernhill"], "middle": ["Brightholm"], "best": ["Cold Quay"]}
    assert expected == result_on((1,), rows)["leaders_by_rule"]


def test_duels_of_two_makers_add_up_to_1():
    duels = turning()["duels"]
    assert pytest.approx(1) == duels["Fernhill"]["Brightholm"] + duels["Brightholm"]["Fernhill"]


def test_a_duel_is_told_by_the_closed_form():
    # over two criteria a lead of 60 against one of 50 wins 60 of 110
    assert 0.545454545455 == turning()["duels"]["Fernhill"]["Brightholm"]


def test_identical_makers_beat_each_other_never():
    duels = result_on((1, 1), {"Fernhill": [5, 6], "Brightholm": [5, 6]})["duels"]
    assert (0.0, 0.0) == (duels["Fernhill"]["Brightholm"], duels["Brightholm"]["Fernhill"])


def test_mean_ranks_are_one_more_than_the_duels_lost():
    assert {"Fernhill": 1.45454545455, "Brightholm": 1.54545454545} == turning()["mean_ranks"]


def test_rank_shares_have_a_share_for_every_rank():
    found = turning()["rank_shares"]
    assert {"any": 2, "ordered": 2, "near": 2} == {kind: len(one["shares"]["Fernhill"]) for kind, one in found.items()}


def test_who_can_lead_is_told_with_the_nearest_weighting():
    found = turning()["can_lead"]["Brightholm"]
    assert (True, False, 0.295454545455, None) == (
        found["possible"],
        found["level"],
        found["moved"],
        found["beaten_by"],
    )


def test_who_cannot_lead_is_told_with_what_beats_it():
    found = beaten()["can_lead"]["Brightholm"]
    assert (False, None, {}, {"Fernhill": 1.0}) == (
        found["possible"],
        found["moved"],
        found["shares"],
        found["beaten_by"],
    )


def test_who_beats_whom_on_everything_is_told():
    assert [{"maker": "Fernhill", "beats": "Brightholm"}] == beaten()["beats_on_everything"]


def test_where_nobody_is_ranked_there_is_nothing_to_tell():
    result = result_on((1,), {"Fernhill": [1]}, limit=Limit(at_least=5))
    empty = ("leaders_by_rule", "smallest_change", "rank_shares", "duels", "mean_ranks", "can_lead")
    assert [{}, [], {}, {}, {}, {}] == [result[key] for key in empty]


def test_of_every_ranked_maker_it_is_told_whether_it_can_lead():
    # the last of many is the best on one criterion, and only there
    rows = {f"Maker {number}": [90 - number / 10, 50] for number in range(250)} | {"Last": [0, 60]}
    found = result_on((3, 1), rows)
    last = found["can_lead"]["Last"]

    assert (251, 200, True) == (len(found["can_lead"]), len(found["duels"]), last["possible"])
    assert pytest.approx(1 / 10, abs=0.006) == found["first_shares"]["shares"]["Last"]
    assert pytest.approx(9 / 10 - 1 / 4) == last["moved"]  # level where 90·(1 - t) + 50·t = 60·t, t = 9/10
