"""The steps of each command, from a project folder to what stands in `out/`."""

from __future__ import annotations

import difflib
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, replace
from functools import cache
from pathlib import Path

from narrate.deposit.claims_file import claims_json, plain_claim
from narrate.deposit.measures_file import measure_tables
from narrate.deposit.ranking_file import plain_ranking
from narrate.disclosure import disclosed
from narrate.documents.markdown import markdown
from narrate.documents.outline import outline
from narrate.drafts.owned import merged, own_words, write_drafts
from narrate.judging.check_rules import check_rules
from narrate.judging.judge import judge
from narrate.judging.strength import ranked
from narrate.measures.findings import find
from narrate.model.claims import Claims
from narrate.model.edition import Edition
from narrate.model.findings import Findings
from narrate.model.ids import Subject
from narrate.model.narrative import Narrative
from narrate.model.packs import Packs
from narrate.model.project import Project
from narrate.model.refs import subject_keys
from narrate.problems import Place, Problem, ProblemList, has_errors
from narrate.reading.folder import Reading, read_folder
from narrate.telling.explanation import claim_text, measurement_text, record_text, tally_text
from narrate.telling.ranking import ranking_text
from narrate.telling.tell import narratives

Progress = Callable[[str], None]
"""Told the name of each step before it begins."""

Drafts = tuple[Project, Mapping[Subject, Narrative]]
"""Drafts of one audience, and the project that they were told of."""

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
        problems = (*problems, *check_rules(reading.packs, only_local=True))
    if strict:
        problems = tuple(_as_error(problem) for problem in problems)
    ordered = tuple(sorted(problems, key=Problem.in_order))
    return Reading(project=reading.project, packs=reading.packs, problems=ordered)


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
    out = folder / "out"
    drafted: list[Drafts] = []
    try:
        for name, part in (("review", whole), ("public", open_part)):
            progress(f"writing narratives and pages: {name}")
            edition, drafts = _edition(folder, name, part, reading.problems if name == "review" else (), version)
            drafted += drafts
            build(edition, templates_folder(), out / name, images=folder)
    except Refused as refusal:
        return Told(problems=(*reading.problems, *refusal.problems), is_written=False)
    progress("writing drafts, claims and measures")
    for drafts_of_audience in drafted:
        write_drafts(folder, *drafts_of_audience)
    _write(out / "claims.json", claims_json(whole.claims))
    for file, text in measure_tables(whole.findings, whole.packs).items():
        _write(out / "measures" / file, text)
    return Told(
        problems=reading.problems,
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
    edition, _ = _edition(folder, "review", judged(reading.project, reading.packs), reading.problems, version)
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
        text = lines(place.path)
        return text[place.line - 1].strip() if 0 < place.line <= len(text) else ""

    return row


def _edition(
    folder: Path, name: str, part: Judged, problems: tuple[Problem, ...], version: str
) -> tuple[Edition, list[Drafts]]:
    """An edition with the analyst's own words in place of the drafts she changed, and the drafts as they would be."""
    told: dict[tuple[str, Subject], Narrative] = {}
    drafts: list[Drafts] = []
    for audience in EDITIONS[name]:
        drafted = narratives(part.project, part.packs, part.findings, part.claims, audience)
        drafts.append((part.project, drafted))
        for subject, narrative in merged(folder, part.project, drafted).items():
            told[(audience, subject)] = narrative
    edition = Edition(
        audience=name,
        project=part.project,
        packs=part.packs,
        findings=part.findings,
        claims=part.claims,
        narratives=told,
        problems=problems,
        version=version,
    )
    return edition, drafts


def _write(path: Path, text: str) -> None:
    path.parent.mkdir(parents=True, exist_ok=True)
    content = text.encode("utf-8")
    if not path.is_file() or path.read_bytes() != content:
        path.write_bytes(content)


def _as_error(problem: Problem) -> Problem:
    return replace(problem, severity="error")
