"""Word packs: parts, conditions, kinds of context, methods, and how arguments are weighed and shown."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field
from typing import Any

from narrate.model.claims import GRADE_NAMES
from narrate.model.counts import AbundanceScale
from narrate.model.ids import SourceKey
from narrate.model.observations import Elsewhere, Observation
from narrate.model.packs import Words
from narrate.model.plant_groups import PlantGroup
from narrate.model.plants import KNOWN, Condition, ContextKind, CountingRule, CountingTerm, EarLine, Exchange, Part
from narrate.model.rules import WEIGHTS, Limit, ShownMeasure
from narrate.problems import Place, ProblemList
from narrate.reading.abundance import class_ends, signs
from narrate.reading.asking import Asking, Field, Reads
from narrate.reading.criteria import selector
from narrate.reading.fields import list_of, mapping_of, partial_record, record_of
from narrate.reading.noted import elsewhere_fields, observation_fields
from narrate.reading.pack_files import SOURCES, Entry, PackFile, PackFolder, entries_of, pack_files, twice, unique
from narrate.reading.values import id_text, number, one_of, text, truth, whole
from narrate.reading.yaml_nodes import value_of

ROLES = (
    "edible", "byproduct", "wood", "chaff", "straw", "cob", "nutshell", "propagule", "underground", "prepared",
    "vegetative", "dung", "fungus", "sprouted",
)  # fmt: skip
TRAITS = ("thermal", "storage", "refuse", "structure", "cut", "surface", "burial", "water")


@dataclass(frozen=True, slots=True, kw_only=True)
class WordPacks:
    """All that packs/words/ holds."""

    words: Words
    weights: Mapping[str, float]
    limits: tuple[Limit, ...]
    shown: tuple[ShownMeasure, ...]
    tabled: tuple[ShownMeasure, ...] = ()
    plant_groups: tuple[PlantGroup, ...] = ()
    observations: tuple[Observation, ...] = ()
    elsewhere: tuple[Elsewhere, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class _Method:
    id: str
    explained: str = ""
    synonyms: tuple[str, ...] = ()


@dataclass(slots=True)
class _Found:
    """Entries of all files, by the list they stand in."""

    lists: dict[str, list[Entry]] = field(default_factory=dict)
    preservations: dict[str, tuple[str, ...]] = field(default_factory=dict)
    weights: dict[str, float] = field(default_factory=dict)


def read_words(folders: Iterable[PackFolder], sources: Mapping[SourceKey, object], problems: ProblemList) -> WordPacks:
    """The words of all packs. A project's own weights replace those that come with narrate."""
    found = _Found()
    fields = _file_fields()
    for file in pack_files(folders, "words", problems, "N403", sources):
        lists, _ = partial_record(file.node, fields, file.asking, "word pack")
        found.preservations.update(lists.pop("preservations", {}))
        _check_weights(lists, file)
        found.weights.update(lists.pop("weights", {}))
        lists.pop("sources", None)
        for name, entries in lists.items():
            found.lists.setdefault(name, []).extend(entries)
    return _gathered(found)


def _check_weights(lists: Mapping[str, Any], file: PackFile) -> None:
    if "weights" in lists and not lists.get("sources"):
        file.asking.tell(
            value_of(file.node, "weights") or file.node,
            "N403",
            "weights: no source is given for them, expected at least one key of sources.yaml",
            help="for weights that are your own judgement add 'sources: [pack-judgement]' beside them",
        )


def _gathered(found: _Found) -> WordPacks:
    of: Callable[[str], list[Entry]] = lambda name: found.lists.get(name, [])  # noqa: E731
    methods = unique(of("methods"), lambda m: m.id, "method", "N404")
    words = Words(
        parts=unique(of("parts"), lambda p: p.id, "part", "N404"),  # type: ignore[arg-type]
        conditions=unique(of("conditions"), lambda c: c.id, "condition", "N404"),
        context_kinds=unique(of("kinds"), lambda k: k.id, "kind of context", "N404"),
        methods={id: method.explained for id, method in methods.items()},
        preservations=found.preservations,
        part_lookup=_lookup(of("parts"), "part"),  # type: ignore[arg-type]
        condition_lookup=_lookup(of("conditions"), "condition"),
        kind_lookup=_lookup(of("kinds"), "kind of context"),
        method_lookup=_lookup(of("methods"), "method"),
        counting=tuple(unique(of("counting_rules"), lambda r: r.id, "counting rule", "N404", later_wins=True).values()),
        ears=tuple(unique(of("whole_ears"), _ear, "whole ear", "N404", later_wins=True).values()),
        abundance=signs(of("abundance_scales")),
        exchanges=tuple(unique(of("exchanges"), lambda e: e.id, "exchange", "N404", later_wins=True).values()),
    )
    return WordPacks(
        words=words,
        weights={weight: found.weights[weight] for weight in WEIGHTS if weight in found.weights},
        limits=tuple(unique(of("limits"), lambda limit: limit.id, "limit", "N404").values()),
        shown=tuple(unique(of("shown"), lambda shown: shown.name, "shown measure", "N404").values()),
        tabled=tuple(unique(of("tabled"), lambda shown: shown.name, "tabled measure", "N404").values()),
        plant_groups=tuple(
            unique(of("plant_groups"), lambda g: g.id, "plant group", "N404", later_wins=True).values()
        ),
        observations=tuple(
            unique(of("observations"), lambda o: o.id, "observation", "N404", later_wins=True).values()
        ),
        elsewhere=tuple(unique(of("elsewhere"), lambda e: e.id, "comparison", "N404", later_wins=True).values()),
    )


