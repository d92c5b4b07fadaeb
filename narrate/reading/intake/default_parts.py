"""The part that is taken where a sheet names none."""

# ruff: noqa: E501

from __future__ import annotations

import re
from collections.abc import Mapping

from narrate.model.grids import Grid
from narrate.model.layouts import Table
from narrate.reading.intake.written_names import NameReader, WrittenName

PARTS_TAKEN = {
    "Zea mays": "kernel",
    "Indeterminate": "indeterminate",
    "Unidentified": "indeterminate",
    "cereal": "grain",
    "nut": "nutshell",
    "any": "seed",
}
"""What is meant where a list of seeds names no part. Common practice, no source."""
PARTS_OF_CHARCOAL = {"any": "charcoal"}
_OF_WOOD = re.compile(
    r"charcoals?|anthraco|antraco|\bwoods?\b|charbons?|carb[oó]n(?:es)?\b|carboni\b|holzkohlen?|houtskool|träkol|trækul|trekull|węgl",
    re.IGNORECASE,
)
_OF_SEEDS = re.compile(
    r"seed|grain|nut|fruit|crop|macro|botan|plant|carpo|weed|flot|chaff|samen|semill|semi\b|graine|frucht", re.IGNORECASE
)
# Common practice, no source: woody genera whose seeds are seldom met among charred food and fields.
_TREES = re.compile(
    r"(?:cf\.? ?)?(?:fraxinus|betula|alnus|salix|populus|salicaceae|ulmus|acer|tilia|fagus|carpinus|ostrya|quercus|pinus|abies|picea|larix|taxus"
    r"|maloideae|pomoideae|prunoideae|tamarix|acacia|prosopis|ericaceae|erica|calluna|cistus|buxus|rhamnus|cedrus|juniperus|cercocarpus|artemisia"
    r"|platanus|fabaceae ligneous|conifer\w*|gymnosperm\w*|angiosperm\w*|dicotyledon\w*|corylus|cornus|euonymus|hedera|ilex|viburnum|pistacia|olea"
    r"|arbutus|phillyrea|celtis|carya|juglans|liriodendron|nyssa|robinia|gleditsia|sassafras|castanea)\b",
    re.IGNORECASE,
)
_LEAST_TREES = 5


def parts_taken(grid: Grid, table: Table) -> Mapping[str, str]:
    """
    The parts that are meant where a table names none: charcoal in one of charcoal, and what is eaten in all others.

    A table is of charcoal where its own title, its sheet or its file says so and speaks of nothing else, or where its
    names are those of trees.
    """
    said = " ".join(_words_over(grid, table))
    near = f"{grid.sheet} {said}".replace("_", " ")
    # A workbook named for its seeds may have a sheet of charcoal.
    about = near if _OF_WOOD.search(near) else f"{re.sub(r'.*/|[.][a-z]+$', '', grid.path)} {near}".replace("_", " ")
    names = _names(grid, table)
    trees = sum(bool(_TREES.match(name)) for name in names)
    if _OF_WOOD.search(about) and not _OF_SEEDS.search(about):
        return PARTS_OF_CHARCOAL if trees or not names else PARTS_TAKEN
    is_of_trees = trees >= _LEAST_TREES and trees >= 0.7 * len(names) and not _OF_SEEDS.search(about)
    return PARTS_OF_CHARCOAL if is_of_trees else PARTS_TAKEN


def _words_over(grid: Grid, table: Table) -> list[str]:
    """The title lines of a table, and the heads of its sections."""
    counted = [r for r, role in table.rows.items() if role.name in ("counts", "finds")]
    top, first = min(table.rows, default=0), min(counted, default=0)
    wanted = [r for r in range(max(0, top - 4), first) if table.rows.get(r) is None or table.rows[r].name == "title"]
    wanted += [r for r, role in table.rows.items() if "section" in role.names]
    names = {c for c, role in table.columns.items() if role.name in ("taxon", "genus")}
    heads = {r for r, role in table.rows.items() if role.name == "header"}
    over = set(wanted)
    return [cell.text for r in sorted(over | heads) for c, cell in grid.row_cells(r) if r in over or c in names]


def _names(grid: Grid, table: Table) -> list[str]:
    across = table.has_samples_across
    lines, heads = (table.rows, table.columns) if across else (table.columns, table.rows)
    at = next((n for n, role in heads.items() if role.name in ("taxon", "genus")), None)
    counted = [n for n, role in lines.items() if role.name in ("counts", "finds")]
    if at is None:
        return []
    texts = [grid.text(n, at) if across else grid.text(at, n) for n in counted]
    return [text for text in dict.fromkeys(texts) if text and not _UNSURE.match(text)]


_UNSURE = re.compile(r"indet|unid|undet|unknown|unbest", re.IGNORECASE)


def default_part(name: WrittenName, parts: Mapping[str, str], names: NameReader) -> str:
    """The part that is taken where a sheet names none: by taxon, by tag of the packs, else the one for any."""
    id = name.identification.taxon
    taxon = names.packs.taxa.get(id) if id is not None else None
    if taxon is not None:
        for key in (str(taxon.id), taxon.genus, taxon.family, *sorted(taxon.tags)):
            if key in parts:
                return parts[key]
    if re.search(r"\bchaff\b", name.identification.written, re.IGNORECASE):
        return "indeterminate"
    pieces = re.split(r"\s*[/&+,]\s*|\s+(?:or|and|oder|und|ou|et|o|y|of|en|lub|i)\s+", name.identification.written)
    if len(pieces) > 1 and all(map(names.part_of, pieces)):
        return "indeterminate"  # 'Tuber/rhizome' is a name of two parts, and no seed
    if "cereal" in parts and is_cereal(name):
        return parts["cereal"]
    return parts.get("any", "indeterminate")


def is_cereal(name: WrittenName) -> bool:
    """Whether a name is of a cereal, by what was written or by the taxon."""
    written = name.identification.written.replace("_", " ")
    return any(map(CEREALS.search, (written, str(name.identification.taxon or ""))))


def is_grass(name: WrittenName, names: NameReader) -> bool:
    """Whether a name is of a cereal or of another grass, whose fruit is a grain."""
    taxon = names.packs.taxa.get(name.identification.taxon) if name.identification.taxon is not None else None
    is_named = re.match(r"(?:cf\.? ?)?(?:poaceae|gramineae)\b", name.identification.written, re.IGNORECASE) is not None
    return is_cereal(name) or is_named or (taxon is not None and taxon.family == "Poaceae")


CEREALS = re.compile(
    r"(?:^|[(])(?:cf\.? ?)?(?:triticum|hordeum|secale|avena|panicum|setaria|oryza|sorghum|pennisetum|eleusine|cerealia|echinochloa)\b|"
    r"\b(?:wheat|barley|rye|oats?|millet|emmer|einkorn|spelt|cereal(?:s|i|e|es)?|cereais|rice|sorghum|"
    r"roggen|\w*gerste|\w*weizen|hafer|dinkel|hirse|\w*hirse|getreide|blés?|orge|seigle|avoine|millet|engrain|amidonnier|épeautre|céréales?|trigo|cebada|centeno|mijo|panizo|"
    r"frumento|orzo|segale|miglio|farro|gerst|tarwe|\w*tarwe|rogge|haver|gierst|granen|byg|bygg|rug|havre|hvede|vete|råg|pszenica|jęczmień|żyto|owies|proso|zboża)\b",
    re.IGNORECASE,
)
"""Cereals by name, where no pack knows them. Common practice, no source."""
