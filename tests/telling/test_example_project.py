"""What holds of every page holds for the example project, as it is read and judged."""

from __future__ import annotations

import re
from collections import Counter
from dataclasses import replace
from typing import TYPE_CHECKING

import pytest

from narrate.model.ids import Subject
from narrate.model.narrative import Narrative
from narrate.model.refs import subject_keys
from narrate.model.style import Style
from narrate.telling import english
from narrate.telling.calibrated import overclaimed
from narrate.telling.glossary import unexplained
from narrate.telling.page import OPENINGS_AT_MOST, opening
from narrate.telling.readability import grade
from narrate.telling.tell import narratives
from tests.telling.told_once import ToldOnce

if TYPE_CHECKING:
    from narrate.model.audiences import Audience
    from narrate.model.claims import Claim
    from narrate.model.rules import Statement
    from narrate.pipeline.judged import Judged

AUDIENCES = ("report", "review", "public")
HOLE = re.compile(r"  |\{|\}|\bNone\b|\(\)| ,| \.|,,|;,|\bnan\b|\.\.$|\bthe the\b|\ba a\b|: \.|, \.| and and ")


@pytest.fixture(scope="module")
def told(told_of_example: ToldOnce) -> dict[str, dict[Subject, Narrative]]:
    """All narratives of the example project by audience."""
    return {audience: told_of_example[audience] for audience in AUDIENCES}


@pytest.mark.parametrize("audience", AUDIENCES)
def test_no_draft_claims_more_than_its_grade(
    told: dict[str, dict[Subject, Narrative]], judged_example: Judged, audience: str
):
    """Sentences and summaries hold no word that the firmest claim behind them does not bear."""
    claims, language = judged_example.claims.by_id, judged_example.packs.languages["en"]
    for narrative in told[audience].values():
        for sentence in (*narrative.sentences(), *([narrative.summary] if narrative.summary else [])):
            grades = [claims[ref].grade for ref in sentence.refs if ref in claims]
            assert overclaimed(sentence.text, language, grades) == (), sentence.text


@pytest.mark.parametrize("audience", AUDIENCES)
def test_sentences_are_whole(told: dict[str, dict[Subject, Narrative]], audience: str):
    """No hole, and a capital first."""
    for narrative in told[audience].values():
        assert narrative.sentences(), narrative.title
        for sentence in narrative.sentences():
            assert not HOLE.search(sentence.text), sentence.text
            assert re.match(r"[“*(]?[A-Z]", sentence.text), sentence.text


@pytest.mark.parametrize("audience", AUDIENCES)
def test_every_reference_resolves(told: dict[str, dict[Subject, Narrative]], judged_example: Judged, audience: str):
    """Each sentence names claims, finds, measures or records that exist."""
    keys = {key: subject for subject, key in subject_keys(judged_example.project).items()}
    found = judged_example.findings.subjects
    tallies = {tally.ref for one in found.values() for tally in one.tallies}
    for narrative in told[audience].values():
        for sentence in (*narrative.sentences(), narrative.summary):
            assert sentence is not None and sentence.refs
            for ref in sentence.refs:
                key, _, tail = ref.rpartition("/")
                if ref in judged_example.claims.by_id or ref in tallies:
                    continue
                assert key in keys, ref
                assert tail == "record" or tail.removeprefix("measure.") in found[keys[key]].measurements, ref


@pytest.mark.parametrize("audience", AUDIENCES)
def test_pages_say_things_once_and_open_differently(told: dict[str, dict[Subject, Narrative]], audience: str):
    """No sentence twice on a page, no opening more than three times, no paragraph on two contexts."""
    paragraphs: Counter[str] = Counter()
    for subject, narrative in told[audience].items():
        texts = [sentence.text for sentence in narrative.sentences()]
        worn = Counter(opening(text) for text in texts)
        assert len(texts) == len(set(texts)), narrative.title
        assert max(worn.values()) <= OPENINGS_AT_MOST, (narrative.title, worn.most_common(1))
        if subject.level == "context":
            paragraphs.update(" ".join(s.text for s in p) for section in narrative.sections for p in section.paragraphs)

    assert max(paragraphs.values()) == 1


GIVES_REASONS = re.compile(r"\b(because|since|as|for)\b|, which |; this |: ")


def _in_bare_words(text: str) -> str:
    """A clause without figures, brackets, marks and the words of places, so that one telling of it meets another."""
    bare = re.sub(r"\([^()]*\)", "", text.lower())
    return " ".join(
        re.findall(r"[a-z-]+", re.sub(r" in (?:a|the) (?:feature|place|pit) (?:made for|of) \w+", " there", bare))
    )


