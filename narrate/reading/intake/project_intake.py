"""A laboratory's sheet in a project: where it lies, and the records that are drafted from all sheets."""

from __future__ import annotations

import hashlib
from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path

from narrate.model.packs import Packs
from narrate.problems import Problem, ProblemList
from narrate.reading.compiled_packs import NAMING, keep_packs, packs_kept
from narrate.reading.files import listed, read_text
from narrate.reading.folder import read_folder
from narrate.reading.intake.grids import ENDINGS
from narrate.reading.intake.pending import says_pending
from narrate.reading.intake.project_phases import add_phases, known_phases
from narrate.reading.intake.records_draft import Draft, draft_records, phases_text, quoted, records_text
from narrate.reading.intake.said import Said
from narrate.reading.intake.sterile_drafted import tell_sterile_drafted
from narrate.reading.intake.take_in import TakenIn, name_reader, take_in
from narrate.reading.intake.told import Told
from narrate.reading.layout_beside import layout_path
from narrate.reading.packs import pack_folders
from narrate.reading.records import read_records
from narrate.reading.sources import read_sources
from narrate.reading.taxon_packs import read_taxa, taxon_regions
from narrate.reading.words import read_words

DRAFTED = "records/drafted-from-sheets.yaml"
_HEAD = (
    "# Drafted by 'narrate intake' from the sheets in counts/. Check it, move records to files of your own, or "
    "edit it here:\n"
    "# once it is edited it is yours, and intake leaves it alone.\n"
)
_SEAL = "# as drafted: "


@dataclass(frozen=True, slots=True, kw_only=True)
class Drafted:
    """Files that intake would write into a project, and what it has to say of them."""

    files: Mapping[Path, str] = field(default_factory=dict)
    notes: tuple[str, ...] = ()
    problems: tuple[Problem, ...] = ()


def intake_packs(project: Path | None) -> Packs:
    """The packs that names are held against: those of the project, else all regions."""
    if project is not None and (project / "project.yaml").is_file():
        packs = read_folder(project).packs
        if packs is not None and packs.taxa:
            return packs
    return naming_packs(taxon_regions(pack_folders(None)))


def naming_packs(regions: tuple[str, ...]) -> Packs:
    """Words and taxa of packs that come with narrate alone, which is all that names need, as they were last read."""
    kept = packs_kept(regions, name=NAMING)
    if kept is not None:
        return kept
    ignored = ProblemList()
    folders = pack_folders(None)
    sources = read_sources(folders, ignored)
    words = read_words(folders, sources, ignored)
    taxa, lookup = read_taxa(folders, regions, words.words, sources, ignored)
    packs = Packs(
        words=words.words, taxa=taxa, taxon_lookup=lookup, statements={}, rules={}, audiences={}, sources=sources,
        weights={}, limits=(), shown=(), questions={}, regions=regions,
    )  # fmt: skip
    if not ignored.sorted():
        keep_packs(packs, name=NAMING)
    return packs


def in_counts(sheet: Path, project: Path) -> Path:
    """Where the sheet lies in the project, or would."""
    try:
        inside = sheet.resolve().is_relative_to((project / "counts").resolve())
    except OSError:
        inside = False
    return sheet if inside else project / "counts" / sheet.name


def volume_problems(packs: Packs, taken: TakenIn) -> tuple[Problem, ...]:
    """What a sheet says twice of one sample and not alike, and volumes that are no numbers; for a sheet on its own."""
    told, problems = Told(), ProblemList()
    draft_records(taken.facts, (), packs.words, told)
    told.into(problems)
    return tuple(problem for problem in problems.sorted() if problem.code == "N318")


def draft_into(project: Path, packs: Packs, taken: TakenIn) -> Drafted:
    """Drafts records for all samples that the project's sheets name and no record of the analyst describes."""
    problems = ProblemList()
    files: dict[Path, str] = {}
    notes: list[str] = []
    facts, found_in, looked_in = _all_facts(project, packs)
    known_samples, known_contexts = _known(project, packs)
    told = Told()
    draft = draft_records(
        facts, found_in, packs.words, told, known_samples=known_samples, known_contexts=known_contexts
    )
    tell_sterile_drafted(draft, facts, found_in, looked_in, told)
    told.into(problems)
    at = project / DRAFTED
    text = _sealed(records_text(draft)) if draft.samples or draft.contexts else ""
    if text:
        if not at.is_file() or _is_untouched(at.read_text(encoding="utf-8", errors="replace")):
            files[at] = text
        else:
            notes.append(
                f"{DRAFTED} was edited, so it was left alone; these records are not in it:\n{records_text(draft)}"
            )
    if not (project / "project.yaml").is_file():
        files[project / "project.yaml"] = _project_text(project, draft, taken, notes)
        notes.append("project.yaml was drafted: give it a title, its authors, and years for its phases")
    else:
        _add_phases(project / "project.yaml", draft, files, notes)
    return Drafted(files=files, notes=tuple(notes), problems=problems.sorted())


