import sys

import pytest
from house.cycles import cycles


@pytest.fixture
def package(tmp_path, monkeypatch):
    """Return a function that writes a package of modules and returns its cycles."""
    monkeypatch.syspath_prepend(tmp_path)

    def made(name, **modules):
        folder = tmp_path / name
        folder.mkdir()
        for module, text in {"__init__": "", **modules}.items():
            (folder / f"{module}.py").write_text(text)
        found = cycles(name)
        sys.modules.pop(name, None)
        return found

    return made


def test_imports_one_way_are_no_cycle(package):
    assert [] == package("oneway", a="from oneway import b\n", b="")


def test_an_import_within_a_function_closes_a_cycle(package):
    deferred = "def f():\n    from deferred.a import x\n"

    assert ["deferred.a ↔ deferred.b"] == package("deferred", a="from deferred import b\nx = 1\n", b=deferred)


def test_a_cycle_over_three_modules_is_one(package):
    modules = {"a": "import threeway.b\n", "b": "import threeway.c\n", "c": "import threeway.a\n"}

    assert ["threeway.a ↔ threeway.b ↔ threeway.c"] == package("threeway", **modules)


def test_an_import_for_types_alone_closes_none(package):
    typed = "from typing import TYPE_CHECKING\nif TYPE_CHECKING:\n    from typed.a import x\n"

    assert [] == package("typed", a="from typed import b\nx = 1\n", b=typed)
