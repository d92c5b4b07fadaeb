"""Scales of abundance that a project names in packs/words: what each sign of them means, never as a count."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from narrate.model.counts import AbundanceClass, AbundanceScale, Count
from narrate.reading.asking import Asking, Reads, refuse
from narrate.reading.count_cells import read_count
from narrate.reading.pack_files import Entry, twice
from narrate.reading.yaml_nodes import Node, Scalar


def class_ends() -> Reads:
    """The ends of a class, such as 6-20, >100 or <5; gives its lower and its upper end."""
    expected = "the ends of a class, such as 6-20, >100 or <5"

    def take(node: Node, asking: Asking, whose: str, name: str) -> tuple[int | None, int | None] | None:
        if name.isdecimal():
            help = "a number under count is a count; write another sign in the sheet, such as + or A"
            refuse(node, asking, whose, name, "a sign that is no number", help)
            return None
        found = read_count(node.text) if isinstance(node, Scalar) else None
        if isinstance(found, Count) and found.scale:
            return found.at_least, found.at_most
        refuse(node, asking, whose, name, expected)
        return None

    return Reads(expected, take)


def signs(scales: Iterable[Entry]) -> Mapping[str, AbundanceClass]:
    """Sign in lower case -> its class; a sign that two scales have is told."""
    found: dict[str, AbundanceClass] = {}
    first: dict[str, Entry] = {}
    for entry in scales:
        scale: AbundanceScale = entry.value
        for sign, (low, high) in scale.classes.items():
            flat = sign.strip().lower()
            if flat in first:
                place = first[flat].asking.place(first[flat].node)
                twice(entry, place, f"abundance scale '{scale.id}': the sign '{sign}'", "N404")
                continue
            first[flat] = entry
            found[flat] = AbundanceClass(scale=scale.id, at_least=low, at_most=high)
    return found


def by_scale(written: str, known: Mapping[str, AbundanceClass]) -> Count | None:
    """What a sign means by the project's scales; None where they do not have it."""
    meant = known.get(written.strip().lower())
    if meant is None:
        return None
    return Count(
        written=written.strip(),
        amount="noted as present",
        at_least=meant.at_least,
        at_most=meant.at_most,
        scale=meant.scale,
    )
