"""`narrate tell`, the main job: both sites, the drafts, the claims and the measures."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path

from narrate.deposit.claims_file import claims_json
from narrate.deposit.measures_file import measure_tables
from narrate.disclosure import disclosed
from narrate.drafts.owned import write_files
from narrate.files import write
from narrate.model.edition import Edition
from narrate.pipeline.editions import Words, all_told, approved_alone, edition_of, with_those_of_drafts
from narrate.pipeline.held import Unwritable, held, not_written, saved_meanwhile
from narrate.pipeline.judged import Judged, Progress, judged, judged_folder, silent
from narrate.problems import Problem, has_errors
from narrate.web.refusal import Refused


@dataclass(frozen=True, slots=True, kw_only=True)
class Told:
    problems: tuple[Problem, ...]
    is_written: bool
    is_busy: bool = False
    """Nothing was written because another run is writing."""
    contexts: int = 0
    samples: int = 0
    claims: int = 0


def tell(
    folder: Path,
    *,
    version: str,
    strict: bool = False,
    approved_only: frozenset[str] = frozenset(),
    progress: Progress = silent,
) -> Told:
    """
    The main job: read, measure, judge, draft, and build a site for the team and one for visitors.

    Nothing is written while the project has errors. The public site is made from a project from which everything
    restricted was already taken out.

    approved_only:  'public' builds the site for visitors from approved sentences alone, as project.yaml may also say.
    """
    found = judged_folder(folder, strict=strict, progress=progress)
    whole = found.whole
    if whole is None:
        return Told(problems=found.problems, is_written=False)
    progress("measuring and judging what is public")
    open_part = judged(disclosed(whole.project), whole.packs)
    try:
        with held(folder):
            progress("writing narratives")
            told = all_told(folder, whole, open_part, approved_only)
            problems = with_those_of_drafts(found.problems, told.values(), strict=strict)
            if has_errors(problems):
                return Told(problems=problems, is_written=False)
            for edition in _editions(whole, open_part, told, problems, version, approved_only):
                progress(f"building pages: {edition.audience}")
                _build(edition, folder)
            progress("writing drafts, claims and measures")
            further = _write(folder, whole, told)
    except Unwritable as refusal:
        return Told(problems=(*found.problems, refusal.problem), is_written=False, is_busy=refusal.is_busy)
    except Refused as refusal:
        return Told(problems=(*problems, *refusal.problems), is_written=False)
    except OSError as fault:
        return Told(problems=(*problems, not_written("out", fault)), is_written=False)
    return Told(
        problems=(*problems, *further),
        is_written=True,
        contexts=len(whole.project.contexts),
        samples=len(whole.project.samples),
        claims=sum(claim.verdict == "holds" for claim in whole.claims),
    )


def _editions(
    whole: Judged,
    open_part: Judged,
    told: Mapping[str, Words],
    problems: tuple[Problem, ...],
    version: str,
    approved_only: frozenset[str],
) -> Iterator[Edition]:
    for name, part in (("review", whole), ("public", open_part)):
        words, is_strict = told[name].narratives, name in whole.project.approved_only | approved_only
        yield edition_of(
            name,
            part,
            approved_alone(words) if is_strict else words,
            problems if name == "review" else (),
            version,
            approved_only=is_strict,
            told_elsewhere=told["public"].narratives if name == "review" else None,
        )


def _build(edition: Edition, folder: Path) -> None:
    from narrate.web.build import build
    from narrate.web.templates import templates_folder

    build(edition, templates_folder(), folder / "out" / edition.audience, images=folder)


def _write(folder: Path, whole: Judged, told: Mapping[str, Words]) -> tuple[Problem, ...]:
    """Drafts, claims and measures; tells of narratives that the analyst saved meanwhile, which stay hers."""
    left = [path for words in told.values() for path in write_files(words.files)]
    write(folder / "out" / "claims.json", claims_json(whole.claims))
    for file, text in measure_tables(whole.findings, whole.packs).items():
        write(folder / "out" / "measures" / file, text)
    return tuple(saved_meanwhile(folder, path) for path in left)
