"""Tables with one row for each find: worked out from their heads."""

from __future__ import annotations

import re
from dataclasses import dataclass, field

from narrate.model.grids import Area
from narrate.model.layouts import SAMPLE_ROLES, Role
from narrate.reading.intake.evidence import Look, looks_like_id, plain_label
from narrate.reading.intake.header_words import heading, quantity, sample_rank, unit
from narrate.reading.intake.heads_by_content import SIZES, condition_role, content_role
from narrate.reading.intake.plant_words_abroad import WIDE_PARTS
from narrate.reading.intake.units_and_levels import naming_contexts


@dataclass(slots=True, kw_only=True)
class Long:
    """A long table as worked out."""

    shape: str
    rows: dict[int, Role]
    columns: dict[int, Role]
    area: Area
    explained: int = 0
    score: float = 0.0
    doubts: list[str] = field(default_factory=list)


_TAXON = ("taxon", "genus", "common name", "epithet")
OF_SAMPLE = ("sample", "context", "feature", "site")


def guess_long(look: Look, area: Area) -> Long | None:
    """The long table in an area; None where no row reads as the head of one."""
    for row in range(area.top, min(area.top + 40, area.bottom) + 1):
        heads = {c: heading(look.text(row, c)) for c in range(area.left, area.right + 1) if look.text(row, c)}
        # Two headings of different sorts: a row of marks 'x' is no row of coordinates.
        if len(heads) < 3 or len({role for role in heads.values() if role}) < 2:
            continue
        found = _with_head(look, area, row, heads)
        if found is not None:
            return found
    return _without_head(look, area)


def _with_head(look: Look, area: Area, row: int, heads: dict[int, str]) -> Long | None:
    named = [c for c, role in heads.items() if role in ("taxon", "genus")]
    # 'Material' over seed and nutshell stands beside the names, and is not their column.
    taxon = next((c for c in named if not _holds_parts(look, area, row, c)), named[0] if named else None)
    if taxon is None:
        taxon = next((c for c, role in heads.items() if role in ("common name", "family")), None)
    if taxon is None:
        taxon = _column_of_names(look, area, row, heads)
        if taxon is not None:
            heads = {**heads, taxon: "taxon"}
    below = rows_below(look, area, row)
    sample = _column_of_samples(look, row, heads, below)
    if taxon is None or len(below) < 1:
        return None
    columns: dict[int, Role] = {}
    flags = (
        {c for c in heads if heads[c] == "condition" and all(look.text(r, c) in ("", "0", "1") for r in below)}
        if any(role in ("count", "mass") for role in heads.values())
        else set()
    )
    amounts = [
        c for c in heads
        if (c != taxon and c not in flags and heads[c] not in (*SAMPLE_ROLES, "location", "code", "size class", "fraction", "cf", "note") and _share_of_amounts(look, below, c) >= 0.7)
        or (heads[c] in ("count", "mass") and c != taxon)
        or (c not in flags and _states(look.text(row, c))[0] and _share_of_amounts(look, below, c) >= 0.5)
    ]  # fmt: skip
    if not amounts or sample is None:
        return None
    known = [c for c in amounts if _is_amount_head(look, row, c, heads)]
    once = {c for c in known if c < taxon and _is_said_once(look, below, sample, c)}
    known = [c for c in known if c not in once]
    doubts: list[str] = []
    others = [c for c in amounts if c not in known and c > taxon and not heads[c] and _are_whole(look, below, c)]
    if not known and len(others) == 1 and heads[taxon] in ("taxon", "genus"):
        known = others
        doubts.append(
            f"DOUBTFUL: '{look.text(row, others[0])}' heads the only numbers behind the names; they are taken for counts"
        )
    if not known:
        return None
    if len([c for c in amounts if c not in known]) > 2 * len(known) + 2:
        return None  # many columns of numbers under heads that nobody knows: samples across
    names = sum(
        max(look.name_score(r, taxon), plain_label(look.text(r, taxon))) > 0 or not look.text(r, taxon).isascii()
        for r in below
        if look.text(r, taxon)
    )
    if names < 0.4 * sum(bool(look.text(r, taxon)) for r in below):
        return None
    # Blanks beside a total mean nothing: only those among the finds may mean what stands above.
    finds = [r for r in below if _row_role(look, r, taxon, sample, known).name == "finds"] or below
    for column, role in heads.items():
        columns[column] = _role_of(look, row, column, role, taxon, sample, known, finds, heads)
        if column in once:
            columns[column] = Role(name="ignored", qualifiers=("it is said once for each sample, and is of no find",))
    for column, made in list(columns.items()):
        if column != sample and made.name == "sample":
            columns[column] = Role(name="code")
    if heads[sample] not in ("sample", ""):
        columns[sample] = Role(name="sample", also=(heads[sample],), filled=columns[sample].filled)
        doubts.append(f"the table names no samples; each {heads[sample]} is taken as one")
    columns.update(contexts_told_apart(look, row, columns))
    rows = {r: _row_role(look, r, taxon, sample, known) for r in below}
    if not any(role.name == "finds" for role in rows.values()) or not any(
        role.name in ("count", "mass") for role in columns.values()
    ):
        return None
    rows.update(
        {
            r: Role(name="title")
            for r in range(area.top, row)
            if any((r, c) in look.cells for c in range(area.left, area.right + 1))
        }
    )
    rows[row] = Role(name="header")
    for c in range(area.left, area.right + 1):
        if c not in columns and any((r, c) in look.cells for r in below):
            columns[c] = Role(name="ignored", qualifiers=("no heading",))
    explained = sum(look.is_amount(r, c) for r in below for c in known)
    score = 2.5 * sum(max(look.name_score(r, taxon), 0.3) * sum(look.is_amount(r, c) for c in known) for r in below)
    area_used = Area(top=area.top, left=area.left, bottom=below[-1], right=area.right)
    return Long(
        shape="long", rows=dict(sorted(rows.items())), columns=dict(sorted(columns.items())), area=area_used,
        explained=explained, score=score, doubts=doubts,
    )  # fmt: skip


