"""The commands: each parses, calls one thing, and prints."""

from pathlib import Path
from typing import Annotated

import typer

Folder = Annotated[Path, typer.Option("--folder", help="The sourcing folder; without it, the folder you are in.")]
CriteriaFile = Annotated[Path | None, typer.Option("--criteria", help="A criteria file by itself (.toml).")]
MakersFile = Annotated[Path | None, typer.Option("--makers", help="A makers file by itself (.xlsx or .csv).")]
AsOf = Annotated[str | None, typer.Option("--as-of", help="The day that stands for today, such as 2026-11-25.")]
SetAside = Annotated[bool, typer.Option("--set-aside", help="Take cells that cannot be read as unknown.")]
AsJson = Annotated[bool, typer.Option("--json", help="Print the machine-readable result instead of words.")]
WithContacts = Annotated[bool, typer.Option("--with-contacts", help="Put contact details and notes on the page.")]
Rows = Annotated[
    int, typer.Option("--rows", min=1, help="Read up to so many rows; above 20,000 only the 200 best are written.")
]

MakerName = Annotated[str, typer.Argument(metavar="MAKER", help="The maker; a beginning that fits no other will do.")]

HERE = Path()


def demo(
    folder: Annotated[Path, typer.Argument(help="Where to lay it out; it must not hold anything yet.")] = Path("demo"),
    as_of: AsOf = None,
    as_json: AsJson = False,
) -> None:
    """Lay out an example folder and score it: the whole tool in one command."""
    from scorecard.cli.gate import show_json
    from scorecard.cli.laying_out import lay_out_demo
    from scorecard.cli.scoring import Inputs, score_folder, written

    inputs = Inputs(folder=folder, as_of=as_of)
    laid_out = lay_out_demo(folder, inputs.day())
    if as_json:
        show_json(laid_out.result | {"score": written(inputs)[1]})
    else:
        typer.echo(laid_out.words)
        score_folder(inputs, as_json=False)


def start(
    folder: Annotated[Path, typer.Argument(help="The new folder; it must not hold anything yet.")],
    kind: Annotated[str | None, typer.Option("--kind", help="What kind of goods; any beginning of its name.")] = None,
    before: Annotated[
        Path | None, typer.Option("--from", help="Start from a folder of before: its makers and facts, not its prices.")
    ] = None,
    as_of: AsOf = None,
    as_json: AsJson = False,
) -> None:
    """Begin a new sourcing folder: a criteria file and a workbook to fill in."""
    from scorecard.cli.gate import show_json
    from scorecard.cli.laying_out import lay_out_start

    if before is not None:
        from scorecard.cli.scoring import Inputs
        from scorecard.cli.starting_again import lay_out_again

        laid_out = lay_out_again(folder, Inputs(folder=before, as_of=as_of), kind)
    else:
        laid_out = lay_out_start(folder, kind)
    if as_json:
        show_json(laid_out.result)
    else:
        typer.echo(laid_out.words)


def check(
    folder: Folder = HERE,
    criteria: CriteriaFile = None,
    makers: MakersFile = None,
    as_of: AsOf = None,
    rows: Rows = 20_000,
    as_json: AsJson = False,
) -> None:
    """Read everything, list every problem and warning, change nothing."""
    from scorecard.cli.scoring import Inputs, check_folder

    inputs = Inputs(folder=folder, criteria=criteria, makers=makers, as_of=as_of, rows=rows)
    check_folder(inputs, as_json=as_json)


def score(
    folder: Folder = HERE,
    criteria: CriteriaFile = None,
    makers: MakersFile = None,
    as_of: AsOf = None,
    set_aside: SetAside = False,
    with_contacts: WithContacts = False,
    rows: Rows = 20_000,
    as_json: AsJson = False,
) -> None:
    """Rank the makers: the verdict, a short table, the report and the results workbook."""
    from scorecard.cli.scoring import Inputs, score_folder

    inputs = Inputs(folder=folder, criteria=criteria, makers=makers, as_of=as_of, set_aside=set_aside, rows=rows)
    score_folder(inputs, with_contacts=with_contacts, as_json=as_json)


def reweigh(
    weights: Annotated[
        list[str], typer.Argument(metavar="NAME=WEIGHT", help="A criterion's key, title or column, and a weight.")
    ],
    folder: Folder = HERE,
    criteria: CriteriaFile = None,
    makers: MakersFile = None,
    as_of: AsOf = None,
    set_aside: SetAside = False,
    save: Annotated[
        bool, typer.Option("--save", help="Write the weights to the criteria file; the old one is kept.")
    ] = False,
    rows: Rows = 20_000,
    as_json: AsJson = False,
) -> None:
    """Try other weights: old and new ranking side by side."""
    from scorecard.cli.reweighing import reweigh_folder
    from scorecard.cli.scoring import Inputs

    inputs = Inputs(folder=folder, criteria=criteria, makers=makers, as_of=as_of, set_aside=set_aside, rows=rows)
    reweigh_folder(inputs, weights, save=save, as_json=as_json)


