"""One file of the corpus: how it is made, and what must come of it; and the plain folder that it is laid into."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field

CRITERIA = b"""\
[brief]
item = "enamel mug"
quantity = 200
designs = 4
currency = "EUR"

[criteria.years]
weight = 20
column = "Years trading"
unit = "years"
points = [[0, 0], [10, 100]]

[criteria.rating]
weight = 30
column = "Rating"
within = [0, 5]
points = [[4.0, 0], [5.0, 100]]

[criteria.minimum]
weight = 20
column = "Minimum order"
unit = "pieces"
points = [[50, 100], [500, 0]]

[criteria.method]
weight = 20
column = "Print method"
choices = { "kiln-fired transfer" = 100, "screen print" = 80, "sublimation" = 60 }

[criteria.days]
weight = 5
column = "Lead days"
unit = "days"
points = [[10, 100], [40, 0]]

[criteria.price]
weight = 5
column = "Price"
unit = "EUR"
points = [[2, 100], [9, 0]]
"""
HEADINGS = ["Maker", "Years trading", "Rating", "Minimum order", "Print method", "Lead days", "Price"]
ROWS = [
    ["Brightholm", 12, 4.7, 100, "kiln-fired transfer", 21, 4.25],
    ["Kilnside", 3, 4.9, 50, "screen print", 14, 5.5],
]
PLAIN_CSV = b"Maker,Years trading,Rating,Minimum order,Print method,Lead days,Price\n" + (
    b"Brightholm,12,4.7,100,kiln-fired transfer,21,4.25\nKilnside,3,4.9,50,screen print,14,5.5\n"
)

Bytes = Callable[[], bytes]
Answer = float | tuple[float, float] | None  # a number or the position of a choice, a range, unknown


@dataclass(frozen=True, slots=True, kw_only=True)
class HostileFile:
    """A file that nobody should have to think of.

    Parameters
    ----------
    name : what is odd about it
    file : as which it stands in the folder: "makers.xlsx", "makers.csv", "criteria.toml", or another kind
    build : returns its bytes
    problems : "CELL code", "KEY code" or "code" of each, in order; empty where it is read
    warnings : the same, but of how things were read only where ``readings`` says so; None where any will do
    makers : their names, where it is read; None where it does not matter
    answers : by criterion, of every maker, where they matter
    is_heavy : whether it is big enough to be run as a process of its own
    """

    name: str
    file: str
    build: Bytes
    problems: tuple[str, ...] = ()
    warnings: tuple[str, ...] | None = None
    makers: tuple[str, ...] | None = None
    answers: Mapping[str, tuple[Answer, ...]] = field(default_factory=dict)
    is_heavy: bool = False

    @property
    def is_read(self) -> bool:
        """Whether it is read, rather than refused."""
        return not self.problems

    def contents(self) -> dict[str, bytes]:
        """Return the files of a folder that holds this one beside a plain other."""
        files = {"criteria.toml": CRITERIA, self.file: self.build()}
        if self.file.startswith("criteria"):
            files = {"makers.csv": PLAIN_CSV, self.file: self.build()}
        return files


class Shelf:
    """A part of the corpus that is filled by decorating builders; a builder's name says what is odd."""

    def __init__(self, file: str) -> None:
        self.file = file
        self.files: list[HostileFile] = []

    def add(self, build: Bytes, *problems: str, name: str = "", **expected: object) -> Bytes:
        """Put a file on the shelf."""
        title = name or getattr(build, "__name__", "").replace("_", " ")
        fields = {"file": self.file} | expected
        self.files.append(HostileFile(name=title, build=build, problems=problems, **fields))
        return build

    def refused(self, *problems: str, **expected: object) -> Callable[[Bytes], Bytes]:
        """Return a decorator of the builder of a file that has these problems."""
        return lambda build: self.add(build, *problems, **expected)

    def read(self, **expected: object) -> Callable[[Bytes], Bytes]:
        """Return a decorator of the builder of a file that is read."""
        return lambda build: self.add(build, **expected)
