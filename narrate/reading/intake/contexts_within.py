"""Contexts that are named within a feature: 'Zone A' of Feature 3 is another than 'Zone A' of Feature 11."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from dataclasses import replace

from narrate.reading.intake.said import Said
from narrate.reading.intake.told import Told

_NUMBER = re.compile(r"\W*\d{2,}[a-z]?\W*", re.IGNORECASE)


def within_features(
    facts: Mapping[str, Mapping[str, list[Said]]], as_they_are: Iterable[str], told: Told
) -> dict[str, dict[str, list[Said]]]:
    """
    The facts with the number of the feature before each context, where one name of a context stands in two features.

    Contexts that are numbered through a site ('1012', '[104]') stay as they are, and so do those in `as_they_are`.
    """
    kept = set(as_they_are)
    features: dict[str, dict[str, str]] = {}
    for said in facts.values():
        if (found := _named(said, kept)) is not None:
            number = re.findall(r"\d+", found[1].text)[0].lstrip("0")
            features.setdefault(found[0].text, {}).setdefault(number, found[1].text)
    again = {context: list(numbers.values()) for context, numbers in features.items() if len(numbers) > 1}
    result = {id: dict(said) for id, said in facts.items()}
    if not again:
        return result
    for said in result.values():
        if (found := _named(said, kept)) is None:
            continue
        context, feature = found
        name = f"{feature.text} {context.text}"
        if context.text in again:
            listed = " and ".join(again[context.text][:2])
            told.warning(
                "N314", f"within {context.text}", context.place,
                f"the context '{context.text}' stands in the features {listed}; the contexts are drafted with the "
                f"feature before them, this one as '{name}', expected a name of its own for each context",
                "if it is one context, mend the feature under 'mend' in the layout or in the drafted records",
            )  # fmt: skip
        said["context"] = [replace(one, text=name) if one.text == context.text else one for one in said["context"]]
    return result


def _named(said: Mapping[str, list[Said]], kept: set[str]) -> tuple[Said, Said] | None:
    """The context and the numbered feature of a sample; None where one is missing or the context is numbered."""
    context, feature = said.get("context"), said.get("feature")
    if not context or not feature or context[0].text in kept or _NUMBER.fullmatch(context[0].text):
        return None
    return (context[0], feature[0]) if re.search(r"[1-9]", feature[0].text) else None
