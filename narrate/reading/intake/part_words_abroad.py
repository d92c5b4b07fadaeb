"""Words for parts in German, French, Spanish, Portuguese, Italian, Dutch and Polish, part by part as the packs name them."""

# ruff: noqa: E501

from __future__ import annotations

import re
from collections.abc import Mapping

from narrate.reading.intake.plant_words_abroad import WIDE_PARTS, names_plant_abroad
from narrate.reading.intake.words_in_names import FRAGMENTS

# Common practice, no source. Scales, scars and other words that mean several parts are left out.
_BY_PART: Mapping[str, str] = {
    "grain": "gra|grans|cariopsi|cariopsis|ziarniaka|ziarniaków|obilky|zrná|szemek|tane|taneler|sädeskorn|kornkerne|kornkerner|κόκκος|κόκκοι|καρύοψη|καρυόψεις|ziarna|szemtermés|szemtermések|obilka|obilky|graankorrel|graankorrels|getreidekörner|grain de céréale|grains de céréales|grano de cereal|granos de cereal",
    "seed": "nasienie|llavor|llavors|nasienia|semienko|semienka|magvak|tohum|tohumlar|semínko|semínka|σπέρμα|σπέρματα|σπόρος|σπόροι|γίγαρτο|γίγαρτα|frön|fröer|graínha|graínhas|traubenkern|traubenkerne|druivenpit|druivenpitten",
    "spikelet": "ährchen|épillet|épillets|espiguilla|espiguillas|espigueta|espiguetas|spighetta|spighette|aartje|aartjes|kłosek|kłoski",
    "spikelet fork": "forqueta|forquetes|forqueta d'espigueta|forquetes d'espigueta|vidlička|vidličky|başakçık tabanı|başakçık tabanları|avnegaffel|avnegafler|småaksgaffel|småaxgafflar|småaksgaffel|småaksgafler|başakçık çatalı|başakçık çatalları|ährchenbasis|ährchenbasen|fourche d'épillet|fourches d'épillet|fourche d'épillets|fourches|furcas|base de espiguilla|bases de espiguilla|horquillas de espiguilla|base de espigueta|bases de espigueta"
        "|forquilha|forquilhas|forquilha de espigueta|forquilhas de espigueta|furca de espigueta|base di spighetta|basi di spighetta|forcella|forcelle|forchetta di spighetta|forchette di spighetta|aarvork|aarvorken|aartjesvork|aartjesvorken|aartjesbasis"
        "|podstawa kłoska|podstawy kłosków|podstawa kłosków|widełki kłoskowe|widełki kłoska|widełki kłosków|widełki|vidlička klásku|vidličky klásků|kalászkavilla|kalászkavillák|vilica klasića|kalászka villa",
    "rachis internode": "segment de raquis|segments de raquis|segment d'épi|segments d'épi|článek klasového vřetene|články klasového vřetene|klasové vřeteno|článek vřetene|axspindelled|axspindelleder|axspindelsegment|axled|axleder|akssegment|aksledd|rakis|rakis boğumu|başak ekseni|rhachisglied|rhachisglieder|rhachissegment|rhachissegmente|rhachisinternodium|rhachisinternodien|rhachisfragment|rhachisfragmente|spindelsegment|spindelsegmente|spindelfragment|spindelfragmente|spindelstück|spindelstücke|rachisglied|rachisglieder|rachissegment|rachissegmente|rachisinternodium|rachisinternodien|internodium|internodien|ährenspindelglied|ährenspindelglieder"
        "|article de rachis|articles de rachis|nœud de rachis|nœuds de rachis|noeud de rachis|noeuds de rachis|entre-nœud|entre-nœuds|entre-noeud|entrenœud|entrenœuds|entrenoeud|entrenoeuds|entrenœud de rachis|entrenoeud de rachis|entre-noeud de rachis"
        "|entrenudo|entrenudos|entrenudo de raquis|entrenudos de raquis|nudo de raquis|nudos de raquis|fragmento de raquis|segmento de ráquis|segmentos de ráquis|entrenó|entrenós|entrenó de ráquis|entrenós de ráquis|entrenó de raquis|nó de ráquis|nós de ráquis|nó de raquis"
        "|segmenti di rachide|internodo|internodi|internodo di rachide|internodi di rachide|nodo di rachide|nodi di rachide|rachidi|aarspilinternodium|aarspilinternodia|spilfragment|spilfragmenten|spilsegment|spilsegmenten"
        "|człony osi kłosa|fragment osi kłosa|fragmenty osi kłosa|oś kłosa|osadka kłosowa|osadki kłosowe|segment osadki|segmenty osadki|osadki|człon osadki kłosowej|człony osadki kłosowej|człon osadki|człony osadki|odcinek osadki|odcinki osadki|odcinek osadki kłosowej|odcinki osadki kłosowej|segment osadki kłosowej|segmenty osadki kłosowej|fragment osadki|fragmenty osadki|fragment osadki kłosowej|fragmenty osadki kłosowej|osadka kłoskowa|osadki kłoskowe",
    "glume base": "plevová báze|plevové báze|báze plevy|báze plev|báza pluchy|bázy pluchy|bázy plúch|podstawy plewy|pluchová báze|pluchové báze|báze pluchy|báze pluch|báze plev|pelyvatalp|pelyvaalap|pelyvabázis|kavuz tabanı|kavuz tabanları|kavuz dibi|agnbas|agnebase|nasada plewy|nasady plew|podstawa plew",
    "floret base": "base de flórula|bases de flórula|base de flósculo|base di fiorellino|deckspelzenbasis|deckspelzenbasen|blütchenbasis|base de lemme|bases de lemme|base de lema|bases de lema|base de lemma|bases de lemma|base di lemma|basi di lemma|lemmabasis|lemmabases|podstawa plewki|podstawy plewek|podstawy plewki",
    "awn": "osina|osiny|stak|toklász|borst|agnborst|kılçık|grannenfragment|grannenfragmente|resta|ariste|ość|ości",
    "culm node": "stråknod|stråknoder|halmnode|halmnoder|sap boğumu|strohknoten|stängelknoten|stengelknoten|nœud de chaume|nœuds de chaume|noeud de chaume|noeuds de chaume|nœud de tige|nœuds de tige|noeud de tige|noeuds de tige|nœud de paille|noeud de paille|nœud|nœuds|noeud|noeuds"
        "|nudo de tallo|nudos de tallo|nudo de caña|nudos de caña|nudo de paja|nudos de paja|nó de colmo|nós de colmo|nó de palha|nós de palha|nó de caule|nó|nós|nodo di culmo|nodi di culmo|nodo di paglia|nodo|nodi"
        "|halmknoop|halmknopen|stengelknoop|stengelknopen|stroknoop|kolanko|kolanka|węzeł źdźbła|węzły źdźbła|węzeł|kolanko źdźbła",
    "culm base": "halmbasis|halmbasen|base de chaume|bases de chaume|base de tallo|bases de tallo|base de colmo|bases de colmo|base di culmo|basi di culmo|halmbases|podstawa źdźbła",
    "culm": "halme|halmfragment|halmfragmente|chaume|chaumes|caña|cañas|colmo|colmos|culmo|culmi|halmen|źdźbło|źdźbła",
    "straw": "palha|palhas|stro|słoma",
    "pod": "silíqua|silíquas|lusk|lusky|şešule|skida|skidor|bakla|hülse|hülsen|hülsenfragment|siliques|gousse|gousses|silicua|silicuas|silículas|vagem|vagens|síliqua|síliquas|baccello|baccelli|silique|hauw|hauwen|peul|peulen|strąk|strąki|łuszczyna|łuszczyny|łuszczynka|łuszczynki",
    "pod segment": "silique segment|silique segments|pod joints|schotensegment|schotensegmente|schotenglied|schotenglieder|gliederschote|gliederschoten|hülsenglied|hülsenglieder|segment de silique|segments de silique|article de silique|articles de silique|segment de gousse"
        "|segmento de silicua|segmentos de silicua|segmento de síliqua|segmentos de síliqua|segmento de síliquas|segmento de vagem|segmento de vaina|segmento di siliqua|segmenti di siliqua|segmento di baccello|hauwsegment|hauwsegmenten|hauwlid|segment łuszczyny|segmenty łuszczyny|człon łuszczyny|człony łuszczyny|człon strąka",
    "capsule": "capsule valve|capsule valves|kapselfragmente|capsules|cápsula|cápsulas|capsula|capsulas|doosvrucht|doosvruchten|kapsels|torebka|torebki",
    "calyx": "kelch|kelche|calice|calices|cáliz|cálices|cálice|calici|kelk|kelken|kielich|kielichy",
    "achene": "aqueni|aquenis|aszmag|kaszat|nažek|nažka|nažky|aken|akener|αχαίνιο|aquênio|aquênios|aquénios|aquenios|dopvruchten|dopvruchtje|dopvruchtjes|niełupka|niełupki|nootje|nootjes",
    "nutlet": "nucule|nucules|núcula|núculas|nuececilla|nuececillas|nucula|nuculas|orzeszki",
    "fruit": "fruits secs|drupeola|drupeole|plod|plody|meyve|meyveler|καρπός|καρποί|fruitlet|fruitlets|beere|beeren|baie|baies|drupe|drupes|baya|bayas|drupa|drupas|baga|bagas|bacca|bacche|bes|bessen|deelvrucht|deelvruchten|deelvruchtje|deelvruchtjes|mericarpio|mericarpios|mericarpi|mericarpos|samare|samares|sámara|sámaras|sâmara|sâmaras|jagoda|jagody|rozłupka|rozłupki|skrzydlak|skrzydlaki|owocek|owocki",
    "fruit stone": "pinyol|pinyols|kôstka|kôstky|pestki|mag héja|frugtsten|frugtstene|frugtkerne|pecka|pecky|pecička|pecičky|endokarp|πυρήνας|πυρήνες|fruktsten|fruktstenar|csonthéj|csontármag|endokarp|endokarpe|endokarpy|endocarpe|endocarpes|endocarpos|pyrène|pyrènes|pireno|pirenos|pirénio|pirénios|pirênio|pirênios|pirene|pireni|steenkern|steenkernen|vruchtsteen|vruchtstenen|steenvrucht|pestka owocu|pestki owoców|kersenpit|kersenpitten|kirschkern|kirschkerne",
    "fruit flesh": "fruchtfleisch|chair|pulpe|pulpa|polpa|vruchtvlees|miąższ",
    "seed coat": "bran|bran fragment|bran fragments|kleie|salvado|crusca|farelo|zemelen|zemel|otręby|samenschale|samenschalen|tégument|téguments|tegumento|tegumentos|tegumenti|zaadhuid|zaadhuiden|łupina nasienna|łupiny nasienne",
    "nutshell": "closca|closques|héj|héjak|mogyoróhéj|dióhéj|škrupina|škrupiny|skorupki|skall|skořápka|skořápky|schránka ořechu|kabuk|ceviz kabuğu|fındık kabuğu|skallrester|schalen|nötskal|nøddeskal|nøtteskall|hasselnötsskal|ceviz kabuğu|schalenrest|schalenreste|cascas|nootschaal|nootschalen|hazelnootdop|hazelnootdoppen|hazelnootschaal|łupina orzecha|łupiny orzecha|skorupki orzecha|skorupa orzecha|skorupy orzecha|skorupy orzechów|łupiny orzechów|łupina orzecha laskowego|łupiny orzecha laskowego|łupiny orzechów laskowych",
    "acorn cap": "fruchtbecher|eichelbecher|eichenbecher|cupula|cupola|cupole|napje|napjes|eikelnapje|eikelnapjes|miseczka|miseczki|miseczka żołędzia|miseczki żołędzi",
    "cotyledon": "cotiledó|cotiledons|kotyledone|kotyledonen|kotyledon|keimblätter|zaadlob|zaadlobben|liścień|liścienie",
    "rind": "epicarp|epicarps|cortezas|scorza|scorze|fruchtrinde",
    "bark": "rinde|rinden|borke|écorce|écorces|casca de árvore|cascas de árvore|cortiça|corteza de árbol|corteccia|cortecce|schors|kora",
    "peduncle": "fruchtstiele|traubenstiel|traubenstiele|pedúnculos|peduncoli|vruchtsteel|vruchtstelen|vruchtsteeltje|steeltjes|szypułka|szypułki",
    "tuber": "knollen|tubercule|tubercules|tubero|tuberi|knol|knollen|knolletje|knolletjes|bulwa|bulwy|bulwka|bulwki",
    "rhizome": "rhizom|rhizome|rhizomes|wurzelstock|rizoma|rizomas|rizomi|wortelstok|wortelstokken|rizoom|rizomen|kłącze|kłącza",
    "bulb": "zwiebel|zwiebeln|brutzwiebel|brutzwiebeln|bulbille|bulbillen|bulbe|bulbes|bulbilles|bulbo|bulbos|bulbillo|bulbillos|bolbo|bolbos|bolbilho|bolbilhos|bulbi|bulbilli|broedbol|broedbollen|bolletje|bolletjes|cebulka|cebulki|cebula|cebule|cebulki",
    "root": "wurzelfragment|wurzelfragmente|raiz|raízes|korzeń|korzenie|korzonek|korzonki",
    "stem": "leafy shoot|leafy shoots|leafy stem|leafy stems|stängel|stengel|stängelfragment|stängelfragmente|spross|sprosse|tige|tiges|caule|caules|fusto|fusti|stelo|steli|stengels|łodyga|łodygi",
    "leaf": "leaf tip|leaf tips|leaf base|leaf bases|blatt|blätter|blattfragment|blattfragmente|feuille|feuilles|folha|folhas|foglia|foglie|blad|bladeren|blaadje|blaadjes|liść|liście",
    "bud": "bud scale|bud scales|knospe|knospen|knospenschuppe|knospenschuppen|bourgeon|bourgeons|yema|yemas|gomo|gomos|gema|gemas|gemma|gemme|knop|knoppen|knopschub|knopschubben|pąk|pąki|łuska pąka|łuski pąka|pąki|pączek|pączki",
    "flower": "blüte|blüten|blütenstand|blütenköpfchen|blütenkopf|fleur|fleurs|capitule|capitules|flor|flores|capítulo|capítulos|fiore|fiori|capolino|capolini|bloem|bloemen|bloemhoofdje|bloemhoofdjes|kwiat|kwiaty|catkin|catkins|kätzchen|chaton|chatons|kwiatostan|kwiatostany|koszyczek|koszyczki",
    "needle": "barr|enbarr|granbarr|tallbarr|barnål|barnåler|nålar|nåler|jehlice|jehlička|iğne yaprak|nadel|nadeln|nadelfragment|aiguille|aiguilles|acícula|acículas|agulha|agulhas|aghi|naald|naalden|igła|igły|szpilka|szpilki",
    "fibre": "fibre|fibres|vezel|vezels|włókno|włókna",
    "thorn": "dorn|dornen|stachel|stacheln|épine|épines|aiguillon|aiguillons|espina|espinho|espinhos|acúleo|acúleos|spina|aculeo|aculei|doorn|doorns|doornen|stekel|stekels|cierń|ciernie|kolec|kolce",
    "tendril": "ranke|ranken|vrille|vrilles|zarcillo|zarcillos|gavinha|gavinhas|viticcio|viticci",
    "twig": "zweig|zweige|ästchen|brindille|brindilles|rameau|rameaux|ramita|ramitas|raminho|raminhos|rametto|rametti|twijg|twijgen|twijgje|twijgjes|takje|takjes|gałązka|gałązki",
    "wood": "holz|bois|madeira|legno|hout|drewno",
    "charcoal": "carbons|carbó de fusta|faszén|odun kömürü|kömür|kol fragment|carbón vegetal|carbón de leña|carbones|carvão vegetal|carbone vegetale|carbone di legna|carvões|węgielek|węgielki|kohle|charbons de bois|carbón de madera|carbones de madera|carbones vegetales|fragmento de carbón|fragmentos de carbón|carvão de madeira|carvões de madeira|carvões vegetais|carbons de fusta|carbone di legno|carboni di legno|carboni di legna|carboni vegetali|holzkohlen|holzkohlestück|holzkohlestücke|holzkohlestückchen|holzkohlenstücke|holzkohlenstückchen|holzkohleflitter|holzkohlefragment|holzkohlefragmente|holzkohlenfragmente|holzkohlepartikel|houtskoolfragment|houtskoolfragmenten|houtskoolpartikels|houtskoolbrokjes|węgielki drzewne|fragmenty węgla drzewnego|fragmenty węgli drzewnych|dřevěné uhlí|dřevěný uhlík|dřevěné uhlíky|uhlie|drevené uhlie|drevený uhlík|drevené uhlíky|faszenek|faszéndarab|faszéndarabok|ugljeni|drveni ugalj|lesno oglje|drvni ugljen|odun kömürleri|cărbune|cărbuni|cărbune de lemn|cărbuni de lemn|ξυλάνθρακας|ξυλάνθρακες|ξυλοκάρβουνο|κάρβουνο|κάρβουνα|уголь|угли|древесный уголь|древесные угли|вугілля|деревне вугілля|деревні вугілля|дървени въглища|въглен|въглени|дрвени угаљ|угаљ|목탄|숯|fragment węgla|fragmenty węgla",
    "cone": "zapfen|cône|cônes|piña|piñas|pinha|pinhas|pigna|pigne|kegel|kegels|dennenappel|dennenappels|szyszka|szyszki",
    "cone scale": "zapfenschuppe|zapfenschuppen|écaille de cône|écailles de cône|escama de piña|escamas de piña|escama de pinha|escamas de pinha|scaglia di pigna|scaglie di pigna|kegelschub|kegelschubben|łuska szyszki|łuski szyszki",
    "embryo": "keimling|keimlinge|embryon|embryons|embrión|embriones|embrião|embriões|embrione|embrioni|kiem|kiemen|zarodek|zarodki",
    "cob": "kolben|maiskolben|rafle de maïs|maçaroca|maçarocas|carolo|carolos|tutolo|tutoli|maiskolf|kolba|kolby",
    "fungal sclerotium": "sclerotiën|sklerocja|sklerotium|sklerotien|sclérote|sclérotes|esclerocio|esclerocios|esclerócio|esclerócios|sclerozio|sclerozi|sclerotium|sklerocjum|sklerocja",
    "sprouted grain": "skiełkowany ziarniak|skiełkowane ziarniaki|ziarniak skiełkowany|ziarniaki skiełkowane",
    "detached sprout": "kiełek|kiełki",
    "indeterminate": "parte no determinada|partes no determinadas|parte indeterminada|partes indeterminadas|parte no identificada|parte sin determinar|parte não determinada|parte não identificada"
        "|part no determinada|partie indéterminée|parties indéterminées|partie non déterminée|partie non identifiée|élément indéterminé|organe indéterminé|parte non determinata|parte indeterminata|parti indeterminate|parte non identificata"
        "|teil unbestimmt|unbestimmter teil|unbestimmbarer teil|pflanzenteil unbestimmt|unbestimmter pflanzenteil|unbestimmte pflanzenteile|resttyp unbestimmt|deel onbepaald|onbepaald deel|onbepaald plantendeel|plantendeel onbepaald|niet gedetermineerd deel"
        "|ubestemt del|ubestemt plantedel|ubestemte plantedele|ubestemt plantedel|del ubestemt|plantedel ubestemt|obestämd del|obestämd växtdel|del obestämd"
        "|część nieoznaczona|nieoznaczona część|część nieokreślona|nieokreślona część|fragment nieoznaczony|neurčená část|část neurčená|neurčená časť|meghatározatlan rész|neodređeni dio|dio neodređen|nedoločen del|belirsiz kısım|tanımlanamayan kısım"
        "|part indeterminate|indeterminate part|part not determined|part undetermined|part not identified|part unknown|unknown part|unidentified part|неопределённая часть|часть не определена|απροσδιόριστο τμήμα",
    "dung": "excremento|excrementos|excréments|crotte|crottes|crottin|crottins|kot|nawóz|estrume|sterco|trágya|gübre|tezek|糞|粪|dung pellets",
}  # fmt: skip
_EACH = {word: part for part, words in _BY_PART.items() for word in words.split("|")}
PART_WORDS: Mapping[str, str] = {word.replace("ı", "i"): part for word, part in _EACH.items()} | _EACH

