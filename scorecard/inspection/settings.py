"""What the criteria file says of inspection: the faults to count by, and how a sample is judged."""

from collections.abc import Mapping
from dataclasses import field

from scorecard.frozen import dataclass
from scorecard.inspection.faults import Kind, TallyLine, fault_list
from scorecard.inspection.sampling_tables import Level

USUAL_LIMITS: Mapping[Kind, float] = {"critical": 0.0, "major": 2.5, "minor": 4.0}
"""The setting most seen in consumer goods: common practice, as inspection firms' pages say."""


@dataclass(frozen=True, slots=True, kw_only=True)
class InspectionSettings:
    """The table ``[inspection]``.

    As TOML::

        [inspection]
        critical = ["sharp edge"]     # could hurt somebody, or may not be sold at all
        major = ["chipped enamel"]    # cannot be sold as what was ordered
        minor = ["speck"]             # can be sold, though it is not as approved
        level = "II"                  # general inspection level: "I", "II" or "III"
        major_limit = 2.5             # faulty pieces of 100; critical_limit and minor_limit likewise
        seed = 1                      # which pieces are drawn

    Parameters
    ----------
    faults : names by kind; a kind that is not there keeps the usual ones
    limits : faulty pieces of 100 by kind: a column of the tables, or 0 where none is allowed
    seed : 0 or more
    """

    faults: Mapping[Kind, tuple[str, ...]] = field(default_factory=dict)
    level: Level = "II"
    limits: Mapping[Kind, float] = field(default_factory=lambda: dict(USUAL_LIMITS))
    seed: int = 1

    @property
    def lines(self) -> tuple[TallyLine, ...]:
        """The lines of the tally sheet."""
        return fault_list(self.faults)
