"""Designs in fewer pieces than the maker's minimum per design."""

from math import inf, nan

import pytest

from scorecard.answers import Answers, MakerTable
from scorecard.design_minimums import below_minimum, below_minimums
from scorecard.order_terms import DesignTerms, OrderTerms

PIECES = {"Gannet": 150, "Gull": 100, "Tern": 50}


def table(*makers):
    """Return makers of (low, high, unit): the two ends of the minimum, and what it is per."""
    lows, highs, units = zip(*makers, strict=True)
    names = tuple(f"Maker {at}" for at in range(len(makers)))
    rows = tuple(range(2, 2 + len(makers)))
    letters = {"maker": "A", "Minimum is per": "D"}
    return MakerTable(
        makers=names,
        rows=rows,
        file="makers.xlsx",
        sheet="Makers",
        letters=letters,
        minimum=Answers(lows, highs),
        minimum_per=units,
    )


def terms(pieces):
    return OrderTerms(designs=tuple(DesignTerms(name=name, pieces=count) for name, count in pieces.items()))


def said(low, high, unit, pieces=None):
    return below_minimum(terms(pieces or PIECES), table((low, high, unit)), 0)


@pytest.mark.parametrize(
    ("low", "high", "unit", "words"),
    [
        (100, 100, "design", "Tern: 50, below the minimum of 100 per design"),
        (101, 101, "design", "Gull: 100 and Tern: 50, below the minimum of 101 per design"),
        (80, 120, "design", "Gull: 100 and Tern: 50, perhaps below the minimum of 80 to 120 per design"),
        (60, 80, "design", "Tern: 50, below the minimum of 60 to 80 per design"),
        (-inf, 60, "design", "Tern: 50, perhaps below the minimum of 0 to 60 per design"),
        (60, inf, "design", "Tern: 50, below the minimum of at least 60 per design"),
        (100, 100, None, "Tern: 50, perhaps below the minimum of 100, which may be per design"),
    ],
)
def test_a_design_below_the_minimum_is_named_with_its_pieces(low, high, unit, words):
    assert words == said(low, high, unit)


@pytest.mark.parametrize(
    ("low", "high", "unit", "pieces"),
    [
        (50, 50, "design", PIECES),
        (100, 100, "order", PIECES),
        (100, 100, "colour", PIECES),
        (nan, nan, "design", PIECES),
        (100, 100, "design", {"Gannet": None, "Tern": None}),  # split evenly, which follows the minimum
        (100, 100, "design", {"Tern": 50}),  # the only design is the whole order
    ],
)
def test_nothing_is_said_of_pieces_that_are_enough_or_of_another_minimum(low, high, unit, pieces):
    assert "" == said(low, high, unit, pieces)


def test_without_a_column_of_minimums_nothing_is_said():
    bare = MakerTable(makers=("Heddle",), rows=(2,), file="makers.xlsx", sheet="Makers")

    assert ("", []) == (below_minimum(terms(PIECES), bare, 0), list(below_minimums(terms(PIECES), bare)))


def test_a_design_without_a_name_goes_by_its_number_and_one_with_odd_signs_is_made_plain():
    designs = (DesignTerms(pieces=50), DesignTerms(name="Te\u202ern \x1b\nGull", pieces=60), DesignTerms(pieces=300))

    assert "design 1: 50 and Te rn Gull: 60, below the minimum of 100 per design" == below_minimum(
        OrderTerms(designs=designs), table((100, 100, "design")), 0
    )


def test_each_maker_with_a_minimum_per_design_above_a_design_is_warned_of_at_its_cell():
    makers = table((100, 100, "design"), (100, 100, None), (200, 200, "order"), (60, 60, "design"))
    found = list(below_minimums(terms(PIECES), makers))

    assert [("D2", "below-minimum"), ("D5", "below-minimum")] == [(one.place.cell, one.code) for one in found]
    assert "Tern: 50, below the minimum of 60 per design" == found[1].found
