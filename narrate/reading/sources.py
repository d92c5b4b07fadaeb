"""sources.yaml: the works that packs cite."""

from __future__ import annotations

from collections.abc import Iterable

from narrate.model.ids import SourceKey
from narrate.model.packs import Source
from narrate.model.plants import KNOWN
from narrate.problems import ProblemList
from narrate.reading.asking import Field
from narrate.reading.fields import partial_record
from narrate.reading.pack_files import Entry, PackFolder, entries_of, read_pack_file, unique
from narrate.reading.values import id_text, one_of, text

KINDS = ("work", "practice", "judgement")


def read_sources(folders: Iterable[PackFolder], problems: ProblemList) -> dict[SourceKey, Source]:
    """Works by key, those of the project after those that come with narrate."""
    found: list[Entry] = []
    fields = {"sources": Field(reads=entries_of("source", _fields(), Source, id="key"), is_needed=True)}
    for folder in folders:
        path = f"{folder.base}/sources.yaml"
        if (folder.root / path).is_file():
            file = read_pack_file(folder, path, problems, "N403")
            if file is not None:
                found.extend(partial_record(file.node, fields, file.asking, "sources file")[0].get("sources", ()))
    return unique(found, lambda source: source.key, "source", "N404")  # type: ignore[return-value]


def _fields() -> dict[str, Field]:
    return {
        "key": Field(reads=id_text("a key such as miller-1988"), is_needed=True),
        "authors": Field(reads=text(), is_needed=True),
        "year": Field(reads=text(), is_needed=True),
        "title": Field(reads=text("a title", may_be_empty=False), is_needed=True),
        "container": Field(reads=text()),
        "pages": Field(reads=text()),
        "kind": Field(reads=one_of(KINDS)),
        "known": Field(reads=one_of(KNOWN)),
        "entry": Field(reads=one_of(("read",))),
        "note": Field(reads=text()),
        "region": Field(reads=id_text("a region such as arid-southwest")),
    }
