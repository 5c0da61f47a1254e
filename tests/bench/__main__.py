"""All benchmarks: ``python tests/bench`` prints every ratio with its limit, and at the end how many limits are kept.

Each part runs in a process of its own, on the package of the folder that it stands in; a part is run alone as
``python tests/bench/commands.py``. The parts need scipy, pymcdm, scikit-criteria (the extra "peers") and Chromium.
"""

import subprocess
import sys
from pathlib import Path

from commands import ENVIRONMENT
from machine import about

HERE = Path(__file__).parent
PARTS = {
    "commands.py": "Whole commands against public yardsticks",
    "in_process.py": "Parts of the calculation against public yardsticks",
    "drawings.py": "The page against the same without its drawings",
    "reranking.py": "A change of weight in the browser",
}


def lines_of(part: str) -> list[str]:
    """Run a part, print its lines as they come, and return them."""
    said = []
    with subprocess.Popen([sys.executable, HERE / part], env=ENVIRONMENT, stdout=subprocess.PIPE, text=True) as run:
        for line in run.stdout or ():
            print(line, end="", flush=True)
            said.append(line.rstrip())
    if run.returncode:
        raise SystemExit(f"{part} ended with {run.returncode}")
    return said


def main() -> None:
    """Run every part, and count."""
    print(about())
    print("Median, least and greatest of the ratios, the limit, and whether the median keeps it")
    said = []
    for part, title in PARTS.items():
        print(f"\n{title}", flush=True)
        said += lines_of(part)
    kept, missed = (sum(line.endswith(word) for line in said) for word in ("kept", "MISSED"))
    print(f"\n{kept} of {kept + missed} limits are kept.")


if __name__ == "__main__":
    main()
