import re
from base64 import b64encode
from dataclasses import replace
from hashlib import sha256
from html.parser import HTMLParser

import pytest
from cases import AS_OF, make_case, numbers
from sourcing import BRIEF, folder_of

from scorecard.criteria import Limit
from scorecard.page_policy import worn
from scorecard.reading.folder import read_folder
from scorecard.report.extent import MOST_BYTES, SHORT_BYTES
from scorecard.report.page import HERE, SECTIONS

HOSTILE = (
    "<script>alert(1)</script>",
    "=1+1",
    "evil\u202efdp.exe\x00",
    "{{ 7 * 7 }} {% raw %}",
    "</style><style>*{display:none}",
    '" onmouseover="alert(1)',
    "釉上彩陶瓷厂",
    "مصنع الخزف",
    "👩🏽\u200d🎨 Kiln",
    "W" * 200,
    "javascript:alert(1)",
)
ORDER = [
    "The verdict",
    "The ranking",
    "Where points were lost",
    "Weights to try",
    "How firm the choice is",
    "Ruled out, and why",
    "What to ask next",
    "Costs and dates",
    "All the arithmetic",
    "What was read",
]
CONTACTS = {"Web page": ("https://pots.example/x",) * 9, "Contact": ("anna@pots.example",) * 9, "Notes": ("kind",) * 9}


class Parts(HTMLParser):
    """Elements, their attributes and the text of a page."""

    VOID = frozenset({"meta", "line", "circle", "use", "rect", "input"})
    CELLS, ROWS = ("td", "th"), ("td", "th", "tr")
    ENDED_BY = dict.fromkeys(CELLS, CELLS) | {"tr": ROWS} | dict.fromkeys(("tbody", "tfoot"), (*ROWS, "thead", "tbody"))
    ENDED_WITH = dict.fromkeys(("table", "template"), (*ROWS, "thead", "tbody", "tfoot"))

    def __init__(self, html):
        super().__init__()
        self.tags, self.attributes, self.open, self.misnested, self.words = [], [], [], [], []
        self.feed(html)

    def handle_starttag(self, tag, attrs):
        self.tags.append(tag)
        self.attributes += attrs
        self.end(self.ENDED_BY.get(tag, ()))
        if tag not in self.VOID:
            self.open.append(tag)

    def handle_startendtag(self, tag, attrs):
        self.tags.append(tag)
        self.attributes += attrs

    def end(self, left_open):
        """End what HTML lets a page leave open."""
        while self.open and self.open[-1] in left_open:
            self.words.append(" ")
            self.open.pop()

    def handle_endtag(self, tag):
        self.end(self.ENDED_WITH.get(tag, ()))
        if not self.open or self.open.pop() != tag:
            self.misnested.append(tag)

    def handle_data(self, data):
        self.words.append(data)

    @property
    def text(self):
        return " ".join("".join(self.words).split())


@pytest.fixture(scope="module")
def html(field, render):
    return render(field(9))


@pytest.fixture(scope="module")
def hostile(field, render):
    case = field(len(HOSTILE), HOSTILE)
    table = replace(case.table, details={"Web page": HOSTILE, "Notes": HOSTILE})
    return render(replace(case, title="<script>alert(2)</script>", table=table), with_contacts=True)


def test_sections_come_in_the_order_of_the_design(html):
    assert ORDER == re.findall(r'<h2 id="[^"]+">([^<]+)</h2>', html)


def test_the_contents_line_leads_to_every_section(html):
    assert [one.name for one in SECTIONS[1:]] == re.findall(r'<li><a href="#([a-z]+)">', html)


def test_every_maker_is_there(field, html):
    text = Parts(html).text
    assert [] == [name for name in field(9).table.makers if name not in text]


def test_elements_are_nested_well(html):
    parts = Parts(html)
    assert ([], []) == (parts.misnested, parts.open)


def test_the_known_share_is_told_in_words(html):
    assert re.search(r"known: \d+ of 100", Parts(html).text)


def test_the_same_assessment_gives_the_same_bytes(field, render, html):
    assert html == render(field(9))


def test_the_policy_allows_the_very_style_that_is_there(html):
    style = re.search(r"<style>(.*?)</style>", html, re.DOTALL)[1]
    digest = b64encode(sha256(style.encode()).digest()).decode()
    assert f"style-src &#39;sha256-{digest}&#39;" in html


def test_the_policy_allows_nothing_else(html):
    policy = re.search(r'Content-Security-Policy" content="([^"]+)"', html)[1].replace("&#39;", "'")
    kinds = [part.split()[0] for part in policy.split("; ")]
    allowed = ["default-src", "style-src", "script-src", "base-uri", "form-action"]
    assert (allowed, True) == (kinds, "default-src 'none'" in policy)


def test_the_policy_allows_the_very_script_that_is_there(html):
    script = re.search(r"<script>(.*?)</script>", html, re.DOTALL)[1]
    digest = b64encode(sha256(script.encode()).digest()).decode()
    assert f"script-src &#39;sha256-{digest}&#39;;" in html


def test_no_attribute_styles_or_runs_anything(hostile):
    names = {name for name, _ in Parts(hostile).attributes}
    assert set() == {name for name in names if name == "style" or name.startswith("on")}


def test_no_script_is_there_but_the_pages_own_and_its_data(hostile):
    own = ['<script type="application/json" id="trying-data">', "<script>"]
    assert own == re.findall(r"<script[^>]*>", hostile, re.IGNORECASE)


def test_hostile_names_are_there_as_text(hostile):
    text = Parts(hostile).text
    assert [] == [name for name in HOSTILE if name.isprintable() and name not in text]


def test_hidden_signs_are_seen(hostile):
    assert "evil\ufffdfdp.exe\ufffd" in Parts(hostile).text


