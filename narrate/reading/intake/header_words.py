"""Words that stand at the head of rows and columns in laboratories' sheets, and the roles that they speak for."""

# ruff: noqa: E501

from __future__ import annotations

import re
from functools import cache

from narrate.model.layouts import DERIVED_ROLES
from narrate.reading.intake.answers import asks_of_a_sample
from narrate.reading.intake.fractions_of_flots import names_codes_of_fractions
from narrate.reading.intake.header_words_abroad import heading_abroad, heading_of_database
from narrate.reading.intake.headings_composed import composed_heading
from narrate.reading.intake.heads_composed_abroad import pieces_in_head
from narrate.reading.intake.heads_of_states import heading_of_states
from narrate.reading.intake.ratio_heads import is_ratio
from narrate.reading.intake.results_abroad import is_result
from narrate.reading.intake.shares_in_heads import size_and_share
from narrate.reading.intake.subset_words import is_subset, without_inclusion
from narrate.reading.intake.uncounted import narrow

_NUMBER = r"(?:no|nos|nr|nrs|num|number|numbers|n°|nº|#|id|ids|code|codes|name|names|ref|label)?"
_UNITS = (
    r"(?:l|lt|ltr|ltrs|lts|litre|litres|liter|liters|ml|cc|cm3|dm3|m3|cl|dl|hl|g|gr|gm|gms|gram|grams|mg|kg|%|percent|pct|mm|升|毫升|克|毫克|リットル|グラム)"
)

