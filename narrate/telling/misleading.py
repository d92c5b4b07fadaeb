"""What may mislead in a reading: the caution of the rule that weighs most for it, and what bends a figure."""

from __future__ import annotations

import re
from collections.abc import Sequence

from narrate.model.claims import GRADE_NAMES
from narrate.model.narrative import Sentence
from narrate.telling import english
from narrate.telling.frames import noun_of
from narrate.telling.fruits import few_fruits_sentences
from narrate.telling.page import Page
from narrate.telling.plan import Reading
from narrate.telling.reasons import page_text, without_figures
from narrate.telling.seasons_kept import is_told_to_keep, kept_sentences

STRONGEST = GRADE_NAMES.index("strongly supports")
"""A reading of the strongest grade always bears its caution, whatever else the page says of it."""

COMMON = ("fuel.wood",)
"""Readings that nobody doubts who sees a hearth: no caution is spent on them."""

CAUTIONS_AT_MOST = {"phase": 2, "site": 2}
"""Cautions in general words that a page bears; of any other subject one."""


def doubt_sentences(page: Page, group: Sequence[Reading]) -> list[Sentence]:
    """What may mislead in the leading reading: the caution of the rule that weighs most for it."""
    lead = group[0].claim
    if page.is_plain:
        seasons = [reading.claim for reading in group if reading.claim.question == "season"]
        few = few_fruits_sentences(page, seasons) if lead.question == "season" else []
        return few + kept_sentences(page, lead)
    # A season of gathering is no season of the deposit, however firm it is: what keeps may be burned in any month.
    is_of_season = lead.question == "season" and not page.is_review and not is_told_to_keep(page)
    if (group[0].rank < 3 and not is_of_season) or (lead.question == "deposit" and not page.is_review):
        return []
    most = CAUTIONS_AT_MOST.get(page.subject.level, 1)
    is_spared = not is_of_season and (lead.statement in COMMON or lead.id in page.answered or page.cautions >= most)
    if not page.is_review and is_spared and group[0].rank < STRONGEST:
        return []
    rules = [page.dig.packs.rules.get(argument.rule) for argument in lead.held("for")]
    own = [rule.misleads_when for rule in rules if rule is not None and rule.misleads_when]
    cautions = [text for text in (own[0] if own else lead.misleads_when) if bears(page, text)]
    if is_of_season:
        few = few_fruits_sentences(page, [reading.claim for reading in group])
        if few:
            page.cautions += 1
            return few
        # That a handful may be one fruit, or else that they keep, is what a reader has to know of any of them.
        every = [page.dig.packs.rules.get(a.rule) for reading in group for a in reading.claim.held("for")]
        kept = [text for rule in every if rule is not None for text in rule.misleads_when if _KEEPS.search(text)]
        kept = [text for text in kept if bears(page, text)]
        cautions = kept[:1] or (cautions if group[0].rank > 2 else [])
    if not cautions:
        return []
    page.cautions += 1
    caution = english.lowered(cautions[page.position % len(cautions)].strip().rstrip("."))
    return page.say([lead.id], *page.turns("caution", caution=caution, noun=noun_of(page, group[:1])))


def figure_sentences(page: Page, group: Sequence[Reading]) -> list[Sentence]:
    """What makes the figure of a reason too high or too low, where a rule says so: told beside the figure."""
    if page.is_plain:
        return []
    for item in group:
        for argument in item.claim.held("for"):
            rule = page.dig.packs.rules.get(argument.rule)
            told = without_figures(page_text(page, argument)) in page.reasons_told
            cautions = [text for text in rule.misleads_when if _OF_A_FIGURE.search(text)] if rule and told else []
            if cautions:
                page.cautions += 1
                caution = english.lowered(cautions[0].strip().rstrip("."))
                return page.say([item.claim.id], *page.turns("caution", caution=caution, noun=noun_of(page, [item])))
    return []


_OF_A_FIGURE = re.compile(r"\b(?:overstates|understates|lowers the ratio|raises the ratio)\b")


def bears(page: Page, caution: str) -> bool:
    """
    Whether a caution of a rule bears on the subject.

    What befalls wet ground does not befall charred remains, and what is said of a plant wants that plant.
    """
    if page.dig.project.preservation == "charred" and _WET.search(caution):
        return False
    taxa = page.dig.packs.taxa
    held = {taxa[t.taxon].name for t in page.found.tallies if t.taxon is not None and t.taxon in taxa}
    named = {taxon.name for taxon in taxa.values() if "fruit" in taxon.tags and _is_said_of(taxon.name, caution)}
    return not named or bool(named & held)


def _is_said_of(plant: str, caution: str) -> bool:
    return bool(plant) and re.search(rf"\b{re.escape(plant)}s?\b", caution, re.IGNORECASE) is not None


_KEEPS = re.compile(r"\b(keeps?|kept|dried|stored?|any month)\b", re.IGNORECASE)
_WET = re.compile(r"\b(?:wet|waterlogged|mud|standing water)\b", re.IGNORECASE)
