"""Mutants of a module: each its source with one small fault, as a syntax tree.

Faults: a comparison at its boundary or turned round, plus for minus, a number one more or less, and for or, a condition
negated or dropped, least for greatest, ``return None``, a call left out. Texts, annotations, asserts and what only
decorates a class are left alone.
"""

import ast
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from decimal import Decimal, InvalidOperation

Fault = tuple[str, Callable[[], None]]  # what it changes, in words, and the change of the node in place

COMPARISONS: dict[type[ast.cmpop], tuple[type[ast.cmpop], ...]] = {
    ast.Lt: (ast.LtE, ast.GtE),
    ast.LtE: (ast.Lt, ast.Gt),
    ast.Gt: (ast.GtE, ast.LtE),
    ast.GtE: (ast.Gt, ast.Lt),
    ast.Eq: (ast.NotEq,),
    ast.NotEq: (ast.Eq,),
    ast.Is: (ast.IsNot,),
    ast.IsNot: (ast.Is,),
    ast.In: (ast.NotIn,),
    ast.NotIn: (ast.In,),
}
OPERATORS: dict[type[ast.operator], type[ast.operator]] = {
    ast.Add: ast.Sub,
    ast.Sub: ast.Add,
    ast.Mult: ast.Div,
    ast.Div: ast.Mult,
    ast.FloorDiv: ast.Mult,
    ast.Mod: ast.Mult,
    ast.Pow: ast.Mult,
    ast.BitOr: ast.BitAnd,
    ast.BitAnd: ast.BitOr,
}
NAMES = {"min": "max", "max": "min", "any": "all", "all": "any", "floor": "ceil", "ceil": "floor"}
NAMES |= {"minimum": "maximum", "maximum": "minimum", "argmin": "argmax", "argmax": "argmin"}
SAID_OF_CLASSES = {"strict", "frozen", "slots", "kw_only", "eq", "order", "repr", "compare", "maxsize"}


@dataclass(frozen=True, slots=True, kw_only=True)
class Mutant:
    """One fault: the line, what is changed, the tree, and the function whose code it is (nothing: the module's own)."""

    line: int
    change: str
    tree: ast.Module
    function: tuple[str, int] | None  # its qualified name and first line


def mutants_of(source: str) -> list[Mutant]:
    """Return every mutant of a module, in the order of its lines."""
    sites = [
        (number, which, inside)
        for number, node, inside in _nodes(ast.parse(source))
        for which, _ in enumerate(_faults(node))
    ]
    return sorted((_mutant(source, *site) for site in sites), key=lambda mutant: mutant.line)


def _mutant(source: str, number: int, which: int, inside: tuple[str, int] | None) -> Mutant:
    """Return the mutant with one fault of one node."""
    tree = ast.parse(source)
    node = next(node for at, node, _ in _nodes(tree) if at == number)
    change, make = _faults(node)[which]
    make()
    ast.fix_missing_locations(tree)
    stands = node.target if isinstance(node, ast.comprehension) else node  # which has no place of its own
    return Mutant(line=getattr(stands, "lineno", 0), change=change, tree=tree, function=inside)


def _nodes(tree: ast.Module) -> Iterator[tuple[int, ast.AST, tuple[str, int] | None]]:
    """Yield every node that may be changed, numbered, with the function that it stands in."""
    yield from ((number, node, inside) for number, (node, inside) in enumerate(_within(tree, (), None)))


def _within(
    node: ast.AST, names: tuple[str, ...], inside: tuple[str, int] | None
) -> Iterator[tuple[ast.AST, tuple[str, int] | None]]:
    """Yield the node and what stands within, apart from what is left alone."""
    yield node, inside
    for field, value in ast.iter_fields(node):
        if field in {"annotation", "returns", "decorator_list"}:
            continue
        for child in value if isinstance(value, list) else [value]:
            if not isinstance(child, ast.AST) or isinstance(child, ast.Assert | ast.Import | ast.ImportFrom):
                continue
            if isinstance(child, ast.keyword) and child.arg in SAID_OF_CLASSES:
                continue
            yield from _within(child, *_place(node, field, child, names, inside))


