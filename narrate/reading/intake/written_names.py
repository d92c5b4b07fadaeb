"""Names as sheets write them: taken apart into taxon, part, condition, size class, and what is no plant at all."""

# ruff: noqa: E501

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, field, replace

from narrate.model.ids import TaxonId
from narrate.model.packs import Packs
from narrate.model.plants import Identification
from narrate.reading.intake.plant_words_abroad import CONDITIONS_ABROAD, PARTS_ABROAD
from narrate.reading.intake.remarks import conditions_in
from narrate.reading.taxa import Identifier
from narrate.reading.values import find_word

# The alternative family names that the International Code of Nomenclature allows (Art. 18.5 of the Shenzhen Code;
# quoted from memory), and older spellings in use with them.
OLD_FAMILIES: Mapping[str, str] = {
    "gramineae": "Poaceae",
    "graminae": "Poaceae",
    "cruciferae": "Brassicaceae",
    "leguminosae": "Fabaceae",
    "papilionaceae": "Fabaceae",
    "umbelliferae": "Apiaceae",
    "compositae": "Asteraceae",
    "labiatae": "Lamiaceae",
    "palmae": "Arecaceae",
    "guttiferae": "Clusiaceae",
    "chenopodiaceae": "Amaranthaceae",
}

# Common practice, no source: what else ends up in lists of flotation finds.
_NOT_PLANTS: tuple[tuple[str, str], ...] = (
    (r"fish|birds?|(?:small )?mammals?|amphibians?|fish ?(?:bones?|scales?|vertebrae?)|bird bones?|(?:small |large |burnt |burned |calcined )?(?:mammal |animal |human |rodent |amphibian )?bones?(?: frag(?:ment)?s?)?|teeth|tooth|otoliths?", "bone"),
    (r"(?:land |marine |fresh ?water |terrestrial )?(?:snails?|mollus[ck]s?|mollusca|gastropods?|mussels?|oysters?|bivalves?)(?: shells?)?|marine shells?|egg ?shells?|shellfish|sea ?shells?", "shell"),
    (r"insects?(?: (?:remains|fragments|parts))?|beetles?|coleoptera|fly pupae?|puparia|pupae|weevils?|sitophilus.*|mites?|ants?|arthropods?|(?:earth)?worm (?:cocoons?|capsules?|casts?|eggs?(?: cases?)?)|daphnia.*|cladocera.*|ostracods?|foraminifera|forams?|bryozoa|larvae?|ephippia", "insects and other small animals"),
    (r"slag|hammer ?scale|clinkers?|cinders?|coal|fuel ash(?: slag)?|iron|metal|glass|vitrified.*|industrial waste|magnetic.*", "metal working and fuel waste"),
    (r"pot(?:tery|sherds?)?|sherds?|ceramics?|daub|brick|tile|cbm|fired clay|burnt clay|flints?|lithics?|debitage|obsidian|flakes?|beads?|plaster|mortar|stones?|gravel|fcr|fire.?cracked rock|artefacts?|artifacts?", "artefacts"),
    (r"dung(?: pellets?)?(?: frag(?:ment)?s?)?|(?:rodent|mouse|sheep|goat) (?:droppings?|pellets?|faeces)|faecal pellets?|coprolites?|droppings?", "droppings"),
    (r"(?:modern |uncharred )?(?:rootlets?|roots? \(modern\)|modern roots?|modern (?:plant )?(?:material|contamination|straw|seeds?)|moss|grit|sand|silt|sediment)|(?:faecal |fecal |mineralised |mineralized |phosphatic |calcium |cess )*(?:concretions?|nodules?)", "modern or mineral matter"),
    (r"huesos|ossements|knochen(?:fragmente)?|fischreste|ossa|botten|ossos|fauna|ictiofauna|micro ?fauna|espinas", "bone"),
    (r"caracoles|conchas|malaco ?fauna|schnecken|mollusken|mollusques|molluschi|moluscos|slakken", "shell"),
    (r"insectos|insectes|insekten|insetti|insetos", "insects and other small animals"),
    (r"esti[eé]rcol|excrementos?|coprolit[oi]s?|copr[oó]litos?|mist|fumier|letame|estrume", "droppings"),
    (r"escorias?|scories|schlacken?|scorie|esc[oó]rias?", "metal working and fuel waste"),
    (r"cer[aá]mica|c[eé]ramique|keramik|ceramica|l[ií]tic[ao]s?|silex|sílex|feuerstein", "artefacts"),
)  # fmt: skip


