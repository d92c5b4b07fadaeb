"""Photographs of the records as figures: upright, at the size of print, without what the camera wrote into them."""

from __future__ import annotations

import io
from collections.abc import Iterator, Mapping

from narrate.documents.blocks import Figure, Unfit
from narrate.documents.inline import anchor_of, literal
from narrate.model.images import Image
from narrate.model.project import Project
from narrate.model.stratigraphy import Context

WIDTH_MM = 75
HEIGHT_MM = 55
"""At most: in media without floating figures the room above one stays white when it goes over to the next page."""


def images_of(context: Context, project: Project) -> Iterator[tuple[str, Image]]:
    """Photographs of a context and then of its samples, each with the id of the record that lists it."""
    yield from ((context.id, image) for image in context.images)
    for sample in project.samples_of(context.id):
        yield from ((sample.id, image) for image in sample.images)


def photographs(context: Context, project: Project, files: Mapping[str, bytes]) -> Iterator[Figure]:
    """
    One figure a photograph: caption, record and credit below it, and its alternative text.

    files:  path of the record -> bytes; a photograph that is not among them is left out.
    """
    for number, (id, image) in enumerate(images_of(context, project), start=1):
        if image.file not in files:
            continue
        credit = f" ({literal(image.credit.strip().rstrip('.'))})" if image.credit.strip() else ""
        picture, width_mm = for_print(files[image.file], image.file)
        yield Figure(
            caption=f"{literal(id)}: {literal(_one_line(image.caption).rstrip('.')) or 'without a caption'}{credit}.",
            alt=_one_line(image.alt),
            photograph=picture,
            anchor=anchor_of(f"photograph-{context.id}", number),
            width_mm=width_mm,
        )


def for_print(raw: bytes, name: str) -> tuple[bytes, int]:
    """
    The picture as PNG or JPEG, turned as the camera was held, with nothing but the picture in it; and its width in mm.

    Raises Unfit where no picture can be read from it.
    """
    from PIL import Image as Picture
    from PIL import ImageOps, UnidentifiedImageError

    try:
        with Picture.open(io.BytesIO(raw)) as opened:
            kind = "JPEG" if opened.format == "JPEG" else "PNG"
            upright = ImageOps.exif_transpose(opened)
            picture = upright.convert("RGB" if kind == "JPEG" or upright.mode not in ("RGBA", "LA", "P") else "RGBA")
    except (UnidentifiedImageError, OSError, ValueError, SyntaxError) as fault:
        raise Unfit(f"the photograph {name} cannot be read as a picture") from fault
    width_mm = min(WIDTH_MM, max(1, int(HEIGHT_MM * picture.width / picture.height)))
    picture.thumbnail((_pixels(width_mm), _pixels(HEIGHT_MM)))
    bare = Picture.new(picture.mode, picture.size)
    bare.paste(picture)
    out = io.BytesIO()
    bare.save(out, kind, dpi=(300, 300), **({"quality": 88} if kind == "JPEG" else {}))
    return out.getvalue(), width_mm


def _pixels(mm: int) -> int:
    """300 dpi in print."""
    return round(mm / 25.4 * 300)


def _one_line(text: str) -> str:
    return " ".join(text.split())
