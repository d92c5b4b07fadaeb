"""Phrases that a person would not write, and what stands in their place."""

from __future__ import annotations

import re
from collections.abc import Mapping
from itertools import pairwise
from typing import TYPE_CHECKING

import pytest

from narrate.model.ids import SITE, Subject
from narrate.model.narrative import Narrative
from tests.telling.told_once import ToldOnce

if TYPE_CHECKING:
    from narrate.pipeline.judged import Judged

Told = Mapping[str, Mapping[Subject, Narrative]]
TRADE = ("report", "review")
PLAIN = ("public", "label")


@pytest.fixture(scope="module")
def told(told_of_example: ToldOnce) -> Told:
    return {audience: told_of_example[audience] for audience in (*TRADE, *PLAIN)}


def _texts(told: Told, *audiences: str) -> list[str]:
    return [s.text for audience in audiences for one in told[audience].values() for s in one.sentences()]


def test_a_store_is_called_what_it_is(told: Told):
    """No page says 'a store or burned building': C05 is a storage pit, and C17 a building that burned."""
    assert not [text for text in _texts(told, *TRADE, *PLAIN) if re.search(r"store or (a )?(burned )?building", text)]
    early = told["report"][Subject(level="phase", id="early")].text
    assert "C05 leaves open the season of its own deposit: chenopod, which keeps, makes up" in early
    assert "left in a building that burned" in told["report"][Subject(level="context", id="C17")].text
    late = told["public"][Subject(level="phase", id="late")].text
    assert "C17 may have burned in any season: most of it was corn, which keeps for months" in late


def test_no_note_notes(told: Told):
    """It is the record of a sample that notes something."""
    assert not [text for text in _texts(told, *TRADE) if re.search(r"\bnote on sample \S+ notes", text)]


def test_one_hint_is_one(told: Told):
    """Of a floor with one hint: 'is no more than a hint', with its own items and its own share of the draws."""
    one = "The handling of tobacco is no more than a hint: it rests on two items, and counts drawn anew at random"

    assert f"{one} uphold it in 64% of cases." in _of(told, "context", "C15")
    assert "that uphold each, are the use of maygrass" in _of(told, "context", "C10")


def test_draws_are_explained_once_a_page(told: Told):
    """Counts drawn anew at random are named in full first, and once more in short at most, each time with 'counts'."""
    pages = [narrative.text for audience in TRADE for narrative in told[audience].values()]
    named = [re.findall(r"(?i)(\w+) drawn anew( at random)?", text) for text in pages]

    assert [len(one) for one in named if len(one) > 2] == []
    assert all(word.lower() == "counts" for one in named for word, _ in one)
    assert all(one[0][1] and not any(full for _, full in one[1:]) for one in named if one)
    assert not [text for text in pages if "uch draws" in text or "so drawn" in text]


def test_several_hints_of_a_page_are_told_in_one_sentence(told: Told):
    """What the phases of the dig only hint at stands together, each with its phase and its share of the draws."""
    site = told["report"][Subject(level="site", id=SITE)].sentences()
    (text,) = [s.text for s in site if "more than" in s.text and "hint" in s.text]

    assert text.startswith("No more than hints, by the share of counts drawn anew at random")
    assert "the handling of tobacco in the Late hamlet (two items, 64%)" in text


def test_what_stands_instead_is_not_told_twice_alike(told: Told):
    """A page says 'what lay there is read as … instead' once."""
    for narrative in told["report"].values():
        assert sum("is read as" in s.text and "instead" in s.text for s in narrative.sentences()) < 2, narrative.title


def test_lists_of_two_take_no_semicolon(told: Told):
    """'Open, disturbed ground near the place, and the gathering of fruit …': a semicolon parts three things or more."""
    for text in _texts(told, *TRADE):
        for part in re.split(r": |\. ", text):
            assert part.count("; ") != 1 or "; and " not in part or ", among them" in part, text


