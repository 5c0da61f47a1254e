"""The documents beside the README: ``python tests/documents`` makes the reference anew from the code."""

import sys
from pathlib import Path

sys.path[0] = str(Path(__file__).parents[1])  # as in the tests, so that both import alike

from documents import reference  # noqa: E402 - found by the line above

if __name__ == "__main__":
    reference.TARGET.write_text(reference.reference(), "utf-8")
    print(f"made: {reference.TARGET.name}")
