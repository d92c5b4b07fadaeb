"""The command line. Each command imports what it needs when it runs, so that `--help` is instant."""

from __future__ import annotations

import json
import os
import sys
from collections.abc import Iterable, Mapping
from pathlib import Path
from typing import TYPE_CHECKING

import click

from narrate import __version__

if TYPE_CHECKING:
    from narrate.problems import Problem

DONE, PROBLEMS, FAULT = 0, 1, 3
NOT_ALL = "Not all was written: mend this and tell again. Every file there is whole, of this run or of the one before."

_FOLDER = click.Path(path_type=Path, file_okay=True, dir_okay=True)


@click.group(context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(__version__, prog_name="narrate")
@click.pass_context
def commands(context: click.Context) -> None:
    """From counts of charred plant remains to narratives that can be followed back to them."""
    if os.environ.get("NO_COLOR"):
        context.color = False


@commands.command()
@click.argument("folder", type=_FOLDER)
def begin(folder: Path) -> None:
    """Lay out a new project in FOLDER, with commented records and a small count sheet."""
    from narrate.pipeline.begin import begin as lay_out

    written, problems = lay_out(folder)
    _tell_problems(problems)
    if problems:
        sys.exit(PROBLEMS)
    for path in written:
        click.echo(path)
    click.echo(f"Edit these, then: narrate tell {folder}")


@commands.command()
@click.argument("sheet", type=click.Path(path_type=Path, exists=True, dir_okay=False))
@click.option("--project", type=_FOLDER, help="Also put the sheet into this project and draft the records it carries.")
@click.option(
    "--codes",
    type=click.Path(path_type=Path, exists=True, dir_okay=False),
    metavar="FILE",
    help="A list of what the codes of the sheet mean: a column of codes, one of names, perhaps one of parts.",
)
def intake(sheet: Path, project: Path | None, codes: Path | None) -> None:
    """Work out how a laboratory's own SHEET (CSV, TSV, text, XLSX) is laid out, and write SHEET.layout.yaml beside it."""
    from narrate.pipeline.intake import intake as take_in
    from narrate.problems import has_errors

    found = take_in(sheet, project, codes=codes)
    _tell_problems(found.problems)
    click.echo(found.text)
    click.echo(_summed(found.problems))
    for path in found.written:
        click.echo(f"written: {path}")
    if found.taken.is_given:
        click.echo("The layout beside the sheet was obeyed and is as it was.")
    sys.exit(PROBLEMS if found.taken.layout is None or has_errors(found.problems) else DONE)


@commands.command()
@click.argument("folder", type=_FOLDER)
@click.option("--json", "as_json", is_flag=True, help="Problems as JSON on standard output.")
@click.option("--strict", is_flag=True, help="Count warnings as errors.")
@click.option("--code", "code", metavar="CODE", help="Print the manual's paragraph on a problem code and stop.")
@click.option("--track-record", is_flag=True, help="Try the rules on simulated digs: how often were they right?")
def check(folder: Path, as_json: bool, strict: bool, code: str | None, track_record: bool) -> None:
    """Read everything in FOLDER and report every problem, each with its place and how to mend it."""
    from narrate.pipeline.check import checked
    from narrate.problems import CODES, as_plain_data, has_errors

    if code is not None:
        if code.upper() not in CODES:
            raise click.UsageError(f"'{code}' is not a problem code; known are {', '.join(CODES)}")
        click.echo(f"{code.upper()}: {CODES[code.upper()]}")
        return
    if track_record:
        _try_rules(folder, as_json=as_json)
        return
    found = checked(folder, strict=strict)
    problems = found.problems
    if as_json:
        click.echo(json.dumps({"problems": [as_plain_data(p) for p in problems]}, ensure_ascii=False, indent=1))
    else:
        _tell_problems(problems)
        if found.words:
            click.echo(found.words)
        click.echo(_summed(problems))
    sys.exit(PROBLEMS if has_errors(problems) else DONE)


@commands.command()
@click.argument("folder", type=_FOLDER)
@click.option("--strict", is_flag=True, help="Count warnings as errors.")
@click.option("--approved-only", is_flag=True, help="Build the public site from approved sentences alone.")
def tell(folder: Path, strict: bool, approved_only: bool) -> None:
    """The main job: read, measure, judge, draft, and build the sites in FOLDER/out."""
    from narrate.pipeline.told import in_short
    from narrate.pipeline.unchanged import as_told_before, options_of

    chosen = frozenset({"public"} if approved_only else ())
    told = as_told_before(folder, options_of(strict, chosen), __version__)
    if told is None:
        from narrate.pipeline.tell import tell as run

        told = run(folder, version=__version__, strict=strict, approved_only=chosen, progress=_progress)
    _tell_problems(told.problems)
    if not told.is_written:
        click.echo(_summed(told.problems))
        click.echo(NOT_ALL if told.is_partly else "Nothing was written.")
        sys.exit(PROBLEMS)
    click.echo(in_short(told, folder))


@commands.command()
@click.argument("folder", type=click.Path(path_type=Path, exists=True, file_okay=False))
@click.option("--port", default=8017, show_default=True, type=click.IntRange(0, 65535), help="0 takes any free port.")
def preview(folder: Path, port: int) -> None:
    """Show both sites of FOLDER on this machine, and build them again as files change. Ctrl-C ends it."""
    from narrate.pipeline.preview import run

    try:
        run(folder, version=__version__, port=port, say=click.echo)
    except OSError as error:
        raise click.UsageError(f"port {port} cannot be used ({error.strerror}); name another with --port") from error


@commands.command()
@click.argument("folder", type=_FOLDER)
@click.option("--json", "as_json", is_flag=True, help="The ranking as JSON on standard output.")
def rank(folder: Path, as_json: bool) -> None:
    """Show how strong a story each sample and context of FOLDER tells, and what would make the others stronger."""
    from narrate.pipeline.rank import rank as run

    found = run(folder, progress=_progress)
    if not found.text:
        _tell_problems(found.problems)
        click.echo(_summed(found.problems))
        sys.exit(PROBLEMS)
    click.echo(json.dumps(found.plain, ensure_ascii=False, indent=1) if as_json else found.text)


@commands.command()
@click.argument("folder", type=_FOLDER)
@click.option("--json", "as_json", is_flag=True, help="The tables as JSON on standard output; nothing is written.")
def measure(folder: Path, as_json: bool) -> None:
    """Write every measure of every subject, and every comparison, as CSV tables to FOLDER/out/measures."""
    from narrate.pipeline.measure import measure as work_out
    from narrate.pipeline.measure import write_tables

    measured = work_out(folder, progress=_progress)
    _tell_problems(measured.problems)
    if not measured.is_whole:
        click.echo(_summed(measured.problems), err=as_json)
        sys.exit(PROBLEMS)
    if as_json:
        click.echo(json.dumps(_tables_as_plain_data(measured.tables), ensure_ascii=False, indent=1))
        return
    for path in write_tables(folder, measured.tables):
        click.echo(path)


@commands.command()
@click.argument("folder", type=_FOLDER)
@click.argument("claim")
@click.option("--json", "as_json", is_flag=True, help="The evidence as JSON on standard output.")
def explain(folder: Path, claim: str, as_json: bool) -> None:
    """
    Show the evidence behind one CLAIM of FOLDER, down to the rows of the count sheets.

    CLAIM is what a sentence of the site names: a claim (C12/fuel.maize-cob), a measurement (C12/measure.density), a
    find (C12/found.zea-mays.kernel) or the records of a subject (C12/record).
    """
    from narrate.pipeline.explain import explain as look_up

    found = look_up(folder, claim)
    if found.text == "":
        _tell_problems(found.problems)
        click.echo(found.refusal or _summed(found.problems), err=bool(found.refusal))
        sys.exit(PROBLEMS)
    click.echo(json.dumps(found.plain, ensure_ascii=False, indent=1) if as_json else found.text)


@commands.command()
@click.argument("folder", type=_FOLDER)
@click.option(
    "--to", "medium", type=click.Choice(["word", "pdf", "html", "markdown"]), default="markdown", show_default=True
)
@click.option("--template", type=click.Path(path_type=Path, exists=True, dir_okay=False), help="Word: take its styles.")
@click.option("--approved-only", is_flag=True, help="Take approved sentences alone.")
@click.option("--open", "is_open", is_flag=True, help="Make a copy from what may be disclosed alone: section-open.")
def report(folder: Path, medium: str, template: Path | None, approved_only: bool, is_open: bool) -> None:
    """Write the interpretive section of the report to FOLDER/out/report, as a draft for a specialist's signature."""
    from narrate.pipeline.report import report as write

    if template is not None and medium != "word":
        raise click.UsageError("--template lends its styles to a Word document; add --to word")
    path, problems = write(
        folder,
        version=__version__,
        medium=medium,
        template=template,
        approved_only=approved_only,
        is_open=is_open,
        progress=_progress,
    )
    _tell_problems(problems)
    if path is None:
        click.echo(_summed(problems))
        sys.exit(PROBLEMS)
    click.echo(path)


@commands.command()
@click.argument("folder", type=_FOLDER)
@click.option("--bag", is_flag=True, help="Also lay each edition out as a BagIt bag.")
def deposit(folder: Path, bag: bool) -> None:
    """Write a data package for an archive to FOLDER/out/deposit, in an open and a restricted edition."""
    from narrate.pipeline.deposit import deposit as write

    paths, problems = write(folder, version=__version__, bag=bag, progress=_progress)
    _tell_problems(problems)
    if not paths:
        click.echo(_summed(problems))
        sys.exit(PROBLEMS)
    for path in paths:
        click.echo(path)


@commands.command()
@click.argument("old")
@click.argument("new", required=False)
@click.option("--page", type=click.Path(path_type=Path, dir_okay=False), help="Also write it as a page to this file.")
@click.option("--json", "as_json", is_flag=True, help="The changes as JSON on standard output.")
def compare(old: str, new: str | None, page: Path | None, as_json: bool) -> None:
    """
    Show what changed in data, claims and words from OLD to NEW.

    Each is a project folder, or FOLDER@REVISION for a revision of it in git: my-dig@v1, my-dig@HEAD~3. Without NEW, the
    folder of OLD as it stands. For the team alone: nothing restricted is taken out.
    """
    from narrate.pipeline.changes_text import changes_plain, changes_text
    from narrate.pipeline.compare import compare as run
    from narrate.pipeline.compare import write_page
    from narrate.pipeline.revisions import NotFound, folder_of

    try:
        changes = run(old, new or folder_of(old), progress=_progress)
    except NotFound as fault:
        raise click.UsageError(str(fault)) from None
    click.echo(json.dumps(changes_plain(changes), ensure_ascii=False, indent=1) if as_json else changes_text(changes))
    if page is not None:
        write_page(changes, page, version=__version__)
        click.echo(page, err=as_json)
    sys.exit(PROBLEMS if changes.old.errors or changes.new.errors else DONE)


def main() -> None:
    """The entry point: a fault of narrate is said in one line and ends with status 3."""
    try:
        commands.main(standalone_mode=True)
    except Exception as fault:
        if os.environ.get("NARRATE_DEBUG"):
            raise
        click.echo(f"narrate: a fault of the program, not of your project: {type(fault).__name__}: {fault}", err=True)
        click.echo("Set NARRATE_DEBUG=1 and run it again to see where.", err=True)
        sys.exit(FAULT)


def _try_rules(folder: Path, *, as_json: bool) -> None:
    from narrate.pipeline.track_record import tried

    found = tried(folder, progress=_progress)
    if not found.text:
        _tell_problems(found.problems)
        click.echo(found.refusal or _summed(found.problems), err=bool(found.refusal))
        sys.exit(PROBLEMS)
    click.echo(json.dumps(found.plain, ensure_ascii=False, indent=1) if as_json else found.text)


def _tables_as_plain_data(tables: Mapping[str, str]) -> dict[str, list[dict[str, str]]]:
    """Tables by name without '.csv', each a list of rows by column; an empty cell is an empty text."""
    import csv
    import io

    return {name.removesuffix(".csv"): list(csv.DictReader(io.StringIO(text))) for name, text in tables.items()}


def _progress(step: str) -> None:
    if sys.stderr.isatty():
        click.echo(click.style(f"… {step}", dim=True), err=True)


def _tell_problems(problems: Iterable[Problem]) -> None:
    from narrate.problems import written

    colours = {"error": "red", "warning": "yellow"}
    for problem in problems:
        text = written(problem)
        first, _, rest = text.partition("\n")
        click.echo(click.style(first, fg=colours[problem.severity]) + ("\n" + rest if rest else ""), err=True)


def _many(number: int, what: str) -> str:
    from narrate.pipeline.told import many

    return many(number, what)


def _summed(problems: Iterable[Problem]) -> str:
    from narrate.pipeline.told import summed

    return summed(problems)
