"""What a file of artwork holds, what is printed, and the sums between: pixels needed, real resolution, largest size.

Enters: what a file holds (``Picture``), and the size that is printed (``PrintSize``). Leaves: pixels, dots per inch,
millimetres. 300 dots per inch at the final size is common practice among printers, as is 3 mm of bleed on paper; both
can be set.
"""

from math import ceil

from scorecard.frozen import dataclass

MM_PER_INCH = 25.4
MOST_FLAT = 12  # colours: more is not a flat design for a method priced per colour (common practice, no source)


@dataclass(frozen=True, slots=True, kw_only=True)
class PrintSize:
    """The size that is printed, and how finely.

    Parameters
    ----------
    width_mm, height_mm : the trimmed size, above 0
    bleed_mm : what is printed beyond each edge and cut off, 0 or more
    dpi : dots per inch that a sharp print needs
    tolerance_percent : how many percent of the pixels may be missing, as tables of paper sizes round either way
    """

    width_mm: float
    height_mm: float
    bleed_mm: float = 0.0
    dpi: float = 300.0
    tolerance_percent: float = 0.5

    @property
    def bled_mm(self) -> tuple[float, float]:
        """The printed width and height with the bleed on both sides, in mm."""
        return self.width_mm + 2 * self.bleed_mm, self.height_mm + 2 * self.bleed_mm

    def turned(self) -> "PrintSize":
        """Return the same print turned by a quarter."""
        return PrintSize(
            width_mm=self.height_mm,
            height_mm=self.width_mm,
            bleed_mm=self.bleed_mm,
            dpi=self.dpi,
            tolerance_percent=self.tolerance_percent,
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class Placed:
    """A picture placed on a page of a PDF: its pixels, and the size at which it is placed, in mm."""

    width_px: int
    height_px: int
    width_mm: float
    height_mm: float

    @property
    def dpi(self) -> float:
        """Dots per inch as placed: the lesser of the two directions."""
        return min(self.width_px / self.width_mm, self.height_px / self.height_mm) * MM_PER_INCH


@dataclass(frozen=True, slots=True, kw_only=True)
class Sheet:
    """A page of a PDF.

    Parameters
    ----------
    trim_mm : width and height of what remains after cutting (the trim box; the page itself where there is none)
    bleed_mm : how far the bleed box, or else the page, reaches beyond the trim on its narrowest side
    placed : the pictures on it whose size could be told
    unmeasured : how many pictures lie deeper, so that their size could not be told
    is_empty : whether nothing is drawn on it
    """

    trim_mm: tuple[float, float]
    bleed_mm: float
    placed: tuple[Placed, ...] = ()
    unmeasured: int = 0
    is_empty: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Picture:
    """What a file holds.

    Parameters
    ----------
    name : the file's name
    kind : "PNG", "JPEG", "TIFF" or "PDF"
    width_px, height_px : pixels as seen, after the camera's turn is undone; None for a PDF
    tagged_dpi : dots per inch that the file says of itself, None where it says nothing
    mode : Pillow's name for how colours are kept, such as "RGB" or "CMYK"; None for a PDF
    profile : the colour profile's name; None without one
    see_through : part of 1 of the picture that is not fully opaque; None where it was not looked at
    flat_colours : how many flat colours make up the picture, None where it is no flat design or was not looked at
    pages : pictures in the file, or pages of the PDF
    sheet : the first page of a PDF
    """

    name: str
    kind: str
    width_px: int | None = None
    height_px: int | None = None
    tagged_dpi: tuple[float, float] | None = None
    mode: str | None = None
    profile: str | None = None
    see_through: float | None = None
    flat_colours: int | None = None
    pages: int = 1
    sheet: Sheet | None = None


def pixels_needed(size: PrintSize) -> tuple[int, int]:
    """Return the pixels, across and down, that a print needs: inches with bleed times dots per inch, rounded up.

    Examples
    --------
    >>> pixels_needed(PrintSize(width_mm=90, height_mm=55, bleed_mm=3))
    (1134, 721)
    """
    width, height = size.bled_mm
    return _dots(width, size.dpi), _dots(height, size.dpi)


def effective_dpi(pixels: tuple[int, int], size: PrintSize) -> float:
    """Return the dots per inch of a picture that fills a print: the lesser of the two directions.

    Examples
    --------
    >>> effective_dpi((1500, 1500), PrintSize(width_mm=300, height_mm=300))
    127.0
    """
    width, height = size.bled_mm
    return min(pixels[0] / width, pixels[1] / height) * MM_PER_INCH


def largest_sharp(pixels: tuple[int, int], size: PrintSize) -> tuple[float, float]:
    """Return the largest width and height in mm, bleed taken off, at which a picture still has the dots per inch."""
    width, height = (count / size.dpi * MM_PER_INCH - 2 * size.bleed_mm for count in pixels)
    return max(0.0, width), max(0.0, height)


def is_sharp(pixels: tuple[int, int], size: PrintSize) -> bool:
    """Return whether a picture has the pixels that a print needs, but for the tolerance."""
    enough = 1 - size.tolerance_percent / 100
    return all(have >= need * enough for have, need in zip(pixels, pixels_needed(size), strict=True))


def shape_error(sides: tuple[float, float], wanted: tuple[float, float]) -> float:
    """Return by how many percent the proportion of two sides differs from the one wanted."""
    have, want = sides[0] / sides[1], wanted[0] / wanted[1]
    return 100 * (max(have, want) / min(have, want) - 1)


def _dots(length_mm: float, dpi: float) -> int:
    """Return a length in dots, rounded up but for the dust of floating point."""
    return ceil(round(length_mm / MM_PER_INCH * dpi, 6))
