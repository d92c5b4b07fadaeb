"""A project folder as it is, or as it was in a revision of the git repository that it lies in."""

from __future__ import annotations

import os
import subprocess
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

_SECONDS = 120
_NO_FOLDER = "'{}' is no folder, expected a project folder, or FOLDER@REVISION for git's"


@dataclass(frozen=True, slots=True, kw_only=True)
class Found:
    folder: Path
    name: str


class NotFound(Exception):
    """There is no such state; the message says what was asked for and how to ask."""


def folder_of(asked: str) -> str:
    """
    The folder of FOLDER@REVISION, as it stands.

    Raises NotFound where no revision is asked for: a folder is not compared with itself.
    """
    at = _at(asked)
    if at is None and not Path(asked).exists():
        raise NotFound(_NO_FOLDER.format(asked))
    if at is None:
        raise NotFound(f"'{asked}' stands alone, expected OLD and NEW, or FOLDER@REVISION to set beside FOLDER")
    return asked[:at]


def state_at(asked: str, empty: Path) -> Found:
    """
    The folder that is meant by FOLDER or FOLDER@REVISION.

    empty:  an empty folder for the files of a revision. The checkout, its index and its branches stay as they are.

    Raises NotFound where there is no such folder, repository or revision.
    """
    if Path(asked).exists():
        return Found(folder=Path(asked), name=f"{asked}, as it stands")
    at = _at(asked)
    if at is None:
        raise NotFound(_NO_FOLDER.format(asked))
    folder, revision = asked[:at], asked[at + 1 :]
    return Found(folder=empty, name=_check_out(Path(folder), revision, empty))


def _at(asked: str) -> int | None:
    """Where the '@' stands before a revision: behind the shortest beginning that is a folder."""
    if Path(asked).exists():
        return None
    return next((i for i, sign in enumerate(asked) if sign == "@" and Path(asked[:i] or ".").is_dir()), None)


def _check_out(folder: Path, revision: str, empty: Path) -> str:
    """Writes the files of the folder, as they were in a revision, into an empty one; gives its name."""
    if _git(folder, "rev-parse", "--is-inside-work-tree").returncode:
        raise NotFound(f"'{folder}' lies in no git repository, so it has no revision '{revision}'; compare two folders")
    is_a_name = revision and not revision.startswith("-")
    commit = _said(folder, "rev-parse", "-q", "--verify", f"{revision}^{{commit}}") if is_a_name else ""
    if not commit:
        raise NotFound(f"the repository of '{folder}' has no revision '{revision}'; 'git log --oneline' lists them")
    inside = _said(folder, "rev-parse", "--show-prefix").rstrip("/")
    tree = f"{commit}:{inside}"
    if _said(folder, "cat-file", "-t", tree) != "tree":
        raise NotFound(f"'{folder}' was not there in revision '{revision}'")
    # An index of its own leaves the repository untouched; unlike `git archive`, `checkout-index` leaves nothing out.
    index = {"GIT_INDEX_FILE": str(empty.resolve().parent / f"{empty.name}.index")}
    for words in (("read-tree", tree), ("checkout-index", "--all", f"--prefix={empty.resolve()}/")):
        done = _git(folder, *words, more=index, at_the_top=True)
        if done.returncode:
            raise NotFound(f"git could not give revision '{revision}' of '{folder}': {done.stderr.strip()}")
    short, day, subject = _said(folder, "show", "-s", "--format=%h%x09%cs%x09%s", commit).split("\t", 2)
    return f"{folder} at {short} ({day}, {subject})"


def _said(folder: Path, *words: str) -> str:
    return _git(folder, *words).stdout.strip()


def _git(
    folder: Path, *words: str, more: Mapping[str, str] | None = None, at_the_top: bool = False
) -> subprocess.CompletedProcess[str]:
    top = _said(folder, "rev-parse", "--show-toplevel") if at_the_top else ""
    kept = {name: value for name, value in os.environ.items() if not name.startswith("GIT_")}
    try:
        return subprocess.run(
            ["git", "-C", top or str(folder), *words],
            capture_output=True,
            text=True,
            encoding="utf-8",
            errors="replace",
            timeout=_SECONDS,
            check=False,
            env={**kept, "GIT_TERMINAL_PROMPT": "0", "GIT_OPTIONAL_LOCKS": "0", **(more or {})},
        )
    except FileNotFoundError:
        raise NotFound("git is not installed, so revisions cannot be read; compare two folders") from None
    except subprocess.TimeoutExpired:
        raise NotFound(f"git gave no answer within {_SECONDS} seconds") from None
