"""What the pages of themes show: the year, phases side by side, fields, and words of the trade."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from narrate.model.edition import Edition
from narrate.model.fields import FieldShare
from narrate.model.findings import SubjectFindings
from narrate.model.ids import Subject
from narrate.model.measurement import Measurement
from narrate.model.plant_groups import PlantChange
from narrate.model.seasons import FoundWindow
from narrate.telling.changes_listed import compared
from narrate.web.evidence import Opener
from narrate.web.filters import keeping, whole_months
from narrate.web.wording import Wording, is_unnamed
from narrate.web.writing import writing_of

SORTS = {
    "field_weed": "how surely a weed of fields",
    "sow": "sown in",
    "soil": "soil it likes",
    "height": "height",
    "life": "life",
    "seed": "seed, as sieves part it",
}
"""What is known of wild plants, in the words of the page of fields."""
STRIP = 20
"""Specks of a strip: each is a twentieth of the items."""
_GROUPS = (
    ("crop", "●", "crops"),
    ("waste", "■", "chaff and cob"),
    ("nut", "▲", "nutshell"),
    ("wild", "○", "wild plants"),
    ("unnamed", "×", "what is unnamed or unlisted"),
)


@dataclass(frozen=True, slots=True, kw_only=True)
class StripView:
    """What a context held, as a strip of specks: shapes tell the groups apart, and words say the same."""

    groups: tuple[tuple[str, str], ...]
    """Class of a group and its specks."""
    says: str


@dataclass(frozen=True, slots=True, kw_only=True)
class YearRow:
    """One plant part in the year of the dig."""

    name: str
    target: str
    part: str
    items: int
    months: tuple[str, ...]
    """For each month: 'all' (every source), 'some' (sources disagree) or ''."""
    keeping: str
    binds: bool
    latin: str = ""
    """The scientific name, where the common one is that of two plants."""

    @property
    def told(self) -> str:
        """The months in words, for pages too narrow for twelve columns: those of every source, then the disputed."""
        sure = [number for number, month in enumerate(self.months, start=1) if month == "all"]
        some = [number for number, month in enumerate(self.months, start=1) if month == "some"]
        disputed = f"by some sources {whole_months(some)}" if some else ""
        return "; ".join(part for part in (whole_months(sure) if sure else "", disputed) if part)


@dataclass(frozen=True, slots=True, kw_only=True)
class SideBySide:
    """One measure over the phases."""

    title: str
    measure: str
    values: tuple[Measurement, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class TestedTable:
    """Plants, or woods, that were tested between the first phase and the last."""

    what: str
    early: str
    late: str
    rows: tuple[PlantChange, ...]


def tested(edition: Edition) -> tuple[TestedTable, ...]:
    """Of plants and of woods; none where no two phases hold samples."""
    found = compared(edition.project, edition.findings)
    both = (("Plants", found.plants), ("Woods", found.woods)) if found is not None else ()
    return tuple(
        TestedTable(what=what, early=found.first.name, late=found.last.name, rows=rows)
        for what, rows in both
        if found is not None and rows
    )


def strip(found: SubjectFindings, edition: Edition) -> StripView | None:
    """
    Shares of crops, chaff and cob, nutshell and wild plants among the items; wood is left out.

    What nobody could name, and what is in no list of plants, may be wild or not, and stands apart. None without items.
    """
    sums = dict.fromkeys((name for name, _, _ in _GROUPS), 0)
    ancient = edition.packs.words.preservations.get(edition.project.preservation, ())
    for tally in found.tallies:
        group = _group(tally.taxon, tally.part, edition)
        if group and (not ancient or tally.condition in ancient):
            sums[group] += tally.counted
    total = sum(sums.values())
    if total == 0:
        return None
    shares = largest_remainders([sums[name] for name, _, _ in _GROUPS], STRIP)
    whole = writing_of(edition).whole
    said = [f"{whole(sums[name])} of {words}" for name, _, words in _GROUPS if sums[name]]
    return StripView(
        groups=tuple((name, sign * n) for (name, sign, _), n in zip(_GROUPS, shares, strict=True) if n),
        says=f"{whole(total)} items other than wood: {', '.join(said)}",
    )


def _group(taxon: str | None, part: str, edition: Edition) -> str:
    known = edition.packs.words.parts.get(part)  # type: ignore[call-overload]
    roles = known.roles if known is not None else frozenset()
    if "wood" in roles:
        return ""
    if "nutshell" in roles:
        return "nut"
    if roles & {"chaff", "cob", "straw"}:
        return "waste"
    plant = edition.packs.taxa.get(taxon) if taxon is not None else None  # type: ignore[call-overload]
    if plant is None or "indeterminate" in plant.tags or is_unnamed(plant):
        return "unnamed"
    return "crop" if plant.status == "crop" else "wild"


def largest_remainders(amounts: list[int], places: int) -> list[int]:
    """
    Places shared out by the amounts, so that they add up.

    >>> largest_remainders([50, 30, 21], 20), largest_remainders([0, 1, 0], 20)
    ([10, 6, 4], [0, 20, 0])
    """
    total = sum(amounts)
    whole = [amount * places // total for amount in amounts]
    rest = sorted(range(len(amounts)), key=lambda i: (-(amounts[i] * places % total), i))
    for index in rest[: places - sum(whole)]:
        whole[index] += 1
    return whole


def year(opener: Opener) -> tuple[YearRow, ...]:
    """Every plant part with known months: what does not keep first, then by the first month."""
    found = opener.edition.studies.seasons
    if found is None:
        return ()
    rows = _told_apart([_year_row(opener, window) for window in found.windows], found.windows)
    return tuple(sorted(rows, key=lambda r: (not r.binds, _first(r), r.name.lower(), r.part)))


def _told_apart(rows: Sequence[YearRow], windows: Sequence[FoundWindow]) -> list[YearRow]:
    """The rows, with the scientific name behind a common one that two plants share: tobacco of two counts is of two."""
    taxa: dict[str, set[str]] = {}
    for row, window in zip(rows, windows, strict=True):
        taxa.setdefault(row.name, set()).add(window.taxon)
    return [
        replace(row, latin=window.taxon) if len(taxa[row.name]) > 1 else row
        for row, window in zip(rows, windows, strict=True)
    ]


def _first(row: YearRow) -> int:
    """The month in which it begins, after the gap where it runs over the new year."""
    ripe = [bool(month) for month in row.months]
    return next((m for m in range(12) if ripe[m] and not ripe[m - 1]), 0)


def _year_row(opener: Opener, window: FoundWindow) -> YearRow:
    taxon = opener.edition.packs.taxa.get(window.taxon)  # type: ignore[call-overload]
    return YearRow(
        name=opener.wording.taxon_name(taxon) or window.taxon,
        target=opener.links.to("taxon", window.taxon),
        part=opener.wording.part(window.part),
        items=window.items,
        months=tuple(
            "all" if month in window.every_source else "some" if month in window.any_source else ""
            for month in range(1, 13)
        ),
        keeping=keeping(window.keeping),
        binds=window.binds,
    )


def side_by_side(edition: Edition) -> tuple[SideBySide, ...]:
    """Every shown measure over the phases, in the order of the project; those without any value are left out."""
    found = [edition.findings.of(Subject(level="phase", id=phase.id)) for phase in edition.project.phases]
    rows = []
    wording = Wording(edition)
    for shown in edition.packs.shown:
        missing = Measurement(measure=shown.measure, value=None, reason="not measured")
        values = tuple(wording.measurement(one.measurements.get(shown.name, missing)) for one in found)
        if any(value.value is not None for value in values):
            rows.append(SideBySide(title=wording.measure(shown), measure=shown.measure, values=values))
    return tuple(rows)


def field_shares(edition: Edition) -> tuple[FieldShare, ...]:
    """Sorts of wild seeds over the whole dig that were found."""
    shares = edition.studies.field_shares
    return tuple(share for share in shares if share.subject.level == "site" and share.of)
