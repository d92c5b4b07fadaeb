"""The overview of the example and its contexts in Spanish: no English word left, and all that agrees agrees."""

from __future__ import annotations

import re
from dataclasses import replace
from typing import TYPE_CHECKING

import pytest

from narrate.model.ids import SITE, Subject
from narrate.model.languages import Language
from narrate.model.narrative import Narrative
from narrate.model.style import Era, Style
from narrate.telling.calibrated import overclaimed
from narrate.telling.tell import narratives
from tests.telling.told_once import ToldOnce

if TYPE_CHECKING:
    from narrate.pipeline.judged import Judged

SITE_SUBJECT = Subject(level="site", id=SITE)
PHASES = tuple(Subject(level="phase", id=id) for id in ("early", "late"))
CONTEXTS = tuple(Subject(level="context", id=id) for id in ("C05", "C12"))
_COMMON = """
the of and to in is that it was for on are as with his they at be this from have or by one had not but what all
were when we there can an your which their said if do will each about how up out them then she many some so
these would other into has more her two like him see time could make than first been its who now people my made
over did down only way find use may water long little very after words called just where most know place soil
seeds plants wood fire food burned corn washed found
"""
COMMON_ENGLISH = frozenset(_COMMON.split())
"""The commonest words of written English, from memory, and those of the English pages."""
OF_BOTH = frozenset(("a", "al", "no", "me", "he", "c", "d", "de", "idea", "lee", "use"))
"""Spelled alike in both languages."""


@pytest.fixture(scope="module")
def told(told_of_example: ToldOnce) -> dict[Subject, Narrative]:
    return told_of_example["public-es"]


@pytest.fixture(scope="module")
def spanish(judged_example: Judged) -> Language:
    return judged_example.packs.languages["es"]


def _texts(narrative: Narrative) -> str:
    return f"{narrative.text} {narrative.summary.text if narrative.summary else ''}"


def test_no_english_word_is_left(told: dict[Subject, Narrative], told_of_example: ToldOnce, judged_example: Judged):
    """No word of any English narrative of the example stands in the Spanish ones, ids and the dig's own title apart."""
    whole = judged_example
    english = set(COMMON_ENGLISH)
    for audience in ("public", "report"):
        for narrative in told_of_example[audience].values():
            english |= {w for w in re.findall(r"[a-z]{2,}", re.sub(r"\*[^*]+\*", "", narrative.text).lower())}
    for subject, narrative in told.items():
        text = re.sub(r"\*[^*]+\*", "", _texts(narrative)).replace(whole.project.title, "").lower()
        words = set(re.findall(r"[^\W\d_]{2,}", text))
        assert words & english - OF_BOTH == set(), (subject.id, words & english - OF_BOTH)


def test_the_pack_lacks_no_word_for_the_overview_and_the_two_contexts(
    told: dict[Subject, Narrative], judged_example: Judged
):
    """Every plant, part and statement of the dig, of C05 and of C12 has its Spanish."""
    from narrate.model.refs import subject_keys
    from narrate.telling.new_pages import new_page
    from narrate.telling.page import Dig
    from narrate.telling.strays import Strays
    from narrate.telling.surroundings import surroundings
    from narrate.telling.translated import lacking

    whole = judged_example
    ancient = frozenset(("charred", "partly charred"))
    dig = Dig(
        project=whole.project,
        packs=whole.packs,
        findings=whole.findings,
        claims=whole.claims,
        audience=whole.packs.audiences["public-es"],
        keys=subject_keys(whole.project),
        ancient=ancient,
        surroundings=surroundings(whole.project, whole.packs, whole.findings, ancient),
        strays=Strays(
            project=whole.project,
            packs=whole.packs,
            findings=whole.findings,
            claims=whole.claims,
            ancient=ancient,
            lone_plants=frozenset(),
        ),
    )

    assert {s.id: lacking(new_page(dig, s)) for s in CONTEXTS} == {s.id: () for s in CONTEXTS}
    assert [name for name in lacking(new_page(dig, SITE_SUBJECT)) if name.startswith("statement")] == []


