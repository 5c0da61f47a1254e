"""Whom to write to, or whom to order from: costs beside scores, and who is both dearer and lower."""

from dataclasses import replace
from datetime import timedelta

import numpy as np
import pytest
from cases import AS_OF, make_case, numbers
from ordered import BRIEF, PAID, case_of
from quoted import quote, timing
from sized import selling

from scorecard.answers import Answers
from scorecard.assessment import assess
from scorecard.costing.amounts import Span
from scorecard.criteria import Limit
from scorecard.stage import costed_makers, dearer_and_lower, open_makers, stage_of, stage_sentences

ANSWERS = {"Ash": 90, "Birch": 70, "Cedar": 50}


def assessed(*args, **more):
    return assess(case_of(*args, **more), as_of=AS_OF)


def said(assessment):
    return stage_sentences(assessment, costed_makers(assessment), open_makers(assessment))


def pairs(assessment):
    names = assessment.case.table.makers
    found = dearer_and_lower(assessment, costed_makers(assessment))
    return [(names[lower], names[better]) for lower, better in found]


def test_while_nothing_is_quoted_one_writes_to_makers():
    assessment = assessed(ANSWERS, {})

    assert "write" == stage_of(costed_makers(assessment))
    assert ["Whom to write to, not yet whom to order from: price and freight are not in this ranking"] == said(
        assessment
    )


def test_with_one_maker_costed_one_still_writes_to_makers():
    assessment = assessed(ANSWERS, {"Ash": 5})

    assert "write" == assessment.as_json()["stage"]
    assert said(assessment)[0].endswith("price and freight are not in this ranking; one ranked maker is costed so far")


def test_once_two_makers_are_costed_one_orders():
    assessment = assessed(ANSWERS, {"Ash": 5, "Cedar": 4})

    assert "order" == assessment.as_json()["stage"]
    assert [
        "Whom to order from: price and freight are not in this ranking, so what a good piece costs at your door stands "
        "beside the scores",
        "Of those costed Ash stands first, at 5.00 GBP a good piece; the cheapest is Cedar, at 4.00 GBP a good piece",
        "1 ranked maker is not costed yet",
    ] == said(assessment)


def test_whose_way_misses_the_need_by_date_is_said_to():
    case = case_of(ANSWERS, {"Ash": 5, "Cedar": 4})
    late = replace(case.costs, timings={("Cedar", "road"): timing("no time for a sample")})
    assessment = assess(replace(case, costs=late), as_of=AS_OF)

    assert (
        "Of those costed Ash stands first, at 5.00 GBP a good piece; the cheapest is Cedar, at 4.00 GBP a good piece "
        "(no time for a sample)"
    ) == said(assessment)[1]


def test_a_maker_that_is_ruled_out_is_not_one_to_order_from():
    criteria = [numbers("a", 1, limit=Limit(at_least=60))]
    case = make_case(criteria, {maker: [points] for maker, points in ANSWERS.items()}, brief=BRIEF)
    costs = case_of(ANSWERS, {"Ash": 5, "Cedar": 4}).costs

    assert "write" == assess(replace(case, costs=costs), as_of=AS_OF).as_json()["stage"]


def test_a_cost_with_a_gap_is_not_a_landed_cost():
    goods_only = quote(3, maker="Cedar", row=3, covers="goods", way="road", days=30)
    assessment = assessed(ANSWERS, {"Ash": 5, "Cedar": goods_only})

    assert ["Ash"] == [assessment.case.table.makers[one.maker] for one in costed_makers(assessment)]


def test_where_landed_cost_counts_it_is_not_said_that_price_is_missing():
    (first, *_) = said(assessed(ANSWERS, {"Ash": 5, "Cedar": 4}, weight=1))

    assert (
        "Whom to order from: what a good piece costs at your door counts in this ranking, with 50.0 of 100 of weight"
        == first
    )


def test_a_criterion_of_weight_0_does_not_put_price_into_the_ranking():
    (first, *_) = said(assessed(ANSWERS, {"Ash": 5, "Cedar": 4}, weight=0))

    assert "price and freight are not in this ranking" in first


@pytest.mark.parametrize(("column", "is_price"), [("Unit price", True), ("Freight quote", True), ("Priceless", False)])
def test_a_column_of_prices_that_counts_is_a_price_in_the_ranking(column, is_price):
    case = make_case([replace(numbers("a", 1), column=column)], {"Ash": [1], "Birch": [2]})
    (only,) = said(assess(case, as_of=AS_OF))

    assert is_price == ("price and freight are not in this ranking" not in only)


def test_who_is_both_dearer_and_lower_is_named_with_the_best_that_beats_it():
    assessment = assessed(ANSWERS, {"Ash": 5, "Birch": 6, "Cedar": 7})

    assert [("Birch", "Ash"), ("Cedar", "Ash")] == pairs(assessment)
    assert "Birch and Cedar are both dearer and lower than Ash" in said(assessment)


def test_of_many_both_dearer_and_lower_some_are_named():
    answers = {f"maker {at}": 90 - at for at in range(11)}
    (words,) = [
        one for one in said(assessed(answers, {maker: 5 + at for at, maker in enumerate(answers)})) if "both" in one
    ]

    assert words.endswith(
        "maker 7 and maker 8 are both dearer and lower than maker 0, and 2 more makers likewise than another"
    )


def test_who_is_dearer_but_higher_is_not():
    assert [] == pairs(assessed(ANSWERS, {"Ash": 7, "Birch": 6, "Cedar": 5}))


def test_of_a_range_every_cost_must_be_dearer():
    ranged = quote(Span.of(4, 7), maker="Cedar", row=3, covers="to my door, duty and tax paid")

    assert [] == pairs(assessed(ANSWERS, {"Ash": 5, "Cedar": ranged}))


