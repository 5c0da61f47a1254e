"""``enquire`` as a whole process: messages, templates, problems, reminders."""

import json
from importlib.resources import files

import jsonschema
import pytest
from builders import makers_xlsx
from process import STARTED, scorecard

CRITERIA = """
title = "Mugs"
[brief]
item = "mug"
quantity = 200
designs = 4
[criteria.minimum]
weight = 60
column = "Minimum order"
unit = "pieces"
per = "quantity"
points = [[1, 100], [2, 0]]
limit = { at_most = 3 }
[criteria.years]
title = "Years trading"
weight = 40
unit = "years"
points = [[0, 0], [10, 100]]
"""
HEADINGS = ["Maker", "Minimum order", "Years trading", "Minimum is per", "Asked on", "Answered on"]
ROWS = [
    ["Oxlip Kilns", 200, 5, "order"],  # 60 + 20 = 80; Tansy Works, with the least minimum, 60 + 32 = 92
    ["Tansy & Vane", None, None, None, "2026-11-13"],
    ["Tansy Works", None, 8, "order", "2026-11-13", "2026-11-17"],
    ["Copperwren", 5000, None, "order"],
]


@pytest.fixture
def folder(tmp_path):
    (tmp_path / "criteria.toml").write_text(CRITERIA, "utf-8")
    makers_xlsx(tmp_path / "makers.xlsx", HEADINGS, ROWS)
    return tmp_path


def enquire(folder, *words):
    return scorecard("enquire", "--as-of", "2026-11-25", *words, cwd=folder, SOURCE_DATE_EPOCH="1795597200")


def result(folder, *words):
    return json.loads(enquire(folder, *words, "--json").out)


def test_it_writes_a_short_and_a_full_text_for_each_ranked_maker(folder):
    said = enquire(folder)

    assert 0 == said.status
    assert [
        "02-oxlip-kilns-full.txt",
        "02-oxlip-kilns-short.txt",
        "03-tansy-vane-full.txt",
        "03-tansy-vane-reminder.txt",
        "03-tansy-vane-short.txt",
        "04-tansy-works-full.txt",
        "04-tansy-works-short.txt",
        "enquiries.html",
        "enquiries.json",
    ] == sorted(path.name for path in (folder / "reports" / "enquiries").iterdir() if path.name[0] != ".")


def test_the_files_are_utf_8_with_plain_line_ends_and_hold_what_the_result_says(folder):
    told = result(folder)
    written = folder / "reports" / "enquiries"

    assert told == json.loads((written / "enquiries.json").read_bytes())
    for message in told["messages"]:
        assert message["short"].encode() == (written / message["file"]).read_bytes()
        assert message["full"].encode() == (written / message["full_file"]).read_bytes()
        assert b"\r" not in (written / message["file"]).read_bytes()


def test_only_what_is_unknown_is_asked_the_most_decisive_first(folder):
    told = result(folder)

    assert [("Tansy Works", ["minimum"]), ("Oxlip Kilns", []), ("Tansy & Vane", ["minimum", "years"])] == [
        (one["maker"], [question["criterion"] for question in one["questions"]]) for one in told["messages"]
    ]
    assert [True, None, False] == [
        one["questions"][0]["could_change_leader"] if one["questions"] else None for one in told["messages"]
    ]


def test_it_prints_whom_to_write_to_who_is_due_and_a_next_step(folder):
    said = enquire(folder)

    assert "Due a reminder: Tansy & Vane, asked on 13 November 2026, 8 working days ago" in said.out
    assert "Asked 2 makers; answered: 1; due a reminder: 1." in said.out
    assert any(line.split()[:6] == ["Oxlip", "Kilns", "the", "quote", "not", "yet"] for line in said.out.splitlines())
    assert "02-oxlip-kilns-full.txt" in said.out
    assert "13 November 2026, answered in 2 working days" in said.out
    assert "No message, since ruled out: Copperwren." in said.out
    assert f"Page to copy from: {folder.resolve() / 'reports' / 'enquiries' / 'enquiries.html'}" in said.out
    assert "Next: send Tansy Works its questions: 04-tansy-works-short.txt" == said.last


ASKED = [*ROWS[0], "2026-11-11", "2026-11-12"]


@pytest.mark.parametrize(
    ("rows", "words", "step"),
    [
        (
            [ASKED, ROWS[1]],
            [],
            "send Tansy & Vane the reminder, 03-tansy-vane-reminder.txt; "
            "when it answers, type the day into F3 (Answered on) of makers.xlsx",
        ),
        (
            [ASKED, ROWS[1]],
            ["--remind-after", "9"],
            f"when Tansy & Vane answers, type the day into F3 (Answered on) of makers.xlsx, then {STARTED} score",
        ),
        ([ASKED, ROWS[2]], [], "send Tansy Works its questions: 03-tansy-works-short.txt"),
        (
            [ROWS[0], ROWS[2]],  # an answer of Tansy Works that is still open could change the leader
            [],
            "send Tansy Works its questions: 03-tansy-works-short.txt",
        ),
        ([ASKED], [], "send Oxlip Kilns the full message, for its quote: 02-oxlip-kilns-full.txt"),
        (
            [ROWS[0]],
            [],
            "send Oxlip Kilns its message, 02-oxlip-kilns-full.txt, "
            "then type the day into E2 (Asked on) of makers.xlsx",
        ),
        ([ROWS[3]], [], f"look at the limits in the criteria file, then {STARTED} score"),
        (
            ROWS,
            ["--maker", "copper"],
            "send Copperwren its message, 05-copperwren-short.txt, then type the day into E5 (Asked on) of makers.xlsx",
        ),
    ],
)
def test_the_next_step_follows_who_was_asked_and_who_answered(folder, rows, words, step):
    makers_xlsx(folder / "makers.xlsx", HEADINGS, rows)

    assert f"Next: {step}" == enquire(folder, *words).last


