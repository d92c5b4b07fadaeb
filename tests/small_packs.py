"""A hand-made pack, small enough to see through, for tests that need no real one."""

from __future__ import annotations

from narrate.model.ids import PartId, TaxonId
from narrate.model.packs import Packs, Words
from narrate.model.plants import Condition, ContextKind, Ecology, Part, Taxon, Use, Window
from narrate.model.rules import Selector, ShownMeasure
from narrate.problems import Place

HERE = Place(path="tests/small.yaml", line=1)


def _part(id: str, *roles: str) -> Part:
    return Part(id=PartId(id), plural=f"{id}s", plain=id, plain_plural=f"{id}s", roles=frozenset(roles))


def _kind(id: str, *traits: str) -> ContextKind:
    return ContextKind(id=id, plural=f"{id}s", plain=id, plain_plural=f"{id}s", traits=frozenset(traits))


def _window(part: str, *months: int) -> Window:
    return Window(part=PartId(part), months=months, keeping=("stored",))


PARTS = (
    _part("kernel", "edible", "propagule"),
    _part("cupule", "cob", "byproduct"),
    _part("seed", "propagule"),
    _part("grain", "edible", "propagule"),
    _part("glume base", "chaff", "byproduct"),
    _part("rachis internode", "chaff", "byproduct"),
    _part("nutshell", "nutshell", "byproduct"),
    _part("wood", "wood"),
)
TAXA = (
    Taxon(
        id=TaxonId("Zea mays"),
        rank="species",
        family="Poaceae",
        name="corn",
        trade_name="maize",
        status="crop",
        tags=frozenset({"crop", "tropical-crop"}),
        uses=(Use(use="food", part=PartId("kernel")),),
        windows=(_window("kernel", 8, 9, 10),),
        earliest=600,
        place=HERE,
    ),
    Taxon(
        id=TaxonId("Chenopodium berlandieri"),
        rank="species",
        family="Amaranthaceae",
        name="goosefoot",
        tags=frozenset({"native-crop", "starchy-seed"}),
        status="crop",
        windows=(_window("seed", 9, 10, 11),),
        place=HERE,
    ),
    Taxon(
        id=TaxonId("Chenopodium"),
        rank="genus",
        family="Amaranthaceae",
        name="goosefoot",
        ecology=Ecology(field_weed="strong"),
        tags=frozenset({"small-seed", "greens"}),
        place=HERE,
    ),
    Taxon(
        id=TaxonId("Amaranthus"),
        rank="genus",
        family="Amaranthaceae",
        name="pigweed",
        ecology=Ecology(field_weed="strong"),
        tags=frozenset({"small-seed"}),
        place=HERE,
    ),
    Taxon(
        id=TaxonId("Chenopodium/Amaranthus"),
        rank="group",
        family="Amaranthaceae",
        members=(TaxonId("Chenopodium"), TaxonId("Amaranthus")),
        place=HERE,
    ),
    Taxon(
        id=TaxonId("Carya"), rank="genus", family="Juglandaceae", name="hickory", tags=frozenset({"nut"}), place=HERE
    ),
    Taxon(id=TaxonId("Triticum dicoccum"), rank="species", family="Poaceae", status="crop", place=HERE),
    Taxon(
        id=TaxonId("Stellaria media"),
        rank="species",
        family="Caryophyllaceae",
        status="introduced",
        earliest=1600,
        place=HERE,
    ),
    Taxon(id=TaxonId("Poaceae"), rank="family", family="Poaceae", place=HERE),
)
MAIZE_RATIO = ShownMeasure(
    name="kernels_per_cupule",
    title="Kernels per cupule",
    measure="ratio",
    of=Selector(taxon=("Zea mays",), part=(PartId("kernel"),)),
    to=Selector(taxon=("Zea mays",), part=(PartId("cupule"),)),
    place=HERE,
)


def small_packs() -> Packs:
    """Eight parts, nine taxa, no rules."""
    return Packs(
        words=Words(
            parts={part.id: part for part in PARTS},
            conditions={
                "charred": Condition(id="charred", is_ancient_at_dry_sites=True),
                "uncharred": Condition(id="uncharred", is_ancient_at_dry_sites=False),
            },
            context_kinds={
                k.id: k for k in (_kind("hearth", "thermal"), _kind("pit", "cut"), _kind("midden", "refuse"))
            },
            methods={},
            preservations={"charred": ("charred", "partly charred"), "waterlogged": ("charred", "waterlogged")},
        ),
        taxa={taxon.id: taxon for taxon in TAXA},
        taxon_lookup={taxon.id.lower(): taxon.id for taxon in TAXA},
        statements={},
        rules={},
        audiences={},
        sources={},
        weights={"weak": 1.0, "moderate": 1.8, "strong": 2.6},
        limits=(),
        shown=(
            ShownMeasure(name="items", title="Items", measure="items", of=Selector(), place=HERE),
            ShownMeasure(name="density", title="Items per litre", measure="density", of=Selector(), place=HERE),
            MAIZE_RATIO,
        ),
        questions={},
    )
