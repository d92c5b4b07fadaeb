"""Plants that many take for newcomers, and marks that nobody took: told once of the whole dig."""

from __future__ import annotations

from collections.abc import Mapping

from narrate.model.ids import SITE, Subject
from narrate.model.narrative import Narrative
from tests.telling.told_once import ToldOnce

Told = Mapping[str, Mapping[Subject, Narrative]]


def dig(told: Told, audience: str = "report") -> str:
    return told[audience][Subject(level="site", id=SITE)].text


def test_purslane_and_carpetweed_were_here_before_contact(told_of_example: ToldOnce):
    """Chapman, Stewart and Yarnell 1974 for both, Byrne and McAndrews 1975 for purslane: the conclusions were read."""
    assert (
        "Purslane and carpetweed, often taken for newcomers, have been in the region since long before contact and are "
        "counted as plants of their phases (see Byrne and McAndrews 1975; Chapman et al. 1974)." in dig(told_of_example)
    )


def test_their_fresh_seeds_are_told_with_where_they_lay(told_of_example: ToldOnce):
    """Uncharred purslane: four in C08, three in C16, 82 in C20."""
    assert "Uncharred seeds (89 of purslane) lay in C08, C16, and C20: it grows on the spot today" in dig(
        told_of_example
    )


def test_sizes_that_nobody_measured_are_told_where_crops_are_read(told_of_example: ToldOnce):
    """Smith 1985 (chenopod) and Mueller 2017 (erect knotweed) tell crop from wild kin by coat and size."""
    text = dig(told_of_example)

    assert "No measured size of a seed or a coat is on record" in text
    assert "sumpweed (46), and sunflower (8) wait to be measured" in text


def test_a_fragment_named_cf_is_taken_once_from_the_whole_seeds(told_of_example: ToldOnce):
    """Of chenopod 765 rows of firm, whole seeds stand in the sheets: one fragment is named cf. and is one thing."""
    assert "whole seeds of chenopod (765)" in dig(told_of_example)


def test_visitors_are_not_told_of_measuring(told_of_example: ToldOnce):
    """It is work for a laboratory."""
    assert "measured size" not in dig(told_of_example, "public")


def test_sprouted_seeds_are_quoted_where_they_are_set_aside(told_of_example: ToldOnce):
    """C20: lambsquarters 'shiny, several sprouted' and chickweed 'fresh' in S047 and S048."""
    text = told_of_example["report"][Subject(level="context", id="C20")].text

    assert "“shiny, several sprouted” of lambsquarters, and “fresh” of common chickweed" in text


def test_two_like_contexts_without_a_reading_in_common_differ(told_of_example: ToldOnce):
    """The two late hearths: cobs in C11, kernels and beans in C12."""
    text = told_of_example["report"][Subject(level="phase", id="late")].text

    assert "The two hearths (C11 and C12) differ: C11 alone speaks for maize cobs as fuel" in text


def test_tips_are_told_where_no_slow_build_up_is_read(told_of_example: ToldOnce):
    """C14 was filled 'in three tips', C22 in 'a single black tip': dumps, and no slow gathering of small losses."""
    for id, quote in (("C14", "in three tips"), ("C22", "a single black tip"), ("C04", "basket-loads")):
        text = told_of_example["report"][Subject(level="context", id=id)].text
        assert quote in text and "slow build-up" not in text


def test_crops_without_a_reading_of_the_phase_are_told_with_their_samples(told_of_example: ToldOnce):
    """Squash rind: 2 + 4 + 1 + 3 + 2 + 13 + 2 + 1 pieces in eight early samples; late chenopod in six."""
    early = told_of_example["report"][Subject(level="phase", id="early")].text
    late = told_of_example["report"][Subject(level="phase", id="late")].text

    assert "In 8 of 23 samples lay 28 pieces of squash rind (*Cucurbita* sp.), from which nothing is read" in early
    assert "In 6 of 27 samples lay 12 chenopod seeds" in late
