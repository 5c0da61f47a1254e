"""Weights tried in Chromium: the page's figures against the command's, keyboard, hostile names, mangled addresses."""

import random
from dataclasses import replace
from datetime import UTC, datetime
from pathlib import Path
from urllib.parse import quote

import axe_playwright_python
import numpy as np
import pytest
import tomlkit
from cases import AS_OF, choices, make_case, numbers

from scorecard.answers import Answers
from scorecard.assessment import assess
from scorecard.brief import Brief
from scorecard.criteria import CriteriaSet, Limit, Steady
from scorecard.report.page import page as page_of
from scorecard.report.ranked import ranked_makers
from scorecard.report.receipts import receipts_of
from scorecard.report.texts import bare, presentable, sentence
from scorecard.report.weights import weights_of
from scorecard.sentences import rule_sentence, verdict_sentence
from scorecard.words import listed

pytestmark = pytest.mark.browser

AXE = (Path(axe_playwright_python.__file__).parent / "axe.min.js").read_text(encoding="utf-8")
RUN_AXE = "async () => (await axe.run()).violations.map(one => [one.id, one.nodes.map(node => node.target.join(' '))])"
HOSTILE = (
    "<script>alert(1)</script>",
    "=1+1",
    "javascript:alert(1)",
    "evil\u202efdp.exe\x00",
    '"><img src=x onerror=alert(1)>',
    "مصنع الخزف الأزرق",
    "釉上彩陶瓷厂",
    "W" * 200,
)
MANGLED = (
    "#try&weight=years_trading:abc",
    "#try&weight=years_trading:-5",
    "#try&weight=years_trading:1e309",
    "#try&weight=nothing:5",
    "#try&weight=__proto__:5",
    "#try&weight=%E0%A4%A",
    "#try&open=sideways",
    "#try&off=",
    "#try&if=Brightholm:years_trading:7",
    "#try&<img src=x onerror=alert(1)>",
    "#try&" + "x" * 100_000,
    "#nowhere",
    "#%",
    "#javascript:alert(1)",
)

READ = """() => {
  const words = one => one.textContent;
  const all = document.getElementById('try-all');
  if (all.getAttribute('aria-expanded') === 'false' && !all.hidden) all.click();
  const seen = id => document.getElementById(id).hidden ? null : words(document.getElementById(id));
  return {
    ranking: [...document.querySelectorAll('#try-ranking tr')].map(row => [
      words(row.children[0]), words(row.children[1].children[0]), words(row.children[2]),
      row.children[3].lastChild.data, row.children[4].lastChild.data, words(row.children[1].children[2]),
      row.querySelector('circle').getAttribute('cx'), row.querySelector('svg').getAttribute('aria-label')]),
    receipts: [...document.querySelectorAll('#try-receipts table')].map(one =>
      [words(one.caption), [...one.rows].map(row => [...row.cells].map(words))]),
    verdict: words(document.getElementById('try-verdict')),
    rule: seen('try-rule'), live: seen('try-live'), odd: seen('try-odd'),
    then: seen('if-then'), tried: seen('try-tried'),
    shares: [...document.querySelectorAll('#try-rows .share')].map(words),
    moves: [...document.querySelectorAll('#try-rows .moves')].map(words),
  };
}"""
GO = """address => new Promise(done => {
  if (location.hash === address) return done();
  addEventListener('hashchange', () => done(), { once: true });
  location.hash = address;
})"""


@pytest.fixture(scope="module")
def trial(browser, tmp_path_factory):
    """Return a function that opens a case's page, offline, in one tab of Chromium; ``said`` gathers what went wrong."""
    context = browser.new_context(offline=True, viewport={"width": 1200, "height": 800})
    context.set_default_timeout(5000)
    tab = context.new_page()
    tab.said = []
    tab.on("console", lambda message: tab.said.append(message.text))
    tab.on("pageerror", lambda error: tab.said.append(str(error)))
    tab.on("dialog", lambda dialog: (tab.said.append(dialog.message), dialog.dismiss()))
    folder = tmp_path_factory.mktemp("trial")

    def run(case, address=""):
        assessment = assess(case, as_of=AS_OF)
        file = folder / f"{len(list(folder.iterdir()))}.html"
        html = page_of(assessment, assessment.as_json(), made=datetime(2026, 11, 25, 10, tzinfo=UTC))
        file.write_text(html, encoding="utf-8")
        tab.said.clear()
        tab.set_viewport_size({"width": 1200, "height": 800})
        tab.goto(file.as_uri() + address)
        return tab

    yield run
    context.close()