# Common practice, no source: spellings gathered from how such tables are usually headed.
_PATTERNS: tuple[tuple[str, str], ...] = (
    # ends of dates are no phases, and no counts: they are said of the sample
    ("sample note", r"(?:dates?|dating|dated|years?|age|period|phase|chronology) (?:from|to|until|start|begin|end|min(?:imum)?|max(?:imum)?|earliest|latest|early|late|lower|upper)(?: (?:cal )?(?:bc|ad|bce|ce|bp))?|(?:start|end|begin(?:ning)?|min(?:imum)?|max(?:imum)?|earliest|latest|from|to|lower|upper) (?:dates?|years?|age)(?: (?:cal )?(?:bc|ad|bce|ce|bp))?|(?:from|to) (?:cal )?(?:bc|ad|bce|ce|bp)|tpq|taq|terminus (?:post|ante) quem|(?:dat(?:um|ierung)|jahr) (?:von|bis|ab)|date (?:de )?(?:début|fin)|fecha (?:de )?(?:inicio|fin|inicial|final|desde|hasta)|data (?:inizio|fine|iniziale|finale)|datering (?:van|tot)|dat(?:a|owanie) (?:od|do)"),
    # rows of kernels on a cob are no finds
    ("derived", r"(?:(?:mean |average )?(?:no|number|num|n|nos)(?: of)? |n ?[º°o]? de )(?:cob |kernel |grain )?(?:rows?|hileras?)(?: (?:of kernels|de granos?))?|(?:cob |kernel )?row (?:no|numbers?)|hileras?(?: de granos?)?"),
    # how much of one sieve class was sorted says nothing of the others
    ("sample note", r"(?:%|percent(?:age)?|share|proportion)(?: of)?(?: the)? ?(?:[<>≤≥] ?)?\d+(?:[.,]\d+)? ?mm(?: fraction| residue)?(?: was| is)? (?:sorted|scanned|examined|analy[sz]ed|studied)"),
    # what is worked out comes first: 'density (items/l)' is no volume
    ("percent", r"(?:relative|rel) (?:abundance|frequency|freq|%|percentage).*|%|percent|percentage|pct|prop|proportion|(?:proportions?|shares?|percentages?|percent) (?:per|by|within|in each|of each) .*|% of (?!flot|sample|soil).*|% (?:total|charred|seeds|assemblage).*|(?:percent|percentage) of (?!flot|sample).*|%(?:n|total)"),
    ("ubiquity", r"(?:% )?(?:ubiquity|ubiq|constancy)(?: .*)?|presence %|% presence|% (?:of )?samples.*|(?:no|number|n|#|nos)(?: of)? (?:samples.*|flots|contexts|features|loci|deposits|sites|phases|units)|.* (?:no|number)(?: of)? samples|(?:samples|contexts|features) present(?: n)?|frequency %|% frequency|presence|frequency of occurrence|occurrences|present in|in (?:how many |no of |n |# )?samples"),
    ("density", r"dens(?:ity)?(?: l)?|(?:[a-z°]+ )?(?:pro|per|par|por|pr|je|na) ?(?:10 ?)?(?:l|lt|ltr|lit(?:re|er|ro|r)s?)|(?:[^\W\d_]+ ){0,3}(?:pro|per|par|por|pr|je|na) (?:\d+ )?(?:l|lt|ltr|lit(?:re|er|ro|r)s?)|(?:seeds|items|remains|finds|counts?|n|nisp|reste|restes|restos|resti|resten|funde) (?:l|l-1|lit(?:re|er)s?)|.*densit(?:y|ies).*|.*(?:/| per )(?:litre|liter|10 l|10 litres|10l)\b.*|.* per (?:l|lt)\b.*|(?!(?:[eml]|mid|middle|early|late|upper|lower|lo|up)/l\b).*/(?:l|lt)(?: (?:n|no|count|total|mean|all|of|[\d%]+|soil|sediment|earth|deposit|samples?|seeds?|items?|finds?|remains|floated|processed|sieved|charred|uncharred)\b.*)?|(?:seeds|items|remains|count|n|no) ?/ ?l|.*conc(?:entration)?\b.*"),
    ("derived", r"n ?= ?\d+|est(?:\.|imated?)? (?:grand )?totals?\b.*|(?:mean|average|avg|median|max|min|maximum|minimum|rank|ratio|std|sd|stdev|standard deviation|shannon|simpson|diversity|richness|evenness|variance|cv)\b.*|.*\bratio|(?:no|number|n|total)(?: of)? (?:taxa|species|types|(?:morpho|plant |seed )types?|genera|families)|(?:taxa|species|types?|morphotypes?|genera|families) (?:n|no|count|number)|taxa (?:no|count)|species richness|.*: ?[a-z ]+ ratio"),
    ("sorted", r"(?:%|percent|percentage|pct|proportion|prop|fraction|share|amount|portion|part|vol)(?: of)?(?: the)?(?: (?:flot|float|sample|light fraction|lf|residue))*(?: (?:was|is))? (?:sorted|examined|analysed|analyzed|scanned|assessed|identified|studied|processed|looked at|id)|(?:flot |float )?(?:sorted|analysed|analyzed|examined|scanned|assessed)(?: (?:%|percent|fraction|proportion|share))?|(?:flot |sub ?)?(?:split|subsample|sub sample|sample fraction|subsampling)(?: .*)?|(?:fraction|part) (?:sorted|analysed)|flot fraction|% flot|% of flot|% sample|% of sample"),
    ("method", r"(?:flot|float|flotation|light fraction|lf|residue|heavy fraction|hf) ?mesh(?: ?size)?(?: .*)?"),
    ("flot volume", r".*\b(?:flot|float|light fraction|lf|(?:lt|light|hvy|heavy) fr(?:ac(?:tion)?)?|l\.?f|residue|organic|concentrate|heavy fraction|hf)\b.*\b(?:vol|volume|ml|cc|size|l|litres?|liters?)\b.*|(?:vol|volume)s? (?:of )?(?:the )?(?:flots?|floats?|light fraction|residue)\b.*|.*\bflot(?:ation)? (?:vol|volume|ml)\b.*"),
    ("flot mass", r".*\b(?:flot|float|light fraction|lf|(?:lt|light|hvy|heavy) fr(?:ac(?:tion)?)?|residue|heavy fraction|hf)\b.*\b(?:weight|wt|mass|g|gr|grams?|kg)\b.*|(?:weight|wt|mass) (?:of )?(?:the )?(?:flots?|floats?|light fraction|residue)\b.*"),
    ("volume", rf"(?:(?:soil|sample|samp|sediment|earth|bulk|processed|floated|flotation|total|original|initial|matrix|deposit|dirt|liters|litres|litre|liter|net|gross|wet|dry|raw|measured|bag|whole) )*(?:vol|vols|volume|volumes|capacity)(?: (?:of )?(?:soil|sample|sediment|earth|processed|floated|flotated|sieved|matrix|deposit|taken|bulk))*(?: ?(?:in )?{_UNITS})?|(?:total |sum of )?(?:l|lt|ltrs|litre|litres|liter|liters)(?: (?:of )?(?:soil|sediment|floated|processed|sieved|sampled))*|(?:sample size|amount of sample)(?: (?:examined|analy[sz]ed|processed|floated|sieved|sorted|studied|taken))?(?: (?:in )?{_UNITS})?|size (?:l|litres?|liters?|ml)|(?:soil|sediment|sample) (?:l|litres|liters)|amount (?:floated|processed)(?: {_UNITS})?|(?:amount|quantity|litres|size)(?: of)? (?:soil|sediment|earth|deposit)(?: {_UNITS})?|(?:no|number) of (?:litres|liters)(?: [a-z]+)?|(?:(?:proben|boden)?volumen|volumen de tierra|litros|liter erde)(?: {_UNITS})?"),
    ("total", r"(?:grand |sub ?|sub-|column |row |overall )?(?:total|totals|sum|sums|subtotal|subtotals|summe|somme|Σ|tot)(?: (?!vol|soil|sed|lit|weight of soil).*)?|.*\b(?:total|subtotal|sub total|totals|sum)(?: (?:n|no|ct|count|c|u|ch|un|uc|charred|uncharred|all))?|all(?: (?:taxa|samples|remains|seeds|phases|contexts|features))?|(?:totale|gesamt).*|total.*"),
    # counts scaled up for what was not sorted
    ("total", r"plants? (?:wt|weight|mass|g|gms?|grams)(?: g| gms?| grams)?"),
    ("total", r"(?:sum|total|summe|n|count|anzahl)? ?(?:hochger(?:echnet)?|hochrechnung|extrapol\w*|scaled(?: up)?|upscaled|multiplied|geëxtrapoleerd|omgerekend|przeliczon\w+|ekstrapol\w+)(?: (?:sum|total|number|counts?|n|summe|anzahl))?"),
    ("derived", r"(?:estimated|est|calculated|projected|adjusted|corrected) (?:(?:total|no|nos|number|numbers|n)(?: of)? )?(?:items|remains|seeds|finds|plant remains|specimens|counts?)? ?(?:in|per|for|of) (?:the )?(?:whole|entire|total|full|complete) (?:flot|sample|soil|assemblage|fraction)s?"),
    ("derived", r"(?:rel(?:ative|\.)? )?freq(?:uency|uencies|\.)?[ _]+(?:[a-z]{1,3}|.*(?:x ?\d{2,4}|per \d+|vs\.? .*|ratio|versus .*))"),
    # the sample's own
    ("sample", rf"(?:(?:original|old|new|field|lab|laboratory) )?(?:sample|samples|samp|smpl|spl|smp|sa|flot|float|flotation|flotation sample|floatation sample|bulk sample|soil sample|archaeobotanical sample|environmental sample|env sample|macro sample|light fraction|lf) ?{_NUMBER}|(?:bag|bs|fs|lot|cat|catalog|catalogue|lab|accession|acc|pd|find|finds|field specimen|field|specimen|log|float log|flot log|tag|number|sample bag) {_NUMBER}|s {_NUMBER}|prov ?(?:nr|nummer)|provnr|s/n|bags?|fs|bs|pd|specimens?|soil sample bag|id|ids|logs?|float log|sampleid|sample_id|sampleno|samplenumber|flotno|échantillon|échantillons|echantillon|ech|probe|proben|proben ?nr|probennummer|muestra|muestras|n° muestra|campione|monster|prøve|minta|próbka|sample ?<>|sample ?< ?>|<>|sites?/samples?|plot|plots|sites? ?no"),
    ("kind", r"(?:context|feature|deposit|feat|cxt|ctx|fill|unit|locus|sample)s? (?:type|kind|category|class|interpretation|descr|desc|description|function|identity)|(?:type|kind|nature|interpretation|description) of (?:context|feature|deposit|fill|sample|locus)|interpretation|context/feature type|fill of|provenance|descriptor"),
    ("feature", rf"(?:feature|features|feat|fea|structure|struct|str|house|building|pit|cut|group|parent feature|befund|structure/feature|room) ?{_NUMBER}|f {_NUMBER}|in feature|from"),
    ("context", rf"(?:context|contexts|cxt|ctx|ctxt|cont|con|locus|loci|unit|su|us|ue|layer|stratum|strat|level|provenience|prov|deposit|lot|fill|spit|basket|excavation unit|strat unit|stratigraphic unit|context/feature|kontext|contexte|contesto) ?{_NUMBER}|c {_NUMBER}"),
    ("phase", r"(?:site |occupation |chrono |cultural |ceramic |archaeological )?(?:phase|phases|ph|per|period|periods|date|dates|dating|century|centuries|cent|age|chronology|era|epoch|horizon|component|time period|occupation|culture|(?:cal |age |years? |cal yr )?bp|phasing|spot date|broad period|phase no|phase/period|periode|période|periodo)(?: (?:ad|bc|no|number|name|id|code|bce|ce))?"),
    ("site", rf"(?:site|sites|project|trench|area|zone|grid|square|sq|sector|block|field|quadrant|operation|op|excavation area|location|locality|site/area|plot no|tr) ?{_NUMBER}|(?:depth|depth cm|level cm)(?: {0,1}(?:m|cm|bs|bd))*|study unit|architectural unit|room ?block|compound|country|region|province|county|state|municipality|settlement|village|cave|site type"),
    ("location", r"depth (?:below|of|from|under|bs|bd|cmbs|cmbd|cm below).*|(?:(?:latitude|longitude|lat|long|lon),?(?: (?:in )?(?:decimal )?deg(?:rees?|\.)?)?(?: (?:north|south|east|west))?|latitude n|longitude e|easting|northing|utm ?[a-z]*|grid ref(?:erence)?|coordinates|coords?|x|y|z|x coord(?:inate)?|y coord(?:inate)?|elevation|elev|altitude|alt|masl)(?: (?:m|dd|wgs84|asl|masl|n|e|w))*"),
    ("deposit", r"deposit status|deposition|primary/secondary|security|integrity"),
    ("method", r"(?:recovery |processing |flotation |extraction |sampling )?(?:method|technique|machine|mesh used)"),
    ("sample note", r"fechas?(?: de .*)?|datum|date de (?:fouille|prélèvement|tamisage|tri)|data di (?:scavo|prelievo)"),
    ("sample note", r"(?:sample |context |flot )(?:notes?|comments?|remarks?)|(?:field |excavation |dig |campaign )?(?:year|campaign)|(?:field|excavation|dig) season|year excavated|grabungsjahr|kampagne|année(?: de fouille)?|campagne(?: de fouille)?|campaña|año|anno(?: di scavo)?|campagna|(?:opgravings)?jaar|rok(?: badań)?|jahr"),
    # the find's own
    ("genus", r"genus|genera|genre"),
    ("common name", r"(?:common|english|vernacular|popular|local|trivial|folk|german|french|everyday)(?: ?/ ?english)? ?(?:name|names)?|nom commun|deutscher name"),
    ("authority", r"(?:taxon |botanical )?(?:authority|authorities|author|authors)"),
    ("family", r"(?:plant |botanical )?(?:family|families|fam|famille|familie|familia)"),
    ("epithet", r"epithet|specific epithet|species epithet"),
    ("taxon", r"(?:plant |seed |botanical |latin |scientific |archaeobotanical |plant macro |identified |wild |charred |crop |macro ?botanical |list of |taxon|taxa)*(?:taxon|taxa|species|specie|sp|taxa names?|taxon names?|species names?|latin names?|latin|scientific|scientific names?|identification|identifications|id'd as|ident|determination|plant|plants|plant names?|plant types?|plant remains|remains|plant taxa|botanical name|name|names|macrofossil|macrofossils|macroremains|macro-?remains|art|pflanze|espèce|espèces|especie|especies|nom latin|(?:latin |scientific )?binomials?|(?:species|taxon|taxa)(?: names?)? (?:as )?(?:orig(?:inal)?|verbatim|published|reported|recorded|written|given)(?: .*)?|seed type|seeds|variable|variables|crop|resource|material|taxon/part|taxa/part|taxon and part|species/part|category/taxon|ident?ification)"),
    ("part", r"(?:plant |anatomical |botanical )?(?:part|parts|element|elements|component|components|organ|organs|anatomy|portion|bit|item|items|plant part|type of remains?|remain type|remains? type|type of plant part|plant element|part represented|teil|rest|plant component|type of macro ?remain|resttyp|rest ?typ|pflanzenteil|organe|partie|parte|órgano|organo)|(?:seed|plant) ?part"),
    ("condition", r"(?:mode of |state of |type of |plant )?(?:preservation|condition|conditions|cond|state|charring|preserv|pres|carbonisation|carbonization|charred\??|charred/uncharred|burnt\??|erhaltung|preservation (?:mode|state|type|form)|erh(?:alt)?(?: ?zustand)?)"),
    ("completeness", r"completeness|whole ?/ ?frag(?:ment)?s?|frag(?:mentation)?|fragment\??|integrity|w/f|frag/whole|whole or fragment"),
    ("cf", r"cf|cert|cf\?|certainty|qualifier|id certainty|confidence|identification certainty|certain|id confidence|quality of id"),
    ("size class", r"(?:sieve|mesh|screen|geological sieve|size|size fraction|sieve fraction)(?: (?:size|class|fraction|grade|mesh|classes|opening|split))*(?: {0,1}(?:mm|µm|um|in mm))?|grain size|size ?class|sieve ?mm|mm|sieve_size|size_class|fraction (?:size )?mm|fraction size"),
    ("fraction", r"fraction|flot/residue|light/heavy|lf/hf|fraction type|flotation fraction|hf/lf|residue/flot|flot or residue"),
    ("count", r"(?:raw |orig |original |absolute |total |seed |item |specimen |estimated |actual )?(?:n|no|nr|nos|num|count|counts|number|numbers|quantity|qty|qt|qté|quant|nisp|mne|mnpp|abundance|abs|frequency|freq|amount|anzahl|nombre|cantidad|tally|pieces|pcs|ct|cnt|#|counted|value|tall(?:y|ies)(?: (?:marks?|strokes?|count))?|strokes)|(?:no|number|n|count|nr|counts|#|quantity|total number)(?: of)? (?:items|seeds|remains|specimens|fragments|frags|pieces|individuals|ind|indiv|grains|finds|plant remains|parts|elements)|seed (?:no|number|nos)|score"),
    ("mass", rf"(?:total |dry )?(?:weight|wt|wgt|weights|mass|g|gr|gm|gms|grams|gram|mg)(?: (?:in )?{_UNITS})?|gewicht.*|poids.*|peso.*|hmotnost.*|tömeg.*"),
    ("code", r"(?:taxon |species |plant )?(?:code|abbrev|abbreviation|abbr|key|index|row|recid|rec id|rec(?:ord)?(?: ?(?:id|no|number|nr))?|obs(?:ervation)?(?: ?(?:id|no))|objectid|object id|fid|oid|order|sort|seq|line|taxon id|species id|taxon no|taxon number|ser|serial|sl no|item no)"),
    ("group", r"(?:ecological |plant |use |habitat |taxon |economic |crop )?(?:habitat|ecology|habitats|category|categories|cat|group|groups|class|classes|uses?|type|types|season|life ?form|status|order|growth form|ecological indicator|niche|soil|economic use|economic category)(?: code| preference)?"),
    ("note", r"sources?|references?|citations?|bibliography|doi|publication|excavators?|(?:c ?14|14 ?c|ams|radiocarbon|datable|dateable)(?: .*)?|collector|date excavated|literature|(?:find |item |id |analyst |general |additional |other )?(?:notes?|comments?|remarks?|observations?|obs|details|bemerkung(?:en)?|remarques?|analyst|analista|analyste|bearbeiter(?:in)?|bearbeitet(?: von)?|identified by|id by|sorted by|sorter|potential(?: .*)?|priority|recommendations?|further work|action|initials|photo|image|entered by|date (?:sorted|identified|analysed|entered|collected|floated)|sorted on)"),
    ("percent", r"%.*[a-z].*|.*[a-z].*%|.* (?:percent|percentage|pct)"),
    ("description", r"(?:context |feature |sample |deposit |fill )?(?:description|desc|descr|details)"),
)  # fmt: skip

