"""The page with its drawings against the same page without them, in one process: how many times the seconds.

Drawings are scores against the weights that can change the leader, and rank shares as strips, from the views to the
last byte. Run it where templates are kept compiled, as they are once the package is installed.
"""

import tempfile
import time
from collections.abc import Callable
from datetime import UTC, date, datetime
from pathlib import Path

from commands import row
from inputs import folder

from scorecard import assess, read_folder
from scorecard.assessment import Assessment
from scorecard.report import page as report
from scorecard.report.crossings import Crossings, crossings_of
from scorecard.report.strips import Strips, strips_of

MADE = datetime(2026, 11, 25, 10, tzinfo=UTC)
LIMIT = 1.3
PAIRS = 61
MOST_BYTES = {30: 200_000, 500: 1_200_000}  # of the page, by how many makers it ranks


def draw(assessment: Assessment, result: dict[str, object]) -> str:
    """Return the whole page."""
    report.crossings_of, report.strips_of = crossings_of, strips_of
    return report.page(assessment, result, made=MADE)


def leave_out(assessment: Assessment, result: dict[str, object]) -> str:
    """Return the page without its drawings."""
    report.crossings_of, report.strips_of = (lambda _: Crossings()), (lambda _: Strips())
    return report.page(assessment, result, made=MADE)


def seconds(make: Callable[[], object]) -> float:
    """Return how long one run takes."""
    start = time.perf_counter()
    make()
    return time.perf_counter() - start


def compare(makers: int, room: Path) -> list[str]:
    """Return rows of the table for so many makers: the time, and where there is a limit the bytes."""
    assessment = assess(read_folder(folder(room / str(makers), makers)), as_of=date(2026, 11, 25))
    result = assessment.as_json()
    whole, bare = (lambda: draw(assessment, result)), (lambda: leave_out(assessment, result))
    size = (len(whole().encode()), len(bare().encode()))
    ratios = [seconds(whole) / seconds(bare) for _ in range(PAIRS)]
    middle = sorted(ratios)[PAIRS // 10 : -PAIRS // 10]  # without the runs that something else held up
    rows = [row(f"page of {makers} makers, {size[0]:,} bytes / without drawings, {size[1]:,}", middle, LIMIT)]
    most = MOST_BYTES.get(makers)
    return rows if most is None else [*rows, row(f"  its bytes, of {most:,}", [size[0] / most], 1.0)]


if __name__ == "__main__":
    with tempfile.TemporaryDirectory() as place:
        for count in (12, 30, 60, 500):
            print("\n".join(compare(count, Path(place))), flush=True)