def address_of(weights=None, off=(), rule=None, what=None):
    """Return an address as the page writes it, put together by hand."""
    parts = [f"weight={quote(key, safe='')}:{weight!r}" for key, weight in (weights or {}).items()]
    parts += [f"off={quote(key, safe='')}" for key in off]
    parts += [f"open={rule}"] if rule else []
    parts += ["if=" + ":".join(quote(str(word), safe="") for word in what)] if what else []
    return "&".join(["#try", *parts])


def with_tried(case, weights=None, off=(), rule=None):
    """Return the case with other weights and another rule for open answers, as if they stood in the criteria file."""
    criteria = case.criteria.with_weights((weights or {}) | dict.fromkeys(off, 0.0))
    if rule is None:
        return case.with_criteria(criteria)
    return case.with_criteria(CriteriaSet(tuple(replace(one, unknown=rule) for one in criteria), criteria.note))


def expected(case):
    """Return what the command finds, in the page's own words."""
    found = presentable(assess(case, as_of=AS_OF))
    rule = rule_sentence(found)
    order = found.ranking.order
    weights = weights_of(found)
    return {
        "ranking": [ranking_row(row) for row in ranked_makers(found, order)],
        "receipts": [receipt_rows(one) for one in receipts_of(found, order[:2])],
        "verdict": bare(sentence(verdict_words(found))),
        "rule": None if rule is None else bare(sentence(rule)),
        "shares": [one.share for one in weights],
        "moves": [one.moves for one in weights],
    }


def verdict_words(found):
    """Return the verdict, which on the page does not say with which answer who leads."""
    question, names = found.verdict.question, found.case.table.makers
    if question is None:
        return verdict_sentence(found)
    title = found.case.criteria.criteria[question.criterion].title
    then = listed((names[one.leader_then] for one in question.turns), "or")
    begun = f"{names[found.verdict.leader]} leads, but one answer could change it: "
    return f"{begun}{names[question.maker]} on “{title}” (with the right answer, {then} leads)"


def ranking_row(row):
    may_fail = "" if row.may_fail is None else f"could still be ruled out: {bare(row.may_fail)}"
    return [row.rank, bare(row.maker), row.score, row.band or "", row.known, may_fail, row.scale.dot, row.scale.words]


def receipt_rows(one):
    lines = [[f"{bare(line.title)}: {bare(line.answer)}", line.figure] for line in one.lines]
    lines += [["rounding", one.rounding]] if one.rounding else []
    return [f"{one.rank}. {bare(one.maker)}", [["From", "100.0"], *lines, ["Score", one.score]]]


def told(tab, keys):
    found = tab.evaluate(READ)
    for row in found["ranking"]:
        row[6] = percent_words(row[6])
    return {key: found[key] for key in keys}


def percent_words(text):
    return text.rstrip("%").rstrip("0").rstrip(".") + "%" if "." in text else text


def random_tried(draw, case):
    keys = case.criteria.keys
    changed = draw.sample(keys, draw.randint(1, len(keys)))
    weights = {key: draw.choice([draw.randint(0, 40), round(draw.uniform(0, 40), 2)]) for key in changed}
    off = draw.sample(keys, draw.choice([0, 0, 1, 2]))
    rule = draw.choice([None, None, "worst", "middle", "best"])
    every = dict(case.criteria.typed_weights) | weights | dict.fromkeys(off, 0)
    return (weights, off, rule) if any(every.values()) else random_tried(draw, case)


