"""``reweigh``: another weighting, old and new ranking side by side, and the weights saved where that is asked for."""

import re
from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from pathlib import Path
from typing import Any

import typer

from scorecard.assessment import Assessment, assess
from scorecard.cli.gate import show_json
from scorecard.cli.invocation import HERE, quoted, with_program
from scorecard.cli.scoring import Inputs, refuse_nobody, tell_case
from scorecard.cli.tables import as_text, visible
from scorecard.criteria import CriteriaSet
from scorecard.criteria_edit import save_weights
from scorecard.errors import UsageError
from scorecard.figures import figure
from scorecard.reading.cells import Fault
from scorecard.reading.number_text import NumberRule, read_amount, tidy
from scorecard.sentences import leader_change, reservation
from scorecard.words import listed, nearest, rounded, shortest

SHORT = 15  # makers in the table on the screen


def reweigh_folder(inputs: Inputs, typed: Sequence[str], *, save: bool, as_json: bool) -> None:
    """Assess a folder with its own and with other weights, print both, and save the weights where asked to."""
    _refuse_folder(inputs, typed)
    case = inputs.read()
    refuse_nobody(case)
    how = _how_to_change(case.criteria)
    weights = named_weights(typed, case.criteria)
    if save and how:
        raise UsageError(f"--save: {how}")
    own = of_hundred(case.criteria)
    before = assess(case.with_criteria(own), as_of=inputs.day())
    after = assess(case.with_criteria(changed(own, weights)), as_of=inputs.day())
    kept = save_weights(inputs.criteria or inputs.folder / "criteria.toml", weights) if save else None
    if as_json:
        show_json(reweigh_result(before, after))
        return
    tell_case(case, inputs.day())
    tell_both(before, after)
    if how:
        typer.echo(f"Nothing is saved. {how}")
        typer.echo("Next: other weights, or another judgement in the criteria file")
    elif kept is not None:
        typer.echo(f"Saved; the file as it was is kept as {kept.name}.")
        typer.echo(f"Next: {inputs.started.command('score')}")
    else:
        typer.echo("Nothing is saved; the same command with --save keeps these weights.")
        typer.echo("Next: other weights, or the same with --save")


def _refuse_folder(inputs: Inputs, typed: Sequence[str]) -> None:
    """Turn away a folder that is named like a criterion."""
    folder = next((word for word in typed if "=" not in word and Path(word).is_dir()), None)
    if folder is not None and inputs.folder == HERE:
        rest = " ".join(quoted(word) for word in typed if word != folder)
        there = replace(inputs, folder=Path(folder)).started.command(f"reweigh {rest}".rstrip())
        raise UsageError(f"{folder}: a folder is named with --folder: {there}")


def named_weights(typed: Sequence[str], criteria: CriteriaSet) -> dict[str, float]:
    """Return weights by criterion key from words such as ``rating=30``.

    Raises
    ------
    UsageError
        If a word has no "=", names no criterion or several, or has no weight of 0 or more: all of them, in one message.
    """
    apart = joined(typed)
    if apart is not None:
        raise UsageError(f"{' '.join(typed)}: write criterion, = and weight without spaces between them: {apart}")
    weights: dict[str, float] = {}
    faults: list[str] = []
    for word in typed:
        name, equals, number = word.partition("=")
        try:
            key = criterion_key(name, criteria)
            if key in weights:
                faults.append(f"{word}: {criteria[key].title} is given twice.")
            weights[key] = weight_of(word, number if equals else "", key)
        except UsageError as fault:
            faults.append(str(fault))
    if faults:
        raise UsageError("\n".join(faults))
    return weights


def joined(typed: Sequence[str]) -> str | None:
    """Return words such as ``years 10`` and ``years = 10`` as they must be typed; None where that is not what is wrong.

    Examples
    --------
    >>> joined(["years", "10", "print", "=", "5,5"]), joined(["years=10"]), joined(["years", "ten"])
    ('years=10 print=5,5', None, None)
    """
    text = re.sub(r"\s*=\s*", "=", " ".join(typed))
    words = re.sub(r"(?<!\S)([^\s=]+) (\d[\d.,]*)(?!\S)", r"\1=\2", text).split(" ")
    is_mended = all(re.fullmatch(r"[^\s=]+=[\d.,]+", word) for word in words)
    return " ".join(words) if is_mended and words != list(typed) else None


def _how_to_change(criteria: CriteriaSet) -> str:
    """Return how weights from judgements are changed for good; "" where they are typed."""
    judged = {
        "ranks": "an order of importance: to keep others, change the list `ranks` under [weights] in the criteria "
        "file, most important first",
        "pairs": "comparisons by pairs: to keep others, change the numbers in `pairs` under [weights] in the criteria "
        "file (3 means that the first is three times as important)",
    }
    found = judged.get(criteria.note.method)
    return with_program(f"The weights in the file come from {found}, and run scorecard score again.") if found else ""


def of_hundred(criteria: CriteriaSet) -> CriteriaSet:
    """Return the same criteria, with weights from judgements as parts of 100, beside which others can be typed."""
    if criteria.note.method == "typed":
        return criteria
    return criteria.with_weights({key: 100 * share for key, share in criteria.shares.items()})


