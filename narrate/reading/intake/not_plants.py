"""What ends up in lists of finds from flotation and is no plant."""

# ruff: noqa: E501

from __future__ import annotations

import re
from collections.abc import Sequence
from functools import cache, lru_cache

from narrate.reading.intake.broken_letters import whole_letters
from narrate.reading.intake.not_plants_abroad import no_plant_abroad
from narrate.reading.intake.not_plants_in_words import no_plant_in_words

# Common practice, no source: what else ends up in lists of flotation finds.
_NOT_PLANTS: tuple[tuple[str, str], ...] = (
    (r"fish|birds?|(?:small )?mammals?|amphibians?|fish ?(?:bones?|scales?|vertebrae?)|bird bones?|(?:small |large |burnt |burned |calcined )?(?:mammal |animal |human |rodent |amphibian )?bones?(?: (?:frag(?:ment)?s?|splinters?|chips?|pieces?|bits))?|teeth|tooth|otoliths?", "bone"),
    (r"(?:land |marine |fresh ?water |terrestrial )?(?:snails?|mollus[ck]s?|mollusca|gastropod(?:s|a)?|mussels?|oysters?|bivalves?)(?: shells?)?|marine shells?|egg ?shells?|shellfish|sea ?shells?", "shell"),
    (r"insects?(?: (?:remains|fragments|parts))?|beetles?|coleoptera|(?:fly )?(?:pupae?|puparia|puparium)|pupae|weevils?|sitophilus.*|mites?|ants?|arthropods?|(?:earth)?worm (?:cocoons?|capsules?|casts?|eggs?(?: cases?)?)|daphnia.*|cladocera.*|ostracods?|foraminifera|forams?|bryozoa|larvae?|ephippia|(?:caddis(?: ?fly)? )?(?:larval|pupal) cases?", "insects and other small animals"),
    (r"slag|hammer ?scale|clinkers?|cinders?|(?:black )?(?:porous|tarry)(?: and (?:porous|tarry))?(?: ['‘“]?(?:cokey|tarry)['’”]?)? (?:material|residue)|coal|fuel ash(?: slag)?|iron|metal|glass|vitrified.*|industrial waste|magnetic.*", "metal working and fuel waste"),
    (r"pot(?:tery|sherds?)?|(?:linen|woollen|cotton|silk)? ?(?:textiles?|cloth|fabric)(?: scraps?| frag(?:ment)?s?| pieces?)?|linen|cordage|(?:(?:number|no|nr|n|count) of )?(?:(?:body|rim|base|pottery|pot|ceramic) )?sherds?(?: (?:studied|examined|analy[sz]ed|counted|total))?|chert|ceramics?|daub|brick|tile|cbm|fired clay|burnt clay|flints?|lithics?(?: (?:debris|debitage|flakes?|chips?|fragments?|frags|waste|material))?|debitage|obsidian[ae]?|obsidienne|flakes?|beads?(?: (?:waste|blanks?|fragments?|frags))?|beads?, (?:chipped |ground )?(?:stone|shell|bone|glass|clay)|(?:clay |mud )?(?:sealings?|bullae?|tokens?)|plaster|mortar|stones?|gravel|fcr|fire.?cracked rock|artefacts?|artifacts?|(?:red |yellow |ground )?ochres?|pigments?", "artefacts"),
    (r"(?:charred |organic |burnt )?(?:(?:gef(?:ä|ae?)(?:ß|ss)|topf|speise)[- ]?krusten?(?:reste)?|(?:pot|vessel|food)[- ]crusts?)(?:,? (?:organisch|organic|charred|verkohlt))?", "crusts of vessels"),
    (r"(?:rodent|mouse|rat) (?:droppings?|pellets?|faeces)|faecal pellets?|coprolites?|droppings?", "droppings"),
    (r"(?:modern )?contaminants?(?: \((?:roots?|gravel|modern)[^)]*\))?|contaminations?", "contaminants"),
    (r"(?:unsorted |heavy |light |fine |coarse )*residues?(?: (?:unsorted|not sorted|[<>] ?\d+(?: \d+)? ?mm))?", "unsorted residue"),
    (r"(?:modern |uncharred )?(?:rootlets?|roots? \(modern\)|modern roots?|modern (?:plant )?(?:material|contamination|straw|seeds?|moss)|grit|sand|silt|sediment)|(?:faecal |fecal |mineralised |mineralized |phosphatic |calcium |cess )*(?:concretions?|nodules?)", "modern or mineral matter"),
    (r"(?:vis|vogel|dieren|zoogdier)bot(?:ten)?|fisch(?:knochen|schuppen|wirbel)|kości(?: (?:ryb|zwierz\w*|ptaków))?|brända ben|brændte knogler|knogler|fiskben|ben|arêtes? de poisson|os(?: de (?:poisson|faune|micro ?faune))?|faune|micro ?faune|spine di pesce|vertebre di pesce|resti ossei|csont(?:ok)?|kosti", "bone"),
    (r"mossel(?:schelp(?:en)?)?|schelp(?:en)?|oesters?|mollusca .*|escargots?|coquill(?:es?|ages?) (?:d'escargots?|marins?|de mollusques?)|mollusken(?:schalen)?|muscheln?|muslinger|snegle|snäckor|musslor|muszle|ślimaki|gusci di lumaca|chiocciole", "shell"),
    (r"foraminiferen|insecten(?:resten)?|kever(?:s|resten)?|mijten|insektsrester|insektrester|owady|szczątki owadów", "insects and other small animals"),
    (r"(?:recent[ae]?|rezente?|moderne?|współczesne) (?:frø|fröer?|frön|zaden|samen|nasiona|rødder|rötter|wortel(?:s|tjes)|wurzeln|korzenie|plantedele|pflanzenteile)"
     r"|(?:graines|semences|semillas|sementes|semi|radici|raíces|racines) (?:récentes|modern[aei]s?|actuales|actuelles|attuali|recent[ei]s?)", "modern or mineral matter"),
    (r"worteltjes|rottrådar|korzenie|korzonki|(?:racines?|radicelles?|raíces|radici|wortels?|wurzeln|rødder|rötter)(?: (?:actuel(?:le)?s?|modernes?|récentes?|actuales|modernas|attuali|moderne))?|rezente wurzeln|raicillas", "modern or mineral matter"),
    (r"aardewerk|keramiek|tessons?|cocci|ceramika|krukskärvor|bränd lera|verbrande leem|hüttenlehm|rotlehm|polepa", "artefacts"),
    (r"huesos?(?: de (?:pez|pescado|ave|animal|mamífero))?|ossos de peixe|escamas de (?:peixe|pez|pescado)|ossements|knochen(?:fragmente)?|fischreste|ossa|botten|ossos|fauna|ictiofauna|micro ?fauna|espinas", "bone"),
    (r"caracoles|conchas|malaco ?fauna(?: (?:terrestre|marina|di terra|d['’]acqua dolce|acuática))?|malacol[oó]gic[oa]s?|gastr[oòó]podes?|gastrópodos?|caragols|(?:land|zoet ?water|zee|huisjes)[- ]?slakken(?:huis(?:jes)?|huizen)?|schnecken|mollusken|mollusques|molluschi|moluscos|slakken", "shell"),
    (r"(?:fisch|vogel|säuge?r?tier|säuger|tier|amphibien|kleintier|kleinsäuger)[- ]?(?:reste?|knochen|schuppen|wirbel|gräten|zähne)", "bone"),
    (r"eier?schalen?(?:reste)?|eierschaal|coquilles? d'(?:œ|oe)ufs?|c[aá]scaras? de huevos?|gusci? d'uov[oa]|cascas? de ovos?|æggeskal|äggskal|skorupki", "shell"),
    (r"insectos|insectes|insekten|insetti|insetos", "insects and other small animals"),
    (r"coprolit[oi]s?|copr[oó]litos?(?: de .*)?", "droppings"),
    (r"slagger?|(?:slagger?/ ?)?forglasset materiale|escorias?|scories|schlacken?|scorie|esc[oó]rias?", "metal working and fuel waste"),
    (r"(?:魚|獣|鳥|动物|鱼|兽)?骨(?:片|類|类)?|魚類?|鱗|歯", "bone"),
    (r"(?:陸産|海産|淡水産?|陸生)?(?:貝|贝)(?:殻|壳|類|类|片)?|(?:螺|蜗牛|田螺)(?:殻|壳|類|类)?", "shell"),
    (r"昆虫(?:遺体|片|類|残体|类)?|虫", "insects and other small animals"),
    (r"菌核|菌類|真菌", "fungi"),
    (r"土器片?|陶片|石器|剥片|礫|瓦片?", "artefacts"),
    (r"(?:fungal )?sclerotia|sclerotium|sklerotier|sklerotien|sclérotes?|esclerocios?|sclerozi", "fungi"),
    (r"tepalcates?|tiestos?|scherben|keramikscherben|cer[aá]mica|c[eé]ramique|keramik|ceramica|l[ií]tic[ao]s?|silex|sílex|feuerstein", "artefacts"),
)  # fmt: skip

