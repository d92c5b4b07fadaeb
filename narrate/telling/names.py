"""What remains and kinds of context are called: '12 maize kernels', 'hearth'."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass

from narrate.model.findings import Tally
from narrate.model.plants import ContextKind
from narrate.telling import english, manner, numbers
from narrate.telling.finds import PIECES, grams, with_plant, within
from narrate.telling.plant_names import UNKNOWN, PlantNames

MANY_FRAGMENTS = 0.25
"""Share of fragments from which visitors are told of them where no number stands (judgement of the makers)."""


MANY_DOUBTS = 0.1
"""Share of doubtful names from which visitors are told of them (judgement of the makers)."""

FEW_SEEDS = 10
"""Seeds up to which visitors read how many were whole and how many in bits (judgement of the makers)."""

_PIECES_ANYHOW = re.compile(r"^(pieces|bits|fragments|flakes|halves) of |\b(fragments|pieces|scales|crumbs)$")
"""Names of parts that are pieces whatever their completeness."""

HALVES = re.compile(r"(halves) of (.+)")


@dataclass(slots=True, kw_only=True)
class Names(PlantNames):
    """Names of plants, finds and kinds of context in the words of one audience, for one page."""

    in_figures: bool = False
    """True while a list holds a count of ten or more: then all its counts are figures."""


    # Remains

    def remains(
        self,
        tally: Tally,
        *,
        with_number: bool = True,
        number_near: bool = False,
        with_mass: bool = False,
        latin: bool = True,
    ) -> str:
        """
        One tally: '12 maize kernels', 'about 95 bits of corn cob', '3.4 g of hickory nutshell'.

        number_near: that the number stands elsewhere in the sentence; a number that holds fragments always says so.
        """
        plural = tally.counted != 1 or not with_number
        noun = self.part_of_plant(tally, plural=plural)
        tail = self.latin_once(tally.taxon, only_cf=tally.only_cf) if latin else ""
        if self.is_plain and tail.startswith((" (a ", " (an ", " (the ")):
            # The find is a part of the plant that the gloss explains.
            tail = f" (from {tail[2:]}"
        mass = f"{grams(tally.mass_g)} g" if tally.mass_g is not None else ""
        if not tally.counted:
            if mass:
                return f"{mass} of {re.sub(r'^[a-z]+ of (an? )?', '', self.part_of_plant(tally, plural=True))}{tail}"
            noted = "noted as present" if tally.is_noted and not self.is_plain else ""
            return ("some " if self.is_plain and with_number else "") + noun + within(tail, noted)
        if self.is_plain:
            sure = self.surely(tally)
            least = 0.0 if with_number or number_near else MANY_FRAGMENTS
            noun = self._with_bits(tally, self.part_of_plant(tally, plural=plural), least)
            number = f"{self.number(sure)}{self._perhaps(tally, sure)}"
            text = (self._whole_and_pieces(tally, sure) or f"{number} {noun}") if with_number else noun
            return text + tail
        text = f"{self.number(tally.counted)} {noun}" if with_number else noun
        if not with_mass:
            return text + within(tail, self.doubts(tally))
        own, more = self._masses(tally)
        return text + within(within(tail, self.doubts(tally)), own) + more

    def _masses(self, tally: Tally) -> tuple[str, str]:
        """
        What the counted items weigh, and what was weighed beside them without being counted.

        '0.51 g' and ' and 1.12 g more that was not counted'; '0.05 g for the 12 weighed' where not all were.
        """
        if tally.mass_g is None:
            return "", ""
        own, weighed = tally.mass_g - tally.uncounted_g, tally.counted - tally.unweighed
        said = "" if weighed <= 0 or own <= 0 else f"{grams(own)} g"
        if said and tally.unweighed:
            said = f"{said} for the {self.figure(weighed)} weighed"
        more = f" and {grams(tally.uncounted_g)} g more that was not counted" if tally.uncounted_g > 0 else ""
        return said, more

    def surely(self, tally: Tally) -> int:
        """Items without those of which the name is in doubt, where these are enough to be told of."""
        is_told = MANY_DOUBTS * tally.counted <= tally.doubtful < tally.counted and tally.doubtful
        return tally.counted - tally.doubtful if is_told else tally.counted

    def _perhaps(self, tally: Tally, sure: int) -> str:
        """' (perhaps 14)' behind 11 that are sure; empty where all that was counted is told as sure."""
        return f" (perhaps {self.number(tally.counted)})" if tally.counted > sure else ""

    def _with_bits(self, tally: Tally, noun: str, least: float) -> str:
        """'corn kernels and bits of kernel', 'bits of acorn kernel'; the noun itself where fewer are fragments."""
        fragments, sure = self.fragments_of(tally), self.surely(tally)
        halves = HALVES.match(noun)
        if halves and tally.fragments - (tally.counted - sure) >= max(least * sure, 1):
            return f"{halves[1]} and bits of {halves[2]}"
        if fragments == tally.counted and fragments:
            whole = self.part_of_plant(tally, plural=False)
            whole = english.with_article(whole) if self.plant(tally.taxon, tally.written) in UNKNOWN else whole
            return f"{_piece(self, tally, plural=tally.counted != 1)} of {whole}"
        if fragments < least * tally.counted or not fragments:
            return noun
        return f"{noun} and {_piece(self, tally, plural=True)} of {self.part(tally, plural=False).split(' of ')[0]}"

    def _whole_and_pieces(self, tally: Tally, sure: int) -> str:
        """
        'four corn cobs and five pieces of corn cob': of what is no seed, and of few seeds, both are counted; empty
        where all is one.
        """
        pieces = self.fragments_of(tally)
        is_told_together = _is_seed(self, tally) and (tally.counted >= FEW_SEEDS or sure < tally.counted)
        if not 0 < pieces < sure or is_told_together or HALVES.match(self.part_of_plant(tally, plural=True)):
            return ""
        one, whole = self.part_of_plant(tally, plural=False), sure - pieces
        named = one if whole == 1 else self.part_of_plant(tally, plural=True)
        piece = _piece(self, tally, plural=pieces != 1)
        of = self.part(tally, plural=False).split(" of ")[0] if _is_seed(self, tally) else one
        return f"{self.number(whole)} {named} and {self.number(pieces)} {piece} of {of}"

    def count_of_part(self, tally: Tally) -> str:
        """'273 kernels (153 of them fragments)', without the plant."""
        doubts = self.doubts(tally)
        text = f"{self.number(tally.counted)} {self.part(tally, plural=tally.counted != 1)}"
        return f"{text} ({doubts})" if doubts else text

    def doubts(self, tally: Tally) -> str:
        """
        'seven of them fragments, two of these cf.'; empty where all is whole and certain, and for visitors.

        Fragments named cf. are told as the one thing that they are, and cf. names among the whole ones as others.
        """
        if self.is_plain:
            return ""
        fragments, cf = self.fragments_of(tally), tally.doubtful if tally.doubtful < tally.counted else 0
        both = min(tally.doubtful_fragments, cf) if fragments else 0
        if both and both == fragments == cf:
            return self._of_them(tally, both, "a fragment named cf.", "fragments named cf.")
        said = [self._of_them(tally, fragments, "a fragment", "fragments")] if fragments else []
        if cf and fragments in (0, tally.counted):
            said.append(self._of_them(tally, cf, "cf.", "cf."))
        elif cf and both == fragments:
            # Every fragment is in doubt, and some whole ones are as well.
            said.append(f"{'this' if both == 1 else 'these'} and {self._others(cf - both)} cf.")
        elif cf:
            said += [f"{self.number(both)} of these cf."] if both else []
            said += [f"{self._others(cf - both)} cf."] if cf > both else []
        return ", ".join(said)

    def _others(self, number: int) -> str:
        return f"{self.number(number)} {'other' if number == 1 else 'others'}"

    def _of_them(self, tally: Tally, number: int, one: str, many: str) -> str:
        if tally.counted == 1:
            return one
        if number == 1:
            return f"one of them {one}"
        return f"{'all' if number == tally.counted else self.number(number)} of them {many}"

    def fragments_of(self, tally: Tally) -> int:
        """Items recorded as fragments, of a part that may be whole: a kernel, a cupule, a cob, a stalk, but no shell."""
        is_named = self.is_plain or self.plant(tally.taxon, tally.written) not in UNKNOWN
        comes_in_pieces = _PIECES_ANYHOW.search(self.part(tally, plural=True)) or "wood" in _roles(self, tally)
        return tally.fragments if is_named and not comes_in_pieces else 0

    def part_of_plant(self, tally: Tally, *, plural: bool) -> str:
        """'maize kernels', 'pieces of acorn shell', 'probable goosefoot seeds', 'unidentified seeds'."""
        noun = self.part(tally, plural=plural)
        plant = self.plant(tally.taxon, tally.written)
        taxon = self.packs.taxa.get(tally.taxon) if tally.taxon is not None else None
        doubt = "probable " if tally.only_cf else ""
        if "wood" in _roles(self, tally) and (taxon is not None or plant in UNKNOWN):
            charred = "charcoal" if tally.condition == "charred" else "wood"
            return f"{'fragments' if plural else 'fragment'} of {doubt}{plant} {charred}"
        if plant.startswith("recorded as"):
            return f"{noun} {plant}"
        if plant in UNKNOWN and "prepared" in _roles(self, tally):
            return noun
        if (
            taxon is not None
            and taxon.genus == "Quercus"
            and noun.split()[0] in ("nutmeat", "nutmeats", "kernel", "kernels")
        ):
            plant, noun = "acorn", noun.split(" of ")[0]
        pieces = PIECES.match(noun)
        if pieces:
            whole = f"{doubt}{with_plant(plant, pieces[3])}"
            return f"{pieces[1]} of {english.article(whole) + ' ' if pieces[2] else ''}{whole}"
        if " of " in plant or plant.endswith(" plant"):
            return f"{noun} from {english.with_article(doubt + plant)}"
        return f"{doubt}{with_plant(plant, noun)}"

    def kind_of_find(self, tally: Tally) -> str:
        """What was found, without a number: 'acorn shell', 'grape', 'indeterminate seeds'."""
        taxon = self.packs.taxa.get(tally.taxon) if tally.taxon is not None else None
        if taxon is None or "nut" in taxon.tags or self.plant(tally.taxon, tally.written) in UNKNOWN:
            return re.sub(r"^(pieces|bits) of ", "", self.part_of_plant(tally, plural=True))
        return f"{'probable ' if tally.only_cf else ''}{self.plant(tally.taxon, tally.written)}"

    def part(self, tally: Tally, *, plural: bool) -> str:
        """The part alone, in the audience's words; mass words take 'pieces of'."""
        part = self.packs.words.parts.get(tally.part)
        if part is None:
            return english.literal(tally.part)
        if self.is_plain:
            return part.plain_plural if plural else part.plain
        if part.plural == part.id:
            return f"{'pieces' if plural else 'piece'} of {part.id}"
        return part.plural if plural else part.id

    def grouped(self, tallies: Sequence[Tally], *, at_most: int, with_mass: bool = False) -> list[str]:
        """Tallies by plant, most items first: ['96 cupules and 12 kernels of maize (*Zea mays*)', …]."""
        groups: dict[str, list[Tally]] = {}
        for tally in tallies:
            plant = self.plant(tally.taxon, tally.written)
            key = f"{plant} {tally.part}" if plant in UNKNOWN else f"{tally.taxon or tally.written}"
            groups.setdefault(key, []).append(tally)
        ordered = sorted(groups.values(), key=lambda g: (self._is_last(g[0]), -sum(t.counted for t in g)))
        return [self._group(group, with_mass=with_mass) for group in ordered[:at_most]]

    def number(self, value: int) -> str:
        """A count of remains in this audience's manner."""
        if self.audience.shows_figures and not self.is_plain:
            below = 2 if self.in_figures and value > 1 else 10
            return numbers.count(value, words_below=below, thousands=manner.thousands(self.audience))
        return numbers.about(value, thousands=manner.thousands(self.audience))

    def figure(self, value: int) -> str:
        """A count in figures, however small, as in brackets."""
        return numbers.count(value, words_below=0, thousands=manner.thousands(self.audience))

    # Contexts

    def kind(self, kind_id: str, *, plural: bool = False) -> str:
        """The kind of context in the audience's words."""
        kind = self.packs.words.context_kinds.get(kind_id)
        if kind is None:
            return english.literal(kind_id)
        if self.is_plain:
            return kind.plain_plural if plural else kind.plain
        return kind.plural if plural else kind.id

    def kind_known(self, kind_id: str) -> ContextKind | None:
        return self.packs.words.context_kinds.get(kind_id)

    def _group(self, group: Sequence[Tally], *, with_mass: bool) -> str:
        counted = [tally for tally in group if tally.counted]
        if len(counted) < 2 or any(tally.only_cf for tally in counted):
            return english.listed([self.remains(tally, with_mass=with_mass) for tally in group], oxford=self.has_oxford)
        taxon_id, written = counted[0].taxon, counted[0].written
        plant = self.plant(taxon_id, written)
        if self.is_plain or not plant or plant.startswith(("recorded", "other", *UNKNOWN)):
            return english.listed([self.remains(tally) for tally in counted], oxford=self.has_oxford)
        parts = [self.count_of_part(t) for t in counted]
        return f"{english.listed(parts, oxford=self.has_oxford)} of {plant}{self.latin_once(taxon_id)}"

    def _is_last(self, tally: Tally) -> bool:
        return self.plant(tally.taxon, tally.written) in UNKNOWN


def _roles(names: Names, tally: Tally) -> frozenset[str]:
    part = names.packs.words.parts.get(tally.part)
    return part.roles if part else frozenset()


def _piece(names: Names, tally: Tally, *, plural: bool) -> str:
    """'bits' of a seed, 'pieces' of a cob or stalk: visitors know single cupules as bits of cob already."""
    return f"{'bit' if _is_seed(names, tally) else 'piece'}{'s' * plural}"


def _is_seed(names: Names, tally: Tally) -> bool:
    return bool({"propagule", "edible"} & _roles(names, tally))
