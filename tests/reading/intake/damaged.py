"""Two hundred damaged sheets and workbooks, each made from a sound one at a place that a seed chooses."""

from __future__ import annotations

import io
import random
import re
import zipfile
from collections.abc import Iterator

from tests.reading.intake.sheets import LAYOUTS, a_dig, as_csv, as_xlsx

OLE = b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1"


def damaged() -> Iterator[tuple[str, str, bytes]]:
    """(name, ending, content), the same ones each time."""
    chance = random.Random(20)
    book, text = as_xlsx(LAYOUTS["columns_with_records_above"](a_dig(1))), as_csv(LAYOUTS["rows_plain"](a_dig(1)))
    for n in range(50):
        yield f"workbook cut {n}", ".xlsx", book[: chance.randint(1, len(book) - 1)]
    for n in range(50):
        at = chance.randint(4, len(book) - 1)
        yield f"workbook with flipped bytes {n}", ".xlsx", _flipped(book, at, chance.randint(1, 60), chance)
    for n in range(30):
        yield f"part cut {n}", ".xlsx", _part_changed(book, chance, lambda xml: xml[: max(1, len(xml) // 2)])
    for n in range(10):
        yield f"part emptied {n}", ".xlsx", _part_changed(book, chance, lambda xml: b"")
    for n in range(10):
        yield f"part missing {n}", ".xlsx", _part_changed(book, chance, None)
    for n in range(19):
        at = chance.randint(1, len(text) - 1)
        yield f"text with zeros {n}", ".csv", text[:at] + b"\x00" * 5 + text[at:]
    for n in range(10):
        at = chance.randint(1, len(text) // 2)
        yield f"text with an open quote {n}", ".csv", text[:at] + b'\n"open' + text[at:] * 3
    yield from special(book, text)


def special(book: bytes, text: bytes) -> Iterator[tuple[str, str, bytes]]:
    """The single cases."""
    yield "empty file", ".xlsx", b""
    yield "empty text", ".csv", b"\xef\xbb\xbf\r\n"
    yield "password", ".xlsx", OLE + b"\x00" * 600 + "EncryptedPackage".encode("utf-16-le") + b"\x00" * 400
    yield "old workbook", ".xls", OLE + b"\x00" * 2000
    yield "old workbook named xlsx", ".xlsx", OLE + b"\x00" * 2000
    yield "picture", ".csv", b"\x89PNG\r\n\x1a\n" + b"\x00" * 100
    yield "pdf", ".xlsx", b"%PDF-1.7 and so on"
    yield "web page", ".xls", b"<html><table><tr><td>1</td></tr></table></html>"
    yield "open document", ".ods", _archive({"content.xml": b"<a/>", "mimetype": b"x"})
    yield "archive", ".xlsx", _archive({"a.txt": b"hello"})
    yield "macros", ".xlsm", _archive({**_parts(book), "xl/vbaProject.bin": OLE + b"\x00" * 200})
    yield "zip bomb", ".xlsx", _part_replaced(book, "xl/worksheets/sheet1.xml", b" " * 300_000_000)
    yield "entities", ".xlsx", _part_replaced(book, "xl/worksheets/sheet1.xml", _ENTITIES)
    yield "million empty rows", ".xlsx", _part_replaced(book, "xl/worksheets/sheet1.xml", _rows(1_000_000, ""))
    yield (
        "million rows of empty cells",
        ".xlsx",
        _part_replaced(
            book,
            "xl/worksheets/sheet1.xml",
            _rows(1_000_000, '<c r="A{n}" s="0"/><c r="B{n}" s="0"/><c r="C{n}" s="0"/>'),
        ),
    )
    yield (
        "ten thousand columns",
        ".csv",
        (",".join(f"S{n}" for n in range(10_000)) + "\n" + ",".join("1" * 10_000)).encode(),
    )
    yield (
        "far cell",
        ".xlsx",
        _part_replaced(book, "xl/worksheets/sheet1.xml", _sheet('<row r="1"><c r="XFD1"><v>1</v></c></row>')),
    )
    yield (
        "far cells",
        ".xlsx",
        _part_replaced(book, "xl/worksheets/sheet1.xml", _rows(2_000, '<c r="XFD{n}"><v>1</v></c>')),
    )
    yield "only formulas", ".xlsx", _formulas()
    yield "no table", ".csv", b"Dear all,\nthe counts are in the other file.\nBest wishes\n"
    yield "one cell", ".csv", b"Zea mays\n"


_ENTITIES = b"""<?xml version="1.0"?><!DOCTYPE x [<!ENTITY a "aaaaaaaaaa"><!ENTITY b "&a;&a;&a;&a;&a;&a;&a;&a;&a;&a;">]>
<worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><sheetData><row><c t="inlineStr"><is><t>&b;</t></is></c></row>
</sheetData></worksheet>"""


def _sheet(rows: str) -> bytes:
    head = '<worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><dimension ref="A1:XFD1048576"/><sheetData>'
    return (head + rows + "</sheetData></worksheet>").encode()


def _rows(number: int, cells: str) -> bytes:
    return _sheet("".join(f'<row r="{n}">{cells.replace("{n}", str(n))}</row>' for n in range(1, number + 1)))


def _archive(parts: dict[str, bytes]) -> bytes:
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED) as archive:
        for name, content in parts.items():
            archive.writestr(name, content)
    return out.getvalue()


def _parts(book: bytes) -> dict[str, bytes]:
    with zipfile.ZipFile(io.BytesIO(book)) as archive:
        return {part.filename: archive.read(part) for part in archive.infolist()}


def _part_replaced(book: bytes, name: str, content: bytes) -> bytes:
    return _archive({**_parts(book), name: content})


def _part_changed(book: bytes, chance: random.Random, change: object) -> bytes:
    parts = _parts(book)
    needed = [n for n in parts if re.search(r"workbook\.xml|sheet1\.xml$|sharedStrings|styles|\[Content", n)]
    name = chance.choice(needed)
    if change is None:
        del parts[name]
    else:
        parts[name] = change(parts[name])  # type: ignore[operator]
    return _archive(parts)


def _flipped(content: bytes, at: int, number: int, chance: random.Random) -> bytes:
    found = bytearray(content)
    for n in range(at, min(at + number, len(found))):
        found[n] ^= chance.randint(1, 255)
    return bytes(found)


def _formulas() -> bytes:
    """A workbook by a script: formulas without a saved value, and texts that begin like formulas."""
    import openpyxl

    book = openpyxl.Workbook()
    sheet = book.active
    sheet.append(["Taxon", "S1", "S2"])
    sheet.append(["Zea mays kernel", "=1+1", '=HYPERLINK("x","2")'])
    sheet.append(["Carya sp. nutshell", "=cmd|' /C calc'!A0", "=B2*2"])
    out = io.BytesIO()
    book.save(out)
    return out.getvalue()
