"""How many to order on the page: what holds of all makers in sentences, a row a size, what is said of each maker.

Enters: an assessment with its names as read. Leaves: ready strings, and a drawing.
"""

from dataclasses import replace
from typing import TYPE_CHECKING

from scorecard.assessment import Assessment
from scorecard.codes import money, money_range
from scorecard.frozen import dataclass
from scorecard.quantity_results import plan_for
from scorecard.report.quantity_chart import QuantityChart, quantity_chart
from scorecard.report.texts import isolate, sentence, visible

if TYPE_CHECKING:
    from scorecard.ordering.options import Option
    from scorecard.ordering.plan import MakerPlan, Plan

LONGEST = 600  # characters of a sentence


@dataclass(frozen=True, slots=True, kw_only=True)
class SizeRow:
    """One maker at one size: "–" for what cannot be said while a cost is missing.

    Parameters
    ----------
    left : at the low, the likely and the high demand, as far as they are given; then on average, of several
    is_best : whether it leaves most of the maker's sizes
    """

    maker: str
    pieces: str
    why: str
    total: str
    per_good: str
    per_likely: str
    margin: str
    back: str
    left: tuple[str, ...]
    is_best: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class MakerSaid:
    """What is said of one maker."""

    maker: str
    said: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class StretchRow:
    """From which to which quantity one maker is the cheapest, and what a good piece costs at either end."""

    pieces: str
    maker: str
    costs: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Quantities:
    """How many to order; without rows while nothing is quoted or the price is not given.

    Parameters
    ----------
    cases : what ``left`` of each row is for: demands, and their average
    stretches : the figures of the drawing
    margin_is : of what the margin is so many percent
    """

    currency: str = ""
    said: tuple[str, ...] = ()
    cases: tuple[str, ...] = ()
    rows: tuple[SizeRow, ...] = ()
    makers: tuple[MakerSaid, ...] = ()
    chart: QuantityChart | None = None
    stretches: tuple[StretchRow, ...] = ()
    margin_is: str = ""


def quantities_of_page(assessment: Assessment) -> Quantities:
    """Return how many to order of an assessment.

    Parameters
    ----------
    assessment : with its names as they were read
    """
    plan = plan_for(assessment)
    if plan is None or not plan.makers:
        return Quantities()
    from scorecard.ordering.demands import CASES
    from scorecard.quantity_words import maker_words, plan_words
    from scorecard.size_words import MARGIN_IS

    shown = presented(plan)
    demand = plan.selling.demand
    return Quantities(
        currency=plan.inputs.rates.home,
        said=tuple(map(sentence, plan_words(shown))),
        cases=(*CASES, "on average") if demand and demand.is_spread else tuple(plan.makers[0].at_wanted.outcomes),
        rows=tuple(_row(option, is_best=option is one.best) for one in shown.makers for option in one.options),
        makers=tuple(MakerSaid(maker=one.maker, said=_sentences(maker_words(shown, one))) for one in shown.makers),
        chart=quantity_chart(plan),
        stretches=_stretches(plan),
        margin_is=sentence(MARGIN_IS),
    )


def _sentences(said: list[str]) -> tuple[str, ...]:
    return tuple(sentence(visible(words, LONGEST)) for words in said)


def presented(plan: "Plan") -> "Plan":
    """Return a plan whose names are fit for a page; what it says of costs at other quantities is not to be asked."""
    return replace(
        plan,
        makers=tuple(_presented(one) for one in plan.makers),
        stretches=tuple(replace(one, maker=one.maker and isolate(one.maker)) for one in plan.stretches),
        left_out=tuple(map(isolate, plan.left_out)),
    )


def _presented(one: "MakerPlan") -> "MakerPlan":
    options = tuple(replace(each, cost=replace(each.cost, maker=isolate(each.maker))) for each in one.options)
    return replace(one, maker=isolate(one.maker), options=options)


def _row(option: "Option", *, is_best: bool) -> SizeRow:
    from scorecard.size_words import at_least_words, home_of, left_cells, margin_words

    home, known = home_of(option), option.is_complete
    needed = option.break_even[1]
    return SizeRow(
        maker=option.maker,
        pieces=str(option.pieces),
        why=", ".join(option.size.whys),
        total=at_least_words(option, option.total),
        per_good=at_least_words(option, option.per_good),
        per_likely=money_range(*option.per_likely, home) if known else "–",
        margin=margin_words(option).removeprefix("margin ") if known else "–",
        back=str(needed) if known and needed is not None else "–",
        left=left_cells(option),
        is_best=is_best,
    )


def _stretches(plan: "Plan") -> tuple[StretchRow, ...]:
    from scorecard.quantity_words import rivals_in

    home = plan.inputs.rates.home
    rows = []
    for one in plan.stretches:
        ends = dict.fromkeys((one.start, one.end))
        costs = [plan.pricing.standing(pieces).get(str(one.maker)) for pieces in ends]
        rows.append(
            StretchRow(
                pieces=" to ".join(map(str, ends)),
                maker="nobody has every cost known"
                if one.maker is None
                else isolate(one.maker) + rivals_in(one, isolate),
                costs=" to ".join(money(cost, home) for cost in costs if cost is not None) or "–",
            )
        )
    return tuple(rows)
