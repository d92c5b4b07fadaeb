"""Rule packs: one argument a file, with the examples that it must answer."""

from __future__ import annotations

import re
from collections.abc import Collection, Iterable, Mapping
from typing import Any, get_args

from narrate.model.ids import LEVELS, RuleId, SourceKey
from narrate.model.plants import KNOWN
from narrate.model.rules import WEIGHTS, Example, Remains, Rule, RuleStatus, Verdict
from narrate.model.sampling import AMOUNTS
from narrate.model.stratigraphy import DEPOSITS, SECURITIES
from narrate.problems import ProblemList
from narrate.reading import yaml_nodes
from narrate.reading.asking import Asking, Field, Reads, offered, refuse
from narrate.reading.criteria import criterion
from narrate.reading.fields import list_of, record, record_of
from narrate.reading.pack_files import SOURCES, Entry, PackFile, PackFolder, pack_files, unique
from narrate.reading.project_file import PRESERVATIONS
from narrate.reading.taxon_packs import taxon_regions
from narrate.reading.values import id_text, number, one_of, share, text, whole, year
from narrate.reading.yaml_nodes import Node, Scalar, Sequence, value_of, written_id

VERDICTS: tuple[str, ...] = get_args(Verdict)


def read_rules(
    folders: Iterable[PackFolder], sources: Mapping[SourceKey, object], problems: ProblemList
) -> dict[RuleId, Rule]:
    """Rules by id. What a rule names (taxa, measures, statements) is checked where rules are judged."""
    fields = _rule_fields()
    entries = []
    folders = tuple(folders)
    regions = taxon_regions(folders)
    for file in pack_files(folders, "rules", problems, "N501", sources):
        entry = _rule(file, fields)
        if entry is not None:
            _check_regions(entry.value, file, regions)
            entries.append(entry)
    return unique(entries, lambda rule: rule.id, "rule", "N504")  # type: ignore[return-value]


def _rule(file: PackFile, fields: dict[str, Field]) -> Entry | None:
    asking = file.asking
    whose = f"rule {written_id(file.node) or 'without an id'}"
    before = asking.faults
    found = record(file.node, fields, asking, whose)
    if found is None or asking.faults > before:
        # A rule of which a part could not be read would mean something else than was written.
        return None
    direction, statement = found.pop("argues")
    rule = Rule(
        **found, direction=direction, statement=statement, is_local=file.folder.is_local, place=asking.place(file.node)
    )
    _check_id(rule, file)
    _check_sources(rule, file)
    _check_examples(rule, file)
    return Entry(rule, file.node, asking)


def _check_id(rule: Rule, file: PackFile) -> None:
    topic, _, name = rule.id.partition(".")
    folder, _, stem = file.inside.removeprefix("rules/").rpartition(".")[0].rpartition("/")
    at = value_of(file.node, "id") or file.node
    if not re.fullmatch(r"[a-z0-9-]+\.[a-z0-9_]+", rule.id):
        file.asking.tell(
            at,
            "N501",
            f"rule '{rule.id}': id is '{rule.id}', expected a question, a point and words joined by underscores",
            help="write an id such as fuel.cupules_outnumber_kernels",
        )
    elif name != stem or (folder and folder.rpartition("/")[2] != topic):
        file.asking.tell(
            at,
            "N501",
            f"rule '{rule.id}': the file is rules/{folder + '/' if folder else ''}{stem}.yaml, expected "
            f"rules/{topic}/{name}.yaml",
            help="ids are for ever: rename the file",
        )


def _check_regions(rule: Rule, file: PackFile, known: Collection[str]) -> None:
    for region in rule.regions:
        if region not in known:
            meant = file.asking.near(region, known)
            file.asking.tell(
                value_of(file.node, "regions") or file.node,
                "N502",
                f"rule '{rule.id}': region '{region}' is no taxon pack{offered(meant)}",
                help=f"write '{meant}'" if meant else f"known are {', '.join(sorted(known))}",
            )


def _check_sources(rule: Rule, file: PackFile) -> None:
    if not rule.sources:
        file.asking.tell(
            value_of(file.node, "sources") or file.node,
            "N501",
            f"rule '{rule.id}': weight '{rule.weight}' has no source, expected at least one key of sources.yaml",
            help="for a weight that is your own judgement write 'sources: [pack-judgement]'",
        )


def _check_examples(rule: Rule, file: PackFile) -> None:
    missing = [verdict for verdict in VERDICTS if verdict not in {example.expect for example in rule.examples}]
    if missing and rule.status != "retired":
        at = value_of(file.node, "examples") or file.node
        file.asking.tell(
            at,
            "N501",
            f"rule '{rule.id}': no example expects {' or '.join(repr(v) for v in missing)}, expected at least one each "
            "of holds, fails and cannot tell",
            help=f"add an example with 'expect: {missing[0]}'",
        )


