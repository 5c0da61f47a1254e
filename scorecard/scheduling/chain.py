"""The chain of steps from the first sample to pieces that can be sold, for one maker and way.

The order of the chain is that of the trade: samples, the order, the proof, production, transit, clearance, receiving.
"""

from datetime import date

from scorecard.scheduling.calendars import Calendar
from scorecard.scheduling.inputs import MakerTimes, Said, ScheduleInputs, WayTimes
from scorecard.scheduling.settings import Days
from scorecard.scheduling.steps import Counted, Step, StepName, placed_on, still_to_come

THEIRS: Counted = "the maker's working days"
YOURS: Counted = "your working days"


class Chain:
    """The steps of one maker and way, in parts that a plan or an order under way puts together."""

    def __init__(self, inputs: ScheduleInputs, maker: MakerTimes, times: WayTimes) -> None:
        self.inputs, self.maker, self.times = inputs, maker, times
        self.settings = inputs.settings

    def samples(self) -> tuple[Step, ...]:
        """Return what is to come of samples before the order; none once a sample is approved."""
        rounds, under_way = self.settings.sample_rounds, self.maker.sample
        if self.maker.sampled or not rounds:
            return ()
        if under_way is None:
            return self._round() * rounds
        return (*self._rest_of_round(), *self._round() * (rounds - under_way.number))  # none where that is below 1

    @property
    def asks_for_sample(self) -> bool:
        """Whether a sample is to be asked for before all else."""
        return self.maker.sample is None and bool(self.samples())

    def sample_due(self) -> date | None:
        """Return the day by which the sample that was asked for should come, at the late end; None without one."""
        under_way = self.maker.sample
        if under_way is None or under_way.received_on or under_way.asked_on is None or not self.samples():
            return None
        return placed_on(self._round()[:2], under_way.asked_on)[1]

    def _rest_of_round(self) -> tuple[Step, ...]:
        """Return what is to come of the sample under way: counted from the day on which it was asked for."""
        made, posted, looked_at = self._round()
        under_way = self.maker.sample
        if under_way is None or under_way.received_on or under_way.asked_on is None:
            return (looked_at,)
        return (*still_to_come((made, posted), under_way.asked_on, self.inputs.as_of), looked_at)

    def _round(self) -> tuple[Step, Step, Step]:
        return (
            self._theirs("sample made", self.settings.sample_days, "sample_days"),
            self._step("sample in the post", self.settings.sample_post_days, "sample_post_days"),
            self._yours("sample looked at", self._approval(), "approval_days"),
        )

    def proof(self) -> tuple[Step, ...]:
        """Return the proof, drawn and approved."""
        return (
            self._theirs("proof drawn", self.settings.proof_days, "proof_days"),
            self._yours("proof approved", self._approval(), "approval_days"),
        )

    def production(self) -> tuple[Step, ...]:
        """Return production, as far as the maker's days go."""
        times, maker = self.times, self.maker.calendar
        name: StepName = "production" if times.up_to == "ready" else "production and transit"
        calendar, counted = maker, THEIRS
        if times.counts == "days":
            calendar, counted = maker.long_only(self.settings.long_holiday_days), "days, long holidays left out"
        said = times.production
        return (said_step(name, said, counted, calendar),)

    def transit(self) -> tuple[Step, ...]:
        """Return the journey to the door; none where the days of production hold it."""
        said = self.times.transit
        if said is None:
            return ()
        return (said_step("transit", said),)

    def clearance(self) -> tuple[Step, ...]:
        """Return customs clearance; none where no border is crossed, or the days of production hold it."""
        if self.maker.nearby or self.times.up_to == "cleared":
            return ()
        return (self._yours("clearance", self.settings.clearance_days, "clearance_days"),)

    def spare(self) -> tuple[Step, ...]:
        """Return the days that are kept spare."""
        days = self.settings.spare_days(self.times.way)
        given = self.times.way in self.settings.spare
        source = self.settings.origin("spare_days" if given else "")
        return (said_step("kept spare", Said(days=Days(days, days), source=source, assumed=not given)),)

    def receiving(self) -> tuple[Step, ...]:
        """Return unpacking, checking and packing."""
        days = self.settings.receiving_days
        return (self._yours("receiving and packing", Days(days, days), "receiving_days"),)

    def to_the_door(self) -> tuple[Step, ...]:
        """Return all from the approved proof to the door, nothing kept spare."""
        return (*self.production(), *self.transit(), *self.clearance())

    def from_order(self) -> tuple[Step, ...]:
        """Return all from the order on."""
        return (*self.proof(), *self.to_the_door(), *self.spare(), *self.receiving())

    def whole(self) -> tuple[Step, ...]:
        """Return all from the first sample on."""
        return (*self.samples(), *self.from_order())

    def _approval(self) -> Days:
        return Days(self.settings.approval_days, self.settings.approval_days)

    def _theirs(self, name: StepName, days: Days, key: str) -> Step:
        return self._step(name, days, key, THEIRS, self.maker.calendar)

    def _yours(self, name: StepName, days: Days, key: str) -> Step:
        return self._step(name, days, key, YOURS, self.inputs.buyer)

    def _step(
        self, name: StepName, days: Days, key: str, counted: Counted = "days", calendar: Calendar | None = None
    ) -> Step:
        assumed = key not in self.settings.given
        source = self.settings.origin(key)
        return Step(name=name, days=days, counted=counted, calendar=calendar, source=source, assumed=assumed)


def said_step(name: StepName, said: Said, counted: Counted = "days", calendar: Calendar | None = None) -> Step:
    """Return a step whose days somebody has said, or that are assumed of a way."""
    return Step(name=name, days=said.days, counted=counted, calendar=calendar, source=said.source, assumed=said.assumed)
