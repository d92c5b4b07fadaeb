"""Which remains a claim rests on."""

from __future__ import annotations

import pytest

from narrate.model.findings import Tally
from narrate.model.packs import Packs
from narrate.model.rules import Selector
from narrate.telling.behind import is_meant

KERNEL = Tally(taxon="Zea mays", written="Zea mays", part="kernel", condition="charred", counted=12, estimated=12.0)
UNKNOWN = Tally(taxon=None, written="Nomen", part="seed", condition="charred", counted=1, estimated=1.0)
GRASS = Tally(taxon="Poaceae", written="Poaceae", part="seed", condition="charred", counted=1, estimated=1.0)


@pytest.mark.parametrize(
    ("selector", "tally", "meant"),
    [
        (Selector(), KERNEL, True),
        (Selector(taxon=("Zea mays",)), KERNEL, True),
        (Selector(taxon=("Zea",)), KERNEL, True),
        (Selector(family=("Poaceae",)), KERNEL, True),
        (Selector(taxon=("Zea mays",)), GRASS, False),
        (Selector(taxon=("Poaceae",)), GRASS, True),
        (Selector(not_taxon=("Zea mays",)), KERNEL, False),
        (Selector(part=("cupule",)), KERNEL, False),
        (Selector(role=("edible",), tag=("crop",)), KERNEL, True),
        (Selector(tag=("nut",)), KERNEL, False),
        (Selector(not_tag=("crop",)), KERNEL, False),
        (Selector(status=("crop",)), KERNEL, True),
        (Selector(condition=("uncharred",)), KERNEL, False),
        (Selector(taxon=("Zea mays",)), UNKNOWN, False),
    ],
)
def test_keys_narrow_together(selector: Selector, tally: Tally, meant: bool, packs: Packs):
    """A selector means a taxon and all below it, never what is above; its keys narrow together."""
    assert is_meant(selector, tally, packs) is meant