def not_a_plant(name: str) -> str:
    """
    The kind of a find that is no plant; empty for plants.

    >>> not_a_plant("Fish bone"), not_a_plant("Land snails"), not_a_plant("Hickory nutshell"), not_a_plant("Boneset")
    ('bone', 'shell', '', '')
    """
    flat = " ".join(re.sub(r"[_.]", " ", name.lower()).split()).rstrip(" *:")
    return next((kind for pattern, kind in _NOT_PLANTS if re.fullmatch(pattern, flat)), "")


@dataclass(frozen=True, slots=True, kw_only=True)
class WrittenName:
    """One name, taken apart. What the name does not say is empty."""

    identification: Identification
    part: str = ""
    condition: str = ""
    conditions_apart: tuple[str, ...] = ()
    """All conditions that the name says, where it says more than one: 'charred and uncharred'."""
    completeness: str = ""
    size_class: str = ""
    quantity: str = ""
    """'mass' or 'count' where the name carries a unit: 'Carya nutshell (g)'."""
    unit: str = ""
    note: str = ""
    is_known: bool = False


# Common practice, no source: words of lists for parts that the word packs name otherwise.
MORE_PARTS: Mapping[str, str] = {
    "pip": "seed", "pips": "seed", "fruitstone": "fruit stone", "fruitstones": "fruit stone", "tail grain": "grain",
    "caryops": "grain", "korn": "grain", "körner": "grain", "same": "seed", "samen": "seed", "spelzbasis": "glume base",
    "spelzbasen": "glume base", "ährchengabel": "spikelet fork", "ährchengabeln": "spikelet fork", "schale": "nutshell",
    "holzkohle": "charcoal", "caryopse": "grain", "graine": "seed", "graines": "seed", "base de glume": "glume base",
    "bases de glume": "glume base", "furca": "spikelet fork", "semilla": "seed", "semillas": "seed", "cariópside": "grain", "sclerote": "fungal sclerotium", "charcoal frags": "charcoal", "wood charcoal": "charcoal",
}  # fmt: skip
# Common practice, no source: letters for conditions, beside those of the word packs.
_SHORT_CONDITIONS: Mapping[str, str] = {
    "w": "waterlogged", "wl": "waterlogged", "m": "mineralised", "min": "mineralised", "d": "desiccated", "ch": "charred",
    "carb": "charred", "uc": "uncharred", "unch": "uncharred",
}  # fmt: skip
_AUTHOR = re.compile(
    r"\s+(?:\([^)]*\)\s*)?(?:[A-Z][\w-]*\.|L\.|&|ex|et|f\.|[A-Z][a-zü]+\.)(?:\s*(?:[A-Z][\w-]*\.?|&|ex|f\.))*(?=\s|/|$)|\s+\([A-Z][^)]*\.\)"
)
"""Authors behind an epithet: 'L.', 'Schübl.', '(L.) Moench'; only ones with a point, so that no name is lost."""

_CONDITIONS = re.compile(
    r"\b(un-?charred|un-?carboni[sz]ed|un-?burn(?:t|ed)|(?:not|non)[ -](?:charred|carboni[sz]ed|burn(?:t|ed))"
    r"|(?:part(?:ly|ially)?|semi|half|incompletely)[ -](?:charred|carboni[sz]ed|burn(?:t|ed))|charred|carboni[sz]ed|burnt|burned|minerali[sz]ed|waterlogged|desiccated|dessicated|modern)\b",
    re.IGNORECASE,
)
_FRAGMENTS = re.compile(r"[\s,(-]+(?:frags?\.?|fragments?|fragm\.?|fgts?|broken)\)?$", re.IGNORECASE)
_WHOLE = re.compile(r"[\s,(-]+(?:whole|complete|entire)\)?$", re.IGNORECASE)
_SIZE = re.compile(
    r"[(\[]?\s*((?:[<>≤≥]\s*\d+(?:\.\d+)?\s*mm|\d+(?:\.\d+)?\s*[-–]\s*\d+(?:\.\d+)?\s*mm|[<>≤≥]\s*\d+(?:\.\d+)?)|(?:small|medium|large)(?= *[)\]]))\s*[)\]]?",
    re.IGNORECASE,
)
_UNIT = re.compile(
    r"[\s,]*[(\[]\s*(g|gr|mg|wt|wt\.? ?g|weight|weight ?g|grams|ml|cc|vol|n|no\.?|count|ct|#)\s*[)\]]\s*$|[\s_,-]+(wt|weight|wt\.? ?\(?g\)?|ct|count)\s*$",
    re.IGNORECASE,
)
_TAIL = re.compile(r"_(g|gr|mg|n|no|nr|ct|count|wt|weight|wt_g|weight_g)$", re.IGNORECASE)
"""Units as columns of databases carry them: carya_nutshell_g."""
_FOOTNOTE = re.compile(r"(?<=\w)[*†‡§¹²³]+\s*$|^[*†‡]+\s*")


