"""``watch`` as a whole process: saves of every kind, problems, a report in Chromium that follows, and its end."""

import json
import re
import shutil
import subprocess
import time
from contextlib import contextmanager
from io import BytesIO
from pathlib import Path

import axe_playwright_python
import jsonschema
import openpyxl
import pytest
from cases import AS_OF, rated
from process import schema_of, scorecard, watching

from scorecard.assessment import assess
from scorecard.cli import watching as command
from scorecard.cli.watching import what_changed

AXE = (Path(axe_playwright_python.__file__).parent / "axe.min.js").read_text(encoding="utf-8")
RUN_AXE = "async () => (await axe.run()).violations.map(one => [one.id, one.nodes.map(node => node.target.join(' '))])"
LEADER, RIVAL = "Brightholm Enamel", "Quillmoor Works"


@pytest.fixture(scope="module")
def laid_out(tmp_path_factory):
    folder = tmp_path_factory.mktemp("demo")
    scorecard("demo", "shown", cwd=folder)
    return folder / "shown"


@pytest.fixture
def shown(laid_out, tmp_path):
    return shutil.copytree(laid_out, tmp_path / "shown")


def changed(folder, cell, value):
    """Return the workbook of a folder with another value in a cell of the sheet Makers."""
    book, buffer = openpyxl.load_workbook(folder / "makers.xlsx"), BytesIO()
    book["Makers"][cell] = value
    book.save(buffer)
    return buffer.getvalue()


def save(folder, cell, value):
    """Save as spreadsheet programs do: a new file beside the old one, then in its place."""
    beside = folder / "lu81234ab.tmp"
    beside.write_bytes(changed(folder, cell, value))
    beside.replace(folder / "makers.xlsx")


def test_a_save_that_changes_the_leader_is_said_in_one_line(shown):
    with watching("--folder", "shown", cwd=shown.parent) as watch:
        watch.until(f"{LEADER} leads by ")
        save(shown, "C2", 4.1)

        assert f"The leader changes from {LEADER} to {RIVAL}, ahead by 1.1." in watch.until("changes")
        assert RIVAL == json.loads((shown / "reports" / "shortlist.json").read_text("utf-8"))["leader"]


def test_a_saved_criteria_file_is_scored_too(shown):
    with watching(cwd=shown) as watch:
        watch.until(f"{LEADER} leads by ")
        criteria = shown / "criteria.toml"
        criteria.write_text(re.sub(r"(?m)^weight = 20", "weight = 90", criteria.read_text("utf-8"), count=1), "utf-8")

        assert f"The leader changes from {LEADER} to {RIVAL}" in watch.until("lead")


