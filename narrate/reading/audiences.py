"""Audience packs: frames around clauses, plan, headings, words, glossary."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping

from narrate.model.audiences import Audience
from narrate.model.claims import GRADES
from narrate.problems import ProblemList
from narrate.reading.asking import Asking, Field, Reads, offered
from narrate.reading.fields import list_of, mapping_of, record
from narrate.reading.pack_files import Entry, PackFile, PackFolder, pack_files, unique
from narrate.reading.values import id_text, one_of, text, truth, whole
from narrate.reading.yaml_nodes import Node, Scalar, Sequence, value_of, written_id

FRAME_SLOTS = ("clause", "noun")


def read_audiences(
    folders: Iterable[PackFolder], questions: Mapping[str, str], problems: ProblemList
) -> dict[str, Audience]:
    """Audiences by id. An audience of a project's own packs replaces the one that comes with narrate."""
    fields = _fields()
    entries = []
    for file in pack_files(folders, "audiences", problems, "N601"):
        found = record(file.node, fields, file.asking, f"audience {written_id(file.node) or 'without an id'}")
        if found is not None:
            audience = Audience(
                **{"glossary": {}, "headings": {}, "words": {}, **found}, place=file.asking.place(file.node)
            )
            _check_plan(audience, file, questions)
            entries.append(Entry(audience, file.node, file.asking))
    return unique(entries, lambda audience: audience.id, "audience", "N601", later_wins=True)


def _fields() -> dict[str, Field]:
    needed = Field(reads=text("a text", may_be_empty=False), is_needed=True)
    flag = Field(reads=truth(), is_needed=True)
    frames = Field(reads=list_of(_frame(), at_least=1), is_needed=True)
    grades: dict[str, Field] = {grade: frames for grade, _ in GRADES}
    return {
        "id": Field(reads=id_text("an id"), is_needed=True),
        "title": needed,
        "register": Field(reads=one_of(("trade", "plain")), is_needed=True),
        "frames": Field(reads=_record(grades), is_needed=True),
        "shows_figures": flag,
        "shows_intervals": flag,
        "shows_latin": Field(reads=one_of(("first", "lead", "no")), is_needed=True),
        "shows_doubts_first": flag,
        "discloses": Field(reads=one_of(("everything", "public")), is_needed=True),
        "plan": Field(reads=list_of(id_text("a question"), at_least=1), is_needed=True),
        "headings": Field(reads=mapping_of(text())),
        "words": Field(reads=mapping_of(text())),
        "glossary": Field(reads=mapping_of(text())),
        "words_at_least": Field(reads=whole(at_least=1)),
        "words_at_most": Field(reads=whole(at_least=1)),
        "language": Field(reads=id_text("a folder of packs/languages")),
    }


def _record(fields: dict[str, Field]) -> Reads:
    def take(node: Node, asking: Asking, whose: str, name: str) -> object:
        return record(node, fields, asking, f"{whose}, {name}")

    return Reads("frames by grade", take)


def _frame() -> Reads:
    """A text with exactly one of the places for a clause and for a noun phrase."""

    def take(node: Node, asking: Asking, whose: str, name: str) -> str | None:
        found = text("a text", may_be_empty=False).take(node, asking, whose, name)
        if found is None:
            return None
        slots = re.findall(r"\{([^{}]*)\}", found)
        if len(slots) != 1 or slots[0] not in FRAME_SLOTS or found.count("{") != 1 or found.count("}") != 1:
            fills = " and ".join(f"{{{slot}}}" for slot in slots) or "nothing"
            refused = f"{whose}: frame '{found}' fills in {fills}, expected one of {{clause}} and {{noun}}"
            asking.tell(node, asking.wrong, refused, help="a frame holds {clause} or {noun} once, and no other brace")
            return None
        return found  # type: ignore[no-any-return]

    return Reads("a frame such as 'the remains suggest {noun}'", take)


def _check_plan(audience: Audience, file: PackFile, questions: Mapping[str, str]) -> None:
    plan = value_of(file.node, "plan")
    for item in plan.items if isinstance(plan, Sequence) else ():
        if isinstance(item, Scalar) and questions and item.text.strip() not in questions:
            meant = file.asking.near(item.text, questions)
            file.asking.tell(
                item,
                "N601",
                f"audience '{audience.id}': plan names '{item.text}', which no statement asks{offered(meant)}",
                help=f"write '{meant}'" if meant else f"questions are {', '.join(questions)}",
            )
