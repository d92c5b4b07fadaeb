"""Records, counts and the project file held against each other."""

from __future__ import annotations

from collections.abc import Callable

from narrate.model.packs import Words
from narrate.reading.asking import offered
from narrate.reading.checking import Checking
from narrate.reading.count_checks import no_row_is_given_twice, samples_and_counts_meet
from narrate.reading.public_checks import pictures_are_there, public_text_names_nothing_restricted
from narrate.reading.records import Records

SMALLEST_VOLUME_L, LARGEST_VOLUME_L = 0.05, 1000.0
"""Flotation samples outside this range are probably in another unit. Common practice, no source."""
BURIAL = "burial"
"""The trait of kinds of context that are always restricted."""


def cross_check(checking: Checking) -> None:
    """Tells everything that no single file can show."""
    for check in CHECKS:
        check(checking)


def burials(records: Records, words: Words) -> frozenset[str]:
    """Contexts of a kind whose word says burial: restricted, whether the project file names them or not."""
    kinds = {kind.id for kind in words.context_kinds.values() if BURIAL in kind.traits}
    return frozenset(context.id for context in records.contexts.values() if context.kind in kinds)


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
        if sample.context not in known and not checking.records.has_unread:
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
        if id not in known and not checking.records.has_unread:
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
        if sample.volume_l is None and sample.id in checking.records.faulty:
            continue
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
