"""Makers' names: kept exactly, told apart, and those that are equal or merely alike pointed out.

Equal: the same after Unicode folding (NFKC), case and spaces. Alike: the same after accents, punctuation and all spaces
are dropped too, or one typing slip apart.
"""

import unicodedata
from collections import Counter
from collections.abc import Callable, Iterator, Sequence
from datetime import date, time, timedelta

from scorecard.reading.cell_values import OR_EMPTY, no_value
from scorecard.reading.cells import CellError, Fault, NoResult, Value, as_text, quoted
from scorecard.reading.findings import Findings
from scorecard.reading.patterns import pattern

ALIKE_LIMIT = 20
SLIP_NAMES_LIMIT = 20_000  # beyond it only names equal without accents and signs are looked for: the index would be big
LONGEST_NAME = 32_767  # what a spreadsheet's cell can hold
SHORTEST_FOR_SLIPS = 5
LONGEST_FOR_SLIPS = 100
NO_DIGITS = pattern(r"\D+")
SIGNS = pattern(r"[\W_]+")
NO_ASCII_SIGNS = {sign: None for sign in range(1, 128) if not chr(sign).isalnum()}
HIDDEN_SIGNS = pattern("[\x00-\x1f\x7f-\x9f\u061c\u200b-\u200f\u2028-\u202e\u2060-\u2069\ufeff]")


def read_name(value: Value) -> str | Fault:
    """Return a maker's name, exactly as typed; a number as its shortest text."""
    if isinstance(value, str):
        if len(value) <= LONGEST_NAME:
            return value
        return Fault("name-too-long", f"{quoted(value)} has {len(value)} letters", "Shorten the name")
    fault = no_value(value) if isinstance(value, CellError | NoResult) else None
    if fault:
        return fault._replace(wanted=f"{fault.wanted.removesuffix(OR_EMPTY)}, or type the name as text")
    if isinstance(value, date | time | timedelta):
        wanted = "Format the cell as text, and type the name again"
        return Fault("date-for-name", f"{quoted(value)} is a date or time, where a name is due", wanted)
    return as_text(value)


def same(name: str) -> str:
    """Return what is equal of two names that are the same maker's.

    Examples
    --------
    >>> same("  Tall  Ship ") == same("tall ship"), same("Ｋiln") == same("kiln"), same("Kiln") == same("Kilns")
    (True, True, False)
    """
    if not name.isascii():
        name = unicodedata.normalize("NFKC", unicodedata.normalize("NFKC", name).casefold())
    return " ".join(name.casefold().split())


def bare(name: str) -> str:
    """Return a name's letters and digits alone, without case, accents, signs and spaces."""
    if not name.isascii():
        name = unicodedata.normalize("NFKD", unicodedata.normalize("NFKC", name).casefold())
    return SIGNS.sub("", name.casefold())


def all_bare(names: Sequence[str]) -> list[str]:
    """Return what ``bare`` makes of each name: of all at once where they are in ASCII."""
    joined = "\0".join(names)
    if joined.isascii() and joined.count("\0") == len(names) - 1:
        return joined.casefold().translate(NO_ASCII_SIGNS).split("\0")
    return [bare(name) for name in names]


def check_names(names: Sequence[str], cells: Callable[[int], str], findings: Findings) -> None:
    """Note names that are equal, that are alike, and that hold signs nobody sees.

    Parameters
    ----------
    names : (makers,), in sheet order
    cells : the cell of each, by position from 0
    findings : where problems and warnings go
    """
    letters = all_bare(names)
    alone = list(range(len(names)))
    if len(set(letters)) < len(names):  # names that are the same have the same letters
        alone = _refuse_doubled(names, [same(name) for name in names], cells, findings)
    joined = "".join(names)
    if not joined.isprintable() and HIDDEN_SIGNS.search(joined):
        _warn_of_hidden_signs(names, cells, findings)
    for number, pair in enumerate(alike_pairs([letters[at] for at in alone])):
        if number == ALIKE_LIMIT:
            return
        at, before = (alone[position] for position in pair)
        found = f"{quoted(names[at])} is much like {quoted(names[before])} in {cells(before)}"
        findings.warn(cells(at), Fault("alike-makers", found, "If the two are one maker, keep one row"))


