"""What is already paid to a maker: shown beside the sum, and in no total."""

from scorecard.costing.entries import Situation
from scorecard.costing.maker_entries import bought_sample
from scorecard.costing.sums import Line, as_line


def spent_lines(situation: Situation) -> tuple[Line, ...]:
    """Return sample and postage where the maker's sample is paid for; none else."""
    if situation.facts.maker not in situation.inputs.settings.sampled:
        return ()
    low, high = bought_sample(situation, "low"), bought_sample(situation, "high")
    return tuple(as_line(least, most) for least, most in zip(low, high, strict=True))