def test_the_cautions_stand_before_the_next_step(folder):
    said = enquire(folder).out

    assert "Never send the print file first." in said
    assert "stay in the channel whose protection you rely on; a bank transfer seldom comes back" in said


def test_where_the_column_is_missing_the_next_step_says_to_make_it(folder):
    makers_xlsx(folder / "makers.xlsx", HEADINGS[:3], [row[:3] for row in ROWS])

    assert "type the day into a new column Asked on of makers.xlsx" in enquire(folder).last


def test_a_longer_patience_is_an_option(folder):
    assert [False, False] == [one["due"] for one in result(folder, "--remind-after", "8")["asked"]]


def test_one_maker_can_be_named_by_a_beginning_though_it_is_ruled_out(folder):
    told = result(folder, "--maker", "copper")

    assert ("Copperwren", "Copperwren", "ruled out", ["minimum", "years"]) == (
        told["named"],
        told["messages"][0]["maker"],
        told["messages"][0]["status"],
        [question["criterion"] for question in told["messages"][0]["questions"]],
    )
    assert told["messages"][0]["questions"][0]["text"].startswith("Can you make 200 pieces in all?")


def test_naming_a_maker_leaves_all_others_on_the_page_and_says_so(folder):
    said = enquire(folder, "--maker", "copper").out
    written = (folder / "reports" / "enquiries" / "enquiries.html").read_text("utf-8")

    assert all(f"<h3><bdi>{name}</bdi></h3>" in written for name in ("Copperwren", "Oxlip Kilns", "Tansy Works"))
    assert "… and 3 more on the page, as before" in said


def test_commands_on_the_page_are_as_the_user_started_the_tool(folder):
    enquire(folder.parent, "--folder", folder.name)
    written = (folder / "reports" / "enquiries" / "enquiries.html").read_text("utf-8")

    assert f"<code>scorecard enquire --folder {folder.name} --templates</code>" in written


@pytest.mark.parametrize(
    ("name", "words"),
    [
        ("tansy", "fits several: Tansy & Vane and Tansy Works"),
        ("Coperwren", "Is Copperwren meant?"),
        ("zzz", "no maker has this name"),
        ("", "no maker has this name"),
    ],
)
def test_a_name_that_fits_none_or_several_is_wrong_usage(folder, name, words):
    said = enquire(folder, "--maker", name)

    assert (2, "", True) == (said.status, said.out, words in said.err)


def test_templates_are_laid_out_and_used_and_never_written_over(folder):
    scorecard("enquire", "--templates", cwd=folder)
    (folder / "enquiry-short.txt").write_text("Dear {maker}!\n{questions}\n", "utf-8")
    again = scorecard("enquire", "--templates", cwd=folder)

    assert (0, True) == (
        again.status,
        "Left as they are: enquiry-short.txt, enquiry-full.txt and enquiry-reminder.txt." in again.out,
    )
    assert result(folder)["messages"][0]["short"].startswith("Dear Tansy Works!\n1. ")


def test_templates_need_a_folder(tmp_path):
    assert 2 == scorecard("enquire", "--templates", "--folder", "none", cwd=tmp_path).status


def test_every_problem_of_templates_and_makers_is_told_at_once(folder):
    (folder / "enquiry-short.txt").write_text("Dear {makr},\n\n{prise}\n", "utf-8")
    (folder / "enquiry-full.txt").write_text("{", "utf-8")
    makers_xlsx(folder / "makers.xlsx", HEADINGS, [["Oxlip", "some", 9, "order"]])
    said = enquire(folder, "--json")

    assert 3 == said.status
    assert [
        ("makers.xlsx", "B2", None),
        ("enquiry-short.txt", None, "makr"),
        ("enquiry-short.txt", None, "prise"),
        ("enquiry-full.txt", None, "{"),
    ] == [(one["file"], one["cell"], one["key"]) for one in json.loads(said.out)["problems"]]
    assert not (folder / "reports").exists()


def test_a_problem_is_told_in_words_with_the_line(folder):
    (folder / "enquiry-short.txt").write_text("{questions}\n{makr}\n", "utf-8")
    said = enquire(folder)

    assert (3, True) == (said.status, "enquiry-short.txt, makr: line 2 has {makr}" in said.err)
    assert "Write {maker} if that is meant" in said.err


def test_a_text_that_the_user_changed_is_kept(folder):
    enquire(folder)
    short = folder / "reports" / "enquiries" / "03-tansy-vane-short.txt"
    short.write_text("my own words", "utf-8")
    said = enquire(folder)

    assert "my own words" == short.with_name("03-tansy-vane-short-edited-1.txt").read_text("utf-8")
    assert "is kept as" in said.err


def test_the_same_files_give_the_same_bytes(folder):
    def written():
        enquire(folder)
        return {path.name: path.read_bytes() for path in (folder / "reports" / "enquiries").iterdir()}

    assert written() == written()


def test_a_result_and_a_list_of_problems_fit_the_schema(folder):
    schema = json.loads(files("scorecard").joinpath("schemas", "enquire.json").read_text("utf-8"))
    jsonschema.validate(result(folder), schema)
    (folder / "enquiry-short.txt").write_text("{makr}", "utf-8")
    jsonschema.validate(result(folder), schema)

    assert not jsonschema.Draft202012Validator(schema).is_valid({"schema": "scorecard-enquire/1"})


def test_without_makers_there_is_nobody_to_ask(folder):
    makers_xlsx(folder / "makers.xlsx", HEADINGS, [])

    assert 3 == enquire(folder).status
