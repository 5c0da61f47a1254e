import hashlib
import subprocess
import sys
from datetime import date

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from scorecard.brief import Brief
from scorecard.case import SourceFile
from scorecard.criteria import Firmness, Limit, Steady
from scorecard.reading.criteria_file import FURTHER_TABLES, parse_criteria, read_criteria

WHOLE = """
format = 1
title  = "Lighthouse mugs, summer fair"

[brief]
item            = "350 ml enamel mug"
quantity        = 200
designs         = 4
destination     = "IE"
currency        = "EUR"
need_by         = 2027-05-14
print_width_mm  = 180
print_height_mm = 80
decimal         = "."

[criteria.years_trading]
weight = 15
unit   = "years"
points = [[0, 0], [3, 50], [10, 100]]

[criteria.performance_rating]
weight = 20
column = "Rating"
within = [0, 5]
points = [[4.0, 0], [4.6, 60], [5.0, 100]]
limit  = { at_least = 4.0 }
steady = { count_column = "Ratings counted", usual = 4.5, usual_counts_as = 20 }

[criteria.minimum_order_fit]
weight = 20
column = "Minimum order"
per    = "quantity"
points = [[1, 100], [2, 0]]

[criteria.print_method]
weight  = 10
choices = { "kiln-fired transfer" = 100, "screen print" = 80, "sticker" = 0 }
limit   = { none_of = ["Sticker"] }

[criteria.response_time]
weight  = 10
measure = "response_days"
points  = [[1, 100], [2, 80], [5, 0]]
unknown = "worst"

[firmness]
spread = 0.3
seed   = 7
"""

SMALL = """
[brief]
item = "mug"
quantity = 200

[criteria.a]
weight = 1
points = [[0, 0], [1, 100]]

[criteria.b]
weight = 3
choices = { "yes" = 100, "no" = 0 }
"""


def reading(text):
    return parse_criteria(text.encode(), "criteria.toml")


def found(text):
    """Return the problems as (code, key)."""
    return [(problem.code, problem.place.key) for problem in reading(text).problems]


def changed(old, new, text=SMALL):
    """Return a text with one piece put in place of another that it holds."""
    assert old in text
    return text.replace(old, new, 1)


def test_a_sound_file_has_no_problem_and_no_warning():
    assert ((), ()) == (reading(WHOLE).problems, reading(WHOLE).warnings)


def test_the_brief_is_read():
    expected = Brief(
        item="350 ml enamel mug",
        quantity=200,
        designs=4,
        destination="IE",
        currency="EUR",
        need_by=date(2027, 5, 14),
        print_width_mm=180.0,
        print_height_mm=80.0,
        decimal=".",
    )

    assert expected == reading(WHOLE).brief


def test_the_criteria_keep_their_order_and_parts():
    criteria = reading(WHOLE).criteria_set

    keys = ("years_trading", "performance_rating", "minimum_order_fit", "print_method", "response_time")
    assert keys == criteria.keys
    assert Steady(count_column="Ratings counted", usual=4.5, usual_counts_as=20.0) == criteria[keys[1]].steady
    assert criteria[keys[2]].per_quantity
    assert Limit(none_of=("sticker",)) == criteria[keys[3]].limit
    assert ("response_days", "worst") == (criteria[keys[4]].measure, criteria[keys[4]].unknown)


def test_the_set_and_the_listing_hold_the_same_criteria():
    assert reading(WHOLE).criteria == reading(WHOLE).criteria_set.criteria


def test_firmness_is_read():
    assert Firmness(spread=0.3, seed=7) == reading(WHOLE).firmness


def test_the_title_is_the_item_where_the_file_gives_none():
    assert ("Lighthouse mugs, summer fair", "mug") == (reading(WHOLE).title, reading(SMALL).title)


def test_the_source_is_named_with_its_digest(tmp_path):
    path = tmp_path / "criteria.toml"
    path.write_bytes(WHOLE.encode())

    expected = SourceFile(name="criteria.toml", digest=hashlib.sha256(WHOLE.encode()).hexdigest())
    assert expected == read_criteria(path).source


