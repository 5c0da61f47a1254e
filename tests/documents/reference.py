"""The reference: every command, key, column, message and result of the tool, as one text, made from the code.

Leaves: the text of ``scorecard/documents/reference.md``; meanings of keys come from ``keys.toml`` beside this module.
"""

import json
import tomllib
from collections.abc import Iterable, Iterator, Sequence
from datetime import date, datetime, time
from importlib import import_module
from io import BytesIO
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

import typer
from documents.messages import Message, findings, messages
from openpyxl import load_workbook

from scorecard.assessment import assess
from scorecard.brief import Brief
from scorecard.cli.app import app
from scorecard.cli.laying_out import lay_out_demo
from scorecard.costing.charges import PARTS
from scorecard.letters.values import PLACEHOLDERS
from scorecard.reading.criteria_file import read_criteria
from scorecard.reading.folder import read_folder
from scorecard.reading.headings import TYPED_MEASURES
from scorecard.workbooks.entry_columns import LATER_SHEETS, MAY_HOLD, Column, EntrySheet
from scorecard.workbooks.entry_makers import entry_sheets
from scorecard.workbooks.results import results_workbook
from scorecard.workbooks.results_view import HEAD

ROOT = Path(__file__).parents[2]
AS_OF = date(2026, 11, 25)
TARGET = ROOT / "scorecard" / "documents" / "reference.md"

# each table of the criteria file: its name in keys.toml, where the reader keeps its keys, how the page heads it
TABLES = (
    ("file", "criteria_file.TOP_KEYS", "At the top of the file"),
    ("brief", "brief_table.BRIEF_KEYS", "`[brief]` – what is wanted"),
    ("criterion", "criterion_table.CRITERION_KEYS", "`[criteria.NAME]` – one thing that makers are compared on"),
    ("limit", "criterion_parts.LIMIT_KEYS", "`limit` of a criterion – a hard requirement"),
    ("steady", "criterion_parts.STEADY_KEYS", "`steady` of a criterion – ratings from few buyers"),
    ("weights", "weights_table.WEIGHTS_KEYS", "`[weights]` – weights from judgements"),
    ("firmness", "brief_table.FIRMNESS_KEYS", "`[firmness]` – weightings near yours"),
    ("currencies", "cost_tables.CURRENCIES_KEYS", "`[currencies]` – rates"),
    ("import", "import_table.IMPORT_KEYS", "`[import]` – duty and import tax"),
    ("supplied", "import_table.SUPPLIED_KEYS", "`[[import.supplied]]` – what you give the maker free"),
    ("shipping", "cost_tables.SHIPPING_KEYS", "`[shipping.sea]`, or another way – how that way counts"),
    ("cost", "cost_tables.COST_KEYS", "`[cost]` – what else belongs to the cost"),
    (
        "charge",
        "charges_table.CHARGE_KEYS",
        "`[[shipping.charges]]`, `[[import.charges]]`, `[[cost.charges]]` – charges",
    ),
    ("schedule", "schedule_table.SCHEDULE_KEYS", "`[schedule]` – how many days each step takes"),
    ("closure", "schedule_table.CLOSURE_KEYS", "`[[schedule.closures]]` – days on which makers are closed"),
    ("selling", "selling_table.SELLING_KEYS", "`[selling]` – what a piece sells for"),
    ("demand", "selling_table.DEMAND_KEYS", "`demand` of `[selling]` – how many may sell"),
    ("inspection", "arrival_tables.INSPECTION_KEYS", "`[inspection]` – how you check what arrives"),
    ("care", "arrival_tables.CARE_KEYS", "`[care]` – what kind of goods these are"),
    ("order", "order_table.ORDER_KEYS", "`[order]` – what no quote holds"),
    ("design", "order_table.DESIGN_KEYS", "`[[order.designs]]` – a design where it differs"),
)
MEASURED = {
    "response_days": "working days (Monday to Friday) from Asked on to Answered on",
    "landed_cost_per_piece": "what a good piece costs at your door by the way that stands for the maker; from the "
    "sheets Quotes and Freight",
    "days_to_door": "days of production and of transit as quoted, added up, by the same way; `days_to_door` of a "
    "schedule are calendar days, with clearance, weekends and closures",
    "sample_marks": "marks from 0 to 10, from the sheet Samples",
    "on_time_share": "of 100 own orders, those that came by the promised day; from the sheet Orders and what is kept",
    "faulty_share": "of 100 pieces of own orders that were opened, those with any fault, minor ones too; likewise",
}
TAKES = {"integer": "NUMBER", "integer range": "NUMBER", "float range": "NUMBER"}
STATUSES = (
    ("0", "done; warnings do not change it"),
    ("1", "the tool itself failed, or an output could not be written"),
    ("2", "the command was put wrongly"),
    ("3", "the files have problems, and all of them were listed"),
)
# where messages stand: modules by the beginning of their path, the first that fits
PLACES = (
    ("reading/pictures.py", "Artwork files"),
    ("letters/wording.py", "Your own texts of messages (enquiry-….txt)"),
    ("reading/memory_file.py", "What is kept of your orders (memory.json)"),
    *(
        (f"reading/{name}", "The folder and its files")
        for name in ("folder", "gatekeeper", "guarded", "criteria_bytes")
    ),
    *((f"reading/{name}", "The folder and its files") for name in ("workbook_cells", "csv_cells")),
    *(
        (f"reading/{name}", "The criteria file, at a key")
        for name in ("criteria", "criterion", "toml", "weights_table")
    ),
    *((f"reading/{name}_table", "The criteria file, at a key") for name in ("brief", "charges", "import", "order")),
    *((f"reading/{name}_table", "The criteria file, at a key") for name in ("schedule", "selling")),
    *((f"reading/{name}", "The criteria file, at a key") for name in ("cost_tables", "arrival_tables", "once_filled")),
    *(
        (f"reading/{name}", "The criteria file or a sheet, once both are read")
        for name in ("cost_inputs", "date_inputs")
    ),
    *((f"reading/{name}", "Quotes, Freight, Samples, Checks, Orders: at a cell") for name in ("sheet_table", "quotes")),
    *((f"reading/{name}", "Quotes, Freight, Samples, Checks, Orders: at a cell") for name in ("freight", "dealing")),
    ("reading/orders", "Quotes, Freight, Samples, Checks, Orders: at a cell"),
    ("reading/", "The sheet Makers, and cells of any sheet"),
    ("costing/", "Quotes, Freight, Samples, Checks, Orders: at a cell"),
    ("", "When a command needs more"),
)


