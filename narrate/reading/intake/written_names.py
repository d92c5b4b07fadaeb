"""Names as sheets write them: taken apart into taxon, part, condition, size class, unit and note."""

# ruff: noqa: E501

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, field, replace

from narrate.model.ids import TaxonId
from narrate.model.plants import Identification
from narrate.reading.intake.broken_letters import whole_letters
from narrate.reading.intake.groups_of_genus import group_of_genus
from narrate.reading.intake.known_words import KnownWords
from narrate.reading.intake.name_spelling import tidy, with_genus, with_words_apart
from narrate.reading.intake.names_beside_latin import beside_latin, last_part
from narrate.reading.intake.part_words_abroad import OTHER_PARTS
from narrate.reading.intake.remarks import telling
from narrate.reading.intake.short_words import ShortWords
from narrate.reading.intake.uncounted import narrow
from narrate.reading.intake.words_in_names import (
    AUTHOR,
    CONDITIONS,
    FOOTNOTE,
    FRAGMENTS,
    INDETERMINATE,
    OLD_FAMILIES,
    SHORT_CONDITIONS,
    SIZE,
    SORTS,
    TAIL,
    TWO_PARTS,
    UNIT,
    WHOLE,
    says_pieces,
    tail_quantity,
    tail_unit,
    without_match,
)
from narrate.reading.taxa import Identifier

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
    is_known: bool = False


@dataclass(slots=True, kw_only=True)
class NameReader(KnownWords):
    """Takes names apart with the words and taxa of the packs. Each distinct text is worked out once."""

    identifier: Identifier
    given: Mapping[str, str] = field(default_factory=dict)
    """Names and codes that the layout explains."""
    _common: dict[str, TaxonId] = field(default_factory=dict)
    _known: dict[tuple[str, str], WrittenName] = field(default_factory=dict)

    def __post_init__(self) -> None:
        KnownWords.__post_init__(self)
        seen: dict[str, set[TaxonId]] = {}
        for taxon in self.packs.taxa.values():
            for name in (taxon.name, taxon.plural, taxon.trade_name, *taxon.other_names):
                if name:
                    seen.setdefault(name.lower(), set()).add(taxon.id)
        self._common = {name: next(iter(ids)) for name, ids in seen.items() if len(ids) == 1}

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
        key = (written, genus_before)
        found = self._known.get(key)
        if found is None:
            found = self._known[key] = self._read(written, genus_before)
        return found

    def is_known(self, name: Identification) -> bool:
        return self.identifier.is_known(name)

    def says(self, text: str) -> bool:
        """Whether a text by itself is a part, a condition or a plant that is known."""
        is_state = bool(self._short_condition(text) or self.condition_in(text) or self.condition_behind(text)[1])
        return is_state or bool(self.part_of(text)) or self._identified(text) is not None

    def _read(self, written: str, genus_before: str) -> WrittenName:
        given = self.given.get(written) or self.given.get(written.lower())
        tail = TAIL.search(whole_letters(written)) if not given else None
        whole = narrow(whole_letters(written))
        scientific, own = beside_latin(whole) if not given else ("", "")
        if scientific:
            read = self._read(scientific, genus_before)
            doubt = read.identification.qualifier or ("cf." if "?" in own else "")
            named = replace(read.identification, written=written, qualifier=doubt)
            return replace(read, identification=named, part=read.part or self.part_of(last_part(own)))
        name = given or self._tidied(whole[: tail.start()] if tail else whole)
        name = with_genus(name, genus_before)
        name = group_of_genus(given or whole, self.packs.taxa) or name
        in_brackets = re.search(r"\s*[(\[]([^()\[\]]{1,12})[)\]]\s*$", name)
        short = self._short_condition(in_brackets[1]) if in_brackets else ""
        if in_brackets and short:
            bare = self._read(name[: in_brackets.start()], genus_before)
            known = replace(bare.identification, written=written)
            return replace(bare, identification=known, condition=short, conditions_apart=())
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
        if not part:
            name, part, note_of_part = self._without_unknown_part(name)
            note = "; ".join(filter(None, [note, note_of_part]))
            completeness = "fragment" if "frag" in note_of_part.lower() else completeness
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
        if identification is None and (apart := with_words_apart(name)):
            identification = self._identified(apart)  # 'HordeumVulgare'
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

    def _short_condition(self, text: str) -> str:
        """The condition that a short form behind a name stands for: one of the sheet's own key, or 'min.', 'carb.'."""
        flat = text.strip(" .?")
        if flat in self.short.conditions:
            return self.short.conditions[flat]
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
        if comma and self.part_of(behind) and self._identified(before.strip()) is not None:
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
        old = OLD_FAMILIES.get(bare.lower())
        if old is not None:
            old_found = self.identifier.identify(old)
            if self.identifier.is_known(old_found):
                return replace(old_found, qualifier="cf." if is_cf else found.qualifier)
        if INDETERMINATE.fullmatch(bare):
            return replace(self.identifier.identify("Indeterminate"), written=name)
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
            if part and words[end][:1].isupper() and len(head) > 3:
                return " ".join(words[end:]), part, ""
        return name, "", ""

    def _without_unknown_part(self, name: str) -> tuple[str, str, str]:
        """(name, part, what is noted) where brackets speak of a part that no pack knows, of two, or of something else."""
        inside = re.search(r"[(\[]([^()\[\]]{3,40})[)\]]\s*$", name)
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
