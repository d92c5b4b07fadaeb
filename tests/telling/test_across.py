"""Phases and the dig are told across their contexts: what carries a reading, what stands against it, what it means."""

from __future__ import annotations

import re
from dataclasses import replace
from typing import TYPE_CHECKING

import pytest

from narrate.judging.judge import judge
from narrate.measures.findings import find
from narrate.model.claims import Claims
from narrate.model.ids import Subject
from narrate.model.narrative import Narrative
from narrate.telling.tell import narratives
from tests.telling.told_once import ToldOnce

if TYPE_CHECKING:
    from narrate.pipeline.judged import Judged

SITE = Subject(level="site", id="site")
EARLY, LATE = (Subject(level="phase", id=id) for id in ("early", "late"))


@pytest.fixture(scope="module")
def report(told_of_example: ToldOnce) -> dict[Subject, Narrative]:
    return told_of_example["report"]


def test_what_is_a_hint_in_its_own_context_carries_nothing_in_its_phase(report: dict[Subject, Narrative]):
    """Tobacco rests on two seeds in C15, which its own page calls a hint; the phase names it as no more than that."""
    (hints,) = [s.text for s in report[LATE].sentences() if s.text.startswith("No more than hints")]
    assert "the handling of tobacco (two items, 64%)" in hints
    assert "The handling of tobacco is no more than a hint" in report[Subject(level="context", id="C15")].text


def test_a_reading_of_all_fires_is_told_as_that(judged_example: Judged):
    """Nutshell as fuel, were C01 and C10 as firm as C03, is told of all fires of the early hamlet."""
    whole = judged_example
    firm = {
        subject: tuple(
            replace(c, grade="supports", stability=0.9) if c.id in ("C01/fuel.nutshell", "C10/fuel.nutshell") else c
            for c in whole.claims.about(subject)
        )
        for subject in whole.claims.by_subject
    }
    claims = Claims(by_id={c.id: c for group in firm.values() for c in group}, by_subject=firm)

    told = narratives(whole.project, whole.packs, whole.findings, claims, "report")

    where = "ll three features made for fire (C01, C03, and C10) and nothing else, though not the phase as a whole"
    assert where in told[EARLY].text


def test_exceptions_are_named_with_what_they_mean(report: dict[Subject, Narrative]):
    """Cobs were fuel in the late hamlet, but not in C12 and C17, where kernels tell another story."""
    text = report[LATE].text

    assert "in C12 kernels outnumber what whole ears would bring (273 kernels, of them 153 pieces, to 17 cob" in text
    assert re.search(r"([Ww]hat lay|remains) there (is|are) read as .*accidental burning of food.*\(C12\)", text)


def test_what_one_phase_alone_reads_is_told_of_it(report: dict[Subject, Narrative]):
    """Native seed crops are the early hamlet's food, maize the late one's; nuts are of both."""
    text = report[SITE].text

    assert "The Early hamlet alone supports native seed crops as food" in text
    assert "the Late hamlet alone supports maize as food" in text
    assert re.search(r"[Bb]oth phases (alike the remains )?support nuts as food", text)


def test_a_dig_of_several_phases_pools_no_reading_of_theirs(report: dict[Subject, Narrative]):
    """Kernels in so many samples of both hamlets together are of no time, and are not told."""
    assert "23 of 51 samples" not in report[SITE].text


def test_the_few_finds_against_a_change_are_placed(report: dict[Subject, Narrative]):
    """Maize of the early hamlet and native seeds of the late one: in which deposits, how many, how secure."""
    text = report[SITE].text

    assert re.search(r"maize.* C01 \(1 item\), C04 \(2\), C07 \(3\), C08 \(2\), and C10 \(1\)", text)
    assert "C16 shares feature F7 with C08 of the Early hamlet, so that older finds in it cannot be ruled out" in text


def test_finds_of_a_shared_feature_sum_to_the_items_counted(judged_example: Judged, report: dict[Subject, Narrative]):
    """The figures in brackets are the items of the group in each context, as they were counted."""
    found = judged_example.findings
    told = re.search(r"(?:come from|confined to) ([^;]*?), with (\w+) items in all", report[SITE].text)
    assert told is not None
    figures = {id: int(n) for id, n in re.findall(r"(C\d+) \((\d+)(?: items?)?\)", told[1])}
    parts = ("seed", "grain", "achene", "nutlet")
    native = {id for id, taxon in judged_example.packs.taxa.items() if "native-crop" in taxon.tags}
    for id, n in figures.items():
        tallies = found.of(Subject(level="context", id=id)).tallies
        assert n == sum(t.counted for t in tallies if t.taxon in native and t.part in parts)