def _are_whole(look: Look, below: list[int], column: int) -> bool:
    texts = [look.text(r, column) for r in below if look.text(r, column)]
    return bool(texts) and all(text.isdigit() for text in texts)


def _is_said_once(look: Look, below: list[int], sample: int, column: int) -> bool:
    """Whether a column is filled where the id of a sample is written, and nowhere else: it is said of the sample."""
    lines = [r for r in below if any((r, c) in look.cells for c in (sample, column))]
    with_id = [r for r in below if (r, sample) in look.own]
    return bool(with_id) and len(with_id) <= 0.7 * len(below) and all((r, sample) in look.own for r in lines)


def _holds_parts(look: Look, area: Area, row: int, column: int) -> bool:
    texts = [look.text(r, column) for r in range(row + 1, area.bottom + 1) if look.text(r, column)]
    return sum(bool(look.names.part_of(text)) for text in texts) >= 0.6 * len(texts) > 0


def _column_of_samples(look: Look, row: int, heads: dict[int, str], below: list[int]) -> int | None:
    """The column that tells samples apart: one headed so before bags and lots, else contexts, features, sites, phases."""
    for wanted in (*OF_SAMPLE, "phase"):
        columns = [c for c, role in heads.items() if role == wanted]
        if wanted == "sample":
            given = [c for c in columns if any(look.text(r, c) for r in below)]
            columns = sorted(given or columns, key=lambda c: -sample_rank(look.text(row, c)))
        if columns:
            return columns[0] if wanted == "sample" else _numbered(look, row, heads, below, columns[0])
    return None


def _numbered(look: Look, row: int, heads: dict[int, str], below: list[int], known: int) -> int:
    """The column of a numbered thing that nobody knows ('Post No.'), where it parts more than the known one does."""

    def several(column: int) -> int:
        return len({look.text(r, column) for r in below} - {""})

    numbered = [
        c for c, role in heads.items()
        if not role and re.search(r"[^\W\d_]{3}.*(?:\bno\.?|\bnr\.?|#|\bnumber|\bid|n[º°])$", look.text(row, c).strip(), re.I)
        and all(looks_like_id(look.text(r, c)) for r in below if look.text(r, c))
    ]  # fmt: skip
    return next((c for c in numbered if several(c) > several(known) - (c < known)), known)


