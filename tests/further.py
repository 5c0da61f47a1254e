"""Further sheets of a folder, opened as the readers of them open them."""

from cases import AS_OF
from sourcing import folder_of

from scorecard.reading.criteria_file import read_criteria
from scorecard.reading.filled_sheets import filled_sheets
from scorecard.reading.further_sheets import FurtherSheets
from scorecard.reading.makers import ReadingOptions, read_makers

OPTIONS = ReadingOptions(as_of=AS_OF)
HEADINGS = {"Quotes": ("Maker", "Pieces"), "Freight": ("Maker", "Way")}


def opened(path, sheets):
    """Return the makers and the criteria of a folder with further sheets."""
    folder = folder_of(path, sheets)
    criteria = read_criteria(folder / "criteria.toml")
    makers = read_makers(folder / "makers.xlsx", criteria=criteria.criteria, brief=criteria.brief, options=OPTIONS)
    return makers, criteria


def read_further(path, sheets):
    """Return the sheets as tables."""
    makers, criteria = opened(path, sheets)
    return FurtherSheets.of(filled_sheets(makers, tuple(HEADINGS)), HEADINGS, (makers, criteria), OPTIONS)
