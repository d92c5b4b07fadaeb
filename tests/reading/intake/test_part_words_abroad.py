"""Words for parts in lists of seven languages, alone, behind names and in columns. Common practice, no source."""

# ruff: noqa: E501

from pathlib import Path

import pytest

from narrate.reading.intake.part_words_abroad import OTHER_PARTS, PART_WORDS
from narrate.reading.intake.take_in import name_reader, take_in
from tests.reading.intake.test_blind import packs

PARTS = (
    "grain", "seed", "glume base", "spikelet fork", "rachis internode", "floret base", "awn", "culm node", "straw", "pod", "pod segment", "capsule", "calyx", "achene", "fruit",
    "fruit stone", "nutshell", "cotyledon", "tuber", "rhizome", "bulb", "stem", "leaf", "bud", "flower", "thorn", "wood", "charcoal", "cone",
)  # fmt: skip
LISTS = {
    "de": "Korn|Same|Hüllspelzenbasis|Ährchengabel|Spindelglied|Deckspelzenbasis|Granne|Halmknoten|Stroh|Hülse|Schotensegment|Kapsel|Kelch|Achäne|Beere|Steinkern|Nussschale|Keimblatt|Knolle|Rhizom|Zwiebel|Stängel|Blatt|Knospe|Blüte|Dorn|Holz|Holzkohle|Zapfen",
    "fr": "caryopse|semence|base de glume|fourche d'épillet|segment de rachis|base de lemme|arête|nœud de chaume|paille|gousse|segment de silique|capsule|calice|akène|baie|noyau|coque|cotylédon|tubercule|rhizome|bulbe|tige|feuille|bourgeon|fleur|épine|bois|charbon|cône",
    "es": "cariópside|semilla|base de gluma|base de espiguilla|segmento de raquis|base de lema|arista|nudo de tallo|paja|vaina|segmento de silicua|cápsula|cáliz|aquenio|baya|pireno|cáscara|cotiledón|tubérculo|rizoma|bulbo|tallo|hoja|yema|flor|espina|madera|carbón|piña",
    "pt": "grão|semente|base de gluma|base de espigueta|segmento de ráquis|base de lema|arista|nó de colmo|palha|vagem|segmento de síliqua|cápsula|cálice|aquénio|baga|pirénio|casca|cotilédone|tubérculo|rizoma|bolbo|caule|folha|gomo|flor|espinho|madeira|carvão|pinha",
    "it": "cariosside|seme|base di gluma|forchetta di spighetta|internodo di rachide|base di lemma|resta|nodo di culmo|paglia|baccello|segmento di siliqua|capsula|calice|achenio|bacca|nocciolo|guscio|cotiledone|tubero|rizoma|bulbo|fusto|foglia|gemma|fiore|spina|legno|carbone|pigna",
    "nl": "korrel|zaad|kafbasis|aarvorkje|aarspilsegment|lemmabasis|kafnaald|halmknoop|stro|peul|hauwsegment|doosvrucht|kelk|dopvruchtje|bes|vruchtsteen|notendop|zaadlob|knol|wortelstok|broedbol|stengel|blad|knop|bloem|doorn|hout|houtskool|dennenappel",
    "pl": "ziarniak|nasiono|podstawa plewy|widełki kłoskowe|człon osi kłosa||ość|kolanko|słoma|strąk|człon łuszczyny|torebka|kielich|niełupka|jagoda|pestka|łupina orzecha|liścień|bulwa|kłącze|cebulka|łodyga|liść|pąk|kwiat|cierń|drewno|węgiel drzewny|szyszka",
}
CASES = [(lang, word, part) for lang, words in LISTS.items() for word, part in zip(words.split("|"), PARTS, strict=True) if word]


