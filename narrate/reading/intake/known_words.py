"""Words for parts and conditions, as the packs, other languages and the key of a sheet itself know them."""

# ruff: noqa: E501

from __future__ import annotations

import re
from dataclasses import dataclass, field

from narrate.model.packs import Packs
from narrate.reading.intake.part_words_abroad import PART_WORDS, part_of_a_plant
from narrate.reading.intake.part_words_of_the_north import NORTHERN_PARTS
from narrate.reading.intake.plant_words_abroad import CONDITIONS_ABROAD, PARTS_ABROAD
from narrate.reading.intake.remarks import conditions_in
from narrate.reading.intake.short_words import OF_PIECES, ShortWords
from narrate.reading.intake.words_in_names import FRAGMENTS, MORE_PARTS, SHORT_CONDITIONS, SIZE, whole_of_pieces
from narrate.reading.values import find_word

_OF_ANIMAL = re.compile(
    r"(?:([^\W\d_]+) (?:of|de|di|du|des|von|van|av|af)|(estiércol|excrementos?|bosta|guano|sterco|estrume|crottins?)) [^\W\d_]+(?:[/-][^\W\d_]+)*(?: +n)?",
    re.IGNORECASE,
)
_BEAST = r"(?:schaf|ziegen?|rinder?|kuh|vieh|schweine?|pferde?|esel|kamel|lama|hirsch|reh|tier|herbivoren|wiederkäuer)"
_OF_BEASTS = re.compile(rf"{_BEAST}(?:s?-?/ ?-?{_BEAST})*s?(?:kot|dung)", re.IGNORECASE)
# Common practice, no source: words for whole things beside a part, in nine languages.
_WHOLE = (
    r"(?:wholes?|complete|entire|intact|ganze?[rns]?|vollständige?[rns]?|entiers?|entières?|complète?s?|enter[oa]s?|complet[oaie]s?|inter[oiae]|integr[oaie]|"
    r"inteir[oa]s?|heel|hele|helt?|całe|cały|celé|celý|egész)"
)
_WHOLES = re.compile(rf"[\s,;/–-]+{_WHOLE}$|^{_WHOLE}[\s,;/–-]+", re.IGNORECASE)

_INSIDE = re.compile(
    r"(?P<part>.{3,30}?),? (?:still |noch )?(?:in|im|en|dans|nel|i) (?:the |its |le |la |el |su |der |den |sin )?(?P<around>[^\W\d_]{3,20})",
    re.IGNORECASE,
)
"""A part in what is around it."""


