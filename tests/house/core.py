"""The core: the modules whose figures people bet money on, in the order of the money at risk.

Every branch of them is run by the tests, and every mutant of them is to be killed.
"""

from pathlib import Path

from house.sources import ROOT

CORE = (
    "points.py",
    "ranking.py",
    "counting.py",
    "screening.py",
    "value_functions.py",
    "weighting.py",
    "sensitivity",
    "costing",
    "ordering",
    "scheduling",
    "inspection",
    "questions.py",
    "verdict.py",
    "firmness.py",
    "measures.py",
)


def core_modules(root: Path = ROOT) -> list[Path]:
    """Return the paths of the core's modules under the root, in that order."""
    places = [root / "scorecard" / name for name in CORE]
    found = [path for place in places for path in (sorted(place.glob("*.py")) if place.is_dir() else [place])]
    return [path.relative_to(root) for path in found if path.name != "__init__.py"]
