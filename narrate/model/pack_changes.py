"""What a project changes in the packs that come with narrate, and why."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from narrate.model.ids import SourceKey
from narrate.problems import Place


@dataclass(frozen=True, slots=True, kw_only=True)
class PackChange:
    """One rule, statement, plant or limit that the project retired or set otherwise."""

    of: Literal["rule", "statement", "taxon", "limit"]
    id: str
    what: str
    """'retired', 'weight is weak, was strong', 'at_most of kernels_per_cob is 0.3, was 0.5'."""
    because: str
    sources: tuple[SourceKey, ...] = ()
    place: Place
