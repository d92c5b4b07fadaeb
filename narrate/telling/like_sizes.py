"""A ratio of weights held like with like: what it is without size classes in which the second was not weighed."""

from __future__ import annotations

from narrate.model.claims import Argument
from narrate.model.ids import ContextId
from narrate.model.rules import Selector
from narrate.telling import numbers
from narrate.telling.behind import bounds_of, is_meant
from narrate.telling.page import Page


def held_like_with_like(page: Page, argument: Argument, text: str) -> str:
    """
    'nutshell weighs 0.58 g to a gram of wood charcoal (0.53 for size classes weighed of both)'.

    Only where every weight of the second names its size class: a weight without one may be of all of them.
    """
    rule = page.dig.packs.rules.get(argument.rule)
    if page.is_plain or not page.audience.shows_figures or rule is None:
        return text
    for bound in bounds_of(rule.criteria):
        if bound.measure != "mass_ratio" or bound.of is None or bound.to is None:
            continue
        first, second = (_weighed(page, selector) for selector in (bound.of, bound.to))
        classes = {size for size, _ in second}
        unlike = [size for size, _ in first if size and size not in classes]
        if not second or "" in classes or not unlike or len(unlike) == len(first):
            continue
        left = sum(g for size, g in first if size not in unlike)
        value = numbers.figure(left / sum(g for _, g in second), 2)
        return f"{text} ({value} for size classes weighed of both)"
    return text


def _weighed(page: Page, selector: Selector) -> list[tuple[str, float]]:
    """Size class and grams of each weight of what is meant."""
    tallies = [t for t in page.found.tallies if t.condition in page.dig.ancient]
    places = {place for t in tallies if is_meant(selector, t, page.dig.packs) for place in t.places}
    weights = page.dig.surroundings.weights(*_samples(page))
    return [(size, g) for place, size, g in weights if place in places]


def _samples(page: Page) -> list[str]:
    project, subject = page.dig.project, page.subject
    if subject.level == "sample":
        return [str(subject.id)]
    if subject.level == "context":
        return [str(sample.id) for sample in project.samples_of(ContextId(subject.id))]
    contexts = project.contexts_of(subject.id)
    return [str(sample.id) for context in contexts for sample in project.samples_of(context.id)]
