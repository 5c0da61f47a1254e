"""The documents beside the README: ``python tests/documents`` makes the reference, and what the tutorial shows, anew.

``python tests/documents pictures`` takes the tutorial's pictures too, for which Chromium is needed.
"""

import shutil
import sys
from dataclasses import replace
from pathlib import Path
from tempfile import TemporaryDirectory

sys.path[0] = str(Path(__file__).parents[1])  # as in the tests, so that both import alike

from documents import reference, tutorial  # noqa: E402 - found by the line above


def make_reference() -> None:
    """Write the reference."""
    reference.TARGET.write_text(reference.reference(), "utf-8")


def make_tutorial(*, with_pictures: bool) -> None:
    """Follow the tutorial, and write what the screen shows into it; take its pictures where they are wanted."""
    with TemporaryDirectory() as name:
        folder, kept = Path(name) / "home", Path(name) / "pages"
        kept.mkdir()
        shots: list[tutorial.Shot] = []

        def keep(shot: tutorial.Shot) -> None:
            page = kept / f"{len(shots)}.html"
            shutil.copy(shot.page, page)
            shots.append(replace(shot, page=page))

        text = tutorial.TARGET.read_text("utf-8")
        tutorial.TARGET.write_text(tutorial.Story(folder, keep).told(text), "utf-8")
        if with_pictures:
            from documents.pictures import take

            take(shots)


if __name__ == "__main__":
    make_reference()
    make_tutorial(with_pictures="pictures" in sys.argv[1:])
    print(f"made: {reference.TARGET.name}, {tutorial.TARGET.name}")
