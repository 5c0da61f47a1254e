import ast
from pathlib import Path

import pytest
from house.docstrings import without_docstring
from house.sources import Module


def silent(text):
    return without_docstring([Module(path=Path("scorecard/a.py"), text=text, tree=ast.parse(text))])


def test_a_module_that_says_nothing_is_named():
    assert ["scorecard/a.py:1 the module"] == silent("x = 1\n")


@pytest.mark.parametrize(
    ("text", "name"),
    [("def f(): pass", "f"), ("class A: pass", "A"), ('class A:\n    """A."""\n    def m(self): pass', "m")],
)
def test_what_is_public_and_says_nothing_is_named(text, name):
    (found,) = silent(f'"""Module."""\n{text}\n')

    assert found.endswith(name)


def test_what_is_private_may_say_nothing():
    assert [] == silent('"""Module."""\ndef _f(): pass\nclass _A:\n    def m(self): pass\n')
