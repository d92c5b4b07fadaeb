"""Plain wide tables, one sample a line, whatever their heads look like. Invented; the words are common practice, no source."""

# ruff: noqa: E501

import csv
from collections import Counter
from collections.abc import Callable
from pathlib import Path

import pytest

from narrate.reading.intake.take_in import TakenIn, take_in
from tests.reading.intake.test_blind import packs

FINDS = (
    ("Hordeum vulgare", "grain"), ("Hordeum vulgare", "rachis"), ("Triticum dicoccum", "glume base"), ("Lens culinaris", "seed"),
    ("Avena sp.", "grain"), ("Corylus avellana", "nutshell"), ("Galium aparine", "seed"), ("cf. Pisum sativum", "seed"),
)  # fmt: skip
MEANT = (
    ("Hordeum vulgare", "grain"), ("Hordeum vulgare", "rachis internode"), ("Triticum dicoccum", "glume base"), ("Lens culinaris", "seed"),
    ("Avena", "grain"), ("Corylus avellana", "nutshell"), ("Galium aparine", "seed"), ("Pisum sativum", "seed"),
)  # fmt: skip
STYLES: dict[str, Callable[[str, str], str]] = {
    "Taxon_part": lambda taxon, part: f"{taxon}_{part}",
    "Taxon part": lambda taxon, part: f"{taxon} {part}",
    "Taxon – part": lambda taxon, part: f"{taxon} – {part}",
    "Taxon: part": lambda taxon, part: f"{taxon}: {part}",
    "Taxon, part": lambda taxon, part: f"{taxon}, {part}",
    "Taxon (part)": lambda taxon, part: f"{taxon} ({part})",
    "Taxon [part]": lambda taxon, part: f"{taxon} [{part}]",
    "Taxon..part.": lambda taxon, part: f"{taxon} ({part})".translate(str.maketrans(" ()", "...")),
    "taxon_part": lambda taxon, part: f"{taxon}_{part}".lower().replace(" ", "_").replace(".", ""),
    "Taxon__part": lambda taxon, part: f"{taxon}__{part}",
    "Taxon|part": lambda taxon, part: f"{taxon}|{part}",
    "Taxon / part": lambda taxon, part: f"{taxon} / {part}",
    "Taxon_part_n": lambda taxon, part: f"{taxon}_{part}_n",
    "TaxonName_part": lambda taxon, part: "".join(w[0].upper() + w[1:] for w in taxon.replace(".", "").split()) + "_" + part.replace(" ", ""),
}
PARTS = {
    "de": ("Korn", "Spindelglied", "Hüllspelzenbasis", "Same", "Schale"),
    "fr": ("caryopse", "rachis", "base de glume", "graine", "coque"),
    "es": ("cariopsis", "raquis", "base de gluma", "semilla", "cáscara"),
    "it": ("cariosside", "rachide", "base di gluma", "seme", "guscio"),
    "nl": ("korrel", "aarspil", "kafbasis", "zaad", "dop"),
    "pl": ("ziarniak", "osadka", "podstawa plewy", "nasiono", "łupina"),
}
HEADS = {
    "en": "SampleID,Context,Period,DateFrom,DateTo,ContextType,Volume_L,*,Charcoal_g,Dung_presence,TotalItems,ItemsPerL,n_taxa",
    "de": "Proben_Nr,Befund,Datierung,Datierung von,Datierung bis,Befundart,Volumen_l,*,Holzkohle_g,Dung_vorhanden,Summe,Dichte,Anzahl Taxa",
    "fr": "Échantillon,US,Phase,Année,Secteur,Type de structure,Volume (L),*,Charbon_g,Excréments_présence,Total,Densité,Nb taxons",
    "es": "Muestra,UE,Fase,Campaña,Sector,Tipo de contexto,Volumen (l),*,Carbón_g,Estiércol_presencia,Total restos,Densidad,N taxones",
    "it": "Campione,US,Fase,Anno,Settore,Tipo di contesto,Litri,*,Carboni_g,Letame_presenza,Totale,Densità,N. taxa",
    "nl": "Monsternr,Spoor,Periode,Jaar,Put,Spooraard,Volume_l,*,Houtskool_g,Mest_aanwezig,Totaal,Dichtheid,Aantal taxa",
    "pl": "Nr próby,Obiekt,Faza,Rok,Ar,Typ obiektu,Objętość (l),*,Węgle drzewne_g,Nawóz_obecność,Suma,Zagęszczenie,Liczba taksonów",
}  # fmt: skip


