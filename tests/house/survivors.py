"""Mutation testing as it is shown: a line for each module, and one for each mutant that survives and is no equal.

An equal mutant does what the sound code does, so no test can tell them apart; each stands in
``equals.toml`` with why.
"""

import os
import subprocess
import sys
import tomllib
from collections.abc import Iterator, Sequence
from pathlib import Path

from house.mirrors import mirror
from house.mutation import OUTCOMES, Tried, run
from house.sources import ROOT

EQUAL = tomllib.loads((Path(__file__).parent / "equals.toml").read_text("utf-8"))


def show(modules: Sequence[Path]) -> int:
    """Run the mutants of each module in a process of its own, at the lowest priority; return 1 where any survives."""
    environment = {**os.environ, "CI": "true", "OPENBLAS_NUM_THREADS": "1", "PYTHONPATH": f"{ROOT}:{ROOT / 'tests'}"}
    words = [sys.executable, "-m", "house.survivors"]
    ended = [subprocess.run([*words, module.as_posix()], cwd=ROOT, env=environment).returncode for module in modules]
    return int(any(ended))


def lines_of(module: Path, tried: Sequence[Tried], equal: dict[str, str]) -> Iterator[str]:
    """Yield one line for the module, and one for each survivor that is no equal."""
    counts = {outcome: sum(each.outcome == outcome for each in tried) for outcome in OUTCOMES}
    told = [each for each in tried if each.outcome == "survived" and each.text not in equal]
    said = ", ".join(f"{counts[outcome]} {words}" for outcome, words in OUTCOMES.items())
    yield f"{module.as_posix()}: {len(tried)} mutants, {said}, {counts['survived'] - len(told)} of these equal"
    yield from (f"    {module.as_posix()}:{each.mutant.line}: {each.text}" for each in told)


def main(module: Path) -> int:
    """Run and show the mutants of one module."""
    os.nice(19)
    tried = run(module, [mirror(module).as_posix(), module.as_posix()])
    lines = list(lines_of(module, tried, EQUAL.get(module.as_posix(), {})))
    print(*lines, sep="\n", flush=True)
    return int(len(lines) > 1)


if __name__ == "__main__":
    sys.exit(main(Path(sys.argv[1])))
