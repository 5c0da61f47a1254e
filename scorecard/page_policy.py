"""What a page of the tool wears, and may load: its own style sheet and its own scripts, and nothing else."""

from base64 import b64encode
from hashlib import sha256
from pathlib import Path

from markupsafe import Markup

LOOK = Path(__file__).parent / "look.css"  # the colours that all pages share, by day and by night


def worn(*sheets: Path, scripts: tuple[str, ...] = ()) -> dict[str, str]:
    """Return what the template of a page sets of its looks: ``style``, ready to stand between the tags, and ``policy``.

    Parameters
    ----------
    sheets : the page's own style sheets, after the look that all pages share
    scripts : exactly what stands between the tags of each
    """
    style = "".join(sheet.read_text(encoding="utf-8") for sheet in (LOOK, *sheets))
    return {"style": Markup(style), "policy": policy_for(style, *scripts)}  # noqa: S704 - our own files


def policy_for(style: str, *scripts: str) -> str:
    """Return the content security policy of a page with this style sheet and these scripts: those, and nothing else.

    Parameters
    ----------
    style : exactly what stands between the tags
    scripts : likewise; blocks of data run nothing, and need none

    References
    ----------
    W3C, Content Security Policy Level 3, hash sources.
    """
    run = f" script-src {' '.join(map(source_of, scripts))};" if scripts else ""
    return f"default-src 'none'; style-src {source_of(style)};{run} base-uri 'none'; form-action 'none'"


def source_of(text: str) -> str:
    """Return the hash source that allows one inline style sheet or script."""
    return f"'sha256-{b64encode(sha256(text.encode()).digest()).decode()}'"