def test_spans_of_sizes_take_a_dash(told: Told):
    """'The 0.5–1 mm class', however the class was written down."""
    assert not [text for text in _texts(told, *TRADE) if re.search(r"\d-\d+(\.\d+)? mm", text)]
    assert [text for text in _texts(told, "review") if text.startswith("Finish the 0.5–1 mm class of")]


def test_visitors_read_no_phrase_of_a_machine(told: Told):
    """Nobody burns food 'while making it', and a kernel has one germ and no heart."""
    texts = _texts(told, *PLAIN)

    assert not [text for text in texts if "while making it" in text or re.search(r"\bhearts? of\b", text)]
    assert [text for text in texts if "burned food by accident while cooking or drying it" in text]
    assert [text for text in texts if "germs of corn kernels" in text]


def test_reasons_of_whole_ears_are_no_twins(told: Told):
    """The burned house gives where the ears were kept for the one reading and that they were seen for the other."""
    texts = [s.text for s in told["report"][Subject(level="context", id="C17")].sentences()]

    assert sum("was seen still on the ear" in text for text in texts) == 1
    assert [text for text in texts if "were noted where ears are kept" in text]


def test_waste_of_shelling_stands_with_the_fire_it_was_put_on(told: Told):
    """In the smudge pit and the nut oven what was waste of work is told in the paragraph of the fire."""
    for id, waste in (("C13", "waste from the shelling of maize"), ("C03", "the cracking of nuts")):
        sections = told["report"][Subject(level="context", id=id)].sections
        homes = {one.id for one in sections if any(waste in s.text for p in one.paragraphs for s in p)}
        assert homes == {"fuel"}, id


def test_no_reading_follows_another_in_the_same_words(told: Told):
    """Two readings that follow each other do not both open with 'also consistent', 'the counts' or 'the remains'."""
    for audience in TRADE:
        for narrative in told[audience].values():
            for section in narrative.sections:
                for paragraph in section.paragraphs:
                    starts = [" ".join(s.text.split()[:2]) for s in paragraph]
                    pairs = pairwise(starts)
                    assert not [a for a, b in pairs if a == b and a.startswith("Also ")], narrative.title


def test_all_samples_are_told_as_all(told: Told):
    """'Kernels recur in all three samples', never 'in three of three'."""
    assert not [text for text in _texts(told, "report", "public") if re.search(r"\b(\w+) of \1 samples", text)]


def test_the_ground_is_quoted_in_more_than_one_way(told: Told):
    """No introduction of a quotation from the record stands on more than half of the pages that quote it."""
    pages = [one for one in told["report"].values() if one.subject.level == "context" and "“" in one.text]
    for phrase in ("leads one to expect", "n keeping with this", "as seen in the ground", "points the same way"):
        assert sum(phrase in one.text for one in pages) * 2 <= len(pages), phrase


def test_no_quotation_begins_with_a_stray_capital(told: Told):
    """Within a sentence a note begins small, unless its first word is a name."""
    quotes = [quote for text in _texts(told, *TRADE) for quote in re.findall(r"(?:has|notes) “([^”]+)”", text)]

    assert quotes and not [quote for quote in quotes if re.match(r"[A-Z][a-z-]+[ ,]", quote)]


def test_fruit_is_named_by_the_seeds_that_were_counted(told: Told):
    """Five seeds of autumn in C16 are all of grape; four of late summer in C14 are all that a hint there rests on."""
    report = told["report"]
    c16, c14 = (report[Subject(level="context", id=id)].text for id in ("C16", "C14"))

    assert "oft fruit that ripens between August and November, namely grape, was charred (5 seeds" in c16
    assert "The gathering of soft fruit in late summer is no more than a hint: it rests on four items" in c14


