"""Readings that another draw of the counts would not uphold."""

from __future__ import annotations

from collections.abc import Sequence

from narrate.model.ids import ContextId, Subject
from narrate.model.narrative import Sentence
from narrate.telling import english, numbers
from narrate.telling.frames import noun_of, that_clauses
from narrate.telling.page import Draw, Page
from narrate.telling.plan import UNSETTLED, Reading


def unsettled_sentences(page: Page, items: Sequence[Reading], *, is_alone: bool) -> list[Sentence]:
    """
    Which readings of a theme do not stand when the counts are drawn again, and which rest on uncertain names alone.

    is_alone: whether the one sentence before tells one reading and nothing else, so that 'it' can mean no other.
    """
    sentences: list[Sentence] = []
    for item in items:
        for limit in item.claim.limits:
            if limit.limit.startswith("names.") and not page.is_plain:
                says = limit.says.split(": grade")[0].replace("behind it", "behind this")
                what = noun_of(page, [item]) if not is_alone else "it"
                sentences += page.say([item.claim.id], f"as {says}, {what} goes no further than “{limit.grade}”")
    shaky = [item for item in items if is_unsettled(item)]
    shaky.sort(key=lambda item: (item.claim.stability or 0.0, item.claim.id))
    if shaky:
        doubted = _shaky_for_visitors if page.is_plain else _shaky
        sentences += doubted(page, shaky, by_name=not is_alone)
    return sentences


NEAR = 2
"""Items whose coming or going would unsettle a reading so easily that every specialist is told (of the makers)."""


def edge_sentences(page: Page, items: Sequence[Reading]) -> list[Sentence]:
    """'Two more maize kernels would unsettle maize cobs as fuel': of readings that lie so near their edge."""
    if page.is_plain or page.is_review or page.subject.level != "context":
        return []
    near = [r for r in items if r.claim.turnings and abs(r.claim.turnings[0].items) <= NEAR and r.rank > 1]
    sentences: list[Sentence] = []
    for item in [r for r in near if not is_unsettled(r)][:1]:
        turning = item.claim.turnings[0]
        says = english.literal(turning.says)
        comma = "," if ", " in says else ""
        unsorted = _unsorted_heavy(page) if turning.items > 0 else []
        wait = english.agreed(len(unsorted), "waits", "wait")
        sink = f"; the heavy fraction of {page.listed(unsorted)}, in which such remains end up, {wait} to be sorted"
        said = f"{says}{comma} would unsettle {noun_of(page, [item], in_short=True)}{sink if unsorted else ''}"
        refs = [page.dig.record_ref(Subject(level="sample", id=id)) for id in unsorted]
        sentences += page.say([item.claim.id, *refs], said)
    return sentences


def _unsorted_heavy(page: Page) -> list[str]:
    """Samples of the context whose heavy fraction was kept and not sorted, as far as that is on record."""
    samples = page.dig.project.samples_of(ContextId(page.subject.id))
    return [s.id for s in samples if s.heavy_fraction is not None and s.heavy_fraction.sorted is False]


def is_unsettled(item: Reading) -> bool:
    """Whether a reading does not stand when the counts are drawn again."""
    return item.claim.stability is not None and item.claim.stability < UNSETTLED


def _shaky_for_visitors(page: Page, shaky: Sequence[Reading], *, by_name: bool) -> list[Sentence]:
    refs = [item.claim.id for item in shaky]
    short = page.fresh(*page.turns("close"))
    if not by_name and short:
        page.doubts += 1
        return page.say(refs, short[(page.position + page.doubts) % len(short)])
    clauses = that_clauses(page, shaky)
    return page.say(
        refs,
        f"we are less sure that {clauses}: a few finds more or less could change that",
        f"we cannot be so sure that {clauses}, for a few finds more or less could change that",
    )


def _shaky(page: Page, shaky: Sequence[Reading], *, by_name: bool) -> list[Sentence]:
    refs = [item.claim.id for item in shaky]
    pieces = tuple(
        f"{noun_of(page, [item])} in {numbers.percent(item.claim.stability or 0.0)} of cases" for item in shaky
    )
    share = numbers.percent(shaky[0].claim.stability or 0.0)
    short = page.fresh(*page.turns("close", share=share))
    if not by_name and short:
        page.doubts += 1
        said = page.say(refs, short[(page.position + page.doubts) % len(short)])
    else:
        said = page.say(refs, f"counts drawn anew at random uphold {page.listed(pieces)}")
    page.draws += [Draw(sentence=sentence, pieces=pieces) for sentence in said]
    return said