def cost(
    folder: Folder = HERE,
    criteria: CriteriaFile = None,
    makers: MakersFile = None,
    as_of: AsOf = None,
    set_aside: SetAside = False,
    rows: Rows = 20_000,
    as_json: AsJson = False,
) -> None:
    """Say what a good piece costs at your door, per maker and way, and what is missing."""
    from scorecard.cli.costing import cost_folder
    from scorecard.cli.scoring import Inputs

    inputs = Inputs(folder=folder, criteria=criteria, makers=makers, as_of=as_of, set_aside=set_aside, rows=rows)
    cost_folder(inputs, as_json=as_json)


def quantity(
    folder: Folder = HERE,
    criteria: CriteriaFile = None,
    makers: MakersFile = None,
    as_of: AsOf = None,
    set_aside: SetAside = False,
    rows: Rows = 20_000,
    as_json: AsJson = False,
) -> None:
    """Say how many to order: price breaks, break-even, what may stay unsold, cash."""
    from scorecard.cli.quantifying import quantity_folder
    from scorecard.cli.scoring import Inputs

    inputs = Inputs(folder=folder, criteria=criteria, makers=makers, as_of=as_of, set_aside=set_aside, rows=rows)
    quantity_folder(inputs, as_json=as_json)


def artwork(
    files: Annotated[list[Path], typer.Argument(metavar="FILE", help="PNG, JPEG, TIFF or PDF; one for each design.")],
    folder: Folder = HERE,
    criteria: CriteriaFile = None,
    width: Annotated[
        float | None, typer.Option("--width", min=0.1, help="Printed width in mm, in place of the brief's.")
    ] = None,
    height: Annotated[
        float | None, typer.Option("--height", min=0.1, help="Printed height in mm, in place of the brief's.")
    ] = None,
    bleed: Annotated[
        float | None, typer.Option("--bleed", min=0, help="What is printed beyond each edge and cut off, in mm.")
    ] = None,
    dpi: Annotated[float, typer.Option("--dpi", min=1, help="Dots per inch that a sharp print needs.")] = 300,
    colours: Annotated[
        int | None, typer.Option("--colours", min=1, help="How many colours the price covers, if priced per colour.")
    ] = None,
    as_json: AsJson = False,
) -> None:
    """Say whether artwork prints sharply at the size in the brief."""
    from scorecard.cli.artworking import Wish, check_artwork

    wish = Wish(
        folder=folder,
        criteria=criteria,
        width_mm=width,
        height_mm=height,
        bleed_mm=bleed,
        dpi=dpi,
        colours=colours,
    )
    check_artwork(files, wish, as_json=as_json)


def dates(
    folder: Folder = HERE,
    criteria: CriteriaFile = None,
    makers: MakersFile = None,
    as_of: AsOf = None,
    set_aside: SetAside = False,
    maker: Annotated[
        str | None, typer.Option("--maker", help="This one alone; a beginning that fits no other will do.")
    ] = None,
    rows: Rows = 20_000,
    as_json: AsJson = False,
) -> None:
    """Say by when to order, per maker and way of shipping, and how orders under way stand."""
    from scorecard.cli.dating import tell_dates
    from scorecard.cli.scoring import Inputs

    inputs = Inputs(folder=folder, criteria=criteria, makers=makers, as_of=as_of, set_aside=set_aside, rows=rows)
    tell_dates(inputs, maker, as_json=as_json)


def watch(
    folder: Folder = HERE,
    criteria: CriteriaFile = None,
    makers: MakersFile = None,
    as_of: AsOf = None,
    set_aside: SetAside = False,
    with_contacts: WithContacts = False,
    rows: Rows = 20_000,
    as_json: AsJson = False,
) -> None:
    """Score again whenever a file is saved; an open report follows."""
    from scorecard.cli.scoring import Inputs
    from scorecard.cli.watching import watch_folder

    inputs = Inputs(folder=folder, criteria=criteria, makers=makers, as_of=as_of, set_aside=set_aside, rows=rows)
    watch_folder(inputs, with_contacts=with_contacts, as_json=as_json)


