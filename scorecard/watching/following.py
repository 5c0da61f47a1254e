"""The page as it is served while a watch runs: the report, with a script that follows.

Enters: a report. Leaves: the same with one more script and style sheet, and a policy that allows these by their hashes
and requests to the watch alone. The report's own file stays as it is: opened from disk, it asks for nothing.
"""

import re
from html import escape, unescape
from pathlib import Path

from scorecard.page_policy import policy_for, source_of

HERE = Path(__file__).parent
SCRIPT = (HERE / "follow.js").read_text(encoding="utf-8")
STYLE = (HERE / "follow.css").read_text(encoding="utf-8")
POLICY = re.compile(r'(<meta http-equiv="Content-Security-Policy" content=")([^"]*)(">)')

PLAIN = ":root { color-scheme: light dark; font: 1.1rem/1.5 serif; }"
WAITING = """<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="{policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>No report yet</title>
<style>{style}</style>
</head>
<body>
<header><h1>No report yet</h1></header>
<main><p>{words}</p></main>
<footer></footer>
</body>
</html>
"""


def following(page: str, version: int) -> str:
    """Return a page with the script that follows.

    Parameters
    ----------
    page : a whole page of the tool, whose policy stands in its head
    version : of the report that it holds, as ``/state`` will tell it

    Examples
    --------
    >>> "connect-src 'self'" in following(waiting_page("Nothing yet."), 0)
    True
    """

    def wider(found: re.Match[str]) -> str:
        return f"{found[1]}{widened(unescape(found[2]))}{found[3]}"

    dressed = POLICY.sub(wider, page, count=1).replace("</head>", f"<style>{STYLE}</style>\n</head>", 1)
    start, end, rest = dressed.rpartition("</body>")
    return f'{start}<script data-version="{version}">{SCRIPT}</script>\n{end}{rest}'


def widened(policy: str) -> str:
    """Return a page's policy that also allows the script and style sheet added here, and requests to the watch."""
    rules = dict(rule.strip().partition(" ")[::2] for rule in policy.split(";"))
    for name, text in (("style-src", STYLE), ("script-src", SCRIPT)):
        rules[name] = f"{rules.get(name, '')} {source_of(text)}".strip()
    return "; ".join(f"{name} {sources}" for name, sources in (rules | {"connect-src": "'self'"}).items())


def waiting_page(words: str) -> str:
    """Return the page that stands in for a report until there is one."""
    return WAITING.format(policy=policy_for(PLAIN), style=PLAIN, words=escape(words))
