"""Words at the head of rows and columns in other languages than English."""

# ruff: noqa: E501

from __future__ import annotations

import re
from functools import cache
from unicodedata import combining, normalize

from narrate.reading.intake.heads_composed_abroad import composed_abroad

# Common practice, no source: how such tables are usually headed. Units behind them are left off before they are looked up.
_WORDS: dict[str, str] = {
    "sample": (
        "próba prób vzorka vzorky minta mintaszám prél funn funnnr fund fundnr fundnummer éch mostra mostres lagin laginak próbki próby vzorku uzorka proby vzorci vzorec échantillonnage "
        "bolsa bolsas funda sac sacchetto beutel tüte probe proben probennummer probennr échantillon echantillon prélèvement prelevement muestra muestras campione "
        "campioni amostra amostras monster vnr vondstnr vondstnummer monsternr prøve prøvenr prov provnr minta próbka próbki próby proba uzorak vzorek örnek numune δείγμα проба пробы образец образцы "
        "flot flots flotación flotacion flotación flottation flotado 시료 시료번호 시료명 試料 試料番号 試料名 サンプル サンプル番号 样品 样品号 样品编号 浮选号 標本番号"
    ),
    "feature": (
        "objektum objektumok gödör obiekt obiektu objekty яма объект  постройка befund struktur structure fosse grube haus estructura rasgo struttura fossa estrutura spoor anlæg anläggning anl anlegg struktur objekt jama obiekt obiektu objekta objektu "
        "yapı çukur 유구 유구명 fait faits 遺構 遺構名 遺構番号 遗迹 遗迹单位 单位"
    ),
    "context": (
        "lote lotes procedencia proveniencia provenienza herkunft herkomst stelle pos position birim lokus locus niveau niveaux se unidad unité kontext schicht contexte us couche contexto ue estrato capa nivel contesto strato camada laag lag réteg "
        "warstwa jednostka lager lag sloj слой горизонт vrstva kontekst açma στρώμα 층위 層位 層 層名 地层 层位 出土単位"
    ),
    "phase": (
        "datowanie datování datace datacija datovanje datálás kor epoka epoki faza fazy okres okresy período períodos horizonte chronologia chronologie zeit zeitstellung periode datierung epoche période periode datation chronologie période/phase periodo época epoca faz "
        "cronología cronologia fase faze dönem evre tabaka tabakası yapıkatı φάση περίοδος период датировка datering tidsperiode 시대 시기 時期 時代 年代 时代 分期 期"
    ),
    "site": "operación operacion operação opération fundstelle secteur sektor ar schnitt fläche areal saggio settore ambiente sondagem sondage tranchée zona put werkput vlak schakt cuadro cuadrícula cuadricula sector proyecto carré quadrat quadrato fundort ort site lieu yacimiento sitio sito località sítio vindplaats lokalitet lelőhely stanowisko 유적 유적명 遺跡 遺跡名 遗址",
    "volume": (
        "objem zapremina litry litrów litra volym volumen jordvolym prøvevolumen volumen bodenvolumen probenvolumen volume volumes litros litres liter tierra sedimento объём объем "
        "volum hacim hacmi όγκος volym térfogat objętość litrage 토양량 시료량 処理量 水洗量 水洗土量 処理土量 土壌量 サンプル量 浮選土量 土量 容量 体積 浮选土量 土样量"
    ),
    "taxon": (
        "takson taksony taksonu gatunki druh druhy vrste soorten arten taxón taxons taxones táxon táxones art pflanzenart pflanzen taxa espèce espèces plantes especie especies planta specie piante espécie plantesoort таксон вид soort plantenaam art arter växt "
        "növény είδος φυτό gatunek biljka vrsta rostlina bitki tür 분류군 학명 종명 分類群 種名 学名 和名 植物名 种属 植物种属 种类 種類"
    ),
    "part": (
        "resttyp resttype szczątek szczątki pflanzenteil teil organ organe partie parte órgano órgano organo deel onderdeel plantdeel växtdel plantedel část kısım kısmı parçası μέρος τμήμα "
        "dio 부위 部位 部位名 部分 遗存类型"
    ),
    "count": "striche strichliste strich pointage pointages bâtons bâtonnets palotes palitos trazos trattini stanghette tacche turven turf streepjes kreski cant cantid nb nbre eff efectivos anz stk st počet kusů ks liczba ilość broj število darabszám antall n nr nrd 개수 수량 anzahl stück stückzahl nombre effectif cantidad número numero n° nº conteggio quantità quantidade aantal antal antall darab adet sayı 個数 数量 点数 粒数 数",
    "mass": "gew gewicht masse poids peso gewichte ağırlık ağırlığı βάρος vægt súly ciężar 重量 重さ",
    "note": "poznámky napomena napomene opomba opombe megjegyzések anm obs uw bem bemerkung bemerkungen uwagi poznámka megjegyzés huom anmerkung remarques remarque observaciones observación note osservazioni observações opmerking opmerkingen anmärkning anmärkningar bemærkning bemærkninger kommentar notlar not açıklama açıklamalar παρατηρήσεις 비고 備考 备注",
    "family": "familie famille familia famiglia família 科 科名 科属",
    "common name": "volksnaam",
    "group": "clase classe klasse categoría categoria catégorie kategorie gruppe groupe grupo gruppo groep kategoria",
    "code": "序号 编号 序列号 通し番号 scheda lfd lfdnr laufnummer datensatz datensatznr rang lp enregistrement registro registros recordnr volgnr volgnummer rekord",
    "total": "summe gesamt gesamtsumme total somme suma totale всего итого soma totaal összesen razem ukupno celkem toplam toplamı σύνολο άθροισμα 合計 計 总计 合计",
    "density": "zagęszczenie gęstość koncentracja hustota tæthed tetthet täthet πυκνότητα dichte funddichte konzentration densité densités densidad densità densidade dichtheid yoğunluk 密度",
    "ubiquity": "stetigkeit fréq frec frequenz fréquence fréquences ubiquité frecuencia ubicuidad ubiquidad ubiquidade ubiqüidade frequência frequenza ubiquità 出土概率 出現率",
    "percent": "prozent anteil pourcentage porcentaje percentuale 百分比 割合",
}  # fmt: skip

