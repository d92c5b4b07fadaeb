"""Names that the analyst accepted in the layout of one sheet, remembered for all sheets of the project."""

from __future__ import annotations

import json
import re
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from narrate.model.layouts import Layout
from narrate.model.packs import Packs
from narrate.problems import ProblemList
from narrate.reading import yaml_nodes
from narrate.reading.accepted_names import FILE
from narrate.reading.source_text import SourceText
from narrate.reading.yaml_nodes import read_nodes

_HEAD = (
    "# Names as sheets of this project write them -> the taxa that they stand for. 'narrate intake' adds what was\n"
    "# accepted under names in the layout of a sheet; every sheet of the project is read with them. Edit it freely.\n"
)
_CODE = re.compile(r"\S{1,6}|[A-Z0-9._-]+|(?=\S*[a-z][A-Z0-9])\S+")
"""Short words, capitals and digits. A code is explained for its own sheet alone: others may mean another plant."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Remembered:
    """The file as it is to be, if anything is new; and what is to be said."""

    path: Path
    text: str = ""
    notes: tuple[str, ...] = ()


def remembered(project: Path, layout: Layout, packs: Packs) -> Remembered:
    """packs/names.yaml with the names that a layout accepts and no pack knows yet. What stands in it is kept."""
    path = project / "packs" / FILE
    new, notes = {}, []
    for written, meant in layout.names.items():
        id = packs.taxon_lookup.get(_flat(meant))
        known = packs.taxon_lookup.get(_flat(written))
        if id is None or _CODE.fullmatch(written):
            continue
        if known is None:
            new[written] = str(id)
        elif known != id:
            notes.append(
                f"the layout takes '{written}' for '{id}', and all other sheets of the project for '{known}'; it is "
                f"so read in this sheet, and packs/{FILE} was left as it is"
            )
    if not new:
        return Remembered(path=path, notes=tuple(notes))
    before = path.read_text(encoding="utf-8") if path.is_file() else _HEAD
    text = before + ("" if before.endswith("\n") or not before else "\n") + "".join(
        f"{_quoted(written)}: {_quoted(id)}\n" for written, id in sorted(new.items())
    )
    if not _holds(text, new):
        listed = "; ".join(f"{written}: {id}" for written, id in sorted(new.items()))
        notes.append(
            f"packs/{FILE} has a form to which no line can be added, and was left as it is; add there: {listed}"
        )
        return Remembered(path=path, notes=tuple(notes))
    notes.append(f"Remembered for all sheets of the project in packs/{FILE}: {', '.join(sorted(new))}.")
    return Remembered(path=path, text=text, notes=tuple(notes))


def _holds(text: str, new: Mapping[str, str]) -> bool:
    problems = ProblemList()
    node = read_nodes(SourceText(FILE, text), problems)
    if problems.found or not isinstance(node, yaml_nodes.Mapping):
        return False
    return set(new) <= {key.text for key, _ in node.entries}


def _flat(name: str) -> str:
    return " ".join(name.lower().split())


def _quoted(text: str) -> str:
    return text if re.fullmatch(r"[A-Za-z][\w .()-]*\w", text) else json.dumps(text, ensure_ascii=False)
