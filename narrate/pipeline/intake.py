"""`narrate intake`: a laboratory's own sheet, taken in as it is."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from narrate.files import write
from narrate.pipeline.rubbish import seldom_looked_for
from narrate.problems import Place, Problem
from narrate.reading.intake.take_in import TakenIn


@dataclass(frozen=True, slots=True, kw_only=True)
class Intake:
    """What intake understood of a sheet, and the files that it wrote."""

    taken: TakenIn
    written: tuple[Path, ...] = ()
    text: str = ""
    """Pictures of the tables, what was read, what was left out and why, what is still to be done."""
    problems: tuple[Problem, ...] = ()


def intake(sheet: Path, project: Path | None = None, *, codes: Path | None = None) -> Intake:
    """
    Takes a laboratory's own sheet in: writes its layout beside it and, with a project, drafts what records it carries.

    codes:  a list in a file of its own of what the codes of the sheet mean.

    The sheet itself is never changed; with a project it is copied to counts/ if it does not lie there, and so is the
    layout beside it.
    """
    from narrate.reading.intake.names_remembered import remembered
    from narrate.reading.intake.project_intake import draft_into, in_counts, intake_packs, volume_problems
    from narrate.reading.intake.summary import summary
    from narrate.reading.intake.take_in import take_in
    from narrate.reading.layout_beside import layout_path

    packs = intake_packs(project)
    at = sheet if project is None else in_counts(sheet, project)
    if at.exists() and at != sheet and (not at.is_file() or at.read_bytes() != sheet.read_bytes()):
        return _refused(sheet)
    beside = layout_path(sheet) if at != sheet and layout_path(at) is None else None
    source = at if at.is_file() and beside is None else sheet
    with seldom_looked_for():
        taken = take_in(source, packs, codes=codes)
    if taken.layout is None:
        return Intake(taken=taken, text=summary(taken), problems=taken.problems)
    others = other_layouts(sheet, at)
    written = _laid_down(sheet, at, taken, beside)
    if project is None:
        problems = tuple(sorted({*taken.problems, *volume_problems(packs, taken), *others}, key=Problem.in_order))
        return Intake(taken=taken, written=tuple(written), text=summary(taken), problems=problems)
    drafted = draft_into(project, packs, taken)
    names = remembered(project, taken.layout, packs) if taken.is_given else None
    files = {**drafted.files, **({names.path: names.text} if names is not None and names.text else {})}
    for path, text in files.items():
        write(path, text)
        written.append(path)
    return Intake(
        taken=taken,
        written=tuple(written),
        text=summary(taken, (*drafted.notes, *(names.notes if names is not None else ()))),
        problems=tuple(sorted({*taken.problems, *drafted.problems, *others}, key=Problem.in_order)),
    )


def _laid_down(sheet: Path, at: Path, taken: TakenIn, beside: Path | None) -> list[Path]:
    """Writes the copy of the sheet, if there is none, and its layout: worked out, or as it lay beside the sheet."""
    from narrate.reading.layout_beside import new_layout_path

    written: list[Path] = []
    if at != sheet and not at.is_file():
        write(at, sheet.read_bytes())
        written.append(at)
    if not taken.is_given or beside is not None:
        write(new_layout_path(at), taken.text if beside is None else beside.read_bytes())
        written.append(new_layout_path(at))
    return written


def other_layouts(sheet: Path, at: Path) -> tuple[Problem, ...]:
    """Layouts that lie beside a sheet or its copy in the project, and differ from the one that is obeyed."""
    from narrate.reading.layout_beside import layout_paths

    paths = [*layout_paths(at), *(layout_paths(sheet) if at != sheet else ())]
    first = _bytes_of(paths[0]) if paths else None
    return tuple(
        Problem(
            place=Place(path=str(other)),
            severity="warning",
            code="N311",
            message=f"this layout differs from '{paths[0]}', which is obeyed; this one is not read, expected one "
            "layout",
            help="put what holds into the one that is obeyed, and take the other away or make it the same",
        )
        for other in paths[1:] if _bytes_of(other) != first
    )  # fmt: skip


def _bytes_of(path: Path) -> bytes | None:
    """What a file holds; None where it cannot be opened, which is told where it is read."""
    try:
        return path.read_bytes()
    except OSError:
        return None


def _refused(sheet: Path) -> Intake:
    """Another sheet of the same name lies in the project: it is neither read instead nor written over."""
    problem = Problem(
        place=Place(path=f"counts/{sheet.name}"),
        severity="error",
        code="N108",
        message=f"the project holds another sheet of this name, and '{sheet}' differs from it; nothing was read or "
        "written, expected the same sheet or none",
        help="if they are two sheets, give the one taken in a name of its own; if one mends the other, put it in the "
        "place of the old copy yourself and look whether the layout beside it still fits",
    )
    taken = TakenIn(problems=(problem,))
    return Intake(taken=taken, text="Nothing was read; see the problems.", problems=taken.problems)
