"""Samples of disturbed and of unknown deposits: that they are counted, and how the shares stand without them."""

from __future__ import annotations

from collections.abc import Sequence
from math import ceil

from narrate.model.ids import PhaseId, Subject
from narrate.model.narrative import Sentence
from narrate.model.sampling import Sample
from narrate.model.stratigraphy import Context
from narrate.telling import english, numbers
from narrate.telling.behind import is_meant
from narrate.telling.page import Page
from narrate.telling.places_named import places_named
from narrate.telling.spread import Presence, name_of, out_of_text, presences
from narrate.telling.through_time import sampled_phases


def insecure_sentences(page: Page, contexts: Sequence[Context]) -> list[Sentence]:
    """Samples of contexts recorded as disturbed or of unknown deposit, and that they are counted in the shares."""
    said = {
        "disturbed": [c for c in contexts if c.security == "disturbed"],
        "of unknown deposit": [c for c in contexts if c.deposit == "unknown" and c.security != "disturbed"],
    }
    texts, refs, total = [], [], 0
    for word, found in said.items():
        held = [(c, n) for c in found if (n := len(page.dig.project.samples_of(c.id)))]
        if held:
            texts.append(f"{page.listed(f'{english.literal(c.id)} ({n})' for c, n in held)}, recorded as {word}")
            refs += [page.dig.record_ref(Subject(level="context", id=c.id)) for c, _ in held]
            total += sum(n for _, n in held)
    if not texts:
        return []
    if page.is_plain:
        return _stirred_for_visitors(page, said["disturbed"])
    comes, counted = english.agreed(total, "comes", "come"), english.agreed(total, "is", "are")
    samples = page.count(total, "sample", "samples")
    left, more = _without(page, [c for found in said.values() for c in found])
    text = f"{samples} {comes} from {', and from '.join(texts)}, and {counted} counted in the shares"
    return page.say([*refs, *more], text + left)


def _without(page: Page, loose: Sequence[Context]) -> tuple[str, list[str]]:
    """
    '; without them maize is in 21 of 23 samples …, so that no share moves by more than seven percentage points'.

    Of one phase its groups of plants are told; of a dig of several how far the shares of its phases move at most.
    """
    dig, aside = page.dig, {context.id for context in loose}
    phases = sampled_phases(page) if page.subject.level == "site" else []
    own = PhaseId(page.subject.id) if page.subject.level == "phase" else None
    of: list[PhaseId | None] = [phase.id for phase in phases] if len(phases) > 1 else [own]
    texts, refs, moves = list[str](), list[str](), list[float]()
    for phase in of:
        samples = [s for s in dig.project.samples if phase is None or dig.project.context(s.context).phase == phase]
        kept = [s for s in samples if s.context not in aside]
        n = len(kept)
        if n in (0, len(samples)):
            continue
        for found in sorted(presences(dig, phase), key=lambda one: -one.k):
            if not found.k:
                continue
            k = sum(_holds(page, sample, found) for sample in kept)
            moves.append(abs(k / n - found.share))
            refs += found.refs
            texts.append(f"{name_of(page, found.group)} {_in(texts, found.group.is_singular)}{_out_of(texts, k, n)}")
    if not moves:
        return "", []
    most = page.count(ceil(max(moves) * 100 - 1e-9), "percentage point", "percentage points")
    if len(phases) > 1:
        return f"; without them no share of a phase moves by more than {most}", refs
    return f"; without them {page.listed(texts)}, so that no share moves by more than {most}", refs


def _holds(page: Page, sample: Sample, found: Presence) -> bool:
    held = page.dig.found(Subject(level="sample", id=sample.id))
    tallies = [t for t in held.tallies if t.condition in page.dig.ancient] if held is not None else []
    return any(is_meant(found.group.of, t, page.dig.packs) for t in tallies)


def _in(told: Sequence[str], is_singular: bool) -> str:
    return "" if told else "is " if is_singular else "are "


def _out_of(told: Sequence[str], k: int, n: int) -> str:
    return f"in {numbers.count(k) if k else 'none'}" if told else f"in {out_of_text(k, n)} samples"


def _stirred_for_visitors(page: Page, disturbed: Sequence[Context]) -> list[Sentence]:
    """'Two of our samples come from C20, where the ground was disturbed later. We count them all the same …'"""
    held = [(c, n) for c in disturbed if (n := len(page.dig.project.samples_of(c.id)))]
    if not held:
        return []
    total = sum(n for _, n in held)
    comes, them = english.agreed(total, "comes", "come"), english.agreed(total, "it", "them")
    subjects = [Subject(level="context", id=c.id) for c, _ in held]
    refs = [page.dig.measure_ref(subject, "items") for subject in subjects]
    return page.say(
        [*(page.dig.record_ref(subject) for subject in subjects), *refs],
        f"{page.count(total)} of our soil samples {comes} from {places_named(page, [c.id for c, _ in held])}, where "
        "the ground was disturbed later",
    ) + page.say([page.record, *refs], f"we count {them} all the same")
