"""The narrative of one sample: one to three sentences."""

from __future__ import annotations

from narrate.model.ids import Subject
from narrate.model.narrative import Section, Sentence
from narrate.model.sampling import Sample
from narrate.telling import english, manner, modern_finds, numbers, old_finds, setting
from narrate.telling.contexts import NOT_NEWS, one_paragraph
from narrate.telling.frames import frame
from narrate.telling.page import Page
from narrate.telling.plan import Reading, readings, standing
from narrate.telling.reasons import reasons_for


def sample_sections(page: Page, sample: Sample) -> tuple[Section, ...]:
    """What the sample held, how far it was sorted, and what it says on its own."""
    page.names.has_glosses = False
    context = page.dig.project.context(sample.context)
    where = setting.context_name(page, context)
    name = f"sample {english.literal(sample.id)} of {where}"
    if setting.items_counted(page) == 0 and not old_finds.ancient_tallies(page):
        return one_paragraph(_empty(page, name))
    sentences = _opening(page, name)
    sentences += _recovery(page, sample)
    held = [r for r in readings(page, page.dig.claims.holding(page.subject)) if _is_worth_telling(r)]
    if held and setting.items_counted(page) >= setting.FEW_ITEMS and not page.is_review:
        sentences += _read(page, held[0])
    return one_paragraph(sentences[:3])


def _is_worth_telling(item: Reading) -> bool:
    is_read = item.rank > 1 and item.claim.statement not in NOT_NEWS
    is_read = is_read and standing(item.claim) == "reading"
    return is_read and item.claim.question in ("fuel", "food", "processing", "season", "deposit")


def _opening(page: Page, name: str) -> list[Sentence]:
    tallies = [t for t in old_finds.plant_tallies(page) if t.counted]
    texts = page.names.grouped(tallies, at_most=2)
    named = list(dict.fromkeys(t.taxon or t.written for t in tallies))
    shown = set(named[:2])
    most = sum(t.counted for t in tallies if (t.taxon or t.written) in shown)
    chiefly = len(named) > len(texts) and 2 * most > sum(t.counted for t in tallies)
    refs = setting.size_refs(page)[:2] + [t.ref for t in tallies if t.ref and (t.taxon or t.written) in shown]
    items, litres, at = setting.items_text(page), setting.litres_text(page), setting.or_density(page)
    if page.is_plain:
        first = page.say(refs, f"we picked {items} from {name}", f"{name} gave us {items}")
        if not texts:
            return first
        word = "most were" if chiefly else "among them were" if len(named) > len(texts) else "they were"
        return first + page.say(refs, f"{word} {page.listed(texts)}")
    word = "chiefly " if chiefly else "among them " if len(named) > len(texts) else ""
    # After a semicolon, since the clause before the list has commas of its own.
    listed = f"; {word}{page.listed(texts)}" if texts else ""
    return page.say(
        refs,
        f"{name} ({litres}) gave {items}{at}{listed}",
        f"{litres} of sediment in {name} held {items}{at}{listed}" if page.found.litres is not None else "",
    )


def _read(page: Page, item: Reading) -> list[Sentence]:
    """The firmest reading of the sample in one sentence."""
    lead = frame(page, [item], "lead")
    if not lead:
        return []
    reasons = reasons_for(page, item, most=1)
    because = f", because {reasons[0]}" if reasons and not page.is_plain else ""
    return page.say([item.claim.id], f"{lead}{because}")


def _empty(page: Page, name: str) -> list[Sentence]:
    refs = [page.record, page.ref("items")]
    litres = setting.litres_text(page)
    if page.is_plain:
        plants = "burned plants" if page.dig.project.preservation == "charred" else "plants"
        return page.say(refs, f"we found no {plants} in {name}", f"{name} held no {plants}")
    adjective = "charred " if page.dig.project.preservation == "charred" else ""
    return page.say(
        refs,
        f"{name} ({litres}) held no {adjective}plant remains and counts as sampled",
        f"no {adjective}plant remains were found in {name} ({litres}); it counts as sampled",
    ) + modern_finds.modern_sentences(page)


def _recovery(page: Page, sample: Sample) -> list[Sentence]:
    """What was not sorted, and what the recovery test says, where either weakens the sample."""
    if page.is_plain:
        return []
    partly = [size for size in sample.size_classes if size.proportion_sorted < 1]
    sentences: list[Sentence] = []
    if partly:
        names = [english.literal(manner.with_dashes(s.name, page.audience)) for s in partly]
        shares = [_share(s.proportion_sorted) for s in partly]
        classes = page.listed(f"{share} of the {name} class" for share, name in zip(shares, names, strict=True))
        was = english.agreed(len(partly), "was", "were")
        sentences += page.say(
            [page.record],
            f"only {classes} {was} sorted",
            f"of its size classes not all were sorted in full: only {classes} {was} looked through",
        )
    test = sample.recovery_test
    if test is not None and test.added and test.recovered / test.added < 0.8:
        got = f"{test.recovered} of {test.added} marked seeds"
        sentences += page.say(
            [page.record], f"recovery was poor: {got} came back", f"only {got} came back from flotation"
        )
    return sentences


def _share(share: float) -> str:
    named = {0.5: "half", 0.25: "a quarter", 0.125: "an eighth", 0.75: "three quarters"}
    return named.get(share, numbers.percent(share))


def sample_subject(sample: Sample) -> Subject:
    return Subject(level="sample", id=sample.id)