def test_a_half_written_workbook_is_waited_for(shown):
    whole = changed(shown, "C2", 4.1)
    with watching(cwd=shown) as watch:
        watch.until(f"{LEADER} leads by ")
        (shown / "makers.xlsx").write_bytes(whole[: len(whole) // 2])
        time.sleep(2)
        (shown / "makers.xlsx").write_bytes(whole)
        watch.until("The leader changes")

        assert [] == [line for line in watch.lines if "problem" in line]


def test_lock_files_beside_the_files_start_nothing(shown):
    with watching(cwd=shown) as watch:
        watch.until(f"{LEADER} leads by ")
        (shown / ".~lock.makers.xlsx#").write_text(",anna,desk,25.11.2026", "utf-8")
        (shown / "~$makers.xlsx").write_bytes(b"\x04anna")
        time.sleep(2.5)

        assert 1 == sum("leads by" in line for line in watch.stop().out.split("\n"))


def test_a_problem_is_said_with_its_cell_and_the_last_good_report_stays(shown):
    with watching(cwd=shown) as watch:
        watch.until(f"{LEADER} leads by ")
        before = (shown / "reports" / "shortlist.html").read_bytes()
        save(shown, "C2", "lots")
        watch.until("1 problem to mend; the last good report stays:")

        assert "makers.xlsx, Makers!C2: 'lots' is not a number" in watch.until("Makers!")
        assert before == (shown / "reports" / "shortlist.html").read_bytes()


@pytest.mark.office
def test_a_save_by_libreoffice_is_seen(shown, tmp_path):
    program = shutil.which("soffice") or pytest.skip("soffice is not installed")
    (tmp_path / "edited").mkdir()
    (tmp_path / "edited" / "makers.xlsx").write_bytes(changed(shown, "C2", 4.1))
    with watching(cwd=shown) as watch:
        watch.until(f"{LEADER} leads by ")
        profile = f"-env:UserInstallation={(tmp_path / 'profile').as_uri()}"
        words = ["--headless", "--norestore", "--convert-to", "xlsx:Calc MS Excel 2007 XML", "--outdir", str(shown)]
        edited = str(tmp_path / "edited" / "makers.xlsx")
        subprocess.run([program, profile, *words, edited], check=True, capture_output=True, timeout=120)

        assert f"to {RIVAL}" in watch.until("lead")


def test_ctrl_c_ends_it_with_status_0_and_a_next_step(shown):
    with watching(cwd=shown) as watch:
        watch.until(f"{LEADER} leads by ")
        said = watch.stop()

    assert (0, True) == (said.status, said.last.startswith("Next: ")), said
    assert "The watch has ended." in said.out
    assert not (shown / "reports" / ".watching").exists()


def test_a_second_watch_is_told_of_the_first_in_one_sentence(shown):
    with watching(cwd=shown) as watch:
        address = watch.address()
        watch.until(f"{LEADER} leads by ")
        second = scorecard("watch", cwd=shown)

    told = f"This folder is being watched already: its report is at {address}. End that watch first, with Ctrl-C.\n"
    assert (2, "", told) == (second.status, second.out, second.err)


def test_a_folder_that_goes_away_is_waited_for(shown):
    with watching("--folder", "shown", cwd=shown.parent) as watch:
        watch.until(f"{LEADER} leads by ")
        shown.rename(shown.parent / "away")
        watch.until("The folder shown is not there any more: the watch waits for it; Ctrl-C ends the watch.")
        (shown.parent / "away").rename(shown)
        watch.until("The folder shown is there again.")
        save(shown, "C2", 4.1)

        assert RIVAL in watch.until("The leader changes")


def test_a_folder_that_is_not_there_is_a_problem_and_is_not_made(tmp_path):
    said = scorecard("watch", "--folder", "nowhere", cwd=tmp_path)

    assert (3, False) == (said.status, (tmp_path / "nowhere").exists())


def test_a_day_that_is_none_is_wrong_usage(shown):
    assert 2 == scorecard("watch", "--as-of", "soon", cwd=shown).status


def test_as_json_each_run_is_one_line(shown):
    with watching("--json", cwd=shown) as watch:
        first = json.loads(watch.until('"run": 1'))
        save(shown, "C2", "lots")
        stopped = json.loads(watch.until('"problems"'))
        save(shown, "C2", 4.1)
        last = json.loads(watch.until('"run": 3'))

    for result in (first, stopped, last):
        jsonschema.validate(result, schema_of("watch"))
    assert (LEADER, False, RIVAL, True) == (
        first["leader"],
        first["leader_changes"],
        last["leader"],
        last["leader_changes"],
    )
    assert ["C2"] == [one["cell"] for one in stopped["problems"]]


def test_where_no_port_is_to_be_had_it_says_so_in_one_sentence_and_goes_on(monkeypatch, capsys):
    def taken():
        raise OSError(98, "Address already in use")

    monkeypatch.setattr(command, "Served", taken)
    with command._served() as served:
        assert served is None

    assert "No page can follow, since this computer gives no address for one (Address already in use)" in (
        capsys.readouterr().err
    )


FIRST = {"Ash": [60], "Birch": [50]}


def told(before, after):
    """Return what is said of two runs on makers with these points."""
    runs = [None if points is None else assess(rated((1,), points), as_of=AS_OF) for points in (before, after)]
    return what_changed(*runs)


@pytest.mark.parametrize(
    ("before", "after", "expected"),
    [
        (None, FIRST, "Ash leads by 10.0."),
        (None, {"Ash": [60]}, "Ash leads."),
        (None, {"Ash": [50], "Birch": [50]}, "Ash and Birch lead together."),
        (FIRST, {"Ash": [60], "Birch": [70]}, "The leader changes from Ash to Birch, ahead by 10.0."),
        (FIRST, {"Ash": [60], "Birch": [60]}, "The leader changes from Ash to Ash and Birch."),
        (FIRST, {"Ash": [60], "Birch": [55]}, "Ash still leads by 5.0 (before: by 10.0)."),
        (FIRST, {"Ash": [60], "Birch": [59.99]}, "Ash still leads by less than 0.1 (before: by 10.0)."),
        (FIRST, {"Ash": [60], "Birch": [50]}, "No score has changed: Ash still leads by 10.0."),
        (FIRST, {"Ash": [61], "Birch": [51]}, "Ash still leads by 10.0; other scores have changed."),
    ],
)  # fmt: skip
def test_a_run_is_told_in_one_line(before, after, expected):
    assert expected == told(before, after)


def test_a_lead_that_is_too_close_to_call_is_not_told_as_a_plain_lead():
    # 52 against 10.4 + 39.36; a whole weight moved from the first to the second takes 100 and gives 62: 2.24 / 162
    after = assess(rated((52, 48), {"Ash": [100, 0], "Birch": [20, 82]}), as_of=AS_OF)
    moved = "moving 1.4 of 100 of weight decides it"
    expected = f"Ash is still ahead by 2.2. Too close to call between Ash and Birch: {moved}."
    assert expected == what_changed(after, after).removeprefix("No score has changed: ")


@contextmanager
def followed(browser, folder, **view):
    """Yield a watch and its report in a browser, which gathers what the page complains of."""
    with watching(cwd=folder) as watch:
        address = watch.address()
        watch.until("lead")
        context = browser.new_context(viewport={"width": 1000, "height": 700}, **view)
        page = context.new_page()
        page.said, page.asked = [], []
        page.on("console", lambda message: page.said.append(message.text))
        page.on("pageerror", lambda error: page.said.append(str(error)))
        page.on("request", lambda request: page.asked.append(request.url.removeprefix(address)))
        page.goto(address)
        page.get_by_text("Follows the files").wait_for()
        yield watch, page
        context.close()


def wait_for_leader(page, name):
    page.wait_for_function("name => document.querySelector('.verdict')?.textContent.includes(name)", arg=name)


@pytest.mark.browser
def test_an_open_report_follows_and_keeps_place_focus_and_what_was_unfolded(browser, shown):
    with followed(browser, shown) as (_, page):
        page.evaluate(
            "() => { location.hash = 'arithmetic'; window.makerScorecard = { resume() { window.resumed = true; } }; }"
        )
        fold = page.locator("#arithmetic summary", has_text=RIVAL)
        fold.focus()
        page.keyboard.press("Enter")
        fold.scroll_into_view_if_needed()
        page.wait_for_timeout(1000)
        top = "() => document.activeElement.getBoundingClientRect().top"
        before = page.evaluate(top)
        save(shown, "C2", 4.1)
        page.wait_for_function("() => window.resumed")

        assert f"1. {RIVAL}" in page.evaluate("() => document.activeElement.innerText")
        assert page.evaluate("() => document.activeElement.closest('details').open")
        assert abs(before - page.evaluate(top)) < 2
        assert "#arithmetic" == page.evaluate("() => location.hash")
        assert [] == page.said


@pytest.mark.browser
def test_the_new_report_is_all_new(browser, shown):
    with followed(browser, shown) as (_, page):
        save(shown, "C2", 4.1)
        wait_for_leader(page, RIVAL)
        fresh = browser.new_page()
        fresh.goto((shown / "reports" / "shortlist.html").as_uri())

        for one in (fresh, page):  # what was unfolded before stays so, whoever leads
            one.evaluate("() => document.querySelectorAll('details').forEach((fold) => { fold.open = true; })")
        for part in ("header", "main", "footer"):
            both = [one.locator(f"body > {part}").inner_text() for one in (fresh, page)]
            assert both[0] == both[1]
        assert fresh.title() == page.title()
        assert {"", "state"} == set(page.asked)
        fresh.close()


@pytest.mark.browser
def test_a_focused_element_with_a_name_keeps_the_focus_and_its_selection(browser, shown):
    with followed(browser, shown) as (_, page):
        page.evaluate(
            "() => { const box = () => { const one = document.createElement('input'); one.id = 'box';"
            " one.value = 'abcdef'; document.querySelector('main').prepend(one); }; box();"
            " window.makerScorecard = { resume: box };"
            " const one = document.getElementById('box'); one.focus(); one.setSelectionRange(1, 4); }"
        )
        save(shown, "C2", 4.1)
        wait_for_leader(page, RIVAL)
        page.wait_for_timeout(100)
        found = page.evaluate(
            "() => { const one = document.activeElement; return [one.id, one.selectionStart, one.selectionEnd]; }"
        )

        assert ["box", 1, 4] == found


@pytest.mark.browser
def test_nothing_is_exchanged_under_a_finger_that_drags(browser, shown):
    with followed(browser, shown) as (watch, page):
        page.mouse.move(300, 300)
        page.mouse.down()
        save(shown, "C2", 4.1)
        watch.until("The leader changes")
        page.wait_for_timeout(1500)
        during = page.locator(".verdict").inner_text()
        page.mouse.up()
        wait_for_leader(page, RIVAL)

        assert during.startswith(LEADER)


@pytest.mark.browser
def test_a_problem_and_the_end_of_the_watch_are_said_on_the_page(browser, shown):
    with followed(browser, shown) as (watch, page):
        save(shown, "C2", "lots")
        page.get_by_text("1 problem to mend; the last good report stays. makers.xlsx, Makers!C2").wait_for()
        assert page.locator(".verdict").inner_text().startswith(LEADER)
        watch.stop()
        page.get_by_text("The watch has ended").wait_for()


@pytest.mark.browser
def test_a_report_that_comes_late_takes_the_place_of_the_waiting_page(browser, shown):
    save(shown, "C2", "lots")
    with watching(cwd=shown) as watch:
        address = watch.address()
        watch.until("there is no report yet")
        page = browser.new_page()
        page.goto(address)
        page.get_by_role("heading", name="No report yet").wait_for()
        save(shown, "C2", 4.1)
        wait_for_leader(page, RIVAL)
        page.close()


@pytest.mark.browser
@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_axe_finds_nothing_in_the_page_that_follows(browser, shown, scheme):
    with followed(browser, shown, color_scheme=scheme, bypass_csp=True) as (_, page):
        page.evaluate(AXE)

        assert [] == page.evaluate(RUN_AXE)


@pytest.mark.browser
def test_the_report_opened_as_a_file_asks_for_nothing(browser, shown):
    with watching(cwd=shown) as watch:
        watch.until("lead")
        page = browser.new_page()
        asked = []
        page.on("request", lambda request: asked.append(request.url))
        page.goto((shown / "reports" / "shortlist.html").as_uri())
        page.wait_for_timeout(1500)

        assert [page.url] == asked
        page.close()


@pytest.mark.browser
def test_weights_being_tried_are_kept_where_the_report_follows(browser, shown):
    with followed(browser, shown) as (_, page):
        box = page.get_by_role("spinbutton").nth(1)
        box.fill("35")
        page.wait_for_timeout(1500)
        before = page.evaluate("() => [location.hash, document.activeElement.id]")
        save(shown, "C2", 4.1)
        wait_for_leader(page, RIVAL)
        page.wait_for_timeout(300)

        assert before == page.evaluate("() => [location.hash, document.activeElement.id]")
        assert ("35", True) == (page.get_by_role("spinbutton").nth(1).input_value(), "35" in before[0])
        assert RIVAL in page.locator("#try-verdict").inner_text()
        assert [] == page.said