def test_named_fruits_add_up_to_the_seeds_of_their_sentence(told: Told, judged_example: Judged):
    """Where a reason names all its fruits, their seeds in the context are as many as the sentence says."""
    checked = 0
    for subject, narrative in told["report"].items():
        if subject.level != "context":
            continue
        seeds: dict[str, int] = {}
        for tally in judged_example.findings.subjects[subject].tallies:
            taxon = judged_example.packs.taxa.get(tally.taxon) if tally.taxon else None
            if taxon is not None and tally.part == "seed" and tally.condition == "charred":
                name = taxon.trade_name or taxon.name
                seeds[name] = seeds.get(name, 0) + tally.counted
        for names, number in re.findall(r"namely ([\w ]+), was charred \((\d+) seeds", narrative.text):
            assert sum(seeds[name] for name in names.split(" and ")) == int(number), (subject, names)
            checked += 1

    assert checked >= 4


def test_fills_of_one_pit_are_no_independent_pits(told: Told):
    """C04 and C05 are two fills of one pit: three fills are of two storage pits, wherever pits are counted."""
    early, site = (told["report"][Subject(level=n, id=id)].text for n, id in (("phase", "early"), ("site", SITE)))

    assert "the fills of two storage pits (C06, and C04 with C05 of the same pit) agree" in early
    assert "native seed crops as food (C06, and C04 with C05 of the same pit)" in site
    assert "one midden that the phases share; and two storage pits of the first phase and one of the last" in site
    assert not [text for text in _texts(told, *TRADE, *PLAIN) if re.search(r"\b(three|four) storage pits", text)]


def _of(told: Told, level: str, id: str, audience: str = "report") -> str:
    return told[audience][Subject(level=level, id=id)].text  # type: ignore[arg-type]


def test_the_same_two_seeds_get_the_same_words(told: Told):
    """Two tobacco seeds of C15 are too slight to build on for the context, for its phase and for the dig."""
    for level, id in (("context", "C15"), ("phase", "late"), ("site", SITE)):
        (text,) = [t for t in re.split(r"(?<=\.)\s", _of(told, level, id)) if "handling of tobacco" in t]
        assert re.search("(?i)no more than (a hint|hints)", text)
        assert "two items" in text and "64%" in text
    plain = _of(told, "phase", "late", "public")
    assert "faint signs that people handled tobacco here" in plain
    review = [s.text for s in told["review"][Subject(level="site", id=SITE)].sentences() if "of tobacco" in s.text]
    assert [text[:19] for text in review] == ["No more than hints,"]


def test_densities_are_minima_where_marked_seeds_were_lost(told: Told):
    """S037 of C16 returned 42% of its marked seeds: its density is told as the least, on context, phase and dig."""
    assert "at least 7.8 items per litre" in _of(told, "context", "C16")
    for level, id in (("context", "C16"), ("phase", "late"), ("site", SITE)):
        assert re.search(r"21 of 50 marked seeds.*and densities are minima", _of(told, level, id))


def test_the_strongest_reading_bears_its_caution(told: Told, judged_example: Judged):
    """Wherever a reading is 'strongly supported', a caution of its rules follows; a summary leaves it to the context."""
    checked = 0
    for subject, narrative in told["report"].items():
        sections = [section for section in narrative.sections if section.id != "summary"]
        texts = [s.text for section in sections for paragraph in section.paragraphs for s in paragraph]
        for text, after in pairwise(texts):
            if "trongly support" not in text or text.startswith("What is on record"):
                # A doubt about the deposit is a caution itself.
                continue
            cautions = [
                caution.rstrip(".").lower()
                for claim in judged_example.claims.about(subject)
                if claim.grade == "strongly supports"
                for caution in claim.misleads_when
            ]
            assert any(caution in after.lower() for caution in cautions), after
            checked += 1

    assert checked


def test_pieces_that_were_not_weighed_are_told(told: Told):
    """63 of 149 pieces of acorn shell of the early phase were never weighed: their weight is the least it can be."""
    assert "Acorn shell weighed at least 0.45 g (63 of 149 pieces were not weighed)" in _of(told, "phase", "early")


