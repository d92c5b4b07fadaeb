"""
Finds in Spanish: what is whole and what is in pieces, and that the numbers are those of the count sheets.

Spanish of the tables: common usage, from memory. The sheets of the invented example are read here with the csv module
alone, and added up apart from everything that narrate counts.
"""

from __future__ import annotations

import csv
import re
from collections.abc import Mapping
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from narrate.model.findings import Tally
from narrate.model.ids import PartId, Subject, TaxonId
from narrate.model.languages import Language
from narrate.model.narrative import Narrative
from narrate.model.refs import subject_keys
from narrate.telling.new_pages import new_page
from narrate.telling.page import Dig, Page
from narrate.telling.strays import Strays
from narrate.telling.surroundings import surroundings
from narrate.telling.translated import lacking
from narrate.telling.translated_finds import everything_told, find_told, finds_told
from tests.telling.told_once import ToldOnce

if TYPE_CHECKING:
    from narrate.pipeline.judged import Judged

ANCIENT = frozenset(("charred", "partly charred"))
COUNTS = Path(__file__).resolve().parents[2] / "example_project" / "counts"
RECORDS = COUNTS.parent / "records"


def _dig(whole: Judged) -> Dig:
    return Dig(
        project=whole.project,
        packs=whole.packs,
        findings=whole.findings,
        claims=whole.claims,
        audience=whole.packs.audiences["public-es"],
        keys=subject_keys(whole.project),
        ancient=ANCIENT,
        surroundings=surroundings(whole.project, whole.packs, whole.findings, ANCIENT),
        strays=Strays(
            project=whole.project,
            packs=whole.packs,
            findings=whole.findings,
            claims=whole.claims,
            ancient=ANCIENT,
            lone_plants=frozenset(),
        ),
    )


@pytest.fixture(scope="module")
def dig(judged_example: Judged) -> Dig:
    return _dig(judged_example)


@pytest.fixture
def page(dig: Dig) -> Page:
    return new_page(dig, Subject(level="context", id="C12"))


@pytest.fixture(scope="module")
def told(told_of_example: ToldOnce) -> Mapping[Subject, Narrative]:
    return told_of_example["public-es"]


@pytest.fixture(scope="module")
def spanish(judged_example: Judged) -> Language:
    return judged_example.packs.languages["es"]


def a_tally(taxon: str, part: str, counted: int, **more: int | bool) -> Tally:
    return Tally(
        taxon=TaxonId(taxon),
        written=taxon,
        part=PartId(part),
        condition="charred",
        counted=counted,
        estimated=float(counted),
        **more,  # type: ignore[arg-type]
    )


@pytest.mark.parametrize(
    ("taxon", "part", "counted", "fragments", "said"),
    [
        # Many seeds: whole ones and pieces in one number, which says so.
        ("Zea mays", "kernel", 273, 153, "unos 270 granos y trozos de grano de maíz"),
        ("Zea mays", "kernel", 11, 5, "11 granos y trozos de grano de maíz"),
        ("Chenopodium berlandieri", "seed", 540, 75, "540 semillas y trozos de semilla de quenopodio"),
        ("Iva annua", "achene", 55, 15, "55 semillas y trozos de semilla de *Iva annua*"),
        ("Vitis", "seed", 12, 4, "12 pepitas y trozos de pepita de uva silvestre"),
        ("Phaseolus vulgaris", "cotyledon", 14, 7, "14 mitades y trozos de semilla de frijol"),
        # Few seeds, and what is no seed: each counted.
        ("Zea mays", "kernel", 4, 2, "dos granos y dos trozos de grano de maíz"),
        ("Zea mays", "cob", 26, 14, "12 olotes y 14 trozos de olote de maíz"),
        ("Zea mays", "cob", 2, 1, "un olote y un trozo de olote de maíz"),
        # All in pieces.
        ("Poaceae", "culm", 14, 14, "14 trozos de tallo de gramínea"),
        ("Zea mays", "kernel", 1, 1, "un trozo de grano de maíz"),
        ("Quercus", "nutmeat", 2, 2, "dos trozos de bellota sin cáscara"),
        # All whole, and what comes in pieces anyhow.
        ("Zea mays", "kernel", 120, 0, "120 granos de maíz"),
        ("Helianthus annuus", "achene", 1, 0, "una semilla de girasol"),
        ("Carya", "nutshell", 15, 15, "15 trozos de cáscara de nuez de hicoria"),
        ("Zea mays", "cupule", 880, 200, "880 trocitos de olote de maíz"),
        ("Cucurbita", "rind", 2, 2, "dos trozos de cáscara de calabaza"),
        ("Indeterminate", "seed", 1, 1, "un trozo de semilla sin identificar"),
        ("Indeterminate", "seed", 3, 0, "tres semillas sin identificar"),
    ],
)
def test_pieces_are_not_told_as_whole_ones(
    taxon: str, part: str, counted: int, fragments: int, said: str, page: Page
):
    """A number that holds pieces says so, of whatever plant and part."""
    assert find_told(page, a_tally(taxon, part, counted, fragments=fragments)) == said


