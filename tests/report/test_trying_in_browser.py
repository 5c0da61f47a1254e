"""Weights tried in Chromium: the page's figures against the command's, controls by keyboard, hostile names, addresses."""

import random
from dataclasses import replace
from datetime import UTC, datetime
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

pytestmark = pytest.mark.browser

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
    rule: seen('try-rule'), live: seen('try-live'), odd: seen('try-odd'), then: seen('if-then'), tried: seen('try-tried'),
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
    verdict = found.verdict
    if verdict.question is not None:  # the page does not say with which answers
        found = replace(found, verdict=replace(verdict, question=replace(verdict.question, answers=())))
    rule = rule_sentence(found)
    order = found.ranking.order
    weights = weights_of(found)
    return {
        "ranking": [ranking_row(row) for row in ranked_makers(found, order)],
        "receipts": [receipt_rows(one) for one in receipts_of(found, order[:2])],
        "verdict": bare(sentence(verdict_sentence(found))),
        "rule": None if rule is None else bare(sentence(rule)),
        "shares": [one.share for one in weights],
        "moves": [one.moves for one in weights],
    }


def ranking_row(row):
    may_fail = "" if row.may_fail is None else f"could still be ruled out: {bare(row.may_fail)}"
    return [row.rank, bare(row.maker), row.score, row.band or "", row.known, may_fail, row.scale.dot, row.scale.words]


def receipt_rows(one):
    lines = [[f"{bare(line.title)}: {bare(line.answer)}", line.figure] for line in one.lines]
    lines += [[f"weight 0: {bare(one.weightless)}", "0.0"]] if one.weightless else []
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