def test_names_are_isolated(hostile):
    assert "<bdi>مصنع الخزف</bdi>" in hostile


def test_no_isolate_mark_is_left_in_the_text(hostile):
    assert not re.search("[\u2066-\u2069]", Parts(hostile).text)


def test_no_address_but_anchors_where_links_are_hostile(hostile):
    assert {"#"} == {value[0] for name, value in Parts(hostile).attributes if name in ("href", "src")}


def test_contact_details_stay_out(field, render):
    case = field(9)
    html = render(replace(case, table=replace(case.table, details=CONTACTS)))
    assert not re.search(r"pots\.example|kind", html)


def test_contact_details_are_there_when_asked_for(field, render):
    case = field(9)
    html = render(replace(case, table=replace(case.table, details=CONTACTS)), with_contacts=True)
    link = '<a href="https://pots.example/x" rel="noopener noreferrer">https://pots.example/x</a>'
    assert f"{link} (pots.example)" in html


def test_nobody_ranked_has_a_page_of_its_own(render):
    html = render(make_case([numbers("a", 1, limit=Limit(at_least=50))], {"Brightholm": [1]}))
    assert "Nobody is ranked: every maker fails a limit." in Parts(html).text


def test_one_ranked_maker_has_no_rival(render):
    text = Parts(render(make_case([numbers("a", 1)], {"Brightholm": [1]}))).text
    assert "Brightholm is the only maker that is ranked" in text


def test_above_500_makers_the_page_says_where_the_rest_is(render):
    rows = {f"M{at}": [at % 97] for at in range(501)}
    text = Parts(render(make_case([numbers("a", 1)], rows))).text
    assert "These are the 100 best; 401 more are in the results workbook, shortlist.xlsx." in text


def test_thirty_makers_on_eight_criteria_take_under_200_kilobytes(field, render):
    html = render(field(30))

    assert (True, 30) == (len(html.encode()) <= SHORT_BYTES == 200_000, html.count('<table class="working'))


def test_thirty_makers_with_quotes_freight_samples_and_days_take_no_more(tmp_path, field, render):
    names = field(30).table.makers
    quotes = [[name, "2026-11-05", 200, 3 + at / 9, "each", "EUR", "goods", 20, 40] for at, name in enumerate(names)]
    freight = [
        [name, way, cost, "EUR", days] for name in names for way, cost, days in (("sea", 180, 40), ("air", 420, 8))
    ]
    folder_of(
        tmp_path,
        {
            "Makers": [["Maker", "Minimum order"], *([name, 100 + at] for at, name in enumerate(names))],
            "Quotes": [["Maker", "Quoted on", "Pieces", "Price", "Price is for", "Currency", "Price covers", "Days",
                        "Set-up"], *quotes],
            "Freight": [["Maker", "Way", "Cost", "Currency", "Days"], *freight],
            "Samples": [["Maker", "Round", "Print", "Colour"], *([name, "sample", 7, 8] for name in names)],
            "Checks": [["Maker", "Check", "State"], *([name, "references", "yes"] for name in names)],
        },
        brief=BRIEF.replace("[criteria", "need_by = 2027-05-14\n[criteria", 1),
    )  # fmt: skip
    case = read_folder(tmp_path, as_of=AS_OF)
    html = render(
        replace(field(30), costs=case.costs, schedule=case.schedule, samples=case.samples, checks=case.checks)
    )

    assert len(html.encode()) <= SHORT_BYTES
    assert ["By when to order", "The sums, line by line", "Before money moves"] == [
        said for said in ("By when to order", "The sums, line by line", "Before money moves") if said in html
    ]


def test_names_without_end_leave_the_page_within_its_bounds(render):
    criteria = [numbers(f"c{at}", 1, title=f"Criterion {at} " + "x" * 30, limit=Limit(at_least=1)) for at in range(15)]
    rows = {f"{at} " + "陶" * 196: [None] * 15 for at in range(500)}
    assert len(render(make_case(criteria, rows)).encode()) <= MOST_BYTES


def schemes():
    style = worn(HERE / "style.css")["style"]
    blocks = re.findall(r":root \{(.*?)\}", style, re.DOTALL)
    light = dict(re.findall(r"--(\w+): (#\w+)", blocks[0]))
    return {
        name: light | dict(re.findall(r"--(\w+): (#\w+)", block)) for name, block in zip(NAMES, blocks, strict=True)
    }


NAMES = ("light", "dark", "print")


def luminance(colour):
    """Return relative luminance as WCAG 2.2 defines it."""
    whole = "".join(sign * 2 for sign in colour[1:]) if len(colour) == 4 else colour[1:]
    channels = [int(whole[at : at + 2], 16) / 255 for at in (0, 2, 4)]
    linear = [one / 12.92 if one <= 0.04045 else ((one + 0.055) / 1.055) ** 2.4 for one in channels]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


def contrast(one, other):
    darker, lighter = sorted(map(luminance, (one, other)))
    return (lighter + 0.05) / (darker + 0.05)


def test_black_on_white_has_the_published_contrast():
    assert pytest.approx(21.0) == contrast("#000", "#ffffff")  # WCAG 2.2, definition of contrast ratio


@pytest.mark.parametrize("scheme", NAMES)
@pytest.mark.parametrize(("ink", "least"), [("text", 4.5), ("muted", 4.5), ("ink", 4.5), ("line", 3.0)])
def test_text_and_marks_stand_out_from_the_ground(scheme, ink, least):
    """WCAG 2.2, success criteria 1.4.3 (text) and 1.4.11 (marks)."""
    colours = schemes()[scheme]
    assert contrast(colours[ink], colours["paper"]) >= least