def test_a_missing_file_is_one_problem(tmp_path):
    result = read_criteria(tmp_path / "criteria.toml")

    [problem] = result.problems
    assert ("file-missing", "criteria.toml", None) == (problem.code, problem.place.file, result.source)


def test_a_byte_order_mark_is_a_warning_alone():
    result = parse_criteria(b"\xef\xbb\xbf" + WHOLE.encode(), "criteria.toml")

    assert ((), ["byte-order-mark"]) == (result.problems, [warning.code for warning in result.warnings])
    assert reading(WHOLE).criteria_set.shares == result.criteria_set.shares


def test_a_file_saved_as_utf_16_is_told_beside_its_other_problems():
    result = parse_criteria(changed('"mug"', "3").encode("utf-16"), "criteria.toml")

    assert ["saved-as-utf-16", "not-a-text"] == [problem.code for problem in result.problems]


@pytest.mark.parametrize("name", [*FURTHER_TABLES, "firmness", "brief", "criteria", "weights"])
def test_a_table_must_be_a_table(name):
    rest = "\n".join(line for line in SMALL.splitlines() if name not in line)

    assert ("not-a-table", name) in found(f"{name} = 3\n{rest}")


@pytest.mark.parametrize(
    ("old", "new", "code", "key"),
    [
        ("quantity", "quantitty", "unknown-key", "brief.quantitty"),
        ("quantity = 200", "quantity = 200\ndesigns = 300", "more-designs-than-pieces", "brief.designs"),
        ('item = "mug"', "item = “mug”", "curly-quotes", "brief.item"),
        ("weight = 3", "weight = 12,5", "comma-in-number", "criteria.b.weight"),
        ("weight = 3", "weight = 20%", "percent-sign", "criteria.b.weight"),
        ("weight = 3", "weight = 3\nweight = 4", "stands-twice", "criteria.b.weight"),
        ("weight = 3", "weight = -3", "negative-weight", "criteria.b.weight"),
        ("weight = 3", "weight: 3", "not-toml", "criteria.b.weight"),
        ("[criteria.b]", "[criteria.a]", "stands-twice", "criteria.a"),
        ("[criteria.b]", "[criteria.b c]", "wordy-header", 'criteria."b c"'),
        ("[criteria.b]", '[criteria."b=c"]', "criterion-name", 'criteria."b=c"'),
        ("[brief]", "[breif]", "unknown-key", "breif"),
        ('"no" = 0', '"no" = 0, " NO" = 3', "choice-twice", "criteria.b.choices"),
        ('"no" = 0', '"unknown" = 0', "choice-means-unknown", "criteria.b.choices"),
        ('"no" = 0 }', '"no" = 0 }\nlimit = {}', "empty-limit", "criteria.b.limit"),
        ("[brief]", "format = 0\n[brief]", "not-whole", "format"),
        ("[brief]", "title = 3\n[brief]", "not-a-text", "title"),
    ],
)
def test_each_kind_of_mistake_is_found_at_its_key(old, new, code, key):
    assert (code, key) in found(changed(old, new))


def test_a_need_by_date_in_quotes_has_its_own_sentence():
    assert [("date-in-quotes", "brief.need_by")] == found(
        changed("[criteria.a]", 'need_by = "2027-05-14"\n[criteria.a]')
    )


def test_all_problems_come_at_once_in_the_order_of_the_file():
    text = (
        WHOLE.replace('"350 ml enamel mug"', "“350 ml enamel mug”")
        .replace('"IE"', '"UK"')
        .replace("[0, 5]", "[5, 0]")
        .replace("weight = 20", "weight = 12,5", 1)
        .replace("weight  = 10", "weight  = ten points", 1)
        .replace("0.3", "30%")
        .replace('"worst"', '"wurst"')
    )

    expected = [
        ("curly-quotes", "brief.item"),
        ("not-a-country", "brief.destination"),
        ("comma-in-number", "criteria.performance_rating.weight"),
        ("not-two-bounds", "criteria.performance_rating.within"),
        ("not-toml", "criteria.print_method.weight"),
        ("not-an-option", "criteria.response_time.unknown"),
        ("percent-sign", "firmness.spread"),
    ]
    assert expected == found(text)


