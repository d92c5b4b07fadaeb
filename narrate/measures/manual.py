"""The page of the manual for each measure, read from the docstring that its function has anyway."""

from __future__ import annotations

import inspect
import re
from functools import cache

from narrate.measures.catalogue import MEASURES, Measure
from narrate.model.manual import MeasurePage

_HEADS = {
    "Unit": "unit",
    "Interval": "interval",
    "No value": "no_value",
    "Always has a value": "no_value",
    "Misleads": "misleads",
    "Source": "source",
}
_HEAD = re.compile(
    r"(?:^|(?<=\s))(Unit|Interval|No\s+value|Misleads|Source)\s*:\s|(?<=\s)(Always\s+has\s+a\s+value)(?=[.;])"
)


@cache
def manual() -> tuple[MeasurePage, ...]:
    """A page for every measure of the catalogue, in its order."""
    return tuple(page_of(measure) for measure in MEASURES.values())


def page_of(measure: Measure) -> MeasurePage:
    """
    The page of one measure.

    The docstring has a first sentence, a formula (set in by four spaces), and then 'Unit:', 'Interval:', 'No value:',
    'Misleads:' and 'Source:', each up to the next.

    >>> page = page_of(MEASURES["ubiquity"])
    >>> page.meaning, page.interval
    ('Share of the samples that hold the thing at least once.', 'Wilson.')
    """
    text = inspect.getdoc(measure.function) or ""
    text = text.split(">>>")[0]
    heads = list(_HEAD.finditer(text))
    before = text[: heads[0].start()] if heads else text
    said: dict[str, str] = {}
    for head, after in zip(heads, [*heads[1:], None], strict=True):
        part = " ".join(text[head.start(2) if head[2] else head.end() : after.start() if after else len(text)].split())
        key = _HEADS[" ".join((head[1] or head[2]).split())]
        said[key] = f"{said[key]} {part}" if key in said else part
    meaning, formula, symbols = _preface(before)
    return MeasurePage(
        id=measure.id,
        title=_in_words(measure.id),
        meaning=meaning,
        formula=formula,
        symbols=symbols,
        levels=measure.levels,
        asks_of=measure.needs_of,
        asks_to=measure.needs_to,
        **{key: part[:1].upper() + part[1:] for key, part in said.items()},
    )


def _in_words(id: str) -> str:
    words = id.split("_")
    return " ".join({"l": "litre", "g": "gram"}.get(word, word) for word in words)


def _preface(text: str) -> tuple[str, str, str]:
    """The meaning, the formula's lines, and what is said after it."""
    paragraphs = [part for part in re.split(r"\n\s*\n", text) if part.strip()]
    meaning = " ".join(paragraphs[0].split()) if paragraphs else ""
    formula = [line.strip() for part in paragraphs[1:] if part.startswith("    ") for line in part.splitlines()]
    rest = [" ".join(part.split()) for part in paragraphs[1:] if not part.startswith("    ")]
    return meaning, "\n".join(formula), " ".join(rest)
