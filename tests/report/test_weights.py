from dataclasses import replace

from cases import make_case, numbers

from scorecard.criteria import CriteriaSet, WeightsNote
from scorecard.report.weights import consistency_sentence, how_to_change, weights_of

TWO = [numbers("rating", 30), numbers("price", 10)]


def test_a_weight_stands_beside_its_share_and_what_it_moves(assessed):
    found = weights_of(assessed(make_case(TWO, {"Brightholm": [90, 10], "Cressel": [50, 50]})))[0]
    # 30 of 40 is 75 of 100; 0.75 · (90 − 50) = 30
    assert ("30", "75.0", "moves these makers’ scores by at most 30.0 points") == (
        found.typed,
        found.share,
        found.moves,
    )


def test_the_ends_of_a_weight_are_as_typed(assessed):
    found = weights_of(assessed(make_case(TWO, {"Brightholm": [90, 10], "Cressel": [50, 50]})))[0]
    # level where 40·t = 40·(1−t): a share of 0.5, that is, a weight of 10 beside 10
    assert ("10.0", "any", "Cressel", None) == (found.low, found.high, found.below, found.above)


def test_one_maker_has_nobody_to_be_moved_from(assessed):
    assert "no two makers to move apart" == weights_of(assessed(make_case(TWO, {"Brightholm": [1, 2]})))[0].moves


def test_a_criterion_without_weight_moves_nothing(assessed):
    found = weights_of(assessed(make_case([*TWO, numbers("c", 0)], {"Brightholm": [1, 2, 3], "Cressel": [0, 1, 2]})))
    assert "weight 0: moves nothing" == found[2].moves


def test_all_the_weight_on_one_has_no_range(assessed):
    found = weights_of(assessed(make_case([numbers("a", 1)], {"Brightholm": [1], "Cressel": [0]})))[0]
    assert (None, None, None) == (found.low, found.high, found.scale)


def test_the_command_takes_the_heaviest():
    assert "scorecard reweigh rating=15" == how_to_change(CriteriaSet(tuple(TWO)))[0]


def test_a_key_with_a_space_is_quoted():
    criteria = CriteriaSet((replace(TWO[0], key="my rating"),))
    assert 'scorecard reweigh "my rating=15"' == how_to_change(criteria)[0]


def test_weights_by_ranks_are_changed_in_the_file_alone():
    command, where = how_to_change(CriteriaSet(tuple(TWO), note=WeightsNote(method="ranks")))
    assert ("", True) == (command, "ranks under [weights]" in where)


def test_weights_by_pairs_say_how_well_the_pairs_agree():
    note = WeightsNote(method="pairs", ratio=0.0441, lambda_max=4.1, random_index="Saaty 1980")
    assert "by a ratio of 0.044;" in consistency_sentence(CriteriaSet(tuple(TWO), note=note))


def test_typed_weights_have_nothing_to_agree():
    assert consistency_sentence(CriteriaSet(tuple(TWO))) is None


def test_weights_by_pairs_are_changed_in_the_file_alone():
    command, where = how_to_change(CriteriaSet(tuple(TWO), note=WeightsNote(method="pairs")))
    assert ("", True) == (command, "pairs under [weights]" in where)
