"""The schedule of a case on a day: of the makers that matter, once there is a need-by date and anything to say.

Enters: a case and its ranking. Leaves: the schedule, or None. Nothing of it is loaded while there is nothing to say.
"""

from collections.abc import Sequence
from dataclasses import replace
from datetime import date
from typing import TYPE_CHECKING

from scorecard.case import Case

if TYPE_CHECKING:
    from scorecard.scheduling.schedule import Schedule

FIRST = 40  # ranked makers of which nobody has said any days


def scheduled(case: Case, as_of: date, ranked: Sequence[int], ruled_out: Sequence[int]) -> "Schedule | None":
    """Return the schedule of the ranked makers, best first; None without a need-by date or anything to say.

    Parameters
    ----------
    case : what was read
    as_of : the day that stands for today
    ranked, ruled_out : positions in the sheet, the ranked ones best first

    Returns
    -------
    plans of every ranked maker that has said any days, of the first others, and of all orders under way
    """
    read = case.schedule
    if read is None or read.need_by is None:
        return None
    from scorecard.scheduling.schedule import schedule_of

    names = case.table.makers
    ordered = {order.maker for order in read.orders}
    best = [names[at] for place, at in enumerate(ranked) if place < FIRST or read.makers[names[at]].is_said]
    out = [names[at] for at in ruled_out]
    kept = dict.fromkeys([*best, *(maker for maker in names if maker in ordered)])
    inputs = replace(read, as_of=as_of, makers={maker: read.makers[maker] for maker in kept})
    return schedule_of(inputs, out)


def arrive_by(case: Case, maker: str) -> date | None:
    """Return the buyer's last working day on which a maker's pieces may come, days to receive and pack them left.

    Parameters
    ----------
    case : what was read
    maker : as the sheet Makers spells it

    Returns
    -------
    the need-by date itself where no days were read; None where the brief names none
    """
    read, need_by = case.schedule, case.brief.need_by
    if read is None or need_by is None:
        return need_by
    from scorecard.scheduling.chain import Chain
    from scorecard.scheduling.plans import door_by

    times = read.makers[maker]
    return read.buyer.latest(door_by(Chain(read, times, times.ways[0]), need_by))
