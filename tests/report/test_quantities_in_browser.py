"""The drawing of costs against the quantity in Chromium: legible, on the screen at any width, rings on the curves."""

from dataclasses import replace

import pytest
from browsing import UNFOLD, overlapping
from ordered import PAID, case_of
from quoted import quote
from sized import selling

SHOWN = """() => {
  const drawing = document.querySelector('.drawing:has(.curves)');
  const words = [...drawing.querySelectorAll('text, span, b')].filter(one => !one.querySelector('span'));
  return {
    sizes: words.map(one => parseFloat(getComputedStyle(one).fontSize)),
    words: words.map(one => one.getBoundingClientRect()).filter(box => box.width && box.height)
      .map(box => [box.left, box.right, box.top, box.bottom]),
    wide: document.documentElement.scrollWidth };
}"""
# how far each ring is from the nearest point of any curve, in pixels
RINGS = """() => { const ground = document.querySelector('.ground:has(.curves)');
  const outer = ground.getBoundingClientRect(), curves = ground.querySelector('.curves');
  const inner = { left: outer.left, width: outer.width,
    top: outer.top + curves.y.baseVal.value, height: curves.height.baseVal.value };
  const at = point => { const [x, y] = point.split(',').map(Number);
    return [inner.left + inner.width * x / 100, inner.top + inner.height * y / 100]; };
  const segments = [...ground.querySelectorAll('polyline')].flatMap(line => {
    const points = line.getAttribute('points').split(' ').map(at);
    return points.slice(1).map((point, place) => [points[place], point]); });
  const gap = ([px, py], [[ax, ay], [bx, by]]) => {
    const length = (bx - ax) ** 2 + (by - ay) ** 2;
    const t = length ? Math.max(0, Math.min(1, ((px - ax) * (bx - ax) + (py - ay) * (by - ay)) / length)) : 0;
    return Math.hypot(px - ax - t * (bx - ax), py - ay - t * (by - ay)); };
  return [...ground.querySelectorAll('circle')].map(ring => { const box = ring.getBoundingClientRect();
    const middle = [(box.left + box.right) / 2, (box.top + box.bottom) / 2];
    return Math.min(...segments.map(segment => gap(middle, segment))); }); }"""

LONG = "Quillmoor & Daughters Enamelware Works"

pytestmark = pytest.mark.browser


def quoted():
    """Return a case whose cheapest maker changes thrice as more are ordered."""
    rows = {
        "a": quote("9.80", maker="Oxlip Kilns", covers=PAID, pieces=50),
        "b": quote("1290", maker=LONG, row=3, covers=PAID, price_is_for="all", pieces=200),
        "c": quote("6.20", maker="釉上彩陶瓷厂", row=4, covers=PAID, pieces=250, setup=120),
        "d": quote("4.10", maker="Thistlewharf", row=5, covers=PAID, pieces=400, setup=90),
        "e": quote("3.90", maker="Thistlewharf", row=6, covers=PAID, pieces=600, setup=90),
    }
    answers = {row.maker: 50 + 3 * at for at, row in enumerate(rows.values())}
    return replace(case_of(answers, rows), selling=selling("19.50", (140, 230, 310)))


@pytest.fixture(scope="module")
def opened(browser, render, tmp_path_factory):
    file = tmp_path_factory.mktemp("quantities") / "shortlist.html"
    file.write_text(render(quoted()), encoding="utf-8")
    context = browser.new_context(offline=True)
    page = context.new_page()
    page.goto(file.as_uri())
    page.evaluate(UNFOLD)
    yield page
    context.close()


@pytest.fixture(params=[320, 360, 1200])
def page(request, opened):
    opened.set_viewport_size({"width": request.param, "height": 800})
    return opened


def test_words_are_eleven_pixels_at_the_least(page):
    assert 11 <= min(page.evaluate(SHOWN)["sizes"])


def test_words_lie_apart_and_on_the_screen(page):
    shown = page.evaluate(SHOWN)

    assert [] == overlapping(shown["words"])
    assert page.viewport_size["width"] >= shown["wide"]


def test_rings_and_dots_lie_on_the_curves(page):
    gaps = page.evaluate(RINGS)

    assert len(gaps) > 5
    assert 2 >= max(gaps)
