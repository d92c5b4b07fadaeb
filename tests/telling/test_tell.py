"""Every narrative of a small hand-made dig, for each audience."""

from __future__ import annotations

import pickle
import re
from collections import Counter
from collections.abc import Callable, Sequence
from dataclasses import replace

import pytest

from narrate.model.claims import Claims
from narrate.model.findings import Findings
from narrate.model.ids import Subject
from narrate.model.narrative import Narrative
from narrate.model.packs import Packs
from narrate.model.project import Project
from narrate.model.sampling import SizeClass
from narrate.pipeline.judged import Judged
from narrate.telling.glossary import unexplained
from narrate.telling.page import OPENINGS_AT_MOST, opening
from narrate.telling.readability import grade
from narrate.telling.tell import narratives
from tests.telling.told_once import ToldOnce

Told = Callable[[str], dict[Subject, Narrative]]
AUDIENCES = ("report", "review", "public")
BANNED = re.compile(
    r"\b(prove[sdn]?|shows? that|showed that|must have|certainly|occupied in|undoubtedly|clearly|obviously|abandoned|"
    r"did not (?:use|eat|grow|burn)|never (?:ate|used|grew))\b",
    re.IGNORECASE,
)
each_audience = pytest.mark.parametrize("audience", AUDIENCES)


def context(id: str) -> Subject:
    return Subject(level="context", id=id)


@each_audience
def test_every_subject_is_told(told: Told, project: Project, audience: str):
    """Every sample, context, phase, feature of several contexts and the dig have a narrative."""
    expected = {Subject(level="sample", id=s.id) for s in project.samples}
    expected |= {context(c.id) for c in project.contexts}
    expected |= {Subject(level="phase", id=p.id) for p in project.phases}
    expected |= {Subject(level="feature", id="F4"), Subject(level="site", id="site")}

    assert set(told(audience)) == expected


@each_audience
def test_levels_left_out_change_no_word_of_the_rest(
    told: Told, project: Project, packs: Packs, findings: Findings, claims: Claims, audience: str
):
    """A report asks for contexts, phases and the dig alone, and gets what it would get with samples and features."""
    whole = told(audience)
    found = narratives(project, packs, findings, claims, audience, ("context", "phase", "site"))

    assert found == {s: n for s, n in whole.items() if s.level in ("context", "phase", "site")}
    assert len(found) < len(whole)


@each_audience
def test_every_sentence_names_what_it_rests_on(told: Told, claims: Claims, findings: Findings, audience: str):
    """References are never empty, and each is a claim, a tally, a measure or a record of a known subject."""
    tallies = {t.ref for found in findings.subjects.values() for t in found.tallies}
    ids = {subject.id for subject in findings.subjects}
    for narrative in told(audience).values():
        for sentence in (*narrative.sentences(), narrative.summary):
            assert sentence is not None and sentence.refs
            for ref in sentence.refs:
                head, _, tail = ref.rpartition("/")
                known = ref in claims.by_id or ref in tallies
                assert known or (head in ids and (tail == "record" or tail.startswith("measure."))), ref


@each_audience
def test_no_sentence_is_said_twice_on_a_page(told: Told, audience: str):
    """A page says each thing once."""
    for narrative in told(audience).values():
        texts = [sentence.text for sentence in narrative.sentences()]

        assert len(texts) == len(set(texts)), narrative.title


@each_audience
def test_no_opening_is_worn_out(told: Told, audience: str):
    """At most three sentences of a page open with the same two words."""
    for narrative in told(audience).values():
        worn = Counter(opening(sentence.text) for sentence in narrative.sentences())

        assert all(times <= OPENINGS_AT_MOST for times in worn.values()), (narrative.title, worn.most_common(2))


@each_audience
def test_wording_stays_within_what_remains_allow(told: Told, audience: str):
    """No text proves, shows that, or tells absence as non-use."""
    for narrative in told(audience).values():
        assert not BANNED.search(narrative.text), BANNED.search(narrative.text)


@each_audience
def test_no_two_contexts_share_a_paragraph(told: Told, audience: str):
    """Each context has paragraphs of its own."""
    paragraphs = [
        " ".join(s.text for s in paragraph)
        for subject, narrative in told(audience).items()
        if subject.level == "context"
        for section in narrative.sections
        for paragraph in section.paragraphs
    ]

    assert len(paragraphs) == len(set(paragraphs))


