"""What may be disclosed: a project from which everything restricted was taken out."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import replace

from narrate.model.narrative import Narrative
from narrate.model.project import Project
from narrate.model.sampling import Sample
from narrate.model.stratigraphy import Context


def disclosed(project: Project) -> Project:
    """
    The project as the public may know it.

    Restricted contexts, their samples, counts and photographs are gone; restricted fields of all other records are
    empty; so is every piece of prose that names a restricted context, feature or sample. A feature that only
    restricted contexts make goes with them. Nothing later can leak what is not there.
    """
    hidden = project.disclosure.restricted_contexts
    fields = project.disclosure.restricted_fields
    gone = {sample.id for sample in project.samples if sample.context in hidden}
    open_contexts = [context for context in project.contexts if context.id not in hidden]
    names = _naming(_restricted_ids(project))
    contexts = tuple(_context(context, fields, names) for context in open_contexts)
    samples = tuple(_sample(sample, fields, names) for sample in project.samples if sample.id not in gone)
    counts = tuple(
        row if not _names(names, row.note) and "note" not in fields else replace(row, note="")
        for row in project.counts
        if row.sample not in gone
    )
    return replace(
        project,
        summary=_kept(project.summary, names),
        report=_report(project.report, fields, names),
        phases=tuple(replace(phase, basis=_kept(phase.basis, names)) for phase in project.phases),
        contexts=contexts,
        samples=samples,
        counts=counts,
        disclosure=replace(project.disclosure, restricted_contexts=frozenset()),
        is_withheld_in_part=bool(hidden) or contexts != tuple(open_contexts),
    )


def disclosed_narrative(narrative: Narrative, whole: Project) -> Narrative:
    """
    A narrative without the sentences that name something restricted.

    Drafts never do, because they are made of what may be disclosed; words that the analyst wrote might, and so might
    drafts that she approved before the restriction.

    whole:  the project before anything was taken out.
    """
    if not narrative.is_edited and not narrative.approved_by:
        return narrative
    coordinates = {text for c in whole.contexts for text in c.location.values() if len(text) > 2}
    names = _naming((*_restricted_ids(whole), *coordinates))
    sections = tuple(
        replace(
            section,
            heading=_kept(section.heading, names),
            paragraphs=tuple(
                kept
                for paragraph in section.paragraphs
                if (kept := tuple(s for s in paragraph if not _names(names, s.text)))
            ),
        )
        for section in narrative.sections
    )
    return replace(narrative, sections=tuple(section for section in sections if section.paragraphs))


def _restricted_ids(project: Project) -> tuple[str, ...]:
    """Ids of restricted contexts, of their samples, and of features that only restricted contexts make."""
    hidden = project.disclosure.restricted_contexts
    samples = {sample.id for sample in project.samples if sample.context in hidden}
    open_features = {context.feature for context in project.contexts if context.id not in hidden}
    features = {c.feature for c in project.contexts if c.feature and c.feature not in open_features}
    return (*hidden, *samples, *features)


def _naming(ids: tuple[str, ...]) -> re.Pattern[str] | None:
    """A pattern that finds any of the ids as a word of its own, whatever its case."""
    if not ids:
        return None
    words = "|".join(re.escape(id) for id in sorted(ids, key=len, reverse=True))
    return re.compile(rf"(?<![\w]){'(?:' + words + ')'}(?![\w])", re.IGNORECASE)


def _names(pattern: re.Pattern[str] | None, text: str) -> bool:
    return pattern is not None and pattern.search(text) is not None


def _kept(text: str, pattern: re.Pattern[str] | None) -> str:
    return "" if _names(pattern, text) else text


def _report(report: Mapping[str, str], fields: frozenset[str], pattern: re.Pattern[str] | None) -> dict[str, str]:
    return {key: _kept(str(value), pattern) for key, value in report.items() if key not in fields}


def _context(context: Context, fields: frozenset[str], pattern: re.Pattern[str] | None) -> Context:
    return replace(
        context,
        location={},
        feature=None if "feature" in fields else context.feature,
        description="" if "description" in fields else _kept(context.description, pattern),
        note="" if "note" in fields else _kept(context.note, pattern),
        images=()
        if "images" in fields
        else tuple(i for i in context.images if not _names(pattern, f"{i.caption} {i.alt} {i.credit} {i.file}")),
    )


def _sample(sample: Sample, fields: frozenset[str], pattern: re.Pattern[str] | None) -> Sample:
    heavy = sample.heavy_fraction
    return replace(
        sample,
        note="" if "note" in fields else _kept(sample.note, pattern),
        method="" if "method" in fields else sample.method,
        heavy_fraction=replace(heavy, finds={}) if heavy and fields & {"finds", "heavy_fraction"} else heavy,
        images=()
        if "images" in fields
        else tuple(i for i in sample.images if not _names(pattern, f"{i.caption} {i.alt} {i.credit} {i.file}")),
    )