def random_criterion(draw, at):
    key, weight = f"c{at}", draw.choice([0, 5, 10, 10, 20, 12.5])
    rule = draw.choice(["worst", "middle", "best", 40.0])
    if draw.random() < 0.3:
        table = {name: draw.choice([0, 25, 50, 100]) for name in ("free", "paid", "none")}
        limit = draw.choice([None, Limit(none_of=("none",)), Limit(one_of=("free", "paid"))])
        return choices(key, weight, table, unknown=rule, limit=limit)
    answers = sorted(draw.sample(range(11), draw.randint(2, 4)))
    knots = [(answer, draw.choice([0, 25, 50, 100, 33.3])) for answer in answers]
    limits = [Limit(at_least=2), Limit(at_least=1, at_most=9)]
    more = draw.choice([{}, {"within": (0, 12)}, *({"limit": limit} for limit in limits)])
    if draw.random() < 0.3:
        more["steady"] = Steady(count_column="Ratings counted", usual=4.5, usual_counts_as=20)
    elif draw.random() < 0.3 and "within" not in more:
        more["per_quantity"] = True
    return numbers(key, weight, *knots, unknown=rule, unit=draw.choice(["", "days", "%"]), **more)


def random_answer(draw, criterion):
    if draw.random() < 0.3:
        return None
    if criterion.choices is not None:
        return draw.choice(criterion.choices)
    scale = 100 if criterion.per_quantity else 1
    low = draw.choice([0, 2, 3, 5, 8, 12]) * scale
    return draw.choice([low, low, low, (low, low + 2 * scale), (low, None), (None, low)])


def random_case(draw):
    """Return a case of any shape, with answers that often tie; at least two makers are ranked."""
    criteria = [random_criterion(draw, at) for at in range(draw.randint(2, 6))]
    names = [f"Maker {at}" for at in range(draw.randint(2, 9))]
    rows = {name: [random_answer(draw, one) for one in criteria] for name in names}
    ratings = np.array([draw.choice([(0, 0), (4, 4), (3, 30), (np.nan, np.nan)]) for _ in names], dtype=float)
    counts = {one.key: Answers(ratings[:, 0], ratings[:, 1]) for one in criteria if one.steady is not None}
    units = tuple(draw.choice(["order", "design", "colour", None]) for _ in names)
    brief = Brief(item="enamel mug", quantity=200, designs=4)
    if not any(one.weight for one in criteria):
        return random_case(draw)
    case = make_case(criteria, rows, brief=brief, counts=counts, minimum_per=units)
    return case if len(assess(case, as_of=AS_OF).ranking.order) > 1 else random_case(draw)


@pytest.mark.parametrize("seed", range(5))
def test_the_page_finds_what_the_command_finds(trial, field, seed):
    draw = random.Random(seed)
    case = field(draw.choice([9, 20, 30]), seed=seed)
    tab = trial(case)
    for _ in range(5):
        tried = random_tried(draw, case)
        tab.evaluate(GO, address_of(*tried))
        wanted = expected(with_tried(case, *tried))
        assert (wanted, []) == (told(tab, wanted), tab.said), tried


@pytest.mark.parametrize("seed", range(12))
def test_the_page_finds_what_the_command_finds_in_cases_of_any_shape(trial, seed):
    draw = random.Random(seed)
    case = random_case(draw)
    tab = trial(case)
    for _ in range(4):
        tried = random_tried(draw, case)
        tab.evaluate(GO, address_of(*tried))
        wanted = expected(with_tried(case, *tried))
        assert (wanted, []) == (told(tab, wanted), tab.said), tried


def random_answer_tried(draw, case):
    """Return an open answer of a ranked maker and what is tried for it: a value, a number of ratings, a unit."""
    asked = assess(case, as_of=AS_OF).questions
    question = draw.choice(asked)
    criterion = case.criteria.criteria[question.criterion]
    value, count, unit = None, None, None
    if criterion.choices is not None:
        value = draw.choice(criterion.choices)
    elif draw.random() < 0.7:
        value = draw.choice([0, 1, 2.5, 4, 7, 11]) * (100 if criterion.per_quantity else 1)
    if criterion.steady is not None and draw.random() < 0.5:
        count = draw.choice([0, 1, 25])
    if criterion.per_quantity and draw.random() < 0.5:
        unit = draw.choice(["order", "design"])
    found = (question.maker, criterion.key, value, count, unit)
    return found if (value, count, unit) != (None, None, None) else random_answer_tried(draw, case)


