"""The demo's page in Chromium, wide, narrow and on paper: no figure is broken, no heading parted from its table."""

from datetime import UTC, datetime
from io import BytesIO

import pytest
from browsing import UNFOLD
from cases import AS_OF
from pypdf import PdfReader

import scorecard
from scorecard.cli.laying_out import lay_out_demo
from scorecard.report.page import page as page_of

# figures that stand on more than one line, and the class of their table
BROKEN = r"""() => { const found = [], walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  for (let node; (node = walk.nextNode());) {
    if (node.parentElement.closest('script, style')) continue;
    for (const one of node.data.matchAll(/[−+]?\d[\d.,]*\d/g)) {
      const range = document.createRange();
      range.setStart(node, one.index);
      range.setEnd(node, one.index + one[0].length);
      const lines = new Set([...range.getClientRects()].filter(box => box.width).map(box => Math.round(box.top)));
      if (lines.size > 1) found.push([one[0], node.parentElement.closest('table')?.className ?? null]); } }
  return found; }"""
# show one part of the page alone, below an empty space of so many pixels
ALONE = """([id, height]) => { const space = document.createElement('div'), part = document.getElementById(id);
  document.querySelectorAll('header, footer, section').forEach(one => { one.hidden = one !== part; });
  document.getElementById('space')?.remove();
  Object.assign(space, { id: 'space', textContent: 'space' }).style.height = `${height}px`;
  part.before(space); }"""
SETTINGS = [(1600, "screen"), (1280, "screen"), (1000, "screen"), (390, "screen"), (680, "print")]

pytestmark = pytest.mark.browser


@pytest.fixture(scope="module")
def html(tmp_path_factory):
    folder = tmp_path_factory.mktemp("tables") / "demo"
    lay_out_demo(folder, AS_OF)
    assessment = scorecard.assess(scorecard.read_folder(folder), as_of=AS_OF)
    return page_of(assessment, assessment.as_json(), made=datetime(2026, 11, 25, 10, tzinfo=UTC))


@pytest.fixture(params=SETTINGS, ids=lambda setting: f"{setting[1]}-{setting[0]}")
def page(request, opened, html):
    width, media = request.param
    shown = opened(html, width=width)
    shown.emulate_media(media=media)
    shown.evaluate(UNFOLD)
    return shown


def test_no_figure_is_broken(page):
    assert [] == page.evaluate(BROKEN)


def test_nothing_scrolls_sideways(page):
    assert page.evaluate("() => document.documentElement.scrollWidth") <= page.viewport_size["width"]


def test_a_broken_figure_is_found(page):
    page.evaluate(
        "() => { const cell = document.querySelector('.sizes td'); cell.style.cssText = "
        "'display: block; width: 2ch; white-space: normal; overflow-wrap: anywhere' }"
    )
    assert [["1652.00", "sizes stacks"]] == page.evaluate(BROKEN)


@pytest.mark.parametrize("part", ["out", "ask"])
def test_a_head_of_a_table_is_printed_with_its_first_row(opened, html, part):
    page = opened(html)
    head = page.locator(f"#{part} thead th").first.inner_text().split()[0]
    first = page.locator(f"#{part} tbody th").first.inner_text().split()[0]
    for height in range(820, 1000, 20):
        page.evaluate(ALONE, [part, height])
        sheet = PdfReader(BytesIO(page.pdf(prefer_css_page_size=True))).pages[0].extract_text()
        assert (height, head in sheet) == (height, first in sheet)