def reference() -> str:
    """Return the whole text."""
    parts = (_beginning(), _commands(), _criteria(), _workbook(), _texts(), _messages(), _results())
    return "\n\n".join("\n".join(part) for part in parts) + "\n"


def known_keys(where: str) -> tuple[str, ...]:
    """Return the keys that a reader knows, such as those of "brief_table.BRIEF_KEYS"."""
    module, _, name = where.partition(".")
    return tuple(getattr(import_module(f"scorecard.reading.{module}"), name))


def meanings() -> dict[str, dict[str, str]]:
    """Return what every key means, by its table."""
    return tomllib.loads((Path(__file__).parent / "keys.toml").read_text("utf-8"))


def table(headings: Sequence[str], rows: Iterable[Sequence[str]]) -> Iterator[str]:
    """Yield the lines of a table."""
    yield f"| {' | '.join(headings)} |"
    yield f"|{'---|' * len(headings)}"
    for row in rows:
        yield f"| {' | '.join(cell.replace('|', chr(92) + '|').replace(chr(10), ' ') for cell in row)} |"


def _beginning() -> Iterator[str]:
    yield "# Reference"
    yield ""
    yield "Every command, every key of the criteria file, every column of the workbook, every message and every"
    yield "machine-readable result. Made from the code; … stands for what differs from case to case."
    yield ""
    yield "[Commands](#commands) · [Criteria file](#the-criteria-file) · [Workbook](#the-workbook) ·"
    yield "[Texts to makers](#texts-to-makers) · [Messages](#messages) · [Results for programs](#results-for-programs)"