def test_with_problems_there_is_no_set_but_criteria_to_check_answers_by_and_the_brief():
    result = reading(changed("points = [[0, 0], [1, 100]]", "points = 3"))

    assert (None, ["a", "b"], "mug") == (result.criteria_set, [c.key for c in result.criteria], result.brief.item)


def test_a_file_without_brief_and_criteria_misses_both():
    assert [("missing-table", "brief"), ("no-criteria", "criteria")] == found('title = "a"')


def test_criteria_without_any_weight_cannot_rank():
    assert [("weights-all-zero", "criteria")] == found(SMALL.replace("weight = 1", "weight = 0").replace("= 3", "= 0"))


def test_each_criterion_with_the_title_of_one_before_it_is_a_warning():
    one = 'weight = 1\ncolumn = "{0}"\npoints = [[0, 0], [1, 100]]\ntitle = "{1}"\n'
    titles = {"a": "Price", "b": " price ", "c": "Prices", "d": "PRICE"}
    parts = [f"[criteria.{key}]\n{one.format(key, title)}" for key, title in titles.items()]
    result = reading('[brief]\nitem = "mug"\nquantity = 200\n' + "".join(parts))

    assert [("criteria.b.title", "same-title"), ("criteria.d.title", "same-title")] == [
        (warning.place.key, warning.code) for warning in result.warnings
    ]
    assert ((), 'the title "PRICE" is that of [criteria.a] too') == (result.problems, result.warnings[1].found)


def test_a_criterion_without_weight_is_a_warning():
    result = reading(SMALL.replace("weight = 1\n", ""))

    assert ((), ["criteria.a.weight"]) == (result.problems, [warning.place.key for warning in result.warnings])
    assert {"a": 0.0, "b": 1.0} == dict(result.criteria_set.shares)


def test_two_criteria_may_draw_on_one_column():
    assert [] == found(
        changed("[criteria.a]", '[criteria.a]\ncolumn = "b"').replace("[criteria.b]", '[criteria.b]\ncolumn = "b"')
    )


def test_a_later_format_is_told_and_what_is_unknown_of_it_is_not():
    text = "format = 2\nnovel = 1\n" + changed("weight = 3", "weight = -3\nnovel = 1")

    assert [("later-version", "format"), ("negative-weight", "criteria.b.weight")] == found(text)


JUDGED = SMALL.replace("weight = 1\n", "").replace("weight = 3\n", "")


def test_weights_by_ranks_become_the_criteria_s_weights():
    result = reading(JUDGED + '[weights]\nmethod = "ranks"\nranks = ["b", "a"]\n')

    assert ((), {"a": 0.25, "b": 0.75}) == (result.problems, dict(result.criteria_set.typed_weights))
    assert ("ranks", result.criteria_set.criteria) == (result.criteria_set.note.method, result.criteria)


def test_weights_by_pairs_become_the_criteria_s_weights():
    result = reading(JUDGED + '[weights]\nmethod = "pairs"\npairs = [["a", "b", "1/4"]]\n')

    assert {"a": 0.2, "b": 0.8} == {key: round(w, 9) for key, w in result.criteria_set.typed_weights.items()}
    assert ("pairs", 0.0, 2.0) == (
        result.criteria_set.note.method,
        result.criteria_set.note.ratio,
        result.criteria_set.note.lambda_max,
    )


def test_a_weight_beside_judgements_is_a_problem():
    text = SMALL + '[weights]\nmethod = "ranks"\nranks = ["b", "a"]\n'

    expected = [("weight-besides-judgements", f"criteria.{name}.weight") for name in "ab"]
    assert expected == found(text)


