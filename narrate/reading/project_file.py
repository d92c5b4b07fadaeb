"""project.yaml: title, authors, phases, region packs, what may be disclosed."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from narrate.model.ids import ContextId, PhaseId
from narrate.model.project import Author, Disclosure
from narrate.model.stratigraphy import Phase
from narrate.problems import Place, ProblemList
from narrate.reading import yaml_nodes
from narrate.reading.asking import Asking, Field, Reads, is_blank, offered
from narrate.reading.fields import list_of, mapping_of, partial_record, record_of
from narrate.reading.source_text import SourceText
from narrate.reading.values import id_text, one_of, text, year
from narrate.reading.yaml_nodes import Node, Scalar, Sequence, read_nodes, value_of, written_id

PRESERVATIONS = ("charred", "waterlogged", "desiccated", "mixed")
RESTRICTABLE = ("location", "description", "note", "images", "feature", "method", "finds", "heavy_fraction")
"""Fields that can be withheld (a test holds `disclosure` to it), beside the keys of the project's own report."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ProjectFile:
    """What project.yaml says, as far as it could be read."""

    fields: dict[str, Any]
    """By the names of the model, without what could not be read."""
    is_whole: bool
    phases: tuple[Phase, ...]
    disclosure: Disclosure
    restricted_at: dict[ContextId, Place]
    """Where project.yaml names each restricted context."""
    region_packs: tuple[str, ...]
    regions_at: dict[str, Place]
    place: Place


def read_project_file(source: SourceText, problems: ProblemList) -> ProjectFile | None:
    """None where there is nothing in it that could be read."""
    before = len(problems.found)
    node = read_nodes(source, problems)
    asking = Asking(source=source, problems=problems)
    if not isinstance(node, yaml_nodes.Mapping):
        if len(problems.found) == before:
            problems.error(
                source.place(),
                "N201",
                "the project file holds no fields, expected at least 'title', 'region_packs' and 'phases'",
                help="write 'title: …' in its first line; 'narrate begin' lays out a whole one",
            )
        return None
    found, is_whole = partial_record(node, _project_fields(), asking, "project")
    phases = _unique_phases(found.pop("phases", ()), asking, node)
    disclosure = found.pop("disclosure", {})
    _check_restricted_fields(node, found.get("report", {}), asking)
    return ProjectFile(
        fields=found,
        is_whole=is_whole,
        phases=phases,
        disclosure=Disclosure(
            restricted_contexts=frozenset(disclosure.get("restricted_contexts", ())),
            restricted_fields=frozenset(disclosure.get("restricted_fields", ())) | {"location"},
        ),
        restricted_at=_places(node, ("disclosure", "restricted_contexts"), asking),  # type: ignore[arg-type]
        region_packs=found.get("region_packs", ()),
        regions_at=_places(node, ("region_packs",), asking),
        place=source.place(1, 1),
    )


def _project_fields() -> dict[str, Field]:
    author = {
        "name": Field(reads=text("a name", may_be_empty=False), is_needed=True),
        "role": Field(reads=text()),
    }
    phase = {
        "id": Field(reads=id_text("the id of a phase"), is_needed=True),
        "name": Field(reads=text("a name", may_be_empty=False), is_needed=True),
        "start": Field(reads=year()),
        "end": Field(reads=year()),
        "dates": Field(reads=text()),
        "basis": Field(reads=text()),
    }
    disclosure = {
        "restricted_contexts": Field(reads=list_of(id_text("the id of a context"), one_is_a_list=True)),
        "restricted_fields": Field(reads=list_of(text("the name of a field"), one_is_a_list=True)),
    }
    return {
        "title": Field(reads=text("a text", may_be_empty=False), is_needed=True),
        "summary": Field(reads=text()),
        "region_packs": Field(
            reads=list_of(id_text("the name of a region pack"), one_is_a_list=True, at_least=1), is_needed=True
        ),
        "preservation": Field(reads=one_of(PRESERVATIONS)),
        "authors": Field(reads=list_of(record_of(author, Author))),
        "report": Field(reads=mapping_of(text())),
        "phases": Field(reads=list_of(_phase(phase))),
        "disclosure": Field(reads=record_of(disclosure, dict)),
    }


def _phase(fields: dict[str, Field]) -> Reads:
    def take(node: Node, asking: Asking, whose: str, name: str) -> Phase | None:
        who = f"phase {written_id(node) or 'without an id'}"
        if not isinstance(node, yaml_nodes.Mapping):
            return record_of(fields, Phase).take(node, asking, who, "")  # type: ignore[no-any-return]
        found, is_whole = partial_record(node, fields, asking, who)
        if not is_whole:
            return None
        start, end = found.get("start"), found.get("end")
        if start is not None and end is not None and start > end:
            at = value_of(node, "start") or node
            asking.tell(
                at,
                asking.wrong,
                f"{who}: start is {start} and end is {end}, expected a start before the end",
                help="exchange the two; years BC are negative, so 1200 BC is -1200",
            )
        return Phase(**found, place=asking.place(node))

    return Reads("a phase with fields such as id and name", take)


def _unique_phases(phases: tuple[Phase, ...], asking: Asking, node: Node) -> tuple[Phase, ...]:
    first: dict[PhaseId, Phase] = {}
    for phase in phases:
        if phase.id in first:
            asking.problems.error(
                phase.place,
                "N204",
                f"phase '{phase.id}' is described twice, first in {first[phase.id].place.row}, expected each id once",
                help="give one of them another id",
                excerpt=asking.source.line(phase.place.line),
            )
        else:
            first[phase.id] = phase
    return tuple(first.values())


def _check_restricted_fields(node: Node, report: dict[str, str], asking: Asking) -> None:
    """A misspelt name would let a field out, so it is an error."""
    listed = value_of(value_of(node, "disclosure") or node, "restricted_fields")
    items = listed.items if isinstance(listed, Sequence) else (listed,) if isinstance(listed, Scalar) else ()
    known = (*RESTRICTABLE, *report)
    for item in items:
        if isinstance(item, Scalar) and not is_blank(item) and item.text.strip() not in known:
            meant = asking.near(item.text.strip(), known)
            asking.tell(
                item,
                "N202",
                f"project, disclosure: restricted_fields names '{item.text}', which cannot be withheld{offered(meant)}",
                help=f"write '{meant}'" if meant else f"can be withheld: {', '.join(known)}",
            )


def _places(node: Node, path: tuple[str, ...], asking: Asking) -> dict[str, Place]:
    for name in path:
        found = value_of(node, name)
        if found is None:
            return {}
        node = found
    items = node.items if isinstance(node, Sequence) else (node,)
    return {item.text.strip(): asking.place(item) for item in items if isinstance(item, Scalar)}
