"""Which maker is meant by a name that was typed after a command."""

from collections.abc import Sequence

from scorecard.cli.tables import visible
from scorecard.errors import UsageError
from scorecard.reading.names import same
from scorecard.words import listed, nearest

MOST = 15  # names in a list on the screen


def named_maker(typed: str, makers: Sequence[str], option: str = "--maker") -> int:
    """Return the position of the maker that is named whole, or by a beginning that fits no other.

    Raises
    ------
    UsageError
        If the name fits none, or several.
    """
    wanted, names = same(typed), [same(name) for name in makers]
    whole = [at for at, name in enumerate(names) if name == wanted]
    found = whole or [at for at, name in enumerate(names) if wanted and name.startswith(wanted)]
    if len(found) == 1:
        return found[0]
    if not found:
        close = nearest(typed, makers)
        hint = f"Is {visible(close)} meant?" if close else "Write it as in the sheet, or a beginning of it."
        raise UsageError(f"{option} {visible(typed)}: no maker has this name. {hint}")
    fitting = names_at(makers, found)
    raise UsageError(f"{option} {visible(typed)} fits several: {fitting}. Write more of the name.")


def names_at(makers: Sequence[str], positions: Sequence[int]) -> str:
    """Return the names of some makers in one list; of many the first, and how many more there are."""
    names = [visible(makers[at]) for at in positions[:MOST]]
    more = len(positions) - MOST
    return listed([*names, f"{more} more"] if more > 0 else names)
