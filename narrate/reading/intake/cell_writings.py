"""Writings with something beside the number: estimates, brackets, doubts, footnotes, weights, pieces, remarks."""

from __future__ import annotations

import re
from dataclasses import replace

from narrate.model.counts import Count
from narrate.reading.count_cells import read_count
from narrate.reading.intake.cell_brackets import read_beside_brackets, state_in_brackets
from narrate.reading.intake.cell_marks import (
    ABOUT,
    AND,
    NUMBER,
    OF_WHICH,
    PIECES,
    WHOLES,
    Found,
    Meanings,
    Quirk,
    Reading,
    number_of,
)
from narrate.reading.intake.cell_masses import UNIT_GRAMS, grams
from narrate.reading.intake.cell_pieces import (
    class_and_pieces,
    estimate_and_pieces,
    pieces,
    pieces_alone,
    whole_and_pieces,
    whole_and_some_pieces,
)
from narrate.reading.intake.cell_signs import counted, keyed, of_footnote, one_find, present, said_beside, unkeyed
from narrate.reading.intake.halves import PARTS, read_half, share_of_one
from narrate.reading.intake.remarks import conditions_in, remark


def read_writing(written: str, by: Meanings) -> Reading | None:
    """What a number or sign with something beside it means; None where no writing of the table fits."""
    for pattern, take in _WRITINGS:
        match = re.fullmatch(pattern, written, re.IGNORECASE)
        found = take(match, written, by) if match else None
        if found is not None:
            return found
    return None


def _estimate(match: re.Match[str], written: str, by: Meanings) -> Reading | None:
    found = counted(written, match[1], by, note=f"estimated: {written}")
    if found is None or found.count is None:
        return None
    number = found.count.number
    if by.estimates == "present":
        count = Count(written=written, amount="noted as present", at_least=number and 1)
        return Reading(found=(Found(count=count, note=found.note),))
    quirk = Quirk(
        kind="estimate",
        message=f"'{written}' is an estimate, taken as {number} with a note, expected a count",
        help="write 'estimates: present' under cells in the layout to take no estimate as a count",
    )
    return Reading(found=(found,), quirks=(quirk,))


_BRACKETS_HELP = "write under cells in the layout: brackets: fragment (pieces beside whole ones) or more (of the same)"


def _bracketed(match: re.Match[str], written: str, by: Meanings) -> Reading | None:
    first, inside = match[1], match[2].strip()
    if state_in_brackets(by):
        return read_beside_brackets(first, inside, written, by)
    pairs = {"fragment": ({"completeness": "whole"}, {"completeness": "fragment"}), "more": ({}, {})}.get(by.brackets)
    if pairs is not None and number_of(inside, by.decimal) is not None:
        one, other = (counted(written, text, by, **more) for text, more in zip((first, inside), pairs, strict=True))
        return Reading(found=(one, other)) if one and other else None
    part = re.fullmatch(r"(\d+)\s+([^\W\d_][^\d]*)", inside)
    if by.brackets == "of which" and part:
        apart = re.fullmatch(r"(.*)\x00(.*)\x00(.*)", f"{first}\x00{part[1]}\x00{part[2]}")
        some = _of_which(apart, written, by) if apart else None
        if some is not None:
            return some
    said, quirks, is_known = said_beside(inside, written, by)
    if part and quirks and conditions_in(part[2]):
        help = (
            f"write 'brackets: of which' under cells in the layout if {part[1]} of the {first.strip()} are meant; else "
            "say under 'mend' how many are, and count the others in a row of their own"
        )
        quirks = tuple(replace(quirk, help=help) for quirk in quirks)
    found = counted(written, first, by, **{**said, "note": f"written {written}" if not is_known else said["note"]})
    quirk = Quirk(
        kind="brackets",
        message=f"'{written}' is read as {first}, and what is in brackets is kept in the note, expected a key for it",
        help=_BRACKETS_HELP,
    )
    return one_find(found, *(quirks if is_known else (quirk,)))


