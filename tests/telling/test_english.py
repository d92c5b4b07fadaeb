"""Words put together: tables of cases."""

from __future__ import annotations

import pytest

from narrate.telling import english, shared_words


@pytest.mark.parametrize(
    ("phrase", "article"),
    [
        ("oven", "an"), ("hearth", "a"), ("hour", "an"), ("earth oven", "an"), ("unidentified seed", "an"),
        ("unit", "a"), ("8-litre sample", "an"), ("11-litre sample", "an"), ("18 litre sample", "an"),
        ("S014", "an"), ("C12", "a"), ("*Iva annua* achene", "an"), ("*Zea mays* kernel", "a"),
        ("European plant", "a"), ("undisturbed fill", "an"), ("useful plant", "a"),
    ],
)  # fmt: skip
def test_article_follows_the_sound(phrase: str, article: str):
    """'a' or 'an' goes by how the phrase is spoken, past Markdown marks."""
    assert english.article(phrase) == article


@pytest.mark.parametrize(
    ("items", "with_comma", "without"),
    [
        ([], "", ""),
        (["maize"], "maize", "maize"),
        (["maize", "nuts"], "maize and nuts", "maize and nuts"),
        (["maize", "nuts", "maypop"], "maize, nuts, and maypop", "maize, nuts and maypop"),
        (["a", "b and c", "d"], "a, b and c, and d", "a, b and c, and d"),
        (["maize (*Zea mays*, 12)", "nuts"], "maize (*Zea mays*, 12) and nuts", "maize (*Zea mays*, 12) and nuts"),
    ],
)
def test_lists_take_the_comma_that_the_audience_wants(items: list[str], with_comma: str, without: str):
    """The comma before 'and' follows the audience, save where an item would be misread without it."""
    assert (english.listed(items), english.listed(items, oxford=False)) == (with_comma, without)


@pytest.mark.parametrize(("number", "form"), [(0, "were"), (1, "was"), (2, "were"), (12, "were"), (1.5, "were")])
def test_only_one_is_singular(number: float, form: str):
    """1 kernel was, 12 kernels were, 0 kernels were."""
    assert english.agreed(number, "was", "were") == form


@pytest.mark.parametrize(
    ("phrases", "told"),
    [
        (["the use of maize as food", "the use of nuts as food"], "the use of maize and nuts as food"),
        (["the use of cobs as fuel", "the use of maize as food"], "the use of cobs as fuel and maize as food"),
        (["gathering in spring", "gathering in autumn"], "gathering in spring and autumn"),
        (["wood was burned as fuel", "maize was eaten"], "wood was burned as fuel and maize was eaten"),
        (["people ate corn", "people ate nuts"], "people ate corn and nuts"),
        (["burning in place", "burning in place"], "burning in place"),
        ([], ""),
    ],
)  # fmt: skip
def test_like_phrases_are_gathered(phrases: list[str], told: str):
    """Phrases that begin or end alike are told once, and never so that an article or verb is cut off."""
    assert shared_words.gathered(phrases) == told


@pytest.mark.parametrize(
    ("raw", "shown"),
    [
        ("*bold* _it_", r"\*bold\* \_it\_"),
        ("<script>alert(1)</script>", r"\<script\>alert(1)\</script\>"),
        ("[x](http://a)", r"\[x\](http://a)"),
        ("a\n# heading", r"a \# heading"),
        ("1. list", r"1\. list"),
        ("0.5-1 mm", "0.5-1 mm"),
        ("- list", r"\- list"),
        ("R&D; &amp;", r"R\&D; \&amp;"),
        ("`code`", r"\`code\`"),
        ("a\u202eb\u2066c", "a b c"),
        ("{braces} %s", "{braces} %s"),
    ],
)
def test_a_persons_text_is_shown_and_does_nothing(raw: str, shown: str):
    """Markdown and HTML in a person's text are escaped; line breaks and direction marks become spaces."""
    assert english.literal(raw) == shown


@pytest.mark.parametrize(
    ("raw", "told"),
    [
        ("the pit held nothing", "The pit held nothing."),
        ("  two   spaces , and a comma ", "Two spaces, and a comma."),
        ("*zea* stays as it is", "*Zea* stays as it is."),
        ("done already.", "Done already."),
    ],
)
def test_a_finished_sentence_has_a_capital_and_one_stop(raw: str, told: str):
    """Every sentence begins with a capital and ends with one full stop."""
    assert english.finished(raw) == told


@pytest.mark.parametrize(
    ("text", "small"),
    [
        ("Most were", "most were"),
        ("C12 held", "C12 held"),
        ("AD 900", "AD 900"),
        ("*Zea mays*", "*Zea mays*"),
        ("", ""),
    ],
)
def test_ids_and_latin_keep_their_capitals(text: str, small: str):
    """A sentence put behind another loses its capital, an id or a Latin name does not."""
    assert english.lowered(text) == small
