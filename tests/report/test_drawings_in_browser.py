"""The drawings in Chromium: words apart, legible and on the screen, marks where the figures say, for any field."""

import random

import pytest
from browsing import UNFOLD, overlapping
from cases import make_case, numbers, rated

ODD = (
    "釉上彩陶瓷厂",
    "مصنع الخزف الأزرق",
    "👩🏽\u200d🎨 Kiln & 🐑 Wool",
    "Brightholm Enamelware and Vitreous Signage Manufacturing Company of the Western Isles",
    "W" * 60,
    "Jo",
)
PLAIN = ("Brightholm", "Cressel & Daughters", "Dunmorrow", "Ellerby", "Fennick", "Garrow")

# one list of boxes a drawing: of every word that is seen, cut where its box cuts it
WORDS = """() => [...document.querySelectorAll('.drawing')].map(drawing =>
  [...drawing.querySelectorAll('text, span, b')].filter(one => !one.querySelector('span'))
    .map(one => one.getBoundingClientRect()).filter(box => box.width && box.height)
    .map(box => [box.left, box.right, box.top, box.bottom]))"""
SIZES_OF_WORDS = """() => [...document.querySelectorAll('.drawing :is(text, span, b), .strip :is(th, td)')]
  .map(one => parseFloat(getComputedStyle(one).fontSize))"""
# how far the middle of every ring is from the nearest two lines of its drawing, in pixels
RINGS = """() => [...document.querySelectorAll('.ground')].flatMap(ground => {
  const value = (one, name) => one[name].baseVal.value;
  const lines = [...ground.querySelectorAll('line:not(.grid *, .present, .drop)')];
  return [...ground.querySelectorAll('circle')].map(ring => lines.map(line => {
    const t = value(ring, 'cx') / value(line, 'x2');
    return Math.abs(value(line, 'y1') + t * (value(line, 'y2') - value(line, 'y1')) - value(ring, 'cy'));
  }).sort((a, b) => a - b)[1]);
})"""
BARS = """() => [...document.querySelectorAll('.strip td:has(rect)')].map(cell => {
  const wide = name => cell.querySelector(name).getBoundingClientRect().width;
  return [parseFloat(cell.textContent), 100 * wide('rect') / wide('svg')];
})"""

pytestmark = pytest.mark.browser


def field_of(makers, criteria, names, seed=4):
    """Return a case whose leader many weights can change."""
    draw = random.Random(seed)
    told = [numbers(f"c{at}", draw.choice([5, 10, 20, 30]), title=f"Criterion {at}") for at in range(criteria)]
    rows = {
        names[at % len(names)] + (f" {at}" if at >= len(names) else ""): [
            draw.choice([draw.randrange(101), 100, (30, 80), 70]) for _ in range(criteria)
        ]
        for at in range(makers)
    }
    return make_case(told, rows)


def tangents():
    """Return a case in which eleven makers lead in turn as one weight grows: tangents of a parabola."""
    touching = [at / 10 for at in range(11)]
    rows = {f"{PLAIN[at % 6]} {at}": [100 * (2 * a - a * a), 100 - 100 * a * a] for at, a in enumerate(touching)}
    return rated((1, 1), rows)


CASES = {
    "2 makers": rated((3, 1), {"Brightholm": [90, 50], "Cressel & Daughters": [40, 80]}),
    "3 makers": rated((3, 1), {ODD[3]: [90, 50], ODD[4]: [40, 80], ODD[1]: [60, 70]}),
    "12 makers": field_of(12, 8, ODD),
    "60 makers": field_of(60, 15, PLAIN),
    "many crossings": tangents(),
}


@pytest.fixture(scope="module", params=CASES.values(), ids=CASES.keys())
def drawn(request, browser, render, tmp_path_factory):
    """Return a page with everything unfolded, opened once for all widths."""
    file = tmp_path_factory.mktemp("drawn") / "shortlist.html"
    file.write_text(render(request.param), encoding="utf-8")
    context = browser.new_context(offline=True)
    page = context.new_page()
    page.goto(file.as_uri())
    page.evaluate(UNFOLD)
    yield page
    context.close()


@pytest.fixture(params=[320, 360, 1200])
def page(request, drawn):
    drawn.set_viewport_size({"width": request.param, "height": 800})
    return drawn


def test_no_words_of_a_drawing_overlap(page):
    found = page.evaluate(WORDS)
    assert (True, []) == (len(found) > 0, [pair for words in found for pair in overlapping(words)])


def test_words_of_a_drawing_stay_on_the_screen(page):
    width = page.viewport_size["width"]
    assert [] == [box for words in page.evaluate(WORDS) for box in words if box[0] < 0 or box[1] > width]


def test_nothing_scrolls_sideways_in_a_field_of_any_size(page):
    assert page.evaluate("() => document.documentElement.scrollWidth") <= page.viewport_size["width"]


def test_no_words_of_a_drawing_are_smaller_than_11_pixels(page):
    assert min(page.evaluate(SIZES_OF_WORDS)) >= 11


def test_every_crossing_lies_on_two_lines(page):
    found = page.evaluate(RINGS)
    assert (True, True) == (len(found) > 0, max(found) < 0.5)


def test_a_bar_is_as_long_as_its_figure_says(page):
    found = page.evaluate(BARS)
    assert (True, []) == (len(found) > 0, [pair for pair in found if abs(pair[0] - pair[1]) > 1.5])


def test_words_that_are_pushed_together_are_found(opened, render):
    page = opened(render(CASES["many crossings"]))
    page.evaluate(
        "() => document.querySelectorAll('.names foreignObject').forEach(one => one.setAttribute('y', '5em'))"
    )
    assert [] != overlapping(page.evaluate(WORDS)[0])


def test_words_keep_apart_with_text_twice_as_large(opened, render):
    page = opened(render(CASES["many crossings"]))
    page.evaluate("() => { document.documentElement.style.fontSize = '200%' }")
    assert [] == overlapping(page.evaluate(WORDS)[0])


def test_a_narrow_screen_names_every_line_below_the_drawing(opened, render):
    page = opened(render(CASES["12 makers"]), width=320)
    numbers_at_lines = page.locator(".drawing").first.locator("b:visible").all_inner_texts()
    assert sorted(numbers_at_lines) == page.locator(".key").first.locator("b:visible").all_inner_texts()


def test_a_wide_screen_names_every_line_at_its_beginning(opened, render):
    page = opened(render(CASES["2 makers"]))
    assert {"Brightholm", "Cressel & Daughters"} == set(page.locator(".names").first.locator("span").all_inner_texts())
