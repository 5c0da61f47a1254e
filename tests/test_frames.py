"""Results as tables: one row for each thing, with the columns of the result."""

import pytest
from cases import AS_OF, rated
from ordered import case_of

from scorecard.assessment import assess

RESULT = assess(rated((3, 1), {"Fernhill": [80, None], "Brightholm": [20, 90]}), as_of=AS_OF)


@pytest.mark.parametrize(
    ("name", "rows"), [("makers", 2), ("points", 4), ("weight_ranges", 2), ("smallest_change", 1), ("questions", 1)]
)
def test_each_table_has_a_row_for_each_thing(name, rows):
    assert rows == len(RESULT.frames()[name])


def test_points_name_maker_and_criterion_of_each_row():
    points = RESULT.frames()["points"]
    expected = [("Fernhill", "c1"), ("Fernhill", "c2"), ("Brightholm", "c1"), ("Brightholm", "c2")]
    assert expected == list(zip(points["maker"], points["criterion"], strict=True))


def test_scores_are_those_of_the_result():
    makers = RESULT.as_json()["makers"]
    assert [maker["score"] for maker in makers] == RESULT.frames()["makers"]["score"].tolist()


def test_contributions_add_up_to_the_scores():
    frames = RESULT.frames()
    sums = frames["points"].groupby("maker")["contribution"].sum()
    assert pytest.approx(dict(zip(frames["makers"]["maker"], frames["makers"]["score"], strict=True))) == dict(sums)


def test_weight_ranges_name_their_criterion():
    assert ["c1", "c2"] == RESULT.frames()["weight_ranges"]["criterion"].tolist()


def test_every_line_of_a_landed_cost_is_a_row():
    costs = assess(case_of({"Ash": 1}, {"Ash": 5}), as_of=AS_OF).frames()["landed_costs"]

    assert [("Ash", "road", "Goods", 1000.0)] == [
        tuple(row) for row in costs[["maker", "way", "line", "low"]].to_numpy()
    ]


def test_where_nothing_is_open_the_table_of_questions_is_empty():
    assert assess(rated((1,), {"Fernhill": [1]}), as_of=AS_OF).frames()["questions"].empty
