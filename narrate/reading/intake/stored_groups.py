"""Which finds a stored total of some taxa adds up, such as 'Total cereals': by the words and taxa of the packs."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from typing import Literal

from narrate.model.ids import PartId
from narrate.model.packs import Packs
from narrate.model.plants import Taxon
from narrate.reading.intake.sheet_finds import Find
from narrate.reading.intake.singulars import one_of
from narrate.reading.intake.written_names import NameReader

Answer = Literal["yes", "perhaps", "no"]
"""'perhaps': a name that no pack knows, or one that some count in and others do not."""

_PLAIN = (
    "all charred column count counts ct cts finds for grand items n nisp no number of overall plant plants remains row "
    "sample samples seeds seed somme species specimens sub subtotal sum summe sums taxa taxon the tot total totals "
    "types gesamt gesamtsumme totale totaal suma soma in by g gram grams weight wt mass percent percentage pct "
    "rows lines zeilen reihen lignes filas righe linhas rijen wierszy różnych verschiedene verschiedener verschillende "
    "liczba zahl número numero núm nb nbre nr different identified différents diferentes diversi "
    "resti restes reste restos fragmente fragments stück nombre anzahl de der di dei des les estimated scaled "
    "adjusted extrapolated est up upscaled multiplied hochger hochgerechnet hochrechnung extrapoliert extrapolé extrapolée extrapolado extrapolada "
    "estrapolato geëxtrapoleerd omgerekend przeliczone przeliczona "
    "densidad densité dichte funddichte densità dichtheid densidade gęstość concentración konzentration concentrazione concentratie pro par por je "
    "toplam toplamı genel tohum tane adet adedi sayı sayısı kalıntı yoğunluk yoğunluğu lt celkem součet kusů "
    "semen zbytků razem ogółem łącznie szczątków nasion összesen ukupno skupaj ialt totalt summa antal "
    "antall rester frø frö tæthed tetthet täthet total geral generale totali sementes semillas graines semi "
    "σύνολο άθροισμα αριθμός 合计 总计 合計 計 小计 小計 总数 "
    "proportion relative abundance frequency density densities per l litre liter litres liters concentration"
)
PLAIN_WORDS = frozenset(_PLAIN.split())
"""Words of a label that do not say which of the taxa are meant."""


def meant_words(label: str) -> tuple[str, ...]:
    """
    The words of a label that say which taxa it is of; none for a total of everything.

    >>> meant_words("Total cereals"), meant_words("Grand total (n)"), meant_words("Fruits & nuts, sum")
    (('cereal',), (), ('fruit', 'nut'))
    >>> meant_words("I alt"), meant_words("Total I"), meant_words("Toplam tohum/tane")
    ((), ('i',), ())
    """
    words = re.findall(r"[^\W\d_]+", re.sub(r"\bi alt\b", " ", label.lower()))
    return tuple(
        dict.fromkeys(one_of(w) for w in words if w not in PLAIN_WORDS and w not in ("and", "or", "und", "et"))
    )


def same_words(label: str, other: str) -> bool:
    """
    Whether two labels mean the same things.

    >>> same_words("Total cereals", "CEREALS"), same_words("Total wild seeds", "Weeds")
    (True, False)
    """
    return bool(meant_words(label)) and set(meant_words(label)) == set(meant_words(other))


class Group:
    """The finds that a label means."""

    def __init__(self, label: str, names: NameReader, words: tuple[str, ...] = ()) -> None:
        self.names = names
        self.packs: Packs = names.packs
        self.is_either = bool(re.search(r"\b(?:and|or|und|et|y)\b|[&+/,]", label.lower()))
        self.tests: list[Callable[[Find], Answer]] = []
        self.is_known = True
        self._seen: dict[tuple[object, ...], Answer] = {}
        words = words or meant_words(label)
        named = self._taxon_test(label) if label else None
        if named is not None:
            self.tests = [named]
            return
        for word in words:
            test = self._test(word)
            if test is None:
                self.is_known = False
                return
            self.tests.append(test)
        self.is_known = bool(self.tests)

    def holds(self, find: Find) -> Answer:
        found = find.name.identification
        key = (found.written, found.taxon, find.part, find.condition, find.completeness, find.is_cf)
        if key not in self._seen:
            answers = [test(find) for test in self.tests]
            order = ("yes", "perhaps", "no") if self.is_either else ("no", "perhaps", "yes")
            self._seen[key] = next(one for one in order if one in answers)  # type: ignore[assignment]
        return self._seen[key]

    def _taxa_of(self, find: Find) -> list[Taxon]:
        found = find.name.identification
        ids = [found.taxon] if found.taxon else list(found.either)
        return [self.packs.taxa[id] for id in ids if id in self.packs.taxa]

    def _taxon_test(self, label: str) -> Callable[[Find], Answer] | None:
        """A test for the taxon that a label names, such as 'Total Zea mays' or 'Poaceae total'."""
        words = [w for w in re.findall(r"[^\W\d_]+", label) if w.lower() not in PLAIN_WORDS]
        if not words or any(one_of(w.lower()) in _KINDS or self.names.part_of(w) for w in words[:1]):
            return None
        meant = self.names.read(" ".join(words))
        wanted = self.packs.taxa.get(meant.identification.taxon) if meant.identification.taxon else None
        if wanted is None or not meant.is_known:
            return None

        def test(find: Find) -> Answer:
            taxa = self._taxa_of(find)
            if meant.part and find.part != meant.part:
                return "no"
            if not taxa:
                return "perhaps"
            within = [_is_within(taxon, wanted) for taxon in taxa]
            return "yes" if all(within) else "perhaps" if any(within) or _is_within(wanted, taxa[0]) else "no"

        return test

    def _test(self, word: str) -> Callable[[Find], Answer] | None:
        if word in _KINDS:
            kind = _KINDS[word]

            def of_taxa(find: Find) -> Answer:
                taxa = self._taxa_of(find)
                known = self.packs.words.parts.get(PartId(find.part))
                roles: frozenset[str] = known.roles if known is not None else frozenset()
                if not taxa:
                    return "perhaps"
                answers = {kind(taxon, roles) for taxon in taxa}
                return answers.pop() if len(answers) == 1 else "perhaps"

            return of_taxa
        part = self.names.part_of(word) if len(word) >= _LEAST_LETTERS else ""
        roles = _PARTS_BY_ROLE.get(word)
        if roles or part:

            def of_parts(find: Find) -> Answer:
                known = self.packs.words.parts.get(PartId(find.part))
                if known is None or find.part == "indeterminate":
                    return "perhaps"
                if roles and "straw" in known.roles and "chaff" in roles:
                    return "perhaps"  # nodes of straw are chaff in one sheet and stand by themselves in another
                if roles:
                    return "yes" if roles & known.roles else "no"
                return "yes" if find.part == part or part in find.part.split() else "no"

            return of_parts
        if word in ("whole", "complete", "fragment", "frag", "fragmented", "broken"):
            wanted = "whole" if word in ("whole", "complete") else "fragment"
            return lambda find: "yes" if find.completeness == wanted else "no"
        if word in (
            "identified",
            "identifiable",
            "unidentified",
            "indeterminate",
            "indet",
            "unidentifiable",
            "unknown",
        ):
            is_named = word.startswith("ident")
            return lambda find: "yes" if is_named != is_unnamed(find) else "no"
        condition = _LETTERS.get(word) or (self.names.condition_of(word) if len(word) >= _LEAST_LETTERS else "")
        if condition:
            return lambda find: "yes" if find.condition == condition else "no"
        return None


def is_unnamed(find: Find) -> bool:
    return bool(re.match(r"(?:indet|unid|unknown)", find.name.identification.written, re.IGNORECASE))


def _is_within(taxon: Taxon, wanted: Taxon) -> bool:
    """Whether a taxon is another or belongs to it."""
    if taxon.id == wanted.id or taxon.id in wanted.members:
        return True
    if wanted.rank == "family":
        return taxon.family == wanted.id
    return wanted.rank == "genus" and taxon.genus == wanted.id


_LEAST_LETTERS = 4
"""Of a word for a part or a condition: 'ch.' may be charred or chaff."""

_LETTERS = {"c": "charred", "ch": "charred", "u": "uncharred", "uc": "uncharred", "unch": "uncharred"}
"""Common practice, no source: letters behind 'Total' for conditions."""

_PARTS_BY_ROLE: Mapping[str, frozenset[str]] = {
    "seed": frozenset({"propagule"}),
    "wood": frozenset({"wood"}),
    "charcoal": frozenset({"wood"}),
    **dict.fromkeys(("chaff", "spreu", "druschreste", "kaf", "plewy", "pula", "glumella"), frozenset({"chaff"})),
    "nutshell": frozenset({"nutshell"}),
}

Kind = Callable[[Taxon, frozenset[str]], Answer]


def _tagged(*tags: str, edible: bool = False) -> Kind:
    """Taxa with one of the tags; their chaff and stalks perhaps."""

    def kind(taxon: Taxon, roles: frozenset[str]) -> Answer:
        if "wood" in roles:
            return "no"
        if not taxon.tags & frozenset(tags):
            return "perhaps" if taxon.rank in ("family", "broad") else "no"
        return "perhaps" if edible and "edible" not in roles else "yes"

    return kind


def _weed(taxon: Taxon, roles: frozenset[str]) -> Answer:
    if "wood" in roles or taxon.status == "crop" or taxon.tags & {"crop", "nut", "cereal", "pulse"}:
        return "no"
    return "yes" if taxon.tags & {"field-weed", "ruderal"} or taxon.ecology.field_weed != "none" else "perhaps"


def _wild(taxon: Taxon, roles: frozenset[str]) -> Answer:
    if "wood" in roles:
        return "no"
    if taxon.status == "crop" or "crop" in taxon.tags:
        return "no"
    return "perhaps" if taxon.status == "either" or taxon.tags & {"nut", "fruit"} else "yes"


def _grass(taxon: Taxon, roles: frozenset[str]) -> Answer:
    if taxon.family != "Poaceae":
        return "no" if taxon.family else "perhaps"
    return "perhaps" if taxon.tags & {"cereal", "millet", "crop"} else "yes"


def _sedge(taxon: Taxon, roles: frozenset[str]) -> Answer:
    return "yes" if taxon.family == "Cyperaceae" else "no" if taxon.family else "perhaps"


# Common practice, no source: what such words mean in lists of finds; where practice differs the answer is 'perhaps'.
_KINDS: Mapping[str, Kind] = {
    "cereal": _tagged("cereal", "millet", edible=True),
    "getreide": _tagged("cereal", "millet", edible=True),
    "céréale": _tagged("cereal", "millet", edible=True),
    "millet": _tagged("millet", edible=True),
    "pulse": _tagged("pulse"),
    "legume": _tagged("pulse"),
    "nut": _tagged("nut"),
    "fruit": _tagged("fruit", "old-field-fruit"),
    "crop": _tagged("crop", "native-crop", "tropical-crop", "cereal", "pulse", edible=True),
    "cultigen": _tagged("crop", "native-crop", "tropical-crop", "cereal", "pulse", edible=True),
    "cultivated": _tagged("crop", "native-crop", "tropical-crop", "cereal", "pulse", edible=True),
    "domesticate": _tagged("crop", "native-crop", "tropical-crop", "cereal", "pulse", edible=True),
    "weed": _weed,
    "wild": _wild,
    "grass": _grass,
    "sedge": _sedge,
}
