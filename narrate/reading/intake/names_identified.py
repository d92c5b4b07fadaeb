"""Names held against the taxa of the packs, and the words for parts that stand with them taken off."""

# ruff: noqa: E501

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, field, replace

from narrate.model.ids import TaxonId
from narrate.model.plants import Identification
from narrate.reading.intake.known_words import KnownWords
from narrate.reading.intake.part_words_abroad import OTHER_PARTS
from narrate.reading.intake.singulars import one_of
from narrate.reading.intake.words_in_names import (
    AUTHOR,
    CEREALS_UNTOLD,
    FRAGMENTS,
    INDETERMINATE,
    OLD_FAMILIES,
    SORTS,
    TWO_PARTS,
    says_pieces,
)
from narrate.reading.taxa import Identifier


@dataclass(slots=True, kw_only=True)
class IdentifiedNames(KnownWords):
    """Finds the taxon of a name, and the part that is written with it."""

    identifier: Identifier
    given: Mapping[str, str] = field(default_factory=dict)
    """Names and codes that the layout explains."""
    _common: dict[str, TaxonId] = field(default_factory=dict)

    def __post_init__(self) -> None:
        KnownWords.__post_init__(self)
        seen: dict[str, set[TaxonId]] = {}
        for taxon in self.packs.taxa.values():
            for name in (taxon.name, taxon.plural, taxon.trade_name, *taxon.other_names):
                if name:
                    seen.setdefault(name.lower(), set()).add(taxon.id)
        self._common = {name: next(iter(ids)) for name, ids in seen.items() if len(ids) == 1}

    def is_known(self, name: Identification) -> bool:
        return self.identifier.is_known(name)

    def _identified(self, name: str) -> Identification | None:
        """The identification of a name that packs know, as a scientific or as a common name; None for others."""
        if not name:
            return None
        found = self.identifier.identify(name)
        if self.identifier.is_known(found):
            return found
        bare = re.sub(r"\b(?:cf\.?|\?|sp\.?|spp\.?|indet\.?|undiff\.?|type)(?=\s|$)", " ", name, flags=re.IGNORECASE)
        bare = " ".join(bare.split()).strip(" ,;")
        is_cf = bool(re.search(r"\bcf\b|\?", name, re.IGNORECASE))
        first, _, rest = name.partition(" ")
        plain = first + AUTHOR.sub("", f" {rest}") if rest else name
        if plain != name:
            without = self.identifier.identify(" ".join(plain.split()))
            if self.identifier.is_known(without):
                return without
        undecided = re.sub(r",\s*indet\.?$", "", name)
        if undecided != name and self.identifier.is_known(without := self.identifier.identify(undecided)):
            return without  # 'Hordeum vulgare, indet.': hulled or naked, nobody can say
        is_untold = bare.lower() in CEREALS_UNTOLD and bare != name
        old = "Cerealia indet." if is_untold else OLD_FAMILIES.get(bare.lower())
        if old is not None:
            old_found = self.identifier.identify(old)
            if self.identifier.is_known(old_found):
                return replace(old_found, qualifier="cf." if is_cf else found.qualifier)
        if INDETERMINATE.fullmatch(bare):
            return replace(self.identifier.identify("Indeterminate"), written=name)
        id = self._common.get(bare.lower()) or self._common.get(bare.lower().removesuffix("s"))
        if id is not None:
            return Identification(written=name, taxon=id, qualifier="cf." if is_cf else "")
        return self._of_many(name) or self._either(name)

    def _either(self, name: str) -> Identification | None:
        """'Triticum aestivum durum' as databases write 'Triticum aestivum/durum', where packs know that."""
        species = re.fullmatch(r"((?:cf\. )?[A-Z][a-z]+ [a-z]+) ([a-z]+)", name)
        found = self.identifier.identify(f"{species[1]}/{species[2]}") if species else None
        return replace(found, written=name) if found is not None and found.taxon in self.packs.taxa else None

    def _of_many(self, name: str) -> Identification | None:
        """A name whose last word is an English plural, where its singular is known: 'walnuts', 'adzuki beans'."""
        before, _, last = name.rpartition(" ")
        if not re.fullmatch(r"[A-Z]?[a-z-]{3,}", last) or (one := one_of(last)) == last:
            return None
        found = self._identified(f"{before} {one}".strip())
        return replace(found, written=name) if found is not None else None

    def _without_part(self, name: str) -> tuple[str, str, str]:
        """(name without its part, part, completeness): '(glume base)', ', glume bases', ' glume base frag.'."""
        inside = re.search(r"[(\[]([^()\[\]]+)[)\]]\s*$", name)
        if inside:
            part = self.part_of(inside[1])
            if part:
                return name[: inside.start()].strip(), part, "fragment" if says_pieces(inside[1]) else ""
        for mark in (",", ":", ";", " - ", " – "):
            before, sign, behind = name.rpartition(mark)
            part = self.part_of(behind) if sign else ""
            if part and part != "indeterminate":
                return before.strip(), part, "fragment" if says_pieces(behind) else ""
        words = name.split()
        tails = []
        for start in range(max(0, len(words) - 4), len(words)):
            tail, rest = " ".join(words[start:]), " ".join(words[:start])
            part = self.part_of(tail)
            is_undecided = FRAGMENTS.sub("", tail).lower().rstrip(".") in ("indet", "undet") or self._identified(rest.strip(" ,;")) is not None
            if part == "indeterminate" and rest and is_undecided:
                continue  # of a name that is known, the rest of it is indeterminate, and no part
            if part and len(tail) > 1 and not (start == 0 and self._is_a_group(tail)):
                tails.append((rest, part, "fragment" if says_pieces(tail) else ""))
        # 'Maize cupule' is a synonym of the part; with 'Maize' taken as the taxon it says more.
        for rest, part, completeness in tails:
            if rest and self._identified(rest) is not None:
                return rest, part, completeness
        if tails:
            return tails[0]
        for end in range(min(3, len(words) - 1), 0, -1):
            head = " ".join(words[:end])
            part = self.part_of(head)
            if part and len(head) > 3 and INDETERMINATE.fullmatch(" ".join(words[end:]).rstrip(".")):
                return "Indeterminate", part, ""  # 'Holzkohle indet.'
            if part and words[end][:1].isupper() and len(head) > 3:
                return " ".join(words[end:]), part, ""
        return name, "", ""

    def _without_unknown_part(self, name: str) -> tuple[str, str, str]:
        """(name, part, what is noted) where brackets speak of a part that no pack knows, of two, or of something else."""
        inside = re.search(r"[(\[]([^()\[\]]{2,40})[)\]]\s*$", name)
        text = inside[1].strip() if inside else ""
        halves = {self.part_of(half) for half in text.split("/")}
        words = re.sub(r"\b(?:frags?|fragments?|fragm|broken|whole)\b\.?", "", text, flags=re.IGNORECASE).split()
        is_piece = text.lower().rstrip(".").endswith(("frag", "frags", "fragment", "fragments"))
        is_of_pieces = is_piece and bool(words) and not any(word.lower() in SORTS for word in words)
        if inside and (is_of_pieces or (len(halves) > 1 and "" not in halves)):
            return name[: inside.start()].strip(), "indeterminate", f"part written {text}"
        behind = text or name.rpartition(",")[2].strip() if inside or "," in name else ""
        if behind and FRAGMENTS.sub("", f" {behind}").strip().lower() in OTHER_PARTS:
            rest = name[: inside.start()] if inside else name.rpartition(",")[0]
            return rest.strip(), "indeterminate", f"part written {behind}"  # 'Coix, involucre'
        if inside and "," in text and (first := self.part_of(text.split(",")[0])) not in ("", "indeterminate"):
            return name[: inside.start()].strip(), first, text  # 'Oryza (spikelet base, immature)'
        is_doubt = re.fullmatch(r"cf\.?|\?|prob(?:able)?\.?|poss(?:ible)?\.?", text, re.IGNORECASE)
        last = name.split()[-1] if name else ""
        if not inside and TWO_PARTS.fullmatch(last) and len(name.split()) > 1 and all(map(self.part_of, last.split("/"))):
            return name.removesuffix(last).strip(), "indeterminate", f"part written {last}"
        before, part, _ = (
            self._without_part(name[: inside.start()].strip()) if inside and not is_doubt else ("", "", "")
        )
        return (before, part, text) if part else (name, "", "")  # 'Oryza spikelet base (wild)'

    def _is_a_group(self, text: str) -> bool:
        return text.lower() in self._common
