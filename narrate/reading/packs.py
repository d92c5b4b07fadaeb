"""All packs: those that come with narrate, then the project's own."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

from narrate.model.packs import Packs
from narrate.problems import Place, Problem, ProblemList
from narrate.reading.accepted_names import FILE as NAMES
from narrate.reading.accepted_names import with_accepted_names
from narrate.reading.asking import listed_words, near, offered
from narrate.reading.audiences import read_audiences
from narrate.reading.changes import changed_packs
from narrate.reading.compiled_packs import keep_packs, packs_kept
from narrate.reading.files import listed
from narrate.reading.languages import read_languages
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
    folders = pack_folders(local, shipped)
    if shipped is not None:
        return _read(folders, regions)
    if len(folders) > 1:
        return _with_names(folders, regions) or _read(folders, regions)
    kept = packs_kept(regions)
    if kept is not None:
        return kept, ()
    packs, problems = _read(folders, regions)
    if not problems:
        keep_packs(packs)
    return packs, problems


def _with_names(
    folders: tuple[PackFolder, ...], regions: tuple[str, ...]
) -> tuple[Packs, tuple[Problem, ...]] | None:
    """Packs as they were kept with the names that a project accepted, if its folder holds nothing else; else None."""
    own, problems = folders[-1], ProblemList()
    if listed(own.root, own.base, (".yaml", ".yml"), problems) != (f"{own.base}/{NAMES}",) or problems.found:
        return None
    packs, faults = read_packs(regions)
    if faults:
        return None
    lookup = with_accepted_names(packs.taxon_lookup, folders, problems)
    return replace(packs, taxon_lookup=lookup), problems.sorted()


def _read(folders: tuple[PackFolder, ...], regions: tuple[str, ...]) -> tuple[Packs, tuple[Problem, ...]]:
    problems = ProblemList()
    sources = read_sources(folders, problems)
    found = read_words(folders, sources, problems)
    taxa, lookup = read_taxa(folders, regions, found.words, sources, problems)
    statements, questions = read_statements(folders, sources, problems)
    packs = Packs(
        words=found.words,
        taxa=taxa,
        taxon_lookup=with_accepted_names(lookup, folders, problems),
        statements=statements,
        rules=read_rules(folders, sources, problems),
        audiences=read_audiences(folders, questions, problems),
        languages=read_languages(folders, problems),
        sources=sources,
        weights=found.weights,
        limits=found.limits,
        shown=found.shown,
        tabled=found.tabled,
        plant_groups=found.plant_groups,
        observations=found.observations,
        elsewhere=found.elsewhere,
        questions=questions,
        regions=regions,
    )
    for folder in folders:
        if folder.is_local:
            _tell_unread(folder, problems)
    return changed_packs(packs, folders, problems), problems.sorted()


_FOLDERS = ("words", "taxa", "statements", "rules", "audiences", "languages")
_FILES = ("sources.yaml", "changes.yaml", NAMES)


def _tell_unread(folder: PackFolder, problems: ProblemList) -> None:
    """A pack file in a place where nobody looks is told, so that nobody thinks it is in use."""
    for path in listed(folder.root, folder.base, (".yaml", ".yml"), problems):
        inside = path.removeprefix(f"{folder.base}/")
        top, _, below = inside.partition("/")
        if inside in _FILES or (top in _FOLDERS and below and (top not in ("taxa", "languages") or "/" in below)):
            continue
        meant = near(top, (*_FOLDERS, *_FILES), 0.7)
        is_bare_taxon = top == "taxa"
        problems.warning(
            Place(path=path),
            "N403",
            "the file lies where no pack is looked for, and nothing in it is read, expected "
            + ("a folder for its region, such as taxa/own/" if is_bare_taxon else listed_words([*_FOLDERS, *_FILES]))
            + ("" if is_bare_taxon else offered(meant)),
            help="move it there",
        )


def pack_folders(local: Path | None, shipped: PackFolder | None = None) -> tuple[PackFolder, ...]:
    first = shipped or shipped_folder()
    if local is None or not local.is_dir():
        return (first,)
    return (first, PackFolder(root=local.parent, base=local.name, is_local=True))
