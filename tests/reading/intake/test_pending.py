"""Samples that wait to be sorted, and weights and shares among the counts. Invented; the words are common practice, no source."""

# ruff: noqa: E501

from pathlib import Path

import pytest

from narrate.reading.intake.take_in import TakenIn, take_in
from tests.reading.intake.test_blind import packs


def read(text: str, folder: Path) -> TakenIn:
    path = folder / "sheet.csv"
    path.write_text(text, encoding="utf-8")
    return take_in(path, packs())


WORDS = (
    "pend.", "pending", "not sorted", "unsorted", "in progress", "noch nicht ausgelesen", "nicht sortiert", "in Bearbeitung",
    "en cours", "à trier", "non trié", "en proceso", "sin analizar", "in corso", "non analizzato", "nog niet", "niet uitgezocht",
    "w toku", "nie przebrane",
)  # fmt: skip


@pytest.mark.parametrize("word", WORDS)
def test_a_sample_that_waits_holds_nothing_and_lacks_nothing(word: str, tmp_path: Path) -> None:
    """Its blanks are not looked for either, and it is told once."""
    found = read(
        f"Taxon,Part,S1,S2,S3\nHordeum vulgare,grain,4,{word},2\nAvena sp.,grain,3,,1\nGalium aparine,seed,,,5\n", tmp_path
    )

    assert [row.count.amount for row in found.rows if str(row.sample) == "S2"] == ["not looked for"] * 3
    assert [(p.severity, p.place.cell, p.message) for p in found.problems if word in p.message] == [
        ("warning", "D2", f"'{word}' says that nobody has looked yet; it is kept as not looked for, expected a count; "
         "the same in D3, D4")
    ]  # fmt: skip


def test_one_class_that_waits_leaves_the_other_counts(tmp_path: Path) -> None:
    """'not sorted' of one taxon says nothing of the others."""
    found = read("Taxon,Part,S1,S2\nHordeum vulgare,grain,4,6\nPanicum miliaceum,grain,not sorted,2\nAvena sp.,grain,3,1\n", tmp_path)

    amounts = [(row.count.amount, row.count.number) for row in found.rows if str(row.sample) == "S1"]
    assert amounts == [("counted", 4), ("not looked for", None), ("counted", 3)]


@pytest.mark.parametrize("label", ["Madera (g)", "Madera >2 mm (g)", "Holzkohle (g)", "Charcoal, g", "Wood weight (g)"])
def test_a_row_weighed_under_whole_and_fragments_is_weighed(label: str, tmp_path: Path) -> None:
    """The unit of the name says more than the small heading of counts over it."""
    found = read(
        f"Sample,,S1,,S2,\nTaxon,Part,ent.,frag.,ent.,frag.\nHordeum vulgare,grain,4,1,2,\nAvena sp.,grain,3,,1,2\n{label},,2.17,,0.5,\n"
        if "," not in label
        else f"Sample,,S1,,S2,\nTaxon,Part,ent.,frag.,ent.,frag.\nHordeum vulgare,grain,4,1,2,\nAvena sp.,grain,3,,1,2\n\"{label}\",,2.17,,0.5,\n",
        tmp_path,
    )

    assert [row.mass_g for row in found.rows if row.mass_g] == [2.17, 0.5]


def test_a_name_with_its_part_and_no_count_heads_nothing(tmp_path: Path) -> None:
    """'Capsicum sp. | semilla' without counts was looked for and not found; it is no section over the next lines."""
    found = read(
        "Taxón,Parte,M-1,M-2,M-3\nZea mays,grano,4,1,2\nCapsicum sp.,semilla,,,\nPoaceae,cariopsis,3,,1\nMalvaceae,semilla,2,2,1\n", tmp_path
    )

    rows = found.layout.tables[0].rows if found.layout else {}
    assert [rows[n].name for n in range(1, 5)] == ["counts"] * 4


FORM = (
    "Probe,KS 1,,,Befund,Bef. 12,,,\nDatierung,Latène,,,Datum,3.6.2021,,,\nVolumen (l),10,,,Bearbeiter,A. N.,,,\n\n"
    "Taxon,Rest,4 mm,1 mm,{head},Summe,{scaled},Bem.\nTriticum spelta,Korn,2,5,1,8,11,\nTriticum dicoccum,Korn,,3,2,5,{wrong},\n"
    "Chenopodium album,Same,,1,4,5,17,\nHolzkohle,,\"2,59 g\",\"1,50 g\",,\"4,09 g\",,\nSumme (ohne Holzkohle),,,,,18,,\n"
)


@pytest.mark.parametrize(
    ("head", "scaled"),
    [
        ('"0,5 mm (1/4)"', "hochger."), ("0.5 mm (25%)", "extrapolated"), ("0.5 mm 1/4 sorted", "scaled up"),
        ('"0,5 mm [x4]"', "hochgerechnet"), ("0.5 mm (¼ trié)", "extrapolé"),
    ],
)  # fmt: skip
def test_a_sieve_class_with_its_share_is_counted_as_sorted(head: str, scaled: str, tmp_path: Path) -> None:
    """The share goes to the sample, and the numbers scaled up are checked and never taken."""
    found = read(FORM.format(head=head, scaled=scaled, wrong=12), tmp_path)

    assert sum(row.count.number or 0 for row in found.rows) == 18
    assert {one.unit.replace(",", "."): one.text for one in found.facts["KS 1"]["sorted of class"]}["0.5 mm"] in ("1/4", "25%")
    assert [(p.place.cell, p.message) for p in found.problems if p.code == "N317"] == [
        ("G7", f"the stored {scaled} is 12, and the counts in C7 to E7, scaled up for the shares sorted, give 11, expected them to agree")
    ]


def test_a_form_says_its_context_and_litres_beside_labels_that_nobody_knows(tmp_path: Path) -> None:
    """'Datum' and 'Bearbeiter' beside 'Datierung' and 'Volumen' hide nothing."""
    facts = read(FORM.format(head="0.5 mm (1/4)", scaled="hochger.", wrong=11), tmp_path).facts["KS 1"]

    assert {role: facts[role][0].text for role in ("feature", "phase", "volume")} == {
        "feature": "Bef. 12", "phase": "Latène", "volume": "10"
    }  # fmt: skip


def test_grams_with_a_decimal_comma_are_no_two_numbers(tmp_path: Path) -> None:
    """'2,59 g' is 2.59 grams, and not 2 items of 59 grams."""
    found = read(FORM.format(head="0.5 mm (1/4)", scaled="hochger.", wrong=11), tmp_path)

    assert [row.mass_g for row in found.rows if row.mass_g] == [2.59, 1.5]


@pytest.mark.parametrize(
    "label", ["Summe (ohne Holzkohle)", "Total excl. charcoal", "Total without charcoal", "Total sans charbons", "Total sin carbón", "Totale senza carboni"]
)
def test_a_total_leaves_out_what_it_says(label: str, tmp_path: Path) -> None:
    """And is told where it is wrong, at its cell."""
    sheet = "Taxon,Part,S1,S2,S3\nHordeum vulgare,grain,4,6,2\nCharcoal,,9,8,7\nAvena sp.,grain,3,1,1\n{label},,7,7,{last}\n"

    assert [p.place.cell for p in read(sheet.format(label=label, last=3), tmp_path).problems if p.code == "N317"] == []
    assert [p.place.cell for p in read(sheet.format(label=label, last=4), tmp_path).problems if p.code == "N317"] == ["E5"]