def test_phases_are_told_by_their_years(told: dict[Subject, Narrative]):
    """Each phase goes by its years, with what was washed, the chief groups of plants, and where a reading is made."""
    early, late = (told[phase] for phase in PHASES)

    assert early.title == "La época de hacia 950–1050 d. C."
    assert "cultivos de semilla pequeña en 22 de 23 muestras" in early.text
    assert "maíz en 24 de 27 muestras" in late.text
    assert re.search(
        r"(También dan indicios de ello|Apuntan a lo mismo) el hoyo de almacenamiento C14, el basurero C16 y "
        r"el hoyo de desechos C22\.",
        late.text,
    )


@pytest.mark.parametrize(("era", "said"), [("CE", "950–1050 e. c."), ("BP", "1000–900 años antes de 1950")])
def test_the_chosen_era_is_told_in_spanish(judged_example: Judged, era: Era, said: str):
    """Years go by the era that the project chose (950 is 1,000 years before 1950), in the words of the language."""
    whole = judged_example
    # Years that were not calibrated are told before 1950 by nobody: these are.
    phases = tuple(replace(phase, dates="cal AD") for phase in whole.project.phases)
    project = replace(whole.project, style=Style(era=era), phases=phases)
    told = narratives(project, whole.packs, whole.findings, whole.claims, "public-es")

    assert said in told[PHASES[0]].text
    assert "d. C." not in told[PHASES[0]].text


def test_a_language_without_the_sentences_tells_no_phase(judged_example: Judged):
    """Phases are told where a language has words for them, and by no other words."""
    whole = judged_example
    spanish = whole.packs.languages["es"]
    fewer = {name: said for name, said in spanish.sentences.items() if name != "washed phase"}
    languages = {**whole.packs.languages, "es": replace(spanish, sentences=fewer)}
    packs = replace(whole.packs, languages=languages)

    assert not set(PHASES) & set(narratives(whole.project, packs, whole.findings, whole.claims, "public-es"))


@pytest.mark.parametrize("subject", [*CONTEXTS, *PHASES, SITE_SUBJECT], ids=lambda s: s.id)
def test_articles_and_numbers_agree_with_their_nouns(
    subject: Subject, told: dict[Subject, Narrative], spanish: Language
):
    """No masculine article or 'un' before a feminine noun of the pack, nor the other way round; no 'de el'."""
    text = _texts(told[subject]).lower()
    nouns = (*spanish.plants.values(), *spanish.parts.values(), *spanish.kinds.values())
    for noun in nouns:
        wrong = "la|las|una|unas" if noun.gender == "m" else "los|un|unos" if noun.one == "área" else "el|los|un|unos"
        for form in (noun.one, noun.many):
            assert not re.search(rf"\b(?:{wrong}) (?:\d+ )?{re.escape(form.lower())}\b", text), (noun, text)
    assert not re.search(r"\b(?:de|a) el\b", text)


def test_no_accent_is_missing(told: dict[Subject, Narrative]):
    """Words that are written with an accent or ñ are (Diccionario de la lengua española, from memory)."""
    bare = r"maiz|cascara|cascaras|otono|arbol|mas de|estacion|tambien|lena|habia|quiza|ningun|asi|podrian|guia|epoca"
    for narrative in told.values():
        assert not re.search(rf"\b(?:{bare})\b", narrative.text.lower()), narrative.text


