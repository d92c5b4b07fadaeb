"""Taxon packs: the plants of a region, with their uses, seasons and ecology."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence, Set
from typing import Any

from narrate.model.ids import SourceKey, TaxonId
from narrate.model.packs import Words
from narrate.model.plants import KEEPING, KNOWN, TAGS, Ecology, SeedsPerFruit, Taxon, Use, Window
from narrate.problems import ProblemList
from narrate.reading.asking import Asking, Field, Reads, offered
from narrate.reading.fields import list_of, partial_record, record_of
from narrate.reading.months import months
from narrate.reading.pack_files import SOURCES, Entry, PackFile, PackFolder, entries_of, pack_files, twice, unique
from narrate.reading.values import id_text, looked_up, one_of, text, whole, year
from narrate.reading.yaml_nodes import Node, Scalar, value_of

RANKS = ("species", "genus", "family", "group", "broad")
STATUSES = ("crop", "native", "introduced", "either")
HABITS = ("grass", "herb", "vine", "shrub", "tree", "aquatic", "fungus")


def taxon_regions(folders: Iterable[PackFolder]) -> tuple[str, ...]:
    """Regions for which there is a taxon pack."""
    found = set()
    for folder in folders:
        top = folder.root / folder.base / "taxa"
        try:
            found |= {path.name for path in top.iterdir() if path.is_dir()}
        except OSError:
            continue  # not there, or closed: then its regions are told as unknown
    return tuple(sorted(found))


def read_taxa(
    folders: Iterable[PackFolder],
    regions: tuple[str, ...],
    words: Words,
    sources: Mapping[SourceKey, object],
    problems: ProblemList,
) -> tuple[dict[TaxonId, Taxon], dict[str, TaxonId]]:
    """
    Taxa by id, and any of their names in lower case -> id.

    Of the packs that come with narrate those of `regions` are read, in that order; of a project's own packs all.
    Regions share many plants: where two that come with narrate describe the same one, the region named first speaks.
    """
    entries: list[Entry] = []
    shipped: dict[str, str] = {}
    fields = _taxon_fields(words)
    for folder in folders:
        wanted = taxon_regions((folder,)) if folder.is_local else regions
        for region in wanted:
            for file in pack_files((folder,), f"taxa/{region}", problems, "N403", sources):
                found = _taxa_of(file, region, fields)
                if not folder.is_local:
                    found = [e for e in found if shipped.setdefault(e.value.id, region) == region]
                entries.extend(found)
    taxa = unique(entries, lambda taxon: taxon.id, "taxon", "N404")
    kept = [entry for entry in entries if taxa[entry.value.id] is entry.value]
    lookup = _lookup(kept, regions)
    genera = {name.split()[0] for name in lookup if name}
    for entry in kept:
        _check_members(entry, lookup, genera)
    return taxa, lookup  # type: ignore[return-value]


def _taxa_of(file: PackFile, region: str, fields: dict[str, Field]) -> list[Entry]:
    family = value_of(file.node, "family")
    inherited = family.text.strip() if isinstance(family, Scalar) else ""
    # Broad groups such as hardwoods belong to no family; their file says so with an empty text.
    own = {**fields, "family": Field(reads=text("the name of a family"), is_needed=family is None)}

    def make(**found: Any) -> Taxon:
        found.setdefault("family", inherited)
        return Taxon(**{**found, "tags": frozenset(found.get("tags", ()))}, region=region)

    top = {
        "family": Field(reads=text("the name of a family")),
        "taxa": Field(reads=entries_of("taxon", own, make), is_needed=True),
        "sources": SOURCES,
    }
    return list(partial_record(file.node, top, file.asking, "taxon pack")[0].get("taxa", ()))


def _is_of_another_region(taxon: Taxon, other: Taxon, regions: Sequence[str]) -> bool:
    """True for taxa of two regions that come with narrate: the same common name may mean different plants there."""
    return taxon.region != other.region and taxon.region in regions and other.region in regions


def _lookup(entries: list[Entry], regions: Sequence[str]) -> dict[str, TaxonId]:
    """Ids win over synonyms; a synonym of two taxa of one region is told at the second."""
    found: dict[str, TaxonId] = {" ".join(entry.value.id.lower().split()): entry.value.id for entry in entries}
    by_id = {entry.value.id: entry for entry in entries}
    for entry in entries:
        for synonym in entry.value.synonyms:
            flat = " ".join(synonym.lower().split())
            if found.setdefault(flat, entry.value.id) != entry.value.id:
                other = by_id[found[flat]]
                if _is_of_another_region(entry.value, other.value, regions):
                    continue
                whose = f"taxon '{entry.value.id}': the name '{synonym}', which is also taxon '{other.value.id}',"
                twice(entry, other.asking.place(other.node), whose, "N404")
    return found


def _check_members(entry: Entry, lookup: Mapping[str, TaxonId], genera: Set[str]) -> None:
    for member in entry.value.members:
        if member.lower() not in lookup and member.lower() not in genera:
            meant = entry.asking.near(member, lookup)
            at = value_of(entry.node, "members") or entry.node
            entry.asking.tell(
                at,
                "N403",
                f"taxon '{entry.value.id}': member '{member}' is no taxon of the packs{offered(meant)}",
                help=f"write '{lookup[meant]}'" if meant else "add the member to the pack",
            )


def _taxon_fields(words: Words) -> dict[str, Field]:
    name, names = Field(reads=text()), Field(reads=list_of(text("a name", may_be_empty=False), one_is_a_list=True))
    return {
        "id": Field(reads=id_text("the accepted name"), is_needed=True),
        "authority": name,
        "rank": Field(reads=one_of(RANKS), is_needed=True),
        "name": name,
        "plural": name,
        "trade_name": name,
        "other_names": names,
        "synonyms": names,
        "members": names,
        "status": Field(reads=one_of(STATUSES)),
        "earliest": Field(reads=year()),
        "earliest_known": Field(reads=one_of(KNOWN)),
        "habit": Field(reads=one_of(HABITS)),
        "tags": Field(reads=list_of(_tag(), one_is_a_list=True)),
        "uses": Field(reads=list_of(record_of(_use_fields(words), Use))),
        "windows": Field(reads=list_of(record_of(_window_fields(words), Window))),
        "seeds_per_fruit": Field(reads=record_of(_seeds_fields(), SeedsPerFruit)),
        "ecology": Field(reads=record_of(_ecology_fields(), Ecology)),
        "long_here": SOURCES,
        "look_alikes": names,
        "cautions": names,
        "note": name,
        "sources": SOURCES,
    }


def _tag() -> Reads:
    """A tag of the list; a tag that only looks like one of them is told, any other is the project's own."""

    def take(node: Node, asking: Asking, whose: str, name: str) -> str | None:
        found = id_text("a tag").take(node, asking, whose, name)
        if found is not None and found not in TAGS:
            meant = asking.near(found, TAGS, cutoff=0.8)
            if meant:
                asking.tell(
                    node, asking.wrong, f"{whose}: tag '{found}' is not known{offered(meant)}", help=f"write '{meant}'"
                )
                return None
        return found  # type: ignore[no-any-return]

    return Reads("a tag", take)


