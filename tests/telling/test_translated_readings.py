"""What holds readings down in Spanish: hints, what keeps, what was lost, and what can poison."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import replace
from typing import TYPE_CHECKING

import pytest

from narrate.model.ids import SITE, Subject
from narrate.model.narrative import Narrative
from narrate.model.sampling import RecoveryTest
from narrate.telling.plan import STORED_ONLY, is_hint
from narrate.telling.tell import narratives
from tests.telling.told_once import ToldOnce

if TYPE_CHECKING:
    from narrate.pipeline.judged import Judged

Told = Mapping[Subject, Narrative]


def _spanish(whole: Judged) -> Told:
    return narratives(whole.project, whole.packs, whole.findings, whole.claims, "public-es")


@pytest.fixture(scope="module")
def told(told_of_open: ToldOnce) -> Told:
    return told_of_open["public-es"]


def _text(told: Told, id: str) -> str:
    level = "site" if id == SITE else "phase" if id in ("early", "late") else "context"
    return told[Subject(level=level, id=id)].text  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("id", "said"),
    [
        # Tobacco of the later time rests on two seeds of one sample; the earlier time has one seed too.
        (SITE, r"la gente tuvo tabaco entre [^.]*\. Se trata de dos semillas de tabaco de una sola muestra\."),
        (SITE, r"Pero de la época de hacia 950–1050 d\. C\. hay también una semilla de tabaco, en el hoyo de .* C07"),
        ("late", r"indicios muy débiles de que la gente tuvo tabaco"),
        ("C15", r"indicios muy débiles de que la gente tuvo tabaco"),
        ("C15", r"Entre los hallazgos menores había dos semillas de tabaco\."),
        ("C07", r"Entre los hallazgos menores había una semilla de tabaco"),
        ("early", r"También hallamos una semilla de tabaco en el hoyo de desechos C07, pero con un solo hallazgo"),
        # Foods that keep, and pages without a season.
        ("C01", r"más de una estación del año[^.]*\. Pero [^.]*se guardan durante meses"),
        ("C02", r"más de una estación del año[^.]*\. Pero [^.]*se guardan durante meses"),
        ("C04", r"más de una estación del año[^.]*\. Pero [^.]*se guardan durante meses"),
        ("C08", r"más de una estación del año[^.]*\. Pero [^.]*se guardan durante meses"),
        ("C03", r"las nueces también maduran en otoño, pero se guardan"),
        ("C22", r"las nueces también maduran en otoño, pero se guardan"),
        ("C05", r"época del año [^.]*guarda"),
        ("C07", r"época del año [^.]*guarda"),
        ("C12", r"guardan durante meses, así que no dicen en qué época"),
        ("C13", r"época del año [^.]*guarda"),
        ("C17", r"época del año [^.]*guarda"),
        # Names in doubt, ground that was stirred.
        ("early", r"maíz en 6 \(en una de ellas, con duda\)"),
        ("late", r"cultivos de semilla pequeña en 7 \(en una de ellas, con duda\)"),
        (SITE, r"maíz en 6 de 23 muestras de hacia 950–1050 d\. C\. \(en una de ellas, con duda\) y en 23 de 25"),
        ("late", r"Dos de nuestras muestras vienen del hoyo C20, [^.]*\. Aun así las contamos\."),
        (SITE, r"Dos de nuestras muestras vienen del hoyo C20"),
        # What was not sorted, and what washing lost.
        ("C01", r"[Ss]olo revisamos una parte"),
        ("C05", r"[Ss]olo revisamos una parte"),
        ("C10", r"Una parte de lo que se hundió al lavar esta tierra está todavía sin revisar\."),
        ("C15", r"Una parte de lo que se hundió al lavar esta tierra está todavía sin revisar\."),
        ("C16", r"pusimos 50 semillas marcadas en un poco de esta tierra y solo volvieron 21,"),
        # What can poison.
        ("C14", r"La hierba mora, la fitolaca, \*Euphorbia .*, el saúco y \*Physalis\* \([^)]*\) pueden envenenar"),
        ("C16", r"La hierba mora, \*Euphorbia maculata\* y el saúco pueden envenenar"),
        ("C11", r"\*Euphorbia maculata\* y la hierba mora pueden envenenar"),
        ("C22", r"El saúco puede envenenar"),
        ("C15", r"plantas venenosas que se confunden fácilmente con la verdolaga, como \*Euphorbia maculata\*"),
        ("C12", r"Entre los hallazgos menores había dos trozos de cáscara de calabaza"),
        # A word that nobody knows, explained.
        (SITE, r"cultivos de semilla pequeña [^.]*\bplantas que (?:la gente|se) sembraba"),
        ("C02", r"[Cc]ultivos de semilla pequeña [^.]*\bplantas que (?:la gente|se) sembraba"),
        # How long lies between.
        (SITE, r"Entre las dos hay unos 200 años, de los que no sabemos nada\."),
    ],
)  # fmt: skip
def test_what_holds_a_page_down_is_told(id: str, said: str, told: Told):
    """Each doubt that the records give is on the page, in the language's words."""
    assert re.search(said, _text(told, id)), _text(told, id)


