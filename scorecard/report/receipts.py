"""Where points were lost: per maker a receipt from 100 down to its score, largest loss first.

Each line is rounded to one decimal and so is the score; where the rounded lines miss the rounded score, a line of its
own says by how much. So every receipt adds up as it stands, and no figure is bent to make it so.
"""

from collections.abc import Sequence
from decimal import Decimal

import numpy as np

from scorecard.calculation import Calculation
from scorecard.frozen import dataclass
from scorecard.report.answers import answer_in_words
from scorecard.sentences import some
from scorecard.words import rounded

MINUS = "\N{MINUS SIGN}"


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """One line of a receipt: a criterion, the answer in words, and what it takes off."""

    title: str
    answer: str
    figure: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Receipt:
    """One maker's receipt, as written.

    Parameters
    ----------
    lines : one a criterion that has a weight
    rounding : what the rounded lines miss the rounded score by; None where they meet it
    """

    rank: str
    maker: str
    lines: tuple[Line, ...]
    rounding: str | None
    score: str


def receipts_of(calculation: Calculation, shown: Sequence[int]) -> list[Receipt]:
    """Return the receipts of some makers.

    Parameters
    ----------
    calculation : of a case on a day
    shown : positions of the makers, best first
    """
    return [_receipt(calculation, maker) for maker in shown]


def _receipt(calculation: Calculation, maker: int) -> Receipt:
    losses = (calculation.shares * (100 - calculation.points.counted[maker])).tolist()
    weighted = np.flatnonzero(calculation.shares > 0).tolist()
    falling = sorted(weighted, key=lambda criterion: -losses[criterion])
    amounts = [Decimal(rounded(losses[criterion])) for criterion in falling]
    score = rounded(calculation.ranking.scores[maker])
    left_over = Decimal(score) - (100 - sum(amounts))
    return Receipt(
        rank=str(calculation.ranking.ranks[maker]),
        maker=calculation.case.table.makers[maker],
        lines=tuple(_line(calculation, maker, at, amount) for at, amount in zip(falling, amounts, strict=True)),
        rounding=signed(left_over) if left_over else None,
        score=score,
    )


def weightless_sentence(calculation: Calculation) -> str | None:
    """Return which criteria have no weight, told once rather than in every receipt; None where all have some."""
    titles = [one.title for one in calculation.case.criteria if one.weight == 0]
    if not titles:
        return None
    verb = "has" if len(titles) == 1 else "have"
    return f"{some(titles)} {verb} weight 0, so no receipt lists {'it' if len(titles) == 1 else 'them'}."


def _line(calculation: Calculation, maker: int, criterion: int, amount: Decimal) -> Line:
    return Line(
        title=calculation.case.criteria.criteria[criterion].title,
        answer=answer_in_words(calculation, maker, criterion),
        figure=signed(-amount),
    )


def signed(amount: Decimal) -> str:
    """Return an amount with its sign, and none before nil.

    Examples
    --------
    >>> signed(Decimal("-20.0")), signed(Decimal("0.1")), signed(Decimal("0.0"))
    ('−20.0', '+0.1', '0.0')
    """
    if amount == 0:
        return f"{abs(amount)}"
    return f"{MINUS if amount < 0 else '+'}{abs(amount)}"
