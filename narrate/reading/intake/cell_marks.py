"""Cells among the counts: numbers, signs, estimates, weights. A sign is a number only by a key; the writing is kept."""

# ruff: noqa: E501

from __future__ import annotations

import datetime
import re
from dataclasses import dataclass
from functools import cache

from narrate.model.counts import Count
from narrate.model.grids import Cell
from narrate.model.layouts import Marks
from narrate.reading.count_cells import Refusal, read_count
from narrate.reading.intake.number_formats import typed_before


@dataclass(frozen=True, slots=True, kw_only=True)
class Found:
    """One amount that a cell gives; a cell such as 1/6 gives two."""

    count: Count | None = None
    mass_g: float | None = None
    note: str = ""
    condition: str = ""
    completeness: str = ""
    is_doubtful: bool = False
    """The cell says 'cf.'."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Quirk:
    """What an analyst should look at, told once for all cells of its kind."""

    kind: str
    message: str
    help: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Reading:
    found: tuple[Found, ...] = ()
    quirks: tuple[Quirk, ...] = ()
    refusal: Refusal | None = None


NOTHING = Reading()

_SIGNS = re.compile(
    r"(?:x{1,5}|\+{1,6}|p|pres\.?|present|✓|✔|√|#{1,4}|•{1,4}|●{1,4}|\*{1,5}|o|yes|y|tr|trace|a|r|f|c|d|va|vr|vf|la|lf|rare|few|some|many|common|occasional|frequent|abundant|dominant|numerous|very abundant|very common|several|present \(p\)|\(x\)|\(\+\)|\[x\]|\[\+\])",
    re.IGNORECASE,
)
_ABSENT = ("-", "–", "—", "−", ".", "nil", "none", "absent", "0", "o", "no")
_NOT_LOOKED = (
    "n/a",
    "na",
    "nd",
    "n.d.",
    "not sorted",
    "not examined",
    "not analysed",
    "not looked for",
    "not counted",
    "unsorted",
    "/",
)
COUNT_LIKE = re.compile(
    r"(?:[<>≤≥~]=?|c\.|c\s|ca\.?|circa|approx\.?|est\.?|±)?\s*\d[\d,.' \u00a0]*(?:e[+-]?\d+)?\s*(?:\+|\?|[*†‡§]+|ml|g|mg|kg|cc|l|frags?\.?|f|w|fr|cf\.?)?(?:\s*[(\[]\s*[^)\]]{1,12}[)\]])?"
    r"|\.\d+\s*(?:g|mg)?|\d+\s*[-–/]\s*\d+|\d+\s*[+&]\s*\d+\s*(?:cf\.?|f|frags?\.?)?|\(\d+\)|\[\d+\]|x{1,5}|\+{1,6}\s*(?:\([^)]{1,24}\))?|[-–—.?]|p|#{1,4}|\*{1,5}|•{1,4}|✓|[(\[][x+][)\]]|tr|trace|present|absent|nil|rare|occasional|common|frequent|abundant|dominant|few|some|many|numerous|very (?:rare|common|abundant|frequent)|-\d+(?:\.\d+)?",
    re.IGNORECASE,
)


@cache
def looks_like_amount(text: str) -> bool:
    """
    True for what stands in cells of counts: numbers, signs, ranges, estimates.

    >>> [looks_like_amount(t) for t in ("12", "x", ">100", "12 (3)", "2ml", "1/6", "Zea mays", "pit fill", "S14")]
    [True, True, True, True, True, True, False, False, False]
    """
    return len(text) <= 30 and COUNT_LIKE.fullmatch(text.strip()) is not None


_NUMBER = r"(?:\d[\d.,' \u00a0]*|\.\d+)"
_UNIT_GRAMS = {"g": 1.0, "gr": 1.0, "gm": 1.0, "gms": 1.0, "grams": 1.0, "mg": 0.001, "kg": 1000.0}


def read_cell(cell: Cell, marks: Marks) -> Reading:
    """
    What a cell of counts means.

    >>> read_cell(Cell("12"), Marks()).found[0].count.number
    12
    >>> read_cell(Cell("+++"), Marks()).found[0].count.amount
    'noted as present'
    >>> [f.count.number for f in read_cell(Cell("1/6"), Marks(slash="whole/fragment")).found]
    [1, 6]
    """
    if cell.kind != "text":
        special = _not_text(cell)
        if special is not None:
            return special
    return _read(cell.text, cell.number, marks.decimal, _frozen(marks))


def read_mass(cell: Cell, marks: Marks, unit: str) -> Reading:
    """A cell of a column of weights, in grams. A blank, a dash or a zero gives nothing."""
    if cell.kind != "text" and cell.kind != "number":
        special = _not_text(cell)
        if special is not None:
            return special
    text = cell.text.strip()
    if text.lower() in (*_ABSENT, *_NOT_LOOKED):
        return NOTHING
    factor = _UNIT_GRAMS.get(unit or "g", 1.0)
    if cell.number is not None:
        return _mass(cell.number * factor, "")
    match = re.fullmatch(rf"({_NUMBER})\s*(g|gr|gm|gms|grams|mg|kg)?\s*([*†‡§?]*)", text, re.IGNORECASE)
    if match:
        number = number_of(match[1], marks.decimal)
        if number is not None:
            factor = _UNIT_GRAMS[match[2].lower()] if match[2] else factor
            return _mass(number * factor, f"written {text}" if match[3] else "")
    if re.match(r"[<>~]|tr|trace|\+|x|present|c", text, re.IGNORECASE):
        quirk = Quirk(
            kind="unweighed",
            message=f"the weight is '{text}', kept in the note and as presence, expected a number",
            help="nothing need be done if it was too light to weigh",
        )
        found = Found(count=Count(written=text, amount="noted as present"), note=f"weight written {text}")
        return Reading(found=(found,), quirks=(quirk,))
    return Reading(refusal=Refusal(help="say under 'mend' in the layout what the weight is"))


def _mass(grams: float, note: str) -> Reading:
    if grams < 0:
        return Reading(refusal=Refusal(help="a weight cannot be below 0"))
    grams = float(f"{grams:.12g}")
    return Reading(found=(Found(mass_g=grams, note=note),)) if grams else NOTHING


def number_of(text: str, decimal: str) -> float | None:
    """
    A number with thousands marks and a decimal mark; None where the marks do not stand as they should.

    >>> number_of("1,234", "."), number_of("0,5", ","), number_of("1 234", "."), number_of("1.234", ","), number_of("2.6e+06", ".")
    (1234.0, 0.5, 1234.0, 1234.0, 2600000.0)
    >>> number_of("0,5", "."), number_of("12,34", ".")
    (None, None)
    """
    flat = text.strip()
    if re.fullmatch(r"\d+(?:\.\d+)?e[+-]?\d{1,3}", flat, re.IGNORECASE):
        return float(flat)
    thousands = "," if decimal == "." else "."
    if re.fullmatch(rf"\d{{1,3}}(?:[{thousands}'’ \u00a0\u202f]\d{{3}})+(?:{re.escape(decimal)}\d+)?", flat):
        flat = re.sub(rf"[{thousands}'’ \u00a0\u202f]", "", flat)
    flat = flat.replace(decimal, ".") if decimal == "," and "." not in flat else flat
    return float(flat) if re.fullmatch(r"\d*\.?\d+|\d+\.", flat) and len(flat) < 30 else None


@cache
def _frozen_key(items: tuple[tuple[str, str], ...]) -> dict[str, str]:
    return dict(items)


def _frozen(marks: Marks) -> tuple[tuple[tuple[str, str], ...], str, str, str]:
    return tuple(marks.key.items()), marks.slash, marks.brackets, marks.estimates


def _not_text(cell: Cell) -> Reading | None:
    if cell.kind == "date":
        typed = _typed(cell.text)
        meant = f"probably {' or '.join(typed)} was typed" if typed else "look what was typed"
        return Reading(
            refusal=Refusal(help=f"a spreadsheet has made a date of it; {meant}; say it under 'mend' in the layout")
        )
    if cell.kind == "no result":
        return Reading(
            refusal=Refusal(help=f"the formula {cell.formula[:40]} has no saved result; open and save the workbook in a "
            "spreadsheet program, or say the number under 'mend' in the layout")
        )  # fmt: skip
    if cell.kind == "fault":
        return Reading(
            refusal=Refusal(help="the spreadsheet shows an error there; say the number under 'mend' in the layout")
        )
    if cell.kind == "truth":
        amount = "noted as present" if cell.text == "TRUE" else "looked for and absent"
        return Reading(found=(Found(count=Count(written=cell.text, amount=amount)),))  # type: ignore[arg-type]
    return None


def _typed(shown: str) -> tuple[str, ...]:
    try:
        return typed_before(datetime.datetime.strptime(shown, "%d %b %Y"))
    except ValueError:
        return ()


@cache
def _read(
    text: str, number: float | None, decimal: str, by: tuple[tuple[tuple[str, str], ...], str, str, str]
) -> Reading:
    key, slash, brackets, estimates = _frozen_key(by[0]), by[1], by[2], by[3]
    written = text.strip()
    lower = written.lower()
    keyed = key.get(written) or key.get(lower)
    if keyed is not None:
        return Reading(found=(Found(count=_keyed(written, keyed)),))
    if number is not None and not re.search(r"[a-z%]", lower):
        return _number(written, number)
    plain = number_of(written, decimal)
    if plain is not None:
        return _number(written, plain)
    if lower in _ABSENT:
        quirks = () if lower in ("0", "o", "absent", "none", "nil") else (_dash(written),)
        return Reading(found=(Found(count=Count(written=written, amount="looked for and absent")),), quirks=quirks)
    if lower in _NOT_LOOKED:
        return Reading(found=(Found(count=Count(written=written, amount="not looked for")),))
    if lower == "?":
        quirk = Quirk(
            kind="?",
            message="'?' is kept as presence in doubt, expected a count or a sign with a key",
            help="say what '?' means under cells, key in the layout",
        )
        return Reading(
            found=(Found(count=Count(written=written, amount="noted as present"), is_doubtful=True),), quirks=(quirk,)
        )
    if _SIGNS.fullmatch(written):
        return Reading(
            found=(Found(count=Count(written=written, amount="noted as present")),), quirks=_unkeyed(written)
        )
    for pattern, take in _WRITINGS:
        match = re.fullmatch(pattern, written, re.IGNORECASE)
        if match:
            found = take(match, written, decimal, slash, brackets, estimates)
            if found is not None:
                return found
    classed = read_count(written)
    if isinstance(classed, Count) and classed.amount != "counted":
        return Reading(found=(Found(count=classed),))
    if isinstance(classed, Refusal) and "made a date" in classed.help:
        return Reading(refusal=Refusal(help=f"{classed.help}, under 'mend' in the layout"))
    return _with_remark(written, number, decimal, by)


def _keyed(written: str, meaning: str) -> Count:
    lower = meaning.strip().lower()
    if lower in ("absent", "not looked for"):
        return Count(written=written, amount="looked for and absent" if lower == "absent" else "not looked for")
    classed = read_count(meaning.strip())
    if isinstance(classed, Count) and classed.amount == "counted":
        return Count(written=written, amount="counted", number=classed.number)
    if isinstance(classed, Count) and classed.amount == "noted as present":
        return Count(
            written=written, amount="noted as present", at_least=classed.at_least, at_most=classed.at_most, scale="key of the sheet"
        )  # fmt: skip
    return Count(written=written, amount="noted as present")


def _number(written: str, number: float) -> Reading:
    if number < 0:
        return Reading(refusal=Refusal(help="a count cannot be below 0"))
    if number == 0:
        return Reading(found=(Found(count=Count(written=written, amount="looked for and absent")),))
    if float(number).is_integer() and number < 1e9:
        quirks: tuple[Quirk, ...] = ()
        if "e" in written.lower():
            message = f"'{written}' is a number in short, read as {int(number)}, expected all digits"
            quirks = (
                Quirk(kind="short number", message=message, help="say the whole number under 'mend' in the layout"),
            )
        return Reading(
            found=(Found(count=Count(written=written, amount="counted", number=int(number))),), quirks=quirks
        )
    if number >= 1e9:
        return Reading(refusal=Refusal(help="no sample holds so many items; is the row a weight or a code?"))
    low = int(number)
    quirk = Quirk(
        kind="part of an item",
        message=f"'{written}' is no whole number of items; it is kept as presence and is in no sum, expected a whole number",
        help="say under 'rows' or 'columns' of the layout that they hold 'mass', or under 'mend' what was counted",
    )
    count = Count(written=written, amount="noted as present", at_least=max(low, 1) if low else None, at_most=low + 1)
    return Reading(found=(Found(count=count),), quirks=(quirk,))


def _dash(written: str) -> Quirk:
    return Quirk(
        kind="dash",
        message=f"'{written}' is read as looked for and absent, expected 0 or a key",
        help=f'if it means few, write under cells in the layout: key: {{"{written}": present}}',
    )


def _unkeyed(written: str) -> tuple[Quirk, ...]:
    if written.lower() in ("x", "p", "present", "✓", "yes"):
        return ()
    quirk = Quirk(
        kind=f"sign {written}",
        message=f"'{written}' has no key in the sheet; it is kept as presence, expected a key that says how many it means",
        help=f'write under cells in the layout: key: {{"{written}": 1-5}}, or present',
    )
    return (quirk,)


# ---- writings with something beside the number


def _counted(written: str, text: str, decimal: str, **more: object) -> Found | None:
    number = number_of(text, decimal)
    if number is None or not float(number).is_integer() or number >= 1e9:
        return None
    if number == 0:
        return Found(count=Count(written=written, amount="looked for and absent"), **more)  # type: ignore[arg-type]
    return Found(count=Count(written=written, amount="counted", number=int(number)), **more)  # type: ignore[arg-type]


def _one(found: Found | None, *quirks: Quirk) -> Reading | None:
    return None if found is None else Reading(found=(found,), quirks=quirks)


def _estimate(
    match: re.Match[str], written: str, decimal: str, slash: str, brackets: str, estimates: str
) -> Reading | None:
    found = _counted(written, match[1], decimal, note=f"estimated: {written}")
    if found is None or found.count is None:
        return None
    if estimates == "present":
        number = found.count.number
        return Reading(
            found=(
                Found(count=Count(written=written, amount="noted as present", at_least=number and 1), note=found.note),
            )
        )
    quirk = Quirk(
        kind="estimate",
        message=f"'{written}' is an estimate, taken as {found.count.number} with a note, expected a count",
        help="write 'estimates: present' under cells in the layout to take no estimate as a count",
    )
    return Reading(found=(found,), quirks=(quirk,))


def _bracketed(
    match: re.Match[str], written: str, decimal: str, slash: str, brackets: str, estimates: str
) -> Reading | None:
    first, inside = match[1], match[2].strip()
    if brackets == "fragment":
        one = _counted(written, first, decimal, completeness="whole")
        other = _counted(written, inside, decimal, completeness="fragment")
        return Reading(found=(one, other)) if one and other else None
    if brackets == "more":
        one, other = _counted(written, first, decimal), _counted(written, inside, decimal)
        return Reading(found=(one, other)) if one and other else None
    kind = _remark(inside)
    found = _counted(written, first, decimal, note=f"written {written}", **kind)
    quirk = Quirk(
        kind="brackets",
        message=f"'{written}' is read as {first}, and what is in brackets is kept in the note, expected a key for it",
        help="write under cells in the layout: brackets: fragment (pieces beside whole ones) or more (of the same)",
    )
    return _one(found, *(() if kind else (quirk,)))


def _only_bracketed(
    match: re.Match[str], written: str, decimal: str, slash: str, brackets: str, estimates: str
) -> Reading | None:
    if brackets == "fragment":
        return _one(_counted(written, match[1], decimal, completeness="fragment"))
    quirk = Quirk(
        kind="brackets",
        message=f"'{written}' is read as {match[1]}, and the brackets are kept in the note, expected a key for them",
        help="write under cells in the layout: brackets: fragment (pieces beside whole ones) or more (of the same)",
    )
    return _one(_counted(written, match[1], decimal, note=f"written {written}"), quirk)


def _doubted(
    match: re.Match[str], written: str, decimal: str, slash: str, brackets: str, estimates: str
) -> Reading | None:
    quirk = Quirk(
        kind="doubt",
        message=f"'{written}' is read as {match[1]} with the identification in doubt (cf.), expected a plain number",
        help="nothing need be done if the identification is in doubt",
    )
    return _one(_counted(written, match[1], decimal, note=f"written {written}", is_doubtful=True), quirk)


def _starred(
    match: re.Match[str], written: str, decimal: str, slash: str, brackets: str, estimates: str
) -> Reading | None:
    quirk = Quirk(
        kind="footnote",
        message=f"'{written}' carries a footnote sign, kept in the note, expected a plain number",
        help="look up the footnote; if it says uncharred or in doubt, say it under 'names' or 'mend' in the layout",
    )
    return _one(_counted(written, match[1], decimal, note=f"marked {match[2]}"), quirk)


def _grams(
    match: re.Match[str], written: str, decimal: str, slash: str, brackets: str, estimates: str
) -> Reading | None:
    number = number_of(match[1], decimal)
    if number is None:
        return None
    return _mass(number * _UNIT_GRAMS[match[2].lower()], f"written {written}")


def _millilitres(
    match: re.Match[str], written: str, decimal: str, slash: str, brackets: str, estimates: str
) -> Reading | None:
    quirk = Quirk(
        kind="volume of remains",
        message=f"'{written}' is a volume of remains, kept in the note and as presence, expected a count or a weight",
        help="nothing need be done; no count is made of it",
    )
    return Reading(
        found=(Found(count=Count(written=written, amount="noted as present"), note=f"volume {written}"),),
        quirks=(quirk,),
    )


def _slashed(
    match: re.Match[str], written: str, decimal: str, slash: str, brackets: str, estimates: str
) -> Reading | None:
    if slash:
        kinds = slash.split("/")
        found = [_counted(written, match[n + 1], decimal, completeness=kinds[n]) for n in (0, 1)]
        return Reading(found=tuple(f for f in found if f is not None and f.count and f.count.number) or (found[0],))  # type: ignore[arg-type]
    quirk = Quirk(
        kind="slash",
        message=f"'{written}' may be whole and fragments, or a part; it is kept as presence, expected a key for it",
        help="write under cells in the layout: slash: whole/fragment",
    )
    return Reading(
        found=(Found(count=Count(written=written, amount="noted as present"), note=f"written {written}"),),
        quirks=(quirk,),
    )


def _pieces(
    match: re.Match[str], written: str, decimal: str, slash: str, brackets: str, estimates: str
) -> Reading | None:
    is_whole = match[2].lower().startswith("w")
    return _one(_counted(written, match[1], decimal, completeness="whole" if is_whole else "fragment"))


def _whole_and_pieces(
    match: re.Match[str], written: str, decimal: str, slash: str, brackets: str, estimates: str
) -> Reading | None:
    one = _counted(written, match[1], decimal)
    is_cf = match[3].lower().startswith("cf")
    other = _counted(written, match[2], decimal, completeness="" if is_cf else "fragment", is_doubtful=is_cf)
    return Reading(found=(one, other)) if one and other else None


def _signed(
    match: re.Match[str], written: str, decimal: str, slash: str, brackets: str, estimates: str
) -> Reading | None:
    """A sign with a remark behind it."""
    sign, remark = match[1], match[2].strip(" ()[],;")
    found = Found(count=Count(written=written, amount="noted as present"), note=remark, **_remark(remark))
    return Reading(found=(found,), quirks=_unkeyed(sign))


_WRITINGS = (
    (rf"(?:c\.|c\s|ca\.?|circa|~|≈|about|approx\.?|est\.?|±)\s*({_NUMBER})", _estimate),
    (rf"({_NUMBER})\s*[(\[]([^)\]]{{1,30}})[)\]]", _bracketed),
    (r"[(\[](\d+)[)\]]", _only_bracketed),
    (rf"({_NUMBER})\s*(?:\?|\(\?\)|cf\.?)", _doubted),
    (rf"(?:cf\.?|\?)\s*({_NUMBER})", _doubted),
    (rf"({_NUMBER})\s*([*†‡§¹²³ª°]+)", _starred),
    (rf"({_NUMBER})\s*(g|gr|gm|gms|grams|mg|kg)\.?", _grams),
    (rf"({_NUMBER})\s*(?:ml|cc|cm3|l)\.?", _millilitres),
    (r"(\d+)\s*/\s*(\d+)", _slashed),
    (rf"({_NUMBER})\s*(w|whole|f|fr|frs|frag|frags|fragment|fragments)\.?", _pieces),
    (rf"({_NUMBER})\s*w?\.?\s*[+&,;]?\s*({_NUMBER})\s*(f|fr|frag|frags|fragment|fragments|cf)\.?", _whole_and_pieces),
    (r"(x{1,5}|\+{1,6}|p|\*{1,5})\s*([(\[,;][^)\]]{1,60}[)\]]?|\s[a-z][a-z .-]{1,60})", _signed),
)  # fmt: skip


def _remark(text: str) -> dict[str, object]:
    """What a remark says of the find; empty where it says nothing that a field holds."""
    lower = text.lower()
    if re.search(r"uncharred|not charred|unburnt|modern|recent|fresh", lower):
        return {"condition": "uncharred"}
    if re.search(r"minerali[sz]ed", lower):
        return {"condition": "mineralised"}
    if re.search(r"waterlogged", lower):
        return {"condition": "waterlogged"}
    if re.fullmatch(r"f|fr|frags?\.?|fragments?", lower):
        return {"completeness": "fragment"}
    if re.fullmatch(r"\??cf\.?|\?", lower):
        return {"is_doubtful": True}
    return {}


def _with_remark(
    written: str, number: float | None, decimal: str, by: tuple[tuple[tuple[str, str], ...], str, str, str]
) -> Reading:
    """A plain amount with words behind it, such as '3 uncharred'."""
    match = re.fullmatch(rf"({_NUMBER}|[<>]\s*\d+)\s*[,;:]?\s+\(?([A-Za-z][^)]*)\)?", written)
    if (
        match
        and len(match[2]) <= 80
        and not re.match(r"(?:jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)\b", match[2], re.I)
    ):
        plain = _counted(written, match[1], decimal, note=match[2].strip(), **_remark(match[2]))
        if plain is not None:
            return Reading(found=(plain,))
    if "%" in written:
        return Reading(
            refusal=Refusal(help="a share is no count; say in the layout that the row or column is 'percent'")
        )
    return Reading(refusal=Refusal(help='say under mend in the layout what is meant, such as mend: {"H4": "3"}'))
