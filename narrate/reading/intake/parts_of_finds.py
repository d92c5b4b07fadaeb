"""The part of each find of a table, by the closest that says one, else the one that the layout takes for it."""

# ruff: noqa: E501

from __future__ import annotations

import re
from dataclasses import replace
from functools import lru_cache

from narrate.model.layouts import Table
from narrate.reading.intake.default_parts import default_part, is_cereal, is_grass
from narrate.reading.intake.header_words import is_unit_of_mass
from narrate.reading.intake.heads_by_content import SIZES
from narrate.reading.intake.part_words_abroad import part_by_plant
from narrate.reading.intake.plant_words_abroad import has_east_asian_letters
from narrate.reading.intake.remarks import conditions_in
from narrate.reading.intake.said import Line
from narrate.reading.intake.short_words import seed_or_fruit
from narrate.reading.intake.told import Told
from narrate.reading.intake.words_in_names import FRAGMENTS, whole_of_pieces
from narrate.reading.intake.written_names import NameReader, WrittenName

PIECES_ONLY = re.compile(
    r"[(\[]?(?:frags?|fragments?|fragm|fgts?|frgm?|fr|fragmentos?|frammenti?|frammento|fragmente|bruchstücke?|fragment(?:en|er)?|kırık(?:lar)?|zlom(?:ek|ky)|úlom(?:ek|ky)|töredék|ułamki|broken|pieces?|bits?)\.?[)\]]?",
    re.IGNORECASE,
)
"""Words for pieces that stand alone where a part is said."""

_WEIGHED = re.compile(
    r"(?P<part>.*?)(?:[\s,]*[(\[]\s*(?:in )?|[\s,]+(?=[wmgp])|,\s*)(?:(?:weights?|weighed|wt|mass|gew(?:icht)?|poids|peso|masa|waga)[\s.,(\[]*(?:(?:in|en|w) )?)?"
    r"(?P<unit>mg|g|gms?|gr|grams?|grammes?|gramm|gramos?|grammi|gramy)?\.?\s*[)\]]?",
    re.IGNORECASE,
)


@lru_cache(maxsize=4096)
def without_weight(text: str) -> tuple[str, str]:
    """
    The words for a part without the unit of mass behind them, and the unit; the same and nothing where there is none.

    >>> without_weight("fragments (g)"), without_weight("Bruchstücke, Gewicht [mg]"), without_weight("nutshell wt")
    (('fragments', 'g'), ('Bruchstücke', 'mg'), ('nutshell', 'g'))
    >>> without_weight("grain"), without_weight("seed (grape)"), without_weight("fruit stone"), without_weight("pod, part")
    (('grain', ''), ('seed (grape)', ''), ('fruit stone', ''), ('pod, part', ''))
    """
    match = _WEIGHED.fullmatch(text.strip())
    if match is None or not match["part"] or not re.search(r"[^\W\d_]{2}", match["part"]):
        return text, ""
    said = text.strip()[len(match["part"]) :].strip(" ,.([)]")
    if not said or (said.lower() in ("gr", "gms", "gm") and "(" not in text and "[" not in text):
        return text, ""
    return match["part"].strip(" ,"), "mg" if (match["unit"] or "").lower() == "mg" else "g"


_RICE = re.compile(r"(?:cf\.? ?)?(?:Oryza\b|rice\b)", re.IGNORECASE)
_GOURD = re.compile(r"(?:cf\.? ?)?(?:Cucurbita|Lagenaria|Cucumis|Citrullus|Cucurbitaceae|squash|gourd|pumpkin|bottle gourd)\b", re.IGNORECASE)
_NO_SEEDS = re.compile(r"(?:non|other than|no)[- ]?(?:seeds?|fruits?)\b|vegetative\b|végétati|vegetativ", re.IGNORECASE)
"""Heads over what is no seed: 'Non-seed material'."""
_KERNEL = re.compile(r"k(?:j?e|æ)rn(?:e|er|en)?", re.IGNORECASE)
_EAST_ASIAN_PIECES = re.compile(r"[（(].*|(?:碎|残|破)[块片]$")
_NUT_TREE = re.compile(
    r"(?:cf\.? ?)?(?:Castanea|Quercus|Corylus|Fagus|Lithocarpus|Castanopsis|Notholithocarpus|Cyclobalanopsis|Carpinus|chestnut|acorn|oak|hazel|beech)\b",
    re.IGNORECASE,
)
_BROAD = ("wood", "charcoal", "seed", "nutshell", "fruit")
"""Parts that head blocks of a table."""


