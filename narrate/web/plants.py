"""Plants as the pages show them: what packs know of each, and where it was found."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from functools import cached_property

from narrate.model.edition import Edition
from narrate.model.findings import Tally
from narrate.model.ids import SITE, PartId, SourceKey, Subject, TaxonId
from narrate.model.plants import Taxon, Use, Window
from narrate.telling.names import Names
from narrate.web.evidence import Opener
from narrate.web.filters import upper_first, whole_months


@dataclass(frozen=True, slots=True, kw_only=True)
class WhereView:
    """A plant in one context or phase."""

    subject: str
    target: str
    kind: str
    parts: tuple[tuple[str, Tally], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class KnowledgeView:
    """One thing that packs know of some parts of a plant, and how well."""

    parts: tuple[str, ...]
    says: str
    note: str
    sources: tuple[str, ...]
    known: str


@dataclass(frozen=True, slots=True, kw_only=True)
class LookAlike:
    """A plant that is easily taken for another."""

    id: str
    name: str
    harm: str
    """'poisonous', 'poisonous in part', or empty."""


TAKEN_IN = frozenset(("food", "greens", "drink", "oil", "flavouring", "medicine"))
"""Uses that somebody might try."""

SACRED = frozenset(("ritual",))
"""Uses in rites, which are for the people whose rites they are to tell of."""

LOOKED_UP = frozenset(("read", "convention"))
"""How well something is known that more than a memory vouches for."""

EATEN_ITSELF = {"nutmeat": "nutmeat", "fruit flesh": "fruit flesh", "fruit": "fruit flesh"}
"""Of a nut or fruit the part that was eaten, by the part that stands for it in a pack."""

COMES_ALONG = frozenset(
    ("nutshell", "acorn shell", "acorn cap", "fruit", "fruit stone", "seed", "achene", "nutlet", "peduncle")
)
"""Parts that are found where a nut or fruit was eaten, and are not eaten for that."""


def eaten_alone(uses: Iterable[Use]) -> Iterator[Use]:
    """
    The uses, of nuts and fruits as food the part that was eaten alone.

    Packs name the shells, stones and seeds that come along as well, since these are what is found. A note that speaks
    of seeds keeps them.
    """
    uses = tuple(uses)
    for use in uses:
        same = {one.part for one in uses if replace(one, part=None) == replace(use, part=None)}
        chief = next((part for part in EATEN_ITSELF if part in same), None) if use.use in TAKEN_IN else None
        if chief is None or "seed" in use.note:
            yield use
        elif use.part == chief:
            yield replace(use, part=PartId(EATEN_ITSELF[chief]))
        elif use.part not in COMES_ALONG:
            yield use


def _can_poison(taxon: Taxon) -> bool:
    """Whether the plant itself, or a part of a wild one, can poison."""
    return "toxic" in taxon.tags or (taxon.status != "crop" and any("poison" in text for text in taxon.cautions))


def _harm(taxon: Taxon) -> str:
    return ("poisonous" if "toxic" in taxon.tags else "poisonous in part") if _can_poison(taxon) else ""


class TaxonView:
    """A taxon that packs know and that was found."""

    def __init__(self, opener: Opener, taxon: Taxon, tallies: tuple[Tally, ...]) -> None:
        self._opener = opener
        self._edition: Edition = opener.edition
        self.id = taxon.id
        self.taxon = taxon
        self.tallies = tallies
        self.name = opener.wording.taxon_name(taxon)
        both = (upper_first(self.name), taxon.id) if opener.wording.is_public else (taxon.id, self.name)
        self.title = f"{both[0]} ({both[1]})" if self.name else taxon.id
        self.target = opener.links.to("taxon", taxon.id)

    @property
    def parts(self) -> tuple[tuple[str, Tally], ...]:
        return tuple((self._opener.wording.part(tally.part), tally) for tally in self.tallies)

    @cached_property
    def where(self) -> tuple[WhereView, ...]:
        """In the contexts that hold it, in the order of the project."""
        return self._where("context", tuple(c.id for c in self._edition.project.contexts))

    @cached_property
    def when(self) -> tuple[WhereView, ...]:
        """In the phases, the earliest first."""
        return self._where("phase", tuple(p.id for p in self._edition.project.phases))

    @property
    def is_poisonous(self) -> bool:
        """Whether the packs call the plant itself toxic."""
        return "toxic" in self.taxon.tags

    @property
    def uses(self) -> tuple[KnowledgeView, ...]:
        """
        What people did with it; parts of which the same is known stand together. To the public what was looked up.

        To the public no note on a use of a poisonous plant is shown: half a recipe is worse than none. Nor is a use
        that the pack is unsure of, one of a plant that can poison which nobody has looked up, or one in rites: a pack
        cannot say that those whom it concerns were asked.
        """
        return self._used(is_remembered=False)

    @property
    def uses_remembered(self) -> tuple[KnowledgeView, ...]:
        """Of what the public is shown, the uses that somebody remembers and nobody has looked up."""
        return self._used(is_remembered=True) if self._opener.wording.is_public else ()

    def _used(self, *, is_remembered: bool) -> tuple[KnowledgeView, ...]:
        shown = self.taxon.uses
        if self._opener.wording.is_public:
            on_record = (u for u in shown if self._is_on_record(u))
            shown = tuple(u for u in on_record if u.known.startswith("memory") == is_remembered)
        return self._known((u.part, u.use, self._noted(u.note), u.sources, u.known) for u in eaten_alone(shown))

    @property
    def look_alikes(self) -> tuple[LookAlike, ...]:
        """Plants that are easily taken for it; for the public by their common names, the poisonous ones marked."""
        known = ((id, self._edition.packs.taxa.get(TaxonId(id))) for id in self.taxon.look_alikes)
        wording = self._opener.wording
        return tuple(
            LookAlike(
                id=id,
                name=wording.taxon_name(taxon) if wording.is_public else "",
                harm=_harm(taxon) if taxon is not None else "",
            )
            for id, taxon in known
        )

    @property
    def of_people(self) -> tuple[str, ...]:
        """
        What the plant means to Native people, and that it lives on, in the words of the audience's texts.

        That people grow it today is not told of a plant that can poison.
        """
        packs = self._edition.packs
        audience = packs.audiences.get(self._edition.audience)
        if audience is None or self.taxon.rank not in ("species", "genus"):
            return ()
        plant = Names(audience=audience, packs=packs).food(self.id)
        kinds = ("standing",) if _can_poison(self.taxon) else ("standing", "living")
        tags = sorted(self.taxon.tags)
        names = (f"{kind} {region} {tag}" for kind in kinds for region in packs.regions for tag in tags)
        said = [audience.words[name].split(" | ")[0].strip() for name in names if name in audience.words]
        return tuple(f"{upper_first(text.replace('{plant}', plant))}." for text in said)

    @property
    def windows(self) -> tuple[Window, ...]:
        """When parts can be gathered; of a poisonous plant the public reads that of no part that was not found."""
        if not (self.is_poisonous and self._opener.wording.is_public):
            return self.taxon.windows
        found = {tally.part for tally in self.tallies}
        return tuple(window for window in self.taxon.windows if window.part in found)

    @property
    def seasons(self) -> tuple[KnowledgeView, ...]:
        """When parts can be gathered, in words."""
        windows = self.windows
        return self._known((w.part, whole_months(w.months), self._noted(w.note), w.sources, w.known) for w in windows)

    @property
    def relatives(self) -> tuple[tuple[str, str], ...]:
        """Other names found that may be the same plant: id and page."""
        found = found_taxa(self._edition)
        wider = {self.taxon.genus, self.taxon.family}
        same = (id for id in found if id != self.id and (id in wider or self._edition.packs.taxa[id].genus == self.id))  # type: ignore[index]
        return tuple((id, self._opener.links.to("taxon", id)) for id in same)

    def _noted(self, note: str) -> str:
        return "" if _can_poison(self.taxon) and self._opener.wording.is_public else note

    def _is_on_record(self, use: Use) -> bool:
        is_unsure = use.known == "memory-L" or (use.known == "judgement" and use.use in TAKEN_IN)
        is_risky = _can_poison(self.taxon) and use.known not in LOOKED_UP
        is_taken = self.is_poisonous and use.use in TAKEN_IN
        return not (is_unsure or is_risky or is_taken or use.use in SACRED)

    def _where(self, level: str, ids: tuple[str, ...]) -> tuple[WhereView, ...]:
        views: list[WhereView] = []
        for id in ids:
            subject = Subject(level=level, id=id)  # type: ignore[arg-type]
            own = tuple(tally for tally in self._edition.findings.of(subject).tallies if tally.taxon == self.id)
            if own:
                views.append(self._where_view(subject, own))
        return tuple(views)

    def _where_view(self, subject: Subject, tallies: tuple[Tally, ...]) -> WhereView:
        project, wording = self._edition.project, self._opener.wording
        kind = wording.kind(project.context(subject.id)) if subject.level == "context" else "phase"  # type: ignore[arg-type]
        parts = tuple((wording.part(tally.part), tally) for tally in tallies)
        target = self._opener.target(subject)
        return WhereView(subject=wording.subject(subject), target=target, kind=kind, parts=parts)

    def _known(
        self, facts: Iterable[tuple[str | None, str, str, tuple[SourceKey, ...], str]]
    ) -> tuple[KnowledgeView, ...]:
        gathered: dict[tuple[str, str, tuple[SourceKey, ...], str], list[str]] = {}
        for part, *rest in facts:
            gathered.setdefault(tuple(rest), []).append(self._opener.wording.part(part) if part else "")  # type: ignore[arg-type]
        return tuple(
            KnowledgeView(parts=tuple(filter(None, parts)), says=says, note=note, sources=tuple(sources), known=known)
            for (says, note, sources, known), parts in gathered.items()
        )


def found_taxa(edition: Edition) -> Mapping[str, tuple[Tally, ...]]:
    """Taxa that packs know, each with what the whole dig holds of it, by name."""
    gathered: dict[str, list[Tally]] = {}
    for tally in edition.findings.of(Subject(level="site", id=SITE)).tallies:
        if tally.taxon is not None and tally.taxon in edition.packs.taxa:
            gathered.setdefault(tally.taxon, []).append(tally)
    return {id: tuple(gathered[id]) for id in sorted(gathered, key=str.lower)}


def unplaced(edition: Edition) -> tuple[Tally, ...]:
    """Finds whose name no pack knows, or that may be one of two plants."""
    tallies = edition.findings.of(Subject(level="site", id=SITE)).tallies
    return tuple(tally for tally in tallies if tally.taxon is None or tally.taxon not in edition.packs.taxa)
