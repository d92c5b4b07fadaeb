"""The steps of each command, from a project folder to what stands in `out/`."""

from __future__ import annotations

import difflib
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field, replace
from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING

from narrate.deposit.claims_file import claims_json, plain_claim
from narrate.deposit.measures_file import measure_tables
from narrate.deposit.ranking_file import plain_ranking
from narrate.disclosure import disclosed, disclosed_narrative
from narrate.documents.markdown import markdown
from narrate.documents.outline import outline
from narrate.drafts.basis import Ground
from narrate.drafts.owned import Owned, draft_path, own_words, owned, write_files
from narrate.judging.check_rules import check_rules
from narrate.judging.judge import judge
from narrate.judging.strength import ranked
from narrate.measures.findings import find
from narrate.measures.manual import manual
from narrate.model.claims import Claims
from narrate.model.edition import Edition
from narrate.model.findings import Findings
from narrate.model.ids import Subject
from narrate.model.narrative import Narrative
from narrate.model.packs import Packs
from narrate.model.project import Project
from narrate.model.refs import ref_in_keys, subject_keys
from narrate.problems import Place, Problem, ProblemList, has_errors, written
from narrate.reading.folder import Reading, read_folder
from narrate.reading.intake.cell_rows import cell_row
from narrate.reading.intake.take_in import TakenIn
from narrate.reading.pointing import pointed
from narrate.telling.explanation import claim_text, measurement_text, record_text, tally_text
from narrate.telling.ranking import ranking_text
from narrate.telling.tell import narratives

if TYPE_CHECKING:
    from narrate.deposit.frames import OpenProject

Progress = Callable[[str], None]
"""Told the name of each step before it begins."""

EDITIONS: Mapping[str, tuple[str, ...]] = {"review": ("review", "report"), "public": ("public",)}
"""Each site and the audiences whose narratives it holds."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Judged:
    """A project, or what may be disclosed of it, measured and judged."""

    project: Project
    packs: Packs
    findings: Findings
    claims: Claims


@dataclass(frozen=True, slots=True, kw_only=True)
class Told:
    problems: tuple[Problem, ...]
    is_written: bool
    contexts: int = 0
    samples: int = 0
    claims: int = 0


def read(folder: Path, *, strict: bool = False) -> Reading:
    """Everything that was read, with the problems of the project's own rules added; `strict` makes warnings errors."""
    reading = read_folder(folder)
    problems = reading.problems
    if reading.packs is not None:
        problems = (*problems, *pointed(folder, check_rules(reading.packs, only_local=True)))
    if strict:
        problems = tuple(_as_error(problem) for problem in problems)
    ordered = tuple(sorted(problems, key=Problem.in_order))
    return Reading(project=reading.project, packs=reading.packs, problems=ordered)


def check(folder: Path, *, strict: bool = False) -> tuple[Problem, ...]:
    """All problems: of records, sheets and rules, and of what the analyst edited or approved."""
    reading = read(folder, strict=strict)
    if reading.project is None or reading.packs is None or has_errors(reading.problems):
        return reading.problems
    if not (folder / "narratives").is_dir():
        return reading.problems
    whole = judged(reading.project, reading.packs)
    told = _all_told(folder, whole, judged(disclosed(reading.project), reading.packs))
    return _with_those_of_drafts(reading.problems, told.values(), strict=strict)


def judged(project: Project, packs: Packs) -> Judged:
    return Judged(project=project, packs=packs, findings=find(project, packs), claims=judge(project, packs))


def tell(folder: Path, *, version: str, strict: bool = False, progress: Progress = lambda step: None) -> Told:
    """
    The main job: read, measure, judge, draft, and build a site for the team and one for visitors.

    Nothing is written while the project has errors. The public site is made from a project from which everything
    restricted was already taken out.
    """
    from narrate.web.build import build
    from narrate.web.refusal import Refused
    from narrate.web.templates import templates_folder

    progress("reading records and count sheets")
    reading = read(folder, strict=strict)
    if reading.project is None or reading.packs is None or has_errors(reading.problems):
        return Told(problems=reading.problems, is_written=False)
    progress("measuring and judging for the team")
    whole = judged(reading.project, reading.packs)
    progress("measuring and judging what is public")
    open_part = judged(disclosed(reading.project), reading.packs)
    progress("writing narratives")
    told = _all_told(folder, whole, open_part)
    problems = _with_those_of_drafts(reading.problems, told.values(), strict=strict)
    if has_errors(problems):
        return Told(problems=problems, is_written=False)
    out = folder / "out"
    try:
        for name, part in (("review", whole), ("public", open_part)):
            progress(f"building pages: {name}")
            edition = _edition(name, part, told[name].narratives, problems if name == "review" else (), version)
            build(edition, templates_folder(), out / name, images=folder)
    except Refused as refusal:
        return Told(problems=(*problems, *refusal.problems), is_written=False)
    progress("writing drafts, claims and measures")
    for drafts in told.values():
        write_files(drafts.files)
    _write(out / "claims.json", claims_json(whole.claims))
    for file, text in measure_tables(whole.findings, whole.packs).items():
        _write(out / "measures" / file, text)
    return Told(
        problems=problems,
        is_written=True,
        contexts=len(whole.project.contexts),
        samples=len(whole.project.samples),
        claims=sum(claim.verdict == "holds" for claim in whole.claims),
    )


