"""``quantity``: how many to order, every quoted maker at every real order size, and what follows from it."""

from typing import TYPE_CHECKING

import typer

from scorecard.assessment import Assessment, assess
from scorecard.cli.gate import show_json
from scorecard.cli.scoring import Inputs, refuse_nobody, tell_case, tell_warnings
from scorecard.cli.tables import as_text, plain, visible, wrapped
from scorecard.quantity_results import plan_for, quantity_result, sizes_alone

if TYPE_CHECKING:
    from scorecard.ordering.options import Option
    from scorecard.ordering.plan import Plan

HEADINGS = ("Maker", "Pieces", "Because", "In all", "A good piece of it", "One that sells", "Margin", "Back after")


def quantity_folder(inputs: Inputs, *, as_json: bool) -> None:
    """Print how many to order, and why."""
    case = inputs.read()
    refuse_nobody(case)
    assessment = assess(case, as_of=inputs.day())
    if as_json:
        show_json(quantity_result(assessment))
        return
    tell_case(assessment.case, assessment.as_of)
    plan = plan_for(assessment)
    if plan is not None and plan.makers:
        tell_plan(plan)
    else:
        typer.echo(nothing_yet(assessment))
        tell_sizes(assessment)
    tell_warnings(assessment.case, inputs)
    typer.echo(f"Next: {next_step(assessment, plan, inputs)}")


def nothing_yet(assessment: Assessment) -> str:
    """Return why there is nothing to say yet."""
    costed = assessment.case.costed
    if costed is None or not costed.costs:
        return "Nothing is quoted yet: once a reply is written into the sheet Quotes, one line is enough."
    if assessment.case.selling is None:
        return "The criteria file does not say what a piece sells for, so no quantity can be weighed."
    return "No ranked maker is quoted yet."


def next_step(assessment: Assessment, plan: "Plan | None", inputs: Inputs) -> str:
    """Return what to do next."""
    costed = assessment.case.costed
    if costed is None or not costed.costs or (plan is not None and not plan.makers):
        return f"ask for quotes: {inputs.started.command('enquire')}"
    if plan is None:
        return "add [selling] to the criteria file, with a line such as: price = 18.00"
    demand = plan.selling.demand
    if demand is not None and not demand.is_spread and (demand.low, demand.high) != (None, None):
        return f"add to demand of [selling] what may sell at the {'high' if demand.high is None else 'low'} end"
    if demand is None or not demand.is_spread:
        return "add to [selling] what may sell, such as: demand = { low = 120, likely = 180, high = 260 }"
    if plan.best is None:
        return f"find out what is missing: {inputs.started.command('cost')}"
    return f"see it drawn, beside the scores: {inputs.started.command('score')}"


def tell_plan(plan: "Plan") -> None:
    """Print a plan: what holds of all, the table of sizes, and what is said of each maker."""
    from scorecard.quantity_words import maker_words, plan_words
    from scorecard.size_words import MARGIN_IS

    for words in plan_words(plan):
        _tell(words)
    rows = [_row(option) for one in plan.makers for option in one.options]
    typer.echo("\n" + as_text([HEADINGS, *rows], right=frozenset({1, 3, 4, 5, 6, 7})))
    _tell(MARGIN_IS)
    _tell_left(plan)
    for one in plan.makers:
        typer.echo(f"\n{visible(one.maker)}")
        for words in maker_words(plan, one):
            _tell(words, "   ")
    typer.echo("")


def _tell_left(plan: "Plan") -> None:
    """Print what each size leaves at each demand, and on average where an average is taken of several."""
    options = [option for one in plan.makers for option in one.options]
    demands = [outcome.demand for outcome in options[0].outcomes.values()]
    average = ("On average",) if len(options[0].promised) > 1 else ()
    heads = ("Left after everything", "Pieces", *(f"{demand} asked for" for demand in demands), *average)
    typer.echo("\n" + as_text([heads, *map(_left_row, options)], right=frozenset(range(1, len(heads)))))


def _left_row(option: "Option") -> tuple[str, ...]:
    from scorecard.size_words import left_cells

    return (visible(option.maker), str(option.pieces), *left_cells(option))


def tell_sizes(assessment: Assessment) -> None:
    """Print what each size costs, where the price that the pieces sell for is not given."""
    from scorecard.quantity_words import cheapest_words, over_words
    from scorecard.size_words import at_least_words

    plan = sizes_alone(assessment)
    options = [option for one in plan.makers for option in one.options] if plan else []
    if plan is None or not options:
        return
    rows = [("Maker", "Pieces", "Because", "In all", "A good piece of it")]
    for option in options:
        total, each = (at_least_words(option, ends) for ends in (option.total, option.per_good))
        rows.append((visible(option.maker), str(option.pieces), ", ".join(option.size.whys), total, each))
    typer.echo("\n" + as_text(rows, right=frozenset({1, 3, 4})) + "\n")
    for words in [*over_words(plan), *cheapest_words(plan)]:
        _tell(words)


def _row(option: "Option") -> tuple[str, ...]:
    from scorecard.codes import money_range
    from scorecard.size_words import at_least_words, margin_words

    home = option.cost.readings[0].situation.inputs.rates.home
    needed = option.break_even[1]
    known = option.is_complete
    return (
        visible(option.maker),
        str(option.pieces),
        ", ".join(option.size.whys),
        at_least_words(option, option.total),
        at_least_words(option, option.per_good),
        money_range(*option.per_likely, home) if known else "–",
        margin_words(option).removeprefix("margin ") if known else "–",
        str(needed) if known and needed is not None else "–",
    )


def _tell(words: str, margin: str = "") -> None:
    """Print a sentence, broken into lines."""
    typer.echo("\n".join(wrapped(f"{plain(words)}.", margin)))