@pytest.mark.parametrize(
    ("tally", "said"),
    [
        (
            a_tally("Phaseolus vulgaris", "cotyledon", 14, fragments=7, doubtful=3, doubtful_fragments=3),
            "11 mitades y trozos de semilla de frijol (quizá 14)",
        ),
        (
            a_tally("Zea mays", "kernel", 2, fragments=2, doubtful=1, doubtful_fragments=1),
            "un trozo de grano de maíz (quizá dos)",
        ),
        (a_tally("Zea mays", "cob", 6, doubtful=2), "cuatro olotes de maíz (quizá seis)"),
        (a_tally("Zea mays", "kernel", 3, doubtful=3, only_cf=True), "tres granos de maíz (de nombre dudoso)"),
        (a_tally("Zea mays", "kernel", 300, doubtful=3), "300 granos de maíz"),
        (
            a_tally("Galium", "seed", 6, doubtful=2),
            "cuatro (quizá seis) semillas de galio (planta silvestre de hojas pequeñas)",
        ),
    ],
)
def test_names_in_doubt_are_told_behind_the_number(tally: Tally, said: str, page: Page):
    """What is only perhaps of the plant stands in brackets with the gloss; where all is in doubt, that it is."""
    assert finds_told(page, [tally], at_most=4) == said


def test_everything_is_told_where_nothing_else_was_found(page: Page):
    """What nobody could name is found all the same: a list of all that there was holds it."""
    tallies = [a_tally("Pinus", "wood", 2), a_tally("Indeterminate", "seed", 1), a_tally("Poaceae", "grain", 1)]

    assert everything_told(page, tallies) == (
        "dos trozos de carbón de pino, una semilla sin identificar y un grano de gramínea",
        True,
    )


@pytest.mark.parametrize("more", [[a_tally("Ulmus", "wood", 1)] * 7, [a_tally("Ulmus", "wood", 0)]])
def test_what_is_left_out_of_a_list_makes_it_none_of_all(more: list[Tally], page: Page):
    """A list of some is no list of all, be it cut for length or be something only weighed."""
    assert not everything_told(page, [a_tally("Pinus", "wood", 2), *more])[1]


@pytest.mark.parametrize(
    ("id", "held"),
    [
        ("C18", ("un grano de gramínea", "un trozo de carbón de olmo", "En ella solo hallamos")),
        ("C09", ("sin identificar", "En ella solo hallamos")),
    ],
)
def test_only_is_said_of_everything(id: str, held: tuple[str, ...], told: Mapping[Subject, Narrative]):
    """The post hole and the wall trench of the example: all that the sheets have stands behind 'solo'."""
    text = told[Subject(level="context", id=id)].text

    assert [part for part in held if part not in text] == []


