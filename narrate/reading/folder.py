"""A project folder, read whole."""

from __future__ import annotations

from dataclasses import dataclass, replace
from pathlib import Path
from types import MappingProxyType

from narrate.model.counts import CountRow
from narrate.model.ids import ContextId
from narrate.model.packs import Packs
from narrate.model.project import Project
from narrate.problems import Place, Problem, ProblemList
from narrate.reading.asking import near, offer, offered
from narrate.reading.checking import Checking
from narrate.reading.count_columns import Known
from narrate.reading.counts_folder import read_counts
from narrate.reading.cross_checks import burials, cross_check
from narrate.reading.files import listed, read_text
from narrate.reading.pack_files import PackFolder
from narrate.reading.packs import pack_folders, read_packs
from narrate.reading.project_file import ProjectFile, read_project_file, unread_project_file
from narrate.reading.records import Records, read_records
from narrate.reading.sheet_problems import Unread
from narrate.reading.sheet_says import SheetSays
from narrate.reading.source_text import SourceText
from narrate.reading.taxa import Identifier
from narrate.reading.taxon_packs import taxon_regions


@dataclass(frozen=True, slots=True, kw_only=True)
class Reading:
    """A project folder as read, and everything that is wrong in it."""

    project: Project | None = None
    """None where project.yaml left nothing whole; only to be used where no problem is an error."""
    packs: Packs | None = None
    problems: tuple[Problem, ...] = ()


def read_folder(folder: Path, *, shipped: PackFolder | None = None) -> Reading:
    """
    The project in a folder, with the packs in use.

    Reads only; nothing that a person wrote raises. All problems are told at once, by place.

    shipped:  other packs in place of those that come with narrate.
    """
    root = Path(folder)
    problems = ProblemList()
    if not _is_project(root, problems):
        return Reading(problems=problems.sorted())
    sources: dict[str, SourceText] = {}
    local = root / "packs"
    known_regions = taxon_regions(pack_folders(local, shipped))
    project_file = _project_file(root, sources, known_regions, problems)
    regions = project_file.region_packs
    packs, found = read_packs(regions, local, shipped=shipped)
    problems.extend(found)
    paths, texts = _texts(root, "records", (".yaml", ".yml"), sources, problems)
    records = read_records(texts, packs.words, problems)
    read = {text.path for text in texts}
    for path in paths:
        if path not in read:
            records.leave_out(Place(path=path))
    if not paths:
        records.leave_out(Place(path="records"))
    _tell_other_files(root, problems)
    has_unread_regions = not _check_regions(project_file, known_regions, problems)
    identifier = Identifier(packs.taxa, packs.taxon_lookup)
    unread = Unread()
    known = Known(
        words=packs.words,
        samples=records.samples,
        sample_ids=frozenset(records.sample_ids),
        has_unread_records=bool(records.unread["sample"]),
        has_unread_regions=has_unread_regions,
        identifier=identifier,
    )
    sheet_says = SheetSays()
    counts = read_counts(root, packs, known, sources, unread, problems, sheet_says)
    project = _project(project_file, records, packs, counts)
    packs = _with_made(packs, identifier)
    cross_check(
        Checking(
            root=root,
            project_file=project_file,
            project=project,
            records=records,
            words=packs.words,
            sources=sources,
            problems=problems,
            unread=unread,
            sheet_says=sheet_says,
        )
    )
    return Reading(
        project=project if project_file.is_whole else None,
        packs=None if has_unread_regions else packs,
        problems=problems.sorted(),
    )


def _is_project(root: Path, problems: ProblemList) -> bool:
    place = Place(path=root.name or str(root))
    begin = "'narrate begin FOLDER' lays out a new project"
    if not _is_there(root):
        problems.error(place, "N101", f"'{root}' is not there, expected a project folder", help=begin)
    elif not root.is_dir():
        problems.error(
            place,
            "N101",
            f"'{root}' is a file, expected a project folder",
            help="name the folder that holds project.yaml",
        )
    else:
        return _has_project_file(root, problems)
    return False


