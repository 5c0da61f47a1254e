"""What a page of the tool may load: its own style sheet, and nothing else."""

from base64 import b64encode
from hashlib import sha256


def policy_for(style: str) -> str:
    """Return the content security policy of a page with this style sheet: that, and nothing else.

    Parameters
    ----------
    style : exactly what stands between the tags

    References
    ----------
    W3C, Content Security Policy Level 3, hash sources.
    """
    digest = b64encode(sha256(style.encode()).digest()).decode()
    return f"default-src 'none'; style-src 'sha256-{digest}'; base-uri 'none'; form-action 'none'"
