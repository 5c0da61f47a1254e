"""The README is true: every command in it runs, and every command and key of the tool stands in it."""

import ast
import re
import shlex
import subprocess
import sys
import tomllib
from pathlib import Path

import openpyxl
import pytest
from process import scorecard, watching

from scorecard.reading.criteria_file import parse_criteria

ROOT = Path(__file__).parent.parent
README = (ROOT / "README.md").read_text("utf-8")
BRIEF = """[brief]
item = "enamel mug"
quantity = 200
destination = "IE"
currency = "EUR"

[criteria.years]
weight = 1
points = [[0, 0], [10, 100]]
"""
SET_UP = ("python3 -m venv", "py -m venv", ".venv/bin/pip install")


def blocks(language):
    """Return the code blocks of one language, in order."""
    return re.findall(rf"^```{language}\n(.*?)^```", README, re.MULTILINE | re.DOTALL)


def commands():
    """Return every command line of the README that runs the tool, the set-up before it taken off."""
    lines = [line for block in (*blocks("sh"), *blocks("bat")) for line in block.splitlines()]
    parts = [part.strip() for line in lines if not line.startswith("#") for part in line.split("&&")]
    return [part.replace("\\", "/").replace("Scripts/", "bin/") for part in parts]


def example_rows():
    """Return the makers that the page has the reader type in, headings first."""
    lines = re.findall(r"^\| (?:Maker|Ferrybank|Gullstone).*$", README, re.MULTILINE)
    return [[cell.strip() for cell in line.strip("|").split("|")] for line in lines]


def type_in(workbook, rows):
    """Type rows into the sheet Makers, each value under its heading."""
    book = openpyxl.load_workbook(workbook)
    headings = [cell.value for cell in book["Makers"][1]]
    for number, row in enumerate(rows[1:], 2):
        for heading, value in zip(rows[0], row, strict=True):
            typed = float(value) if re.fullmatch(r"[\d.]+", value) else value
            book["Makers"].cell(number, headings.index(heading) + 1, typed)
    book.save(workbook)


def watched(*words, cwd):
    """Watch until the folder is scored, then press Ctrl-C."""
    with watching(*words, cwd=cwd) as watch:
        watch.until(" leads")
        return watch.stop()


def test_every_command_runs_in_the_order_of_the_page(tmp_path):
    ran = 0
    done: set[str] = set()
    for command in commands():
        if command.startswith((*SET_UP, ".venv/bin/pytest")) or "pip install" in command or command in done:
            continue
        done.add(command)
        assert command.startswith(".venv/bin/scorecard"), command
        words = shlex.split(command)[1:]
        said = watched(*words[1:], cwd=tmp_path) if words[0] == "watch" else scorecard(*words, cwd=tmp_path)
        assert (0, False) == (said.status, "Traceback" in said.err), (command, said)
        if words[0] == "start":
            type_in(tmp_path / "mugs" / "makers.xlsx", example_rows())
        ran += 1

    assert ran >= 7


def test_the_set_up_is_two_commands():
    first, second = blocks("sh")[:2]

    assert "python3 -m venv .venv && .venv/bin/pip install -e . && .venv/bin/scorecard demo" in first
    assert ".venv/bin/pip install -e '.[test]' && .venv/bin/pytest" in second


def test_the_python_example_runs(tmp_path):
    subprocess.run([sys.executable, "-m", "scorecard", "start", "mugs"], cwd=tmp_path, check=True, capture_output=True)
    type_in(tmp_path / "mugs" / "makers.xlsx", example_rows())
    (example,) = blocks("python")
    done = subprocess.run([sys.executable, "-c", example], cwd=tmp_path, capture_output=True, text=True, timeout=60)

    assert (0, True) == (done.returncode, "['Ferrybank Enamel']" in done.stdout), done.stderr


def test_every_command_stands_in_the_readme():
    from scorecard.cli.app import app

    for command in app.registered_commands:
        assert f"`scorecard {command.callback.__name__}" in README


@pytest.mark.parametrize("example", blocks("toml"))
def test_every_example_of_the_criteria_file_is_read_without_a_problem(example):
    whole = example if example.startswith("[brief]") else f"{BRIEF}\n{example}"

    assert () == parse_criteria(whole.encode(), "criteria.toml").problems


def test_links_to_the_other_documents_lead_somewhere():
    for name, anchor in re.findall(r"\]\((scorecard/documents/[^)#]+)#?([^)]*)\)", README):
        headings = re.findall(r"^#+ (.*)$", (ROOT / name).read_text("utf-8"), re.MULTILINE)
        anchors = {re.sub(r"[^\w -]", "", heading).lower().replace(" ", "-") for heading in headings}
        assert not anchor or anchor in anchors


def test_the_second_command_runs_every_test_file_without_the_peers():
    # it installs [test] alone: a file that needs a reference library as it is loaded would end it with an error
    extras = tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))["project"]["optional-dependencies"]
    peers = {re.match(r"[\w-]+", line)[0] for line in extras["peers"]} | {"skcriteria"}
    needing = {path.name for path in (ROOT / "tests").rglob("test_*.py") if not peers.isdisjoint(loaded_with(path))}

    assert "scipy" in peers
    assert set() == needing


def loaded_with(path):
    """Return the packages that a file loads as it is loaded itself."""
    imports = [
        node for node in ast.parse(path.read_text("utf-8")).body if isinstance(node, ast.Import | ast.ImportFrom)
    ]
    names = (
        node.module or "" if isinstance(node, ast.ImportFrom) else alias.name
        for node in imports
        for alias in node.names
    )
    return {name.partition(".")[0] for name in names}