# Common practice, no source: parts that the word packs do not name, and words that are wider than one part.
OTHER_PARTS = frozenset(
    ["hilum", "hila", "navel", "navels", "nabel", "hile", "involucre", "involucres", "utricle", "utricles", "perigynium", "perigynia", "bract", "bracts", "bracteole", "bracteoles", "palea", "paleae", "lemma", "lemmas", "glumelle", "glumelles", "operculum", "opercula", "stigma", "stigmas", "megaspore", "megaspores", "oospore", "oospores", "oogonium", "oogonia", "pappus", "aril", "arils", "involucrum", "involukrum", "hüllblatt", "hüllblätter", "deckblatt", "deckblätter", "spelze", "spelzen", "spelzrest", "spelzreste", "bractée", "bractées", "involucro", "bráctea", "brácteas", "invólucro", "invólucros", "brattea", "brattee", "gluma", "glume", "glumas", "omwindsel", "schutblad", "plewa", "plewy", "okrywa", "przysadka", "łuska", "écaille", "écailles", "escama", "escamas", "squama", "squame", "avne", "agne", "agner", "agn", "inderavne", "inderavner", "dækavne", "dækavner", "inneragn", "inneragnar"]
) | {"base de chandelle", "bases de chandelle"} | WIDE_PARTS - {"other", "others", "other parts"}  # fmt: skip
_OF_A_PLANT = re.compile(r"(?P<part>[^\W\d_]{3,})\s+(?:(?:de la|de l[’']|de|du|des|di|del|della|van|von|da|do) |d[’'])(?P<plant>.+)", re.IGNORECASE)
_FRUITS = re.compile(r"(?:noisettes?|noix|raisins?|olives?|avelãs?|noz|nozes|uvas?|aceitunas?|azeitonas?|nocciol[ae]|noc[ei]|oliv[ae]|ciruelas?|cerezas?|cerejas?|ameixas?|prunes?|cerises?|glands?|bellotas?|bolotas?|ghiand[ae]|castañas?|castanhas?|châtaignes?|castagn[ae]|almendras?|amêndoas?|amandes?|mandorl[ae]|pinhão|pinhões|piñón|piñones|leguminosas?|céréales?|cereal(?:es|i)?)", re.IGNORECASE)


