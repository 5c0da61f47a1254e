"""What is public: listed, sorted, all there, and loaded only when it is asked for."""

import subprocess
import sys
from pathlib import Path

import pytest

import scorecard

HEAVY = ("numpy", "pandas", "openpyxl", "jinja2", "xlsxwriter", "typer", "tomlkit")
EXPECTED = {
    "Assessment",
    "Case",
    "InputError",
    "Place",
    "Problem",
    "ScorecardError",
    "__version__",
    "assess",
    "read_folder",
}


def test_public_names_are_listed_and_sorted():
    assert sorted(scorecard.__all__) == list(scorecard.__all__)


def test_what_is_public_is_what_the_contract_says():
    assert set(scorecard.__all__) >= EXPECTED


@pytest.mark.parametrize("name", scorecard.__all__)
def test_each_public_name_is_there(name):
    assert getattr(scorecard, name) is not None


def test_a_public_name_is_the_one_that_its_module_defines():
    from scorecard.assessment import assess

    assert scorecard.assess is assess


def test_a_name_that_is_not_public_is_refused_by_name():
    with pytest.raises(AttributeError, match="has no attribute 'rank_makers'"):
        _ = scorecard.rank_makers


def test_the_import_alone_loads_nothing_heavy():
    code = f"import sys, scorecard; print([name for name in {HEAVY!r} if name in sys.modules])"
    run = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert "[]" == run.stdout.strip()


def test_no_module_has_a_name_of_the_standard_librarys():
    package = Path(scorecard.__file__).parent
    names = {path.stem for path in package.rglob("*.py")} - {"__init__", "__main__"}

    assert set() == names & sys.stdlib_module_names
