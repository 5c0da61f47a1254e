"""The fuzzer: ``python tests/fuzz --minutes 60`` changes files at random and tells which the tool takes badly.

Every input has a number, from which it is made anew: ``python tests/fuzz --only NUMBER --keep FOLDER`` tries one alone,
and leaves its folder. Inputs are tried in processes of a thousand each, so that one that ends its process is found too.
"""

import argparse
import subprocess
import sys
import tempfile
import time
from pathlib import Path
from random import Random

TESTS = Path(__file__).resolve().parent.parent
sys.path[:0] = [str(TESTS), str(TESTS.parent)]

from fuzz.mutations import mutated  # noqa: E402 - found only now
from fuzz.oracle import fault  # noqa: E402
from fuzz.seeds import seeds  # noqa: E402

BATCH = 1_000
THOROUGH = 7  # every so many inputs are read twice, and scored to the last file


def try_inputs(numbers: range, told: Path, keep: Path | None) -> None:
    """Try inputs, each number being written down before its try; finds go to standard output."""
    sources = seeds(TESTS.parent / "criteria")
    for number in numbers:
        told.write_text(str(number), "utf-8")
        draw = Random(number)
        seed = draw.choice(sources)
        with tempfile.TemporaryDirectory() as room:
            folder = Path(room)
            if keep is not None:
                folder = keep
                folder.mkdir(parents=True, exist_ok=True)
            for name, content in seed.contents.items():
                changed = mutated(content, name, draw) if name == seed.changing else content
                (folder / name).write_bytes(changed)
            found = fault(folder, thorough=number % THOROUGH == 0)
        if found:
            print(f"{number}: {found}", flush=True)


def run(first: int, last: float, until: float) -> int:
    """Try inputs from a number on, in processes, until the time is over; return how many, and print each find once."""
    known: set[str] = set()
    number = first
    with tempfile.TemporaryDirectory() as room:
        told = Path(room) / "number"
        while number < last and time.monotonic() < until:
            end = int(min(number + BATCH, last))
            command = [
                sys.executable,
                __file__,
                "--from",
                str(number),
                "--inputs",
                str(end - number),
                "--told",
                str(told),
            ]
            done = subprocess.run(command, stdout=subprocess.PIPE, text=True, check=False)
            lines = done.stdout.splitlines()
            if done.returncode:
                lines.append(f"{told.read_text('utf-8')}: the process ended with {done.returncode}")
                end = int(told.read_text("utf-8")) + 1
            for line in lines:
                kind = line.partition(": ")[2]
                if kind not in known:
                    known.add(kind)
                    print(line, flush=True)
            number = end
    print(f"{number - first:,} inputs tried, {len(known)} kinds of find", flush=True)
    return len(known)


def main() -> None:
    """Parse, and run."""
    options = argparse.ArgumentParser(description=__doc__)
    options.add_argument("--minutes", type=float, default=60)
    options.add_argument("--from", dest="first", type=int, default=0, help="the number of the first input")
    options.add_argument("--inputs", type=float, default=float("inf"), help="how many at most")
    options.add_argument("--only", type=int, help="try the input of this number alone")
    options.add_argument("--keep", type=Path, help="leave its folder here")
    options.add_argument("--told", type=Path, help=argparse.SUPPRESS)
    chosen = options.parse_args()
    if chosen.only is not None or chosen.told:
        first, count = (chosen.only, 1) if chosen.only is not None else (chosen.first, int(chosen.inputs))
        with tempfile.TemporaryDirectory() as room:
            try_inputs(range(first, first + count), chosen.told or Path(room) / "number", chosen.keep)
        return
    finds = run(chosen.first, chosen.first + chosen.inputs, time.monotonic() + 60 * chosen.minutes)
    raise SystemExit(1 if finds else 0)


if __name__ == "__main__":
    main()
