"""Plants as packs know them, and names as an analyst wrote them."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

from narrate.model.ids import PartId, SourceKey, TaxonId
from narrate.problems import Place

Known = Literal["read", "memory-H", "memory-M", "memory-L", "calc", "convention", "judgement"]
"""How well a fact is known. All but 'read' and 'calc' are shown to users as a default to check."""
KNOWN: tuple[Known, ...] = ("read", "memory-H", "memory-M", "memory-L", "calc", "convention", "judgement")

Keeping = Literal["perishable", "stored", "persists", "with the crop"]
"""Why a part found in a deposit does or does not tell a season: eaten fresh, kept for months, left on the
plant or ground for months, or carried in with a harvest."""
KEEPING: tuple[Keeping, ...] = ("perishable", "stored", "persists", "with the crop")

TAGS = (
    "crop", "native-crop", "tropical-crop", "cereal", "glume-wheat", "free-threshing-cereal", "hulled-barley", "millet",
    "pulse", "starchy-seed", "oily-seed", "fibre", "early-season-seed", "nut", "fruit", "old-field-fruit", "greens",
    "small-seed", "root-tuber", "tobacco", "medicine", "toxic", "wetland", "grassland", "heath", "turf", "woodland",
    "wood", "softwood", "hardwood", "old-world", "field-weed", "ruderal", "thatch",
    "indeterminate",
)  # fmt: skip
"""Tags that rules of narrate ask for, whether or not a plant of the region has them. Packs of a project may add others."""


UNNAMED = ("Indeterminate", "Unidentified")
"""Taxa of what has no name at all: of such charcoal nobody says what wood it was."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Use:
    """One thing that people did with one part of a plant, and who says so."""

    use: str
    """food, greens, oil, medicine, smoke, dye, fibre, fuel, building, ritual, none …"""
    part: PartId | None = None
    note: str = ""
    sources: tuple[SourceKey, ...] = ()
    known: Known = "memory-M"


@dataclass(frozen=True, slots=True, kw_only=True)
class Window:
    """The months in which a part can be gathered."""

    part: PartId
    months: tuple[int, ...]
    """Calendar months in order of the season; a window over the new year reads (11, 12, 1)."""
    keeping: tuple[Keeping, ...]
    sources: tuple[SourceKey, ...] = ()
    known: Known = "memory-M"
    note: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Ecology:
    habitat: str = ""
    field_weed: Literal["strong", "moderate", "weak", "none"] = "none"
    """How firmly the taxon, found with a crop, speaks of crop fields."""
    sow: str = ""
    """autumn, spring or both, for weeds of sown crops."""
    soil: tuple[str, ...] = ()
    """sandy, clay, acid, lime-rich, wet, dry, rich, poor …"""
    height: str = ""
    """low, medium, tall or twining."""
    seed: tuple[str, ...] = ()
    """big or small, free or headed, heavy or light."""
    life: str = ""
    """annual, biennial, perennial."""
    sources: tuple[SourceKey, ...] = ()
    known: Known = "memory-M"


@dataclass(frozen=True, slots=True, kw_only=True)
class SeedsPerFruit:
    """How many seeds one fruit holds at most, so that many seeds are not taken for many fruits."""

    most: int
    note: str = ""
    sources: tuple[SourceKey, ...] = ()
    known: Known = "memory-M"


@dataclass(frozen=True, slots=True, kw_only=True)
class Taxon:
    """A plant, or a group that cannot be told apart further."""

    id: TaxonId
    rank: Literal["species", "genus", "family", "group", "broad"]
    family: str
    authority: str = ""
    name: str = ""
    """Common name in the singular as visitors read it, such as 'corn'; empty where there is none."""
    plural: str = ""
    """Plural of the common name; equal to `name` for names that have none, such as 'corn'."""
    trade_name: str = ""
    """Common name as specialists of the region write it, such as 'maize'; empty: same as `name`."""
    other_names: tuple[str, ...] = ()
    synonyms: tuple[str, ...] = ()
    """Other scientific names, shorthands and spellings that mean this taxon."""
    members: tuple[TaxonId, ...] = ()
    """For groups: the taxa that it may be."""
    status: Literal["crop", "native", "introduced", "either"] = "native"
    earliest: int | None = None
    """Earliest calendar year at which the region is known to have it; None: always had it."""
    earliest_known: Known | None = None
    habit: str = ""
    """grass, herb, vine, shrub, tree, aquatic …"""
    tags: frozenset[str] = frozenset()
    """What rules ask for: crop, native-crop, starchy-seed, oily-seed, nut, fruit, greens, grain …"""
    uses: tuple[Use, ...] = ()
    windows: tuple[Window, ...] = ()
    seeds_per_fruit: SeedsPerFruit | None = None
    """None: not known, or a seed to a fruit; of a species without it, that of its genus."""
    ecology: Ecology = Ecology()
    long_here: tuple[SourceKey, ...] = ()
    """Works that have it in the region long before contact, where many take it for a newcomer."""
    look_alikes: tuple[str, ...] = ()
    cautions: tuple[str, ...] = ()
    note: str = ""
    sources: tuple[SourceKey, ...] = ()
    region: str = ""
    place: Place

    @property
    def genus(self) -> str:
        return self.id.split()[0] if self.rank in ("species", "genus") else ""


