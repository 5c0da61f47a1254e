"""Writing weights into a criteria file: comments and order are kept, and the file as it was stays beside it."""

from collections.abc import Mapping
from pathlib import Path

import tomlkit
from tomlkit.items import Table

from scorecard.writing import keep_beside, write_whole


def save_weights(path: Path, weights: Mapping[str, float]) -> Path:
    """Write weights into a criteria file that was read without problems.

    Parameters
    ----------
    path : of the criteria file
    weights : as typed, by criterion key

    Returns
    -------
    where the file as it was is kept
    """
    text = path.read_bytes().decode("utf-8")
    mark = "\N{ZERO WIDTH NO-BREAK SPACE}" if text.startswith("\N{ZERO WIDTH NO-BREAK SPACE}") else ""
    document = tomlkit.parse(text.removeprefix(mark))
    criteria = document["criteria"]
    for key, weight in weights.items():
        table = criteria[key]
        _set(table, weight)
    kept = keep_beside(path)
    write_whole(path, (mark + tomlkit.dumps(document)).encode("utf-8"))
    return kept


def _set(table: Table, weight: float) -> None:
    table["weight"] = int(weight) if float(weight).is_integer() else weight