@dataclass(slots=True)
class NameReader:
    """Takes names apart with the words and taxa of the packs. Each distinct text is worked out once."""

    packs: Packs
    identifier: Identifier
    given: Mapping[str, str] = field(default_factory=dict)
    """Names and codes that the layout explains."""
    _common: dict[str, TaxonId] = field(default_factory=dict)
    _known: dict[tuple[str, str], WrittenName] = field(default_factory=dict)
    _parts: dict[str, str] = field(default_factory=dict)
    _part_words: set[str] = field(default_factory=set)

    def __post_init__(self) -> None:
        seen: dict[str, set[TaxonId]] = {}
        for taxon in self.packs.taxa.values():
            for name in (taxon.name, taxon.plural, taxon.trade_name, *taxon.other_names):
                if name:
                    seen.setdefault(name.lower(), set()).add(taxon.id)
        self._common = {name: next(iter(ids)) for name, ids in seen.items() if len(ids) == 1}
        self._parts = {**PARTS_ABROAD, **MORE_PARTS, **self.packs.words.part_lookup}
        self._part_words = {word for part in self._parts for word in part.split()}

    def read(self, written: str, genus_before: str = "") -> WrittenName:
        """
        The name taken apart.

        genus_before:  genus of the row above, for 'T. dicoccum' and '" dicoccum'.
        """
        key = (written, genus_before)
        found = self._known.get(key)
        if found is None:
            found = self._known[key] = self._read(written, genus_before)
        return found

    def part_of(self, text: str) -> str:
        """The part that a text names, in any spelling; empty for none."""
        flat = re.sub(r"[()\[\].:]", " ", text).strip()
        found = find_word(self._parts, flat)
        if found is None:
            short = _FRAGMENTS.sub("", " " + flat).strip()
            found = find_word(self._parts, short) or find_word(self._parts, short.removesuffix("s"))
        if found is None and "," in text:
            pieces = text.split(",")  # 'seed, charred'
            if any(self.condition_of(piece) for piece in pieces):
                found = next((part for part in map(self.part_of, pieces) if part), None)
        if found is None and " / " in text:
            halves = {self.part_of(half) for half in text.split(" / ")} - {""}
            found = halves.pop() if len(halves) == 1 else None  # 'cariosside / caryopsis'
        return found or ""

    def condition_of(self, text: str) -> str:
        flat = text.strip(" ().?")
        if "," in flat:
            pieces = flat.split(",")
            if any(self.part_of(piece) for piece in pieces):
                return next((state for state in map(self.condition_of, pieces) if state), "")
        return find_word(self.packs.words.condition_lookup, flat) or _SHORT_CONDITIONS.get(flat.lower()) or CONDITIONS_ABROAD.get(flat.lower(), "")

    def _condition(self, words: str) -> str:
        """The condition of words that were taken out of a name."""
        return (conditions_in(words) or (self.condition_of(words),))[0] if words else ""

    def is_known(self, name: Identification) -> bool:
        return self.identifier.is_known(name)

    def _read(self, written: str, genus_before: str) -> WrittenName:
        given = self.given.get(written) or self.given.get(written.lower())
        tail = _TAIL.search(written) if not given else None
        name = given or tidy(written[: tail.start()] if tail else written)
        name = with_genus(name, genus_before)
        first = self._identified(name)
        if first is not None:
            made = self._made(written, first, note="")
            return replace(made, quantity=_tail_quantity(tail), unit=_tail_unit(tail)) if tail else made
        note = ""
        mark = _FOOTNOTE.search(name)
        if mark:
            note, name = f"marked {mark[0].strip()}", _FOOTNOTE.sub("", name).strip()
        quantity = unit = ""
        match = _UNIT.search(name)
        if match:
            word = (match[1] or match[2]).lower()
            quantity = (
                "other" if word in ("ml", "cc", "vol") else "count" if word.startswith(("n", "c", "#")) else "mass"
            )
            unit = "mg" if word == "mg" else ("g" if quantity == "mass" else "")
            name = name[: match.start()].strip()
        if tail:
            quantity, unit = _tail_quantity(tail), _tail_unit(tail)
        name, size_class = _without(_SIZE, name)
        name, condition = _without(_CONDITIONS, name)
        condition = self._condition(condition)
        conditions = [condition] if condition else []
        while condition:
            name, more = _without(_CONDITIONS, name)
            condition = self._condition(more)
            conditions += [condition] if condition else []
        conditions = list(dict.fromkeys(conditions))
        name = re.sub(r"\s*[;,&/+]\s*(?=[)\]])|(?<=[(\[])\s*[;,&/+]\s*", "", name) if conditions else name
        if len(conditions) > 1:
            name = re.sub(r"\s*[(\[,]?\s*(?:and|or|&|\+|/)\s*[)\]]?$", "", name)
        name, part, completeness = self._without_part(name)
        if not completeness and _FRAGMENTS.search(name):
            completeness, name = "fragment", _FRAGMENTS.sub("", name).strip()
        elif not completeness and _WHOLE.search(name):
            completeness, name = "whole", _WHOLE.sub("", name).strip()
        name = re.sub(r"\s*[(\[]\s*[)\]]", "", name).strip(" ,;:-")
        identification = self._identified(name)
        if identification is None and not name:
            identification = self.identifier.identify("Indeterminate")
        if identification is None:
            without = re.sub(r"\s*[(\[][^)\]]*[)\]]", "", name).strip()
            identification = self._identified(without) if without and without != name else None
            if identification is not None:
                inside = re.search(r"[(\[]([^)\]]*)[)\]]", name)
                note = "; ".join(filter(None, [note, inside[1] if inside else ""]))
        if identification is None:
            identification = self.identifier.identify(name or written)
        made = self._made(written, identification, note=note)
        return replace(
            made,
            part=part,
            condition=conditions[0] if len(conditions) == 1 else "",
            conditions_apart=tuple(conditions) if len(conditions) > 1 else (),
            completeness=completeness,
            size_class=size_class,
            quantity=quantity,
            unit=unit,
        )

    def _made(self, written: str, identification: Identification, note: str) -> WrittenName:
        kept = replace(identification, written=written)
        return WrittenName(identification=kept, note=note, is_known=self.identifier.is_known(identification))

    def _identified(self, name: str) -> Identification | None:
        """The identification of a name that packs know, as a scientific or as a common name; None for others."""
        if not name:
            return None
        found = self.identifier.identify(name)
        if self.identifier.is_known(found):
            return found
        bare = re.sub(r"\b(?:cf\.?|\?|sp\.?|spp\.?|indet\.?|undiff\.?|type)(?=\s|$)", " ", name, flags=re.IGNORECASE)
        bare = " ".join(bare.split())
        is_cf = bool(re.search(r"\bcf\b|\?", name, re.IGNORECASE))
        first, _, rest = name.partition(" ")
        plain = first + _AUTHOR.sub("", f" {rest}") if rest else name
        if plain != name:
            without = self.identifier.identify(" ".join(plain.split()))
            if self.identifier.is_known(without):
                return without
        old = OLD_FAMILIES.get(bare.lower())
        if old is not None:
            old_found = self.identifier.identify(old)
            if self.identifier.is_known(old_found):
                return replace(old_found, qualifier="cf." if is_cf else found.qualifier)
        id = self._common.get(bare.lower()) or self._common.get(bare.lower().removesuffix("s"))
        if id is not None:
            return Identification(written=name, taxon=id, qualifier="cf." if is_cf else "")
        return None

    def _without_part(self, name: str) -> tuple[str, str, str]:
        """(name without its part, part, completeness): '(glume base)', ', glume bases', ' glume base frag.'."""
        inside = re.search(r"[(\[]([^()\[\]]+)[)\]]\s*$", name)
        if inside:
            part = self.part_of(inside[1])
            if part:
                return name[: inside.start()].strip(), part, "fragment" if "frag" in inside[1].lower() else ""
        for mark in (",", ":", ";", " - ", " – "):
            before, sign, behind = name.rpartition(mark)
            part = self.part_of(behind) if sign else ""
            if part:
                return before.strip(), part, "fragment" if "frag" in behind.lower() else ""
        words = name.split()
        tails = []
        for start in range(max(0, len(words) - 4), len(words)):
            tail, rest = " ".join(words[start:]), " ".join(words[:start])
            part = self.part_of(tail)
            if part and len(tail) > 1 and not (start == 0 and self._is_a_group(tail)):
                tails.append((rest, part, "fragment" if "frag" in tail.lower() else ""))
        # 'Maize cupule' is a synonym of the part; with 'Maize' taken as the taxon it says more.
        for rest, part, completeness in tails:
            if rest and self._identified(rest) is not None:
                return rest, part, completeness
        if tails:
            return tails[0]
        for end in range(min(3, len(words) - 1), 0, -1):
            head = " ".join(words[:end])
            part = self.part_of(head)
            if part and words[end][:1].isupper() and len(head) > 3:
                return " ".join(words[end:]), part, ""
        return name, "", ""

    def _is_a_group(self, text: str) -> bool:
        return text.lower() in self._common


