"""Plain long tables, one record a line, whatever their columns are called. Invented; the words are common practice, no source."""

import csv
from collections.abc import Callable
from pathlib import Path

import pytest

from narrate.reading.intake.take_in import TakenIn, take_in
from tests.reading.intake.test_blind import packs

FINDS = (
    ("Triticum spelta", "glume base"), ("Hordeum vulgare", "grain"), ("Avena sp.", "grain"),
    ("Corylus avellana", "nutshell"), ("Chenopodium album", "seed"), ("Galium aparine", "seed"),
)  # fmt: skip
SAMPLES = (("101", 1201, 10, "2"), ("102", 1203, 20, "2"), ("103", 1304, 12.5, "3"), ("105", 1310, 8, "3"))
PARTS = {
    "en": ("glume base", "grain", "nutshell", "seed", "charred"),
    "de": ("Hüllspelzenbasis", "Korn", "Nussschale", "Same", "verkohlt"),
    "fr": ("base de glume", "caryopse", "coque", "graine", "carbonisé"),
    "es": ("base de gluma", "cariopsis", "cáscara", "semilla", "carbonizado"),
    "it": ("base di gluma", "cariosside", "guscio", "seme", "carbonizzato"),
    "nl": ("kafbasis", "korrel", "dop", "zaad", "verkoold"),
    "pl": ("podstawa plewy", "ziarniak", "łupina", "nasiono", "zwęglone"),
}
Row = Callable[[int, tuple[str, int, float, str], str, str, str, int], list[object]]


FORMS: dict[str, tuple[str, str, Row]] = {
    "Darwin Core": (
        "en",
        "occurrenceID,eventID,locality,year,sampleSizeValue,sampleSizeUnit,scientificName,identificationQualifier,preparations,"
        "organismQuantity,organismQuantityType,occurrenceRemarks",
        lambda n, s, taxon, part, state, value: [
            f"occ-{n}", s[0], "Farside", 2014, s[2], "litre", taxon, "", f"{state} {part}", value, "individuals", ""
        ],
    ),
    "metadata": (
        "en",
        "record_id,site_code,excavation_year,sample_no,context_no,feature_type,phase,date_from,date_to,vol_collected_l,vol_processed_l,"
        "qualifier,taxon,part,preservation,quantity_type,quantity,identification_notes",
        lambda n, s, taxon, part, state, value: [
            f"R-{n}", "FS", 2014, s[0], s[1], "pit", s[3], -400, -100, 40, s[2], "", taxon, part, state, "count", value, ""
        ],
    ),
    "codes": (
        "en",
        "project,trench,context_number,sample_number,easting,northing,volume_litres,flot_ml,family,species,component,n,charring",
        lambda n, s, taxon, part, state, value: [
            "FS", "T2", s[1], s[0], 503.2, 1204.5, s[2], 45, "Poaceae", taxon, part, value, state
        ],
    ),
    "units": (
        "en",
        "obs,SampleCode,Stratum,StartDate,EndDate,SoilVolume_L,PercentSorted,TaxonName,PlantPart,Preservation,Value,Unit",
        lambda n, s, taxon, part, state, value: [
            n, s[0], s[1], -400, -100, s[2], 100, taxon, part, state, value, "count"
        ],
    ),
    "German": (
        "de",
        "Lfd. Nr.,Fundort,Grabungsjahr,Befund,Probennr.,Datierung von,Datierung bis,Volumen (l),Pflanzenart,Resttyp,Erhaltung,Anzahl,Bemerkung",
        lambda n, s, taxon, part, state, value: [
            n, "Feld", 2014, s[1], s[0], -400, -100, s[2], taxon, part, state, value, ""
        ],
    ),
    "French": (
        "fr",
        "N°,Site,Année,US,Échantillon,Phase,Volume (L),Taxon,Partie,Conservation,Nombre,Remarques",
        lambda n, s, taxon, part, state, value: [n, "Pré", 2014, s[1], s[0], s[3], s[2], taxon, part, state, value, ""],
    ),
    "Spanish": (
        "es",
        "id_registro,sitio,campaña,UE,muestra,fase,litros,taxón,parte,estado,cantidad,observaciones",
        lambda n, s, taxon, part, state, value: [n, "Loma", 2014, s[1], s[0], s[3], s[2], taxon, part, state, value, ""],
    ),
    "Italian": (
        "it",
        "id,sito,anno,US,campione,periodo,litri,specie,parte,conservazione,quantità,note",
        lambda n, s, taxon, part, state, value: [n, "Poggio", 2014, s[1], s[0], s[3], s[2], taxon, part, state, value, ""],
    ),
    "Dutch": (
        "nl",
        "recordnr,vindplaats,jaar,spoor,monsternr,datering,volume_l,soort,plantendeel,conservering,aantal,opmerkingen",
        lambda n, s, taxon, part, state, value: [n, "Veen", 2014, s[1], s[0], "IJZ", s[2], taxon, part, state, value, ""],
    ),
    "Polish": (
        "pl",
        "lp,stanowisko,rok,obiekt,nr próby,faza,objętość (l),takson,część,stan zachowania,liczba,uwagi",
        lambda n, s, taxon, part, state, value: [n, "Pole", 2014, s[1], s[0], s[3], s[2], taxon, part, state, value, ""],
    ),
}  # fmt: skip


