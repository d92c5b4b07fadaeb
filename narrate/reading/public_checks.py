"""What would be seen in public: pictures, and texts that name what is restricted."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace

from narrate.model.images import Image
from narrate.reading.checking import Checking, Pointed


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
            checking.found_in(checking.project_file.at("title"), title[0]),
            "N210",
            f"project: title names '{title[0]}', which is restricted, and a title is always public",
            "take the id out of the title",
        )
    for at, whose, text in _public_texts(checking):
        match = pattern.search(text)
        if match:
            checking.warning(
                checking.found_in(at, match[0]),
                "N210",
                f"{whose} names '{match[0]}', which is restricted; the whole text is left out of public outputs",
                "take the id out of the text if the rest may be public",
            )


def _public_texts(checking: Checking) -> Iterator[tuple[Pointed, str, str]]:
    """Where each text stands, whose it is, and the text."""
    project, hidden, file = checking.project, checking.project.disclosure.restricted_contexts, checking.project_file
    yield file.at("summary"), "project: summary", project.summary
    for key, text in project.report.items():
        yield file.at("report", key), f"project, report: {key}", text
    for phase in project.phases:
        yield file.phase_at(phase.id, "name"), f"phase '{phase.id}': name", phase.name
        yield file.phase_at(phase.id, "basis"), f"phase '{phase.id}': basis", phase.basis
    for context in project.contexts:
        if context.id not in hidden:
            for name in ("description", "note"):
                text = getattr(context, name)
                yield checking.records.at("context", context.id, name), f"context '{context.id}': {name}", text
            yield from _image_texts(checking, "context", context.id, context.images)
    gone = set()
    for sample in project.samples:
        if sample.context in hidden:
            gone.add(sample.id)
            continue
        yield checking.records.at("sample", sample.id, "note"), f"sample '{sample.id}': note", sample.note
        yield from _image_texts(checking, "sample", sample.id, sample.images)
    for row in project.counts:
        if row.note and row.sample not in gone:
            yield (replace(row.place, column=1), 1), f"row of sample '{row.sample}': note", row.note


def _image_texts(
    checking: Checking, what: str, id: str, images: tuple[Image, ...]
) -> Iterator[tuple[Pointed, str, str]]:
    for position, image in enumerate(images):
        for name in ("file", "caption", "credit", "alt"):
            at = checking.records.at(what, id, "images", position, name)
            yield at, f"{what} '{id}': {name} of image '{image.file}'", getattr(image, name)
