"""Photographs of records: copied into the site, for the public without what the camera wrote into them."""

from __future__ import annotations

import hashlib
from collections.abc import Iterable
from dataclasses import dataclass, field
from pathlib import Path
from typing import Literal

from narrate.model.images import Image

_JPEG_START, _JPEG_END, _JPEG_SCAN = b"\xff\xd8", 0xD9, 0xDA
_EXIF = b"Exif\0\0"
_ORIENTATION = 0x0112
_PNG_START = b"\x89PNG\r\n\x1a\n"
_PNG_KEPT = (
    *(b"IHDR", b"PLTE", b"IDAT", b"IEND", b"tRNS"),
    *(b"gAMA", b"cHRM", b"sRGB", b"sBIT", b"bKGD", b"pHYs", b"cICP"),
)
"""What a picture needs; every other piece may hold words, a place or a smaller picture."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PhotoView:
    path: str
    """Within the site; empty where there is no picture to show."""
    caption: str
    credit: str
    alt: str


@dataclass(slots=True)
class Photographs:
    """Photographs asked for so far, by the path under which the site holds them."""

    folder: Path | None
    is_public: bool
    found: dict[str, bytes] = field(default_factory=dict)

    def of(self, images: Iterable[Image]) -> tuple[PhotoView, ...]:
        return tuple(
            PhotoView(path=self._path(image), caption=image.caption, credit=image.credit, alt=image.alt)
            for image in images
        )

    def _path(self, image: Image) -> str:
        content = self._content(image)
        if content is None:
            return ""
        ending = "png" if content.startswith(_PNG_START) else "jpg"
        path = f"images/{hashlib.sha256(content).hexdigest()[:16]}.{ending}"
        self.found[path] = content
        return path

    def _content(self, image: Image) -> bytes | None:
        if self.folder is None:
            return None
        path = (self.folder / image.file).resolve()
        if not path.is_relative_to(self.folder.resolve()) or not path.is_file():
            return None
        content = path.read_bytes()
        bare = without_notes(content)
        return bare if self.is_public else (content if bare is not None else None)


def without_notes(content: bytes) -> bytes | None:
    """
    A JPEG or PNG picture without the notes of the camera, which may hold the place, the time and a name.

    None for other kinds, and for a picture that cannot be followed to its end. How the camera was held is kept, for
    without it the picture would lie on its side.
    """
    if content.startswith(_JPEG_START):
        return _jpeg(content)
    if content.startswith(_PNG_START):
        return _png(content)
    return None


def _jpeg(content: bytes) -> bytes | None:
    kept, at = bytearray(_JPEG_START), 2
    while at + 2 <= len(content):
        marker = content[at + 1]
        if content[at] != 0xFF:
            return None
        if marker == _JPEG_END:
            # What follows the end is no part of the picture: phones put a second one there, with its own notes.
            return bytes(kept + content[at : at + 2])
        length = int.from_bytes(content[at + 2 : at + 4], "big")
        segment = content[at : at + 2 + length]
        kept += _kept_segment(marker, segment)
        at += len(segment)
        if marker == _JPEG_SCAN:
            end = _end_of_scan(content, at)
            kept += content[at:end]
            at = end
    return None


def _kept_segment(marker: int, segment: bytes) -> bytes:
    """The segment if decoders need it; of the camera's notes only how it was held."""
    if marker == 0xE1:
        turned = _orientation(segment[4:])
        return _orientation_segment(turned) if turned is not None else b""
    if marker == 0xE2:
        return segment if segment[4:].startswith(b"ICC_PROFILE") else b""
    if marker == 0xE0:
        return _without_thumbnail(segment)
    is_note = 0xE1 <= marker <= 0xEF or marker == 0xFE
    return segment if not is_note or marker == 0xEE else b""


def _without_thumbnail(segment: bytes) -> bytes:
    """The head of the file without the small picture that may be in it, which need not show what the large one does."""
    if not segment[4:].startswith(b"JFIF\0") or len(segment) < 18:
        return b""
    return b"\xff\xe0\0\x10" + segment[4:16] + b"\0\0"


def _end_of_scan(content: bytes, at: int) -> int:
    """Where the coded picture stops: at a marker that is neither padding nor a restart."""
    while at + 1 < len(content):
        following = content[at + 1]
        if content[at] == 0xFF and following not in (0x00, 0xFF) and not 0xD0 <= following <= 0xD7:
            return at
        at = content.find(b"\xff", at + 1)
        if at == -1:
            break
    return len(content)


def _orientation(notes: bytes) -> int | None:
    """How the camera was held, 1 to 8, as its notes say."""
    tiff = notes[len(_EXIF) :]
    if not notes.startswith(_EXIF) or tiff[:2] not in (b"II", b"MM"):
        return None
    order: Literal["little", "big"] = "little" if tiff[:2] == b"II" else "big"
    start = int.from_bytes(tiff[4:8], order)
    for entry in range(int.from_bytes(tiff[start : start + 2], order)):
        at = start + 2 + 12 * entry
        if int.from_bytes(tiff[at : at + 2], order) == _ORIENTATION:
            value = int.from_bytes(tiff[at + 8 : at + 10], order)
            return value if 1 <= value <= 8 else None
    return None


def _orientation_segment(value: int) -> bytes:
    entry = _ORIENTATION.to_bytes(2, "big") + b"\0\x03" + b"\0\0\0\x01" + value.to_bytes(2, "big") + b"\0\0"
    notes = _EXIF + b"MM\0*" + (8).to_bytes(4, "big") + b"\0\x01" + entry + b"\0\0\0\0"
    return b"\xff\xe1" + (len(notes) + 2).to_bytes(2, "big") + notes


def _png(content: bytes) -> bytes | None:
    kept, at = bytearray(_PNG_START), 8
    while at + 12 <= len(content):
        length = int.from_bytes(content[at : at + 4], "big")
        kind = content[at + 4 : at + 8]
        if kind in _PNG_KEPT:
            kept += content[at : at + 12 + length]
        at += 12 + length
        if kind == b"IEND":
            return bytes(kept)
    return None
