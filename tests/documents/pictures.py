"""The tutorial's pictures: parts of its pages as Chromium shows them, small, with the words in view kept inside.

A picture stays true as long as its page still holds these words; ``python tests/documents pictures`` takes it anew.
"""

import html
import json
import re
import shutil
from io import BytesIO
from pathlib import Path

from conftest import CHROMIUM_FLAGS
from documents.tutorial import DOCUMENTS, Shot
from PIL import Image
from PIL.PngImagePlugin import PngInfo
from playwright.sync_api import sync_playwright

WIDTH, HEIGHT = 1040, 720  # the most that a picture shows, in the page's own pixels
SCALE = 0.8
COLOURS = 24
LARGEST = 65_000  # bytes
WORDS = "words in view"

# the texts of a page whose middle lies within a box, and the first lines of what stands in boxes to copy from
IN_VIEW = """([left, top, right, bottom]) => {
  const found = [], walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  const sees = box => { const x = (box.left + box.right) / 2, y = (box.top + box.bottom) / 2;
    return box.width > 1 && x > left && x < right && y > top && y < bottom; };
  for (let node = walk.nextNode(); node; node = walk.nextNode()) {
    const range = document.createRange();
    range.selectNodeContents(node);
    if (node.data.trim() && sees(range.getBoundingClientRect())) found.push(node.data.trim());
  }
  for (const box of document.querySelectorAll("textarea"))
    if (box.getBoundingClientRect().top < bottom && box.offsetWidth)
      found.push(...box.value.split("\\n").filter(line => line.trim()).slice(0, 8));
  return found;
}"""


def take(shots: list[Shot]) -> None:
    """Take the pictures of pages that are kept as they were at their places of the story."""
    with sync_playwright() as driver:
        browser = driver.chromium.launch(executable_path=shutil.which("chromium"), args=CHROMIUM_FLAGS)
        view = {"width": WIDTH + 60, "height": HEIGHT + 60}
        page = browser.new_page(viewport=view, device_scale_factor=SCALE, color_scheme="light")
        for shot in shots:
            page.goto(shot.page.as_uri())
            box = page.locator(shot.selector).first.bounding_box() or {"x": 0, "y": 0, "width": WIDTH, "height": HEIGHT}
            size = {"width": min(box["width"], WIDTH), "height": min(box["height"], HEIGHT)}
            page.evaluate("y => scrollTo(0, y)", box["y"])
            top = box["y"] - page.evaluate("scrollY")
            words = page.evaluate(IN_VIEW, [box["x"], top, box["x"] + size["width"], top + size["height"]])
            seen = page.screenshot(clip={"x": box["x"], "y": top, **size})
            _keep(DOCUMENTS / shot.name, seen, words)
        browser.close()


def _keep(target: Path, seen: bytes, words: list[str]) -> None:
    told = PngInfo()
    told.add_text(WORDS, json.dumps(words), zip=True)
    few = Image.open(BytesIO(seen)).convert("RGB").quantize(COLOURS, dither=Image.Dither.NONE)
    few.save(target, optimize=True, pnginfo=told)


def words_in(picture: Path) -> list[str]:
    """Return the words that were in view when a picture was taken."""
    with Image.open(picture) as opened:
        return list(json.loads(opened.text[WORDS]))


def page_text(page: Path) -> str:
    """Return what a page holds as text, its blanks made single."""
    text = re.sub(r"<(script|style)\b.*?</\1>|<!--.*?-->", " ", page.read_text("utf-8"), flags=re.DOTALL)
    return squeezed(html.unescape(re.sub(r"<[^>]*>", "\0", text)))


def squeezed(text: str) -> str:
    """Return a text with single blanks."""
    return " ".join(text.split())
