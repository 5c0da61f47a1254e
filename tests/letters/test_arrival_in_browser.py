"""Tally sheets, outcomes and care cards in Chromium: accessible, silent, within the screen, on A4."""

import re
from datetime import UTC, date, datetime
from decimal import Decimal

import pytest
from browsing import boxes, overlapping, violations
from inspection_cases import arrival, outcome

from scorecard.care import CareFacts, care_card
from scorecard.inspection.drawing import drawn, spots
from scorecard.inspection.faults import fault_list
from scorecard.inspection.outcome import PiecePrice
from scorecard.inspection.plans import sampling_plan
from scorecard.inspection.settings import USUAL_LIMITS
from scorecard.letters.arrival_page import Sheet, outcome_page, tally_page
from scorecard.letters.care_page import care_page

pytestmark = pytest.mark.browser

AS_OF, MADE = date(2026, 11, 25), datetime(2026, 11, 25, 10, tzinfo=UTC)
HOSTILE = "<script>alert(1)</script></style>" + "W" * 150
PRICE = PiecePrice(low=Decimal(5), high=Decimal("6.5"), currency="EUR", source="the quote")


def tally(maker="Fernhill", *, sampled=True):
    plan = sampling_plan(200, "II", USUAL_LIMITS) if sampled else None
    chosen = spots(drawn(200, plan.opened, 1), 24) if plan else ()
    came = arrival(maker=maker, per_carton=24, complain_until=date(2026, 12, 5))
    made = Sheet(arrival=came, lines=fault_list({}), plan=plan, drawn=chosen)
    return tally_page(made, title=maker, as_of=AS_OF, made=MADE, command="scorecard inspect --opened 32 B1=2")


def claim(maker="Fernhill"):
    plan = sampling_plan(200, "II", USUAL_LIMITS)
    came = arrival(maker=maker, lot=198, price=PRICE)
    return outcome_page(outcome(32, came=came, plan=plan, A1=1, B1=3, C1=2), title=maker, as_of=AS_OF, made=MADE)


def cards(item="350 ml enamel mug, wrap-around illustration", lines=3):
    facts = CareFacts(touches_food=True, for_children=False, flame="burns", sender="Ann Example, 1 Quay Street")
    card = care_card(item, ";".join(["wash at 30 °C at most, with nothing but the mildest soap"] * lines), facts)
    return care_page(card, ["Mind this"], per_page=card.per_page, pieces=200, made=MADE)


PAGES = {"tally": tally, "claim": claim, "cards": cards}


def sheets_of_paper(page):
    """Return how many A4 pages a page prints on, and whether each is A4 (595 by 842 points)."""
    paper = page.pdf(prefer_css_page_size=True)
    sizes = re.findall(rb"/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]", paper)
    return len(sizes), all(abs(float(w) - 595.3) < 1 and abs(float(h) - 841.9) < 1 for w, h in sizes)


@pytest.mark.parametrize("name", PAGES)
@pytest.mark.parametrize(("scheme", "width"), [("light", 1200), ("dark", 320)])
def test_axe_finds_nothing(opened, name, scheme, width):
    assert [] == violations(opened(PAGES[name](), width=width, scheme=scheme))


@pytest.mark.parametrize("name", PAGES)
def test_a_page_says_nothing_and_asks_for_nothing(opened, name):
    page = opened(PAGES[name](HOSTILE))
    assert ([], [page.url]) == (page.said, page.asked)


@pytest.mark.parametrize("name", PAGES)
@pytest.mark.parametrize("width", [320, 800])
@pytest.mark.parametrize("hostile", [False, True])
def test_nothing_scrolls_sideways(opened, name, width, hostile):
    page = opened(PAGES[name](HOSTILE) if hostile else PAGES[name](), width=width)
    assert page.evaluate("() => document.documentElement.scrollWidth") <= width


@pytest.mark.parametrize("name", PAGES)
def test_on_a_phone_every_table_and_card_is_seen_whole(opened, name):
    hidden = "() => [...document.querySelectorAll('.wide')].filter(one => one.scrollWidth > one.clientWidth).length"
    assert 0 == opened(PAGES[name](), width=360).evaluate(hidden)


def test_on_a_phone_one_card_stands_for_all(opened):
    page = opened(cards(lines=1), width=360)
    assert (1, True) == (len(boxes(page, "article")), page.get_by_text("the printed page holds 8 of them").is_visible())
    page.emulate_media(media="print")
    assert (8, False) == (len(boxes(page, "article")), page.get_by_text("the printed page holds").is_visible())


def test_a_sample_of_nine_cartons_prints_on_three_pages(opened):
    # what to open and how; cartons 1 to 5; cartons 6 to 9
    assert (3, True) == sheets_of_paper(opened(tally()))


def test_what_to_open_and_how_leaves_a_tenth_of_its_page_free(opened):
    # A4 within margins of 14 mm is 182 by 269 mm; fonts differ from one machine to the next
    mm = 96 / 25.4
    page = opened(tally(), width=round(182 * mm))
    page.emulate_media(media="print")
    bottom = boxes(page, ".chances")[0][3]
    assert bottom <= 0.9 * 269 * mm


def test_the_tally_prints_boxes_that_take_a_pencil(opened):
    page = opened(tally(sampled=False))
    page.emulate_media(media="print")
    heights = [bottom - top for _, _, top, bottom in boxes(page, ".tally tbody tr:not(.kind) td")]
    assert min(heights) >= 8 * 96 / 25.4


def test_the_message_prints_whole(opened):
    page = opened(claim())
    page.emulate_media(media="print")
    assert (True, False) == (page.locator("pre").is_visible(), page.locator("textarea").is_visible())


def test_the_message_can_be_copied_from_its_box(opened):
    assert opened(claim()).locator("textarea").input_value().startswith("Hello Fernhill,")


@pytest.mark.parametrize("lines", [1, 3, 8, 18])
def test_cards_print_on_one_page(opened, lines):
    assert (1, True) == sheets_of_paper(opened(cards(lines=lines)))


@pytest.mark.parametrize("lines", [1, 2, 8, 9, 18])
def test_no_card_is_fuller_than_it_is_large(opened, lines):
    page = opened(cards(lines=lines))
    page.emulate_media(media="print")
    fuller = (
        "() => [...document.querySelectorAll('article')].filter(one => one.scrollHeight > one.clientHeight + 1).length"
    )
    assert 0 == page.evaluate(fuller)


def test_a_card_lies_between_its_cuts(opened):
    page = opened(cards(lines=1))
    page.emulate_media(media="print")
    paper = boxes(page, ".paper")[0]
    first = boxes(page, "article")[0]
    mm = 96 / 25.4
    expected = [15 * mm, 105 * mm, 16.5 * mm, 82.5 * mm]
    found = [first[0] - paper[0], first[1] - paper[0], first[2] - paper[2], first[3] - paper[2]]
    assert pytest.approx(expected, abs=0.5) == found


def test_cards_do_not_overlap(opened):
    assert [] == overlapping(boxes(opened(cards()), "article"))


def test_only_the_cards_are_printed(opened):
    page = opened(cards())
    page.emulate_media(media="print")
    assert [False, False] == [one.is_visible() for one in page.locator(".notes").all()]