def report(
    folder: Path, *, version: str, progress: Progress = lambda step: None
) -> tuple[Path | None, tuple[Problem, ...]]:
    """Writes the interpretive section as Markdown; no path where the project has errors."""
    progress("reading records and count sheets")
    reading = read(folder)
    if reading.project is None or reading.packs is None or has_errors(reading.problems):
        return None, reading.problems
    progress("measuring and judging")
    whole = judged(reading.project, reading.packs)
    edition = _edition("review", whole, _told(folder, "review", whole).narratives, reading.problems, version)
    path = folder / "out" / "report" / "section.md"
    _write(path, markdown(outline(edition)))
    return path, reading.problems


@dataclass(frozen=True, slots=True, kw_only=True)
class Explained:
    """What `explain` found: text and plain data, or why there is none."""

    text: str = ""
    plain: Mapping[str, object] = field(default_factory=dict)
    refusal: str = ""
    problems: tuple[Problem, ...] = ()


def explain(folder: Path, ref: str) -> Explained:
    """The evidence behind a reference, down to the rows of count sheets and records."""
    reading = read(folder)
    if reading.project is None or reading.packs is None or has_errors(reading.problems):
        return Explained(problems=reading.problems)
    whole = judged(reading.project, reading.packs)
    return explained(folder, whole, ref)


def explained(folder: Path, whole: Judged, ref: str) -> Explained:
    """The same for a project that is already judged."""
    row_text = _row_reader(folder)
    ref = ref if ref in whole.claims.by_id else ref_in_keys(whole.project, ref)
    claim = whole.claims.by_id.get(ref)
    if claim is not None:
        return Explained(text=claim_text(claim, whole.packs, row_text), plain=plain_claim(claim))
    key, _, what = ref.partition("/")
    subject = next((s for s, k in subject_keys(whole.project).items() if k == key), None)
    if subject is None:
        return Explained(refusal=_no_such(ref, [*whole.claims.by_id]))
    found = whole.findings.of(subject)
    titles = {shown.name: shown.title for shown in whole.packs.shown}
    kind, _, name = what.partition(".")
    places: tuple[Place, ...] = ()
    if what == "record":
        places = found.places["record"]
        text = record_text(ref, places, row_text)
    elif what == "words":
        places = own_words(folder, key)
        text = record_text(ref, places, row_text)
    elif kind == "measure" and name in found.measurements:
        places = found.places[name]
        text = measurement_text(ref, titles.get(name, name), found.measurements[name], places, row_text)
    else:
        tally = next((t for t in found.tallies if t.ref == ref), None)
        if tally is None:
            refs = [c.id for c in whole.claims.about(subject)] + [t.ref for t in found.tallies]
            return Explained(refusal=_no_such(ref, refs + [f"{key}/measure.{m}" for m in found.measurements]))
        places = tally.places
        text = tally_text(tally, found, row_text)
    return Explained(text=text, plain={"id": ref, "text": text, "rows": [place.row for place in places]})


@dataclass(frozen=True, slots=True, kw_only=True)
class Ranked:
    """How strong a story each sample and context tells: text and plain data, or the problems that stand in the way."""

    text: str = ""
    plain: Mapping[str, object] = field(default_factory=dict)
    problems: tuple[Problem, ...] = ()


def rank(folder: Path, *, progress: Progress = lambda step: None) -> Ranked:
    """Samples and contexts of a project by the strength of their story, each with the next step that pays."""
    progress("reading records and count sheets")
    reading = read(folder)
    if reading.project is None or reading.packs is None or has_errors(reading.problems):
        return Ranked(problems=reading.problems)
    progress("measuring and judging")
    whole = judged(reading.project, reading.packs)
    found = ranked(whole.project, whole.packs, whole.findings, whole.claims)
    return Ranked(text=ranking_text(found), plain=plain_ranking(found), problems=reading.problems)


