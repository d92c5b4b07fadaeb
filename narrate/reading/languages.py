"""Language packs: the files of one folder below packs/languages, put together."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from dataclasses import replace
from typing import Any

from narrate.model.claims import GRADES
from narrate.model.languages import Language, Noun, Overclaim
from narrate.problems import ProblemList
from narrate.reading.asking import Asking, Field, Reads
from narrate.reading.fields import list_of, mapping_of, record, record_of
from narrate.reading.pack_files import PackFolder, entries_of, pack_files
from narrate.reading.values import id_text, one_of, text, truth, whole
from narrate.reading.yaml_nodes import Node

SORTS = ("certainty", "grade", "absence", "eating", "season")
"""In what a phrase may say too much."""


def read_languages(folders: Iterable[PackFolder], problems: ProblemList) -> dict[str, Language]:
    """
    Languages by the name of their folder, each put together from its files.

    A later file adds to tables and replaces single texts, so that a project may add words of its own.
    """
    found: dict[str, Language] = {}
    fields = _fields()
    for file in pack_files(folders, "languages", problems, "N602"):
        read = record(file.node, fields, file.asking, f"language pack {file.inside}")
        if read is None:
            continue
        id = read.pop("language")
        read["overclaims"] = tuple(entry.value for entry in read.get("overclaims", ()))
        found[id] = _joined(found.get(id, Language(id=id)), read)
    return found


def _joined(language: Language, read: Mapping[str, Any]) -> Language:
    more: dict[str, Any] = {}
    for name, value in read.items():
        before = getattr(language, name)
        if isinstance(value, Mapping):
            more[name] = {**before, **value}
        elif name == "overclaims":
            more[name] = (*before, *value)
        else:
            more[name] = value or before
    return replace(language, **more)


def _fields() -> dict[str, Field]:
    needed = Field(reads=text("a text", may_be_empty=False), is_needed=True)
    grades = one_of(grade for grade, _ in GRADES)
    overclaim = {
        "says": Field(reads=_pattern(), is_needed=True),
        "sort": Field(reads=one_of(SORTS), is_needed=True),
        "needs": Field(reads=grades),
        "why": needed,
        "instead": needed,
    }
    noun = record_of(
        {
            "one": needed,
            "many": Field(reads=text()),
            "gender": Field(reads=one_of(("f", "m"))),
            "is_mass": Field(reads=truth()),
        },
        Noun,
    )
    words = list_of(text("a word", may_be_empty=False), at_least=1)
    return {
        "language": Field(reads=id_text("the name of the folder that the file lies in"), is_needed=True),
        "title": Field(reads=text()),
        "overclaims": Field(reads=entries_of("phrase", overclaim, _overclaim, id="says")),
        "negations": Field(reads=words),
        "numbers": Field(reads=words),
        "grammar": Field(reads=mapping_of(text())),
        "plants": Field(reads=mapping_of(noun)),
        "described": Field(reads=mapping_of(text("a description", may_be_empty=False))),
        "parts": Field(reads=mapping_of(noun)),
        "kinds": Field(reads=mapping_of(noun)),
        "statements": Field(reads=mapping_of(text("a clause", may_be_empty=False))),
        "reasons": Field(reads=mapping_of(text("a clause", may_be_empty=False))),
        "sentences": Field(reads=mapping_of(words)),
        "number_words": Field(reads=mapping_of(whole(at_least=0))),
        "number_times": Field(reads=mapping_of(whole(at_least=2))),
        "typed": Field(reads=mapping_of(_alternatives())),
    }


def _overclaim(*, says: str, **rest: Any) -> Overclaim:
    return Overclaim(pattern=says, **rest)


def _alternatives() -> Reads:
    """A regular expression that may go on over several lines, broken after a bar."""
    pattern = _pattern()

    def take(node: Node, asking: Asking, whose: str, name: str) -> str | None:
        found = pattern.take(node, asking, whose, name)
        return re.sub(r"\|\s+", "|", found) if found is not None else None

    return Reads(pattern.expected, take)


def _pattern() -> Reads:
    """A regular expression that can be read."""

    def take(node: Node, asking: Asking, whose: str, name: str) -> str | None:
        found = text("a phrase", may_be_empty=False).take(node, asking, whose, name)
        if found is None:
            return None
        try:
            re.compile(found)
        except re.error as fault:
            said = f"{whose}: {name} is '{found}', expected a regular expression ({fault})"
            asking.tell(node, asking.wrong, said, help="put a backslash before each bracket that stands for itself")
            return None
        return found  # type: ignore[no-any-return]

    return Reads("a phrase, written as a regular expression", take)
