"""Parts of the calculation against public yardsticks in one process, turn by turn: processor seconds and memory.

Answers are compared before anything is timed; a reference that would take minutes is timed on part of the work, which
is said beside it. Run it as ``python tests/bench/in_process.py``; it needs the extra "peers".
"""

import os

os.environ["OPENBLAS_NUM_THREADS"] = "1"  # before numpy is loaded: both sides on one thread

import re
import subprocess
import sys
from collections.abc import Callable, Iterator
from itertools import islice
from pathlib import Path
from statistics import median
from time import process_time
from typing import Any

import numpy as np
from numpy.typing import NDArray

from scorecard.sensitivity import rank_shares as drawing
from scorecard.sensitivity.can_lead import _Search, can_lead
from scorecard.sensitivity.smallest_change import smallest_changes
from scorecard.sensitivity.weightings import KINDS, Kind, Weightings

MAKERS, MANY, DRAWS, DRAWS_OF_FIRST, ROWS = 30, 5_000, 65_536, 16_384, 4_096
SHARES = np.array([15, 20, 20, 15, 10, 10, 10, 10]) / 110
ROUNDS = 9

Floats = NDArray[np.float64]
Work = Callable[[], Any]
Ranks = Callable[[Floats, Floats], NDArray[np.intp]]


def tables(makers: int, seed: int = 3) -> tuple[Floats, Floats]:
    """Return least and greatest points, a tenth of the answers unknown."""
    random = np.random.default_rng(seed)
    points = np.round(random.random((makers, len(SHARES))) * 100, 1)
    unknown = random.random(points.shape) < 0.1
    return np.where(unknown, 0.0, points), np.where(unknown, 100.0, points)


def seconds(work: Work) -> float:
    """Return how long some work keeps the processor."""
    start = process_time()
    work()
    return process_time() - start


def ratio(work: Work, yardstick: Work, times: float = 1.0, rounds: int = ROUNDS) -> list[float]:
    """Return how many times as long the work takes as ``times`` the yardstick, round by round, after one of each."""
    work(), yardstick()
    return [seconds(work) / (times * seconds(yardstick)) for _ in range(rounds)]


def row(name: str, ratios: list[float], limit: float, least: bool = False) -> str:
    """Return a row of the table; with ``least``, the ratio must not be below the limit."""
    middle = median(ratios)
    kept = "kept" if (middle >= limit if least else middle <= limit) else "MISSED"
    return f"{name:<78}{middle:>9.2f}{min(ratios):>9.2f}{max(ratios):>9.2f}{limit:>9.2f}  {kept}"


def same(ours: Any, theirs: Any, within: float) -> None:
    """Stop if two answers differ: a time for a wrong answer says nothing."""
    if not np.allclose(ours, theirs, rtol=0, atol=within):
        raise SystemExit(f"answers differ by {np.abs(np.asarray(ours) - theirs).max()}")