def test_the_hearth_with_spilled_corn_is_told_in_spanish(told: dict[Subject, Narrative]):
    """C12 word for word at its beginning, its title and its summary."""
    hearth = told[CONTEXTS[1]]

    assert hearth.title == "Fogón C12"
    assert hearth.summary is not None
    assert hearth.summary.text == (
        "Fogón C12: parece que alguien quemó comida sin querer mientras la cocinaba o la secaba."
    )
    assert hearth.text.startswith(
        "El fogón C12 data de hacia 1250–1350 d. C. Lavamos 17,5 litros de su tierra y apartamos unos 350 restos "
        "quemados de plantas, sin contar la madera. Entre ellos había unos 270 granos y trozos de grano de maíz, 17 "
        "trocitos de olote de maíz (el olote es el corazón de la mazorca), 15 trozos de cáscara de nuez de hicoria "
        "(árbol de nueces de cáscara dura), y 11 mitades y trozos de semilla de frijol (quizá 14)."
    )


def test_spanish_drafts_claim_no_more_than_their_grade(
    told: dict[Subject, Narrative], judged_example: Judged, spanish: Language
):
    """The Spanish words that claim too much are in none of the drafts, and are found where somebody writes them."""
    claims = judged_example.claims.by_id
    for narrative in told.values():
        for sentence in narrative.sentences():
            grades = [claims[ref].grade for ref in sentence.refs if ref in claims]
            assert overclaimed(sentence.text, spanish, grades) == (), sentence.text

    assert [o.words for o in overclaimed("Esto demuestra que comieron maíz.", spanish)] == ["demuestra", "comieron"]


def test_a_plant_without_a_spanish_name_is_told_by_its_latin(told: dict[Subject, Narrative], judged_example: Judged):
    """Nothing falls back on English where the pack lacks a word."""
    whole = judged_example
    spanish = whole.packs.languages["es"]
    plants = {id: noun for id, noun in spanish.plants.items() if id != "Carya"}
    languages = {**whole.packs.languages, "es": replace(spanish, plants=plants)}
    again = narratives(
        whole.project, replace(whole.packs, languages=languages), whole.findings, whole.claims, "public-es"
    )

    assert "15 trozos de cáscara de nuez de *Carya*" in again[CONTEXTS[1]].text


def test_every_key_of_the_pack_is_known_to_the_other_packs(judged_example: Judged, spanish: Language):
    """Plants, parts, kinds, statements and rules that the Spanish files name exist; pieces are those of a part."""
    packs = judged_example.packs
    parts = {*packs.words.parts, "remains", "remains charred"}
    parts |= {f"{taxon} {part}" for taxon in packs.taxa for part in packs.words.parts}

    assert set(spanish.plants) <= set(packs.taxa)
    assert {key.removeprefix("whole and ").removeprefix("pieces of ") for key in spanish.parts} <= parts
    assert set(spanish.kinds) <= set(packs.words.context_kinds)
    assert set(spanish.statements) <= set(packs.statements)
    assert set(spanish.reasons) <= set(packs.rules)


def test_the_spanish_dig_is_told_by_phase(told: dict[Subject, Narrative], judged_example: Judged):
    """No reading of the Spanish dig rests on the counts of all phases pooled, but for what changed between them."""
    claims = judged_example.claims.by_id
    sentences = told[Subject(level="site", id=SITE)].sentences()
    read = [(s, claims[ref]) for s in sentences for ref in s.refs if ref in claims]

    assert {claim.question for _, claim in read if claim.about.level == "site"} == {"change"}
    assert {claim.about.id for _, claim in read if claim.about.level == "phase"} == {"early", "late"}
    assert any(re.search(r"la época de hacia 1250–1350 d\. C\. .* que la gente usaba el maíz", s.text) for s, _ in read)


def test_a_language_without_words_for_phases_tells_the_dig_as_one(judged_example: Judged):
    """Where a pack lacks 'one phase' its dig is told from the counts of the whole, as it was before."""
    whole = judged_example
    spanish = whole.packs.languages["es"]
    sentences = {name: texts for name, texts in spanish.sentences.items() if name != "one phase"}
    languages = {**whole.packs.languages, "es": replace(spanish, sentences=sentences)}
    packs = replace(whole.packs, languages=languages)
    again = narratives(whole.project, packs, whole.findings, whole.claims, "public-es")
    refs = {ref for s in again[Subject(level="site", id=SITE)].sentences() for ref in s.refs}

    assert any(ref.endswith("/food.nut") and not ref.startswith(("early", "late")) for ref in refs)


