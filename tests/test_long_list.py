"""Very long lists: the best are assessed as they would be among all, and the rest is counted."""

import numpy as np
from cases import AS_OF, make_case, numbers

from scorecard.assessment import assess
from scorecard.criteria import Limit
from scorecard.long_list import BEST, LONGEST, shortened


def long_case(makers):
    points = np.random.default_rng(3).integers(0, 101, (makers, 2)).astype(float).tolist()
    criteria = [numbers("one", 60), numbers("two", 40, limit=Limit(at_least=10))]
    return make_case(criteria, {f"M{at}": row for at, row in enumerate(points)})


def test_a_list_of_20_000_is_assessed_whole():
    case = long_case(LONGEST)

    assert shortened(case, AS_OF) is case


def test_the_best_of_a_longer_list_keep_their_scores_and_ranks():
    case = long_case(LONGEST + 1)
    result = assess(case, as_of=AS_OF).as_json()
    points = np.stack([case.table.answers[key].low for key in ("one", "two")], axis=1)
    scores = np.sort((points @ [0.6, 0.4])[points[:, 1] >= 10])[::-1]

    ranked = [maker for maker in result["makers"] if maker["status"] == "ranked"]
    assert BEST == len(ranked)
    assert np.allclose(scores[:BEST], [maker["score"] for maker in ranked])


def test_how_many_are_left_out_is_counted_and_said():
    result = assess(long_case(LONGEST + 1), as_of=AS_OF).as_json()

    assert LONGEST + 1 == len(result["makers"]) + result["left_out"]
    assert ["long-list"] == [one["code"] for one in result["warnings"]]


def test_level_makers_are_taken_in_sheet_order():
    points = [[50.0, 50.0]] * LONGEST + [[60.0, 50.0]]
    case = shortened(
        make_case([numbers("one", 1), numbers("two", 1)], {f"M{at}": row for at, row in enumerate(points)}), AS_OF
    )

    assert [*(f"M{at}" for at in range(BEST - 1)), f"M{LONGEST}"] == list(case.table.makers)


def test_where_few_pass_the_limits_these_are_taken_and_as_many_others_as_are_shown():
    points = [[50.0, 0.0]] * LONGEST + [[60.0, 50.0]]
    criteria = [numbers("one", 1), numbers("two", 1, limit=Limit(at_least=10))]
    case = shortened(make_case(criteria, {f"M{at}": row for at, row in enumerate(points)}), AS_OF)

    assert [*(f"M{at}" for at in range(BEST)), f"M{LONGEST}"] == list(case.table.makers)


def test_where_nobody_passes_the_limits_those_ruled_out_are_shown():
    criteria = [numbers("one", 1), numbers("two", 1, limit=Limit(at_least=10))]
    makers = {f"M{at}": [50.0, 0.0] for at in range(LONGEST + 1)}

    assert [f"M{at}" for at in range(BEST)] == list(shortened(make_case(criteria, makers), AS_OF).table.makers)
