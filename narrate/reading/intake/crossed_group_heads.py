"""Names without counts in a crossed table: a plant that was found in no sample, or the head of a group."""

from __future__ import annotations

import re
from dataclasses import dataclass

from narrate.model.plants import Taxon
from narrate.reading.intake.crossed_rows import RowsOfCounts
from narrate.reading.intake.evidence import NAMED
from narrate.reading.intake.group_heads import names_a_group, says_the_same
from narrate.reading.intake.header_words import heading

_BARE_GENUS = re.compile(r"(?:cf\.? )?(?!\w+(?:aceae|oideae)\b)[A-Z][a-z]{2,}(?: spp?\.?)?")


@dataclass(slots=True)
class GroupHeads(RowsOfCounts):
    """The same with what a name without counts is."""

    def _is_genus_among_others(self, row: int, label: str) -> bool:
        """Whether a genus without counts stands among others that have some, and over no species of its own."""
        look = self.look
        if not _BARE_GENUS.fullmatch(label) or look.name_score(row, self.names) < NAMED or names_a_group(label):
            return False
        others = [look.text(r, self.names) for r in self.body if look.name_score(r, self.names) >= NAMED]
        bare = sum(bool(_BARE_GENUS.fullmatch(text)) for text in others)
        genus, below = label.removeprefix("cf. "), look.text(row + 1, self.names).removeprefix("cf. ")
        is_over_own = below.startswith((genus, f"{genus[0]}.")) or not below[:1].isupper()
        return bare >= 3 and 3 * bare >= len(others) and not is_over_own

    def _heads_a_group(self, row: int, label: str) -> bool:
        """
        Whether a label without counts that reads as a species is the head of a group.

        Its words are those of groups, a total below says them again, or it stands at once behind a total and alone has
        no part where others have one.
        """
        if names_a_group(label):
            return True
        first = re.sub(r"^cf[._ ]+", "", label).split()[0]
        if first.lower() in {str(taxon.genus).lower() for taxon in self._taxa_of(label)}:
            return False
        below = range(row + 1, self.area.bottom + 1)
        totals = (self.look.text(r, self.names) for r in below if heading(self.look.text(r, self.names)) == "total")
        if any(says_the_same(total, label) for total in totals):
            return True
        behind = next((r for r in range(row - 1, self.area.top - 1, -1) if self._row_has(r)), row)
        if heading(self.look.text(behind, self.names)) != "total":
            return False
        return any(
            not self.look.text(row, c) and sum(bool(self.look.text(r, c)) for r in self.body) >= 0.8 * len(self.body)
            for c in self.labels
            if c != self.names
        )

    def _taxa_of(self, label: str) -> list[Taxon]:
        """The taxon of a pack that a label names; empty for none."""
        names = self.look.names
        taxon = names.read(label).identification.taxon
        known = names.packs.taxa.get(taxon) if taxon is not None else None
        return [known] if known is not None else []

    def _row_has(self, row: int) -> bool:
        return self.look.cells_in(row, self.area.left, self.right) > 0
