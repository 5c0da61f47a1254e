"""Ranges for rough numbers, each worked out by hand."""

from decimal import Decimal

import pytest

from scorecard.reading.rough_ranges import Named, in_own_unit, or_working, range_of


def named(number, times=1):
    """Return a number as a text names it."""
    return Named(Decimal(number), times, "")


@pytest.mark.parametrize(
    ("number", "rate", "written"),
    [
        (named("10"), (1, 1), "9-11"),
        (named("2.4", 1000), (1, 1), "2100-2700"),  # 2.16 to 2.64, outwards to tenths
        (named("1.5"), (7, 1), "9-12"),  # 1.3 to 1.7 weeks: 9.1 to 11.9 days
        (named("6"), (1, 12), "0.41-0.59"),
        (named("1E+40", 1000), (1, 12), "7.5e+41-9.1667e+41"),  # 9.1666… outwards to hundredths of the last digit
    ],
)
def test_a_tenth_less_to_a_tenth_more_in_the_columns_unit(number, rate, written):
    assert written == range_of([number], rate, None)


def test_two_ends_are_kept():
    assert "21-28" == range_of([named("3"), named("4")], (7, 1), None)


def test_a_range_stays_within_its_bounds():
    assert "18-20" == range_of([named("20")], (1, 1), (0, 20))


def test_a_number_that_does_not_come_out_even_is_not_told():
    assert (["0.5"], []) == (in_own_unit(named("6"), [(1, 12)]), in_own_unit(named("7"), [(1, 12)]))


def test_working_days_are_named_where_there_are_two():
    assert ("21, or 15 if working days are meant", "21") == (or_working(["21", "15"]), or_working(["21"]))
