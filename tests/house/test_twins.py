import ast
from pathlib import Path

from house.sources import Module
from house.twins import twin_constants, twins

ADDING = """
def total({0}):
    {1} = 0
    for {2} in {0}:
        if {2}:
            {1} += {2}
    return {1}
"""


def found(*texts):
    trees = [Module(path=Path(f"scorecard/m{at}.py"), text=text, tree=ast.parse(text)) for at, text in enumerate(texts)]
    return twins(trees)


def test_the_same_under_other_names_is_found():
    once, again = ADDING.format("costs", "sum_", "cost"), ADDING.format("days", "all_", "day")

    assert ["scorecard/m0.py:2 total = scorecard/m1.py:2 total"] == found(once, again)


def test_another_docstring_makes_no_difference():
    told = ADDING.format("a", "b", "c").replace("):\n", '):\n    """Add them up."""\n', 1)

    assert 1 == len(found(ADDING.format("x", "y", "z"), told))


def test_what_calls_another_function_is_no_twin():
    other = ADDING.format("x", "y", "z").replace("+= z", "+= len(z)")

    assert [] == found(ADDING.format("x", "y", "z"), other)


def test_four_lines_are_no_twin():
    short = "def f(a):\n    b = a\n    b += 1\n    b += 2\n    return b\n"

    assert [] == found(short, short)


def test_another_number_is_no_twin():
    assert [] == found(ADDING.format("x", "y", "z"), ADDING.format("x", "y", "z").replace("= 0", "= 1"))


def constants(*texts):
    trees = [Module(path=Path(f"scorecard/m{at}.py"), text=text, tree=ast.parse(text)) for at, text in enumerate(texts)]
    return twin_constants(trees)


def test_a_list_that_stands_in_two_modules_is_found():
    twice = constants('WAYS = ("sea", "air")\n', 'WAYS: tuple[str, ...] = ("sea", "air")\n')

    assert ["scorecard/m0.py:1 WAYS = scorecard/m1.py:1 WAYS"] == twice


def test_another_list_and_the_same_number_are_no_twins():
    assert [] == constants('WAYS = ("sea", "air")\nMOST = 12\n', 'WAYS = ("sea",)\nMOST = 12\n')


def test_what_rests_on_other_names_is_no_twin():
    assert [] == constants("KINDS = get_args(Kind)\n", "KINDS = get_args(Kind)\n")
