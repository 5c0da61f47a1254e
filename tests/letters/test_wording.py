"""The templates: shipped ones, and the user's own with every fault at its line."""

import re
from pathlib import Path

import pytest

from scorecard.letters.placeholders import faults_of, names_in
from scorecard.letters.values import PLACEHOLDERS
from scorecard.letters.wording import KINDS, Wording, read_wording, shipped


def codes(problems):
    return [(one.place.file, one.place.key, one.code) for one in problems]


@pytest.mark.parametrize("kind", KINDS)
def test_a_shipped_template_has_no_fault_and_asks_the_questions(kind):
    assert ((), True) == (faults_of(shipped(kind), PLACEHOLDERS), "questions" in names_in(shipped(kind)))


@pytest.mark.parametrize("kind", KINDS)
def test_a_shipped_template_ends_with_one_line_break_and_holds_no_carriage_return(kind):
    assert (True, False, False) == (
        shipped(kind).endswith("\n"),
        shipped(kind).endswith("\n\n"),
        "\r" in shipped(kind),
    )


@pytest.mark.parametrize("kind", KINDS)
def test_a_shipped_template_closes_with_a_place_for_the_senders_name(kind):
    assert shipped(kind).endswith("\n\nThank you.\n\n{your_name}\n")


def test_the_full_template_gives_the_whole_brief():
    brief = {"item", "print_size", "quantity", "designs", "next_quantity", "destination", "need_by", "currency"}

    assert brief <= names_in(shipped("full"))


@pytest.mark.parametrize(
    "topic",
    [
        "price of one piece",
        "the price covers",
        "set-up: the cost for each design",
        "sample, and its postage",
        "packing",
        "working days",
        "cost for {quantity} pieces, and the days",
        "length, width and height in cm, and its weight",
        "photographs of earlier work",
        "photograph of the first printed piece",
        "care",
        "test reports, if the goods touch food",
        "if they are for children",
        "material",
    ],
)
def test_the_full_template_asks_for_all_that_a_quote_needs(topic):
    assert topic in shipped("full").casefold()


@pytest.mark.parametrize("kind", ["short", "full"])
def test_a_message_offers_a_small_marked_picture_and_holds_the_print_file_back(kind):
    text = shipped(kind)

    assert all(words in text for words in ("small picture", "marked with our name", "print file after the order"))


def test_no_template_asks_for_a_lowered_value_or_a_gift():
    whole = " ".join(map(shipped, KINDS)).casefold()

    assert [] == re.findall(r"gift|lower(?:ed)? value|under-?val|low value", whole)
    assert "full value" in whole


@pytest.mark.parametrize("kind", KINDS)
def test_the_sentences_of_a_shipped_template_are_short(kind):
    sentences = re.split(r"[.?:;\n]\s*", shipped(kind))

    assert [] == [sentence for sentence in sentences if len(sentence.split()) > 16]


def test_without_files_of_the_user_the_shipped_ones_are_used(tmp_path):
    assert Wording(**{kind: shipped(kind) for kind in KINDS}) == read_wording(tmp_path)


def test_the_users_own_file_goes_first_whatever_its_line_ends_and_byte_order_mark(tmp_path):
    (tmp_path / "enquiry-short.txt").write_bytes("\ufeffDear {maker},\r\n{questions}\r\n".encode())
    wording = read_wording(tmp_path)

    assert ("Dear {maker},\n{questions}\n", shipped("full"), ()) == (wording.short, wording.full, wording.problems)


def test_every_fault_of_every_file_is_a_problem_at_its_placeholder_and_line(tmp_path):
    (tmp_path / "enquiry-short.txt").write_text("Dear {makr},\n{questions}\n{price.now}\n", "utf-8")
    (tmp_path / "enquiry-reminder.txt").write_text("{questions} }\n", "utf-8")
    (tmp_path / "enquiry-full.txt").write_bytes(b"\xff\xfe\x00")
    problems = read_wording(tmp_path).problems

    assert [
        ("enquiry-short.txt", "makr", "unknown-placeholder"),
        ("enquiry-short.txt", "price.now", "unknown-placeholder"),
        ("enquiry-full.txt", None, "not-utf-8"),
        ("enquiry-reminder.txt", "}", "lone-brace"),
    ] == codes(problems)
    assert ["line 1", "line 3"] == [problem.found[:6] for problem in problems[:2]]


def test_an_unknown_placeholder_is_answered_with_the_nearest_and_all_known_ones(tmp_path):
    (tmp_path / "enquiry-short.txt").write_text("{makr} {questions}", "utf-8")
    (problem,) = read_wording(tmp_path).problems

    assert problem.wanted.startswith("Write {maker} if that is meant")
    assert all(f"{{{name}}}" in problem.wanted for name in PLACEHOLDERS)


def test_a_template_without_questions_is_a_warning(tmp_path):
    (tmp_path / "enquiry-short.txt").write_text("Hello", "utf-8")
    wording = read_wording(tmp_path)

    assert [("enquiry-short.txt", "questions", "no-questions")] == codes(wording.warnings)
    assert () == wording.problems


def test_a_folder_or_a_flood_in_place_of_a_template_is_a_problem(tmp_path):
    (tmp_path / "enquiry-short.txt").mkdir()
    (tmp_path / "enquiry-full.txt").write_bytes(b"x" * 100_001)

    assert [
        ("enquiry-short.txt", None, "cannot-be-read"),
        ("enquiry-full.txt", None, "file-too-large"),
    ] == codes(read_wording(tmp_path).problems)


def test_every_placeholder_stands_in_the_reference():
    reference = (Path(__file__).parents[2] / "scorecard" / "documents" / "reference.md").read_text("utf-8")

    assert [] == [name for name, meaning in PLACEHOLDERS.items() if f"| `{{{name}}}` | {meaning} |" not in reference]
