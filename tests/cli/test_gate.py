"""Failures as sentences, and output in any encoding."""

import json

import pytest
from builders import makers_csv
from process import scorecard
from typer.testing import CliRunner

from scorecard.cli.app import app

NAMES = ("Møllebro Čistá 工房", "Plain & Co")
CODE_PAGES = ("cp1252", "cp437", "cp932", "latin-1", "utf-8")


@pytest.fixture
def folder(tmp_path):
    criteria = '[brief]\nitem = "mug"\nquantity = 200\n[criteria.a]\ntitle = "Años"\nweight = 1\ncolumn = "A"\n'
    (tmp_path / "criteria.toml").write_text(f"{criteria}points = [[0, 0], [1, 100]]\n", encoding="utf-8")
    makers_csv(tmp_path / "makers.csv", ["Maker", "A"], [[NAMES[0], 0.9], [NAMES[1], 0.5]])
    return tmp_path


def run(folder, encoding, *words):
    return scorecard(*words, cwd=folder, PYTHONUTF8="0", PYTHONIOENCODING=encoding)


@pytest.mark.parametrize("encoding", [*CODE_PAGES, "ascii"])
def test_json_is_whole_in_any_encoding(folder, encoding):
    said = run(folder, encoding, "score", "--json")

    assert (0, NAMES[0]) == (said.status, json.loads(said.out)["leader"])


@pytest.mark.parametrize("encoding", CODE_PAGES)
def test_words_are_printed_in_any_encoding(folder, encoding):
    said = run(folder, encoding, "score")

    assert (0, True) == (said.status, NAMES[1] in said.out)


@pytest.mark.parametrize("encoding", ["cp1252", "cp932"])
def test_problems_are_printed_in_any_encoding(folder, encoding):
    makers_csv(folder / "makers.csv", ["Maker", "A"], [[NAMES[0], "много"], [NAMES[1], 0.5]])
    said = run(folder, encoding, "score")

    assert (3, True) == (said.status, "1 problem to mend" in said.err)


def test_json_is_whole_where_the_app_runs_within_another_program(folder):
    said = CliRunner(charset="cp437").invoke(app, ["score", "--json", "--folder", str(folder)])

    assert (0, NAMES[0]) == (said.exit_code, json.loads(said.stdout)["leader"])
