"""Words for parts in lists of seven languages, alone, behind names and in columns. Common practice, no source."""

# ruff: noqa: E501

from pathlib import Path

import pytest

from narrate.reading.intake.part_words_abroad import OTHER_PARTS, PART_WORDS
from narrate.reading.intake.part_words_of_the_north import NORTHERN_PARTS
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
    "da": "kornkerne|frø|avnbasis|småaksgaffel|aksspindelled|dækavnebasis|stak|stængelknude||bælg|skulpled|frøkapsel||akænie|delfrugt|frugtsten|nøddeskal|kimblad|rodknold|jordstængel|yngleknop|skud|blad|knopskæl|blomst|torne|træstykke|trækul|kogle",
    "no": "korn|frø|agnebasis|småaksgaffel|aksledd|inneragnebase|snerp|stråknute||belg|leddskolm|kapsel|||delfrukt|fruktstein|hasselnøttskall|frøblad|rotknoll|jordstengel|løk|skudd|bladspiss|knoppskjell|rakler|torner||trekullbit|kongle",
    "sv": "kärna|frö|ytteragnbas|axgaffel|axspindelled|inneragnbas|borst|strånod||balja|skidled|kapslar|||delfrukter|stenkärna|nötskal|hjärtblad|rotknöl|jordstam|groddlök|skottspets|bladspets|knoppfjäll|blomkorg|taggar||träkolsbitar|kotte",
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
    for words in (PART_WORDS, NORTHERN_PARTS):
        assert {part for part in words.values() if known.get(part) != part} == set()
        assert {word for word, part in words.items() if known.get(word, part) != part} == set()
        assert not OTHER_PARTS & set(words)


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


@pytest.mark.parametrize(
    "name",
    ["Carbón de madera", "carbones de madera", "carvão de madeira", "charbons de bois", "carbone di legno", "Holzkohle", "Holzkohlestückchen", "houtskool",
     "Trækul", "trækulsstykker", "Trekull", "träkol", "węgle drzewne", "fragmenty węgla drzewnego", "dřevěné uhlí", "drevené uhlie", "faszén", "drveni ugljen",
     "lesno oglje", "odun kömürü", "cărbune de lemn", "ξυλάνθρακες", "древесный уголь", "деревне вугілля", "дървени въглища", "puuhiili", "carbó de fusta", "木炭", "목탄"],
)  # fmt: skip
def test_charcoal_of_wood_is_known_by_its_name(name: str) -> None:
    """In every language whose words for parts are known; it is a find of its own, and no unknown plant."""
    found = name_reader(packs()).read(name)
    assert (found.part, found.identification.taxon, found.is_known) == ("charcoal", "Indeterminate", True)


def listed(folder: Path, text: str) -> list[tuple[str, str, str]]:
    (folder / "lab.csv").write_text(text, encoding="utf-8")
    return [(row.identification.written, str(row.part), row.completeness) for row in take_in(folder / "lab.csv", packs()).rows]


def test_a_nut_and_a_kernel_are_what_their_plant_makes_of_them(tmp_path: Path) -> None:
    """Nuts of herbs are nutlets and those of trees fruits; kernels of grasses are grains and those of others seeds."""
    text = (
        "Prøve,Art,Del,Antal\nP1,Fallopia convolvulus,nød,3\nP1,Carex sp.,\"nød, fragm.\",2\nP1,Corylus avellana,nødder,1\nP2,Danthonia decumbens,kerne,4\n"
        "P2,Poaceae indet.,kerner,2\nP2,Cerealia indet.,\"kerne, fragm.\",5\nP2,Malus sylvestris,kerne,1\nP2,Calluna vulgaris,skud,1\nP2,Flintafslag,,7\n"
    )
    assert listed(tmp_path, text) == [
        ("Fallopia convolvulus", "nutlet", "whole"), ("Carex sp.", "nutlet", "fragment"), ("Corylus avellana", "fruit", "whole"),
        ("Danthonia decumbens", "grain", "whole"), ("Poaceae indet.", "grain", "whole"), ("Cerealia indet.", "grain", "fragment"),
        ("Malus sylvestris", "seed", "whole"), ("Calluna vulgaris", "stem", "whole"),
    ]  # fmt: skip


def test_a_code_of_parts_that_nobody_knows_is_indeterminate(tmp_path: Path) -> None:
    """'ND = parte no determinada' says so, and nothing is asked."""
    text = "Muestra,Taxón,Parte,N\nM1,Zea mays,GR,3\nM1,Indeterminado,ND,2\nM2,Zea mays,CU,1\n,,,\nGR,grano,,\nCU,cúpula,,\nND,parte no determinada,,\n"
    assert [part for _, part, _ in listed(tmp_path, text)] == ["kernel", "indeterminate", "cupule"]


@pytest.mark.parametrize("name", ["Flintafslag", "Keramikskår", "Brændt ler", "Lerklining", "Fiskehvirvler", "Østersskal", "Järnslagg", "Smedeslagge", "Odłupek krzemienny", "Flintavslag"])
def test_what_is_no_plant_is_known_in_the_north(name: str, tmp_path: Path) -> None:
    """Flakes, sherds, clay, bones, shells and slag are set aside."""
    text = f"Prøve,P1,P2\nHordeum vulgare,3,4\nTriticum dicoccum,3,1\n{name},5,6\n"
    assert {written for written, _, _ in listed(tmp_path, text)} == {"Hordeum vulgare", "Triticum dicoccum"}