# Common practice, no source: genera of animals that turn up in flots and residues, by their Latin and everyday names.
_BEASTS = (
    "bos ovis capra ovicaprid ovicaprids ovicaprine ovicaprines caprine caprines sus equus canis felis vulpes meles martes mustela lutra ursus cervus capreolus dama alces rangifer gazella bison "
    "odocoileus lepus oryctolagus sylvilagus castor sciurus tamias marmota procyon didelphis mephitis mus rattus apodemus microtus arvicola clethrionomys myodes sorex talpa erinaceus "
    "rana bufo triturus emys terrapene anguis natrix vipera gallus anser anas meleagris columba turdus corvus passer gadus clupea anguilla salmo esox perca cyprinus abramis rutilus "
    "merluccius pleuronectes platichthys scomber belone sparus sparidae cyprinidae salmonidae gadidae ictalurus lepisosteus mammalia aves pisces rodentia cervidae bovidae "
    "cattle cow sheep goat pig horse dog cat deer hare rabbit mouse vole shrew mole frog toad chicken goose duck herring eel cod salmon pike perch turtle "
    "rind schaf ziege schwein pferd hund maus hering aal vache mouton chèvre porc cheval chien vaca oveja cabra cerdo caballo perro conejo rund schaap geit varken paard haring paling"
)
_SHELLS = (
    "helix cepaea vallonia pupilla discus vertigo cochlicopa cecilioides oxychilus trochulus candidula cernuella theba rumina ostrea mytilus cerastoderma cardium littorina "
    "patella nucella buccinum unio anodonta planorbis lymnaea bithynia valvata hexaplex murex glycymeris"
)
_ANIMALS = {**dict.fromkeys(_BEASTS.split(), "bone"), **dict.fromkeys(_SHELLS.split(), "shell")}
_OF_PLANTS = re.compile(
    r"\b(?:seeds?|grains?|wood|charcoal|nut|nuts|nutshell|leaf|leaves|root|grass|weeds?|pea|beans?|purslane|sorrel|parsley|"
    r"foot|plum|berry|berries|cherry|rue|bane|wort|lettuce|lupin|mint|nettle|daisy|rose|dung|droppings?|pellets?|coprolites?)\b",
    re.IGNORECASE,
)
"""Words that make a plant of an animal's name, as in 'horse bean' and 'goat grass', or leave it to other kinds."""


