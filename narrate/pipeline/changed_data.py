"""What changed in the data: records, samples and contexts, counts, and the project's own packs."""

from __future__ import annotations

from collections.abc import Callable, Hashable, Iterable, Mapping
from dataclasses import dataclass, fields, is_dataclass
from pathlib import Path
from typing import Any, TypeVar

from narrate.model.changes import Change
from narrate.model.counts import CountRow
from narrate.model.project import Project
from narrate.model.sampling import Sample
from narrate.model.stratigraphy import Context

_NOT_OF_THE_PROJECT = ("phases", "contexts", "samples", "counts")
_ONE = TypeVar("_ONE")


@dataclass(frozen=True, slots=True, kw_only=True)
class Renamed:
    """Old ids -> new ids of what is the same under another name."""

    samples: Mapping[str, str]
    contexts: Mapping[str, str]


def renamed(old: Project, new: Project) -> Renamed:
    """
    Samples and contexts that have another id now, and are else what they were.

    A sample is the same if it holds the same counts (or, without any, the same record) and no other does; a context if
    its record is the same, or the same samples come from it.
    """
    samples = _same(
        {s.id: s for s in old.samples}, {s.id: s for s in new.samples}, _sample_mark(old), _sample_mark(new)
    )
    contexts = _same(
        {c.id: c for c in old.contexts},
        {c.id: c for c in new.contexts},
        lambda context: (_record(context), frozenset(samples.get(s.id, s.id) for s in old.samples_of(context.id))),
        lambda context: (_record(context), frozenset(s.id for s in new.samples_of(context.id))),
    )
    return Renamed(samples=samples, contexts=contexts)


def changed_records(old: Project, new: Project, names: Renamed) -> tuple[Change, ...]:
    """Fields of the project, its phases, contexts and samples; what came, went or has another id."""
    found = _fields("project", _flat_project(old), _flat_project(new), old.place.path, new.place.path)
    found += _of_kind("phase", {p.id: p for p in old.phases}, {p.id: p for p in new.phases}, {}, lambda _: "")
    found += _of_kind(
        "context",
        {c.id: c for c in old.contexts},
        {c.id: c for c in new.contexts},
        names.contexts,
        lambda context: context.kind,
    )
    held = _rows_by_sample(old), _rows_by_sample(new)
    found += _of_kind(
        "sample",
        {s.id: s for s in old.samples},
        {s.id: s for s in new.samples},
        names.samples,
        lambda sample: _in_short((held[0] | held[1]).get(sample.id, ())),
        {"context": names.contexts},
    )
    return tuple(found)


def changed_counts(old: Project, new: Project, names: Renamed) -> tuple[Change, ...]:
    """Counts, masses and notes by sample, name as written and part; samples that came or went are told as records."""
    before, after = _by_key(old, names.samples), _by_key(new, {})
    both = {names.samples.get(s.id, s.id) for s in old.samples} & {s.id for s in new.samples}
    found = []
    for key in sorted(before.keys() | after.keys()):
        was, is_ = before.get(key, []), after.get(key, [])
        if key[0] not in both:
            continue
        for what, written in (("", _amount), ("note", lambda row: row.note)):
            one, other = sorted(map(written, was)), sorted(map(written, is_))
            if one == other or (what and not (was and is_)):
                continue
            found.append(
                Change(
                    kind="changed" if was and is_ else "added" if is_ else "removed",
                    subject=", ".join(part for part in key if part),
                    what=what,
                    before=" + ".join(one),
                    after=" + ".join(other),
                    before_at=", ".join(row.place.row for row in was),
                    after_at=", ".join(row.place.row for row in is_),
                )
            )
    return tuple(found)


def changed_packs(old: Path, new: Path) -> tuple[Change, ...]:
    """Files of the project's own packs that came, went or say something else."""
    before, after = _files(old / "packs"), _files(new / "packs")
    return tuple(
        Change(
            kind="changed" if name in before and name in after else "added" if name in after else "removed",
            subject=f"packs/{name}",
        )
        for name in sorted(before.keys() | after.keys())
        if before.get(name) != after.get(name)
    )


def _same(
    old: Mapping[Any, _ONE],
    new: Mapping[Any, _ONE],
    mark: Callable[[_ONE], Hashable],
    new_mark: Callable[[_ONE], Hashable],
) -> dict[str, str]:
    gone = {id: mark(one) for id, one in old.items() if id not in new}
    come = {id: new_mark(one) for id, one in new.items() if id not in old}
    marks = [*gone.values()], [*come.values()]
    return {
        old_id: new_id
        for old_id, one in gone.items()
        for new_id, other in come.items()
        if one == other and marks[0].count(one) == 1 and marks[1].count(one) == 1
    }


def _sample_mark(project: Project) -> Callable[[Sample], Hashable]:
    held = _rows_by_sample(project)

    def mark(sample: Sample) -> Hashable:
        rows = held.get(sample.id)
        if not rows:
            return ("record", _record(sample))
        return ("rows", *sorted((*_key(row, ""), _amount(row)) for row in rows))

    return mark


