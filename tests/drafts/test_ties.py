"""Lines and drafts that belong together, found again."""

from __future__ import annotations

from narrate.drafts.draft_file import draft_text, read_draft
from narrate.drafts.merge import Merged, merged
from narrate.drafts.offered import Drafted


def a_sentence(key: str, text: str, *refs: str, figures: dict[str, str]) -> Drafted:
    return Drafted(key=key, text=text, refs=refs, figures=figures, heading="Fuel", paragraph=1)


OLD = (
    a_sentence(
        "aaaa",
        "Cobs were burned.",
        *("C1/fuel", "C1/cupules"),
        figures={"C1/fuel": "supports", "C1/cupules": "12"},
    ),
    a_sentence("bbbb", "Wood too.", "C1/wood", figures={"C1/wood": "14"}),
)
NEW = (
    a_sentence(
        "cccc",
        "Cobs were burned, and kernels were few.",
        *("C1/fuel", "C1/cupules", "C1/kernels"),
        figures={"C1/fuel": "supports", "C1/cupules": "12", "C1/kernels": "3"},
    ),
    OLD[1],
)
"""A new version of narrate tells the first sentence on one reference more, so that its mark is another."""


def after(before: str, instead: str) -> Merged:
    first = merged(None, None, OLD)
    hers = merged(first.base, read_draft(draft_text(first.file).replace(before, instead)), OLD)
    return merged(hers.base, hers.file, NEW)


def texts(result: Merged) -> list[str]:
    return [line.text for line in result.file.lines()]


def test_an_edited_sentence_follows_its_draft_to_another_mark() -> None:
    """Hers stays, is tied to the new draft, is not stale, and nothing is offered beside it."""
    result = after("Cobs were burned.", "Cobs were the fuel.")

    assert texts(result) == ["Cobs were the fuel.", "Wood too."]
    assert result.file.lines()[0].keys == ("cccc",)
    assert result.stale == {}


def test_a_sentence_deleted_under_its_old_mark_stays_deleted() -> None:
    """What it rests on is as it was: the same sentence told anew is not offered."""
    assert texts(after("Cobs were burned. <!-- aaaa -->\n", "")) == ["Wood too."]


def test_an_untouched_sentence_is_renewed_where_it_stands() -> None:
    """She moved it to the end: there the new draft stands."""
    moved = "Wood too. <!-- bbbb -->\nCobs were burned. <!-- aaaa -->"
    result = after("Cobs were burned. <!-- aaaa -->\nWood too. <!-- bbbb -->", moved)

    assert texts(result) == ["Wood too.", "Cobs were burned, and kernels were few."]


def test_sentences_that_share_less_than_half_are_two() -> None:
    """One of three references in common: the old goes, the new is offered."""
    other = a_sentence("dddd", "Ash lay there.", "C1/fuel", "C1/ash", figures={"C1/fuel": "supports", "C1/ash": "1"})
    first = merged(None, None, OLD)
    hers = read_draft(draft_text(first.file) + "\nMy own words.\n")
    result = merged(first.base, hers, (other, OLD[1]))

    assert result.file.lines()[0].keys == ("dddd",)
    assert "aaaa" not in result.base.sentences
