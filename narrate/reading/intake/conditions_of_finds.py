"""The condition of each find of a table, by the closest that says one. What nobody can tell is set aside and told."""

# ruff: noqa: E501

from __future__ import annotations

import re
from bisect import bisect_right
from collections.abc import Iterable, Mapping

from narrate.model.layouts import Layout, Table
from narrate.problems import Place
from narrate.reading.intake.charcoal import is_charcoal
from narrate.reading.intake.conditions_said import NOTHING_SAID, condition_in_note, condition_said, given_conditions
from narrate.reading.intake.remarks import conditions_in, remark, without_conditions
from narrate.reading.intake.said import Line, Said
from narrate.reading.intake.told import Told
from narrate.reading.intake.written_names import NameReader, WrittenName
from narrate.reading.source_text import shown

_SEVERAL_WORDS = re.compile(r"[,(\[\s]")


class Conditions:
    """Answers for one table; problems go to what is told of the sheet."""

    def __init__(self, table: Table, layout: Layout, names: NameReader, told: Told) -> None:
        self.table, self.names, self.told = table, names, told
        self.columns = sorted(c for c, role in table.columns.items() if "condition" in role.names)
        counted = [c for c, role in table.columns.items() if role.name == "counts"]
        first, last = (self.columns[0], self.columns[-1]) if self.columns else (0, 0)
        self.is_paired = any(first < c < last for c in counted)
        """Whether each sample has a column of its own for conditions."""
        self.of_ids: dict[str, tuple[str, ...]] = {}
        """What the ids of samples say of their finds, each worked out once."""
        self.known = tuple(dict.fromkeys(names.packs.words.condition_lookup.values()))
        self.given = given_conditions(self._checked(layout))
        self.default = names.condition_of(table.condition)
        if not self.default:
            told.error(
                "N311", f"condition {table.condition}", layout.place,
                f"condition is {shown(table.condition)}; finds whose condition the sheet does not say are set aside, "
                f"expected {self._expected()}",
                "write one of them as the condition of the table in the layout",
            )  # fmt: skip

    def of_find(
        self,
        name: WrittenName,
        where: Said,
        qualifiers: Mapping[str, str],
        section: WrittenName | None,
        lines: tuple[Line, Line],
        remarks: Iterable[str],
        sample: str,
        place: Place,
    ) -> str | None:
        """The condition of a find; None, told, where the sheet says one that nobody knows, or two at once."""
        is_silent = not any("condition" in line or "part" in line for line in lines)
        in_lines = [] if is_silent else [*(own := self._said(lines, place)), *self._behind_parts(lines, own)]
        found = [(said.text, said.place, condition_said(
            said.text, self.names, self.given, yes_is_charred=said.unit == "yes is charred",
            is_part_too=said.text == where.text  # a head merged over the rows of conditions and of names
            or any(other.place == said.place for line in lines for other in line.get("part", ())),
        )) for said in in_lines]  # fmt: skip
        for text, at, said in found:
            if said.doubt:
                self._set_aside(text, at, said.doubt)
                return None
        conditions = tuple(dict.fromkeys(said.condition for _, _, said in found if said.condition))
        if len(conditions) > 1:
            self._set_aside(" and ".join(conditions), found[0][1], "several")
            return None
        if conditions:
            return conditions[0]
        if len(name.conditions_apart) > 1:
            self._set_aside(where.text, where.place, "several")
            return None
        if name.condition:
            return name.condition
        beside = [self.names.read(said.text) for line in lines for said in line.get("common name", ())]
        if any(len(one.conditions_apart) > 1 for one in beside):
            self._set_aside(where.text, where.place, "several")
            return None
        said_beside = next((one.condition for one in beside if one.condition), "")
        if said_beside:
            return said_beside
        if qualifiers.get("condition"):
            apart = condition_said(qualifiers["condition"], self.names, self.given)
            if apart.doubt:
                self._set_aside(qualifiers["condition"], where.place, apart.doubt)
                return None
            return apart.condition
        if is_charcoal(name):
            return self._of_charcoal(where, section, place)
        if section is not None and len(section.conditions_apart) > 1:
            self._set_aside(section.identification.written, where.place, "several")
            return None
        if section is not None and section.condition:
            return section.condition
        said_by_id = self._of_sample(sample, place)
        if said_by_id is None:
            return None
        at_last = said_by_id or self._of_remarks(remarks, where)
        if not at_last and self.default and self.columns and not (name.part == "charcoal" and self.default == "charred"):
            self.told.warning(
                "N402", "no condition", place,
                f"the table has a column of conditions, and it says none of '{where.text}'; it is taken as "
                f"{self.default}, expected a condition for each find",
                "write under condition in the layout what a blank means, or say it under 'mend'",
            )  # fmt: skip
        return at_last or self.default or None

    def _of_charcoal(self, where: Said, section: WrittenName | None, place: Place) -> str:
        """Charred, which charcoal is by its nature; told where the head of a section or a title says otherwise."""
        said = section.condition if section is not None and section.condition else self.default
        if said not in ("", "charred"):
            self.told.warning(
                "N402", f"charcoal {where.text}", place,
                f"'{where.text}' stands where remains are {said}, and is charcoal; it is taken as charred, expected "
                "charred remains apart from others",
                "if it is wood and not charcoal, say so under names in the layout",
            )  # fmt: skip
        return "charred"

    def _said(self, lines: tuple[Line, Line], place: Place) -> list[Said]:
        """What the conditions of a line say; where each sample has a column of its own for them, the one behind it."""
        by_row, by_column = lines
        said = [*by_row.get("condition", ()), *by_column.get("condition", ())]
        if not said or not self.is_paired:
            return said
        at = bisect_right(self.columns, place.column - 1)
        behind = self.columns[at : at + 1]
        return [one for one in said if one.place.column - 1 in behind or not self._is_of_conditions(one)]

    def _behind_parts(self, lines: tuple[Line, Line], own: list[Said]) -> list[Said]:
        """Words for parts that carry a condition, under a head that promises none: 'seed, uncharred', 'pip min.'."""
        by_row, by_column = lines
        parts = [*by_row.get("part", ()), *by_column.get("part", ())]
        if not parts:
            return parts
        places = {one.place for one in own}
        return [
            said for said in parts
            if (conditions_in(said.text) or said.text.lower() in self.given or (_SEVERAL_WORDS.search(said.text.strip()) and self.names.condition_of(said.text)))
            and said.place not in places
        ]  # fmt: skip

    def _is_of_conditions(self, said: Said) -> bool:
        """Whether a word stands in one of the columns of conditions; elsewhere it is a heading of the counts."""
        role = self.table.columns.get(said.place.column - 1)
        return role is not None and "condition" in role.names

    def kept_words(self, lines: tuple[Line, Line], place: Place) -> list[str]:
        """Words under a heading of conditions that say how well something is kept and not what kept it."""
        return [
            f"condition written {said.text}"
            for said in self._said(lines, place)
            if any(c.isalpha() for c in said.text)
            and not any(other.place == said.place for part in lines for other in part.get("part", ()))
            and condition_said(said.text, self.names, self.given, yes_is_charred=said.unit == "yes is charred") == NOTHING_SAID
        ]  # fmt: skip

    def said_by_id(self, sample: str) -> tuple[str, ...]:
        """The conditions that a sample id ends with, such as 'S1 uncharred'."""
        found = self.of_ids.get(sample)
        if found is None:
            found = self.of_ids[sample] = _conditions_behind(sample)
        return found

    def _of_sample(self, sample: str, place: Place) -> str | None:
        """The condition that a sample id says; None, told, for two at once."""
        found = self.said_by_id(sample)
        if not found:
            return ""
        if len(found) > 1:
            self._set_aside(sample, place, "several")
            return None
        if found[0] != self.default:
            self.told.warning(
                "N402", f"sample {sample}", place,
                f"the sample id {shown(sample)} says that its finds are {found[0]}, and they are taken so, expected the "
                "condition in a row or column of its own",
                "say under 'mend' in the layout which sample it is, and give the row or column of the condition that role",
            )  # fmt: skip
        return found[0]

    def _of_remarks(self, remarks: Iterable[str], where: Said) -> str:
        """The condition that the notes of a row say, where nothing else says one."""
        for text in remarks:
            said = condition_in_note(text)
            if said and said != self.default:
                self.told.warning(
                    "N402", f"note {text}", where.place,
                    f"the note {shown(text)} says that '{where.text}' is {said}, and it is taken so, expected the "
                    "condition in a column of its own",
                    "nothing need be done if the note speaks of the find; else mend the note under 'mend' in the layout",
                )  # fmt: skip
            if said:
                return said
            some = remark(text).of_some
            if some:
                self.told.warning(
                    "N402", f"note {text}", where.place,
                    f"the note {shown(text)} says '{some}' of some of the items, and of how many of them nobody can "
                    f"tell; all of '{where.text}' are taken as {self.default}, expected one state for each number",
                    "count the others in a row of their own, or say under 'mend' in the layout how many are meant",
                )  # fmt: skip
        return ""

    def _set_aside(self, text: str, place: Place, doubt: str) -> None:
        why = "names two conditions at once" if doubt == "several" else "is not in the list of conditions"
        self.told.error(
            "N402", f"condition {text}", place,
            f"condition {shown(text)} {why}; its finds are set aside and are in no count, expected {self._expected()}",
            f'write under conditions in the layout which is meant: "{text}": charred; or mend the cell under \'mend\'',
        )  # fmt: skip

    def _checked(self, layout: Layout) -> dict[str, str]:
        found = {}
        for word, condition in layout.conditions.items():
            known = self.names.condition_of(condition)
            if known:
                found[word] = known
            else:
                self.told.error(
                    "N311", f"conditions {word}", layout.place,
                    f"conditions says that {shown(word)} is {shown(condition)}, expected {self._expected()}",
                    "write one of them",
                )  # fmt: skip
        return found

    def _expected(self) -> str:
        return f"{', '.join(self.known[:-1])} or {self.known[-1]}"


def _conditions_behind(sample: str) -> tuple[str, ...]:
    """The conditions that the last words of a sample id say; none where its last word says none."""
    tail = " ".join(re.split(r"[\s/_,()]+", sample.strip(" ()/"))[-3:])
    found = conditions_in(tail)
    return () if without_conditions(tail).rstrip(" -").split()[-1:] == tail.lower().split()[-1:] else found
