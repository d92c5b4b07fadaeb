"""Records, counts and the project file held against each other."""

from __future__ import annotations

from collections.abc import Callable, Collection

from narrate.model.packs import Words
from narrate.model.sampling import LARGEST_VOLUME_L, SMALLEST_VOLUME_L
from narrate.problems import Place
from narrate.reading.asking import offer, offered
from narrate.reading.checking import Checking
from narrate.reading.count_checks import no_row_is_given_twice, samples_and_counts_meet
from narrate.reading.order import natural
from narrate.reading.public_checks import pictures_are_there, public_text_names_nothing_restricted
from narrate.reading.records import Records

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
        if context.phase is None or context.phase in phases:
            continue
        if checking.project_file.has_unread_phases:
            checking.unread_phases.append(context.phase)
            continue
        meant = checking.near(context.phase, phases)
        checking.error(
            checking.records.at("context", context.id, "phase"),
            "N205",
            f"context '{context.id}': phase '{context.phase}' is none of the project's{offered(meant)}"
            + checking.sheet_says.of_context(context.id, "phase"),
            offer(meant, phases, "add the phase to project.yaml"),
        )


def samples_have_known_contexts(checking: Checking) -> None:
    known = sorted(checking.records.context_ids)
    for sample in checking.records.samples.values():
        if sample.context in checking.records.context_ids:
            continue
        if checking.records.unread["context"]:
            checking.unread_contexts.append(sample.context)
            continue
        meant = checking.near(sample.context, known)
        checking.error(
            checking.records.at("sample", sample.id, "context"),
            "N205",
            f"sample '{sample.id}': context '{sample.context}' is described by no record{offered(meant)}"
            + checking.sheet_says.of_sample(sample.id, "context"),
            offer(meant, known, "describe the context in records/"),
        )


def restricted_contexts_are_known(checking: Checking) -> None:
    """An error: with a slip in the id the context that is meant would be made public."""
    known = sorted(checking.records.context_ids)
    for id, place in checking.project_file.restricted_at.items():
        if id in checking.records.context_ids:
            continue
        if checking.records.unread["context"]:
            checking.unread_contexts.append(id)
            continue
        meant = checking.near(id, known)
        checking.error(
            place,
            "N205",
            f"project, disclosure: restricted context '{id}' is described by no record{offered(meant)}",
            offer(meant, known, "take it out of the list"),
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
                f"sample '{sample.id}' has no volume_l, expected litres of sediment; without it there is no density"
                + checking.sheet_says.of_sample(sample.id, "volume"),
                "add 'volume_l: …' if it was measured",
            )
        elif not SMALLEST_VOLUME_L <= sample.volume_l <= LARGEST_VOLUME_L:
            checking.warning(
                checking.records.at("sample", sample.id, "volume_l"),
                "N207",
                f"sample '{sample.id}': volume_l is {sample.volume_l:g}, expected between {SMALLEST_VOLUME_L:g} and "
                f"{LARGEST_VOLUME_L:g} litres" + checking.sheet_says.of_sample(sample.id, "volume"),
                "millilitres are divided by 1000 to give litres",
            )


def recovery_is_possible(checking: Checking) -> None:
    for sample in checking.records.samples.values():
        test = sample.recovery_test
        if test is not None and test.recovered > test.added:
            checking.error(
                checking.records.at("sample", sample.id, "recovery_test", "recovered"),
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
                    checking.records.repeated_class_at(sample.id, name),
                    "N204",
                    f"sample '{sample.id}': size class '{name}' is given {names.count(name)} times, expected once"
                    + checking.sheet_says.of_sample(sample.id, "size class"),
                    "give each size class its own name",
                )


_DESCRIBED = ("is described", "are described")


def what_was_held_back_is_told(checking: Checking) -> None:
    """Once for the records, for the sheets and for the project file, whatever the number of rows."""
    unread, records = checking.unread, checking.records
    _held_back(
        checking,
        [place for place in (*records.unread["sample"], *records.unread["context"]) if place.path != "records"],
        "record file",
        [
            ("sample", "of count sheets", _DESCRIBED, unread.undescribed),
            ("context", "of samples and of the project file", _DESCRIBED, checking.unread_contexts),
        ],
    )
    sheets = [Place(path=path) for path in sorted(unread.sheets)]
    _held_back(checking, sheets, "sheet", [("sample", "of records", ("has rows", "have rows"), checking.unread_rows)])
    _held_back(
        checking,
        [Place(path=checking.project_file.place.path)],
        "project file",
        [
            ("phase", "of contexts", ("is one of the project's", "are some of the project's"), checking.unread_phases),
            ("name", "of count sheets", ("is in a taxon pack in use", "are in a taxon pack in use"), unread.names),
        ],
    )


def _held_back(
    checking: Checking,
    places: list[Place],
    what: str,
    names: list[tuple[str, str, tuple[str, str], Collection[str]]],
) -> None:
    """names:  what is named, where, what was not checked of one or of several, and the names."""
    parts = []
    for one, where, checked, found in names:
        if found:
            verb = checked[0 if len(set(found)) == 1 else 1]
            parts.append(f"whether {counted(found, one)} {where} ({listed_ids(found)}) {verb}")
    if not parts or not places:
        return
    first = min(places)
    others = len({place.path for place in places}) - 1
    more = f", and {others} more {'file' if others == 1 else 'files'}" if others else ""
    checking.warning(
        Place(path=first.path, line=first.line) if first.line else first,
        "N113",
        f"because of what is wrong in this {what}{more}, it was not checked {' and '.join(parts)}",
        "mend that first, then check again",
    )


def counted(names: Collection[str], one: str) -> str:
    number = len(set(names))
    return f"{number} {one}{'' if number == 1 else 's'}"


def listed_ids(names: Collection[str], at_most: int = 5) -> str:
    """
    Ids in quotes, in natural order; of many the first and how many more.

    >>> listed_ids(["S10", "S2"]), listed_ids(["a", "b", "c"], 2)
    ("'S2', 'S10'", "'a', 'b' and 1 more")
    """
    ids = sorted(set(names), key=natural)
    left = len(ids) - at_most
    return ", ".join(f"'{id}'" for id in ids[:at_most]) + (f" and {left} more" if left > 0 else "")


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
    what_was_held_back_is_told,
)
"""All checks, in the order in which they are made."""
