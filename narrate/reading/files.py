"""Files of a project: which there are, and what stands in them. Nothing outside the project folder is read."""

from __future__ import annotations

import os
import re
import stat
from pathlib import Path

from narrate.problems import Place, ProblemList
from narrate.reading.source_text import FORBIDDEN, LINE_END, SourceText, tell

YAML_BYTES = 20_000_000
"""More than any record can need: some ten thousand samples in one file."""
SHEET_BYTES = 200_000_000
"""Some four million rows."""

_BEGINNINGS: tuple[tuple[bytes, str, str], ...] = (
    (b"PK\x03\x04", "an office document or an archive", "open it and save the sheet as 'CSV UTF-8'"),
    (b"\xd0\xcf\x11\xe0", "an old office document", "open it and save the sheet as 'CSV UTF-8'"),
    (b"\xff\xfe", "text saved as UTF-16", "save it again as 'CSV UTF-8', or as UTF-8 in the editor"),
    (b"\xfe\xff", "text saved as UTF-16", "save it again as 'CSV UTF-8', or as UTF-8 in the editor"),
    (b"%PDF", "a PDF document", "put the table itself here, as text"),
    (b"\x89PNG", "a picture", "pictures belong in images/"),
    (b"\xff\xd8\xff", "a picture", "pictures belong in images/"),
    (b"\x1f\x8b", "a compressed file", "unpack it first"),
)
_BOM = b"\xef\xbb\xbf"


def listed(root: Path, folder: str, endings: tuple[str, ...], problems: ProblemList) -> tuple[str, ...]:
    """
    Files below `root/folder` whose names end in one of `endings` (any case), sorted, relative to root.

    Names that begin with a dot or a tilde are an editor's own and are passed over. A link to a folder is not followed.
    """
    top = root / folder
    if top.is_symlink() and not _is_inside(root, top):
        _leads_out(root, top, problems)
        return ()
    found: list[str] = []
    for here, folders, names in os.walk(top, followlinks=False, onerror=lambda fault: _closed(root, fault, problems)):
        for name in folders:
            if (Path(here) / name).is_symlink():
                _leads_out(root, Path(here) / name, problems)
        folders[:] = sorted(name for name in folders if not name.startswith("."))
        for name in names:
            if name.lower().endswith(endings) and not name.startswith((".", "~")):
                found.append(relative(root, Path(here) / name))
    return tuple(sorted(found))


def _closed(root: Path, fault: OSError, problems: ProblemList) -> None:
    """A folder that cannot be listed; one that is not there is for the caller to miss."""
    if not isinstance(fault, FileNotFoundError | NotADirectoryError):
        _cannot_open(relative(root, Path(fault.filename)), "folder", fault, problems)


def _cannot_open(path: str, what: str, fault: OSError, problems: ProblemList) -> None:
    problems.error(
        Place(path=path),
        "N101",
        f"the {what} cannot be opened ({(fault.strerror or 'no reason given').lower()}), expected one that can",
        help="check that it is there and that you may read it",
    )


def relative(root: Path, path: Path) -> str:
    """The path inside the project, with forward slashes; bytes of a name that are no text are shown as '?'."""
    return path.relative_to(root).as_posix().encode("utf-8", "replace").decode("utf-8")


def read_text(root: Path, path: str, problems: ProblemList, *, at_most_bytes: int = YAML_BYTES) -> SourceText | None:
    """The text of a file in UTF-8, without a byte order mark; None with a problem where it cannot be read."""
    file = root / path
    place = Place(path=path)
    if not is_own_file(root, file, problems):
        return None
    try:
        status = file.stat()
        size = status.st_size
        if size > at_most_bytes:
            problems.error(
                place,
                "N107",
                f"the file holds {size / 1e6:.0f} million bytes, expected at most {at_most_bytes / 1e6:.0f} million",
                help="split it into several files; any split will do",
            )
            return None
        content = file.read_bytes()
    except OSError as fault:
        _cannot_open(path, "file", fault, problems)
        return None
    return decoded(path, content, problems)


def is_own_file(root: Path, file: Path, problems: ProblemList) -> bool:
    """Whether it is a file inside the project folder, and no link out of it and no pipe; else a problem tells it."""
    if not _is_inside(root, file):
        _leads_out(root, file, problems)
        return False
    shown = relative(root, file)
    try:
        is_file = stat.S_ISREG(file.stat().st_mode)
    except OSError as fault:
        _cannot_open(shown, "file", fault, problems)
        return False
    if not is_file:
        problems.error(
            Place(path=shown), "N101", "this is no file, expected a text file", help="give it another name or place"
        )
    return is_file


def decoded(path: str, content: bytes, problems: ProblemList) -> SourceText | None:
    """Bytes as UTF-8 text; None with a problem that names the first byte or character that is not."""
    for beginning, what, help in _BEGINNINGS:
        if content.startswith(beginning):
            problems.error(Place(path=path), "N102", f"the file is {what}, expected UTF-8 text", help=help)
            return None
    body = content.removeprefix(_BOM)
    if b"\x00" in body:
        _not_text(path, body, body.index(b"\x00"), problems)
        return None
    try:
        text = body.decode("utf-8")
    except UnicodeDecodeError as fault:
        _other_encoding(path, body, fault.start, problems)
        return None
    source = SourceText(path, text)
    odd = FORBIDDEN.search(text)
    if odd:
        line, column = _line_and_column(text[: odd.start()])
        tell(
            source,
            problems,
            "N102",
            f"the file holds the character U+{ord(odd[0]):04X}, which cannot be seen, expected plain text",
            line=line,
            column=column,
            help="delete the character; it often comes from pasting out of another program",
        )
        return None
    return source


def _not_text(path: str, body: bytes, at: int, problems: ProblemList) -> None:
    problems.error(
        Place(path=path, line=len(re.findall(rb"\r\n|\r|\n", body[:at])) + 1),
        "N102",
        f"the file holds the byte 0x00 at position {at + 1}, so it is not text, expected UTF-8 text",
        help="if it is a spreadsheet, open it and save the sheet as 'CSV UTF-8'",
    )


def _other_encoding(path: str, body: bytes, at: int, problems: ProblemList) -> None:
    """Names the byte and what it would be in Windows-1252, the usual other encoding of office programs."""
    before = body[:at].decode("utf-8")
    line, column = _line_and_column(before)
    byte = body[at]
    meant = bytes([byte]).decode("cp1252", "replace")
    likely = "" if meant == "\ufffd" else f"; in Windows-1252, which is likely, it would be '{meant}'"
    tell(
        SourceText(path, body.decode("utf-8", "replace")),
        problems,
        "N102",
        f"byte 0x{byte:02X} is not UTF-8 text{likely}, expected UTF-8",
        line=line,
        column=column,
        help="save the file again as 'CSV UTF-8', or as UTF-8 in the editor",
    )


def _line_and_column(before: str) -> tuple[int, int]:
    lines = LINE_END.split(before)
    return len(lines), len(lines[-1]) + 1


def _is_inside(root: Path, path: Path) -> bool:
    try:
        return path.resolve().is_relative_to(root.resolve())
    except (OSError, RuntimeError, ValueError):
        return False


def _leads_out(root: Path, path: Path, problems: ProblemList) -> None:
    leads_out = not _is_inside(root, path)
    what = "a link that leads out of the project folder" if leads_out else "a link to a folder"
    problems.error(
        Place(path=relative(root, path)),
        "N106",
        f"this is {what}, expected files inside the project folder",
        help="copy what it points to into the project folder",
    )
