"""Logic twice: functions of five lines or more whose bodies are the same but for the names in them."""

import ast
from collections import defaultdict
from collections.abc import Iterator

from house.sizes import length
from house.sources import Function, Module, body, functions

LEAST = 5


def twins(modules: list[Module]) -> list[str]:
    """Return every set of functions that do the same."""
    alike: dict[str, list[str]] = defaultdict(list)
    for module in modules:
        for function in functions(module):
            if length(function) >= LEAST:
                alike[shape(function)].append(f"{module.name}:{function.lineno} {function.name}")
    return [" = ".join(names) for names in alike.values() if len(names) > 1]


def shape(function: Function) -> str:
    """Return the body as text, the names of its own parameters and variables numbered in the order they come."""
    own = {each.arg for each in ast.walk(function.args) if isinstance(each, ast.arg)}
    own |= {node.id for node in ast.walk(function) if isinstance(node, ast.Name) and isinstance(node.ctx, ast.Store)}
    numbers: dict[str, str] = {}
    tree = ast.parse("\n".join(ast.unparse(each) for each in body(function)))
    for node in ast.walk(tree):
        if isinstance(node, ast.Name) and node.id in own:
            node.id = numbers.setdefault(node.id, f"name{len(numbers)}")
        elif isinstance(node, ast.arg):
            node.arg = numbers.setdefault(node.arg, f"name{len(numbers)}")
    return ast.dump(tree)


def twin_constants(modules: list[Module]) -> list[str]:
    """Return every constant that more than one module defines, under one name with one value.

    Single numbers and texts may be the same by chance, and are left out.
    """
    alike: dict[tuple[str, str], list[str]] = defaultdict(list)
    for module in modules:
        for name, value in _constants(module.tree):
            alike[name, ast.dump(value)].append(f"{module.name}:{value.lineno} {name}")
    return [" = ".join(places) for places in alike.values() if len(places) > 1]


def _constants(tree: ast.Module) -> Iterator[tuple[str, ast.expr]]:
    """Yield the module's own names in capitals with what they hold; the common ones left out."""
    for node in tree.body:
        match node:
            case (
                ast.Assign(targets=[ast.Name(id=name)], value=value)
                | ast.AnnAssign(target=ast.Name(id=name), value=ast.expr() as value)
            ) if name.isupper() and not _is_common(value):
                yield name, value


def _is_common(value: ast.expr) -> bool:
    """Return whether a value is a single number or text, or rests on names that mean something else elsewhere."""
    names = {node.id for node in ast.walk(value) if isinstance(node, ast.Name)}
    return isinstance(value, ast.Constant) or not names <= {"frozenset", "MappingProxyType", "Decimal"}
