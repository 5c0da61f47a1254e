"""``artwork``: does each file print sharply at the size in the brief."""

from collections.abc import Sequence
from pathlib import Path
from typing import Any

import typer

from scorecard.artwork import Picture, PrintSize, pixels_needed
from scorecard.artwork_check import Checked, check_picture, several, verdict_sentence
from scorecard.brief import Brief
from scorecard.cli.gate import show_json
from scorecard.cli.tables import as_text, visible
from scorecard.errors import InputError, UsageError
from scorecard.figures import figure
from scorecard.frozen import dataclass
from scorecard.reading.criteria_file import read_criteria
from scorecard.reading.folder import CRITERIA_FILE
from scorecard.reading.pictures import read_picture
from scorecard.words import rounded, shortest


@dataclass(frozen=True, slots=True, kw_only=True)
class Wish:
    """What the user asks for: where the brief is, and what stands in place of it."""

    folder: Path = Path()
    criteria: Path | None = None
    width_mm: float | None = None
    height_mm: float | None = None
    bleed_mm: float | None = None
    dpi: float = 300.0
    colours: int | None = None


def check_artwork(files: Sequence[Path], wish: Wish, *, as_json: bool) -> None:
    """Print what can be said of each file at the printed size.

    Raises
    ------
    InputError
        With a problem for every file that cannot be read; the others are not told of then.
    """
    size, brief = size_of(wish)
    read = [read_picture(_in_folder(path, wish.folder)) for path in files]
    problems = [one for one in read if not isinstance(one, Picture)]
    if problems:
        raise InputError(problems)
    checked = [check_picture(one, size, colours=wish.colours) for one in read if isinstance(one, Picture)]
    if as_json:
        show_json(artwork_result(checked, size))
        return
    tell(checked, size, brief)


def _in_folder(path: Path, folder: Path) -> Path:
    """Return where a file is: as named, else in the sourcing folder."""
    inside = folder / path
    return inside if not path.exists() and inside.exists() else path


def size_of(wish: Wish) -> tuple[PrintSize, Brief | None]:
    """Return the printed size, from the options first, then from the brief, and the brief where it was read.

    Raises
    ------
    InputError
        If the criteria file has problems.
    UsageError
        If no size is given anywhere.
    """
    brief = _brief(wish)
    width = wish.width_mm or (brief.print_width_mm if brief else None)
    height = wish.height_mm or (brief.print_height_mm if brief else None)
    if width is None or height is None:
        raise UsageError(
            "The printed size is not known: write print_width_mm and print_height_mm into the [brief] of "
            f"{CRITERIA_FILE}, or say --width and --height in millimetres."
        )
    of_brief = brief.bleed_mm if brief else None
    bleed = wish.bleed_mm if wish.bleed_mm is not None else of_brief or 0.0
    return PrintSize(width_mm=width, height_mm=height, bleed_mm=bleed, dpi=wish.dpi), brief


def _brief(wish: Wish) -> Brief | None:
    """Return the brief of the criteria file; None where there is no such file and none was named."""
    path = wish.criteria or wish.folder / CRITERIA_FILE
    if wish.criteria is None and not path.exists() and wish.width_mm and wish.height_mm:
        return None
    reading = read_criteria(path)
    if reading.problems:
        raise InputError(reading.problems, reading.warnings)
    return reading.brief


def tell(checked: Sequence[Checked], size: PrintSize, brief: Brief | None) -> None:
    """Print the size, a table of the files, and what was found of each."""
    need = pixels_needed(size)
    bleed = f" with {shortest(size.bleed_mm)} mm of bleed on every side" if size.bleed_mm else ""
    typer.echo(
        f"Printed at {shortest(size.width_mm)} × {shortest(size.height_mm)} mm{bleed}, {shortest(size.dpi)} dots per "
        f"inch: {need[0]} × {need[1]} pixels are needed."
    )
    rows = [("File", "Kind", "Pixels", "Dots per inch", "Sharp up to, mm", "Verdict"), *map(_row, checked)]
    typer.echo(as_text(rows, right=frozenset({3})))
    for one in checked:
        typer.echo(f"{visible(one.picture.name)} {verdict_sentence(one, size)}.")
        for finding in one.findings:
            typer.echo(f"  {finding.text}.")
    count = several([visible(one.picture.name) for one in checked], brief.designs if brief else 1)
    if count:
        typer.echo(f"{count}.")
    typer.echo("A screen shows neither the colours nor the sharpness of a print: ask for a printed proof.")
    typer.echo(f"Next: {_next_step(checked)}")


def _row(checked: Checked) -> tuple[str, str, str, str, str, str]:
    picture, largest = checked.picture, checked.largest_mm
    return (
        visible(picture.name),
        picture.kind if picture.mode is None else f"{picture.kind}, {picture.mode}",
        "" if picture.width_px is None else f"{picture.width_px} × {picture.height_px}",
        "" if checked.dpi is None else rounded(int(checked.dpi * 10 + 1e-6) / 10),
        "" if largest is None else f"{int(largest[0])} × {int(largest[1])}",
        checked.verdict,
    )


def _next_step(checked: Sequence[Checked]) -> str:
    if all(one.verdict == "sharp" for one in checked):
        return "keep these files, and send them to the maker that you order from, not before"
    first = next(one for one in checked if one.verdict != "sharp")
    return f"mend {visible(first.picture.name)} first, then run this again"


def artwork_result(checked: Sequence[Checked], size: PrintSize) -> dict[str, Any]:
    """Return what ``scorecard artwork --json`` prints."""
    return {
        "schema": "scorecard-artwork/1",
        "print": {
            "width_mm": figure(size.width_mm),
            "height_mm": figure(size.height_mm),
            "bleed_mm": figure(size.bleed_mm),
            "dpi": figure(size.dpi),
            "tolerance_percent": figure(size.tolerance_percent),
        },
        "files": [_file_result(one) for one in checked],
    }


def _file_result(checked: Checked) -> dict[str, Any]:
    picture, largest = checked.picture, checked.largest_mm
    pixels = None if picture.width_px is None else [picture.width_px, picture.height_px]
    return {
        "file": picture.name,
        "kind": picture.kind,
        "pages": picture.pages,
        "pixels": pixels,
        "pixels_needed": list(checked.needed_px),
        "dpi": None if checked.dpi is None else figure(checked.dpi),
        "tagged_dpi": None if picture.tagged_dpi is None else [figure(one) for one in picture.tagged_dpi],
        "largest_mm": None if largest is None else [figure(one) for one in largest],
        "mode": picture.mode,
        "profile": picture.profile,
        "see_through": None if picture.see_through is None else figure(picture.see_through),
        "flat_colours": picture.flat_colours,
        "trim_mm": None if picture.sheet is None else [figure(one) for one in picture.sheet.trim_mm],
        "verdict": checked.verdict,
        "findings": [{"code": one.code, "text": one.text} for one in checked.findings],
    }