def enquire(
    folder: Folder = HERE,
    criteria: CriteriaFile = None,
    makers: MakersFile = None,
    as_of: AsOf = None,
    set_aside: SetAside = False,
    maker: Annotated[
        str | None,
        typer.Option(
            "--maker", help="Put this one first, also one that is ruled out; a beginning that fits no other will do."
        ),
    ] = None,
    remind_after: Annotated[
        int, typer.Option("--remind-after", min=0, help="A reminder is due after more than so many working days.")
    ] = 3,
    templates: Annotated[
        bool, typer.Option("--templates", help="Write the wording into the folder for you to edit, and stop.")
    ] = False,
    with_contacts: WithContacts = False,
    rows: Rows = 20_000,
    as_json: AsJson = False,
) -> None:
    """Write to makers: what is still unknown of each, and who is due a reminder."""
    from scorecard.cli.enquiring import Wish, enquire_folder, lay_out_templates
    from scorecard.cli.scoring import Inputs

    if templates:
        lay_out_templates(folder)
        return
    inputs = Inputs(folder=folder, criteria=criteria, makers=makers, as_of=as_of, set_aside=set_aside, rows=rows)
    wish = Wish(maker=maker, remind_after=remind_after, with_contacts=with_contacts)
    enquire_folder(inputs, wish, as_json=as_json)


def inspect(
    counts: Annotated[
        list[str] | None,
        typer.Argument(metavar="[FAULT=PIECES]...", help="Faulty pieces by the sheet's codes (B2=4), or major=7."),
    ] = None,
    folder: Folder = HERE,
    criteria: CriteriaFile = None,
    makers: MakersFile = None,
    as_of: AsOf = None,
    maker: Annotated[
        str | None, typer.Option("--maker", help="Whose order; without it, the one that came last and is not counted.")
    ] = None,
    row: Annotated[int | None, typer.Option("--row", min=2, help="Which order: its row in the sheet Orders.")] = None,
    arrived: Annotated[
        int | None, typer.Option("--arrived", help="How many pieces arrived; without it, as many as were ordered.")
    ] = None,
    per_carton: Annotated[
        int | None, typer.Option("--per-carton", help="Pieces in a full carton, where the sheet Freight does not say.")
    ] = None,
    sample: Annotated[bool, typer.Option("--sample", help="Open a sample, as above 500 pieces in any case.")] = False,
    everything: Annotated[bool, typer.Option("--all", help="Open all, above 500 pieces too.")] = False,
    opened: Annotated[int | None, typer.Option("--opened", help="How many pieces you opened and counted.")] = None,
    seed: Annotated[int | None, typer.Option("--seed", min=0, help="Draw other pieces for the sample.")] = None,
    as_json: AsJson = False,
) -> None:
    """Count what arrived on a printed sheet, then see what to claim and until when."""
    from scorecard.cli.inspecting import Wish, inspect_folder
    from scorecard.cli.scoring import Inputs

    wish = Wish(
        maker=maker,
        row=row,
        arrived=arrived,
        per_carton=per_carton,
        sample=sample,
        everything=everything,
        opened=opened,
        counts=tuple(counts or ()),
        seed=seed,
    )
    inspect_folder(Inputs(folder=folder, criteria=criteria, makers=makers, as_of=as_of), wish, as_json=as_json)


def care(
    maker: MakerName,
    folder: Folder = HERE,
    criteria: CriteriaFile = None,
    makers: MakersFile = None,
    as_of: AsOf = None,
    as_json: AsJson = False,
) -> None:
    """Lay out printable care cards from what a maker answered."""
    from scorecard.cli.caring import write_care_cards
    from scorecard.cli.scoring import Inputs

    write_care_cards(Inputs(folder=folder, criteria=criteria, makers=makers, as_of=as_of), maker, as_json=as_json)


def order(
    maker: MakerName,
    folder: Folder = HERE,
    criteria: CriteriaFile = None,
    makers: MakersFile = None,
    as_of: AsOf = None,
    set_aside: SetAside = False,
    way: Annotated[
        str | None, typer.Option("--way", help="The way of shipping; without it, the one that stands for the maker.")
    ] = None,
    as_json: AsJson = False,
) -> None:
    """Lay out the order sheet of a maker, and say what it still lacks."""
    from scorecard.cli.order_sheets import write_order_sheet
    from scorecard.cli.scoring import Inputs

    inputs = Inputs(folder=folder, criteria=criteria, makers=makers, as_of=as_of, set_aside=set_aside)
    write_order_sheet(inputs, maker, way, as_json=as_json)


def record(
    maker: MakerName,
    folder: Folder = HERE,
    criteria: CriteriaFile = None,
    makers: MakersFile = None,
    as_of: AsOf = None,
    set_aside: SetAside = False,
    as_json: AsJson = False,
) -> None:
    """Keep what really happened to a maker's orders, for the next order."""
    from scorecard.cli.recording import record_orders
    from scorecard.cli.scoring import Inputs

    inputs = Inputs(folder=folder, criteria=criteria, makers=makers, as_of=as_of, set_aside=set_aside)
    record_orders(inputs, maker, as_json=as_json)
