"""Narrative files of a project folder: every word of the analyst's kept, new drafts taken up where she changed nothing."""

from __future__ import annotations

import hashlib
import re
from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from pathlib import Path

from narrate.drafts.base_file import base_text, read_base
from narrate.drafts.basis import Ground, figures
from narrate.drafts.draft_file import draft_text, read_draft
from narrate.drafts.figures_typed import strange_numbers
from narrate.drafts.merge import Drafted, Merged, merged
from narrate.model.ids import Subject
from narrate.model.narrative import Narrative, Section, Sentence
from narrate.problems import Place, Problem, ProblemList

FOLDER = "narratives"
_LEVELS = ("context", "phase", "site")
"""Subjects whose narratives are written as files; those of samples are too short to be worth one."""


@dataclass(slots=True)
class Owned:
    """Narratives as they stand, the files to write for them, and what a person should look at."""

    narratives: dict[Subject, Narrative] = field(default_factory=dict)
    files: dict[Path, str] = field(default_factory=dict)
    problems: tuple[Problem, ...] = ()


def owned(folder: Path, drafted: Mapping[Subject, Narrative], ground: Ground) -> Owned:
    """The narratives of one audience, merged with the files of the folder. Nothing is written."""
    keys = {subject: key for key, subject in ground.subject_of.items()}
    found, problems = Owned(), ProblemList()
    for subject, narrative in drafted.items():
        if subject.level not in _LEVELS:
            found.narratives[subject] = narrative
            continue
        path = draft_path(folder, narrative.audience, keys[subject])
        now = sentences_of(narrative, ground)
        hers = read_draft(_text(path)) if path.is_file() else None
        base = read_base(_text(_side(path))) if _side(path).is_file() else None
        if hers is not None and base is None:
            _tell_lost_side(path, folder, problems)
        result = merged(base, hers, now)
        found.narratives[subject] = _told(narrative, result, now, f"{keys[subject]}/words")
        found.files[path] = draft_text(result.file)
        found.files[_side(path)] = base_text(result.base)
        _tell_standing(result, now, path.relative_to(folder).as_posix(), problems)
    found.problems = problems.sorted()
    return found


def write_files(files: Mapping[Path, str]) -> None:
    """Writes what changed. A narrative is written before its side file, so that a cut leaves her words and the old base."""
    for path, text in files.items():
        if path.is_file() and path.read_bytes() == text.encode("utf-8"):
            continue
        path.parent.mkdir(parents=True, exist_ok=True)
        whole = path.with_name(path.name + ".part")
        whole.write_text(text, encoding="utf-8", newline="\n")
        whole.replace(path)


def sentences_of(narrative: Narrative, ground: Ground) -> tuple[Drafted, ...]:
    """The sentences of a narrative with their marks and figures; marks stay the same while references do."""
    found: list[Drafted] = []
    taken: set[str] = set()
    paragraph = 0
    for section in narrative.sections:
        for sentences in section.paragraphs:
            paragraph += 1
            for sentence in sentences:
                key = _mark(sentence.refs, taken)
                taken.add(key)
                found.append(
                    Drafted(
                        key=key,
                        text=" ".join(sentence.text.split()),
                        refs=sentence.refs,
                        figures=figures(sentence.refs, ground),
                        heading=section.heading,
                        paragraph=paragraph,
                    )
                )
    return tuple(found)


def own_words(folder: Path, key: str) -> tuple[Place, ...]:
    """The narrative files of a subject, for sentences that the analyst wrote herself."""
    root = folder / FOLDER
    audiences = sorted(path.name for path in root.iterdir() if path.is_dir()) if root.is_dir() else []
    files = [draft_path(folder, audience, key) for audience in audiences]
    return tuple(Place(path=path.relative_to(folder).as_posix(), line=1) for path in files if path.is_file())


def draft_path(folder: Path, audience: str, key: str) -> Path:
    """`narratives/<audience>/<subject>.md`, under a name that every file system takes; odd ids get a mark."""
    name = re.sub(r"[^\w.-]+", "-", key).strip(".-") or "unnamed"
    if name != key:
        name += "-" + hashlib.blake2b(key.encode("utf-8"), digest_size=3).hexdigest()
    return folder / FOLDER / audience / f"{name}.md"