def test_recovery_is_weighed_as_a_cause(report: dict[Subject, Narrative]):
    """The change is looked for among samples of one method of flotation, and marked seeds are told by phase."""
    text = report[SITE].text

    assert "The way of flotation does not account for the change" in text
    assert "floated by machine" in text and "floated by bucket" in text


def test_a_change_of_method_is_not_told_as_harmless(judged_example: Judged):
    """Where one phase was floated by one method and the other by another, nothing is said to rule recovery out."""
    whole = judged_example
    early = {c.id for c in whole.project.contexts if c.phase == "early"}
    samples = tuple(replace(s, method="bucket" if s.context in early else "machine") for s in whole.project.samples)
    told = narratives(replace(whole.project, samples=samples), whole.packs, whole.findings, whole.claims, "report")

    assert "does not account for the change" not in told[SITE].text
    assert "floated by other methods" in told[SITE].text


def test_other_digs_are_cited_with_their_figures(report: dict[Subject, Narrative]):
    """Hickory beside three published villages of the region: shares of flotation samples (Gremillion 1998)."""
    text = report[SITE].text

    said = "Hickory nutshell was in 46 of 51 samples here (90%, 95% interval 79–96%), within the range of three later"
    assert f"{said} villages" in text
    assert "(see Gremillion 1998)" in text


def test_nothing_is_compared_where_no_figure_is_known(judged_example: Judged):
    """Without a published figure the dig is set beside no other."""
    whole = judged_example
    told = narratives(
        whole.project, replace(whole.packs, elsewhere=()), whole.findings, whole.claims, "report"
    )  # fmt: skip

    assert "villages" not in told[SITE].text


@pytest.mark.parametrize(("id", "most"), [("C10", 11), ("C15", 12), ("C20", 15)])
def test_a_poor_deposit_gets_a_short_text(report: dict[Subject, Narrative], id: str, most: int):
    """Under 50 items: few sentences, and hints that chance could undo in one of them."""
    sentences = report[Subject(level="context", id=id)].sentences()

    assert len(sentences) <= most, [s.text for s in sentences]
    assert sum("drawn anew" in s.text for s in sentences) <= 1


def test_shells_rank_no_nuts_within_the_range_of_the_factor(judged_example: Judged, report: dict[Subject, Narrative]):
    """
    Acorn to hickory by shell at 50 times, with 5 and 200 as the ends: the factor of Yarnell and Black 1985 and the
    range of Lopinot 1983, as Gremillion gives them (Excavating Occaneechi Town, "Nuts"). Some acorn shell was not
    weighed, so that there is no upper end.
    """
    shells = judged_example.findings.of(EARLY).tallies
    acorn = sum(t.mass_g or 0 for t in shells if t.taxon == "Quercus" and t.part in ("nutshell", "acorn shell"))
    hickory = sum(t.mass_g or 0 for t in shells if t.taxon == "Carya" and t.part == "nutshell")
    low, middle, high = (f"{factor * acorn / hickory:.1f}" for factor in (5, 50, 200))
    come_to = f"acorns come to at least {middle} times hickory nuts (at least {low} at 5 and {high} at 200)"

    assert f"{come_to}, so that the shells do not say" in report[EARLY].text


def test_a_rich_deposit_does_not_speak_for_its_phase(report: dict[Subject, Narrative]):
    """Two fifths of the native seeds of the early hamlet lay in one burned store, and the text says what that means."""
    text = report[EARLY].text

    assert "550 (41%) lay in storage pit C05, which is read as the burning of stored food where it was kept" in text
    assert "is better seen in the number of samples" in text


def test_weight_of_nutshell_stands_beside_its_spread(report: dict[Subject, Narrative]):
    """Less shell by litre in the late hamlet; what is left without the richest context is told of both hamlets."""
    text = report[SITE].text

    assert "0.04 g per litre against 0.09 in the Early hamlet" in text
    assert "without the richest context of each (refuse pit C22 and earth oven C03) it is 0.02 against 0.03" in text


def test_what_two_of_three_phases_read_is_told_of_both(judged_example: Judged):
    """With a third phase, cut from the late one, what two of the three read is told of the two together."""
    whole = judged_example
    phases = whole.project.phases
    third = replace(phases[1], id="last", name="Last hamlet", start=1400, end=1500)
    contexts = tuple(replace(c, phase="last") if c.id in ("C16", "C17") else c for c in whole.project.contexts)
    project = replace(whole.project, phases=(*phases, third), contexts=contexts)
    findings, claims = find(project, whole.packs), judge(project, whole.packs, replicates=40, seed=1)
    told = narratives(project, whole.packs, findings, claims, "report")

    said = r"The (Early|Late) hamlet and the (Late|Last) hamlet (at least )?(suggest|support|are consistent)"
    assert re.search(said, told[SITE].text), told[SITE].text


