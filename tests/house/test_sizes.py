import ast
from pathlib import Path

from house import sizes
from house.sources import Module


def module(text, name="scorecard/a.py"):
    return Module(path=Path(name), text=text, tree=ast.parse(text))


SHORT = 'def short():\n    """Say it."""\n    return 1\n'
LONG = "def long():\n" + "    print(1)\n" * 41
JUST = "def just():\n" + "    print(1)\n" * 40


def test_a_docstring_and_the_first_line_do_not_count():
    (function,) = ast.parse(SHORT).body

    assert 1 == sizes.length(function)


def test_a_statement_over_three_lines_counts_three():
    (function,) = ast.parse("def f():\n    return (\n        1\n    )\n").body

    assert 3 == sizes.length(function)


def test_the_median_is_over_the_functions_of_all_modules():
    assert 1 == sizes.median_length([module(SHORT * 2), module(LONG)])


def test_functions_within_classes_and_functions_count():
    text = "class A:\n    def one(self):\n        def two():\n            return 1\n        return two\n"

    assert 2 == sizes.median_length([module(text)])  # 1 and 3 lines


def test_only_more_than_forty_lines_are_long():
    read = [module(SHORT + LONG + JUST)]

    assert ["scorecard/a.py:4 long: 41 lines"] == sizes.long_functions(read)
    assert 100 / 3 == sizes.long_share(read)


def test_the_longest_module_is_named():
    assert (41 + 1, "scorecard/b.py") == sizes.longest([module(SHORT), module(LONG, "scorecard/b.py")])