def _side(path: Path) -> Path:
    return path.parent / ".drafted" / f"{path.stem}.json"


def _text(path: Path) -> str:
    return path.read_text(encoding="utf-8", errors="replace")


def _mark(refs: tuple[str, ...], taken: set[str]) -> str:
    """Four to six hexadecimal digits made from the references, unlike any other of the narrative."""
    for turn in range(1000):
        said = "\n".join((*sorted(refs), str(turn) if turn else ""))
        mark = hashlib.blake2b(said.encode("utf-8"), digest_size=3).hexdigest()
        if mark not in taken:
            return mark
    raise ValueError("a thousand sentences of one narrative rest on the same references")


def _told(narrative: Narrative, result: Merged, now: tuple[Drafted, ...], own: str) -> Narrative:
    """The narrative as its file stands, with the standing of every sentence."""
    approval = result.file.approval
    refs = {key: s.refs for key, s in result.base.sentences.items()} | {s.key: s.refs for s in now}
    sections: list[Section] = []
    heading, paragraphs, index = "", [], 0

    def close() -> None:
        if heading or paragraphs:
            sections.append(Section(id=f"part-{len(sections) + 1}", heading=heading, paragraphs=tuple(paragraphs)))

    for block in result.file.blocks:
        if block.heading:
            close()
            heading, paragraphs = block.heading, []
            continue
        sentences = []
        for line in block.lines:
            behind = tuple(dict.fromkeys(ref for key in line.keys for ref in refs.get(key, ())))
            is_hers = index in result.edited
            sentences.append(
                Sentence(
                    text=line.text,
                    refs=behind or (own,),
                    standing="drafted" if not is_hers else ("edited" if behind else "own"),
                    stale=result.stale[index].reasons if index in result.stale else (),
                )
            )
            index += 1
        paragraphs.append(tuple(sentences))
    close()
    is_as_drafted = (
        not result.edited
        and result.file.approval is None
        and draft_text(result.file) == draft_text(merged(None, None, now).file)
    )
    return replace(
        narrative,
        sections=narrative.sections if is_as_drafted else tuple(sections),
        is_edited=bool(result.edited),
        approved_by=approval.by if approval else "",
        approved_on=approval.on if approval else "",
        has_lapsed=result.has_lapsed,
    )


def _tell_lost_side(path: Path, folder: Path, problems: ProblemList) -> None:
    problems.warning(
        Place(path=path.relative_to(folder).as_posix()),
        "N112",
        f"the side file '{_side(path).relative_to(folder).as_posix()}' is missing or not narrate's, expected it beside "
        "the narrative; every line is taken to be yours",
        help="bring it back from version control, or delete the narrative to have a new draft",
    )


def _tell_standing(result: Merged, now: tuple[Drafted, ...], path: str, problems: ProblemList) -> None:
    by_key = {s.key: s for s in now}
    for index, line in enumerate(result.file.lines()):
        place = Place(path=path, line=line.number, column=1 if line.number else 0)
        if index in result.stale:
            problems.warning(
                place,
                "N109",
                "an edited sentence rests on what has changed since: " + "; ".join(result.stale[index].reasons),
                excerpt=line.text[:160],
                help="reword it, or touch it once you have seen that it still holds",
            )
        if index in result.edited and line.keys:
            behind = {n: v for key in line.keys if key in by_key for n, v in by_key[key].figures.items()}
            drafted = " ".join(by_key[key].text for key in line.keys if key in by_key)
            strange = strange_numbers(line.text, drafted, behind)
            if strange and behind:
                problems.warning(
                    place,
                    "N111",
                    f"edited text says {', '.join(strange)}, expected figures behind the sentence: "
                    + "; ".join(f"{name} {value}" for name, value in sorted(behind.items())),
                    excerpt=line.text[:160],
                    help="correct the number, or leave it if it comes from elsewhere",
                )
    if result.has_lapsed and result.file.approval is not None:
        said = result.file.approval
        problems.warning(
            Place(path=path, line=1),
            "N110",
            f"approved by {said.by} on {said.on or 'no date'}, and the figures behind it have changed since",
            help="read it again and write a new date into 'approved'",
        )
