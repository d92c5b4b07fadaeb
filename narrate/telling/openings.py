"""What stays open where a reader would expect an answer, why, and what would decide it."""

from __future__ import annotations

import re
from collections.abc import Sequence

from narrate.model.claims import Claim
from narrate.model.ids import ContextId
from narrate.model.narrative import Sentence
from narrate.telling import english
from narrate.telling.finds import total
from narrate.telling.frames import noun_of
from narrate.telling.fruits import chief_finds, least_fruits
from narrate.telling.old_finds import plant_tallies
from narrate.telling.page import Page, claims_by_question
from narrate.telling.plan import Reading, shared_limits

MATTERS = {
    "fuel": ("what was burned as fuel", "what people burned"),
    "food": ("whether any of these plants was food", "which of these plants people used as food"),
    "season": ("in which months the plants were gathered", "at what time of year people gathered the plants"),
    "field": ("where the crops were grown", "what the fields were like"),
}
"""Questions as 'whether …' clauses: for specialists, for visitors."""

FEW = 30
"""Below this many items counts settle little (judgement of the makers)."""


def open_sentences(page: Page, *, is_thermal: bool, held: Sequence[Reading]) -> list[Sentence]:
    """Questions that a reader would expect to be answered and that the remains leave open, in one sentence."""
    if any(item.claim.statement == "integrity.too-few" for item in held):
        return []
    undecided = _undecided(page, is_thermal=is_thermal, held=held)
    if not undecided:
        return []
    refs = [claim.id for _, claims in undecided for claim in claims[:3]]
    matters = page.listed([MATTERS[question][1 if page.is_plain else 0] for question, _ in undecided], word="or")
    items = total(plant_tallies(page))
    if page.is_plain:
        return page.say(
            refs,
            f"we cannot say {matters}",
            f"these finds do not tell us {matters}",
        )
    why = f"with only {page.count(items, 'item', 'items')} besides wood, " if items < FEW else ""
    return page.say(
        refs,
        f"{why}the remains do not say {matters}",
        f"{why}it stays open {matters}",
        f"{why}it cannot be said {matters}",
    )


def limit_sentences(page: Page, held: Sequence[Reading]) -> list[Sentence]:
    """What holds the readings down, once for all of them, and what would lift it."""
    limits = shared_limits(page, held)
    if not limits or page.is_plain:
        return []
    says, lifts, claims = limits[0]
    caps = [limit.grade for item in held for limit in item.claim.limits if item.claim.id in claims]
    lifted = f"; {with_what(lifts)}" if lifts and not is_out_of_soil(page, lifts) else ""
    which, be = _which(page, held, claims)
    few = few_behind(page, held, says, claims)
    if few:
        # The reading's own items are the reason, and no general word is needed.
        return page.say(claims, f"{few} put no higher than “{caps[0]}”")
    reason = with_the(says)
    if page.has_told(says):
        return page.say(claims, f"for that reason {which} {be} put no higher than “{caps[0]}”{lifted}")
    return page.say(
        claims,
        f"because {reason}, {which} {be} put no higher than “{caps[0]}”{lifted}",
        f"{reason}, so that {which} {be} put no higher than “{caps[0]}”{lifted}",
    )


FEW_BEHIND = "what speaks for it most rests on fewer than 10 items, or fruits where one holds many seeds"
"""The limit of readings of few items, as the pack words it."""

NAMED_AT_MOST = 3
"""Readings that are named where a limit holds them; of more their number is told."""


def _which(page: Page, held: Sequence[Reading], claims: Sequence[str]) -> tuple[str, str]:
    """The readings that a limit holds down, with their verb: all of the subject, or each by its name."""
    whole = {"site": "the dig's readings", "phase": "the phase's readings"}
    if page.subject.level != "context":
        return whole.get(page.subject.level, "the readings here"), "are"
    of = [r for r in held if r.claim.id in claims]
    if len(of) == len([r for r in held if r.claim.question != "integrity"]):
        return ("the readings here", "are") if len(of) > 1 else ("the one reading here", "is")
    if len(of) > NAMED_AT_MOST:
        return f"{page.count(len(of))} of the readings here", "are"
    return noun_of(page, of, in_short=True), "is" if len(of) == 1 else "are"


