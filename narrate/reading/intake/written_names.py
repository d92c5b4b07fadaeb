"""Names as sheets write them: taken apart into taxon, part, condition, size class, unit and note."""

# ruff: noqa: E501

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, field, replace

from narrate.model.plants import Identification
from narrate.reading.intake.broken_letters import whole_letters
from narrate.reading.intake.groups_of_genus import group_of_genus
from narrate.reading.intake.name_spelling import tidy, with_genus, with_words_apart
from narrate.reading.intake.names_beside_latin import beside_latin, last_part, says_pieces_beside
from narrate.reading.intake.names_identified import IdentifiedNames
from narrate.reading.intake.part_words_abroad import OTHER_PARTS
from narrate.reading.intake.remarks import telling
from narrate.reading.intake.short_words import ShortWords
from narrate.reading.intake.sizes_in_titles import size_in
from narrate.reading.intake.uncounted import narrow
from narrate.reading.intake.volumes_of_finds import volume_behind
from narrate.reading.intake.words_in_names import (
    CONDITIONS,
    FOOTNOTE,
    FRAGMENTS,
    LEAVES,
    SHORT_CONDITIONS,
    SIZE,
    TAIL,
    TWO_PARTS,
    UNIT,
    WHOLE,
    says_pieces,
    tail_quantity,
    tail_unit,
    without_match,
)

_MAY_SHORTEN = re.compile(r"(?<![^\W\d_])[A-Z](?![^\W\d_])|[\"”″–-]|[^\x00-\x7f]")
"""A capital by itself, or a sign for the word above: only with one of these does the genus before count."""
_RANK = re.compile(r"\b(?:var|subsp|ssp|f|convar|cv)\b\.? ")


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
    code: str = ""
    """What was written for a plant that no pack knows, where a list of codes gives its name."""
    is_known: bool = False


