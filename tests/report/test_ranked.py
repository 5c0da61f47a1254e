from cases import make_case, numbers

from scorecard.criteria import Limit
from scorecard.report.ranked import known_words, ranked_makers


def rows_of(assessment):
    return ranked_makers(assessment, assessment.ranking.order)


def test_a_row_holds_rank_maker_score_band_and_known_share(assessed):
    case = make_case([numbers("a", 1), numbers("b", 3)], {"Brightholm": [40, None], "Cressel": [80, 80]})
    row = rows_of(assessed(case))[1]
    # 40 / 4 + 50 · 3 / 4 = 47.5; between 10 and 85; a quarter is known
    assert ("2", "Brightholm", "47.5", "10.0 to 85.0", "25 of 100") == (
        row.rank, row.maker, row.score, row.band, row.known,
    )  # fmt: skip


def test_level_makers_share_a_rank(assessed):
    case = make_case([numbers("a", 1)], {"Brightholm": [40], "Cressel": [40], "Dunmorrow": [10]})
    assert ["1", "1", "3"] == [row.rank for row in rows_of(assessed(case))]


def test_limits_that_may_yet_be_failed_are_named(assessed):
    criteria = [numbers("a", 1, limit=Limit(at_least=10)), numbers("b", 1)]
    row = rows_of(assessed(make_case(criteria, {"Brightholm": [None, 5]})))[0]
    assert "A" == row.may_fail


def test_of_many_such_limits_three_are_named(assessed):
    criteria = [numbers(f"c{at}", 1, limit=Limit(at_least=10)) for at in range(5)]
    row = rows_of(assessed(make_case(criteria, {"Brightholm": [None] * 5})))[0]
    assert "C0, C1, C2 and 2 others" == row.may_fail


def test_nearly_all_known_is_not_all():
    assert "over 99 of 100" == known_words(0.999)
