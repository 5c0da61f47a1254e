"""A whole sourcing folder in a few lines, for the readers of its further sheets."""

from builders import workbook_bytes
from cases import AS_OF

from scorecard.errors import InputError
from scorecard.reading.folder import read_folder

BRIEF = """[brief]
item = "mug"
quantity = 200
designs = 4
destination = "IE"
currency = "EUR"

[criteria.minimum]
weight = 1
column = "Minimum order"
per = "quantity"
points = [[1, 100], [2, 0]]
"""
MAKERS = [
    ["Maker", "Minimum order", "Minimum is per", "Country"],
    ["Fernhill", 100, "design", "Portugal"],
    ["Brightholm", None, None, "CN"],
]


def folder_of(path, sheets=None, toml="", brief=BRIEF):
    """Lay out a folder with further sheets and further tables of the criteria file."""
    (path / "criteria.toml").write_text(f"{brief}\n{toml}", "utf-8")
    (path / "makers.xlsx").write_bytes(workbook_bytes({"Makers": MAKERS} | (sheets or {})))
    return path


def costs_of(path, sheets=None, toml="", brief=BRIEF, **options):
    """Return the inputs of a landed cost."""
    return read_folder(folder_of(path, sheets, toml, brief), **({"as_of": AS_OF} | options)).costs


def problems_of(path, sheets=None, toml="", brief=BRIEF, **options):
    """Return (cell or key, code) of every problem, in order."""
    try:
        read_folder(folder_of(path, sheets, toml, brief), **({"as_of": AS_OF} | options))
    except InputError as error:
        return [(one.place.cell or one.place.key, one.code) for one in error.problems]
    return []
