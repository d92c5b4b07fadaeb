"""`narrate deposit`: a data package for an archive, in an open and a restricted edition."""

from __future__ import annotations

import os
import shutil
from collections.abc import Mapping
from pathlib import Path

from narrate.deposit.lessened import Lessened, lessened
from narrate.deposit.package import bag as bagged
from narrate.deposit.package import package
from narrate.disclosure import Guard, disclosed
from narrate.pipeline.judged import Judged, Progress, judged, judged_folder, silent
from narrate.problems import Place, Problem
from narrate.web.photographs import without_notes

MARK = "datapackage.json"
"""A folder that holds it, or a bag of it, is one that this command made and may replace."""


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
    open_part = judged(disclosed(whole.project), whole.packs)
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
    paths = []
    for name, files in made.items():
        progress(f"writing {name}")
        try:
            _put(target / name, files)
        except OSError as fault:
            place = Place(path=f"out/deposit/{name}")
            message = f"the package cannot be written here: {fault.strerror or fault}"
            help = "move what stands there, or allow writing to the folder; what stood there is as it was"
            problem = Problem(place=place, severity="error", code="N108", message=message, help=help)
            return (), (*found.problems, problem)
        paths.append(target / name)
    return tuple(paths), found.problems


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


def _put(target: Path, files: Mapping[str, bytes]) -> None:
    """Writes a whole folder beside the target and then exchanges the two, so that no half package ever stands there."""
    is_ours = (target / MARK).is_file() or (target / "data" / MARK).is_file()
    if target.exists() and not is_ours:
        raise OSError(0, "something that narrate did not make stands there")
    fresh = target.with_name(f".{target.name}.{os.getpid()}.unfinished")
    old = target.with_name(f".{target.name}.{os.getpid()}.before")
    try:
        for path, raw in files.items():
            (fresh / path).parent.mkdir(parents=True, exist_ok=True)
            (fresh / path).write_bytes(raw)
        if target.exists():
            os.replace(target, old)
        try:
            os.replace(fresh, target)
        except OSError:
            if old.exists():
                os.replace(old, target)
            raise
    finally:
        shutil.rmtree(fresh, ignore_errors=True)
        shutil.rmtree(old, ignore_errors=True)