# Common practice, no source: results as whole phrases, and heads that carry their material.
_PHRASES: tuple[tuple[str, re.Pattern[str]], ...] = (
    ("sample", re.compile(r"x[ -]?(?:nr|nummer)")),  # of finds and samples in Danish museums; A of what was dug
    ("feature", re.compile(r"a[ -]?(?:nr|nummer)")),
    ("volume", re.compile(
        r"vol(?:ume|umen)? (?:(?:di|de) (?:sedimento|terreno|tierra|suelo|terra) )?(?:flottat[oa]|flotad[oa])(?: (?:l|lt|litri|litros))?"
    )),
    ("method", re.compile(
        r"(?:maglia|malla|maille|maschenweite|mesh)(?: size)? min(?:ima|imum|imale?|im)?(?: mm)?|min(?:imum|imale)? (?:mesh|maschenweite)(?: size)?(?: mm)?"
    )),
    ("flot mass", re.compile(
        r"f(?:r|rac|racci[oó]n|raction|razione|ra[cç][aã]o)? (?:liviana|ligera|pesada|légère|lourde|leggera|pesante|leve) (?:g|gr|gramos|peso|poids|peso g|poids g)"
        r"|(?:peso|poids) (?:de )?(?:la )?f(?:r|rac|racci[oó]n|raction|razione|ra[cç][aã]o)? (?:liviana|ligera|pesada|légère|lourde|leggera|pesante|leve)(?: (?:g|gr|gramos))?"
        r"|(?:leicht|schwer) ?fraktion (?:g|gr|gewicht|gewicht g)|gewicht (?:der )?(?:leicht|schwer)fraktion(?: g)?"
    )),
    ("derived", re.compile(
        r"nmi|nmr|mni|"
        r"(?:nombre|número|numero|nº|n°|n|nb|anzahl|aantal|numero) (?:total )?(?:de |di |der )?(?:taxons?|taxa|espèces|especies|specie|espécies|arten|soorten|táxones|taxones)|(?:liczba|ilość) (?:taksonów|gatunków)"
    )),
    ("total", re.compile(
        r"(?:nombre|número|numero|nº|n°|n|nb|anzahl|aantal|nmr) (?:total )?(?:de |di |der )?(?:fragments?|restes|restos|resti|reste|fragmente|fragmentos|frammenti|charbons)(?: (?!(?:par|por|per|pro|je|na|/) ?(?:10 ?)?l).*)?"
        r"|toplam(?:ı|lar)?(?: (?:tohum|tane|tohum/tane|tane/tohum|adet|sayı|sayısı|bitki|kalıntı|ağırlık)(?: .*)?)?|genel toplam|σύνολο(?: .*)?"
        r"|(?:(?:sous|sub|zwischen|teil|gesamt|del|mellan|tussen)[ -]?)?(?:sommes?|suma|soma|summen?|summa|sum|totaal|total|totale|gesamt|insgesamt|razem|ogółem|összesen|celkem|ukupno|i alt|ialt|totalt)(?: .*)?"
        r"|.* (?:ges|gesamt|insgesamt|totaal|totale|samlet|i alt|razem|summa)"
    )),
    ("ubiquity", re.compile(
        r"(?:ubiqui|ubicui|ubikvi|ubiküi|übikü)\w*(?: .*)?|(?:frequência|frecuencia|frequenza|fréquence|frekvens|frekvence|sıklık|συχνότητα)(?: (?:de |di |d['’]|n |nº |n° |no |nr )?(?:ocorrência|occorrenza|aparición|apparition|förekomst|forekomst|výskytu|amostras|muestras|campioni|prover|prøver))(?: .*)?|"
        r".*(?:出土概率|出土频率|出现率|出現率|出現頻度|普遍性)(?: ?%)?|"
        r"(?:in|dans|en|nb|nbre|nombre|número|numero|anzahl|aantal|nº|n°|n) (?:de |di |der |van |total de )?(?:positiven? |positifs? )?"
        r"(?:proben|prélèvements|échantillons|muestras|campioni|amostras|monsters|prøver|prover|prov)(?: (?:positifs?|positiv|présents?|(?:com|con|mit|avec|with|med|met) .*))?|"
        r"(?:presenze?|presentie|presencias?|presenças?|présences?|präsenz|nachweise|förekomst|forekomst)(?: (?:n|nº|n°|in|en|nas|nei|dans))? (?:campioni|amostras|muestras|échantillons|proben|prover|prøver|monsters|próbkach|vzorkách)"
    )),
    ("percent", re.compile(r".*(?:百分比|百分率|百分数|比例|割合|比率)(?: ?%)?")),
    ("density", re.compile(r".*(?:concentrazione|concentración|concentração|densité|densidad|densità|densidade|dichte|dichtheid|konzentration|concentratie|gęstość|密度)(?: .*)?|.* (?:pro|per|par|por|je|na|op|al|à le) (?:10 ?)?(?:litro?s?|litre|liter|l|lt|dm3)\b.*")),
    ("sample", re.compile(
        r"(?:pr|prob|m) ?-?nr|(?:camp|am|muestra|amostra|campione|mu|ech|éch|prél) ?-?(?:n|n ?[º°]|no|nr|núm|num)|(?:n ?[º°]|num|núm) (?:camp|am|mu|prél)"
    )),
    ("site", re.compile(r"(?:profondeur|profundidad|profondità|profundidade|tiefe|diepte|djup|dybde|głębokość|深度|深さ)(?: (?:cm|m|mm))?")),
    ("sample note", re.compile(
        r"dates? (?:floated|flotated|sampled|sorted|collected|taken|processed|sieved|dug|of (?:sampling|flotation|collection|sieving|sorting))|(?:sampling|flotation|collection|sieving|sorting) dates?"
        r"|(?:date|datum|fecha|data|dato) (?:de |du |der |del |della |di |da |d |van |des |la )*(?:tamisage|flottation|prélèvement|tri|fouille|entnahme|schlämmung|bergung|grabung|muestreo|recogida|flotación|tamizado|cribado|excavación"
        r"|campionamento|prelievo|flottazione|setacciatura|scavo|amostragem|recolha|flutuação|flotação|crivagem|bemonstering|zeven|monstername|opgraving|prøvetagning)"
        r"|(?:entnahme|schlämm|bergungs?|fund|grabungs?|probenahme|flotations?)(?:datum|tag)|entnahme|probenahme|monsternamedatum|zeefdatum|data poboru|采样日期|采集日期|浮选日期|採取日|浮選日"
    )),
    ("context", re.compile(r"(?:jednostka|jednostki|stratigrafska jedinica|stratigrafická jednotka)(?: stratygraficzna)?|sj")),
    ("feature", re.compile(r"bef(?: ?-?nr)?")),
    ("common name", re.compile(r"deutscher name|nom (?:vernaculaire|commun|français)|nombre (?:común|vulgar)|nome (?:comune|comum|volgare)|türkçe adı")),
    ("sorted", re.compile(r"(?:% |anteil )?(?:trié|triée|tri|ausgelesen|untersucht|analysiert|analysé|analizado|analizzato|uitgezocht|analisado|revisado)(?: %)?")),
    ("flot volume", re.compile(
        r"(?:vol(?:ume|umen)?(?: (?:du|de|del|della|der))? )?(?:refus|flot|flotte|flotado|flottato|schlämmrest|schlämmrückstand|residu|residuo|concentrado)(?:volumen)?(?: (?:ml|cc|l))?"
    )),
    ("volume", re.compile(
        r"(?:toprak|örnek|numune|tortu|sediman|yüzdürülen|işlenen) (?:toprak )?(?:hacmi|hacim|miktarı)(?: (?:lt|l|litre))?|"
        r"(?:vol|volume|volumen|volumes|litres?|litros|litri|liter|probenmenge|sedimentmenge|erdmenge|erdvolumen|menge|probengröße|probengrösse|monstervolume|monstergrootte"
        r"|quantité|cantidad|quantità|quantidade)(?: (?:de |di |der |van |do |del |della )?(?:sédiments?|sedimentos?|sedimento|sediment|terre|tierra|terra|erde|grond|sol|solo|tamisés?|flotados?"
        r"|flottati|prélevés?|traités?|tratados?|processado|geslibd|geschlämmt|prelevati))?(?: (?:en|in|em))?(?: (?:l|lt|litres|litros|litri|liter))?"
    )),
    ("size class", re.compile(
        r"(?:fracci[oó]n|fraction|fraktion|frazione|fra[cç][cç][aã]o|fractie|siebfraktion|siebgröße|malla|tamiz|maille|mailles|maschenweite|sieb|tamis|maglia|setaccio|zeef|zeeffractie"
        r"|maaswijdte|peneira|malha|sikt|såll|sold|sito|oczko|メッシュ|篩目|篩|筛孔|孔径)(?: (?:de|da|di|do|en|in|nr|n°|tamizado|tamisage|granulom\w+))* mm|malla|tamiz|maschenweite|siebfraktion|zeeffractie|maaswijdte|メッシュ|篩目|筛孔"
    )),
    ("kind", re.compile(
        r"(?:type|tipo|art|typ|soort|nature|naturaleza|natura) (?:de |di |der |van |du |del |des |dell )?(?:structure|contexte|contexto|contesto|befund|befunds|befundes|spoor|fait|estructura|struttura|fossa|deposito|dépôt|us|ue)s?|(?:typ|rodzaj|charakter) (?:obiektu|kontekstu|jednostki|warstwy)"
        r"|buluntu (?:yeri|tipi)|(?:birim|kontekst|lokus) (?:tipi|türü)|konteksttype|anlægstype|anleggstype|anläggningstyp|typ av anläggning|tipo de (?:u e|ue|contexto)|είδος στρώματος"
        r"|befundart|befundtyp|befundansprache|interprétation|interpretación|interpretazione|interpretação|spooraard|遺構種別|遗迹类型"
    )),
    ("part", re.compile(r"(?:type|tipo|typ|art) (?:de |di |der |des )?(?:restes?|restos?|resto|resti|vestiges?)|restes|élément|elemento|elementos|onderdeel|pflanzenrest")),
    ("condition", re.compile(
        r"erhaltung(?:szustand|sform)?|conservation|état(?: de conservation)?|estado(?: de conserva(?:ción|ção))?|conservación|conservazione|stato(?: di conservazione)?|conservação|conservering|stan(?: zachowania)?|(?:stav |způsob )?(?:zachování|zachovania|dochování)|megtartás(?:i (?:állapot|mód))?|(?:stupanj )?očuvanosti?|ohranjenost|bevaring(?:sgrad|sform)?|bevarande(?:grad|form)?|conserveringswijze|korunma(?: durumu)?|保存状態|保存"
    )),
)  # fmt: skip

