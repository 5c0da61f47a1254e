"""Prices that hold no longer, in words."""

from datetime import timedelta

import pytest
from quoted import TODAY, landed, offer, quote

from scorecard.costing.validity import expired_words

YESTERDAY = TODAY - timedelta(days=1)  # 24 November 2026
MAKERS = ("Ash", "Birch", "Cedar", "Dogwood", "Elder", "Fir", "Gorse")


def words(*quotes, named=str, **more):
    return expired_words(landed(*quotes, **more), lambda cost: f"by {cost.way}", named)


def of(*makers, **more):
    return words(*(quote(5, maker=maker, row=row, valid_until=YESTERDAY) for row, maker in enumerate(makers)), **more)


@pytest.mark.parametrize("until", [None, TODAY, TODAY + timedelta(days=1)])
def test_nothing_is_said_of_a_price_that_holds(until):
    assert [] == words(quote(5, valid_until=until))


def test_one_that_is_over_is_named_with_its_last_day():
    assert ["The quote of Fernhill (until 24 November 2026) has expired: ask whether the price still holds"] == words(
        quote(5, valid_until=YESTERDAY), quote(5, maker="Oxlip", row=3)
    )


def test_several_stand_in_one_sentence_each_with_its_own_day():
    rows = quote(5, valid_until=YESTERDAY), quote(5, maker="Oxlip", row=3, valid_until=TODAY - timedelta(days=30))

    assert [
        "The quotes of Fernhill (until 24 November 2026) and Oxlip (until 26 October 2026) have expired: ask whether "
        "the prices still hold"
    ] == words(*rows)


def test_which_of_a_maker_is_over_is_said_where_another_of_it_holds():
    sea = quote(5, way="sea", covers="goods and freight", valid_until=YESTERDAY)
    air = quote(7, row=3, way="air", covers="goods and freight", valid_until=TODAY)

    assert "The quote of Fernhill by sea (until 24 November 2026) has expired" in words(sea, air)[0]


def test_a_maker_whose_every_way_is_over_is_named_once():
    by_two = words(quote(5, valid_until=YESTERDAY), offers=(offer("sea", 90), offer("air", 700, row=3)))

    assert "The quote of Fernhill (until 24 November 2026) has expired" in by_two[0]


@pytest.mark.parametrize(("number", "end"), [(5, "and Elder (until 24 November 2026) have"), (7, "and 2 more have")])
def test_of_many_five_are_named(number, end):
    assert end in of(*MAKERS[:number])[0]


def test_names_are_made_fit_for_where_they_are_shown():
    assert "The quote of [Ash] (until" in of("Ash", named="[{}]".format)[0]
