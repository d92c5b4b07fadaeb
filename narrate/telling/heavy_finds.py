"""Things of later times in the heavy fraction, told of a deposit that is not sealed: they show that it was stirred."""

from __future__ import annotations

import re

from narrate.model.ids import Subject
from narrate.model.narrative import Sentence
from narrate.model.observations import Observation
from narrate.model.signs import pattern
from narrate.model.stratigraphy import Context
from narrate.telling import english
from narrate.telling.page import Page
from narrate.telling.spread import ids_listed

DISTURBED, IN_PLACE = "integrity.disturbed", "deposit.burned-in-place"
_GRAMS = re.compile(r"[ _]g$")


def modern_find_sentences(page: Page, context: Context) -> list[Sentence]:
    """'The heavy fractions of S047 and S048 held coal (9), glass (1), and wire (1), which agrees with …'."""
    seen = next((o for o in page.dig.packs.observations if o.noted_of == "heavy" and DISTURBED in o.agrees_with), None)
    if page.is_plain or seen is None or context.security == "sealed":
        return []
    found, samples = _found(page, context, seen)
    if not found:
        return []
    what = page.listed([f"{english.literal(name)} ({amount})" for name, amount in found.items()])
    fractions = f"the heavy fraction{'s' * (len(samples) > 1)} of {ids_listed(page, samples)}"
    claim = page.dig.claims.find(page.subject, DISTURBED)
    refs = [*(page.dig.record_ref(Subject(level="sample", id=id)) for id in samples)]
    refs += [claim.id] if claim is not None else []
    noun = page.dig.packs.statements[DISTURBED].noun  # type: ignore[index]
    return page.say(
        refs,
        f"{fractions} held {what}, which agrees with {noun}",
        f"{what} came from {fractions}, in agreement with {noun}",
    )


def stone_sentences(page: Page, context: Context) -> list[Sentence]:
    """
    'Burned stone (5,380 g) came from the heavy fractions of S007 and S008, in agreement with burning in place'; daub
    too, which lasts where fire has baked it.
    """
    claim = page.dig.claims.find(page.subject, IN_PLACE)
    if page.is_plain or page.is_review or claim is None or claim.id not in page.told:
        return []
    seen = [o for o in page.dig.packs.observations if o.noted_of == "heavy" and IN_PLACE in o.agrees_with]
    found, samples = dict[str, str](), list[str]()
    for finds, where in (_found(page, context, each) for each in seen):
        found |= finds
        samples += [id for id in where if id not in samples]
    if not found:
        return []
    what = page.listed([f"{english.literal(name)} ({amount})" for name, amount in found.items()])
    fractions = f"the heavy fraction{'s' * (len(samples) > 1)} of {ids_listed(page, samples)}"
    refs = [*(page.dig.record_ref(Subject(level="sample", id=id)) for id in samples), claim.id]
    return page.say(
        refs, f"{what} from {fractions} agrees with this", f"{fractions} held {what}, which agrees with this"
    )


def _found(page: Page, context: Context, seen: Observation) -> tuple[dict[str, str], list[str]]:
    """Finds by name with their number or mass over all samples, most first, and the samples that held them."""
    known = pattern(seen.phrases)
    numbers_of: dict[str, float] = {}
    as_written: dict[str, list[str]] = {}
    samples: list[str] = []
    for sample in page.dig.project.samples_of(context.id):
        finds = sample.heavy_fraction.finds if sample.heavy_fraction is not None else {}
        for name, amount in finds.items():
            said = _GRAMS.sub("", name).replace("_", " ")
            if not known.search(said):
                continue
            samples += [] if sample.id in samples else [sample.id]
            unit = " g" if _GRAMS.search(name) else ""
            try:
                numbers_of[f"{said}|{unit}"] = numbers_of.get(f"{said}|{unit}", 0.0) + float(amount)
            except ValueError:
                as_written.setdefault(said, []).append(amount)
    ordered = sorted(numbers_of, key=lambda key: (-numbers_of[key], key))
    told = {key.split("|")[0]: f"{_amount(page, numbers_of[key])}{key.split('|')[1]}" for key in ordered}
    noted = {name: english.literal(" and ".join(a)) for name, a in as_written.items() if name not in told}
    return told | noted, samples


def _amount(page: Page, value: float) -> str:
    """'5,380', '0.4': as it was written, with the mark between thousands."""
    is_whole = value == int(value)
    return page.count(int(value)) if is_whole and value >= 1000 else f"{value:g}"
