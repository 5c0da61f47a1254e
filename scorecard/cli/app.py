"""The app: its commands in the order in which a buyer meets them, and what ``scorecard`` alone does."""

import atexit
import gc
import os
import sys
from pathlib import Path
from typing import Annotated, Any

import typer
from typer.core import TyperCommand, TyperGroup

from scorecard import __version__
from scorecard.cli.commands import (
    artwork,
    care,
    check,
    cost,
    dates,
    demo,
    enquire,
    inspect,
    order,
    quantity,
    record,
    reweigh,
    score,
    start,
    watch,
)
from scorecard.cli.gate import gated, open_what_is_closed, replace_what_cannot_be_shown, told_where_unsaid
from scorecard.cli.invocation import HERE, Invocation, program, quoted

FIRST_DAY, TRYING, ASKING = "First day", "Trying weights", "Asking"
BUYING, ARRIVAL = "Buying", "Arrival"


FLAGS = {"--json", "--set-aside", "--with-contacts", "--sample", "--all"}  # options without a value


def _is_value(words: list[str], at: int) -> bool:
    """Say whether a word is the value of the option before it, such as a folder's name."""
    before = words[at - 1]
    return before.startswith("-") and before not in FLAGS and "=" not in before


def _on_folder(words: str, folder: str) -> str:
    """Return the command to type where a folder was named by its name alone."""
    return Invocation(program=program(), folder=Path(folder)).command(words)


class OneFolder(TyperCommand):
    """A command that says how a folder is named, and a name with spaces, where a word too many was typed."""

    def parse_args(self, ctx: Any, args: list[str]) -> list[str]:
        """Turn away words that the command does not take."""
        ctx.allow_extra_args = True
        left = super().parse_args(ctx, args)
        if left:
            ctx.fail(f"{' '.join(map(quoted, left))}: {self._advice(ctx, left)}")
        return left

    def _advice(self, ctx: Any, left: list[str]) -> str:
        if ctx.params.get("folder") == HERE:
            return f"a folder is named with --folder: {_on_folder(ctx.info_name, left[0])}"
        return f"{ctx.info_name} takes no further word; put a name that holds spaces in quotes."


class GroupedHelp(TyperGroup):
    """Help that lists the commands by the stage of the work."""

    def parse_args(self, ctx: Any, args: list[str]) -> list[str]:
        """Put the command first where options stand before it, or ``score`` where there are options alone."""
        if args and args[0].startswith("-") and not {"--help", "--version"} & set(args):
            at = next((at for at, word in enumerate(args) if word in self.commands and not _is_value(args, at)), None)
            args = ["score", *args] if at is None else [args[at], *args[:at], *args[at + 1 :]]
        return super().parse_args(ctx, args)

    def resolve_command(self, ctx: Any, args: list[str]) -> Any:
        """Find the command; a folder in its place is told how it is named."""
        if args and args[0] not in self.commands and Path(args[0]).is_dir():
            words = args[1] if args[1:] and args[1] in self.commands else "score"
            ctx.fail(f"{quoted(args[0])} is a folder, and is named after the command: {_on_folder(words, args[0])}")
        return super().resolve_command(ctx, args)

    def list_commands(self, ctx: Any) -> list[str]:  # noqa: ARG002 - the caller gives it
        """Return the commands in the order in which they were added."""
        return list(self.commands)

    def format_commands(self, ctx: Any, formatter: Any) -> None:
        """Write the commands, a section for each stage."""
        stages: dict[str, list[tuple[str, str]]] = {}
        for name in self.list_commands(ctx):
            command = self.commands[name]
            stage = str(getattr(command, "rich_help_panel", None) or "Commands")
            stages.setdefault(stage, []).append((name, command.get_short_help_str(100)))
        for stage, rows in stages.items():
            with formatter.section(stage):
                formatter.write_dl(rows)


app = typer.Typer(
    cls=GroupedHelp,
    add_completion=False,
    rich_markup_mode=None,
    pretty_exceptions_enable=False,
    invoke_without_command=True,
    help="Rank the makers in your spreadsheet, and see how firm the choice is.\n\nFor example: scorecard demo",
    epilog="In a sourcing folder, scorecard alone does what scorecard score does, and takes its options.",
)


def _show_version(wanted: bool) -> None:
    if wanted:
        typer.echo(f"scorecard {__version__}")
        raise typer.Exit


@app.callback()
def alone(
    ctx: typer.Context,
    version: Annotated[  # noqa: ARG001 - its callback does the work
        bool, typer.Option("--version", help="Print the version and stop.", callback=_show_version, is_eager=True)
    ] = False,
) -> None:
    """Score the folder it is run in, where no command is named."""
    if ctx.invoked_subcommand is not None:
        return
    if any(Path(name).exists() for name in ("criteria.toml", "criteria.toml.txt", "makers.xlsx", "makers.csv")):
        gated(score)()
        return
    typer.echo(ctx.get_help())
    name = program()
    typer.echo(f"\nNext: {name} demo, to see it at work, or {name} start FOLDER, for goods of your own")


for stage, command, example in (
    (FIRST_DAY, demo, "scorecard demo"),
    (FIRST_DAY, start, "scorecard start mugs --kind enamelware"),
    (FIRST_DAY, check, "scorecard check --folder mugs"),
    (FIRST_DAY, score, "scorecard score --folder mugs"),
    (TRYING, reweigh, "scorecard reweigh print_method=30 years=10"),
    (TRYING, watch, "scorecard watch --folder mugs"),
    (ASKING, enquire, "scorecard enquire --folder mugs"),
    (BUYING, cost, "scorecard cost --folder mugs"),
    (BUYING, quantity, "scorecard quantity --folder mugs"),
    (BUYING, dates, "scorecard dates --folder mugs"),
    (BUYING, artwork, "scorecard artwork --folder mugs north-light.png"),
    (BUYING, order, "scorecard order --folder mugs Brightholm"),
    (ARRIVAL, inspect, "scorecard inspect --folder mugs"),
    (ARRIVAL, care, "scorecard care --folder mugs Brightholm"),
    (ARRIVAL, record, "scorecard record --folder mugs Brightholm"),
):
    app.command(cls=OneFolder, rich_help_panel=stage, epilog=f"For example: {example}")(gated(command))


def _build_alone(words: list[str]) -> None:
    """Leave out all commands but the one named, if any: building each takes a part of every run."""
    named = [one for one in app.registered_commands if one.callback and one.callback.__name__ in words]
    app.registered_commands = named or app.registered_commands


def main() -> None:
    """Run the command line."""
    open_what_is_closed()
    _build_alone(sys.argv[1:2])
    replace_what_cannot_be_shown()
    gc.disable()  # a run is short, and nearly all that it makes is needed to the end
    atexit.register(gc.freeze)  # nor is there anything to look through when it ends
    os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")  # the products are small: more threads only wait for one another
    with told_where_unsaid():
        app()