def test_the_team_is_told_of_each_phase_what_the_report_is(judged_example: Judged):
    """The review of the dig reads native crops and maize of the phases that do, as the report does."""
    whole = judged_example
    told = narratives(whole.project, whole.packs, whole.findings, whole.claims, "review", ("site",))
    text = next(iter(told.values())).text

    assert re.search(r"The Early hamlet alone [^.]*native seed crops[^.]*the Late hamlet alone [^.]*maize", text)
    assert not re.search(r"(The remains|They) (support|suggest) [^.]*native seed crops[^.]* as food", text)
    assert "spread of cob parts" not in text and "cannot be said" not in text


def test_what_is_only_suggested_is_not_borne_out(judged_example: Judged):
    """Contexts that suggest a reading never stand under one verb with those that support it, unless that is said."""
    whole = judged_example
    told = narratives(whole.project, whole.packs, whole.findings, whole.claims, "report", ("phase", "site"))
    texts = [s.text for n in told.values() for s in n.sentences()]
    assert any("maize cobs as fuel, which C15 only suggests" in text for text in texts)
    late = told[LATE].text
    assert re.search("C14, C16, and C22 suggest nuts", late)


WORN = {"does so": 1, "borne out": 2, "upheld by": 2, "backed by": 2, "none of the nine contexts": 1}
"""Phrases and how often a text may have them (judgement of the makers)."""


@pytest.mark.parametrize("subject", [EARLY, LATE, SITE])
def test_no_phrase_of_lists_is_worn(report: dict[Subject, Narrative], subject: Subject):
    """What contexts speak for is told in thoughts, not in a catalogue of one phrase."""
    text = report[subject].text

    assert {phrase: n for phrase, most in WORN.items() if (n := text.count(phrase)) > most} == {}


def test_contexts_are_told_with_the_reading_that_they_carry(report: dict[Subject, Narrative]):
    """Under the heading of food no reading needs to be called food again."""
    assert re.search(
        r"C03 (speaks? for|argues? for|(?:is|are) evidence for) nuts, which C04 and C08 only suggest; "
        r"C01, C04, C05, C06, and C07 for native seed crops, which C02 and C08 only suggest",
        report[EARLY].text,
    )


WORDS_OF_SUPPORT = r"(?:speaks? for|argues? for|(?:is|are) evidence for)"


@pytest.mark.parametrize(
    ("subject", "told"),
    [
        (EARLY, r"C04 alone suggests nuts as food"),
        (EARLY, r"C05 alone speaks for the burning of stored food where it was kept, and suggests the charring of "),
        (LATE, r"C12 alone speaks for maize as food, and the accidental burning [^;.]*, and suggests pulses as food"),
        (SITE, r"Among the storage pits, [^.;]* and suggest oily seeds as food \(C06\)"),
        (SITE, r"those of the Late hamlet suggest maize as food, and waste from the shelling of maize \(C14\)"),
        (SITE, r"C01, C04, C05, C06, and C07 are evidence for native seed crops, which C02 and C08 only suggest"),
    ],
)
def test_words_of_support_do_not_cover_what_is_suggested(report: dict[Subject, Narrative], subject: Subject, told: str):
    """Where like is compared with like, too, each place is told by its own grade (house rule of wording)."""
    assert re.search(told.replace("are evidence for", WORDS_OF_SUPPORT), report[subject].text)


def test_phases_are_told_beside_each_other(report: dict[Subject, Narrative]):
    """What contexts of the one phase and of the other speak for stands in one sentence."""
    assert re.search(
        r"n the Early hamlet C03 (speaks for|argues for|is evidence for) nutshell as fuel, which C01 only suggests, "
        r"and in the Late hamlet C11 and C13 (speak for|argue for|are evidence for) maize cobs as fuel, "
        r"which C15 only suggests, each in that phase alone",
        report[SITE].text,
    )


def test_fruit_is_gathered_and_not_harvested(report: dict[Subject, Narrative], told_of_example: ToldOnce):
    """Harvest is a word for crops, told beside fruit of old fields or not."""
    review = told_of_example["review"]

    for told in (report, review):
        assert not [s.id for s, n in told.items() if "harvesting and gathering of fruit" in n.text]


def test_visitors_are_told_of_food_in_turns(told_of_example: ToldOnce):
    """'People used … as food' stands once under the heading of food."""
    told = told_of_example["public"]

    for subject in (EARLY, LATE, SITE):
        for section in told[subject].sections:
            text = " ".join(s.text for paragraph in section.paragraphs for s in paragraph)
            assert len(re.findall(r"people used [^.]* as food", text)) <= (1 if section.id == "food" else 2), text
