"""Shares and densities worked out from sums, with the words that say from what."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from narrate.model.grids import Grid
from narrate.reading.intake.stored_ledger import Litres
from narrate.reading.intake.stored_lines import Worked
from narrate.reading.intake.stored_places import CellsSaid, Later

_PER = re.compile(r"(?:/|\b(?:per|pro|par|por|je|na)\b)\s*(\d{1,4})\s*l", re.IGNORECASE)


def share(part: Worked | None, base: Worked | None, times: float) -> Worked | None:
    """A share of a sum, in percent where times is 100; None where there is nothing to take it of, or grams of items."""
    if part is None or base is None or not base.value or base.perhaps:
        return None
    if _is_of(part, "weights") and _is_of(base, "counts"):
        return None
    by = times / base.value
    said = Later(lambda: f"{part.said} of {re.sub('the (?:counts|weights) in', 'those in', str(base.said))}")
    return replace(part, value=part.value * by, said=said, perhaps=tuple(more * by for more in part.perhaps))


def _is_of(worked: Worked, what: str) -> bool:
    """Whether counts, or weights, were added up."""
    said = worked.said
    if isinstance(said, CellsSaid):
        return said.what == what and bool(said.places)
    return str(said).startswith(f"the {what}")


def per_litre(part: Worked | None, soil: Sequence[Litres], label: str, home: Grid) -> Worked | None:
    """
    A sum per litre, or per ten of them where the label says so; None where no volume is known.

    home:  the sheet of the stored result; a volume that stands in another place is named in full.
    """
    litres = sum(one.litres for one in soil)
    if part is None or not litres:
        return None
    found = _PER.search(label)
    by = (float(found[1]) if found else 1.0) / litres
    first, last = soil[0].place, soil[-1].place
    where = first.cell if (first.path, first.sheet) == (home.path, home.sheet) and first.cell else str(first)
    if len(soil) > 1:
        is_near = last.cell and (last.path, last.sheet) == (first.path, first.sheet)
        where += f" to {last.cell}" if is_near else " and others"
    said = Later(lambda: f"{part.said} over {litres:.6g} litres in {where}")
    return replace(part, value=part.value * by, said=said, perhaps=tuple(more * by for more in part.perhaps))


def scaled(worked: Worked | None, share_sorted: float | None) -> Worked | None:
    """The same scaled up for what was not sorted; None where all was, or nobody says."""
    if worked is None or share_sorted is None:
        return None
    more = tuple(one / share_sorted for one in worked.perhaps)
    said = Later(lambda: f"{worked.said}, scaled up from the {share_sorted:.4g} that was sorted,")
    return replace(worked, value=worked.value / share_sorted, said=said, perhaps=more)
