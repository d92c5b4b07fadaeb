"""The three-way merge: no word of hers is lost, nothing that she deleted comes back while its claim stands."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from narrate.drafts.base_file import base_text, read_base
from narrate.drafts.draft_file import Approval, DraftFile, draft_text, read_draft
from narrate.drafts.merge import Merged, merged
from narrate.drafts.offered import Base, Drafted


def a_sentence(key: str, text: str = "", heading: str = "Fuel", paragraph: int = 1, **figures: str) -> Drafted:
    return Drafted(
        key=key,
        text=text or f"Draft {key} says {figures.get('n', '1')}.",
        refs=(f"C1/{key}",),
        figures=figures or {f"n of {key}": "1"},
        heading=heading,
        paragraph=paragraph,
    )


DRAFT = (
    a_sentence("aaaa", "Wood was burned.", wood="12"),
    a_sentence("bbbb", "Cobs were burned.", cupules="12"),
    a_sentence("cccc", "Hickory was eaten.", heading="Food", paragraph=2, shell="30"),
)


def offered(draft: tuple[Drafted, ...] = DRAFT) -> tuple[Base, DraftFile]:
    first = merged(None, None, draft)
    return first.base, first.file


def edit(file: DraftFile, before: str, after: str) -> DraftFile:
    return read_draft(draft_text(file).replace(before, after))


def texts(result: Merged) -> list[str]:
    return [line.text for line in result.file.lines()]


def changed(key: str, text: str, **figures: str) -> tuple[Drafted, ...]:
    return tuple(a_sentence(s.key, text, s.heading, s.paragraph, **figures) if s.key == key else s for s in DRAFT)


def test_without_a_file_the_draft_is_the_file() -> None:
    """The first run writes headings, paragraphs and marks."""
    _, file = offered()

    assert draft_text(file) == (
        "## Fuel\n\nWood was burned. <!-- aaaa -->\nCobs were burned. <!-- bbbb -->\n\n"
        "## Food\n\nHickory was eaten. <!-- cccc -->\n"
    )


def test_an_untouched_file_becomes_the_new_draft_in_its_order() -> None:
    """Where she changed nothing, text, order and headings follow the draft."""
    base, file = offered()
    now = (a_sentence("cccc", "Oak was eaten.", "Food", 1), a_sentence("dddd", "New.", "Food", 1), DRAFT[0])

    assert draft_text(merged(base, file, now).file) == draft_text(merged(None, None, now).file)


def test_a_reworded_sentence_stays_and_the_others_follow() -> None:
    """She reworded one sentence; the neighbour whose figures changed is renewed."""
    base, file = offered()
    hers = edit(file, "Wood was burned.", "Much oak went on the fire.")
    result = merged(base, hers, changed("bbbb", "Cobs were burned often.", cupules="19"))

    assert texts(result) == ["Much oak went on the fire.", "Cobs were burned often.", "Hickory was eaten."]
    assert result.edited == {0} and result.stale == {}


def test_an_edited_sentence_whose_figures_changed_is_stale_with_the_reason() -> None:
    """Both changed: hers stays, and the reason is told in figures."""
    base, file = offered()
    hers = edit(file, "Cobs were burned.", "Cobs were the fuel.")
    result = merged(base, hers, changed("bbbb", "Cobs were burned often.", cupules="19"))

    assert texts(result)[1] == "Cobs were the fuel."
    assert [stale.reasons for stale in result.stale.values()] == [("cupules: 12, now 19",)]


def test_a_stale_sentence_stays_listed_until_she_touches_it() -> None:
    """The next run lists it again; once she changes a word of it, it is hers as it stands."""
    base, file = offered()
    now = changed("bbbb", "Cobs were burned often.", cupules="19")
    first = merged(base, edit(file, "Cobs were burned.", "Cobs were the fuel."), now)
    again = merged(first.base, first.file, now)
    touched = merged(again.base, edit(again.file, "Cobs were the fuel.", "Cobs were the main fuel."), now)

    assert len(again.stale) == 1
    assert touched.stale == {}
    assert texts(touched)[1] == "Cobs were the main fuel."


def test_figures_that_come_back_are_no_longer_stale() -> None:
    """When the count is what it was, her words stand on what she wrote them on."""
    base, file = offered()
    first = merged(base, edit(file, "Cobs were burned.", "Cobs were the fuel."), changed("bbbb", "x", cupules="19"))

    assert merged(first.base, first.file, DRAFT).stale == {}


def test_a_deleted_sentence_stays_deleted_until_its_claim_changes() -> None:
    """Deleted while cupules were 12; it comes back when they are 19, and not before."""
    base, file = offered()
    first = merged(base, edit(file, "Cobs were burned. <!-- bbbb -->\n", ""), DRAFT)
    second = merged(first.base, first.file, DRAFT)
    third = merged(second.base, second.file, changed("bbbb", "Cobs were burned often.", cupules="19"))

    assert texts(first) == texts(second) == ["Wood was burned.", "Hickory was eaten."]
    assert texts(third) == ["Wood was burned.", "Cobs were burned often.", "Hickory was eaten."]


def test_her_own_sentence_stays_where_she_put_it() -> None:
    """A line without a mark is hers alone."""
    base, file = offered()
    result = merged(base, edit(file, "\nCobs", "\nI saw ash.\nCobs"), DRAFT)

    assert texts(result) == ["Wood was burned.", "I saw ash.", "Cobs were burned.", "Hickory was eaten."]
    assert result.edited == {1} and result.stale == {}


def test_joined_sentences_are_renewed_together_while_their_words_are_the_drafts() -> None:
    """Joining two lines without changing a word keeps them together and up to date."""
    base, file = offered()
    hers = edit(file, "Wood was burned. <!-- aaaa -->\nCobs", "Wood was burned. <!-- aaaa --> Cobs")
    result = merged(base, hers, changed("bbbb", "Cobs were burned often.", cupules="19"))

    assert texts(result)[0] == "Wood was burned. Cobs were burned often."


def test_reordered_sentences_keep_her_order() -> None:
    """She moved food before fuel; a new sentence still finds its neighbour."""
    base, _ = offered()
    hers = read_draft(
        "## Food\n\nHickory was eaten. <!-- cccc -->\n\n## Fuel\n\nWood was burned. <!-- aaaa -->\n"
        "Cobs were burned. <!-- bbbb -->\n"
    )
    result = merged(base, hers, (*DRAFT, a_sentence("dddd", "Acorns too.", "Food", 2)))

    assert texts(result) == ["Hickory was eaten.", "Acorns too.", "Wood was burned.", "Cobs were burned."]


def test_a_withdrawn_draft_goes_and_its_empty_heading_with_it() -> None:
    """The only sentence under a heading is no longer told: the heading goes too."""
    base, file = offered()
    hers = edit(file, "Wood was burned.", "Oak was burned.")
    result = merged(base, hers, DRAFT[:2])

    assert draft_text(result.file) == "## Fuel\n\nOak was burned. <!-- aaaa -->\nCobs were burned. <!-- bbbb -->\n"


def test_an_edited_sentence_whose_claim_is_gone_is_kept_and_stale() -> None:
    """Her words stay; the reason quotes the draft that is no longer told."""
    base, file = offered()
    result = merged(base, edit(file, "Hickory was eaten.", "Hickory fed them."), DRAFT[:2])

    assert texts(result)[-1] == "Hickory fed them."
    assert next(iter(result.stale.values())).reasons == (
        "what it rests on is no longer told: “Hickory was eaten.”",
        "shell: 30, now not there",
    )


def test_without_a_side_file_every_line_is_hers() -> None:
    """The base is lost: nothing of the file is renewed or dropped."""
    _, file = offered()
    result = merged(None, edit(file, "Wood", "Oak"), changed("bbbb", "Cobs were burned often.", cupules="19"))

    assert texts(result)[:3] == ["Oak was burned.", "Cobs were burned.", "Hickory was eaten."]


def test_an_approval_binds_to_the_figures_and_lapses_with_them() -> None:
    """Approved on what the last run showed; when a figure changes the approval lapses, and a new date renews it."""
    base, file = offered()
    signed = read_draft("---\napproved: {by: A. Analyst, on: 2026-11-25}\n---\n" + draft_text(file))
    now = changed("bbbb", "Cobs were burned often.", cupules="19")
    first = merged(base, signed, DRAFT)
    later = merged(first.base, first.file, now)
    again = read_draft(draft_text(later.file).replace("2026-11-25", "2026-12-01"))
    renewed = merged(later.base, again, now)

    assert first.is_approved and first.file.approval == Approval(by="A. Analyst", on="2026-11-25")
    assert later.has_lapsed and not later.is_approved
    assert renewed.is_approved


def test_an_approval_given_while_the_data_changed_has_lapsed_at_once() -> None:
    """She signed what the last run showed; the counts had changed by the time of the next run."""
    base, file = offered()
    signed = read_draft("---\napproved: {by: A. Analyst, on: 2026-11-25}\n---\n" + draft_text(file))

    assert merged(base, signed, changed("bbbb", "Cobs were burned often.", cupules="19")).has_lapsed


@pytest.mark.parametrize(
    "text", ["", "{}", "[]", "null", '{"format": "other"}', '{"format": "narrate drafts 1"}', "\x00", "{" * 50]
)
def test_a_damaged_side_file_is_no_side_file(text: str) -> None:
    """Anything that narrate did not write is ignored, never believed."""
    assert read_base(text) is None


def test_a_side_file_reads_back_as_it_was_written() -> None:
    """Base, her lines and her approval survive the side file."""
    base, file = offered()
    hers = read_draft(
        "---\napproved: {by: A. Analyst, on: 2026-11-25}\n---\n" + draft_text(file).replace("Wood", "Oak")
    )
    result = merged(base, hers, changed("aaaa", "Wood was burned often.", wood="40"))

    assert read_base(base_text(result.base)) == result.base


@settings(max_examples=300)
@given(st.text(max_size=400))
def test_any_text_is_read_and_kept(text: str) -> None:
    """Whatever stands in a file is read, and its words are written again."""
    once = draft_text(read_draft(text))

    assert draft_text(read_draft(once)) == once
