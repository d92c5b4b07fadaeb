"""What a row of headings is by the words in it, where nothing labels it: sizes, parts, conditions, phases, features."""

# ruff: noqa: E501

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Sequence

from narrate.model.layouts import Role
from narrate.reading.intake.evidence import Look
from narrate.reading.intake.fractions_of_flots import fraction_of
from narrate.reading.intake.header_words import flat_heading, heading, quantity
from narrate.reading.intake.kind_words_abroad import kind_of
from narrate.reading.intake.least_numbers import is_least_number
from narrate.reading.intake.shares_in_heads import size_and_share
from narrate.reading.intake.subset_words import is_subset

_PHASE_WORDS = re.compile(
    r"\b(?:phase|period|century|cent|early|middle|late|bc|ad|bce|ce|bp|roman|medieval|saxon|norman|modern|neolithic|bronze|iron|mesolithic|"
    r"prehistoric|woodland|mississippian|archaic|historic|viking|byzantine|islamic|[eml](?:ba|ia)|lbk|ppn[abc]?|c\d\d?|\d+(?:st|nd|rd|th)"
    r"|si[eè]cles?|moyen[ -][âa]ges?|antiquit[ée]|néolithique|protohistoire|gallo-romain|jh|jahrhundert|mittelalter|neuzeit|\w{4,}zeit|siglo|secolo|sec|eeuw|middeleeuw\w*"
    r"|[IVX]+(?:er|e|ème|º|°)?(?:[ -]+[IVX]+(?:er|e|ème|º|°)?)? s)\b",
    re.IGNORECASE,
)
COMPLETE = (
    "whole", "fragment", "fragments", "frag", "frags", "w", "f", "complete", "broken", "fr", "frg", "fragm",
    "ent", "int", "entero", "enteros", "entera", "enteras", "fragmento", "fragmentos",
    "entier", "entiers", "entière", "entières", "intero", "interi", "intera", "intere", "frammento", "frammenti",
    "inteiro", "inteiros", "ganz", "bruch", "bruchstück", "bruchstücke", "fragmente", "heel", "hele", "fragmenten",
    "framm", "zlomek", "zlomky", "celé", "celý", "töredék", "egész", "kırık", "tam", "bütün", "ułamki", "całe", "fragmenter", "hel", "hela",
)  # fmt: skip
CERTAINTY = ("cf", "certain", "cert", "sure", "definite", "secure", "identified", "id", "det")
"""Small headings of pairs of columns for sure names and for doubtful ones."""
SIZES = re.compile(
    r"[<>≤≥]?\s*\d+(?:[.,]\d+)?\s*(?:[-–]\s*\d+(?:[.,]\d+)?)?\s*(?:mm|µm|um)|[<>≤≥]\s*\d+(?:[.,]\d+)?", re.IGNORECASE
)
_MESHES = frozenset(
    "0.1 0.125 0.15 0.18 0.2 0.25 0.3 0.315 0.35 0.355 0.4 0.425 0.5 0.6 0.63 0.7 0.71 0.8 0.85 1 1.18 1.25 1.4 1.5 1.6 1.7 2 2.36 2.5 2.8 "
    "3.15 3.35 4 4.75 5 5.6 6 6.3 8 10 12.5 16".split()
)
"""Openings of sieves in use, in millimetres. Common practice, no source."""


def are_meshes(texts: Sequence[str]) -> bool:
    """
    Whether bare numbers are openings of sieves: some above 1, which no share is, and some below, which no code is.

    >>> are_meshes(["2.0", "1.0", "0.5"]), are_meshes([">4", "2-4", "1-2"]), are_meshes(["1", "0.5"]), are_meshes(["1", "2", "3"])
    (True, True, False, False)
    """
    matches = [re.fullmatch(r"([<>≤≥]?)\s*(\d+(?:[.,]\d+)?)\s*(?:[-–]\s*(\d+(?:[.,]\d+)?))?", text.strip()) for text in texts]
    bare = {f"{float(n.replace(',', '.')):g}" for match in matches if match for n in match.groups()[1:] if n}
    if not all(matches) or not bare or not bare <= _MESHES:
        return False
    is_told = any(match[1] or match[3] for match in matches if match)
    return is_told or (any(float(n) > 1 for n in bare) and any(float(n) < 1 for n in bare))


_FRACTIONS = (
    "light",
    "heavy",
    "light fraction",
    "heavy fraction",
    "lf",
    "hf",
    "flot",
    "residue",
    "float",
    "light fr",
    "heavy fr",
)


SHORT_CONDITIONS = ("C", "U", "UN", "UC", "CH", "UNCH", "UNC", "CHAR", "UNCHAR")
"""Short forms that stand for conditions where they stand beside each other alone in a row."""