def _lookup(entries: list[Entry], what: str) -> dict[str, str]:
    """Any spelling in lower case -> id: names and plurals first, then synonyms, then what an s would make."""
    found: dict[str, str] = {}
    first: dict[str, Entry] = {}
    for spellings in (_names, _synonyms):
        for entry in entries:
            for spelling in spellings(entry.value):
                flat = " ".join(spelling.lower().split())
                if found.setdefault(flat, entry.value.id) != entry.value.id:
                    before = first[flat]
                    place = before.asking.place(before.node)
                    twice(entry, place, f"{what} '{entry.value.id}': the spelling '{spelling}'", "N404")
                first.setdefault(flat, entry)
    for flat, id in list(found.items()):
        for variant in (flat.replace("-", " ").replace("_", " "), *_plurals(flat)):
            found.setdefault(variant, id)
    return found


def _plurals(word: str) -> tuple[str, ...]:
    """What an English plural of a spelling would be, for spellings that give none."""
    if word.endswith("s"):
        return ()
    if word.endswith(("x", "z", "ch", "sh")):
        return (f"{word}es",)
    return (f"{word}s", f"{word[:-1]}ies") if re.search(r"[^aeiou]y$", word) else (f"{word}s",)


def _names(value: Any) -> tuple[str, ...]:
    return (value.id, getattr(value, "plural", "") or value.id)


def _synonyms(value: Any) -> tuple[str, ...]:
    return tuple(value.synonyms)


def _file_fields() -> dict[str, Field]:
    return {
        "parts": Field(reads=entries_of("part", _part_fields(), _without_place(Part))),
        "conditions": Field(reads=entries_of("condition", _condition_fields(), _without_place(Condition))),
        "kinds": Field(reads=entries_of("kind of context", _kind_fields(), _without_place(ContextKind))),
        "methods": Field(reads=entries_of("method", _method_fields(), _without_place(_Method))),
        "preservations": Field(reads=mapping_of(list_of(text("the name of a condition"), one_is_a_list=True))),
        "weights": Field(reads=record_of({weight: Field(reads=number(above=0)) for weight in WEIGHTS}, dict)),
        "limits": Field(reads=entries_of("limit", _limit_fields(), _without_place(Limit))),
        "shown": Field(reads=entries_of("shown measure", _shown_fields(), ShownMeasure, id="name")),
        "tabled": Field(reads=entries_of("tabled measure", _shown_fields(), ShownMeasure, id="name")),
        "plant_groups": Field(reads=entries_of("plant group", _group_fields(), PlantGroup)),
        "observations": Field(reads=entries_of("observation", observation_fields(), Observation)),
        "elsewhere": Field(reads=entries_of("comparison", elsewhere_fields(), Elsewhere)),
        "counting_rules": Field(reads=entries_of("counting rule", _counting_fields(), _without_place(CountingRule))),
        "whole_ears": Field(reads=entries_of("whole ear", _ear_fields(), _without_place(EarLine), id="crop")),
        "exchanges": Field(reads=entries_of("exchange", _exchange_fields(), _without_place(Exchange))),
        "abundance_scales": Field(
            reads=entries_of("abundance scale", _scale_fields(), _without_place(AbundanceScale))
        ),
        "sources": SOURCES,
    }


def _without_place(make: Callable[..., Any]) -> Callable[..., Any]:
    def made(*, place: Place, **fields: Any) -> Any:
        return make(**fields)

    return made


def _words_of(words: tuple[str, ...]) -> Reads:
    """A list of words of a closed list, as a set."""
    items = list_of(one_of(words), one_is_a_list=True)

    def take(node: Any, asking: Asking, whose: str, name: str) -> frozenset[str] | None:
        found = items.take(node, asking, whose, name)
        return None if found is None else frozenset(found)

    return Reads(items.expected, take)


