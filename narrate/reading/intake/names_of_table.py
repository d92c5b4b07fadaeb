"""The name of each line of finds, from its columns of taxa, genera, families, codes and common names."""

from __future__ import annotations

import re
from dataclasses import replace

from narrate.problems import Place
from narrate.reading.intake.brackets_not_read import brackets_not_read, taken_as_uncharred
from narrate.reading.intake.name_footnotes import read_footed
from narrate.reading.intake.name_spelling import genus_of
from narrate.reading.intake.parts_of_finds import without_weight
from narrate.reading.intake.said import Line, Said
from narrate.reading.intake.samples_of_table import SampleLines
from narrate.reading.intake.written_names import WrittenName

_OF_NO_PLANT = ("", "indeterminate", "charcoal", "wood", "bark", "dung", "amorphous", "fungal sclerotium", "gall")
"""Parts that stand in lists by themselves, whatever plant heads the lines before them."""
_BESIDE = ("part", "condition", "completeness", "size class", "quantity", "note", "taxon note", "group")
"""Heads under which a line without a name may yet say what was found."""
_SEVERAL = 6
"""So many words in brackets are taken for everyday names."""
_DITTO = re.compile(r"""["“”″〃]|''|,,|do\.?|ditto|idem|id\.""", re.IGNORECASE)
"""Signs for the name of the line above."""

_IS_CF = re.compile(
    r"cf|\?|uncertain|possible|prob|^y|^x|^-?1|^(?:t|true|wahr|vrai|verdadero|verdadeiro|vero|ja?|oui|s[ií]?|sim)$",
    re.IGNORECASE,
)
"""What under a head 'cf' says yes; databases write TRUE, or -1."""


class NamedLines(SampleLines):
    """The same with the names of the lines."""

    def _names(self, lines: dict[int, Line]) -> dict[int, tuple[WrittenName, bool, Said] | None]:
        """The name of each line, its cf. from a column of its own, and where it stands."""
        found: dict[int, tuple[WrittenName, bool, Said] | None] = {}
        genus = above = ""
        brackets: list[tuple[str, str, Place]] = []
        # Where names have columns of their own, a line without one is known to its family; no running number names it.
        is_named = any(line.get("taxon") or line.get("genus") for line in lines.values())
        order = ("family", "common name", "epithet") if is_named else ("code", "common name", "epithet")
        for at, line in lines.items():
            named = next((line[role][0] for role in ("taxon", "genus", *order) if line.get(role)), None)
            named = named or self._named_aside(line)
            if named is None:
                found[at] = None
                continue
            said = named
            text = said.text
            if line.get("taxon") and len(line["taxon"]) > 1:
                text = " ".join(dict.fromkeys(one.text for one in line["taxon"]))
            if line.get("genus"):
                epithet = line["epithet"][0].text if line.get("epithet") else ""
                text = f"{line['genus'][0].text} {epithet}".strip()
                said = line["genus"][0]
            elif not line.get("taxon") and not is_named and line.get("code"):
                given = self.layout.names.get(text, "")
                common = line.get("common name")
                if not given and common:
                    said, text = common[0], common[0].text
            text = above if above and _DITTO.fullmatch(text.strip()) else text
            above = text
            cf = line.get("cf")
            is_cf = cf is not None and bool(_IS_CF.search(cf[0].text))
            read, unexplained = read_footed(text, genus, self.names, self.table.marks.footnotes)
            read = self._of_head(read, text, line)
            if unexplained:
                self.told.warning(
                    "N313", f"footnote of {text}", said.place,
                    f"'{text}' carries a footnote sign, kept in the note, expected a plain name",
                    "look the footnote up, and say under cells in the layout what it says: "
                    f'footnotes: {{"{unexplained}": uncharred}}',
                )  # fmt: skip
            self._tell_uncharred(text, read, said.place)
            brackets += [(inside, text, said.place) for inside in brackets_not_read(text, read, self.names)]
            if read.note.startswith("part written "):
                part = read.note.removeprefix("part written ")
                self.told.warning(
                    "N402", f"part {part}", said.place,
                    f"part '{part}' is not in the list of parts; it is kept in the note, and the part is taken as "
                    "'indeterminate', expected a part",
                    "write the part that is meant behind the name, under names in the layout: "
                    f'"{text}": the name with a part of the list',
                )  # fmt: skip
            genus = genus_of(text) or genus
            found[at] = (read, is_cf, said)
        self._tell_brackets(brackets, len(found))
        return found

    def _named_aside(self, line: Line) -> Said | None:
        """Charcoal that is named under another head alone, where the words for litres and phases stand too."""
        beside = [(role, said) for role, (said, *_) in line.items() if role in _BESIDE]
        if len(beside) != 1 or self.names.read(without_weight(beside[0][1].text)[0]).part not in ("charcoal", "wood"):
            return None
        role, said = beside[0]
        line.pop(role)  # what names the find says nothing else of it
        return said

    def _tell_uncharred(self, text: str, read: WrittenName, place: Place) -> None:
        letter = taken_as_uncharred(text, read, self.names)
        if letter:
            self.told.warning(
                "N313", f"letter {letter}", place,
                f"'{letter}' in '{text}' is taken as uncharred, and nothing in the sheet says so, expected a key or "
                "the word",
                f'if something else is meant, say it under names in the layout: "{text}": the name with its state',
            )  # fmt: skip

    def _tell_brackets(self, brackets: list[tuple[str, str, Place]], lines: int) -> None:
        """Each word in brackets that is not understood; all at once where most names carry one, as everyday names."""
        words = list(dict.fromkeys(inside for inside, _, _ in brackets))
        if len(words) >= _SEVERAL and 2 * len(brackets) >= lines:
            listed = ", ".join(f"'{word}'" for word in words)
            self.told.warning(
                "N313", "brackets of most names", brackets[0][2],
                f"most names carry a word in brackets that is not understood ({listed}), as everyday names would stand "
                "there, and nothing is read of them, expected a part, a state, a size or a name",
                "look whether one of them says a part or a state, and say under names in the layout what is meant",
            )  # fmt: skip
            return
        for inside, text, place in brackets:
            self.told.warning(
                "N313", f"brackets {inside}", place,
                f"'{inside}' in '{text}' is not understood, and nothing is read of it, expected a part, a state, a "
                "size or a name",
                f'say under names in the layout what is meant: "{text}": the name with its part and state',
            )  # fmt: skip

    def _of_head(self, read: WrittenName, text: str, line: Line) -> WrittenName:
        """A name that is nothing but a part, as one of the plant over it: 'Cupule' under 'Maize (Zea mays)'."""
        is_bare = read.identification.taxon == "Indeterminate" and read.part not in _OF_NO_PLANT and not read.note
        if not is_bare or self.names.part_of(text) != read.part:
            return read
        for role in ("common name", "group", "section"):
            for head in line.get(role, ()):
                plant = self.names.read(head.text)
                if plant.is_known and plant.identification.taxon not in ("Indeterminate", "Unidentified"):
                    return replace(read, identification=replace(plant.identification, written=text), is_known=True)
        return read