@each_audience
def test_the_same_input_gives_the_same_words(
    project: Project, packs: Packs, findings: Findings, claims: Claims, told: Told, audience: str
):
    """Telling twice gives equal narratives."""
    assert narratives(project, packs, findings, claims, audience) == told(audience)


@each_audience
def test_sentences_are_whole(told: Told, audience: str):
    """Every sentence has a capital or a name first, one stop last, and no hole left by a missing word."""
    for narrative in told(audience).values():
        for sentence in narrative.sentences():
            text = sentence.text
            assert re.match(r"[“*]?[A-Z]", text), text
            assert text.endswith(".") and not text.endswith(".."), text
            assert not re.search(r"  |\{|\}|\bNone\b|\(\)| ,| \.|,,|;,|\bnan\b", text), text


@each_audience
def test_numbers_agree_with_their_nouns(told: Told, audience: str):
    """One kernel is, 12 kernels are."""
    wrong = re.compile(
        r"(?<![.,\d])\b(one|1) (kernels|cupules|seeds|items|samples|contexts|pieces|taxa|litres)\b|"
        r"\b(?<!-)(two|three|12|96) (kernel|cupule|seed|item|sample|context|piece|taxon|litre)\b|"
        r"\bThere were (one|a single)\b|\b(come|are) one\b"
    )
    for narrative in told(audience).values():
        assert not wrong.search(narrative.text), wrong.search(narrative.text)


def test_public_pages_read_at_grade_eight_or_below(told: Told):
    """Each visitor's page of some length stays at reading grade 8 or below (Kincaid et al. 1975)."""
    for narrative in told("public").values():
        assert grade(narrative.text) <= 8, (narrative.title, grade(narrative.text))


def test_public_pages_use_no_unexplained_trade_word(told: Told, packs: Packs):
    """Visitors meet no trade word that the glossary leaves unexplained, and no Latin."""
    for narrative in told("public").values():
        assert unexplained(narrative.text, packs.audiences["public"]) == ()
        assert "*" not in narrative.text.replace(r"\*", "")


def test_latin_is_given_once_a_page_in_italics(told: Told):
    """The report gives each scientific name at its first use only."""
    for narrative in told("report").values():
        latin = re.findall(r"\*([A-Z][^*]+)\*", narrative.text)

        assert len(latin) == len(set(latin)), narrative.title


def test_length_follows_content(told: Told):
    """A sterile context takes one or two sentences, the richest several paragraphs."""
    report = told("report")

    assert len(report[context("C10")].sentences()) <= 2
    assert len(report[context("C18")].sentences()) <= 2
    assert len(report[context("C12")].sections) >= 3
    assert all(1 <= len(report[s].sentences()) <= 3 for s in report if s.level == "sample")


def test_sterile_context_is_not_told_as_unused(told: Told):
    """Nothing found is told as a result that speaks neither for nor against use."""
    text = told("report")[context("C10")].text

    assert "no charred plant remains" in text.lower()
    assert "neither for nor against" in text or "no sign that plants were not used" in text


def test_like_foods_are_gathered(told: Told):
    """Three food claims of one grade are one sentence, by the names of their plants."""
    text = told("report")[context("C12")].text

    assert "the use of maize, hickory nuts, and maypop as food" in text


def test_rivals_stand_side_by_side(told: Told):
    """Where cobs are read as waste and as fuel, one sentence rests on both and says that both may be true."""
    sentences = told("report")[context("C12")].sentences()
    both = [s for s in sentences if {"C12/fuel.maize-cob", "C12/processing.shelling-waste"} <= set(s.refs)]

    assert len(both) == 1
    assert any(says in both[0].text for says in ("need not exclude", "may be true", "rules out the other"))


def test_unsettled_reading_is_told(told: Told):
    """A verdict that three in four resampled counts uphold is told as unsettled."""
    assert "74%" in told("report")[context("C12")].text


def test_uncharred_seeds_are_modern_and_no_food(told: Told):
    """Uncharred seeds are taken as modern and do not enter what is read."""
    for audience in ("report", "public"):
        narrative = told(audience)[context("C09")]
        about = [s.text for s in narrative.sentences() if "143" in s.text or "about 140" in s.text.lower()]

        assert about and all("modern" in text for text in about)
        assert all("modern" in s.text for s in narrative.sentences() if "carpetweed" in s.text)


