"""The page that follows: the report, one script and style sheet more, and a policy that allows just these."""

import re
from html import unescape

import pytest

from scorecard.page_policy import policy_for, source_of
from scorecard.watching.following import SCRIPT, STYLE, following, waiting_page

REPORT = f"""<!doctype html>
<html lang="en">
<head>
<meta http-equiv="Content-Security-Policy" content="{policy_for("p {}").replace("'", "&#39;")}">
<style>p {{}}</style>
</head>
<body>
<main><p>&lt;/body&gt; &lt;/head&gt;</p></main>
</body>
</html>
"""


def policy(page):
    (found,) = re.findall(r'Content-Security-Policy" content="([^"]*)"', page)
    return dict(rule.strip().partition(" ")[::2] for rule in unescape(found).split(";"))


@pytest.mark.parametrize("page", [REPORT, waiting_page("Nothing yet.")], ids=["report", "waiting"])
def test_only_the_hashes_of_what_was_added_are_added(page):
    before, after = policy(page), policy(following(page, 1))

    assert before["default-src"] == after["default-src"] == "'none'"
    assert f"{before['style-src']} {source_of(STYLE)}" == after["style-src"]
    assert (source_of(SCRIPT), "'self'") == (after["script-src"], after["connect-src"])
    assert "unsafe" not in str(after)


def test_scripts_of_the_page_stay_allowed():
    own = f"style-src {source_of('p {}')};"
    page = REPORT.replace(own.replace("'", "&#39;"), f"{own} script-src {source_of('let a')};".replace("'", "&#39;"))

    assert f"{source_of('let a')} {source_of(SCRIPT)}" == policy(following(page, 1))["script-src"]


def test_all_else_stays_as_it_is():
    page = following(REPORT, 7)
    bare = page.replace(f'<script data-version="7">{SCRIPT}</script>\n', "").replace(f"<style>{STYLE}</style>\n", "")

    assert REPORT.split("\n")[4:] == bare.split("\n")[4:]


def test_what_stands_between_the_tags_cannot_end_them():
    assert [] == re.findall(r"</(?:script|style)", SCRIPT + STYLE)


def test_words_on_the_waiting_page_are_words():
    assert "&lt;script&gt;" in waiting_page("<script>")
