"""Words for what is no plant in other languages, with the pieces and states that stand beside them: 'botfragmenten'."""

# ruff: noqa: E501

from __future__ import annotations

import re
from functools import cache

# Common practice, no source. Words that are parts of plants too ('coquille', 'Schale', 'escama' alone) are left out.
_NOUNS: dict[str, str] = {
    "bone": (
        "bot botje botjes botten dierenbot visbot visbotten vissenbot visgraat visgraten visresten visschub visschubben kies kiezen tanden gebit crematie bone bones fish "
        "knochen tierknochen fischknochen fischgräte fischgräten gräten fischschuppen fisch zahn zähne tierzähne leichenbrand fischwirbel säugetier säugetiere "
        "os ossement ossements esquille esquilles poisson poissons vertèbre vertèbres microfaune faune dents "
        "hueso huesos pez peces pescado diente dientes vértebra vértebras microfauna fauna ictiofauna "
        "ossa osso ossei osseo ossee pesce pesci squame lische lisca vertebre vertebra denti "
        "kości kość kostki ryb ryby rybie zęby ząb kręgi kręg ości-ryb ość ości zwierząt zwierzęce ludzkie "
        "ossos espinhas peixe peixes dentes ossada "
        "ben djurben fiskben fiskfjäll fisk tänder tand benbit benbitar knogler knogle fiskeben fiskeskæl skæl bein fiskebein fiskeskjell tenner dyreben dyreknogle dyreknogler fiskeknogle fiskeknogler fugleknogle fugleknogler fuglebein fågelben tænder brandben brændte-ben brente-bein brända-ben fiskekæbe fiskehvirvel fiskehvirvler ryghvirvel "
        "kost kosti kostí rybí zuby zub csont csontok halcsont halpikkely hal kost' ribe ribje zubi kemik kemikler balık οστά οστό"
    ),
    "shell": (
        "schelp schelpen mossel mosselen mosselschelpen kokkel kokkels oester oesters slakkenhuis slakkenhuisje slakkenhuisjes huisjesslak weekdier weekdieren eierschaal eierschalen eischaal "
        "muschel muscheln muschelschale muschelschalen schneckenhaus schneckenhäuser schneckengehäuse schnecke schnecken mollusk molluske mollusken eierschale eierschalen eischale eischalen "
        "coquillage coquillages escargot escargots gastéropode gastéropodes mollusque mollusques malacofaune œuf oeuf œufs oeufs moule moules huître huîtres "
        "concha conchas caracol caracoles malacofauna molusco moluscos gasterópodo gasterópodos huevo huevos "
        "conchiglia conchiglie malacofauna mollusco molluschi gasteropodi gasteropode chiocciola chiocciole lumaca lumache uovo uova "
        "muszla muszle muszli muszelki ślimak ślimaki ślimaków mięczak mięczaki mięczaków jaj jajek jaja "
        "caracóis ovo ovos musslor mussla musselskal snäcka snäckor snäckskal mollusker äggskal muslinger musling snegle snegler æggeskal eggeskall skjell muslingeskal muslingeskaller muslingskall østers østersskal østersskaller ostron ostronskal snegl sneglehus sneglehuse landsnegl landsnegle landsnäckor skjellfragment blåmusling blåmuslinger blåskjell hjertemusling hjertemuslinger "
        "salyangoz salyangozlar midye kabuğu-midye όστρεα όστρεο κοχλίες ulity ulita lastury měkkýši měkkýšů vajec vejce csiga csigák csigahéj kagyló kagylók tojáshéj školjke puževi"
    ),
    "insects and other small animals": (
        "coleoptera cladocera insect insecten insectenresten kever kevers keverresten dekschild dekschilden vliegenpop vliegenpoppen watervlo watervlooien mijt mijten regenwormcocons "
        "insekt insekten käfer käferflügel fliegenpuppen fliegenpuppe puparien puparium milben regenwurmkokons "
        "insecte insectes élytre élytres pupe pupes coléoptère coléoptères acariens insecto insectos élitro élitros pupas coleópteros ácaros "
        "insetto insetti elitra elitre pupe coleotteri acari owad owady owadów chityna chitynowe insetos insekter insektsrester skalbagge skalbaggar puppor kvalster biller bille billedele billedel puppe pupper puparier insekt insektdele insektdel insektsdelar myre myrer myror mide mider fluepuppe fluepupper flugpuppor insektrester midder daggmaskkokong daggmaskkokonger daggmaskar daggmask kokonger regnormekokoner regnormkokonger meitemarkkokonger hoppkräftor kvalster djur smådjur böcek böcekler solucan solucanlar žížal žížaly kokony kokóny dżdżownica dżdżownice dżdżownic dážďovka dážďoviek giliszta giliszták gilisztakokon regenwormcocon lombriz lombrices lombrichi lombrico minhoca minhocas έντομα "
        "hmyz hmyzu brouci rovar rovarok rovarmaradvány kukci"
    ),
    "artefacts": (
        "aardewerk aardewerkgruis aardewerkfragment aardewerkfragmenten potgruis keramiek scherf scherven potscherf potscherven baksteen bakstenen leem huttenleem verbrande-leem vuursteen glas dakpan mortel kraal kralen "
        "keramik gefäßkeramik scherbe scherben tonscherbe tonscherben hüttenlehm rotlehm lehm ziegel mörtel glas feuerstein silex perle perlen steinartefakte "
        "céramique céramiques tesson tessons torchis brique briques terre-cuite verre silex mortier "
        "cerámica cerámicas tiesto tiestos adobe ladrillo vidrio lítica lascas sílex barro "
        "ceramica ceramiche ceramici coccio cocci mattone laterizi concotto intonaco vetro selce selci litica "
        "ceramika ceramiki polepa polepy cegła cegły szkło krzemień krzemienie krzemieni zaprawa cerâmica cerâmicas tijolo vidro lasca "
        "keramikk krukskärva krukskärvor lerklining tegel tegl glas glass flinta flint potteskår kvarts flintafslag flintavslag flintstykke flintstykker flintsplint flintsplitter flintskärva flintskärvor flække flækker afslag avslag lerskår keramikskår keramikkskår keramikskärva keramikskärvor skår skärva skärvor leirklining brændt-ler bränd-lera brent-leire ler lera leire mursten teglstein tegelsten mørtel murbruk skørbrændte-sten skørbrændt-sten skjørbrent-stein skjørbrente-steiner skärvsten skörbränd-sten glasperle glasperler glassperle glaspärla rav ravperle ravperler bärnsten odłupek odłupki krzemienny krzemienna krzemienne paciorek paciorki mazanice keramika keramiky sklo cihla kerámia cserép cserepek paticsfal patics üveg kova seramik çömlek"
    ),
    "metal working and fuel waste": (
        "metaal ijzer sintel sintels steenkool hamerslag metall eisen schlacke schlacken hammerschlag steinkohle schlackenreste métal fer scorie scories battiture battitures houille "
        "metal hierro escoria escorias carbón-mineral metallo ferro scoria scorie żelazo żużel żużle żużla metale ferro escória escórias järn slagg stenkol jern slagge slagger slaggklump slaggklumper smedeslagge smieslagg jernslagge jernslagg järnslagg hammerskæl hammerskal glødeskall glödskal stenkul steinkull bronze bronse brons kobber kopper koppar metal struska železo kov salak fém cüruf"
    ),
    "droppings": (
        "keutel keutels muizenkeutels coproliet coprolieten mäusekot koprolith koprolithen kotballen coprolithe coprolithes coprolito coprolitos coproliti coprolito koprolit koprolity coprólito coprólitos koprolit koproliter koprolitter musemøg museekskrement museekskrementer muslort musspillning råttspillning"
    ),
}
_WORDS_BESIDE = (
    "frg fragment fragmente fragmenten fragments fragmentos fragmento frammento frammenti fragmenty fragmentów fragmenter frag fragm splitter stück stücke stukje stukjes brokje brokjes zlomky zlomek töredék "
    "rest reste resten restes restos resti resto rester szczątki resztki maradvány kawałki odłamki éclats pezzi pedaços bitar "
    "verbrand verbrande onverbrand dierlijk dierlijke klein kleine groot gebrand gekalcineerd gecalcineerd verbrannt verbrannte kalziniert kalzinierte calciniert calcinierte tierische gebrannt gebrannter unverbrannt "
    "brûlé brûlés brûlée brûlées calciné calcinés animal animaux quemado quemados quemada calcinado calcinados animales bruciato bruciati bruciate calcinate combuste combusti animali przepalone przepalona spalone palone zwierzęce "
    "queimado queimados calcinados animais bränd brända brent brente brændt brændte obrända indet marins marinas marine terrestres terrestri "
    "avec mit con com met med with bearing empreinte empreintes imprint imprints impronta impronte improntas abdruck abdrücke "
    "arête arêtes schub schubben écaille écailles escama escamas scaglia scaglie łuski łuska šupiny gräten skal skorupki pancerz pancerze pancerzy efipia efipium ephippia skořápky cáscara cáscaras cascara casca cascas guscio gusci coquille coquilles schaal wervel wervels "
    "de del di da do das dos des du d la le van der den von z i og och en und et y e")
