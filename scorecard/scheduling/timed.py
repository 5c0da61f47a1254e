"""What the schedule says of quoted makers and ways, in the form that landed costs carry."""

from collections.abc import Iterable, Mapping

from scorecard.costing.quotes import Way
from scorecard.costing.timing import Course, Timing, status_on
from scorecard.scheduling.chain import Chain
from scorecard.scheduling.inputs import ScheduleInputs, WayTimes, likeness
from scorecard.scheduling.plans import latest_days
from scorecard.scheduling.steps import placed_on

TimingKey = tuple[str, Way | None]


def timings(inputs: ScheduleInputs, makers: Iterable[str]) -> Mapping[TimingKey, Timing]:
    """Return what the schedule says of some makers, by maker and way.

    Parameters
    ----------
    inputs : on the day that stands for today
    makers : names; those of which nothing is known have none

    Returns
    -------
    under a maker and None the way that must be begun the earliest, for a quote that names no way: late rather than
    early. Empty without a need-by date
    """
    if inputs.need_by is None:
        return {}
    known: dict[tuple[object, ...], Timing] = {}
    found: dict[TimingKey, Timing] = {}
    for name in makers:
        maker = inputs.makers.get(name)
        for times in maker.ways if maker else ():
            chain = Chain(inputs, inputs.makers[name], times)
            alike = likeness(chain.maker, times)
            if alike not in known:
                known[alike] = _timing(chain, times)
            found[name, times.way] = known[alike]
        of_maker = [found[name, times.way] for times in maker.ways] if maker else []
        if of_maker:
            found[name, None] = min(of_maker, key=lambda one: (one.begin_by, one.order_by))
    return found


def _timing(chain: Chain, times: WayTimes) -> Timing:
    need_by = chain.inputs.need_by
    assert need_by is not None  # noqa: S101 - asked of no other inputs
    latest = latest_days(chain, need_by)
    status = status_on(chain.inputs.as_of, latest.start_by, latest.order_by, latest.quickly_by)
    return Timing(
        status=status,
        begin_by=latest.begin_by,
        order_by=latest.order_by,
        quickly_by=latest.quickly_by,
        rests_on=times.rests_on,
        course=_course(chain, with_sample=status == "in time" and bool(chain.samples())),
    )


def _course(chain: Chain, *, with_sample: bool) -> Course:
    """Return when things happen if they are begun today, at the late end."""
    ordered_on = placed_on(chain.samples() if with_sample else (), chain.inputs.as_of)[1]
    made_on = placed_on((*chain.proof(), *chain.production()), ordered_on)[1]
    door_on = placed_on((*chain.transit(), *chain.clearance()), made_on)[1]
    return Course(
        with_sample=with_sample,
        ordered_on=ordered_on,
        sent_on=made_on if chain.times.up_to == "ready" else None,
        door_on=door_on,
        ready_on=placed_on((*chain.spare(), *chain.receiving()), door_on)[1],
    )