@cache
def class_aside(text: str) -> str:
    """
    What a class of finds, beside each of them, says that it is; empty for classes of plants.

    >>> class_aside("fauna"), class_aside("artefacto"), class_aside("flora"), class_aside("weeds")
    ('bone', 'artefacts', '', '')
    """
    flat = text.strip().lower()
    if says_no_plant(flat):
        return "other things"
    return next((kind for pattern, kind in _CLASSES if re.fullmatch(pattern, flat)), "") or not_a_plant(flat)


@lru_cache(maxsize=4096)
def says_no_plant(text: str) -> bool:
    """
    Whether a class or note says that a find is no plant.

    >>> says_no_plant("no vegetal"), says_no_plant("not botanical"), says_no_plant("no plant label")
    (True, True, False)
    >>> says_no_plant("NON-BOTANICAL (heavy fraction)"), says_no_plant("Not plants:"), says_no_plant("Non-plant remains")
    (True, True, True)
    """
    return bool(_NO_PLANT.fullmatch(re.sub(r"\s*[(\[][^)\]]*[)\]]?$|[:.]$", "", text.strip())))


NO_PLANT = "non-plant"
"""What stands in brackets behind the name of a code that its list calls so."""
_NO_PLANT = re.compile(
    r"(?:not?|non)[ -](?:a )?(?:plants?|plant material|(?:archaeo)?botanical|vegetable|vegetal(?:es)?|botánic[oa]s?|végéta(?:l|ux)|vegetale|plante)(?: (?:remains|materials?|finds|items|reste|restes|restos|resti))?|keine? pflanzen?(?:reste?)?|nicht pflanzlich|geen planten?|não vegetal",
    re.IGNORECASE,
)
_SOME = (
    r"(?:(?:charred|carbonised|carbonized|identifiable|plant|botanical|archaeobotanical|macro(?:botanical)?|seed|verkohlten?|bestimmbaren?|pflanzlichen?|botanischen?|"
    r"végéta(?:l|le|ux|les)|carbonisés|carbonisées|carpologiques|vegetal(?:es)?|carbonizados|carbonizadas|botánicos|vegetal[ei]|carbonizzati|botanici|carpologici|"
    r"verkoolde|plantaardige|botanische|roślinnych|zwęglonych|botanicznych|of plants?|de plantes?|de plantas?|di piante|found|present|gefunden|vorhanden|recovered|observed|identified|gevonden) ?)*"
)
_REMAINS = (
    r"(?:remains?|material|macro-?(?:fossils?|remains?|botanicals?)|plants?|seeds?|finds?|items?|(?:pflanzen|makro|groß|gross)?reste?|pflanzen|funde?|restes?|vestiges?|macro-?restes?|graines?|"
    r"restos?|macro-?restos?|semillas?|resti|resto|macro-?resti|semi|(?:planten)?resten|zaden|szczątków|resztek|nasion)"
)
_NOTHING = re.compile(
    rf"(?:no|nothing|none|nil|keine?(?:rlei)?|nichts|aucune?|rien|ning[uú]na?|nada|nessun[oa]?|niente|geen|niets|brak)(?: {_SOME}{_REMAINS}?)? ?{_SOME}"
    rf"|(?:pas de|sans|sin|senza|bez) {_SOME}{_REMAINS} ?{_SOME}"
    r"|(?:(?:sample|probe|échantillon|muestra|campione|monster|próbka) )?(?:sterile?|empty|barren|leer|steril|stérile|vide|estéril|vac[ií][oa]|vuot[oa]|sterylna|pusta|leeg|steriel)(?: (?:sample|probe))?",
    re.IGNORECASE,
)


