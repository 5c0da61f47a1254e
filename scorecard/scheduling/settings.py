"""How many days each step takes where nobody has said: the table ``[schedule]`` and what stands in for its keys.

Usual days of transit are those of carriers' and trade pages for China to Europe, seen in November 2026, none of them
official; every other usual figure, those of makers nearby among them, is common practice, no source. All can be set.
"""

from collections.abc import Mapping
from dataclasses import field
from datetime import date
from math import ceil
from types import MappingProxyType
from typing import Literal, get_args

from scorecard.costing.amounts import Span
from scorecard.costing.quotes import DaysCounted, Way
from scorecard.errors import Place
from scorecard.frozen import dataclass

Counts = DaysCounted
COUNTS: tuple[Counts, ...] = get_args(Counts)

Reach = Literal["own country", "no border", "border"]
"""Where a maker is, seen from the buyer: in the same country, in another with no customs border between, or beyond."""

AS_SET = "closed, as you set it"
COMMON = "common practice, no source"
PAGES = "carriers' and trade pages, seen in November 2026, none official"


@dataclass(frozen=True, slots=True)
class Days:
    """Whole days that a step takes: the least and the most; the most is None where it is open ("30+").

    Raises
    ------
    ValueError
        If they are below 0, or the least is above the most.
    """

    low: int
    high: int | None

    def __post_init__(self) -> None:
        if self.low < 0 or (self.high is not None and self.high < self.low):
            raise ValueError("days are 0 or more, the least at most the most")

    @property
    def late(self) -> int:
        """The days to plan with: the most, or the least where the most is open."""
        return self.low if self.high is None else self.high

    @classmethod
    def of(cls, span: Span) -> "Days":
        """Return a span as whole days, part days counting as whole.

        Examples
        --------
        >>> Days.of(Span.of("2.5", 7))
        Days(low=3, high=7)
        """
        return cls(ceil(span.low), None if span.high is None else ceil(span.high))


USUAL_TRANSIT: Mapping[Way, Days] = MappingProxyType(
    {
        "sea": Days(25, 40),
        "air": Days(3, 15),
        "express": Days(2, 7),
        "rail": Days(18, 40),
        "road": Days(3, 10),
        "post": Days(7, 30),
    }
)
NEAR_TRANSIT: Mapping[Reach, Mapping[Way, Days]] = MappingProxyType(
    {
        "own country": {
            "sea": Days(3, 10),
            "air": Days(1, 4),
            "express": Days(1, 3),
            "rail": Days(2, 7),
            "road": Days(1, 5),
            "post": Days(1, 5),
        },
        "no border": {
            "sea": Days(5, 21),
            "air": Days(2, 7),
            "express": Days(1, 4),
            "rail": Days(4, 14),
            "road": Days(3, 10),
            "post": Days(3, 12),
        },
    }
)
TRANSIT_SOURCES: Mapping[Way, str] = MappingProxyType(
    {"sea": PAGES, "air": PAGES, "express": PAGES, "rail": PAGES, "road": COMMON, "post": COMMON}
)
USUAL_SPARE: Mapping[Way, int] = MappingProxyType({"sea": 10, "air": 3, "express": 3, "rail": 10, "road": 3, "post": 5})


@dataclass(frozen=True, slots=True, kw_only=True)
class OwnClosure:
    """Days on which a maker, or all makers of a country, are closed by the user's word: ``[[schedule.closures]]``.

    Parameters
    ----------
    country : ISO 3166-1 alpha-2; None where one maker alone is meant
    maker : spelt as on the sheet Makers; None where a country is meant
    """

    first: date
    last: date
    country: str | None = None
    maker: str | None = None
    why: str = AS_SET
    place: Place = field(default_factory=Place)


@dataclass(frozen=True, slots=True, kw_only=True)
class ScheduleSettings:
    """The table ``[schedule]``.

    As TOML::

        [schedule]
        receiving_days = 3             # your working days: unpack, count, check, pack
        clearance_days = "1-5"         # your country's working days; none where no customs border is crossed
        production_days = "15-25"      # once everything is approved; for makers that have not said
        production_counts = "working days"   # or "days": how Days of a quote are counted that says neither
        proof_days = 2                 # the maker's working days, to draw the proof
        approval_days = 2              # your working days, to look at a proof or a sample and answer
        sample_rounds = 1              # before the order; 0 for none
        sample_days = 10               # the maker's working days
        sample_post_days = "3-7"       # days
        long_holiday_days = 6          # so many days closed in a row are a long holiday
        stop_before_days = 5           # makers stop so many days before a long holiday …
        stop_after_days = 7            # … and begin so many days after it
        nearby_days = 25               # your working days, from an order nearby to your door
        ways = ["sea", "air"]          # for makers that have not said
        [schedule.transit]
        sea = "25-40"                  # days, door to door; one line a way
        [schedule.near_transit]
        road = "1-5"                   # the same from makers with no customs border between
        [schedule.spare_days]
        sea = 10                       # days kept spare; or one number for every way
        [schedule.regions]
        GB = "ENG"                     # holidays of one part of a country (ISO 3166-2)
        [[schedule.closures]]
        from = 2027-01-25
        to = 2027-02-20
        country = "CN"                 # or maker = "…"
        why = "longer stop, as the maker wrote"

    Parameters
    ----------
    given : the keys that the file gives; all others are assumed
    ways : empty where not given: as the border between the two countries suggests
    transit : by way, only those given
    near_transit : by way, only those given, before ``transit`` where no customs border lies between
    spare : by way, only those given
    """

    receiving_days: int = 3
    clearance_days: Days = Days(1, 5)
    production_days: Days = Days(15, 25)
    production_counts: Counts = "working days"
    proof_days: Days = Days(2, 2)
    approval_days: int = 2
    sample_rounds: int = 1
    sample_days: Days = Days(10, 10)
    sample_post_days: Days = Days(3, 7)
    long_holiday_days: int = 6
    stop_before_days: int = 5
    stop_after_days: int = 7
    nearby_days: int = 25
    ways: tuple[Way, ...] = ()
    transit: Mapping[Way, Days] = field(default_factory=dict)
    near_transit: Mapping[Way, Days] = field(default_factory=dict)
    spare: Mapping[Way, int] = field(default_factory=dict)
    regions: Mapping[str, str] = field(default_factory=dict)
    closures: tuple[OwnClosure, ...] = ()
    given: frozenset[str] = frozenset()
    source: str = ""

    def spare_days(self, way: Way) -> int:
        """Return the days that are kept spare on one way."""
        return self.spare.get(way, USUAL_SPARE[way])

    def origin(self, key: str) -> str:
        """Return where the figure of a key comes from, in words."""
        if key in self.given:
            return f"[schedule] {key}" + (f" ({self.source})" if self.source else "")
        return f"assumed: {COMMON}"