def part_of_a_plant(text: str) -> str:
    """
    The word for a part in front of the plant that it is of; empty for other texts.

    >>> [part_of_a_plant(t) for t in ("pépin de raisin", "noyau d'olive", "guscio di noce", "base de gluma")]
    ['pépin', 'noyau', 'guscio', '']
    """
    match = _OF_A_PLANT.fullmatch(text.strip())
    is_of_plant = match is not None and (_FRUITS.fullmatch(match["plant"]) or names_plant_abroad(match["plant"]))
    return match["part"] if match is not None and is_of_plant else ""


# Common practice, no source: words that are wider than one part, and the part that they are of one plant.
_NUTS = re.compile(r"nød|nødder|nøtt|nøtter|nöt|nötter|orzech|orzechy|orzechów", re.IGNORECASE)
_OF_ONE_PLANT = (
    (re.compile(r"(?:cf\.? )?(?:corylus|quercus|fagus|juglans|castanea|carya|aesculus|prunus|pinus|trapa|hassel|eg|eik|ek|bøg|bøk|bok|valnød|leszczyna|dąb|buk)\b", re.IGNORECASE), _NUTS, "fruit"),
    (re.compile(""), _NUTS, "nutlet"),  # of knotgrasses, docks, sedges and other herbs
    (re.compile(r"zea\b|maize\b|corn\b", re.IGNORECASE), re.compile(r"glum[ae]s?", re.IGNORECASE), "glume"),
    (
        re.compile(r"(?:cf\.? )?(?:pinus|picea|abies|larix|cedrus|pine)\b", re.IGNORECASE),
        re.compile(r"scales?|escamas?|écailles?|squam[ae]|scagli[ae]|schuppen?|schub(?:ben)?|łusk[ai]", re.IGNORECASE),
        "cone scale",
    ),
)


def part_by_plant(text: str, plant: str) -> str:
    """
    The part that a wider word is of a plant; empty where it may be several.

    >>> part_by_plant("nød", "Carex sp."), part_by_plant("nödter", "Carex sp."), part_by_plant("nötter (frag.)", "Corylus avellana")
    ('nutlet', '', 'fruit')
    >>> part_by_plant("gluma", "Zea mays"), part_by_plant("escama", "Pinus pinea"), part_by_plant("escama", "Allium")
    ('glume', 'cone scale', '')
    """
    bare = FRAGMENTS.sub("", f" {text.strip()}").strip(" ,(")
    return next((part for of, word, part in _OF_ONE_PLANT if of.match(plant) and word.fullmatch(bare)), "")
