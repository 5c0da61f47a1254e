"""What tests ask of a page in Chromium: what axe-core says of it, and where things are."""

from pathlib import Path

import axe_playwright_python

AXE = (Path(axe_playwright_python.__file__).parent / "axe.min.js").read_text(encoding="utf-8")
RUN_AXE = "async () => (await axe.run()).violations.map(one => [one.id, one.nodes.map(node => node.target.join(' '))])"
UNFOLD = "() => document.querySelectorAll('details').forEach(one => { one.open = true })"


def violations(page):
    """Return what axe-core finds: the kind of each violation, and where."""
    page.evaluate(AXE)
    return page.evaluate(RUN_AXE)


def boxes(page, selector):
    """Return left, right, top and bottom of every element that is seen."""
    return page.evaluate(
        """selector => [...document.querySelectorAll(selector)].map(one => one.getBoundingClientRect())
            .filter(box => box.width && box.height).map(box => [box.left, box.right, box.top, box.bottom])""",
        selector,
    )


def overlaps(one, other):
    """Return whether two boxes share more than a pixel's breadth."""
    return one[0] < other[1] - 1 and other[0] < one[1] - 1 and one[2] < other[3] - 1 and other[2] < one[3] - 1


def overlapping(found):
    """Return the pairs of boxes that overlap."""
    return [(a, b) for at, a in enumerate(found) for b in found[at + 1 :] if overlaps(a, b)]
