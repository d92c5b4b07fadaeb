"""What a panel is made of besides its readings: finds, when and what it was, words explained, how much was washed."""

from __future__ import annotations

from collections.abc import Sequence

from narrate.model.claims import GRADE_NAMES
from narrate.model.findings import Tally
from narrate.model.ids import ContextId, Subject
from narrate.model.narrative import Sentence
from narrate.model.plants import Taxon
from narrate.model.stratigraphy import Phase
from narrate.telling import context_opening, old_finds, setting
from narrate.telling.page import Page


def kind_sentences(page: Page, kind: str) -> list[Sentence]:
    return context_opening.kind_explained(page, kind) if kind else []


def term_sentences(page: Page) -> list[Sentence]:
    """What the audience explains of words that the panel has used: 'term <phrase>'."""
    sentences: list[Sentence] = []
    for name in page.audience.words:
        if name.startswith("term ") and page.has_told(name.removeprefix("term ")):
            sentences += page.say([page.record], *page.turns(name))
    return sentences


SMALL_SEEDED = "small-seeded crops"


def crop_sentences(page: Page, told: Sequence[Sentence]) -> list[Sentence]:
    """'Goosefoot and maygrass are plants that people grew for tiny seeds', where told names them: few know them."""
    if "panel crops" not in page.audience.words:
        return []
    taxa, text = page.dig.packs.taxa, " ".join(sentence.text for sentence in told).lower()
    known = ((t, taxa.get(t.taxon)) for t in old_finds.plant_tallies(page) if t.taxon is not None and t.ref)
    old = [t for t, taxon in known if taxon is not None and _is_old_crop(taxon)]
    crops = {name: t.ref for t in old if (name := page.names.plant(t.taxon)) in text}
    if SMALL_SEEDED in text:
        crops = {SMALL_SEEDED: next(iter(crops.values()), page.record)}
    names = list(crops)[:2]
    if not names:
        return []
    are = "is a plant" if len(names) == 1 and names[0] != SMALL_SEEDED else "are plants"
    return page.say([crops[name] for name in names], *page.turns("panel crops", plants=page.listed(names), are=are))


def _is_old_crop(taxon: Taxon) -> bool:
    return "native-crop" in taxon.tags and bool({"small-seed", "starchy-seed"} & taxon.tags)


def dated_sentences(page: Page, name: str, phase: Phase | None) -> list[Sentence]:
    """'Hearth C11 belongs to the Late hamlet, about AD 1250 to 1350'; of a phase its years; of the dig nothing."""
    years = setting.phase_years(page, phase)
    if phase is None:
        return []
    if page.subject.level != "context":
        return page.say([page.record], f"{name} dates to {years}") if years else []
    when = f", {years}" if years else ""
    return page.say(
        [page.record],
        f"{name} belongs to {setting.phase_name(phase)}{when}",
        f"{name} dates from {setting.phase_name(phase)}{when}",
        f"{name} goes back to {setting.phase_name(phase)}{when}",
    )


def washed_sentences(page: Page, name: str, phase: Phase | None) -> list[Sentence]:
    """'We washed 17 litres of its soil and found about 200 burned plant remains besides wood'."""
    litres = setting.litres_text(page) if page.found.litres is not None else ""
    items = setting.items_text(page)
    refs = setting.size_refs(page)[:2]
    if page.subject.level == "context" and phase is not None:
        soil = f"{litres} of its soil" if litres else "its soil"
        return page.say(
            refs, f"we washed {soil} and found {items}", f"our team washed {soil} and picked out {items}"
        )
    soil = f"{litres} of soil" if litres else "soil"
    return page.say(
        refs,
        f"we washed {soil} from {name} and picked out {items}",
        f"our team washed {soil} from {name} and found {items}",
    )


def plant_sentences(page: Page, *, at_most: int) -> list[Sentence]:
    """The commonest finds without their numbers."""
    groups = old_finds.by_plant(page, [t for t in old_finds.plant_tallies(page) if t.counted])
    known = [group[0] for group in groups if not old_finds.is_unknown(page, group[0])][:at_most]
    if not known:
        return []
    # The share of what is named, and not of all parts of its plant.
    share = known[0].counted / sum(t.counted for group in groups for t in group)
    refs = [t.ref for t in known if t.ref] or [page.ref("items")]
    names = [_named(page, tally) for tally in known]
    if share > 0.5:
        is_some = bool(known[1:]) and known[1].counted > 1
        rest = f", with {'some ' * is_some}{page.listed(names[1:])}" if names[1:] else ""
        if known[0].counted == 1:
            return page.say(refs, f"all we could name is {names[0]}")
        return page.say(refs, f"most of our finds were {names[0]}{rest}", f"{names[0]} were our commonest finds{rest}")
    return page.say(refs, f"our finds include {page.listed(names)}", f"among our finds were {page.listed(names)}")


def _named(page: Page, tally: Tally) -> str:
    """'pigweed seeds', and of a single one 'one pigweed seed'."""
    return page.names.remains(tally, with_number=tally.counted == 1, latin=False)


COMMON = 3
"""Places of one phase that make a reading as firmly, from which it sets none of them apart."""


def is_common(page: Page, first: Sequence[Sentence]) -> bool:
    """Whether the reading that a panel of a place would begin with is made as firmly in several places of its phase."""
    refs = [ref for sentence in first[:1] for ref in sentence.refs]
    claims = [claim for claim in map(page.dig.claims.by_id.get, refs) if claim is not None]
    if page.subject.level != "context" or not claims:
        return False
    lead, phase = claims[0], page.dig.project.context(ContextId(page.subject.id)).phase
    places = [Subject(level="context", id=c.id) for c in page.dig.project.contexts if c.phase == phase]
    same = (page.dig.claims.find(place, lead.statement) for place in places)
    held = [claim for claim in same if claim is not None and claim.verdict == "holds"]
    return sum(GRADE_NAMES.index(claim.grade) >= GRADE_NAMES.index(lead.grade) for claim in held) >= COMMON
