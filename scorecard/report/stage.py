"""The stage of the choice on the page: what the ranking is for so far, and score beside landed cost once that is known.

Enters: an assessment as shown, and its costed makers. Leaves: sentences, and the rows of a table.
"""

from collections.abc import Sequence

from scorecard.assessment import Assessment
from scorecard.codes import money_range
from scorecard.frozen import dataclass
from scorecard.report.texts import sentence, visible
from scorecard.stage import CostedMaker, currency_of, stage_of, stage_sentences
from scorecard.words import rounded

MOST = 12  # makers in the table near the verdict


@dataclass(frozen=True, slots=True, kw_only=True)
class OrderRow:
    """One costed maker.

    Parameters
    ----------
    piece : cost of a good piece at the door
    paid : what will have been paid before anything can be checked
    """

    rank: str
    maker: str
    score: str
    piece: str
    way: str
    time: str
    paid: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Ordering:
    """What stands near the verdict of whom to write to or to order from.

    Parameters
    ----------
    stage : the sentence that opens it
    beside : what the table shows, and what the ranking would be if it counted, as sentences
    rows : none before two makers are costed
    paid_how : sentences on what is paid when
    as_quoted : what the days count, and what they do not
    left : how many costed makers the table leaves out
    """

    stage: str | None
    beside: tuple[str, ...] = ()
    rows: tuple[OrderRow, ...] = ()
    currency: str = ""
    paid_how: tuple[str, ...] = ()
    as_quoted: str = ""
    left: int = 0


def ordering_of(shown: Assessment, costed: Sequence[CostedMaker], lacking: Sequence[CostedMaker] = ()) -> Ordering:
    """Return the stage of the choice.

    Parameters
    ----------
    shown : with names made visible
    costed, lacking : the ``costed_makers`` and ``open_makers`` of the same assessment with its names as read
    """
    said = [sentence(words) for words in stage_sentences(shown, costed, lacking)]
    opening, beside = (said[0] if said else None), tuple(said[1:])
    if stage_of(costed) == "write":
        return Ordering(stage=opening, beside=beside)
    first = costed[:MOST]
    return Ordering(
        stage=opening,
        beside=beside,
        rows=tuple(_row(shown, one) for one in first),
        currency=currency_of(shown),
        paid_how=_paid_how(first),
        as_quoted=_as_quoted(shown, first),
        left=len(costed) - len(first),
    )


def _row(shown: Assessment, one: CostedMaker) -> OrderRow:
    ranking, home = shown.ranking, currency_of(shown)
    way, time, paid = _by_its_way(shown, one)
    return OrderRow(
        rank=str(ranking.ranks[one.maker]),
        maker=shown.case.table.makers[one.maker],
        score=rounded(ranking.scores[one.maker]),
        piece=money_range(one.low, one.high, home),
        way=way,
        time=time,
        paid=paid,
    )


def _by_its_way(shown: Assessment, one: CostedMaker) -> tuple[str, str, str]:
    """Return the way that stands for a maker, when it is there, and what is paid before it can be checked."""
    if one.cost is None or shown.case.costed is None:
        return "as typed", "", "not known"
    from scorecard.cost_words import told

    words = told(shown.case.costed, one.cost)
    way = ", ".join(part for part in (words.way, "as typed" if one.is_typed else "") if part)
    return way, words.stands, words.paid


def _as_quoted(shown: Assessment, costed: Sequence[CostedMaker]) -> str:
    """Return what the days count, and what they do not; "" where the table has none."""
    if shown.case.costed is None or all(one.cost is None for one in costed):
        return ""
    from scorecard.cost_words import days_counted

    return " ".join(map(sentence, days_counted(shown.case.costed)))


def _paid_how(costed: Sequence[CostedMaker]) -> tuple[str, ...]:
    """Return when the price is paid, each way of paying once."""
    quoted = [one.cost for one in costed if one.cost is not None]
    if not quoted:
        return ()
    from scorecard.costing.paying import paid_before_checking

    said = dict.fromkeys(paid_before_checking(cost).words.split(";", maxsplit=1)[0] for cost in quoted)
    return tuple(sentence(visible(words)) for words in said)