def _commands() -> Iterator[str]:
    group = typer.main.get_command(app)
    yield "## Commands"
    yield ""
    yield "`scorecard` alone in a sourcing folder does what `scorecard score` does, and takes its options. Exit status:"
    yield ""
    yield from table(("status", "means"), STATUSES)
    for name, command in group.commands.items():  # type: ignore[attr-defined]
        words = [_argument(one) for one in command.params if one.param_type_name == "argument"]
        yield f"\n### `{' '.join(('scorecard', name, *words))}`\n"
        yield f"{command.rich_help_panel}. {command.help}\n"
        yield from table(("option", "does"), map(_parameter, command.params))
        example = command.epilog.removeprefix("For example: ")
        yield f"\nFor example: `{example}`"


def _argument(one: Any) -> str:
    name = one.metavar or one.name.upper()
    many = " …" if one.nargs == -1 and not name.endswith("...") else ""
    return name + many if one.required or name.startswith("[") else f"[{name}]"


def _parameter(one: Any) -> tuple[str, str]:
    if one.param_type_name == "argument":
        return f"`{_argument(one)}`", one.help
    names = ", ".join(f"`{name}`" for name in (*one.opts, *one.secondary_opts))
    takes = "" if one.is_flag else f" {TAKES.get(one.type.name, one.type.name.upper())}"
    usual = one.default if isinstance(one.default, int | float) and not one.is_flag else None
    return f"{names}{takes}", one.help + ("" if usual is None else f" Not given: {usual}.")


def _criteria() -> Iterator[str]:
    told = meanings()
    yield "## The criteria file"
    yield ""
    yield "`criteria.toml` is plain text: `key = value` sets one thing, a line in square brackets begins a table, what"
    yield "follows `#` is a note to yourself. All keys may be left out, but for those marked required."
    for name, where, heading in TABLES:
        yield f"\n### {heading}\n"
        yield from table(("key", "means"), ((f"`{key}`", told[name][key]) for key in known_keys(where)))
        if name == "charge":
            yield f"\nThe parts of the journey: {', '.join(PARTS)}."
        if name == "criterion":
            yield from _measures()


def _measures() -> Iterator[str]:
    yield "\nThe measures. A typed answer, in a column of the sheet Makers that is headed as below, wins.\n"
    rows = ((f"`{name}`", heading, MEASURED[name]) for name, heading in TYPED_MEASURES.items())
    yield from table(("measure", "heading", "worked out as"), rows)


def _workbook() -> Iterator[str]:
    yield "## The workbook"
    yield ""
    yield "`makers.xlsx`, as `scorecard start` lays it out; its sheet Guide says the same. A `.csv` is the sheet Makers"
    yield "alone. Order of columns and sheets is free, headings match whatever their case, other columns are your own."
    kinds = [read_criteria(path) for path in sorted((ROOT / "criteria").glob("*.toml"))]
    columns: dict[str, list[Column]] = {}
    for read in kinds:
        for column in entry_sheets(read.criteria, Brief(item="goods", quantity=1))[0].columns:
            columns.setdefault(column.heading, []).append(column)
    yield "\n### Sheet Makers\n"
    yield "One row per maker that you found. The columns of criteria are those of the criteria files that come with the"
    yield "tool; yours has those that your own file names.\n"
    rows = (_column(of[0], is_alike=len({column.options for column in of}) == 1) for of in columns.values())
    yield from table(("column", "means", "unit", "when, and where to find it", "a cell holds"), rows)
    for sheet in LATER_SHEETS:
        yield from _sheet(sheet)
    yield "\n### The results workbook\n"
    yield "`reports/shortlist.xlsx`, made anew by every `scorecard score`. Its columns, as the demo has them; the sheet"
    yield "Notes says what they mean.\n"
    yield from table(("sheet", "holds", "columns"), _results_sheets())


