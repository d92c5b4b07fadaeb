"""What may be disclosed: a project from which everything restricted was taken out."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace

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
    names = Guard.of(project)
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
        report_blocks=tuple(
            replace(block, title=_kept(block.title, names), text=_kept(block.text, names))
            for block in project.report_blocks
        ),
        report_checklist=tuple(item for item in project.report_checklist if not _names(names, item.asks)),
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
    names = Guard.of(whole)
    summary = narrative.summary
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
    return replace(
        narrative,
        summary=None if summary is not None and _names(names, summary.text) else summary,
        sections=tuple(section for section in sections if section.paragraphs),
    )


def _naming(ids: Iterable[str]) -> re.Pattern[str] | None:
    """A pattern that finds any of the ids as a word of its own, whatever its case."""
    if not ids:
        return None
    words = "|".join(re.escape(id) for id in sorted(ids, key=len, reverse=True))
    return re.compile(rf"(?<![\w]){'(?:' + words + ')'}(?![\w])", re.IGNORECASE)


@dataclass(frozen=True, slots=True, kw_only=True)
class Guard:
    """Knows a text that names something restricted: an id, or a place in any of the usual notations."""

    words: re.Pattern[str] | None
    wholes: frozenset[str]
    """Digits of whole metres (or feet) of four figures and more, and their last five, as grid references write them."""
    decimals: frozenset[tuple[str, str]]
    """Whole degrees with three decimals."""
    minutes: frozenset[tuple[int, int]]
    """Degrees and whole minutes."""

    @staticmethod
    def of(project: Project) -> Guard:
        """What must not be named of a project, before anything was taken out of it."""
        written = {text.strip() for context in project.contexts for text in context.location.values()}
        numbers = [found for text in written if (found := _NUMBER.fullmatch(text))]
        spoken = {text for text in written if not _NUMBER.fullmatch(text) and len(text) > 2}
        grid = {number[1] for number in numbers if len(number[1]) >= 4}
        degrees = [number for number in numbers if len(number[1]) < 4 and len(number[2] or "") >= 3]
        return Guard(
            words=_naming({*project.restricted_ids(), *spoken}),
            wholes=frozenset(grid | {whole[-5:] for whole in grid if len(whole) >= 6}),
            decimals=frozenset((number[1], number[2][:3]) for number in degrees),
            minutes=frozenset((int(number[1]), int(float(f"0.{number[2]}") * 60)) for number in degrees),
        )

    def names(self, text: str) -> bool:
        if not text:
            return False
        if self.words is not None and self.words.search(text):
            return True
        return self._tells_a_place(text)

    def _tells_a_place(self, text: str) -> bool:
        if self.minutes and any((int(d), int(m)) in self.minutes for d, m in _DEGREES.findall(text)):
            return True
        for run in _RUN.findall(text):
            pieces = re.split(r"[\s\u00a0\u202f'’]+", run)
            for start in range(len(pieces)):
                # Figures may be set in groups, '512 345', or stand side by side, '512345 4312345'.
                if any(
                    self._is_place("".join(pieces[start:end]))
                    for end in range(start + 1, min(start + 4, len(pieces)) + 1)
                ):
                    return True
        return False

    def _is_place(self, figures: str) -> bool:
        whole, _, part = figures.replace(",", ".").partition(".")
        grouped = {re.sub(r"[.,]", "", text) for text in (figures, re.sub(r"[.,]\d*$", "", figures))}
        return whole in self.wholes or bool(grouped & self.wholes) or (whole, part[:3]) in self.decimals


_NUMBER = re.compile(r"[-+−]?(\d+)(?:[.,](\d+))?")
_DEGREES = re.compile(r"(\d{1,3})\s*(?:°|º|deg(?:rees)?\.?)\s*(\d{1,2})", re.IGNORECASE)
_RUN = re.compile(r"\d[\d\s.,'’\u00a0\u202f]*\d|\d")


def _names(guard: Guard, text: str) -> bool:
    return guard.names(text)


def _kept(text: str, guard: Guard) -> str:
    return "" if _names(guard, text) else text


def _report(report: Mapping[str, str], fields: frozenset[str], guard: Guard) -> dict[str, str]:
    return {key: _kept(str(value), guard) for key, value in report.items() if key not in fields}


def _context(context: Context, fields: frozenset[str], guard: Guard) -> Context:
    return replace(
        context,
        location={},
        feature=None if "feature" in fields else context.feature,
        description="" if "description" in fields else _kept(context.description, guard),
        note="" if "note" in fields else _kept(context.note, guard),
        images=()
        if "images" in fields
        else tuple(i for i in context.images if not _names(guard, f"{i.caption} {i.alt} {i.credit} {i.file}")),
    )


def _sample(sample: Sample, fields: frozenset[str], guard: Guard) -> Sample:
    heavy = sample.heavy_fraction
    return replace(
        sample,
        note="" if "note" in fields else _kept(sample.note, guard),
        method="" if "method" in fields else sample.method,
        heavy_fraction=replace(heavy, finds={}) if heavy and fields & {"finds", "heavy_fraction"} else heavy,
        images=()
        if "images" in fields
        else tuple(i for i in sample.images if not _names(guard, f"{i.caption} {i.alt} {i.credit} {i.file}")),
    )