SAMPLE_HEADS = ("sample", "context", "feature", "site", "phase", "volume", "kind")
"""Heads whose notes are of the sample: 'context_notes', 'phase remarks'."""

# Terms of Darwin Core (Biodiversity Information Standards), from memory, with spaces between their words.
_DARWIN_CORE: dict[str, str] = {
    "event id": "sample", "occurrence id": "code", "organism quantity": "count", "individual count": "count",
    "sample size value": "volume", "identification qualifier": "cf", "organism part": "part", "locality": "site",
    "location id": "site", "occurrence remarks": "note", "identification remarks": "note", "scientific name authorship": "authority",
    "vernacular name": "common name", "specific epithet": "epithet", "event remarks": "sample note", "taxon remarks": "note",
}  # fmt: skip

_COMPILED = tuple((role, re.compile(pattern, re.IGNORECASE)) for role, pattern in _PATTERNS)

_UNIT = re.compile(rf"[\[(,/ _]\s*(?:in\s+)?({_UNITS})\s*[\])]?\.?\s*$|^({_UNITS})$", re.IGNORECASE)

_LEFT_OUT = re.compile(
    r"[(\[]\s*(?:not|excl\w*|except|without|nicht|ohne|exkl\w*|non|hors|exclus?|sauf|sin|no|excepto|senza|escl\w*)\b[^)\]]*[)\]]",
    re.IGNORECASE,
)
"""What a head says in brackets that it leaves out, or is left out of."""


