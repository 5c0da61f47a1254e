"""A machine-readable result as the bytes of its JSON, written by a quick library.

Enters: a result, whose numbers are figures and so never NaN. Leaves: UTF-8, without spaces between the parts.
"""

import json
from collections.abc import Mapping
from typing import Any

import orjson


def result_bytes(result: Mapping[str, Any]) -> bytes:
    """Return a result as JSON; whole numbers of any size are kept.

    Examples
    --------
    >>> result_bytes({"maker": "Kiln", "pieces": 2**64})
    b'{"maker":"Kiln","pieces":18446744073709551616}'
    """
    try:
        return orjson.dumps(result)
    except TypeError:  # a number of more than 64 bits
        return json.dumps(result, ensure_ascii=False, allow_nan=False, separators=(",", ":")).encode()
