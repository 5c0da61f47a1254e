"""The demo's pictures: four files, four verdicts."""

from scorecard.artwork import PrintSize
from scorecard.artwork_check import check_picture
from scorecard.demo.drawings import drawings
from scorecard.reading.pictures import read_picture

MUG = PrintSize(width_mm=180, height_mm=80)


def test_four_files_get_four_verdicts(tmp_path):
    (tmp_path / "artwork").mkdir()
    for name, content in drawings().items():
        (tmp_path / name).write_bytes(content)
    verdicts = {
        name.removeprefix("artwork/"): check_picture(read_picture(tmp_path / name), MUG).verdict for name in drawings()
    }

    assert {
        "harbour-light.png": "sharp",
        "headland-light.png": "wrong shape",
        "island-light.png": "not sharp",
        "night-light.png": "ask first",
    } == verdicts


def test_the_same_pictures_are_drawn_each_time():
    assert drawings() == drawings()