def _of_which(match: re.Match[str], written: str, by: Meanings) -> Reading | None:
    """'12 (of which 2 uncharred)', '12 davon 3 Frag.': ten as the table says, and two in the state that is written."""
    states, pieces = conditions_in(match[3]), remark(match[3]).completeness
    total, some = number_of(match[1].rstrip(" ,.'"), by.decimal), int(match[2])
    if len(states) + bool(pieces) != 1 or total is None or not 0 < some <= total:
        return None
    note = f"written {written}"
    rest = counted(written, f"{total - some:g}", by, note=note) if some < total else None
    other = counted(written, str(some), by, note=note, condition="".join(states), completeness=pieces)
    return Reading(found=tuple(one for one in (rest, other) if one is not None))


def _only_bracketed(match: re.Match[str], written: str, by: Meanings) -> Reading | None:
    if by.brackets == "fragment":
        return one_find(counted(written, match[1], by, completeness="fragment"))
    if state_in_brackets(by):
        return read_beside_brackets("", match[1], written, by)
    if by.brackets == "aside":
        quirk = Quirk(
            kind="brackets",
            message=f"'{written}' is kept as presence: the totals leave out what stands in brackets, expected a key",
            help=_BRACKETS_HELP,
        )
        return one_find(present(written, note=f"written {written}"), quirk)
    quirk = Quirk(
        kind="brackets",
        message=f"'{written}' is read as {match[1]}, and the brackets are kept in the note, expected a key for them",
        help=_BRACKETS_HELP,
    )
    return one_find(counted(written, match[1], by, note=f"written {written}"), quirk)


def _sign_and_brackets(match: re.Match[str], written: str, by: Meanings) -> Reading | None:
    """'x (3)' and '+ (+)' where the sheet says what stands in brackets."""
    return read_beside_brackets(match[1] or "", match[2], written, by) if state_in_brackets(by) else None


def _doubted(match: re.Match[str], written: str, by: Meanings) -> Reading | None:
    quirk = Quirk(
        kind="doubt",
        message=f"'{written}' is read as {match[1].strip()} with the identification in doubt (cf.), expected a plain "
        "number",
        help="nothing need be done if the identification is in doubt",
    )
    return one_find(counted(written, match[1], by, note=f"written {written}", is_doubtful=True), quirk)


def _starred(match: re.Match[str], written: str, by: Meanings) -> Reading | None:
    said, quirks, is_known = said_beside(match[2], written, by)
    quirk = of_footnote(match[2], written, "a plain number")
    said["note"] = said["note"] if is_known else f"marked {match[2]}"
    return one_find(counted(written, match[1], by, **said), *(quirks if is_known else (quirk,)))


def _grams(match: re.Match[str], written: str, by: Meanings) -> Reading | None:
    number = number_of(match[1], by.decimal)
    return None if number is None else grams(number * UNIT_GRAMS[match[2].lower()], f"written {written}")


def _count_and_grams(match: re.Match[str], written: str, by: Meanings) -> Reading | None:
    """Both in one cell: '12 (0.03g)', '12/0.03 g'."""
    one, number = counted(written, match[1], by), number_of(match[2], by.decimal)
    if one is None or number is None:
        return None
    return Reading(found=(one, *grams(number * UNIT_GRAMS[match[3].lower()], f"written {written}").found))


def _too_light(match: re.Match[str], written: str, by: Meanings) -> Reading | None:
    quirk = Quirk(
        kind="unweighed",
        message=f"the weight is '{written}', kept in the note and as presence, expected a number",
        help="nothing need be done if it was too light to weigh",
    )
    return one_find(present(written, note=f"weight written {written}"), quirk)


def _millilitres(match: re.Match[str], written: str, by: Meanings) -> Reading | None:
    quirk = Quirk(
        kind="volume of remains",
        message=f"'{written}' is a volume of remains, kept in the note and as presence, expected a count or a weight",
        help="nothing need be done; no count is made of it",
    )
    return one_find(present(written, note=f"volume {written}"), quirk)


