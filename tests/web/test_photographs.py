"""What a copied photograph keeps. Pictures are made by hand from the segments that ITU-T T.81 and PNG name."""

from __future__ import annotations

import zlib

from narrate.web.photographs import without_notes


def segment(marker: int, content: bytes) -> bytes:
    return bytes([0xFF, marker]) + (len(content) + 2).to_bytes(2, "big") + content


SCAN = segment(0xDA, b"\x00\x00") + b"\x12\xff\x00\xff\xd0\x34"
END = b"\xff\xd9"


def exif(orientation: int, order: str) -> bytes:
    """Notes of a camera with one entry: how it was held."""
    big = order == "MM"
    number = lambda value, size: value.to_bytes(size, "big" if big else "little")  # noqa: E731
    entry = number(0x0112, 2) + number(3, 2) + number(1, 4) + number(orientation, 2) + b"\0\0"
    return b"Exif\0\0" + order.encode() + number(42, 2) + number(8, 4) + number(1, 2) + entry + b"\0\0\0\0SECRET"


def test_notes_between_scans_are_dropped() -> None:
    """Comments and notes go wherever they stand; tables and every scan stay."""
    table = segment(0xC4, b"table")
    picture = b"\xff\xd8" + table + SCAN + segment(0xFE, b"SECRET") + table + SCAN + END

    assert without_notes(picture) == b"\xff\xd8" + table + SCAN + table + SCAN + END


def test_how_the_camera_was_held_is_kept() -> None:
    """A photograph that lies on its side without the note keeps that one note, in both byte orders."""
    for order in ("II", "MM"):
        bare = without_notes(b"\xff\xd8" + segment(0xE1, exif(6, order)) + SCAN + END)

        assert bare is not None
        assert b"SECRET" not in bare
        assert bare[2:] == segment(0xE1, exif(6, "MM").removesuffix(b"SECRET")) + SCAN + END


def test_a_second_picture_after_the_end_is_dropped() -> None:
    """What phones append after the end of the picture is not copied, nor is the index that names it."""
    colours, index = segment(0xE2, b"ICC_PROFILE\0x"), segment(0xE2, b"MPF\0SECRET")
    picture = b"\xff\xd8" + colours + index + SCAN + END + b"SECRET"

    assert without_notes(picture) == b"\xff\xd8" + colours + SCAN + END


def test_a_png_loses_its_texts() -> None:
    """Text, time and camera notes of a PNG go; the picture stays."""

    def chunk(kind: bytes, content: bytes) -> bytes:
        return len(content).to_bytes(4, "big") + kind + content + zlib.crc32(kind + content).to_bytes(4, "big")

    start, end = b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", b"head"), chunk(b"IEND", b"")
    notes = (
        chunk(b"tEXt", b"SECRET") + chunk(b"eXIf", b"SECRET") + chunk(b"iTXt", b"SECRET") + chunk(b"tIME", b"SECRET")
    )

    assert (
        without_notes(start + notes + chunk(b"IDAT", b"dots") + end + b"SECRET")
        == start + chunk(b"IDAT", b"dots") + end
    )


def test_other_kinds_and_torn_pictures_are_not_shown() -> None:
    """What cannot be followed to its end is not copied, because nobody knows what is in it."""
    assert without_notes(b"GIF89a") is None
    assert without_notes(b"<svg onload='x'></svg>") is None
    assert without_notes(b"\xff\xd8" + SCAN) is None
    assert without_notes(b"\x89PNG\r\n\x1a\n\0\0") is None