SEEDS: frozenset[str] = frozenset(("seed", "achene", "nutlet", "fruit stone"))
"""Parts of which one fruit may hold many."""


def seeds_in_one_fruit(taxa: Mapping[TaxonId, Taxon], taxon: TaxonId | None, part: str) -> int:
    """Most seeds that one fruit of a plant holds; 1 where the packs give no number, and for parts that are no seeds."""
    known = taxa.get(taxon) if taxon is not None and part in SEEDS else None
    if known is None:
        return 1
    of_genus = taxa.get(TaxonId(known.genus)) if known.genus else None
    held = known.seeds_per_fruit or (of_genus.seeds_per_fruit if of_genus is not None else None)
    return held.most if held is not None else 1


@dataclass(frozen=True, slots=True, kw_only=True)
class Identification:
    """A name as the analyst wrote it, and what packs make of it."""

    written: str
    taxon: TaxonId | None
    """None: no pack knows the name."""
    either: tuple[TaxonId, ...] = ()
    """'A/B' where no group is defined for the pair: the taxa it may be."""
    qualifier: str = ""
    """'', 'cf.', 'type', 'agg.', 's.l.', 'sp.', 'spp.', 'indet.'."""

    @property
    def is_certain(self) -> bool:
        return self.qualifier != "cf." and not self.either


@dataclass(frozen=True, slots=True, kw_only=True)
class Part:
    """A plant part from the words."""

    id: PartId
    plural: str
    plain: str
    """Singular for visitors."""
    plain_plural: str
    roles: frozenset[str]
    """edible, byproduct, wood, chaff, straw, cob, nutshell, propagule, underground, prepared, vegetative …"""
    synonyms: tuple[str, ...] = ()
    counting: str = ""
    """What one item is."""
    sources: tuple[SourceKey, ...] = ()
    stands_for: int = 1
    """Items of its like that one stands for where chaff is set against grain: 2 for a spikelet fork."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Condition:
    """A state of the remains: charred, mineralised …"""

    id: str
    is_ancient_at_dry_sites: bool
    synonyms: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class ContextKind:
    """A kind of context from the words."""

    id: str
    plural: str
    plain: str
    plain_plural: str
    traits: frozenset[str]
    """thermal, storage, refuse, structure, cut, surface, burial …"""
    synonyms: tuple[str, ...] = ()
    explained: str = ""
    """One sentence for visitors."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CountingTerm:
    """Pieces of one sort and what one of them is worth in individuals."""

    part: tuple[PartId, ...]
    completeness: tuple[str, ...] = ("whole",)
    each: float = 1.0


@dataclass(frozen=True, slots=True, kw_only=True)
class CountingRule:
    """How pieces of one taxon are turned into a minimum number of individuals."""

    id: str
    individual: str
    """What is numbered: 'grain', 'glume base', 'seed'."""
    add: tuple[CountingTerm, ...] = ()
    """Summed."""
    larger_of: tuple[CountingTerm, ...] = ()
    """Ends of one thing: only the larger of these is added."""
    has_minimum: bool = True
    """False for what is weighed and counted in pieces: nutshell, wood, rind."""
    sources: tuple[SourceKey, ...] = ()
    known: Known = "convention"
    note: str = ""

    def terms(self) -> tuple[CountingTerm, ...]:
        return (*self.add, *self.larger_of)


@dataclass(frozen=True, slots=True, kw_only=True)
class EarLine:
    """What one whole ear of a crop holds: pieces of a by-product to one grain."""

    crop: TaxonId
    byproduct: tuple[PartId, ...]
    grain: tuple[PartId, ...]
    low: float
    """Pieces to one grain; equal to `high` where the plant allows one value."""
    high: float
    sources: tuple[SourceKey, ...] = ()
    known: Known = "memory-M"
    note: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Exchange:
    """What a gram of one thing is held to be worth in grams of another, with the range that the literature gives."""

    id: str
    taxon: tuple[str, ...]
    part: tuple[PartId, ...]
    to_taxon: tuple[str, ...]
    to_part: tuple[PartId, ...]
    factor: float
    low: float
    high: float
    sources: tuple[SourceKey, ...] = ()
    known: Known = "memory-M"
    note: str = ""
