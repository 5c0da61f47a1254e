from dataclasses import replace
from datetime import UTC, datetime

import pytest

from scorecard import __version__
from scorecard.case import SourceFile
from scorecard.errors import Place, Problem
from scorecard.report.sources import sources_of
from scorecard.report.texts import bare

MADE = datetime(2026, 11, 25, 14, 3, tzinfo=UTC)


def warning(code, cell="B2"):
    return Problem(
        code=code, place=Place(file="makers.xlsx", sheet="Makers", cell=cell), found="found", wanted="wanted"
    )


@pytest.fixture
def sources(field, assessed):
    def run(**parts):
        return sources_of(assessed(replace(field(2), **parts)), MADE)

    return run


def test_files_are_told_by_the_beginning_of_their_digest(sources):
    found = sources(sources=(SourceFile(name="makers.xlsx", digest="0123456789abcdef" * 4),))
    assert [("makers.xlsx", "0123456789abcdef")] == [(bare(name), digest) for name, digest in found.files]


def test_day_time_and_version_are_told(sources):
    found = sources()
    expected = ("25 November 2026", "25 November 2026, 14:03 UTC", __version__)
    assert expected == (found.as_of, found.made, found.version)


def test_cells_read_as_something_stand_apart_from_warnings(sources):
    found = sources(warnings=(warning("read-as"), warning("alike", "A3")))
    cells = [bare(notes.shown[0].place) for notes in (found.readings, found.warnings)]
    assert ["makers.xlsx, Makers!B2", "makers.xlsx, Makers!A3"] == cells


def test_of_very_many_warnings_a_hundred_are_shown(sources):
    found = sources(warnings=tuple(warning("alike", f"A{row}") for row in range(2, 132))).warnings
    assert (100, "30 more; to see them all: scorecard check") == (len(found.shown), found.more)
