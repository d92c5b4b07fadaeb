"""Small sheets in Danish, Greek, Turkish and Italian, and Chinese beside English; all invented."""

from __future__ import annotations

from pathlib import Path

import pytest

from narrate.reading.intake.take_in import TakenIn, take_in
from tests.reading.intake.test_blind import packs

_DANISH = """
Prøve nr||P1|P2|P3|I alt|Ubikvitet (%)
Kontekst||A12|A14|A20||
Volumen (l)||10|8|12||
Art|Plantedel
FORKULLET
Hordeum vulgare|kerne|3||4|7|67
Avena sp.|kornfragmenter|1|1||2|67
Corylus avellana|skalfragmenter|2||6|8|67
UFORKULLET
Rubus idaeus|frugtsten||1|1|2|67
Brændt knogle||1||1|2|67
Regnormekokoner|||3||3|33
"""
_GREEK = """
Δείγμα|Στρώμα|Φάση|Όγκος (l)|Είδος|Μέρος|Διατήρηση|Αριθμός|Βάρος (g)|Παρατηρήσεις
Δ1|Σ 12|Νεολιθική|20|Triticum dicoccum|κόκκος|απανθρακωμένο|5||
Δ1|Σ 12|Νεολιθική|20|Olea europaea|πυρήνας|απανθρακωμένο|2|0.5|θραύσματα
Δ2|Σ 14|Νεολιθική|15|Ficus carica|αχαίνιο|ορυκτοποιημένο|4||
"""
_TURKISH = """
ÖRNEK NO|BİRİM|EVRE|HACİM (LT)|TÜR|KISIM|TAM|KIRIK|TOPLAM
K1|101|Evre 2|10|Hordeum vulgare|tane|4|2|6
K1|101|Evre 2|10|Lens culinaris|tohum|7||7
K2|102|Evre 2|12|Vitis vinifera|çekirdek|3|1|4
K2|102|Evre 2|12|Triticum dicoccum|kavuz tabanı|5||5
"""
_ITALIAN = """
Campione|C1|C2|C3|Totale|Frequenza (n. campioni)
US|101|102|103||
Volume (l)|10|8|5||
Hordeum vulgare - cariosside|3||1|4|2
Hordeum vulgare - framm. di cariosside|2|1||3|2
Vitis vinifera - vinacciolo||4|2|6|2
Ossa combuste|1||3|4|2
Totale resti|5|5|3|13|
Densità (resti/l)|0.5|0.63|0.6||
"""
_TWO_SCRIPTS = """
Sample No. 样品编号||H5|H12|H17|Sum 总计
Context 单位||K1|K2|K2|
Period 时代||Early 早期|Late 晚期|Late 晚期|
Volume of soil (L) 浮选土量||10|12|8|
Taxon 种属||||
Setaria italica|粟|3|8|42|53
Oryza sativa, fragment|稻（残块）|0|1|2|3
Density 密度 (items/L)||0.3|0.75|5.5|
"""


def sheet(folder: Path, text: str) -> TakenIn:
    path = folder / "lab.tsv"
    path.write_text(text.strip().replace("|", "\t") + "\n", encoding="utf-8")
    return take_in(path, packs())


Find = tuple[str, str, str, str, int | None]