def with_answer(case, maker, key, value, count, unit):
    """Return the case with the answer tried, as if it stood in the spreadsheet."""
    table, criterion = case.table, case.criteria[key]
    answers, counts, units = dict(table.answers), dict(table.counts), list(table.minimum_per)
    if value is not None:
        at = criterion.choices.index(value) if criterion.choices else value
        answers[key] = put(answers[key], maker, at)
    if count is not None:
        counts[key] = put(counts[key], maker, count)
    if unit is not None:
        units[maker] = unit
    return replace(case, table=replace(table, answers=answers, counts=counts, minimum_per=tuple(units)))


def put(answers, maker, value):
    low, high = answers.low.copy(), answers.high.copy()
    low[maker] = high[maker] = value
    return Answers(low, high)


@pytest.mark.parametrize("seed", range(12))
def test_an_answer_tried_counts_as_it_would_in_the_spreadsheet(trial, seed):
    draw = random.Random(seed)
    case = random_case(draw)
    while not assess(case, as_of=AS_OF).questions:
        case = random_case(draw)
    tab = trial(case)
    for _ in range(4):
        maker, key, *words = tried = random_answer_tried(draw, case)
        shown = ["" if word is None else word for word in words]
        tab.evaluate(GO, address_of(what=(case.table.makers[maker], key, *shown)))
        wanted = expected(with_answer(case, *tried))
        del wanted["receipts"]  # they say that the answer is tried
        assert (wanted, []) == (told(tab, wanted), tab.said), tried


@pytest.fixture(scope="module")
def case(field):
    return field(14)


@pytest.fixture
def tab(trial, case):
    return trial(case)


def live(tab):
    return tab.locator("#try-live").inner_text()


def leader_of(case, **tried):
    found = assess(with_tried(case, **tried), as_of=AS_OF)
    return found.case.table.makers[found.ranking.order[0]]


def box(tab, title):
    return tab.get_by_role("spinbutton", name=f"Weight of {title}")


def test_a_weight_typed_counts_at_once(tab, case):
    box(tab, "Years trading").fill("40")
    assert expected(with_tried(case, {"years_trading": 40}))["ranking"] == told(tab, ["ranking"])["ranking"]


def test_a_comma_stands_for_the_decimals(tab, case):
    box(tab, "Years trading").fill("7,5")
    assert expected(with_tried(case, {"years_trading": 7.5}))["shares"] == told(tab, ["shares"])["shares"]


@pytest.mark.parametrize(("name", "weight"), [("More", "16"), ("Less", "14")])
def test_a_button_takes_a_step(tab, name, weight):
    tab.get_by_role("button", name=f"{name} weight for Years trading").click()
    assert weight == box(tab, "Years trading").input_value()


def test_a_weight_never_falls_below_nothing(tab):
    box(tab, "Postcards").press("ArrowDown")
    assert "0" == box(tab, "Postcards").input_value()


def test_a_slider_moves_the_weight(tab):
    slider = tab.get_by_role("slider", name="Slider for the weight of Years trading")
    slider.press("ArrowRight")
    assert ("16", "16") == (box(tab, "Years trading").input_value(), slider.get_attribute("aria-valuetext"))


def test_a_criterion_is_left_out_and_comes_back_with_its_weight(tab, case):
    counts = tab.get_by_role("checkbox", name="Years trading counts")
    counts.uncheck()
    without = told(tab, ["ranking"])["ranking"]
    counts.check()
    now = told(tab, ["ranking"])["ranking"]
    wanted = expected(with_tried(case, off=["years_trading"]))["ranking"], expected(case)["ranking"]
    assert wanted == (without, now)


@pytest.mark.parametrize("rule", ["worst", "middle", "best"])
def test_open_answers_count_as_picked(tab, case, rule):
    tab.get_by_role("radio", name=f"as the {rule}").check()
    assert expected(with_tried(case, rule=rule))["ranking"] == told(tab, ["ranking"])["ranking"]