@dataclass(frozen=True, slots=True, kw_only=True)
class Intake:
    """What intake understood of a sheet, and the files that it wrote."""

    taken: TakenIn
    written: tuple[Path, ...] = ()
    text: str = ""
    """Pictures of the tables, what was read, what was left out and why, what is still to be done."""
    problems: tuple[Problem, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class MeasuredFolder:
    """The tables that `measure` made: file name -> text."""

    tables: Mapping[str, str] = field(default_factory=dict)
    problems: tuple[Problem, ...] = ()
    is_whole: bool = False


def measure(folder: Path, *, progress: Progress = lambda step: None) -> MeasuredFolder:
    """
    Every measurement of every subject and every analysis of the dig, as CSV tables; none while there are errors.

    The tables are for the team: nothing restricted is taken out.
    """
    from narrate.deposit.analysis_tables import analysis_tables

    progress("reading records and count sheets")
    reading = read(folder)
    if reading.project is None or reading.packs is None or has_errors(reading.problems):
        return MeasuredFolder(problems=reading.problems)
    project, packs = reading.project, reading.packs
    progress("measuring")
    further = replace(packs, shown=packs.tabled)
    tables = dict(measure_tables(find(project, packs), packs))
    tables |= {f"further_{name}": text for name, text in measure_tables(find(project, further), further).items()}
    progress("comparing samples")
    tables |= analysis_tables(project, packs)
    return MeasuredFolder(tables=tables, problems=reading.problems, is_whole=True)


def write_tables(folder: Path, tables: Mapping[str, str]) -> tuple[Path, ...]:
    """Writes tables to out/measures and gives their paths."""
    paths = []
    for name, text in tables.items():
        path = folder / "out" / "measures" / name
        _write(path, text)
        paths.append(path)
    return tuple(paths)


def open_project(folder: Path) -> OpenProject:
    """
    A project folder for work in a notebook.

    Raises ValueError with every problem where the project has errors.
    """
    from narrate.deposit.frames import OpenProject

    reading = read(folder)
    if reading.project is None or reading.packs is None or has_errors(reading.problems):
        raise ValueError("the project has errors:\n" + "\n".join(written(p) for p in reading.problems))
    return OpenProject(reading.project, reading.packs, reading.problems)


def begin(folder: Path) -> tuple[tuple[Path, ...], tuple[Problem, ...]]:
    """Lays out a new project; a folder that already holds something is refused, because nothing may be overwritten."""
    problems = ProblemList()
    if folder.exists() and (not folder.is_dir() or any(folder.iterdir())):
        problems.error(
            Place(path=folder.name),
            "N108",
            f"'{folder}' already holds something, expected a folder that is empty or not there yet",
            help="name another folder",
        )
        return (), problems.sorted()
    starter = Path(__file__).parent / "starter"
    written = []
    for source in sorted(path for path in starter.rglob("*") if path.is_file()):
        target = folder / source.relative_to(starter)
        target.parent.mkdir(parents=True, exist_ok=True)
        target.write_bytes(source.read_bytes())
        written.append(target)
    return tuple(written), ()


def intake(sheet: Path, project: Path | None = None) -> Intake:
    """
    Takes a laboratory's own sheet in: writes its layout beside it and, with a project, drafts what records it carries.

    The sheet itself is never changed; with a project it is copied to counts/ if it does not lie there.
    """
    from narrate.reading.intake.project_intake import draft_into, in_counts, intake_packs
    from narrate.reading.intake.summary import summary
    from narrate.reading.intake.take_in import new_layout_path, take_in

    packs = intake_packs(project)
    at = sheet if project is None else in_counts(sheet, project)
    source = at if at.is_file() else sheet
    taken = take_in(source, packs)
    if taken.layout is None:
        return Intake(taken=taken, text=summary(taken), problems=taken.problems)
    written: list[Path] = []
    if at != sheet and not at.is_file():
        at.parent.mkdir(parents=True, exist_ok=True)
        at.write_bytes(sheet.read_bytes())
        written.append(at)
    if not taken.is_given:
        _write(new_layout_path(at), taken.text)
        written.append(new_layout_path(at))
    if project is None:
        return Intake(taken=taken, written=tuple(written), text=summary(taken), problems=taken.problems)
    drafted = draft_into(project, packs, taken)
    for path, text in drafted.files.items():
        _write(path, text)
        written.append(path)
    return Intake(
        taken=taken,
        written=tuple(written),
        text=summary(taken, drafted.notes),
        problems=tuple(sorted({*taken.problems, *drafted.problems}, key=Problem.in_order)),
    )


def _no_such(ref: str, known: list[str]) -> str:
    near = difflib.get_close_matches(ref, known, n=3, cutoff=0.5)
    offered = f"; near it: {', '.join(near)}" if near else ""
    return f"'{ref}' is not a claim, measurement, find or record of this project{offered}"


def _row_reader(folder: Path) -> Callable[[Place], str]:
    """Reads rows of text files as written; each file once. A file that went away in the meantime gives nothing."""

    @cache
    def lines(path: str) -> tuple[str, ...]:
        try:
            return tuple((folder / path).read_text(encoding="utf-8-sig", errors="replace").splitlines())
        except OSError:
            return ()

    def row(place: Place) -> str:
        if place.cell:
            return cell_row(folder, place)
        text = lines(place.path)
        return text[place.line - 1].strip() if 0 < place.line <= len(text) else ""

    return row


@dataclass(frozen=True, slots=True, kw_only=True)
class _Told:
    """The narratives of an edition as they stand, what to write for them, and what to look at."""

    narratives: Mapping[tuple[str, Subject], Narrative]
    files: Mapping[Path, str]
    problems: tuple[Problem, ...]


def _told(folder: Path, name: str, part: Judged) -> _Told:
    """Drafts of every audience of the edition, merged with the analyst's own words."""
    keys = subject_keys(part.project)
    ground = Ground(
        claims=part.claims,
        findings=part.findings,
        packs=part.packs,
        subject_of={key: subject for subject, key in keys.items()},
    )
    found: dict[str, Owned] = {}
    for audience in EDITIONS[name]:
        drafted = narratives(part.project, part.packs, part.findings, part.claims, audience)
        found[audience] = owned(folder, drafted, ground)
    return _Told(
        narratives={(a, s): n for a, kept in found.items() for s, n in kept.narratives.items()},
        files={path: text for kept in found.values() for path, text in kept.files.items()},
        problems=tuple(problem for kept in found.values() for problem in kept.problems),
    )


def _all_told(folder: Path, whole: Judged, open_part: Judged) -> dict[str, _Told]:
    """Both editions; words for the public that name something restricted are kept back, and that is told."""
    public = _told(folder, "public", open_part)
    kept = {k: disclosed_narrative(n, whole.project) for k, n in public.narratives.items()}
    keys = subject_keys(open_part.project)
    problems = ProblemList()
    for (audience, subject), narrative in public.narratives.items():
        left = {sentence.text for sentence in kept[(audience, subject)].sentences()}
        for sentence in narrative.sentences():
            if sentence.text not in left:
                _tell_kept_back(folder, audience, keys[subject], sentence.text, problems)
    for context in sorted(whole.project.disclosure.restricted_contexts):
        for audience in EDITIONS["public"]:
            path = draft_path(folder, audience, context)
            if path.is_file():
                problems.warning(
                    Place(path=path.relative_to(folder).as_posix()),
                    "N210",
                    f"this narrative for the public is of '{context}', which is restricted; it is on no public page",
                    help="delete the file and its side file before the folder is given to others",
                )
    public = replace(public, narratives=kept, problems=(*public.problems, *problems.sorted()))
    return {"review": _told(folder, "review", whole), "public": public}


def _tell_kept_back(folder: Path, audience: str, key: str, text: str, problems: ProblemList) -> None:
    path = draft_path(folder, audience, key)
    lines = path.read_text(encoding="utf-8", errors="replace").splitlines() if path.is_file() else []
    line = next((number for number, row in enumerate(lines, start=1) if text in " ".join(row.split())), 0)
    problems.warning(
        Place(path=path.relative_to(folder).as_posix(), line=line),
        "N210",
        "the sentence names something restricted; it is kept in the file and left off the public site",
        help="reword the sentence",
    )


def _with_those_of_drafts(problems: tuple[Problem, ...], told: Iterable[_Told], *, strict: bool) -> tuple[Problem, ...]:
    of_drafts = tuple(problem for part in told for problem in part.problems)
    if strict:
        of_drafts = tuple(_as_error(problem) for problem in of_drafts)
    return tuple(sorted((*problems, *of_drafts), key=Problem.in_order))


def _edition(
    name: str,
    part: Judged,
    told: Mapping[tuple[str, Subject], Narrative],
    problems: tuple[Problem, ...],
    version: str,
) -> Edition:
    return Edition(
        audience=name,
        project=part.project,
        packs=part.packs,
        findings=part.findings,
        claims=part.claims,
        narratives=told,
        problems=problems,
        version=version,
        ranking=ranked(part.project, part.packs, part.findings, part.claims) if name == "review" else None,
        manual=manual(),
    )


def _write(path: Path, text: str) -> None:
    path.parent.mkdir(parents=True, exist_ok=True)
    content = text.encode("utf-8")
    if not path.is_file() or path.read_bytes() != content:
        path.write_bytes(content)


def _as_error(problem: Problem) -> Problem:
    return replace(problem, severity="error")
