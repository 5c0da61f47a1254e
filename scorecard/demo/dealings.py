"""What came of the invented makers' samples, and what was looked into; the data serve the demo alone.

The sample of the maker that comes second is better than that of the leader: with some weight on sample marks it would
lead. One maker names nobody who could be asked.
"""

from collections.abc import Mapping
from datetime import date, timedelta
from typing import Any

# Asked, Received and Checked are so many days before the day on which the demo is laid out
SAMPLES: tuple[Mapping[str, Any], ...] = (
    {"Maker": "Brightholm Enamel", "Round": "photograph", "Asked": 13, "Received": 12, "Print": 9, "Colour": 8},
    {
        "Maker": "Brightholm Enamel",
        "Round": "sample",
        "Asked": 12,
        "Received": 4,
        "Print": 7,
        "Colour": "5-6",
        "Material": 7,
        "Finish": 7,
        "Position off mm": 2,
        "Decision": "another round",
    },
    {
        "Maker": "Quillmoor Works",
        "Round": "sample",
        "Asked": 9,
        "Received": 3,
        "Print": 9,
        "Colour": 9,
        "Material": 8,
        "Finish": 9,
        "Position off mm": 0.5,
    },
    {"Maker": "Oxlip Kilns", "Round": "sample", "Asked": 5},
)
CHECKS: tuple[Mapping[str, Any], ...] = (
    {
        "Maker": "Brightholm Enamel",
        "Check": "registered name and number",
        "State": "yes",
        "Evidence": "found in the public register",
        "Checked": 8,
    },
    {"Maker": "Brightholm Enamel", "Check": "who prints it", "State": "yes", "Evidence": "its own kiln", "Checked": 8},
    {"Maker": "Brightholm Enamel", "Check": "test report for these goods", "State": "waiting"},
    {"Maker": "Quillmoor Works", "Check": "reachable by phone or video", "State": "yes", "Checked": 6},
    {"Maker": "Oxlip Kilns", "Check": "references", "State": "no", "Checked": 5},
)
DAYS = {"Asked": "Asked on", "Received": "Received on", "Checked": "Date"}


def dealing_rows(day: date) -> dict[str, list[dict[str, Any]]]:
    """Return the rows of the sheets Samples and Checks by heading, blanks left out."""
    return {"Samples": [_row(row, day) for row in SAMPLES], "Checks": [_row(row, day) for row in CHECKS]}


def _row(row: Mapping[str, Any], day: date) -> dict[str, Any]:
    return {DAYS.get(key, key): day - timedelta(days=value) if key in DAYS else value for key, value in row.items()}