@pytest.mark.parametrize(("lang", "word", "part"), CASES)
def test_a_part_is_known_in_the_language_of_the_list(lang: str, word: str, part: str) -> None:
    """Alone, in capitals and as pieces."""
    names = name_reader(packs())
    assert [names.part_of(text) for text in (word, word.capitalize(), f"{word} (frag.)")] == [part] * 3


@pytest.mark.parametrize(("lang", "word", "part"), [case for case in CASES if case[2] not in ("charcoal", "wood")])
def test_a_part_abroad_stands_behind_the_name(lang: str, word: str, part: str) -> None:
    """In brackets or behind a comma; the name is what stands before it."""
    names = name_reader(packs())
    for text in (f"Rubus sp. ({word})", f"Rubus sp., {word}"):
        found = names.read(text)
        assert (found.part, found.identification.taxon) == (part, names.read("Rubus sp.").identification.taxon)


def test_every_word_means_a_part_of_the_packs() -> None:
    """And none is a spelling that the packs give to another part."""
    known = packs().words.part_lookup
    assert {part for part in PART_WORDS.values() if known.get(part) != part} == set()
    assert {word for word, part in PART_WORDS.items() if known.get(word, part) != part} == set()
    assert not OTHER_PARTS & set(PART_WORDS)


@pytest.mark.parametrize(
    ("text", "part"),
    [
        ("pépin de raisin", "seed"), ("noyau d'olive", "fruit stone"), ("coque de noisette", "nutshell"), ("guscio di nocciola", "nutshell"),
        ("hueso de aceituna", "fruit stone"), ("cáscara de avellana", "nutshell"), ("casca de noz", "nutshell"), ("grainha de uva", "seed"),
        ("caroço de azeitona", "fruit stone"), ("vinacciolo di uva", "seed"), ("nocciolo di oliva", "fruit stone"),
    ],
)  # fmt: skip
def test_a_part_says_of_which_fruit_it_is(text: str, part: str) -> None:
    """'Grape pip' in one word of the list."""
    assert name_reader(packs()).part_of(text) == part


@pytest.mark.parametrize("text", ["Coix lacryma-jobi, involucre", "Coix lacryma-jobi (involucre)", "Coix lacryma-jobi, involucres", "Carex sp., utricle", "Triticum spelta, chaff", "Avena sp. (lemma)", "Tilia sp. (bráctea)", "Hordeum vulgare, Spelzen", "Hordeum vulgare (plewa)"])
def test_a_part_that_no_pack_has_is_no_seed(text: str) -> None:
    """It is kept in the note; what it was taken from is not told as a seed or a grain."""
    found = name_reader(packs()).read(text)
    word = text.rstrip(")").replace(" (", ", ").rpartition(", ")[2]
    assert (found.part, found.note) == ("indeterminate", f"part written {word}")


def test_a_list_of_names_with_commas_has_its_parts_behind_the_last(tmp_path: Path) -> None:
    """'Triticum sp., free-threshing, grain': sorts and the undecided stay with the name."""
    lines = [
        "Sample,P1,P2", "Soil volume (l),20,10", '"Triticum sp., free-threshing, grain",3,4', '"Small millet, indet., grain",5,1',
        '"Pulse, indet., cotyledon",2,2', '"Oryza sativa, spikelet base",6,1', '"Ziziphus sp., stone fragment",1,1',
        '"Coix lacryma-jobi, involucre",1,2', '"Cyperaceae, nutlet",4,4',
    ]  # fmt: skip
    (tmp_path / "table.csv").write_text("\n".join(lines) + "\n", encoding="utf-8")
    rows = [row for row in take_in(tmp_path / "table.csv", packs()).rows if str(row.sample) == "P1"]
    assert [(row.part, row.completeness) for row in rows] == [
        ("grain", "whole"), ("grain", "whole"), ("cotyledon", "whole"), ("rice spikelet base", "whole"), ("fruit stone", "fragment"),
        ("indeterminate", "whole"), ("nutlet", "whole"),
    ]  # fmt: skip
