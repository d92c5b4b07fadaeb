"""A second table of the same samples and names, of shares, densities or sums: held against the counts of the others."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

from narrate.model.layouts import DERIVED_ROLES
from narrate.reading.intake.stored_ledger import Ledger, Litres
from narrate.reading.intake.stored_lines import Line, Target, Worked
from narrate.reading.intake.stored_places import At, cells_said
from narrate.reading.intake.stored_rates import per_litre, share

_TAXA = ("taxon", "genus", "code", "common name")


class SecondTable:
    """A table without counts of its own."""

    def __init__(self, ledger: Ledger, others: Sequence[Ledger], litres: Mapping[str, Litres]) -> None:
        self.ledger, self.litres = ledger, litres
        self.counts: dict[tuple[str, str], list[tuple[Ledger, At]]] = {}
        self.of_sample: dict[str, list[tuple[Ledger, At]]] = {}
        for other in others:
            if other.table.shape != "crossed" or not other.columns:
                continue
            names = {t: _name(other, t) for t in other.taxon_lines}
            for s in other.sample_lines:
                id = other.sample_of_line(s)
                for t in other.taxon_lines:
                    at = other.at(t, s)
                    self.of_sample.setdefault(id, []).append((other, at))
                    self.counts.setdefault((id, names[t]), []).append((other, at))

    def lines(self) -> Iterable[Line]:
        """One line for each row or column of results."""
        ledger = self.ledger
        for line, role in ledger.table.columns.items():
            if role.name not in DERIVED_ROLES:
                continue
            made = Line(kind=role.name, is_row=False, at=line, label=ledger.head(line, of_taxa=not ledger.across))
            made.why_not = "no other table has counts of the same samples and names"
            for row in ledger.rows:
                id, name = self._said(row, line)
                made.targets.append(Target(at=(row, line), readings=self._readings(id, name)))
            yield made

    def _said(self, row: int, column: int) -> tuple[str, str]:
        """The sample and the name of a cell."""
        s, t = (column, row) if self.ledger.across else (row, column)
        texts = [
            self.ledger.cells[self.ledger.at(n, s)].text
            for n, role in self.ledger.roles(of_taxa=True).items()
            if "sample" in role.names and self.ledger.at(n, s) in self.ledger.cells
        ]
        return "/".join(dict.fromkeys(texts)), _name(self.ledger, t)

    def _readings(self, sample: str, name: str) -> dict[str, Worked | None]:
        pieces = self.counts.get((sample, name), [])
        if not pieces:
            return {}
        own, base = self._sum(pieces[:1]), self._sum(self.of_sample[sample])
        both = {"added up": self._sum(pieces)} if len({id(one) for one, _ in pieces}) > 1 else {}
        if own is None:
            return both
        soil = [self.litres[sample]] if sample in self.litres else []
        return both | {
            "%": share(own, base, 100), "share": share(own, base, 1), "same": own,
            "density": per_litre(own, soil, "", self.ledger.grid),
            "density of ten": per_litre(own, soil, "per 10 litres", self.ledger.grid),
        }  # fmt: skip

    def _sum(self, pieces: list[tuple[Ledger, At]]) -> Worked | None:
        total = 0.0
        for other, at in pieces:
            value = other.count.get(at, 0.0)
            if value is None:
                return None
            total += value
        by_sheet: dict[str, list[At]] = {}
        for other, at in pieces:
            by_sheet.setdefault(other.grid.sheet, []).append(at)
        home = self.ledger.grid.sheet
        before = {sheet: "" if sheet == home else f"sheet {sheet}, " for sheet in by_sheet}
        said = [f"{before[sheet]}{cells_said(cells)}" for sheet, cells in by_sheet.items()]
        return Worked(value=total, said=f"the counts in {' and '.join(said)}")


def _name(ledger: Ledger, t: int) -> str:
    """The name that stands at a line of taxa, in lower case."""
    texts = [
        ledger.cells[ledger.at(t, n)].text
        for n, role in ledger.roles(of_taxa=False).items()
        if set(role.names) & {*_TAXA, "part"} and ledger.at(t, n) in ledger.cells
    ]
    return " ".join(texts).lower()