def _slashed(match: re.Match[str], written: str, by: Meanings) -> Reading | None:
    if by.halves and not by.slash and (match[1], match[2]) == ("1", "2"):
        return read_half(written, 0, by.halves)  # a sheet with '6 1/2' counts halves
    if by.slash:
        kinds = by.slash.split("/")
        both = [counted(written, match[n + 1] or "0", by, completeness=kinds[n]) for n in (0, 1)]
        found = tuple(f for f in both if f is not None)
        return Reading(found=tuple(f for f in found if f.count and f.count.number) or found[:1])
    quirk = Quirk(
        kind="slash",
        message=f"'{written}' may be whole and fragments, or a part; it is kept as presence, expected a key for it",
        help="write under cells in the layout: slash: whole/fragment",
    )
    return one_find(present(written, note=f"written {written}"), quirk)


def _part_of_one(match: re.Match[str], written: str, by: Meanings) -> Reading | None:
    """'½', '1½' and '1 1/2' are no whole number of items."""
    return read_half(written, int(match["whole"] or 0), by.halves if share_of_one(match["part"]) == 0.5 else "")


def _signed(match: re.Match[str], written: str, by: Meanings) -> Reading | None:
    """A sign with a remark behind it."""
    sign, text = match[1], match[2].strip(" ()[],;")
    said, quirks, is_known = said_beside(text, written, by)
    if not is_known and (not re.search(r"\w", text) or re.fullmatch(r"[a-z]{1,4}", text)):
        quirks = (of_footnote(text, written, "a plain sign"),)
    count = keyed(sign, written, by)
    if count is not None:
        return Reading(found=(Found(count=count, **said),), quirks=quirks)
    return Reading(found=(present(written, **said),), quirks=(*unkeyed(sign), *quirks))


def _doubted_sign(match: re.Match[str], written: str, by: Meanings) -> Reading | None:
    """'x?', '++ ?', '>100?'."""
    count = keyed(match[1], written, by) or read_count(match[1])
    if not isinstance(count, Count) or count.amount != "noted as present":
        return None
    kept = Count(
        written=written, amount="noted as present", at_least=count.at_least, at_most=count.at_most, scale=count.scale
    )
    quirk = Quirk(
        kind="doubt",
        message=f"'{written}' is read as {match[1]} with the identification in doubt (cf.), expected a plain sign",
        help="nothing need be done if the identification is in doubt",
    )
    more = () if keyed(match[1], written, by) or re.search(r"\d", match[1]) else unkeyed(match[1])
    return Reading(found=(Found(count=kept, is_doubtful=True),), quirks=(*more, quirk))


def _remarked(match: re.Match[str], written: str, by: Meanings) -> Reading | None:
    """A plain amount with words behind it, such as '3 uncharred'."""
    if re.match(r"(?:jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)\b", match[2], re.IGNORECASE):
        return None
    text = match[2].strip()
    said, quirks, is_known = said_beside(text, written, by)
    if not is_known and (re.search(r"\d", text) or re.match(r"(?:to|or|of|s|x|plus)\b", text, re.IGNORECASE)):
        return None  # '5 to 10', '1 whole 6 broken', '100s': more than one number, or not this one
    quirk = Quirk(
        kind=f"remark {text}",
        message=f"'{written}' carries the remark '{text}', kept in the note, expected a plain number",
        help="nothing need be done if the remark changes neither the number nor the condition; else say under cells in "
        f'the layout what it means: footnotes: {{"{text}": uncharred}}',
    )
    return one_find(counted(written, match[1], by, **said), *(quirks if is_known or text in _PLAIN else (quirk,)))


_PLAIN = ("seeds", "seed", "grains", "grain", "items", "pieces")


