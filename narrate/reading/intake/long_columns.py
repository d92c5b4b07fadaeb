"""What each column of a table with one row for each find is, by its head and by what stands in it."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from itertools import pairwise

from narrate.model.layouts import Role
from narrate.reading.intake.answers import asks_of_a_sample
from narrate.reading.intake.evidence import Look
from narrate.reading.intake.fractions_of_flots import are_fractions
from narrate.reading.intake.header_words import heading, quantity, unit
from narrate.reading.intake.heads_by_content import SIZES, are_meshes, condition_role, content_role, says_state
from narrate.reading.intake.kinds_of_amounts import are_kinds_of_amounts, is_kind_head
from narrate.reading.intake.litres_in_heads import litres_in
from narrate.reading.intake.long_table import OF_SAMPLE
from narrate.reading.intake.not_plants import are_classes_of_finds, class_aside
from narrate.reading.intake.plant_words_abroad import WIDE_PARTS
from narrate.reading.intake.shares_in_heads import SORTED, size_and_share
from narrate.reading.intake.tallies import TALLY, is_column_of_strokes
from narrate.reading.intake.units_and_levels import kinds_for_contexts, naming_contexts

_STATES = re.compile(
    r"\b(un-?charred|un-?carboni[sz]ed|charred|carboni[sz]ed|minerali[sz]ed|waterlogged|whole|complete|frag(?:m(?:ent)?)?(?:s|ed)?)\b",
    re.I,
)


def states_in(text: str) -> tuple[tuple[str, ...], str]:
    """What a heading such as 'Uncharred count' says of its cells, and the heading without it."""
    plain = text.replace("_", " ")
    found = tuple(match[1] for match in _STATES.finditer(plain))
    return (found, " ".join(_STATES.sub(" ", plain).split()).strip(" .,")) if found else ((), text)


def is_amount_head(look: Look, row: int, column: int, heads: dict[int, str]) -> bool:
    text = look.text(row, column)
    state, rest = states_in(text)
    if state and (not rest or heading(rest) in ("count", "mass")):
        return True
    if _is_part_head(look, text, heads):
        return True
    return heads[column] in ("count", "mass", "total") or bool(quantity(text)) or content_role([text], look) in (
        "size class", "completeness", "condition", "fraction",
    )  # fmt: skip


def _is_part_head(look: Look, text: str, heads: dict[int, str]) -> bool:
    """'Grain', 'Chaff' and 'Seed' over columns of numbers beside a column of names: counts of those parts."""
    is_of_parts = "part" in heads.values() or any(role in ("count", "mass") for role in heads.values())
    is_part = text.lower() in WIDE_PARTS or bool(look.names.part_of(text.replace("_", " ")))
    return not is_of_parts and heading(text) in ("", "taxon") and is_part


def column_role(
    look: Look,
    row: int,
    column: int,
    role: str,
    taxon: int,
    sample: int,
    known: list[int],
    below: list[int],
    heads: dict[int, str],
) -> Role:
    text = look.text(row, column)
    if column == taxon:
        name = "genus" if role == "genus" and ("epithet" in heads.values() or "taxon" in heads.values()) else "taxon"
        has_other = any(heads[c] == "common name" for c in heads if c != column)
        return Role(name=name, filled=not has_other and is_filled(look, below, column))
    said_below = [look.text(r, column) for r in below if look.text(r, column)]
    words = {quantity(text) for text in said_below if not re.fullmatch(r"p|pres(?:ent|ence)?\.?", text.lower())}
    if column not in known and "mass" in words and all(words):
        return Role(name="quantity")  # 'n' or 'g' in each row
    is_headed = is_kind_head(text)
    if column not in known and (is_headed or not role) and are_kinds_of_amounts(said_below, is_headed=is_headed):
        return Role(name="quantity")
    if column not in known and column != sample and role in ("", "fraction", "code", "group"):
        if are_fractions(text, said_below, look.names.short.fractions):
            return Role(name="fraction")
    if column == sample:
        beside = [c for c, other in heads.items() if other in OF_SAMPLE and c != column]
        return Role(name="sample", filled=is_filled(look, below, column) or _goes_on_above(look, below, column, beside))
    if column in known:
        small = quantity(text)
        if len(known) > 1 and is_column_of_strokes(said_below):
            return Role(name="count", qualifiers=(TALLY,))
        if role == "mass" or small == "mass":
            return Role(name="mass", qualifiers=(unit(text) or "g",))
        if small in ("percent", "density") or role in ("percent", "density", "ubiquity"):
            return Role(name=small or role)
        state, rest = states_in(text)
        if small.startswith("count, "):
            return Role(name="count", qualifiers=(small.removeprefix("count, "),))
        if state and (not rest or heading(rest) in ("count", "mass")):
            is_mass = heading(rest) == "mass"
            return Role(
                name="mass" if is_mass else "count", qualifiers=(*((unit(text) or "g",) if is_mass else ()), *state)
            )
        if _is_part_head(look, text, heads):
            return Role(name="count", qualifiers=(text,))
        said = content_role([text], look)
        if said == "size class":
            size, share = size_and_share(text)
            return Role(name="count", qualifiers=(size, *([f"{SORTED}{share}"] if share else [])))
        if said in ("completeness", "condition", "fraction"):
            return Role(name="count", qualifiers=(text,))
        if role == "total" and sum(heads[c] != "total" and c in known for c in known):
            return Role(name="total")
        return Role(name="count")
    if role == "taxon":
        if are_classes_of_finds(said_below) and any(class_aside(t) and not look.names.part_of(t) for t in said_below):
            return Role(name="group", also=("common name",))  # 'Plant' and 'Bone' under 'Material', or 'Ochre' alone
        if said_below and sum(bool(look.names.part_of(t)) for t in said_below) >= 0.6 * len(said_below):
            return Role(name="part")
        if heads[taxon] == "genus":
            return Role(name="epithet")
        return Role(name="common name")
    if role == "condition":
        are_pieces = bool(said_below) and all(quantity(t).startswith("count, ") for t in said_below)
        return Role(name="completeness") if are_pieces else condition_role([text])  # 'whole' and 'fragment'
    are_states = bool(said_below) and all(len(t) > 1 and says_state(t, look) for t in said_below)
    if role in ("site", "group", "code") and (are_states or content_role(said_below, look) == "condition"):
        return Role(name="condition")  # 'State' over 'ch' and 'un'
    if role in ("volume", "flot volume", "flot mass"):
        usual = {"volume": "l", "flot volume": "ml", "flot mass": "g"}[role]
        found = unit(text)
        return Role(name=role, qualifiers=(found if found not in ("", "%", "mm") else usual,), filled=False)
    if role == "location":
        return Role(name="ignored", qualifiers=("locations are not taken into records",))
    if role == "description":
        return Role(name="note")
    if (
        role in ("group", "note", "kind", "phase", "description", "code")
        and content_role([look.text(r, column) for r in below if look.text(r, column)], look) == "part"
        and not (role == "kind" and "part" in heads.values())  # 'pit' under 'feature_type' is no stone of a fruit
    ):
        return Role(name="part")
    if role in ("count", "mass"):
        return Role(name="ignored", qualifiers=("its cells are no amounts",))
    sizes = [t for t in said_below if heading(t) != "total"]
    if role == "fraction" and sizes and (all(map(SIZES.fullmatch, sizes)) or are_meshes(sizes)):
        return Role(name="size class")
    if role == "sample note" or (role == "note" and asks_of_a_sample(text)):
        return Role(name="sample note", qualifiers=(text,), filled=False)  # its head stays with it: 'date_from: -400'
    if role:
        return Role(name=role, filled=role in OF_SAMPLE and is_filled(look, below, column))
    texts = [look.text(r, column) for r in below if look.text(r, column)]
    by_content = content_role(texts, look)
    if by_content == "part" and sum(bool(condition_said_in(text, look)) for text in texts) >= 0.6 * len(texts):
        return Role(name="part", also=("condition",))  # 'charred grain'
    if by_content in ("part", "condition", "completeness", "size class", "fraction", "kind"):
        return Role(name=by_content)
    if len(set(texts)) > 1 and are_classes_of_finds(texts):
        return Role(name="group")
    return Role(name="ignored", qualifiers=("its heading says nothing known",))


def condition_said_in(text: str, look: Look) -> str:
    """The condition that stands beside a part in one cell."""
    words = text.split()
    said = (look.names.condition_of(word) for word in words if len(word) > 4)
    return look.names.condition_of(text) or next((one for one in said if one), "")


def contexts_of_kinds(look: Look, below: list[int], columns: dict[int, Role]) -> dict[int, Role]:
    """Columns headed as contexts ('deposit') that hold kinds of them, beside features that are numbered."""
    texts = {c: [look.text(r, c) for r in below] for c, role in sorted(columns.items()) if role.name == "context"}
    numbered = [
        c for c, role in columns.items()
        if role.name == "feature" and any(re.search(r"\d", look.text(r, c)) for r in below)
    ]  # fmt: skip
    return {c: Role(name="kind", filled=columns[c].filled) for c in kinds_for_contexts(texts, bool(numbered))}


def contexts_told_apart(look: Look, row: int, columns: dict[int, Role]) -> dict[int, Role]:
    """Columns headed as contexts that name none beside another that does: notes of the sample."""
    heads = {c: look.text(row, c) for c, role in sorted(columns.items()) if role.name == "context"}
    naming = naming_contexts(heads)
    return {c: Role(name="sample note", filled=columns[c].filled) for c in heads if c not in naming}


def shares_sorted(
    look: Look, below: list[int], columns: dict[int, Role], sample: int, taxon: int
) -> dict[int, Role]:
    """Columns of shares before the names that say one thing of each sieve class of a sample: what was sorted of it."""
    sizes = [c for c, role in columns.items() if role.name in ("size class", "fraction")]
    found = {}
    for column in [c for c, role in columns.items() if role.name == "percent" and c < taxon]:
        said: dict[tuple[str, ...], set[str]] = {}
        for r in below:
            if look.text(r, column):
                said.setdefault(tuple(look.text(r, c) for c in (sample, *sizes)), set()).add(look.text(r, column))
        if 1 < len(said) < sum(map(bool, (look.text(r, column) for r in below))) and all(map(_is_one, said.values())):
            found[column] = Role(name="sorted")
    return found


def _is_one(texts: set[str]) -> bool:
    return len(texts) == 1


def notes_of_samples(look: Look, below: list[int], columns: dict[int, Role], sample: int) -> dict[int, Role]:
    """Columns of notes that say one thing in all lines of each sample, and so speak of it; with the litres in them."""
    found = {}
    ids = [look.text(r, sample) for r in below]
    for column, role in columns.items():
        if role.name not in ("note", "sample note"):
            continue
        said: dict[str, set[str]] = {}
        for id, r in zip(ids, below, strict=True):
            said.setdefault(id, set()).add(look.text(r, column))
        own = {next(iter(texts)) for id, texts in said.items() if id and len(texts) == 1} - {""}
        if role.name == "note" and (len(said) < 3 or len(below) < 2 * len(said) or len(own) < 0.7 * len(said)):
            continue
        litres = sum(bool(litres_in(text)) for text in own)
        also = ("volume",) if own and litres >= 0.5 * len(own) else ()
        found[column] = Role(name="sample note", also=also, qualifiers=() if also else role.qualifiers)
    return found


def is_filled(look: Look, below: list[int], column: int) -> bool:
    given = [(r, column) in look.cells for r in below]
    own = [look.text(r, column) if (r, column) in look.own else "" for r in below]
    is_said_each_time = sum(a == b != "" for a, b in pairwise(own)) > own.count("")
    return bool(given) and given[0] and given.count(False) >= 0.2 * len(given) and not is_said_each_time


def _goes_on_above(look: Look, below: list[int], column: int, beside: list[int]) -> bool:
    """Whether what stands beside each blank, such as the context, is what stands beside the id above it."""
    blank = [n for n, r in enumerate(below) if (r, column) not in look.cells]
    told = [c for c in beside if all((r, c) in look.cells for r in below)]
    return bool(blank) and blank[0] > 0 and bool(told) and all(
        look.text(below[n], c) == look.text(below[n - 1], c) for n in blank for c in told
    )  # fmt: skip


def genus_said_again(
    look: Look, finds: Sequence[int], columns: Mapping[int, Role], taxon: int
) -> dict[int, Role]:
    """The role of a column of genera beside whole names, which begin with them: it groups them, and is no name."""
    again = {}
    for column in (c for c, role in columns.items() if role.name == "genus" and c != taxon):
        pairs = [(look.text(r, taxon), look.text(r, column)) for r in finds if look.text(r, column)]
        said = sum(name.lower().startswith(genus.lower()) for name, genus in pairs)
        if said >= 0.6 * len(pairs) > 0:
            again[column] = Role(name="group")
    return again