def test_all_weights_nothing_is_said_and_mended(trial):
    tab = trial(make_case([numbers("a", 1), numbers("b", 0)], {"Brightholm": [1, 9], "Ellerby": [2, 1]}))
    box(tab, "A").fill("0")
    nothing = live(tab)
    box(tab, "B").fill("3")
    assert ("Every weight is 0" in nothing, "Brightholm leads by 8.0" in live(tab)) == (True, True)


@pytest.mark.parametrize("typed", ["abc", "-1", "1e5", "Infinity", "<b>", "", "1.2.3", "٣"])
def test_what_is_no_weight_is_said_and_the_last_one_counts(tab, case, typed):
    box(tab, "Years trading").fill(typed)
    said = tab.get_by_role("alert").inner_text()
    told_now = box(tab, "Years trading").get_attribute("aria-invalid"), told(tab, ["ranking"])["ranking"]
    assert ("true", expected(case)["ranking"], True) == (*told_now, "such as 15, which still counts" in said)


def test_a_weight_mended_is_no_longer_a_problem(tab):
    box(tab, "Years trading").fill("abc")
    box(tab, "Years trading").fill("20")
    assert not tab.get_by_role("alert").is_visible()


def test_the_live_line_says_that_the_leader_is_another(trial):
    tab = trial(make_case([numbers("a", 3), numbers("b", 1)], {"Brightholm": [90, 10], "Ellerby": [40, 60]}))
    box(tab, "B").fill("9")  # Brightholm 30, Ellerby 55; as saved 70 and 45
    wanted = "Ellerby leads by 25.0, ahead of Brightholm. That differs: as saved, Brightholm leads by 25.0"
    assert f"{wanted}." == live(tab)


def test_the_live_line_says_that_the_leader_is_the_same(tab, case):
    box(tab, "Postcards").fill("1")
    found = live(tab)
    wanted = f"{leader_of(case)} leads by"
    assert (True, True) == (found.startswith(wanted), "As saved, first place is the same" in found)


def test_the_live_line_is_polite(tab):
    line = tab.locator("#try-live")
    assert ("polite", "status") == (line.get_attribute("aria-live"), line.get_attribute("role"))


def test_as_saved_puts_everything_back(tab, case):
    tab.evaluate(GO, address_of({"years_trading": 40}, ["method"], "best"))
    tab.get_by_role("button", name="As saved").click()
    assert (expected(case)["ranking"], "") == (told(tab, ["ranking"])["ranking"], tab.evaluate("location.hash"))


def test_what_does_not_follow_says_so(tab):
    box(tab, "Years trading").fill("40")
    noted = [one for one in ("verdict", "ranking", "lost", "firm") if tab.locator(f"#{one} .as-saved").is_visible()]
    tab.get_by_role("button", name="As saved").click()
    assert (["verdict", "ranking", "lost", "firm"], 0) == (noted, tab.locator(".as-saved:visible").count())


def test_the_address_keeps_what_is_tried(tab, trial, case):
    box(tab, "Years trading").fill("40")
    tab.get_by_role("radio", name="as the best").check()
    tab.get_by_role("checkbox", name="Method counts").uncheck()
    tab.wait_for_timeout(400)
    kept = tab.evaluate("location.hash")
    wanted = expected(with_tried(case, {"years_trading": 40}, ["method"], "best"))["ranking"]
    assert wanted == told(trial(case, kept), ["ranking"])["ranking"]


def test_another_part_of_the_page_leaves_what_is_tried_alone(tab):
    box(tab, "Years trading").fill("40")
    tab.evaluate(GO, "#ranking")
    assert ("40", True) == (
        box(tab, "Years trading").input_value(),
        "years_trading:40" in tab.evaluate("location.hash"),
    )


@pytest.mark.parametrize("address", MANGLED)
def test_a_mangled_address_is_harmless_and_told(trial, case, address):
    tab = trial(case, address)
    wanted = expected(case)["ranking"]
    odd = tab.evaluate(READ)["odd"]
    assert (wanted, [], True) == (told(tab, ["ranking"])["ranking"], tab.said, "Not understood" in odd)