def counts(n: int) -> list[int]:
    return [(n * 7 + j * 5) % 13 if (n + j) % 3 else 0 for j in range(len(FINDS))]


def written(folder: Path, *, language: str = "en", style: str = "Taxon_part", wrong: int = 0) -> TakenIn:
    """Ten samples, with their totals, litres and densities; one total off by one where a sample is named."""
    words = dict(zip(("grain", "rachis", "glume base", "seed", "nutshell"), PARTS.get(language, ()), strict=False))
    heads = [STYLES[style](taxon, words.get(part, part)) for taxon, part in FINDS]
    before, after = HEADS[language].split(",*,")
    path = folder / "wide.csv"
    with path.open("w", newline="", encoding="utf-8") as file:
        out = csv.writer(file)
        out.writerow([*before.split(","), *heads, *after.split(",")])
        for n in range(1, 11):
            own, litres = counts(n), 10 if n % 2 else 12.5
            dated = (-1800, -1500) if language in ("en", "de") else (2014, "A")
            out.writerow([
                f"S{n:02d}", 1000 + n, "MBA", *dated, "pit", litres, *own, round(0.37 * n, 2), "present" if n % 3 == 0 else "absent",
                sum(own) + (n == wrong), round(sum(own) / litres, 2), sum(map(bool, own)),
            ])  # fmt: skip
    return take_in(path, packs())


def sums(found: TakenIn) -> dict[tuple[str | None, str], int]:
    added: Counter[tuple[str | None, str]] = Counter()
    for row in found.rows:
        if row.count.number:
            taxon = row.identification.taxon
            added[str(taxon) if taxon else None, str(row.part)] += row.count.number
    return dict(added)


EXPECTED = {name: sum(counts(n)[at] for n in range(1, 11)) for at, name in enumerate(MEANT)}


@pytest.mark.parametrize("style", STYLES)
def test_heads_of_taxon_and_part_are_read_however_they_are_joined(style: str, tmp_path: Path) -> None:
    """A line, a dash, brackets, points or capitals between the taxon and its part."""
    assert sums(written(tmp_path, style=style)) == EXPECTED


@pytest.mark.parametrize("language", HEADS)
def test_wide_tables_are_read_in_seven_languages(language: str, tmp_path: Path) -> None:
    """Years, sectors and kinds of structures are no counts, and 'pit' under a kind is no fruit stone."""
    found = written(tmp_path, language=language)

    assert sums(found) == EXPECTED
    assert round(sum(row.mass_g or 0 for row in found.rows), 2) == 20.35


@pytest.mark.parametrize("language", HEADS)
def test_results_of_a_wide_table_that_agree_are_not_told(language: str, tmp_path: Path) -> None:
    """Totals, densities and numbers of taxa, in any language; a total that is wrong is told at its cell alone."""
    assert [p.place.cell for p in written(tmp_path, language=language).problems if p.code == "N317"] == []
    assert [p.place.cell for p in written(tmp_path, language=language, wrong=4).problems if p.code == "N317"] == ["R5"]


def test_the_part_behind_a_variety_is_not_lost(tmp_path: Path) -> None:
    """'Hordeum vulgare var. vulgare_rachis' is no grain."""
    path = tmp_path / "wide.csv"
    path.write_text(
        "Sample,Litres,Hordeum vulgare var. vulgare_rachis,Hordeum vulgare var. nudum_grain,Galium aparine_seed\n1,10,4,2,3\n2,8,1,5,2\n",
        encoding="utf-8",
    )

    found = take_in(path, packs())
    assert Counter(str(row.part) for row in found.rows) == {"rachis internode": 2, "grain": 2, "seed": 2}
