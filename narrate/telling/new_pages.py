"""A page that is told from its beginning."""

from __future__ import annotations

from narrate.model.ids import Subject
from narrate.telling.names import Names
from narrate.telling.page import Dig, Page


def new_page(dig: Dig, subject: Subject) -> Page:
    return Page(
        dig=dig, subject=subject, position=turn_of(subject.id), names=Names(audience=dig.audience, packs=dig.packs)
    )


def turn_of(id: str) -> int:
    """
    The number by which wordings turn from one subject to the next: the digits of its id.

    Taken from the id and not from the place in a list, so that a context that is added rewords no other page.

    >>> turn_of("C12"), turn_of("S003"), turn_of("late")
    (12, 3, 422)
    """
    digits = "".join(character for character in id if character in "0123456789")
    return int(digits[-6:]) if digits else sum(ord(character) for character in id)
