"""The tutorial, followed as it stands: what it says to type is typed, and what the screen then shows is put into it.

A line ``<!-- … -->``, which a reader does not see, says what is to be done with the block or table below it::

    <!-- ends with 3 -->                 the command below ends with this status, not with 0
    <!-- first 9 lines -->               of what the command below prints, these and the last are shown
    <!-- sheet Makers of FOLDER -->      type the table below: a maker that is there already gets the new cells
    <!-- lines of FILE -->               put these lines where those of the same keys stand, or else at the end
    <!-- picture FILE 1240 x 1748 -->    make a drawing of so many dots
    <!-- shown FILE -->                  the block below is what this text file holds
    <!-- NAME.png is FILE at SELECTOR --> the picture below shows this part of a page, as it is now
"""

import os
import re
import shlex
import subprocess
import sys
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from datetime import date
from pathlib import Path

import openpyxl
from PIL import Image, ImageDraw

DOCUMENTS = Path(__file__).parents[2] / "scorecard" / "documents"
TARGET = DOCUMENTS / "tutorial.md"
PROGRAM = ".venv/bin/scorecard"
HOME = "/home/mara"  # stands for the folder in which the story is played
MADE_AT = "1799582400"  # 2027-01-10: the time stamp on pages and workbooks

BLOCK = re.compile(
    r"^<!-- (?P<note>.*?) -->\n|^```(?P<language>\w+)\n(?P<code>.*?)^```\n|^(?P<table>(?:\|[^\n]*\n)+)",
    re.MULTILINE | re.DOTALL,
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Shot:
    """A picture of the tutorial: a page as it is at this place of the story, and the part of it that is shown."""

    name: str
    page: Path
    selector: str


Look = Callable[[Shot], None]


class Story:
    """The tutorial being followed in a folder."""

    def __init__(self, folder: Path, look: Look = lambda _: None) -> None:
        self._folder, self._look = folder, look
        self._note, self._said = "", ""
        self.ran: list[str] = []
        _install(folder)

    def told(self, text: str) -> str:
        """Return the tutorial with what the screen shows when it is followed."""
        return BLOCK.sub(self._step, text)

    def _step(self, found: re.Match[str]) -> str:
        note, language, code = self._note, found["language"], found["code"]
        self._note = found["note"] or ""
        whole = found[0]
        if found["note"]:
            self._do(found["note"])
        elif language == "sh":
            number = int(re.sub(r"\D", "", note) or 0)
            said = "".join(self._run(line, number if note.startswith("ends") else 0) for line in code.splitlines())
            self._said = _shortened(said, number) if note.startswith("first ") else said
        elif language == "text":
            shown = (
                self._file(note.removeprefix("shown ")).read_text("utf-8") if note.startswith("shown ") else self._said
            )
            whole = f"```text\n{shown.rstrip()}\n```\n"
        elif language == "toml" and note.startswith("lines of "):
            _put_lines(self._file(note.removeprefix("lines of ")), code)
        elif found["table"] and note.startswith("sheet "):
            sheet, _, folder = note.removeprefix("sheet ").partition(" of ")
            _type_in(self._file(folder) / "makers.xlsx", sheet, _rows(found["table"]))
        return whole

    def _do(self, note: str) -> None:
        """Do what a note says that needs no block below it."""
        if drawing := re.fullmatch(r"picture (\S+) (\d+) x (\d+)", note):
            _draw(self._file(drawing[1]), (int(drawing[2]), int(drawing[3])))
        elif shot := re.fullmatch(r"(\S+\.png) is (\S+) at (.+)", note):
            self._look(Shot(name=shot[1], page=self._file(shot[2]), selector=shot[3]))

    def _file(self, name: str) -> Path:
        return self._folder / name

    def _run(self, line: str, status: int) -> str:
        """Run one command, and return what the terminal shows."""
        words = shlex.split(line)
        if words[0] != PROGRAM:
            raise ValueError(f"not a command of the tool: {line}")
        env = {**os.environ, "PYTHONUNBUFFERED": "1", "SOURCE_DATE_EPOCH": MADE_AT}
        pipes = {"stdout": subprocess.PIPE, "stderr": subprocess.STDOUT, "encoding": "utf-8", "timeout": 120}
        done = subprocess.run(words, cwd=self._folder, env=env, **pipes)
        if done.returncode != status:
            raise AssertionError(f"{line}: ended with {done.returncode}, not {status}: {done.stdout}")
        self.ran.append(words[1])
        return done.stdout.replace(str(self._folder), HOME)


def _shortened(text: str, lines: int) -> str:
    """Return the first lines of a text, and the last."""
    shown = text.rstrip().split("\n")
    return "\n".join([*shown[:lines], "…", shown[-1]])


def _install(folder: Path) -> None:
    """Put the program where the set-up of the README puts it."""
    program = folder / PROGRAM
    program.parent.mkdir(parents=True)
    program.write_text(f"#!{sys.executable}\nfrom scorecard.cli import main\nmain()\n", "utf-8")
    program.chmod(0o755)


def _rows(table: str) -> Iterator[dict[str, object]]:
    """Yield the rows of a table, each value by its heading, as one would type it."""
    lines = [[cell.strip() for cell in line.strip()[1:-1].split("|")] for line in table.splitlines()]
    for line in lines[2:]:
        yield {heading: _typed(cell) for heading, cell in zip(lines[0], line, strict=True) if cell}


def _typed(cell: str) -> object:
    """Return what a spreadsheet makes of what is typed."""
    if re.fullmatch(r"\d{4}-\d{2}-\d{2}", cell):
        return date.fromisoformat(cell)
    return float(cell) if re.fullmatch(r"\d+(\.\d+)?", cell) else cell


def _type_in(workbook: Path, sheet: str, rows: Iterator[dict[str, object]]) -> None:
    """Type rows into a sheet: on Makers into the row of the maker, elsewhere below what is there."""
    book = openpyxl.load_workbook(workbook)
    page = book[sheet]
    columns = {cell.value: cell.column for cell in page[1]}
    for row in rows:
        names = [page.cell(number, 1).value for number in range(2, page.max_row + 2)]
        is_there = sheet in ("Makers", "Orders") and row["Maker"] in names
        number = 2 + names.index(row["Maker"] if is_there else None)
        for heading, value in row.items():
            page.cell(number, columns[heading]).value = value
    book.save(workbook)


def _put_lines(file: Path, lines: str) -> None:
    """Put each line into its table of a criteria file: in place of the line of its key, or else at the table's end."""
    tables = _tables(file.read_text("utf-8"))
    for header, body in _tables(lines).items():
        if header not in tables or header.startswith("[["):
            tables[header] = f"\n{body}"
            continue
        for line in filter(None, body.removeprefix(f"{header}\n").splitlines()):
            key = re.escape(line.partition("=")[0].strip())
            there = re.compile(rf"^(?:# )?{key} *=.*$", re.MULTILINE)
            tables[header], times = there.subn(lambda _, line=line: line, tables[header], count=1)
            if not times:
                tables[header] = f"{tables[header].rstrip()}\n{line}\n"
    file.write_text("".join(tables.values()), "utf-8")


def _tables(text: str) -> dict[str, str]:
    """Return the tables of a TOML text by their headers, those of an array numbered; what is above all under ''."""
    parts = re.split(r"^(?=\[)", text, flags=re.MULTILINE)
    found: dict[str, str] = {}
    for part in parts:
        header = part.partition("\n")[0].partition("#")[0].strip() if part.startswith("[") else ""
        found[f"{header}{len(found)}" if header.startswith("[[") else header] = part
    return found


def _draw(file: Path, size: tuple[int, int]) -> None:
    """Make a drawing: a bird of a few lines on paper."""
    picture = Image.new("RGB", size, "#F4EEDF")
    pen, (width, height) = ImageDraw.Draw(picture), size
    pen.ellipse((width * 0.25, height * 0.4, width * 0.75, height * 0.7), fill="#7A5C3E")
    pen.ellipse((width * 0.6, height * 0.3, width * 0.82, height * 0.46), fill="#7A5C3E")
    pen.polygon(
        [(width * 0.8, height * 0.36), (width * 0.93, height * 0.39), (width * 0.8, height * 0.41)], fill="#33312C"
    )
    picture.save(file, dpi=(300, 300))
