import pytest
from cases import make_case, numbers

from scorecard.criteria import Limit
from scorecard.report.openness import openness_of

TWO = [numbers("rating", 3, unknown="worst"), numbers("price", 1, unknown="worst")]


@pytest.fixture
def found(assessed):
    return lambda rows, criteria=TWO: openness_of(assessed(make_case(criteria, rows)))


def span(one, at=0):
    return one.spans[at].guaranteed, one.spans[at].possible


def test_where_all_is_known_nothing_can_turn_out_otherwise(found):
    one = found({"Brightholm": [90, 90], "Cressel": [50, 50]})
    assert (("Every answer that counts is known: nothing can turn out otherwise.",), ()) == (one.leads, one.spans)


def test_a_sure_leader_is_told_with_the_bounds_of_each_weight(found):
    # on price Cressel may have 90 against 10: level where 30t = 80(1-t), t = .7273, a weight of 2.7 beside 1
    one = found({"Brightholm": [80, 10], "Cressel": [50, (20, 90)]})
    assert ("However the open answers turn out, Brightholm leads.",) == one.leads
    bounds = "Rating 2.7 or more and Price 0.0 to 1.1"
    assert f"That holds for Brightholm while one weight alone is moved within these bounds: {bounds}." == one.weights


def test_the_weights_for_every_way_and_for_some_stand_side_by_side(found):
    # if Cressel has 20 on price it is level where 30t = 10(1-t), t = 1/4, a weight of 0.3 beside 1
    one = found({"Brightholm": [80, 10], "Cressel": [50, (20, 90)]})
    assert ("2.7 or more", "0.3 or more") == span(one)


def test_a_lead_that_is_not_sure_is_told_with_all_who_could_lead(found):
    one = found({"Brightholm": [60, 50], "Cressel": [(20, 90), 50], "Dunmorrow": [10, 10]})
    assert "Nobody leads for every way in which the open answers can turn out." == one.leads[0]
    assert (
        "Depending on how they do, any of these could lead, alone or together: Brightholm and Cressel." == one.leads[1]
    )


def test_a_weight_that_would_make_the_lead_sure_is_told(found):
    # at worst 60t + 90(1-t) against 90t + 50(1-t): level at t = 40/70, a weight of 1.3 beside 1, or of 2.25 beside 3
    one = found({"Brightholm": [60, 90], "Cressel": [(20, 90), 50]})
    said = (
        "Brightholm would be sure of first place with one weight alone changed: Rating 0.0 to 1.3 or Price 2.3 or more."
    )
    assert said == one.weights


def test_where_no_weight_makes_the_lead_sure_that_is_said(found):
    one = found({"Brightholm": [60, 50], "Cressel": [(20, 90), (20, 60)]})
    assert "No change of one weight alone would make Brightholm sure of first place." == one.weights
    assert ("no weight", "any weight") == span(one)


def test_the_one_weight_with_which_others_are_just_level_makes_no_lead_sure(found):
    # with all the weight on rating all are level, whatever the price
    one = found({"Brightholm": [60, 70], "Cressel": [60, (20, 90)]})
    assert "No change of one weight alone would make Brightholm sure of first place." == one.weights
    assert ("no weight but all of it", "any weight") == span(one)


def test_a_lead_that_no_weight_can_cost_is_told_so(found):
    one = found({"Brightholm": [90, 90], "Cressel": [50, (20, 60)]})
    assert "That holds whatever one of the weights is changed to: Brightholm stays first." == one.weights


def test_who_could_at_best_join_is_named(found):
    one = found({"Brightholm": [90, 90], "Cressel": [90, (20, 90)]})
    assert ("However the open answers turn out, Brightholm leads. Cressel could at best join.",) == one.leads


def test_a_criterion_with_all_the_weight_has_no_range(found):
    rows = {"Brightholm": [90], "Cressel": [(20, 60)]}
    one = found(rows, [numbers("rating", 1)])
    assert (("it has all the weight", "it has all the weight"), None) == (span(one), one.weights)


def test_a_leader_that_may_be_ruled_out_is_never_sure(found):
    criteria = [numbers("rating", 1, limit=Limit(at_least=50), unknown="best")]
    one = found({"Brightholm": [(40, 90)], "Cressel": [60]}, criteria)
    assert (
        "Depending on how they do, any of these could lead, alone or together: Brightholm and Cressel." == one.leads[1]
    )


def test_one_maker_alone_has_nothing_to_be_unseated_by(found):
    assert found({"Brightholm": [90, None]}) is None
