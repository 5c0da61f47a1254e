"""``artwork`` as a whole process."""

import json
from importlib.resources import files

import jsonschema
import pytest
from PIL import Image
from process import scorecard

BRIEF = """[brief]
item = "enamel mug"
quantity = 200
designs = 2
print_width_mm = 180
print_height_mm = 80

[criteria.rating]
weight = 1
column = "Rating"
points = [[0, 0], [5, 100]]
"""


@pytest.fixture
def folder(tmp_path):
    (tmp_path / "criteria.toml").write_text(BRIEF)
    Image.new("RGB", (2126, 945), "navy").save(tmp_path / "sharp.png")
    Image.new("RGB", (900, 400), "navy").save(tmp_path / "small.jpg")
    return tmp_path


def result_of(ran):
    result = json.loads(ran.out)
    jsonschema.validate(result, json.loads(files("scorecard").joinpath("schemas", "artwork.json").read_text("utf-8")))
    return result


def test_each_file_gets_its_verdict_at_the_size_in_the_brief(folder):
    result = result_of(scorecard("artwork", "sharp.png", "small.jpg", "--json", cwd=folder))

    assert ["sharp", "not sharp"] == [one["verdict"] for one in result["files"]]


def test_the_words_name_the_size_and_what_to_do_next(folder):
    ran = scorecard("artwork", "sharp.png", "small.jpg", cwd=folder)

    assert (0, True, "Next: mend small.jpg first, then run this again") == (
        ran.status,
        "Printed at 180 × 80 mm, 300 dots per inch: 2126 × 945 pixels are needed." in ran.out,
        ran.last,
    )


def test_a_size_on_the_command_line_needs_no_folder(folder, tmp_path_factory):
    elsewhere = tmp_path_factory.mktemp("empty")
    words = ("artwork", str(folder / "sharp.png"), "--width", "90", "--height", "40", "--json")

    assert 90 == result_of(scorecard(*words, cwd=elsewhere))["print"]["width_mm"]


def test_no_size_anywhere_is_a_wrong_use(folder):
    (folder / "criteria.toml").write_text(BRIEF.replace("print_width_mm = 180\n", ""))
    ran = scorecard("artwork", "sharp.png", cwd=folder)

    assert (2, True) == (ran.status, "print_width_mm" in ran.err)


def test_every_file_that_cannot_be_read_is_named_at_once(folder):
    (folder / "text.png").write_text("hello")
    ran = scorecard("artwork", "text.png", "none.tif", "sharp.png", "--json", cwd=folder)
    problems = result_of(ran)["problems"]

    assert (3, [("text.png", "not-a-picture"), ("none.tif", "unreadable-file")]) == (
        ran.status,
        [(one["file"], one["code"]) for one in problems],
    )


def test_a_faulty_brief_is_told_with_its_key(folder):
    (folder / "criteria.toml").write_text(BRIEF + "\n[brief2]\n")

    assert 3 == scorecard("artwork", "sharp.png", cwd=folder).status


def test_bleed_in_the_brief_counts(folder):
    (folder / "criteria.toml").write_text(BRIEF.replace("designs = 2", "designs = 2\nbleed_mm = 3"))

    assert "no-bleed" in [
        one["code"]
        for one in result_of(scorecard("artwork", "sharp.png", "--json", cwd=folder))["files"][0]["findings"]
    ]
