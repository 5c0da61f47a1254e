"""The page in Chromium: accessible, legible, within the screen, silent, printable; light and dark, wide and narrow."""

import re
from dataclasses import replace
from pathlib import Path

import pytest
from browsing import UNFOLD, boxes, overlapping, overlaps, violations

SAMPLE = Path(__file__).parents[2] / "reports" / "sample-shortlist.html"
HOSTILE = (
    "<script>alert(1)</script>",
    "</style><style>*{display:none}",
    "W" * 200,
    "釉上彩陶瓷厂",
    "مصنع الخزف الأزرق",
)
SETTINGS = [(scheme, width) for scheme in ("light", "dark") for width in (320, 1200)]

pytestmark = pytest.mark.browser


@pytest.fixture(scope="module")
def html(field, render):
    return render(field(14))


@pytest.mark.parametrize(("scheme", "width"), SETTINGS)
def test_axe_finds_nothing(opened, html, scheme, width):
    page = opened(html, width=width, scheme=scheme)
    page.evaluate(UNFOLD)
    assert [] == violations(page)


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_axe_finds_words_that_are_too_faint(opened, html, scheme):
    page = opened(html, scheme=scheme)
    page.evaluate("() => document.documentElement.style.setProperty('--muted', '#888078')")
    page.evaluate("() => document.documentElement.style.setProperty('--paper', '#807870')")
    assert "color-contrast" in [kind for kind, _ in violations(page)]


def test_axe_finds_a_page_that_was_broken(opened, html):
    broken = html.replace('<html lang="en">', "<html>").replace("aria-label=", "data-label=")
    assert {"html-has-lang", "svg-img-alt"} <= {kind for kind, _ in violations(opened(broken))}


def test_the_page_says_nothing_and_asks_for_nothing(opened, html):
    page = opened(html)
    assert ([], [page.url]) == (page.said, page.asked)


def test_the_style_is_in_force(opened, html):
    page = opened(html)
    assert "rgb(251, 248, 242)" == page.evaluate("() => getComputedStyle(document.body).backgroundColor")


def test_another_style_is_refused(opened, html):
    page = opened(html.replace("</style>", "body { color: red }</style>"))
    assert any("Content Security Policy" in message for message in page.said)


def test_hostile_names_run_nothing_and_hide_nothing(opened, field, render):
    page = opened(render(field(5, HOSTILE)))
    assert ([], True) == (page.said, page.get_by_role("heading", name="The verdict").is_visible())


@pytest.mark.parametrize("names", [None, HOSTILE])
@pytest.mark.parametrize("width", [320, 360, 640, 800, 1200])
def test_nothing_scrolls_sideways(opened, field, render, width, names):
    page = opened(render(field(14, *([names] if names else []))), width=width)
    page.evaluate(UNFOLD)
    assert page.evaluate("() => document.documentElement.scrollWidth") <= width


def test_nothing_scrolls_sideways_with_text_twice_as_large(opened, html):
    page = opened(html, width=640)
    page.evaluate("() => { document.documentElement.style.fontSize = '200%' }")
    assert page.evaluate("() => document.documentElement.scrollWidth") <= 640


@pytest.mark.parametrize("width", [320, 1200])
def test_no_words_are_smaller_than_11_pixels(opened, html, width):
    page = opened(html, width=width)
    sizes = page.evaluate(
        """() => [...document.querySelectorAll('body *')]
            .filter(one => [...one.childNodes].some(node => node.nodeType === 3 && node.data.trim()))
            .map(one => parseFloat(getComputedStyle(one).fontSize))"""
    )
    assert (True, True) == (len(sizes) > 100, min(sizes) >= 11)


@pytest.mark.parametrize("width", [320, 1200])
@pytest.mark.parametrize("selector", [".axis span", ".ranking tbody :is(th, td)", ".receipt", "section"])
def test_neighbours_do_not_overlap(opened, html, selector, width):
    assert [] == overlapping(boxes(opened(html, width=width), selector))


def test_two_boxes_that_share_an_area_overlap():
    assert overlaps([0, 10, 0, 10], [5, 15, 5, 15])


@pytest.mark.parametrize("width", [320, 1200])
def test_dots_stay_on_the_screen(opened, html, width):
    found = boxes(opened(html, width=width), ".scale circle")
    assert (True, True) == (len(found) > 10, all(left >= 0 and right <= width for left, right, _, _ in found))


def test_a_dot_stands_at_its_score(opened, html):
    page = opened(html)
    score = float(page.locator(".ranking tbody tr td").nth(1).inner_text())
    left, right, _, _ = boxes(page, ".ranking .scale")[0]
    dot = boxes(page, ".ranking .scale circle")[0]
    assert pytest.approx(score, abs=0.2) == 100 * ((dot[0] + dot[1]) / 2 - left) / (right - left)


def roles(page):
    """Return how often the browser's own accessibility tree holds each role of a table."""
    session = page.context.new_cdp_session(page)
    nodes = session.send("Accessibility.getFullAXTree")["nodes"]
    told = [node["role"]["value"] for node in nodes if not node["ignored"]]
    return {role: told.count(role) for role in ("table", "row", "rowheader", "columnheader", "cell", "gridcell")}


def test_tables_stay_tables_on_a_narrow_screen(opened, html):
    assert roles(opened(html)) == roles(opened(html, width=320))


