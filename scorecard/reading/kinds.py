"""The criteria files that come with the tool, one per kind of goods: where they are, and which one a name means."""

from importlib.resources import files
from pathlib import Path

from scorecard.errors import UsageError
from scorecard.words import listed, nearest


def kinds() -> dict[str, Path]:
    """Return the shipped criteria files by kind of goods: from the installed package, or else from the checkout."""
    package = Path(str(files("scorecard")))
    places = (package / "shipped_criteria", package.parent / "criteria")
    folder = next((place for place in places if place.is_dir()), places[0])
    return {path.stem: path for path in sorted(folder.glob("*.toml"))}


def find_kind(name: str) -> Path:
    """Return the criteria file of one kind of goods.

    Parameters
    ----------
    name : of the kind, or the beginning of it, in capitals or not

    Raises
    ------
    UsageError
        If no kind, or more than one, begins so.
    """
    known = kinds()
    wanted = name.strip().casefold()
    begun = [kind for kind in known if kind.startswith(wanted)]
    if wanted in known:
        return known[wanted]
    if wanted and len(begun) == 1:
        return known[begun[0]]
    if wanted and begun:
        raise UsageError(f"{name!r} can mean {listed(begun, 'or')}. Write more of the name.")
    close = nearest(wanted, list(known))
    hint = f" Did you mean {close}?" if close else ""
    raise UsageError(f"{name!r} is not a kind of goods.{hint} The kinds are {listed(known)}.")
