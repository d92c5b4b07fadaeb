"""What each cell of a sheet looks like, before anything is decided: an amount, a name, an id, a heading."""

# ruff: noqa: E501

from __future__ import annotations

import re
from bisect import bisect_left, bisect_right
from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from functools import lru_cache

from narrate.model.grids import Cell, Grid
from narrate.model.ids import TaxonId
from narrate.reading.intake.cell_marks import looks_like_amount, number_of
from narrate.reading.intake.header_words import heading
from narrate.reading.intake.kind_words_abroad import kind_of
from narrate.reading.intake.name_spelling import tidy
from narrate.reading.intake.not_plants import not_a_plant
from narrate.reading.intake.plant_words_abroad import has_east_asian_letters, names_plant_abroad
from narrate.reading.intake.words_in_names import OLD_FAMILIES
from narrate.reading.intake.written_names import NameReader

# Endings of Latin epithets and genera. Common practice, no source.
_EPITHET = re.compile(
    r"[a-z-]{2,}(?:us|um|is|ii|ae|ens|ans|oides|ense|folia|folius|folium|flora|florum|florus|a|ata|atum|atus|ica|icum|icus|ina|inum|inus|osa|osum|osus|aris|alis|ale|are|ilis|ile|ile|i|e|ix|ex|ax|or|o|on|os|es|x|yx|ops|ceps|cum|ris|re)"
)
_SURE_EPITHET = re.compile(r"[a-z-]{2,}(?:us|um|is|ensis|oides|folia|folium|ata|iana|ica|ina|ii|ae|alis|ea|osa)")
_GENUS = re.compile(
    r"[A-Z][a-z]{2,}(?:us|um|is|ia|a|on|ix|ex|ax|ago|um|ion|os|as|es|e|ium|era|ella|opsis|anthus|carpus|ago|o|ops|er|yx|inum|ys|ma|ites)"
)
_RANKED = re.compile(
    r"(?:sp|spp|indet|type|undiff|agg|subsp|ssp|var|s\.?l|undet)\.?$|\b(?:sp|spp|indet|undet|type|subsp|ssp|var|agg)\b",
    re.IGNORECASE,
)
_CF = re.compile(r"^(?:cf|aff)[._ ]|\bcf\b", re.IGNORECASE)
# Common practice, no source: everyday words in English lists of plant remains.
_PLANT_WORDS = re.compile(
    r"\b(?:wheat|barley|oats?|rye|millet|maize|corn|rice|sorghum|emmer|spelt|einkorn|cereals?|cerealia|grains?|chaff|straw|culm|rachis|glumes?|"
    r"nut|nuts|nutshell|hazel|hazelnut|walnut|hickory|acorns?|pecan|chestnut|oak|pine|birch|alder|willow|"
    r"peas?|beans?|lentils?|vetch|pulses?|legumes?|clover|flax|linseed|hemp|poppy|"
    r"seeds?|weeds?|grass|grasses|sedges?|rush|rushes|docks?|sorrel|knotgrass|knotweed|goosefoot|pigweed|chenopod|amaranth|sunflower|squash|gourd|bottle|"
    r"maygrass|marshelder|sumpweed|little barley|purslane|nightshade|plantain|cleavers|bedstraw|brome|mallow|thistle|buttercup|chickweed|dandelion|nettle|"
    r"apple|pear|plum|cherry|grape|fig|olive|date|bramble|blackberry|raspberry|strawberry|elder|elderberry|hawthorn|sloe|persimmon|sumac|blueberry|huckleberry|"
    r"cotton|tobacco|mustard|cabbage|carrot|parsley|mint|rhizome|tuber|charcoal|wood|bark|stem|leaf|leaves|bud|thorn|moss|fern|bracken|heather|dogwood|hackberry|"
    r"indet|indeterminate|unidentified|unidentifiable|unknown|undetermined)(?:e?s)?\b",
    re.IGNORECASE,
)
_ID = re.compile(r"(?=[\w<>#./ *-]{1,16}$)(?=.*\d)[\w<>#./ *-]+$")


EMPTY_FIELDS = ("NULL", "null", "<NULL>", "NA", "N/A")
"""What databases and statistics write where nothing is."""


class Numbers(dict[tuple[int, int], float]):
    """The number of each place, by row and column; nought where there is none."""

    def __missing__(self, place: tuple[int, int]) -> float:
        return 0.0


