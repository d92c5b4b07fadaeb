"""Lists of finds in Central European languages, the sample written once for its lines. The sheets are invented."""
# ruff: noqa: E501


from pathlib import Path

import pytest

from narrate.reading.intake.project_intake import intake_packs
from narrate.reading.intake.take_in import take_in

HEADS = {
    "Polish": ("Nr próby", "Objętość (l)", "Nazwa łacińska", "Nazwa polska", "Rodzaj szczątków", "Liczba całych", "Liczba fragmentów", "ziarniak"),
    "Czech": ("Číslo vzorku", "Objem (l)", "Latinský název", "Český název", "Druh zbytku", "Počet celých", "Počet zlomků", "obilka"),
    "Hungarian": ("Minta száma", "Térfogat (l)", "Latin név", "Magyar név", "Maradvány típusa", "Ép db", "Töredék db", "szemtermés"),
    "Croatian": ("Broj uzorka", "Volumen (l)", "Latinski naziv", "Hrvatski naziv", "Vrsta ostatka", "Broj cijelih", "Broj ulomaka", "zrno"),
}  # fmt: skip


@pytest.mark.parametrize("language", list(HEADS))
def test_a_list_with_its_samples_once_is_read_in_the_language_of_its_heads(tmp_path: Path, language: str) -> None:
    """Samples and litres go on downwards; whole ones and fragments stay apart."""
    sample, litres, latin, own, rest, whole, broken, grain = HEADS[language]
    lines = [
        (sample, litres, latin, own, rest, whole, broken),
        ("1/19", "10", "Hordeum vulgare", "x", grain, "4", "2"),
        ("", "", "Panicum miliaceum", "y", grain, "7", ""),
        ("", "", "Secale cereale", "z", grain, "", "3"),
        ("2/19", "12,5", "Hordeum vulgare", "x", grain, "1", ""),
        ("", "", "Avena sp.", "v", grain, "2", "5"),
        ("3/19", "8", "Panicum miliaceum", "y", grain, "9", ""),
    ]
    sheet = tmp_path / "lab.csv"
    sheet.write_text("\n".join(";".join(line) for line in lines), encoding="utf-8")
    taken = take_in(sheet, intake_packs(None))

    assert [(r.sample, r.identification.taxon, r.count.number, r.completeness) for r in taken.rows] == [
        ("1/19", "Hordeum vulgare", 4, "whole"),
        ("1/19", "Hordeum vulgare", 2, "fragment"),
        ("1/19", "Panicum miliaceum", 7, "whole"),
        ("1/19", "Secale cereale", 3, "fragment"),
        ("2/19", "Hordeum vulgare", 1, "whole"),
        ("2/19", "Avena", 2, "whole"),
        ("2/19", "Avena", 5, "fragment"),
        ("3/19", "Panicum miliaceum", 9, "whole"),
    ]
    assert {row.part for row in taken.rows} == {"grain"}
    assert {id: [said.text for said in facts["volume"]] for id, facts in taken.facts.items()} == {
        "1/19": ["10"], "2/19": ["12,5"], "3/19": ["8"],
    }  # fmt: skip