@cache
def says_nothing_found(text: str) -> bool:
    """
    Whether a text in the place of a name says that a sample held nothing.

    >>> says_nothing_found("No plant remains"), says_nothing_found("keine verkohlten Reste"), says_nothing_found("Nigella")
    (True, True, False)
    >>> says_nothing_found("sterile"), says_nothing_found("Sin restos vegetales"), says_nothing_found("No identificado")
    (True, True, False)
    """
    flat = " ".join(re.sub(r"[_.,:;*()\[\]–-]+", " ", text).split())
    return bool(_NOTHING.fullmatch(flat))


_OF_PLANTS_CLASS = re.compile(
    r"(?:archaeo|macro)?-?botan(?:ical|y|ic)|flora?l?|plants?(?: remains)?|vegeta(?:l|ble)|végétal|botánico|botanisch|pflanze|charcoal|wood|seeds?", re.IGNORECASE
)


@cache
def is_class_of_finds(text: str) -> bool:
    """
    Whether a word names a class of all that is found on a dig.

    >>> is_class_of_finds("BOTANICAL"), is_class_of_finds("Faunal"), is_class_of_finds("kernel")
    (True, True, False)
    """
    return bool(_OF_PLANTS_CLASS.fullmatch(text.strip()) or class_aside(text))