@dataclass(slots=True)
class Look:
    """The cells of one grid with what they look like; merged cells stand in every place that they cover."""

    grid: Grid
    names: NameReader
    cells: Mapping[tuple[int, int], Cell] = field(default_factory=dict)
    rows: int = 0
    columns: int = 0
    is_turned: bool = False
    """Rows and columns are exchanged, so that taxa always run down."""
    own: frozenset[tuple[int, int]] = frozenset()
    """Places that hold a cell of their own, not the continuation of a merged one."""
    signs: frozenset[str] = frozenset()
    """Signs that the sheet's own key gives a meaning: amounts wherever they stand."""
    _name_scores: dict[str, float] = field(default_factory=dict)
    _texts: dict[tuple[int, int], str] = field(default_factory=dict, init=False)
    _row_texts: dict[tuple[int, int, int], list[str]] = field(default_factory=dict, init=False)
    _values: Numbers | None = field(default=None, init=False)
    _amounts: frozenset[tuple[int, int]] | None = field(default=None, init=False)
    """Places that hold an amount, once somebody has asked for one."""
    _by_row: tuple[Mapping[int, Sequence[int]], Mapping[int, Sequence[int]]] | None = field(default=None, init=False)
    """Row -> columns of amounts, and of all cells, once somebody has asked for them."""

    def __post_init__(self) -> None:
        self._texts = {at: cell.text for at, cell in self.cells.items()}

    @classmethod
    def of(cls, grid: Grid, names: NameReader, signs: frozenset[str] = frozenset()) -> Look:
        return cls(grid, names, grid.spread(), grid.rows, grid.columns, False, frozenset(grid.cells), signs)

    def turned(self) -> Look:
        cells = {(c, r): cell for (r, c), cell in self.cells.items()}
        own = frozenset((c, r) for r, c in self.own)
        return Look(
            self.grid, self.names, cells, self.columns, self.rows, not self.is_turned, own, self.signs, self._name_scores
        )

    def text(self, row: int, column: int) -> str:
        return self._texts.get((row, column), "")

    def texts(self, row: int, left: int, right: int) -> list[str]:
        """The texts of a row from one column to another, both included; kept, because heads are tried one by one."""
        key = (row, left, right)
        if key not in self._row_texts:
            self._row_texts[key] = [self._texts.get((row, column), "") for column in range(left, right + 1)]
        return self._row_texts[key]

    def value(self, row: int, column: int) -> float:
        """The number in a cell; nought where there is none."""
        return (self._values or self.values())[row, column]

    def values(self) -> Numbers:
        """The number of each place; nought where there is none."""
        if self._values is None:
            self._values = Numbers((at, number) for at, cell in self.cells.items() if (number := _value(cell)))
        return self._values

    def amounts(self) -> frozenset[tuple[int, int]]:
        """The places that hold an amount."""
        if self._amounts is None:
            self._amounts = frozenset(at for at, cell in self.cells.items() if self._holds_amount(cell))
        return self._amounts

    def is_amount(self, row: int, column: int) -> bool:
        return (row, column) in (self._amounts or self.amounts())

    def _holds_amount(self, cell: Cell) -> bool:
        return (
            cell.kind in ("number", "no result", "date", "truth")
            or cell.text in self.signs
            or cell.text in EMPTY_FIELDS
            or looks_like_amount(cell.text)
        )

    def amounts_in(self, row: int, left: int, right: int) -> int:
        """How many amounts a row holds from one column to another, both included."""
        return _within(self._columns_by_row()[0].get(row, ()), left, right)

    def cells_in(self, row: int, left: int, right: int) -> int:
        """The same of cells that hold anything."""
        return _within(self._columns_by_row()[1].get(row, ()), left, right)

    def in_columns(self, rows: Iterable[int]) -> tuple[Counter[int], Counter[int]]:
        """Of some rows: how many amounts each column holds, and how many cells that hold anything."""
        amounts, cells = self._columns_by_row()
        found = Counter[int](), Counter[int]()
        for row in rows:
            found[0].update(amounts.get(row, ()))
            found[1].update(cells.get(row, ()))
        return found

    def _columns_by_row(self) -> tuple[Mapping[int, Sequence[int]], Mapping[int, Sequence[int]]]:
        if self._by_row is None:
            self._by_row = _columns_by_row(self.amounts()), _columns_by_row(self.cells)
        return self._by_row

    def is_text(self, row: int, column: int) -> bool:
        return (row, column) in self.cells and not self.is_amount(row, column)

    def name_score(self, row: int, column: int) -> float:
        cell = self.cells.get((row, column))
        if cell is None or cell.kind != "text":
            return 0.0
        score = self._name_scores.get(cell.text)
        if score is None:
            score = name_score(cell.text, self.names)
            if score < 0.9 and cell.text.islower() and "_" in cell.text:  # 'lens_culinaris' as databases write it
                score = max(score, 0.9 * name_score(cell.text.capitalize(), self.names))
            self._name_scores[cell.text] = score
        return score


def _columns_by_row(places: Iterable[tuple[int, int]]) -> dict[int, list[int]]:
    """Row -> columns in order."""
    found: dict[int, list[int]] = {}
    for row, column in sorted(places):
        found.setdefault(row, []).append(column)
    return found


def _within(columns: Sequence[int], left: int, right: int) -> int:
    """How many columns lie from one to another, both included."""
    return max(bisect_right(columns, right) - bisect_left(columns, left), 0)