def few_behind(page: Page, held: Sequence[Reading], says: str, claims: Sequence[str]) -> str:
    """
    'Gathering in autumn rests chiefly on eight items and is', of a reading or two whose few items hold them down; else
    nothing.
    """
    of = [r for r in held if r.claim.id in claims]
    if says != FEW_BEHIND or not of or len(of) > FEW_NAMED:
        return ""
    rests = {of[0].claim.id: "rests chiefly "}
    parts = [f"{noun_of(page, [r])} {rests.get(r.claim.id, '')}on {_resting_on(page, r.claim)}" for r in of]
    return f"{', and '.join(parts)} and is" if len(of) == 1 else f"{', and '.join(parts)}: both are"


FEW_NAMED = 2
"""Readings whose few items are told one by one."""


def _resting_on(page: Page, claim: Claim) -> str:
    """'four items', '10 seeds (perhaps of two fruits)'."""
    tallies = chief_finds(page, claim)
    items = total(tallies)
    fruits = least_fruits(page, tallies) if claim.question == "season" else items
    if fruits == items:
        return page.count(items, "item", "items")
    if page.has_told(f"hese {page.count(items)} seeds may be of no more than"):
        return page.count(items, "seed", "seeds")
    return f"{page.count(items, 'seed', 'seeds')} (perhaps of {page.count(fruits, 'fruit', 'fruits')})"


def is_out_of_soil(page: Page, lifts: str) -> bool:
    """Whether a second sample is advised of a context of which a note says that all of the deposit was taken."""
    if "second sample" not in lifts or page.subject.level != "context":
        return False
    samples = page.dig.project.samples_of(ContextId(page.subject.id))
    return any(_ALL_TAKEN.search(sample.note) for sample in samples)


_ALL_TAKEN = re.compile(
    r"\b(?:the )?(?:whole|all|rest) of (?:the|this|its) (?:lens|fill|deposit|unit|layer|context|feature)\b"
    r"|\b(?:whole|entire|complete) (?:lens|fill|deposit|unit|layer|context|feature)\b"
    r"|\b(?:lens|fill|deposit|unit|layer|context|feature) (?:was )?(?:taken|sampled|floated) (?:whole|entire|complete)",
    re.IGNORECASE,
)

_RECORDED = ("tertiary", "disturbed")


def with_what(lifts: str) -> str:
    """'remains from a sealed deposit would allow more'."""
    text = english.lowered(lifts.strip().rstrip("."))
    # A lift that ends in a relative clause needs its second comma.
    comma = "," if ", where " in text or ", which " in text else ""
    return f"{text}{comma} would allow more"


def with_the(says: str) -> str:
    """
    A limit's words as a clause.

    >>> with_the("deposit is tertiary"), with_the("fewer than 20 items")
    ('the record calls the deposit tertiary', 'there are fewer than 20 items')
    """
    text = english.lowered(says.strip().rstrip("."))
    words = text.split()
    if words[-1] in _RECORDED and words[-2] == "is":
        # What the record says of a deposit is told as that.
        return f"the record calls the {words[0]} {words[-1]}"
    if words[0] in ("the", "a", "an", "no", "only", "all", "one", "some", "most", "there", "it", "what"):
        verbs = {"is", "are", "was", "were", "rests", "rest", "has", "have", "hold", "holds"}
        return text if verbs & set(words) else f"there are {text}"
    if {"is", "are", "was", "were", "rests"} & set(words):
        return f"the {text}"
    return f"there are {text}"


def _undecided(page: Page, *, is_thermal: bool, held: Sequence[Reading]) -> list[tuple[str, list[Claim]]]:
    by_question = claims_by_question(page.dig.claims.about(page.subject))
    answered = {item.claim.question for item in held}
    has_plants = any(t.counted for t in plant_tallies(page))
    expected = {
        "fuel": is_thermal,
        "food": has_plants and "fuel" not in answered,
        "season": "food" in answered,
    }
    found = []
    for question, is_expected in expected.items():
        unsure = [c for c in by_question.get(question, []) if c.verdict == "cannot tell"]
        if is_expected and question not in answered and unsure and question in page.audience.plan:
            found.append((question, unsure))
    return found
