"""Totals of a table that goes on beside or below with the same taxa and other samples, and ends in one total of all."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import replace

from narrate.reading.intake.amounts_of_tables import NAMES
from narrate.reading.intake.stored_ledger import Ledger
from narrate.reading.intake.stored_lines import Line, Target, Worked, joint_reading
from narrate.reading.intake.stored_places import At

_OVER_BLOCKS = "all blocks"
_ALIKE = 0.6
"""Share of the names of a table that another block of it must have (judgement)."""
_TELLING = (*NAMES, "condition", "completeness", "size class", "fraction")
Key = tuple[str, str, int]
"""Section, name, and which of the lines of that name in it."""


def with_names_again(
    lines: Iterable[Line], own: Ledger, ledgers: Sequence[Ledger], lines_of: Callable[[Ledger], Iterable[Line]]
) -> list[Line]:
    """The lines of a crossed table; totals over its samples also with those of its other blocks."""
    found = list(lines)
    sums = [line for line in found if line.kind == "total" and line.is_row != own.across]
    names = _names(own) if sums else {}
    blocks = [one for one in ledgers if sums and one is not own and _goes_on(own, one, names)]
    if not blocks:
        return found
    elsewhere = {is_mass: _by_name(blocks, is_mass=is_mass) for is_mass in (False, True)}
    weighed = {_taxon_of(own, at) for at in own.mass} - {_taxon_of(own, at) for at in own.count}
    for line in sums:
        is_mass = _is_weighed(own, (line.at, line.at))
        taxa = [_taxon_of(own, target.at) for target in line.targets]
        line.targets = [
            _target(target, names[taxon], elsewhere[is_mass or taxon in weighed])
            for target, taxon in zip(line.targets, taxa, strict=True)
        ]
        line.guesses |= {_OVER_BLOCKS}
    over = {line.at for line in sums if joint_reading([(line, own.cells, own.table.marks.decimal)]) == _OVER_BLOCKS}
    if over:
        _cross(found, own, over, [(one, _by_label(lines_of(one))) for one in blocks])
    return found


def _goes_on(own: Ledger, one: Ledger, names: Mapping[int, Key]) -> bool:
    """Whether a table has most taxa of another one, and none of its samples."""
    if one.table.shape != "crossed" or not one.columns or not own.columns:
        return False
    ids, others = ({ledger.sample_of_line(s) for s in ledger.sample_lines} for ledger in (own, one))
    shared = {key[:2] for key in names.values()} & {key[:2] for key in _names(one).values()}
    return not ids & others and len(shared) >= _ALIKE * len({key[:2] for key in names.values()}) > 0


def _names(ledger: Ledger) -> dict[int, Key]:
    """Line of a taxon -> its key."""
    at = [n for n, role in ledger.roles(of_taxa=False).items() if set(role.names) & set(_TELLING)]
    found: dict[int, Key] = {}
    seen: Counter[tuple[str, str]] = Counter()
    for t in ledger.taxon_lines:
        name = " ".join(filter(None, (_said(ledger, t, n) for n in at))).lower()
        key = (ledger.section_of(t).lower(), name)
        found[t] = (*key, seen[key])
        seen[key] += 1
    return found


def _said(ledger: Ledger, t: int, n: int) -> str:
    cell = ledger.cells.get(ledger.at(t, n))
    while cell is None and ledger.roles(of_taxa=False)[n].filled and t > 0:
        t -= 1
        cell = ledger.cells.get(ledger.at(t, n))
    return cell.text if cell is not None else ""


def _taxon_of(ledger: Ledger, at: At) -> int:
    return at[0] if ledger.across else at[1]


def _sample_of(ledger: Ledger, at: At) -> int:
    return at[1] if ledger.across else at[0]


def _by_name(blocks: Sequence[Ledger], *, is_mass: bool) -> dict[Key, float | None]:
    """Key of a line -> what its counts, or its weights, add up to in the blocks; None where a sign is among them."""
    found: dict[Key, float | None] = {}
    for one in blocks:
        names = _names(one)
        amounts: Mapping[At, float | None] = one.mass if is_mass else one.count
        for at, number in amounts.items():
            key = names[_taxon_of(one, at)]
            before = found.get(key, 0.0)
            found[key] = None if before is None or number is None else before + number
    return found


def _target(target: Target, key: Key, elsewhere: Mapping[Key, float | None]) -> Target:
    here, other = target.readings.get("all"), elsewhere.get(key, 0.0)
    if here is None or other is None:
        return target
    worked = replace(here, value=here.value + other, said=f"{here.said} with those of the other blocks")
    return Target(at=target.at, readings={**target.readings, _OVER_BLOCKS: worked})


def _by_label(lines: Iterable[Line]) -> dict[tuple[str, str, int], Line]:
    """Lines by what they are called, which kind they are, and which of those."""
    found: dict[tuple[str, str, int], Line] = {}
    seen: Counter[tuple[str, str]] = Counter()
    for line in lines:
        key = (line.label.lower(), line.kind)
        found[*key, seen[key]] = line
        seen[key] += 1
    return found


def _cross(
    lines: Sequence[Line], own: Ledger, over: set[int],
    blocks: Sequence[tuple[Ledger, Mapping[tuple[str, str, int], Line]]],
) -> None:  # fmt: skip
    """What stands where sums of taxa cross the sums of all blocks takes in what the same sums have in the others."""
    for key, line in _by_label(lines).items():
        same = [(one, known[key]) for one, known in blocks if key in known]
        if line.is_row != own.across or line.kind != "total" or len(same) < len(blocks):
            continue
        targets = []
        for target in line.targets:
            readings = target.readings
            if _sample_of(own, target.at) in over:
                is_mass = _is_weighed(own, target.at)
                readings = {name: _with(worked, name, same, is_mass) for name, worked in readings.items()}
            targets.append(Target(at=target.at, readings=readings))
        line.targets = targets


def _is_weighed(ledger: Ledger, at: At) -> bool:
    return ledger.across and ledger.small_heading(_sample_of(ledger, at)) == "mass"


def _with(worked: Worked | None, name: str, same: Sequence[tuple[Ledger, Line]], is_mass: bool) -> Worked | None:
    """A sum with what the same line gives of the samples of other blocks, of their counts or of their weights."""
    if worked is None:
        return None
    value = worked.value
    for one, line in same:
        of_samples = set(one.sample_lines)
        targets = [target for target in line.targets if _sample_of(one, target.at) in of_samples]
        for more in (target.readings.get(name) for target in targets if _is_weighed(one, target.at) == is_mass):
            if more is None:
                return None
            value += more.value
    return replace(worked, value=value, said=f"{worked.said} with those of the other blocks")
