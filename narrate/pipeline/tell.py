"""`narrate tell`, the main job: both sites, the drafts, the claims and the measures."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from narrate.deposit.claims_file import claims_json
from narrate.deposit.measures_file import measure_tables
from narrate.disclosure import disclosed
from narrate.drafts.owned import write_files
from narrate.pipeline.editions import all_told, approved_alone, edition_of, with_those_of_drafts
from narrate.pipeline.judged import Progress, judged, judged_folder, silent
from narrate.pipeline.writing import write
from narrate.problems import Problem, has_errors


@dataclass(frozen=True, slots=True, kw_only=True)
class Told:
    problems: tuple[Problem, ...]
    is_written: bool
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
    from narrate.web.build import build
    from narrate.web.refusal import Refused
    from narrate.web.templates import templates_folder

    found = judged_folder(folder, strict=strict, progress=progress)
    whole = found.whole
    if whole is None:
        return Told(problems=found.problems, is_written=False)
    progress("measuring and judging what is public")
    open_part = judged(disclosed(whole.project), whole.packs)
    progress("writing narratives")
    told = all_told(folder, whole, open_part, approved_only)
    problems = with_those_of_drafts(found.problems, told.values(), strict=strict)
    if has_errors(problems):
        return Told(problems=problems, is_written=False)
    out = folder / "out"
    try:
        for name, part in (("review", whole), ("public", open_part)):
            progress(f"building pages: {name}")
            words, is_strict = told[name].narratives, name in whole.project.approved_only | approved_only
            edition = edition_of(
                name,
                part,
                approved_alone(words) if is_strict else words,
                problems if name == "review" else (),
                version,
                approved_only=is_strict,
            )
            build(edition, templates_folder(), out / name, images=folder)
    except Refused as refusal:
        return Told(problems=(*problems, *refusal.problems), is_written=False)
    progress("writing drafts, claims and measures")
    for drafts in told.values():
        write_files(drafts.files)
    write(out / "claims.json", claims_json(whole.claims))
    for file, text in measure_tables(whole.findings, whole.packs).items():
        write(out / "measures" / file, text)
    return Told(
        problems=problems,
        is_written=True,
        contexts=len(whole.project.contexts),
        samples=len(whole.project.samples),
        claims=sum(claim.verdict == "holds" for claim in whole.claims),
    )
