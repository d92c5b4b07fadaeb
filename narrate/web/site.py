"""The whole site as its templates see it: lists of all views, each made once."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping
from functools import cached_property, partial

from markupsafe import Markup

from narrate.model.edition import Edition
from narrate.model.fields import FieldShare
from narrate.model.figures import Chart
from narrate.model.findings import Tally
from narrate.model.ids import Subject
from narrate.model.manual import MeasurePage
from narrate.model.packs import Source
from narrate.model.project import Project
from narrate.model.refs import subject_keys
from narrate.model.rules import ShownMeasure
from narrate.web import downloads, exhibit, figures, finding, glossary, method, plants, themes
from narrate.web.claim_views import ClaimView
from narrate.web.evidence import Opener
from narrate.web.links import Links
from narrate.web.lists import ListView, cut
from narrate.web.machines import described, full
from narrate.web.matrix import MatrixView, matrix
from narrate.web.photographs import Photographs
from narrate.web.plants import TaxonView
from narrate.web.queue import QueueView
from narrate.web.record import LineView, RecordView
from narrate.web.unmet_lines import UnmetLines
from narrate.web.views import ContextView, EvidenceView, PhaseView, SampleView, SiteSubject
from narrate.web.ways_in import ways_in


def told_subjects(project: Project) -> Mapping[Subject, str]:
    """Subjects with a page of evidence, and their words; a feature of one context is told as that context."""
    members = Counter(context.feature for context in project.contexts)
    keys = subject_keys(project)
    return {s: key for s, key in keys.items() if s.level != "feature" or members[s.id] > 1}  # type: ignore[index]


class Site:
    def __init__(self, edition: Edition, links: Links, photographs: Photographs) -> None:
        self.edition = edition
        self.project = edition.project
        self.packs = edition.packs
        self.links = links
        self.photographs = photographs
        self.opener = Opener(edition, links)
        self.wording = self.opener.wording
        self.unmet_lines = UnmetLines(self.opener)
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
    def evidence(self) -> tuple[EvidenceView, ...]:
        """A page of evidence for every subject that is told of."""
        told = told_subjects(self.project)
        return tuple(EvidenceView(self.opener, subject, self.photographs) for subject in told)

    def forget(self) -> None:
        """Called between pages: drops what one that goes over many subjects left with their views."""
        for views in (self.contexts, self.samples, self.phases):
            for view in views:
                view.forget()

    @cached_property
    def labels(self) -> tuple[exhibit.LabelView, ...]:
        return exhibit.labels(self.opener)

    @cached_property
    def context_lists(self) -> tuple[ListView[ContextView], ...]:
        return cut(self.contexts)

    @cached_property
    def sample_lists(self) -> tuple[ListView[SampleView], ...]:
        return cut(self.samples)

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
        views = tuple(TaxonView(self.opener, self.packs.taxa[id], tallies) for id, tallies in found.items())  # type: ignore[index]
        return tuple(sorted(views, key=lambda view: (view.name or view.id).lower())) if self.is_public else views

    @cached_property
    def plants_named(self) -> int:
        """Plants that have a name and lay there in an ancient condition; pages of others stand beside theirs."""
        ancient = self.packs.words.preservations.get(self.edition.project.preservation, ())
        return sum(
            "indeterminate" not in self.packs.taxa[id].tags and any(t.condition in ancient for t in tallies)  # type: ignore[index]
            for id, tallies in plants.found_taxa(self.edition).items()
        )

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

    @cached_property
    def record(self) -> RecordView | None:
        """How the rules fared on simulated digs."""
        return RecordView(self.edition.record, self.packs) if self.edition.record else None

    def fared(self, claim: ClaimView) -> LineView | None:
        """The line of the record for claims like this one; None where the trials made none, and in public."""
        if self.record is None or claim.verdict != "holds":
            return None
        return self.record.of_claims.get((claim.statement, claim.grade))

    @property
    def grades(self) -> tuple[tuple[str, float, float], ...]:
        return method.grades()

    @cached_property
    def rules(self) -> tuple[method.QuestionView, ...]:
        return method.rules(self.opener)

    @cached_property
    def sources(self) -> tuple[Source, ...]:
        return method.cited(self.edition)

    @cached_property
    def search_parts(self) -> Mapping[str, bytes]:
        """Files of the search index by their path; none where the site has no page to search on."""
        if not self.links.to("page", "search"):
            return {}
        return finding.parts(finding.entries(self.opener, self.contexts, self.samples, self.taxa))

    @property
    def tried(self) -> tuple[str, ...]:
        """Words that find something, to begin a search with: the commonest plant, a kind of context, a context."""
        return finding.tried(self.taxa, self.contexts)

    @cached_property
    def pictures(self) -> downloads.Pictures:
        """Pictures of the dig, its phases and contexts; none in a site without data."""
        return downloads.Pictures(self._charts() if self.links.to("page", "data") else ())

    def _charts(self) -> Iterator[tuple[str, Chart]]:
        """Each under the page that shows it; those of contexts are drawn and not kept."""
        yield from (("dig", chart) for chart, _ in self.charts(*figures.OF_SITE))
        for view in (*self.phases, *self.contexts):
            if view.target:
                yield from ((view.target, chart) for chart, _ in figures.of_subject(view.found, self.opener.pictured))

    def figure_file(self, chart: Chart) -> str:
        """Where a picture and its table lie as files, without the extension; empty where they lie in none."""
        return self.pictures.file_of(chart)

    def is_drawn_as_png(self, file: str) -> bool:
        """
        Whether a picture lies there as PNG too: those of the dig and its phases, whose number does not grow.

        Of contexts and samples script makes it: some 50 KB each, they would come to outweigh all other files.
        """
        return file.startswith(("figures/dig-", "figures/phases/"))

    @cached_property
    def to_take_away(self) -> tuple[downloads.Download, ...]:
        """Tables of the dig, and its pictures in one archive."""
        return (*downloads.tables(self.edition), self.pictures.archive)

    @property
    def data_files(self) -> Mapping[str, downloads.Content]:
        """What gives each file to take away, by its path; none in a site without data."""
        if not self.links.to("page", "data"):
            return {}
        tables = {file.path: file.content for file in self.to_take_away}
        return {**tables, **self.pictures.files(self.is_drawn_as_png)}

    def strip(self, view: ContextView | exhibit.LabelView) -> themes.StripView | None:
        return themes.strip(view.found, self.edition)

    @property
    def year(self) -> tuple[themes.YearRow, ...]:
        return themes.year(self.opener)

    @property
    def side_by_side(self) -> tuple[themes.SideBySide, ...]:
        return themes.side_by_side(self.edition)

    @property
    def tested(self) -> tuple[themes.TestedTable, ...]:
        return themes.tested(self.edition)

    @property
    def field_shares(self) -> tuple[FieldShare, ...]:
        return themes.field_shares(self.edition)

    @property
    def field_words(self) -> Mapping[str, str]:
        return themes.SORTS

    @property
    def words(self) -> tuple[tuple[str, tuple[tuple[str, str], ...]], ...]:
        return glossary.words(self.edition)

    @cached_property
    def findings(self) -> tuple[ClaimView, ...]:
        """Five ways in."""
        return tuple(self.opener.claim(claim) for claim in ways_in(self.edition, 5))

    def described(self, page_path: str, title: str, it: object) -> Markup:
        """What a page is about, for machines."""
        says = str(getattr(it, "summary", Markup("")).striptags())
        is_dig = page_path == self.links.to("site")
        return described(
            self.edition, page_path, title, self.project.summary or says if is_dig else says, is_dig=is_dig
        )

    def full(self, path: str) -> str:
        """The whole address of a page; empty where no address is configured."""
        return full(self.project.address, path) if self.project.address else ""

    def card(self, it: object) -> str:
        """The picture that stands for a page where somebody links to it, by its path."""
        id = it.id if isinstance(it, ContextView) else ""
        return f"cards/{self.links.to('context', id).rpartition('/')[2].removesuffix('.html') or 'dig'}.png"

    def card_alt(self, it: object) -> str:
        says = str(getattr(it, "summary", Markup("")).striptags())
        return f"{getattr(it, 'name', self.title)}. {says}".strip()

    @property
    def cards(self) -> Mapping[str, downloads.Content]:
        """What gives each picture for links, where it is known at which address the public site will stand."""
        if not (self.is_public and self.project.address):
            return {}
        from narrate.charts.card import card

        made: dict[str, downloads.Content] = {
            self.card(self.dig): partial(card, self.title, "", str(self.dig.summary.striptags()), ())
        }
        made.update((self.card(view), partial(self._card, view)) for view in self.contexts)
        return made

    def _card(self, view: ContextView) -> bytes:
        from narrate.charts.card import card

        strip = self.strip(view)
        groups = () if strip is None else strip.groups
        return card(self.title, f"{view.name}, {view.kind}", str(view.summary.striptags()), groups)

    @cached_property
    def drawn(self) -> dict[str, figures.FigureView]:
        return {}

    def charts(self, *names: str) -> tuple[figures.FigureView, ...]:
        """Charts that set the subjects of the dig side by side, by name."""
        for name in names:
            if name not in self.drawn:
                for one in figures.of_site((name,), self.opener.pictured):
                    self.drawn[name] = one
        return tuple(self.drawn[name] for name in names if name in self.drawn)

    def matrix(self, question: str) -> MatrixView:
        """Which statements of a question hold where."""
        return matrix(question, self.contexts, self.wording)
