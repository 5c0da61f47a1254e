"""Score beside landed cost on the screen, once two makers are costed."""

from collections.abc import Sequence

from scorecard.calculation import Calculation
from scorecard.cli.tables import as_text, visible
from scorecard.codes import money_range
from scorecard.stage import CostedMaker, currency_of
from scorecard.words import rounded

STANDS = 5  # the column that says how a way stands against the need-by date; left out where nothing is said


def cost_table(calculation: Calculation, costed: Sequence[CostedMaker], most: int) -> str:
    """Return the costed makers by rank: score, cost of a good piece, way, and what is paid before anything is checked.

    Parameters
    ----------
    calculation : of a case on a day
    costed : its ``costed_makers``
    most : how many of them
    """
    home = currency_of(calculation)
    head = (
        "Rank",
        "Maker",
        "Score",
        f"A good piece at the door, {home}".rstrip(", "),
        "Way",
        "How it stands",
        "Paid before you can check",
    )
    rows = [head, *(_row(calculation, one, home) for one in costed[:most])]
    more = len(costed) - most
    if not any(row[STANDS] for row in rows[1:]):
        rows = [(*row[:STANDS], *row[STANDS + 1 :]) for row in rows]
    return as_text(rows, right=frozenset({0, 2, 3, len(rows[0]) - 1})) + (
        f"\n… and {more} more costed" if more > 0 else ""
    )


def _row(calculation: Calculation, one: CostedMaker, home: str) -> tuple[str, ...]:
    ranking, name = calculation.ranking, calculation.case.table.makers[one.maker]
    start = (str(ranking.ranks[one.maker]), visible(name), rounded(ranking.scores[one.maker]))
    piece = money_range(one.low, one.high, home)
    if one.cost is None or calculation.case.costed is None:
        return (*start, piece, "as typed", "", "not known")
    from scorecard.cost_words import told

    words = told(calculation.case.costed, one.cost)
    return (*start, piece, f"{words.way}{', as typed' if one.is_typed else ''}".lstrip(", "), words.time, words.paid)
