"""Pixels, shapes and verdicts of artwork.

Published figures, as the reference of trade facts gives them: the 6 × 4 in postcard and the 4 × 6 in picture (size and
bleed: a university print shop's guide, uvu.edu; pixels computed); A4 at 300 dots per inch as 2480 × 3508 (a university
workshop's guide, tudelft.nl); the remaining pixel counts are computed there.
"""

from fractions import Fraction
from math import ceil

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scorecard.artwork import (
    Picture,
    Placed,
    PrintSize,
    Sheet,
    check_picture,
    effective_dpi,
    is_sharp,
    largest_sharp,
    pixels_needed,
    several,
    verdict_sentence,
)

INCH = 25.4
MUG = PrintSize(width_mm=180, height_mm=80)


def picture(width=2126, height=945, **more):
    return Picture(**{"name": "a.png", "kind": "PNG", "width_px": width, "height_px": height, "mode": "RGB"} | more)


def codes(checked):
    return [one.code for one in checked.findings if not one.code.startswith("note-")]


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


def test_what_the_file_says_of_itself_changes_no_verdict():
    verdicts = {check_picture(picture(tagged_dpi=tag), MUG).verdict for tag in (None, (72, 72), (300, 300))}

    assert {"sharp"} == verdicts


@pytest.mark.parametrize(
    ("made", "verdict", "found"),
    [
        (picture(), "sharp", []),
        (picture(1063, 473), "not sharp", ["too-few-pixels"]),
        (picture(2200, 2200), "wrong shape", ["wrong-shape"]),
        (picture(2200, 1900, mode="RGBA"), "wrong shape", ["wrong-shape"]),
        (picture(945, 2126), "ask first", ["turned"]),
        (picture(see_through=0.4, mode="RGBA"), "ask first", ["see-through"]),
        (picture(mode="CMYK"), "ask first", ["no-profile"]),
        (picture(mode="CMYK", profile="coated"), "sharp", []),
    ],
)
def test_each_fault_has_its_verdict(made, verdict, found):
    checked = check_picture(made, MUG)

    assert (verdict, found) == (checked.verdict, codes(checked))


def test_a_picture_without_its_bleed_is_told_so():
    size = PrintSize(width_mm=90, height_mm=40, bleed_mm=3)

    assert ["no-bleed"] == codes(check_picture(picture(1800, 800), size))


def test_the_share_that_is_cut_off_is_that_of_the_picture():
    # a square filling 2 to 1 shows half of itself
    (finding, *_) = check_picture(picture(2000, 2000), PrintSize(width_mm=100, height_mm=50)).findings

    assert "50 of 100 of the picture is cut off" in finding.text


@pytest.mark.parametrize(
    ("flat", "priced", "found"), [(3, 3, []), (4, 3, ["too-many-colours"]), (None, 3, ["not-flat"]), (None, None, [])]
)
def test_flat_colours_count_where_the_price_does(flat, priced, found):
    assert found == codes(check_picture(picture(flat_colours=flat), MUG, colours=priced))


def page(trim=(180.0, 80.0), bleed=0.0, placed=(), **more):
    sheet = Sheet(trim_mm=trim, bleed_mm=bleed, placed=tuple(placed), **more)
    return Picture(name="a.pdf", kind="PDF", sheet=sheet)


@pytest.mark.parametrize(
    ("made", "verdict"),
    [
        (page(), "sharp"),
        (page(trim=(210.0, 297.0)), "wrong shape"),
        (page(placed=[Placed(width_px=2126, height_px=945, width_mm=180, height_mm=80)]), "sharp"),
        (page(placed=[Placed(width_px=1063, height_px=473, width_mm=180, height_mm=80)]), "not sharp"),
        (page(unmeasured=1), "not measured"),
        (page(is_empty=True), "not measured"),
    ],
)
def test_a_page_is_judged_at_its_own_size(made, verdict):
    assert verdict == check_picture(made, MUG).verdict


def test_a_page_that_does_not_reach_into_the_bleed_is_told_so():
    size = PrintSize(width_mm=180, height_mm=80, bleed_mm=3)

    assert ["no-bleed"] == codes(check_picture(page(bleed=2.0), size))


def test_files_that_do_not_match_the_designs_are_named():
    assert (None, None, "The brief has 3 designs; 2 files looked at: a and b") == (
        several(["a"], 1),
        several(["a", "b"], 2),
        several(["a", "b"], 3),
    )


def test_the_verdict_is_a_sentence_with_the_size():
    assert "prints sharply at 180 × 80 mm" == verdict_sentence(check_picture(picture(), MUG), MUG)
