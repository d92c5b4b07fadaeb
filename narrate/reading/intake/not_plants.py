"""What ends up in lists of finds from flotation and is no plant."""

# ruff: noqa: E501

from __future__ import annotations

import re

# Common practice, no source: what else ends up in lists of flotation finds.
_NOT_PLANTS: tuple[tuple[str, str], ...] = (
    (r"fish|birds?|(?:small )?mammals?|amphibians?|fish ?(?:bones?|scales?|vertebrae?)|bird bones?|(?:small |large |burnt |burned |calcined )?(?:mammal |animal |human |rodent |amphibian )?bones?(?: frag(?:ment)?s?)?|teeth|tooth|otoliths?", "bone"),
    (r"(?:land |marine |fresh ?water |terrestrial )?(?:snails?|mollus[ck]s?|mollusca|gastropods?|mussels?|oysters?|bivalves?)(?: shells?)?|marine shells?|egg ?shells?|shellfish|sea ?shells?", "shell"),
    (r"insects?(?: (?:remains|fragments|parts))?|beetles?|coleoptera|fly pupae?|puparia|pupae|weevils?|sitophilus.*|mites?|ants?|arthropods?|(?:earth)?worm (?:cocoons?|capsules?|casts?|eggs?(?: cases?)?)|daphnia.*|cladocera.*|ostracods?|foraminifera|forams?|bryozoa|larvae?|ephippia", "insects and other small animals"),
    (r"slag|hammer ?scale|clinkers?|cinders?|coal|fuel ash(?: slag)?|iron|metal|glass|vitrified.*|industrial waste|magnetic.*", "metal working and fuel waste"),
    (r"pot(?:tery|sherds?)?|sherds?|ceramics?|daub|brick|tile|cbm|fired clay|burnt clay|flints?|lithics?|debitage|obsidian|flakes?|beads?|plaster|mortar|stones?|gravel|fcr|fire.?cracked rock|artefacts?|artifacts?", "artefacts"),
    (r"dung(?: pellets?)?(?: frag(?:ment)?s?)?|(?:rodent|mouse|sheep|goat) (?:droppings?|pellets?|faeces)|faecal pellets?|coprolites?|droppings?", "droppings"),
    (r"(?:modern |uncharred )?(?:rootlets?|roots? \(modern\)|modern roots?|modern (?:plant )?(?:material|contamination|straw|seeds?)|moss|grit|sand|silt|sediment)|(?:faecal |fecal |mineralised |mineralized |phosphatic |calcium |cess )*(?:concretions?|nodules?)", "modern or mineral matter"),
    (r"huesos(?: de (?:pez|pescado|ave|animal|mamífero))?|ossos de peixe|ossements|knochen(?:fragmente)?|fischreste|ossa|botten|ossos|fauna|ictiofauna|micro ?fauna|espinas", "bone"),
    (r"caracoles|conchas|malaco ?fauna|schnecken|mollusken|mollusques|molluschi|moluscos|slakken", "shell"),
    (r"insectos|insectes|insekten|insetti|insetos", "insects and other small animals"),
    (r"esti[eé]rcol|excrementos?|coprolit[oi]s?|copr[oó]litos?|mist|fumier|letame|estrume", "droppings"),
    (r"escorias?|scories|schlacken?|scorie|esc[oó]rias?", "metal working and fuel waste"),
    (r"cer[aá]mica|c[eé]ramique|keramik|ceramica|l[ií]tic[ao]s?|silex|sílex|feuerstein", "artefacts"),
)  # fmt: skip


def not_a_plant(name: str) -> str:
    """
    The kind of a find that is no plant; empty for plants.

    >>> not_a_plant("Fish bone"), not_a_plant("Land snails"), not_a_plant("Hickory nutshell"), not_a_plant("Boneset")
    ('bone', 'shell', '', '')
    """
    bare = re.sub(r"\s*[(\[](?:n|no\.?|ct|count|g|wt|wt\.? ?g|#|ml|nr)[)\]]\s*$", "", name.lower())
    flat = " ".join(re.sub(r"[_.]", " ", bare).split()).rstrip(" *:")
    return next((kind for pattern, kind in _NOT_PLANTS if re.fullmatch(pattern, flat)), "")
