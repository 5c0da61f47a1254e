"""Help, version, and ``scorecard`` alone."""

import json
import re
import subprocess
import sys

import pytest
from process import STARTED, scorecard
from sourcing import folder_of

CORES_OF_LATER = ("costing", "scheduling", "ordering", "inspection", "samples", "orders", "since", "memory")
LATE = (
    *(f"scorecard.{core}" for core in CORES_OF_LATER),
    *(f"scorecard.report.{view}" for view in ("landed", "quantities", "schedule", "since", "remembering")),
    "holidays",
)
HEAVY = ("numpy", "pandas", "openpyxl", "jinja2", "xlsxwriter", "scipy", "tomlkit")


def test_help_lists_the_commands_by_the_stage_of_the_work(tmp_path):
    said = scorecard("--help", cwd=tmp_path)

    assert said.status == 0
    stages = [said.out.index(f"\n{stage}:") for stage in ("First day", "Trying weights", "Asking")]
    assert stages == sorted(stages)
    assert re.findall(r"^  (demo|start|check|score|reweigh|watch|enquire)\b", said.out, re.MULTILINE) == [
        "demo", "start", "check", "score", "reweigh", "watch", "enquire",
    ]  # fmt: skip


def test_every_command_has_help_with_an_example(tmp_path):
    for name in ("demo", "start", "check", "score", "reweigh", "watch", "enquire"):
        said = scorecard(name, "--help", cwd=tmp_path)

        assert (0, True) == (said.status, "For example: scorecard" in said.out), name


def test_help_loads_nothing_heavy(tmp_path):
    program = (
        "import sys\nfrom scorecard.cli.app import app\n"
        "try:\n    app(['--help'])\nexcept SystemExit:\n    pass\n"
        f"print([name for name in {HEAVY!r} if name in sys.modules])"
    )
    done = subprocess.run([sys.executable, "-c", program], cwd=tmp_path, capture_output=True, text=True, timeout=60)

    assert "[]" == done.stdout.rstrip().split("\n")[-1]


def test_score_does_without_pandas(tmp_path):
    scorecard("demo", "shown", cwd=tmp_path)
    program = (
        "import sys\nfrom scorecard.cli.app import app\n"
        "try:\n    app(['score', '--folder', 'shown'])\nexcept SystemExit:\n    pass\n"
        "print([name for name in ('pandas', 'scipy', 'tomlkit') if name in sys.modules])"
    )
    done = subprocess.run([sys.executable, "-c", program], cwd=tmp_path, capture_output=True, text=True, timeout=60)

    assert "[]" == done.stdout.rstrip().split("\n")[-1]


def test_score_loads_nothing_of_costs_dates_samples_and_arrivals_before_there_is_word_of_them(tmp_path):
    folder_of(tmp_path)
    program = (
        "import sys\nfrom scorecard.cli.app import app\n"
        "try:\n    app(['score'])\nexcept SystemExit:\n    pass\n"
        f"print([name for name in {LATE!r} if name in sys.modules])"
    )
    done = subprocess.run([sys.executable, "-c", program], cwd=tmp_path, capture_output=True, text=True, timeout=60)

    assert ["Report: ", "[]"] == [*re.findall("^Report: ", done.stdout, re.MULTILINE), done.stdout.split("\n")[-2]]


def test_the_version_is_printed(tmp_path):
    assert re.fullmatch(r"scorecard \d+\.\d+\.\d+\n", scorecard("--version", cwd=tmp_path).out)


def test_alone_outside_a_sourcing_folder_it_shows_help_and_a_first_step(tmp_path):
    said = scorecard(cwd=tmp_path)

    assert (0, True) == (said.status, said.last.startswith("Next: "))


def test_alone_in_a_sourcing_folder_it_scores(tmp_path):
    scorecard("demo", "shown", cwd=tmp_path)
    alone = scorecard(cwd=tmp_path / "shown")
    named = scorecard("score", cwd=tmp_path / "shown")

    assert (0, named.out) == (alone.status, alone.out)