@dataclass(slots=True, kw_only=True)
class KnownWords:
    """Finds the part and the condition that a text of a sheet names."""

    packs: Packs
    short: ShortWords = field(default_factory=ShortWords)
    """Short forms of parts and conditions that the sheet explains."""
    parts: dict[str, str] = field(default_factory=dict, init=False)
    joined: dict[str, str] = field(default_factory=dict, init=False)
    """Parts of several words, written together."""
    part_known: dict[str, str] = field(default_factory=dict, init=False)
    """Text -> its part, each worked out once."""
    condition_known: dict[str, str] = field(default_factory=dict, init=False)
    """Text -> its condition, the same."""

    def __post_init__(self) -> None:
        self.parts = {**PART_WORDS, **NORTHERN_PARTS, **PARTS_ABROAD, **MORE_PARTS, **self.packs.words.part_lookup}
        self.joined = {word.replace(" ", "").lower(): part for word, part in self.parts.items() if " " in word}

    def part_of(self, text: str) -> str:
        """The part that a text names, in any spelling; empty for none."""
        found = self.part_known.get(text)
        if found is None:
            found = self.part_known[text] = self._part_in(text)
        return found

    def _part_in(self, text: str) -> str:
        flat = re.sub(r"[()\[\].:]", " ", text).strip()
        if flat in self.short.parts:
            return self.short.parts[flat].removesuffix(OF_PIECES).partition("/")[0]  # 'seed/fruit': of a cereal the grain, which finds know
        found = find_word(self.parts, flat)
        if not found and (inside := _INSIDE.fullmatch(flat)) and self.part_of(inside["around"]):
            found = self.part_of(inside["part"])  # 'grain in husk' is a grain
        if found is None:
            rest, state = self.condition_behind(text)
            found = self.part_of(rest) if state else None  # 'seed (c)'
        if not found:
            short = FRAGMENTS.sub("", " " + flat).strip()
            found = find_word(self.parts, short) or find_word(self.parts, short.removesuffix("s"))
            found = found or (self.part_of(short) if short and short != flat else None)  # 'pip min. frag.'
        if not found and (bare := _WHOLES.sub("", flat).strip()) and bare != flat:
            found = self.part_of(bare)  # 'kernel, whole', 'Korn ganz'
        if not found and "," in text:
            pieces = text.split(",")  # 'seed, charred'
            if any(self.condition_of(piece) for piece in pieces):
                found = next((part for part in map(self.part_of, pieces) if part), None)
        if not found and " / " in text:
            halves = {self.part_of(half) for half in text.split(" / ")} - {""}
            found = halves.pop() if len(halves) == 1 else None  # 'cariosside / caryopsis'
        if not found and flat.startswith("炭化"):
            found = self.part_of(flat.removeprefix("炭化"))  # '炭化籾殻'
        if not found and " " not in flat and len(flat) > 8:
            found = self.joined.get(flat.lower().removesuffix("s"))  # 'glumebase'
        if not found and (whole := whole_of_pieces(text)):
            found = self.part_of(whole)  # 'frag. de caryopse', 'Kornbruch'
        if not found and (bare := SIZE.sub("", text).strip(" ,;")) and bare != text.strip():
            found = self.part_of(bare)  # 'Wood > 2 mm'
        if not found and (animal := _OF_ANIMAL.fullmatch(flat)) and find_word(self.parts, animal[1] or animal[2]) == "dung":
            found = "dung"  # 'estiércol de camélido'
        if not found and _OF_BEASTS.fullmatch(flat):
            found = "dung"  # 'Schaf-/Ziegenkot'
        if not found and (of_plant := part_of_a_plant(flat)):
            found = self.part_of(of_plant)  # 'pépin de raisin'
        return found or self._part_beside_condition(flat)

    def _part_beside_condition(self, flat: str) -> str:
        """The part in 'charred glume base' and 'semilla carbonizada'."""
        first, _, rest = flat.partition(" ")
        before, _, last = flat.rpartition(" ")
        if rest and self._is_condition(first):
            return self.part_of(rest)
        return self.part_of(before) if before and self._is_condition(last) else ""

    def _is_condition(self, word: str) -> bool:
        flat = word.lower()
        return len(flat) > 4 and bool(find_word(self.packs.words.condition_lookup, flat) or CONDITIONS_ABROAD.get(flat))

    def condition_of(self, text: str) -> str:
        """The condition that a text names, in any spelling; empty for none."""
        found = self.condition_known.get(text)
        if found is None:
            found = self.condition_known[text] = self._condition_in(text)
        return found

    def _condition_in(self, text: str) -> str:
        flat = text.strip(" ().?")
        if flat in self.short.conditions:
            return self.short.conditions[flat]
        rest, state = self.condition_behind(FRAGMENTS.sub("", f" {text}"))  # 'pip min. frag.'
        if state and self.part_of(rest):
            return state
        if "," in flat:
            pieces = flat.split(",")
            if any(self.part_of(piece) for piece in pieces):
                return next((state for state in map(self.condition_of, pieces) if state), "")
        return find_word(self.packs.words.condition_lookup, flat) or SHORT_CONDITIONS.get(flat.lower()) or CONDITIONS_ABROAD.get(flat.lower().replace("i\u0307", "i"), "")

    def condition_behind(self, text: str) -> tuple[str, str]:
        """A text without the short form of a condition that stands beside it, and the condition: 'seed (u)', 'pip min.'."""
        match = re.search(r"\s*[(\[]([A-Za-z]{1,4})\.?[)\]]\s*$", text)
        sign = match[1] if match else ""
        state = self.short.conditions.get(sign) or {"c": "charred", **SHORT_CONDITIONS}.get(sign.lower(), "")
        if match and state:
            return text[: match.start()], state
        for bare, rest in ((r"[\s,;_/-]+(?P<sign>[^\W\d_]{1,8})\.?\s*$", 0), (r"^\s*(?P<sign>[^\W\d_]{1,8})\.?[\s,;_/-]+", 1)):
            match = re.search(bare, text)
            state = self.short_condition(match["sign"]) if match else ""
            if match and state:
                return (text[match.end() :] if rest else text[: match.start()]), state
        return text, ""

    def short_condition(self, sign: str) -> str:
        """The condition that a short form without brackets stands for: one of the sheet's own key, or 'min', 'carb'."""
        return self.short.conditions.get(sign) or (SHORT_CONDITIONS.get(sign.lower(), "") if len(sign) > 2 else "")

    def condition_in(self, words: str) -> str:
        """The condition of words that were taken out of a name."""
        return (conditions_in(words) or (self.condition_of(words),))[0] if words else ""
