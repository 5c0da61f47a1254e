"""The door: which files are let in to be read, and one plain sentence for each that is not.

Enters: a path. Leaves: the file's bytes, of a kind that can be read within bounded time and memory, with what was
noticed at the door. Nothing is unpacked here: a workbook is judged by its first bytes and its directory.
"""

from codecs import BOM_UTF16_BE, BOM_UTF16_LE, BOM_UTF32_LE
from hashlib import sha256
from io import BytesIO
from pathlib import Path
from typing import Literal
from zipfile import BadZipFile, ZipFile, ZipInfo, is_zipfile

from scorecard.case import SourceFile
from scorecard.errors import InputError, Problem
from scorecard.frozen import dataclass
from scorecard.reading.cells import Fault
from scorecard.reading.findings import Findings, folder_named
from scorecard.whole_files import read_whole

MEBIBYTE = 2**20
PACKED_LIMIT = 80 * MEBIBYTE  # 20,000 rows of 500 random numbers pack into 61 MiB (measured)
UNPACKED_LIMIT = 400 * MEBIBYTE  # and unpack to 302 MiB, which are read as a stream and never held
SUSPECT_SIZE = 16 * MEBIBYTE
SUSPECT_RATIO = 100  # sheets pack to a tenth or a thirtieth; only a trap packs to a hundredth
PARTS_LIMIT = 1_000
CSV_BYTES_PER_ROW = 5_000

OLD_CONTAINER = bytes.fromhex("D0CF11E0A1B11AE1")
SAVE_AS = 'open it in your spreadsheet program, choose "Save as" or "Export", and save a copy as .xlsx or .csv'

