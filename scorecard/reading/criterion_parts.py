"""The parts of a criterion: its value function, its bounds, its limit, and how a rating is steadied.

Enters: the criterion's table. Leaves: one part each, or None where it is absent or has a problem noted.
"""

from collections.abc import Sequence
from itertools import pairwise
from typing import Literal

from scorecard.criteria import Limit, Steady
from scorecard.reading.toml_tables import LONGEST_WORD, Table, checked_number, shown_value
from scorecard.value_functions import Choices, PiecewiseLinear
from scorecard.words import listed, nearest, shortest

Kind = Literal["numbers", "choices"] | None

LIMIT_KEYS = ("at_least", "at_most", "one_of", "none_of")
STEADY_KEYS = ("count_column", "usual", "usual_counts_as")
WORDS_FOR_UNKNOWN = ("", "-", "?", "n/a", "unknown")

_PAIR = 2


def folded(choice: str) -> str:
    """Return a choice as it is compared: without case and outer space."""
    return choice.strip().casefold()


def kind_of(table: Table) -> Kind:
    """Return whether a criterion's answers are numbers or choices; None where it has both or neither."""
    if ("points" in table) == ("choices" in table):
        return None
    return "numbers" if "points" in table else "choices"


def read_value(table: Table) -> PiecewiseLinear | Choices | None:
    """Return the value function."""
    points, choices = _knots(table), _choice_points(table)
    if "points" in table and "choices" in table:
        table.problem("points-and-choices", None, "the criterion has both points and choices",
                      "Keep points for numbers, or choices for words")  # fmt: skip
        return None
    if "points" not in table and "choices" not in table:
        table.problem("no-points", None, "the criterion has neither points nor choices",
                      "Add points for numbers, such as points = [[0, 0], [10, 100]], or choices for words")  # fmt: skip
    return points or choices


def stand_in(table: Table, kind: Kind) -> PiecewiseLinear | Choices:
    """Return what takes the place of a value function with a problem, so that the makers' answers can be checked.

    Any number, or any of the choices as they are spelt; no choices at all where it cannot be told what answers are.
    """
    if kind == "numbers":
        return PiecewiseLinear(((0.0, 0.0), (1.0, 100.0)))
    choices = table.values.get("choices") if kind == "choices" else None
    names = {folded(name): name for name in choices} if isinstance(choices, dict) else {}
    return Choices(tuple((name, 0.0) for key, name in names.items() if key not in WORDS_FOR_UNKNOWN))


def _knots(table: Table) -> PiecewiseLinear | None:
    """Return the points along straight lines."""
    listing = table.list_of("points")
    if listing is None:
        return None
    pairs = [_knot(table, number, item) for number, item in enumerate(listing, 1)]
    if len(listing) < _PAIR:
        table.problem("too-few-points", "points", "one pair makes no line", "Write two or more: [[0, 0], [10, 100]]")
    answers = [answer for answer, _ in pairs if answer is not None]
    for earlier, later in pairwise(answers):
        if later <= earlier:
            found = f"the answer {shortest(later)} comes after {shortest(earlier)}"
            table.problem(
                "points-not-increasing", "points", found, "Put the pairs in order of their first numbers, each once"
            )
    knots = [(answer, points) for answer, points in pairs if answer is not None and points is not None]
    is_increasing = all(earlier < later for earlier, later in pairwise(answers))
    return PiecewiseLinear(tuple(knots)) if len(knots) == len(listing) >= _PAIR and is_increasing else None


def _knot(table: Table, number: int, item: object) -> tuple[float | None, float | None]:
    """Return one pair of an answer and its points, each None where it is unsound."""
    if not isinstance(item, list) or len(item) != _PAIR:
        found = f"entry {number} is not a pair of an answer and its points"
        table.problem("not-a-pair", "points", found, "Write each as [answer, points], such as [3, 50]")
        return None, None
    answer, points = (checked_number(part, table.at("points"), table.notes) for part in item)
    return answer, points if _is_on_scale(table, "points", points) else None


