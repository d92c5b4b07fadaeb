"""records/**/*.yaml: contexts and samples."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass, field
from typing import Any

from narrate.model.ids import ContextId, SampleId
from narrate.model.images import Image
from narrate.model.packs import Words
from narrate.model.sampling import AMOUNTS, HeavyFraction, LightFraction, RecoveryTest, Sample, SizeClass
from narrate.model.stratigraphy import DEPOSITS, SECURITIES, Context
from narrate.problems import Place, Problem, ProblemList
from narrate.reading import yaml_nodes
from narrate.reading.asking import Asking, Field, Reads, refuse
from narrate.reading.fields import list_of, mapping_of, partial_record, record_of
from narrate.reading.order import natural
from narrate.reading.source_text import SourceText
from narrate.reading.values import id_text, looked_up, number, one_of, share, text, truth, whole
from narrate.reading.yaml_nodes import Node, Refused, Scalar, Sequence, read_nodes, value_of, within, written_id


@dataclass(slots=True)
class Records:
    """
    Contexts and samples in natural order.

    Ids of records that could not be read whole are kept apart: rows and samples that name them are not in the wrong.
    """

    contexts: dict[ContextId, Context] = field(default_factory=dict)
    samples: dict[SampleId, Sample] = field(default_factory=dict)
    context_ids: set[str] = field(default_factory=set)
    sample_ids: set[str] = field(default_factory=set)
    faulty: set[str] = field(default_factory=set)
    """Ids of records in which something was told: what they lack may stand in the faulty field."""
    unread: dict[str, list[Place]] = field(default_factory=lambda: {"context": [], "sample": []})
    """Where a record of each kind could not be read: what nobody describes may be described there."""
    written: dict[tuple[str, str], tuple[yaml_nodes.Mapping, SourceText]] = field(default_factory=dict)
    """Each record as written, by kind and id, so that checks can point at its values."""

    def leave_out(self, place: Place, *kinds: str) -> None:
        """Notes that records of a kind, or of any, could not be read."""
        for kind in kinds or self.unread:
            self.unread[kind].append(place)

    def at(self, kind: str, id: str, *path: str | int) -> tuple[Place, int]:
        """
        Where a value of a record stands, and how wide it is; the record itself where it has no such value.

        path:  names of fields and positions in lists, from the record inwards.
        """
        node, source = self.written[kind, id]
        found: Node | None = within(node, path)
        if found is None:
            return source.place(node.line, node.column), 1
        return source.place(found.line, found.column), found.width if isinstance(found, Scalar) else 1

    def repeated_class_at(self, id: str, name: str) -> tuple[Place, int]:
        """Where the name of a size class stands for the second time."""
        node, _ = self.written["sample", id]
        listed = value_of(node, "size_classes")
        found = [
            i
            for i in range(len(listed.items) if isinstance(listed, Sequence) else 0)
            if isinstance(one := within(node, ("size_classes", i, "name")), Scalar) and one.text.strip() == name
        ]
        return self.at("sample", id, "size_classes", found[1] if len(found) > 1 else 0, "name")


def read_records(sources: tuple[SourceText, ...], words: Words, problems: ProblemList) -> Records:
    """All records of a project."""
    found = Records()
    kinds = _kinds_of_record(words)
    for source in sources:
        _read_file(source, kinds, found, problems)
    found.contexts = dict(sorted(found.contexts.items(), key=lambda item: natural(item[0])))
    found.samples = dict(sorted(found.samples.items(), key=lambda item: natural(item[0])))
    return found


@dataclass(frozen=True, slots=True, kw_only=True)
class _KindOfRecord:
    """One list that a record file may hold."""

    one: str
    fields: dict[str, Field]
    make: Callable[..., Any]
    into: Callable[[Records], dict[Any, Any]]
    ids: Callable[[Records], set[str]]


def _kinds_of_record(words: Words) -> dict[str, _KindOfRecord]:
    return {
        "contexts": _KindOfRecord(
            one="context",
            fields=_context_fields(words),
            make=Context,
            into=lambda records: records.contexts,
            ids=lambda records: records.context_ids,
        ),
        "samples": _KindOfRecord(
            one="sample",
            fields=_sample_fields(words),
            make=Sample,
            into=lambda records: records.samples,
            ids=lambda records: records.sample_ids,
        ),
    }


def _read_file(source: SourceText, kinds: dict[str, _KindOfRecord], records: Records, problems: ProblemList) -> None:
    before = len(problems.found)
    node = read_nodes(source, problems)
    asking = Asking(source=source, problems=problems)
    lists = {name: Field(reads=_list_of_records(kind, records)) for name, kind in kinds.items()}
    if node is None and len(problems.found) == before:
        problems.warning(
            source.place(1),
            "N201",
            "the record file holds nothing, expected 'contexts:' or 'samples:' with records",
            help="write the records, or delete the file",
        )
    elif isinstance(node, yaml_nodes.Mapping):
        partial_record(node, lists, asking, "record file")
        if any(key.text not in kinds for key, _ in node.entries) or _is_cut(problems.found[before:], node):
            records.leave_out(source.place())
    else:
        if node is not None and not isinstance(node, Refused):
            asking.tell(
                node,
                "N203",
                "the record file does not begin with 'contexts:' or 'samples:', expected one of them, or both",
                help="write 'samples:' in a line of its own and indent the records under it",
            )
        records.leave_out(source.place())


def _is_cut(found: Iterable[Problem], node: yaml_nodes.Mapping) -> bool:
    """True where a second document, or a second list of one kind, was refused and not read."""
    return any(problem.code in ("N103", "N104") and problem.place.column == node.column for problem in found)


def _list_of_records(kind: _KindOfRecord, records: Records) -> Reads:
    def take(node: Node, asking: Asking, whose: str, name: str) -> None:
        if not isinstance(node, Sequence):
            records.leave_out(asking.place(node), kind.one)
            help = f"begin each {kind.one} with '- id: …'"
            refuse(node, asking, whose, name, f"a list of {kind.one}s", help)
            return
        for number_of, item in enumerate(node.items, start=1):
            _read_record(item, number_of, kind, records, asking)

    return Reads(f"a list of {kind.one}s", take)


def _read_record(node: Node, position: int, kind: _KindOfRecord, records: Records, asking: Asking) -> None:
    whose = f"{kind.one} {written_id(node) or f'{position} of this file'}"
    if not isinstance(node, yaml_nodes.Mapping):
        records.leave_out(asking.place(node), kind.one)
        help = f"write 'id: {node.text}'" if isinstance(node, Scalar) and node.text else "begin it with '- id: …'"
        refuse(node, asking, whose, "the record", "fields such as 'id: …'", help)
        return
    before = asking.faults
    found, is_whole = partial_record(node, kind.fields, asking, whose)
    id = found.get("id")
    if id is None:
        records.leave_out(asking.place(node), kind.one)
        return
    if asking.faults > before:
        records.faulty.add(id)
    ids, into = kind.ids(records), kind.into(records)
    if id in ids:
        first = f", first in {into[id].place.row}" if id in into else ""
        at = value_of(node, "id") or node
        asking.tell(
            at,
            "N204",
            f"{whose} is described twice{first}, expected each id once",
            help="give one of them another id, or put the two together",
        )
        return
    ids.add(id)
    records.written[kind.one, id] = (node, asking.source)
    if is_whole:
        into[id] = kind.make(**found, place=asking.place(node))


def _context_fields(words: Words) -> dict[str, Field]:
    return {
        "id": Field(reads=id_text("the id of the context"), is_needed=True),
        "kind": Field(reads=looked_up(words.kind_lookup, "kinds of context"), is_needed=True),
        "feature": Field(reads=id_text("the id of a feature")),
        "phase": Field(reads=id_text("the id of a phase of project.yaml")),
        "deposit": Field(reads=one_of(DEPOSITS)),
        "security": Field(reads=one_of(SECURITIES)),
        "description": Field(reads=text()),
        "note": Field(reads=text()),
        "location": Field(reads=mapping_of(text())),
        "images": Field(reads=_images()),
    }


def _sample_fields(words: Words) -> dict[str, Field]:
    mass, litres = number(at_least=0), number(above=0)
    light = {"mass_g": Field(reads=mass), "volume_ml": Field(reads=mass)}
    heavy = {"sorted": Field(reads=truth()), "finds": Field(reads=mapping_of(text()))}
    recovery = {
        "added": Field(reads=whole(at_least=1), is_needed=True),
        "recovered": Field(reads=whole(at_least=0), is_needed=True),
    }
    size_class = {
        "name": Field(reads=id_text("the name of a size class"), is_needed=True),
        "proportion_sorted": Field(reads=share(), is_needed=True),
    }
    return {
        "id": Field(reads=id_text("the id of the sample"), is_needed=True),
        "context": Field(reads=id_text("the id of a context"), is_needed=True),
        "volume_l": Field(reads=litres),
        "method": Field(reads=looked_up(words.method_lookup, "methods")),
        "mesh_mm": Field(reads=mapping_of(number(above=0))),
        "light_fraction": Field(reads=record_of(light, LightFraction)),
        "size_classes": Field(reads=list_of(record_of(size_class, _size_class))),
        "heavy_fraction": Field(reads=record_of(heavy, HeavyFraction)),
        "modern_intrusions": Field(reads=mapping_of(one_of(AMOUNTS))),
        "recovery_test": Field(reads=record_of(recovery, RecoveryTest)),
        "sterile": Field(reads=truth()),
        "wood_fragments_identified": Field(reads=whole(at_least=0)),
        "images": Field(reads=_images()),
        "note": Field(reads=text()),
    }


def _size_class(name: str, proportion_sorted: tuple[float, str]) -> SizeClass:
    share_sorted, written = proportion_sorted
    return SizeClass(name=name, proportion_sorted=share_sorted, written=written)


def _images() -> Reads:
    needed = text("a text", may_be_empty=False)
    fields = {
        "file": Field(reads=text("the path of a picture", may_be_empty=False), is_needed=True),
        "caption": Field(reads=needed),
        "credit": Field(reads=needed),
        "alt": Field(reads=needed),
    }
    return list_of(record_of(fields, _image, has_place=True))


def _image(file: str, place: Any, caption: str = "", credit: str = "", alt: str = "") -> Image:
    return Image(file=file, caption=caption, credit=credit, alt=alt, place=place)