def finds(got: TakenIn) -> list[Find]:
    """Sample, part, pieces, state and number of each find that is there."""
    return [
        (str(row.sample), str(row.part), row.completeness, row.condition, row.count.number)
        for row in got.rows
        if row.count.amount != "looked for and absent"
    ]


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        (
            _DANISH,
            [
                ("P1", "grain", "whole", "charred", 3), ("P3", "grain", "whole", "charred", 4),
                ("P1", "grain", "fragment", "charred", 1), ("P2", "grain", "fragment", "charred", 1),
                ("P1", "nutshell", "fragment", "charred", 2), ("P3", "nutshell", "fragment", "charred", 6),
                ("P2", "fruit stone", "whole", "uncharred", 1), ("P3", "fruit stone", "whole", "uncharred", 1),
            ],
        ),
        (
            _GREEK,
            [
                ("Δ1", "grain", "whole", "charred", 5), ("Δ1", "fruit stone", "fragment", "charred", 2),
                ("Δ2", "achene", "whole", "mineralised", 4),
            ],
        ),
        (
            _TURKISH,
            [
                ("K1", "grain", "whole", "charred", 4), ("K1", "grain", "fragment", "charred", 2),
                ("K1", "seed", "whole", "charred", 7), ("K2", "seed", "whole", "charred", 3),
                ("K2", "seed", "fragment", "charred", 1), ("K2", "glume base", "whole", "charred", 5),
            ],
        ),
        (
            _ITALIAN,
            [
                ("C1", "grain", "whole", "charred", 3), ("C3", "grain", "whole", "charred", 1),
                ("C1", "grain", "fragment", "charred", 2), ("C2", "grain", "fragment", "charred", 1),
                ("C2", "seed", "whole", "charred", 4), ("C3", "seed", "whole", "charred", 2),
            ],
        ),
        (
            _TWO_SCRIPTS,
            [
                ("H5", "grain", "whole", "charred", 3), ("H12", "grain", "whole", "charred", 8),
                ("H17", "grain", "whole", "charred", 42),
                ("H12", "grain", "fragment", "charred", 1), ("H17", "grain", "fragment", "charred", 2),
            ],
        ),
    ],
)  # fmt: skip
def test_a_sheet_gives_its_finds_and_no_total_bone_or_litre(tmp_path: Path, text: str, expected: list[Find]) -> None:
    """Heads, states, parts and pieces are those of each language; what is worked out or no plant is no find."""
    got = sheet(tmp_path, text)

    assert finds(got) == expected
    assert [problem.code for problem in got.problems if problem.code == "N317"] == []


@pytest.mark.parametrize(
    ("text", "right", "wrong", "cell"),
    [
        (_DANISH, "|3||4|7|67", "|3||4|8|67", "F6"),
        (_TURKISH, "|4|2|6", "|4|2|9", "I2"),
        (_ITALIAN, "|3||1|4|2", "|3||1|5|2", "E4"),
        (_TWO_SCRIPTS, "|8|42|53", "|8|42|55", "F6"),
    ],
)
def test_a_total_that_is_wrong_in_such_a_sheet_is_told(
    tmp_path: Path, text: str, right: str, wrong: str, cell: str
) -> None:
    """'I alt', 'TOPLAM', 'Totale' and 'Sum 总计' are of all that stands beside them."""
    got = sheet(tmp_path, text.replace(right, wrong))

    assert [problem.place.cell for problem in got.problems if problem.code == "N317"] == [cell]


def test_everyday_names_in_brackets_are_told_once_with_each_word(tmp_path: Path) -> None:
    """A word among them that says a state is seen there; nothing is read of it in silence."""
    plants = {
        "Secale cereale": "råg", "Avena sp.": "havre", "Chenopodium album": "svinmålla", "Urtica dioica": "brännässla",
        "Corylus avellana": "hassel", "Stellaria media": "våtarv", "Linum usitatissimum": "lin",
    }  # fmt: skip
    rows = "\n".join(f"{latin} ({word})|{n}|2" for n, (latin, word) in enumerate(plants.items(), 1))
    got = sheet(tmp_path, f"Prov|P1|P2\nKontext|A1|A2\n{rows}\nViola sp. (frö)|1|1")

    told = [problem for problem in got.problems if problem.code == "N313"]
    assert len(told) == 1
    assert all(f"'{word}'" in told[0].message for word in plants.values())
    assert "'frö'" not in told[0].message


@pytest.mark.parametrize(
    ("words", "part", "pieces"),
    [
        ("ułamek ziarniaka", "grain", "fragment"),
        ("obilka – zlomek", "grain", "fragment"),
        ("kôstka", "fruit stone", "whole"),
        ("szemtermés töredék", "grain", "fragment"),
        ("mogyoróhéj", "nutshell", "whole"),
        ("kırık kabuk", "nutshell", "fragment"),
        ("başakçık tabanı", "spikelet fork", "whole"),
        ("pluchová báze", "glume base", "whole"),
        ("siliqua", "pod", "whole"),
        ("base de flórula", "floret base", "whole"),
        ("segment d'épi", "rachis internode", "whole"),
        ("skallfragmenter", "nutshell", "fragment"),
        ("barr", "needle", "whole"),
    ],
)
def test_a_word_for_a_part_is_read_in_its_language(tmp_path: Path, words: str, part: str, pieces: str) -> None:
    """Whole, or in pieces where the word says so; common practice, no source."""
    got = sheet(
        tmp_path, f"Sample|Context|Taxon|Part|Count\nS1|C1|Indeterminate|{words}|3\nS2|C1|Lens culinaris|seed|2"
    )

    assert finds(got)[0] == ("S1", part, pieces, "charred", 3)
