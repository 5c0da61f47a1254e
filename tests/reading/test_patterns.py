import re

import pytest

from scorecard.reading import patterns
from scorecard.reading.patterns import pattern


def test_it_does_what_the_compiled_pattern_does():
    late, compiled = pattern(r"(\d+) mugs", re.IGNORECASE), re.compile(r"(\d+) mugs", re.IGNORECASE)
    for text in ("12 Mugs", "12 cups", "some 12 mugs, 13 mugs"):
        assert late.findall(text) == compiled.findall(text)
        assert bool(late.fullmatch(text)) is bool(compiled.fullmatch(text))
        assert late.sub("x", text) == compiled.sub("x", text)
    assert (late.pattern, late.flags) == (compiled.pattern, compiled.flags)


def test_it_is_compiled_when_first_asked_for(monkeypatch):
    asked = []
    compiled = re.compile("a")
    monkeypatch.setattr(patterns.re, "compile", lambda *given: asked.append(given) or compiled)
    late = pattern("a")
    assert asked == []
    assert late.search("ba")
    assert late.search("ca")
    assert asked == [("a", 0)]


def test_what_a_pattern_has_not_is_told():
    with pytest.raises(AttributeError, match="surch"):
        _ = pattern("a").surch