def _results_sheets() -> Iterator[tuple[str, str, str]]:
    """Yield each sheet of the demo's results workbook, what it says at its head, and its columns."""
    with TemporaryDirectory() as folder:
        lay_out_demo(Path(folder) / "demo", AS_OF)
        case = read_folder(Path(folder) / "demo", as_of=AS_OF)
    titles = tuple(criterion.title for criterion in case.criteria.criteria)
    made = results_workbook(assess(case, as_of=AS_OF), made=datetime.combine(AS_OF, time()))
    for sheet in load_workbook(BytesIO(made)):
        headings = dict.fromkeys(str(cell.value) for cell in sheet[HEAD + 1] if cell.value)
        own = ["each criterion" if heading.startswith(titles) else heading for heading in headings]
        about = "The ranking, and the weights to try" if sheet.title == "Shortlist" else str(sheet["A2"].value)
        yield sheet.title, about, "" if sheet.title == "Notes" else "; ".join(dict.fromkeys(own))


def _sheet(sheet: EntrySheet) -> Iterator[str]:
    yield f"\n### Sheet {sheet.name}\n"
    yield f"Leave it empty until quotes come. {sheet.about}.\n"
    yield from table(("column", "means", "unit", "where to find it", "a cell holds"), map(_column, sheet.columns))


def _column(column: Column, *, is_alike: bool = True) -> tuple[str, ...]:
    """Return a column's line; its choices only where all kinds of goods have the same."""
    options = "; ".join(column.options)
    holds = f"One of: {options}" if options and is_alike else MAY_HOLD[column.kind]
    where = f"{column.when}. {column.where}" if column.when else column.where
    return column.heading, column.meaning, column.unit, where, holds


def _texts() -> Iterator[str]:
    yield "## Texts to makers"
    yield ""
    yield "Placeholders in `enquiry-short.txt`, `enquiry-full.txt` and `enquiry-reminder.txt`. A line whose placeholder"
    yield "has nothing to say is left out; for a plain brace, write it twice.\n"
    yield from table(("placeholder", "stands for"), ((f"`{{{name}}}`", told) for name, told in PLACEHOLDERS.items()))


def _messages() -> Iterator[str]:
    yield "## Messages"
    yield ""
    yield "Each message names its file and cell or key, then says what was found and what to write instead. In `--json`"
    yield "each has its code. A problem stops the run, with status 3, once all of them are listed; where it is an"
    yield "answer that cannot be read, `--set-aside` takes it as unknown. A warning stops nothing."
    found = messages()
    for place in dict.fromkeys(place for _, place in PLACES):
        here = [one for one in found if place_of(one) == place]
        yield f"\n### {place}\n"
        yield from table(("code", "", "what was found", "what to write instead"), _rows(here))
    yield "\n### What is said of artwork\n"
    rows = sorted({(f"`{one.code}`", " / ".join(one.found)) for one in findings()})
    yield from table(("code", "what it says"), rows)


def place_of(message: Message) -> str:
    """Return where a message stands, by the module that makes it."""
    return next(place for beginning, place in PLACES if message.module.startswith(beginning))


def _rows(found: Iterable[Message]) -> list[tuple[str, ...]]:
    rows = {
        (f"`{one.code}`", "warning" if one.warns else "problem", " / ".join(one.found), " / ".join(one.wanted))
        for one in found
    }
    return sorted(rows)


def _results() -> Iterator[str]:
    yield "## Results for programs"
    yield ""
    yield "With `--json` a command prints one JSON object in place of words; with status 3 this is `schema` and"
    yield "`problems`. The JSON Schema of each lies in the package, in `scorecard/schemas/`."
    yield ""
    yield from table(
        ("command", "schema", "file", "keys"), map(_result, sorted((ROOT / "scorecard/schemas").iterdir()))
    )


def _result(path: Path) -> tuple[str, ...]:
    result = json.loads(path.read_text("utf-8"))["$defs"]["result"]
    keys = ", ".join(f"`{key}`" for key in result["properties"])
    return f"`scorecard {path.stem}`", f"`{result['properties']['schema']['const']}`", f"`{path.name}`", keys
