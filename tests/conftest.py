"""One environment for every test, and fixtures that need a program of the system: LibreOffice, Chromium.

Where the program is missing a test is skipped; with CI set in the environment it fails instead.
"""

import os
import shutil
import subprocess
from collections.abc import Callable, Iterator
from pathlib import Path

import openpyxl
import pytest
from hypothesis import settings
from playwright.sync_api import Browser, Page, sync_playwright

# no deadline: the machine may be busy; in CI the same examples each time
settings.register_profile("house", deadline=None, derandomize=bool(os.environ.get("CI")))
settings.load_profile("house")

# what the tool, Python or a library heeds, and a test sets where it is about it
OTHERWISE_SET = {
    *("SOURCE_DATE_EPOCH", "SCORECARD_TRACEBACK", "COLUMNS", "LINES", "TZ", "NO_COLOR", "FORCE_COLOR"),
    *("LANG", "LANGUAGE", "PYTHONIOENCODING", "PYTHONUTF8", "PYTHONWARNINGS", "PYTHONOPTIMIZE", "PYTHONUNBUFFERED"),
}
for name in [one for one in os.environ if one in OTHERWISE_SET or one.startswith("LC_")]:
    del os.environ[name]

ALWAYS_RECALCULATE = """<?xml version="1.0" encoding="UTF-8"?>
<oor:items xmlns:oor="http://openoffice.org/2001/registry" xmlns:xs="http://www.w3.org/2001/XMLSchema">
<item oor:path="/org.openoffice.Office.Calc/Formula/Load">
<prop oor:name="OOXMLRecalcMode" oor:op="fuse"><value>0</value></prop></item>
</oor:items>
"""
CHROMIUM_FLAGS = [
    "--no-sandbox",  # a container's only user is often root
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
]


def _program(*names: str) -> str:
    """Return the path of the first of these programs that is there."""
    found = next(filter(None, map(shutil.which, names)), None)
    if found is None:
        (pytest.fail if os.environ.get("CI") else pytest.skip)(f"{names[0]} is not installed")
    return str(found)


@pytest.fixture(scope="session")
def recalc(tmp_path_factory: pytest.TempPathFactory) -> Callable[[bytes], openpyxl.Workbook]:
    """Return a function from an .xlsx's bytes to the workbook that LibreOffice makes of it, worked out anew.

    Results that the file holds already are not believed: by default LibreOffice would keep them, and a test of
    formulas would prove nothing.
    """
    program = _program("soffice", "libreoffice")
    profile = tmp_path_factory.mktemp("office-profile")  # its own, so that an open LibreOffice does not clash
    (profile / "user").mkdir()
    (profile / "user" / "registrymodifications.xcu").write_text(ALWAYS_RECALCULATE, encoding="utf-8")

    def run(content: bytes) -> openpyxl.Workbook:
        folder = tmp_path_factory.mktemp("recalculated")
        (folder / "in.xlsx").write_bytes(content)
        subprocess.run(
            [
                program,
                "--headless",
                "--norestore",
                f"-env:UserInstallation={profile.as_uri()}",
                "--convert-to",
                "xlsx:Calc MS Excel 2007 XML",
                "--outdir",
                str(folder / "out"),
                str(folder / "in.xlsx"),
            ],
            check=True,
            capture_output=True,
            timeout=120,
        )
        return openpyxl.load_workbook(folder / "out" / "in.xlsx", data_only=True)

    return run


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    """Yield Chromium, driven by playwright; make a context of your own in it, such as one that is offline or narrow."""
    program = _program("chromium", "chromium-browser")
    with sync_playwright() as driver:
        opened = driver.chromium.launch(executable_path=program, args=CHROMIUM_FLAGS)
        yield opened
        opened.close()


@pytest.fixture
def opened(browser: Browser, tmp_path: Path) -> Iterator[Callable[..., Page]]:
    """Yield a function that opens a page from disk, offline; ``said`` and ``asked`` gather messages and requests."""
    contexts = []

    def run(html: str, *, width: int = 1200, scheme: str = "light") -> Page:
        file = tmp_path / "page.html"
        file.write_text(html, encoding="utf-8")
        view = {"width": width, "height": 800}
        contexts.append(browser.new_context(color_scheme=scheme, viewport=view, offline=True))
        page = contexts[-1].new_page()
        page.said, page.asked = [], []
        page.on("console", lambda message: page.said.append(message.text))
        page.on("pageerror", lambda error: page.said.append(str(error)))
        page.on("dialog", lambda dialog: page.said.append(dialog.message))
        page.on("request", lambda request: page.asked.append(request.url))
        page.goto(file.as_uri())
        return page

    yield run
    for context in contexts:
        context.close()