def _tail_quantity(tail: re.Match[str]) -> str:
    return "count" if tail[1].lower().startswith(("n", "c")) else "mass"


def _tail_unit(tail: re.Match[str]) -> str:
    return "" if _tail_quantity(tail) == "count" else "mg" if tail[1].lower() == "mg" else "g"


def _without(pattern: re.Pattern[str], name: str) -> tuple[str, str]:
    match = pattern.search(name)
    if not match:
        return name, ""
    rest = (name[: match.start()] + " " + name[match.end() :]).strip()
    return " ".join(re.sub(r"[(\[]\s*[)\]]", "", rest).split()).strip(" ,;-"), match[1].strip()


def tidy(written: str) -> str:
    """
    A name with the signs between its words made plain.

    >>> tidy("cf_Setaria"), tidy("Triticum.dicoccum"), tidy("Chenopodium_Atriplex"), tidy("Avena & Bromus")
    ('cf. Setaria', 'Triticum dicoccum', 'Chenopodium/Atriplex', 'Avena/Bromus')
    >>> tidy("Triticum undet."), tidy("Vicia gp."), tidy("Poa cf annua"), tidy("Hordeum, Secale")
    ('Triticum indet.', 'Vicia agg.', 'Poa cf. annua', 'Hordeum/Secale')
    """
    name = " ".join(written.replace("\xa0", " ").split())
    name = re.sub(r"(?<=[A-Z][a-z])([a-z]*)[._](?=[A-Z][a-z]{2})", r"\1/", name)
    name = re.sub(r"(?<=[a-z])\.(?=[a-z]{3})", " ", name)
    name = name.replace("_", " ")
    name = re.sub(r"(?<![\w.])(cf|aff)\.?(?=[\sA-Z])\s*", r"cf. ", name)
    name = (
        re.sub(
            r"\b(?:undet|unident|unid|undiff|undifferentiated|indeterminate|undetermined|ind)\b\.?",
            "indet.",
            name,
            flags=re.I,
        )
        if len(name.split()) > 1
        else name
    )
    name = re.sub(r"\bgp\.?(?=\s|$)|\bgroup$", "agg.", name)
    name = re.sub(r"(?<=[a-z])\s*(?:&|\+)\s*(?=[A-Za-z])", "/", name)
    name = re.sub(r"^([A-Z][a-z]{3,}),\s*([A-Z][a-z]{3,})$", r"\1/\2", name)
    return re.sub(r"^\?\s*", "cf. ", " ".join(name.split()))


def with_genus(name: str, before: str) -> str:
    """
    A name whose genus is shortened to that of the row above.

    >>> with_genus("T. dicoccum", "Triticum"), with_genus("cf. T. spelta", "Triticum"), with_genus("R. crispus", "Triticum")
    ('Triticum dicoccum', 'cf. Triticum spelta', 'R. crispus')
    """
    match = re.match(r"(cf\. )?([A-Z])\.?\s+(?=[a-z(])", name)
    if match and before and before[0] == match[2] and len(match[2]) == 1:
        return f"{match[1] or ''}{before} {name[match.end() :]}"
    if before and re.match(r'(?:"|”|″|–|-)\s+[a-z]{3,}', name):
        return f"{before} {name.split(None, 1)[1]}"
    return name


def genus_of(name: str) -> str:
    """
    The genus that a name begins with, for names below it that shorten it; empty for none.

    >>> genus_of("cf. Triticum spelta"), genus_of("Poaceae"), genus_of("wild grasses")
    ('Triticum', 'Poaceae', '')
    """
    match = re.match(r"(?:cf\.?\s+)?([A-Z][a-z]{2,})\b", tidy(name))
    return match[1] if match else ""