@cache
def heading(text: str) -> str:
    """
    The role that a heading speaks for; empty where it speaks for none.

    >>> heading("Sample No."), heading("Vol. (L)"), heading("Flot vol. (ml)"), heading("% sorted"), heading("Items per litre")
    ('sample', 'volume', 'flot volume', 'sorted', 'density')
    >>> heading("Hordeum vulgare"), heading("TOTAL"), heading("Wt (g)"), heading("Sample_ID"), heading("Species")
    ('', 'total', 'mass', 'sample', 'taxon')
    >>> heading("Soil volume (L) 土量"), heading("Ubiquidade (n.º amostras)"), heading("Toplam tohum/tane")
    ('volume', 'ubiquity', 'total')
    >>> heading("UNCHARRED (not counted in total)"), heading("Total (excl. charcoal)")
    ('', 'total')
    """
    flat = flat_heading(_LEFT_OUT.sub("", text))
    if not flat or len(flat) > 60:
        return ""
    if is_ratio(text):
        return "derived"
    if "／" in text and any(heading(piece) == "volume" for piece in text.split("／")):
        return "volume"  # '部位／水洗量（L）' over parts and before litres
    if size_and_share(text)[1]:
        return ""  # '0.5 mm (25%)' is a sieve class
    if re.fullmatch(r"vols?(?:umes?)? (?:processed|proc|proc'd|floated|taken|collected|sampled)(?: (?:in )?(?:l|lt|lit(?:re|er)s?))?", flat):
        return "volume"  # of soil, before 'sorted' takes it for a share
    if "%" in flat and heading_abroad(flat) == "sorted":
        return "sorted"  # '% revisado', before it is a share
    if (bare := without_inclusion(text)) != text and heading(bare) in ("count", "mass", "total"):
        return heading(bare)  # 'Count incl. fragments'
    if _OTHER_VOLUME.fullmatch(flat):
        return "volume"
    if _OF_SOIL_WEIGHED.fullmatch(flat) or _OF_HEAVY.fullmatch(flat):
        return "sample note"
    if names_codes_of_fractions(flat):
        return "fraction"
    if of_states := heading_of_states(flat):
        return of_states
    if is_result(flat) or is_subset(text):
        return "derived"
    if flat in _DARWIN_CORE:
        return _DARWIN_CORE[flat]
    for role, pattern in _COMPILED:
        if pattern.fullmatch(flat):
            return role
    corner = re.split(r"\s*[\\/|]\s*|\s+(?:vs|by)\s+", flat)
    if len(corner) == 2 and {heading(corner[0]), heading(corner[1])} == {"taxon", "sample"}:
        return "sample"  # 'Taxa \\ Sample' in the corner of a table
    if asks_of_a_sample(text):
        return "note"
    abroad = heading_abroad(flat)
    if abroad:
        return abroad
    if _OF_FINDS.search(flat) and (re.search(r"\bvol(?:s|umes?|umen)?\b", flat) or unit(text) in ("l", "ml")):
        # A volume of finds, and none of soil; of wood in a unit that is said it is an amount.
        return "" if _OF_WOOD.search(flat) and unit(text) in ("l", "ml") else "note"
    if re.search(r"\b(?:vol|vols|volume|volumes|volumen)\b", flat) and unit(text) in ("l", "ml"):
        return "volume"
    if re.search(r"[(\[](?:l|L|lit(?:re|er)s?|ltrs?)[)\]]\s*$", text.strip()):
        return "volume"  # litres are of soil, whatever the word before them
    if re.search(r"[^\W\d_].*(?:%|[(\[]% of [^()\[\]]+)[)\]]?$", text.strip()):
        return "percent"  # 'Roots (%)', 'Roots (% of flot)'
    halves = re.split(r"\s*[/|]\s*", flat)
    if len(halves) == 2 and all(1 < len(half) <= 25 for half in halves):
        said = {heading(half) for half in halves} - {""}
        if len(said) == 1 and (heading(halves[0]) or said.isdisjoint(DERIVED_ROLES) or " " not in halves[0]):
            return said.pop()  # 'Campione / Sample': the same in two languages; 'Glycine soja/max' is a name
        if len(said) == 2 and said <= {"context", "site", "feature"}:
            return "context"  # 'Level / zone'
    remark = re.fullmatch(r"(?P<of>.{2,30}?) (?:notes?|comments?|remarks?|observations?)", flat)
    if remark:
        return "sample note" if heading(remark["of"]) in SAMPLE_HEADS else "note"
    short = re.fullmatch(r"(?P<of>.{2,30}?)\s*[(\[][A-Z]{2,4}[)\]]", text.strip())
    if short and (role := heading(short["of"])) in SAMPLE_HEADS:
        return role  # 'Sample no. (SF)'
    if role := _in_two_scripts(text):
        return role
    prefix, _, rest = flat.partition(" ")
    if prefix in ("taxon", "plant", "find") and rest:
        return heading(rest)
    return composed_heading(flat) or heading_of_database(text.strip())


