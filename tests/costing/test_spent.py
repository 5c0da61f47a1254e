"""What is already paid is shown beside the sum."""

from quoted import MAKER, landed, quote

from scorecard.costing.inputs import CostSettings


def spent(sampled):
    settings = CostSettings(sampled=frozenset({MAKER} if sampled else ()))
    (cost,) = landed(quote(5, sample_price=(30, 40), sample_postage=15), settings=settings)
    return [(line.key, line.low, line.high) for line in cost.spent]


def test_nothing_is_spent_before_a_sample_is_paid():
    assert [] == spent(sampled=False)


def test_a_sample_that_is_paid_for_is_spent_with_its_postage():
    assert [("sample", 30, 40), ("sample postage", 15, 15)] == spent(sampled=True)