def _column_of_names(look: Look, area: Area, row: int, heads: dict[int, str]) -> int | None:
    """The column whose cells read as names of plants, where no heading says which it is ('Species_ID', 'Type')."""
    below = rows_below(look, area, row)
    shares = {}
    for column, role in heads.items():
        if role == "count" and any(look.is_amount(r, column) for r in below):
            continue
        if role in ("", "code", "description", "part", "count"):
            texts = [r for r in below if look.text(r, column)]
            if role == "part" and sum(bool(look.names.part_of(look.text(r, column))) for r in texts) > 0.5 * len(texts):
                continue  # a column of parts, and no names
            named = sum(look.name_score(r, column) >= 0.5 for r in texts)
            shares[column] = named / len(texts) if len(texts) >= 3 else 0.0
    best = max(shares, key=lambda c: shares[c], default=None)
    return best if best is not None and shares[best] >= 0.6 else None


_STATES = re.compile(
    r"\b(un-?charred|un-?carboni[sz]ed|charred|carboni[sz]ed|minerali[sz]ed|waterlogged|whole|complete|frag(?:m(?:ent)?)?(?:s|ed)?)\b",
    re.I,
)


def _states(text: str) -> tuple[tuple[str, ...], str]:
    """What a heading such as 'Uncharred count' says of its cells, and the heading without it."""
    plain = text.replace("_", " ")
    found = tuple(match[1] for match in _STATES.finditer(plain))
    return (found, " ".join(_STATES.sub(" ", plain).split()).strip(" .,")) if found else ((), text)


def _is_amount_head(look: Look, row: int, column: int, heads: dict[int, str]) -> bool:
    text = look.text(row, column)
    state, rest = _states(text)
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


def _role_of(
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
    words = {quantity(text) for text in said_below}
    if column not in known and "mass" in words and all(words):
        return Role(name="quantity")  # 'n' or 'g' in each row
    if column == sample:
        beside = [c for c, other in heads.items() if other in OF_SAMPLE and c != column]
        return Role(name="sample", filled=is_filled(look, below, column) or _goes_on_above(look, below, column, beside))
    if column in known:
        small = quantity(text)
        if role == "mass" or small == "mass":
            return Role(name="mass", qualifiers=(unit(text) or "g",))
        if small in ("percent", "density") or role in ("percent", "density", "ubiquity"):
            return Role(name=small or role)
        state, rest = _states(text)
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
        if said in ("size class", "completeness", "condition", "fraction"):
            return Role(name="count", qualifiers=(text,))
        if role == "total" and sum(heads[c] != "total" and c in known for c in known):
            return Role(name="total")
        return Role(name="count")
    if role == "taxon":
        if said_below and sum(bool(look.names.part_of(t)) for t in said_below) >= 0.6 * len(said_below):
            return Role(name="part")
        if heads[taxon] == "genus":
            return Role(name="epithet")
        return Role(name="common name")
    if role == "condition":
        return condition_role([text])
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
    ):
        return Role(name="part")
    if role in ("count", "mass"):
        return Role(name="ignored", qualifiers=("its cells are no amounts",))
    if role == "fraction" and said_below and all(SIZES.fullmatch(text) for text in said_below):
        return Role(name="size class")
    if role:
        return Role(name=role, filled=role in OF_SAMPLE and is_filled(look, below, column))
    texts = [look.text(r, column) for r in below if look.text(r, column)]
    by_content = content_role(texts, look)
    if by_content in ("part", "condition", "completeness", "size class", "fraction", "kind"):
        return Role(name=by_content)
    return Role(name="ignored", qualifiers=("its heading says nothing known",))


def contexts_told_apart(look: Look, row: int, columns: dict[int, Role]) -> dict[int, Role]:
    """Columns headed as contexts that name none beside another that does: notes of the sample."""
    heads = {c: look.text(row, c) for c, role in sorted(columns.items()) if role.name == "context"}
    naming = naming_contexts(heads)
    return {c: Role(name="sample note", filled=columns[c].filled) for c in heads if c not in naming}


def is_filled(look: Look, below: list[int], column: int) -> bool:
    given = [(r, column) in look.cells for r in below]
    return bool(given) and given[0] and given.count(False) >= 0.2 * len(given)


def _goes_on_above(look: Look, below: list[int], column: int, beside: list[int]) -> bool:
    """Whether what stands beside each blank, such as the context, is what stands beside the id above it."""
    blank = [n for n, r in enumerate(below) if (r, column) not in look.cells]
    told = [c for c in beside if all((r, c) in look.cells for r in below)]
    return bool(blank) and blank[0] > 0 and bool(told) and all(
        look.text(below[n], c) == look.text(below[n - 1], c) for n in blank for c in told
    )  # fmt: skip