def test_a_level_score_is_not_lower():
    assert [] == pairs(assessed({"Ash": 50, "Birch": 50}, {"Ash": 5, "Birch": 6}))


def test_from_which_weight_of_landed_cost_on_another_would_lead_is_said_with_both_costs():
    # points of cost: Ash 60 at 5, Cedar 100 at 1; scores 90 and 50 on the other, so level where w x 40 = 1 x 40
    assert (
        "Landed cost does not count yet: above a weight of 1.0 Cedar would lead, since a good piece costs 5.00 GBP "
        "from Ash and 1.00 GBP from Cedar" == said(assessed(ANSWERS, {"Ash": 5, "Cedar": 1}, weight=0))[-1]
    )


def test_where_landed_cost_decides_it_is_said_below_which_weight_it_no_longer_does():
    assert (
        "Landed cost decides: below a weight of 1.0 Ash would lead, since a good piece costs 1.00 GBP from Cedar and "
        "5.00 GBP from Ash" == said(assessed(ANSWERS, {"Ash": 5, "Cedar": 1}, weight=3))[-1]
    )


def test_where_no_weight_of_landed_cost_changes_the_leader_nothing_is_said_of_it():
    assert not [words for words in said(assessed(ANSWERS, {"Ash": 1, "Cedar": 5}, weight=0)) if "Landed cost" in words]


def test_a_typed_landed_cost_wins_and_is_costed_without_a_quote():
    case = case_of(ANSWERS, {"Ash": 5}, weight=0)
    ends = np.array([6.5, np.nan, 4.0])
    case = replace(case, table=replace(case.table, answers={**case.table.answers, "landed": Answers(ends, ends)}))
    costed = costed_makers(assess(case, as_of=AS_OF))

    assert [(0, 6.5, True, True), (2, 4.0, False, True)] == [
        (one.maker, one.low, one.cost is not None, one.is_typed) for one in costed
    ]


def test_where_nobody_is_ranked_nothing_is_said():
    case = make_case([numbers("a", 1, limit=Limit(at_least=50))], {"Ash": [1]})

    assert [] == said(assess(case, as_of=AS_OF))


def test_a_range_that_meets_anothers_is_not_called_the_cheapest():
    low, high = (
        quote(Span.of(*ends), maker=maker, row=row, covers="to my door, duty and tax paid")
        for maker, row, ends in (("Birch", 3, ("5.10", "5.90")), ("Cedar", 4, ("5.40", "6.20")))
    )

    assert (
        "Of those costed Ash stands first, at 7.00 GBP a good piece; Birch comes out cheapest, at 5.10 to 5.90 GBP a "
        "good piece, but Cedar (5.40 to 6.20) may be cheaper, until more is known: of Birch the price; of Cedar the "
        "price" == said(assessed(ANSWERS, {"Ash": 7, "Birch": low, "Cedar": high}))[1]
    )


def test_one_that_lacks_a_cost_may_be_cheaper_than_the_cheapest():
    goods_only = quote(3, maker="Cedar", row=4, covers="goods", way="road", days=30)

    words = said(assessed(ANSWERS, {"Ash": 5, "Birch": 6, "Cedar": goods_only}))[1]

    assert words.startswith(
        "Of those costed Ash stands first and comes out cheapest too, at 5.00 GBP a good piece, but Cedar (at least "
    )
    assert ") may be cheaper, until more is known: of Cedar freight, " in words


def test_who_costs_just_as_much_as_the_cheapest_is_named():
    assert (
        "Of those costed Ash stands first and is the cheapest too, at 5.00 GBP a good piece, level with Birch"
        == said(assessed(ANSWERS, {"Ash": 5, "Birch": 5}))[1]
    )


def priced(assessment_case, price):
    return said(assess(replace(assessment_case, selling=selling(price)), as_of=AS_OF))


def test_a_leader_that_loses_money_on_every_piece_is_said_to():
    case = case_of(ANSWERS, {"Ash": 5, "Cedar": 4})

    assert (
        "A good piece from Ash costs 5.00 GBP, and of its price 4.50 GBP is left: each one sold loses 0.50 GBP"
        == priced(case, "4.50")[2]
    )


def test_the_cheapest_that_loses_money_is_said_to_as_well():
    case = case_of(ANSWERS, {"Ash": 5, "Cedar": 4})
    losses = [words for words in priced(case, "3.50") if "loses" in words]

    assert ["A good piece from Ash costs 5.00", "A good piece from Cedar costs 4.00"] == [
        words.split(" GBP")[0] for words in losses
    ]


def test_a_range_that_reaches_above_the_price_may_lose():
    ranged = quote(Span.of(4, 7), maker="Ash", row=2, covers="to my door, duty and tax paid")
    case = case_of(ANSWERS, {"Ash": ranged, "Cedar": 4})

    assert "each one sold may lose up to 2.00 GBP" in priced(case, "5.00")[2]


def test_while_one_alone_is_costed_its_loss_is_said_too():
    case = case_of(ANSWERS, {"Ash": 5})

    assert "each one sold loses 1.00 GBP" in priced(case, "4.00")[1]


def test_where_no_piece_loses_money_nothing_is_said_of_it():
    case = case_of(ANSWERS, {"Ash": 5, "Cedar": 4})

    assert not [words for words in priced(case, "9.00") if "lose" in words]


def test_an_expired_quote_of_the_cheapest_is_said_to_be_so():
    row = quote(3, maker="Ash", covers=PAID, valid_until=AS_OF - timedelta(days=1))
    words = said(assessed(ANSWERS, {"Ash": row, "Birch": 4}))[1]

    assert "3.00 GBP a good piece (its quote has expired: ask whether the price still holds)" in words
