"""What an approval covers: words, and the figures and claims that they rest on; not the manner of drafting."""

from __future__ import annotations

from dataclasses import replace

import pytest

from narrate.drafts.draft_file import DraftFile, approval_in, draft_text, read_draft, unread_approval
from narrate.drafts.merge import Merged, merged
from narrate.drafts.offered import Base, Drafted

SIGNED = "---\napproved: {by: A. Analyst, on: 2026-11-25}\n---\n"
CLAIMS = {"C1/fuel.maize-cob": "supports"}


def a_sentence(key: str, text: str, **figures: str) -> Drafted:
    return Drafted(key=key, text=text, refs=(f"C1/{key}",), figures=figures, heading="Fuel", paragraph=1)


DRAFT = (
    a_sentence("aaaa", "Wood was burned.", wood="14"),
    a_sentence("bbbb", "Cobs were burned (12).", cupules="12"),
)


def signed(draft: tuple[Drafted, ...] = DRAFT) -> Merged:
    """Told, approved, told again."""
    first = merged(None, None, draft, claims=CLAIMS)
    return merged(first.base, read_draft(SIGNED + draft_text(first.file)), draft, claims=CLAIMS)


def again(before: Merged, draft: tuple[Drafted, ...], claims: dict[str, str] = CLAIMS) -> Merged:
    return merged(before.base, before.file, draft, claims=claims)


def texts(result: Merged) -> list[str]:
    return [line.text for line in result.file.lines()]


def edited(before: Merged, old: str, new: str) -> tuple[Base, DraftFile]:
    return before.base, read_draft(draft_text(before.file).replace(old, new))


def test_every_sentence_of_an_approved_file_is_approved() -> None:
    """Drafted or not: she read it and put her name to it."""
    result = signed()

    assert result.approved == {0, 1}
    assert result.is_approved and not result.has_lapsed


def test_other_words_of_narrate_for_the_same_figures_change_nothing() -> None:
    """A new version drafts otherwise: what she approved stays, word for word, and stays approved."""
    reworded = tuple(replace(s, text=f"In other words: {s.text}") for s in DRAFT)
    result = again(signed(), reworded)

    assert texts(result) == ["Wood was burned.", "Cobs were burned (12)."]
    assert result.is_approved and result.edited == frozenset() and result.stale == {}


def test_approved_words_outlive_a_draft_that_is_no_longer_told() -> None:
    """The new version leaves a sentence out, while what it rests on is as it was: it stays."""
    other = a_sentence("cccc", "Wood and cobs were burned.", wood="14", cupules="12")
    result = again(signed(), (replace(other, refs=("C1/other",)),))

    assert texts(result) == ["Wood was burned.", "Cobs were burned (12)."]
    assert result.is_approved


def test_a_changed_figure_lapses_its_sentence_and_no_other() -> None:
    """Cupules were 12 and are 19: that sentence is drafted anew and waits; the other is approved still."""
    now = (DRAFT[0], a_sentence("bbbb", "Cobs were burned (19).", cupules="19"))
    result = again(signed(), now)
    later = again(result, now)

    for told in (result, later):
        assert texts(told) == ["Wood was burned.", "Cobs were burned (19)."]
        assert told.approved == {0}
        assert told.lapses == ("cupules: 12, now 19",)


def test_a_claim_that_fell_lapses_the_approval_and_no_sentence() -> None:
    """No sentence speaks of the claim: the approval as a whole has lapsed, each sentence stands."""
    result = again(signed(), DRAFT, {"C1/fuel.maize-cob": "suggests"})

    assert result.lapses == ("'C1/fuel.maize-cob' fell from supports to suggests",)
    assert result.approved == {0, 1} and not result.is_approved


def test_a_claim_that_came_lapses_the_approval() -> None:
    """What is approved may be right and yet not all."""
    result = again(signed(), DRAFT, CLAIMS | {"C1/food.nut": "suggests"})

    assert result.lapses == ("C1/food.nut: new, suggests",)