_TAILS = (" lt", " ltr", " nr", " nummer", " száma", " szám", " numarası", " numaraları", " adı", " broj", " číslo", " no", " n°", " número", " numero", " l", " ml", " g", " mg", " litres", " liter", " litros", " cc", " dm3", " 升", " л", " リットル", " 个", " 粒", " 克")


_ERA = re.compile(r"(?<=\w) (?:cal )?(?:[nv] ?(?:u ?z|chr)|(?:ap|av) ?j ?-?c|[ad] ?\.?c|n ?e|p ?n ?e|e ?c)$")
"""'n. Chr.', 'ap. J.-C.', 'd.C.' behind a date."""


def heading_abroad(flat: str) -> str:
    """
    The role that a heading in another language speaks for, in lower case and without brackets; empty for none.

    >>> heading_abroad("densité"), heading_abroad("probe nr"), heading_abroad("処理量 l"), heading_abroad("wheat")
    ('density', 'sample', 'volume', '')
    """
    flat = re.sub(r"\b(\w) (?=\w\b|[ºª°])", r"\1", flat)  # 'U.E.', 'N.º'
    flat = _ERA.sub("", flat)
    flat = re.sub(r"(?<=[^\W\d_])-(?=(?:nr|no|n°|nº|num|nummer|id)\b)", " ", flat)  # 'Proben-Nr.'
    if flat in _AMOUNTS:
        return "count"
    for role, pattern in _PHRASES:
        if pattern.fullmatch(flat):
            return role
    flat = re.sub(r"^id (?=(?:registro|rekordu|enregistrement|datensatz)$)", "", flat).replace("rekordu", "rekord")
    numbered = _NUMBER_OF.match(flat)
    if numbered and flat[numbered.end() :] in _LOOKUP:
        return _LOOKUP[flat[numbered.end() :]]
    while True:
        role = _LOOKUP.get(flat, "")
        tail = next((tail for tail in _TAILS if flat.endswith(tail)), "")
        if not role and flat.endswith(" n"):
            bare = heading_abroad(flat[:-2])
            return bare if bare in ("ubiquity", "percent", "density", "total") else ""  # 'Fréquence (n)'
        if role or not tail:
            return role or composed_abroad(flat)
        flat = flat.removesuffix(tail).strip()


