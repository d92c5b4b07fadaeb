"""The whole site as its templates see it: lists of all views, each made once."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

from narrate.model.edition import Edition
from narrate.model.findings import Tally
from narrate.model.manual import MeasurePage
from narrate.model.packs import Source
from narrate.model.rules import ShownMeasure
from narrate.web import figures, method, plants
from narrate.web.evidence import ClaimView, Opener
from narrate.web.links import Links
from narrate.web.photographs import Photographs
from narrate.web.plants import TaxonView
from narrate.web.queue import QueueView
from narrate.web.views import ContextView, PhaseView, SampleView, SiteSubject


@dataclass(frozen=True, slots=True, kw_only=True)
class MatrixView:
    """Claims of one question over all contexts."""

    question: str
    asked: str
    columns: tuple[str, ...]
    """Titles of the statements that hold in at least one context."""
    rows: tuple[tuple[ContextView, tuple[ClaimView | None, ...]], ...]
    """Contexts where at least one holds, with the claim of each column; None where it does not hold."""


class Site:
    def __init__(self, edition: Edition, links: Links, photographs: Photographs) -> None:
        self.edition = edition
        self.project = edition.project
        self.packs = edition.packs
        self.links = links
        self.photographs = photographs
        self.opener = Opener(edition, links)
        self.wording = self.opener.wording
        self.title = edition.project.title
        self.is_public = edition.audience == "public"
        self.is_review = edition.audience == "review"
        self.version = edition.version

    @cached_property
    def dig(self) -> SiteSubject:
        return SiteSubject(self.opener, self.photographs)

    @cached_property
    def contexts(self) -> tuple[ContextView, ...]:
        return tuple(ContextView(self.opener, context, self.photographs) for context in self.project.contexts)

    @cached_property
    def samples(self) -> tuple[SampleView, ...]:
        return tuple(SampleView(self.opener, sample, self.photographs) for sample in self.project.samples)

    @cached_property
    def phases(self) -> tuple[PhaseView, ...]:
        """In the order of the project file."""
        return tuple(PhaseView(self.opener, phase, self.photographs) for phase in self.project.phases)

    @property
    def phases_from_above(self) -> tuple[PhaseView, ...]:
        """As they lie in the ground: the latest on top. Phases without a date come last."""
        return tuple(sorted(self.phases, key=lambda p: (p.record.start is None, -(p.record.start or 0))))

    @property
    def unphased(self) -> tuple[ContextView, ...]:
        return tuple(context for context in self.contexts if context.phase is None)

    @cached_property
    def taxa(self) -> tuple[TaxonView, ...]:
        found = plants.found_taxa(self.edition)
        return tuple(TaxonView(self.opener, self.packs.taxa[id], tallies) for id, tallies in found.items())  # type: ignore[index]

    @property
    def manual(self) -> tuple[MeasurePage, ...]:
        """A page for every measure, in the order of the catalogue."""
        return self.edition.manual

    def shown_by(self, measure: str) -> tuple[ShownMeasure, ...]:
        """Measurements of the pages that a measure gives."""
        return tuple(shown for shown in self.packs.shown if shown.measure == measure)

    @property
    def unplaced(self) -> tuple[Tally, ...]:
        return plants.unplaced(self.edition)

    @cached_property
    def queue(self) -> QueueView:
        return QueueView(self.opener)

    @property
    def grades(self) -> tuple[tuple[str, float, float], ...]:
        return method.grades()

    @cached_property
    def rules(self) -> tuple[method.QuestionView, ...]:
        return method.rules(self.opener)

    @cached_property
    def sources(self) -> tuple[Source, ...]:
        return method.cited(self.edition)

    def charts(self, *names: str) -> tuple[figures.FigureView, ...]:
        """Charts that set the subjects of the dig side by side, by name."""
        return figures.of_site(names, self.edition)

    def matrix(self, question: str) -> MatrixView:
        """Which statements of a question hold where."""
        holding = [
            (context, {c.statement: c for c in context.claims["holds"] if c.question == question})
            for context in self.contexts
        ]
        held = {id for _, claims in holding for id in claims}
        columns = [id for id in self.packs.statements if id in held]
        return MatrixView(
            question=question,
            asked=self.packs.questions.get(question, question),
            columns=tuple(self.wording.statement(id) for id in columns),
            rows=tuple((context, tuple(claims.get(id) for id in columns)) for context, claims in holding if claims),
        )
