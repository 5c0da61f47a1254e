"""The page's script made small: run `python tests/squeezed.py` after a change in scorecard/report/scripts/.

The parts are put into one function; comments and needless blanks go, and every name of the script's own is shortened,
the same name everywhere, so that what stands for what does not change. Names of properties, texts and the browser's own
names stay.
"""

import re
from collections import Counter
from collections.abc import Iterator
from itertools import product
from pathlib import Path
from string import ascii_lowercase

REPORT = Path(__file__).parent.parent / "scorecard" / "report"
PARTS = ("numbers", "points", "ranking", "sentences", "address", "elements", "controls", "outcome", "what_if", "start")

BROWSER = frozenset(
    re.findall(
        r"\S+",
        "document window location history navigator addEventListener Math Number String Array Object Map Set WeakMap"
        " JSON Boolean Infinity undefined null true false encodeURIComponent decodeURIComponent setTimeout"
        " clearTimeout",
    )
)
WORDS = frozenset(
    re.findall(
        r"\S+",
        "const let function return if else for of in while try catch async await new switch case default typeof break"
        " continue do as is void with this var enum class super throw yield delete static",
    )
)
TOKEN = re.compile(
    r"""(?P<blank>\s+|//[^\n]*)|(?P<text>"(?:[^"\\]|\\.)*")|(?P<template>`)|(?P<name>[A-Za-z_$][\w$]*)
    |(?P<number>\d[\w.]*)|(?P<sign>=>|\.\.\.|\?\?|\?\.|\*\*|===|!==|&&|\|\||[-+*/<>]=|\|\|=|\S)""",
    re.VERBOSE,
)
PATTERN = re.compile(r"/(?:[^/\\\[\n]|\\.|\[(?:[^\]\\]|\\.)*\])+/[a-z]*")


def sources() -> str:
    """Return the script as it is written."""
    parts = [(REPORT / "scripts" / f"{name}.js").read_text(encoding="utf-8") for name in PARTS]
    return "\n".join(['(() => {\n"use strict";', *parts, "})();"])


def squeezed(code: str) -> str:
    """Return a script that does the same in fewer bytes."""
    tokens = list(tokens_of(code))
    return joined(renamed(tokens, short_names(tokens)))


def tokens_of(code: str) -> Iterator[str]:
    """Yield names, signs, texts, patterns and, of a template, its texts and the tokens of what stands between them."""
    at, last, inside = 0, "", []
    while at < len(code):
        if inside and code[at] == "}" and inside[-1] == 0:
            inside.pop()
            end = template_end(code, at + 1)
            token = code[at:end]
        elif code[at] == "`":
            token = code[at : template_end(code, at + 1)]
        elif code[at] == "/" and last in {*"(,=:[!&|?{};", "return", "=>", ""} and code[at + 1] not in "/*":
            token = PATTERN.match(code, at)[0]
        else:
            token = TOKEN.match(code, at)[0]
        at += len(token)
        if token.endswith("${"):
            inside.append(0)
        elif inside and token in "{}":
            inside[-1] += 1 if token == "{" else -1
        if token.strip() and not token.startswith("//"):
            last = token
            yield token


def template_end(code: str, at: int) -> int:
    """Return where a template's text ends: behind its closing sign, or behind what opens an expression."""
    while code[at] != "`" and not code.startswith("${", at):
        at += 2 if code[at] == "\\" else 1
    return at + (1 if code[at] == "`" else 2)


def is_name(token: str) -> bool:
    """Return whether a token is a name of the script's own, or of a property."""
    return bool(re.fullmatch(r"[A-Za-z_$][\w$]*", token)) and token not in WORDS | BROWSER


def is_property(tokens: list[str], at: int) -> bool:
    """Return whether a name is that of a property, behind a dot or before the colon of an object."""
    before, after = tokens[at - 1] if at else "", tokens[at + 1]
    return before in (".", "?.") or (
        after == ":" and before in ("{", ",") and "case" not in tokens[max(0, at - 2) : at]
    )


def short_names(tokens: list[str]) -> dict[str, str]:
    """Return a short name for every name of the script's own, the shortest for those used most."""
    used = Counter(token for at, token in enumerate(tokens) if is_name(token) and not is_property(tokens, at))
    taken = {token for token in tokens if not is_name(token)} | BROWSER | WORDS
    free = ("".join(one) for size in (1, 2) for one in product(ascii_lowercase, repeat=size))
    return dict(zip([name for name, _ in used.most_common()], (one for one in free if one not in taken), strict=False))


def renamed(tokens: list[str], names: dict[str, str]) -> Iterator[str]:
    """Yield the tokens with short names; `{ name }`, which is both a name and a property, becomes `{ name: n }`."""
    brackets: list[str] = []
    for at, token in enumerate(tokens):
        if token in ("(", "[", "{") or token.endswith("${"):
            brackets.append(token)
        elif token in (")", "]", "}") or token.startswith("}"):
            brackets.pop()
            if token.endswith("${"):
                brackets.append(token)
        if token not in names or is_property(tokens, at):
            yield token
            continue
        both = brackets[-1:] == ["{"] and tokens[at - 1] in ("{", ",") and tokens[at + 1] in (",", "}", "=")
        yield f"{token}:{names[token]}" if both else names[token]


def joined(tokens: Iterator[str]) -> str:
    """Return tokens as one text, apart only where they would run into one another."""
    whole, last = [], ""
    for token in tokens:
        apart = re.match(r"[\w$]", token) and re.search(r"[\w$]$", last)
        same = token[0] in "+-" and last[-1:] == token[0]
        whole.append(f" {token}" if apart or same else token)
        last = token
    return re.sub(r";\}", "}", "".join(whole)) + "\n"


if __name__ == "__main__":
    (REPORT / "trying.js").write_text(squeezed(sources()), encoding="utf-8")
