"""What plants are called: 'goosefoot', its Latin name in brackets once a page, and what kind of plant it is."""

from __future__ import annotations

import re
from dataclasses import dataclass, field

from narrate.model.audiences import Audience
from narrate.model.ids import TaxonId
from narrate.model.packs import Packs
from narrate.model.plants import Taxon
from narrate.telling import english
from narrate.telling.glossary import GLOSSES, with_poison_told

UNKNOWN = ("unidentified", "indeterminate")
"""Names of plants that could not be told: they take no Latin and stand last in lists."""


@dataclass(slots=True, kw_only=True)
class PlantNames:
    """Plants in the words of one audience, for one page: Latin and glosses are given once."""

    audience: Audience
    packs: Packs
    introduced: set[str] = field(default_factory=set)
    has_glosses: bool = True
    """False where a page is too short to explain plants."""
    may_gloss: bool = True
    """False where the whole page goes without."""

    @property
    def is_plain(self) -> bool:
        return self.audience.register == "plain"

    def plant(self, taxon_id: TaxonId | None, written: str = "", *, plural: bool = False) -> str:
        """The common name where there is one, else the Latin; no Latin added."""
        taxon = self.packs.taxa.get(taxon_id) if taxon_id is not None else None
        if taxon is None:
            return self._unknown(written, plural=plural)
        if taxon.id.lower().startswith(("indeterminate", "unidentified", "unknown")):
            return "unidentified" if self.is_plain else "indeterminate"
        if self.is_plain:
            name = taxon.plural if plural and taxon.plural else taxon.name
            return name or self._family_phrase(taxon, plural=plural)
        trade = taxon.trade_name or (taxon.plural if plural and taxon.plural else taxon.name)
        return trade or self.latin(taxon)

    def latin(self, taxon: Taxon) -> str:
        """The scientific name: genus and species in italics, families and 'sp.' upright."""
        if taxon.rank == "species":
            return english.italic(taxon.id)
        if taxon.rank == "genus":
            return f"{english.italic(taxon.id)} sp."
        if taxon.rank == "group":
            genera = taxon.id.split("/")
            if len(genera) > 1 and all(re.fullmatch(r"[A-Z][a-z]+( [a-z-]+)?", genus) for genus in genera):
                return "/".join(english.italic(genus) for genus in genera)
        return english.literal(taxon.id)

    def latin_once(self, taxon_id: TaxonId | None, *, only_cf: bool = False) -> str:
        """Latin in brackets at the first use on the page, or the gloss for visitors; else nothing."""
        taxon = self.packs.taxa.get(taxon_id) if taxon_id is not None else None
        if taxon is None or taxon.id in self.introduced:
            return ""
        self.introduced.add(taxon.id)
        if self.is_plain:
            gloss = self.gloss(taxon) if self.has_glosses and self.may_gloss else ""
            return f" ({gloss})" if gloss else ""
        if self.audience.shows_latin == "no" or taxon.rank == "broad" or not (taxon.trade_name or taxon.name):
            return ""
        return f" ({'cf. ' if only_cf else ''}{self.latin(taxon)}{self._authority(taxon)})"

    def _authority(self, taxon: Taxon) -> str:
        """' L.' behind a species where the audience wants authorities, once a page as the Latin itself."""
        wanted = self.audience.words.get("authorities", "no") == "yes"
        return f" {english.literal(taxon.authority)}" if wanted and taxon.rank == "species" and taxon.authority else ""

    def gloss(self, taxon: Taxon) -> str:
        """What kind of plant it is, for visitors; empty where the name says it."""
        explained = self.audience.glossary.get(taxon.name)
        if explained == "" and self._is_spoken_for(taxon):
            return ""
        if explained is not None:
            return with_poison_told(explained, taxon.tags)
        for tag, phrase in GLOSSES:
            if tag in taxon.tags:
                told = with_poison_told(self.audience.words.get(f"gloss_{tag}", phrase), taxon.tags)
                is_risky = tag == "greens" and self._has_a_harmful_like(taxon)
                return f"{told} with a poisonous look-alike" if is_risky else told
        return ""

    def _has_a_harmful_like(self, taxon: Taxon) -> bool:
        """Whether a poisonous plant looks like one whose leaves people gather."""
        alike = (self.packs.taxa.get(TaxonId(id)) for id in taxon.look_alikes)
        return any(one is not None and "toxic" in one.tags for one in alike)

    def _is_spoken_for(self, taxon: Taxon) -> bool:
        """Whether pages say of a plant what it means to people, and at their foot that it can poison: no gloss need."""
        standing = {name.split()[-1] for name in self.audience.words if name.startswith("standing ")}
        return "caution poison" in self.audience.words and bool(standing & taxon.tags)

    def food(self, taxon_id: TaxonId | None, written: str = "", *, only_cf: bool = False) -> str:
        """The plant as something to eat: 'hickory nuts', 'acorns', 'maize'."""
        taxon = self.packs.taxa.get(taxon_id) if taxon_id is not None else None
        name = self.plant(taxon_id, written)
        if taxon is not None and "nut" in taxon.tags:
            if taxon.genus == "Quercus":
                name = "acorns"
            elif name in ("hazel", "beech"):
                name = f"{name}nuts"
            elif not re.search(r"nuts?$|acorns?$|pecans?$", name):
                name = f"{name} nuts"
            elif not name.endswith("s"):
                name = f"{name}s"
        elif taxon is not None and ("pulse" in taxon.tags or ("fruit" in taxon.tags and self.is_plain)):
            name = self.plant(taxon_id, written, plural=True)
        return f"{'probable ' if only_cf else ''}{name}"

    @property
    def has_oxford(self) -> bool:
        return self.audience.words.get("oxford", "yes") == "yes"

    def _family_phrase(self, taxon: Taxon, *, plural: bool) -> str:
        explained = self.audience.glossary.get(taxon.family)
        if explained:
            return explained
        return "wild plants" if plural else "wild plant"

    def _unknown(self, written: str, *, plural: bool) -> str:
        known = [self.packs.taxon_lookup.get(half.strip().lower()) for half in written.split("/")]
        if len(known) > 1 and all(known):
            return english.listed([self.plant(half, plural=plural) for half in known], word="or")
        if not written or re.search(r"indet|unid|unknown", written, re.IGNORECASE):
            return "unidentified"
        if self.is_plain:
            # The analyst knew the plant; the packs have no plain name for it.
            return "other"
        return f"recorded as “{english.literal(written)}”"
