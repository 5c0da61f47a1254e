"""What holds however the open answers turn out, and what may: who leads, and how far each weight can go meanwhile."""

from scorecard.calculation import Calculation
from scorecard.firmness import typed_span
from scorecard.frozen import dataclass
from scorecard.report.weights import weight_words
from scorecard.sensitivity.weight_ranges import WeightRange
from scorecard.sentences import any_open, some
from scorecard.verdict import could_lead, surely_lead
from scorecard.words import listed, rounded

TOLD = 6  # weights told of in sentences; the table beside them has all


@dataclass(frozen=True, slots=True, kw_only=True)
class Span:
    """One criterion's weight, and the weights with which the first maker leads, in words.

    Parameters
    ----------
    guaranteed : however the open answers turn out
    possible : if they turn out in its favour
    """

    title: str
    typed: str
    guaranteed: str
    possible: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Openness:
    """What the open answers leave open, as written.

    Parameters
    ----------
    leader : whose lead the weights are about
    leads : sentences about who leads for every filling of the open answers, and who for some
    weights : a sentence about the weights with which the leader is first however they turn out; None without any
    spans : of every criterion; empty where nothing is open, or nobody is ranked
    """

    leader: str | None
    leads: tuple[str, ...]
    weights: str | None = None
    spans: tuple[Span, ...] = ()


def openness_of(calculation: Calculation) -> Openness | None:
    """Return what the open answers leave open; None where there is one ranked maker, or none."""
    if len(calculation.ranking.order) < 2:
        return None
    leader = calculation.case.table.makers[calculation.ranking.order[0]]
    if not any_open(calculation):
        return Openness(leader=leader, leads=("Every answer that counts is known: nothing can turn out otherwise.",))
    return Openness(leader=leader, leads=_leads(calculation), weights=_weights(calculation), spans=_spans(calculation))


def _leads(calculation: Calculation) -> tuple[str, ...]:
    names, parts = calculation.case.table.makers, (calculation.ranking, calculation.screening)
    sure, able = ([names[maker] for maker in found] for found in (surely_lead(*parts), could_lead(*parts)))
    if not sure:
        return (
            "Nobody leads for every way in which the open answers can turn out.",
            f"Depending on how they do, any of these could lead, alone or together: {some(able)}.",
        )
    together = "lead together" if len(sure) > 1 else "leads"
    others = [name for name in able if name not in sure]
    join = f" {some(others)} could at best join." if others else ""
    return (f"However the open answers turn out, {some(sure)} {together}.{join}",)


def _weights(calculation: Calculation) -> str | None:
    leader, over = calculation.case.table.makers[calculation.ranking.order[0]], calculation.firmness.over_answers
    sure = calculation.ranking.order[0] in surely_lead(calculation.ranking, calculation.screening)
    found = [(at, one.guaranteed) for at, one in enumerate(over) if one and one.guaranteed and _wide(one.guaranteed)]
    if not found:
        return None if sure else f"No change of one weight alone would make {leader} sure of first place."
    bounded = [(at, one) for at, one in found if not _whole(one)]
    if not bounded:
        return f"That holds whatever one of the weights is changed to: {leader} stays first."
    titles = [one.title for one in calculation.case.criteria]
    told = [f"{titles[at]} {_in_words(calculation, at, one)}" for at, one in bounded[:TOLD]]
    if sure:
        return f"That holds for {leader} while one weight alone is moved within these bounds: {listed(told)}."
    return f"{leader} would be sure of first place with one weight alone changed: {listed(told, 'or')}."


def _wide(found: WeightRange) -> bool:
    """Return whether a range is more than the one share with which the leader is just level."""
    return found.high - found.low > 1e-9


def _whole(found: WeightRange) -> bool:
    return found.low <= 0 and found.high >= 1


def _spans(calculation: Calculation) -> tuple[Span, ...]:
    return tuple(_span(calculation, at) for at in range(len(calculation.case.criteria)))


def _span(calculation: Calculation, at: int) -> Span:
    one, over = calculation.case.criteria.criteria[at], calculation.firmness.over_answers[at]
    sure, able = "it has all the weight", "it has all the weight"
    if over is not None and calculation.firmness.weight_ranges[at] is not None:
        sure, able = (_in_words(calculation, at, found) for found in (over.guaranteed, over.possible))
    return Span(title=one.title, typed=weight_words(one.weight), guaranteed=sure, possible=able)


def _in_words(calculation: Calculation, criterion: int, found: WeightRange | None) -> str:
    """Return a range of shares in weights as typed."""
    if found is None:
        return "no weight"
    low, high = typed_span(found, criterion, calculation.case.criteria)
    if _whole(found):
        return "any weight"
    if low is None:
        return "no weight but all of it"
    if not _wide(found):
        return f"{rounded(low)} alone"
    return f"{rounded(low)} or more" if high is None else f"{rounded(low)} to {rounded(high)}"
