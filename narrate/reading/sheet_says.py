"""What a laboratory's own sheets say of the samples that records describe: problems of a record lead to the cell."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from narrate.reading.intake.said import Said
from narrate.reading.source_text import shown


@dataclass(slots=True)
class SheetSays:
    """Sample (or, behind a zero byte, context) -> role -> what sheets say, each with its cell."""

    facts: dict[str, dict[str, list[Said]]] = field(default_factory=dict)

    def take(self, facts: Mapping[str, Mapping[str, list[Said]]]) -> None:
        for id, said in facts.items():
            known = self.facts.setdefault(id, {})
            for role, more in said.items():
                known.setdefault(role, []).extend(more)

    def of_sample(self, id: str, *roles: str) -> str:
        """
        The end of a message: what the sheet says under the first of the roles, else where the sample stands in it.

        Empty where no sheet with a layout names the sample.
        """
        said = self.facts.get(id, {})
        for role in roles:
            for one in said.get(role, ())[:1]:
                return f"; the sheet says {shown(one.text)} in {one.place.row}"
        for one in said.get("sample", ())[:1]:
            return f"; the sample stands in {one.place.row}"
        return ""

    def of_context(self, id: str, role: str) -> str:
        """The same of a context: by its own line, or by that of a sample from it."""
        own = self.facts.get("\x00" + id, {})
        of_it = [said for said in self.facts.values() if any(one.text == id for one in said.get("context", ()))]
        for said in (own, *of_it):
            for one in said.get(role, ())[:1]:
                return f"; the sheet says {shown(one.text)} in {one.place.row}"
        return ""