def _place(
    node: ast.AST, field: str, child: ast.AST, names: tuple[str, ...], inside: tuple[str, int] | None
) -> tuple[tuple[str, ...], tuple[str, int] | None]:
    """Return the names of the classes round a child, and the outermost function that it stands in."""
    if inside or field != "body":
        return names, inside
    if isinstance(node, ast.FunctionDef):
        first = min([node.lineno, *(each.lineno for each in node.decorator_list)])
        return names, (".".join([*names, node.name]), first)
    return (*names, node.name) if isinstance(node, ast.ClassDef) else names, None


def _faults(node: ast.AST) -> list[Fault]:
    """Return the faults that a node can have."""
    match node:
        case ast.Compare(ops=ops):
            return [
                (f"{type(op).__name__} becomes {other.__name__}", lambda at=at, other=other: _put(ops, at, other()))
                for at, op in enumerate(ops)
                for other in COMPARISONS[type(op)]
            ]
        case ast.BinOp(op=op) | ast.AugAssign(op=op) if type(op) in OPERATORS:
            other = OPERATORS[type(op)]
            return [(f"{type(op).__name__} becomes {other.__name__}", lambda: setattr(node, "op", other()))]
        case ast.BoolOp(op=op):
            other = ast.Or if isinstance(op, ast.And) else ast.And
            return [(f"{type(op).__name__} becomes {other.__name__}", lambda: setattr(node, "op", other()))]
        case ast.UnaryOp(op=ast.Not(), operand=operand):
            return [("not is dropped", lambda: setattr(node, "operand", _negated(operand)))]
        case ast.UnaryOp(op=ast.USub()):
            return [("minus is dropped", lambda: setattr(node, "op", ast.UAdd()))]
        case ast.Constant(value=bool() as value):
            return [(f"{value} becomes {not value}", lambda: setattr(node, "value", not value))]
        case ast.Constant(value=int() | float() as value):
            return [
                (f"{value} becomes {value + by}", lambda by=by: setattr(node, "value", value + by)) for by in (1, -1)
            ]
        case ast.Call(func=ast.Name(id="Decimal"), args=[ast.Constant(value=str() as text) as number]):
            return [
                (f"{text} becomes {other}", lambda other=other: setattr(number, "value", other))
                for other in _one_off(text)
            ]
        case ast.Name(id=name) | ast.Attribute(attr=name) if name in NAMES:
            field = "id" if isinstance(node, ast.Name) else "attr"
            return [(f"{name} becomes {NAMES[name]}", lambda: setattr(node, field, NAMES[name]))]
        case ast.Return(value=value) if value and not (isinstance(value, ast.Constant) and value.value is None):
            return [("returns None", lambda: setattr(node, "value", ast.Constant(None)))]
        case ast.If(test=ast.Name(id="TYPE_CHECKING")):
            return []
        case ast.If(test=test) | ast.IfExp(test=test) if isinstance(test, ast.Name | ast.Call | ast.Attribute):
            return [("the condition is negated", lambda: setattr(node, "test", _negated(test)))]
        case ast.comprehension(ifs=[_, *_]):
            return [("the condition is dropped", lambda: setattr(node, "ifs", []))]
        case ast.Expr(value=ast.Call()):
            return [("the call is left out", lambda: setattr(node, "value", ast.Constant(None)))]
    return []


def _negated(test: ast.expr) -> ast.expr:
    """Return the opposite of a condition."""
    return ast.UnaryOp(op=ast.Not(), operand=test)


def _put(items: list[ast.cmpop], at: int, item: ast.cmpop) -> None:
    """Put another item at a place."""
    items[at] = item


def _one_off(text: str) -> list[str]:
    """Return a decimal number one more and one less in its last place; nothing for another text."""
    try:
        step = Decimal(1).scaleb(min(int(Decimal(text).as_tuple().exponent), 0))
    except (InvalidOperation, ValueError):
        return []
    return [str(Decimal(text) + step), str(Decimal(text) - step)]
