"""How long functions and modules are: the lines of a function's body without its docstring; all lines of a module."""

from statistics import median

from house.sources import Function, Module, body, functions

LONG = 40


def length(function: Function) -> int:
    """Return the lines from the first statement to the last, the docstring left out."""
    done = body(function)
    return (done[-1].end_lineno or 0) - done[0].lineno + 1 if done else 0


def median_length(modules: list[Module]) -> float:
    """Return the median over all functions."""
    return median(length(function) for module in modules for function in functions(module))


def long_functions(modules: list[Module]) -> list[str]:
    """Return the functions of more than 40 lines."""
    return [
        f"{module.name}:{function.lineno} {function.name}: {length(function)} lines"
        for module in modules
        for function in functions(module)
        if length(function) > LONG
    ]


def long_share(modules: list[Module]) -> float:
    """Return how many of 100 functions have more than 40 lines."""
    return 100 * len(long_functions(modules)) / sum(1 for module in modules for _ in functions(module))


def longest(modules: list[Module]) -> tuple[int, str]:
    """Return the lines and the name of the longest module."""
    return max((module.text.count("\n"), module.name) for module in modules)
