"""What the fuzzer starts from: the small files of the corpus, the demo, and every criteria file that ships."""

import tempfile
import zipfile
from dataclasses import dataclass
from datetime import date
from io import BytesIO
from pathlib import Path

from hostile.corpus import FILES
from hostile.hostile_file import CRITERIA, PLAIN_CSV
from hostile.zips import BOOK

from scorecard.cli.laying_out import lay_out_demo

LARGEST = 60_000  # bytes; the corpus has the big ones itself
LARGEST_UNPACKED = 500_000


@dataclass(frozen=True, slots=True, kw_only=True)
class Seed:
    """A folder, and which of its files is to be changed.

    Parameters
    ----------
    contents : by file name
    changing : the name of one of them
    """

    contents: dict[str, bytes]
    changing: str


def seeds(shipped: Path) -> list[Seed]:
    """Return every seed.

    Parameters
    ----------
    shipped : the folder of the criteria files that ship
    """
    plain = {"criteria.toml": CRITERIA, "makers.xlsx": BOOK}
    found = [Seed(contents=plain, changing=name) for name in plain]
    found.append(Seed(contents={"criteria.toml": CRITERIA, "makers.csv": PLAIN_CSV}, changing="makers.csv"))
    for file in FILES:
        if not file.is_heavy:
            contents = file.contents()
            if _is_small(contents[file.file]):
                found.append(Seed(contents=contents, changing=file.file))
    demo = _demo()
    others = [Seed(contents=demo, changing=name) for name in demo] * (len(found) // 4)
    kinds = [{"criteria.toml": path.read_bytes(), "makers.csv": PLAIN_CSV} for path in sorted(shipped.glob("*.toml"))]
    return found + others + [Seed(contents=contents, changing="criteria.toml") for contents in kinds]


def _is_small(content: bytes) -> bool:
    """Say whether a file is small, unpacked too."""
    if len(content) > LARGEST:
        return False
    try:
        with zipfile.ZipFile(BytesIO(content)) as archive:
            return sum(part.file_size for part in archive.infolist()) <= LARGEST_UNPACKED
    except (zipfile.BadZipFile, NotImplementedError, OSError):
        return True


def _demo() -> dict[str, bytes]:
    """Return the demo's two files, which hold something of everything."""
    with tempfile.TemporaryDirectory() as room:
        folder = Path(room) / "demo"
        lay_out_demo(folder, date(2026, 11, 25))
        return {name: (folder / name).read_bytes() for name in ("criteria.toml", "makers.xlsx")}
