"""Stable references: how claims, measurements, finds and records of a subject are named."""

from __future__ import annotations

import re
from collections.abc import Mapping
from functools import lru_cache

from narrate.model.ids import SITE, Level, Subject
from narrate.model.project import Project

_ORDER: tuple[Level, ...] = ("context", "sample", "feature", "phase", "site")


def subjects(project: Project) -> tuple[Subject, ...]:
    """All subjects of a project, contexts first, each level in the project's order."""
    ids: dict[Level, tuple[str, ...]] = {
        "context": tuple(context.id for context in project.contexts),
        "sample": tuple(sample.id for sample in project.samples),
        "feature": tuple(feature.id for feature in project.features()),
        "phase": tuple(phase.id for phase in project.phases),
        "site": (SITE,),
    }
    return tuple(Subject(level=level, id=id) for level in _ORDER for id in ids[level])


def subject_keys(project: Project) -> Mapping[Subject, str]:
    """
    The word that stands for each subject before the slash of a reference.

    An id without white space and slash is its own word; any other has '_' for them. Where two subjects would share a
    word, the later one (contexts come first, then samples, features, phases, the site) is written 'level:id', and an id
    with white space or slash always gives way to one without.
    """
    everyone = subjects(project)
    plain = {subject.id for subject in everyone if _is_plain(subject.id)}
    keys: dict[Subject, str] = {}
    taken: set[str] = set()
    for subject in sorted(everyone, key=lambda subject: not _is_plain(subject.id)):
        own = _is_plain(subject.id) and subject.id not in taken
        key = subject.id if own else re.sub(r"[\s/]+", "_", subject.id)
        if not own and (key in taken or key in plain):
            key = f"{subject.level}:{key}"
        while not own and (key in taken or key in plain):
            key += "~"
        taken.add(key)
        keys[subject] = key
    return {subject: keys[subject] for subject in everyone}


def ref_in_keys(project: Project, ref: str) -> str:
    """
    A reference as a person may write it, with the id as it stands in the records, in the words of `subject_keys`.

    The longest word or id that the reference begins with counts; a reference that begins with none is given back.
    """
    fits = [
        (len(start), is_word, key)
        for subject, key in subject_keys(project).items()
        for start, is_word in ((key, True), (subject.id, False))
        if ref.startswith(f"{start}/")
    ]
    if not fits:
        return ref
    length, _, key = max(fits, key=lambda fit: fit[:2])
    return key + ref[length:]


def _is_plain(id: str) -> bool:
    return re.search(r"[\s/]", id) is None


def found_ref(key: str, taxon: str, part: str, condition: str) -> str:
    """
    Reference to one tally of a subject.

    >>> found_ref("C12", "Zea mays", "kernel", "charred"), found_ref("C12", "Rubus", "seed", "uncharred")
    ('C12/found.zea-mays.kernel', 'C12/found.rubus.seed.uncharred')
    """
    words = [_word(taxon), _word(part)] + ([] if condition == "charred" else [_word(condition)])
    return f"{key}/found." + ".".join(words)


@lru_cache(maxsize=4096)
def _word(text: str) -> str:
    return re.sub(r"[\W_]+", "-", text.lower()).strip("-") or "unnamed"
