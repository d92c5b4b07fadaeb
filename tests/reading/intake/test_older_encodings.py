"""Files from before UTF-8: the encoding that their words speak for. Words are invented; the codecs are Python's own."""

import pytest

from narrate.problems import ProblemList
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
