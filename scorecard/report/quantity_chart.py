"""Geometry of the cost of a good piece against the quantity: curves, where another maker becomes the cheapest, words.

Enters: a plan. Leaves: places across as percentages, down as text sizes; the curves alone as points of 100 by 100, so
that words keep their size on any screen.
"""

from math import ceil, floor, log10
from typing import TYPE_CHECKING

from scorecard.frozen import dataclass
from scorecard.report.charts import percent
from scorecard.report.line_chart import EDGE, FOOT, HEAD, NAME, ROW, Crossing, Ground, Mark, Tick, apart, em, marks_of
from scorecard.report.texts import isolate
from scorecard.words import rounded, shortest

if TYPE_CHECKING:
    from scorecard.ordering.changes import Stretch
    from scorecard.ordering.plan import Plan

MANY = 4  # curves: of those that are the cheapest somewhere, and then of the best ranked
MOST_MARKS = 6
BETWEEN = 12  # quantities drawn at even distances, beside those at which a cost bends
TALL = 13.0  # text sizes
FURTHEST = 2.2  # times the lowest cost: what lies above is cut off
LINES = 5  # spaces between lines of the grid, at most
LONGEST = 40  # characters of a name


@dataclass(frozen=True, slots=True, kw_only=True)
class Curve:
    """One maker's cost: where its name stands, its stretches as points of a polyline, and dots at its real sizes."""

    place: str
    name: str
    look: str
    start: str
    name_at: str
    name_top: str
    runs: tuple[str, ...]
    dots: tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class QuantityChart:
    """A whole drawing; the fields as in ``line_chart.LineChart``.

    Parameters
    ----------
    ends : the first, the middle and the last quantity of the scale
    ground_height : of the ground of the curves
    wanted : where the pieces wanted lie, or None where they are beyond
    """

    height: str
    top: str
    bottom: str
    ground_height: str
    ticks: tuple[Tick, ...]
    curves: tuple[Curve, ...]
    marks: tuple[Mark, ...]
    ends: tuple[str, str, str]
    wanted: str | None
    wanted_anchor: str
    scale_at: str
    wanted_at: str
    head_at: str


Points = tuple[tuple[int, float | None], ...]


