"""The criteria: what makers are compared on, with weight, value function, limit and what an unknown counts as.

Enters: what the criteria file says, already checked one by one. Leaves: a set whose names are unique and whose
weights can be shared out.
"""

from collections.abc import Iterator, Mapping
from dataclasses import field, replace
from math import fsum, inf
from types import MappingProxyType
from typing import Literal

from scorecard.frozen import dataclass
from scorecard.value_functions import Choices, PiecewiseLinear

UnknownRule = Literal["worst", "middle", "best"] | float


@dataclass(frozen=True, slots=True, kw_only=True)
class Limit:
    """A hard requirement.

    Parameters
    ----------
    at_least, at_most : numbers in the criterion's unit (after ``per``); None where there is no such end
    one_of, none_of : choices as the criteria file spells them; None where not given
    """

    at_least: float | None = None
    at_most: float | None = None
    one_of: tuple[str, ...] | None = None
    none_of: tuple[str, ...] | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Steady:
    """How far a rating from few ratings is drawn to a usual one: (n·r + m·u) / (n + m).

    Parameters
    ----------
    count_column : heading of the column that says how many ratings there are (n)
    usual : the usual rating (u)
    usual_counts_as : how many ratings the usual one counts as (m), above 0
    """

    count_column: str
    usual: float
    usual_counts_as: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Criterion:
    """One thing that makers are compared on.

    Parameters
    ----------
    key : its name in the criteria file
    title : its name on screens and pages
    weight : as typed, at least 0
    value : the value function
    column : heading of the column of the Makers sheet that it draws on; None where it draws on a measure
    measure : name of the measure that it draws on; None where it draws on a column
    unit : of its answers, such as "days"; "" where there is none
    per_quantity : whether an answer is divided by the pieces of the unit that the maker's minimum is per
    within : least and greatest possible answer; None where any number will do
    unknown : what counts in the score for unknown and ranged answers
    question : what a message asks a maker, in the user's own words; None where the tool words it
    """

    key: str
    title: str
    weight: float
    value: PiecewiseLinear | Choices
    column: str | None = None
    measure: str | None = None
    unit: str = ""
    per_quantity: bool = False
    within: tuple[float, float] | None = None
    limit: Limit | None = None
    steady: Steady | None = None
    unknown: UnknownRule = "middle"
    question: str | None = None

    @property
    def choices(self) -> tuple[str, ...] | None:
        """The choices as the criteria file spells them; None for a criterion with numbers."""
        return self.value.names() if isinstance(self.value, Choices) else None


@dataclass(frozen=True, slots=True, kw_only=True)
class WeightsNote:
    """Where weights that were not typed come from: a ranking of the criteria, or comparisons by pairs.

    Parameters
    ----------
    method : "typed", "ranks" or "pairs"
    ratio, lambda_max : the consistency ratio and the principal eigenvalue (pairs only)
    random_index : the name of the table of random indices (pairs only)
    """

    method: Literal["typed", "ranks", "pairs"] = "typed"
    ratio: float | None = None
    lambda_max: float | None = None
    random_index: str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Firmness:
    """How "near" weightings are drawn, and from which seed."""

    spread: float = 0.25
    seed: int = 1


@dataclass(frozen=True, slots=True)
class CriteriaSet:
    """The criteria in the order of the file.

    Raises
    ------
    ValueError
        If two criteria have one key, there is none, a weight is negative or no finite number, or all weights are 0.
    """

    criteria: tuple[Criterion, ...]
    note: WeightsNote = field(default_factory=WeightsNote)

    def __post_init__(self) -> None:
        if len(set(self.keys)) != len(self.criteria) or not self.criteria:
            raise ValueError("a criteria set needs at least one criterion, each with a key of its own")
        weights = list(self.typed_weights.values())
        if not all(0 <= weight < inf for weight in weights) or not any(weights):
            raise ValueError("weights must be finite, 0 or more, and at least one above 0")

    def __iter__(self) -> Iterator[Criterion]:
        return iter(self.criteria)

    def __len__(self) -> int:
        return len(self.criteria)

    def __getitem__(self, key: str) -> Criterion:
        return self.criteria[self.keys.index(key)]

    @property
    def keys(self) -> tuple[str, ...]:
        """The criteria's keys in the order of the file."""
        return tuple(criterion.key for criterion in self.criteria)

    @property
    def typed_weights(self) -> Mapping[str, float]:
        """Weight as typed, by key."""
        return MappingProxyType({criterion.key: criterion.weight for criterion in self.criteria})

    @property
    def shares(self) -> Mapping[str, float]:
        """Weight as a part of 1, by key: weight over the sum of weights."""
        whole = fsum(self.typed_weights.values())
        return MappingProxyType({key: weight / whole for key, weight in self.typed_weights.items()})

    def with_weights(self, weights: Mapping[str, float]) -> "CriteriaSet":
        """Return the same criteria with other weights for the keys that are named."""
        changed = tuple(replace(c, weight=float(weights.get(c.key, c.weight))) for c in self.criteria)
        return replace(self, criteria=changed)
