"""Lists and registers in which columns beside the finds are easily taken for samples or plants. All sheets are invented."""

from __future__ import annotations

from functools import cache
from pathlib import Path

from narrate.model.packs import Packs
from narrate.reading.intake.project_intake import intake_packs
from narrate.reading.intake.take_in import TakenIn, take_in


@cache
def packs() -> Packs:
    return intake_packs(None)


def taken(folder: Path, text: str) -> TakenIn:
    sheet = folder / "lab.tsv"
    sheet.write_text(text.strip("\n").replace("|", "\t") + "\n", encoding="utf-8")
    return take_in(sheet, packs())


def finds(found: TakenIn) -> list[tuple[str, str, float | None]]:
    return [(str(r.sample), r.identification.written, r.count.number) for r in found.rows]


def test_one_sample_number_over_several_contexts_tells_no_samples_apart(tmp_path: Path) -> None:
    """'0' in every line stands for a number that nobody gave: the contexts tell them apart."""
    sheet = "context|taxon|sample_number|quantity\nPit 1|Zea mays kernel|0|3\nPit 1|Rubus seed|0|1\nHearth 2|Zea mays kernel|0|9"

    assert finds(taken(tmp_path, sheet)) == [
        ("Pit 1", "Zea mays kernel", 3), ("Pit 1", "Rubus seed", 1), ("Hearth 2", "Zea mays kernel", 9),
    ]  # fmt: skip


def test_a_class_of_abundance_beside_a_count_is_not_added_to_it(tmp_path: Path) -> None:
    """The list names its sample in a line above, below lines of the site and a small table of dates."""
    sheet = (
        "Site: Far Bank\n\nSample: 107a\nPeriod|Context|Type|Earliest date\nLate|Floor of house|floor|1100\n\nContext integrity: 3\n\n"
        "Taxa name|Part|Preservation|Problem code|Quantity|Abundance\nZea mays|kernel|c||64|4\nRubus sp.|seed|c|!|1|1\n"
        "Chenopodium sp.|seed|c||2|1\nVitis sp.|seed|c||2|1"
    )

    found = taken(tmp_path, sheet)

    assert finds(found) == [
        ("107a", "Zea mays", 64), ("107a", "Rubus sp.", 1), ("107a", "Chenopodium sp.", 2), ("107a", "Vitis sp.", 2),
    ]  # fmt: skip
    assert [doubt for doubt in found.doubts if doubt.startswith("'Abundance' stands beside counts")] != []


def test_columns_of_places_sherds_and_frequencies_are_no_plants(tmp_path: Path) -> None:
    """Beside three plants stand degrees, the sherds that were looked at, and rates by a thousand of them."""
    sheet = (
        "No.|Site name|Latitude, degrees north|Number of sherds studied|Number|Zea mays|Phaseolus vulgaris|Helianthus annuus|Frequency_x1000\n"
        "1|Far Bank|39.22805|936|936|1|0|4|5.34\n2|Near Bank|39.5274|578|578|0|4|2|10.38\n3|Ford|39.46492|132|132|3|2|41|348.5"
    )

    found = taken(tmp_path, sheet)

    assert {r.identification.written for r in found.rows} == {"Zea mays", "Phaseolus vulgaris", "Helianthus annuus"}
    assert sum(r.count.number or 0 for r in found.rows) == 57


def test_sites_with_the_look_of_latin_names_are_no_plants(tmp_path: Path) -> None:
    """'Campus novus' under 'Site' in a register without plants."""
    sheet = (
        "ID|Site|Culture|Region|Type|X|Y|Charred|Tot. Cereals|Tot. Pulses\n4|Campus novus, 2|Late|East|Urban|14.4877|40.7523|1|6|395\n"
        "35|Vicus longus, 5|Late|North|Rural|8.4333|44.2649|1|1|144\n36|Vallis magna|Late|North|Rural|8.3305|44.1733|1|513|13"
    )

    assert {r.identification.written for r in taken(tmp_path, sheet).rows} & {"Vicus longus, 5", "Vallis magna"} == set()


def test_heads_written_once_over_blocks_of_the_same_samples_hold_for_each_block(tmp_path: Path) -> None:
    """'Raw counts' and 'Items per litre' side by side: the second block is held against the first, and not added."""
    sheet = (
        "||Raw counts||||Items per litre||\n|Volume (L)|20|10|15|45|||\nTaxon|Part|B-04|B-12|B-13|Total|B-04|B-12|B-13\n"
        "Zea mays|kernel|2|52|0|54|0.10|5.20|0.00\nRubus sp.|seed|7|4|7|18|0.35|0.40|0.47\nVitis sp.|seed|4|0|3|7|0.20|0.00|0.20\n"
        "Total||13|56|10|79|0.65|5.60|0.67"
    )

    found = taken(tmp_path, sheet)

    assert sum(row.count.number or 0 for row in found.rows) == 79
    assert {problem.code for problem in found.problems} & {"N313", "N314", "N317"} == set()


def test_a_volume_with_a_share_in_brackets_heads_no_line_of_shares(tmp_path: Path) -> None:
    """'30 (subsample 50 %)' in a line of counts: the line stays one of counts."""
    sheet = (
        "Sample|Vol. proc.|Zea mays kernel|Rubus seed|Vitis seed\nS1|10 L|3|12|2\nS2|~20|4|5|2\nS3|30 (subsample 50 %)|1|2|6\n"
        "S4|c. 15|7|1|1"
    )

    assert {sample for sample, _, _ in finds(taken(tmp_path, sheet))} == {"S1", "S2", "S3", "S4"}


def test_analysts_dates_and_rows_of_kernels_are_no_counts(tmp_path: Path) -> None:
    """Behind the counts stand initials and dates, and between them the number of rows on the cobs."""
    sheet = (
        "Bolsa|Vol. (l)|Zea mays|||Phaseolus vulgaris|Total|Analista|Fecha\n||Coronta|N.º de hileras|Grano|Semilla|||\n"
        "23/1|12|4|10|8|1|13|L.H.P.|26-VIII-98\n23/2|10|3|10–12|8|3|14|M.Q.|2-IX-98\n24/1|6|6|10, 14|11|4|21|L.H.P.|9-IX-98"
    )

    found = taken(tmp_path, sheet)

    assert sum(row.count.number or 0 for row in found.rows) == 48
    assert [problem.code for problem in found.problems if problem.severity == "error" or problem.code == "N317"] == []
