"""Stable references: how claims, measurements, finds and records of a subject are named."""

from __future__ import annotations

import re
from collections.abc import Mapping

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

    It is the id, with '_' for white space. Where two subjects would share a word, the later one (contexts come first,
    then samples, features, phases, the site) is written 'level:id'.
    """
    keys: dict[Subject, str] = {}
    taken: set[str] = set()
    for subject in subjects(project):
        key = re.sub(r"[\s/]+", "_", subject.id)
        if key in taken:
            key = f"{subject.level}:{key}"
        while key in taken:
            key += "~"
        taken.add(key)
        keys[subject] = key
    return keys


def found_ref(key: str, taxon: str, part: str, condition: str) -> str:
    """
    Reference to one tally of a subject.

    >>> found_ref("C12", "Zea mays", "kernel", "charred"), found_ref("C12", "Rubus", "seed", "uncharred")
    ('C12/found.zea-mays.kernel', 'C12/found.rubus.seed.uncharred')
    """
    words = [_word(taxon), _word(part)] + ([] if condition == "charred" else [_word(condition)])
    return f"{key}/found." + ".".join(words)


def _word(text: str) -> str:
    return re.sub(r"[\W_]+", "-", text.lower()).strip("-") or "unnamed"