@pytest.mark.parametrize(
    ("id", "never"),
    [
        (SITE, r"\b(?:solo|únicamente) en la (?:fase|época)|ninguna otra"),
        (SITE, r"dejó restos de madera"),
        (SITE, r"(?:Tanto antes como después.*){3}"),
        ("late", r"dan indicios de ello [^.]*C11|Apuntan a lo mismo [^.]*C11"),
        ("C06", r"se guardan durante meses"),
        ("C13", r"combustible húmedo|26 olotes"),
        ("C05", r"la gente quemó estas plantas"),
        ("C17", r"la gente quemó estas plantas"),
        ("C15", r"sagrada, y es venenosa"),
        ("C18", r"envenenar"),
    ],
)
def test_what_no_page_says(id: str, never: str, told: Told):
    """No absence, no doubtful place as a sure one, no deed where a house burned, no word that is nobody's Spanish."""
    assert not re.search(never, _text(told, id)), _text(told, id)


def test_a_hint_is_never_told_in_the_words_of_a_reading(told: Told, open_example: Judged):
    """A sentence that rests on a hint alone, and reads it, calls the signs faint or says what they are few of."""
    claims = open_example.claims.by_id
    told_as_sure = [
        (subject.id, s.text)
        for subject, narrative in told.items()
        for s in narrative.sentences()
        if (of := [claims[ref] for ref in s.refs if ref in claims])
        and all(is_hint(claim) for claim in of)
        and not re.search(r"muy débiles|Se trata de|no se puede comparar|guardarse|se sembraba|gente sembraba", s.text)
    ]

    assert told_as_sure == []


def test_every_season_of_what_keeps_says_so_or_has_none(told: Told, open_example: Judged):
    """No context tells a season of plants that all keep without saying that they do."""
    for subject, narrative in told.items():
        kept = open_example.claims.find(subject, STORED_ONLY)
        if subject.level == "context" and kept is not None and kept.verdict == "holds" and "estación" in narrative.text:
            assert re.search(r"guardan?\b|guardarse", narrative.text), narrative.title


def test_a_term_is_explained_once_on_each_page_that_uses_it(told: Told):
    """'Cultivos de semilla pequeña' is no common word: each page that has it says what it means, and once."""
    for narrative in told.values():
        explained = len(re.findall(r"plantas que (?:la gente|se) sembraba", narrative.text))
        assert explained == ("cultivos de semilla pequeña" in narrative.text.lower()), narrative.title


def test_a_test_that_returned_most_seeds_is_not_told(open_example: Judged):
    """Only a washing that lost much is worth a visitor's while."""
    samples = tuple(
        replace(s, recovery_test=RecoveryTest(added=50, recovered=48)) if s.context == "C16" else s
        for s in open_example.project.samples
    )
    again = _spanish(replace(open_example, project=replace(open_example.project, samples=samples)))

    assert "semillas marcadas" not in _text(again, "C16")


def test_warnings_are_of_the_place(told: Told):
    """Every warning names the place of its page, so that none stands on two pages."""
    warnings = [n.sentences()[-1].text for n in told.values() if "silvestres" in n.sentences()[-1].text]

    assert len(warnings) == len(set(warnings)) > 15
    assert not [text for text in warnings if text.startswith("En C")]


def test_every_sentence_rests_on_something_known(told: Told, open_example: Judged):
    """Refs of the new sentences are claims, tallies, measures and records that `explain` knows."""
    pattern = re.compile(r"^[\w.-]+/(?:record|measure\.[\w.]+|found\..+|spread\..+|[a-z-]+\.[a-z-]+)")
    refs = {ref for n in told.values() for s in n.sentences() for ref in s.refs}

    assert refs and not [ref for ref in refs if ref not in open_example.claims.by_id and not pattern.match(ref)]


def test_of_three_times_two_are_told_together(open_example: Judged):
    """What two of three phases bear out is told of the two, and of the third nothing."""
    from narrate.model.ids import PhaseId
    from narrate.telling.new_pages import new_page
    from narrate.telling.translated_by_phase import told_by_phase
    from tests.telling.test_translated_finds import _dig

    page = new_page(_dig(open_example), Subject(level="site", id=SITE))
    third = replace(open_example.project.phases[-1], id=PhaseId("third"), start=1400, end=1450)

    said = " ".join(s.text for s in told_by_phase(page, (*open_example.project.phases, third), ("food",)))
    assert re.search(r"épocas de hacia 950–1050 d\. C\. y 1250–1350 d\. C\. [^.]*nueces y bellotas", said)
    assert "1400" not in said and "todas las épocas" not in said
    assert "los hallazgos de las otras no permiten decir ni que sí ni que no" in said


def test_a_dig_of_one_time_tells_its_hints_as_hints(open_example: Judged):
    """Where phases are not told apart, what is faint is not told as a reading either, nor dropped."""
    spanish = open_example.packs.languages["es"]
    fewer = {name: said for name, said in spanish.sentences.items() if name != "one phase"}
    languages = {**open_example.packs.languages, "es": replace(spanish, sentences=fewer)}
    told = _spanish(replace(open_example, packs=replace(open_example.packs, languages=languages)))
    hints = {c.id for c in open_example.claims.holding(Subject(level="site", id=SITE)) if is_hint(c)}
    of_hints = [s.text for s in told[Subject(level="site", id=SITE)].sentences() if hints & set(s.refs)]

    assert of_hints and not [text for text in of_hints if not re.search(r"muy débiles|Se trata de|guardarse", text)]


def test_seeds_of_few_fruits_are_told_as_such(told_of_open: ToldOnce):
    """Persimmons, grapes and strawberries hold many seeds (the packs, from memory); cobs of C11 are no fruit."""
    told = told_of_open["public-es"]
    said = {id: " ".join(s.text for s in told[Subject(level="context", id=id)].sentences()) for id in ("C06", "C22", "C11")}

    assert all(said[id].count("una sola fruta puede tener muchas semillas") == 1 for id in ("C06", "C22"))
    assert "una sola fruta" not in said["C11"]
