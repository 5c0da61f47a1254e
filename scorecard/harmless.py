"""What stems from what a user typed, made harmless: names of files, links, and texts in templates."""

import os
import re
import unicodedata
from contextlib import suppress
from pathlib import Path
from typing import TYPE_CHECKING
from urllib.parse import urlsplit

if TYPE_CHECKING:
    from jinja2 import Environment
    from jinja2.bccache import Bucket


def safe_name(text: str, row: int) -> str:
    """Return a harmless file name, without an ending, for a maker in a row of the sheet.

    Examples
    --------
    >>> safe_name("Žluť & Söhne", 3), safe_name("../../etc/passwd", 4), safe_name("陶器", 12)
    ('03-zlut-sohne', '04-etc-passwd', '12-maker')
    """
    plain = unicodedata.normalize("NFKD", text.casefold()).encode("ascii", "ignore").decode()
    slug = re.sub(r"[^a-z0-9]+", "-", plain)[:60].strip("-")
    return f"{row:02d}-{slug or 'maker'}"


def safe_href(text: str | None) -> str | None:
    """Return a web address that a page may link to, or None: http or https, with a host, and nothing hidden in it.

    Examples
    --------
    >>> safe_href(" https://pots.example/mugs "), safe_href("javascript:alert(1)"), safe_href("https://a@b.example")
    ('https://pots.example/mugs', None, None)
    """
    address = (text or "").strip(" ")
    if any(unicodedata.category(sign)[0] in "CZ" or sign == "\\" for sign in address):
        return None
    try:
        parts = urlsplit(address)
        _ = parts.port  # reading it is what checks it
    except ValueError:
        return None
    is_plain = parts.scheme.lower() in ("http", "https") and parts.hostname and "@" not in parts.netloc
    return address if is_plain else None


def environment(folder: Path) -> "Environment":
    """Return the one template environment: everything is escaped, and a name that is not there is an error.

    Parameters
    ----------
    folder : of the package, with its templates; never a folder of the user's, whose texts are not templates
    """
    from jinja2 import Environment, FileSystemBytecodeCache, FileSystemLoader, StrictUndefined  # most need no page

    class Spared(FileSystemBytecodeCache):
        """Compiled templates are kept where they can be, and only there: on a full disk they are made each time."""

        def dump_bytecode(self, bucket: "Bucket") -> None:
            with suppress(OSError):
                super().dump_bytecode(bucket)

    compiled = folder / "__pycache__"  # where Python keeps its own
    made = Environment(
        loader=FileSystemLoader(folder),
        bytecode_cache=Spared(str(compiled)) if os.access(compiled, os.W_OK) else None,
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        keep_trailing_newline=True,
    )
    made.filters["safe_href"] = safe_href
    return made
