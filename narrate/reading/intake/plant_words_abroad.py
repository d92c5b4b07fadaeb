"""Everyday names of plants and of their parts in other languages than English, as lists of plant remains carry them."""

# ruff: noqa: E501

from __future__ import annotations

import re
from collections.abc import Mapping

# Common practice, no source. Words that are also Latin names, or words of heads, are left out.
_PLANTS = (
    # German
    "gerste spelzgerste nacktgerste weizen nacktweizen saatweizen emmer einkorn dinkel roggen hafer hirse rispenhirse kolbenhirse getreide erbse erbsen "
    "linse linsen ackerbohne bohne hülsenfrüchte lein flachs mohn leindotter hanf hasel haselnuss walnuss apfel holzapfel kirsche pflaume schlehe traube "
    "weinrebe holunder brombeere himbeere erdbeere gänsefuß gänsefuss windenknöterich knöterich ampfer trespe labkraut wegerich klee unkräuter unkraut "
    "gräser eiche buche hainbuche esche erle birke kiefer tanne fichte ahorn ulme weide pappel linde unbestimmt indeterminiert "
    # French
    "blé blés orge seigle avoine millet épeautre engrain amidonnier céréale céréales pois fève fèves lentille lentilles vesce gesse lin pavot chanvre "
    "noisette noisetier noix noyer pomme pommier cerise prune prunelle raisin vigne figue figuier olive olivier sureau mûre ronce fraise chêne hêtre frêne "
    "aulne bouleau orme érable sapin indéterminé indéterminés indéterminée "
    # Spanish and Portuguese
    "trigo cebada cebolla centeno avena mijo panizo escanda cereal cereales guisante haba habas lenteja lentejas veza garbanzo lino adormidera avellana nuez "
    "bellota bellotas uva higo aceituna olivo vid encina roble haya pino maíz maiz frijol frijoles calabaza ají aji quinua kiwicha papa camote yuca "
    "maní algodón amaranto quelite mezquite tuna indeterminado indeterminados identificado cevada centeio aveia milho painço fava favas ervilha lentilha linho "
    "bolota castanha figo azeitona sobreiro carvalho azinheira pinheiro "
    # Italian
    "grano frumento orzo segale farro farricello panico cereali favino fave pisello piselli lenticchia lenticchie cece ceci veccia nocciola nocciole noce "
    "ghianda ghiande vite fico oliva olivo quercia faggio indeterminati "
    # Dutch
    "gerst tarwe broodtarwe emmertarwe eenkoorn rogge haver gierst granen graan erwt erwten linzen duivenboon tuinboon vlas lijnzaad maanzaad hazelnoot "
    "walnoot appel kers pruim sleedoorn druif vlier braam framboos ganzenvoet melganzenvoet eik beuk els berk wilg onkruiden "
    # Danish, Norwegian, Swedish
    "byg bygg korn hvede hvete vete emmer rug råg havre hør lin hirse ært ært ärt bønne böna hasselnød hasselnöt nødder træ träkol trækul ukrudt ogräs "
    # Polish, Czech, Hungarian, Turkish
    "pszenica jęczmień żyto owies proso groch soczewica pšenice ječmen žito oves hrách čočka búza árpa rozs zab köles borsó lencse buğday arpa çavdar yulaf "
    "mercimek bezelye nohut üzüm incir zeytin "
    # Russian and Ukrainian
    "пшеница ячмень просо рожь овёс овес горох чечевица бобы лён лен конопля марь щирица спорыш горец орех лещина жёлудь виноград полба пшениця ячмінь "
    "жито неопределимые неопр"
)  # fmt: skip
_WORDS = re.compile(rf"(?<!\w)(?:{'|'.join(sorted(set(_PLANTS.split()), key=len, reverse=True))})(?!\w)", re.IGNORECASE)
_EAST_ASIAN = re.compile(
    r"イネ|アワ|キビ|ヒエ|オオムギ|コムギ|ムギ|ダイズ|アズキ|ササゲ|マメ|ソバ|アサ|エゴマ|シソ|モモ|ウメ|クリ|クルミ|トチノキ|ドングリ|カジノキ|"
    r"コウゾ|キイチゴ|ニワトコ|タデ|アカザ|ヒシ|ブドウ|サンショウ|カヤツリグサ|スゲ|ナス|ウリ|ヒョウタン|炭化材|木炭|炭屑|炭块|炭片|"
    r"稲|稻|粟|黍|稷|麦|豆|荞|麻|桃|李|梅|枣|葡萄|狗尾草|藜|莎草|蓼|苋|菱|栗|核桃|马唐|野大豆|草木樨|"
    r"[\w]{1,8}(?:属|科|類|类)$|不明|未知|同定不能|"
    r"벼|조|기장|보리|밀|콩|팥|수수|들깨|피|도토리|가래|미동정|동정불가"
)

