"""The modern roots, worms and burrows of a deposit: what was seen of them and how much, not what might have been."""

from __future__ import annotations

from narrate.model.claims import Argument
from narrate.model.work_left import samples_of
from narrate.telling import english
from narrate.telling.page import Page

TOLD = ("many", "some")
"""Amounts that are told; a few of a kind lie in most soils."""


def intrusions_named(page: Page, argument: Argument) -> str:
    """
    'many modern rootlets and worm casts, and some insects, were noted', the most that any sample of the subject has.

    Empty where the argument is of something else, or the page is of more than one deposit.
    """
    if page.is_plain or page.subject.level not in ("sample", "context", "feature"):
        return ""
    if not any(entry.measure.split(".")[0] == "intrusions" for entry in argument.evidence):
        return ""
    most: dict[str, str] = {}
    for sample in samples_of(page.dig.project, page.subject):
        for kind, amount in sample.modern_intrusions.items():
            if amount in TOLD and (kind not in most or TOLD.index(amount) < TOLD.index(most[kind])):
                most[kind] = amount
    parts: list[str] = []
    for amount in TOLD:
        kinds = [english.literal(kind.replace("_", " ")) for kind, of in most.items() if of == amount]
        if kinds:
            parts.append(f"{amount}{'' if parts else ' modern'} {page.listed(kinds)}")
    return f"{', and '.join(parts)}{',' if len(parts) > 1 else ''} were noted" if parts else ""
