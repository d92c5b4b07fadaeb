"""What each audience is told of the example project: doubts, small counts, fragments, and the same readings for all."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import TYPE_CHECKING

import pytest

from narrate.model.ids import Subject
from narrate.model.narrative import Narrative
from tests.telling.told_once import ToldOnce

if TYPE_CHECKING:
    from narrate.model.claims import Claim
    from narrate.pipeline.judged import Judged

AUDIENCES = ("report", "review", "public")
Told = Mapping[str, Mapping[Subject, Narrative]]


@pytest.fixture(scope="module")
def told(told_of_example: ToldOnce) -> Told:
    return {audience: told_of_example[audience] for audience in AUDIENCES}


def holding(judged: Judged, statement: str) -> dict[Subject, Claim]:
    return {c.about: c for c in judged.claims if c.statement == statement and c.verdict == "holds"}


def claims_told(narrative: Narrative, judged: Judged) -> set[str]:
    """Statements that a narrative's sentences and summary rest on, save those that work would serve."""
    sentences = [*narrative.sentences(), *([narrative.summary] if narrative.summary else [])]
    sentences = [sentence for sentence in sentences if "could then be " not in sentence.text]
    return {judged.claims.by_id[ref].statement for s in sentences for ref in s.refs if ref in judged.claims.by_id}


@pytest.mark.parametrize("audience", AUDIENCES)
def test_nothing_is_read_from_too_few_remains(told: Told, judged_example: Judged, audience: str):
    """Where remains are too few to be read, no audience is told a reading, and the summary says that they are few."""
    few = holding(judged_example, "integrity.too-few")
    assert sum(subject.level == "context" for subject in few) > 2
    for subject in (subject for subject in few if subject in told[audience]):
        narrative = told[audience][subject]
        questions = {statement.split(".")[0] for statement in claims_told(narrative, judged_example)}
        assert questions <= {"integrity", "work"}, (subject, narrative.text)
        if subject.level == "context":
            assert narrative.summary is not None
            assert re.search("too few|too little|nothing found", narrative.summary.text), narrative.summary.text


@pytest.mark.parametrize("audience", AUDIENCES)
def test_no_list_tells_what_a_deposit_cannot_say(told: Told, judged_example: Judged, audience: str):
    """No summary rests on plants that merely keep, or on soil that was moved."""
    for narrative in told[audience].values():
        assert narrative.summary is not None
        statements = {
            judged_example.claims.by_id[ref].statement
            for ref in narrative.summary.refs
            if ref in judged_example.claims.by_id
        }
        assert not statements & {"season.stored-only", "deposit.redeposited"}, narrative.summary.text


@pytest.mark.parametrize("audience", ["report", "public"])
def test_a_close_verdict_is_told_as_one(told: Told, judged_example: Judged, audience: str):
    """A reading that fewer than four in five resampled counts uphold is told with that doubt."""
    doubts = {"report": r"\d+% of (cases|the redrawn)|o more than hints", "public": r"few finds|handful"}
    doubt = re.compile(doubts[audience], re.IGNORECASE)
    looked_at = 0
    for subject, narrative in told[audience].items():
        if subject.level == "sample":
            continue
        sentences = narrative.sentences()
        mentioned = {ref for s in sentences for ref in s.refs}
        doubted = {ref for s in sentences if doubt.search(s.text) for ref in s.refs}
        for claim in judged_example.claims.about(subject):
            is_close = claim.stability is not None and claim.stability < 0.8
            if not is_close or claim.verdict != "holds" or claim.id not in mentioned:
                continue
            if claim.question in ("integrity", "work", "change") or claim.statement == "season.stored-only":
                continue
            if all(claim.id not in s.refs or "rival" in s.text for s in sentences):
                continue
            looked_at += 1
            assert claim.id in doubted, (claim.id, narrative.text)
    assert looked_at > 3


def test_a_place_has_one_density(told: Told):
    """Items per litre of a place are told with one figure on its page."""
    for subject, narrative in told["report"].items():
        if subject.level != "context":
            continue
        own = re.findall(r"(?:, or|scaled up,|with) (\d[\d.,]*) items? per litre", narrative.text, flags=re.IGNORECASE)
        assert len(set(own)) <= 1, narrative.text


def test_wood_is_told_apart_from_items(told: Told, judged_example: Judged):
    """The items of an opening leave wood out and say so."""
    for subject, found in judged_example.findings.subjects.items():
        if subject.level != "context" or not found.measurements["items"].value:
            continue
        besides = sum(
            t.counted for t in found.tallies
            if t.condition in ("charred", "partly charred")
            and "wood" not in judged_example.packs.words.parts[t.part].roles
        )  # fmt: skip
        assert besides == found.measurements["items"].value
        summary = told["report"][subject].summary
        assert summary is not None
        assert re.search(r"\bitems? besides wood", summary.text), summary.text


