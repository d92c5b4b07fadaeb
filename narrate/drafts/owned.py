"""Narrative files of a project folder: every word of the analyst's kept, new drafts where she changed nothing."""

from __future__ import annotations

import difflib
import hashlib
import re
from collections import Counter
from collections.abc import Collection, Iterable, Mapping
from dataclasses import dataclass, field, replace
from pathlib import Path

from narrate.drafts.attention import Look, Overclaims, hers_as_written, tell_lost_side, tell_standing
from narrate.drafts.base_file import base_text, read_base
from narrate.drafts.basis import Figures, Ground, as_they_stand, claims_in_force, figures, name_of
from narrate.drafts.draft_file import Line, draft_text, plain_text, read_draft
from narrate.drafts.merge import Merged, merged
from narrate.drafts.offered import Base, Drafted
from narrate.drafts.placing import drafted_file
from narrate.files import write
from narrate.model.ids import FILED, Subject
from narrate.model.languages import Language
from narrate.model.narrative import Narrative, Section, Sentence
from narrate.model.packed import Packed
from narrate.problems import Place, Problem, ProblemList

FOLDER = "narratives"
LONGEST_NAME = 120
"""Bytes of a file's name, before its mark and ending."""
_RESERVED = re.compile(r"con|prn|aux|nul|com\d|lpt\d", re.IGNORECASE)
"""Names that some file system keeps for itself."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Revised:
    """A narrative file as it is to be written, and as it was when the run read it."""

    read: bytes | None
    """None where there was no file."""
    text: str
    side: Path
    base: Packed
    """What the side file will hold: longer than the text, and written when everything else is."""


@dataclass(slots=True)
class Owned:
    """Narratives as they stand, the files to write for them, and what a person should look at."""

    narratives: dict[Subject, Narrative] = field(default_factory=dict)
    files: dict[Path, Revised] = field(default_factory=dict)
    problems: tuple[Problem, ...] = ()


def owned(
    folder: Path,
    drafted: Mapping[Subject, Narrative],
    ground: Ground,
    *,
    overclaims: Overclaims = lambda text, grades: (),
    language: Language | None = None,
    approved_only: bool = False,
) -> Owned:
    """
    The narratives of one audience, merged with the files of the folder. Nothing is written.

    overclaims:     finds words of the analyst that claim more than the grades behind them bear.
    language:       that which the narratives are told in, to read the numbers that she typed.
    approved_only:  what is built from them takes approved sentences alone, so each sentence that waits is told.
    """
    keys = {subject: key for key, subject in ground.subject_of.items()}
    alike = alike_keys(keys.values())
    found, problems = Owned(), ProblemList()

    def stands(then: Figures) -> dict[str, str]:
        return as_they_stand(then, ground)

    for subject, narrative in drafted.items():
        if not is_a_file(subject):
            found.narratives[subject] = narrative
            continue
        path = draft_path(folder, narrative.audience, keys[subject], alike)
        shown = path.relative_to(folder).as_posix()
        now = sentences_of(narrative, ground)
        read = path.read_bytes() if path.is_file() else None
        text = hers_as_written(read, shown, problems)
        if text is None:
            found.narratives[subject] = narrative
            continue
        hers = read_draft(text) if read is not None else None
        base = _base(_side(path), ground)
        if hers is not None and base is None:
            tell_lost_side(shown, _side(path).relative_to(folder).as_posix(), problems)
        result = merged(
            base,
            hers,
            now,
            claims=claims_in_force(subject, ground),
            stands=stands,
            name=lambda key: name_of(key, ground),
        )
        found.narratives[subject] = _told(narrative, result, now, f"{keys[subject]}/words")
        found.files[path] = Revised(
            read=read,
            text=_as_she_writes(draft_text(result.file), text),
            side=_side(path),
            base=Packed.of([base_text(result.base).encode("utf-8")]),
        )
        look = Look(
            subject=subject,
            ground=ground,
            now=now,
            overclaims=overclaims,
            language=language,
            approved_only=approved_only,
        )
        tell_standing(result, look, shown, problems)
    found.problems = problems.sorted()
    return found


def is_a_file(subject: Subject) -> bool:
    """True for subjects whose narratives stand in files."""
    return subject.level in FILED


def write_files(files: Mapping[Path, Revised]) -> tuple[Path, ...]:
    """
    Writes what changed, and gives the files that somebody saved since they were read: these stay as they are.

    A narrative goes before its side file, so that a cut leaves her words and the old base.
    """
    left = []
    for path, revised in files.items():
        if (path.read_bytes() if path.is_file() else None) != revised.read:
            left.append(path)
            continue
        write(path, revised.text)
        write(revised.side, revised.base.content)
    return tuple(left)


def tell_unowned(folder: Path, audience: str, keys: Iterable[str], problems: ProblemList) -> None:
    """Narrative files that are of no subject: renamed by hand, or of a context that has another id now."""
    listed = tuple(keys)
    alike = alike_keys(listed)
    known = {draft_path(folder, audience, key, alike).stem for key in listed}
    for path in sorted((folder / FOLDER / audience).glob("*.md")):
        if path.stem in known:
            continue
        begins = sorted((stem for stem in known if path.stem.startswith(stem)), key=len, reverse=True)
        near = [f"{stem}.md" for stem in begins or difflib.get_close_matches(path.stem, sorted(known), n=1)]
        problems.warning(
            Place(path=path.relative_to(folder).as_posix()),
            "N118",
            f"the narrative '{path.stem}' is of no context, phase or site, expected a file named for one; it is kept "
            "and on no page",
            help=f"move its words to {(near or ['another file'])[0]}, or delete it",
        )


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
    files = [draft_path(folder, audience, key, alike) for audience in audiences for alike in ((), (key.casefold(),))]
    files = list(dict.fromkeys(files))
    return tuple(Place(path=path.relative_to(folder).as_posix(), line=1) for path in files if path.is_file())


def draft_path(folder: Path, audience: str, key: str, alike: Collection[str] = ()) -> Path:
    """
    `narratives/<audience>/<subject>.md`, under a name that every file system takes; odd ids get a mark.

    alike:  what `alike_keys` gives for all ids of the project: names that some systems would take for one file.
    """
    name = re.sub(r"[^\w.-]+", "-", key).strip(".-") or "unnamed"
    if _RESERVED.fullmatch(name.partition(".")[0]):
        name = f"id-{name}"
    if name != key or len(name.encode("utf-8")) > LONGEST_NAME or name.casefold() in alike:
        whole = name.encode("utf-8")[:LONGEST_NAME].decode("utf-8", "ignore")
        name = f"{whole}-{hashlib.blake2b(key.encode('utf-8'), digest_size=3).hexdigest()}"
    return folder / FOLDER / audience / f"{name}.md"


def alike_keys(keys: Iterable[str]) -> frozenset[str]:
    """
    Ids that differ from another in nothing but capitals, in small letters.

    >>> sorted(alike_keys(["C1", "c1", "C2"]))
    ['c1']
    """
    times = Counter(key.casefold() for key in dict.fromkeys(keys))
    return frozenset(key for key, number in times.items() if number > 1)


def _side(path: Path) -> Path:
    return path.parent / ".drafted" / f"{path.stem}.json"


def _base(side: Path, ground: Ground) -> Base | None:
    if not side.is_file():
        return None
    return read_base(side.read_text(encoding="utf-8", errors="replace"), lambda refs: figures(refs, ground))


def _as_she_writes(text: str, hers: str) -> str:
    """With the ends of lines and the mark at the start that her file has; as it stands where nothing changed."""
    if draft_text(read_draft(hers)) == text:
        return hers
    if hers.count("\r\n") > hers.count("\n") / 2:
        text = text.replace("\n", "\r\n")
    return "\ufeff" + text if hers.startswith("\ufeff") else text


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
    if not result.edited and approval is None and plain_text(result.file) == plain_text(drafted_file(now)):
        return narrative
    refs = {key: s.refs for key, s in result.base.sentences.items()} | {s.key: s.refs for s in now}
    sections: list[Section] = []
    heading, index = "", 0
    paragraphs: list[tuple[Sentence, ...]] = []

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
            if not line.text:
                continue
            sentences.append(_sentence(line, index, result, refs, own))
            index += 1
        if sentences:
            paragraphs.append(tuple(sentences))
    close()
    return replace(
        narrative,
        sections=tuple(sections),
        is_edited=bool(result.edited),
        approved_by=approval.by if approval else "",
        approved_on=approval.on if approval else "",
        lapses=result.lapses,
    )


def _sentence(line: Line, index: int, result: Merged, refs: Mapping[str, tuple[str, ...]], own: str) -> Sentence:
    behind = tuple(dict.fromkeys(ref for key in line.keys for ref in refs.get(key, ())))
    is_hers = index in result.edited
    return Sentence(
        text=line.text,
        refs=behind or (own,),
        standing="drafted" if not is_hers else ("edited" if behind else "own"),
        is_approved=index in result.approved,
        stale=result.stale[index].reasons if index in result.stale else (),
    )
