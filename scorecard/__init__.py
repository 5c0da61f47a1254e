"""Maker Scorecard: rank makers on weighted criteria, from a spreadsheet, and say how firm the choice is.

What is public is listed in ``__all__`` and loaded when it is first asked for, so that the command line starts quickly.
"""

from importlib import import_module
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from scorecard.assessment import Assessment, assess
    from scorecard.case import Case
    from scorecard.errors import InputError, Place, Problem, ScorecardError
    from scorecard.reading.folder import read_folder

__version__ = "0.1.0"

__all__ = [
    "Assessment",
    "Case",
    "InputError",
    "Place",
    "Problem",
    "ScorecardError",
    "__version__",
    "assess",
    "read_folder",
]

_HOMES = {
    "Assessment": "scorecard.assessment",
    "Case": "scorecard.case",
    "InputError": "scorecard.errors",
    "Place": "scorecard.errors",
    "Problem": "scorecard.errors",
    "ScorecardError": "scorecard.errors",
    "assess": "scorecard.assessment",
    "read_folder": "scorecard.reading.folder",
}


def __getattr__(name: str) -> Any:
    """Load a public name from the module that defines it."""
    if name not in _HOMES:
        raise AttributeError(f"module 'scorecard' has no attribute {name!r}")
    return getattr(import_module(_HOMES[name]), name)