# Common practice, no source: soil by the bucket and by weight, and what is measured of heavy fractions.
_BUCKETS = (
    r"buckets?|gallons?|bushels?|barrows?|wheelbarrows?|trugs?|eimern?|schubkarren?|seaux?|brouettes?|cubos?|baldes?|secchi[oa]?|wiader|wiadra"
)
OTHER_MEASURES = rf"{_BUCKETS}|gals?|quarts?|qts?|pints?|bags?|tüten?|säcken?|sacs?|bolsas?|emmers?|zakken|sacchi"
"""Measures of soil that are no litres. 'Emmer' alone is a wheat, and in Dutch a bucket."""
_OTHER_VOLUME = re.compile(
    rf"(?:(?:soil|sample|sediment|earth|total) )*(?:vols?|volumes?|volumen|capacity)(?: (?:in|of|en))? (?:{OTHER_MEASURES}|[cdh]l)"
    rf"|(?:(?:no|number|n|anzahl|nombre|número|numero|aantal|liczba)(?: (?:of|de|di|der))? )?(?:{_BUCKETS})(?: (?:floated|processed|of soil|erde))?"
    r"|aantal (?:emmers?|zakken)|antal (?:hinkar|spande|bøtter|säckar|påsar|poser)|(?:nombre|nb|nbre) de (?:seaux|sacs)|liczba (?:wiader|worków)"
)
_OF_WEIGHT = r"(?:weights?|wt|mass|gewicht|poids|peso)(?: (?:in )?(?:kg|g|kgs|kilos?))?"
_OF_SOIL_WEIGHED = re.compile(
    rf"(?:soil|sediment|earth|bulk|matrix|deposit)(?: (?:sample|dry|wet))* {_OF_WEIGHT}|{_OF_WEIGHT} (?:of )?(?:the )?(?:soil|sediment|earth)(?: (?:kg|g))?"
    r"|(?:boden|sediment|erd)gewicht(?: kg)?|poids (?:du |de )?(?:sédiment|terre)(?: kg)?|peso (?:del |de )?(?:sedimento|tierra)(?: kg)?"
)
_OF_HEAVY = re.compile(r"(?:vol(?:ume)?|weight|wt|mass) (?:of )?(?:the )?(?:heavy|hf)\b.*|(?:heavy|hf)\b.*\b(?:vol|volume|ml|cc|l|litres?|weight|wt|mass|g|kg)")
# Common practice, no source: what is measured in millilitres beside soil and flots.
_OF_WOOD = re.compile(r"\b(?:wood|\w*charcoal|holzkohlen?|charbons?(?: de bois)?|carbón|carbones|carbon[ei]|carvão|houtskool|węgiel|węgle|trækul|träkol)\b")
_OF_FINDS = re.compile(rf"{_OF_WOOD.pattern}|\b(?:bones?|shells?|nutshells?|stones?|roots?|rootlets|molluscs?|snails?)\b")