def draw_and_multiply(stream: Weightings, points: Floats, draws: int, rows: int = ROWS, unknown: int = 0) -> None:
    """Draw weightings, and so many answers with each, and multiply with the points: the yardstick of every share."""
    blocks = zip(stream.blocks(rows), stream.uniforms(unknown, rows), strict=False)
    for block, _ in islice(blocks, draws // rows):
        block @ points.T


def shares_of_ranks(low: Floats, high: Floats, stream: Weightings) -> Floats:
    """Return the rank shares over exactly so many draws."""
    drawing.FIRST_DRAWS = DRAWS
    return drawing.rank_shares_of_each(low, high, [stream], target=1.0)[0].shares


def ranks_by_sorting(points: Floats, stream: Weightings) -> Floats:
    """Return the rank shares by sorting positions, in one piece."""
    weights = np.concatenate(list(islice(stream.blocks(ROWS), DRAWS // ROWS)))
    order = np.argsort(-(weights @ points.T), axis=1, kind="stable")
    return np.array([np.bincount(column, minlength=len(points)) for column in order.T]).T / DRAWS


def rank_share_rows() -> Iterator[str]:
    """Yield rows on rank shares."""
    low, high = tables(MAKERS)
    for kind in KINDS:
        stream = Weightings(kind=kind, shares=SHARES)
        same(shares_of_ranks(high, high, stream), ranks_by_sorting(high, stream), 1e-9)
        for told, least in (("all answers known", high), ("a tenth open", low)):
            work, unknown = _shares_work(least, high, stream), int((least < high).sum())
            name = f"rank shares, {kind}, {told} / drawing these and one product"
            yield row(name, ratio(work, _product_work(stream, high, unknown)), 4.5)


def _shares_work(low: Floats, high: Floats, stream: Weightings) -> Work:
    return lambda: shares_of_ranks(low, high, stream)


def _product_work(stream: Weightings, points: Floats, unknown: int) -> Work:
    return lambda: draw_and_multiply(stream, points, DRAWS, unknown=unknown)


def loop_rows() -> Iterator[str]:
    """Yield rows on rank shares against loops over the draws with reference libraries, on part of the draws.

    Ours draw the weightings too, which takes about half of their time; the loops are given theirs.
    """
    _, points = tables(MAKERS)
    stream = Weightings(kind="any", shares=SHARES)
    for name, some, ranks, least in (
        ("pymcdm without validation", 300, _pymcdm(validation=False), 100),
        ("pymcdm as it comes", 60, _pymcdm(validation=True), 500),
        ("scikit-criteria", 30, _scikit_criteria, 2500),
    ):
        weights = next(stream.blocks(some))

        def loop(weights: Floats = weights, ranks: Ranks = ranks) -> NDArray[np.int64]:
            counts = np.zeros((MAKERS, MAKERS), dtype=np.int64)
            for one in weights:
                counts[np.arange(MAKERS), ranks(points, one)] += 1
            return counts

        order = np.argsort(-(weights @ points.T), axis=1, kind="stable")
        same(loop(), [np.bincount(np.flatnonzero(order == at) % MAKERS, minlength=MAKERS) for at in range(MAKERS)], 0)
        ratios = ratio(loop, _shares_work(points, points, stream), some / DRAWS)
        yield row(f"a loop of {name} ({some} draws, scaled) / rank shares", ratios, least, least=True)


def _pymcdm(*, validation: bool) -> Ranks:
    """Return what ranks by pymcdm: its weighted sum of points as they are, with or without its checks."""
    from pymcdm.helpers import rankdata
    from pymcdm.methods import WSM

    method, types = WSM(normalization_function=lambda column, cost=False: column), np.ones(len(SHARES))

    def ranks(points: Floats, weights: Floats) -> NDArray[np.intp]:
        scores = method(points, weights, types, validation=validation)
        return rankdata(scores, reverse=True).astype(np.intp) - 1

    return ranks


def _scikit_criteria(points: Floats, weights: Floats) -> NDArray[np.intp]:
    """Return ranks by scikit-criteria's weighted sum."""
    from skcriteria import mkdm
    from skcriteria.agg.simple import WeightedSumModel

    table = mkdm(points, [max] * len(weights), weights=weights)
    return np.asarray(WeightedSumModel().evaluate(table).rank_) - 1


def first_share_rows() -> Iterator[str]:
    """Yield the row on shares of first place among thousands."""
    _, points = tables(MANY)
    stream = Weightings(kind="any", shares=SHARES)
    weights = np.concatenate(list(islice(stream.blocks(256), DRAWS_OF_FIRST // 256)))
    leaders = np.concatenate([(block @ points.T).argmax(axis=1) for block in np.split(weights, 64)])
    expected = np.bincount(leaders, minlength=MANY) / DRAWS_OF_FIRST
    same(drawing.first_shares(points, points, stream, DRAWS_OF_FIRST).shares, expected, 2e-4)  # single precision
    ratios = ratio(
        lambda: drawing.first_shares(points, points, stream, DRAWS_OF_FIRST),
        lambda: draw_and_multiply(stream, points, DRAWS_OF_FIRST, 256),
    )
    yield row(f"share of first, {MANY:,} makers, {DRAWS_OF_FIRST:,} draws / drawing and products", ratios, 1.0)


def memory_rows() -> Iterator[str]:
    """Yield rows on the memory that drawing takes over its start, each from a process of its own."""
    for kind, draws in (("any", 2**16), ("any", 2**20), ("near", 2**20)):
        said = subprocess.run([sys.executable, __file__, kind, str(draws)], capture_output=True, text=True, check=True)
        name = f"MiB of rank shares over their start, {kind}, a tenth open, {draws:,} draws"
        yield row(name, [float(said.stdout)], 16)


def memory_of(kind: Kind, draws: int) -> float:
    """Return by how many MiB the peak memory of this process grows while rank shares are drawn."""
    low, high = tables(200)
    stream = Weightings(kind=kind, shares=SHARES)
    drawing.FIRST_DRAWS = 4_096
    drawing.rank_shares_of_each(low[:2], high[:2], [stream], target=1.0)  # loads what numpy loads late
    start = _peak()
    drawing.FIRST_DRAWS = draws
    drawing.rank_shares_of_each(low, high, [stream], target=1.0)
    return _peak() - start


def _peak() -> float:
    """Return the peak memory of this process in MiB, as Linux tells it; what its parent held does not count."""
    said = re.search(r"VmHWM:\s+(\d+) kB", Path("/proc/self/status").read_text("ascii"))
    return int(said[1]) / 1024 if said else float("nan")


def change_row() -> Iterator[str]:
    """Yield the row on smallest changes against a linear programme for each rival."""
    _, points = tables(MAKERS)
    leader = int((points @ SHARES).argmax())
    rivals = [maker for maker in range(MAKERS) if maker != leader]

    def programmes() -> list[float]:
        return [_least_move(points[leader] - points[rival]) for rival in rivals]

    same(np.nan_to_num(smallest_changes(points, SHARES, leader).moved[rivals], nan=-1), programmes(), 1e-9)
    hundred = ratio(programmes, lambda: [smallest_changes(points, SHARES, leader) for _ in range(100)], rounds=5)
    yield row("a linear programme for each of 29 rivals / smallest changes", [100 * one for one in hundred], 1000, True)


def _least_move(leads: Floats) -> float:
    """Return the least weight moved that closes a lead, or -1 where nothing does."""
    from scipy.optimize import linprog

    criteria = len(leads)
    found = linprog(
        np.full(2 * criteria, 0.5),
        A_ub=[np.concatenate([leads, -leads])],
        b_ub=[-leads @ SHARES],
        A_eq=[[1] * criteria + [-1] * criteria],
        b_eq=[0],
        bounds=[(0, None)] * criteria + [(0, share) for share in SHARES],
        method="highs",
    )
    return float(found.fun) if found.success else -1.0


def can_lead_rows() -> Iterator[str]:
    """Yield the rows on who can lead among thousands against linear programmes for a few, the answers compared.

    The nearest weighting is held to a hundredth of a programme for each maker, its proof to less than half of that.
    """
    _, points = tables(MANY)
    asked = np.random.default_rng(1).choice(MANY, MANY // 100, replace=False).tolist()
    few = asked[:20]
    found = can_lead(points, SHARES)
    same([found[maker].possible for maker in few], [_best_margin(points, maker) >= -1e-9 for maker in few], 0)
    same([_moved(found[maker].moved) for maker in asked], [_nearest(points, maker) for maker in asked], 1e-9)
    ratios = ratio(_on(_proven, points), lambda: [_best_margin(points, one) for one in few], rounds=3)
    yield row(f"can lead, each of {MANY:,} makers, a proof / {len(few)} programmes", ratios, 1.0)
    ratios = ratio(_on(can_lead, points), lambda: [_nearest(points, one) for one in asked], rounds=3)
    yield row(f"the nearest weighting of each of them / {len(asked)} programmes for it", ratios, 1.0)


def _moved(part: float | None) -> float:
    """Return the part of all weight moved, or -1 where nothing lets a maker lead."""
    return -1.0 if part is None else part


def _nearest(points: Floats, maker: int) -> float:
    """Return the least part of all weight to move until nobody beats a maker, or -1, by a linear programme."""
    from scipy.optimize import linprog

    behind = np.delete(points, maker, axis=0) - points[maker]
    criteria = len(SHARES)
    found = linprog(
        np.full(2 * criteria, 0.5),
        A_ub=np.hstack([behind, -behind]),
        b_ub=-behind @ SHARES,
        A_eq=[[1] * criteria + [-1] * criteria],
        b_eq=[0],
        bounds=[(0, None)] * criteria + [(0, share) for share in SHARES],
        method="highs",
    )
    return float(found.fun) if found.success else -1.0


def _proven(points: Floats, shares: Floats) -> None:
    """Prove of every maker whether it can lead, without the nearest weighting."""
    _Search(points).settle(shares, range(len(points)))


def _on(work: Callable[[Floats, Floats], Any], points: Floats) -> Work:
    return lambda: work(points, SHARES)


def _best_margin(points: Floats, maker: int) -> float:
    """Return the greatest least lead that any weighting gives a maker, by a linear programme."""
    from scipy.optimize import linprog

    behind = np.delete(points, maker, axis=0) - points[maker]
    found = linprog(
        [*[0.0] * len(SHARES), -1.0],
        A_ub=np.hstack([behind, np.ones((len(behind), 1))]),
        b_ub=np.zeros(len(behind)),
        A_eq=[[*[1.0] * len(SHARES), 0.0]],
        b_eq=[1],
        bounds=[(0, None)] * len(SHARES) + [(None, None)],
        method="highs",
    )
    return float(-found.fun)


def main() -> None:
    """Print a row for each part."""
    print(f"numpy {np.__version__}; medians, least and greatest of {ROUNDS} rounds or fewer, and the limit")
    for rows in (rank_share_rows, loop_rows, first_share_rows, memory_rows, change_row, can_lead_rows):
        for one in rows():
            print(one, flush=True)


if __name__ == "__main__":
    if len(sys.argv) > 1:
        print(memory_of(sys.argv[1], int(sys.argv[2])))  # type: ignore[arg-type]  # one of the kinds, from memory_rows
    else:
        main()
