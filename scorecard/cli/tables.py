"""Plain tables for the terminal."""

from collections.abc import Sequence
from textwrap import wrap
from unicodedata import category, east_asian_width

from scorecard.calculation import Calculation
from scorecard.reasons import why_ruled_out
from scorecard.words import counted, rounded

WIDEST = 34  # characters of a maker's name
WIDE = 100  # characters of a line of words


def as_text(rows: Sequence[Sequence[str]], right: frozenset[int] = frozenset()) -> str:
    """Return rows as lines with aligned columns; those named in ``right`` are aligned to the right."""
    widths = [max(width_of(row[at]) for row in rows) for at in range(len(rows[0]))]
    lines = ["  ".join(_cell(text, widths[at], at in right) for at, text in enumerate(row)) for row in rows]
    return "\n".join(line.rstrip() for line in lines)


def width_of(text: str) -> int:
    """Return how many columns of a terminal a text takes."""
    return sum(0 if category(sign) in ("Mn", "Cf") else 2 if east_asian_width(sign) in "WF" else 1 for sign in text)


def plain(text: str) -> str:
    """Return a text that cannot move the cursor or turn the line around."""
    return "".join(sign if category(sign)[0] != "C" else "\N{REPLACEMENT CHARACTER}" for sign in text)


def visible(text: str) -> str:
    """Return a name that cannot move the cursor or turn the line around, cut where it is too long."""
    name = plain(text)
    if width_of(name) <= WIDEST:
        return name
    while width_of(name) > WIDEST - 1:
        name = name[:-1]
    return f"{name}…"


def _cell(text: str, width: int, right: bool) -> str:
    gap = " " * (width - width_of(text))
    return f"{gap}{text}" if right else f"{text}{gap}"


def wrapped(text: str, margin: str = "") -> list[str]:
    """Return a sentence broken into lines, those after the first set in."""
    return wrap(text, WIDE, initial_indent=margin, subsequent_indent=f"{margin}  ", break_on_hyphens=False)


def ranking_table(calculation: Calculation, most: int) -> str:
    """Return the first makers with rank, score, band and known share, and how many are ruled out and why."""
    ranking, table = calculation.ranking, calculation.case.table
    rows = [("Rank", "Maker", "Score", "Could be", "Known")]
    for maker in ranking.order[:most]:
        low, high = rounded(ranking.low[maker]), rounded(ranking.high[maker])
        band = low if low == high else f"{low} to {high}"
        known = f"{rounded(100 * ranking.known_shares[maker], 0)} of 100"
        rows.append(
            (str(ranking.ranks[maker]), visible(table.makers[maker]), rounded(ranking.scores[maker]), band, known)
        )
    lines = [as_text(rows, right=frozenset({0, 2, 3}))] if len(rows) > 1 else []
    if len(ranking.order) > most:
        lines.append(f"… and {len(ranking.order) - most} more on the page")
    out = ranking.ruled_out
    lines.extend(f"Ruled out: {visible(table.makers[maker])} – {_why(calculation, maker)}" for maker in out[:most])
    if len(out) > most:
        lines.append(f"… and {counted(len(out) - most, 'other')} ruled out")
    return "\n".join(lines)


def _why(calculation: Calculation, maker: int) -> str:
    failed = zip(calculation.case.criteria, calculation.countings, calculation.screening.fails[maker], strict=True)
    return "; ".join(why_ruled_out(criterion, counting, maker) for criterion, counting, fails in failed if fails)