def weighs_soil(text: str) -> bool:
    """
    Whether a head gives the weight of soil.

    >>> weighs_soil("Soil weight (kg)"), weighs_soil("Sediment wt"), weighs_soil("Flot weight (g)")
    (True, True, False)
    """
    return bool(_OF_SOIL_WEIGHED.fullmatch(flat_heading(text)))


_EASTERN = r"\u0370-\u04ff\u3040-\u30ff\u3400-\u9fff\uac00-\ud7af"


def _in_two_scripts(text: str) -> str:
    """What a head in two scripts says, where both say one thing or one of them is not known: 'Soil volume (L) 土量'."""
    western, eastern = (" ".join(re.sub(rf"[{keep}]+", " ", text).split()) for keep in (_EASTERN, rf"^{_EASTERN}"))
    if not re.search(r"[^\W\d_]{2}", western) or eastern in ("", "μ", "Σ"):
        return ""
    said = {heading(western.strip(" /|,-–")), heading(eastern)} - {""}
    return said.pop() if len(said) == 1 else heading(western) if said <= {"feature", "context", "sample"} else ""


_SURE_SAMPLE = re.compile(r"\b(?:samples?|smpl|spl|probe|proben|probennummer|échantillons?|muestras?|campion[ei]|amostras?)\b|試料|样品|サンプル")
_FLOAT = re.compile(r"\b(?:flot|float|flotation|floatation)\b|浮选")