def _rows_by_sample(project: Project) -> dict[str, list[CountRow]]:
    held: dict[str, list[CountRow]] = {}
    for row in project.counts:
        held.setdefault(row.sample, []).append(row)
    return held


def _by_key(project: Project, names: Mapping[str, str]) -> dict[tuple[str, ...], list[CountRow]]:
    found: dict[tuple[str, ...], list[CountRow]] = {}
    for row in project.counts:
        found.setdefault(_key(row, names.get(row.sample, row.sample)), []).append(row)
    return found


def _key(row: CountRow, sample: str) -> tuple[str, ...]:
    return (
        sample,
        row.identification.written,
        row.part,
        "" if row.condition == "charred" else row.condition,
        "" if row.completeness == "whole" else row.completeness,
        row.size_class,
        "" if row.fraction == "light" else f"{row.fraction} fraction",
    )


def _amount(row: CountRow) -> str:
    said = str(row.count.number) if row.count.number is not None else row.count.written or row.count.amount
    mass = "" if row.mass_g is None else f"{row.mass_g:g} g"
    return mass if row.count.amount == "weighed only" and mass else f"{said}, {mass}" if mass else said


def _in_short(rows: Iterable[CountRow]) -> str:
    rows = list(rows)
    items = sum(row.count.number or 0 for row in rows)
    return f"{items:,} items in {len(rows)} row{'s' * (len(rows) != 1)}" if rows else "no rows"


def _of_kind(
    kind: str,
    old: Mapping[Any, Any],
    new: Mapping[Any, Any],
    names: Mapping[str, str],
    in_short: Callable[[Any], str],
    meant: Mapping[str, Mapping[str, str]] | None = None,
) -> list[Change]:
    """`meant`: by field, old ids -> new ids: a field that follows the new name of another record is as it was."""
    found: list[Change] = []
    for id, one in old.items():
        other = new.get(names.get(id, id))
        at = one.place.row
        if other is None:
            found.append(Change(kind="removed", subject=f"{kind} {id}", before=in_short(one), before_at=at))
            continue
        if id in names:
            found.append(
                Change(kind="renamed", subject=f"{kind} {id}", after=names[id], before_at=at, after_at=other.place.row)
            )
        before = {
            name: (meant or {}).get(name, {}).get(value, value) for name, value in _flat(one) if name != "id"
        }
        after = {name: value for name, value in _flat(other) if name != "id"}
        found += _fields(f"{kind} {names.get(id, id)}", before, after, at, other.place.row)
    renamed_to = set(names.values())
    found += [
        Change(kind="added", subject=f"{kind} {id}", after=in_short(one), after_at=one.place.row)
        for id, one in new.items()
        if id not in old and id not in renamed_to
    ]
    return found


def _fields(
    subject: str, before: Mapping[str, str], after: Mapping[str, str], before_at: str, after_at: str
) -> list[Change]:
    return [
        Change(
            kind="changed" if name in before and name in after else "added" if name in after else "removed",
            subject=subject,
            what=name,
            before=before.get(name, ""),
            after=after.get(name, ""),
            before_at=before_at,
            after_at=after_at,
        )
        for name in dict.fromkeys((*before, *after))
        if before.get(name) != after.get(name)
    ]


def _flat_project(project: Project) -> dict[str, str]:
    return {name: said for name, said in _flat(project) if name.split(".")[0].split(" ")[0] not in _NOT_OF_THE_PROJECT}


def _record(one: Sample | Context) -> frozenset[tuple[str, str]]:
    return frozenset((name, said) for name, said in _flat(one) if name != "id")


def _flat(value: Any, name: str = "") -> list[tuple[str, str]]:
    """Every field that says something, by its path, as a text."""
    if value is None or value == "" or (isinstance(value, (tuple, frozenset, Mapping)) and not value):
        return []
    if is_dataclass(value) and not isinstance(value, type):
        skipped = ("place", *(_NOT_OF_THE_PROJECT if isinstance(value, Project) else ()))
        inside = [(f.name, getattr(value, f.name)) for f in fields(value) if f.compare and f.name not in skipped]
    elif isinstance(value, Mapping):
        inside = [(str(key), one) for key, one in value.items()]
    elif isinstance(value, (tuple, frozenset)) and any(is_dataclass(one) for one in value):
        inside = [(_own_name(one, number), one) for number, one in enumerate(value, start=1)]
    else:
        return [(name, _text(value))]
    return [found for key, one in inside for found in _flat(one, f"{name}.{key}" if name else key)]


def _own_name(value: Any, number: int) -> str:
    return next((str(getattr(value, f)) for f in ("id", "name", "file") if hasattr(value, f)), str(number))


def _text(value: Any) -> str:
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, float):
        return f"{value:g}"
    if isinstance(value, frozenset):
        return ", ".join(sorted(map(str, value)))
    return ", ".join(map(str, value)) if isinstance(value, tuple) else str(value)


def _files(folder: Path) -> dict[str, bytes]:
    if not folder.is_dir():
        return {}
    return {
        path.relative_to(folder).as_posix(): path.read_bytes()
        for path in sorted(folder.rglob("*"))
        if path.is_file() and not path.is_symlink()
    }
