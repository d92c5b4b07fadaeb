"""A change in counts in words: 'two more maize kernels', 'one more hazel nutshell in a third sample'."""

from __future__ import annotations

from collections.abc import Mapping

from narrate.measures.count_table import Kind
from narrate.model.packs import Packs

_WORDS = ("no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve")
_ORDINALS = ("", "first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth", "tenth")
_NAMED = 3
"""Samples that are named at most; more are told as a number."""


def said(kind: Kind, items: int, packs: Packs) -> str:
    """
    The change in words: 'two more maize kernels', 'one fewer cf. goosefoot seed', 'six more pieces of oak wood'.

    Plants without a name of their own are called as the analyst wrote them.
    """
    taxon = packs.taxa.get(kind.taxon) if kind.taxon is not None else None
    name = (taxon.trade_name or taxon.name or taxon.id) if taxon is not None else "/".join(kind.either) or kind.written
    doubt = "" if kind.is_certain or kind.either else "cf. "
    state = "" if kind.condition == "charred" else f"{kind.condition} "
    count = abs(items)
    part = packs.words.parts.get(kind.part)  # type: ignore[call-overload]
    noun = kind.part if count == 1 or part is None else part.plural
    pieces = ""
    if part is not None and part.plural == part.id:
        pieces = "piece of " if count == 1 else "pieces of "
    return f"{number_word(count)} {'more' if items > 0 else 'fewer'} {pieces}{state}{doubt}{name} {noun}"


def where(changes: Mapping[str, tuple[int, bool]], samples_with: int) -> str:
    """
    Where the change lies, to follow what is changed.

    changes:       by sample: items more or fewer, and whether it held none before or holds none now.
    samples_with:  samples that held the thing before.

    >>> where({"S3": (1, True)}, 2), where({"S3": (1, True)}, 0)
    (' in a third sample', '')
    >>> where({"S3": (1, True), "S4": (1, True)}, 1), where({"S1": (2, False), "S4": (1, True)}, 1)
    (', one each in two further samples', ', one of them in a second sample')
    >>> where({"S3": (-2, True)}, 2), where({"S3": (-1, True), "S4": (-1, True)}, 2)
    (', so that S3 holds none', ', so that S3 and S4 hold none')
    >>> where({"S3": (-2, False)}, 2)
    ', from the samples that hold fewest'
    """
    told = [sample for sample, (_, is_turned) in changes.items() if is_turned]
    items = sum(items for items, _ in changes.values())
    if items < 0:
        if not told:
            return ", from the samples that hold fewest"
        return f", so that {_names(told)} {'holds' if len(told) == 1 else 'hold'} none"
    if len(told) == 1:
        if len(changes) == 1 and not samples_with:
            return ""
        place = f"in a {_ordinal(samples_with + 1)} sample"
        return f" {place}" if items == 1 else f", one of them {place}"
    further = "further " if samples_with else ""
    each = "one each" if items == len(told) else f"{number_word(len(told))} of them one each"
    return f", {each} in {number_word(len(told))} {further}samples"


def number_word(items: int) -> str:
    """
    >>> number_word(2), number_word(12), number_word(13)
    ('two', 'twelve', '13')
    """
    return _WORDS[items] if items < len(_WORDS) else str(items)


def _ordinal(place: int) -> str:
    return _ORDINALS[place] if place < len(_ORDINALS) else "further"


def _names(samples: list[str]) -> str:
    if len(samples) > _NAMED:
        return f"{number_word(len(samples))} samples"
    return samples[0] if len(samples) == 1 else f"{', '.join(samples[:-1])} and {samples[-1]}"