@cache
def heading_of_database(name: str) -> str:
    """
    The role of a column by a name of the sort that databases give: without accents, 'id_' before it.

    >>> heading_of_database("id_vzorek"), heading_of_database("pocet"), heading_of_database("id_nalez"), heading_of_database("Cast")
    ('sample', 'count', '', '')
    """
    if not _OF_DATABASE.fullmatch(name):
        return ""
    flat = " ".join(name.removeprefix("id_").split("_"))
    return (heading_abroad(flat) if name.startswith("id_") else "") or _UNACCENTED.get(flat, "")


_OF_DATABASE = re.compile(r"[a-z]{4,}|[a-z]+(?:_[a-z]+)+")
_NUMBER_OF = re.compile(r"(?:n°|nº|no|nr|num|numer|číslo|broj|št|numéro|número|numero|nummer) (?:(?:de|d|di|da|du|des|del|van|der) )?")
_AMOUNTS = frozenset(["menge", "quantité", "quantités", "cantidad", "quantità", "quantidade", "hoeveelheid", "ilość"])
"""Amounts of finds where no unit and no word for soil stands with them."""
_LOOKUP = {word: role for role, words in _WORDS.items() for word in words.split()}
_UNACCENTED = {
    bare: role for word, role in _LOOKUP.items()
    if (bare := "".join(c for c in normalize("NFKD", word) if not combining(c))) != word and bare.isascii() and bare not in _LOOKUP
}  # fmt: skip
"""The same words without their accents, where that makes no other of them."""
_LOOKUP = {word.replace("ı", "i"): role for word, role in _LOOKUP.items()} | _LOOKUP  # 'KISIM' in capitals