def content_role(texts: list[str], look: Look) -> str:
    """What a row of headings is by the words in it: sizes, parts, conditions, n and g; empty for none of them."""
    if not texts:
        return ""
    names = look.names
    words = names.packs.words
    n = len(texts)
    several = len(set(texts))
    flat_texts = {flat_heading(t) for t in texts}
    if are_quantities_and_states(texts, look):
        return "quantity"
    all_kinds = all(kind_of(t, words) for t in texts)
    tests = (
        (
            "volume",
            1.0,
            lambda t: bool(
                re.fullmatch(r"\(?\d+(?:[.,]\d+)? ?(?:l|lt|ltrs?|lit(?:re|er)s?)\.?\)?", t, re.IGNORECASE)
            ),
        ),
        ("condition", 1.0, lambda t: t.strip(" ().?") in names.short.conditions),
        ("part", 0.8, lambda t: t.strip(" ().?") in names.short.parts),
        ("completeness", 1.0, lambda t: t in names.short.completeness),
        ("quantity", 0.6, lambda t: (_is_of_amounts(t) or heading(t) == "density") and t not in ("w", "f")),
        ("cf", 1.0, lambda t: "cf" in flat_texts and flat_heading(t) in CERTAINTY),
        ("condition", 1.0, lambda t: several > 1 and says_state(t, look)),
        ("size class", 0.6, lambda t: bool(SIZES.fullmatch(size_and_share(t)[0]))),
        ("completeness", 0.6, lambda t: flat_heading(t) in COMPLETE),
        ("fraction", 0.6, lambda t: flat_heading(t) in _FRACTIONS or bool(fraction_of(t)) or t.strip(" ().") in names.short.fractions),
        ("condition", 0.6, lambda t: len(t) > 2 and bool(names.condition_of(t))),
        # 'pit' down a column says what was dug, and is no stone of a fruit
        ("part", 0.6, lambda t: len(t) > 2 and bool(names.part_of(t)) and not (all_kinds and kind_of(t, words))),
        ("kind", 0.5, lambda t: bool(kind_of(t, words))),
    )
    is_answer = flat_texts <= {"n", "y", "yes", "no", "j", "s"}  # 'N' beside 'Y' is no number
    for role, share, is_one in tests:
        if role == "quantity" and is_answer and flat_texts != {"n"}:
            continue
        if sum(is_one(t) for t in texts) >= share * n:
            return role
    lettered = [re.sub(r"[\s.#]*(?:\d+|[IVX]+|[A-Z])[a-z]?$", "", t) for t in texts]
    if n > 1 and sum(heading(t) == "site" for t in lettered) >= 0.6 * n:
        return "site"
    worded = Counter(
        heading(re.sub(r"[\s.#]*(?:\d+|[IVX]+)[a-z]?$", "", t)) for t in texts if re.search(r"(?:\d+|[IVX]+)[a-z]?$", t)
    )
    for role in ("sample", "phase", "site", "feature", "context"):
        if worded[role] >= 0.6 * n:
            return role
    bases = [re.sub(r"[\s.#]*(?:\d+|[IVX]+|[A-Z])[a-z]?$", "", t) for t in texts if re.search(r"\d", t)]
    if len(bases) >= 0.6 * n and len(set(bases)) > 1:
        known = [heading(t) in ("feature", "context") or bool(kind_of(t, words)) for t in bases]
        if sum(known) >= 0.6 * n:
            return "feature"  # 'Pit 12', 'Hearth 3', 'Oven 1'
    if len(set(texts)) < n and all(re.fullmatch(r"F(?:ea(?:t(?:ure)?)?)?\.? ?#?\d+[A-Za-z]?", t) for t in texts):
        return "feature"  # 'F. 12' over two samples
    if n > 1 and all(_PHASE_WORDS.search(t) for t in texts):
        return "phase"
    repeated = Counter(texts).most_common(1)[0][1]
    if repeated > 1 and sum(bool(_PHASE_WORDS.search(t)) for t in texts) >= 0.6 * n and len(set(texts)) < 0.7 * n:
        return "phase"
    return ""


def _is_of_amounts(text: str) -> bool:
    return bool(quantity(text)) or is_least_number(text) or is_subset(text)


def are_quantities_and_states(texts: list[str], look: Look) -> bool:
    """Whether small headings say n or g under some names and charred or uncharred under others, and nothing else."""
    counted = [bool(quantity(t)) and not says_state(t, look) for t in texts]
    states = [says_state(t, look) for t in texts]
    return any(counted) and any(states) and all(a or b for a, b in zip(counted, states, strict=True))


def are_quantities_and_parts(texts: list[str], look: Look) -> bool:
    """Whether small headings say n, g or whole under some names and parts under others: '完整', '残' and '米粒'."""
    amounts = [quantity(t).startswith("count") or quantity(t) == "mass" for t in texts]
    counted = [is_amount and t not in look.names.short.parts for is_amount, t in zip(amounts, texts, strict=True)]
    parts = [not quantity(t) and bool(look.names.part_of(t)) for t in texts]
    return sum(counted) > 1 and any(parts) and all(a or b for a, b in zip(counted, parts, strict=True))


def says_state(text: str, look: Look) -> bool:
    """Whether a small heading is a condition, in letters that stand for one or in words."""
    bare = text.strip(" ().?")
    is_short = bare in look.names.short.conditions or bare.upper() in SHORT_CONDITIONS
    return is_short or (len(bare) > 2 and bool(look.names.condition_of(bare)))


def condition_role(heads: list[str]) -> Role:
    """A column of conditions; under 'Charred?' a yes means charred, and the layout says so."""
    asks = any(re.match(r"(?:charred|carboni[sz]ed|burn(?:t|ed))\b", text, re.IGNORECASE) for text in heads)
    return Role(name="condition", qualifiers=("yes is charred",) if asks else ())


def heading_over(look: Look, rows: list[int], column: int) -> str:
    return next((heading(look.text(row, column)) for row in reversed(rows) if heading(look.text(row, column))), "")