def _all_facts(project: Path, packs: Packs) -> tuple[dict[str, dict[str, list[Said]]], set[str], set[str]]:
    """
    What all sheets of the project that have layouts say of their samples; the id joins records and counts.

    Also the samples with finds, and those in which something was looked for and was not there.
    """
    facts: dict[str, dict[str, list[Said]]] = {}
    found_in: set[str] = set()
    looked_in: set[str] = set()
    for path in listed(project, "counts", ENDINGS, ProblemList()):
        if layout_path(project / path) is None:
            continue
        taken = take_in(project / path, packs, shown_path=path)
        for id, said in taken.facts.items():
            known = facts.setdefault(id, {})
            for role, more in said.items():
                known.setdefault(role, []).extend(more)
        found_in |= {
            str(row.sample) for row in taken.rows if row.count.amount not in ("looked for and absent", "not looked for")
        }
        found_in |= {str(row.sample) for row in taken.rows if row.mass_g or says_pending(row.count.written)}
        looked_in |= {str(row.sample) for row in taken.rows if row.count.amount == "looked for and absent"}
    return facts, found_in, looked_in


def _known(project: Path, packs: Packs) -> tuple[set[str], set[str]]:
    """Ids of samples and contexts that records of the analyst describe; what intake drafted itself does not count."""
    ignored = ProblemList()
    texts = []
    for path in listed(project, "records", (".yaml", ".yml"), ignored):
        source = read_text(project, path, ignored)
        if source is not None and not (path == DRAFTED and _is_untouched(source.text)):
            texts.append(source)
    records = read_records(tuple(texts), packs.words, ignored)
    return {str(id) for id in records.sample_ids}, {str(id) for id in records.context_ids}


def _add_phases(at: Path, draft: Draft, files: dict[Path, str], notes: list[str]) -> None:
    """Phases of the sheets that the project file does not have are added to it, or it is said what to add."""
    try:
        text = at.read_bytes().decode("utf-8")
    except (OSError, UnicodeDecodeError):
        notes.append("project.yaml cannot be read; add to it, under phases:\n" + phases_text(draft.phases))
        return
    known = known_phases(text)
    missing = [phase for phase in draft.phases if phase not in known]
    if not missing:
        return
    added = add_phases(text, missing)
    if added.text:
        files[at] = added.text
        notes.append(f"added to the phases in project.yaml: {', '.join(missing)}; give them names and years")
    else:
        notes.append(
            f"project.yaml was left as it is, because {added.why_not}; add these lines where its phases stand:\n"
            + added.lines
        )


def _sealed(body: str) -> str:
    return f"{_HEAD}{_SEAL}{_digest(body)}\n{body}"


def _digest(body: str) -> str:
    return hashlib.sha256(body.encode("utf-8")).hexdigest()[:16]


def _is_untouched(text: str) -> bool:
    head, mark, rest = text.partition(_SEAL)
    if not mark or head != _HEAD:
        return False
    digest, _, body = rest.partition("\n")
    return digest == _digest(body)


def _project_text(project: Path, draft: Draft, taken: TakenIn, notes: list[str]) -> str:
    regions = _best_regions(taken)
    region = regions[0] if regions else ""
    others = ", ".join(regions[1:])
    if others:
        notes.append(
            f"the packs {', '.join(regions[:-1])} and {regions[-1]} know the plants of the sheet alike; {region} "
            "stands in project.yaml until you have named the region of the dig there"
        )
    lines = [
        f"title: {quoted(project.resolve().name)}            # drafted by 'narrate intake'; give the dig its title",
        f"region_packs: [{region}]"
        + (f"            # or {others}: they know the plants of the sheet alike" if others else "")
        + ("" if region else "            # name a pack that knows the plants of your region"),
        "preservation: charred",
    ]
    return "\n".join(lines) + "\n" + (phases_text(draft.phases) if draft.phases else "")


def _best_regions(taken: TakenIn) -> tuple[str, ...]:
    """
    The regions whose pack alone knows most of the names, and of those the ones to which most of the plants are native.

    Crops are grown in many regions, so that they tell none from another. Several where nothing parts them, none where
    no pack knows a name.
    """
    written = {row.identification.written for row in taken.rows}
    scores: dict[str, tuple[int, int]] = {}
    for region in taxon_regions(pack_folders(None)):
        packs = naming_packs((region,))
        names = name_reader(packs, taken.layout.names if taken.layout is not None else {})
        known = [packs.taxa.get(taxon) if (taxon := read.identification.taxon) is not None else None
                 for name in written if (read := names.read(name)).is_known]  # fmt: skip
        native = {taxon.id for taxon in known if taxon is not None and taxon.status == "native"}
        scores[region] = (len(known), len(native))
    best = max(scores.values(), default=(0, 0))
    return tuple(region for region, score in scores.items() if score == best) if best[0] else ()
