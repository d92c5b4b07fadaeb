"""The page being written: its audience, what it has said so far, and how a sentence is chosen among wordings."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from narrate.model.audiences import Audience
from narrate.model.claims import Claim, Claims
from narrate.model.counts import CountRow
from narrate.model.findings import Findings, SubjectFindings
from narrate.model.ids import SampleId, Subject, TaxonId
from narrate.model.measurement import Measurement
from narrate.model.narrative import Sentence
from narrate.model.packs import Packs
from narrate.model.project import Project
from narrate.telling import english, manner, numbers
from narrate.telling.names import Names
from narrate.telling.strays import Strays
from narrate.telling.surroundings import Surroundings

if TYPE_CHECKING:
    from narrate.model.signs import Signs
    from narrate.telling.observations import Noted

OPENINGS_AT_MOST = 3
"""How many sentences of one page may open with the same two words."""

LINKS = ("in addition", "besides this", "beyond that", "at the same time", "apart from this", "further")
PLAIN_LINKS = ("besides", "what is more", "on top of that", "then again", "beyond that", "as well as this")
"""Link words for the rare sentence that would be the fourth to open alike."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Dig:
    """All that is known of the dig, as telling receives it."""

    project: Project
    packs: Packs
    findings: Findings
    claims: Claims
    audience: Audience
    keys: Mapping[Subject, str]
    """The word that stands for each subject in references."""
    ancient: frozenset[str]
    """Conditions in which remains are taken as old under the project's preservation."""
    surroundings: Surroundings
    strays: Strays
    notes: Mapping[SampleId, tuple[CountRow, ...]] = field(default_factory=dict)
    """Rows of the count sheets that somebody wrote a note beside, by sample."""
    lone_plants: frozenset[str] = frozenset()
    """Genera on which alone some reading of a phase or the dig rests."""
    signs: Signs | None = None
    """What is looked for in notes; None where the audience is told none."""

    def found(self, subject: Subject) -> SubjectFindings | None:
        return self.findings.subjects.get(subject)

    def ref_of(self, subject: Subject) -> str:
        """The subject as claims and tallies name it, such as 'C12'."""
        return self.keys.get(subject, subject.id)

    def measure_ref(self, subject: Subject, name: str) -> str:
        return f"{self.ref_of(subject)}/measure.{name}"

    def record_ref(self, subject: Subject) -> str:
        return f"{self.ref_of(subject)}/record"


@dataclass(frozen=True, slots=True, kw_only=True)
class Draw:
    """A doubt by counts drawn anew, as the page told it."""

    sentence: Sentence
    pieces: tuple[str, ...]
    """'the handling of tobacco in 64% of cases', one for each reading; of a hint 'the handling of tobacco (64%)'."""
    is_hint: bool = False


