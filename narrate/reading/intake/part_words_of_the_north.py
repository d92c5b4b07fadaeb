"""Words for parts in Danish, Norwegian and Swedish, part by part as the packs name them."""

# ruff: noqa: E501

from __future__ import annotations

from collections.abc import Mapping

# Common practice, no source. Words that mean several parts are left out; nuts are what their plant makes of them.
_BY_PART: Mapping[str, str] = {
    "grain": "kornfrukt|kornfragment|kornfragmenter|sädeskärna|sädeskärnor|kornkærne|kornkærner",
    "sprouted grain": "spiret kerne|spirede kerner|spiret korn|spirede korn|grodd kärna|grodda kärnor|grodd korn|grodde korn",
    "embryo": "kim|kime|kimer|grodd|groddar|embryoner",
    "detached sprout": "spirer|spireskud|groddskott|koleoptil|koleoptiler",
    "spikelet": "småaks|småax",
    "spikelet fork": "småaksbasis|småaksbaser|småaksbase|småaxbas|småaxbaser|axgaffel|axgafflar|aksgaffel|aksgafler|gaffelled",
    "glume base": "avnbasis|avnbaser|avnebasis|avnefod|avnefødder|inderavnbasis|yderavnbasis|yderavnebasis|agnebasis|agnebaser|agnbasis|ytteragnbas|ytteragnbaser|ytteragnebase|skalbas|skalbaser",
    "floret base": "dækavnebasis|dækavnbasis|inneravnbasis|inderavnebasis|inneragnbas|inneragnbaser|inneragnebase|blomsterbasis|blombas",
    "glume": "yderavne|yderavner|ytteragn|ytteragnar|ytteragner",
    "rachis internode": "aksspindel|aksspindler|aksspindelled|aksspindelfragment|akseled|akseledd|aksakse|aksefragment|aksrakis|axspindel|axspindlar|axspindelfragment|axdel|axdelar|axfragment|spindelled|spindelleder|spindelledd|rachisled|rachisleder|rakisled|rakisledd|internodie|internodier",
    "awn": "stakke|stakker|stakfragmenter|stakfragment|snerp|snerper|boråt|borstfragment|agnborst",
    "culm node": "stråknæ|halmknæ|stængelknude|stængelknuder|strånod|stængelnode|stængelnoder|strånode|stråknude|stråknuder|halmknude|halmknuder|leddknute|leddknuter|stråknute|stråknuter|stråledd|strånoder|stråled|stråleder|stjälknod|stjälknoder|stjälkknut|halmnod|halmnoder",
    "culm base": "stråbasis|stråbaser|stråbase|stråbas|halmbas",
    "culm": "strå|strådele|strådel|stråfragment|stråfragmenter|halmstrå|halmfragment|halmfragmenter",
    "stem": "stængel|stængler|stængeldel|stængeldele|stængelfragment|stilk|stilke|stengel|stengler|stengelfragment|stjälk|stjälkar|stjälkfragment|skud|skudspids|skudspidser|skudfragment|skudd|skuddspiss|skuddspisser|skott|skottspets|skottspetsar",
    "twig": "kvist|kviste|kvister|kvistar|grenstykke|grenstykker",
    "leaf": "blade|blader|bladfragment|bladfragmenter|bladspids|bladspidser|bladspiss|bladspets",
    "needle": "nål|nåle|grannål|grannåle|furunål|furunåler|grannåler|enebærnål|enbarr|tallbarr",
    "bud": "knopper|knopskæl|knopp|knoppar|knoppskjell|knoppfjäll",
    "flower": "blomst|blomster|blomsterhoved|blomsterhoveder|blomma|blommor|blomkorg|blomkorgar|rakle|rakler|hänge|hängen",
    "capsule": "kapsler|kapslar|frøkapsel|frøkapsler|fröhus|fröhuse|kapseldel|kapselfragmenter",
    "pod": "skulpe|skulper|bælg|bælge|belg|belger|skolm|skolmer|balja|baljor|baljfragment|bælgfragment",
    "pod segment": "skulpled|skulpeled|skidled|skulpeledd|leddskolm|ledskulpe|ledskulper",
    "fruit": "frugt|frugter|frugtfragment|delfrugt|delfrugter|delfrukt|delfrukter|delfruktar|spaltefrugt|bær|frugtdel",
    "achene": "skalfrugt|skalfrugter|akænie|akænier",
    "fruit stone": "stenkerne|stenkerner|stenkärna|stenkärnor|steinkjerne|steinkjerner|fruktstein|fruktsteiner|steiner",
    "fruit flesh": "frugtkød|fruktkjøtt|fruktkött",
    "seed": "kærne|kærner|kjerne|kjerner",
    "seed coat": "frøskal|frøskaller|frøskall|fröskal|frøhinde|klid",
    "nutshell": "nøddeskaller|nødskal|nødskaller|hasselnøddeskal|hasselnøddeskaller|hasselskal|hasselnøttskall|hasselnøtteskall|nøtteskal|nötskalsfragment|skalrester|nøddeskalfragment|nøddeskalsfragment",
    "acorn cap": "agernskål|agernskåle|ekollonskål|eikenøttskål",
    "cotyledon": "kimblad|kimblade|kimblader|frøblad|frøblader|hjärtblad|hjertblad",
    "root": "rødder|rodfragment|rodfragmenter|røtter|rotfragment|rötter|rottrådar",
    "tuber": "knold|knolde|rodknold|rodknolde|rotknoll|rotknoller|rotknöl|rotknölar|knöl|knölar|stængelknold|knoldfragment",
    "rhizome": "jordstængel|jordstængler|jordstengel|jordstengler|jordstam|jordstammar|rodstok|rhizomer",
    "bulb": "løg|løgknold|yngleknop|yngleknopper|løk|løker|lök|lökar|groddlök|groddlökar|bulbiller",
    "cone": "kogle|kogler|kongle|kongler|kotte|kottar|kottefragment",
    "cone scale": "kogleskæl|kongleskjell|kottfjäll",
    "thorn": "torne|torner|tornar|tagg|taggar|pigge|pigger",
    "wood": "træstykke|træstykker|vedfragment",
    "fungal sclerotium": "sklerotier|svampesklerotium|svampesklerotier|svampsklerotier",
    "dung": "gødning|husdyrgødning|gjødsel|gödsel|dynga",
    "charcoal": "trækulsstykke|trækulsstykker|trekullbit|trekullbiter|trekullfragment|träkolsbit|träkolsbitar|träkolsfragment|kolbit|kolbitar|kolfragment"
        "|puuhiili|hiili",
}  # fmt: skip
NORTHERN_PARTS: Mapping[str, str] = {word: part for part, words in _BY_PART.items() for word in words.split("|")}
