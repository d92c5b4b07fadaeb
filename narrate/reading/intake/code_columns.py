"""What the columns of a list of codes say beside the name: the part, the condition, whole or broken, the unit, 'cf.'."""

# ruff: noqa: E501

from __future__ import annotations

import re
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache

from narrate.reading.intake.evidence import Look
from narrate.reading.intake.header_words import flat_heading, heading
from narrate.reading.intake.heads_by_content import COMPLETE
from narrate.reading.intake.kinds_of_amounts import are_kinds_of_amounts, kind_of_amount
from narrate.reading.intake.not_plants import NO_PLANT, are_classes_of_finds, class_aside, not_a_plant, says_no_plant

_MOST_COLUMNS = 12
_KEY_WORDS = ("code", "codes", "id", "key", "no", "nr", "number", "num", "abbreviation", "abbr", "ref", "kod", "código", "codice")


@lru_cache(maxsize=4096)
def words_beside_key(text: str) -> tuple[str, ...]:
    """
    The words of a head of a database but for those that call it a key or a code.

    >>> words_beside_key("TaxonCode"), words_beside_key("part_id"), words_beside_key("Code"), words_beside_key("lkpTaxon")
    (('taxon',), ('part',), (), ('lkp', 'taxon'))
    """
    apart = re.findall(r"[^\W\d_]+", re.sub(r"(?<=[a-z])(?=[A-Z])", " ", text))
    return tuple(word.lower() for word in apart if word.lower() not in _KEY_WORDS)


def is_code_of_taxa(text: str) -> bool:
    """
    Whether a head is over codes of taxa.

    >>> [is_code_of_taxa(t) for t in ("TaxonCode", "species_id", "Code", "Taxon", "SampleNo", "No. taxa")]
    [True, True, False, False, False, False]
    """
    words = words_beside_key(text)
    return bool(words) and heading(" ".join(words)) == "taxon" and heading(text) in ("code", "")


def column_of_codes(look: Look, row: int, heads: Mapping[int, str], below: Sequence[int]) -> int | None:
    """The column under 'TaxonCode' of a list whose heads say samples and amounts, where codes come again and again."""
    said = set(heads.values())
    if not (said & {"sample", "context", "feature"} and said & {"count", "mass"}):
        return None
    for column in heads:
        texts = [look.text(r, column) for r in below if look.text(r, column)]
        if is_code_of_taxa(look.text(row, column)) and 2 < len(texts) > len(set(texts)):
            return column
    return None


@dataclass(frozen=True, slots=True, kw_only=True)
class ListOfCodes:
    """Where a list of codes says what."""

    names: int
    part: int | None = None
    condition: int | None = None
    completeness: int | None = None
    quantity: int | None = None
    cf: int | None = None
    classes: tuple[int, ...] = ()
    """Columns that may say of a code that it is no plant."""

    def name(self, look: Look, row: int) -> str:
        """The name of a line with all else that the line says, in words that the reader of names takes apart."""
        name = look.text(row, self.names)
        if any(class_aside(look.text(row, c)) for c in self.classes) and not not_a_plant(name):
            return f"{name} ({NO_PLANT})"
        part, condition = self._text(look, row, self.part), self._text(look, row, self.condition)
        if self._text(look, row, self.cf).lower().rstrip(".") in ("cf", "?", "y", "yes", "x"):
            name = name if "cf" in name.lower() else f"cf. {name}"
        if part:
            name = f"{name} {part}" if look.names.part_of(part) else f"{name} ({part})"
        if self._text(look, row, self.completeness).lower().startswith(("fr", "br", "f")) and "frag" not in name:
            name = f"{name} fragment"
        if kind_of_amount(self._text(look, row, self.quantity)) == "mass":
            name = f"{name} (g)"
        known = look.names.condition_of(condition)
        return f"{name} ({known or condition})" if condition else name

    def _text(self, look: Look, row: int, column: int | None) -> str:
        return look.text(row, column) if column is not None else ""


def columns_of_list(look: Look, rows: list[int], code: int, names: int) -> ListOfCodes:
    """The columns of a list of codes, by their heads and by what stands in them."""
    head = min(rows, default=1) - 1
    others = [c for c in range(min(look.columns, _MOST_COLUMNS)) if c not in (code, names)]
    heads = {c: heading(look.text(head, c)) if head >= 0 else "" for c in others}

    def column(role: str, is_one: Callable[[str], bool]) -> int | None:
        headed = [c for c in others if heads[c] == role and any(look.text(r, c) for r in rows)]
        return headed[0] if headed else next((c for c in others if _share(look, rows, c, is_one) >= 0.6), None)

    part = _column_of_parts(look, rows, {code, names})
    part = part if part is not None else next((c for c in others if heads[c] == "part"), None)
    others = [c for c in others if c != part]
    condition = column("condition", lambda text: bool(look.names.condition_of(text)))
    others = [c for c in others if c != condition]
    return ListOfCodes(
        names=names, part=part, condition=condition,
        completeness=column("completeness", lambda text: len(text) > 3 and flat_heading(text) in COMPLETE),
        quantity=next((c for c in others if _says_amounts([look.text(r, c) for r in rows if look.text(r, c)])), None),
        cf=column("cf", lambda text: text.lower().rstrip(".") == "cf"),
        classes=tuple(c for c in others if _says_classes([look.text(r, c) for r in rows if look.text(r, c)])),
    )  # fmt: skip


def _share(look: Look, rows: list[int], column: int, is_one: Callable[[str], bool]) -> float:
    """The share of the lines of a list whose cell in a column is of a sort; nought where few lines fill it."""
    texts = [look.text(r, column) for r in rows if look.text(r, column)]
    return sum(map(is_one, texts)) / len(texts) if len(texts) >= 0.5 * len(rows) > 0 else 0.0


def _says_classes(texts: list[str]) -> bool:
    """Whether a column says what each code is among all that is dug up, or of some that they are no plants."""
    return any(map(says_no_plant, texts)) or are_classes_of_finds(texts)


def _says_amounts(texts: list[str]) -> bool:
    """Whether a column says of each code what its amounts are, some of them weights."""
    return are_kinds_of_amounts(texts) and any(kind_of_amount(text) == "mass" for text in texts)


def _column_of_parts(look: Look, rows: list[int], other: set[int]) -> int | None:
    return next(
        (
            c for c in range(min(look.columns, _MOST_COLUMNS))
            if c not in other and _share(look, rows, c, lambda text: bool(look.names.part_of(text))) >= 0.6
        ),
        None,
    )  # fmt: skip


def conditions_unknown(look: Look) -> list[str]:
    """Words under a head of conditions of a list of codes that name no condition that anybody knows."""
    for head in range(min(look.rows, 6)):
        for column in range(min(look.columns, _MOST_COLUMNS)):
            if heading(look.text(head, column)) == "condition":
                texts = dict.fromkeys(look.text(row, column) for row in range(head + 1, look.rows))
                return [text for text in texts if text and not look.names.condition_of(text)]
    return []