def _is_genus(word: str, names: NameReader) -> bool:
    """Whether a word is the name of a genus that a pack knows."""
    taxon = names.packs.taxa.get(TaxonId(word))
    return taxon is not None and taxon.rank == "genus"


def _value(cell: Cell) -> float:
    return cell.number if cell.number is not None else number_of(cell.text, ".") or 0.0


NAMED = 0.45
"""Score from which a text is taken for a name: a single word that may be a genus has just this."""


def name_score(text: str, names: NameReader) -> float:
    """How much a text looks like a name in a list of plant remains, from 0 to 1."""
    if len(text) > 70 or looks_like_amount(text):
        return 0.0
    if text in names.given:
        return 0.9  # a code that somebody explained
    role = heading(text)
    if role and role not in ("taxon", "family", "part"):
        return 0.0
    if has_east_asian_letters(text) and not role and names_plant_abroad(text):
        return 0.6
    if len(text) < 3:
        return 0.0
    if not re.search(r"[^\W\d_]{3}", text):
        return 0.0
    if sum(sign.isdecimal() for sign in text) > len(text) / 3:
        return 0.0
    if kind_of(text, names.packs.words):
        return 0.0
    read = names.read(text)
    if read.is_known and not role:
        if read.identification.taxon in ("Indeterminate", "Unidentified"):
            return 0.7
        first = re.sub(r"^(?:cf|aff)[._ ]\s*", "", tidy(text)).split("/")[0].split(" ")[0]
        taxon = names.packs.taxa.get(read.identification.taxon) if read.identification.taxon is not None else None
        # Where Latin and everyday names stand side by side, the Latin ones are the names.
        is_everyday = (
            taxon is not None
            and taxon.rank == "species"
            and not _GENUS.fullmatch(first)
            and first.lower() != taxon.genus.lower()
        )
        return 0.7 if is_everyday or first.islower() else 1.0
    if role:
        return 0.0
    name = _CF.sub("", tidy(text)).strip()
    words = re.sub(r"[(\[].*?[)\]]|[?*†,]", " ", name).split()
    if not words:
        return 0.0
    first = words[0].split("/")[0]
    if first.lower() in OLD_FAMILIES or re.fullmatch(r"[A-Z]?[a-z]+(?:aceae|oideae|ineae)", first):
        return 1.0
    if len(words) >= 2 and re.fullmatch(r"[A-Z][a-z]{2,}|[A-Z]\.", first):
        second = words[1]
        if _RANKED.search(" ".join(words[1:])) and _GENUS.fullmatch(first):
            return 0.95
        if re.fullmatch(r"(?:[a-z]{1,4}\.){1,3}[a-z]?", words[1]) and _GENUS.fullmatch(first):
            return 0.9  # 'Quercus f.c.', 'Hordeum vulg.'
        if (
            second.islower()
            and _EPITHET.fullmatch(second.split("/")[0])
            and (_GENUS.fullmatch(first) or first.endswith("."))
        ):
            return 0.9
        if _SURE_EPITHET.fullmatch(second.split("/")[0]):
            return 0.8
        if second in ("cf.",) and len(words) > 2:
            return 0.9
    if _CF.search(text):
        return 0.8
    if 1 < len(words) <= 5 and _GENUS.fullmatch(first) and _is_genus(first, names):
        return 0.8  # 'Quercus à f. caduc'
    if not_a_plant(text):
        return 0.5
    if _PLANT_WORDS.search(text.replace("_", " ")) or names_plant_abroad(text.replace("_", " ")):
        return 0.6
    if read.part:
        return 0.5
    if len(words) == 1 and _GENUS.fullmatch(first) and len(first) > 4:
        return NAMED
    return 0.0


@lru_cache(maxsize=4096)
def plain_label(text: str) -> float:
    """
    How much a text may be a label of a taxon that nobody else knows: a word or code with letters, not an id.

    >>> plain_label("Achimill"), plain_label("S14"), plain_label("12")
    (0.2, 0.0, 0.0)
    """
    if heading(text) or looks_like_amount(text) or len(text) > 60:
        return 0.0
    letters = sum(sign.isalpha() for sign in text)
    digits = sum(sign.isdecimal() for sign in text)
    if has_east_asian_letters(text):
        return 0.2 if letters > 2 * digits else 0.0
    return 0.2 if letters >= 3 and letters > 2 * digits else 0.0


def form_of_id(text: str) -> str:
    """The form of an id: 'M-5' and 'M-12' are of one form."""
    return re.sub(r"\d+", "9", text.strip())


@lru_cache(maxsize=4096)
def looks_like_id(text: str) -> bool:
    """
    True for short codes with a number.

    >>> looks_like_id("S14"), looks_like_id("4-1*"), looks_like_id("012"), looks_like_id("pit fill")
    (True, True, True, False)
    """
    return bool(_ID.match(text)) and len(re.findall(r"[^\W\d_]{4,}", text)) == 0