@cache
def sample_rank(text: str) -> int:
    """
    How surely a heading of samples means samples: 3 for the word, 2 for flots, 1 for bags, lots and field specimens.

    >>> sample_rank("Sample No."), sample_rank("Flot #"), sample_rank("Bag"), sample_rank("FS")
    (3, 2, 1, 1)
    """
    flat = flat_heading(text)
    return 3 if _SURE_SAMPLE.search(flat) else 2 if _FLOAT.search(flat) else 1


@cache
def flat_heading(text: str) -> str:
    """
    A heading in lower case, without brackets, points and underscores.

    >>> flat_heading("Vol. (L)"), flat_heading("Sample_ID:"), flat_heading("sampleSizeValue")
    ('vol l', 'sample id', 'sample size value')
    """
    text = narrow(text)
    plain = re.sub(r"(?<=[a-z]{2})(?=[A-Z](?:[a-z]{2}|[A-Za-z]?$))", " ", text) if " " not in text else text
    plain = plain.lower().replace("i\u0307", "i")  # 'BİRİM': the Turkish capital with a point
    flat = re.sub(r"[_\[\](){}.:;,*'\"?]", " ", plain).replace("#", " # ")
    return " ".join(flat.split())


@cache
def unit(text: str) -> str:
    """
    The unit that a heading ends in: l, ml, g, mg, kg, %, mm; empty where it names none.

    >>> unit("Volume (litres)"), unit("Flot vol. ml"), unit("Wt (g)"), unit("Context")
    ('l', 'ml', 'g', '')
    """
    match = _UNIT.search(narrow(text).strip())
    if not match:
        return ""
    word = _UNITS_ABROAD.get(match[1] or match[2], (match[1] or match[2]).lower())
    if word in ("ml", "cc", "cm3"):
        return "ml"
    if word in ("m3", "kg", "mg", "mm", "cl", "dl", "hl"):
        return word
    if word.startswith("l") or word == "dm3":
        return "l"
    if word.startswith("g"):
        return "g"
    return "%"


