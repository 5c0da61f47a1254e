import ast
from pathlib import Path

from house.mutants import Mutant
from house.mutation import Tried
from house.sources import ROOT
from house.survivors import EQUAL, lines_of


def tried(outcome, text="Lt becomes LtE: a < b"):
    return Tried(mutant=Mutant(line=7, change="", tree=ast.parse(""), function=None), outcome=outcome, text=text)


def test_a_module_is_a_line_and_so_is_each_survivor():
    lines = list(lines_of(Path("scorecard/a.py"), [tried("killed"), tried("timed out"), tried("survived")], {}))

    assert [
        "scorecard/a.py: 3 mutants, 1 killed by a failing test, 1 killed by the time that it took, 1 survived, "
        "0 of these equal",
        "    scorecard/a.py:7: Lt becomes LtE: a < b",
    ] == lines


def test_an_equal_mutant_is_counted_and_not_told():
    (line,) = lines_of(Path("scorecard/a.py"), [tried("survived")], {"Lt becomes LtE: a < b": "never level"})

    assert line.endswith("1 survived, 1 of these equal")


def test_every_equal_mutant_is_of_a_line_that_still_stands():
    gone = [
        (module, text)
        for module, texts in EQUAL.items()
        for text in texts
        if text.partition(": ")[2] not in map(str.strip, (ROOT / module).read_text("utf-8").splitlines())
    ]

    assert [] == gone
