"""project.yaml: title, authors, phases, region packs, what may be disclosed."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from narrate.model.ids import ContextId, PhaseId
from narrate.model.project import Author, Disclosure
from narrate.model.report_blocks import BLOCKS, ChecklistItem, ReportBlock
from narrate.model.stratigraphy import Phase
from narrate.model.style import DASHES, THOUSANDS, Style
from narrate.problems import Place, Problem, ProblemList
from narrate.reading import yaml_nodes
from narrate.reading.asking import Asking, Field, Reads, is_blank, offered
from narrate.reading.fields import list_of, mapping_of, partial_record, record_of
from narrate.reading.source_text import SourceText, tell
from narrate.reading.values import id_text, one_of, spelled, text, truth, web_address, year
from narrate.reading.yaml_nodes import Node, Scalar, Sequence, read_nodes, value_of, within, written_id

PRESERVATIONS = ("charred", "waterlogged", "desiccated", "mixed")
RESTRICTABLE = ("location", "description", "note", "images", "feature", "method", "finds", "heavy_fraction")
"""Fields that can be withheld (a test holds `disclosure` to it), beside the keys of the project's own report."""
APPROVABLE = ("public", "report")
"""What can be built from approved words alone."""
_ERAS = {"AD": "AD", "CE": "CE", "BP": "BP", "cal AD": "AD", "cal CE": "CE", "cal BP": "BP"}
_LITRES = {"litre": "litre", "liter": "liter", "L": "L", "l": "l", "litres": "litre", "liters": "liter"}


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
    node: Node | None = None
    source: SourceText | None = None
    has_unread_phases: bool = False
    """True where a phase could not be read: what is none of the phases may be that one."""

    def at(self, *path: str | int) -> tuple[Place, int]:
        """Where a value stands, and how wide it is; the file's first line where there is no such value."""
        found = within(self.node, path) if self.node is not None else None
        if found is None:
            return self.place, 1
        place = Place(path=self.place.path, line=found.line, column=found.column)
        return place, found.width if isinstance(found, Scalar) else 1

    def line(self, number: int) -> str:
        return self.source.line(number).rstrip() if self.source is not None else ""

    def phase_at(self, id: str, name: str) -> tuple[Place, int]:
        """Where a field of a phase stands."""
        phases = value_of(self.node, "phases") if self.node is not None else None
        items = phases.items if isinstance(phases, Sequence) else ()
        return self.at("phases", next((i for i, item in enumerate(items) if _written(item) == id), -1), name)


def unread_project_file(place: Place) -> ProjectFile:
    """Stands for a project file that could not be read, so that the rest can still be checked."""
    nothing: dict[str, Any] = {"fields": {}, "restricted_at": {}, "regions_at": {}}
    return ProjectFile(
        **nothing,
        is_whole=False,
        phases=(),
        disclosure=Disclosure(),
        region_packs=(),
        place=place,
        has_unread_phases=True,
    )


def read_project_file(source: SourceText, problems: ProblemList, regions: tuple[str, ...] = ()) -> ProjectFile | None:
    """
    None where there is nothing in it that could be read.

    regions:  region packs that there are, for messages.
    """
    before = len(problems.found)
    node = read_nodes(source, problems)
    asking = Asking(source=source, problems=problems)
    if not isinstance(node, yaml_nodes.Mapping):
        if len(problems.found) == before:
            tell(
                source,
                problems,
                "N201",
                "the project file holds no fields, expected at least 'title', 'region_packs' and 'phases'",
                line=1,
                column=1,
                width=len(source.line(1)),
                help="write 'title: …' in its first line; 'narrate begin' lays out a whole one",
            )
        return None
    found, is_whole = partial_record(node, _project_fields(regions), asking, "project")
    has_unread_phases = _has_unread_phases(node, problems.found[before:])
    phases = _unique_phases(found.pop("phases", ()), asking, node)
    disclosure = found.pop("disclosure", {})
    if "audiences" in found:
        found["audiences"] = tuple(dict.fromkeys(found["audiences"]))
    if "approved_only" in found:
        found["approved_only"] = frozenset(found["approved_only"])
    _unique_blocks(found.get("report_blocks", ()), asking, node)
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
        node=node,
        source=source,
        has_unread_phases=has_unread_phases,
    )


