"""What a page of the tool may load: its own style sheet and its own scripts, and nothing else."""

from base64 import b64encode
from hashlib import sha256


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
