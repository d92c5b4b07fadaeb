"""The dig in visitors' words, for figures: plants, parts, places and readings as the public pages name them."""

from __future__ import annotations

from dataclasses import replace

from narrate.model.edition import Edition
from narrate.model.fields import Associations
from narrate.model.figures import Chart
from narrate.model.order import Ordination
from narrate.model.packs import Packs
from narrate.model.plants import Part, Taxon
from narrate.model.project import Project
from narrate.model.studies import Studies
from narrate.web.wording import is_unnamed


def in_plain_words(edition: Edition) -> Edition:
    """The edition with every name that figures read put plainly; counts, ids and what was recorded stay."""
    packs = edition.packs
    plain = replace(
        packs,
        taxa={id: replace(taxon, trade_name=_name(taxon)) for id, taxon in packs.taxa.items()},
        statements={
            id: replace(one, title=_capitalised(one.plain_noun) or one.title) for id, one in packs.statements.items()
        },
        words=replace(packs.words, parts={id: _plain_part(part) for id, part in packs.words.parts.items()}),
    )
    return replace(
        edition,
        packs=plain,
        project=_plain_project(edition.project, packs),
        studies=_plain_studies(edition.studies, packs),
    )


def led_by_common_names(chart: Chart, packs: Packs) -> Chart:
    """The chart with plants in its table as visitors know them, the scientific name in brackets."""
    if chart.columns[0] != "Taxon":
        return chart
    rows = tuple((_both_names(row[0], packs), *row[1:]) for row in chart.rows)
    return replace(chart, columns=("Plant", *chart.columns[1:]), rows=rows)


def _both_names(written: str, packs: Packs) -> str:
    doubt, _, name = written.rpartition("cf. ")
    taxon = packs.taxa.get(name)  # type: ignore[call-overload]
    if taxon is not None and is_unnamed(taxon):
        return "unidentified"
    is_the_same = taxon is None or not taxon.name or taxon.name.lower() == name.lower()
    return written if is_the_same else f"{'probably ' if doubt or written != name else ''}{taxon.name} ({name})"  # type: ignore[union-attr]


def _name(taxon: Taxon) -> str:
    return "unidentified" if is_unnamed(taxon) else taxon.name or taxon.trade_name


def _plain_part(part: Part) -> Part:
    """'pieces of nutshell' reads 'nutshell' beside a bar, as specialists' words do."""
    plural = part.plain_plural or part.plural
    return replace(part, plural=plural.removeprefix("pieces of "))


def _plain_project(project: Project, packs: Packs) -> Project:
    kinds = packs.words.context_kinds
    return replace(
        project,
        contexts=tuple(
            replace(context, kind=kinds[context.kind].plain or context.kind) if context.kind in kinds else context
            for context in project.contexts
        ),
    )


def _plain_studies(studies: Studies, packs: Packs) -> Studies:
    associations, ordination = studies.associations, studies.ordination
    return replace(
        studies,
        associations=None if associations is None else _plain_pairs(associations, packs),
        ordination=None if ordination is None else _plain_points(ordination, packs),
    )


def _plain_pairs(found: Associations, packs: Packs) -> Associations:
    return replace(
        found,
        rows=tuple(
            replace(
                row,
                weed=_plant(row.weed, packs),
                crop=_plant(row.crop, packs),
                crop_part=_part(row.crop_part, packs),
            )
            for row in found.rows
        ),
    )


def _plain_points(found: Ordination, packs: Packs) -> Ordination:
    if found.columns is None:
        return found
    names = tuple(_plant_part(name, packs) for name in found.columns.names)
    return replace(found, columns=replace(found.columns, names=names))


def _plant_part(named: str, packs: Packs) -> str:
    from narrate.charts.names import of_plant

    plant, _, part = named.rpartition(", ")
    return of_plant(_plant(plant, packs), _part(part, packs))


def _plant(name: str, packs: Packs) -> str:
    taxon = packs.taxa.get(name)  # type: ignore[call-overload]
    return name if taxon is None else _name(taxon) or name


def _part(id: str, packs: Packs) -> str:
    part = packs.words.parts.get(id)  # type: ignore[call-overload]
    return id if part is None else _plain_part(part).plural


def _capitalised(text: str) -> str:
    return text[:1].upper() + text[1:]
