"""Verdicts and findings of artwork."""

import pytest

from scorecard.artwork import Picture, Placed, PrintSize, Sheet
from scorecard.artwork_check import check_picture, several, verdict_sentence

MUG = PrintSize(width_mm=180, height_mm=80)


def picture(width=2126, height=945, **more):
    return Picture(**{"name": "a.png", "kind": "PNG", "width_px": width, "height_px": height, "mode": "RGB"} | more)


def codes(checked):
    return [one.code for one in checked.findings if not one.code.startswith("note-")]


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
