"""A weight changed on the page of 60 makers by 15 criteria, in Chromium: milliseconds until all is drawn anew."""

import random
import shutil
import sys
import tempfile
from datetime import UTC, datetime
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parent.parent))

from cases import AS_OF, make_case, numbers
from commands import row
from playwright.sync_api import sync_playwright

from scorecard.assessment import assess
from scorecard.report.page import page

FRAME = 1000 / 60  # milliseconds

CHANGE = """() => {
    const box = document.getElementById('try-box-0');
    return [...Array(60).keys()].map(weight => {
        box.value = String(weight + 1);
        const start = performance.now();
        box.dispatchEvent(new Event('input'));
        document.body.getBoundingClientRect();
        return performance.now() - start;
    });
}"""


def html(makers: int, criteria: int) -> str:
    """Return the page of a field of this size, a tenth of whose answers are ranges and a tenth unknown."""
    draw = random.Random(1)
    rows = {f"Maker {at}": [answer(draw) for _ in range(criteria)] for at in range(makers)}
    found = assess(make_case([numbers(f"c{at}", at % 4 + 1) for at in range(criteria)], rows), as_of=AS_OF)
    return page(found, found.as_json(), made=datetime(2026, 11, 25, tzinfo=UTC))


def answer(draw: random.Random) -> float | tuple[float, float] | None:
    """Return an answer: mostly a number."""
    low = draw.uniform(0, 80)
    return draw.choices([low, (low, low + 20), None], [8, 1, 1])[0]


def main() -> None:
    """Print the times, with ten rows of the ranking shown and with all."""
    program = shutil.which("chromium") or shutil.which("chromium-browser")
    with tempfile.TemporaryDirectory() as folder, sync_playwright() as driver:
        file = Path(folder, "shortlist.html")
        file.write_text(html(60, 15), encoding="utf-8")
        browser = driver.chromium.launch(executable_path=program, args=["--no-sandbox", "--disable-gpu"])
        tab = browser.new_page()
        tab.goto(file.as_uri())
        for name in ("10 rows shown", "all 60 shown"):
            times = tab.evaluate(CHANGE)
            print(row(f"milliseconds for a changed weight, 60 makers by 15 criteria, {name}", times, FRAME))
            tab.locator("#try-all").click()
        browser.close()


if __name__ == "__main__":
    main()
