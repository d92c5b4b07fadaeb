"""Records, counts and the project file held against each other."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path

from narrate.model.counts import CountRow
from narrate.model.images import Image
from narrate.model.packs import Words
from narrate.model.project import Project
from narrate.model.sampling import Sample
from narrate.problems import Place, ProblemList
from narrate.reading.fields import NEAR_MATCHES, near, offered
from narrate.reading.project_file import ProjectFile
from narrate.reading.records import Records
from narrate.reading.source_text import SourceText

SMALLEST_VOLUME_L, LARGEST_VOLUME_L = 0.05, 1000.0
"""Flotation samples outside this range are probably in another unit. Common practice, no source."""
KEPT_PROBLEMS = 10_000
BURIAL = "burial"
"""The trait of kinds of context that are always restricted."""


@dataclass(slots=True, kw_only=True)
class Checking:
    """What the checks look at, and where they tell what they find."""

    root: Path
    project_file: ProjectFile
    project: Project
    records: Records
    words: Words
    sources: Mapping[str, SourceText]
    problems: ProblemList
    near_left: int = NEAR_MATCHES

    def near(self, word: str, known: Sequence[str]) -> str:
        if self.near_left <= 0:
            return ""
        self.near_left -= 1
        return near(word, known, 0.7)

    def error(self, place: Place, code: str, message: str, help: str = "", about: str = "") -> None:
        excerpt, width = self._shown(place, about)
        self.problems.error(self._at(place, excerpt, about), code, message, help=help, excerpt=excerpt, width=width)

    def warning(self, place: Place, code: str, message: str, help: str = "", about: str = "") -> None:
        excerpt, width = self._shown(place, about)
        self.problems.warning(self._at(place, excerpt, about), code, message, help=help, excerpt=excerpt, width=width)

    def _shown(self, place: Place, about: str) -> tuple[str, int]:
        source = self.sources.get(place.path)
        excerpt = source.line(place.line).rstrip()[:160] if source else ""
        return excerpt, max(1, len(about)) if about in excerpt else 1

    def _at(self, place: Place, excerpt: str, about: str) -> Place:
        """The place, with the column of what the problem is about if it stands in that line."""
        if about and about in excerpt:
            return Place(path=place.path, line=place.line, column=excerpt.index(about) + 1)
        return place


def cross_check(checking: Checking) -> None:
    """Tells everything that no single file can show."""
    for check in CHECKS:
        check(checking)


def burials(records: Records, words: Words) -> frozenset[str]:
    """Contexts of a kind whose word says burial: restricted, whether the project file names them or not."""
    kinds = {kind.id for kind in words.context_kinds.values() if BURIAL in kind.traits}
    return frozenset(context.id for context in records.contexts.values() if context.kind in kinds)


# ---- records among themselves


def contexts_have_known_phases(checking: Checking) -> None:
    phases = [phase.id for phase in checking.project_file.phases]
    for context in checking.records.contexts.values():
        if context.phase is not None and context.phase not in phases:
            meant = checking.near(context.phase, phases)
            checking.error(
                context.place,
                "N205",
                f"context '{context.id}': phase '{context.phase}' is none of the project's{offered(meant)}",
                f"write '{meant}'" if meant else "add the phase to project.yaml, or mend its id here",
                context.phase,
            )


def samples_have_known_contexts(checking: Checking) -> None:
    known = checking.records.context_ids
    for sample in checking.records.samples.values():
        if sample.context not in known:
            meant = checking.near(sample.context, sorted(known))
            checking.error(
                sample.place,
                "N205",
                f"sample '{sample.id}': context '{sample.context}' is described by no record{offered(meant)}",
                f"write '{meant}'" if meant else "describe the context in records/, or mend its id here",
                sample.context,
            )


def restricted_contexts_are_known(checking: Checking) -> None:
    """An error: with a slip in the id the context that is meant would be made public."""
    known = checking.records.context_ids
    for id, place in checking.project_file.restricted_at.items():
        if id not in known:
            meant = checking.near(id, sorted(known))
            checking.error(
                place,
                "N205",
                f"project, disclosure: restricted context '{id}' is described by no record{offered(meant)}",
                f"write '{meant}'" if meant else "mend the id, or take it out of the list",
                id,
            )


def volumes_are_plausible(checking: Checking) -> None:
    for sample in checking.records.samples.values():
        if sample.volume_l is None:
            checking.warning(
                sample.place,
                "N207",
                f"sample '{sample.id}' has no volume_l, expected litres of sediment; without it there is no density",
                "add 'volume_l: …' if it was measured",
            )
        elif not SMALLEST_VOLUME_L <= sample.volume_l <= LARGEST_VOLUME_L:
            checking.warning(
                sample.place,
                "N207",
                f"sample '{sample.id}': volume_l is {sample.volume_l:g}, expected between {SMALLEST_VOLUME_L:g} and "
                f"{LARGEST_VOLUME_L:g} litres",
                "millilitres are divided by 1000 to give litres",
            )


def recovery_is_possible(checking: Checking) -> None:
    for sample in checking.records.samples.values():
        test = sample.recovery_test
        if test is not None and test.recovered > test.added:
            checking.error(
                sample.place,
                "N208",
                f"sample '{sample.id}', recovery_test: recovered is {test.recovered}, expected at most the "
                f"{test.added} that were added",
                "exchange the two if they were mixed up",
            )


def size_classes_have_different_names(checking: Checking) -> None:
    for sample in checking.records.samples.values():
        names = [known.name for known in sample.size_classes]
        for name in dict.fromkeys(names):
            if names.count(name) > 1:
                checking.error(
                    sample.place,
                    "N204",
                    f"sample '{sample.id}': size class '{name}' is given {names.count(name)} times, expected once",
                    "give each size class its own name",
                )


# ---- counts


def samples_and_counts_meet(checking: Checking) -> None:
    rows_of: dict[str, int] = {}
    found_in: dict[str, CountRow] = {}
    for row in checking.project.counts:
        rows_of[row.sample] = rows_of.get(row.sample, 0) + 1
        if row.count.amount in ("counted", "noted as present", "weighed only"):
            found_in.setdefault(row.sample, row)
    named = {row.sample for row in checking.project.counts}
    for sample in checking.records.samples.values():
        if sample.sterile and sample.id in found_in:
            checking.error(
                sample.place,
                "N203",
                f"sample '{sample.id}': sterile is true, and {found_in[sample.id].place.row} has something in it, "
                "expected one or the other",
                "delete 'sterile: true', or mend the sample's id in the count sheet",
            )
        elif not sample.sterile and sample.id not in named:
            _without_rows(checking, sample)


def _without_rows(checking: Checking, sample: Sample) -> None:
    checking.warning(
        sample.place,
        "N206",
        f"sample '{sample.id}' has no rows in any count sheet; it counts as a sample in which nothing was found",
        "add 'sterile: true' if it was looked through and nothing found; else leave it out until it is sorted",
    )


def no_row_is_given_twice(checking: Checking) -> None:
    """
    Rows of one sample with the same taxon, part, condition, completeness, size class and fraction.

    A row with a number and one with a mass alone may stand beside each other: they say different things.
    """
    first: dict[tuple[str, ...], CountRow] = {}
    told = 0
    for row in checking.project.counts:
        name = row.identification
        key = (
            row.sample,
            name.taxon or name.written.lower(),
            "" if name.qualifier in ("sp.", "spp.", "indet.") else name.qualifier,
            row.part,
            row.condition,
            row.completeness,
            row.size_class,
            row.fraction,
        )
        before = first.setdefault(key, row)
        if before is row or _say_different_things(before, row):
            continue
        told += 1
        if told <= KEPT_PROBLEMS:
            _twice(checking, before, row)
    if told > KEPT_PROBLEMS:
        checking.error(
            checking.project.counts[-1].place,
            "N305",
            f"{told - KEPT_PROBLEMS} more rows are given twice and not listed, expected each row once",
            "mend those that are listed first; a sheet that was copied whole gives one for every row",
        )


def _say_different_things(one: CountRow, other: CountRow) -> bool:
    weighed = [row.count.amount == "weighed only" for row in (one, other)]
    return weighed[0] != weighed[1] and (one.mass_g is None or other.mass_g is None)


def _twice(checking: Checking, before: CountRow, row: CountRow) -> None:
    checking.error(
        row.place,
        "N305",
        f"sample '{row.sample}': {row.identification.written}, {row.part}, {row.condition}, {row.completeness} is given "
        f"twice, first in {before.place.row}, expected one row",
        "add the two together if they are parts of one count, or delete one; tell them apart by size_class or fraction",
    )


# ---- pictures


def pictures_are_there(checking: Checking) -> None:
    for whose, image in _images(checking):
        _check_picture(checking, whose, image)


def _images(checking: Checking) -> Iterator[tuple[str, Image]]:
    for what, records in (("context", checking.records.contexts), ("sample", checking.records.samples)):
        for record in records.values():  # type: ignore[attr-defined]
            for image in record.images:
                yield f"{what} '{record.id}', image '{image.file}'", image


def _check_picture(checking: Checking, whose: str, image: Image) -> None:
    root = checking.root.resolve()
    try:
        path = (root / image.file).resolve()
        is_inside, is_there = path.is_relative_to(root), path.is_file()
    except (OSError, ValueError, RuntimeError):
        is_inside, is_there = True, False
    if not is_inside:
        checking.error(
            image.place,
            "N106",
            f"{whose} lies outside the project folder, expected a file inside it",
            "copy the picture into images/",
            image.file,
        )
    elif not is_there:
        checking.warning(
            image.place,
            "N209",
            f"{whose} is not there, expected a picture",
            "paths begin at the project folder, such as images/c12.jpg",
            image.file,
        )
    lacking = [name for name in ("caption", "credit", "alt") if not getattr(image, name)]
    if lacking:
        checking.warning(
            image.place,
            "N209",
            f"{whose} has no {' and no '.join(lacking)}, expected caption, credit and alt",
            "alt says in words what is to be seen, for those who cannot see it",
            image.file,
        )


# ---- what would be public


def public_text_names_nothing_restricted(checking: Checking) -> None:
    """The title cannot be left out, so there it is an error; other texts are left out, so that a warning will do."""
    hidden = checking.project.disclosure.restricted_contexts
    gone = [sample.id for sample in checking.records.samples.values() if sample.context in hidden]
    if not hidden:
        return
    words = "|".join(re.escape(id) for id in sorted((*hidden, *gone), key=len, reverse=True))
    pattern = re.compile(rf"(?<!\w)(?:{words})(?!\w)", re.IGNORECASE)
    title = pattern.search(checking.project.title)
    if title:
        checking.error(
            checking.project.place,
            "N210",
            f"project: title names '{title[0]}', which is restricted, and a title is always public",
            "take the id out of the title",
        )
    for place, whose, text in _public_texts(checking):
        match = pattern.search(text)
        if match:
            checking.warning(
                place,
                "N210",
                f"{whose} names '{match[0]}', which is restricted; the whole text is left out of public outputs",
                "take the id out of the text if the rest may be public",
            )


def _public_texts(checking: Checking) -> Iterator[tuple[Place, str, str]]:
    project, hidden = checking.project, checking.project.disclosure.restricted_contexts
    yield project.place, "project: summary", project.summary
    for key, text in project.report.items():
        yield project.place, f"project, report: {key}", text
    for phase in project.phases:
        yield phase.place, f"phase '{phase.id}': name", phase.name
        yield phase.place, f"phase '{phase.id}': basis", phase.basis
    for context in project.contexts:
        if context.id not in hidden:
            yield context.place, f"context '{context.id}': description", context.description
            yield context.place, f"context '{context.id}': note", context.note
            for image in context.images:
                yield image.place, f"context '{context.id}': image", f"{image.file} {image.caption} {image.credit} {image.alt}"
    gone = set()
    for sample in project.samples:
        if sample.context in hidden:
            gone.add(sample.id)
            continue
        yield sample.place, f"sample '{sample.id}': note", sample.note
        for image in sample.images:
            yield image.place, f"sample '{sample.id}': image", f"{image.file} {image.caption} {image.credit} {image.alt}"
    for row in project.counts:
        if row.note and row.sample not in gone:
            yield row.place, f"row of sample '{row.sample}': note", row.note


CHECKS: tuple[Callable[[Checking], None], ...] = (
    contexts_have_known_phases,
    samples_have_known_contexts,
    restricted_contexts_are_known,
    volumes_are_plausible,
    recovery_is_possible,
    size_classes_have_different_names,
    samples_and_counts_meet,
    no_row_is_given_twice,
    pictures_are_there,
    public_text_names_nothing_restricted,
)
"""All checks, in the order in which they are made."""
