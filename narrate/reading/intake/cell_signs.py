"""What single signs and numbers of a cell mean, by the key of the sheet, its footnotes and its remarks."""

from __future__ import annotations

from typing import Any

from narrate.model.counts import Count
from narrate.reading.count_cells import read_count
from narrate.reading.intake.cell_marks import Found, Meanings, Quirk, Reading, number_of
from narrate.reading.intake.remarks import remark


def keyed(sign: str, written: str, by: Meanings) -> Count | None:
    """What a sign means by the key of the sheet or of the analyst; None where the key does not hold it."""
    key = dict(by.key)
    meaning = key.get(sign) or key.get(sign.lower())
    if meaning is None:
        return None
    lower = meaning.strip().lower()
    if lower in ("absent", "not looked for"):
        return Count(written=written, amount="looked for and absent" if lower == "absent" else "not looked for")
    classed = read_count(meaning.strip())
    if isinstance(classed, Count) and classed.amount == "counted":
        return Count(written=written, amount="counted", number=classed.number)
    if isinstance(classed, Count) and classed.amount == "noted as present":
        return Count(
            written=written,
            amount="noted as present",
            at_least=classed.at_least,
            at_most=classed.at_most,
            scale="key of the sheet",
        )
    return Count(written=written, amount="noted as present")


def unkeyed(written: str) -> tuple[Quirk, ...]:
    """What is told of a sign without a key; nothing of signs that say presence and no more."""
    if written.lower() in ("x", "p", "present", "✓", "yes"):
        return ()
    quirk = Quirk(
        kind=f"sign {written}",
        message=f"'{written}' has no key in the sheet; it is kept as presence, expected a key that says how many it "
        "means",
        help=f'write under cells in the layout: key: {{"{written}": 1-5}}, or present',
    )
    return (quirk,)


def counted(written: str, text: str, by: Meanings, **more: Any) -> Found | None:
    number = number_of(text, by.decimal)
    if number is None or not float(number).is_integer() or number >= 1e9:
        return None
    if number == 0:
        return Found(count=Count(written=written, amount="looked for and absent"), **more)
    return Found(count=Count(written=written, amount="counted", number=int(number)), **more)


def present(written: str, **more: Any) -> Found:
    return Found(count=Count(written=written, amount="noted as present"), **more)


def one_find(found: Found | None, *quirks: Quirk) -> Reading | None:
    return None if found is None else Reading(found=(found,), quirks=quirks)


def said_beside(text: str, written: str, by: Meanings) -> tuple[dict[str, Any], tuple[Quirk, ...], bool]:
    """What a remark or footnote sign says of a find, what is told of it, and whether anybody knows what it means."""
    meaning = dict(by.footnotes).get(text) or dict(by.footnotes).get(text.strip(" ()[]"))
    read = remark(meaning or text)
    fields: dict[str, Any] = {
        "condition": read.condition, "completeness": read.completeness, "is_doubtful": read.is_doubtful,
    }  # fmt: skip
    quirks: tuple[Quirk, ...] = ()
    if read.of_some:
        quirks = (
            Quirk(
                kind="of some",
                message=f"'{written}' says '{read.of_some}' of some of the items, and of how many of them nobody can "
                "tell; all are kept in one state, expected one state for each number",
                help="say under 'mend' in the layout how many are meant, and count the others in a row of their own",
            ),
        )
    if meaning and read.says_nothing:
        quirks = (
            Quirk(
                kind=f"footnote {text}",
                message=f"'{written}' carries the footnote '{text}', which says '{meaning}'; it is kept in the note, "
                "expected a plain number",
                help="nothing need be done if it changes neither the number nor the condition; else say under 'mend' "
                "in the layout what is meant",
            ),
        )
    fields["note"] = f"{text}: {meaning}" if meaning else text
    return fields, quirks, meaning is not None or not read.says_nothing


def of_footnote(sign: str, written: str, expected: str) -> Quirk:
    return Quirk(
        kind="footnote",
        message=f"'{written}' carries a footnote sign, kept in the note, expected {expected}",
        help="look the footnote up, and say under cells in the layout what it says: "
        f'footnotes: {{"{sign}": uncharred}}',
    )