def test_what_an_address_says_rightly_counts_beside_what_it_mangles(trial, case):
    tab = trial(case, "#try&weight=nothing:5&weight=years_trading:40")
    assert expected(with_tried(case, {"years_trading": 40}))["ranking"] == told(tab, ["ranking"])["ranking"]


def test_hostile_names_run_nothing_anywhere(trial, field):
    case = field(len(HOSTILE), HOSTILE)
    tab = trial(case)
    for title in ("Years trading", "Method", "Sample"):
        box(tab, title).fill("40")
    maker = tab.locator("#if-maker option").nth(1).get_attribute("value")
    tab.locator("#if-maker").select_option(maker)
    assert ([], 0) == (tab.said, tab.locator("#weights img, #weights a[href^='javascript']").count())


def test_hostile_names_are_kept_by_the_address(trial, field):
    case = field(len(HOSTILE), HOSTILE)
    tab = trial(case)
    tab.locator("#if-maker").select_option(index=1)
    first = tab.locator("#if-choice") if tab.locator("#if-choice").is_visible() else None
    first.select_option(index=1) if first else tab.locator("#if-number").fill("1")
    tab.wait_for_timeout(400)
    then = tab.locator("#if-then").inner_text()
    again = trial(case, tab.evaluate("location.hash"))
    assert then == again.locator("#if-then").inner_text()


def one_open():
    """Return a case in which Ellerby would lead from 81 on: Brightholm has 80 points, Ellerby's answer is unknown."""
    return make_case([numbers("a", 1, within=(0, 90), unit="days")], {"Brightholm": [80], "Ellerby": [None]})


@pytest.mark.parametrize(
    ("answer", "said"),
    [
        ("85", "With 85 days: Ellerby would score 85.0 and lead by 5.0."),
        ("80", "With 80 days: Ellerby would score 80.0 and share first place."),
        ("1", "With 1 day: Ellerby would score 1.0 and take rank 2, 79.0 behind Brightholm."),
        ("95", "95 is no answer here: write a number, 0 to 90."),
        ("soon", "soon is no answer here: write a number, 0 to 90."),
    ],
)
def test_what_if_says_whether_it_would_lead(trial, answer, said):
    tab = trial(one_open())
    tab.get_by_role("combobox", name="Maker", exact=True).select_option("Ellerby")
    tab.get_by_label("Answer, in days, 0 to 90").fill(answer)
    assert said == bare(tab.locator("#if-then").inner_text())


def test_an_answer_that_fails_a_limit_would_rule_its_maker_out(trial):
    criteria = [
        choices("method", 1, {"transfer": 50, "sticker": 100}, limit=Limit(none_of=("sticker",))),
        numbers("b", 1),
    ]
    rows = {"Brightholm": ["transfer", 10], "Ellerby": [None, 5], "Garrow": ["transfer", 1]}
    tab = trial(make_case(criteria, rows))
    tab.get_by_role("combobox", name="Maker", exact=True).select_option("Ellerby")
    tab.locator("#if-choice").select_option("sticker")
    then = bare(tab.locator("#if-then").inner_text())
    assert "With “sticker”: Ellerby would be ruled out by the limit on “Method”." == then


def test_any_receipt_can_be_seen_beside_the_leaders(tab, case):
    found = presentable(assess(case, as_of=AS_OF))
    last = found.ranking.order[-1]
    tab.locator("#try-beside").select_option(bare(found.case.table.makers[last]))
    wanted = receipt_rows(receipts_of(found, [last])[0])
    assert wanted == told(tab, ["receipts"])["receipts"][1]


def test_the_lines_to_copy_give_the_criteria_file_the_weights_tried(tab, case):
    box(tab, "Years trading").fill("40")
    tab.get_by_role("checkbox", name="Method counts").uncheck()
    lines = tomlkit.parse(tab.locator("#try-lines").input_value()).unwrap()
    assert {"years_trading": {"weight": 40}, "method": {"weight": 0}} == lines["criteria"]


def test_no_lines_are_offered_where_no_weight_is_changed(tab):
    tab.get_by_role("radio", name="as the best").check()
    assert not tab.locator("#try-keep").is_visible()