# Common practice, no source: words of lists for parts, and the parts of the word packs that they stand for.
PARTS_ABROAD: Mapping[str, str] = {
    "kornfragmente": "grain", "getreidekorn": "grain", "spelzenbasis": "glume base", "spelzenbasen": "glume base", "hüllspelzenbasis": "glume base",
    "hüllspelzenbasen": "glume base", "hüllspelzbasis": "glume base", "hüllspelzbasen": "glume base", "nussschale": "nutshell", "nussschalen": "nutshell", "spindelglied": "rachis internode",
    "spindelglieder": "rachis internode", "kern": "seed", "kerne": "seed",
    "caryopses": "grain", "semence": "seed", "semences": "seed", "pépin": "seed", "pépins": "seed", "coquille": "nutshell", "coquilles": "nutshell",
    "pédicelle": "peduncle", "pédicelles": "peduncle", "pedicelo": "peduncle", "pedicelos": "peduncle", "pedúnculo": "peduncle", "pédoncule": "peduncle",
    "pedicello": "peduncle", "pedicelli": "peduncle", "peduncolo": "peduncle", "pedicel": "peduncle", "pedicels": "peduncle", "stielchen": "peduncle", "fruchtstiel": "peduncle", "steeltje": "peduncle",
    "noyau": "fruit stone", "kärna": "grain", "kärnor": "grain", "axled": "rachis internode", "axleder": "rachis internode", "frukt": "fruit", "frukter": "fruit", "nötskal": "nutshell",
    "sten": "fruit stone", "stenar": "fruit stone", "agnbas": "glume base", "agnbaser": "glume base", "småaxgaffel": "spikelet fork", "kerner": "grain", "avnebase": "glume base", "avnebaser": "glume base", "aksled": "rachis internode",
    "podstawa plewy": "glume base", "łupina": "nutshell", "łupiny": "nutshell", "skorupka": "nutshell", "węgle drzewne": "charcoal", "węgiel": "charcoal", "człon osi kłosa": "rachis internode", "osadka": "rachis internode",
    "vrucht": "fruit", "vruchten": "fruit", "kapselfragment": "capsule", "kapselfragmenten": "capsule", "kapsel": "capsule", "kapseln": "capsule", "kapselsegment": "capsule", "kafnaald": "awn", "kafnaalden": "awn", "schaal": "nutshell", "pit": "fruit stone", "pitten": "fruit stone", "noot": "nutshell", "dopvrucht": "achene", "steen": "fruit stone", "stenen": "fruit stone",
    "pericarpo": "nutshell", "pericarpos": "nutshell", "péricarpe": "nutshell", "péricarpes": "nutshell", "perikarp": "nutshell", "pericarp": "nutshell", "pericarps": "nutshell", "cotilédone": "cotyledon", "cotilédones": "cotyledon",
    "marlo": "cob", "marlos": "cob", "olote/tusa": "cob", "tubérculo": "tuber", "tubérculos": "tuber", "raíz": "root", "raíces": "root", "vaina": "pod", "vainas": "pod", "hoja": "leaf", "hojas": "leaf", "corteza": "rind", "tallo": "stem", "tallos": "stem", "madera": "wood", "leño": "wood", "fibra": "fibre", "fibras": "fibre", "faser": "fibre", "fasern": "fibre",
    "coque": "nutshell", "coques": "nutshell", "cotylédon": "cotyledon", "cotylédons": "cotyledon", "cotiledón": "cotyledon", "cotiledones": "cotyledon", "cotiledone": "cotyledon", "cotiledoni": "cotyledon", "keimblatt": "cotyledon", "méricarpe": "fruit", "méricarpes": "fruit", "mericarpo": "fruit", "arête": "awn", "arêtes": "awn", "barbe": "awn", "barbes": "awn", "granne": "awn", "grannen": "awn", "arista": "awn", "aristas": "awn",
    "segment de rachis": "rachis internode", "segments de rachis": "rachis internode", "entre-nœud de rachis": "rachis internode", "base d'épillet": "spikelet fork", "bases d'épillet": "spikelet fork",
    "karyopse": "grain", "karyopsen": "grain", "körnerfragmente": "grain", "schalenfragment": "nutshell", "schalenfragmente": "nutshell", "haselnussschale": "nutshell", "haselnussschalen": "nutshell", "walnussschale": "nutshell", "fruchtstein": "fruit stone", "fruchtsteine": "fruit stone", "fruchtschale": "nutshell", "nüsschen": "nutlet", "nüßchen": "nutlet", "achäne": "achene", "achänen": "achene", "spindel": "rachis internode", "ährenspindel": "rachis internode", "halmknoten": "culm node", "halm": "culm", "knolle": "tuber", "teilfrucht": "fruit", "teilfrüchte": "fruit",
    "furcula": "spikelet fork", "furcule": "spikelet fork", "horquilla": "spikelet fork", "horquillas": "spikelet fork", "horquilla de espiguilla": "spikelet fork", "segmento de raquis": "rachis internode", "segmentos de raquis": "rachis internode", "rachide": "rachis internode", "segmento di rachide": "rachis internode", "nudo": "culm node", "nudos": "culm node", "guscio": "nutshell", "gusci": "nutshell", "nocciolo": "fruit stone", "noccioli": "fruit stone", "frutto": "fruit", "frutti": "fruit", "fruto": "fruit", "frutos": "fruit", "seme/frutto": "seed", "noyaux": "fruit stone", "fourche": "spikelet fork", "charbon": "charcoal", "charbons": "charcoal",
    "charbon de bois": "charcoal",
    "grano": "grain", "granos": "grain", "cariopsis": "grain", "cariópsides": "grain", "pepita": "seed", "pepitas": "seed", "hueso": "fruit stone",
    "cáscara": "nutshell", "base de gluma": "glume base", "bases de gluma": "glume base", "raquis": "rachis internode", "carbón": "charcoal",
    "coronta": "cob", "tusa": "cob", "olote": "cob", "mazorca": "cob", "cúpula": "cupule", "cúpulas": "cupule",
    "cariosside": "grain", "cariossidi": "grain", "seme": "seed", "semi": "seed", "vinacciolo": "seed", "vinaccioli": "seed", "endocarpo": "fruit stone",
    "endocarpi": "fruit stone", "acheni": "achene", "achenio": "achene", "akène": "achene", "akènes": "achene", "aquenio": "achene", "aquénio": "achene", "base di gluma": "glume base", "basi di gluma": "glume base", "carbone": "charcoal",
    "carboni": "charcoal", "forchetta": "spikelet fork", "forchette": "spikelet fork",
    "dop": "nutshell", "doppen": "nutshell", "notendoppen": "nutshell", "aarspil": "rachis internode", "aarspillen": "rachis internode", "aarspilfragment": "rachis internode", "mest": "dung", "mist": "dung", "estiércol": "dung", "letame": "dung", "fumier": "dung", "nawóz": "dung", "excréments": "dung", "kafbasis": "glume base", "kafbases": "glume base", "aarvorkje": "spikelet fork", "aarvorkjes": "spikelet fork",
    "aarspilsegment": "rachis internode", "aarspilsegmenten": "rachis internode", "zaad": "seed", "zaden": "seed", "korrel": "grain", "korrels": "grain",
    "graan": "grain", "houtskool": "charcoal", "notendop": "nutshell",
    "grão": "grain", "grãos": "grain", "semente": "seed", "sementes": "seed", "grainha": "seed", "grainhas": "seed", "casca": "nutshell",
    "caroço": "fruit stone", "caroços": "fruit stone", "carvão": "charcoal", "ráquis": "rachis internode",
    "ziarno": "grain", "ziarniak": "grain", "ziarniaki": "grain", "owoc": "fruit", "owoce": "fruit", "orzeszek": "nutlet",
    "widełki kłosków": "spikelet fork", "widełki": "spikelet fork", "podstawy plew": "glume base", "pestka": "fruit stone", "pestki": "fruit stone",
    "węgiel drzewny": "charcoal", "obilka": "grain", "obilky": "grain", "semeno": "seed", "skořápka": "nutshell", "pleva": "glume base", "plevy": "glume base", "semena": "seed", "uhlík": "charcoal", "uhlíky": "charcoal",
    "zrna": "grain", "baza pljeve": "glume base", "baze pljeve": "glume base", "osnova pljeve": "glume base", "baza pljevice": "glume base", "osnova plevice": "glume base", "pljeva": "glume base",
    "baza klasića": "spikelet fork", "baze klasića": "spikelet fork", "račva klasića": "spikelet fork", "članak klasnog vretena": "rachis internode", "članci klasnog vretena": "rachis internode", "klasno vreteno": "rachis internode",
    "koštica": "fruit stone", "koštice": "fruit stone", "koščica": "fruit stone", "koščice": "fruit stone", "kôstka": "fruit stone", "ljuska": "nutshell", "ljuske": "nutshell", "lupina": "nutshell", "lupine": "nutshell", "plod": "fruit", "plodovi": "fruit", "oraščić": "nutlet", "oraščići": "nutlet", "semenke": "seed", "semenka": "seed", "sjeme": "seed", "ugljen": "charcoal", "drveni ugljen": "charcoal", "ugalj": "charcoal", "oglje": "charcoal",
    "zrno": "grain", "sjemenka": "seed", "sjemenke": "seed", "szem": "grain", "mag": "seed", "pelyva": "glume base",
    "frucht": "fruit", "früchte": "fruit", "steinkern": "fruit stone", "steinkerne": "fruit stone", "nasiono": "seed", "nasiona": "seed", "tane": "grain", "tohum": "seed", "kabuk": "nutshell", "çekirdek": "seed",
    "skal": "nutshell", "skalfrag": "nutshell", "skaller": "nutshell", "träkol": "charcoal", "trækul": "charcoal", "trekull": "charcoal",
    "korn": "grain", "frø": "seed", "frö": "seed",
    "cariopse": "grain", "cariopses": "grain", "cariópside": "grain", "parénquima": "tuber", "parênquima": "tuber", "parenquima": "tuber", "parenchym": "tuber", "parenchymgewebe": "tuber", "parenchyme": "tuber", "parenchima": "tuber", "tejido parenquimático": "tuber",
    "頴果": "grain", "穎果": "grain", "颖果": "grain", "炭化米": "grain", "米粒": "grain", "米": "grain", "果皮": "nutshell", "内果皮": "nutshell", "核": "fruit stone", "果核": "fruit stone", "果壳": "nutshell", "核壳": "nutshell", "堅果": "fruit", "坚果": "fruit", "子葉": "cotyledon", "子叶": "cotyledon",
    "穂軸": "rachis internode", "穗轴": "rachis internode", "小穂軸": "spikelet fork", "基盤": "spikelet fork", "芒": "awn", "葉": "leaf", "叶": "leaf", "材": "wood", "木材": "wood", "根茎": "rhizome", "塊茎": "tuber", "块茎": "tuber",
    "胚乳": "grain", "籾殻": "husk", "有ふ果": "grain", "芽": "bud", "種子": "seed", "种子": "seed", "果実": "fruit", "炭化材": "charcoal", "小穗轴": "spikelet fork", "壳": "nutshell", "炭屑": "charcoal", "木炭": "charcoal", "炭块": "charcoal", "炭片": "charcoal",
}  # fmt: skip