_UNITS_ABROAD = {"升": "l", "リットル": "l", "毫升": "ml", "克": "g", "グラム": "g", "毫克": "mg"}
_QUANTITIES: tuple[tuple[str, str], ...] = (
    ("percent", r"%|percent|pct|% n|n %"),
    ("density", r"density|(?:n|no|ct|count|counts|items|seeds|remains|g|wt)? ?(?:/|per) ?(?:10 ?)?(?:l|lit(?:re|er)s?)"),
    ("mass", r"kg|(?:m|p|w|gw|pds) (?:g|gr|gm|mg|kg|grams?|grammes?|gramm)|ağırlık|gram|βάρος|(?:masse|masa|massa|peso|poids|gewicht|gew|vægt|vikt|waga|hmotnost|tömeg|weight|wt|wgt|mass|g|gr|gm|gms|grams|mg)(?: (?:g|gr|gm|mg|kg|grams))?|wt g|(?:重量?|重さ|質量|质量)?(?: ?克| ?g)?(?<=[重量さ克])"),
    ("count, fragment", r"残|残破|残块|残片|破损|碎|碎块|碎片|破碎|破片|欠損|(?:(?:no|n|nr|nb|n°|nº|num|núm|number|numero|número|nombre|anzahl|aantal|count)(?: (?:of|de|di|der))? )?(?:frags?|fragments?|fragmentos?|fragmenten?|framm|framment[oi]|brud(?:stykker?)?|k[ıi]r[ıi]k(?:lar)?|θραύσματα?|bruch(?:stücke?)?|zlom(?:ek|ky)|úlom(?:ek|ky)|töredék(?:ek)?|fragm|fgts?|frg)(?: (?:n|no|ct|count))?|fr|f|fragmentary|fragmented"),
    ("count, whole", r"(?:(?:no|n|nr|nb|n°|nº|num|núm|number|numero|número|nombre|anzahl|aantal|count)(?: (?:of|de|di|der))? )?(?:完整|完形|完好|整|whole|wholes|w|ent|int|hel|hela|hele|tam|bütün|całe|cel[ýáé]|egész(?:ek)?|enter[oa]s?|enti(?:er|ère)s?|inter[oiae]|inteir[oa]s?|ganz|heel|hele|complete|entire|intact)(?: (?:n|no|ct|count))?"),
    ("count, tally", r"tall(?:y|ies)|tally marks?|strokes|striche|strichliste|pointages?|bâtons|palotes|palitos|trattini|stanghette|turven|turf|streepjes|kreski"),
    ("count", r"adet|adedi|sayı|sayısı|τεμ|τεμάχια|αριθμός|n°|nº|n|nb|núm|num|no|nr|nos|anz|anzahl|aantal|antal|stk|st|nombre|cantidad|quantità|liczba|count|counts|ct|number|#|qty|abs|nisp|total no|cnt|raw"),
)


@cache
def quantity(text: str) -> str:
    """
    What a small heading over a pair of columns says: count, mass, percent, density, or a count of fragments.

    >>> quantity("n"), quantity("Wt (g)"), quantity("%"), quantity("frags"), quantity("S4")
    ('count', 'mass', 'percent', 'count, fragment', '')
    >>> quantity("M (g)"), quantity("Masse [g]"), quantity("P (g)"), quantity("M"), quantity("C (g)")
    ('mass', 'mass', 'mass', '', '')
    """
    flat = flat_heading(text)
    return next((role for role, pattern in _QUANTITIES if re.fullmatch(pattern, flat)), "") or pieces_in_head(flat)


def is_unit_of_mass(text: str) -> bool:
    """
    Whether a cell among the parts says a unit instead: charcoal in 'g'.

    >>> is_unit_of_mass("g"), is_unit_of_mass("gr"), is_unit_of_mass("grain"), is_unit_of_mass("")
    (True, False, False, False)
    """
    return quantity(text) == "mass" and flat_heading(text) not in ("gr", "gm")  # 'gr' among parts is a grain
