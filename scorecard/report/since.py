"""What changed since the run before, as rows of words."""

from collections.abc import Callable
from typing import Any

from scorecard.frozen import dataclass
from scorecard.report.texts import isolate
from scorecard.words import listed, rounded

MOST = 12  # makers told of
MOST_NAMED = 3  # other makers that moved a rank
LEAST = 0.05  # points of score: a smaller part is not named
TOO_LITTLE = "less than 0.05 of a point"
PARTS = (
    ("answers", "new answers"),
    ("weights", "other weights"),
    ("value_functions_and_brief", "value functions, brief, rates, settings or the day"),
)
CAUSES = {
    "limits": "another limit",
    "answers": "a new answer",
    "value_functions_and_brief": "the brief, rates or settings",
}
MOVERS = (
    ("new", "is new", "are new"),
    ("gone", "is no longer there", "are no longer there"),
    ("ruled_out", "is ruled out now", "are ruled out now"),
    ("let_in", "is no longer ruled out", "are no longer ruled out"),
    ("passed", "fell behind it", "fell behind it"),
    ("passed_by", "passed it", "passed it"),
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Change:
    """One maker's change, in words."""

    maker: str
    rank: str
    score: str
    due_to: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Since:
    """What changed since the run before: who leads, makers that came and went, and the first changes of score."""

    sentences: tuple[str, ...]
    changes: tuple[Change, ...]
    more: int


def since_of(result: dict[str, Any]) -> Since | None:
    """Return what changed, or None where there was no other run before."""
    found = result.get("since_last_time")
    if found is None:
        return None
    changes = [_change(one) for one in found["makers"]]
    more = max(0, len(changes) - MOST)
    return Since(sentences=sentences_of(found, isolate), changes=tuple(changes[:MOST]), more=more)


def sentences_of(found: dict[str, Any], shown: Callable[[str], str]) -> tuple[str, ...]:
    """Return who led and leads, and which makers came and went, each as a sentence; names as ``shown`` gives them."""
    before, now = (listed(map(shown, found[key])) or "nobody" for key in ("leaders_before", "leaders_now"))
    led = f"{now} led then too" if before == now else f"{before} led then, {now} now"
    came = [
        f"{what}: {listed(map(shown, found[key][:MOST]))}{_and_more(len(found[key]))}."
        for key, what in (("new", "New"), ("gone", "No longer there"))
        if found[key]
    ]
    return (f"Since the run of {found['compared_with']}: {led}.", *came)


def _and_more(number: int) -> str:
    return f" and {number - MOST} more" if number > MOST else ""


def _change(one: dict[str, Any]) -> Change:
    ranks = [_rank(one[key]) for key in ("rank_before", "rank")]
    scores = [rounded(one[key]) for key in ("score_before", "score")]
    return Change(
        maker=isolate(one["maker"]),
        rank=ranks[1] if ranks[0] == ranks[1] else f"{ranks[0]} → {ranks[1]}",
        score=scores[1] if scores[0] == scores[1] else f"{scores[0]} → {scores[1]}",
        due_to="; ".join(filter(None, (due_words(one["due_to"]), rank_words(one["rank_due_to"])))) or TOO_LITTLE,
    )


def _rank(rank: int | None) -> str:
    return "ruled out" if rank is None else str(rank)


def due_words(parts: dict[str, float]) -> str:
    """Return what a change of score is due to, each part with its sign; "" where all are too small to see."""
    named = [f"{words} {_signed(parts[key])}" for key, words in PARTS if abs(parts[key]) >= LEAST]
    return ", ".join(named)


def rank_words(due: dict[str, list[str]]) -> str:
    """Return what changed a rank; "" where it is the same."""
    if due["causes"]:
        return f"{listed(CAUSES.get(cause, CAUSES['limits']) for cause in due['causes'])}"
    moved = [_moved(due[key], one, more) for key, one, more in MOVERS if due[key]]
    return f"rank: {', '.join(moved)}" if moved else ""


def _moved(names: list[str], one: str, more: str) -> str:
    shown, left = [isolate(name) for name in names[:MOST_NAMED]], len(names) - MOST_NAMED
    told = listed([*shown, f"{left} more"] if left > 0 else shown)
    return f"{told} {one if len(names) == 1 else more}"


def _signed(number: float) -> str:
    return f"{'+' if number > 0 else '−'}{rounded(abs(number))}"