def test_copying_takes_the_lines_or_marks_them(tab):
    box(tab, "Years trading").fill("40")
    tab.get_by_role("button", name="Copy these lines").click()
    tab.locator("#try-copied:not(:empty)").wait_for()
    said = tab.locator("#try-copied").inner_text()
    marked = tab.evaluate("String(getSelection()).length || document.activeElement.selectionEnd || 0")
    assert said == "Copied." or ("Marked" in said and marked > 0)


def test_a_page_made_anew_keeps_weights_and_focus(tab, trial, case):
    box(tab, "Years trading").fill("40")
    box(tab, "Years trading").press("ArrowUp")
    tab.evaluate(
        """() => {
            const main = document.querySelector('main');
            const anew = new DOMParser().parseFromString(document.documentElement.outerHTML, 'text/html');
            anew.querySelector('#trying').hidden = true;
            anew.querySelectorAll('#try-rows > *').forEach(one => one.remove());
            main.replaceChildren(...anew.querySelector('main').childNodes);
            window.makerScorecard.resume();
        }"""
    )
    focus = tab.evaluate("document.activeElement.id")
    wanted = expected(with_tried(case, {"years_trading": 41}))["ranking"]
    assert (wanted, "try-box-0", []) == (told(tab, ["ranking"])["ranking"], focus, tab.said)


def test_the_keyboard_reaches_every_control(tab):
    tab.locator("#if-maker").select_option(index=1)
    wanted = tab.evaluate(
        """() => [...document.querySelectorAll('#trying :is(button, input, select, textarea)')]
            .filter(one => one.checkVisibility() && !(one.type === 'radio' && !one.checked)).map(one => one.id)"""
    )
    tab.evaluate("() => { document.body.tabIndex = -1; document.body.focus(); }")
    reached = []
    for _ in range(150):
        tab.keyboard.press("Tab")
        reached.append(tab.evaluate("document.activeElement.id"))
    assert [] == [one for one in wanted if one and one not in reached]


def test_the_keyboard_alone_changes_the_leader(tab, case):
    tab.evaluate("document.getElementById('try-box-6').focus()")
    tab.keyboard.press("Control+A")
    tab.keyboard.type("100")
    tab.evaluate("document.getElementById('try-counts-3').focus()")
    tab.keyboard.press("Space")
    now = leader_of(case, weights={"response_time": 100}, off=["earlier_work"])
    assert live(tab).startswith(f"{now} leads by")


@pytest.mark.parametrize("keys", [["ArrowUp"], ["PageUp"], ["ArrowDown"], ["PageDown"]])
def test_arrows_and_pages_step_in_the_box(tab, keys):
    for key in keys:
        box(tab, "Years trading").press(key)
    step = {"ArrowUp": "16", "PageUp": "25", "ArrowDown": "14", "PageDown": "5"}[keys[0]]
    assert step == box(tab, "Years trading").input_value()


@pytest.mark.parametrize(
    ("scheme", "width"), [(scheme, width) for scheme in ("light", "dark") for width in (320, 1200)]
)
def test_axe_finds_nothing_with_everything_in_use(trial, case, scheme, width):
    tab = trial(case, "#try&weight=years_trading:40&open=best&weight=nothing:1")
    tab.set_viewport_size({"width": width, "height": 800})
    tab.emulate_media(color_scheme=scheme)
    tab.locator("#if-maker").select_option(index=1)
    box(tab, "Sample").fill("abc")
    tab.evaluate(AXE)
    found = tab.evaluate(RUN_AXE)
    tab.emulate_media(color_scheme="light")
    assert [] == found


def test_axe_finds_a_control_without_a_name(tab):
    tab.evaluate("document.getElementById('try-slider-0').removeAttribute('aria-label')")
    tab.evaluate(AXE)
    assert "label" in [one for one, _ in tab.evaluate(RUN_AXE)]


def sizes(tab, selector):
    return tab.evaluate(
        """selector => [...document.querySelectorAll(selector)].filter(one => one.checkVisibility())
            .map(one => one.getBoundingClientRect()).map(box => [box.width, box.height])""",
        selector,
    )