def test_fragments_and_doubtful_names_are_told(told: Told):
    """Kernels in fragments are told as such to specialists and visitors."""
    hearth = Subject(level="context", id="C12")

    assert re.search(r"\d+ kernels \(\d+ of them fragments\)", told["report"][hearth].text)
    assert "corn kernels and bits of kernel" in told["public"][hearth].text


def test_material_to_date_is_no_open_question(told: Told):
    """What could be dated stands under what could be done."""
    sections = told["report"][Subject(level="site", id="site")].sections
    told = {(section.id, s.text) for section in sections for p in section.paragraphs for s in p}
    where = {id for id, text in told if "fit for radiocarbon dating" in text}

    assert where == {"next"}


@pytest.mark.parametrize("audience", AUDIENCES)
def test_no_caution_is_worn_out(told: Told, audience: str):
    """No sentence stands word for word on more than a quarter of the pages of contexts."""
    pages = [n for subject, n in told[audience].items() if subject.level == "context"]
    times: dict[str, int] = {}
    for narrative in pages:
        for text in {sentence.text for sentence in narrative.sentences()}:
            times[text] = times.get(text, 0) + 1

    assert max(times.values()) <= len(pages) / 4, max(times.items(), key=lambda pair: pair[1])


def test_the_number_of_all_remains_is_given_once(told: Told):
    """Reasons do not count all remains again, with wood or without names, beside the number of the opening."""
    for subject, narrative in told["report"].items():
        if subject.level == "context":
            assert not re.search(r"\bremains (are \w+ )?\(\d[\d.,]* items", narrative.text), narrative.text


@pytest.mark.parametrize("audience", AUDIENCES)
def test_one_rule_parts_readings_from_hints(told: Told, judged_example: Judged, audience: str):
    """At every level what is suggested and not upheld in four of five draws is told as a hint, whatever the count."""
    hint = re.compile(r"no more than (a hint|hints)|faint signs|too few to compare", re.IGNORECASE)
    framed = re.compile(r"\b(suggest|consistent with|may be that|hints? that|may also be)", re.IGNORECASE)
    checked = 0
    for subject, narrative in told[audience].items():
        about = judged_example.claims.about(subject)
        by_id = {c.id: c for c in about if c.question not in ("work", "integrity", "change")}
        for sentence in narrative.sentences():
            for claim in (by_id[ref] for ref in sentence.refs if ref in by_id):
                if claim.stability is None or claim.stability >= 0.8:
                    continue
                if claim.grade not in ("suggests", "consistent with"):
                    continue
                if claim.verdict == "holds" and claim.statement != "season.stored-only":
                    checked += bool(hint.search(sentence.text))
                    assert hint.search(sentence.text) or not framed.search(sentence.text), (claim.id, sentence.text)
    assert checked > 3


def test_a_doubt_names_the_reading_that_it_is_of(told: Told, judged_example: Judged):
    """No doubt by draws and no limit speaks of 'this' or 'one of the readings' where a page has several readings."""
    narrated = [n for audience in ("report", "review") for n in told[audience].values()]
    texts = [s.text for n in narrated if n.subject.level != "site" for s in n.sentences()]
    unnamed = re.compile(r"\b(one|two) (of the readings here|readings?) (is|are) (held|put)")

    assert not [text for text in texts if unnamed.search(text)]
    doubted = "The gathering of soft fruit in autumn rests chiefly on eight seeds and is put no higher than “suggests”."
    assert doubted in texts
    c07 = told["report"][Subject(level="context", id="C07")].text
    assert "The cracking of nuts is no more than a hint: counts drawn anew at random uphold it in 72% of cases." in c07


def test_two_rivals_stand_in_one_relation_for_every_reader(told: Told, judged_example: Judged):
    """Rivals that may both be true are told so to all; of two that exclude each other all read that either would do."""
    checked = 0
    both, before = "oth may be true", "such work"
    for id, word in (("C03", both), ("C13", both), ("C15", before), ("C14", "ither would leave")):
        for audience in AUDIENCES:
            text = told[audience][Subject(level="context", id=id)].text
            either = "ither (of the two )?would leave|these finds fit both"
            assert re.search(word if word in (both, before) else either, text), (id, audience)
            assert word == both or both not in text
            checked += 1
    assert checked == 12
    texts = [s.text for audience in AUDIENCES for n in told[audience].values() for s in n.sentences()]
    assert not [t for t in texts if re.search("rules out|rule out|go together|cannot settle it|may as well be", t)]


def test_rind_alone_tells_no_squash_from_gourds(told: Told):
    """Two rivals that rest on one part of plants are told by that part."""
    text = told["report"][Subject(level="context", id="C06")].text

    assert "Rind alone does not tell squash as food from gourds as containers or floats" in text
