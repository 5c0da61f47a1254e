"""Names, links and templates from what a user typed are made harmless."""

import errno
import subprocess
import sys

import jinja2
import pytest
from hypothesis import given
from hypothesis import strategies as st

from scorecard import harmless


@given(st.text(max_size=200), st.integers(2, 20_000))
def test_a_safe_name_is_one_short_plain_part_of_a_path(text, row):
    name = harmless.safe_name(text, row)

    assert set(name) <= set("abcdefghijklmnopqrstuvwxyz0123456789-")
    assert len(name) <= 66
    assert name.split("-")[0] == f"{row:02d}"


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("Žluť & Söhne", "03-zlut-sohne"),
        ("../../etc/passwd", "03-etc-passwd"),
        ("C:\\nul", "03-c-nul"),
        ("-rf *", "03-rf"),
        ("陶器", "03-maker"),
        ("", "03-maker"),
        ("Straße", "03-strasse"),
        ("a\x00b\nc\u202ed", "03-a-b-cd"),
    ],
)
def test_a_hostile_name_becomes_harmless(text, expected):
    assert expected == harmless.safe_name(text, 3)


@pytest.mark.parametrize("name", ["page.html", "page.html.j2", "page.txt", "page"])
def test_whatever_a_template_is_called_text_is_escaped(tmp_path, name):
    (tmp_path / name).write_text("<p>{{ maker }}</p>")

    page = harmless.environment(tmp_path).get_template(name).render(maker="<script>")

    assert "<p>&lt;script&gt;</p>" == page


def test_a_name_that_a_template_is_not_given_is_an_error(tmp_path):
    (tmp_path / "page.html").write_text("{{ makr }}")

    with pytest.raises(jinja2.UndefinedError, match="makr"):
        harmless.environment(tmp_path).get_template("page.html").render(maker="x")


def test_a_template_outside_the_folder_is_not_found(tmp_path):
    (tmp_path / "secret").write_text("secret")
    (tmp_path / "inner").mkdir()

    with pytest.raises(jinja2.TemplateNotFound):
        harmless.environment(tmp_path / "inner").get_template("../secret")


def test_templates_know_the_link_filter(tmp_path):
    (tmp_path / "page.html").write_text("{{ 'javascript:alert(1)'|safe_href }}")

    assert "None" == harmless.environment(tmp_path).get_template("page.html").render()


@pytest.mark.parametrize(
    "address", ["https://pots.example", "http://pots.example:8080/a?b=c#d", "HTTPS://Pots.Example/é", "https://[::1]/"]
)
def test_a_plain_web_address_may_be_linked(address):
    assert address == harmless.safe_href(address)


@pytest.mark.parametrize(
    "address",
    [
        None,
        "",
        "pots.example",
        "//pots.example",
        "http:pots.example",
        "https://",
        "javascript:alert(1)",
        "java\tscript:alert(1)",
        "https://pots.example\n",
        "https://pots.example/\x00",
        "https://pots.example/a b",
        "https://pots.example/\u202egnp.exe",
        "data:text/html,x",
        "file:///etc/passwd",
        "mailto:a@b.example",
        "https://user:pw@pots.example",
        "https://pots.example@other.example",
        "https://other.example\\.pots.example",
        "https://[broken",
        "https://pots.example:99999",
    ],
)
def test_a_doubtful_address_is_not_linked(address):
    assert harmless.safe_href(address) is None


def test_the_page_tools_stay_unloaded_until_a_page_is_made():
    code = "import sys, scorecard.harmless, scorecard.writing; sys.exit('jinja2' in sys.modules)"

    assert 0 == subprocess.run([sys.executable, "-c", code], check=False).returncode


def test_on_a_full_disk_a_page_is_made_all_the_same(tmp_path, monkeypatch):
    def no_room(*_args, **_words):
        raise OSError(errno.ENOSPC, "No space left on device")

    (tmp_path / "__pycache__").mkdir()
    (tmp_path / "page.html").write_text("<p>{{ maker }}</p>")
    monkeypatch.setattr("tempfile.NamedTemporaryFile", no_room)

    assert "<p>Fern</p>" == harmless.environment(tmp_path).get_template("page.html").render(maker="Fern")
    assert [] == list((tmp_path / "__pycache__").iterdir())
