"""The commands that the tool suggests can be typed as they stand, and files hold no absolute path."""

import os
import shlex
import shutil
import subprocess
import sys
from io import BytesIO
from pathlib import Path

import openpyxl
import pytest
from process import scorecard

from scorecard.cli.invocation import Invocation, command, quoted, with_program


@pytest.fixture(scope="module")
def set_up(tmp_path_factory):
    folder = tmp_path_factory.mktemp("shop")
    starter = folder / ".venv" / "bin" / "scorecard"
    starter.parent.mkdir(parents=True)
    starter.write_text(f"#!{sys.executable}\nfrom scorecard.cli import main\nmain()\n", "utf-8")
    starter.chmod(0o755)
    typed(".venv/bin/scorecard demo shown", folder)
    return folder


@pytest.fixture
def shop(set_up, tmp_path):
    """A folder with the demo, in which the tool is started as .venv/bin/scorecard."""
    return shutil.copytree(set_up, tmp_path / "shop")


def typed(line, cwd):
    """Return what a shell makes of a line."""
    return subprocess.run(line, shell=True, cwd=cwd, capture_output=True, text=True, timeout=120)


def suggested(said):
    """Return the command at the end of what was said."""
    return said.stdout.rstrip().split("\n")[-1].partition(".venv/bin/scorecard ")[2]


def written_in(folder):
    """Return all text of a folder's files."""
    page = (folder / "reports" / "shortlist.html").read_text("utf-8")
    books = [openpyxl.load_workbook(path) for path in (folder / "makers.xlsx", folder / "reports" / "shortlist.xlsx")]
    cells = [str(cell.value) for book in books for sheet in book for row in sheet.iter_rows() for cell in row]
    return "\n".join([page, (folder / "criteria.toml").read_text("utf-8"), *cells])


@pytest.mark.parametrize("folder", ["mugs", "my mugs", "cups&saucers", "$HOME", "it's"])
def test_the_next_step_can_be_typed_as_it_stands(shop, folder):
    said = typed(f".venv/bin/scorecard start {shlex.quote(folder)}", shop)
    for name in ("criteria.toml", "makers.xlsx"):  # the demo's quotes need its rates of currencies
        shutil.copy(shop / "shown" / name, shop / folder / name)
    again = typed(f".venv/bin/scorecard {suggested(said)}", shop)

    assert (0, True) == (again.returncode, (shop / folder / "reports" / "shortlist.html").exists()), again.stderr


def test_page_workbooks_and_criteria_file_hold_commands_as_they_are_typed(shop):
    text = written_in(shop / "shown")

    assert ".venv/bin/scorecard reweigh performance_rating=10 --folder shown" in text  # the page
    assert "#     .venv/bin/scorecard score --folder shown" in text  # the criteria file
    assert "type in the terminal: .venv/bin/scorecard score --folder shown" in text  # the Guide
    assert "of the form .venv/bin/scorecard reweigh NAME=WEIGHT --save --folder shown" in text  # the Notes
    assert "with --save at its end it keeps these weights: .venv/bin/" in text  # the Shortlist's
    assert '&" --folder shown"' in text  # formula, in two parts


def test_the_command_on_the_page_runs(shop):
    again = typed(".venv/bin/scorecard reweigh performance_rating=10 --folder shown", shop)

    assert (0, True) == (again.returncode, "The leader stays" in again.stdout)


def test_files_hold_no_absolute_path(tmp_path):
    scorecard("demo", str(tmp_path / "shown"), cwd=tmp_path)

    assert str(tmp_path) not in written_in(tmp_path / "shown")
    assert sys.executable not in written_in(tmp_path / "shown")


def test_of_a_single_file_elsewhere_files_hold_its_name_alone():
    started = Invocation(program="scorecard", folder=Path("/home/anna/mugs"), makers=Path("/home/anna/list.csv"))

    assert "scorecard score --makers list.csv" == started.in_files().command("score")


def test_check_suggests_the_single_files_that_it_was_given(shop):
    said = typed(".venv/bin/scorecard check --criteria shown/criteria.toml --makers shown/makers.xlsx --rows 30", shop)

    assert "score --criteria shown/criteria.toml --makers shown/makers.xlsx --rows 30" == suggested(said)


def test_check_is_suggested_without_an_option_that_it_lacks():
    started = Invocation(program="scorecard", set_aside=True)

    assert ("scorecard check", "scorecard score --set-aside") == (started.command("check"), started.command("score"))


def test_problems_name_the_command_as_it_is_typed(shop):
    said = typed(".venv/bin/scorecard score --folder nowhere", shop)

    assert "with: .venv/bin/scorecard start FOLDER." in said.stderr


def test_one_warning_is_one_and_names_the_command_that_lists_it(shop):
    criteria = shop / "shown" / "criteria.toml"
    criteria.write_bytes(b"\xef\xbb\xbf" + criteria.read_bytes())
    said = typed(".venv/bin/scorecard score --folder shown", shop)

    assert "1 warning. To see it: .venv/bin/scorecard check --folder shown\n" == said.stderr


def test_started_as_a_module_it_is_suggested_so(tmp_path):
    link = tmp_path / "python"
    link.symlink_to(sys.executable)
    env = {**os.environ, "PYTHONPATH": os.pathsep.join(sys.path)}
    line = "./python -m scorecard check --folder nowhere"
    said = subprocess.run(line, shell=True, cwd=tmp_path, env=env, capture_output=True, text=True, timeout=60)

    assert "./python -m scorecard start FOLDER" in said.stderr


def test_a_name_that_the_system_finds_is_enough(shop):
    env = {**os.environ, "PATH": f"{shop / '.venv' / 'bin'}{os.pathsep}{os.environ['PATH']}"}
    said = subprocess.run(
        "scorecard check --folder nowhere", shell=True, cwd=shop, env=env, capture_output=True, text=True, timeout=60
    )

    assert "with: scorecard start FOLDER." in said.stderr


def test_in_a_program_of_somebody_elses_the_plain_name_is_suggested():
    assert "scorecard score --folder mugs" == command("score", Path("mugs"))


def test_other_words_after_the_name_are_left_alone():
    assert "the scorecard page" == with_program("the scorecard page")


@pytest.mark.skipif(os.name == "nt", reason="asks a POSIX shell")
@pytest.mark.parametrize("text", ["a", "a b", "a'b", 'a"b', "$(x)", "`x`", "a\\b", "a!b", "Žluť", "a;b", "(a)", ""])
def test_a_shell_reads_a_quoted_text_as_it_is(text):
    assert [text] == shlex.split(quoted(text))


def test_a_long_command_still_makes_a_workbook_that_opens(tmp_path):
    folder = "m" * 90
    scorecard("demo", folder, cwd=tmp_path)
    book = openpyxl.load_workbook(BytesIO((tmp_path / folder / "reports" / "shortlist.xlsx").read_bytes()))

    assert folder in str(book["Shortlist"]["A5"].value).replace('"&"', "")
