"""`narrate rank`: how strong a story each sample and context tells."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path

from narrate.deposit.ranking_file import plain_ranking
from narrate.judging.strength import ranked
from narrate.pipeline.judged import Progress, judged_folder, silent
from narrate.problems import Problem
from narrate.telling.ranking import ranking_text


@dataclass(frozen=True, slots=True, kw_only=True)
class Ranked:
    """How strong a story each sample and context tells: text and plain data, or the problems that stand in the way."""

    text: str = ""
    plain: Mapping[str, object] = field(default_factory=dict)
    problems: tuple[Problem, ...] = ()


def rank(folder: Path, *, progress: Progress = silent) -> Ranked:
    """Samples and contexts of a project by the strength of their story, each with the next step that pays."""
    found = judged_folder(folder, progress=progress)
    whole = found.whole
    if whole is None:
        return Ranked(problems=found.problems)
    ranking = ranked(whole.project, whole.packs, whole.findings, whole.claims)
    return Ranked(text=ranking_text(ranking), plain=plain_ranking(ranking), problems=found.problems)
