"""`narrate tell`, the main job: both sites, the drafts, the claims and the measures."""

from __future__ import annotations

import gc
from collections.abc import Callable, Mapping
from dataclasses import replace
from functools import partial
from pathlib import Path

from narrate.deposit.measures_file import measure_tables
from narrate.drafts.owned import write_files
from narrate.files import write
from narrate.judging.kept_units import KeptUnits
from narrate.model.edition import Edition
from narrate.model.studies import Studies
from narrate.pipeline.editions import Words, all_told, approved_alone, edition_of, with_those_of_drafts
from narrate.pipeline.held import Unwritable, broken_off, held, saved_meanwhile
from narrate.pipeline.judged import Judged, Progress, disclosed_part, judged_folder, silent
from narrate.pipeline.kept_claims import write_claims
from narrate.pipeline.kept_units import WORDS, keep, kept_before
from narrate.pipeline.rubbish import give_back, seldom_looked_for
from narrate.pipeline.side_by_side import side_by_side
from narrate.pipeline.studied import studied
from narrate.pipeline.told import Told
from narrate.pipeline.unchanged import (
    forget,
    forget_pages,
    ground_of,
    marks_of,
    options_of,
    pages_list,
    program_of,
    remember,
)
from narrate.problems import Problem, has_errors
from narrate.telling.kept_words import KeptWords
from narrate.web.refusal import Refused


@seldom_looked_for()
def tell(
    folder: Path,
    *,
    version: str,
    strict: bool = False,
    approved_only: frozenset[str] = frozenset(),
    progress: Progress = silent,
    wrote: Callable[[Mapping[Path, str]], object] = dict,
) -> Told:
    """
    The main job: read, measure, judge, draft, and build a site for the team and one for visitors.

    Nothing is written while the project has errors. The public site is made from a project from which everything
    restricted was already taken out.

    approved_only:  'public' builds the site for visitors from approved sentences alone, as project.yaml may also say.
    wrote:          told the narratives that are now as the run left them, by their files.
    """
    program = program_of(version, options_of(strict, approved_only))
    read = marks_of(folder) if folder.is_dir() else None
    ground = ground_of(folder, program) if read else ""
    found = judged_folder(folder, strict=strict, progress=progress)
    whole = found.whole
    if whole is None:
        return Told(problems=found.problems, is_written=False)
    progress("measuring and judging what is public")
    public = disclosed_part(whole, kept=found.kept)
    on_whole = studied(whole, public, found.kept)
    problems = found.problems
    try:
        with held(folder):
            forget(folder)
            keep(folder, found.ground, found.kept)
            found = replace(found, kept=KeptUnits())  # written, and not asked for any more
            progress("writing narratives")
            told = _told(folder, whole, public, approved_only, found.ground)
            problems = with_those_of_drafts(problems, told.values(), strict=strict)
            if has_errors(problems):
                return Told(problems=problems, is_written=False)
            progress("building pages and writing claims")
            edition = partial(_edition, whole, public, told, on_whole, problems, version, approved_only)
            builds = [
                partial(_built, partial(edition, "review"), folder, ground),
                # The site for visitors is the smaller one, so that claims are written in the same process.
                partial(
                    _built,
                    partial(edition, "public"),
                    folder,
                    ground,
                    then=partial(_write_claims, folder, whole, told, found.ground),
                ),
            ]
            refused = next(filter(None, side_by_side(builds, is_large=whole.is_large)), ())
            if refused:
                return Told(problems=(*problems, *refused), is_written=False, is_partly=True)
            if ground != ground_of(folder, program):
                forget_pages(folder)
            progress("writing drafts and measures")
            further = _write(folder, whole, told, wrote)
            done = Told(
                problems=(*problems, *further),
                is_written=True,
                contexts=len(whole.project.contexts),
                samples=len(whole.project.samples),
                claims=whole.claims.many_holding(),
            )
            remember(folder, read, program, done)
    except Unwritable as refusal:
        return Told(problems=(*found.problems, refusal.problem), is_written=False, is_busy=refusal.is_busy)
    except OSError as fault:
        return Told(problems=(*problems, broken_off(folder, "out", fault)), is_written=False, is_partly=True)
    return done


def _told(folder: Path, whole: Judged, public: Judged, approved_only: frozenset[str], ground: str) -> dict[str, Words]:
    """Both editions in words; what the next run may take over is left in `out/` and not kept in memory."""
    words = kept_before(folder, ground, WORDS)
    told = all_told(folder, whole, public, approved_only, KeptWords(words, ground))
    for one in told.values():
        words.now.update(one.kept)
    keep(folder, ground, words, WORDS)
    return {name: replace(one, kept={}) for name, one in told.items()}


def _edition(
    whole: Judged,
    public: Judged,
    told: Mapping[str, Words],
    on_whole: Mapping[str, Studies],
    problems: tuple[Problem, ...],
    version: str,
    approved_only: frozenset[str],
    name: str,
) -> Edition:
    """All that one site shows."""
    words, is_strict = told[name].narratives, name in whole.project.approved_only | approved_only
    return edition_of(
        name,
        whole if name == "review" else public,
        approved_alone(words) if is_strict else words,
        problems if name == "review" else (),
        version,
        approved_only=is_strict,
        told_elsewhere=told["public"].narratives if name == "review" else None,
        studied=on_whole[name],
    )


def _nothing() -> None:
    """Nothing else is to be done."""


def _built(
    edition: Callable[[], Edition], folder: Path, ground: str, then: Callable[[], object] = _nothing
) -> tuple[Problem, ...]:
    """Builds one site, then does what else is to be done; gives what stands in the way of the site."""
    from narrate.web.build import build
    from narrate.web.templates import templates_folder

    try:
        shown = edition()
        site, kept = folder / "out" / shown.audience, pages_list(folder, shown.audience)
        build(shown, templates_folder(), site, images=folder, kept=kept, ground=ground)
        gc.collect()  # the site goes, whose templates and views refer to one another, before anything else is done
        give_back()
        then()
    except Refused as refusal:
        return tuple(refusal.problems)
    except OSError as fault:
        return (broken_off(folder, "out", fault),)
    return ()


def _write_claims(folder: Path, whole: Judged, told: Mapping[str, Words], ground: str) -> None:
    """`claims.json`, with the evidence of all that narratives cite."""
    cited = {
        ref
        for words in told.values()
        for narrative in words.narratives.values()
        for sentence in (*narrative.sentences(), *([narrative.summary] if narrative.summary else ()))
        for ref in sentence.refs
    }
    write_claims(folder, whole.claims, cited, ground)


def _write(
    folder: Path,
    whole: Judged,
    told: Mapping[str, Words],
    wrote: Callable[[Mapping[Path, str]], object],
) -> tuple[Problem, ...]:
    """Drafts and measures; tells of narratives that the analyst saved meanwhile, which stay hers."""
    left = [path for words in told.values() for path in write_files(words.files)]
    wrote({path: one.text for words in told.values() for path, one in words.files.items() if path not in left})
    for file, text in measure_tables(whole.findings, whole.packs).items():
        write(folder / "out" / "measures" / file, text)
    return tuple(saved_meanwhile(folder, path) for path in left)
