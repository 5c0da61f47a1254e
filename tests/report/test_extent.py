from cases import make_case, numbers

from scorecard.report.extent import extent_of


def many(makers, criteria=1):
    one = [numbers(f"c{at}", 1) for at in range(criteria)]
    return make_case(one, {f"M{at}": [at % 100] * criteria for at in range(makers)})


def test_up_to_500_makers_the_ranking_is_whole(assessed):
    assert 500 == len(extent_of(assessed(many(500))).ranked)


def test_above_500_the_100_best_are_shown(assessed):
    found = assessed(many(501))
    assert found.ranking.order[:100] == extent_of(found).ranked


def test_no_more_than_100_have_their_arithmetic(assessed):
    assert 100 == len(extent_of(assessed(many(120))).detailed)


def test_many_criteria_leave_room_for_fewer_makers(assessed):
    assert 25 == len(extent_of(assessed(many(60, criteria=40))).detailed)  # 1,000 answers / 40


def test_the_best_always_has_its_arithmetic(assessed):
    assert 1 == len(extent_of(assessed(many(3, criteria=4)), cells=2).detailed)
