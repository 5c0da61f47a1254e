"""What texts an expression of the source can say: its words, with … for what is only known when it runs."""

import ast
import builtins
import importlib
import re
from collections.abc import Iterator
from contextlib import suppress
from functools import cache
from itertools import islice, product
from pathlib import Path
from types import ModuleType

ROOT = Path(__file__).parents[2]
GAP = "…"
MOST = 8  # ways of saying one thing
DEEPEST = 5  # functions and names looked through

Node = ast.AST


@cache
def parsed(path: Path) -> ast.Module:
    """Return a module's tree, in which every node knows its parent."""
    tree = ast.parse(path.read_text("utf-8"))
    for parent in ast.walk(tree):
        for child in ast.iter_child_nodes(parent):
            child.parent = parent
    return tree


def modules() -> Iterator[Path]:
    """Yield the package's source files, in order."""
    yield from sorted((ROOT / "scorecard").rglob("*.py"))


def module_of(path: Path) -> ModuleType:
    """Return the module that a file holds."""
    return importlib.import_module(".".join(path.relative_to(ROOT).with_suffix("").parts))


def function_around(node: Node) -> Node | None:
    """Return the function in which a node stands."""
    while node is not None and not isinstance(node, ast.FunctionDef):
        node = getattr(node, "parent", None)
    return node


class Sayings:
    """The texts that expressions of one module can say."""

    def __init__(self, path: Path) -> None:
        self._path, self._globals = path, vars(module_of(path))
        self._functions = {one.name: one for one in ast.walk(parsed(path)) if isinstance(one, ast.FunctionDef)}

    def of(self, node: Node, depth: int = 0, *, inside: bool = False) -> list[str]:
        """Return what an expression can say, in the order of the source; inside a text, calls are gaps."""
        found = islice(self._texts(node, depth, inside), MOST * 4)
        return list(dict.fromkeys(_tidy(text) for text in found))[:MOST]

    def _texts(self, node: Node, depth: int, inside: bool) -> Iterator[str]:
        match node:
            case ast.Constant():
                yield from () if node.value is None else (str(node.value),)
            case ast.JoinedStr():
                yield from self._joined(node.values, depth)
            case ast.FormattedValue():
                yield from self.of(node.value, depth, inside=True)
            case ast.BinOp(op=ast.Add()) if not any(_is_count(one) for one in (node.left, node.right)):
                yield from self._joined([node.left, node.right], depth)
            case ast.IfExp():
                yield from self.of(node.body, depth, inside=inside)
                yield from self.of(node.orelse, depth, inside=inside)
            case ast.BoolOp(op=ast.Or()):
                for one in node.values:
                    yield from self.of(one, depth, inside=inside)
            case ast.Name() if values := list(reaching(node)):
                for value in values:
                    yield from self.of(value, depth, inside=inside)
            case ast.Name() if not inside and depth < DEEPEST and (given := list(self._handed_in(node))):
                for value in given:
                    yield from self.of(value, depth + 1)
            case ast.Subscript(value=ast.Subscript(value=ast.Name(id=table)), slice=ast.Constant(value=at)):
                yield from (str(row[at]) for row in self._globals[table].values())
            case _:
                yield from self._worked_out(node, depth, inside)

    def _joined(self, parts: list[Node], depth: int) -> Iterator[str]:
        for texts in product(*(self.of(part, depth, inside=True) for part in parts)):
            yield "".join(texts)

    def _handed_in(self, name: ast.Name) -> Iterator[Node]:
        """Yield what the calls of its function hand over under a name, where it is one of the function's own."""
        function = function_around(name)
        names = [one.arg for one in function.args.args if one.arg not in ("self", "cls")] if function else []
        if name.id not in names:
            return
        for call in ast.walk(parsed(self._path)):
            if isinstance(call, ast.Call) and function.name in (
                getattr(call.func, "id", ""),
                getattr(call.func, "attr", ""),
            ):
                yield from call.args[names.index(name.id) :][:1]
                yield from (one.value for one in call.keywords if one.arg == name.id)

    def _worked_out(self, node: Node, depth: int, inside: bool) -> Iterator[str]:
        """Yield what an expression of the module's own names says, or what a function of this module returns."""
        known = {**vars(builtins), **self._globals}
        if all(one.id in known and not any(reaching(one)) for one in _names(node)):
            with suppress(Exception):
                yield f"{eval(compile(ast.Expression(node), str(self._path), 'eval'), known)}"
                return
        function = self._functions.get(getattr(getattr(node, "func", None), "id", ""))
        returned = [one.value for one in ast.walk(function) if isinstance(one, ast.Return)] if function else []
        if not returned or inside or depth == DEEPEST:
            yield GAP
        else:
            for one in returned:
                yield from self.of(one, depth + 1)


def _names(node: Node) -> list[ast.Name]:
    return [one for one in ast.walk(node) if isinstance(one, ast.Name)]


def _is_count(node: Node) -> bool:
    return isinstance(node, ast.Constant) and not isinstance(node.value, str)


def reaching(name: ast.Name) -> Iterator[Node]:
    """Yield what was last put into a name before it is used, in its function: a value for each way that leads here."""
    node = name
    while not isinstance(node, ast.FunctionDef | ast.Module):
        block = next((block for block in _blocks(node.parent) if node in block), [])
        for before in reversed(block[: block.index(node)] if block else [node]):
            values = list(_put_into(before, name.id))
            yield from values
            if values and isinstance(before, ast.Assign):
                return
        node = node.parent


def _blocks(node: Node) -> Iterator[list[Node]]:
    """Yield the lists of statements that a node holds."""
    for field in ("body", "orelse", "finalbody"):
        block = getattr(node, field, None)
        if isinstance(block, list):
            yield block


def _put_into(statement: Node, name: str) -> Iterator[Node]:
    """Yield what a statement, or one within it, puts into a name."""
    for one in ast.walk(statement) if isinstance(statement, ast.stmt) else ():
        match one:
            case ast.Assign(targets=[target], value=value) | ast.NamedExpr(target=target, value=value):
                yield from _part(target, value, name)


def _part(target: Node, value: Node, name: str) -> Iterator[Node]:
    """Yield the part of a value that goes to a name, where the target is this name or a tuple that holds it."""
    if isinstance(target, ast.Name) and target.id == name:
        yield value
    elif isinstance(target, ast.Tuple):
        at = next((at for at, one in enumerate(target.elts) if getattr(one, "id", None) == name), None)
        pairs = [value.body, value.orelse] if isinstance(value, ast.IfExp) else [value]
        if at is not None:
            yield from (one.elts[at] if isinstance(one, ast.Tuple) else _item(one, at) for one in pairs)


def _item(node: Node, at: int) -> ast.Subscript:
    """Return one place of what an expression gives."""
    return ast.Subscript(value=node, slice=ast.Constant(at), ctx=ast.Load())


def _tidy(text: str) -> str:
    """Return a text with one mark for each gap."""
    return re.sub(r"…(?:[.,]?…)+", GAP, text)
