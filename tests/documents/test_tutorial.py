"""The tutorial is true: every command in it is run in order, and the screen and the pages show what it says."""

import os
import re
from dataclasses import dataclass, field

import pytest
from documents.pictures import LARGEST, page_text, squeezed, words_in
from documents.tutorial import DOCUMENTS, TARGET, Shot, Story

from scorecard.cli.app import app

on_posix = pytest.mark.skipif(os.name == "nt", reason="the story starts the tool as macOS and Linux do")
TEXT = TARGET.read_text("utf-8")
PICTURES = re.findall(r"!\[(.*?)\]\((.*?)\)", TEXT)
NOT_IN_THE_STORY = {"demo", "watch"}


@dataclass
class Followed:
    """What came of following the tutorial once."""

    text: str = ""
    ran: list[str] = field(default_factory=list)
    pages: dict[str, str] = field(default_factory=dict)


@pytest.fixture(scope="module")
def followed(tmp_path_factory):
    found = Followed()

    def look(shot: Shot) -> None:
        found.pages[shot.name] = page_text(shot.page)

    story = Story(tmp_path_factory.mktemp("story"), look)
    found.text, found.ran = story.told(TEXT), story.ran
    return found


@on_posix
def test_the_screen_shows_what_the_tutorial_says(followed):
    assert followed.text.splitlines() == TEXT.splitlines(), "look at the change; if it is meant: python tests/documents"


@on_posix
def test_every_command_of_the_tool_has_its_place_in_the_story(followed):
    assert {command.callback.__name__ for command in app.registered_commands} - NOT_IN_THE_STORY == set(followed.ran)


@on_posix
def test_each_picture_still_shows_what_its_page_holds(followed):
    assert set(followed.pages) == {name for _, name in PICTURES}
    for name, page in followed.pages.items():
        words = words_in(DOCUMENTS / name)
        gone = [one for one in words if squeezed(one) not in page]
        assert (True, []) == (len(words) > 10, gone), f"{name}: run python tests/documents pictures"


def test_pictures_are_few_small_and_described():
    names = [name for _, name in PICTURES]

    assert sorted(names) == sorted(path.name for path in DOCUMENTS.glob("*.png"))
    assert len(names) <= 8
    assert all(len(alt.split()) > 6 for alt, _ in PICTURES)
    assert all((DOCUMENTS / name).stat().st_size <= LARGEST for name in names)


def test_links_to_the_reference_lead_somewhere():
    headings = re.findall(r"^#+ (.*)$", (DOCUMENTS / "reference.md").read_text("utf-8"), re.MULTILINE)
    anchors = {re.sub(r"[^\w -]", "", heading).lower().replace(" ", "-") for heading in headings}

    assert {link for link in re.findall(r"\]\(reference\.md#(.*?)\)", TEXT) if link not in anchors} == set()


@on_posix
def test_a_screen_that_shows_something_else_is_noticed(tmp_path):
    told = "```sh\n.venv/bin/scorecard start cards --kind paper\n```\n\n```text\nall is well\n```\n"

    assert "is ready" in Story(tmp_path / "a").told(told)
    with pytest.raises(AssertionError, match="ended with 3, not 0"):
        Story(tmp_path / "b").told("```sh\n.venv/bin/scorecard check --folder nowhere\n```\n")


@on_posix
def test_lines_go_into_their_table_and_new_tables_to_the_end(tmp_path):
    file = tmp_path / "criteria.toml"
    file.write_text('title = "a"\n\n[brief]\nitem = "b"\n# need_by = 2027\n\n[cost]\nitem = 1\n', "utf-8")
    lines = "[brief]\nneed_by = 2028\ncolours = 2\n\n[[order.designs]]\nname = 'x'\n"
    Story(tmp_path).told(f"<!-- lines of criteria.toml -->\n```toml\n{lines}```\n")

    told = file.read_text("utf-8")
    assert told.startswith('title = "a"\n\n[brief]\nitem = "b"\nneed_by = 2028\ncolours = 2\n[cost]\nitem = 1\n')
    assert told.endswith("\n[[order.designs]]\nname = 'x'\n")
