"""What flotation lost: marked seeds that did not come back, told of a context, a phase and the dig."""

from __future__ import annotations

from collections.abc import Sequence

from narrate.model.ids import ContextId, Subject
from narrate.model.narrative import Sentence
from narrate.model.sampling import Sample
from narrate.telling import english, numbers
from narrate.telling.page import Page

GOOD = 0.8
"""Below this share of marked seeds recovery is spoken of (judgement of the makers)."""

NAMED = 4


def lost_sentences(page: Page, samples: Sequence[Sample], *, with_places: bool = False) -> list[Sentence]:
    """
    Tests that returned few of the marked seeds; nothing where recovery was good or not tested.

    with_places: whether the contexts of the samples are named, where a text is of more than one.
    """
    poor = poor_tests(samples)
    if poor and page.is_plain and not with_places:
        return _for_visitors(page, poor[0])
    if not poor or page.is_plain:
        return []
    is_one = not with_places and sum(s.recovery_test is not None for s in samples) == 1
    interval = _interval(page) if is_one else ""
    texts = []
    for sample in poor[:NAMED]:
        test = sample.recovery_test
        if test is not None:
            name = english.literal(sample.id) + (f" of {english.literal(sample.context)}" if with_places else "")
            share = numbers.percent(_share(sample)) + interval
            texts.append(f"{test.recovered} of {test.added} marked seeds in {name} ({share})")
    if len(poor) > NAMED:
        texts.append(page.count(len(poor) - NAMED, "other sample lost as many", "other samples lost as many"))
    there = "there" if with_places else "here"
    refs = [page.dig.record_ref(Subject(level="sample", id=s.id)) for s in poor[:NAMED]]
    refs += [page.ref("recovery")] if interval else []
    returned = page.listed(texts)
    return page.say(
        refs,
        f"flotation returned only {returned}, so small seeds are under-represented {there} and densities are minima",
        f"as flotation returned no more than {returned}, small seeds will be under-represented {there}, and densities "
        "are minima",
    )


def unsorted_sentences(page: Page, samples: Sequence[Sample]) -> list[Sentence]:
    """For visitors: that heavy fractions of a place have yet to be sorted; the others are told so with what is left."""
    waiting = heavy_waiting(samples)
    if not waiting or not page.is_plain:
        return []
    some = "this soil" if len(waiting) == len(samples) else "some of this soil"
    return page.say(
        [page.dig.record_ref(Subject(level="sample", id=s.id)) for s in waiting],
        f"what sank when we washed {some} still waits to be sorted",
    )


def poor_tests(samples: Sequence[Sample]) -> list[Sample]:
    """Samples whose test returned few of the marked seeds."""
    return [s for s in samples if _share(s) < GOOD]


def heavy_waiting(samples: Sequence[Sample]) -> list[Sample]:
    """Samples whose heavy fraction has yet to be sorted."""
    return [s for s in samples if s.heavy_fraction is not None and s.heavy_fraction.sorted is False]


def _for_visitors(page: Page, sample: Sample) -> list[Sentence]:
    test = sample.recovery_test
    if test is None:
        return []
    came = page.count(test.recovered) if test.recovered else "none"
    return page.say(
        [page.dig.record_ref(Subject(level="sample", id=sample.id))],
        f"to test our washing we put {page.count(test.added)} marked seeds into some of this soil, and only {came} "
        "came back, so small seeds may be missing here",
    )


def is_poor(page: Page) -> bool:
    """Whether some test of the page's context returned few of the marked seeds, so that its density is a minimum."""
    is_context = page.subject.level == "context"
    return is_context and any(_share(s) < GOOD for s in page.dig.project.samples_of(ContextId(page.subject.id)))


def _share(sample: Sample) -> float:
    test = sample.recovery_test
    return test.recovered / test.added if test is not None and test.added else 1.0


def _interval(page: Page) -> str:
    """', 95% interval 29–56%' of a context, whose one test it is."""
    recovery = page.measure("recovery")
    interval = page.interval(recovery, scale=100) if recovery is not None else ""
    return f", 95% interval {interval}%" if interval else ""
