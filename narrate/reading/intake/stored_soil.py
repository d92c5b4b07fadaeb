"""Totals of litres in a table, worked out again: each sample's soil once, however many rows repeat it."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

from narrate.model.grids import at_of
from narrate.reading.intake.said import Said
from narrate.reading.intake.stored_ledger import Ledger
from narrate.reading.intake.stored_lines import Line, Target, Worked
from narrate.reading.intake.stored_places import At, cells_said
from narrate.reading.intake.volumes_drafted import litres


def soil_lines(ledger: Ledger, ledgers: Sequence[Ledger]) -> Iterable[Line]:
    """A line for each cell in which the volumes cross a total; those of samples that have no number are left."""
    said = _volumes(ledger.finds.facts)
    if not said:
        return
    blocks = [_volumes(one.finds.facts) for one in ledgers if one.grid is ledger.grid and one.table.shape == "crossed"]
    of_blocks = {id: one for block in blocks for id, one in block.items()}
    for at in _crossings(ledger):
        line = _total_line(ledger, at)
        own = ledger.sample_of_line(line)
        lines = ledger.sample_lines
        choices = {
            "since": ledger.run_before(line, of_taxa=False) if ledger.table.shape == "crossed"
            else ledger.run_before(line, of_taxa=True),
            "above": [n for n in lines if n < line],
            "all": lines,
        }  # fmt: skip
        ids = {name: {_sample(ledger, n) for n in found} & set(said) for name, found in choices.items()}
        readings = {"own": _added(said, {own})} if own in said else {n: _added(said, ids[n]) for n in ids if ids[n]}
        whole = {"all": readings.pop("all"), **readings} if "all" in readings else readings
        if len(of_blocks) > len(said):  # 'Site Total' behind the last of several blocks
            whole["all blocks"] = _added(of_blocks, set(of_blocks))
        yield Line(
            kind="total", is_row=False, at=at[1], label="total of the litres",
            targets=[Target(at=at, readings=whole)], guesses=frozenset({"since", "above", "all blocks"}), least=1, of="volume",
        )  # fmt: skip


def _volumes(facts: Mapping[str, Mapping[str, list[Said]]]) -> dict[str, Said]:
    """The first volume that is said of each sample."""
    return {id: said["volume"][0] for id, said in facts.items() if said.get("volume") and not id.startswith("\x00")}


def _crossings(ledger: Ledger) -> list[At]:
    rows, columns = ledger.table.rows, ledger.table.columns
    volumes_down = [c for c, role in columns.items() if "volume" in role.names]
    volumes_across = [r for r, role in rows.items() if "volume" in role.names]
    found = [(r, c) for r, role in rows.items() if role.name == "total" for c in volumes_down]
    found += [(r, c) for r in volumes_across for c, role in columns.items() if role.name == "total"]
    return [at for at in found if at in ledger.cells]


def _total_line(ledger: Ledger, at: At) -> int:
    """The line of totals that a crossing lies in, among the lines of samples."""
    return at[0] if ledger.table.rows[at[0]].name == "total" else at[1]


def _sample(ledger: Ledger, line: int) -> str:
    return ledger.sample_at((-1, line)) if ledger.across else ledger.sample_at((line, -1))


def _added(said: Mapping[str, Said], ids: set[str]) -> Worked | None:
    """The soil of samples in the unit that it is written in; None where one of them has no plain number."""
    units = {said[id].unit for id in ids}
    values = [litres(said[id].text, said[id].unit or "l") for id in ids]
    if len(units) != 1 or None in values:
        return None
    one = litres("1", units.pop() or "l") or 1.0
    places = cells_said(sorted(at_of(said[id].place) for id in ids))
    return Worked(value=sum(value for value in values if value is not None) / one, said=f"the volumes in {places}")