def are_classes_of_finds(texts: Sequence[str]) -> bool:
    """
    Whether words beside finds name the classes of all that is found on a dig: 'Plant' here, 'Bone' there.

    >>> are_classes_of_finds(["Plant", "Plant", "Bone"]), are_classes_of_finds(["grain", "seed"]), are_classes_of_finds([])
    (True, False, False)
    """
    return sum(map(is_class_of_finds, texts)) >= 0.8 * len(texts) > 0


_CLASSES = (
    (r"faun(?:a|al|e)(?: remains)?|animals?|zoological|zoo|archaeozoology|tier(?:e|reste)?|dieren|djur|dyr", "bone"),
    (r"arti?e?facto?s?|art[ei]facts?|artefactos?|artefatt[oi]|artefakte?|finds? \(small\)|litica|lithics?|cerámica", "artefacts"),
    (r"process(?:ing)?|proceso|processus|processo|verarbeitung|sediment(?:o|s)?|mineral(?:es|s)?", "modern or mineral matter"),
)


@cache
def animal_part(part: str) -> str:
    """
    The kind of find that a part of an animal is; empty for parts that plants have too, such as scales and shells.

    >>> animal_part("tooth"), animal_part("bone fragment"), animal_part("nutshell"), animal_part("stone")
    ('bone', 'bone', '', '')
    """
    flat = " ".join(re.sub(r"[_.,()]", " ", part.lower()).split())
    return "bone" if _ANIMAL_PARTS.fullmatch(flat) else ""


_ANIMAL_PARTS = re.compile(
    r"(?:(?:unfused|burnt|burned|calcined|left|right|distal|proximal|lower|upper|deciduous|long) )*"
    r"(?:bones?|tooth|teeth|molars?|incisors?|mandibles?|maxillae?|vertebrae?|ribs?|skulls?|crani(?:um|a)|femurs?|femora|tibiae?|humer(?:us|i)|radius|ulnae?|pelvis|scapulae?|"
    r"phalan(?:x|ges)|metacarpals?|metatarsals?|metapodials?|astragal(?:us|i)|calcane(?:um|us)|carpals?|tarsals?|antlers?|horn ?cores?|otoliths?|feathers?|fish scales?|claws?|"
    r"knochen|zahn|zähne|wirbel|os|dent|dents|vertèbres?|hueso de animal|diente|dientes|vértebras?|ossa|osso|dente|denti|vertebr[ae]|bot|botten|kies|tand|tanden|wervels?)"
    r"(?: frag(?:ment)?s?)?"
)


_STONES = re.compile(
    r"(?:quartz(?:ite)?|chert|flint|obsidian|rhyolite|basalt|argillite|slate|jasper|chalcedony|steatite|limestone|sandstone|"
    r"granite|silex|feuerstein|local|exotic|unmodified|utili[sz]ed|retouched)(?: (?:chert|flint|stone))?"
)
"""What chips and flakes are of."""


