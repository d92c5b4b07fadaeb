"""What would be seen in public: pictures, and texts that name what is restricted."""

from __future__ import annotations

import re
from collections.abc import Iterator

from narrate.model.images import Image
from narrate.problems import Place
from narrate.reading.checking import Checking


def pictures_are_there(checking: Checking) -> None:
    for whose, image in _images(checking):
        _check_picture(checking, whose, image)


def _images(checking: Checking) -> Iterator[tuple[str, Image]]:
    for what, records in (("context", checking.records.contexts), ("sample", checking.records.samples)):
        for record in records.values():  # type: ignore[attr-defined]
            for image in record.images:
                yield f"{what} '{record.id}', image '{image.file}'", image


def _check_picture(checking: Checking, whose: str, image: Image) -> None:
    root = checking.root.resolve()
    try:
        path = (root / image.file).resolve()
        is_inside, is_there = path.is_relative_to(root), path.is_file()
    except (OSError, ValueError, RuntimeError):
        is_inside, is_there = True, False
    if not is_inside:
        checking.error(
            image.place,
            "N106",
            f"{whose} lies outside the project folder, expected a file inside it",
            "copy the picture into images/",
            image.file,
        )
    elif not is_there:
        checking.warning(
            image.place,
            "N209",
            f"{whose} is not there, expected a picture",
            "paths begin at the project folder and have forward slashes, such as images/c12.jpg",
            image.file,
        )
    lacking = [name for name in ("caption", "credit", "alt") if not getattr(image, name)]
    if lacking:
        checking.warning(
            image.place,
            "N209",
            f"{whose} has no {' and no '.join(lacking)}, expected caption, credit and alt",
            "alt says in words what is to be seen, for those who cannot see it",
            image.file,
        )


def public_text_names_nothing_restricted(checking: Checking) -> None:
    """The title cannot be left out, so there it is an error; other texts are left out, so that a warning will do."""
    hidden = checking.project.disclosure.restricted_contexts
    gone = [sample.id for sample in checking.records.samples.values() if sample.context in hidden]
    if not hidden:
        return
    words = "|".join(re.escape(id) for id in sorted((*hidden, *gone), key=len, reverse=True))
    pattern = re.compile(rf"(?<!\w)(?:{words})(?!\w)", re.IGNORECASE)
    title = pattern.search(checking.project.title)
    if title:
        checking.error(
            checking.project.place,
            "N210",
            f"project: title names '{title[0]}', which is restricted, and a title is always public",
            "take the id out of the title",
        )
    for place, whose, text in _public_texts(checking):
        match = pattern.search(text)
        if match:
            checking.warning(
                place,
                "N210",
                f"{whose} names '{match[0]}', which is restricted; the whole text is left out of public outputs",
                "take the id out of the text if the rest may be public",
            )


def _public_texts(checking: Checking) -> Iterator[tuple[Place, str, str]]:
    project, hidden = checking.project, checking.project.disclosure.restricted_contexts
    yield project.place, "project: summary", project.summary
    for key, text in project.report.items():
        yield project.place, f"project, report: {key}", text
    for phase in project.phases:
        yield phase.place, f"phase '{phase.id}': name", phase.name
        yield phase.place, f"phase '{phase.id}': basis", phase.basis
    for context in project.contexts:
        if context.id not in hidden:
            yield context.place, f"context '{context.id}': description", context.description
            yield context.place, f"context '{context.id}': note", context.note
            for image in context.images:
                yield (
                    image.place,
                    f"context '{context.id}': image",
                    f"{image.file} {image.caption} {image.credit} {image.alt}",
                )
    gone = set()
    for sample in project.samples:
        if sample.context in hidden:
            gone.add(sample.id)
            continue
        yield sample.place, f"sample '{sample.id}': note", sample.note
        for image in sample.images:
            yield (
                image.place,
                f"sample '{sample.id}': image",
                f"{image.file} {image.caption} {image.credit} {image.alt}",
            )
    for row in project.counts:
        if row.note and row.sample not in gone:
            yield row.place, f"row of sample '{row.sample}': note", row.note
