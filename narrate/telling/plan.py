"""What matters for a subject and an audience: which claims are told, together with which, in what order."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Literal

from narrate.model.claims import GRADE_NAMES, TOLD_AS_CLOSE, Claim
from narrate.model.findings import Tally
from narrate.model.rules import Statement
from narrate.telling.behind import remains_behind
from narrate.telling.foods_once import is_told_with_another_food
from narrate.telling.page import Page

THEMES: tuple[tuple[str, tuple[str, ...]], ...] = (
    ("deposit", ("deposit", "integrity")),
    ("fuel", ("fuel",)),
    ("food", ("food", "processing")),
    ("field", ("field",)),
    ("season", ("season",)),
    ("change", ("change",)),
)
"""Paragraphs and the questions that they answer. The audience's plan orders them."""

FOODS = (
    "food.maize", "food.cereal", "food.pulse", "food.oil-seed", "food.nut", "food.fruit", "food.small-seed",
    "food.native-seed-crops",
)  # fmt: skip
"""Statements that some plant was food: told by the names of the plants."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Reading:
    """A claim that is told, with its statement and the remains behind it."""

    claim: Claim
    statement: Statement
    behind: tuple[Tally, ...]

    @property
    def is_food(self) -> bool:
        return self.claim.statement in FOODS and bool(self.behind)

    @property
    def rank(self) -> int:
        return GRADE_NAMES.index(self.claim.grade)


def readings(page: Page, claims: Iterable[Claim]) -> list[Reading]:
    """Claims that hold and may be told, firmest first."""
    listed = list(claims)
    if any(claim.statement == TOO_FEW and claim.verdict == "holds" for claim in listed):
        # Counts too small to be read on their own carry nothing but what concerns the counts.
        listed = [claim for claim in listed if claim.question in ("integrity", "work")]
    listed = [claim for claim in listed if not is_told_with_another_food(page.dig, claim)]
    told = [_reading(page, claim) for claim in listed if is_told(page, claim)]
    return sorted((r for r in told if r is not None), key=lambda r: (-r.rank, -r.claim.support, r.claim.id))


def is_told(page: Page, claim: Claim) -> bool:
    """Whether a claim is put to this audience at all."""
    if claim.verdict != "holds" or claim.grade == "not supported" or claim.id in page.told or claim.id in page.aside:
        return False
    return claim.statement in page.dig.packs.statements


def reading_of(page: Page, statement: str) -> Reading | None:
    """The reading of one statement for the page's subject, if it holds."""
    claim = page.dig.claims.find(page.subject, statement)
    return _reading(page, claim) if claim is not None and is_told(page, claim) else None


def reading_whether_told(page: Page, claim: Claim) -> Reading | None:
    """A claim as a reading, told already or not."""
    return _reading(page, claim)


def ordered_themes(page: Page) -> list[tuple[str, tuple[str, ...]]]:
    """Themes in the order of the audience's plan; a theme that the plan leaves out is left out."""
    place = {question: i for i, question in enumerate(page.audience.plan)}
    known = [(theme, tuple(q for q in questions if q in place)) for theme, questions in THEMES]
    kept = [(theme, questions) for theme, questions in known if questions]
    return sorted(kept, key=lambda item: min(place[q] for q in item[1]))


def rivals_of(page: Page, reading: Reading) -> list[Reading]:
    """Rival readings that also hold for the subject, firmest first."""
    found = [reading_of(page, name) for name in dict.fromkeys((*reading.claim.alternatives, *reading.statement.rivals))]
    competing = [r for r in found if r is not None and competes(reading, r)]
    return sorted(competing, key=lambda r: (-r.rank, -r.claim.support))


def competes(one: Reading, other: Reading) -> bool:
    """
    Whether two rival readings explain the same remains.

    Wood and cobs may both be fuel, and nothing is to be chosen between them; cobs as fuel and waste from shelling
    are two accounts of the same cobs.
    """
    if STORED_ONLY in (one.claim.statement, other.claim.statement):
        # Told as a caution on seasons, not as a rival of one.
        return False
    if not one.behind or not other.behind:
        return one.claim.question == other.claim.question and not one.behind and not other.behind
    return bool({(t.taxon, t.part) for t in one.behind} & {(t.taxon, t.part) for t in other.behind})


