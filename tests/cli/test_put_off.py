"""What the command puts off: not loaded in a run, whole for whoever asks, and no matter for who imports the package."""

import subprocess
import sys

import numpy
import pytest

from scorecard.cli.put_off import GIVEN_AT_ONCE, SELDOM_NEEDED

BEGIN = "import sys\nfrom scorecard.cli.put_off import SELDOM_NEEDED, put_off_what_is_seldom_needed\n"
BEGUN = BEGIN + "put_off_what_is_seldom_needed()\n"


def said(code, *words, cwd=None):
    """Return what a process of its own prints."""
    done = subprocess.run([sys.executable, "-c", code, *words], capture_output=True, text=True, check=True, cwd=cwd)
    return done.stdout.split()


STILL_OFF = """
import sys
before = set(sys.modules)  # where branches are counted, that has loaded some of them
from scorecard.cli import main
try:
    main()
finally:
    from scorecard.cli.put_off import SELDOM_NEEDED
    there = SELDOM_NEEDED & sys.modules.keys() - before
    loaded = [name for name in there if vars(sys.modules[name])["__getattr__"].__self__._is_begun]
    print("loaded:", *loaded)
    print("off:", len(there))
"""


def test_a_score_loads_nothing_that_is_put_off(tmp_path):
    said("from scorecard.cli import main\nmain()", "demo", "--as-of", "2026-11-25", cwd=tmp_path)
    printed = said(STILL_OFF, "score", "--folder", "demo", "--as-of", "2026-11-25", cwd=tmp_path)

    loaded = printed[printed.index("loaded:") + 1 : printed.index("off:")]
    if numpy.__version__ < "2":  # there these hold the functions themselves
        loaded = [name for name in loaded if not name.startswith("numpy.lib.")]
    assert not loaded
    assert int(printed[-1]) > 8


@pytest.mark.parametrize("name", sorted(SELDOM_NEEDED))
def test_what_is_put_off_is_whole_for_whoever_asks(name):
    code = f"""
import importlib
try:
    module = importlib.import_module({name!r})
except ModuleNotFoundError:  # another version of the library has no such module
    print("same")
else:
    names = [name for name in NAMES if not name.startswith("__")]
    absent = [name for name in names if not hasattr(module, name)]
    print(*(absent or ["same"]))
"""
    names = said(f"import {name} as module\nprint(*vars(module))") if _is_there(name) else []
    assert said(BEGUN + f"NAMES = {names!r}" + code) == ["same"]


def _is_there(name):
    probe = f"import importlib.util\nprint(importlib.util.find_spec({name!r}) is not None)"
    return subprocess.run([sys.executable, "-c", probe], capture_output=True, text=True).stdout.strip() == "True"


def test_a_name_that_is_not_there_is_not_there():
    code = BEGUN + "import csv\nprint(hasattr(csv, 'nonesuch'), hasattr(csv, '__path__'), hasattr(csv, 'reader'))"
    assert said(code) == ["False", "False", "True"]


@pytest.mark.parametrize("name", sorted(GIVEN_AT_ONCE))
def test_what_is_given_at_once_is_there_without_loading_the_rest(name):
    given, _ = GIVEN_AT_ONCE[name]
    parent = name.rpartition(".")[0]
    code = f"import {parent}\nfrom {name} import {given}\nprint(sys.modules[{name!r}].__getattr__.__self__._is_begun)"
    assert said(BEGUN + code) == ["False"]


def test_a_type_of_arrays_can_stand_in_an_annotation():
    code = BEGUN + "import numpy\nfrom numpy.typing import NDArray\nprint(NDArray[numpy.intp] | None)"
    assert said(code)[-1] == "None"


NAMED_STYLES = """
import io, openpyxl
book = openpyxl.Workbook()
book.active["A1"].style = "Good"
kept = io.BytesIO()
book.save(kept)
print(openpyxl.load_workbook(kept).active["A1"].style)
from openpyxl.styles import builtins, styleable
print(len(styleable.styles) == len(builtins.styles), list(styleable.styles) == list(builtins.styles))
"""


def test_named_styles_are_there_for_whoever_asks():
    assert said(BEGUN + NAMED_STYLES) == ["Good", "True", "True"]


PICTURE = """
import io, openpyxl
from openpyxl.drawing.image import Image
from PIL import Image as pillow
drawn = io.BytesIO()
pillow.new("RGB", (3, 2)).save(drawn, "PNG")
book = openpyxl.Workbook()
book.active.add_image(Image(drawn))
kept = io.BytesIO()
book.save(kept)
(picture,) = openpyxl.load_workbook(kept).active._images
print(picture.width, picture.height)
"""


def test_pictures_are_there_for_whoever_asks():
    assert said(BEGUN + PICTURE) == ["3", "2"]


def test_what_was_loaded_before_stays_as_it_is():
    code = BEGIN + "import csv\nbefore = csv\nput_off_what_is_seldom_needed()\nimport csv\n"
    assert said(code + "print(csv is before, '__getattr__' in vars(csv))") == ["True", "False"]


def test_two_threads_that_ask_at_once_both_get_it():
    code = """
import csv
from concurrent.futures import ThreadPoolExecutor
with ThreadPoolExecutor(8) as pool:
    print(len(set(pool.map(lambda _: csv.DictReader, range(64)))))
"""
    assert said(BEGUN + code) == ["1"]


def test_who_imports_the_package_has_pythons_own_imports():
    code = "import sys\nbefore = list(sys.meta_path)\nimport scorecard, scorecard.cli\nprint(before == sys.meta_path)"
    assert said(code) == ["True"]
