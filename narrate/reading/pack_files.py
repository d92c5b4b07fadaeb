"""Files of packs: those that come with narrate, then the project's own."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any, TypeVar

from narrate.model.ids import SourceKey
from narrate.problems import Place, ProblemList
from narrate.reading import yaml_nodes
from narrate.reading.asking import Asking, Field, Reads
from narrate.reading.fields import list_of, record
from narrate.reading.files import listed, read_text
from narrate.reading.values import source_key
from narrate.reading.yaml_nodes import Node, Refused, read_nodes, written_id

Value = TypeVar("Value")
SOURCES = Field(reads=list_of(source_key(), one_is_a_list=True))


@dataclass(frozen=True, slots=True, kw_only=True)
class PackFolder:
    """A folder of packs: `root/base`. Messages name its files from root on."""

    root: Path
    base: str
    is_local: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class PackFile:
    """One file of packs that holds a mapping."""

    node: yaml_nodes.Mapping
    asking: Asking
    folder: PackFolder

    @property
    def inside(self) -> str:
        """Path within the packs, such as taxa/eastern-north-america/poaceae.yaml."""
        return self.asking.source.path.removeprefix(self.folder.base + "/")


def shipped_folder() -> PackFolder:
    """The packs that come with narrate."""
    return PackFolder(root=Path(__file__).resolve().parents[2], base="narrate/packs")


def pack_files(
    folders: Iterable[PackFolder],
    below: str,
    problems: ProblemList,
    code: str,
    known_sources: Mapping[SourceKey, object] | None = None,
) -> tuple[PackFile, ...]:
    """Pack files below one folder that hold a mapping; whatever is wrong in their shape is told under `code`."""
    found = []
    for folder in folders:
        for path in listed(folder.root, f"{folder.base}/{below}", (".yaml", ".yml"), problems):
            file = read_pack_file(folder, path, problems, code, known_sources)
            if file is not None:
                found.append(file)
    return tuple(found)


def read_pack_file(
    folder: PackFolder,
    path: str,
    problems: ProblemList,
    code: str,
    known_sources: Mapping[SourceKey, object] | None = None,
) -> PackFile | None:
    source = read_text(folder.root, path, problems)
    before = len(problems.found)
    node = read_nodes(source, problems) if source else None
    if source is not None and node is None and len(problems.found) == before:
        problems.warning(
            source.place(1),
            code,
            "the file holds nothing, expected 'name: value'",
            help="write what it is for, or delete the file",
        )
    if source is None or node is None:
        return None
    asking = Asking(
        source=source, problems=problems, missing=code, unknown=code, wrong=code, known_sources=known_sources
    )
    if not isinstance(node, yaml_nodes.Mapping):
        if not isinstance(node, Refused):
            asking.tell(node, code, "the file does not begin with a field, expected 'name: value'")
        return None
    return PackFile(node=node, asking=asking, folder=folder)


@dataclass(frozen=True, slots=True)
class Entry:
    """A value of a pack with the place where it was written."""

    value: Any
    node: Node
    asking: Asking


def entries_of(what: str, fields: Mapping[str, Field], make: Callable[..., Any], *, id: str = "id") -> Reads:
    """A list of entries that messages name by their ids, such as part 'cupule'."""

    def take(node: Node, asking: Asking, whose: str, name: str) -> Entry | None:
        found = record(node, fields, asking, f"{what} {written_id(node, id) or 'without an ' + id}")
        return None if found is None else Entry(make(**found, place=asking.place(node)), node, asking)

    return list_of(Reads(f"a {what}", take))


def unique(
    entries: Iterable[Entry], key: Callable[[Any], str], what: str, code: str, *, later_wins: bool = False
) -> dict[str, Any]:
    """
    Entries by key; a key given twice is told at the second, which is left out.

    later_wins:  a later file of another folder replaces the entry instead, as a project's own wording may.
    """
    first: dict[str, Entry] = {}
    for entry in entries:
        id = key(entry.value)
        if id in first and not (later_wins and first[id].asking.source.path != entry.asking.source.path):
            twice(entry, first[id].asking.place(first[id].node), f"{what} '{id}'", code)
        else:
            first[id] = entry
    return {id: entry.value for id, entry in first.items()}


def twice(entry: Entry, first: Place, whose: str, code: str) -> None:
    entry.asking.tell(
        entry.node,
        code,
        f"{whose} is defined twice, first in {first.row}, expected one definition",
        help="give one of them another name, or delete it"
        if first.path.startswith(entry.asking.source.path.partition("/")[0] + "/")
        else "give yours another name; what comes with narrate is retired or set otherwise in packs/changes.yaml",
    )
