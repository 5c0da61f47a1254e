"""Results as tables: the machine-readable result as pandas DataFrames, for a notebook or another program."""

from typing import Any

import pandas as pd


def frames_of(result: dict[str, Any]) -> dict[str, pd.DataFrame]:
    """Return the parts of a result as tables.

    Parameters
    ----------
    result : of schema ``scorecard/1``

    Returns
    -------
    by name: "makers" (one row a maker), "points" (one row a maker and criterion), "weight_ranges" (one row a
    criterion), "smallest_change" (one row a rival), "questions" (one row an open answer), "landed_costs" (one row a
    line of a sum)
    """
    criteria = [
        {"maker": maker["maker"], "criterion": key, **cell}
        for maker in result["makers"]
        for key, cell in maker["criteria"].items()
    ]
    ranges = [{"criterion": key, **found} for key, found in result["weight_ranges"].items()]
    flat = [{key: value for key, value in maker.items() if key != "criteria"} for maker in result["makers"]]
    return {
        "makers": pd.DataFrame(flat),
        "points": pd.DataFrame(criteria),
        "weight_ranges": pd.DataFrame(ranges),
        "smallest_change": pd.DataFrame(result["smallest_change"]),
        "questions": pd.DataFrame(result["questions"]),
        "landed_costs": pd.DataFrame(_cost_lines(result)),
    }


def _cost_lines(result: dict[str, Any]) -> list[dict[str, Any]]:
    """Return every line of every sum, with its maker, way, reading and order quantity."""
    return [
        {
            "maker": cost["maker"],
            "way": cost["way"],
            "chosen": cost["chosen"],
            "complete": cost["complete"],
            "read_as": reading["read_as"],
            "quantity": reading["quantity"],
            "line": line["name"],
            "group": line["group"],
            "low": line["cost"]["low"],
            "high": line["cost"]["high"],
            "working": line["working"],
        }
        for cost in result["landed_costs"]
        for reading in cost["readings"]
        for line in reading["lines"]
    ]