def _use_fields(words: Words) -> dict[str, Field]:
    return {
        "use": Field(reads=id_text("a use, such as food"), is_needed=True),
        "part": Field(reads=looked_up(words.part_lookup, "parts")),
        "note": Field(reads=text()),
        "sources": SOURCES,
        "known": Field(reads=one_of(KNOWN)),
    }


def _window_fields(words: Words) -> dict[str, Field]:
    return {
        "part": Field(reads=looked_up(words.part_lookup, "parts"), is_needed=True),
        "months": Field(reads=months(), is_needed=True),
        "keeping": Field(reads=list_of(one_of(KEEPING), one_is_a_list=True), is_needed=True),
        "sources": SOURCES,
        "known": Field(reads=one_of(KNOWN)),
        "note": Field(reads=text()),
    }


def _seeds_fields() -> dict[str, Field]:
    return {
        "most": Field(reads=whole(at_least=2), is_needed=True),
        "note": Field(reads=text()),
        "sources": SOURCES,
        "known": Field(reads=one_of(KNOWN)),
    }


def _ecology_fields() -> dict[str, Field]:
    words = Field(reads=list_of(text("a word"), one_is_a_list=True))
    return {
        "habitat": Field(reads=text()),
        "field_weed": Field(reads=one_of(("strong", "moderate", "weak", "none"))),
        "sow": Field(reads=one_of(("autumn", "spring", "both"))),
        "soil": words,
        "height": Field(reads=one_of(("low", "medium", "tall", "twining"))),
        "seed": words,
        "life": Field(reads=one_of(("annual", "biennial", "perennial"))),
        "sources": SOURCES,
        "known": Field(reads=one_of(KNOWN)),
    }
