"""What is missing of the artwork that an order names: the files themselves, their pixels, their shape."""

from pathlib import Path

from scorecard.artwork import Picture, PrintSize
from scorecard.artwork_check import check_picture
from scorecard.brief import Brief
from scorecard.cli.tables import visible
from scorecard.order_sheet import OrderedDesign

OTHER_KIND = "not-a-picture"  # what the tool cannot look into may still be what the maker prints from


def lack_of_artwork(design: OrderedDesign, folder: Path, brief: Brief) -> str:
    """Return what is missing of a design's file, in words; "" where nothing is, and where nobody can tell.

    Parameters
    ----------
    design : with a file
    folder : in which the file is sought
    brief : whose bleed counts
    """
    from scorecard.reading.pictures import read_picture

    path, name = folder / design.file, visible(design.file)
    if not path.is_file():
        return f"the file {name}: there is none of this name in the folder of the criteria file"
    found = read_picture(path)
    if not isinstance(found, Picture):
        return "" if found.code == OTHER_KIND else f"a file that can be read in place of {name}: {found.found}"
    if design.width_mm is None or design.height_mm is None:
        return ""
    size = PrintSize(width_mm=design.width_mm, height_mm=design.height_mm, bleed_mm=brief.bleed_mm or 0.0)
    checked = check_picture(found, size)
    return {
        "not sharp": f"a sharp file in place of {name}",
        "wrong shape": f"a file of the print's shape in place of {name}",
    }.get(checked.verdict, "")
