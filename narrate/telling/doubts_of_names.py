"""Doubts about names that a reviewer weighs: plants of which many finds are 'cf.', and wood that nobody named."""

from __future__ import annotations

from narrate.model.ids import SITE, SampleId, Subject
from narrate.model.narrative import Sentence
from narrate.model.work_left import samples_of
from narrate.telling import english
from narrate.telling.old_finds import ancient_tallies, is_unknown, is_wood
from narrate.telling.page import Page
from narrate.telling.spread import ids_listed

MUCH = 0.25
"""Share of the finds of a plant from which 'cf.' names are a doubt of their own (judgement of the makers)."""
SHOWN = 3
"""Plants that are named for it."""


def cf_sentences(page: Page) -> list[Sentence]:
    """'Named only as cf. are two of the 6 maygrass grains and one of the 2 maize kernels'."""
    found = [
        t for t in ancient_tallies(page)
        if 0 < t.doubtful < t.counted and t.doubtful >= MUCH * t.counted and not is_wood(page, t)
        and t.taxon is not None and not is_unknown(page, t)
    ]  # fmt: skip
    if not found:
        return []
    shown = sorted(found, key=lambda t: (-t.doubtful, t.written, t.part))[:SHOWN]
    told = [
        f"{page.count(t.doubtful)} of the {page.names.figure(t.counted)} "
        f"{page.names.remains(t, with_number=False, latin=False).split(' (')[0]}"
        for t in shown
    ]
    are = english.agreed(sum(t.doubtful for t in shown), "is", "are")
    return page.say([t.ref for t in shown if t.ref], f"named only as cf. {are} {page.listed(told)}")


def uneven_sentences(page: Page) -> list[Sentence]:
    """
    'The one tobacco seed is named to the species (Nicotiana rustica), those of C15 to the genus alone: on what ground?'

    Of a plant of which the dig has a handful, whose like was left at the genus elsewhere, and of which the packs know
    other species: a note may be true of the genus and say nothing of the species.
    """
    taxa = page.dig.packs.taxa
    site = page.dig.found(Subject(level="site", id=SITE))
    of_dig: dict[str, int] = {}
    for tally in site.tallies if site is not None else ():
        of_dig[str(tally.taxon)] = of_dig.get(str(tally.taxon), 0) + tally.counted
    sentences: list[Sentence] = []
    for tally in ancient_tallies(page) if page.subject.level == "context" else ():
        taxon = taxa.get(tally.taxon) if tally.taxon is not None else None
        if taxon is None or taxon.rank != "species" or not tally.counted or tally.only_cf:
            continue
        if of_dig.get(taxon.id, 0) > HANDFUL:
            continue
        others = [t for t in taxa.values() if t.rank == "species" and t.genus == taxon.genus and t.id != taxon.id]
        left = _left_at_genus(page, taxon.genus, tally.part)
        if not others or not left or is_wood(page, tally):
            continue
        of = page.names.remains(tally, latin=False)
        is_, those = english.agreed(tally.counted, "is", "are"), ids_listed(page, left)
        sentences += page.say(
            [tally.ref],
            f"{of} {is_} named to the species ({english.italic(taxon.id)}), and those of {those} to the genus alone: "
            "the ground for the species is worth a note",
        )
    return sentences[:1]


HANDFUL = 3
"""Items of a species on the dig up to which it is asked on what ground they were named (judgement of the makers)."""


def _left_at_genus(page: Page, genus: str, part: str) -> list[str]:
    """Other contexts of the dig with such a part that was named to the genus and no further."""
    found: list[str] = []
    for context in page.dig.project.contexts:
        held = page.dig.found(Subject(level="context", id=context.id))
        own = held.tallies if held is not None and context.id != page.subject.id else ()
        if any(t.taxon == genus and t.part == part and t.counted and t.condition in page.dig.ancient for t in own):
            found.append(context.id)
    return found


def wood_left_unnamed(page: Page) -> tuple[tuple[SampleId, ...], int]:
    """Samples of the subject with weighed or counted wood of which nothing was named, and how many hold wood."""
    unnamed, holding = [], 0
    for sample in samples_of(page.dig.project, page.subject):
        found = page.dig.found(Subject(level="sample", id=sample.id))
        woods = [t for t in found.tallies if is_wood(page, t)] if found is not None else []
        if not any(t.counted or t.mass_g for t in woods):
            continue
        holding += 1
        if found is not None and not found.samples_with_named_wood:
            unnamed.append(sample.id)
    return tuple(unnamed), holding


def unnamed_wood_sentences(page: Page) -> list[Sentence]:
    """'The wood of 3 of 4 samples was weighed and not named (S004, S005, and S006)'."""
    unnamed, holding = wood_left_unnamed(page)
    if not unnamed or not any(t.taxon is not None and t.counted for t in ancient_tallies(page) if is_wood(page, t)):
        return []
    refs = [page.dig.record_ref(Subject(level="sample", id=id)) for id in unnamed]
    ids = page.listed([english.literal(id) for id in unnamed])
    samples, named = page.count(holding, "sample", "samples"), page.count(holding - len(unnamed))
    return page.say(refs, f"of {samples} with wood it was named in {named}; that of {ids} was not named")