def criterion_key(name: str, criteria: CriteriaSet) -> str:
    """Return the key of the criterion that a name means; case does not matter.

    Its key or title decides, then the heading of its column, then a beginning of any of these that fits no other.
    """
    wanted = name.strip().casefold()
    names = {one.key: (one.key.casefold(), one.title.casefold()) for one in criteria}
    headings = {one.key: ((one.column or "").casefold(),) for one in criteria}
    known = {key: (*names[key], *headings[key]) for key in names}
    found = (
        _fitting(names, wanted.__eq__)
        or _fitting(headings, wanted.__eq__)
        or _fitting(known, lambda one: one.startswith(wanted))
    )
    if len(found) == 1 and wanted:
        return found[0]
    if found and wanted:
        raise UsageError(f"{name}: this could be {listed(found, 'or')}. Write more of the name.")
    close = nearest(name, [*criteria.keys, *(criterion.title for criterion in criteria)])
    hint = f"Did you mean {close}? " if close else ""
    raise UsageError(f"{name}: no criterion begins so. {hint}The criteria are {listed(criteria.keys)}.")


def _fitting(names: Mapping[str, Sequence[str]], fits: Callable[[str], bool]) -> list[str]:
    return [key for key, known in names.items() if any(map(fits, known))]


def weight_of(word: str, number: str, key: str) -> float:
    """Return a weight of the criterion with this key, typed on the command line."""
    weight = read_amount(tidy(number), NumberRule())
    if isinstance(weight, Fault) and weight.code == "ambiguous-number":
        raise UsageError(f"{word}: {weight.found}. Write the weight without a mark for thousands, such as {key}=30.")
    if isinstance(weight, Fault) or not 0 <= weight < float("inf"):
        raise UsageError(f"{word}: write a criterion, =, and a weight of 0 or more, such as {key}=30.")
    return weight


def changed(criteria: CriteriaSet, weights: dict[str, float]) -> CriteriaSet:
    """Return criteria with other weights; all weights 0 is a wrong usage."""
    if not any(weights.get(criterion.key, criterion.weight) > 0 for criterion in criteria):
        raise UsageError("All weights would be 0. Leave at least one above 0.")
    return criteria.with_weights(weights)


def tell_both(before: Assessment, after: Assessment) -> None:
    """Print shares and ranking before and after, and whether the leader changes."""
    typer.echo(_weights_table(before, after))
    total = sum(after.case.criteria.typed_weights.values())
    if abs(total - 100) > 1e-9:
        typer.echo(f"The weights now add up to {shortest(round(total, 6))}; shown as shares of 100.")
    typer.echo("")
    typer.echo(_ranking_table(before, after))
    change = leader_change(before, after)
    typer.echo(" ".join(f"{one}." for one in (change, reservation(after)) if one))


def _weights_table(before: Assessment, after: Assessment) -> str:
    rows = [("Criterion", "Weight", "Share", "New weight", "New share")]
    pairs = zip(before.case.criteria, before.shares, after.case.criteria, after.shares, strict=True)
    for old, old_share, new, new_share in pairs:
        shares = rounded(100 * old_share), rounded(100 * new_share)
        weights = shortest(round(old.weight, 4)), shortest(round(new.weight, 4))
        rows.append((old.title, weights[0], shares[0], weights[1], shares[1]))
    return as_text(rows, right=frozenset({1, 2, 3, 4}))


def _ranking_table(before: Assessment, after: Assessment) -> str:
    rows = [("Maker", "Rank", "Score", "New rank", "New score")]
    for maker in after.ranking.order[:SHORT]:
        old, new = before.ranking, after.ranking
        ranks, scores = (
            (str(one.ranks[maker]) for one in (old, new)),
            (rounded(one.scores[maker]) for one in (old, new)),
        )
        (old_rank, new_rank), (old_score, new_score) = ranks, scores
        rows.append((visible(after.case.table.makers[maker]), old_rank, old_score, new_rank, new_score))
    return as_text(rows, right=frozenset({1, 2, 3, 4}))


def reweigh_result(before: Assessment, after: Assessment) -> dict[str, Any]:
    """Return what ``scorecard reweigh --json`` prints."""
    return {
        "schema": "scorecard-reweigh/1",
        "title": after.case.title,
        "as_of": after.as_of.isoformat(),
        "leader_changes": before.ranking.leaders != after.ranking.leaders,
        "before": _side(before),
        "after": _side(after),
        "set_aside": [one.as_json() for one in after.case.set_aside],
        "warnings": [one.as_json() for one in after.case.warnings],
    }


def _side(assessment: Assessment) -> dict[str, Any]:
    result = assessment.as_json()
    kept = ("typed_weights", "shares", "leaders", "leader", "margin")
    makers = [{key: maker[key] for key in ("maker", "status", "rank", "score")} for maker in result["makers"]]
    return {**{key: result[key] for key in kept}, "weights_sum": _sum(assessment), "makers": makers}


def _sum(assessment: Assessment) -> float:
    return figure(sum(assessment.case.criteria.typed_weights.values()))
