"""
A dig that is followed while it is told: what each narrative asks of it is noted.

A narrative hangs on nothing but its subject, a ground that all share, and the answers to what it asks. Where the ground
and all answers are as they were when it was told, it would ask the same again and come out the same, word for word:
then it need not be told. What cannot be followed is noted too, and such a narrative is told each time.
"""

from __future__ import annotations

import hashlib
from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import fields, replace
from typing import Any, TypeVar

from narrate.model.claims import Claim, Claims
from narrate.model.counts import CountRow
from narrate.model.findings import Findings, SubjectFindings
from narrate.model.ids import Subject
from narrate.model.project import Disclosure
from narrate.telling.last_asked import LastAsked
from narrate.telling.page import Dig
from narrate.telling.strays import Strays
from narrate.telling.surroundings import Surroundings

Question = tuple[str, ...]
"""What is asked, in words: ('about', 'context', 'C12'), ('surroundings', 'outdone', 'density', 'C12')."""
_ABOUT = "about"
Key = TypeVar("Key")
Value = TypeVar("Value")


class Followed:
    """The dig of one audience, and what is asked of it."""

    def __init__(self, dig: Dig, ground: str) -> None:
        """ground: a sum over what else narratives hang on: the program and its packs."""
        self._plain = dig
        self._subjects = {key: subject for subject, key in dig.keys.items()}
        self._sums: dict[Question, bytes] = {}
        self.asked: dict[Question, None] = {}
        """What was asked since `begin`, in this order."""
        self.is_open = False
        """Whether something was asked since `begin` that cannot be followed."""
        # What may be disclosed and what must be approved changes no word; sets have no order of their own.
        records = replace(dig.project, counts=(), disclosure=Disclosure(), approved_only=frozenset())
        shared = (records, dig.audience, sorted(dig.ancient), sorted(dig.lone_plants), dig.notes)
        self._ground = _sum(ground.encode(), _bytes(shared))
        self.dig = replace(
            dig,
            project=replace(dig.project, counts=_Counts(self, dig.project.counts)),
            findings=_Findings(self, dig.findings),  # type: ignore[arg-type]
            claims=_Claims(self, dig.claims),  # type: ignore[arg-type]
            surroundings=_Asked(self, "surroundings", dig.surroundings),  # type: ignore[arg-type]
            strays=_Asked(self, "strays", dig.strays),  # type: ignore[arg-type]
        )

    def begin(self) -> None:
        """A narrative begins: nothing was asked yet."""
        self.asked, self.is_open = {}, False

    def end(self) -> None:
        """Nothing more is told. The dig is let go, so that no ring of values outlives the telling."""
        del self.dig

    def sum_of(self, asked: Iterable[Question]) -> str:
        """A sum over the ground, some questions and their answers as they are now."""
        parts = [self._ground]
        for question in asked:
            if question not in self._sums:
                self._sums[question] = self._answer(question)
            parts += (_bytes(question), self._sums[question])
        return _sum(*parts).hex()

    def about(self, subject: Subject) -> None:
        """All that was found and is claimed of a subject, and what would firm that up, is asked for."""
        self.asked[_ABOUT, subject.level, str(subject.id)] = None

    def claim(self, ref: str) -> None:
        """A claim is asked for by its id."""
        subject = self._subjects.get(ref.partition("/")[0])
        if subject is None:
            self.is_open = True
        else:
            self.about(subject)

    def _answer(self, question: Question) -> bytes:
        whom, name, *of = question
        if whom != _ABOUT:
            asked = getattr(getattr(self._plain, whom), name)
            return _sum(_bytes(asked(*of) if callable(asked) else asked))
        subject = Subject(level=name, id=of[0])  # type: ignore[arg-type]
        return sum_about(self._plain.findings, self._plain.claims, subject)


_KNOWN = LastAsked()
"""All audiences are told of the same dig, and all their pages show it."""


def sum_about(findings: Findings, claims: Claims, subject: Subject) -> bytes:
    """A sum over all that was found and is claimed of a subject, and what would firm that up."""
    known = _KNOWN.about(findings, claims)
    if subject not in known:
        summed = _bytes(claims.about(subject)) if claims.sums is None else claims.sums.about(subject)
        known[subject] = _sum(sum_found(findings.subjects.get(subject)), _bytes(claims.steps.get(subject)), summed)
    return known[subject]  # type: ignore[no-any-return]