def test_review_puts_doubts_first(told: Told):
    """The team reads doubts, then readings, then what to do next."""
    ids = [section.id for section in told("review")[context("C12")].sections]

    assert ids == ["doubts", "readings", "next"]


def test_the_dig_compares_its_phases(told: Told):
    """The dig's narrative sets maize beside the native crops, with the number of samples in each phase."""
    text = told("report")[Subject(level="site", id="site")].text

    assert "Maize rose from two of nine samples" in text
    assert "Seeds of the native crops fell from seven of nine samples" in text
    assert "S015" in text and "37%" in text


def test_hostile_names_are_shown_and_do_nothing(project: Project, packs: Packs, claims: Claims, makers):
    """A phase, an id, a size class and a plant that are written in Markdown and HTML come out escaped."""
    nasty = "<img src=x> *[late](http://x)* {noun}"
    phases = tuple(replace(phase, name=nasty) for phase in project.phases)
    first = replace(project.contexts[0], id="C*03*<b>", kind="a `kind`")
    samples = tuple(
        replace(
            sample,
            context=first.id if sample.context == "C03" else sample.context,
            size_classes=(SizeClass(name=nasty, proportion_sorted=0.5),),
        )
        for sample in project.samples
    )
    hostile = replace(project, phases=phases, title=nasty, contexts=(first, *project.contexts[1:]), samples=samples)
    rows = [(nasty, "seed", "charred", 30, None), ("Zea mays", nasty, "charred", 12, None)]
    findings = makers.findings(hostile, packs, {sample.id: rows for sample in samples})
    for audience in AUDIENCES:
        for narrative in narratives(hostile, packs, findings, claims, audience).values():
            for sentence in narrative.sentences():
                assert not re.search(r"(?<!\\)[<\[`]", sentence.text), sentence.text


def test_subjects_without_claims_are_still_told(project: Project, packs: Packs, findings: Findings):
    """With nothing judged, narratives say what was found and no more."""
    empty = Claims(by_id={}, by_subject={})
    for audience in AUDIENCES:
        for narrative in narratives(project, packs, findings, empty, audience).values():
            assert narrative.sentences(), narrative.subject
            assert "support" not in narrative.text


def test_claim_whose_statement_is_unknown_is_left_out(
    project: Project, packs: Packs, findings: Findings, claims: Claims
):
    """A claim of a statement that no pack holds is not told and does no harm."""
    bare = replace(packs, statements={})

    assert narratives(project, bare, findings, claims, "report")[context("C12")].sentences()


@pytest.mark.parametrize("audience", ["report", "public"])
@pytest.mark.parametrize("left_out", ["C05", "C09", "C10", "C18"])
def test_a_context_that_is_added_rewords_no_other_page(
    project: Project, packs: Packs, findings: Findings, claims: Claims, told: Told, audience: str, left_out: str
):
    """
    Wordings turn with the id of a subject, not with its place in a list.

    Left alone are the contexts that the hearth is compared with: C03 held maypops too, C13 is another part of the same
    feature, and C15 is richer.
    """
    contexts = tuple(one for one in project.contexts if one.id != left_out)
    fewer = replace(project, contexts=contexts, samples=tuple(s for s in project.samples if s.context != left_out))
    again = narratives(fewer, packs, findings, claims, audience)
    hearth = context("C12")

    first = [s.text for section in told(audience)[hearth].sections[:3] for p in section.paragraphs for s in p]
    assert first == [s.text for section in again[hearth].sections[:3] for p in section.paragraphs for s in p]


@pytest.mark.parametrize("audience", ["report", "public", "label"])
def test_shares_of_the_subjects_are_told_as_the_whole_is(
    told_of_example: ToldOnce, judged_example: Judged, audience: str
):
    """Told by two hands that share nothing, as copies of a process do: the same narratives in the same order."""
    it = judged_example
    whole = told_of_example[audience]
    asked: list[int] = []

    def apart(jobs: Sequence[Callable[[], object]]) -> list[object]:
        asked.append(len(jobs))
        return [pickle.loads(pickle.dumps(job())) for job in reversed(jobs)][::-1]

    shared = narratives(it.project, it.packs, it.findings, it.claims, audience, at_once=apart)

    assert asked == [2]
    assert list(shared.items()) == list(whole.items())
