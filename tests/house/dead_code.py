"""Dead code: names that the package defines and nothing in it uses, outside their own definition.

Names are compared as words, wherever they stand: a function, a class, a method, a field, a constant. Templates count as
users. What is public, and what frameworks call by name, is listed here with its reason.
"""

import ast
import re
from collections import Counter
from collections.abc import Iterator
from pathlib import Path

from house.sources import PACKAGE, Module

CALLED_BY_FRAMEWORKS = {
    "__getattr__": "the import system",
    "find_spec": "the import system",
    "create_module": "the import system",
    "__init__": "Python",
    "__post_init__": "dataclasses",
    "main": "the console script",
    "frames": "the library's users: Assessment.frames",
    "allow_extra_args": "typer",
    "format_commands": "typer",
    "invoke": "typer",
    "resolve_command": "typer",
    "parse_args": "typer",
    "get_help": "typer",
    "col_counter": "openpyxl",
    "worksheet_class": "XlsxWriter",
    "_prepare_formula": "XlsxWriter",
    "_escape_attributes": "XlsxWriter",
    "daemon_threads": "socketserver",
    "block_on_close": "socketserver",
    "handle_error": "socketserver",
    "timeout": "socketserver",
    "server_version": "http.server",
    "sys_version": "http.server",
    "do_GET": "http.server",
    "log_message": "http.server",
}
WORD = re.compile(r"[A-Za-z_]\w*")


def dead_code(modules: list[Module], public: list[str], package: Path = PACKAGE) -> list[str]:
    """Return every definition without a user."""
    used = Counter(word for module in modules for word in _used(module.tree))
    used.update(
        word for template in package.rglob("*.jinja") for word in set(WORD.findall(template.read_text("utf-8")))
    )
    spared = {*public, *CALLED_BY_FRAMEWORKS}
    return [
        f"{module.name}:{node.lineno} {name}"
        for module in modules
        for name, node in _defined(module.tree)
        if name not in spared and used[name] <= Counter(_used(node))[name]
    ]


def _defined(tree: ast.AST) -> Iterator[tuple[str, ast.stmt]]:
    """Yield the names that a module and its classes define, each with its definition."""
    for node in getattr(tree, "body", []):
        match node:
            case ast.FunctionDef(name=name) if not name.startswith("__"):
                yield name, node
            case ast.ClassDef(name=name):
                yield name, node
                yield from _defined(node)
            case ast.AnnAssign(target=ast.Name(id=name)):
                yield name, node
            case ast.Assign(targets=targets):
                names = [part.id for target in targets for part in ast.walk(target) if isinstance(part, ast.Name)]
                yield from ((name, node) for name in names if not name.startswith("__"))


def _used(tree: ast.AST) -> Iterator[str]:
    """Yield the names that are read: by themselves, after a dot, as a text, or by an import under another name."""
    for node in ast.walk(tree):
        match node:
            case ast.Name(id=name, ctx=ast.Load()) | ast.Attribute(attr=name, ctx=ast.Load()):
                yield name
            case ast.Constant(value=str() as text) if text.isidentifier():
                yield text  # getattr, __getattr__, match_args and the like
            case ast.MatchClass(kwd_attrs=names):
                yield from names
            case ast.alias(name=name, asname=str()):
                yield name  # imported under another name
