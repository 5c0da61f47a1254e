"""The reference is what the code says today, and leaves nothing out."""

import ast
import re

import pytest
from documents.messages import WARNINGS, findings, messages
from documents.reference import MEASURED, TABLES, TARGET, known_keys, meanings, place_of, reference
from documents.sentences import GAP, ROOT, Sayings, parsed

from scorecard.cli.app import app
from scorecard.measures import MEASURES
from scorecard.reading.criterion_table import MEASURE_NAMES
from scorecard.reading.headings import TYPED_MEASURES


@pytest.fixture(scope="module")
def text():
    return reference()


def test_the_reference_is_the_one_that_python_tests_documents_makes(text):
    assert text == TARGET.read_text("utf-8"), "run: python tests/documents"


@pytest.mark.parametrize(("name", "where"), [(name, where) for name, where, _ in TABLES])
def test_every_key_that_is_read_has_its_meaning_and_no_other(name, where):
    assert set(known_keys(where)) == set(meanings()[name]), f"see [{name}] in tests/documents/keys.toml"


@pytest.mark.parametrize(
    ("heading", "key"), [(heading, key) for _, where, heading in TABLES for key in known_keys(where)]
)
def test_every_key_of_the_criteria_file_stands_in_the_reference_under_its_table(heading, key):
    section = TARGET.read_text("utf-8").partition(f"\n### {heading}\n")[2].partition("\n### ")[0]

    assert f"\n| `{key}` | " in section


@pytest.mark.parametrize(("measure", "heading"), TYPED_MEASURES.items())
def test_every_measure_stands_in_the_reference_with_its_heading(measure, heading):
    assert f"| `{measure}` | {heading} |" in TARGET.read_text("utf-8")


def test_every_table_of_keys_that_the_readers_know_is_in_the_reference():
    calls = [
        (path.stem, one.args[0])
        for path in sorted((ROOT / "scorecard" / "reading").glob("*.py"))
        for one in ast.walk(parsed(path))
        if isinstance(one, ast.Call) and getattr(one.func, "attr", "") == "known_keys"
    ]
    asked = {f"{module}.{one.id}" for module, one in calls if isinstance(one, ast.Name) and one.id != "WAYS"}

    assert set() == asked - {where for _, where, _ in TABLES}
    assert len(asked) > 15


def test_every_measure_is_in_the_reference():
    assert set(MEASURES) == set(MEASURE_NAMES) == set(TYPED_MEASURES) == set(MEASURED)


def test_every_command_and_option_is_in_the_reference(text):
    for command in app.registered_commands:
        assert f"### `scorecard {command.callback.__name__}" in text
    for option in re.findall(r'"(--[a-z-]+)(?:/(--[a-z]+))?"', (ROOT / "scorecard/cli/commands.py").read_text("utf-8")):
        assert all(f"`{name}`" in text for name in option if name)


def test_each_message_says_what_was_found_and_what_to_write():
    silent = [
        (one.module, one.code)
        for one in messages()
        if not one.found or all(set(words) <= {GAP, " "} for words in (*one.found, *one.wanted))
    ]

    assert [] == silent
    assert len({one.code for one in messages()}) > 150
    assert len({one.code for one in findings()}) > 8


def test_each_message_has_its_place():
    assert all(place_of(one) for one in messages())


@pytest.mark.parametrize(("module", "code"), sorted(WARNINGS))
def test_what_is_said_to_warn_is_there(module, code):
    assert any(one.module == module and code in (one.code, "*") for one in messages())


@pytest.mark.parametrize(
    ("code", "module", "found", "wanted", "warns"),
    [
        ("no-weight", "reading/criterion_table.py", "the criterion has no weight, so it counts as 0",
         "Add a line such as weight = 10, or weight = 0", True),
        ("missing-value", "reading/freight_sheet.py", "Way is empty",
         "Write sea, air, express, rail, road or post", False),
        ("file-numbers", "reading/gatekeeper.py", "the file is a .numbers spreadsheet", None, False),
        ("ranked-twice", "reading/weights_table.py", "… stands more than once", "Name every criterion once", False),
        ("memory", "reading/memory_file.py", "this is not what the tool keeps of your orders", None, False),
        ("quote-expired", "costing/doubts.py", "The quote of … held until …, and today is …", None, True),
    ],
)  # fmt: skip
def test_a_message_is_gathered_as_the_tool_puts_it(code, module, found, wanted, warns):
    said = [one for one in messages() if (one.code, one.module) == (code, module)]

    assert any(found in one.found and one.warns == warns and (wanted is None or wanted in one.wanted) for one in said)


def said_by(source, tmp_path, monkeypatch):
    """Return what the expression that a function's return hands back can say."""
    path = tmp_path / "made.py"
    path.write_text(source, "utf-8")
    space: dict[str, object] = {}
    exec(compile(source, str(path), "exec"), space)
    monkeypatch.setattr("documents.sentences.module_of", lambda _: type("Made", (), space))
    returned = [one for one in ast.walk(parsed(path)) if isinstance(one, ast.Return)]
    return Sayings(path).of(max(returned, key=lambda one: one.lineno).value)


@pytest.mark.parametrize(
    ("body", "expected"),
    [
        ('return f"{n} is above {LIMIT}"', ["… is above 9"]),
        ('a = "one"\n    a = "two"\n    return a', ["two"]),
        ('a = "one"\n    if n:\n        a = "two"\n    return a', ["two", "one"]),
        ('if n:\n        a = "two"\n        return a\n    a = "one"\n    return a', ["one"]),
        ('a, b = ("x", "y") if n else ("v", "w")\n    return b', ["y", "w"]),
        ('return f"line {n + 1}"', ["line …"]),
        ("return None if n else str(n)", ["…"]),
    ],
)
def test_what_an_expression_can_say(body, expected, tmp_path, monkeypatch):
    assert expected == said_by(f"LIMIT = 9\ndef f(n):\n    {body}\n", tmp_path, monkeypatch)
