"""The ranking as a table: rank, maker, score, what it could be, how much is known, and a mark on a scale."""

from collections.abc import Sequence

from scorecard.calculation import Calculation
from scorecard.frozen import dataclass
from scorecard.report.charts import Scale, band_words, score_scale
from scorecard.words import counted, known_words, listed, rounded

LIMITS_NAMED = 3  # criteria named in one row of the ranking


@dataclass(frozen=True, slots=True, kw_only=True)
class RankedMaker:
    """One row of the ranking, as written.

    Parameters
    ----------
    band : such as "71.0 to 90.1"; None where nothing is open
    may_fail : criteria whose limits an open answer may yet fail, listed; None where there are none
    """

    rank: str
    maker: str
    score: str
    band: str | None
    known: str
    may_fail: str | None
    scale: Scale


def ranked_makers(calculation: Calculation, shown: Sequence[int]) -> list[RankedMaker]:
    """Return the rows of the ranking.

    Parameters
    ----------
    calculation : of a case on a day
    shown : positions of the makers, best first
    """
    ranking = calculation.ranking
    return [
        RankedMaker(
            rank=str(ranking.ranks[maker]),
            maker=calculation.case.table.makers[maker],
            score=rounded(ranking.scores[maker]),
            band=band_words(ranking.low[maker], ranking.high[maker]),
            known=known_words(ranking.known_shares[maker]),
            may_fail=_may_fail(calculation, maker),
            scale=score_scale(ranking.scores[maker], ranking.low[maker], ranking.high[maker]),
        )
        for maker in shown
    ]


def _may_fail(calculation: Calculation, maker: int) -> str | None:
    flags = calculation.screening.may_fail[maker].tolist()
    titles = [one.title for one, flag in zip(calculation.case.criteria, flags, strict=True) if flag]
    if not titles:
        return None
    more = len(titles) - LIMITS_NAMED
    return listed(titles if more <= 0 else [*titles[:LIMITS_NAMED], counted(more, "other")])