def written(form: str, folder: Path) -> tuple[Path, list[tuple[str, str, str, int]]]:
    """A long table in one of the forms, and what it says: sample, taxon, part, count."""
    language, heads, row = FORMS[form]
    *words, state = PARTS[language]
    in_language = dict(zip(PARTS["en"], words, strict=False))
    said: list[tuple[str, str, str, int]] = []
    path = folder / "long.csv"
    with path.open("w", newline="", encoding="utf-8") as file:
        out = csv.writer(file)
        out.writerow(heads.split(","))
        for i, sample in enumerate(SAMPLES):
            for j, (taxon, part) in enumerate(FINDS):
                if (i + j) % 4 != 3:
                    said.append((sample[0], taxon, part, (i * 7 + j * 3) % 23 + 1))
                    out.writerow(row(len(said), sample, taxon, in_language[part], state, said[-1][3]))
    return path, said


def finds_of(found: TakenIn) -> list[tuple[str, str, str, int | float | None]]:
    return [(str(r.sample), r.identification.written, str(r.part), r.count.number) for r in found.rows]


@pytest.mark.parametrize("form", FORMS)
def test_a_long_table_is_read_whatever_its_columns_are_called(form: str, tmp_path: Path) -> None:
    """Record numbers, years, litres and ends of dates beside the finds are no counts."""
    path, said = written(form, tmp_path)

    assert finds_of(take_in(path, packs())) == said


@pytest.mark.parametrize("form", FORMS)
def test_a_long_table_gives_the_litres_of_its_samples(form: str, tmp_path: Path) -> None:
    """Of litres taken and litres floated, the floated."""
    path, _ = written(form, tmp_path)

    facts = take_in(path, packs()).facts
    assert {id: {one.text for one in said["volume"]} for id, said in facts.items()} == {
        id: {f"{litres:g}"} for id, _, litres, _ in SAMPLES
    }


@pytest.mark.parametrize("form", FORMS)
def test_nothing_of_a_plain_long_table_is_doubted_loudly(form: str, tmp_path: Path) -> None:
    """A table that says all of itself gives no warning of its columns."""
    path, _ = written(form, tmp_path)

    assert [doubt for doubt in take_in(path, packs()).doubts if doubt.startswith("DOUBTFUL")] == []


@pytest.mark.parametrize(
    "text",
    [
        "No plant remains", "keine verkohlten Reste", "aucun reste végétal", "sin restos vegetales", "nessun resto vegetale",
        "geen plantenresten", "brak szczątków roślinnych", "sterile",
    ],
)  # fmt: skip
def test_a_line_that_names_nothing_found_is_a_sample_and_no_find(text: str, tmp_path: Path) -> None:
    """'No plant remains, 0' keeps its sample, and makes no taxon."""
    path = tmp_path / "long.csv"
    path.write_text(
        "sample,context,litres,taxon,part,preservation,count\n1,12,10,Hordeum vulgare,grain,charred,4\n"
        f"1,12,10,Avena sp.,grain,charred,2\n1,12,10,Galium aparine,seed,charred,3\n2,13,8,{text},,,0\n",
        encoding="utf-8",
    )

    found = take_in(path, packs())
    assert (sorted({str(r.sample) for r in found.rows}), sorted(found.facts), found.problems) == (["1"], ["1", "2"], ())


def test_an_estimate_among_counts_says_so_in_its_note(tmp_path: Path) -> None:
    """A column beside the amounts that says 'count', 'estimate' or 'weight (g)' is obeyed."""
    path = tmp_path / "long.csv"
    path.write_text(
        "sample,context,taxon,part,measurement type,value\n1,12,Hordeum vulgare,grain,count,4\n"
        "1,12,Avena sp.,grain,estimate,60\n1,12,Quercus sp.,wood,weight (g),1.25\n2,12,Galium aparine,seed,count,3\n",
        encoding="utf-8",
    )

    rows = take_in(path, packs()).rows
    assert [(r.count.number, r.mass_g, r.note) for r in rows] == [
        (4, None, ""), (60, None, "an estimate"), (None, 1.25, ""), (3, None, "")
    ]  # fmt: skip
