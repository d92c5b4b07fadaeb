"""Narratives of one judged dig, told once for each audience: every test that only reads them is given the same."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import TYPE_CHECKING

from narrate.model.ids import Subject
from narrate.model.narrative import Narrative
from narrate.telling.tell import narratives

if TYPE_CHECKING:
    from narrate.pipeline.judged import Judged


class ToldOnce:
    """`told["report"]` are the narratives for that audience, told when first asked for; nobody can change them."""

    def __init__(self, whole: Judged) -> None:
        self._whole = whole
        self._told: dict[str, Mapping[Subject, Narrative]] = {}

    def __getitem__(self, audience: str) -> Mapping[Subject, Narrative]:
        if audience not in self._told:
            w = self._whole
            self._told[audience] = MappingProxyType(narratives(w.project, w.packs, w.findings, w.claims, audience))
        return self._told[audience]