def test_figures_that_come_back_are_approved_again() -> None:
    """A miscount corrected: what she read is what is there."""
    now = (DRAFT[0], a_sentence("bbbb", "Cobs were burned (19).", cupules="19"))
    result = again(again(signed(), now), DRAFT)

    assert texts(result) == ["Wood was burned.", "Cobs were burned (12)."]
    assert result.is_approved


def test_a_sentence_edited_after_the_approval_waits() -> None:
    """The old date does not cover new words; a new date does."""
    base, hers = edited(signed(), "Wood was burned.", "Much oak was burned.")
    later = merged(base, hers, DRAFT, claims=CLAIMS)
    renewed = merged(*edited(later, "2026-11-25", "2026-12-01"), DRAFT, claims=CLAIMS)

    assert later.approved == {1} and not later.has_lapsed
    assert renewed.approved == {0, 1} and renewed.is_approved


def test_a_new_sentence_with_new_figures_is_offered_and_waits() -> None:
    """A new find: offered as everywhere, and not covered."""
    result = again(signed(), (*DRAFT, a_sentence("cccc", "Acorns too (3).", acorns="3")))

    assert texts(result)[-1] == "Acorns too (3)."
    assert result.approved == {0, 1}


def test_an_approval_taken_back_covers_nothing() -> None:
    """She deletes the line: drafts are renewed again."""
    base, hers = edited(signed(), SIGNED, "")
    reworded = tuple(replace(s, text=f"In other words: {s.text}") for s in DRAFT)
    result = merged(base, hers, reworded, claims=CLAIMS)

    assert result.approved == frozenset()
    assert texts(result)[0] == "In other words: Wood was burned."


def test_an_approved_sentence_that_she_edited_is_stale_when_its_figures_change() -> None:
    """Approved or not, hers stays, listed with the reason, and waits."""
    first = merged(None, None, DRAFT, claims=CLAIMS)
    hers = read_draft(SIGNED + draft_text(first.file).replace("Cobs were burned (12).", "Cobs were the fuel."))
    own = merged(first.base, hers, DRAFT, claims=CLAIMS)
    result = again(own, (DRAFT[0], a_sentence("bbbb", "Cobs were burned (19).", cupules="19")))

    assert own.is_approved
    assert texts(result)[1] == "Cobs were the fuel."
    assert result.approved == {0}
    assert [stale.reasons for stale in result.stale.values()] == [("cupules: 12, now 19",)]


WRITTEN = {
    "approved: {by: A. Analyst, on: 2026-11-25}": ("A. Analyst", "2026-11-25"),
    "approved: {on: 2026-11-25, by: A. Analyst}": ("A. Analyst", "2026-11-25"),
    "approved: {by: Analyst, A., on: 2026-11-25}": ("Analyst, A.", "2026-11-25"),
    'approved: {by: "Analyst, A.", on: 2026-11-25}': ("Analyst, A.", "2026-11-25"),
    "approved: by: A. Analyst, on: 25 November 2026": ("A. Analyst", "25 November 2026"),
    "approved:\n  by: A. Analyst\n  on: 2026-11-25\ntitle: x": ("A. Analyst", "2026-11-25"),
    "title: x\napproved: {by: 'O’Analyst'}": ("O’Analyst", ""),
}


@pytest.mark.parametrize("front", WRITTEN)
def test_approvals_are_read_in_every_form_of_the_line(front: str) -> None:
    """In one line or several, with commas in a name, in either order."""
    found = approval_in(front + "\n")

    assert found is not None and (found.by, found.on) == WRITTEN[front]


UNREAD = ("approved: yes", "aproved: {by: A}", "Approved: {by: A}", "approved: {on: 2026-11-25}")


@pytest.mark.parametrize("front", UNREAD)
def test_a_line_that_seems_to_approve_and_does_not_is_named(front: str) -> None:
    """It counts for nothing, and that is not left unsaid."""
    file = read_draft(f"---\n{front}\n---\nWords.\n")

    assert file.approval is None and unread_approval(file) == front


def test_a_front_of_other_things_is_let_be() -> None:
    """Titles and tags of her editor are hers."""
    assert unread_approval(read_draft("---\ntitle: Approach\ntags: [fuel]\n---\nWords.\n")) == ""