_G = r"(g|gr|gm|gms|grams|mg|kg)\.?"
_WRITINGS = (
    (
        r"[(\[]?(frags?|fragments?|fragm|fgts?|frgm?|fragmentos?|frammenti|fragmente|bruchstücke?|fragmenten)\.?[)\]]?",
        pieces_alone,
    ),
    (rf"(?:{ABOUT})\s*({NUMBER})", _estimate),
    (rf"({NUMBER})\s*[(\[]?\s*(?:{ABOUT})\s*[)\]]?", _estimate),
    (rf"({NUMBER})\s*(?:[(\[/;]|,(?=\s)|\s)\s*({NUMBER})\s*{_G}\s*[)\]]?", _count_and_grams),
    (rf"(?:[<>]|{ABOUT})\s*{NUMBER}\s*{_G}", _too_light),
    (
        rf"({NUMBER})\s*[,;(\[]?\s*{OF_WHICH}\s+(\d+)\s+(?:are |were )?([^\W\d_][^\d()\[\]]*)[)\]]?",
        _of_which,
    ),
    (rf"({NUMBER})\s*[,;(\[]\s*(\d+)\s+of (?:them|these|which)\s+(?:are |were )?([a-z -]+)[)\]]?", _of_which),
    (rf"(\d+)\s*[(\[]\s*\+\s*(\d+)\s*({PIECES})\s*[)\]]", whole_and_pieces),
    (rf"({NUMBER})\s*[(\[]([^)\]]{{1,30}})[)\]]", _bracketed),
    (r"(?:[-–—]\s*)?[(\[](\d+)[)\]]", _only_bracketed),
    (r"(x{1,5}|\+{1,6})?\s*[(\[](x{1,5}|\+{1,6}|\d+)[)\]]", _sign_and_brackets),
    (rf"({NUMBER})\s*(?:\?|\(\?\)|cf\.?)", _doubted),
    (rf"(?:cf\.?|\?)\s*({NUMBER})", _doubted),
    (rf"({NUMBER})\s*([*†‡§¹²³ª°]+)", _starred),
    (rf"({NUMBER})\s*{_G}", _grams),
    (rf"({NUMBER})\s*(?:ml|cc|cm3|l)\.?", _millilitres),
    (r"(\d*)\s*/\s*(\d*)", _slashed),
    (rf"(\d+)\s*(?:{WHOLES})?\s*{AND}?\s*(?<!\d\s)(?<!\d)(\d+)\s*({PIECES})", whole_and_pieces),
    (rf"(\d+)\s*(?:{WHOLES})?\s*{AND}\s*({PIECES})", whole_and_some_pieces),
    (rf"({NUMBER})ish", _estimate),
    (PARTS, _part_of_one),
    (rf"(?:\+\s?)?({NUMBER})\s*({PIECES})", pieces),
    (rf"({NUMBER})\s*({WHOLES})", pieces),
    (rf"({NUMBER})\s*w?\.?\s*[+&,;]?\s*({NUMBER})\s*(f|fr|frag|frags|fragment|fragments|cf)\.?", whole_and_pieces),
    (rf"([<>≤≥]=?\s*\d{{1,9}})\s*(?:{AND}\s*(\d+)\s*{PIECES}|[(\[](\d+)[)\]])", class_and_pieces),
    (rf"(?:{ABOUT})\s*({NUMBER}?)\s*(?:{AND}\s*(\d+)\s*{PIECES}|[(\[](\d+)[)\]])", estimate_and_pieces),
    (r"(x{1,5}|\+{1,6}|p|[<>≤≥]\s*\d{1,9}|\d{1,9}\+)\s*\(?\?\)?", _doubted_sign),
    (r"(?:cf\.?|\?)\s*(x{1,5}|\+{1,6}|[<>≤≥]\s*\d{1,9}|\d{1,9}\+)", _doubted_sign),
    (r"(x{1,5}|\+{1,6}|\*{1,5})\s*cf\.?", _doubted_sign),
    (rf"(x{{1,5}}|\+{{1,6}}|\*{{1,5}})(fg|{PIECES})", _signed),
    (r"(x{1,5}|\+{1,6})((?![ivxlc]+$)[a-z]{1,4})", _signed),
    (r"(x{1,5}|\+{1,6}|p|\*{1,5})\s*([*†‡§¹²³]+|[(\[,;][^)\]]{1,60}[)\]]?|\s[a-z][a-z .-]{1,60})", _signed),
    (rf"({NUMBER})\s*[,;:]?\s+\(?([A-Za-z][^)]{{0,79}})\)?", _remarked),
    (rf"({NUMBER})([a-z]{{1,4}})", _remarked),
)  # fmt: skip