def _is_on_scale(table: Table, key: str, points: float | None) -> bool:
    """Return whether points lie between 0 and 100."""
    if points is None or 0 <= points <= 100:
        return True
    found = f"{shortest(points)} points are not between 0 and 100"
    table.problem("points-outside-scale", key, found, "Write points from 0, the worst, to 100, the best")
    return False


def _choice_points(table: Table) -> Choices | None:
    """Return the points by a table of choices."""
    choices = table.table("choices")
    if choices is None:
        return None
    if not choices.values:
        table.problem("no-choices", "choices", "there are no choices", 'Write them with their points: { "free" = 100 }')
    _check_choice_names(table, list(choices.values))
    points = {name: _points_of(table, choices, name) for name in choices.values}
    sound = tuple((name, worth) for name, worth in points.items() if worth is not None)
    names = {folded(name) for name in points}
    is_clear = len(names) == len(points) == len(sound) and names.isdisjoint(WORDS_FOR_UNKNOWN)
    return Choices(sound) if sound and is_clear else None


def _points_of(table: Table, choices: Table, name: str) -> float | None:
    """Return the points of one choice."""
    points = checked_number(choices.values[name], table.at("choices"), table.notes)
    return points if _is_on_scale(table, "choices", points) else None


def _check_choice_names(table: Table, names: list[str]) -> None:
    """Note choices that read the same, and those that a cell uses to say that nothing is known."""
    first_of: dict[str, str] = {}
    for name in names:
        earlier = first_of.setdefault(folded(name), name)
        if earlier is not name:
            found = f"the choices {shown_value(earlier)} and {shown_value(name)} differ in case or outer space only"
            table.problem("choice-twice", "choices", found, "Keep one of the two")
        if folded(name) in WORDS_FOR_UNKNOWN:
            found = f"the choice {shown_value(name)} is how a cell says that nothing is known"
            table.problem("choice-means-unknown", "choices", found, 'Choose another word, such as "none"')


def read_within(table: Table, kind: Kind) -> tuple[float, float] | None:
    """Return the least and the greatest possible answer."""
    bounds = table.list_of("within")
    if bounds is None or not _fits(table, "within", kind, "numbers"):
        return None
    numbers = [checked_number(bound, table.at("within"), table.notes) for bound in bounds]
    low, high = [*numbers, None, None][:_PAIR]
    if None in numbers:
        return None
    if low is None or high is None or len(numbers) != _PAIR or low >= high:
        wanted = "Write the least and the greatest possible answer: within = [0, 5]"
        table.problem("not-two-bounds", "within", "these are not two increasing numbers", wanted)
        return None
    return low, high


def _fits(table: Table, key: str, kind: Kind, wanted: Kind) -> bool:
    """Return whether a part suits the criterion's kind of answers; where that cannot be told, nothing is noted."""
    if kind in (None, wanted):
        return kind is not None
    what, other = ("numbers", "words") if wanted == "numbers" else ("words", "numbers")
    found = f"'{key}' is for answers in {what}, and this criterion's are {other}"
    table.problem("wrong-kind-of-answers", key, found, "Delete it, or change the criterion to points or to choices")
    return False


def read_steady(table: Table, kind: Kind, within: tuple[float, float] | None) -> Steady | None:
    """Return how a rating is steadied."""
    steady = table.table("steady")
    if steady is None or not _fits(table, "steady", kind, "numbers"):
        return None
    steady.known_keys(STEADY_KEYS, "steady")
    steady.required(STEADY_KEYS, "steady")
    column, usual = steady.text("count_column"), steady.number("usual")
    counts_as = steady.number_above_zero("usual_counts_as")
    if usual is not None and within is not None and not within[0] <= usual <= within[1]:
        found = f"the usual answer {shortest(usual)} is outside {shortest(within[0])} to {shortest(within[1])}"
        steady.problem("usual-outside", "usual", found, "Write one that the line within allows")
    if column is None or usual is None or counts_as is None:
        return None
    return Steady(count_column=column, usual=usual, usual_counts_as=counts_as)


