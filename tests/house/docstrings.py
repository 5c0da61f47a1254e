"""Docstrings: every module, and every public class, function and method, says in one line what it is for."""

import ast

from house.sources import Function, Module


def without_docstring(modules: list[Module]) -> list[str]:
    """Return what is public and has none."""
    return [
        f"{module.name}:{getattr(node, 'lineno', 1)} {getattr(node, 'name', 'the module')}"
        for module in modules
        for node in [module.tree, *_public(module.tree)]
        if not ast.get_docstring(node)
    ]


def _public(tree: ast.AST) -> list[Function | ast.ClassDef]:
    """Return the public classes and functions of a module, and the public methods of those classes."""
    here = [
        node
        for node in getattr(tree, "body", [])
        if isinstance(node, Function | ast.ClassDef) and not node.name.startswith("_")
    ]
    return [*here, *(method for node in here if isinstance(node, ast.ClassDef) for method in _public(node))]
