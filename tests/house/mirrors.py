"""Tests mirror modules: ``scorecard/x/y.py`` has ``tests/x/test_y.py``, or stands here with who tests it instead."""

from pathlib import Path

from house.sources import ROOT, Module

TESTED_ELSEWHERE = {
    # the command line as a whole process
    "scorecard/__main__.py": "tests/cli/test_app.py",
    "scorecard/cli/commands.py": "tests/cli/test_app.py",
    # the demo as laid out
    "scorecard/demo/past_orders.py": "tests/cli/test_laying_out.py",
    "scorecard/demo/scenario.py": "tests/cli/test_laying_out.py",
    # parts of one page, sheet or table, read or written together
    "scorecard/letters/order_json.py": "tests/cli/test_order_sheets.py",
    "scorecard/letters/order_words.py": "tests/letters/test_order_page.py",
    "scorecard/memory_json.py": "tests/test_memory.py",
    "scorecard/order_terms.py": "tests/reading/test_order_table.py",
    "scorecard/reading/charges_table.py": "tests/reading/test_cost_tables.py",
    "scorecard/reading/cost_inputs.py": "tests/reading/test_quotes_sheet.py",
    "scorecard/reading/costs.py": "tests/reading/test_quotes_sheet.py",
    "scorecard/reading/dates.py": "tests/reading/test_once_filled.py",
    "scorecard/reading/dealings.py": "tests/reading/test_dealing_rows.py",
    "scorecard/reading/import_table.py": "tests/reading/test_cost_tables.py",
    "scorecard/reading/memory_file.py": "tests/cli/test_recording.py",
    "scorecard/reading/toml_amounts.py": "tests/reading/test_cost_tables.py",
    "scorecard/report/remembering.py": "tests/report/test_dealings.py",
}
OTHER_TESTS = {
    "tests/cli/test_one_count_of_days.py": "one maker, one way and one count of days through every output",
    "tests/letters/test_arrival_in_browser.py": "the tally sheet, the claim and the care cards, printed",
    "tests/report/test_drawings_in_browser.py": "all drawings of the page",
    "tests/test_public.py": "what the package promises",
    "tests/test_readme.py": "every command of README",
    "tests/test_schemas.py": "every schema",
}


def without_test(modules: list[Module], root: Path = ROOT) -> list[str]:
    """Return the modules that no test file mirrors and no exception names."""
    return [
        module.name
        for module in modules
        if module.path.name != "__init__.py"
        and not (root / mirror(module.path)).exists()
        and not _excused(module.name, TESTED_ELSEWHERE, root)
    ]


def mirror(path: Path) -> Path:
    """Return the path of the tests of a module."""
    return Path("tests", *path.parts[1:-1], f"test_{path.name}")


def without_module(root: Path = ROOT) -> list[str]:
    """Return the test files that mirror no module and no exception names.

    Tests in a folder that no package has (documents, formats, house) are of the whole.
    """
    return [
        name
        for path in sorted((root / "tests").rglob("test_*.py"))
        for name in [path.relative_to(root).as_posix()]
        if _is_package(path.parent, root) and not _mirrored(path, root) and name not in OTHER_TESTS
    ]


def _is_package(folder: Path, root: Path) -> bool:
    """Return whether a folder of tests has the name of a package."""
    return (root / "scorecard" / folder.relative_to(root / "tests") / "__init__.py").exists()


def _mirrored(path: Path, root: Path) -> bool:
    """Return whether a module of this name is there; what opens in a browser has the name of what is opened."""
    inside = path.relative_to(root / "tests")
    name = inside.name.removeprefix("test_").replace("_in_browser", "")
    return (root / "scorecard" / inside.with_name(name)).exists()


def _excused(name: str, excuses: dict[str, str], root: Path) -> bool:
    """Return whether an exception names the module, and its test is there."""
    return name in excuses and (root / excuses[name]).exists()