def test_seasons_told_by_name_are_not_summed_in_spanish(told: dict[Subject, Narrative]):
    """The full pit tells autumn and late summer, and not 'more than one season' as well."""
    text = told[Subject(level="context", id="C14")].text

    assert "otoño" in text and "fines del verano" in text and "más de una estación" not in text


def test_a_hearth_is_no_home_in_spanish(spanish: Language):
    """'Hogar' reads as home; a made place for fire is a 'fogón'."""
    assert spanish.kinds["hearth"].one == "fogón"


def test_spanish_cautions_speak_of_use(told: dict[Subject, Narrative]):
    """Plants that heal or harm are not used because of a page, be they eaten or not."""
    for narrative in told.values():
        last = narrative.sentences()[-1].text
        assert "silvestres" not in last or re.search(r"coma ni use|comer ni usar", last), narrative.title


def test_rivals_are_told_in_spanish(told: dict[Subject, Narrative]):
    """Cobs burned as fuel and a slow fire for smoke are two readings of the same cobs."""
    text = told[Subject(level="context", id="C13")].text

    assert re.search(r"fuego lento[^.]*\. Es otra lectura de los mismos restos, y las dos pueden ser ciertas\.", text)


def test_late_wheat_is_told_in_spanish(told: dict[Subject, Narrative]):
    """Wheat in the stirred pit is later than the pit, and why."""
    text = told[Subject(level="context", id="C20")].text

    assert "un grano de trigo que hallamos aquí llegó a esta tierra en tiempos posteriores, pues es una planta" in text


def test_spanish_keeps_to_the_share_of_samples(told: dict[Subject, Narrative]):
    """No page says 'in many places' where the share of samples is known."""
    for narrative in told.values():
        assert not re.search(r"casi todas partes|muchos lugares|varios lugares|\{widely\}", narrative.text)


def test_what_is_withheld_is_not_told_in_spanish(told_of_open: ToldOnce, judged_example: Judged):
    """The withheld context C19 has no Spanish page, and no page of what may be disclosed names it."""
    found = told_of_open["public-es"]

    assert "C19" in judged_example.project.disclosure.restricted_contexts
    assert found and not [s.id for s, n in found.items() if s.id == "C19" or "C19" in _texts(n)]


def test_spanish_says_of_no_phase_that_it_alone_shows_a_reading(told_of_open: ToldOnce):
    """What the one time shows is none of the opposite for the other: small-seeded crops and maize are in both."""
    text = told_of_open["public-es"][SITE_SUBJECT].text

    assert not re.search(r"(?i)\b(?:solo|únicamente|exclusivamente) en la|ninguna otra", text)
    assert text.count("los hallazgos de la otra no permiten decir ni que sí ni que no") == 1


def test_a_plant_without_a_spanish_name_is_described(told: dict[Subject, Narrative], spanish: Language):
    """No name is coined: maygrass is told by its Latin name, with what it is in brackets, once a page."""
    text = told[CONTEXTS[0]].text
    said = spanish.described["Phalaris caroliniana"]  # type: ignore[index]

    assert f"*Phalaris caroliniana* ({said}" in text and text.count(said) == 1
    assert not set(spanish.described) & set(spanish.plants)


def test_tobacco_bears_its_standing_in_spanish(told: dict[Subject, Narrative]):
    """
    Where a page names tobacco it says what the plant is to many, and, apart from that, that it is poisonous; none tells
    of gathering.
    """
    named = [n.text for s, n in told.items() if "tabaco" in n.text and s.level != "sample"]

    assert named and all("para muchas personas indígenas el tabaco es una planta sagrada." in t.lower() for t in named)
    assert not [t for t in named if not re.search(r"El tabaco(?: y .*)? pueden? envenenar", t)]
    assert not [n.title for n in told.values() if "la gente recoge nueces" in n.text]
