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
    return f"default-src 'none'; style-src {source_of(style)}; base-uri 'none'; form-action 'none'"


def source_of(text: str) -> str:
    """Return the hash source that allows one inline style sheet or script."""
    return f"'sha256-{b64encode(sha256(text.encode()).digest()).decode()}'"


def widened(policy: str, *, style: str, script: str) -> str:
    """Return a policy that also allows one more style sheet and script, and requests to where the page came from.

    Parameters
    ----------
    policy : of a page, as ``policy_for`` returns it
    style, script : exactly what stands between the tags
    """
    rules = dict(rule.strip().partition(" ")[::2] for rule in policy.split(";"))
    for name, text in (("style-src", style), ("script-src", script)):
        rules[name] = f"{rules.get(name, '')} {source_of(text)}".strip()
    return "; ".join(f"{name} {sources}" for name, sources in (rules | {"connect-src": "'self'"}).items())
