from cases import choices, make_case
from hypothesis import given
from hypothesis import strategies as st

from scorecard.criteria import Limit
from scorecard.report.texts import CLOSE, OPEN, bare, isolate, marked, sentence, visible


def test_a_sign_that_turns_the_line_around_is_seen():
    assert "evil\ufffdfdp.exe" == visible("evil\u202efdp.exe")


def test_a_line_break_becomes_a_space():
    assert "Kiln Co" == visible("Kiln\nCo")


def test_joiners_of_emoji_and_of_persian_stay():
    assert "👩🏽‍🎨 نمی‌خواهم" == visible("👩🏽‍🎨 نمی‌خواهم")


def test_a_name_of_200_signs_stays_whole():
    assert "W" * 200 == visible("W" * 200)


def test_a_longer_name_is_cut_and_says_so():
    assert "W" * 199 + "…" == visible("W" * 201)


@given(st.text(st.characters(exclude_categories=[])))
def test_whatever_is_typed_can_be_written_to_a_file(text):
    assert visible(text).encode() is not None


@given(st.text())
def test_marks_stand_only_where_we_put_them(text):
    assert (OPEN, CLOSE) == tuple(sign for sign in isolate(text) if sign in (OPEN, CLOSE))


def test_isolate_marks_become_elements_and_all_else_is_escaped():
    assert "<bdi>&lt;ö&gt;</bdi> leads" == str(marked(f"{isolate('<ö>')} leads"))


def test_plain_names_need_no_element_of_their_own():
    assert "&lt;b&gt; leads" == str(marked(f"{isolate('<b>')} leads"))


def test_bare_text_has_no_marks():
    assert "Brightholm" == bare(isolate("Brightholm"))


def test_words_become_a_sentence():
    assert "Moving 4.2 of 100 decides it." == sentence("moving 4.2 of 100 decides it")


def test_names_titles_and_choices_are_isolated(shown):
    criterion = choices("method", 1, {"kiln": 100, "sticker": 0}, limit=Limit(one_of=("kiln",)))
    case = shown(make_case([criterion], {"Brightholm": ["kiln"]})).case
    method = case.criteria["method"]
    marks = [case.table.makers[0], method.title, *method.choices, *method.limit.one_of]
    assert [isolate(text) for text in ("Brightholm", "Method", "kiln", "sticker", "kiln")] == marks