BESIDE_ABROAD = frozenset(_WORDS_BESIDE.split())
_KIND_OF = {word.replace("-", " "): kind for kind, words in _NOUNS.items() for word in words.split()}
_BEHIND = re.compile(r"-?(?:fragment(?:en|e|er)?|rest(?:en|e|er)?|splitters?|stücke?|scherven|scherben|bruchstücke|bitar)$")


@cache
def no_plant_abroad(flat: str) -> str:
    """
    The kind of find that words in lower case stand for; empty for plants, and for words that nobody knows.

    >>> no_plant_abroad("botfragmenten"), no_plant_abroad("écailles de poisson"), no_plant_abroad("fragmenty muszli")
    ('bone', 'bone', 'shell')
    >>> no_plant_abroad("knochensplitter"), no_plant_abroad("huesos quemados"), no_plant_abroad("coquille de noisette")
    ('bone', 'bone', '')
    >>> no_plant_abroad("escamas"), no_plant_abroad("kafbasis"), no_plant_abroad("dopfragment")
    ('', '', '')
    >>> no_plant_abroad("fliegenpuparien"), no_plant_abroad("aardewerk (gruis)"), no_plant_abroad("knospenschuppen")
    ('insects and other small animals', 'artefacts', '')
    """
    if flat in _KIND_OF:
        return _KIND_OF[flat]
    words = [word for word in re.split(r"[\s,/()-]+|(?<=\bd)['’]|(?<=\bl)['’]", flat) if word]
    telling = [word for word in words if word not in BESIDE_ABROAD]
    kinds = {kind_of_word(word) for word in telling}
    if len(kinds) == 1 and len(words) <= 5:
        return kinds.pop()
    bare = re.sub(r"\s*[(\[][^()\[\]]*[)\]]\s*", " ", flat).strip()  # 'kevers (schildfragmenten)'
    return _KIND_OF.get(bare, "") if bare != flat else ""


_COMPOUNDS = re.compile(
    r"\w{3,}?(?<!band)(?<!schnur)(knochen|zähne|säugetiere?|säuger|gräten|muscheln|schnecken|käfer|puppen|puparien|milben|keramik|scherben|schlacken?"
    r"|botten|botjes|schelpen|kevers|poppen|aardewerk|scherven|knogler|snegle)"
)
"""German, Dutch and Danish nouns that end compounds: 'Fliegenpuparien', 'Vogelknochen'."""


def kind_of_word(word: str) -> str:
    """The kind of find that one word stands for, alone or before 'fragments' in the same word; empty for none."""
    if word in _KIND_OF:
        return _KIND_OF[word]
    compound = _COMPOUNDS.fullmatch(word)
    if compound:
        return _KIND_OF.get({"säuger": "säugetiere", "poppen": "vliegenpoppen"}.get(compound[1], compound[1]), "")
    noun = _BEHIND.sub("", word)
    if noun == word:
        return ""
    forms = (noun, *(noun.removesuffix(end) for end in ("en", "n", "s", "er", "e")))
    return next((_KIND_OF[form] for form in forms if form in _KIND_OF), "")