def by_grade(items: Sequence[Reading]) -> list[list[Reading]]:
    """Readings of the same grade together, firmest first."""
    groups: dict[str, list[Reading]] = {}
    for item in items:
        groups.setdefault(item.claim.grade, []).append(item)
    return sorted(groups.values(), key=lambda group: -group[0].rank)


UNSETTLED = TOLD_AS_CLOSE
"""A verdict that stays in less than this share of resampled counts is told as unsettled (judgement of the makers)."""
POOR = 50
"""Items besides wood below which what they are merely consistent with is not told (judgement of the makers)."""
TOO_FEW = "integrity.too-few"
"""The statement that a subject's remains are too few to be read on their own."""


NOT_DRAWN = ("integrity", "work", "change")
"""Questions whose readings no draw of the counts unsettles: what was seen, what to do, what was tested."""
STORED_ONLY = "season.stored-only"
"""The statement that all the plants of a subject keep: a caution on its season, told as that."""
_SUGGESTS = GRADE_NAMES.index("suggests")

Standing = Literal["reading", "hint", "left out"]


def standing(claim: Claim) -> Standing:
    """
    How a claim that holds is told, to every audience and at every level: by its grade first, then by its stability.

    What the remains support, or support strongly, is a reading. What they suggest is a reading where at least
    `UNSETTLED` of the draws uphold it, and else a hint. What they are merely consistent with is a reading where as many
    do, and else left out, for nearly everything is consistent with a few finds.
    """
    if claim.question in NOT_DRAWN or claim.statement == STORED_ONLY:
        return "reading"
    if claim.stability is None or claim.stability >= UNSETTLED:
        return "reading"
    grade = GRADE_NAMES.index(claim.grade)
    return "reading" if grade > _SUGGESTS else "hint" if grade == _SUGGESTS else "left out"


def is_hint(claim: Claim) -> bool:
    """Whether a claim is told as a hint alone, so that nothing else is built on it."""
    return standing(claim) == "hint"


def by_standing(page: Page, held: Sequence[Reading]) -> tuple[list[Reading], list[Reading]]:
    """What is told as a reading and what as a hint; what is left out is set aside for the page."""
    page.aside.update(r.claim.id for r in held if standing(r.claim) != "reading")
    firm = [r for r in held if standing(r.claim) == "reading"]
    return firm, [r for r in held if is_hint(r.claim)]


OF_ONE_READING = ("names.", "verdict.")
"""Limits that come with the identifications behind one reading, or with its close verdict: told with it."""

OF_THE_METHOD = "rules."
"""Limits that come with the rules and not with a deposit: told once, for the whole dig."""


def shared_limits(page: Page, items: Sequence[Reading]) -> list[tuple[str, str, tuple[str, ...]]]:
    """Limits in force: (what is the matter, what would lift it, claims it holds down), widest first."""
    held: dict[str, list[str]] = {}
    lifts: dict[str, str] = {}
    for item in items:
        for limit in item.claim.limits:
            if limit.limit.startswith(OF_THE_METHOD) and page.subject.level != "site":
                continue
            if limit.limit.startswith(OF_ONE_READING):
                continue
            says = next(
                (known.says for known in page.dig.packs.limits if known.id == limit.limit),
                limit.says.split(": grade")[0],
            )
            held.setdefault(says, []).append(item.claim.id)
            lifts[says] = limit.lifts
    ordered = sorted(held.items(), key=lambda pair: (-len(pair[1]), pair[0]))
    return [(says, lifts[says], tuple(ids)) for says, ids in ordered]


def _reading(page: Page, claim: Claim) -> Reading | None:
    statement = page.dig.packs.statements.get(claim.statement)
    if statement is None:
        return None
    tallies = [t for t in page.found.tallies if t.condition in page.dig.ancient]
    return Reading(claim=claim, statement=statement, behind=remains_behind(claim, page.dig.packs, tallies))
