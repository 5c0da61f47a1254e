"""The order sheet as a page: what stands on it, complete and not, on the screen and on paper."""

from datetime import UTC, date, datetime
from io import BytesIO

import pytest
from browsing import boxes, overlapping, violations
from order_folder import CRITERIA, ORDER, QUOTES, lay_out
from pypdf import PdfReader

from scorecard.costed import with_costs
from scorecard.letters.order_page import order_page
from scorecard.order_sheet import order_sheet
from scorecard.reading.folder import read_folder

AS_OF = date(2026, 11, 25)
HOSTILE = "<script>alert(1)</script>" + "W" * 120


def page_of(path, maker="Fernhill", **files):
    case = with_costs(read_folder(lay_out(path, **files), as_of=AS_OF), AS_OF)
    sheet = order_sheet(case, case.table.makers.index(maker), AS_OF)
    return order_page(sheet, written=datetime(2026, 11, 25, 9, tzinfo=UTC))


@pytest.fixture(scope="module")
def complete(tmp_path_factory):
    return page_of(tmp_path_factory.mktemp("complete"))


@pytest.fixture(scope="module")
def draft(tmp_path_factory):
    order = ORDER.replace("complain_days = 30\n", "").replace("centred opposite", HOSTILE)
    return page_of(tmp_path_factory.mktemp("draft"), order=order)


def test_a_complete_sheet_has_a_place_to_sign_and_no_word_of_missing(complete):
    assert (True, False, False) == (
        "For the maker: ____" in complete,
        "ot complete" in complete,
        "ot settled" in complete,
    )


def test_a_sheet_that_lacks_something_has_no_place_to_sign(draft):
    assert (False, True) == ("____" in draft, "<h1>Draft of an order</h1>" in draft)


def test_what_is_missing_stands_at_the_head_with_where_to_settle_it(draft):
    asked = "until how many days after arrival you may complain (complain_days in [order] of the criteria file)"

    assert draft.index(asked) < draft.index("Specification")


@pytest.mark.parametrize(
    ("has_tax", "words"),
    [
        ("price_has_tax = true", "<dd><bdi>any is inside these prices, and none comes on top</bdi></dd>"),
        ("price_has_tax = false", "<td>20 % of 1120.00 EUR, on top of the price</td><td>224.00 EUR</td>"),
        ("", '<dt>Sales tax</dt><dd><i class="open">not settled yet</i></dd>'),
    ],
)
def test_a_sheet_without_a_border_says_where_the_sales_tax_is(tmp_path, has_tax, words):
    assert words in page_of(tmp_path, criteria=CRITERIA.replace("price_has_tax = true", has_tax))


def test_text_of_the_user_cannot_become_part_of_the_page(draft):
    assert ("<script" in draft, "&lt;script&gt;" in draft) == (False, True)


@pytest.mark.parametrize(
    "words",
    [
        "A. Keeper, Light Lane 1, Dingle",
        "Harbour light, file harbour-light.pdf",
        "180 mm wide, 80 mm high",
        "place ± 2 mm, size ± 1 mm",
        "195 to 210 pieces (up to 2.5 % fewer and 5 % more)",
        "60.00 EUR × 2 (per design)",
        "1120.00 EUR",
        "336.00 EUR (30 % of the bill)",
        "784.00 EUR, before the goods are sent",
        "DAP my door (Incoterms 2020)",
        "Light Lane 1, Dingle, Ireland",
        "11 May 2027",  # a Tuesday: the working days 12 to 14 May are for receiving and packing
        "They are to be at your door by 11 May 2027: you need them by 14 May 2027, and receiving and packing take 3 "
        "working days of yours (receiving_days of [schedule], assumed)",
        "taken until 30 days after arrival",
        "the artwork and everything made from it belong to the buyer",
        "tools, screens, moulds and print files belong to the maker",
        "A bank transfer seldom comes back",
        "answer for the goods as their manufacturer",
    ],
)
def test_a_complete_sheet_says(complete, words):
    assert words in complete


def test_of_more_than_500_pieces_a_sample_is_opened(tmp_path):
    from order_folder import CRITERIA

    text = page_of(tmp_path, criteria=CRITERIA.replace("quantity = 200", "quantity = 1000"))

    # MIL-STD-105E, general level II, lot of 501 to 1,200: letter J, 80 pieces; limit 2.5: 5 and 6
    assert "80 pieces, drawn at random, are opened" in text
    assert "Major faults (limit 2.5 of 100): in 80 pieces, up to 5 are within it, 6 or more are over it" in text


