"""What the words of certainty ask, what holds them down, and what counts drawn anew at random are."""

from __future__ import annotations

from collections.abc import Iterator

from narrate.documents.blocks import Block, Heading, Paragraph
from narrate.documents.inline import literal
from narrate.model.claims import DRAWS, GRADES, TOLD_AS_CLOSE
from narrate.model.edition import Edition
from narrate.model.rules import WEIGHTS

ASKS = {
    "consistent with": "the remains agree with the reading, but would agree with others; one weak argument is enough",
    "suggests": "the remains speak for the reading; one moderate argument, or several weak ones",
    "supports": "the remains speak clearly for it; one strong argument, or a moderate and a weak one",
    "strongly supports": "several arguments agree, as two moderate ones do, and next to nothing stands against them",
}
"""What each grade asks under the weights of the packs (judgement of the makers)."""


def certainty(edition: Edition) -> Iterator[Block]:
    """The grades in order, the limits by the grade at which they hold a reading, and the draws."""
    weights = "; ".join(f"{name} {edition.packs.weights[name]:g}" for name in WEIGHTS if name in edition.packs.weights)
    yield Heading(level=3, text="Words of certainty")
    yield Paragraph(
        text="How firmly remains speak for a reading is said in four grades. Every argument that holds adds its weight "
        f"in log-odds ({weights}) for the reading or against it to a low start; the same remains are not counted twice "
        "on one side. The sum, put as support from 0 to 1, weighs evidence by convention and is no probability."
    )
    for grade, least in GRADES:
        yield Paragraph(text=f"'{grade}' (support from {least:.2f}): {ASKS[grade]}", kind="item")
    held = _held_down(edition)
    if held:
        yield Paragraph(
            text=f"Whatever the sum, circumstances hold a reading down: {held}. Readings of the state of a deposit "
            "(disturbance, later remains, the age of uncharred seeds) and of the work to do are not held down, for they "
            "are cautions themselves."
        )
    yield Paragraph(
        text=f"'Counts drawn anew at random' means that every count was replaced {DRAWS:,} times by a number drawn "
        "about it as chance would have it (Poisson), and that for contexts, phases and the dig the samples were drawn "
        "anew as well, with replacement; each time all was judged again. The share of draws that uphold a reading says "
        f"how much of it hangs on the luck of the sample. Where it is below {TOLD_AS_CLOSE:.0%}, what is supported is "
        "told with that share, what is suggested is told as a hint, and what the remains are merely consistent with is "
        "left out. Those cautions are told whatever it is, and so are changes, which are tested otherwise."
    )
    yield Paragraph(
        text="How often readings of each grade were right was tried on simulated digs whose truth is known; this track "
        f"record comes with narrate {edition.version} and can be made anew by its command 'check'."
    )


def _held_down(edition: Edition) -> str:
    """'at 'suggests' where the deposit is tertiary or …; at 'supports' where …', the lowest grade first."""
    by_grade: dict[str, list[str]] = {}
    for limit in edition.packs.limits:
        says = " ".join(limit.says.split())
        if limit.grade in dict(GRADES) and says not in by_grade.setdefault(limit.grade, []):
            by_grade[limit.grade].append(says)
    parts = []
    for grade, _ in GRADES:
        told = [one for one in by_grade.get(grade, ()) if f"{one} besides wood" not in by_grade[grade]]
        if told:
            parts.append(f"at '{grade}' where {'; or '.join(literal(one) for one in told)}")
    return ". ".join(part[:1].upper() + part[1:] if i else part for i, part in enumerate(parts))