def test_a_criterion_with_a_problem_is_still_known_to_the_ranks():
    text = JUDGED.replace("[1, 100]", "[1, 101]") + '[weights]\nmethod = "ranks"\nranks = ["b", "a"]\n'

    assert [("points-outside-scale", "criteria.a.points")] == found(text)


def test_no_message_ends_in_a_stop_of_its_own():
    text = changed("quantity", "quantitty", WHOLE).replace('"IE"', '"UK"').replace("weight = 20", "weight = 12,5")

    messages = [part for problem in reading(text).problems for part in (problem.found, problem.wanted)]
    assert [] == [message for message in messages if message.endswith((".", "?", "!"))]


def test_reading_imports_nothing_heavy():
    heavy = "{'pandas', 'openpyxl', 'jinja2', 'xlsxwriter', 'tomlkit', 'typer', 'scipy'}"
    code = f"import sys, scorecard.reading.criteria_file; print(sorted({heavy} & set(sys.modules)))"

    assert (
        "[]" == subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True).stdout.strip()
    )


def is_whole(result):
    """Return whether a reading is either sound or says what is wrong, in sentences that can be shown."""
    shown = [str(problem) and problem.as_json() for problem in result.problems + result.warnings]
    return all(shown) and (result.criteria_set is None) == bool(result.problems)


@given(st.binary(max_size=200))
@example(b"\xff\xfe")
@example(b"\0")
def test_any_bytes_give_a_reading(content):
    assert is_whole(parse_criteria(content, "criteria.toml"))


@given(st.text(max_size=200))
def test_any_text_gives_a_reading(text):
    assert is_whole(reading(text.encode("utf-8", "surrogatepass").decode("utf-8", "replace")))


PIECES = [
    "“",
    "”",
    '"',
    "'",
    '"""',
    "'''",
    "[",
    "]",
    "{",
    "}",
    ",",
    "=",
    "#",
    ".",
    "%",
    "\n",
    "\r",
    "\0",
    "\\",
    "\u00a0",
]
VALUES = ["12,5", "20%", "true", "nan", "-inf", "1e400", "9" * 400, "0x" + "f" * 5000, '"70"', "[]", "{}", "[[1, 2]]",
          "2027-05-14", "2027-05-14T08:00:00", "08:00:00", "{ a = 1 }", '""', "-1", "0", "1e-320"]  # fmt: skip
places = st.floats(0, 1)
mutations = st.lists(
    st.one_of(
        st.tuples(st.just("delete"), places, st.integers(1, 40)),
        st.tuples(st.just("repeat"), places, st.integers(1, 40)),
        st.tuples(st.just("insert"), places, st.sampled_from(PIECES + VALUES)),
        st.tuples(st.just("value"), places, st.sampled_from(VALUES)),
        st.tuples(st.just("swap"), places, places),
    ),
    min_size=1,
    max_size=5,
)


def mutated(text, mutation):
    """Return a text with a piece deleted, repeated or put in, a value exchanged, or two lines swapped."""
    kind, place, more = mutation
    at = int(place * len(text))
    lines = text.split("\n")
    line = int(place * (len(lines) - 1))
    match kind:
        case "delete":
            return text[:at] + text[at + more :]
        case "repeat":
            return text[: at + more] + text[at:]
        case "insert":
            return text[:at] + more + text[at:]
        case "value":
            lines[line] = lines[line].partition("=")[0] + "= " + more
        case "swap":
            other = int(more * (len(lines) - 1))
            lines[line], lines[other] = lines[other], lines[line]
    return "\n".join(lines)


RANKED = JUDGED + '[weights]\nmethod = "ranks"\nranks = ["b", ["a"]]\nrule = "sum"\n'
PAIRED = JUDGED + '[weights]\nmethod = "pairs"\npairs = [["a", "b", "1/4"]]\n'


@pytest.mark.parametrize("text", [WHOLE, RANKED, PAIRED], ids=["typed", "ranks", "pairs"])
@given(mutations=mutations)
def test_any_mutation_of_a_good_file_gives_a_reading(text, mutations):
    for mutation in mutations:
        text = mutated(text, mutation)

    assert is_whole(reading(text))
