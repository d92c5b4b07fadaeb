"""Statement packs: what may be true of the past, by question."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from typing import Any

from narrate.model.ids import SourceKey, StatementId
from narrate.model.rules import Statement
from narrate.problems import ProblemList
from narrate.reading.asking import Field
from narrate.reading.fields import list_of, partial_record
from narrate.reading.pack_files import SOURCES, Entry, PackFolder, entries_of, pack_files, unique
from narrate.reading.values import id_text, number, text
from narrate.reading.yaml_nodes import value_of

QUESTIONS = ("deposit", "integrity", "fuel", "food", "processing", "field", "season", "change", "work")
"""The order of telling; questions of a project's own packs follow in the order of their files."""


def read_statements(
    folders: Iterable[PackFolder], sources: Mapping[SourceKey, object], problems: ProblemList
) -> tuple[dict[StatementId, Statement], dict[str, str]]:
    """Statements by id, and how each question is asked, in the order of telling."""
    entries: list[Entry] = []
    asked: dict[str, str] = {}
    for file in pack_files(folders, "statements", problems, "N501", sources):
        question = value_of(file.node, "question")
        name = getattr(question, "text", "").strip()
        top = _top_fields(name)
        found, is_whole = partial_record(file.node, top, file.asking, "statement pack")
        if is_whole:
            asked.setdefault(found["question"], found["asked"])
            entries.extend(found["statements"])
    for entry in entries:
        _check_id(entry)
    statements = unique(entries, lambda statement: statement.id, "statement", "N504")
    order = [*(q for q in QUESTIONS if q in asked), *(q for q in asked if q not in QUESTIONS)]
    return statements, {question: asked[question] for question in order}  # type: ignore[return-value]


def _top_fields(question: str) -> dict[str, Field]:
    def make(**found: Any) -> Statement:
        return Statement(**found, question=question)

    return {
        "question": Field(reads=id_text("the name of a question"), is_needed=True),
        "asked": Field(reads=text("the question as it is asked", may_be_empty=False), is_needed=True),
        "statements": Field(reads=entries_of("statement", _fields(), make), is_needed=True),
        "sources": SOURCES,
    }


def _fields() -> dict[str, Field]:
    needed = Field(reads=text("a text", may_be_empty=False), is_needed=True)
    return {
        "id": Field(reads=id_text("an id such as fuel.wood"), is_needed=True),
        "title": needed,
        "clause": needed,
        "noun": needed,
        "plain": needed,
        "plain_noun": needed,
        "means": Field(reads=text()),
        "does_not_mean": Field(reads=text()),
        "rivals": Field(reads=list_of(id_text("the id of a statement"), one_is_a_list=True)),
        "after": Field(reads=list_of(id_text("the id of a statement"), one_is_a_list=True)),
        "prior": Field(reads=number()),
        "sources": SOURCES,
    }


def _check_id(entry: Entry) -> None:
    statement = entry.value
    if not re.fullmatch(rf"{re.escape(statement.question)}\.[a-z0-9-]+", statement.id):
        at = value_of(entry.node, "id") or entry.node
        entry.asking.tell(
            at,
            "N501",
            f"statement '{statement.id}': id is '{statement.id}', expected '{statement.question}.' and then words in "
            "lower case joined by hyphens",
            help=f"write an id such as {statement.question}.what-it-says",
        )