OTHER_KINDS = {
    ".xls": ("file-old-workbook", "is a workbook of the old .xls kind"),
    ".ods": ("file-opendocument", "is an OpenDocument spreadsheet (.ods)"),
    ".numbers": ("file-numbers", "is a .numbers spreadsheet"),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Admitted:
    """A file that may be read.

    Parameters
    ----------
    path : as given
    content : its bytes
    kind : ".xlsx" or ".csv"
    warnings : what was noticed at the door
    """

    path: Path
    content: bytes
    kind: Literal[".xlsx", ".csv"]
    warnings: tuple[Problem, ...] = ()

    @property
    def source(self) -> SourceFile:
        """The file's name and digest."""
        return SourceFile(name=self.path.name, digest=sha256(self.content).hexdigest())


def refusal(file: str, code: str, found: str, wanted: str) -> InputError:
    """Return the error that turns a file away, in one sentence."""
    return InputError([Findings(file=file).problem_at(None, Fault(code, found, wanted))])


def admit(path: Path, row_limit: int) -> Admitted:
    """Let a file in, or say in one sentence why not.

    Parameters
    ----------
    path : of a .xlsx or .csv file
    row_limit : the most rows that will be read; a .csv may have 5,000 bytes for each

    Raises
    ------
    InputError
        With one problem, if the file is not there, not of a kind that is read, too big, or damaged.
    """
    kind = _kind(path)
    limit = PACKED_LIMIT if kind == ".xlsx" else max(PACKED_LIMIT, row_limit * CSV_BYTES_PER_ROW)
    content = _content(path, limit)
    warnings = _open_elsewhere(path)
    if kind == ".xlsx":
        return Admitted(path=path, content=content, kind=".xlsx", warnings=warnings + _workbook(path.name, content))
    _text(path.name, content)
    return Admitted(path=path, content=content, kind=".csv", warnings=warnings)


def _kind(path: Path) -> str:
    """Return the kind of file by its name's ending, which must be one that is read."""
    kind, name = path.suffix.lower(), path.name
    if kind in {".xlsx", ".csv"}:
        return kind
    if kind in OTHER_KINDS:
        code, found = OTHER_KINDS[kind]
        raise refusal(name, code, f"the file {found}", f"Only .xlsx and .csv are read: {SAVE_AS}")
    ending = f"a {kind} file" if kind else "a file without an ending such as .xlsx"
    raise refusal(name, "file-kind", f"this is {ending}", f"Only .xlsx and .csv are read: {SAVE_AS}")


def _content(path: Path, limit: int) -> bytes:
    """Return the file's bytes, if it is there and not too big."""
    name = path.name
    if path.is_dir():
        raise refusal(
            name, "file-is-folder", "this is a folder, not a file", "Name the .xlsx or .csv file that is in it"
        )
    try:
        size = path.stat().st_size
        if size > limit:
            wanted = "Keep the makers in a file of their own, without pictures"
            found = f"the file has {size / MEBIBYTE:.1f} MiB, above the {limit // MEBIBYTE} MiB that are read"
            raise refusal(name, "file-too-big", found, wanted)
        return read_whole(path)
    except FileNotFoundError:
        wanted = "Check the name, or lay out a new folder with: scorecard start FOLDER"
        raise refusal(name, "file-missing", f"there is no file of this name in {folder_named(path)}", wanted) from None
    except (OSError, ValueError) as error:
        reason = getattr(error, "strerror", None) or "its name cannot be used"
        found = f"the file cannot be opened ({reason})"
        raise refusal(name, "file-unreadable", found, "Close it elsewhere, or copy it to another folder") from None


def _open_elsewhere(path: Path) -> tuple[Problem, ...]:
    """Return a warning if another program has the file open: what is not yet saved is not read."""
    marks = (path.with_name(f"~${path.name}"), path.with_name(f".~lock.{path.name}#"))
    if not any(mark.exists() for mark in marks):
        return ()
    found = "the file is open in another program"
    fault = Fault("open-elsewhere", found, "Save it there first: only what is saved is read")
    return (Findings(file=path.name).problem_at(None, fault),)


def _foreign(name: str, content: bytes) -> InputError | None:
    """Return the refusal of what is neither a zip nor plain text, whatever its name says."""
    if not content:
        return refusal(name, "file-empty", "the file is empty", "Save it again from your spreadsheet program")
    if content.startswith(OLD_CONTAINER):
        if "EncryptedPackage".encode("utf-16-le") in content:
            wanted = "Save a copy without a password as .xlsx, and name that"
            return refusal(name, "file-password", "the file is locked with a password", wanted)
        found = "the file is a workbook of the old .xls kind"
        return refusal(name, "file-old-workbook", found, f"Only .xlsx and .csv are read: {SAVE_AS}")
    start = content[:1000].lstrip(b"\xef\xbb\xbf \t\r\n").lower()
    if start.startswith((b"<!doctype html", b"<html", b"<?xml", b"<table")):
        found = "the file is a web page, not a spreadsheet"
        return refusal(name, "file-web-page", found, f"If it opens as a table, {SAVE_AS}")
    return None


def _text(name: str, content: bytes) -> None:
    """Turn away what is named .csv but is no text."""
    foreign = _foreign(name, content)
    if foreign:
        raise foreign
    if content.startswith(b"PK\x03\x04"):
        wanted = "Give it the ending .xlsx, or save it as .csv from your spreadsheet program"
        raise refusal(name, "file-workbook-named-csv", "the file is a workbook, though it is named .csv", wanted)
    if b"\0" in content and (content.startswith(BOM_UTF32_LE) or not content.startswith((BOM_UTF16_LE, BOM_UTF16_BE))):
        wanted = 'Save it again from your spreadsheet program as "CSV UTF-8"'
        raise refusal(name, "file-not-text", "the file holds NUL bytes, which no text has", wanted)


def _workbook(name: str, content: bytes) -> tuple[Problem, ...]:
    """Turn away what is named .xlsx but is no workbook that can be read; return what was noticed of one that is."""
    foreign = _foreign(name, content)
    if foreign:
        raise foreign
    if not is_zipfile(BytesIO(content)):
        raise _no_zip(name, content)
    try:
        with ZipFile(BytesIO(content)) as archive:
            parts = archive.infolist()
            opendocument = _is_opendocument(archive)
    except (BadZipFile, OSError, RuntimeError, NotImplementedError, ValueError, KeyError) as error:
        raise damaged(name) from error
    if len({part.filename.lower() for part in parts}) < len(parts):
        raise damaged(name)  # which of two parts of one name is meant cannot be told
    if opendocument:
        found = "the file is an OpenDocument spreadsheet (.ods), though it is named .xlsx"
        raise refusal(name, "file-opendocument", found, f"Only .xlsx and .csv are read: {SAVE_AS}")
    _refuse_other_archives(name, parts)
    _refuse_traps(name, parts)
    return _ignored(name, [part.filename for part in parts])


def damaged(name: str) -> InputError:
    """Return the refusal of a workbook whose inside cannot be read."""
    wanted = "Open it in your spreadsheet program and save a copy as .xlsx, or save it as .csv"
    return refusal(name, "file-damaged", "the file is damaged, or was made by an unusual program", wanted)


def _no_zip(name: str, content: bytes) -> InputError:
    """Return the refusal of a .xlsx that is no zip: half a file, or text."""
    if content.startswith(b"PK"):
        wanted = "Copy or download it again, or save it again from your spreadsheet program"
        return refusal(name, "file-cut-short", "the file is cut short: its end is missing", wanted)
    if b"\0" in content[:4096]:
        return damaged(name)
    found = "the file is plain text, though it is named .xlsx"
    return refusal(name, "file-plain-text", found, "If its values stand between commas, give it the ending .csv")


def _is_opendocument(archive: ZipFile) -> bool:
    """Say whether a zip declares itself an OpenDocument."""
    if "mimetype" not in archive.namelist():
        return False
    with archive.open("mimetype") as part:
        return b"opendocument" in part.read(200)


def _refuse_other_archives(name: str, parts: list[ZipInfo]) -> None:
    """Turn away a zip that holds no workbook."""
    names = [part.filename for part in parts]
    if any(part.lower().startswith("index/") and part.lower().endswith(".iwa") for part in names):
        found = "the file is a .numbers spreadsheet, though it is named .xlsx"
        raise refusal(name, "file-numbers", found, f"Only .xlsx and .csv are read: {SAVE_AS}")
    if "[Content_Types].xml" not in names or not any(part.startswith("xl/") for part in names):
        found = "the file is a zip that holds no workbook"
        raise refusal(name, "file-not-workbook", found, "If a workbook is inside, unpack the zip and name that")


def _refuse_traps(name: str, parts: list[ZipInfo]) -> None:
    """Turn away a zip that would unpack to more than a workbook has, by its directory alone."""
    unpacked = sum(part.file_size for part in parts)
    packed = max(1, sum(part.compress_size for part in parts))
    swollen = unpacked > SUSPECT_SIZE and unpacked / packed > SUSPECT_RATIO
    if len(parts) > PARTS_LIMIT or unpacked > UNPACKED_LIMIT or swollen:
        found = (
            f"the file unpacks to {unpacked / MEBIBYTE:.0f} MiB in {len(parts)} parts, more than a list of makers has"
        )
        wanted = "Copy the sheet Makers, values only, into a new workbook"
        raise refusal(name, "file-unpacks-too-big", found, wanted)


def _ignored(name: str, parts: list[str]) -> tuple[Problem, ...]:
    """Return a warning for each thing inside a workbook that is left alone."""
    noticed = Findings(file=name)
    if any(part.endswith("vbaProject.bin") for part in parts):
        fault = Fault("macros-ignored", "the file has macros", "Nothing need be done: they are neither run nor read")
        noticed.warn(None, fault)
    if any("externalLinks/" in part for part in parts):
        found = "the file has links to other files"
        fault = Fault("links-ignored", found, "Nothing need be done: the values last stored here are read")
        noticed.warn(None, fault)
    return tuple(noticed.warnings)