@pytest.mark.parametrize("words", [("--folder", "shown"), ("--folder", "shown", "--json"), ("--folder=shown",)])
def test_options_without_a_command_are_those_of_score(tmp_path, words):
    scorecard("demo", "shown", cwd=tmp_path)
    alone, named = scorecard(*words, cwd=tmp_path), scorecard("score", *words, cwd=tmp_path)

    assert (0, named.out) == (alone.status, alone.out)


def test_options_before_a_command_are_those_of_the_command(tmp_path):
    scorecard("demo", "shown", cwd=tmp_path)
    for before in (("--folder", "shown"), ("--json", "--folder=shown")):
        told = scorecard(*before, "check", cwd=tmp_path)

        assert (0, scorecard("check", *before, cwd=tmp_path).out) == (told.status, told.out)


def test_a_folder_may_be_named_as_a_command_is(tmp_path):
    scorecard("demo", "check", cwd=tmp_path)
    said = scorecard("--folder", "check", "--json", cwd=tmp_path)

    assert (0, "scorecard/1") == (said.status, json.loads(said.out)["schema"])


def test_json_alone_outside_a_sourcing_folder_lists_the_problem(tmp_path):
    said = scorecard("--json", cwd=tmp_path)

    assert (3, ["nothing-in-folder"]) == (said.status, [one["code"] for one in json.loads(said.out)["problems"]])


def test_an_option_that_there_is_not_is_wrong_usage(tmp_path):
    said = scorecard("--folders", "shown", cwd=tmp_path)

    assert (2, True) == (said.status, "--folder" in said.err)


def test_a_wrong_word_is_wrong_usage_and_names_the_nearest(tmp_path):
    said = scorecard("scor", cwd=tmp_path)

    assert (2, "") == (said.status, said.out)
    assert "score" in said.err


def test_the_tools_own_failure_is_one_sentence_and_status_1(tmp_path):
    program = (
        "import scorecard.cli.scoring as scoring\n"
        "def fails(*args, **words): raise RuntimeError('broken inside')\n"
        "scoring.assess = fails\n"
        "from scorecard.cli.app import app\napp(['score', '--folder', 'shown'])"
    )
    scorecard("demo", "shown", cwd=tmp_path)
    done = subprocess.run([sys.executable, "-c", program], cwd=tmp_path, capture_output=True, text=True, timeout=60)

    assert 1 == done.returncode
    assert "Traceback" not in done.stderr
    assert "RuntimeError: broken inside" in done.stderr


def test_a_closed_pipe_shows_no_traceback(tmp_path):
    scorecard("demo", "shown", cwd=tmp_path)
    done = subprocess.run(
        f"{sys.executable} -m scorecard score --folder shown --json | true",
        shell=True, cwd=tmp_path, capture_output=True, text=True, timeout=60,
    )  # fmt: skip

    assert "Traceback" not in done.stderr


def test_json_is_all_that_stands_on_standard_output(tmp_path):
    scorecard("demo", "shown", cwd=tmp_path)
    place = ("--folder", "shown")
    for words in (
        ("check", *place), ("score", *place), ("reweigh", "performance=5", *place), ("enquire", *place),
        ("start", "new"), ("demo", "other"),
    ):  # fmt: skip
        said = scorecard(*words, "--json", cwd=tmp_path)

        assert json.loads(said.out)["schema"].startswith("scorecard"), words


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (("score", "mugs"), "mugs: a folder is named with --folder: scorecard score --folder mugs"),
        (("cost", "my mugs"), '"my mugs": a folder is named with --folder: scorecard cost --folder "my mugs"'),
        (
            ("score", "--folder", "my", "mugs"),
            "mugs: score takes no further word; put a name that holds spaces in quotes.",
        ),
        (("start", "my", "mugs"), "mugs: start takes no further word; put a name that holds spaces in quotes."),
        (("there",), "there is a folder, and is named after the command: scorecard score --folder there"),
        (("there", "check"), "there is a folder, and is named after the command: scorecard check --folder there"),
    ],
)
def test_a_word_too_many_is_told_how_a_folder_is_named(tmp_path, words, told):
    (tmp_path / "there").mkdir()
    said = scorecard(*words, cwd=tmp_path)

    last = said.err.rstrip("\n").split("\n")[-1].replace(STARTED, "scorecard")
    assert (2, f"Error: {told}") == (said.status, last)
