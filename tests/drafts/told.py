"""One context with a narrative, told again and again."""

from __future__ import annotations

from pathlib import Path

from narrate.drafts.basis import Ground
from narrate.drafts.owned import draft_path, owned, write_files
from narrate.judging.judge import judge
from narrate.measures.findings import find
from narrate.model.ids import Subject
from narrate.model.narrative import Narrative, Section, Sentence
from narrate.model.refs import subject_keys
from narrate.problems import ProblemList, written
from narrate.reading.languages import read_languages
from narrate.reading.packs import pack_folders
from tests.judging.rules import a_rule, packs_with
from tests.measures.digs import a_dig

C1 = Subject(level="context", id="C1")
LANGUAGES = read_languages(pack_folders(None), ProblemList())
"""As they come with narrate."""
REFS = ("C1/fuel.maize-cob", "C1/found.zea-mays.cupule")


def a_ground(cupules: int) -> Ground:
    """A dig with one context that holds maize cupules and nothing else."""
    dig, packs = a_dig([[("Zea mays", "cupule", cupules)]]), packs_with(a_rule())
    return Ground(
        claims=judge(dig, packs, replicates=0),
        findings=find(dig, packs),
        packs=packs,
        subject_of={key: subject for subject, key in subject_keys(dig).items()},
    )


def a_narrative(*texts: str) -> Narrative:
    sentences = tuple(Sentence(text=t, refs=REFS if i == 0 else ("C1/measure.items",)) for i, t in enumerate(texts))
    section = Section(id="fuel", heading="Fuel", paragraphs=(sentences,))
    return Narrative(subject=C1, audience="report", title="C1, pit", summary=None, sections=(section,))


def tell(folder: Path, cupules: int, *texts: str) -> tuple[Narrative, list[str]]:
    """One run: the narrative as it stands, and the problems told; files are written."""
    drafted = {C1: a_narrative(*(texts or (f"Cob parts ({cupules}) were burned.",)))}
    found = owned(folder, drafted, a_ground(cupules), language=LANGUAGES["en"])
    write_files(found.files)
    return found.narratives[C1], [written(problem) for problem in found.problems]


def rewrite(folder: Path, before: str, after: str) -> str:
    path = draft_path(folder, "report", "C1")
    text = path.read_text(encoding="utf-8")
    assert before in text
    path.write_text(text.replace(before, after), encoding="utf-8")
    return path.read_text(encoding="utf-8")