@cache
def not_a_plant(name: str) -> str:
    """
    The kind of a find that is no plant; empty for plants.

    >>> not_a_plant("Fish bone"), not_a_plant("Land snails"), not_a_plant("Hickory nutshell"), not_a_plant("Boneset")
    ('bone', 'shell', '', '')
    >>> not_a_plant("Fischreste, Eierschale"), not_a_plant("fish & wheat"), not_a_plant("FCR n"), not_a_plant("FCR g")
    ('bone', '', 'artefacts', 'artefacts')
    >>> not_a_plant("bone, calcined"), not_a_plant("stone, broken"), not_a_plant("Daggmaskkokonger")
    ('bone', '', 'insects and other small animals')
    >>> not_a_plant("Clay sealings, n"), not_a_plant("Bone splinters"), not_a_plant("Non-plant"), not_a_plant("Non-plants of interest")
    ('artefacts', 'bone', 'other things', '')
    >>> not_a_plant("Gastropoda (non-plant)"), not_a_plant("Type 12 (non-plant)")
    ('shell', 'other things')
    """
    bare = whole_letters(name)
    bare = re.sub(r"(?:\s*[(\[](?:n|no\.?|n\.?[ºo°]|ct|count|g|wt|wt\.? ?g|#|ml|nr)[)\]]|(?:\s*,)?\s+[ng])\s*$", "", bare.lower())
    flat = " ".join(re.sub(r"[_.]", " ", bare).split()).rstrip(" *:")
    found = next((kind for pattern, kind in _NOT_PLANTS if re.fullmatch(pattern, flat)), "")
    before, _, inside = re.sub(r" ?[(（]", " (", flat).replace("）", ")").partition(" (")
    if not found and inside and not_a_plant(before) and not_a_plant(inside.rstrip(")")):
        return not_a_plant(before)  # 'Keramik (Scherben)'
    first, _, state = re.sub(r"[()\[\]]", " ", flat).partition(",")
    if not found and _STATE.fullmatch(state.strip()) and not first.startswith("stone"):
        found = not_a_plant(first)  # 'bone, calcined'; 'stone, broken' may be of a fruit
    is_of_material = _STONES.fullmatch(state.strip()) is not None and not first.startswith("stone")
    if not found and is_of_material and not_a_plant(first) == "artefacts":
        found = "artefacts"  # 'debitage, quartz'
    if not found and inside and _STATE.fullmatch(inside.rstrip(") ")) and not first.startswith("stone"):
        found = not_a_plant(before)  # 'Rootlets (recent)'
    pieces = [piece.strip() for piece in _SEVERAL.split(flat)]
    if not found and len(pieces) > 1 and all(piece and not_a_plant(piece) for piece in pieces):
        return not_a_plant(pieces[0])  # 'fish, eggshell'
    if not found and inside.rstrip(")") == NO_PLANT:
        return not_a_plant(before) or "other things"
    if not found and says_no_plant(flat):
        return "other things"
    return found or _animal(flat) or no_plant_abroad(flat) or no_plant_in_words(flat)


# Common practice, no source: what stands behind the word for a find that is no plant.
_STATE = re.compile(
    r"(?:(?:un)?(?:burn(?:t|ed)|calcined|charred|cremated|identified|id'?d?|worked)|indet(?:erminate|\.)?|all|misc|small|large|tiny|animal|mammal|human|"
    r"modern[ae]?s?|contaminants?|intrusive|recent[ae]?s?|récente?s?|rezente?|recientes?|frag(?:s|ment(?:s|ed)?)?|pieces?|bits|g|n|no|nr|ct|counts?|wt|weight|kalziniert|verbrannt|brûlée?s?|calcinée?s?|calcinad[oa]s?|quemad[oa]s?|queimad[oa]s?|calcinat[oaie]|combust[oaie]|"
    r"verbrand|brän(?:d|t|da)|brændte?|brente?|spalone|przepalone|spálené|yanmış|kırık|[, -])+"
)


def _animal(flat: str) -> str:
    """Animals by the first word of their name; 'Bos taurus', 'cattle tooth', and no 'horse bean'."""
    words = re.split(r"[ /]+", re.sub(r"^(?:cf|aff)\b ?", "", flat))
    kind = _ANIMALS.get(words[0], "") if words else ""
    if not kind or len(words) > 4 or _OF_PLANTS.search(flat):
        return ""
    # An everyday word is an animal alone or with a bone of it: 'pig', 'pig tooth', and no 'cow parsnip'.
    is_latin = words[0] in _LATIN
    return kind if is_latin or len(words) == 1 or animal_part(" ".join(words[1:])) else ""


_SEVERAL = re.compile(r"\s*[,;/&+]\s*|\s(?:and|und|et|y|e|en|og|och|i)\s")
_LATIN = frozenset(_BEASTS.split()[: _BEASTS.split().index("cattle")]) | frozenset(_SHELLS.split())