def _refuse_doubled(
    names: Sequence[str], folded: Sequence[str], cells: Callable[[int], str], findings: Findings
) -> list[int]:
    """Note each name that stands above it already; return the positions of the others."""
    first: dict[str, int] = {}
    alone = []
    for at, name in enumerate(folded):
        before = first.setdefault(name, at)
        if before == at:
            alone.append(at)
            continue
        wanted = "Give each maker one row, or tell the two apart by name"
        fault = Fault("doubled-maker", f"{quoted(names[at])} is named in {cells(before)} too", wanted)
        findings.refuse(cells(at), fault)
    return alone


def _warn_of_hidden_signs(names: Sequence[str], cells: Callable[[int], str], findings: Findings) -> None:
    """Note each name with control signs, or signs that turn the direction of writing."""
    for at, name in enumerate(names):
        if HIDDEN_SIGNS.search(name):
            fault = Fault("hidden-signs", f"the name {quoted(name)} holds signs that cannot be seen", "Type it again")
            findings.warn(cells(at), fault)


def alike_pairs(names: Sequence[str]) -> Iterator[tuple[int, int]]:
    """Yield pairs (later, earlier) of bare names that are equal or one typing slip apart.

    Names are indexed by what is left of them when one letter goes: two names that are one slip apart share such a rest,
    so that no name is compared with every other. Names with other digits are other makers: "Studio 7" and "Studio 8".
    """
    may_slip = _may_slip(names)
    if not any(may_slip) and len(set(names)) == len(names):
        return
    equal: dict[str, list[int]] = {}
    index: dict[int, list[int]] = {}
    for at, name in enumerate(names):
        if not name:
            continue
        near = list(equal.get(name, ()))
        equal.setdefault(name, []).append(at)
        if may_slip[at]:
            near += _near(at, names, index)
        yield from ((at, before) for before in sorted(set(near)))


def _digits(name: str) -> str:
    """Return a name's digits."""
    return NO_DIGITS.sub("", name)


def _may_slip(names: Sequence[str]) -> list[bool]:
    """Return which names can be one slip from another: not too short, and not alone in having their digits."""
    if len(names) > SLIP_NAMES_LIMIT:
        return [False] * len(names)
    digits = [_digits(name) for name in names]
    sharing = Counter(digits)
    lengths = range(SHORTEST_FOR_SLIPS, LONGEST_FOR_SLIPS + 1)
    return [len(name) in lengths and sharing[those] > 1 for name, those in zip(names, digits, strict=True)]


def _near(at: int, names: Sequence[str], index: dict[int, list[int]]) -> list[int]:
    """Return the earlier names one slip from this one, and add it to the index."""
    name = names[at]
    digits = _digits(name)
    found = []
    for rest in {name} | {name[:cut] + name[cut + 1 :] for cut in range(len(name))}:
        shelf = index.setdefault(hash((digits, rest)), [])
        found += [before for before in shelf if _digits(names[before]) == digits and is_one_slip(name, names[before])]
        shelf.append(at)
    return found


def is_one_slip(name: str, other: str) -> bool:
    """Say whether one letter more, less or other, or two neighbours swapped, makes one name of the other.

    Examples
    --------
    >>> is_one_slip("kilnside", "kilnsida"), is_one_slip("kilnside", "kilside"), is_one_slip("kilnside", "klinside")
    (True, True, True)
    >>> is_one_slip("kilnside", "kalnsida"), is_one_slip("kilnside", "kilnside")
    (False, False)
    """
    if len(name) < len(other):
        name, other = other, name
    start = next((at for at, pair in enumerate(zip(name, other, strict=False)) if pair[0] != pair[1]), len(other))
    if len(name) == len(other):
        changed = name[start + 1 :] == other[start + 1 :]
        swapped = name[start : start + 2] == other[start : start + 2][::-1] and name[start + 2 :] == other[start + 2 :]
        return start < len(name) and (changed or swapped)
    return len(name) == len(other) + 1 and name[start + 1 :] == other[start:]