def test_a_part_that_can_be_whole_has_a_name_for_its_pieces(spanish: Language):
    """Else a fragment could be told as no more than a remain of its plant."""
    anyhow = re.compile(r"^(?:trozo|trocito|escama|miga|resto|trozos)\b")
    plain = [key for key in spanish.parts if not key.startswith(("pieces of ", "whole and pieces of "))]
    wanting = [
        key for key in plain
        if not anyhow.match(spanish.parts[key].one)
        and not {f"pieces of {key}", f"whole and pieces of {key}"} <= set(spanish.parts)
    ]  # fmt: skip

    assert wanting == []


def test_a_pack_without_a_name_for_pieces_calls_them_remains(judged_example: Judged, spanish: Language):
    """Where a language has no word for pieces of a part, they are remains of the plant, and `lacking` asks for it."""
    parts = {key: noun for key, noun in spanish.parts.items() if not key.endswith("pieces of kernel")}
    languages = {**judged_example.packs.languages, "es": replace(spanish, parts=parts)}
    whole = replace(judged_example, packs=replace(judged_example.packs, languages=languages))
    bare = new_page(_dig(whole), Subject(level="context", id="C12"))

    assert find_told(bare, a_tally("Zea mays", "kernel", 20, fragments=5)) == "20 restos quemados de plantas de maíz"
    assert "part pieces of kernel" in lacking(bare)


# The count sheets added up apart


def _sheets() -> dict[tuple[str, str, str], list[int]]:
    """Whole ones and fragments by context, plant and part, named firmly and not uncharred."""
    context_of: dict[str, str] = {}
    for path in RECORDS.glob("*.yaml"):
        text = path.read_text(encoding="utf-8")
        context_of.update(re.findall(r"- id: (S\d+)\n\s+context: (\w+)", text))
    found: dict[tuple[str, str, str], list[int]] = {}
    for path in sorted(COUNTS.glob("*.csv")):
        with path.open(encoding="utf-8", newline="") as sheet:
            for row in csv.DictReader(sheet):
                is_old = row.get("condition") != "uncharred" and not row["taxon"].startswith("cf.")
                if row["count"].isdigit() and is_old:
                    plant = re.sub(r" (?:sp|indet)\.$", "", row["taxon"])
                    both = found.setdefault((context_of[row["sample"]], plant, row["part"]), [0, 0])
                    both[row.get("completeness") == "fragment"] += int(row["count"])
    return found


def _number(words: str, spanish: Language) -> int:
    return spanish.numbers.index(words) if words in spanish.numbers else 1 if words in ("un", "una") else int(words)


def test_the_numbers_of_finds_are_those_of_the_sheets(told: Mapping[Subject, Narrative], spanish: Language):
    """Every number of finds on the pages of contexts, of whole ones and of pieces, within its rounding."""
    words = "|".join([*spanish.numbers, "un", "una", r"\d+"])
    checked, wrong = 0, []
    for (id, plant, part), (whole, pieces) in _sheets().items():
        noun = spanish.plants.get(TaxonId(plant))
        own = f"{plant} {part}" if f"{plant} {part}" in spanish.parts else part
        name = "" if own != part else f" de {noun.one}" if noun is not None else f" de *{plant}*"
        # In what comes in pieces anyhow a fragment is no other thing.
        wants = {"": whole, "pieces of ": pieces, "whole and pieces of ": whole + pieces}
        wants = wants if f"pieces of {own}" in spanish.parts else {"": whole + pieces}
        text = told[Subject(level="context", id=id)].text
        for kind, want in wants.items():
            forms = spanish.parts.get(PartId(f"{kind}{own}"))
            for form in {forms.one, forms.many} if forms is not None else ():
                for match in re.finditer(rf"\b((?:un[oa]s )?)({words}) {re.escape(form + name)}(?! o\b)(?!\w)", text):
                    said, room = _number(match[2], spanish), 5 if match[1] else 0
                    checked += 1
                    wrong += [(id, match[0], want)] if abs(said - want) > room else []

    assert wrong == []
    assert checked > 60