def test_the_keyboard_sees_where_it_is(opened, html):
    page = opened(html)
    for _ in range(2):
        page.keyboard.press("Tab")
    look = "() => { const one = document.activeElement; return [one.tagName, getComputedStyle(one).outlineStyle] }"
    assert ["A", "solid"] == page.evaluate(look)


def test_the_page_prints_white_even_in_the_dark(opened, html):
    page = opened(html, scheme="dark")
    page.emulate_media(media="print", color_scheme="dark")
    assert "rgb(255, 255, 255)" == page.evaluate("() => getComputedStyle(document.body).backgroundColor")


def test_print_leaves_out_what_only_a_screen_can_use(opened, html):
    page = opened(html)
    page.emulate_media(media="print")
    assert not page.get_by_role("navigation").is_visible()


def test_print_unfolds_the_arithmetic(opened, html):
    page = opened(html)
    page.emulate_media(media="print")
    assert len(boxes(page, ".working")) == page.locator("details:has(.working)").count()


def test_print_unfolds_every_receipt(opened, html):
    page = opened(html)
    page.emulate_media(media="print")
    shown = boxes(page, "#lost .receipt")
    assert (True, page.locator("#lost .receipt").count()) == (len(shown) > 3, len(shown))


def test_print_keeps_folded_what_else_is_and_says_so(opened, html):
    page = opened(html)
    page.emulate_media(media="print")
    folded = page.locator("details:not([open], .rule):not(:has(> .working, > .receipts)) > :nth-child(2)")
    seen = [one.is_visible() for one in folded.all()]
    assert (True, True, False) == (page.locator(".on-paper").is_visible(), len(seen) > 0, any(seen))


def test_what_was_unfolded_on_the_screen_is_printed(opened, html):
    page = opened(html)
    page.evaluate(UNFOLD)
    page.emulate_media(media="print")
    assert page.locator(".spans").is_visible()


@pytest.mark.parametrize("media", ["screen", "print"])
def test_only_paper_is_told_of_folds_on_paper(opened, html, media):
    page = opened(html)
    page.emulate_media(media=media)
    assert (media == "print") == page.locator(".on-paper").is_visible()


def test_the_ranking_begins_on_the_first_sheet_of_paper(opened, html):
    page = opened(html, width=680)
    page.emulate_media(media="print")
    assert boxes(page, "#ranking")[0][2] < 1000


def test_on_paper_the_words_before_the_ranking_stay_with_it(opened, html):
    page = opened(html)
    page.emulate_media(media="print")
    first = "() => getComputedStyle(document.querySelector('#ranking .body > p:not([hidden])')).breakAfter"
    assert "avoid" == page.evaluate(first)


@pytest.mark.parametrize("width", [800, 1000, 1190])
def test_the_table_of_plans_stays_within_its_box_and_breaks_no_word(opened, width):
    page = opened(SAMPLE.read_text("utf-8"), width=width)
    box, words = "el => el.parentElement.clientWidth - el.offsetWidth", "el => getComputedStyle(el).overflowWrap"
    plans = page.locator(".plans")
    found = {plans.locator(f"tbody tr:first-child td:nth-child({at})").evaluate(words) for at in (2, 3, 4)}
    assert (True, {"normal"}) == (plans.evaluate(box) >= 0, found)


def test_the_page_prints_on_a4(opened, html):
    paper = opened(html).pdf(prefer_css_page_size=True)
    assert (b"%PDF", True) == (paper[:4], b"/MediaBox [0 0 594.95" in paper or b"/MediaBox [0 0 595" in paper)


def test_a_page_with_set_aside_cells_and_contacts_is_accessible_too(opened, field, render):
    case = field(6)
    details = {"Web page": ("https://pots.example/x",) * 6, "Notes": ("kind",) * 6}
    html = render(replace(case, table=replace(case.table, details=details)), with_contacts=True)
    assert [] == violations(opened(html))


# an answer is words, be it a bare number
ALIGNMENT = """() => [...document.querySelectorAll('tbody td, tfoot td')]
  .filter(one => !one.matches('.working tbody td:nth-child(-n + 3)'))
  .filter(one => /^[<>−+]?[0-9][0-9.,]*$/.test(one.innerText.trim()))
  .filter(one => getComputedStyle(one).textAlign !== 'right').map(one => one.closest('table').className)"""


def test_the_page_that_axe_sees_holds_every_kind_of_drawing(html):
    assert [] == [name for name in ("against", "strip", "scale") if f'class="{name}"' not in html]


def test_numbers_stand_to_the_right_in_every_table(opened, html):
    page = opened(html)
    page.evaluate(UNFOLD)
    assert [] == page.evaluate(ALIGNMENT)


def test_a_number_that_stands_to_the_left_is_found(opened, html):
    page = opened(html)
    page.evaluate("() => document.querySelectorAll('.receipt td').forEach(one => { one.style.textAlign = 'left' })")
    assert {"receipt"} == set(page.evaluate(ALIGNMENT))


@pytest.mark.parametrize("selector", [".ranking td:nth-child(3)", ".receipt td", ".ranges td:nth-child(3)"])
def test_what_decides_is_told_to_one_decimal(opened, html, selector):
    page = opened(html)
    page.evaluate(UNFOLD)
    found = page.locator(selector).all_inner_texts()
    assert (True, []) == (len(found) > 0, [one for one in found if not re.fullmatch(r"[−+]?\d+\.\d|–", one)])
