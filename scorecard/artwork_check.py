"""Does a picture print sharply: its pixels and shape against the printed size, and what else a printer would ask.

Enters: what a file holds, the size that is printed, and how many colours the price covers. Leaves: the verdict, and
findings in words, each with a stable code.
"""

from math import floor
from typing import Literal

from scorecard.artwork import (
    Picture,
    PrintSize,
    Sheet,
    effective_dpi,
    is_sharp,
    largest_sharp,
    pixels_needed,
    shape_error,
)
from scorecard.frozen import dataclass
from scorecard.words import counted, listed, rounded, shortest

SHAPE_TOLERANCE = 1.0  # percent by which the sides' proportion may differ unseen (common practice, no source)

Verdict = Literal["sharp", "not sharp", "wrong shape", "ask first", "not measured"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Finding:
    """One thing to know of a file: a stable code, and the sentence."""

    code: str
    text: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Checked:
    """A file against the printed size.

    Parameters
    ----------
    verdict : in two words
    needed_px : pixels that the print needs, with the bleed, as the file lies (turned where it is turned)
    dpi : dots per inch at the printed size, whatever the file says of itself; None where there are no pixels to count
    largest_mm : the largest print of the file's own shape at which it is sharp, without tolerance; None as above
    findings : the weightiest first
    """

    picture: Picture
    verdict: Verdict
    needed_px: tuple[int, int]
    dpi: float | None
    largest_mm: tuple[float, float] | None
    findings: tuple[Finding, ...]


def check_picture(picture: Picture, size: PrintSize, *, colours: int | None = None) -> Checked:
    """Return what can be said of a file at the printed size.

    Parameters
    ----------
    picture : what the file holds
    size : what is printed
    colours : how many colours the maker's price covers, where it is priced per colour
    """
    sides = _sides(picture)
    lying = size.turned() if _is_turned(sides, size) else size
    findings = [
        *_shape_findings(picture, sides, lying, turned=lying is not size),
        *_pixel_findings(picture, lying),
        *_colour_findings(picture, colours),
        *_other_findings(picture, size),
        *(_flat_note(picture) if colours is None else ()),
    ]
    pixels = _pixels(picture)
    return Checked(
        picture=picture,
        verdict=_verdict(findings),
        needed_px=pixels_needed(lying),
        dpi=_dpi(picture, lying),
        largest_mm=None if pixels is None else largest_sharp(pixels, lying),
        findings=tuple(findings),
    )


def _pixels(picture: Picture) -> tuple[int, int] | None:
    if picture.width_px is None or picture.height_px is None:
        return None
    return picture.width_px, picture.height_px


def _sides(picture: Picture) -> tuple[float, float]:
    """Return the sides whose proportion is the file's shape: pixels, or the trimmed page."""
    if picture.sheet is not None:
        return picture.sheet.trim_mm
    return float(picture.width_px or 1), float(picture.height_px or 1)


def _is_turned(sides: tuple[float, float], size: PrintSize) -> bool:
    return shape_error(sides, size.turned().bled_mm) + 1e-9 < shape_error(sides, size.bled_mm)


def _dpi(picture: Picture, size: PrintSize) -> float | None:
    pixels = _pixels(picture)
    if pixels is not None:
        return effective_dpi(pixels, size)
    placed = picture.sheet.placed if picture.sheet else ()
    return min((one.dpi for one in placed), default=None)


def _shape_findings(picture: Picture, sides: tuple[float, float], size: PrintSize, *, turned: bool) -> list[Finding]:
    found = _page_findings(picture.sheet, size) if picture.sheet else _proportion_findings(sides, size)
    if turned and not found:
        text = "It lies on its side: turn it by a quarter, or tell the maker which way is up"
        found.append(Finding(code="turned", text=text))
    return found


def _proportion_findings(sides: tuple[float, float], size: PrintSize) -> list[Finding]:
    if shape_error(sides, size.bled_mm) <= SHAPE_TOLERANCE:
        return []
    if size.bleed_mm and shape_error(sides, (size.width_mm, size.height_mm)) <= SHAPE_TOLERANCE:
        text = f"It has the shape of the print without its bleed: draw {shortest(size.bleed_mm)} mm more on every side"
        return [Finding(code="no-bleed", text=text)]
    width, height = size.bled_mm
    cut = 100 * (1 - min(sides[0] / width, sides[1] / height) / max(sides[0] / width, sides[1] / height))
    text = (
        f"Its shape is not the print's ({_by(sides)} against {_by(size.bled_mm)} mm): to fill the print, "
        f"{rounded(cut, 0)} of 100 of the picture is cut off; to show it whole, a strip stays empty"
    )
    return [Finding(code="wrong-shape", text=text)]


def _page_findings(sheet: Sheet, size: PrintSize) -> list[Finding]:
    """Return how a page differs from the print: a page is placed at its own size, never scaled."""
    found = []
    wanted = (size.width_mm, size.height_mm)
    if any(
        abs(have - want) > max(0.5, want * SHAPE_TOLERANCE / 100)
        for have, want in zip(sheet.trim_mm, wanted, strict=True)
    ):
        trim = _by(sheet.trim_mm)
        text = f"The page is {trim} mm after cutting, the print {_by(wanted)} mm: set the page to the print's size"
        found.append(Finding(code="wrong-shape", text=text))
    elif sheet.bleed_mm + 0.1 < size.bleed_mm:
        has, wants = rounded(sheet.bleed_mm), shortest(size.bleed_mm)
        text = f"The page reaches {has} mm beyond the cut; {wants} mm of bleed are wanted"
        found.append(Finding(code="no-bleed", text=text))
    return found


def _pixel_findings(picture: Picture, size: PrintSize) -> list[Finding]:
    pixels, dpi = _pixels(picture), _dpi(picture, size)
    if picture.sheet is not None:
        return _placed_findings(picture.sheet, dpi, size)
    if pixels is None or dpi is None or is_sharp(pixels, size):
        return []
    need, largest = pixels_needed(size), largest_sharp(pixels, size)
    text = (
        f"Too few pixels: {pixels[0]} × {pixels[1]} where {need[0]} × {need[1]} are needed, which makes "
        f"{_whole(dpi)} dots per inch instead of {shortest(size.dpi)}; it is sharp up to {_down(largest)} mm"
    )
    return [Finding(code="too-few-pixels", text=text)]


def _placed_findings(sheet: Sheet, dpi: float | None, size: PrintSize) -> list[Finding]:
    found = []
    if sheet.is_empty:
        text = "Nothing is drawn on the page: save the artwork again, and look at the file before you send it"
        found.append(Finding(code="empty-page", text=text))
    if dpi is not None and dpi < size.dpi * (1 - size.tolerance_percent / 100):
        text = f"A picture on the page has {_whole(dpi)} dots per inch as placed, instead of {shortest(size.dpi)}"
        found.append(Finding(code="too-few-pixels", text=text))
    if sheet.unmeasured:
        text = (
            f"{counted(sheet.unmeasured, 'picture')} on the page could not be measured: look at the proof at full size"
        )
        found.append(Finding(code="not-measured", text=text))
    return found


def _colour_findings(picture: Picture, colours: int | None) -> list[Finding]:
    found = []
    if colours is not None and picture.kind != "PDF":
        found.extend(_flat_findings(picture.flat_colours, colours))
    if picture.see_through:
        text = (
            f"{_part(picture.see_through)} of the picture is see-through: ask what is printed under it "
            "(the goods' own colour, or white)"
        )
        found.append(Finding(code="see-through", text=text))
    if picture.mode == "CMYK" and picture.profile is None:
        text = "Its colours are mixed from four inks (CMYK), without saying which: ask the maker for the profile to use"
        found.append(Finding(code="no-profile", text=text))
    return found


def _flat_findings(flat: int | None, colours: int) -> list[Finding]:
    if flat is None:
        text = f"It is no flat design: a method priced for {counted(colours, 'colour')} needs it redrawn, or in dots"
        return [Finding(code="not-flat", text=text)]
    if flat <= colours:
        return []
    text = f"{counted(flat, 'flat colour')} (paper or ground counted) where the price covers {colours}"
    return [Finding(code="too-many-colours", text=text)]


def _other_findings(picture: Picture, size: PrintSize) -> list[Finding]:
    """Return what is good to know and changes no verdict."""
    found = []
    if picture.mode is not None and picture.mode != "CMYK" and picture.profile is None:
        text = "No colour profile: most makers will take it as sRGB; ask for a printed proof where a colour matters"
        found.append(Finding(code="note-no-profile", text=text))
    if picture.tagged_dpi is not None and abs(picture.tagged_dpi[0] - size.dpi) > 1:
        tag = _whole(picture.tagged_dpi[0])
        text = f"The file says {tag} dots per inch of itself, which changes nothing: pixels count"
        found.append(Finding(code="note-tag", text=text))
    if picture.pages > 1:
        text = f"The file holds {counted(picture.pages, 'page')}; the first was looked at"
        found.append(Finding(code="note-pages", text=text))
    return found


def _flat_note(picture: Picture) -> list[Finding]:
    if not picture.flat_colours:
        return []
    text = f"{counted(picture.flat_colours, 'flat colour')}, paper or ground counted"
    return [Finding(code="note-flat-colours", text=text)]


def _verdict(findings: list[Finding]) -> Verdict:
    """Return the weightiest finding in two words."""
    codes = {one.code for one in findings}
    if codes & {"wrong-shape", "no-bleed"}:
        return "wrong shape"
    if "too-few-pixels" in codes:
        return "not sharp"
    if codes & {"not-measured", "empty-page"}:
        return "not measured"
    if codes & {"see-through", "no-profile", "not-flat", "too-many-colours", "turned"}:
        return "ask first"
    return "sharp"


def verdict_sentence(checked: Checked, size: PrintSize) -> str:
    """Return the verdict of one file as a sentence without its full stop."""
    said = {
        "sharp": f"prints sharply at {_by((size.width_mm, size.height_mm))} mm",
        "not sharp": f"does not print sharply at {_by((size.width_mm, size.height_mm))} mm",
        "wrong shape": "does not have the shape of the print",
        "ask first": "has the pixels and the shape; settle what stands below with the maker first",
        "not measured": "could not be measured wholly",
    }
    return said[checked.verdict]


def _by(sides: tuple[float, float]) -> str:
    return " × ".join(shortest(round(side, 1)) for side in sides)


def _down(sides: tuple[float, float]) -> str:
    return " × ".join(str(floor(side)) for side in sides)


def _whole(number: float) -> str:
    """Return dots per inch without decimals, rounded down so that 299.6 is never shown as enough."""
    return str(floor(number + 1e-9)) if abs(number - round(number)) > 0.001 else str(round(number))


def _part(share: float) -> str:
    return f"{rounded(100 * share, 0)} of 100" if share >= 0.005 else "less than 1 of 100"


def several(names: list[str], designs: int) -> str | None:
    """Return a sentence where the number of files is not the number of designs, else None."""
    if designs <= 1 or len(names) == designs:
        return None
    return f"The brief has {designs} designs; {counted(len(names), 'file')} looked at: {listed(names)}"
