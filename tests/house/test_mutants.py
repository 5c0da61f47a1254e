import ast

import pytest
from house.mutants import mutants_of


def mutated(text):
    return [ast.unparse(mutant.tree).replace("\n", "; ") for mutant in mutants_of(text)]


@pytest.mark.parametrize(
    ("text", "faulty"),
    [
        ("a < b", ["a <= b", "a >= b"]),
        ("a <= b", ["a < b", "a > b"]),
        ("a == b", ["a != b"]),
        ("a is None", ["a is not None"]),
        ("a in b", ["a not in b"]),
        ("a + b", ["a - b"]),
        ("a / b", ["a * b"]),
        ("a and b", ["a or b"]),
        ("not a", ["not not a"]),
        ("7", ["8", "6"]),
        ("True", ["False"]),
        ("x = Decimal('0.35')", ["x = Decimal('0.36')", "x = Decimal('0.34')"]),
        ("min(a)", ["max(a)", "None"]),
        ("x = a.argmax()", ["x = a.argmin()"]),
        ("[a for a in b if a]", ["[a for a in b]"]),
        ("a if b else c", ["a if not b else c"]),
        ("note(a)", ["None"]),
        ("-a", ["+a"]),
    ],
)
def test_each_fault_is_made(text, faulty):
    assert sorted(faulty) == sorted(mutated(text))


def test_a_result_becomes_none():
    assert ["def f():;     return None"] == mutated("def f():\n    return a")


@pytest.mark.parametrize(
    "text",
    [
        "'text'",
        '"""Docstring 3."""',
        "x: Literal[3]",
        "assert a < b",
        "import a",
        "if TYPE_CHECKING:\n    import a",
        "@dataclass(frozen=True)\nclass A: pass",
    ],
)
def test_texts_types_and_asserts_are_left_alone(text):
    assert [] == mutated(text)


def test_a_mutant_knows_its_line_and_its_function():
    text = "x = 1\n\n@cache\ndef f():\n    y = 2\n\nclass A:\n    def m(self):\n        z = lambda: 3\n"

    places = {(mutant.line, mutant.function) for mutant in mutants_of(text)}
    assert {(1, None), (5, ("f", 3)), (9, ("A.m", 8))} == places


def test_a_dropped_condition_stands_where_its_loop_does():
    text = "found = [\n    a\n    for a in b\n    if a\n]\n"
    assert [3] == [mutant.line for mutant in mutants_of(text) if mutant.change == "the condition is dropped"]


def test_a_default_belongs_to_the_module():
    assert {None} == {mutant.function for mutant in mutants_of("def f(a=1): pass")}
