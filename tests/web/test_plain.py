"""Figures of the public pages, in visitors' words; those of the review pages keep the words of the trade."""

from __future__ import annotations

import pytest

from narrate.model.edition import Edition
from narrate.model.figures import Chart
from narrate.model.ids import Subject
from narrate.web.evidence import Opener
from narrate.web.figures import of_claims, of_site, of_subject, with_known_in_words
from narrate.web.links import Links
from narrate.web.plain import in_plain_words, led_by_common_names
from narrate.web.wording import Wording
from tests.web.editions import an_edition


def told(edition: Edition) -> Edition:
    return Opener(edition, Links()).pictured


def titles(edition: Edition) -> list[str]:
    edition = told(edition)
    site = edition.findings.of(Subject(level="site", id="site"))
    drawn = (*of_subject(site, edition), *of_site(("kernels_and_cupules", "density"), edition))
    return [chart.title for chart, _ in drawn]


def test_public_figures_are_told_in_visitors_words() -> None:
    """Corn for visitors, maize for the team, from one and the same count."""
    public, review = (" ".join(titles(an_edition(audience))) for audience in ("public", "review"))

    assert "Maize cupules made up most" in review
    assert "aize" not in public
    assert "Corn cupules made up most" in public


def test_visitors_are_told_no_log_odds_and_no_prior() -> None:
    """The balance of a claim has weights for visitors, log-odds for the team."""
    public, review = (
        of_claims(tuple(c for c in edition.claims if c.verdict == "holds")[:1], told(edition))[0][0]
        for edition in (an_edition("public"), an_edition("review"))
    )

    assert public.columns[1] == "Weight for" and review.columns[1] == "For (log-odds)"
    assert "log-odds" not in public.note and "prior" not in public.note
    assert "log-odds" in review.note and "prior" in review.note


def test_what_was_recorded_stays_as_it_is() -> None:
    """Counts, ids and taxa of the plain edition are those of the edition."""
    edition = an_edition("public")
    plain = in_plain_words(edition)

    assert plain.findings is edition.findings and plain.claims is edition.claims
    assert [context.id for context in plain.project.contexts] == [context.id for context in edition.project.contexts]
    assert plain.project.counts is edition.project.counts


@pytest.mark.parametrize(
    ("written", "shown"),
    [("Zea mays", "corn (Zea mays)"), ("cf. Zea mays", "probably corn (Zea mays)"), ("type 3", "type 3")],
)
def test_tables_lead_with_the_common_name(written: str, shown: str) -> None:
    """The scientific name stands in brackets; a name that no pack knows stays as written."""
    chart = Chart(
        id="a", svg="", title="", alt="", note="", columns=("Taxon", "Part"), measures=("", ""), rows=((written, "x"),)
    )

    told = led_by_common_names(chart, an_edition("public").packs)

    assert (told.columns[0], told.rows[0][0]) == ("Plant", shown)


def test_how_well_a_month_is_known_is_written_out() -> None:
    """No code of the packs stands on a page."""
    chart = Chart(
        id="a", svg="", title="", alt="", note="", columns=("Taxon", "How well known"), measures=("", ""),
        rows=(("Vitis", "memory-M"),),
    )  # fmt: skip

    told = [with_known_in_words(chart, Wording(an_edition(audience))).rows[0][1] for audience in ("review", "public")]

    assert told == ["from memory, medium confidence; check it in print", "from memory, not looked up yet"]