@pytest.mark.browser
@pytest.mark.parametrize(("scheme", "width"), [("light", 320), ("dark", 1200)])
def test_in_the_browser_it_is_accessible_silent_and_no_wider_than_the_screen(opened, draft, scheme, width):
    shown = opened(draft, width=width, scheme=scheme)

    assert [] == violations(shown)
    assert ([], [shown.url]) == (shown.said, shown.asked)
    assert 0 >= shown.evaluate("document.documentElement.scrollWidth - innerWidth")


def printed(shown):
    """Return the texts of the pages of a printed sheet, spaces evened out, and their sizes in points."""
    pages = PdfReader(BytesIO(shown.pdf(prefer_css_page_size=True))).pages
    sizes = {(round(float(page.mediabox.width)), round(float(page.mediabox.height))) for page in pages}
    return [" ".join(page.extract_text().split()) for page in pages], sizes


@pytest.mark.browser
def test_every_printed_page_of_a_draft_says_that_it_is_not_complete(opened, draft):
    pages, sizes = printed(opened(draft))

    assert ({(595, 842)}, True) == (sizes, len(pages) > 2)  # A4
    assert all("not complete: until how many days after arrival" in page for page in pages)


@pytest.mark.browser
def test_what_is_for_the_buyer_alone_prints_on_a_page_of_its_own(opened, complete):
    pages, _ = printed(opened(complete))

    assert [False, False, True] == ["At your door" in page for page in pages]
    assert ("For you alone" in pages[-1], "Agreed" in pages[-1]) == (True, False)


HEADINGS = (
    *("Still missing", "Specification", "Before the full run", "Quantity", "Price", "Packing", "Delivery"),
    *("Check on arrival", "Whose it is", "Agreed", "For you alone"),
)


@pytest.mark.browser
@pytest.mark.parametrize("designs", [1, 3, 6, 9, 14, 25])
def test_no_row_is_cut_by_the_end_of_a_page_and_no_heading_stands_at_its_foot(opened, tmp_path, designs):
    rows = "".join(
        f'[[order.designs]]\nname = "Light {at}"\nfile = "light{at}.pdf"\ncolours = "as on the sample, shade{at}x"\n'
        for at in range(designs)
    )
    criteria = CRITERIA.replace("designs = 2", f"designs = {designs}")
    order = ORDER.partition("[[order.designs]]")[0].replace("complain_days = 30\n", "") + rows
    pages = PdfReader(BytesIO(opened(page_of(tmp_path, criteria=criteria, order=order)).pdf(prefer_css_page_size=True)))
    texts = [page.extract_text() for page in pages.pages]

    assert [1] * designs == [
        sum(f"light{at}.pdf" in text and f"shade{at}x" in text for text in texts) for at in range(designs)
    ]
    feet = [[line for line in text.splitlines() if line.strip() and " of " not in line[:8]][-1] for text in texts]
    assert [] == [foot for foot in feet if foot.strip() in HEADINGS]


@pytest.mark.browser
def test_a_draft_of_four_designs_prints_on_two_pages_and_one_for_the_buyer(opened, tmp_path):
    order = ORDER.partition("[[order.designs]]")[0].replace("complain_days = 30\n", "").replace("remedy", "# remedy")
    pages, _ = printed(opened(page_of(tmp_path, criteria=CRITERIA.replace("designs = 2", "designs = 4"), order=order)))

    assert [False, False, True] == ["For you alone" in page for page in pages]


@pytest.mark.browser
def test_on_a_phone_no_word_of_the_bill_is_squeezed(opened, complete):
    shown = opened(complete, width=360)

    assert all(right - left > 300 for left, right, _, _ in boxes(shown, ".prices tbody td:nth-child(2)"))
    assert [] == overlapping(boxes(shown, ".prices :is(tbody, tfoot) :is(th, td):not(:empty)"))


def test_a_maker_without_a_quote_has_a_draft_too(tmp_path):
    assert "a quote (the sheets Quotes and Freight)" in page_of(tmp_path, maker="Cold Quay", Quotes=QUOTES[:2])
