"""Names as analysts write them, and the taxa that they mean."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, field

from narrate.model.ids import TaxonId
from narrate.model.plants import Identification, Taxon

QUALIFIERS: tuple[tuple[str, str], ...] = (
    (r"(?<![\w.])(?:cf|aff|conf)(?:\.|(?=\s))|\?", "cf."),
    (r"(?:\s|[-–‑])types?\b\.?|(?<![\w.])tp\.", "type"),
    (r"(?<![\w.])(?:agg\.|aggregate\b)", "agg."),
    (r"(?<![\w.])(?:s\.\s?l\.|s\.\s?lat\.|sensu lato\b)", "s.l."),
    (r"(?<![\w.])spp(?:\.|\b)", "spp."),
    (r"(?<![\w.])sp(?:\.|\b)", "sp."),
    (r"(?<![\w.])indet(?:\.|\b)", "indet."),
)
"""What stands beside a name, and how it is kept; of several the first in this list, the most doubtful, is kept."""

_BELOW_SPECIES = ("ssp.", "subsp.", "var.", "f.", "cv.", "ssp", "subsp", "var")
_EITHER = re.compile(r"\s*/\s*|\s+or\s+", re.IGNORECASE)
_MOST_HALVES = 6
_LONGEST_NAME = 200
"""Longer than any name with its authors; a longer text is no name."""


@dataclass(slots=True)
class Identifier:
    """Turns names into identifications; each distinct text is worked out once."""

    taxa: Mapping[TaxonId, Taxon]
    lookup: Mapping[str, TaxonId]
    made: dict[TaxonId, Taxon] = field(default_factory=dict)
    """Genera and families that the packs know only by what lies below them."""
    _known: dict[str, Identification] = field(default_factory=dict)
    _genera: dict[str, Taxon] = field(default_factory=dict)
    _families: dict[str, Taxon] = field(default_factory=dict)
    _groups: dict[frozenset[TaxonId], TaxonId] = field(default_factory=dict)

    def __post_init__(self) -> None:
        for taxon in self.taxa.values():
            if taxon.rank == "species":
                self._genera.setdefault(taxon.genus.lower(), taxon)
            if taxon.family:
                self._families.setdefault(taxon.family.lower(), taxon)
            if taxon.rank == "group" and taxon.members:
                self._groups.setdefault(frozenset(taxon.members), taxon.id)

    def identify(self, written: str) -> Identification:
        """The identification behind a name; `taxon` is None and `either` empty where no pack knows it."""
        found = self._known.get(written)
        if found is None:
            found = self._known[written] = self._identified(written)
        return found

    def _identified(self, written: str) -> Identification:
        name = " ".join(written.split())
        if len(name) > _LONGEST_NAME:
            return Identification(written=name, taxon=None)
        qualifier, bare = split_qualifier(name)
        taxon = self._exactly(name) or self._exactly(bare)
        if taxon is None and _EITHER.search(bare):
            return self._either(name, bare, qualifier)
        if taxon is None:
            taxon = self._loosely(bare)
        return Identification(written=name, taxon=taxon, qualifier=qualifier)

    def _exactly(self, name: str) -> TaxonId | None:
        return self.lookup.get(_flat(name))

    def _loosely(self, name: str) -> TaxonId | None:
        """
        The taxon of a name with an authority or a rank below the species behind it, or of a genus or family that the
        packs know only by what lies below it.
        """
        words = name.split()
        for end in range(len(words), 0, -1):
            rest = words[end:]
            if not _may_be_left_out(rest) or any(self._is_a_name(word) for word in rest if word[:1].isupper()):
                continue
            if end == 1 and rest and not any("." in word or "(" in word for word in rest):
                # 'Chenopodium Berlandiery' is a slip in the epithet, not a genus with its author.
                continue
            shorter = " ".join(words[:end])
            found = self._exactly(shorter) or (self._made(shorter) if end == 1 else None)
            if found is not None:
                return found
        return None

    def _is_a_name(self, word: str) -> bool:
        bare = word.strip("()[],").lower()
        return bare in self.lookup or bare in self._genera or bare in self._families

    def _made(self, name: str) -> TaxonId | None:
        """A taxon made for a genus or family, with the family known and nothing else: no tag, no use, no season."""
        for rank, below in (("genus", self._genera), ("family", self._families)):
            one = below.get(name.lower())
            if one is not None:
                id = TaxonId(one.genus if rank == "genus" else one.family)
                self.made.setdefault(
                    id,
                    Taxon(
                        id=id,
                        rank=rank,  # type: ignore[arg-type]
                        family=one.family,
                        status="either",
                        region=one.region,
                        place=one.place,
                    ),
                )
                return id
        return None

    def _either(self, name: str, bare: str, qualifier: str) -> Identification:
        """
        'A/B': the group that is defined for the pair, else the taxa that it may be.

        A half that no pack knows stays among them as written, so that no rule takes the name for the other half.
        """
        halves = _halves(bare)
        joined = (self.lookup.get(_flat("/".join(halves))), self.lookup.get(_flat("/".join(reversed(halves)))))
        taxon = joined[0] or joined[1]
        ids = [self._exactly(half) or self._loosely(split_qualifier(half)[1]) for half in halves]
        if taxon is None and None not in ids:
            taxon = self._groups.get(frozenset(id for id in ids if id is not None))
            if taxon is None and len(set(ids)) == 1:
                taxon = ids[0]
        if taxon is not None or not any(ids):
            return Identification(written=name, taxon=taxon, qualifier=qualifier)
        either = tuple(dict.fromkeys(id or TaxonId(half) for id, half in zip(ids, halves, strict=True)))
        return Identification(written=name, taxon=None, either=either, qualifier=qualifier)

    def is_known(self, name: Identification) -> bool:
        """True if every taxon that it names is known to the packs."""
        if name.taxon is not None:
            return True
        return bool(name.either) and all(id in self.taxa or id in self.made for id in name.either)

    def unknown_part(self, name: Identification) -> str:
        """What of a name no pack knows, without what stands beside it."""
        unknown = [id for id in name.either if id not in self.taxa and id not in self.made]
        return unknown[0] if unknown else split_qualifier(name.written)[1] or name.written


def split_qualifier(name: str) -> tuple[str, str]:
    """
    What stands beside a name, and the name without it.

    >>> split_qualifier("cf. Carya sp."), split_qualifier("Triticum cf. spelta"), split_qualifier("Galium aparine-type")
    (('cf.', 'Carya'), ('cf.', 'Triticum spelta'), ('type', 'Galium aparine'))
    """
    kept = ""
    for pattern, qualifier in QUALIFIERS:
        bare = re.sub(pattern, " ", name, flags=re.IGNORECASE)
        if bare != name:
            kept = kept or qualifier
            name = bare
    return kept, " ".join(name.split())


def _halves(bare: str) -> list[str]:
    """
    The names of an A/B name; an epithet alone belongs to the genus before it.

    >>> _halves("Triticum dicoccum/spelta"), _halves("Chenopodium / Amaranthus")
    (['Triticum dicoccum', 'Triticum spelta'], ['Chenopodium', 'Amaranthus'])
    """
    halves = [half for half in _EITHER.split(bare, maxsplit=_MOST_HALVES) if half]
    for i in range(1, len(halves)):
        before = halves[i - 1].split()
        if halves[i][:1].islower() and len(before) > 1 and before[0][:1].isupper():
            halves[i] = f"{before[0]} {halves[i]}"
    return halves


def _may_be_left_out(words: list[str]) -> bool:
    """True for an authority, such as (Wangenh.) K. Koch, and for a rank below the species with its name."""
    if not words or words[0].lower() in _BELOW_SPECIES:
        return True
    return all(_is_of_an_authority(word) for word in words)


def _is_of_an_authority(word: str) -> bool:
    bare = word.strip("()[],&")
    return not bare or bare in ("ex", "et", "in", "f.", "fil.", "de", "von", "van", "al.") or bare[:1].isupper()


def _flat(name: str) -> str:
    return " ".join(re.sub(r"\s*/\s*", "/", name).lower().split())
