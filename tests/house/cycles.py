"""Import cycles: modules that reach one another, by imports within functions too (those for types alone never run)."""

import grimp


def cycles(package: str = "scorecard") -> list[str]:
    """Return every set of modules that import one another, however far round."""
    graph = grimp.build_graph(package, exclude_type_checking_imports=True, cache_dir=None)
    reached = {module: graph.find_upstream_modules(module) for module in graph.modules}
    knots = {
        frozenset({module, *(other for other in reached[module] if module in reached[other])})
        for module in graph.modules
        if any(module in reached[other] for other in reached[module])
    }
    return sorted(" ↔ ".join(sorted(knot)) for knot in knots)
