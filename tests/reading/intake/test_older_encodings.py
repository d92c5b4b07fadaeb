"""Files from before UTF-8: the encoding that their words speak for. Words are invented; the codecs are Python's own."""

import pytest

from narrate.problems import ProblemList
from narrate.reading.intake.east_asian_encodings import east_asian_encoding
from narrate.reading.intake.grids import grids_of
from narrate.reading.intake.older_encodings import older_encoding


@pytest.mark.parametrize(
    ("codec", "text"),
    [
        ("cp1252", "Körner; Hüllspelzen; Größe"),
        ("cp1252", "noyau carbonisé; Château; Rhône; fût; Maïs; n°4; 5 cm³"),
        ("cp1252", "¿moderno? ¿recientes? Muñoz; año; nº; Cáceres"),
        ("cp1252", "Körner; Muñoz; Rhône; Hordeum³; Triticum¹"),
        ("cp1252", "São João; carvões; città; perché"),
        ("cp1252", "Þórunn, mýri, ½ grain, 10±2"),
        ("cp1250", "próba; pszenica płaskurka; żyto; objętość"),
        ("cp1250", "łupina orzecha; ziarniak żyta"),
        ("cp1250", "pšenice dvouzrnka; ječmen obecný; třešeň"),
        ("cp1250", "szőlő; gyümölcs; köles; űrmérték"),
        ("iso8859-2", "książka; ślad; żyto; płaskurka"),
        ("cp1254", "buğday; fındık; ağaç; sığır; köy"),
        ("cp1257", "kviečiai; miežiai; ąžuolas; žirniai"),
        ("cp1251", "пшеница; ячмень; Triticum; проба № 1"),
        ("cp1253", "σιτάρι; κριθάρι; δείγμα"),
        ("mac_roman", "noyau carbonisé; Rhône; Éch. prélèvement"),
        ("cp850", "Körner; Größe; Hüllspelze"),
    ],
)
def test_words_come_back_whatever_encoding_they_were_saved_in(codec: str, text: str) -> None:
    """The text is the same again, and a file in Windows-1252 is never taken for another."""
    read, older = older_encoding(text.encode(codec))

    assert read == text
    assert (older.codec == "cp1252") == (codec == "cp1252")


def test_central_european_letters_are_told_at_the_first_word_that_shows_them() -> None:
    """The word that tells the encodings apart, as both of them make it."""
    problems = ProblemList()
    grids_of("lab.tsv", "Nr próby\tObjętość (l)\n1\t10\n2\tpszenica płaskurka\n".encode("cp1250"), problems)

    assert [str(p.place) + ": " + p.message for p in problems.found if p.code == "N312"] == [
        "lab.tsv, cell B1: byte 0xEA is not UTF-8; the file is read as Windows-1250 (Central European), so that the "
        "byte is 'ę' in 'Objętość' (Windows-1252 would make it 'Objêtoœæ'); expected UTF-8"
    ]


EAST_ASIAN = [
    ("cp932", "Shift-JIS (Japanese)", "試料番号,アワ,キビ,炭化種子,破片"),
    ("gbk", "GBK (Chinese)", "样品号,粟,黍,水稻,小麦,炭化种子,绝对数量"),
    ("cp949", "EUC-KR (Korean)", "시료번호,조,기장,벼,보리,탄화종자"),
    ("big5", "Big5 (Chinese)", "樣品,小米,稻米,炭化種子"),
    ("euc_jp", "EUC-JP (Japanese)", "試料番号,アワ,キビ,炭化種子"),
]


@pytest.mark.parametrize(("codec", "name", "text"), EAST_ASIAN)
def test_east_asian_files_come_back_and_are_told(codec: str, name: str, text: str) -> None:
    """As spreadsheets in these languages save CSV: the text is the same again, and the encoding is said."""
    problems = ProblemList()
    (grid,) = grids_of("lab.csv", (text + "\n" + "1,2,3,4,5\n" * 3).encode(codec), problems)

    assert ",".join(grid.text(0, n) for n in range(text.count(",") + 1)) == text
    assert [f"is read as {name}" in p.message for p in problems.found if p.code == "N312"] == [True]


@pytest.mark.parametrize(
    ("codec", "text"),
    [
        ("cp1251", "Проба; пшеница; ячмень обыкновенный; зерновка; ВСЕГО; КУЛЬТУРНЫЕ РАСТЕНИЯ"),
        ("cp1253", "ΣΙΤΗΡΑ; ΚΡΙΘΑΡΙ; δείγμα; σιτάρι; ανθρακωμένα"),
        ("cp1252", "ÄÖÜ ÉÈ; Größe; Hüllspelzenbasis; Köcherfliegen; Château; préhistoire"),
        ("cp1250", "ŁUPINA; pszenica płaskurka; żyto; objętość"),
        ("cp1254", "buğday; fındık; ağaç; sığır; köy; İĞÜŞÖÇ"),
        ("cp850", "Körner; Größe; Hüllspelze; Brötchen; Gefäß"),
    ],
)
def test_other_scripts_are_never_taken_for_east_asian_ones(codec: str, text: str) -> None:
    """Pairs of their bytes are letters there too, but seldom usual ones and seldom beside each other."""
    assert east_asian_encoding(text.encode(codec)) is None
