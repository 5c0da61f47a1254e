"""Mutation testing: every mutant of a module against the tests of that module, each in a forked process of its own.

pytest collects the tests once. For a fault in a function a child takes the faulty code in place of the sound one and
runs the tests until one fails. For a fault in a module's own lines (a table, a constant) the child forks off before
anything is imported, and collects for itself.
"""

import gc
import importlib.abc
import importlib.machinery
import importlib.util
import json
import os
import resource
import signal
import sys
import tempfile
import time
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, field
from pathlib import Path
from types import CodeType, FunctionType, ModuleType

import pytest
from house.mutants import Mutant, mutants_of

MEMORY = 4 * 2**30
LONGEST = 600  # seconds by the clock
OUTCOMES = {
    "killed": "killed by a failing test",
    "timed out": "killed by the time that it took",
    "survived": "survived",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Tried:
    """A mutant, what became of it, and the change with the line as it stands."""

    mutant: Mutant
    outcome: str
    text: str


@dataclass(slots=True)
class Mutation:
    """A plug-in of pytest that runs the mutants of one module; ``outcomes`` says what became of each."""

    module: Path
    outcomes: list[tuple[Mutant, str]] = field(default_factory=list)
    limit: float = 60
    child: bool = False

    def mutants(self, *, in_functions: bool) -> list[Mutant]:
        """Return the mutants within functions, or those of the module's own lines."""
        found = mutants_of(self.module.read_text("utf-8"))
        return [mutant for mutant in found if (mutant.function is not None) is in_functions]

    @pytest.hookimpl(tryfirst=True)
    def pytest_collection(self, session: pytest.Session) -> None:
        """Fork off the mutants of the module's own lines; each child goes on to collect, and to run."""
        from hypothesis import Phase, settings  # pytest rewrites it before anything else may load it

        phases = [Phase.explicit, Phase.generate]  # what fails need not be made small
        quick = settings(settings.get_profile("house"), phases=phases, database=None, max_examples=40)
        settings.register_profile("mutants", quick)
        settings.load_profile("mutants")
        session.config.option.maxfail = 1
        for mutant in self.mutants(in_functions=False):
            started = os.fork()
            if not started:
                self.child = True
                _prepare(self.limit)
                sys.meta_path.insert(0, _Faulty(self.module, mutant))
                return
            self.outcomes.append((mutant, _outcome(started)))

    @pytest.hookimpl(tryfirst=True)
    def pytest_runtestloop(self, session: pytest.Session) -> bool:
        """Run the sound code once, then every mutant within a function."""
        if self.child:
            _seconds_to_failure(session, session.items)
            os._exit(bool(session.testsfailed))
        sound, seconds = self._forked(session, session.items, None)
        if sound != "survived":
            raise pytest.UsageError(f"the tests of {self.module.name} fail without a mutant")
        self.limit = float(os.environ.get("MUTANT_SECONDS", 4)) + 5 * sum(seconds)
        items = [session.items[at] for at in sorted(range(len(seconds)), key=seconds.__getitem__)]  # the quick first
        functions = _functions(self.module)
        for mutant in self.mutants(in_functions=True):
            outcome, seconds = self._forked(session, items, lambda mutant=mutant: _infect(functions, mutant))
            self.outcomes.append((mutant, outcome))
            if outcome == "killed" and seconds:
                items.insert(0, items.pop(len(seconds) - 1))  # what found one is likely to find the next, too
        return True

    def _forked(
        self, session: pytest.Session, items: Sequence[pytest.Item], infect: Callable[[], None] | None
    ) -> tuple[str, list[float]]:
        """Return what a child makes of the tests, and the seconds of each that it ran, the one that failed last."""
        reading, writing = os.pipe()
        started = os.fork()
        if not started:
            try:
                _prepare(self.limit)
                if infect:
                    infect()
                seconds = _seconds_to_failure(session, items)
                os.write(writing, json.dumps(seconds).encode())
                os._exit(bool(session.testsfailed))
            finally:
                os._exit(1)
        os.close(writing)
        with os.fdopen(reading) as pipe:
            said = pipe.read()
        return _outcome(started), json.loads(said or "[]")


class _Faulty(importlib.abc.MetaPathFinder, importlib.machinery.SourceFileLoader):
    """Finds one module, and loads it with its fault."""

    def __init__(self, path: Path, mutant: Mutant) -> None:
        self.name = ".".join(path.relative_to(Path.cwd()).with_suffix("").parts)
        super().__init__(self.name, str(path))
        self.mutant = mutant

    def find_spec(
        self, fullname: str, path: object = None, target: ModuleType | None = None
    ) -> importlib.machinery.ModuleSpec | None:
        """Find the one module."""
        return importlib.util.spec_from_loader(fullname, self) if fullname == self.name else None

    def get_code(self, fullname: str) -> CodeType:
        """Return its code with the fault."""
        return compile(self.mutant.tree, self.path, "exec")


def _prepare(limit: float) -> None:
    """Be quiet, and end when the time or the memory is used up."""
    nowhere = os.open(os.devnull, os.O_WRONLY)
    os.dup2(nowhere, 1)
    os.dup2(nowhere, 2)
    resource.setrlimit(resource.RLIMIT_AS, (MEMORY, MEMORY))
    signal.setitimer(signal.ITIMER_PROF, limit)  # by the processor, since the machine may be busy
    signal.alarm(LONGEST)


def _outcome(started: int) -> str:
    """Wait for a child, and say what became of its mutant."""
    _, status = os.waitpid(started, 0)
    if os.WIFSIGNALED(status):
        return "timed out"
    return "killed" if os.WEXITSTATUS(status) else "survived"


def _seconds_to_failure(session: pytest.Session, items: Sequence[pytest.Item]) -> list[float]:
    """Run the tests until one fails, and return the seconds of the processor that each took."""
    seconds = []
    for item, following in zip(items, [*items[1:], None], strict=True):
        started = time.process_time()
        item.config.hook.pytest_runtest_protocol(item=item, nextitem=following)
        seconds.append(round(time.process_time() - started, 3))
        if session.testsfailed:
            break
    return seconds


def _functions(module: Path) -> dict[tuple[str, int], list[FunctionType]]:
    """Return the functions of a module that are in memory, by qualified name and first line."""
    found: dict[tuple[str, int], list[FunctionType]] = {}
    for each in gc.get_objects():
        if isinstance(each, FunctionType) and each.__code__.co_filename == str(module):
            code = each.__code__
            found.setdefault((code.co_qualname, code.co_firstlineno), []).append(each)
    return found


def _infect(functions: dict[tuple[str, int], list[FunctionType]], mutant: Mutant) -> None:
    """Give a function its faulty code, wherever it has been imported to."""
    faulty = {
        (code.co_qualname, code.co_firstlineno): code
        for code in _codes(compile(mutant.tree, "mutant", "exec"))
        if (code.co_qualname, code.co_firstlineno) == mutant.function
    }
    for function in functions[mutant.function]:
        function.__code__ = faulty[mutant.function]


def _codes(code: CodeType) -> Iterator[CodeType]:
    """Yield a code object and all within it."""
    yield code
    for each in code.co_consts:
        if isinstance(each, CodeType):
            yield from _codes(each)


def run(module: Path, tests: Sequence[str]) -> list[Tried]:
    """Run every mutant of a module against tests, in this process and its children."""
    mutation = Mutation(module.resolve())
    quiet = ["-q", "-s", "--tb=no", "-p", "no:cacheprovider", "-p", "no:cov", "-p", "no:xdist"]
    with tempfile.TemporaryDirectory() as folder:
        words = [*quiet, "-m", "not browser and not office and not peers", "--basetemp", f"{folder}/base", *tests]
        ended = pytest.main(words, plugins=[mutation])
    if ended not in {pytest.ExitCode.OK, pytest.ExitCode.NO_TESTS_COLLECTED}:
        raise SystemExit(f"{module}: pytest ended with {ended!r}")
    source = module.read_text("utf-8").splitlines()
    return [
        Tried(mutant=mutant, outcome=outcome, text=f"{mutant.change}: {source[mutant.line - 1].strip()}")
        for mutant, outcome in sorted(mutation.outcomes, key=lambda each: each[0].line)
    ]
