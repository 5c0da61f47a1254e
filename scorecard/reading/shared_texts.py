"""The texts that a workbook's cells share, in their order.

Enters: the open part that holds them. Leaves: texts, without their formats and without notes on how they are spoken.
"""

from typing import IO, Any
from xml.etree.ElementTree import iterparse

from openpyxl.cell.text import Text
from openpyxl.xml.constants import SHEET_MAIN_NS

ITEM, PLAIN = (f"{{{SHEET_MAIN_NS}}}{name}" for name in ("si", "t"))


def read_shared_texts(part: IO[bytes]) -> list[str]:
    """Return the shared texts.

    Parameters
    ----------
    part : guarded against entities
    """
    texts = list[str]()
    parts: Any = iterparse(part)  # noqa: S314 - the guard lets no entity through
    for _, item in parts:
        if item.tag == ITEM:
            texts.append(_text(item).replace("x005F_", ""))
            item.clear()
    return texts


def _text(item: Any) -> str:
    """Return one text: most have no formats within."""
    if len(item) == 1 and item[0].tag == PLAIN:
        return item[0].text or ""
    formatted: Any = Text.from_tree(item)
    return str(formatted.content)
