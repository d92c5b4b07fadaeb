"""Lists of finds of sites in several phases: the phase is part of the id, or the phases of a site are added up."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from narrate.model.layouts import Role
from narrate.reading.intake.evidence import Look


def sites_by_phase(
    look: Look, finds: Sequence[int], columns: Mapping[int, Role], sample: int
) -> tuple[dict[int, Role], list[str]]:
    """
    The roles of phases where sites are taken for samples and one stands in several phases: the finest joins the id.

    A coarser one stays the phase, and any other is a note of the sample. What is told comes with them.
    """
    phases = [c for c, role in columns.items() if role.names == ("phase",)]
    if columns[sample].names != ("sample", "site") or not phases:
        return {}, []
    lines = [r for r in finds if look.text(r, sample)]

    def several(*of: int) -> int:
        return len({tuple(look.text(r, c) for c in (sample, *of)) for r in lines})

    finest = max(phases, key=lambda c: (several(c), -c))
    if several(finest) == several():
        return {}, []
    coarser = next((c for c in phases if c != finest and several(finest, c) == several(finest)), None)
    made = {c: Role(name="sample note", filled=columns[c].filled) for c in phases if c not in (finest, coarser)}
    also = () if coarser is not None else ("phase",)
    made[finest] = Role(name="sample", also=also, filled=columns[finest].filled)
    return made, ["sites stand in several phases; their ids are joined with /: each phase of a site is a sample"]