def _row_role(look: Look, row: int, taxon: int, sample: int, known: list[int]) -> Role:
    texts = [look.text(row, c) for c in range(look.columns) if look.text(row, c)]
    if not texts:
        return Role(name="blank")
    label = look.text(row, taxon) or look.text(row, sample)
    if heading(label) == "total" or heading(look.text(row, sample)) == "total":
        return Role(name="total")
    has_amount = any((row, c) in look.cells for c in known)
    is_said = any(heading(text) == "total" for text in texts) or len(texts) <= len(known)
    if has_amount and not look.text(row, taxon) and not look.text(row, sample) and is_said:
        return Role(name="total")  # numbers without a name or a sample below a list
    if not look.text(row, taxon) and not has_amount:
        return Role(name="section") if len(texts) == 1 and len(texts[0]) < 40 else Role(name="notes")
    if len(texts) == 1:
        return Role(name="notes" if len(texts[0]) > 30 or not look.name_score(row, taxon) else "section")
    return Role(name="finds")


def rows_below(look: Look, area: Area, row: int) -> list[int]:
    """Rows under a head, up to the last that holds anything or to a head of another table."""
    own = look.texts(row, area.left, area.right)
    last = row
    gap = 0
    for r in range(row + 1, area.bottom + 1):
        texts = look.texts(r, area.left, area.right)
        if not any(texts):
            gap += 1
            if gap > 3:
                break
            continue
        roles = [heading(t) for t in texts if t]
        is_head = (
            len(roles) >= 3
            and sum(bool(role) for role in roles) >= 0.7 * len(roles)
            and not any(look.is_amount(r, c) for c in range(area.left, area.right + 1))
        )
        if texts != own and is_head:
            break
        gap = 0
        last = r
    return list(range(row + 1, last + 1))


def _share_of_amounts(look: Look, rows: list[int], column: int) -> float:
    given = [r for r in rows if (r, column) in look.cells]
    return sum(look.is_amount(r, column) for r in given) / len(given) if given else 0.0


def _without_head(look: Look, area: Area) -> Long | None:
    """A long list without a head: a column of names, a column of ids that repeat, a column of whole numbers."""
    if area.right - area.left > 8 or area.bottom - area.top < 3:
        return None
    rows = [
        r
        for r in range(area.top, area.bottom + 1)
        if any((r, c) in look.cells for c in range(area.left, area.right + 1))
    ]
    texts = {c: [look.text(r, c) for r in rows] for c in range(area.left, area.right + 1)}
    named = {c: sum(look.name_score(r, c) for r in rows) / len(rows) for c in texts}
    taxon = max(named, key=lambda c: named[c])
    is_headed = any(heading(look.text(r, taxon)) in ("taxon", "genus", *SAMPLE_ROLES) for r in rows)
    if named[taxon] < 0.6 or is_headed:
        return None
    amounts = [
        c
        for c in texts
        if c != taxon and all(look.is_amount(r, c) for r in rows if (r, c) in look.cells) and any(texts[c])
    ]
    ids = [
        c
        for c in texts
        if c not in (taxon, amounts[-1] if amounts else -1)
        and all(looks_like_id(t) for t in texts[c] if t)
        and any(texts[c])
    ]
    ids = [c for c in ids if len(set(texts[c])) <= 0.8 * len(rows)]
    if not amounts or not ids:
        return None
    count = amounts[-1]
    sample = ids[0]
    if count == sample:
        return None
    columns = {c: Role(name="ignored", qualifiers=("no heading",)) for c in texts if any(texts[c])}
    columns[taxon], columns[sample], columns[count] = Role(name="taxon"), Role(name="sample"), Role(name="count")
    for c in texts:
        said = content_role([t for t in texts[c] if t], look)
        if c not in (taxon, sample, count) and said in ("part", "condition", "completeness", "size class", "fraction"):
            columns[c] = Role(name=said)
    return Long(
        shape="long", rows={r: Role(name="finds") for r in rows}, columns=columns,
        area=area, explained=len(rows), score=len(rows) * 1.5,
        doubts=["the sheet has no head; the columns were told apart by what stands in them"],
    )  # fmt: skip