class Parts:
    """Answers for one table."""

    def __init__(self, table: Table, names: NameReader, told: Told) -> None:
        self.table, self.names, self.told = table, names, told
        self._default: dict[int, tuple[WrittenName, str]] = {}

    def section(self, by_row: Line, by_column: Line) -> WrittenName | None:
        """The head of a section that says a part or a condition of all below it, and the condition of one over it."""
        for line in (by_row, by_column):
            for role in ("section", "group"):
                if role not in line:
                    continue
                heads = [self.names.read(said.text) for said in line[role] if not _NO_SEEDS.match(said.text)]
                state = next((one for one in heads if one.condition or one.conditions_apart), None)
                part = next((one for one in heads if one.part and one.part != "fruit"), None)  # 'Fruits' are plants there
                if state is not None and state.part == "fruit":
                    state = replace(state, part="")
                if state is not None and part is not None:
                    return replace(part, condition=state.condition, conditions_apart=state.conditions_apart)
                if state is not None or part is not None:
                    return state or part
        return None

    def of_find(
        self, name: WrittenName, section: WrittenName | None, by_row: Line, by_column: Line, notes: list[str]
    ) -> tuple[str, str]:
        """
        The part of a find; one that no list knows is kept in the notes and told. A grain of maize is a kernel.

        Beside it the part that was taken where nothing says one, as the layout gives it; else nothing.
        """
        said = self._said(name, section, by_row, by_column, notes)
        taken = self._taken(name, by_row, by_column) if said is None else ""
        return self._of_plant(taken if said is None else said, name, by_row, by_column), taken

    def _of_plant(self, found: str, name: WrittenName, by_row: Line, by_column: Line) -> str:
        """What a part is called of this plant."""
        if found == "spikelet fork" and _RICE.match(str(name.identification.taxon or name.identification.written)):
            return "rice spikelet base"  # rice has no forks, and its base is of one spikelet
        plant = str(name.identification.taxon or name.identification.written)
        if found == "nutshell" and _GOURD.match(plant):
            return "rind"  # the shell of a gourd is no shell of a nut
        said = [one.text for line in (by_row, by_column) for role in ("part", "taxon") for one in line.get(role, ())]
        if found == "fruit flesh" and _NUT_TREE.match(plant) and any("pericarp" in text.lower() for text in said):
            return "nutshell"  # the pericarp of a chestnut is its shell
        return "kernel" if found == "grain" and name.identification.taxon == "Zea mays" else found

    def _names_a_part(self, name: WrittenName) -> bool:
        """Whether a name is nothing but the word for a part, and for a narrower one than blocks are headed by."""
        is_bare = name.identification.taxon == "Indeterminate" and bool(name.part) and name.part not in _BROAD
        return is_bare and name.part != "indeterminate" and self.table.shape == "crossed"

    def _said(
        self, name: WrittenName, section: WrittenName | None, by_row: Line, by_column: Line, notes: list[str]
    ) -> str | None:
        for line in (by_row, by_column):
            for said in line.get("part", ()):
                if name.part and is_unit_of_mass(said.text):
                    continue
                text = self.table.parts.get(said.text, without_weight(said.text)[0])
                text = self.table.parts.get(whole_of_pieces(said.text), text)  # 'K-Frgm.' where K = Korn
                if PIECES_ONLY.fullmatch(text.strip()) or SIZES.fullmatch(text.strip()):
                    continue  # 'fragment' and '>4 mm' under 'Part' say how large, and not what
                if seed_or_fruit(text, self.names):
                    return "grain" if is_cereal(name) else self.names.part_of(re.split(r"\W+", text.strip())[0])
                found = self.names.part_of(text)
                if not found and not re.fullmatch(r"[-–—.?\s]*", text):
                    found = self.names.read(f"Indeterminate {text}").part
                    found = "" if found == "indeterminate" else found
                if not found and "," in text and not conditions_in(text):
                    found = self.names.part_of(text.split(",")[0])  # 'cob, 12-row'
                    notes += [f"part written {text}"] if found else []
                kernel = _KERNEL.fullmatch(FRAGMENTS.sub("", f" {text.strip()}").strip(" ,("))
                if found == "seed" and kernel and is_grass(name, self.names):
                    return "grain"  # 'Kern' of grape is a pip, and of oats a grain
                found = found or part_by_plant(text, str(name.identification.taxon or name.identification.written))
                if found and found in _BROAD and self._names_a_part(name):
                    return name.part  # 'Bark' under 'Wood'
                if found:
                    return found
                if name.part and self.names.read(text).is_known:
                    continue  # 'Maize' over 'Zea mays kernel' is a group of plants
                if re.search(r"\w", text):
                    self.told.warning(
                        "N402", f"part {text}", said.place,
                        f"part '{text}' is not in the list of parts; it is kept in the note, and the part is "
                        "taken as "
                        "'indeterminate', expected a part",
                        f'write under parts in the layout: "{said.text}": the part that is meant',
                    )  # fmt: skip
                    notes.append(f"part written {text}")
                    return "indeterminate"
        if name.part:
            return name.part
        for line in (by_row, by_column):
            for said in line.get("common name", ()):
                common = self.names.read(said.text)
                says_part = common.is_known or (" " in said.text.strip() and common.part != "fruit")
                if common.part and says_part:
                    return common.part  # 'hulled wheat glume base'; a passion fruit is no fruit of something
                if east_asian := self._part_behind(said.text):
                    return east_asian
        if section is not None and section.part:
            return section.part
        return None

    def _part_behind(self, text: str) -> str:
        """The part at the end of an everyday name that is written without blanks: '酸枣核', '稻小穗轴'."""
        bare = _EAST_ASIAN_PIECES.sub("", text.strip())
        ends = (bare[n:] for n in range(1, len(bare)) if has_east_asian_letters(bare[n:]))
        return next((part for end in ends if (part := self.names.part_of(end))), "")

    def _taken(self, name: WrittenName, by_row: Line, by_column: Line) -> str:
        """The part that the layout takes where nothing says one."""
        if id(name) not in self._default:
            self._default[id(name)] = (name, default_part(name, self.table.parts, self.names))
        heads = (said for line in (by_row, by_column) for said in line.get("section", ()))
        is_no_seed = any(_NO_SEEDS.match(said.text) for said in heads) and not is_cereal(name)
        return "indeterminate" if is_no_seed else self._default[id(name)][1]
