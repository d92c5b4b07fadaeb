"""`narrate compare`: what changed in data, claims and words between two states of a project folder."""

from __future__ import annotations

import tempfile
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from narrate.drafts.basis import Ground
from narrate.drafts.owned import is_a_file
from narrate.files import write
from narrate.judging.kept_units import KeptUnits
from narrate.model.changes import Changes, Part, State
from narrate.model.ids import Subject
from narrate.model.narrative import Narrative
from narrate.model.packs import Packs
from narrate.model.project import Project
from narrate.model.refs import subject_keys
from narrate.pipeline.changed_claims import changed_claims
from narrate.pipeline.changed_data import Renamed, changed_counts, changed_packs, changed_records, renamed
from narrate.pipeline.changed_words import Told, changed_words
from narrate.pipeline.editions import all_told, with_those_of_drafts
from narrate.pipeline.judged import Judged, Progress, disclosed_part, judged, read, silent
from narrate.pipeline.revisions import Found, state_at
from narrate.problems import Problem, has_errors

PARTLY = "what could not be read counts as not there"
NOT_JUDGED = "not compared: records with errors are not judged"


def compare(old: str, new: str, *, progress: Progress = silent) -> Changes:
    """
    Everything that changed from one state to the other; nothing is written into either.

    old, new:  FOLDER, or FOLDER@REVISION for a revision of the git repository that the folder lies in.

    Raises NotFound (pipeline.revisions) where there is no such state.
    """
    with tempfile.TemporaryDirectory(prefix="narrate-") as scratch:
        empty = [Path(scratch) / name for name in ("old", "new")]
        for folder in empty:
            folder.mkdir()
        found = state_at(old, empty[0]), state_at(new, empty[1])
        return _compared(_state(found[0], None, progress), found[0], found[1], progress)


def write_page(changes: Changes, path: Path, *, version: str) -> None:
    """Writes the comparison as one page that needs no other file."""
    from narrate.web.changes_page import changes_page
    from narrate.web.templates import templates_folder

    write(path, changes_page(changes, templates_folder(), version))


@dataclass(frozen=True, slots=True, kw_only=True)
class _State:
    name: str
    folder: Path
    problems: tuple[Problem, ...]
    project: Project | None
    packs: Packs | None
    whole: Judged | None = None
    open_part: Judged | None = None
    told: Told | None = None


def _compared(old: _State, old_at: Found, new_at: Found, progress: Progress) -> Changes:
    new = _state(new_at, old, progress)
    parts: list[Part] = []
    names = Renamed(samples={}, contexts={})
    if old.project is not None and new.project is not None:
        progress("comparing")
        names = renamed(old.project, new.project)
        note = PARTLY if has_errors((*old.problems, *new.problems)) else ""
        parts.append(Part(title="Records", changes=changed_records(old.project, new.project, names), note=note))
        parts.append(Part(title="Counts", changes=changed_counts(old.project, new.project, names), note=note))
    else:
        parts.append(Part(title="Data", changes=(), note="not compared: project.yaml could not be read"))
    parts.append(Part(title="The project's own packs", changes=changed_packs(old.folder, new.folder)))
    if old.whole is None or new.whole is None or old.told is None or new.told is None:
        parts.append(Part(title="Claims and words", changes=(), note=NOT_JUDGED))
    else:
        keys = _new_keys(old.whole.project, new.whole.project, names)
        parts.append(Part(title="Claims", changes=changed_claims(_ground(old.whole), _ground(new.whole), keys)))
        parts += changed_words(old.told, new.told, keys)
    return Changes(old=_plain(old), new=_plain(new), parts=tuple(parts))


def _state(found: Found, other: _State | None, progress: Progress) -> _State:
    """A state read, judged and told; one whose data are those of the other is not judged again."""
    progress(f"reading {found.name}")
    reading, kept = read(found.folder), KeptUnits()
    if reading.project is None or reading.packs is None or has_errors(reading.problems):
        return _State(
            name=found.name,
            folder=found.folder,
            problems=reading.problems,
            project=reading.project,
            packs=reading.packs,
        )
    if other is not None and other.whole and other.project == reading.project and other.packs == reading.packs:
        whole, open_part = other.whole, other.open_part
    else:
        progress(f"judging {found.name}")
        whole, open_part = judged(reading.project, reading.packs, kept=kept), None
    open_part = open_part or disclosed_part(whole, kept=kept)
    words = all_told(found.folder, whole, open_part)
    problems = with_those_of_drafts(reading.problems, words.values(), strict=False)
    told = {key: narrative for part in words.values() for key, narrative in part.narratives.items()}
    return _State(
        name=found.name,
        folder=found.folder,
        problems=problems,
        project=reading.project,
        packs=reading.packs,
        whole=whole,
        open_part=open_part,
        told=_by_audience(told, subject_keys(whole.project)),
    )


def _by_audience(told: Mapping[tuple[str, Subject], Narrative], keys: Mapping[Subject, str]) -> Told:
    found: dict[str, dict[str, Narrative]] = {}
    for (audience, subject), narrative in told.items():
        if is_a_file(subject):
            found.setdefault(audience, {})[keys[subject]] = narrative
    return found


def _new_keys(old: Project, new: Project, names: Renamed) -> dict[str, str]:
    """The word of a renamed subject in old references -> that in new ones."""
    before, after = subject_keys(old), subject_keys(new)
    pairs = [("sample", one, other) for one, other in names.samples.items()]
    pairs += [("context", one, other) for one, other in names.contexts.items()]
    return {
        before[Subject(level=level, id=one)]: after[Subject(level=level, id=other)]  # type: ignore[arg-type]
        for level, one, other in pairs
    }


def _ground(part: Judged) -> Ground:
    keys = subject_keys(part.project)
    return Ground(
        claims=part.claims,
        findings=part.findings,
        packs=part.packs,
        subject_of={key: subject for subject, key in keys.items()},
    )


def _plain(state: _State) -> State:
    return State(name=state.name, problems=state.problems, is_read=state.project is not None)