def _clauses(claim: Claim, audience: Audience, statement: Statement) -> list[str]:
    """What may stand in a sentence as the claim's own reason, in every wording that the audience has for it."""
    texts = []
    for argument in claim.arguments:
        texts += [argument.says, argument.says_plain]
    texts += [limit.says.split(": grade")[0] for limit in claim.limits]
    texts += list(claim.misleads_when)
    own = [(name.removeprefix("for "), turns) for name, turns in audience.words.items() if name.startswith("for ")]
    for phrase, turns in own:
        met = [text.lower() for text in texts if phrase in text.lower()]
        texts += [text.replace(phrase, turn) for text in met for turn in turns.split(" | ")]
    texts += [text.split(", and ")[-1] for text in texts if "the record calls" in text.lower()]
    # 'All three samples' for 'three of three samples', 'a building that burned' for 'a store or building that burned'.
    texts += [re.sub(r"\b(\w+) of \1 samples", r"all \1 samples", text) for text in texts]
    texts += [text.replace("a store or building that burned", "a building that burned") for text in texts]
    return [bare for text in texts if len(bare := _in_bare_words(english.small_numbers_in_words(text))) > 8]


@pytest.mark.parametrize("audience", AUDIENCES)
def test_no_claim_borrows_a_reason(told: dict[str, dict[Subject, Narrative]], judged_example: Judged, audience: str):
    """
    Where a sentence gives reasons, each claim that it rests on has a clause of its own there, or all share one.

    A gathering season is met by its own plants, told by name, in place of 'plants that ripen in autumn'.
    """
    packs, looked_at = judged_example.packs, 0
    for narrative in told[audience].values():
        for sentence in narrative.sentences():
            claims = [judged_example.claims.by_id[ref] for ref in sentence.refs if ref in judged_example.claims.by_id]
            reasons = {
                claim.id: [
                    c for c in _clauses(claim, packs.audiences[audience], packs.statements[claim.statement])
                    if c in _in_bare_words(english.small_numbers_in_words(sentence.text))
                ]
                for claim in claims
            }  # fmt: skip
            if not GIVES_REASONS.search(sentence.text) or not any(reasons.values()):
                continue
            looked_at += 1
            for claim in claims:
                by_plants = claim.question == "season" and f"ripen in {claim.statement.split('.')[1]}" in sentence.text
                # 'In hearth C11 nearly all the corn was cob, and it speaks of fires instead': the reason is of corn as food.
                instead = re.search(r"\bspeaks? of .* instead\b", sentence.text)
                assert reasons[claim.id] or by_plants or instead, (claim.id, sentence.text)
    assert looked_at > 20


def test_public_pages_are_plain(told: dict[str, dict[Subject, Narrative]], judged_example: Judged):
    """Visitors' pages stay at grade 8 or below (Kincaid et al. 1975) and use no unexplained trade word."""
    for narrative in told["public"].values():
        assert grade(narrative.text) <= 8, (narrative.title, grade(narrative.text))
        assert unexplained(narrative.text, judged_example.packs.audiences["public"]) == (), narrative.title


def test_maize_is_set_against_the_native_crops(told: dict[str, dict[Subject, Narrative]]):
    """The dig's narrative compares the phases by samples with maize and with native seed crops."""
    text = told["report"][Subject(level="site", id="site")].text

    assert re.search(r"[Mm]aize rose from", text)
    assert re.search(r"[Ss]eeds of the native crops fell from", text)


def test_the_chosen_marks_stand_in_every_sentence(judged_example: Judged):
    """Where the project asks for spaces and hyphens, no share, range or reason keeps a comma or an en dash."""
    whole = judged_example
    project = replace(whole.project, style=Style(thousands="space", dash="hyphen"))
    told = narratives(project, whole.packs, whole.findings, whole.claims, "report")
    kept = re.compile(r"\d,\d{3}\b|\d–\d")
    # A quotation stands as it was written.
    texts = [re.sub(r"“[^”]*”", "", sentence.text) for narrative in told.values() for sentence in narrative.sentences()]

    assert any(re.search(r"\d\u202f\d{3}", text) for text in texts)
    assert [text for text in texts if kept.search(text)] == []


@pytest.mark.parametrize("audience", ["report", "public", "label", "review"])
def test_the_chosen_era_and_unit_stand_in_every_sentence(judged_example: Judged, audience: str):
    """With years before 1950 and the sign L no sentence keeps a litre or AD 950, what others wrote apart."""
    whole = judged_example
    phases = tuple(replace(phase, dates="cal AD") for phase in whole.project.phases)
    project = replace(whole.project, phases=phases, style=Style(era="BP", litre="L"))
    told = narratives(project, whole.packs, whole.findings, whole.claims, audience)
    texts = [re.sub("“[^”]*”", "", s.text) for narrative in told.values() for s in narrative.sentences()]
    kept = re.compile(r"\b(?<!Litre for )litres?\b(?! for)|\bAD (?!1950)", re.IGNORECASE)

    assert any(" L" in text for text in texts)
    assert [text for text in texts if kept.search(text)] == []
