"""An order under way: when it is likely to be at the door, with how much to spare, and until when one can complain.

A step that should be over and is not is taken to be over today at the earliest. Nothing is kept spare: what is left is
the slack.
"""

from collections.abc import Mapping, Sequence
from datetime import date
from typing import Literal

from scorecard.costing.quotes import Way
from scorecard.frozen import dataclass
from scorecard.orders import OrderRow
from scorecard.scheduling.chain import Chain, said_step
from scorecard.scheduling.inputs import MakerTimes, ScheduleInputs, WayTimes, usual_transit
from scorecard.scheduling.plans import door_by, ship_by
from scorecard.scheduling.steps import Placed, Step, placed_on

Stage = Literal["ordered", "deposit paid", "proof approved", "shipped", "arrived"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Progress:
    """Where one order stands.

    Parameters
    ----------
    as_of : the day that stands for today
    since : the day from which the steps to come are counted
    way_assumed : whether nobody has said how it is shipped; the slowest way is then taken
    steps : that are still to come, at the late end, from ``since``
    overdue_days : by how much the next step is overdue at the late end; 0 where it is not
    door_on : when it is at the door by our count, or was
    expected_on : the later of that and of what the maker promised, which is at today or later until it has arrived
    ready_on : when it can be sold
    door_by, slack_days : None where the brief names no day; below 0: so many days too late
    ship_by : latest day of leaving the maker, by way; empty once it has left
    complain_days : left to complain, the last day counted out; below 0: over since; None where no day is known
    """

    order: OrderRow
    maker: MakerTimes
    way: Way
    way_assumed: bool
    stage: Stage
    as_of: date
    since: date
    steps: tuple[Placed, ...]
    overdue_days: int
    door_on: date
    expected_on: date
    ready_on: date
    door_by: date | None
    slack_days: int | None
    ship_by: Mapping[Way, date]
    complain_days: int | None

    @property
    def may_come_too_late_to_complain(self) -> bool:
        """Whether the last day to complain may be over before the pieces can be looked at."""
        until = self.order.complain_until
        return until is not None and self.stage != "arrived" and self.expected_on >= until

    @property
    def is_to_be_checked(self) -> bool:
        """Whether the pieces are here and there is still time to complain."""
        return self.stage == "arrived" and self.complain_days is not None and self.complain_days >= 0


def is_open(order: OrderRow, as_of: date) -> bool:
    """Say whether anything of an order is still to come: the pieces, the balance, or the last day to complain."""
    if order.arrived is None or order.balance_paid is None:
        return True
    return order.complain_until is not None and order.complain_until >= as_of


def progress_of(inputs: ScheduleInputs, order: OrderRow, maker: MakerTimes) -> Progress:
    """Return where an order stands on the day that stands for today."""
    times, way_assumed = _times(inputs, order, maker)
    chain, as_of = Chain(inputs, maker, times), inputs.as_of
    stage, since = _stage(order, as_of)
    placed, overdue, door_on = _to_the_door(_to_come(chain, stage), since, as_of)
    expected = door_on if stage == "arrived" else max(door_on, order.promised or door_on, as_of)
    received, ready_on = placed_on(chain.receiving(), expected)
    latest = door_by(chain, inputs.need_by) if inputs.need_by else None
    return Progress(
        order=order,
        maker=maker,
        way=times.way,
        way_assumed=way_assumed,
        stage=stage,
        as_of=as_of,
        since=since,
        steps=(*placed, *received),
        overdue_days=overdue,
        door_on=door_on,
        expected_on=expected,
        ready_on=ready_on,
        door_by=latest,
        slack_days=(latest - expected).days if latest else None,
        ship_by=_ship_by(inputs, maker) if stage not in ("shipped", "arrived") else {},
        complain_days=(order.complain_until - as_of).days if order.complain_until else None,
    )


def _times(inputs: ScheduleInputs, order: OrderRow, maker: MakerTimes) -> tuple[WayTimes, bool]:
    """Return the way of an order, and whether nobody has said it: then the slowest that its maker has."""
    said = next((times for times in (*maker.ways, *maker.ordered_ways) if times.way == order.way), None)
    if said is not None:
        return said, False
    slowest = max(maker.ways, key=lambda times: placed_on(Chain(inputs, maker, times).to_the_door(), inputs.as_of)[1])
    return slowest, order.way is not None or len(maker.ways) > 1 or slowest.way_assumed


def _stage(order: OrderRow, as_of: date) -> tuple[Stage, date]:
    """Return how far an order is, and since when."""
    reached: list[tuple[Stage, date | None]] = [
        ("arrived", order.arrived),
        ("shipped", order.shipped),
        ("proof approved", order.proof_approved),
        ("deposit paid", order.deposit_paid),
        ("ordered", order.ordered),
    ]
    stage, since = next(((stage, day) for stage, day in reached if day), ("ordered", as_of))
    if stage == "proof approved" and order.deposit_paid:  # production waits for both
        since = max(since or as_of, order.deposit_paid)
    return stage, since or as_of


def _to_come(chain: Chain, stage: Stage) -> tuple[Step, ...]:
    """Return the steps between a stage and the door."""
    if stage == "arrived":
        return ()
    if stage == "shipped":
        return (*_journey(chain), *chain.clearance())
    approved = () if stage == "proof approved" else chain.proof()
    return (*approved, *chain.to_the_door())


def _journey(chain: Chain) -> tuple[Step, ...]:
    """Return the journey of pieces that have left; as usual where the maker's days hold it."""
    if chain.times.transit is not None:
        return chain.transit()
    return (said_step("transit", usual_transit(chain.settings, chain.times.way, chain.maker.reach)),)


def _to_the_door(steps: Sequence[Step], since: date, as_of: date) -> tuple[tuple[Placed, ...], int, date]:
    """Return the steps to come, by how many days the first is overdue, and the day at the door.

    What has not happened by today cannot have happened: an overdue step is over today, and the rest follows from there.
    """
    placed, door_on = placed_on(steps, since)
    if not placed or placed[0].last >= as_of:
        return placed, 0, door_on
    first = placed[0]
    rest = steps[next(at for at, step in enumerate(steps) if step is first.step) + 1 :]
    others, door_on = placed_on(rest, as_of)
    return (first, *others), (as_of - first.last).days, door_on


def _ship_by(inputs: ScheduleInputs, maker: MakerTimes) -> dict[Way, date]:
    """Return the latest day of leaving the maker, by way."""
    if inputs.need_by is None:
        return {}
    ways = (*maker.ways, *maker.ordered_ways)
    days = {times.way: ship_by(Chain(inputs, maker, times), inputs.need_by) for times in ways}
    return {way: day for way, day in days.items() if day is not None}