def test_what_a_context_leaves_out_its_phase_does_too(told: Told):
    """C06 is consistent with open ground in 46% of draws alone: its own page leaves it out, and so does its phase."""
    text = _of(told, "phase", "early")

    assert "though C06 is consistent with it" not in text
    assert "open, disturbed ground" not in _of(told, "context", "C06")


def test_samples_of_doubtful_deposits_are_told_as_counted(told: Told):
    """C20 is recorded as disturbed and C19 as of unknown deposit; their four samples are in the shares of the phase."""
    said = "Four samples come from C20 (2), recorded as disturbed, and from C19 (2), recorded as of unknown deposit"

    assert said in _of(told, "phase", "late") and said in _of(told, "site", SITE)


def test_beans_left_out_of_a_reason_are_told(told: Told):
    """Of 14 cotyledons of bean in C12 three are cf.; the reason counts 11 and says so."""
    text = _of(told, "context", "C12")

    assert "14 common bean cotyledons" in text
    assert "beans were charred (11 seeds or halves; three named cf. are left out)" in text


def test_no_second_sample_is_advised_of_a_lens_taken_whole(told: Told):
    """The note on S012 says that the whole of the lens was taken: no page of C05 asks for a second sample."""
    pages = [_of(told, "context", "C05", audience) for audience in TRADE]

    assert not [text for text in pages if re.search("second sample", text, re.IGNORECASE)]
    assert "the burning of stored food where it was kept" in pages[0]


def test_rare_plants_are_named(told: Told):
    """No report of a context hides a few plants behind 'six other kinds'."""
    hidden = [
        n.title for s, n in told["report"].items() if s.level == "context" and re.search(r"and \w+ other kinds", n.text)
    ]
    assert hidden == []


def test_contexts_are_named_for_each_reading_and_not_numbered_in_a_list(told: Told):
    """'In the Late hamlet C11, C13, and C15 … maize cobs': the contexts by name, no 'three and none'."""
    text = _of(told, "site", SITE)

    verb = "(speak for|argue for|are evidence for)"
    assert not re.search(r"so many (bear|contexts)|(none|one|two|three) and (none|one|two|three)[;,.]", text.lower())
    assert re.search(rf"n the Late hamlet C11 and C13 {verb} maize cobs as fuel, which C15 only suggests", text)
    assert re.search(rf"n the Early hamlet [^.]*C03 ({verb}|for) nuts, which C04 and C08 only suggest", text)
    assert re.search(r"n the Late hamlet [^.]*C14, C16, and C22 suggest nuts", text)


def test_fruit_is_picked_and_not_harvested(told: Told):
    """Crops are harvested: the word for their season is not lent to the fruit of old fields told beside it."""
    assert not [text for text in _texts(told, *TRADE) if "harvesting and gathering of fruit" in text]
    assert [text for text in _texts(told, *TRADE) if "picking of fruit in old fields" in text]
    assert not [text for text in _texts(told, *TRADE) if "gathering of fruit" in text]


def test_what_is_drawn_anew_is_said_once_of_the_dig(told: Told):
    """The first draw on the page of the dig says how often what is drawn; no other page explains it again."""
    for audience in TRADE:
        text = _of(told, "site", SITE, audience)
        assert text.count("drawn anew at random (200 times, each count anew about what was found)") == 1
    assert "200 times" not in _of(told, "context", "C15")


def test_a_long_reading_is_told_in_short_behind_its_first_telling(told: Told):
    """'The accidental burning of food during cooking, parching or drying' stands once in C12."""
    text = _of(told, "context", "C12")

    assert text.count("during cooking, parching or drying") == 1
    assert len(re.findall(r"the accident\b", text)) >= 2


def test_a_change_of_one_sample_is_none(told: Told):
    """Middens of three of three and then two of three samples show little by presence: so much chance brings."""
    text = _of(told, "site", SITE)

    assert "the fall of seeds of the native crops holds for floors and hearths" in text
    assert "middens (three of three, then two of three)" in text
    assert "show little, one sample of difference each" in text
