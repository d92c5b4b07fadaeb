"""How far the counts of a page can be trusted, in a language of its own: what was not sorted, lost, or stirred."""

from __future__ import annotations

from collections.abc import Sequence

from narrate.model.ids import Subject
from narrate.model.narrative import Sentence
from narrate.model.sampling import Sample
from narrate.model.stratigraphy import Context
from narrate.telling.composition import sorted_in_part
from narrate.telling.page import Page
from narrate.telling.recovery import heavy_waiting, poor_tests
from narrate.telling.translated_words import grammar_of, places_told, say, say_each


def recovery_told(page: Page, samples: Sequence[Sample]) -> list[Sentence]:
    """Of a context: finest bits sorted in part, heavy fractions that wait, and a test that returned few seeds."""
    seen = sorted_in_part(page)
    refs = [t.ref for t in seen if t.ref] or [page.ref("items")]
    sentences = say(page, refs, "sorted in part") if seen else []
    waiting = heavy_waiting(samples)
    if waiting:
        name = "heavy waits" if len(waiting) == len(samples) else "heavy waits in part"
        sentences += say(page, _records(page, waiting), name)
    for sample in poor_tests(samples)[:1]:
        test = sample.recovery_test
        if test is not None:
            figure = grammar_of(page).figure
            added, came = figure(test.added), figure(test.recovered)
            sentences += say(page, _records(page, [sample]), "poor test", added=added, came=came)
    return sentences


def stirred_told(page: Page, contexts: Sequence[Context]) -> list[Sentence]:
    """Of a phase or the dig: samples of ground that was disturbed later, and that they are counted."""
    disturbed = [c for c in contexts if c.security == "disturbed" and page.dig.project.samples_of(c.id)]
    total = sum(len(page.dig.project.samples_of(c.id)) for c in disturbed)
    if not total:
        return []
    subjects = [Subject(level="context", id=c.id) for c in disturbed]
    refs = [ref for s in subjects for ref in (page.dig.record_ref(s), page.dig.measure_ref(s, "items"))]
    name = "stirred one" if total == 1 else "stirred"
    places = places_told(page, [c.id for c in disturbed])
    return say_each(page, refs, name, count=grammar_of(page).about(total, "f"), places=places)


def _records(page: Page, samples: Sequence[Sample]) -> list[str]:
    return [page.dig.record_ref(Subject(level="sample", id=s.id)) for s in samples]
