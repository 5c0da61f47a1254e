"""No home, no terminal, closed and full streams, odd locales and zones: the same results, never a traceback."""

import json
import os
import subprocess
import sys
from datetime import datetime
from zoneinfo import ZoneInfo

import pytest
from order_folder import DAY, MAKERS, lay_out

TOOL = f"{sys.executable} -m scorecard"
DAYS = " ".join(DAY)
ODD = "Žluť & 陶器"


@pytest.fixture(scope="module")
def folder(tmp_path_factory):
    makers = [MAKERS[0], [ODD, *MAKERS[1][1:]], *MAKERS[2:]]
    return lay_out(tmp_path_factory.mktemp("surroundings") / "mugs", order="", Makers=makers, Quotes=[], Freight=[])


@pytest.fixture(scope="module")
def usual(folder):
    """Return what score says where nothing is odd."""
    return shell(f"{TOOL} score {DAYS}", folder)


def shell(line, folder, **environment):
    """Run a line in a shell, with nothing on standard input."""
    return subprocess.run(
        ["bash", "-c", line], cwd=folder, env={**os.environ, **environment}, stdin=subprocess.DEVNULL,
        capture_output=True, timeout=120,
    )  # fmt: skip


@pytest.mark.parametrize(
    "before",
    ["env -u HOME", "HOME=/no/such/folder", "env -u TERM COLUMNS=1", "TERM=dumb COLUMNS=wide LINES=0", "env -i"],
)
def test_without_a_home_or_a_terminal_the_same_is_said(folder, usual, before):
    env = f"{before} PYTHONPATH={os.environ.get('PYTHONPATH', '')}" if "-i" in before else before
    ran = shell(f"{env} {TOOL} score {DAYS}", folder)

    assert (0, usual.stdout, usual.stderr) == (ran.returncode, ran.stdout, ran.stderr)


def test_with_standard_input_closed_and_output_in_a_file_the_same_is_said(folder, usual, tmp_path):
    ran = shell(f"{TOOL} score {DAYS} <&- >{tmp_path}/out.txt", folder)

    assert (0, usual.stdout, b"") == (ran.returncode, (tmp_path / "out.txt").read_bytes(), ran.stdout)


@pytest.mark.parametrize("closing", [">&-", "2>&-", ">&- 2>&- <&-"])
def test_with_closed_streams_a_run_ends_well_and_its_files_are_whole(folder, closing):
    (folder / "reports" / "shortlist.html").unlink(missing_ok=True)
    ran = shell(f"{TOOL} score {DAYS} {closing}", folder)

    assert 0 == ran.returncode
    assert (folder / "reports" / "shortlist.html").read_text("utf-8").rstrip().endswith("</html>")


@pytest.mark.parametrize("words", [f"score {DAYS}", f"score {DAYS} --json", "check --json", "--help", "score --help"])
def test_a_reader_that_leaves_early_ends_a_run_without_a_traceback(folder, words):
    ran = shell(f"{TOOL} {words} | head -c 1; exit ${{PIPESTATUS[0]}}", folder)

    assert (True, b"") == (ran.returncode in (0, 1), ran.stderr)


@pytest.mark.skipif(not os.path.exists("/dev/full"), reason="this system has no full device")  # noqa: PTH110 - no path
@pytest.mark.parametrize("words", [f"score {DAYS}", "check --json", "--help", "--version"])
def test_where_the_words_find_no_room_one_sentence_says_so(folder, words):
    ran = shell(f"{TOOL} {words} >/dev/full", folder)

    said = "What this run had to say could not be written: No space left on device. What it keeps in files is whole.\n"
    assert (1, said) == (ran.returncode, ran.stderr.decode())


@pytest.mark.skipif(not os.path.exists("/dev/full"), reason="this system has no full device")  # noqa: PTH110 - no path
@pytest.mark.parametrize(("words", "status"), [("check --folder nowhere", 3), (f"score {DAYS}", 0)])
def test_where_messages_find_no_room_the_exit_status_still_stands(folder, words, status):
    assert status == shell(f"{TOOL} {words} 2>/dev/full", folder).returncode


@pytest.mark.parametrize(
    "environment",
    [
        {"LC_ALL": "C"},
        {"LC_ALL": "POSIX", "PYTHONCOERCECLOCALE": "0", "PYTHONUTF8": "0"},
        {"LC_ALL": "tr_TR.UTF-8"},
        {"LC_ALL": "xx_XX.nonsense", "LANG": "nonsense"},
        {"PYTHONIOENCODING": "ascii"},
        {"PYTHONIOENCODING": "latin-1"},
        {"PYTHONIOENCODING": "cp1252"},
    ],
    ids=lambda one: " ".join(f"{name}={value}" for name, value in one.items()),
)
def test_in_any_locale_and_encoding_names_are_printed_as_far_as_they_can_be(folder, usual, environment):
    odd = " ".join(f"{name}={value}" for name, value in environment.items())
    ran = shell(f"env {odd} {TOOL} score {DAYS}", folder)  # a shell in an odd locale says so itself

    encoding = environment.get("PYTHONIOENCODING", "utf-8").replace("ascii", "utf-8")  # for ASCII, UTF-8 is written
    expected = usual.stdout.decode().encode(encoding, "replace").decode(encoding)
    assert (0, expected, usual.stderr) == (ran.returncode, ran.stdout.decode(encoding), ran.stderr)


@pytest.mark.parametrize("encoding", ["ascii", "latin-1", "utf-8"])
def test_in_any_encoding_the_result_is_whole(folder, encoding):
    ran = shell(f"{TOOL} score --json {DAYS}", folder, PYTHONIOENCODING=encoding)

    assert ODD in [one["maker"] for one in json.loads(ran.stdout.decode())["makers"]]


@pytest.mark.parametrize("zone", ["Pacific/Kiritimati", "Pacific/Pago_Pago", "Nowhere/Nothing", ":", ""])
def test_in_any_time_zone_today_is_the_users_day(folder, zone):
    ran = shell(f"{TOOL} check --json", folder, TZ=zone)

    here = datetime.now(ZoneInfo(zone if zone.startswith("Pacific") else "UTC")).date().isoformat()
    assert (0, here) == (ran.returncode, json.loads(ran.stdout)["as_of"])
