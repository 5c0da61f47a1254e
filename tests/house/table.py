"""The table of measures: each with its limit, the figure reached, and what misses it."""

import ast
from collections.abc import Iterator
from dataclasses import dataclass

from house import branches, cycles, dead_code, docstrings, mirrors, sizes, twins
from house.sources import PACKAGE, modules

MEDIAN, LONG_SHARE, LONGEST = 6, 3.0, 400


@dataclass(frozen=True, slots=True, kw_only=True)
class Measure:
    """One measure of the house."""

    name: str
    limit: str
    reached: str
    kept: bool
    misses: tuple[str, ...] = ()


def measures() -> Iterator[Measure]:
    """Yield the measures that take seconds."""
    read = modules()
    median, share, (lines, name) = sizes.median_length(read), sizes.long_share(read), sizes.longest(read)
    yield Measure(
        name="median lines of a function", limit=f"at most {MEDIAN}", reached=f"{median:g}", kept=median <= MEDIAN
    )
    yield Measure(
        name=f"functions over {sizes.LONG} lines, of 100",
        limit=f"under {LONG_SHARE:g}",
        reached=f"{share:.2f}",
        kept=share < LONG_SHARE,
        misses=tuple(sizes.long_functions(read)),
    )
    yield Measure(
        name="lines of the longest module",
        limit=f"at most {LONGEST}",
        reached=f"{lines} ({name})",
        kept=lines <= LONGEST,
    )
    yield _none("import cycles, deferred ones counted", cycles.cycles())
    yield _none("names without a user", dead_code.dead_code(read, public_names()))
    yield _none("functions that do the same", twins.twins(read))
    yield _none("constants defined twice", twins.twin_constants(read))
    yield _none("modules without tests of their own", mirrors.without_test(read))
    yield _none("tests without a module", mirrors.without_module())
    yield _none("public names without a docstring", docstrings.without_docstring(read))


def coverage_measures() -> Iterator[Measure]:
    """Yield the measures of branch coverage, where a run has left its data."""
    if not branches.DATA.exists():
        return
    found = branches.covered()
    reached = branches.in_all(found)
    yield Measure(
        name="lines and branches run, of 100",
        limit=f"at least {branches.LEAST:g}",
        reached=f"{reached:.2f}",
        kept=reached >= branches.LEAST,
        misses=tuple(branches.gaps(found)),
    )
    yield _none("modules of the core not wholly run", branches.gaps_in_core(found))


def public_names() -> list[str]:
    """Return what ``scorecard.__all__`` lists."""
    tree = ast.parse((PACKAGE / "__init__.py").read_text("utf-8"))
    listed = next(
        node.value
        for node in tree.body
        if isinstance(node, ast.Assign) and getattr(node.targets[0], "id", None) == "__all__"
    )
    return list(ast.literal_eval(listed))


def _none(name: str, found: list[str]) -> Measure:
    """Return a measure of which there must be none."""
    return Measure(name=name, limit="none", reached=str(len(found) or "none"), kept=not found, misses=tuple(found))


def lines_of(measure: Measure) -> Iterator[str]:
    """Yield a measure as a line of the table, and what misses it below."""
    yield f"{measure.name:<40} {measure.limit:<12} {measure.reached:<32} {'kept' if measure.kept else 'MISSED'}"
    yield from (f"    {miss}" for miss in measure.misses)
