"""``watch``: score again whenever a file is saved, say what changed in one line, and let an open report follow."""

import gc
import time
from collections.abc import Iterator
from contextlib import contextmanager
from datetime import datetime
from pathlib import Path
from typing import Any

import typer

from scorecard.assessment import Assessment
from scorecard.cli.gate import say, show_json, tell_problems
from scorecard.cli.scoring import REPORTS, Inputs, next_step, written
from scorecard.cli.tables import plain, visible
from scorecard.errors import InputError, Problem, ScorecardError
from scorecard.reading.folder import CRITERIA_FILE, MAKERS_FILES, refuse_empty
from scorecard.sentences import verdict_sentence
from scorecard.watching.following import following, waiting_page
from scorecard.watching.saves import Saves
from scorecard.watching.serving import Served
from scorecard.watching.turn import turn
from scorecard.words import counted, listed, rounded

EVERY = 0.5  # seconds between two looks at the files
SHOWN = 3  # problems on the page
MARGIN_SHOWN = 0.05  # of a score: less would be shown as 0.0


def watch_folder(inputs: Inputs, *, with_contacts: bool, as_json: bool) -> None:
    """Score a folder now and whenever one of its files is saved, until Ctrl-C."""
    gc.enable()  # a watch is long
    inputs.day()  # a day that is none is wrong usage, not something to wait for
    refuse_empty(inputs.folder, all_is_missing=inputs.criteria is None and inputs.makers is None)
    watch = _Watch(inputs, with_contacts=with_contacts, as_json=as_json)
    try:
        with _served() as served, turn(inputs.folder / REPORTS / ".watching", words_for_another(served)):
            watch.begin(served)
            while True:
                time.sleep(EVERY)
                watch.look()
    except KeyboardInterrupt:
        watch.end()


@contextmanager
def _served() -> Iterator[Served | None]:
    """Serve while the watch runs; without, where the system gives no port."""
    try:
        served = Served()
    except OSError as error:
        say(
            f"No page can follow, since this computer gives no address for one ({error.strerror or error}). The report "
            "itself is made anew all the same: load it again after each save."
        )
        yield None
        return
    try:
        yield served
    finally:
        served.close()


def words_for_another(served: Served | None) -> str:
    """Return what another watch on the same folder is told."""
    return f"its report is at {served.address}" if served else "its report is not served"


class _Watch:
    """What a watch knows from run to run."""

    def __init__(self, inputs: Inputs, *, with_contacts: bool, as_json: bool) -> None:
        self._inputs, self._with_contacts, self._as_json = inputs, with_contacts, as_json
        self._files = files_of(inputs)
        self._saves = Saves(*self._files)
        self._served: Served | None = None
        self._last: Assessment | None = None
        self._page = ""
        self._runs, self._version, self._is_gone = 0, 0, False

    def begin(self, served: Served | None) -> None:
        """Say what is watched and where the report is, and score for the first time."""
        self._served = served
        names = listed(dict.fromkeys(path.name for path in self._files if path.exists()))
        self._tell(f"Watching {names} in {self._inputs.folder.resolve()}. Save one, and the makers are ranked again.")
        if served:
            self._tell(
                f"Report that follows: {served.address} (open it in your browser; closing it there ends nothing)"
            )
        self._tell("Ctrl-C ends the watch.")
        self._run()

    def look(self) -> None:
        """Score again if a file was saved; say so if the folder is gone, or there again."""
        is_gone = not self._inputs.folder.is_dir()
        if is_gone != self._is_gone:
            self._is_gone = is_gone
            self._say_of_folder()
        if not is_gone and self._saves.look():
            self._run()

    def _say_of_folder(self) -> None:
        folder = self._inputs.folder
        if self._is_gone:
            words = f"The folder {folder} is not there any more: the watch waits for it; Ctrl-C ends the watch."
        else:
            words = f"The folder {folder} is there again."
        say(f"{clock()} {words}")
        self._show(words)

    def end(self) -> None:
        """Say that the watch has ended, and what comes next."""
        self._tell("\nThe watch has ended.")
        if self._last is not None:
            self._tell(f"Report: {self._report.resolve()}")
            self._tell(f"Next: {next_step(self._last, self._inputs)}")
        else:
            self._tell(f"Next: {self._inputs.started.command('check')}")

    @property
    def _report(self) -> Path:
        return self._inputs.folder / REPORTS / "shortlist.html"

    def _run(self) -> None:
        """Score, print one line, and show the new report; where that cannot be, say why, and keep the last one."""
        self._runs += 1
        try:
            assessment, _ = written(self._inputs, with_contacts=self._with_contacts)
            self._page = self._report.read_text(encoding="utf-8")
        except InputError as error:
            self._tell_problems(error)
        except (ScorecardError, OSError) as error:
            say(f"{clock()} {error}")
            self._show(f"The report could not be made anew; this is the last one. {error}")
        else:
            self._version += 1
            self._tell_run(assessment)
            self._last = assessment

    def _tell_run(self, assessment: Assessment) -> None:
        if self._as_json:
            show_json(watch_result(self._runs, self._last, assessment))
        self._tell(f"{clock()} {what_changed(self._last, assessment)}")
        self._show(f"Follows the files: made anew at {clock()}. {what_changed(self._last, assessment)}")

    def _tell_problems(self, error: InputError) -> None:
        number = counted(len(error.problems), "problem")
        stays = "the last good report stays" if self._page else "there is no report yet"
        say(f"{clock()} {number} to mend; {stays}:" if not self._as_json else f"{clock()} {number}; {stays}.")
        tell_problems(error, as_json=self._as_json, heading=None)
        self._show(f"{number} to mend; {stays}. {in_short(error.problems)}")

    def _tell(self, words: str) -> None:
        """Print a line where words are wanted."""
        if not self._as_json:
            typer.echo(words)

    def _show(self, words: str) -> None:
        """Show the last good report in the browser, with what is said of the last run."""
        if self._served:
            page = self._page or waiting_page(words)
            self._served.show(following(page, self._version), self._version, words)


