"""Crops that turn up again and again in a phase and carry no reading of it: they were found, and that is told."""

from __future__ import annotations

from collections.abc import Sequence

from narrate.model.findings import Tally
from narrate.model.narrative import Sentence
from narrate.telling import english
from narrate.telling.page import Page
from narrate.telling.plan import Reading
from narrate.telling.spread import out_of_text

AGAIN = 3
"""Samples from which on a crop without a reading is told of (judgement of the makers)."""
CROPS = frozenset(("crop", "native-crop", "tropical-crop"))


def unread_crop_sentences(page: Page, told: Sequence[Reading]) -> list[Sentence]:
    """'Squash (28 pieces of rind) was in 8 of 23 samples and carries no reading of the phase by itself'."""
    if page.is_plain or page.is_review:
        return []
    read = {tally.taxon for reading in told for tally in reading.behind}
    by_crop: dict[str, list[Tally]] = {}
    for tally in page.found.tallies:
        taxon = page.dig.packs.taxa.get(tally.taxon) if tally.taxon is not None else None
        if taxon is not None and taxon.tags & CROPS and tally.condition in page.dig.ancient and tally.counted:
            by_crop.setdefault(str(taxon.id), []).append(tally)
    sentences: list[Sentence] = []
    for id, tallies in by_crop.items():
        most = max(tallies, key=lambda t: t.samples)
        if id in read or most.samples < AGAIN or page.has_told(page.names.plant(most.taxon, most.written)):
            continue
        remains = page.listed(page.names.grouped(tallies, at_most=1))
        verb = english.agreed(sum(t.counted for t in tallies), "was", "were")
        samples = f"{out_of_text(most.samples, most.of_samples)} samples"
        sentences += page.say(
            [t.ref for t in tallies if t.ref] or [page.ref("items")],
            f"{remains} {verb} found in {samples} and carry no reading of the phase by themselves",
            f"in {samples} lay {remains}, from which nothing is read of the phase",
        )
    return sentences
