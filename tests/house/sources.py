"""The package as it is read here: every module's path, text and syntax tree, and every function in it."""

import ast
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

ROOT = Path(__file__).parents[2]
PACKAGE = ROOT / "scorecard"
Function = ast.FunctionDef | ast.AsyncFunctionDef


@dataclass(frozen=True, slots=True, kw_only=True)
class Module:
    """A module: where it stands under the root, its text, and its tree."""

    path: Path
    text: str
    tree: ast.Module

    @property
    def name(self) -> str:
        """The module's path as it is shown."""
        return self.path.as_posix()


def modules(package: Path = PACKAGE) -> list[Module]:
    """Return every module of a package, by name."""
    return [
        Module(path=path.relative_to(package.parent), text=text, tree=ast.parse(text))
        for path in sorted(package.rglob("*.py"))
        for text in [path.read_text("utf-8")]
    ]


def functions(module: Module) -> Iterator[Function]:
    """Yield every function and method, those within others too."""
    yield from (node for node in ast.walk(module.tree) if isinstance(node, Function))


def body(function: Function) -> list[ast.stmt]:
    """Return what a function does: its statements without the docstring."""
    return function.body[1:] if ast.get_docstring(function, clean=False) is not None else function.body