def _rule_fields() -> dict[str, Field]:
    sentence = Field(reads=text("a text", may_be_empty=False), is_needed=True)
    return {
        "id": Field(reads=id_text("an id such as fuel.cupules_outnumber_kernels"), is_needed=True),
        "title": sentence,
        "status": Field(reads=one_of(get_args(RuleStatus)), is_needed=True),
        "argues": Field(reads=_argues(), is_needed=True),
        "about": Field(reads=list_of(one_of(LEVELS), one_is_a_list=True, at_least=1), is_needed=True),
        "says": sentence,
        "says_plain": sentence,
        "why": sentence,
        "misleads_when": Field(reads=list_of(text("a sentence"), at_least=1), is_needed=True),
        "sources": Field(reads=SOURCES.reads, is_needed=True),
        "known": Field(reads=one_of(KNOWN), is_needed=True),
        "needs": Field(reads=list_of(criterion())),
        "criteria": Field(reads=criterion(), is_needed=True),
        "weight": Field(reads=one_of(WEIGHTS), is_needed=True),
        "evidence": Field(reads=id_text("a key that rules share which rest on the same remains")),
        "regions": Field(reads=list_of(id_text("the name of a region pack"), one_is_a_list=True, at_least=1)),
        "examples": Field(reads=list_of(_example(), at_least=1), is_needed=True),
    }


def _argues() -> Reads:
    expected = "{for: …} or {against: …} with the id of a statement"
    fields = {side: Field(reads=id_text("the id of a statement")) for side in ("for", "against")}

    def take(node: Node, asking: Asking, whose: str, name: str) -> tuple[str, str] | None:
        if not isinstance(node, yaml_nodes.Mapping):
            refuse(node, asking, whose, name, expected)
            return None
        found = record(node, fields, asking, f"{whose}, {name}")
        if found is None or len(found) != 1:
            asking.tell(node, asking.wrong, f"{whose}: {name} is a mapping of {len(node.entries)}, expected {expected}")
            return None
        return next(iter(found.items()))

    return Reads(expected, take)


def _example() -> Reads:
    remains = {
        "taxon": Field(reads=id_text("a name"), is_needed=True),
        "part": Field(reads=id_text("a part"), is_needed=True),
        "count": Field(reads=whole(at_least=0)),
        "mass_g": Field(reads=number(at_least=0)),
        "condition": Field(reads=id_text("a condition")),
        "completeness": Field(reads=one_of(("whole", "fragment"))),
        "sample": Field(reads=whole(at_least=1)),
    }
    fields = {
        "name": Field(reads=text("a name", may_be_empty=False), is_needed=True),
        "remains": Field(reads=list_of(record_of(remains, Remains))),
        "records": Field(reads=record_of(_record_fields(), dict)),
        "expect": Field(reads=one_of(VERDICTS), is_needed=True),
        "region": Field(reads=id_text("the name of a region pack")),
    }

    def take(node: Node, asking: Asking, whose: str, name: str) -> Example | None:
        who = f"{whose}, example {written_id(node, 'name') or 'without a name'}"
        found = record(node, fields, asking, who)
        if found is None:
            return None
        records: dict[str, Any] = found.pop("records", {})
        if "proportion_sorted" in records:
            records["proportion_sorted"] = records["proportion_sorted"][0]
        return Example(**{"remains": (), **found}, **records, place=asking.place(node))

    return Reads("an example with fields such as name, remains and expect", take)


def _record_fields() -> dict[str, Field]:
    """Fields of `records`; a test holds them to be those of `Example`."""
    return {
        "context_kind": Field(reads=id_text("a kind of context")),
        "deposit": Field(reads=one_of(DEPOSITS)),
        "security": Field(reads=one_of(SECURITIES)),
        "volume_l": Field(reads=number(above=0)),
        "samples": Field(reads=whole(at_least=1)),
        "preservation": Field(reads=one_of(PRESERVATIONS)),
        "phase_start": Field(reads=year()),
        "phase_end": Field(reads=year()),
        "phases": Field(reads=list_of(id_text("the name of a phase"))),
        "kinds": Field(reads=list_of(id_text("a kind of context"))),
        "noted": Field(reads=list_of(id_text("an observation"))),
        "intrusions": Field(reads=_intrusions()),
        "recovery": Field(reads=_recovery()),
        "proportion_sorted": Field(reads=share()),
        "heavy_fraction": Field(reads=one_of(("sorted", "not sorted", "unknown"))),
    }


def _intrusions() -> Reads:
    """An amount, or an empty text for 'not noted'."""
    amount = one_of(AMOUNTS)

    def take(node: Node, asking: Asking, whose: str, name: str) -> str | None:
        if isinstance(node, Scalar) and not node.text.strip():
            return ""
        return amount.take(node, asking, whose, name)  # type: ignore[no-any-return]

    return Reads(amount.expected, take)


def _recovery() -> Reads:
    expected = "two whole numbers: [added, recovered]"

    def take(node: Node, asking: Asking, whose: str, name: str) -> tuple[int, int] | None:
        if not isinstance(node, Sequence) or len(node.items) != 2:
            refuse(node, asking, whose, name, expected)
            return None
        found = list_of(whole(at_least=0)).take(node, asking, whose, name)
        return found if found is not None and len(found) == 2 else None

    return Reads(expected, take)
