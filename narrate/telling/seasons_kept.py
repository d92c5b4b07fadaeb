"""Seasons read from plants that keep: when they were gathered does not say when they were burned."""

from __future__ import annotations

from narrate.model.claims import Argument, Claim
from narrate.model.findings import Tally
from narrate.model.narrative import Sentence
from narrate.telling.behind import bounds_of, heaviest
from narrate.telling.old_finds import plant_tallies
from narrate.telling.page import Page
from narrate.telling.plan import STORED_ONLY


def kept_sentences(page: Page, lead: Claim) -> list[Sentence]:
    """For visitors: where a season is read from plants that keep alone, that they do."""
    is_context = page.subject.level == "context"
    nuts = chief_nuts(page, lead) if is_context and is_of_fresh(page, lead) else None
    if nuts is not None:
        kept = "but they keep, so people may have burned them later"
        return page.say([lead.id, nuts.ref], f"{page.names.food(nuts.taxon, nuts.written)} ripen in autumn too, {kept}")
    if page.subject.level in ("phase", "site") or not is_of_what_keeps(page, lead) or is_told_to_keep(page):
        return []
    return page.say([lead.id], "but plants like these keep for months, so people may have burned them later")


def is_of_what_keeps(page: Page, claim: Claim) -> bool:
    """Whether a claim is a season that no plant speaks for which has to be used fresh."""
    return claim.question == "season" and claim.statement != STORED_ONLY and not is_of_fresh(page, claim)


def is_of_fresh_alone(page: Page, claim: Claim) -> bool:
    """Whether every rule that speaks for a season asks for plants that do not keep."""
    held = claim.held("for")
    return bool(held) and all(_asks_for_fresh(page, argument) for argument in held)


def is_led_by_fresh(page: Page, claim: Claim) -> bool:
    """Whether each of the heaviest rules that speak for a season asks for plants that do not keep."""
    chief = heaviest(claim)
    return bool(chief) and all(_asks_for_fresh(page, argument) for argument in chief)


def is_of_fresh(page: Page, claim: Claim) -> bool:
    """Whether some rule that speaks for a season asks for plants that do not keep."""
    return claim.question == "season" and any(_asks_for_fresh(page, argument) for argument in claim.held("for"))


def _asks_for_fresh(page: Page, argument: Argument) -> bool:
    rule = page.dig.packs.rules.get(argument.rule)
    bounds = bounds_of(rule.criteria) if rule is not None else ()
    return any("perishable" in bound.of.keeping for bound in bounds if bound.of is not None)


def chief_nuts(page: Page, claim: Claim) -> Tally | None:
    """
    Nuts that make up most of a place whose autumn is read from a few soft fruits: they ripen then as well, and were not
    asked because they keep.
    """
    tallies = [t for t in plant_tallies(page) if t.counted and t.taxon in page.dig.packs.taxa]
    chief = max(tallies, key=lambda t: t.counted, default=None)
    if claim.statement != "season.autumn" or chief is None or not chief.ref or chief.only_cf:
        return None
    taxon = page.dig.packs.taxa[chief.taxon]  # type: ignore[index]
    is_most = chief.counted * 2 > sum(t.counted for t in tallies)
    return chief if "nut" in taxon.tags and is_most else None


def is_told_to_keep(page: Page) -> bool:
    """Whether the page has a reading of its own that all the plants keep."""
    kept = page.dig.claims.find(page.subject, STORED_ONLY)
    return kept is not None and kept.verdict == "holds"
