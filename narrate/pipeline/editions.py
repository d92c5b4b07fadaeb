"""The two sites, the audiences whose words they hold, and those words as they stand."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from functools import partial
from pathlib import Path

from narrate.disclosure import disclosed_narrative
from narrate.drafts.attention import Overclaims
from narrate.drafts.basis import Ground
from narrate.drafts.owned import Owned, Revised, alike_keys, draft_path, is_a_file, owned, tell_unowned
from narrate.judging.strength import ranked
from narrate.measures.manual import manual
from narrate.measures.studies import studies
from narrate.model.at_once import AtOnce
from narrate.model.claims import Grade
from narrate.model.edition import Edition
from narrate.model.ids import Level, Subject
from narrate.model.narrative import Narrative
from narrate.model.packs import Packs
from narrate.model.refs import subject_keys
from narrate.model.standing import Standing, standing
from narrate.model.studies import Studies
from narrate.pipeline.judged import Judged, as_error
from narrate.pipeline.side_by_side import side_by_side
from narrate.problems import Place, Problem, ProblemList
from narrate.reading.track_record import shipped_track_record
from narrate.telling.calibrated import overclaimed
from narrate.telling.kept_words import KeptWords
from narrate.telling.tell import LEVELS, narratives

EDITIONS: Mapping[str, tuple[str, ...]] = {"review": ("review", "report"), "public": ("public", "label")}
"""Each site and the audiences whose narratives it always holds."""

_DISCLOSED = {"review": "everything", "public": "public"}


def audiences_of(name: str, part: Judged) -> tuple[str, ...]:
    """
    The audiences of an edition: its own, those of the project's packs, and those that come with narrate and that
    project.yaml asks for. One that may not know everything is told in the public edition.
    """
    usual = [id for ids in EDITIONS.values() for id in ids]
    further = [
        audience.id
        for audience in part.packs.audiences.values()
        if audience.id not in usual
        and audience.discloses == _DISCLOSED[name]
        and (audience.id in part.project.audiences or not audience.place.path.startswith(_SHIPPED))
    ]
    return (*EDITIONS[name], *sorted(further))


_SHIPPED = "narrate/packs/"
"""Where messages say that the files of narrate itself lie."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Words:
    """The narratives of an edition as they stand, what to write for them, and what to look at."""

    narratives: Mapping[tuple[str, Subject], Narrative]
    files: Mapping[Path, Revised]
    problems: tuple[Problem, ...]
    standings: Mapping[str, Standing]
    """By audience, of all narratives that are files: who said what."""
    kept: Mapping[bytes, bytes] = field(default_factory=dict)
    """What was told, with what it asked of the dig, for the next run."""


def words_of(
    folder: Path,
    name: str,
    part: Judged,
    approved_only: frozenset[str] = frozenset(),
    *,
    audiences: Collection[str] = (),
    levels: Collection[Level] = LEVELS,
    known: KeptWords | None = None,
    at_once: AtOnce | None = None,
) -> Words:
    """
    Drafts of the audiences of the edition, merged with the analyst's own words.

    approved_only:  what is built from approved words alone, beside what the project says; all words are given still.
    audiences:      those whose words are wanted; left out: all of the edition.
    levels:         of the subjects whose words are wanted.
    known:          words that were told before.
    at_once:        tells the subjects in shares; `known` is not added to then.
    """
    chosen = part.project.approved_only | approved_only
    keys = subject_keys(part.project)
    ground = Ground(
        claims=part.claims,
        findings=part.findings,
        packs=part.packs,
        subject_of={key: subject for subject, key in keys.items()},
    )
    found: dict[str, Owned] = {}
    for audience in audiences or audiences_of(name, part):
        drafted = narratives(part.project, part.packs, part.findings, part.claims, audience, levels, known, at_once)
        found[audience] = owned(
            folder,
            drafted,
            ground,
            overclaims=_overclaims(part.packs, audience),
            language=part.packs.languages.get(part.packs.audiences[audience].language),
            approved_only=("public" if name == "public" else audience) in chosen,
        )
    return Words(
        narratives={(a, s): n for a, kept in found.items() for s, n in kept.narratives.items()},
        files={path: revised for kept in found.values() for path, revised in kept.files.items()},
        problems=tuple(problem for kept in found.values() for problem in kept.problems),
        standings={a: standing(n for s, n in kept.narratives.items() if is_a_file(s)) for a, kept in found.items()},
        kept={} if known is None else dict(known.kept.now),
    )