def _has_project_file(root: Path, problems: ProblemList) -> bool:
    if _is_there(root / "project.yaml"):
        return True
    begin = "'narrate begin FOLDER' lays out a new project"
    try:
        names = sorted(path.name for path in root.iterdir())
    except OSError as fault:
        reason = (fault.strerror or "no reason given").lower()
        problems.error(
            Place(path=root.name), "N101", f"the folder cannot be opened ({reason}), expected a project folder"
        )
        return False
    if not names:
        problems.error(Place(path=root.name), "N101", "the folder is empty, expected a project.yaml", help=begin)
        return False
    meant = next((name for name in names if name.lower() in ("project.yml", "project.yaml", "project.yaml.txt")), "")
    problems.error(
        Place(path="project.yaml"),
        "N101",
        "there is no project.yaml in the folder, expected one" + (f"; there is a '{meant}'" if meant else ""),
        help=f"rename '{meant}' to project.yaml" if meant else f"{begin}; or name the folder that holds project.yaml",
    )
    return False


def _is_there(path: Path) -> bool:
    """False also for a path that nobody may look at, or that no file can have."""
    try:
        return path.exists()
    except (OSError, ValueError):
        return False


def _project_file(
    root: Path, sources: dict[str, SourceText], regions: tuple[str, ...], problems: ProblemList
) -> ProjectFile:
    source = read_text(root, "project.yaml", problems)
    found = None
    if source is not None:
        sources[source.path] = source
        found = read_project_file(source, problems, regions)
    return found or unread_project_file(Place(path="project.yaml"))


def _texts(
    root: Path, folder: str, endings: tuple[str, ...], sources: dict[str, SourceText], problems: ProblemList
) -> tuple[tuple[str, ...], tuple[SourceText, ...]]:
    """Paths of the files there are, and the texts of those that could be read."""
    paths = listed(root, folder, endings, problems)
    if not paths:
        problems.error(
            Place(path=folder),
            "N101",
            f"there is no file {folder}/*{endings[0]} in the folder, expected at least one",
            help="'narrate begin FOLDER' lays out a small project to look at",
        )
    texts = [read_text(root, path, problems) for path in paths]
    found = tuple(text for text in texts if text is not None)
    sources.update({text.path: text for text in found})
    return paths, found


_OTHER_FILES = (".yaml.txt", ".yml.txt", ".json", ".csv", ".tsv", ".xlsx", ".xls", ".ods", ".docx", ".odt")


def _tell_other_files(root: Path, problems: ProblemList) -> None:
    """A file of another kind among the records is not read, and nobody should think that it was."""
    for path in listed(root, "records", _OTHER_FILES, problems):
        is_sheet = not path.lower().endswith((".txt", ".json", ".docx", ".odt"))
        problems.warning(
            Place(path=path),
            "N102",
            "files of this kind are not read among the records, expected names that end in .yaml",
            help="count sheets belong in counts/" if is_sheet else "write the records as YAML, in a file NAME.yaml",
        )


def _check_regions(project_file: ProjectFile, known: tuple[str, ...], problems: ProblemList) -> bool:
    """False where it is not known which region packs are meant."""
    for region, place in project_file.regions_at.items():
        if region not in known:
            meant = near(region, known)
            problems.error(
                place,
                "N205",
                f"project: there is no region pack '{region}', expected one of {', '.join(known) or 'none at all'}"
                + offered(meant),
                excerpt=project_file.line(place.line),
                width=len(region),
                help=offer(meant, known, "describe its plants in packs/taxa/ of the project"),
            )
    return bool(project_file.region_packs) and all(region in known for region in project_file.region_packs)


def _project(file: ProjectFile, records: Records, packs: Packs, counts: tuple[CountRow, ...]) -> Project:
    """With an empty title where the file gives none: such a project is checked and not used."""
    hidden = file.disclosure.restricted_contexts | {ContextId(id) for id in burials(records, packs.words)}
    return Project(
        **{"title": "", **file.fields, "phases": file.phases},
        contexts=tuple(records.contexts.values()),
        samples=tuple(records.samples.values()),
        counts=counts,
        disclosure=replace(file.disclosure, restricted_contexts=hidden),
        place=file.place,
    )


def _with_made(packs: Packs, identifier: Identifier) -> Packs:
    """The packs with the genera and families that count sheets name and packs know only by what lies below them."""
    if not identifier.made:
        return packs
    names = {id.lower(): id for id in identifier.made}
    return replace(
        packs,
        taxa=MappingProxyType({**packs.taxa, **identifier.made}),
        taxon_lookup=MappingProxyType({**packs.taxon_lookup, **names}),
    )