@dataclass(slots=True, kw_only=True)
class Page:
    """One narrative while it is written. Lives for one subject and is thrown away."""

    dig: Dig
    subject: Subject
    position: int
    """A number taken from the subject's id; turns which wording is tried first."""
    names: Names
    openings: Counter[str] = field(default_factory=Counter)
    said: set[str] = field(default_factory=set)
    reasons_told: set[str] = field(default_factory=set)
    last: str = ""
    """The sentence told last."""
    here: list[str] = field(default_factory=list)
    """Sentences of the theme being told, for referring back."""
    told: set[str] = field(default_factory=set)
    """Claims that the page has dealt with."""
    aside: set[str] = field(default_factory=set)
    """Claims that hold and are not told as readings of the page: told of its phases instead, or too slight for it."""
    draws: list[Draw] = field(default_factory=list)
    """Doubts by counts drawn anew that the page has told, so that several can be put into one sentence."""
    doubts: int = 0
    """Close verdicts that the page has told, so that each next one is worded otherwise."""
    noted: tuple[Noted, ...] = ()
    """What was noted of the context and its finds."""
    answered: set[str] = field(default_factory=set)
    """Claims with which a note of the field or laboratory agrees."""
    cautions: int = 0
    """Cautions in general words that the page has given."""
    cited: set[str] = field(default_factory=set)
    """Works that the page has cited."""
    rivals: set[frozenset[str]] = field(default_factory=set)
    """Pairs of claims that the page has set against each other."""
    places_last: str = ""
    """Three places or more that the page named last, so that they can be named in short again."""
    cobs_are_told: bool = False
    """Whether the page has said what its cob parts are made of."""
    of_note: frozenset[TaxonId] = frozenset()
    """Plants that are named among the finds, however few they are."""
    foods: dict[str, tuple[str, ...]] = field(default_factory=dict)
    """Plants that each food reading of the page is told by."""

    @property
    def audience(self) -> Audience:
        return self.dig.audience

    @property
    def is_plain(self) -> bool:
        return self.audience.register == "plain"

    @property
    def is_review(self) -> bool:
        return self.audience.shows_doubts_first

    @property
    def found(self) -> SubjectFindings:
        found = self.dig.found(self.subject)
        return found or SubjectFindings(subject=self.subject, samples=0, samples_with_remains=0, litres=None)

    def measure(self, name: str) -> Measurement | None:
        """A measurement that has a value; else None."""
        measurement = self.found.measurements.get(name)
        return measurement if measurement is not None and measurement.value is not None else None

    def ref(self, name: str) -> str:
        return self.dig.measure_ref(self.subject, name)

    @property
    def record(self) -> str:
        return self.dig.record_ref(self.subject)

    def listed(self, items: Iterable[str], *, word: str = "and") -> str:
        return english.listed(items, oxford=self.names.has_oxford, word=word)

    def count(self, number: int, singular: str = "", plural: str = "") -> str:
        """'three samples', '12 samples', '1,402 items'."""
        text = numbers.count(number, thousands=manner.thousands(self.audience))
        return f"{text} {english.agreed(number, singular, plural)}" if singular else text

    def about(self, number: float) -> str:
        """A count for visitors: 'about 1,400'."""
        return numbers.about(number, thousands=manner.thousands(self.audience))

    @property
    def litre(self) -> str:
        """The unit of volume as this audience writes it, in the singular."""
        return manner.litre(self.audience)

    @property
    def litre_word(self) -> str:
        """The unit where only a word will do: 'litre for litre'."""
        return "liter" if self.litre == "liter" else "litre"

    def figure(self, measurement: Measurement) -> str:
        return numbers.measured(measurement, thousands=manner.thousands(self.audience))

    def interval(self, measurement: Measurement, *, scale: float = 1.0) -> str:
        """The interval where this audience is shown intervals; else nothing."""
        if not self.audience.shows_intervals:
            return ""
        mark, dash = manner.thousands(self.audience), manner.dash(self.audience)
        return numbers.interval(measurement, scale=scale, thousands=mark, dash=dash)

    def in_own_words(self, text: str) -> str:
        """
        A text of the packs with the phrases that this audience puts otherwise: words named 'for <phrase>'.

        Several wordings of a phrase are parted by ' | ' and turn with the page's position.
        """
        for name, phrases in self.audience.words.items():
            if name.startswith("for ") and name.removeprefix("for ") in text:
                turns = phrases.split(" | ")
                text = text.replace(name.removeprefix("for "), turns[self.position % len(turns)])
        return manner.in_units(text, self.audience)

    def turns(self, name: str, **filled: str) -> list[str]:
        """The audience's wordings of one name, parted by ' | ', with their holes filled."""
        wordings = self.audience.words.get(name, "").split(" | ")
        for hole, text in filled.items():
            wordings = [wording.replace(f"{{{hole}}}", text) for wording in wordings]
        return wordings

    def say(self, refs: Iterable[str], *wordings: str) -> list[Sentence]:
        """
        The wording whose opening is least worn on this page, as one sentence; none if it was said already.

        Which wording is tried first turns with the subject's position, never by chance.
        """
        named = tuple(dict.fromkeys(refs))
        if not named:
            raise ValueError(f"a sentence about {self.subject.id} rests on nothing: {wordings[0]!r}")
        texts = [english.finished(wording) for wording in wordings if wording]
        if not texts or any(text in self.said for text in texts):
            return []
        turn = self.position % len(texts)
        ordered = texts[turn:] + texts[:turn]
        chosen = min(ordered, key=lambda text: (text[0].isdecimal(), *self._wear(text)))
        if chosen[0].isdecimal():
            chosen = english.capitalised(numbers.opening_in_words(chosen))
        chosen = self._opened_afresh(chosen)
        self._note(chosen)
        return [Sentence(text=chosen, refs=named)]

    def fresh(self, *wordings: str) -> list[str]:
        """Those of some wordings that the page has not used."""
        return [wording for wording in wordings if english.finished(wording) not in self.said]

    def has_told(self, word: str) -> bool:
        """Whether some sentence of the page has used a word or phrase already."""
        return any(word.lower() in text.lower() for text in self.said)

    def worn(self, text: str) -> bool:
        """Whether one more sentence opening like this would be too many."""
        return self.openings[opening(english.finished(text))] >= OPENINGS_AT_MOST

    @property
    def links(self) -> tuple[str, ...]:
        """Words that open a sentence which would else be one of too many that open alike."""
        if self.audience.language != "en":
            return self.dig.packs.languages[self.audience.language].sentences.get("links", ())
        return PLAIN_LINKS if self.is_plain else LINKS

    def _opened_afresh(self, text: str) -> str:
        """The sentence itself, or with a link word in front where its opening is worn out."""
        for link in ("", *self.links):
            linked = f"{link}, {english.lowered(text)}" if link else text
            if self.openings[opening(linked)] < OPENINGS_AT_MOST:
                return english.capitalised(linked)
        return text

    def _wear(self, text: str) -> tuple[int, int]:
        return (self.openings[opening(text)], self.openings[opening(text).split()[0]] if opening(text) else 0)

    def _note(self, text: str) -> None:
        self.said.add(text)
        self.here.append(text)
        self.last = text
        start = opening(text)
        self.openings[start] += 1
        if " " in start:
            self.openings[start.split()[0]] += 1


def opening(text: str) -> str:
    """
    The first two words of a sentence, small, without marks.

    >>> opening("The remains *support* it."), opening("C12 held nothing.")
    ('the remains', 'c12 held')
    """
    return " ".join(_NO_LETTER.sub("", word).lower() for word in text.split(maxsplit=2)[:2])


_NO_LETTER = re.compile(r"[^\w\s-]")


def claims_by_question(claims: Iterable[Claim]) -> dict[str, list[Claim]]:
    """Claims by question, in the order given."""
    grouped: dict[str, list[Claim]] = {}
    for claim in claims:
        grouped.setdefault(claim.question, []).append(claim)
    return grouped