def all_told(
    folder: Path,
    whole: Judged,
    open_part: Judged,
    approved_only: frozenset[str] = frozenset(),
    known: KeptWords | None = None,
) -> dict[str, Words]:
    """
    Both editions, told side by side; words for the public that name something restricted are kept back, and that is
    told.
    """
    jobs = [
        partial(words_of, folder, "public", open_part, approved_only, known=known),
        partial(words_of, folder, "review", whole, approved_only, known=known),
    ]
    public, review = side_by_side(jobs, is_large=whole.is_large)
    kept = {k: disclosed_narrative(n, whole.project) for k, n in public.narratives.items()}
    keys = subject_keys(open_part.project)
    alike = alike_keys(subject_keys(whole.project).values())
    problems = ProblemList()
    for (audience, subject), narrative in public.narratives.items():
        left = {sentence.text for sentence in kept[(audience, subject)].sentences()}
        for sentence in narrative.sentences():
            if sentence.text not in left:
                path = draft_path(folder, audience, keys[subject], alike)
                _tell_kept_back(folder, path, sentence.text, problems)
    for context in sorted(whole.project.disclosure.restricted_contexts):
        for audience in audiences_of("public", open_part):
            path = draft_path(folder, audience, context, alike)
            if path.is_file():
                problems.warning(
                    Place(path=path.relative_to(folder).as_posix()),
                    "N210",
                    f"this narrative for the public is of '{context}', which is restricted; it is on no public page",
                    help="delete the file and its side file before the folder is given to others",
                )
    everyone = [key for subject, key in subject_keys(whole.project).items() if is_a_file(subject)]
    for audience in (*audiences_of("review", whole), *audiences_of("public", open_part)):
        tell_unowned(folder, audience, everyone, problems)
    offered = ", ".join(sorted(whole.packs.audiences))
    for name in whole.project.audiences:
        if name not in whole.packs.audiences:
            problems.error(
                Place(path="project.yaml"),
                "N601",
                f"audiences names '{name}', which no pack holds, expected one of {offered}",
                help="correct the name, or put its file into packs/audiences/ of the project",
            )
    public = replace(public, narratives=kept, problems=(*public.problems, *problems.sorted()))
    return {"review": review, "public": public}


def approved_alone(told: Mapping[tuple[str, Subject], Narrative]) -> dict[tuple[str, Subject], Narrative]:
    """Narratives without the sentences that nobody has approved."""
    return {key: narrative.approved_alone() for key, narrative in told.items()}


def _overclaims(packs: Packs, audience: str) -> Overclaims:
    """What claims too much in the language of an audience."""
    language = packs.languages.get(packs.audiences[audience].language)
    if language is None:
        return lambda text, grades: ()

    def found(text: str, grades: Sequence[Grade]) -> tuple[tuple[str, str], ...]:
        return tuple((phrase.says, f"say instead: {phrase.instead}") for phrase in overclaimed(text, language, grades))

    return found


def _tell_kept_back(folder: Path, path: Path, text: str, problems: ProblemList) -> None:
    lines = path.read_text(encoding="utf-8", errors="replace").splitlines() if path.is_file() else []
    line = next((number for number, row in enumerate(lines, start=1) if text in " ".join(row.split())), 0)
    problems.warning(
        Place(path=path.relative_to(folder).as_posix(), line=line),
        "N210",
        "the sentence names something restricted; it is kept in the file and left off the public site",
        help="reword the sentence",
    )


def with_those_of_drafts(problems: tuple[Problem, ...], told: Iterable[Words], *, strict: bool) -> tuple[Problem, ...]:
    of_drafts = tuple(problem for part in told for problem in part.problems)
    if strict:
        of_drafts = tuple(as_error(problem) for problem in of_drafts)
    return tuple(sorted((*problems, *of_drafts), key=Problem.in_order))


def edition_of(
    name: str,
    part: Judged,
    told: Mapping[tuple[str, Subject], Narrative],
    problems: tuple[Problem, ...],
    version: str,
    *,
    approved_only: bool = False,
    told_elsewhere: Mapping[tuple[str, Subject], Narrative] | None = None,
    studied: Studies | None = None,
) -> Edition:
    """
    All that a site shows.

    studied:  what is worked out of the whole dig, where that was done already.
    """
    return replace(
        bare_edition(name, part, told, problems, version, approved_only=approved_only),
        told_elsewhere=told_elsewhere or {},
        ranking=ranked(part.project, part.packs, part.findings, part.claims) if name == "review" else None,
        manual=manual(),
        studies=studies(part.project, part.packs) if studied is None else studied,
        record=shipped_track_record() if name == "review" else None,
    )


def bare_edition(
    name: str,
    part: Judged,
    told: Mapping[tuple[str, Subject], Narrative],
    problems: tuple[Problem, ...],
    version: str,
    *,
    approved_only: bool = False,
) -> Edition:
    """What the section needs: without the ranking, the manual and the studies of the whole dig."""
    return Edition(
        audience=name,
        project=part.project,
        packs=part.packs,
        findings=part.findings,
        claims=part.claims,
        narratives=told,
        problems=problems,
        version=version,
        approved_only=approved_only,
    )
