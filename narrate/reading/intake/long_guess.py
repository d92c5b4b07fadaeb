"""Tables with one row for each find: worked out from their heads."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from narrate.model.grids import Area
from narrate.model.layouts import SAMPLE_ROLES, Role
from narrate.reading.intake.abundance_beside import signs_for_counts, with_abundance_beside
from narrate.reading.intake.bands_over_list import band_over, with_heads_filled
from narrate.reading.intake.code_columns import column_of_codes
from narrate.reading.intake.codes_of_samples import code_of_samples, counts_said_again
from narrate.reading.intake.evidence import EMPTY_FIELDS, Look, looks_like_id, plain_label
from narrate.reading.intake.header_words import heading
from narrate.reading.intake.heads_of_list import heads_in, with_states
from narrate.reading.intake.least_numbers import with_least_numbers
from narrate.reading.intake.lists_of_one_sample import NO_SAMPLE, is_of_one_sample
from narrate.reading.intake.long_columns import (
    column_role,
    contexts_of_kinds,
    contexts_told_apart,
    genus_said_again,
    is_amount_head,
    notes_of_samples,
    shares_sorted,
    states_in,
)
from narrate.reading.intake.long_headless import list_without_head
from narrate.reading.intake.long_samples import column_of_samples
from narrate.reading.intake.long_table import Long, rows_below
from narrate.reading.intake.not_plants import are_classes_of_finds, says_nothing_found
from narrate.reading.intake.pending import says_pending
from narrate.reading.intake.sites_by_phase import sites_by_phase

_NO_AMOUNTS = (*SAMPLE_ROLES, "location", "code", "size class", "fraction", "cf", "note")
_TAXON = ("taxon", "genus", "common name", "epithet")


def guess_long(look: Look, area: Area) -> Long | None:
    """The long table in an area; None where no row reads as the head of one."""
    for row in range(area.top, min(area.top + 40, area.bottom) + 1):
        heads = heads_in(look, area, row)
        # Two headings of different sorts: a row of marks 'x' is no row of coordinates.
        if len(heads) < 3 or len({role for role in heads.values() if role}) < 2:
            continue
        filled = with_heads_filled(look, area, row, heads)
        if filled is not None and (found := _with_head(filled, area, row + 1, heads_in(filled, area, row + 1))):
            return found
        found = _with_head(look, area, row, heads)
        if found is not None:
            return found
    return list_without_head(look, area)


def _with_head(look: Look, area: Area, row: int, heads: dict[int, str]) -> Long | None:
    heads = with_states(look, rows_below(look, area, row), row, heads)
    named = [c for c, role in heads.items() if role in ("taxon", "genus")]
    # 'Material' over seed and nutshell, or over plant and bone, stands beside the names, and is not their column.
    taxon = next((c for c in named if not _stands_beside_names(look, area, row, c)), named[0] if named else None)
    if taxon is None:
        taxon = next((c for c, role in heads.items() if role in ("common name", "family")), None)
    if taxon is None:
        taxon = _column_of_names(look, area, row, heads)
        if taxon is not None:
            heads = {**heads, taxon: "taxon"}
    below = rows_below(look, area, row)
    doubts: list[str] = []
    coded = column_of_codes(look, row, heads, below) if taxon is None else None
    if coded is not None:
        taxon, heads = coded, {**heads, coded: "taxon"}
        doubts.append(
            f"DOUBTFUL: '{look.text(row, coded)}' holds codes of taxa, and no sheet says what they mean; hand their list "
            "over with --codes, or write the names in the layout"
        )
    if taxon is None or len(below) < 1:
        return None
    counted = [c for c in range(area.left, area.right + 1) if c in heads or _share_of_amounts(look, below, c) >= 0.7]
    heads = with_least_numbers(heads, {c: look.text(row, c) for c in counted}, doubts)
    of_counts = [c for c, role in heads.items() if role != "mass" and is_amount_head(look, row, c, heads)]
    signs = signs_for_counts(look, below, heads, of_counts)
    heads = with_abundance_beside(heads, {c: "" if c in signs else look.text(row, c) for c in heads}, doubts) | signs
    code = None if set(heads.values()) & {"sample", "context", "feature"} else code_of_samples(look, heads, below, taxon)
    if code is not None:
        heads = {**heads, code: "sample"}
        doubts.append(f"no heading names samples; each '{look.text(row, code)}' stands beside several names, and is taken for one")
    sample = column_of_samples(look, row, heads, below)
    columns: dict[int, Role] = {}
    flags = (
        {c for c in heads if heads[c] == "condition" and all(look.text(r, c) in ("", "0", "1") for r in below)}
        if any(role in ("count", "mass") for role in heads.values())
        else set()
    )
    amounts = [
        c for c in heads
        if (c != taxon and c not in flags and heads[c] not in _NO_AMOUNTS and _share_of_amounts(look, below, c) >= 0.7)
        or (heads[c] in ("count", "mass") and c != taxon)
        or (c not in flags and states_in(look.text(row, c))[0] and _share_of_amounts(look, below, c) >= 0.5)
    ]  # fmt: skip
    if sample is None and amounts and is_of_one_sample(heads, amounts, taxon):
        sample = NO_SAMPLE
    if not amounts or sample is None or _recurs_under_ids(look, row, sample, heads):
        return None
    known = [c for c in amounts if is_amount_head(look, row, c, heads)]
    once = {c for c in known if c < taxon and _is_said_once(look, below, sample, c)}
    running = {c for c in known if c < taxon and _runs_on([look.text(r, c) for r in below])}
    if running and set(known) - running - once:
        heads = {c: "code" if c in running else role for c, role in heads.items()}  # 'N°' over 1, 2, 3
        once |= running
    known = [c for c in known if c not in once]
    others = [c for c in amounts if c not in known and c > taxon and not heads[c] and _are_whole(look, below, c)]
    has_shares = bool(set(heads.values()) & {"percent", "density", "ubiquity"})  # what stands beside them is another
    if not known and len(others) == 1 and heads[taxon] in ("taxon", "genus") and not has_shares:
        known = others
        doubts.append(
            f"DOUBTFUL: '{look.text(row, others[0])}' heads the only numbers behind the names; they are taken for "
            "counts"
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
    if coded is None and names < 0.4 * sum(bool(look.text(r, taxon)) for r in below):
        return None
    # Blanks beside a total mean nothing: only those among the finds may mean what stands above.
    finds = [r for r in below if _row_role(look, r, taxon, sample, known).name != "total"] or below
    for column, role in heads.items():
        columns[column] = column_role(look, row, column, role, taxon, sample, known, finds, heads)
        if column in once - running:
            columns[column] = Role(name="ignored", qualifiers=("it is said once for each sample, and is of no find",))
    for column, made in list(columns.items()):
        if column != sample and made.name == "sample":
            columns[column] = Role(name="code")
    if sample != NO_SAMPLE and heads[sample] not in ("sample", ""):
        columns[sample] = Role(name="sample", also=(heads[sample],), filled=columns[sample].filled)
        doubts.append(f"the table names no samples; each {heads[sample]} is taken as one")
    band = band_over(look, area, row, known)
    columns.update(dict.fromkeys(band.totals if band is not None else (), Role(name="total")))
    again = counts_said_again(look, finds, columns) if band is None else {}
    doubts.extend(f"column '{look.text(row, c)}': {role.qualifiers[0]}; it is read once" for c, role in again.items())
    columns.update(again)
    columns.update(contexts_of_kinds(look, finds, columns))
    columns.update(contexts_told_apart(look, row, columns))
    columns.update(genus_said_again(look, finds, columns, taxon))
    joined, said = sites_by_phase(look, finds, columns, sample) if sample != NO_SAMPLE else ({}, [])
    columns.update(joined)
    doubts.extend(said)
    columns.update(shares_sorted(look, finds, columns, sample, taxon))
    columns.update(notes_of_samples(look, finds, columns, sample))
    of_samples = [c for c, role in columns.items() if set(role.names) & set(SAMPLE_ROLES)]
    rows = {r: _row_role(look, r, taxon, sample, known, of_samples) for r in below}
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
    if band is not None:
        rows[band.row] = band.role
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
    return bool(texts) and all(text.isdecimal() for text in texts)


def _runs_on(texts: list[str]) -> bool:
    """Whether a column counts its own lines: 1, 2, 3 to the end, or to a total."""
    texts = [text for text in texts if heading(text) != "total"]  # below the last of them
    if len(texts) < 4 or not all(text.isdecimal() for text in texts):
        return False
    return all(int(b) == int(a) + 1 for a, b in pairwise(texts))


def _recurs_under_ids(look: Look, row: int, sample: int, heads: dict[int, str]) -> bool:
    """Whether the head over the ids comes again, each time under a word of its own: 'LF' and 'HF' under 'S1', 'S2'."""
    text = look.text(row, sample) if sample != NO_SAMPLE else ""
    again = [c for c in heads if look.text(row, c) == text] if text else []
    over = [look.text(row - 1, c) for c in again if (row - 1, c) in look.own]
    return len(again) > 1 and len(set(over)) == len(again)


def _is_said_once(look: Look, below: list[int], sample: int, column: int) -> bool:
    """Whether a column is filled where the id of a sample is written, and nowhere else: it is said of the sample."""
    lines = [r for r in below if any((r, c) in look.cells for c in (sample, column))]
    with_id = [r for r in below if (r, sample) in look.own]
    return bool(with_id) and len(with_id) <= 0.7 * len(below) and all((r, sample) in look.own for r in lines)


def _stands_beside_names(look: Look, area: Area, row: int, column: int) -> bool:
    """Whether a column headed as one of names says of each find its part, or its class among all that is dug up."""
    texts = [look.text(r, column) for r in range(row + 1, area.bottom + 1) if look.text(r, column)]
    are_parts = sum(bool(look.names.part_of(text)) for text in texts) >= 0.6 * len(texts) > 0
    return are_parts or are_classes_of_finds(texts)


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


def _row_role(
    look: Look, row: int, taxon: int, sample: int, known: list[int], of_samples: Sequence[int] = ()
) -> Role:
    texts = [look.text(row, c) for c in range(look.columns) if look.text(row, c)]
    if not texts:
        return Role(name="blank")
    own = [look.text(row, c) for c in range(look.columns) if (row, c) in look.own and look.text(row, c)]
    if len(own) == 1 and len(texts) > 2 and look.text(row, taxon) == look.text(row, sample) == own[0]:
        return Role(name="section" if len(own[0]) < 60 else "notes")  # one cell, merged over names and amounts
    label = look.text(row, taxon) or look.text(row, sample)
    if heading(label) == "total" or heading(look.text(row, sample)) == "total":
        return Role(name="total")
    if not look.text(row, taxon) and "total" in (heading(texts[0]), *map(heading, own[:1])):
        return Role(name="total")  # 'Total' where the lines before it have their running numbers
    has_amount = any((row, c) in look.cells for c in known)
    if has_amount and not look.text(row, taxon) and heading(look.text(row, sample).partition(",")[0]) == "total":
        return Role(name="total")  # 'FS 18 Total, carbonized plant'
    is_said = any(heading(text) == "total" for text in texts) or len(texts) <= len(known)
    if has_amount and not look.text(row, taxon) and not look.text(row, sample) and is_said:
        return Role(name="total")  # numbers without a name or a sample below a list
    if not look.text(row, taxon) and not has_amount:
        if _names_a_sample(look, row, sample, of_samples, texts):
            return Role(name="finds")  # a sample that held nothing: it is kept, without a find
        return Role(name="section") if len(texts) == 1 and len(texts[0]) < 40 else Role(name="notes")
    if len(texts) == 1:
        return Role(name="notes" if len(texts[0]) > 30 or not look.name_score(row, taxon) else "section")
    return Role(name="finds")


def _names_a_sample(look: Look, row: int, sample: int, of_samples: Sequence[int], texts: list[str]) -> bool:
    """Whether a line without a name and an amount gives a sample: its id, with its litres or 'no plant remains'."""
    if (row, sample) not in look.own or not looks_like_id(look.text(row, sample)) or any(map(says_pending, texts)):
        return False
    beside = [c for c in of_samples if c != sample and look.text(row, c)]
    return bool(beside) or any(map(says_nothing_found, texts))


def _share_of_amounts(look: Look, rows: list[int], column: int) -> float:
    given = [r for r in rows if (r, column) in look.cells and look.text(r, column) not in EMPTY_FIELDS]
    return sum(look.is_amount(r, column) for r in given) / len(given) if given else 0.0
