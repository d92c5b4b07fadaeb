"""All packs: those that come with narrate, then the project's own."""

from __future__ import annotations

from pathlib import Path

from narrate.model.packs import Packs
from narrate.problems import Problem, ProblemList
from narrate.reading.audiences import read_audiences
from narrate.reading.changes import changed_packs
from narrate.reading.pack_files import PackFolder, shipped_folder
from narrate.reading.rules import read_rules
from narrate.reading.sources import read_sources
from narrate.reading.statements import read_statements
from narrate.reading.taxon_packs import read_taxa
from narrate.reading.words import read_words


def read_packs(
    regions: tuple[str, ...], local: Path | None = None, *, shipped: PackFolder | None = None
) -> tuple[Packs, tuple[Problem, ...]]:
    """
    What the packs in use know, and what is wrong in them.

    regions:  region packs of the project; a region that there is no pack for gives no taxa.
    local:    the project's own packs/ folder, if it has one.
    shipped:  other packs in place of those that come with narrate.
    """
    problems = ProblemList()
    folders = pack_folders(local, shipped)
    sources = read_sources(folders, problems)
    found = read_words(folders, sources, problems)
    taxa, lookup = read_taxa(folders, regions, found.words, sources, problems)
    statements, questions = read_statements(folders, sources, problems)
    packs = Packs(
        words=found.words,
        taxa=taxa,
        taxon_lookup=lookup,
        statements=statements,
        rules=read_rules(folders, sources, problems),
        audiences=read_audiences(folders, questions, problems),
        sources=sources,
        weights=found.weights,
        limits=found.limits,
        shown=found.shown,
        tabled=found.tabled,
        questions=questions,
        regions=regions,
    )
    return changed_packs(packs, folders, problems), problems.sorted()


def pack_folders(local: Path | None, shipped: PackFolder | None = None) -> tuple[PackFolder, ...]:
    first = shipped or shipped_folder()
    if local is None or not local.is_dir():
        return (first,)
    return (first, PackFolder(root=local.parent, base=local.name, is_local=True))