def read_limit(table: Table, kind: Kind, within: tuple[float, float] | None = None) -> Limit | None:
    """Return the hard requirement; one that no answer can meet is a problem.

    Parameters
    ----------
    table : the criterion's
    kind : of its answers
    within : the least and the greatest number that the limit can be put to; None where any will do
    """
    limit = table.table("limit")
    if limit is None:
        return None
    limit.known_keys(LIMIT_KEYS, "a limit")
    if not limit.values:
        wanted = "Write what must hold, such as limit = { at_least = 4 }, or delete the line"
        table.problem("empty-limit", "limit", f"the limit has none of {listed(LIMIT_KEYS)}", wanted)
        return None
    low, high = (_bound(limit, key, kind) for key in ("at_least", "at_most"))
    if low is not None and high is not None and low > high:
        found = f"nothing is at least {shortest(low)} and at most {shortest(high)}"
        table.problem("limit-allows-nothing", "limit", found, "Make at_least the smaller of the two")
    names = {folded(name): name for name in _choice_names(table)}
    one_of, none_of = (_named(limit, key, kind, names) for key in ("one_of", "none_of"))
    if within is not None:
        _check_reachable(limit, (low, high), within)
    _check_choices_left(limit, list(names.values()), one_of, none_of)
    return Limit(at_least=low, at_most=high, one_of=one_of, none_of=none_of)


def _check_reachable(limit: Table, bounds: tuple[float | None, float | None], within: tuple[float, float]) -> None:
    """Note an end of a limit that no permitted answer reaches."""
    for key, bound, end, beyond in zip(LIMIT_KEYS, bounds, within[::-1], (1, -1), strict=False):
        if bound is not None and (bound - end) * beyond > 0:
            low, high = (shortest(one) for one in within)
            found = f"{key} = {shortest(bound)} lets nobody in, since every answer is within {low} to {high}"
            limit.problem("limit-allows-nothing", key, found, f"Write a number from {low} to {high}")


def _check_choices_left(
    limit: Table, names: Sequence[str], one_of: tuple[str, ...] | None, none_of: tuple[str, ...] | None
) -> None:
    """Note a list of choices that leaves none to pass."""
    left = [name for name in names if (one_of is None or name in one_of) and name not in (none_of or ())]
    if names and none_of and not left:
        both = " that one_of lets in" if one_of else ""
        found = f"none_of names every choice{both}, so nobody can pass"
        limit.problem("limit-allows-nothing", "none_of", found, "Take out the choices that will do")


def _choice_names(table: Table) -> list[str]:
    """Return the criterion's choices as it spells them, sound or not."""
    choices = table.values.get("choices")
    return list(choices) if isinstance(choices, dict) else []


def _bound(limit: Table, key: str, kind: Kind) -> float | None:
    """Return one end of a limit."""
    number = limit.number(key)
    return number if number is not None and _fits(limit, key, kind, "numbers") else None


def _named(limit: Table, key: str, kind: Kind, names: dict[str, str]) -> tuple[str, ...] | None:
    """Return the choices that a limit names, as the criterion spells them."""
    listing = limit.list_of(key)
    if listing is None or not _fits(limit, key, kind, "choices"):
        return None
    for item in listing:
        if not isinstance(item, str):
            limit.problem(
                "not-a-text", key, f"{shown_value(item)} is not text", "Write choices between straight quotes"
            )
        elif folded(item) not in names:
            close = nearest(item, list(names.values())) if len(item) < LONGEST_WORD else None
            wanted = (
                f'Write "{close}" if that is meant'
                if close
                else f"The choices are {listed(map(shown_value, names.values()))}"
            )
            limit.problem("unknown-choice", key, f"{shown_value(item)} is not one of the choices", wanted)
    kept = tuple(names[folded(item)] for item in listing if isinstance(item, str) and folded(item) in names)
    return kept or None
