"""Fixtures that need a program of the system: LibreOffice for workbooks, Chromium for pages.

Where the program is missing a test is skipped; with CI set in the environment it fails instead.
"""

import os
import shutil
import subprocess
from collections.abc import Callable, Iterator

import openpyxl
import pytest
from hypothesis import settings
from playwright.sync_api import Browser, sync_playwright

# no deadline: the machine may be busy; in CI the same examples each time
settings.register_profile("house", deadline=None, derandomize=bool(os.environ.get("CI")))
settings.load_profile("house")

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
