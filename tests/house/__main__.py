"""The house: ``python tests/house`` prints its measures with their limits and the figures reached.

``--coverage`` runs the whole suite with branch coverage first, and judges it (some minutes). ``--mutants [MODULE …]``
runs mutation testing of the core, or of single modules of it, and lists the mutants that survive (an hour or more).
"""

import argparse
import sys
from pathlib import Path

sys.path[0] = str(Path(__file__).parents[1])
sys.path.insert(0, str(Path(__file__).parents[2]))

from house import branches, survivors
from house.core import core_modules
from house.table import coverage_measures, lines_of, measures


def main() -> int:
    """Print what is asked for, and return 1 where a limit is missed."""
    parser = argparse.ArgumentParser(prog="python tests/house", description="Measures of the house")
    parser.add_argument("--coverage", action="store_true", help="run the suite with branch coverage first")
    parser.add_argument("--mutants", nargs="*", type=Path, metavar="MODULE", help="mutation testing of the core")
    asked = parser.parse_args()
    if asked.mutants is not None:
        return survivors.show(asked.mutants or core_modules())
    status = branches.run_suite() if asked.coverage else 0
    kept = []
    for measure in (*measures(), *coverage_measures()):
        print(*lines_of(measure), sep="\n", flush=True)
        kept.append(measure.kept)
    print(f"\n{sum(kept)} of {len(kept)} limits are kept.")
    return status or int(not all(kept))


if __name__ == "__main__":
    sys.exit(main())