# Common practice, no source: words for parts that are wider than any part of the word packs.
WIDE_PARTS = frozenset(("chaff", "other", "other parts", "others", "kaf", "kafresten", "spreu", "balle", "balles", "glumas", "pula", "agnar", "avner", "穎", "種実", "种实", "果実/種子"))

# Common practice, no source: words for conditions, and the conditions of the word packs that they stand for.
CONDITIONS_ABROAD: Mapping[str, str] = {
    word: condition
    for condition, words in (
        ("charred", "verkohlt verkohlte verkohlter karbonisiert carbonisées carbonizadas carbonizzate carbonizzata carbonizzata verkoolde forkullede förkolnade forkulla carbonisé carbonisée carbonisés carbonizado carbonizada carbonizados carbonizzato carbonizzati combusto verkoold forkullet förkolnad zwęglony zwęglona zwęglone zwęglonych spalone karbonize förkolnat förkolnad forkulla forkullede zuhelnatělé zuhelnatělý zuhelnatělá zuhoľnatené szenült elszenült szenesedett kömürleşmiş yanmış απανθρακωμένο απανθρακωμένα απανθρακωμένος 炭化 炭化物"),
        ("uncharred", "未炭化 非炭化 未炭化的 未燃 unverkohlt unverkohlte onverkoold onverkoolde non-carbonizzato rezent uforkullede oförkolnade oförkolnat nezuhelnatělé nezuhelnatělý nezuhelnatělá nezuhoľnatené szenületlen kömürleşmemiş yanmamış μη-απανθρακωμένα non-carbonisé uforkullet oförkolnad niezwęglony niezwęglona niezwęglone"),
        ("mineralised", "鉱物化 矿化 mineralisiert minéralisé minéralisée minéralisés minéralisées mineralizzate mineralizzata mineraliserede mineraliserade mineralizado mineralizada mineralizados mineralizzato mineralizzati gemineraliseerd gemineraliseerde mineraliseret zmineralizowany zmineralizowana zmineralizowane mineralizované mineralizovaný mineralizovaná mineraliserat mineralisert ásványosodott mineralize mineralleşmiş ορυκτοποιημένα ορυκτοποιημένο"),
        ("waterlogged", "水漬 水浸 饱水 feuchterhalten feuchterhaltung feuchtbodenerhaltung wassergesättigt feuchtboden nass subfossil waterlogged vandmættet vandmættede imbibés imbibé imbibée gorgé waterverzadigd imbibito encharcado encharcada encharcados saturado vattendränkt vattendränkta vattenmättat vattenmättade vannmettet imbibiti imbibita imbibite podmáčené vlhké vodou-nasycené mokre uwodnione"),
        ("desiccated", "乾燥 干燥 ausgetrocknet desséché desséchée desecado desecada deshidratado essiccato gedroogd dessecado desecados ingedroogd indtørret wysuszone zasuszone"),
    )
    for word in words.split()
}  # fmt: skip


def names_plant_abroad(text: str) -> bool:
    """
    Whether a text carries an everyday name of a plant in a language other than English.

    >>> names_plant_abroad("Gerste, Körner"), names_plant_abroad("イネ"), names_plant_abroad("Grube 14")
    (True, True, False)
    """
    return bool(_WORDS.search(text) or _EAST_ASIAN.search(text))


def has_east_asian_letters(text: str) -> bool:
    """
    Whether a text holds letters of which one alone may be a word.

    >>> has_east_asian_letters("粟"), has_east_asian_letters("Hordeum")
    (True, False)
    """
    return bool(re.search(r"[\u3040-\u30ff\u3400-\u9fff\uac00-\ud7af]", text))