def quantity_chart(plan: "Plan") -> QuantityChart | None:
    """Return the drawing of a plan; None where there are not two quantities, or no cost is known.

    Parameters
    ----------
    plan : with its names as they were read
    """
    if not plan.stretches or plan.stretches[0].start == plan.stretches[-1].end:
        return None
    start, end = plan.stretches[0].start, plan.stretches[-1].end
    every = {maker: _points(plan, maker) for maker in _drawn_makers(plan)}
    points = {maker: found for maker, found in every.items() if any(cost is not None for _, cost in found)}
    if not points:
        return None
    crossings = _crossings(plan, start, end)
    ground, step = _ground(points, len(crossings))
    wanted = plan.inputs.brief.quantity
    at = _across(wanted, start, end)
    return QuantityChart(
        height=em(ground.bottom + FOOT),
        top=em(ground.top),
        bottom=em(ground.bottom),
        ground_height=em(ground.bottom - ground.top),
        ticks=_ticks(ground, step),
        curves=_curves(plan, points, ground),
        marks=marks_of(crossings, ground),
        ends=(str(start), str((start + end) // 2), str(end)),
        wanted=percent(at) if start <= wanted <= end else None,
        wanted_anchor="start" if at < EDGE else "end" if at > 100 - EDGE else "middle",
        scale_at=em(ground.bottom + 1.2),
        wanted_at=em(ground.bottom + 2.6),
        head_at=em(ground.top - 1.5),
    )


def _ground(points: dict[str, Points], rows: int) -> tuple[Ground, float]:
    """Return the ground under so many rows of words, and the step of its grid."""
    costs = [cost for found in points.values() for _, cost in found if cost is not None]
    step, lowest, highest = cost_steps(min(costs), min(max(costs), FURTHEST * min(costs)))
    top = max(HEAD, ROW * rows + 0.7) + 0.4
    return Ground(top, top + max(TALL, NAME * len(points)), highest, lowest), step


def _drawn_makers(plan: "Plan") -> list[str]:
    cheapest = [one.maker for one in plan.stretches if one.maker is not None]
    ranked = [one.maker for one in plan.makers]
    chosen = [*dict.fromkeys([*cheapest, *ranked])][:MANY]
    return sorted(chosen, key=ranked.index)


def _points(plan: "Plan", maker: str) -> Points:
    """Return quantities with the cost of a good piece of one maker; None where a cost is missing."""
    from scorecard.ordering.changes import bends

    start, end = plan.stretches[0].start, plan.stretches[-1].end
    evenly = {start + (end - start) * at // BETWEEN for at in range(BETWEEN + 1)}
    quantities = sorted({*evenly, *bends(plan.inputs, start, end)})
    return tuple((pieces, _cost(plan, maker, pieces)) for pieces in quantities)


def _cost(plan: "Plan", maker: str, pieces: int) -> float | None:
    cost = plan.pricing.standing(pieces).get(maker)
    return None if cost is None else float(cost)


def cost_steps(least: float, most: float) -> tuple[float, float, float]:
    """Return the step between lines of the grid, and the lowest and highest of them, that hold two costs.

    Examples
    --------
    >>> cost_steps(4.2, 7.9), cost_steps(5, 5), cost_steps(310, 950)
    ((1.0, 4.0, 8.0), (0.2, 4.6, 5.4), (200.0, 200.0, 1000.0))
    """
    if most - least < most / 10:  # next to level: lines as far apart as a tenth of it
        least, most = least - most / 20, most + most / 20
    size = 10.0 ** floor(log10(max(most - least, most / 10)))
    steps = (size * part for part in (0.1, 0.2, 0.5, 1.0, 2.0, 5.0, 10.0))
    step = next(step for step in steps if ceil(most / step) - floor(least / step) <= LINES)
    lowest, highest = (round(step * lines, 9) for lines in (floor(least / step), ceil(most / step)))
    return (step, lowest, highest) if lowest < highest else (step, max(0.0, lowest - step), highest + step)


def _ticks(ground: Ground, step: float) -> tuple[Tick, ...]:
    """Return the lines of the grid, the highest first, with as many decimals as their step has."""
    decimals = max(0, -floor(log10(step) + 1e-9))
    lines = round((ground.highest - ground.lowest) / step)
    costs = [ground.highest - step * at for at in range(lines + 1)]
    return tuple(Tick(y=em(ground.down(cost)), figure=rounded(cost, decimals)) for cost in costs)


def _across(pieces: int, start: int, end: int) -> float:
    return 100 * (pieces - start) / (end - start)


def _crossings(plan: "Plan", start: int, end: int) -> list[Crossing]:
    """Return where another maker becomes the cheapest, the nearest to the pieces wanted."""
    wanted = plan.inputs.brief.quantity
    changes = [one for one in plan.stretches[1:] if one.maker is not None]
    nearest = sorted(changes, key=lambda one: abs(one.start - wanted))[:MOST_MARKS]
    return [_crossing(plan, one, start, end) for one in sorted(nearest, key=lambda one: one.start)]


def _crossing(plan: "Plan", one: "Stretch", start: int, end: int) -> Crossing:
    maker = str(one.maker)
    cost = _cost(plan, maker, one.start) or 0.0
    words = f"from {one.start} pieces {isolate(maker, LONGEST)}"
    return Crossing(share=_across(one.start, start, end), score=cost, words=words)


def _curves(plan: "Plan", points: dict[str, Points], ground: Ground) -> tuple[Curve, ...]:
    start, end = plan.stretches[0].start, plan.stretches[-1].end
    leads = {one.maker for one in plan.stretches}
    firsts = [ground.down(min(_first(found), ground.highest)) for found in points.values()]
    places = apart(firsts, NAME, ground.top, ground.bottom)
    return tuple(
        Curve(
            place=str(at + 1),
            name=isolate(maker, LONGEST),
            look=f"p{at}" if maker in leads else f"p{at} behind",
            start=em(firsts[at]),
            name_at=em(places[at]),
            name_top=em(places[at] - NAME / 2),
            runs=_runs(found, start, end, ground),
            dots=_dots(plan, maker, start, end, ground),
        )
        for at, (maker, found) in enumerate(points.items())
    )


def _first(points: Points) -> float:
    return next(cost for _, cost in points if cost is not None)


def _runs(points: Points, start: int, end: int, ground: Ground) -> tuple[str, ...]:
    """Return the stretches with a known cost, each as the points of a polyline on a ground of 100 by 100."""
    runs: list[list[str]] = [[]]
    for pieces, cost in points:
        if cost is None:
            runs.append([])
        else:
            down = 100 * (ground.highest - cost) / (ground.highest - ground.lowest)
            runs[-1].append(f"{_short(_across(pieces, start, end))},{_short(down)}")
    return tuple(" ".join(run) for run in runs if len(run) > 1)


def _short(number: float) -> str:
    return shortest(round(number, 2))


def _dots(plan: "Plan", maker: str, start: int, end: int, ground: Ground) -> tuple[tuple[str, str], ...]:
    """Return where the real sizes lie whose cost is known and within the ground."""
    own = next(one for one in plan.makers if one.maker == maker)
    found: list[tuple[str, str]] = []
    for option in own.options:
        cost = _cost(plan, maker, option.pieces)
        if cost is not None and start <= option.pieces <= end and cost <= ground.highest:
            found.append((percent(_across(option.pieces, start, end)), em(ground.down(cost))))
    return tuple(found)
