"""A file that is saved while it is read: read again, or one sentence; never half of it."""

import pytest
from order_folder import DAY, ORDERS, lay_out
from process import scorecard

from scorecard import whole_files
from scorecard.criteria_edit import save_weights
from scorecard.errors import InputError, WriteError
from scorecard.reading.folder import read_folder


@pytest.fixture
def saved_meanwhile(monkeypatch):
    """Return a function that lets a file be saved, with other bytes, during its next so many readings."""
    read = whole_files.Path.read_bytes
    left = {}

    def saved(path):
        content = read(path)
        if left.get(path.name, 0):
            left[path.name] -= 1
            path.write_bytes(content + b"\n")
        return content

    monkeypatch.setattr(whole_files.Path, "read_bytes", saved)
    monkeypatch.setattr(whole_files, "PAUSE", 0)
    return lambda name, times: left.update({name: times})


@pytest.mark.parametrize("name", ["criteria.toml", "makers.csv", "memory.json"])
def test_a_file_that_is_saved_while_it_is_read_is_read_again(tmp_path, saved_meanwhile, name):
    folder = lay_out(tmp_path / "mugs", order="", Orders=ORDERS)
    scorecard("record", "Fern", *DAY, cwd=folder)
    (folder / "makers.xlsx").unlink()
    (folder / "makers.csv").write_text("Maker,Rating,Minimum order\nFernhill,4,100\nAlder,3,50\n", "utf-8")
    saved_meanwhile(name, 2)

    assert ("Fernhill", "Alder") == tuple(read_folder(folder).table.makers)


@pytest.mark.parametrize("name", ["criteria.toml", "makers.csv", "makers.xlsx"])
def test_a_file_that_does_not_stop_changing_is_one_problem(tmp_path, saved_meanwhile, name):
    folder = lay_out(tmp_path / "mugs", order="")
    if name == "makers.csv":
        (folder / "makers.xlsx").rename(folder / "away")
        (folder / name).write_text("Maker,Rating,Minimum order\nFernhill,4,100\n", "utf-8")
    saved_meanwhile(name, 99)

    with pytest.raises(InputError) as raised:
        read_folder(folder)
    assert [name] == [one.place.file for one in raised.value.problems]
    assert "the file cannot be opened" in raised.value.problems[0].found
    assert "it changes while it is read" in raised.value.problems[0].found


@pytest.mark.parametrize("text", ["weight = [", "", "[criteria]\nrating = 3", "\udc80"])
def test_a_criteria_file_that_was_changed_since_is_left_alone(tmp_path, text):
    path = tmp_path / "criteria.toml"
    content = text.encode("utf-8", "surrogateescape")
    path.write_bytes(content)

    with pytest.raises(WriteError, match=r"has changed since it was read\. Nothing was written: run the same command"):
        save_weights(path, {"rating": 3})
    assert [content] == [one.read_bytes() for one in tmp_path.iterdir()]
