import ast
from pathlib import Path

import pytest
from house import mirrors
from house.sources import ROOT, Module


def write(root, *names):
    for name in names:
        (root / name).parent.mkdir(parents=True, exist_ok=True)
        (root / name).write_text("")


def untested(root, *names):
    return mirrors.without_test([Module(path=Path(name), text="", tree=ast.parse("")) for name in names], root)


def test_a_module_without_its_test_file_is_named(tmp_path):
    write(tmp_path, "tests/x/test_y.py")

    assert ["scorecard/x/z.py"] == untested(tmp_path, "scorecard/x/y.py", "scorecard/x/z.py", "scorecard/x/__init__.py")


def test_an_exception_whose_test_is_gone_is_none(tmp_path):
    name, test = next(iter(mirrors.TESTED_ELSEWHERE.items()))
    assert [name] == untested(tmp_path, name)

    write(tmp_path, test)
    assert [] == untested(tmp_path, name)


def test_a_test_without_its_module_is_named(tmp_path):
    write(tmp_path, "scorecard/__init__.py", "scorecard/a.py", "tests/test_a.py", "tests/test_a_in_browser.py")
    write(tmp_path, "tests/test_b.py", "tests/whole/test_c.py")

    assert ["tests/test_b.py"] == mirrors.without_module(tmp_path)


@pytest.mark.parametrize("name", mirrors.TESTED_ELSEWHERE)
def test_every_exception_is_still_needed(name):
    assert (ROOT / name).exists()
    assert not (ROOT / mirrors.mirror(Path(name))).exists()


@pytest.mark.parametrize("name", mirrors.OTHER_TESTS)
def test_every_other_test_is_still_there(name):
    assert (ROOT / name).exists()
