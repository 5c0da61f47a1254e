"""Killed, or failing, at every operation on a file: each file is old or new, whole, and the next run works."""

import pytest
from failing import CUTS, again, points
from order_folder import DAY, ORDERS, lay_out
from process import scorecard

AS_OF = ["--as-of", "2026-11-25"]
COMMANDS = {  # its words, each how many-th operation, and how many points there are at the least
    "score": (["score", *AS_OF], 1, 90),
    "start": (["start", "new"], 1, 25),
    "start in an empty folder": (["start", "empty"], 1, 25),
    "demo": (["demo", "new", *AS_OF], 32, 4),
    "reweigh": (["reweigh", "years=30", "--save", *AS_OF], 1, 15),
    "enquire": (["enquire", *AS_OF], 6, 20),
    "order": (["order", "Brightholm", *AS_OF], 1, 15),
    "record": (["record", "Fern", *DAY], 1, 5),
}
SENTENCES = (
    "the disk is full. Make room, and try again",
    "it may be open in another program. Close it and try again",
    "its folder may only be read. Choose another folder, or ask for the right to write there",
)
NEXT_RUNS = 3  # tried of each command
EARLIER = {"SOURCE_DATE_EPOCH": "1795000000"}


@pytest.fixture(scope="module")
def demo(tmp_path_factory):
    """Return a sourcing folder in which all would be written anew, and two outputs that the user has changed."""
    made = tmp_path_factory.mktemp("faults") / "mugs"
    assert 0 == scorecard("demo", "mugs", *AS_OF, cwd=made.parent, **EARLIER).status
    assert 0 == scorecard("enquire", *AS_OF, cwd=made, **EARLIER).status
    criteria = (made / "criteria.toml").read_text("utf-8")
    (made / "criteria.toml").write_text(criteria.replace("weight = 20", "weight = 21"), "utf-8")
    for path in (made / "reports" / "shortlist.xlsx", made / "reports" / "enquiries" / "enquiries.html"):
        path.write_bytes(path.read_bytes() + b"changed by hand")
    (made / "notes.txt").write_bytes(b"mine")
    (made / "empty").mkdir()
    return made


@pytest.fixture
def folder(request, demo, tmp_path):
    """Return the folder that the command is run in."""
    if request.node.callspec.params.get("command") != "record":
        return demo
    made = tmp_path / "mugs"
    made.mkdir()
    lay_out(made, Orders=ORDERS)
    scorecard("record", "Fern", *DAY, cwd=made)
    sheet = [list(row) for row in ORDERS]
    sheet[1][ORDERS[0].index("Faulty pieces")] = 9
    lay_out(made, Orders=sheet)
    return made


def files_in(folder):
    """Return what every file holds that is no temporary one, by its path."""
    return {
        path.relative_to(folder).as_posix(): path.read_bytes()
        for path in folder.rglob("*")
        if path.is_file() and ".scorecard-" not in str(path.relative_to(folder))
    }


def strays(folder):
    return [path for path in folder.rglob("*") if path.name.startswith(".scorecard-")]


def lost(before, there):
    """Return the names of the user's files whose content is nowhere any more."""
    own = {name for name in before if not name.startswith(("reports/", "memory"))}
    own |= {name for name, content in before.items() if content.endswith(b"changed by hand")}
    return [name for name in own if before[name] not in there.values()]


def halves(before, after, there):
    """Return the names of files that are neither as before nor as after."""
    return [name for name, content in there.items() if content not in (before.get(name), after.get(name))]


def test_there_are_two_hundred_points():
    assert 200 <= sum(at_least for _, _, at_least in COMMANDS.values()) + len(CUTS)


@pytest.mark.parametrize("command", COMMANDS)
def test_wherever_a_command_is_killed_each_file_is_old_or_new_and_the_next_run_works(folder, tmp_path, command):
    words, every, at_least = COMMANDS[command]
    before = files_in(folder)
    killed, whole = points(words, folder, tmp_path / "room", "kill", every)
    after = files_in(whole.folder)

    assert (0, [], True) == (whole.status, strays(whole.folder), before != after), whole.err
    assert at_least <= len(killed)
    for one in killed:
        there = files_in(one.folder)
        assert (-9, [], []) == (one.status, lost(before, there), halves(before, after, there)), one
    (second,) = again(words, [whole])
    expected = [(after, whole.status, whole.out, whole.err)]
    expected.append((files_in(whole.folder), second.status, second.out, second.err))
    some = [*killed[:: 1 + len(killed) // NEXT_RUNS], killed[-1]]
    left = [files_in(one.folder) for one in some]
    for one, there in zip(again(words, some), left, strict=True):
        said = one.out.replace(f"{one.folder}/", f"{whole.folder}/")
        refused = (there, 2, second.out, second.err)  # a demo that was killed while it scored what it had laid out
        assert (files_in(one.folder), one.status, said, one.err) in [*expected, refused], one


def test_a_run_that_is_killed_in_the_middle_of_a_file_leaves_no_half_of_it(demo, tmp_path):
    before = files_in(demo)
    cut, whole = points(COMMANDS["score"][0], demo, tmp_path / "room", "cut")
    after = files_in(whole.folder)

    assert len(CUTS) == len(cut)
    for one in cut:
        there = files_in(one.folder)
        assert ([], []) == (lost(before, there), halves(before, after, there)), one
    assert 4 <= sum(one.status < 0 for one in cut)


@pytest.mark.parametrize("fault", ["ENOSPC", "EACCES"])
@pytest.mark.parametrize(("command", "every"), [("score", 3), ("reweigh", 2), ("start in an empty folder", 3)])
def test_wherever_an_operation_fails_it_is_told_in_a_sentence_and_nothing_is_half(
    demo, tmp_path, command, every, fault
):
    before, words = files_in(demo), COMMANDS[command][0]
    failed, whole = points(words, demo, tmp_path / "room", fault, every)
    after = files_in(whole.folder)

    assert {1} <= {one.status for one in failed} <= {0, 1}
    for one in failed:
        there = files_in(one.folder)
        more = {name for name in there if "-edited-" in name}  # where its record could not be read, all is the user's
        own = {name: content for name, content in there.items() if name not in more}
        assert ([], []) == (lost(before, there), halves(before, after, own)), one
        assert all(there[name] in before.values() for name in more)
        lines = [line for line in one.err.splitlines() if "is kept as" not in line and "warning" not in line]
        told = [line for line in lines if line.rstrip(".").endswith(SENTENCES)]
        assert (lines, one.status) == (told, len(lines)), one