_NAME = Field(reads=text("a name", may_be_empty=False), is_needed=True)
_ID = Field(reads=id_text("a word"), is_needed=True)
_SYNONYMS = Field(reads=list_of(text("another spelling", may_be_empty=False), one_is_a_list=True))
_TEXT = Field(reads=text())
_SENTENCE = Field(reads=text("a text", may_be_empty=False), is_needed=True)


def _part_fields() -> dict[str, Field]:
    return {
        "id": _ID,
        "plural": _NAME,
        "plain": _NAME,
        "plain_plural": _NAME,
        "roles": Field(reads=_words_of(ROLES), is_needed=True),
        "synonyms": _SYNONYMS,
        "counting": _TEXT,
        "stands_for": Field(reads=whole(at_least=1)),
        "sources": SOURCES,
    }


def _condition_fields() -> dict[str, Field]:
    return {
        "id": _ID,
        "ancient_at_dry_sites": Field(reads=truth(), is_needed=True, into="is_ancient_at_dry_sites"),
        "synonyms": _SYNONYMS,
    }


def _kind_fields() -> dict[str, Field]:
    return {
        "id": _ID,
        "plural": _NAME,
        "plain": _NAME,
        "plain_plural": _NAME,
        "traits": Field(reads=_words_of(TRAITS), is_needed=True),
        "synonyms": _SYNONYMS,
        "explained": _TEXT,
    }


def _method_fields() -> dict[str, Field]:
    return {"id": _ID, "synonyms": _SYNONYMS, "explained": _TEXT}


def _ear(ear: EarLine) -> str:
    return f"{ear.crop}, {' or '.join(ear.byproduct)}"


_PARTS = Field(reads=list_of(id_text("a part"), one_is_a_list=True, at_least=1), is_needed=True)
_NAMES = Field(reads=list_of(id_text("a taxon"), one_is_a_list=True, at_least=1), is_needed=True)
_WORTH = Field(reads=number(above=0), is_needed=True)
_BASIS: dict[str, Field] = {"sources": SOURCES, "known": Field(reads=one_of(KNOWN)), "note": _TEXT}


def _counting_fields() -> dict[str, Field]:
    term = {
        "part": _PARTS,
        "completeness": Field(reads=list_of(one_of(("whole", "fragment")), one_is_a_list=True, at_least=1)),
        "each": Field(reads=number(above=0)),
    }
    terms = Field(reads=list_of(record_of(term, CountingTerm)))
    return {
        "id": _ID,
        "individual": Field(reads=text(), is_needed=True),
        "add": terms,
        "larger_of": terms,
        "has_minimum": Field(reads=truth()),
        **_BASIS,
    }


def _ear_fields() -> dict[str, Field]:
    return {"crop": _ID, "byproduct": _PARTS, "grain": _PARTS, "low": _WORTH, "high": _WORTH, **_BASIS}


def _exchange_fields() -> dict[str, Field]:
    factors = {"factor": _WORTH, "low": _WORTH, "high": _WORTH}
    return {"id": _ID, "taxon": _NAMES, "part": _PARTS, "to_taxon": _NAMES, "to_part": _PARTS, **factors, **_BASIS}


def _limit_fields() -> dict[str, Field]:
    return {
        "id": _ID,
        "when": _SENTENCE,
        "grade": Field(reads=one_of(GRADE_NAMES), is_needed=True),
        "questions": Field(reads=list_of(id_text("a question"), one_is_a_list=True)),
        "spares": Field(reads=list_of(id_text("the id of a statement"), one_is_a_list=True)),
        "says": _SENTENCE,
        "lifts": _SENTENCE,
        "plain": _TEXT,
        "known": Field(reads=one_of(KNOWN)),
        "sources": SOURCES,
        "threshold": Field(reads=number()),
    }


def _scale_fields() -> dict[str, Field]:
    return {"id": _NAME, "classes": Field(reads=mapping_of(class_ends()), is_needed=True)}


def _group_fields() -> dict[str, Field]:
    return {
        "id": _ID,
        "name": _NAME,
        "plain": _NAME,
        "is_singular": Field(reads=truth()),
        "of": Field(reads=selector(), is_needed=True),
    }


def _shown_fields() -> dict[str, Field]:
    return {
        "name": _ID,
        "title": _NAME,
        "measure": Field(reads=id_text("a measure"), is_needed=True),
        "of": Field(reads=selector()),
        "to": Field(reads=selector()),
        "explained": _TEXT,
        "plain": _TEXT,
    }