# put a field just above the bar at the foot, and return where the field ends and where the bar begins
ABOVE = """at => { const field = document.getElementById(`try-box-${at}`), bar = document.querySelector('.live');
  field.focus({ preventScroll: true });
  scrollBy(0, field.getBoundingClientRect().bottom - bar.getBoundingClientRect().top + 2); }"""
ENDS = """at => [document.getElementById(`try-box-${at}`).getBoundingClientRect().bottom,
  document.querySelector('.live').getBoundingClientRect().top]"""


def test_what_is_typed_in_stays_above_the_bar_that_grows(tab):
    tab.set_viewport_size({"width": 390, "height": 700})
    tab.evaluate(ABOVE, 4)
    begun = tab.evaluate(ENDS, 4)
    tab.keyboard.press("Control+A")
    tab.keyboard.type("40")
    field, bar = tab.evaluate(ENDS, 4)
    assert (True, True) == (bar < begun[1], field <= bar)


@pytest.mark.parametrize("width", [320, 1200])
def test_controls_are_large_enough_for_a_finger(tab, width):
    """WCAG 2.2, success criterion 2.5.8: at least 24 by 24 pixels; sliders at least 120 pixels wide."""
    tab.set_viewport_size({"width": width, "height": 800})
    tab.locator("#if-maker").select_option(index=1)
    box(tab, "Years trading").fill("40")
    controls = sizes(tab, "#trying :is(button, input, select, textarea)")
    sliders = sizes(tab, ".slider")
    small = [one for one in controls if min(one) < 24] + [one for one in sliders if one[0] < 120]
    assert (True, []) == (len(controls) > 40, small)


def test_nothing_scrolls_sideways_with_everything_in_use(trial, field):
    tab = trial(field(len(HOSTILE), HOSTILE), "#try&weight=years_trading:40&" + "x" * 200)
    tab.set_viewport_size({"width": 320, "height": 800})
    tab.locator("#if-maker").select_option(index=1)
    assert tab.evaluate("document.documentElement.scrollWidth") <= 320


def test_print_hides_the_controls_and_shows_the_weights(tab):
    tab.emulate_media(media="print")
    seen = [tab.locator(one).is_visible() for one in (".controls", ".live", "#try-outcome", ".weights")]
    tab.emulate_media(media="screen")
    assert [False, False, False, True] == seen


def test_print_shows_what_is_tried(tab):
    box(tab, "Years trading").fill("40")
    tab.emulate_media(media="print")
    seen = [tab.locator(one).is_visible() for one in (".controls", ".live", "#try-tried", "#try-outcome")]
    tab.emulate_media(media="screen")
    assert [False, False, True, True] == seen


def test_without_script_the_page_is_whole(browser, tmp_path, render, case):
    file = tmp_path / "shortlist.html"
    file.write_text(render(case), encoding="utf-8")
    context = browser.new_context(java_script_enabled=False)
    tab = context.new_page()
    tab.goto(file.as_uri())
    seen = [tab.locator(one).is_visible() for one in ("#trying", "#weights .weights", "#weights code", "noscript p")]
    context.close()
    assert [False, True, True, True] == seen


def test_makers_that_did_not_travel_are_told_of(trial):
    tab = trial(make_case([numbers("a", 1), numbers("b", 2)], {f"M{at}": [at % 97, at % 89] for at in range(501)}))
    assert (
        "Tried among the 100 best as saved; 401 more makers are not on this page."
        == tab.locator("#try-left").inner_text()
    )


def test_another_script_is_refused(browser, tmp_path, render, case):
    file = tmp_path / "shortlist.html"
    file.write_text(render(case).replace("</script>\n</body>", ";alert(1)</script>\n</body>"), encoding="utf-8")
    context = browser.new_context()
    tab = context.new_page()
    said = []
    tab.on("console", lambda message: said.append(message.text))
    tab.on("dialog", lambda dialog: (said.append("ran"), dialog.dismiss()))
    tab.goto(file.as_uri())
    context.close()
    assert (True, False) == (any("Content Security Policy" in one for one in said), "ran" in said)