def _has_unread_phases(node: yaml_nodes.Mapping, found: list[Problem]) -> bool:
    phases = value_of(node, "phases")
    if phases is None:
        return any(problem.code == "N202" for problem in found)
    items = phases.items if isinstance(phases, Sequence) else ()
    return (not isinstance(phases, Sequence) and not is_blank(phases)) or not all(_written(item) for item in items)


def _written(phase: Node) -> str:
    id = value_of(phase, "id")
    return id.text.strip() if isinstance(id, Scalar) else ""


def _regions(known: tuple[str, ...]) -> Reads:
    there_are = f"; there are {', '.join(known)}" if known else ""
    items = list_of(id_text("the name of a region pack"), one_is_a_list=True)

    def take(node: Node, asking: Asking, whose: str, name: str) -> tuple[str, ...] | None:
        if isinstance(node, Sequence) and not node.items:
            help = f"write [{known[0]}]" if len(known) == 1 else "write the names of those that the project needs"
            message = f"{whose}: {name} is an empty list, expected at least one region pack{there_are}"
            asking.tell(node, asking.wrong, message, help=help)
            return None
        return items.take(node, asking, whose, name)

    return Reads(f"a list of region packs{there_are}", take)


def _project_fields(regions: tuple[str, ...]) -> dict[str, Field]:
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
    style = {
        "era": Field(reads=spelled(_ERAS)),
        "thousands": Field(reads=one_of(THOUSANDS)),
        "units": Field(reads=spelled(_LITRES), into="litre"),
        "dash": Field(reads=one_of(DASHES)),
    }
    block = {
        "block": Field(reads=one_of(BLOCKS), is_needed=True),
        "title": Field(reads=text()),
        "text": Field(reads=text()),
        "shown": Field(reads=truth()),
    }
    checked = {
        "asks": Field(reads=text("what is asked", may_be_empty=False), is_needed=True),
        "block": Field(reads=one_of(BLOCKS)),
        "report": Field(reads=text()),
    }
    return {
        "title": Field(reads=text("a text", may_be_empty=False), is_needed=True),
        "summary": Field(reads=text()),
        "region_packs": Field(reads=_regions(regions), is_needed=True),
        "preservation": Field(reads=one_of(PRESERVATIONS)),
        "authors": Field(reads=list_of(record_of(author, Author))),
        "report": Field(reads=mapping_of(text())),
        "phases": Field(reads=list_of(_phase(phase))),
        "disclosure": Field(reads=record_of(disclosure, dict)),
        "report_blocks": Field(reads=list_of(record_of(block, ReportBlock))),
        "report_checklist": Field(reads=list_of(record_of(checked, ChecklistItem))),
        "style": Field(reads=record_of(style, Style)),
        "audiences": Field(reads=list_of(id_text("an audience"), one_is_a_list=True)),
        "address": Field(reads=web_address()),
        "contact": Field(reads=text()),
        "approved_only": Field(reads=list_of(one_of(APPROVABLE), one_is_a_list=True)),
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


def _unique_blocks(blocks: tuple[ReportBlock, ...], asking: Asking, node: Node) -> None:
    names = [one.block for one in blocks]
    for name in sorted({name for name in names if names.count(name) > 1}):
        message = f"project: report_blocks names '{name}' twice, expected each block once"
        asking.tell(value_of(node, "report_blocks") or node, "N204", message, help="keep one of the entries")


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
    return {item.text.strip(): asking.place(item) for item in items if isinstance(item, Scalar) and item.text.strip()}
