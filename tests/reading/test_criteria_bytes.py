import pytest

from scorecard.reading.criteria_bytes import LARGEST_FILE, decoded, read_bytes
from scorecard.reading.toml_tables import Notes


def opened(path):
    """Return what a file holds, and the codes of what was noted."""
    notes = Notes(path.name)
    return read_bytes(path, notes), [problem.code for problem in notes.problems]


def text_of(content):
    """Return the text of bytes, and the codes of problems and of warnings."""
    notes = Notes("criteria.toml")
    text = decoded(content, notes)
    return text, [problem.code for problem in notes.problems], [warning.code for warning in notes.warnings]


def test_a_file_is_read(tmp_path):
    path = tmp_path / "criteria.toml"
    path.write_bytes(b"title = 1")

    assert (b"title = 1", []) == opened(path)


def test_a_missing_file_is_noted(tmp_path):
    assert (None, ["file-missing"]) == opened(tmp_path / "criteria.toml")


def test_a_file_that_the_editor_named_txt_is_pointed_out(tmp_path):
    (tmp_path / "criteria.toml.txt").touch()
    notes = Notes("criteria.toml")
    read_bytes(tmp_path / "criteria.toml", notes)

    [problem] = notes.problems
    assert "saved-as-txt" == problem.code
    assert problem.wanted.startswith("Rename it to criteria.toml")


def test_a_folder_in_its_place_is_noted(tmp_path):
    assert (None, ["is-a-folder"]) == opened(tmp_path)


def test_a_device_is_noted_and_not_waited_for(tmp_path):
    import os

    os.mkfifo(tmp_path / "criteria.toml")

    assert (None, ["not-a-file"]) == opened(tmp_path / "criteria.toml")


@pytest.mark.parametrize("name", ["a" * 5000, "a\0b"])
def test_a_name_that_no_file_can_have_is_noted(tmp_path, name):
    content, codes = opened(tmp_path / name)

    assert content is None
    assert codes in (["cannot-open"], ["file-missing"])


def test_a_file_that_may_not_be_read_is_noted(tmp_path, monkeypatch):
    path = tmp_path / "criteria.toml"
    path.touch()

    def refuse(_path):
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr(type(path), "read_bytes", refuse)

    assert (None, ["cannot-open"]) == opened(path)


def test_a_file_over_300_kb_is_not_opened(tmp_path):
    path = tmp_path / "criteria.toml"
    path.write_bytes(b"#" * (LARGEST_FILE + 1))

    assert (None, ["file-too-large"]) == opened(path)
    assert (None, ["file-too-large"], []) == text_of(path.read_bytes())


def test_a_file_of_more_lines_than_anybody_writes_is_not_read():
    assert (None, ["file-too-large"], []) == text_of(b"\n" * 20_001)


def test_plain_text_comes_through():
    assert ("é", [], []) == text_of("é".encode())


def test_a_byte_order_mark_is_passed_over_with_a_warning():
    assert ("x = 1", [], ["byte-order-mark"]) == text_of(b"\xef\xbb\xbfx = 1")


@pytest.mark.parametrize("encoding", ["utf-16", "utf-16-le", "utf-16-be"])
def test_utf_16_is_a_problem_and_is_read_on(encoding):
    assert ('title = "é"', ["saved-as-utf-16"], []) == text_of('title = "é"'.encode(encoding))


def test_another_encoding_is_a_problem_with_its_line_and_is_read_on():
    notes = Notes("criteria.toml")
    text = decoded('a = 1\nb = "é"'.encode("cp1252"), notes)

    [problem] = notes.problems
    assert ('a = 1\nb = "é"', "not-utf-8") == (text, problem.code)
    assert "line 2" in problem.found


@pytest.mark.parametrize("content", [b"", b" \n\t\n", b"\xef\xbb\xbf"])
def test_an_empty_file_is_noted(content):
    assert (None, ["file-empty"]) == text_of(content)[:2]


@pytest.mark.parametrize("content", [b"PK\x03\x04\xff\x00\x01", b"\xff\xfe\x00\x00a\x00\x00\x00", b"\xff\xfea"])
def test_a_file_of_another_kind_is_not_taken_for_text(content):
    text, problems, _ = text_of(content)

    assert 1 == len(problems)
    assert text is None or "\0" not in text
