"""`narrate deposit`: a data package for an archive, in an open and a restricted edition."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

from narrate.deposit.lessened import Lessened, lessened
from narrate.deposit.package import bag as bagged
from narrate.deposit.package import package
from narrate.disclosure import Guard
from narrate.files import put_back, write_folder
from narrate.pipeline.held import Unwritable, broken_off, held, in_use
from narrate.pipeline.judged import Judged, Progress, disclosed_part, judged_folder, silent
from narrate.pipeline.rubbish import seldom_looked_for
from narrate.problems import Problem
from narrate.web.photographs import without_notes

MARK = "datapackage.json"
"""A folder that holds it, or a bag of it, is one that this command made and may replace."""


@seldom_looked_for()
def deposit(
    folder: Path, *, version: str, bag: bool = False, progress: Progress = silent
) -> tuple[tuple[Path, ...], tuple[Problem, ...]]:
    """
    Writes out/deposit/open and out/deposit/restricted; no paths where something stands in the way.

    The open edition is judged anew from what may be disclosed: nothing restricted was ever loaded into it.
    """
    found = judged_folder(folder, progress=progress)
    whole = found.whole
    if whole is None:
        return (), found.problems
    progress("judging what may be disclosed")
    open_part = disclosed_part(whole, kept=found.kept)
    local, guard = _local_packs(folder), Guard.of(whole.project)
    # A pack of the project that names something restricted stays out of the open edition.
    told = {path: raw for path, raw in local.items() if not guard.names(raw.decode("utf-8"))}
    told |= _photographs(folder, open_part, is_open=True)
    local |= _photographs(folder, whole, is_open=False)
    less = lessened(whole.project, open_part.project)
    made: dict[str, Mapping[str, bytes]] = {}
    for name, part, packs in (("open", open_part, told), ("restricted", whole, local)):
        files = _package(part, name, version, packs, less if name == "open" else {})
        made[name] = files
        if bag:
            made[f"{name}-bag"] = bagged(files)
    target = folder / "out" / "deposit"
    try:
        with held(folder):
            for name in made:
                _refuse_in_use(target / name)
            for name, files in made.items():
                progress(f"writing {name}")
                _put(target / name, files)
    except Unwritable as refusal:
        return (), (*found.problems, refusal.problem)
    except OSError as fault:
        return (), (*found.problems, broken_off(folder, f"out/deposit/{name}", fault, "the package"))
    return tuple(target / name for name in made), found.problems


def _package(
    part: Judged, name: str, version: str, further: Mapping[str, bytes], less: Lessened
) -> Mapping[str, bytes]:
    of_part = (part.project, part.packs, part.findings, part.claims)
    return package(*of_part, name=name, version=version, further=further, lessened=less)


def _local_packs(folder: Path) -> dict[str, bytes]:
    """The project's own packs, without which its names and signs could not be read again."""
    files = sorted((folder / "packs").rglob("*.yaml"))
    return {path.relative_to(folder).as_posix(): path.read_text(encoding="utf-8-sig").encode() for path in files}


def _photographs(folder: Path, part: Judged, *, is_open: bool) -> dict[str, bytes]:
    """Photographs that the records list; for the open edition without the camera's notes, which may hold a place."""
    found: dict[str, bytes] = {}
    listed = [image for context in part.project.contexts for image in context.images]
    listed += [image for sample in part.project.samples for image in sample.images]
    for image in listed:
        path = (folder / image.file).resolve()
        if path.is_file() and path.is_relative_to(folder.resolve()):
            raw = path.read_bytes()
            kept = without_notes(raw) if is_open else raw
            if kept is not None:
                found[image.file] = kept
    return found


def _refuse_in_use(target: Path) -> None:
    """Before anything is written: an edition of which somebody has a file open, or made one read-only, stays."""
    for path in sorted(target.rglob("*")):
        if why := in_use(path):
            raise OSError(0, f"{path.relative_to(target).as_posix()}: {why}")


def _put(target: Path, files: Mapping[str, bytes]) -> None:
    """Puts a package in place of one that narrate made, and of nothing else."""
    put_back(target)
    is_ours = (target / MARK).is_file() or (target / "data" / MARK).is_file()
    if target.exists() and not is_ours:
        raise OSError(0, "something that narrate did not make stands there")
    write_folder(target, files)
