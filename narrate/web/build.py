"""Writes one whole site, each page as soon as it is made; what an earlier build left over is removed."""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping
from pathlib import Path

from narrate.files import is_inside, leftovers, write
from narrate.model.edition import Edition
from narrate.problems import Place, Problem
from narrate.web import kept_pages
from narrate.web.pages import Making
from narrate.web.refusal import Refused

MANIFEST = ".narrate-site.json"
"""Names every file that narrate made in the folder, so that it never touches another."""
FORMAT = "narrate site 1"


def build(
    edition: Edition,
    templates: Path,
    folder: Path,
    images: Path | None = None,
    kept: Path | None = None,
    ground: str = "",
) -> None:
    """
    Writes the site of an edition into a folder.

    images:  the project folder in which photographs lie; None leaves them out.
    kept:    the list of pages that stand, with their keys, for the next build; None: every page is made.
    ground:  a sum over all that pages may show and that is not part of the edition.
    Raises Refused (N108) if the folder holds something that narrate did not make or cannot be written, and
    Refused (N701) for templates. Files whose content stays the same are not written again.
    """
    made_before = _made_before(folder)
    before = kept_pages.standing(kept, folder) if kept and ground else {}
    site = Making(edition, templates, images)
    names = (*site.paths, *site.others)
    _refuse_strangers(folder, names, made_before)
    try:
        keys = _write(folder, site, made_before, ground, before)
        if kept and ground:
            kept_pages.remember(kept, folder, keys)
    except OSError as error:
        raise Refused(
            _problem(folder, f"could not be written: {error.strerror or error}", "close what uses it, then build again")
        ) from error


def _made_before(folder: Path) -> frozenset[str]:
    """Files that an earlier build made; refuses a folder that is not ours."""
    if folder.is_symlink():
        raise Refused(_problem(folder, "is a link, expected a folder", "remove the link"))
    if not folder.exists():
        return frozenset()
    if not folder.is_dir():
        raise Refused(_problem(folder, "is a file, expected a folder", "move the file away"))
    manifest = folder / MANIFEST
    if manifest.is_file() and not manifest.is_symlink():
        return _manifest_files(folder, manifest)
    if any(folder.iterdir()):
        raise Refused(
            _problem(folder, "holds something that narrate did not make, expected an empty folder", "move it away")
        )
    return frozenset()


def _manifest_files(folder: Path, manifest: Path) -> frozenset[str]:
    try:
        said = json.loads(manifest.read_bytes())
        named = said["files"] if said["format"] == FORMAT else None
    except (ValueError, KeyError, TypeError):
        named = None
    if not isinstance(named, list) or not all(isinstance(name, str) and is_inside(name) for name in named):
        message = f"has a {MANIFEST} that narrate did not write, expected the list of its own files"
        raise Refused(_problem(folder, message, "remove the folder, then build again"))
    return frozenset(named)


def _refuse_strangers(folder: Path, files: Iterable[str], made_before: frozenset[str]) -> None:
    """No file of somebody else is written over, and nothing is written through a link."""
    root = folder.resolve()
    for name in files:
        path = folder / name
        is_strange = path.is_symlink() or (path.exists() and (name not in made_before or not path.is_file()))
        if is_strange or not path.parent.resolve().is_relative_to(root):
            message = f"holds '{name}', which narrate did not make"
            raise Refused(_problem(folder, message, "move it away, then build again"))


def _write(
    folder: Path, site: Making, made_before: frozenset[str], ground: str, before: Mapping[str, tuple[str, str]]
) -> dict[str, tuple[str, str]]:
    """Writes all other files, then each page as soon as it is made; gives key and mark of each page that has a key."""
    names = {*site.paths, *site.others}
    marks: dict[str, str] = {}

    def put(path: str, content: bytes) -> None:
        write(folder / path, content)
        marks[path] = kept_pages.mark_of(content)

    folder.mkdir(parents=True, exist_ok=True)
    for begun in leftovers(folder):
        begun.unlink()
    # The list names every file before it is written: a build that is cut short leaves nothing that looks strange.
    write(folder / MANIFEST, _manifest(made_before | names))
    for name, content in site.others.items():
        write(folder / name, content())
    made = site.make(put, ground, {path: key for path, (key, _) in before.items()})
    _prune(folder, sorted(made_before - names))
    write(folder / MANIFEST, _manifest(names))
    marks.update((path, before[path][1]) for path in made.standing)
    return {path: (key, marks[path]) for path, key in made.keys.items()}


def _prune(folder: Path, stale: list[str]) -> None:
    root = folder.resolve()
    for name in stale:
        path = folder / name
        if not path.parent.resolve().is_relative_to(root) or not (path.is_file() or path.is_symlink()):
            continue
        path.unlink()
        parent = path.parent
        while parent != folder and not any(parent.iterdir()):
            parent.rmdir()
            parent = parent.parent


def _manifest(names: Iterable[str]) -> bytes:
    return (json.dumps({"format": FORMAT, "files": sorted(names)}, ensure_ascii=False, indent=1) + "\n").encode("utf-8")


def _problem(folder: Path, message: str, help: str) -> Problem:
    return Problem(
        place=Place(path=folder.name), severity="error", code="N108", message=f"'{folder}' {message}", help=help
    )