def sum_found(found: SubjectFindings | None) -> bytes:
    """A sum over all that was found in a subject, piece by piece: with their places, those of a dig fill a book."""
    return _sum_of(
        () if found is None else (part for one in fields(found) for part in _parts(getattr(found, one.name)))
    )


def _parts(said: object) -> Iterator[bytes]:
    """Entries of a tuple or mapping one by one, with their number; anything else whole."""
    if isinstance(said, (tuple, Mapping)):
        yield _bytes(len(said))
        yield from map(_bytes, said.items() if isinstance(said, Mapping) else said)
    else:
        yield _bytes(said)


class _Watched(Mapping[Key, Value]):
    """A mapping of which it is noted what is looked up; whoever walks through it asks for everything."""

    def __init__(self, followed: Followed, plain: Mapping[Key, Value], note: Callable[[Key], None]) -> None:
        self._followed, self._plain, self._note = followed, plain, note

    def __getitem__(self, key: Key) -> Value:
        self._note(key)
        return self._plain[key]

    def __contains__(self, key: object) -> bool:
        self._note(key)  # type: ignore[arg-type]
        return key in self._plain

    def __iter__(self) -> Iterator[Key]:
        self._followed.is_open = True
        return iter(self._plain)

    def __len__(self) -> int:
        self._followed.is_open = True
        return len(self._plain)


class _Open:
    """Whatever is asked for that is not said here cannot be followed."""

    def __init__(self, followed: Followed, plain: object) -> None:
        self._followed, self._plain = followed, plain

    def __getattr__(self, name: str) -> Any:
        self._followed.is_open = True
        return getattr(self._plain, name)


class _Findings(_Open):
    def __init__(self, followed: Followed, plain: Findings) -> None:
        super().__init__(followed, plain)
        self.subjects = _Watched(followed, plain.subjects, followed.about)

    def of(self, subject: Subject) -> SubjectFindings:
        return self.subjects[subject]


class _Claims(_Open):
    def __init__(self, followed: Followed, plain: Claims) -> None:
        super().__init__(followed, plain)
        self._claims = plain
        self.steps = _Watched(followed, plain.steps, followed.about)
        self.by_id = _Watched(followed, plain.by_id, followed.claim)
        self.by_subject = _Watched(followed, plain.by_subject, followed.about)

    def about(self, subject: Subject) -> tuple[Claim, ...]:
        self._followed.about(subject)
        return self._claims.about(subject)

    def holding(self, subject: Subject) -> tuple[Claim, ...]:
        self._followed.about(subject)
        return self._claims.holding(subject)

    def find(self, subject: Subject, statement: str) -> Claim | None:
        self._followed.about(subject)
        return self._claims.find(subject, statement)


class _Asked:
    """Questions are noted with what they are of, in words; their answers say no more than is asked."""

    def __init__(self, followed: Followed, whom: str, plain: Surroundings | Strays) -> None:
        self._followed, self._whom, self._plain = followed, whom, plain

    def __getattr__(self, name: str) -> Any:
        value = getattr(self._plain, name)
        if callable(value):
            return lambda *of: self._asked(name, of, value)
        self._followed.asked[self._whom, name] = None
        return value

    def _asked(self, name: str, of: tuple[str, ...], ask: Callable[..., object]) -> object:
        self._followed.asked[(self._whom, name, *of)] = None
        return ask(*of)


class _Counts(tuple[CountRow, ...]):
    """Rows of the sheets: who looks at them looks at all."""

    _followed: Followed

    def __new__(cls, followed: Followed, rows: Iterable[CountRow]) -> _Counts:
        made = super().__new__(cls, rows)
        made._followed = followed
        return made

    def __iter__(self) -> Iterator[CountRow]:
        self._followed.is_open = True
        return super().__iter__()

    def __getitem__(self, at: Any) -> Any:
        self._followed.is_open = True
        return super().__getitem__(at)

    def __len__(self) -> int:
        self._followed.is_open = True
        return super().__len__()


def _bytes(said: object) -> bytes:
    return repr(said).encode("utf-8", "surrogatepass")


def _sum(*said: bytes) -> bytes:
    return _sum_of(said)


def _sum_of(said: Iterable[bytes]) -> bytes:
    made = hashlib.blake2b(digest_size=16)
    for part in said:
        made.update(len(part).to_bytes(8))
        made.update(part)
    return made.digest()
