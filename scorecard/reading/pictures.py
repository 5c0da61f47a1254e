"""What an artwork file holds: PNG, JPEG and TIFF through Pillow, PDF through pypdf, each within its limits.

Enters: a path. Leaves: a ``Picture``, or one problem that says what is wrong with the file and what to do.
"""

import io
import logging
import warnings
from collections.abc import Iterator
from math import hypot
from pathlib import Path
from typing import Any

import numpy as np
from numpy.typing import NDArray
from PIL import Image, ImageCms, UnidentifiedImageError
from pypdf import PageObject, PdfReader
from pypdf.errors import PyPdfError

from scorecard.artwork import MM_PER_INCH, MOST_FLAT, Picture, Placed, Sheet
from scorecard.errors import Place, Problem

MOST_BYTES = 1_000_000_000
MOST_LOOKED_AT = 90_000_000  # pixels that are unpacked to look for colours and holes
SAMPLE_SIDE = 1_000  # pixels: colours are counted on at most so many across and down
FLAT_LEAST = 0.002  # part of the picture that a flat colour covers at least (our own choice)
ALIKE = 24  # of 255 in every channel: nearer colours are taken for the same (our own choice)
FLAT_COVER = 0.75  # part of the picture that flat colours cover together, edges left out (our own choice)
MM_PER_POINT = MM_PER_INCH / 72
TURNED = frozenset({5, 6, 7, 8})  # values of the camera's orientation tag that swap width and height
ORIENTATION, UNKNOWN_DPI = 0x0112, (1.0, 1.0)
SAVE_AS = "Save the artwork as PNG, JPEG, TIFF or PDF"


def read_picture(path: Path) -> Picture | Problem:
    """Return what a file holds, or what is wrong with it."""
    try:
        size = path.stat().st_size
        if path.is_dir():
            return _problem(path, "not-a-picture", "a folder, not a file", "Name the artwork file itself")
        if size > MOST_BYTES:
            return _problem(path, "too-large", f"{size // 1_000_000} MB, which is too large to look into", SAVE_AS)
        with path.open("rb") as file:
            head = file.read(1024)
    except OSError as error:
        return _problem(
            path, "unreadable-file", f"it cannot be opened ({error.strerror})", "Look at its name and place"
        )
    if b"%PDF-" in head:
        return _read_pdf(path)
    return _read_image(path)


def _problem(path: Path, code: str, found: str, wanted: str) -> Problem:
    return Problem(code=code, place=Place(file=path.name), found=found, wanted=wanted)


def _read_image(path: Path) -> Picture | Problem:
    try:
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")  # Pillow warns at half of the size that it refuses
            with Image.open(path, formats=("PNG", "JPEG", "TIFF")) as image:
                return _facts(path, image)
    except Image.DecompressionBombError:
        most = 2 * (Image.MAX_IMAGE_PIXELS or 0) // 1_000_000
        found = f"more than {most} million pixels, which is too large to look into"
        return _problem(path, "too-large", found, "Save it at the printed size and 300 dots per inch")
    except UnidentifiedImageError:
        return _problem(path, "not-a-picture", "no picture of a kind that is known here", SAVE_AS)
    except (OSError, SyntaxError, ValueError, EOFError, MemoryError) as error:
        found = f"the picture is damaged or cut short ({error})"
        return _problem(path, "damaged-picture", found, "Save or copy the file again")


def _facts(path: Path, image: Image.Image) -> Picture:
    kind = "JPEG" if image.format == "MPO" else str(image.format)
    width, height = image.size
    if image.getexif().get(ORIENTATION) in TURNED:
        width, height = height, width
    looked_at = image.width * image.height <= MOST_LOOKED_AT
    if looked_at:
        image.load()
    return Picture(
        name=path.name,
        kind=kind,
        width_px=width,
        height_px=height,
        tagged_dpi=_tagged(image),
        mode=image.mode,
        profile=_profile(image),
        see_through=_see_through(image) if looked_at else None,
        flat_colours=_flat_colours(image) if looked_at else None,
        pages=1 if kind == "JPEG" else int(getattr(image, "n_frames", 1)),
    )


def _tagged(image: Image.Image) -> tuple[float, float] | None:
    """Return the dots per inch that a file says of itself; a TIFF that says nothing is given (1, 1) by Pillow."""
    dpi = image.info.get("dpi")
    if dpi is None or image.info.get("jfif_unit") == 0 or tuple(dpi) == UNKNOWN_DPI:
        return None
    across, down = float(dpi[0]), float(dpi[1])
    return (across, down) if across > 0 and down > 0 else None


def _profile(image: Image.Image) -> str | None:
    packed = image.info.get("icc_profile")
    if not packed:
        return None
    try:
        return ImageCms.getProfileDescription(ImageCms.ImageCmsProfile(io.BytesIO(packed))).strip() or "without a name"
    except (ImageCms.PyCMSError, OSError):
        return "unreadable"


def _see_through(image: Image.Image) -> float:
    """Return the part of a picture that is not fully opaque."""
    if not image.has_transparency_data:
        return 0.0
    alpha = np.asarray(image.convert("RGBA").getchannel("A"))
    return float(np.count_nonzero(alpha < 255) / alpha.size)