@dataclass(slots=True, kw_only=True)
class NameReader(IdentifiedNames):
    """Takes names apart with the words and taxa of the packs. Each distinct text is worked out once."""

    _known: dict[tuple[str, str], WrittenName] = field(default_factory=dict)

    def knowing(self, *, given: Mapping[str, str] | None = None, short: ShortWords | None = None) -> NameReader:
        """The same that knows other names and short forms; nothing that was worked out before is kept."""
        return NameReader(
            packs=self.packs, identifier=self.identifier, given=self.given if given is None else given,
            short=self.short if short is None else short,
        )  # fmt: skip

    def read(self, written: str, genus_before: str = "") -> WrittenName:
        """
        The name taken apart.

        genus_before:  genus of the row above, for 'T. dicoccum' and '" dicoccum'.
        """
        given = self.given.get(written) or self.given.get(written.lower())
        key = (written, genus_before if _MAY_SHORTEN.search(given or written) else "")
        found = self._known.get(key)
        if found is None:
            found = self._known[key] = self._read(*key)
        return found

    def says(self, text: str) -> bool:
        """Whether a text by itself is a part, a condition or a plant that is known."""
        is_state = bool(self._short_condition(text) or self.condition_in(text) or self.condition_behind(text)[1])
        return is_state or bool(self.part_of(text)) or self._identified(text) is not None

    def _read(self, written: str, genus_before: str) -> WrittenName:
        given = self.given.get(written) or self.given.get(written.lower())
        of_volume, unit_of_volume = volume_behind(narrow(written)) if not given else ("", "")
        if of_volume and ((read := self._read(of_volume, genus_before)).is_known or unit_of_volume == "ml"):
            known = replace(read.identification, written=written)
            return replace(read, identification=known, quantity="other", unit=unit_of_volume)
        tail = TAIL.search(whole_letters(written)) if not given else None
        whole = narrow(whole_letters(written))
        scientific, own = beside_latin(whole) if not given else ("", "")
        if scientific:
            read = self._read(scientific, genus_before)
            doubt = read.identification.qualifier or ("cf." if "?" in own else "")
            named = replace(read.identification, written=written, qualifier=doubt)
            pieces = "fragment" if says_pieces_beside(own) else read.completeness
            part = read.part or self.part_of(last_part(own))
            return replace(read, identification=named, part=part, completeness=pieces)
        name = given or self._tidied(whole[: tail.start()] if tail else whole)
        name = with_genus(name, genus_before)
        name = group_of_genus(given or whole, self.packs.taxa) or name
        in_brackets = re.search(r"\s*[(\[]([^()\[\]]{1,12})[)\]]\s*$", name)
        short = self._short_condition(in_brackets[1]) if in_brackets else ""
        if in_brackets and short:
            bare = self._read(name[: in_brackets.start()], genus_before)
            known = replace(bare.identification, written=written)
            return replace(bare, identification=known, condition=short, conditions_apart=())
        if (summed := re.match(r"total (?=\w)", name, re.IGNORECASE)) and self.part_of(name[summed.end() :]):
            wood = self._read(name[summed.end() :], genus_before)  # 'Total wood', weighed where no wood is by itself
            return replace(wood, identification=replace(wood.identification, written=written))
        rest, state = self.without_state(name)
        if state:
            found = self._read(rest, genus_before)
            known = replace(found.identification, written=written)
            return replace(found, identification=known, condition=state, conditions_apart=())
        first = self._identified(name)
        if first is not None and not self._says_part_too(name, first):
            made = self._made(written, first, note="")
            return replace(made, quantity=tail_quantity(tail), unit=tail_unit(tail)) if tail else made
        note = ""
        mark = FOOTNOTE.search(name)
        if mark:
            note, name = f"marked {mark[0].strip()}", FOOTNOTE.sub("", name).strip()
        quantity = unit = ""
        match = UNIT.search(name)
        if match:
            word = (match[1] or match[2] or match[3]).lower()
            quantity = (
                "other" if word in ("ml", "cc", "vol") else "count" if word.startswith(("n", "c", "#")) else "mass"
            )
            unit = "mg" if word == "mg" else ("g" if quantity == "mass" else "")
            name = name[: match.start()].strip()
        if tail:
            quantity, unit = tail_quantity(tail), tail_unit(tail)
        name, size_class = without_match(SIZE, name)
        size_class = size_in(size_class) if size_class[:1].isalpha() and size_in(size_class) else size_class  # 'over 2 mm'
        name, condition = without_match(CONDITIONS, name)
        condition = self.condition_in(condition)
        conditions = [condition] if condition else []
        while condition:
            name, more = without_match(CONDITIONS, name)
            condition = self.condition_in(more)
            conditions += [condition] if condition else []
        conditions = telling(conditions)
        name = re.sub(r"\s*[;,&/+]\s*(?=[)\]])|(?<=[(\[])\s*[;,&/+]\s*", "", name) if conditions else name
        if len(conditions) > 1:
            name = re.sub(r"\s*[(\[,]?\s*(?:and|or|&|\+|/)\s*[)\]]?$", "", name)
        name, part, completeness = self._without_part(name)
        name = "" if part and self.part_of(name) == part else name  # 'Detached sprout (coleoptile)'
        if not part:
            before = name
            name, part, note_of_part = self._without_unknown_part(name)
            note = "; ".join(filter(None, [note, note_of_part]))
            in_pieces = "frag" in note_of_part.lower() or (part and says_pieces(before.removeprefix(name)))
            completeness = "fragment" if in_pieces else completeness
        if not completeness and FRAGMENTS.search(name):
            completeness, name = "fragment", FRAGMENTS.sub("", name).strip()
            name += ")" if name.count("(") > name.count(")") else ""  # 'Hordeum (hulled frag.)'
        elif not completeness and WHOLE.search(name):
            completeness, name = "whole", WHOLE.sub("", name).strip()
        name = re.sub(r"\s*[(\[]\s*[)\]]", "", name).strip(" ,;:-–—")
        identification = self._identified(name)
        if identification is None and not name:
            identification = self.identifier.identify("Indeterminate")
        latin = re.search(r"[(\[]((?:cf\.? )?[A-Z][a-z]+[^)\]]*)[)\]]", name)
        if identification is None and latin:
            identification = self._identified(latin[1].strip())  # 'Roggen (Secale cereale)'
            if identification is not None and re.search(r"\bcf\b|\?", name, re.IGNORECASE):
                identification = replace(identification, qualifier="cf.")
        if identification is None:
            without = re.sub(r"\s*[(\[][^)\]]*[)\]]", "", name).strip()
            identification = self._identified(without) if without and without != name else None
            if identification is not None:
                inside = re.search(r"[(\[]([^)\]]*)[)\]]", name)
                note = "; ".join(filter(None, [note, inside[1] if inside else ""]))
        if identification is None and (leaves := LEAVES.search(name)):
            identification = self._identified(name[: leaves.start()])  # 'Quercus à f. caduc'
            note = "; ".join(filter(None, [note, leaves[0].strip()]))
        if identification is None and (apart := with_words_apart(name)):
            identification = self._identified(apart)  # 'HordeumVulgare'
        if identification is None:
            identification = self.identifier.identify(name or written)
        # Of a code, one word, for a plant that no pack knows, the name that it stands for is told.
        is_code = bool(given) and " " not in written.strip()
        code = written if is_code and identification.taxon is None and not identification.either else ""
        note = "; ".join(filter(None, [f"code {code}" if code else "", note]))
        made = self._made(name if code else written, identification, note=note)
        return replace(
            made,
            code=code,
            part=part,
            condition=conditions[0] if len(conditions) == 1 else "",
            conditions_apart=tuple(conditions) if len(conditions) > 1 else (),
            completeness=completeness,
            size_class=size_class,
            quantity=quantity,
            unit=unit,
        )

    def _short_condition(self, text: str) -> str:
        """The condition that a short form behind a name stands for: one of the sheet's own key, or 'min.', 'carb.'."""
        flat = text.strip(" .?")
        if flat in self.short.conditions:
            return self.short.conditions[flat]
        if flat in ("U", "u") and flat not in self.short.parts:
            return "uncharred"
        return SHORT_CONDITIONS.get(flat.lower(), "") if len(flat) > 2 else ""

    def without_state(self, name: str) -> tuple[str, str]:
        """A name without the short form of a condition behind its part, or behind it by the sheet's key: 'pip min.'."""
        inside = re.fullmatch(r"(?P<before>.+[(\[])(?P<part>[^()\[\]]+)(?P<end>[)\]])", name.strip())
        if inside and (said := self.short.conditions.get(inside["part"].strip(" .?"), "")):
            return inside["before"][:-1].strip(), said  # 'noyau [nc]'
        if inside:
            part, state = self.condition_behind(inside["part"])
            return (f"{inside['before']}{part}{inside['end']}", state) if state and self.part_of(part) else (name, "")
        match = re.fullmatch(r"(?P<rest>.+?)(?P<link>[\s,;_-]+)(?P<sign>[^\W\d_]{1,8})\.?", name.strip())
        state = self.short_condition(match["sign"]) if match else ""
        if match is None or not state:
            return name, ""
        by_key = match["sign"] in self.short.conditions and (len(match["sign"]) > 1 or "," in match["link"])
        return (match["rest"], state) if by_key or self._without_part(match["rest"])[1] else (name, "")

    def _tidied(self, written: str) -> str:
        """The name made plain; a part behind a comma stays apart: 'Roggen, Spindelglieder' names no two plants."""
        before, comma, behind = written.rpartition(",")
        if comma and before and self.part_of(behind):
            return f"{tidy(before)}, {tidy(behind)}"
        for mark in ("|", " / ", "::", "__"):
            before, sign, behind = written.rpartition(mark)
            if sign and before and self.part_of(behind.strip()):
                return f"{tidy(before)}, {tidy(behind.strip())}"  # 'Hordeum vulgare | grain'
        german = re.fullmatch(r"(.*[a-z.])[_.]+([A-ZÄÖÜ][^_.]+)", written.strip())
        if german and self.part_of(german[2]):
            return f"{tidy(german[1])}, {tidy(german[2])}"  # 'Corylus_Nussschale'
        if german and FRAGMENTS.fullmatch(f" {german[2]}"):
            return f"{tidy(german[1])} {german[2].lower()}"
        return tidy(written)

    def _says_part_too(self, name: str, found: Identification) -> bool:
        """Whether a name that is known carries a part behind a comma, or is of nothing but the part: 'Unknown seed'."""
        if FRAGMENTS.search(name):
            return True  # 'Corylus avellana Nussschale Bruchstücke': no authors
        before, comma, behind = name.rpartition(",")
        is_part = bool(comma) and bool(self.part_of(behind) or behind.strip().lower() in OTHER_PARTS)
        if is_part and self._identified(before.strip()) is not None:
            return True
        tail = name.split()[-1].strip("()[]")
        if _RANK.search(name) and len(tail) > 2 and self.part_of(tail):
            return True  # 'Hordeum vulgare var. vulgare rachis'
        rest = name.removesuffix(name.split()[-1]).strip(" ,;-")
        if rest and len(tail) > 3 and self.part_of(tail) not in ("", "indeterminate"):
            bare = self._identified(rest)
            if bare is not None and bare.taxon == found.taxon and bare.taxon not in ("Indeterminate", "Unidentified"):
                return True  # 'Hordeum vulgare Korn': no author
        if len(name.split()) > 1 and TWO_PARTS.fullmatch(tail) and self.part_of(tail.split("/")[0]):
            return True
        return found.taxon in ("Indeterminate", "Unidentified") and len(name.split()) > 1 and bool(self.part_of(tail)) and self.part_of(tail) != "indeterminate"

    def _made(self, written: str, identification: Identification, note: str) -> WrittenName:
        kept = replace(identification, written=written)
        return WrittenName(identification=kept, note=note, is_known=self.identifier.is_known(identification))
