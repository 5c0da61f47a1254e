import ast
from pathlib import Path

import pytest
from house.dead_code import dead_code
from house.sources import Module


def dead(tmp_path, *texts, public=(), template=""):
    (tmp_path / "page.html.jinja").write_text(template)
    modules = [
        Module(path=Path(f"scorecard/m{at}.py"), text=text, tree=ast.parse(text)) for at, text in enumerate(texts)
    ]
    return [line.split(" ")[1] for line in dead_code(modules, list(public), tmp_path)]


@pytest.mark.parametrize(
    ("text", "name"),
    [
        ("def f():\n    pass\n", "f"),
        ("def f():\n    return f()\n", "f"),
        ("class A:\n    pass\n", "A"),
        ("class A:\n    def m(self):\n        pass\nA()\n", "m"),
        ("class A:\n    field: int = 0\nA(field=1)\n", "field"),
        ("LIMIT = 3\n", "LIMIT"),
        ("def _f():\n    pass\n", "_f"),
    ],
    ids=["function", "calls itself alone", "class", "method", "field", "constant", "private"],
)
def test_what_nothing_uses_is_dead(tmp_path, text, name):
    assert [name] == dead(tmp_path, text)


def test_an_import_alone_is_no_use(tmp_path):
    assert ["f"] == dead(tmp_path, "def f():\n    pass\n", "from scorecard.m0 import f\n")


@pytest.mark.parametrize(
    "user",
    [
        "from scorecard.m0 import f\nf()\n",
        "import m0\nm0.f()\n",
        "from m0 import f as g\ng()\n",
        "getattr(m0, 'f')()\n",
    ],
    ids=["by name", "after a dot", "under another name", "as a text"],
)
def test_what_another_module_uses_is_alive(tmp_path, user):
    assert [] == dead(tmp_path, "def f():\n    pass\n", user)


def test_what_a_template_uses_is_alive(tmp_path):
    assert [] == dead(tmp_path, "class _A:\n    title: str\n_A()\n", template="{{ view.title }}")


def test_what_is_public_is_alive(tmp_path):
    assert [] == dead(tmp_path, "def f():\n    pass\n", public=["f"])