def _flat_colours(image: Image.Image) -> int | None:
    """Return how many flat colours make up a picture, or None where they do not: a photograph, a gradient, a wash.

    A flat colour covers a part of the picture that cannot be missed; blends at the edges of shapes are left out.
    """
    step = max(1, -(-max(image.size) // SAMPLE_SIDE))
    small = image.resize((max(1, image.width // step), max(1, image.height // step)), Image.Resampling.NEAREST)
    pixels = np.ascontiguousarray(np.asarray(small.convert("RGBA")).reshape(-1, 4))
    packed, counts = np.unique(pixels.view(np.uint32), return_counts=True)
    most_first = np.argsort(-counts, kind="stable")[: np.count_nonzero(counts >= FLAT_LEAST * len(pixels))]
    flat = most_first[_told_apart(packed[most_first].view(np.uint8).reshape(-1, 4).astype(int))]
    return len(flat) if len(flat) <= MOST_FLAT and counts[flat].sum() >= FLAT_COVER * len(pixels) else None


def _told_apart(colours: NDArray[np.int_]) -> list[int]:
    """Return the positions of the colours that are left once each near to an earlier one is taken for the same."""
    kept: list[int] = []
    for at, colour in enumerate(colours):
        if all(np.abs(colour - colours[one]).max() > ALIKE for one in kept):
            kept.append(at)
    return kept


def _read_pdf(path: Path) -> Picture | Problem:
    logging.getLogger("pypdf").setLevel(logging.CRITICAL)
    try:
        reader = PdfReader(path)
        if reader.is_encrypted and not reader.decrypt(""):
            return _problem(path, "locked-file", "the PDF is locked with a password", "Save it without the password")
        page = reader.pages[0]
        return Picture(name=path.name, kind="PDF", pages=len(reader.pages), sheet=_sheet(page))
    except ImportError:
        return _problem(path, "locked-file", "the PDF is locked", "Save it without protection")
    except IndexError:
        return _problem(path, "damaged-picture", "the PDF holds no page", "Save or copy the file again")
    except (PyPdfError, OSError, ValueError, KeyError, TypeError, AttributeError, RecursionError) as error:
        found = f"the PDF is damaged or cut short ({error})"
        return _problem(path, "damaged-picture", found, "Save or copy the file again")


def _sheet(page: PageObject) -> Sheet:
    scale = MM_PER_POINT * float(page.user_unit)
    trim, bleed = page.trimbox, page.bleedbox if "/BleedBox" in page else page.mediabox
    sides = float(trim.width) * scale, float(trim.height) * scale
    beyond = min(
        float(trim.left - bleed.left),
        float(trim.bottom - bleed.bottom),
        float(bleed.right - trim.right),
        float(bleed.top - trim.top),
    )
    placed, total = tuple(_placed(page, scale)), _pictures_in(page)
    return Sheet(
        trim_mm=sides[::-1] if page.rotation % 180 else sides,
        bleed_mm=max(0.0, beyond * scale),
        placed=placed,
        unmeasured=max(0, total - len(placed)),
        is_empty=not _drawn_on(page),
    )


def _drawn_on(page: PageObject) -> bool:
    """Return whether a page has any instruction to draw, or a form or note that lies on it."""
    contents = page.get_contents()
    return bool(page.get("/Annots")) or (contents is not None and bool(contents.get_data().strip()))


def _pictures_in(page: PageObject) -> int:
    """Return how many pictures a page uses, those within its forms too."""
    seen: set[int] = set()
    return sum(1 for _ in _walk(page.get("/Resources"), seen))


def _walk(resources: Any, seen: set[int]) -> Iterator[Any]:
    resources = resources.get_object() if resources is not None else None
    named = resources.get("/XObject") if resources else None
    for one in (named.get_object() if named is not None else {}).values():
        held = one.get_object()
        if id(held) in seen:
            continue
        seen.add(id(held))
        if held.get("/Subtype") == "/Image":
            yield held
        elif held.get("/Subtype") == "/Form":
            yield from _walk(held.get("/Resources"), seen)


def _placed(page: PageObject, scale: float) -> list[Placed]:
    """Return the pictures that a page itself places, with the size at which it does."""
    resources: Any = page.get("/Resources")
    held_in: Any = resources.get_object().get("/XObject") if resources is not None else None
    named: Any = {} if held_in is None else held_in.get_object()
    found: list[Placed] = []

    def note(operator: bytes, operands: list[Any], matrix: list[float], _: list[float]) -> None:
        held = named[operands[0]].get_object() if operator == b"Do" and operands and operands[0] in named else None
        if held is None or held.get("/Subtype") != "/Image":
            return
        width, height = hypot(matrix[0], matrix[1]) * scale, hypot(matrix[2], matrix[3]) * scale
        if width > 0 and height > 0:
            pixels = int(held["/Width"]), int(held["/Height"])
            found.append(Placed(width_px=pixels[0], height_px=pixels[1], width_mm=width, height_mm=height))

    page.extract_text(visitor_operand_before=note)
    return found