def files_of(inputs: Inputs) -> tuple[Path, ...]:
    """Return the files that are watched: those named, or those that a folder may hold."""
    criteria = inputs.criteria or inputs.folder / CRITERIA_FILE
    makers = [inputs.makers] if inputs.makers else [inputs.folder / name for name in MAKERS_FILES]
    return criteria, *makers


def clock() -> str:
    """Return the time of day."""
    return f"{datetime.now():%H:%M:%S}"


def in_short(problems: tuple[Problem, ...]) -> str:
    """Return the first problems in a line."""
    more = len(problems) - SHOWN
    return " ".join([*map(str, problems[:SHOWN]), *([f"{more} more are listed in the terminal."] if more > 0 else [])])


def what_changed(before: Assessment | None, after: Assessment) -> str:
    """Return in one line who leads, and whether that has changed.

    Parameters
    ----------
    before : the last good run; None for the first
    """
    now = leaders_of(after)
    if not now:
        return "No maker passes every limit."
    if before is None or not leaders_of(before):
        return f"{_lead(now, after)}{_by(after)}.{_close(after)}"
    still, by = _lead(now, after, "still "), _by(after)
    was = leaders_of(before)
    if was != now:
        return f"The leader changes from {listed(was)} to {listed(now)}{f', ahead{by}' if by else ''}.{_close(after)}"
    if _scores(before) == _scores(after):
        return f"No score has changed: {still}{by}.{_close(after)}"
    changed = "; other scores have changed" if by == _by(before) else f" (before:{_by(before)})"
    return f"{still}{by}{changed}.{_close(after)}"


def leaders_of(assessment: Assessment) -> list[str]:
    """Return the leaders' names as a terminal can show them."""
    return [visible(assessment.case.table.makers[maker]) for maker in assessment.ranking.leaders]


def _lead(names: list[str], assessment: Assessment, still: str = "") -> str:
    """Return who leads; of one that is too close to call, that it is ahead."""
    if len(names) > 1:
        return f"{listed(names)} {still}lead together"
    return f"{names[0]} is {still}ahead" if assessment.verdict.kind == "close" else f"{names[0]} {still}leads"


def _close(assessment: Assessment) -> str:
    """Return the verdict where it is too close to call between makers of different scores; else ""."""
    is_one = len(assessment.ranking.leaders) == 1
    return f" {plain(verdict_sentence(assessment))}." if is_one and assessment.verdict.kind == "close" else ""


def _by(assessment: Assessment) -> str:
    margin = assessment.ranking.margin
    if margin is None or len(assessment.ranking.leaders) != 1:
        return ""
    return f" by {rounded(margin)}" if margin >= MARGIN_SHOWN else " by less than 0.1"


def _scores(assessment: Assessment) -> dict[str, tuple[float, int]]:
    ranking = assessment.ranking
    rows = zip(assessment.case.table.makers, ranking.scores.tolist(), ranking.ranks, strict=True)
    return {name: (score, int(rank)) for name, score, rank in rows}


def watch_result(run: int, before: Assessment | None, after: Assessment) -> dict[str, Any]:
    """Return what ``scorecard watch --json`` prints of one run."""
    result = after.as_json()
    kept = ("title", "as_of", "leaders", "leader", "margin", "set_aside", "warnings")
    changes = before is not None and leaders_of(before) != leaders_of(after)
    return {"schema": "scorecard-watch/1", "run": run, "leader_changes": changes, **{key: result[key] for key in kept}}
