"""What pages wear and may load."""

from base64 import b64encode
from hashlib import sha256

from scorecard.page_policy import LOOK, policy_for, worn


def hashed(text):
    return f"'sha256-{b64encode(sha256(text.encode()).digest()).decode()}'"


def test_a_page_may_load_what_it_carries_and_nothing_else():
    assert (
        f"default-src 'none'; style-src {hashed('a')}; script-src {hashed('b')}; base-uri 'none'; form-action 'none'"
    ) == policy_for("a", "b")


def test_a_page_without_scripts_may_run_none():
    assert "script-src" not in policy_for("a")


def test_a_page_wears_the_shared_look_before_its_own(tmp_path):
    (tmp_path / "own.css").write_text("p { margin: 0 }", "utf-8")
    found = worn(tmp_path / "own.css", scripts=("run()",))
    style = LOOK.read_text("utf-8") + "p { margin: 0 }"

    assert {"style": style, "policy": policy_for(style, "run()")} == found
