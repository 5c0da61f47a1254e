"""The page in Chromium: accessible, within the screen, silent, whole in print; light and dark, wide and narrow."""

from datetime import UTC, date, datetime
from pathlib import Path

import axe_playwright_python
import numpy as np
import pytest
from cases import AS_OF, choices, make_case, numbers

from scorecard.brief import Brief
from scorecard.calculation import Calculation
from scorecard.criteria import Limit
from scorecard.letters.messages import round_of
from scorecard.letters.page import page
from scorecard.letters.wording import KINDS, Wording, shipped

AXE = (Path(axe_playwright_python.__file__).parent / "axe.min.js").read_text(encoding="utf-8")
RUN_AXE = "async () => (await axe.run()).violations.map(one => [one.id, one.nodes.map(node => node.target.join(' '))])"
UNFOLD = "() => document.querySelectorAll('details').forEach(one => { one.open = true })"
HOSTILE = "W" * 200
SETTINGS = [(scheme, width) for scheme in ("light", "dark") for width in (320, 360, 1200)]

pytestmark = pytest.mark.browser


@pytest.fixture(scope="module")
def html():
    asked = np.array([np.nan, *(float(date(2026, 11, day).toordinal()) for day in (13, 24, 11)), np.nan])
    replies = np.array([np.nan, np.nan, np.nan, float(date(2026, 11, 12).toordinal()), np.nan])
    methods = {"screen print": 100, "sticker": 0}
    rows = {"Oxlip": [90, None], "Tansy": [None, "sticker"], HOSTILE: [(5, 40), None], "陶器 Kiln": [7, None]}
    case = make_case(
        [numbers("years", 3, limit=Limit(at_least=3)), choices("print", 2, methods)],
        {**rows, "Vane": [1, "sticker"]},
        brief=Brief(item="mug", quantity=200, designs=4, need_by=date(2027, 5, 14)),
        asked_on=asked,
        answered_on=replies,
        details={"Contact": ("", "ask@tansy.example", HOSTILE, "", ""), "Web page": ("https://oxlip.example",) * 5},
    )
    made = round_of(Calculation.of(case, AS_OF), Wording(**{kind: shipped(kind) for kind in KINDS}), named=4)
    written = datetime(2026, 11, 25, 9, tzinfo=UTC)
    return page(made, written=written, enquire=f"scorecard enquire --folder {HOSTILE}", with_contacts=True)


@pytest.mark.parametrize(("scheme", "width"), SETTINGS)
def test_axe_finds_nothing(opened, html, scheme, width):
    shown = opened(html, width=width, scheme=scheme)
    shown.evaluate(UNFOLD)
    shown.evaluate(AXE)

    assert [] == shown.evaluate(RUN_AXE)


def test_axe_finds_a_page_that_was_broken(opened, html):
    shown = opened(html.replace('<html lang="en">', "<html>").replace("aria-label=", "data-label="))
    shown.evaluate(AXE)

    assert {"html-has-lang", "label"} <= {kind for kind, _ in shown.evaluate(RUN_AXE)}


@pytest.mark.parametrize("width", [320, 360, 1200])
def test_nothing_is_wider_than_the_screen(opened, html, width):
    shown = opened(html, width=width)
    shown.evaluate(UNFOLD)

    assert 0 >= shown.evaluate("document.documentElement.scrollWidth - innerWidth")


def test_the_page_says_nothing_and_asks_for_nothing(opened, html):
    shown = opened(html)

    assert ([], [shown.url]) == (shown.said, shown.asked)


def test_in_print_every_open_text_is_whole(opened, html):
    shown = opened(html)
    shown.emulate_media(media="print")
    hidden = "[...document.querySelectorAll('details[open] textarea')].map(b => b.scrollHeight - b.clientHeight)"

    assert all(pixels <= 1 for pixels in shown.evaluate(hidden))
