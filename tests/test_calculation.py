"""The whole calculation as one value: its parts speak of the same makers and criteria."""

import numpy as np
from cases import AS_OF, make_case, numbers, rated, standing_of
from hypothesis import given, settings
from trying import cases

from scorecard.calculation import Calculation
from scorecard.criteria import Limit


def test_shares_are_those_of_the_criteria():
    assert [0.75, 0.25] == Calculation.of(rated((3, 1), {"Fernhill": [1, 2]}), AS_OF).shares.tolist()


def test_the_day_and_the_case_are_kept():
    case = rated((3, 1), {"Fernhill": [1, 2]})
    found = Calculation.of(case, AS_OF)
    assert (case, AS_OF) == (found.case, found.as_of)


def test_the_limits_rule_makers_out_of_the_ranking():
    case = make_case([numbers("a", 1, limit=Limit(at_least=5))], {"Fernhill": [6], "Dale": [4]})
    found = Calculation.of(case, AS_OF)
    assert ((1, 0), [False, True]) == (found.ranking.ranks, found.screening.ruled_out.tolist())


@settings(max_examples=25, deadline=None)
@given(cases())
def test_each_part_is_what_its_own_module_makes_of_the_case(case):
    found, apart = Calculation.of(case, AS_OF), standing_of(case)
    assert (apart.ranking.ranks, True) == (
        found.ranking.ranks,
        np.array_equal(apart.points.counted, found.points.counted),
    )


@settings(max_examples=25, deadline=None)
@given(cases())
def test_a_maker_is_ruled_out_where_it_has_no_rank(case):
    found = Calculation.of(case, AS_OF)
    assert found.screening.ruled_out.tolist() == [rank == 0 for rank in found.ranking.ranks]
