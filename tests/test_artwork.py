"""Pixels and sizes of artwork.

Published figures, as the reference of trade facts gives them: the 6 × 4 in postcard and the 4 × 6 in picture (size and
bleed: a university print shop's guide, uvu.edu; pixels computed); A4 at 300 dots per inch as 2480 × 3508 (a university
workshop's guide, tudelft.nl); the remaining pixel counts are computed there.
"""

from fractions import Fraction
from math import ceil

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scorecard.artwork import PrintSize, effective_dpi, is_sharp, largest_sharp, pixels_needed

INCH = 25.4


@pytest.mark.parametrize(
    ("size", "pixels"),
    [
        (PrintSize(width_mm=6 * INCH, height_mm=4 * INCH, bleed_mm=0.125 * INCH), (1875, 1275)),
        (PrintSize(width_mm=4 * INCH, height_mm=6 * INCH), (1200, 1800)),
        (PrintSize(width_mm=90, height_mm=55, bleed_mm=3), (1134, 721)),
    ],
    ids=["postcard with bleed", "picture without bleed", "card with bleed"],
)
def test_the_published_pixel_counts_are_met(size, pixels):
    assert pixels == pixels_needed(size)


def test_an_a4_file_has_150_dots_per_inch_at_a2():
    assert 150 == pytest.approx(effective_dpi((2480, 3508), PrintSize(width_mm=420, height_mm=594)), abs=0.05)


def test_1500_pixels_have_127_dots_per_inch_at_300_mm():
    assert 127.0 == effective_dpi((1500, 1500), PrintSize(width_mm=300, height_mm=300))


@pytest.mark.parametrize("pixels", [(2480, 3508), (2481, 3507)])
def test_either_table_of_a4_at_300_is_sharp(pixels):
    assert is_sharp(pixels, PrintSize(width_mm=210, height_mm=297))


sides = st.integers(10, 2000)


@given(sides, sides, st.integers(0, 10), st.integers(50, 1200))
def test_pixels_needed_agree_with_exact_fractions(width, height, bleed, dpi):
    exact = tuple(ceil(Fraction(side + 2 * bleed) * 5 / 127 * dpi) for side in (width, height))

    assert exact == pixels_needed(PrintSize(width_mm=width, height_mm=height, bleed_mm=bleed, dpi=dpi))


@given(sides, sides, st.integers(0, 5))
def test_a_picture_of_just_the_pixels_needed_is_sharp(width, height, bleed):
    size = PrintSize(width_mm=width, height_mm=height, bleed_mm=bleed, tolerance_percent=0)

    assert is_sharp(pixels_needed(size), size)


@given(st.integers(100, 9000), st.integers(100, 9000), st.integers(0, 3))
def test_a_picture_is_sharp_at_the_largest_sharp_size(width, height, bleed):
    largest = largest_sharp((width, height), PrintSize(width_mm=1, height_mm=1, bleed_mm=bleed))
    size = PrintSize(width_mm=max(largest[0], 0.1), height_mm=max(largest[1], 0.1), bleed_mm=bleed)

    assert largest == (0.0, 0.0) or min(largest) == 0.0 or is_sharp((width, height), size)


@given(sides, sides)
def test_twice_the_size_has_half_the_dots_per_inch(width, height):
    once = effective_dpi((3000, 2000), PrintSize(width_mm=width, height_mm=height))
    twice = effective_dpi((3000, 2000), PrintSize(width_mm=2 * width, height_mm=2 * height))

    assert once / 2 == pytest.approx(twice)
