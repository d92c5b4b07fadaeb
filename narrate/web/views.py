"""What templates receive: every context, sample, phase and the dig, laid out for reading."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cache, cached_property, partial

from markupsafe import Markup

from narrate.model.counts import CountRow
from narrate.model.edition import Edition
from narrate.model.findings import SubjectFindings, Tally
from narrate.model.ids import SITE, StatementId, Subject
from narrate.model.late import Late
from narrate.model.measurement import Measurement
from narrate.model.rules import Verdict
from narrate.model.sampling import Sample
from narrate.model.stratigraphy import Context, Phase
from narrate.telling.of_stores import is_burned_store
from narrate.web import exhibit, figures
from narrate.web.claim_views import ClaimView
from narrate.web.evidence import Opener
from narrate.web.photographs import Photographs, PhotoView
from narrate.web.rows import RowGroup, RowSet
from narrate.web.stories import StoryView, story, summary

STORIES = {"review": ("review", "report"), "public": ("public",)}
"""Narratives of each edition, in the order in which they stand on a page."""
_ON_PAGES_OF_THEIR_OWN = (exhibit.AUDIENCE,)
LINKED_AT_MOST = 6
"""Samples up to which every mention of their rows is a link; of more, script makes links of the mentions."""


@dataclass(frozen=True, slots=True, kw_only=True)
class MeasureView:
    title: str
    measure: str
    """The page of the manual that explains it."""
    measurement: Measurement
    explained: str
    rows: RowSet | None


class SubjectView:
    """What all pages of subjects show: narratives, charts, measures and claims."""

    def __init__(self, opener: Opener, subject: Subject, photographs: Photographs) -> None:
        self._opener = opener
        self._photographs = photographs
        self.edition: Edition = opener.edition
        self.subject = subject
        self.id = subject.id
        self.name = opener.wording.subject(subject)
        self.found: SubjectFindings = opener.edition.findings.of(subject)
        self.target = opener.target(subject)
        self.evidence = opener.evidence_page(subject)

    @property
    def lead(self) -> str:
        """The audience whose narrative comes first."""
        return STORIES[self.edition.audience][0]

    @cached_property
    def stories(self) -> tuple[StoryView, ...]:
        usual = STORIES[self.edition.audience]
        further = sorted({audience for audience, _ in self.edition.narratives} - {*usual, *_ON_PAGES_OF_THEIR_OWN})
        told: set[str] = set()
        found = (story(self._opener, audience, self.subject, told) for audience in (*usual, *further))
        return tuple(one for one in found if one is not None)

    @property
    def summary(self) -> Markup:
        return summary(self.edition.narrative(self.lead, self.subject))

    @cached_property
    def figures(self) -> tuple[figures.FigureView, ...]:
        return figures.of_subject(self.found, self._opener.pictured)

    @cached_property
    def measures(self) -> tuple[MeasureView, ...]:
        rows = self._opener.rows
        return tuple(
            MeasureView(
                title=self._opener.wording.measure(shown),
                measure=shown.measure,
                measurement=self._opener.wording.measurement(self.found.measurements[shown.name]),
                explained=shown.explained,
                rows=rows.behind(self.found.places.get(shown.name, ())),
            )
            for shown in self.edition.packs.shown
            if shown.name in self.found.measurements
        )

    def forget(self) -> None:
        """Drops what pages asked of it; whoever asks again has it worked out again."""
        for name in _worked_out(type(self)) & vars(self).keys():  # type: ignore[arg-type]
            del vars(self)[name]

    def measure(self, name: str) -> Measurement:
        missing = Measurement(measure=name, value=None, reason="not measured")
        return self.found.measurements.get(name, missing)

    @cached_property
    def claims(self) -> Mapping[str, Sequence[ClaimView]]:
        """Claims by verdict, the firmest first; those that do not hold are made when they are read."""
        return claims_by_verdict(self._opener, self.subject)


@cache
def _worked_out(kind: type[SubjectView]) -> frozenset[str]:
    """Names of what views of a kind work out when they are asked and keep."""
    return frozenset(
        name for one in kind.__mro__ for name, value in vars(one).items() if isinstance(value, cached_property)
    )


class SampleView(SubjectView):
    record: Sample

    def __init__(self, opener: Opener, record: Sample, photographs: Photographs) -> None:
        super().__init__(opener, Subject(level="sample", id=record.id), photographs)
        self.record = record
        self.context: Context = opener.contexts[record.context]
        self.context_kind = opener.wording.kind(self.context)
        self.context_target = opener.links.to("context", record.context)
        self.phase_name = opener.wording.phase(self.edition.project.phase(self.context.phase))
        self.phase_target = "" if self.context.phase is None else opener.links.to("phase", self.context.phase)

    @property
    def rows(self) -> tuple[tuple[CountRow, str], ...]:
        """Rows of the count sheets with the fragment that names each; one cell may give two rows ('1/6')."""
        rows = self._opener.rows
        found: dict[str, int] = {}
        named = []
        for row in rows.by_sample.get(self.record.id, ()):
            name = rows.anchor(row.place)
            found[name] = found.get(name, 0) + 1
            named.append((row, name if found[name] == 1 else f"{name}-{found[name]}"))
        return tuple(named)

    @property
    def photographs(self) -> tuple[PhotoView, ...]:
        return self._photographs.of(self.record.images)

    @property
    def method_explained(self) -> str:
        return self.edition.packs.words.methods.get(self.record.method, "")


class ContextView(SubjectView):
    record: Context

    def __init__(self, opener: Opener, record: Context, photographs: Photographs) -> None:
        super().__init__(opener, Subject(level="context", id=record.id), photographs)
        self.record = record
        self.kind = opener.wording.kind(record)
        explained = opener.wording.kind_explained(record)
        is_store = is_burned_store(self.edition.claims, self.subject)
        self.kind_explained = f"{explained.partition('; ')[0].rstrip('.')}." if is_store and explained else explained
        self.phase = self.edition.project.phase(record.phase)

    @property
    def firmest(self) -> tuple[ClaimView, ...]:
        """The claim that stands firmest of those that tell what people did; empty where none does."""
        telling = (c for c in self.claims["holds"] if c.question not in ("work", "integrity", "deposit"))
        return tuple(telling)[:1]

    @property
    def phase_target(self) -> str:
        return "" if self.phase is None else self._opener.links.to("phase", self.phase.id)

    @cached_property
    def samples(self) -> tuple[SampleView, ...]:
        records = self._opener.samples_of.get(self.record.id, ())
        return tuple(SampleView(self._opener, record, self._photographs) for record in records)

    @property
    def photographs(self) -> tuple[PhotoView, ...]:
        return self._photographs.of(self.record.images)

    @property
    def location(self) -> tuple[tuple[str, str], ...]:
        """Where it lies, for the team alone."""
        return tuple(self.record.location.items()) if self.edition.audience == "review" else ()

    @property
    def feature_claims(self) -> Sequence[ClaimView]:
        """Claims that hold of the feature as a whole, where it has other contexts too."""
        if self.record.feature is None or not self.feature_mates:
            return ()
        subject = Subject(level="feature", id=self.record.feature)
        return claims_by_verdict(self._opener, subject)["holds"]

    @property
    def feature_mates(self) -> tuple[tuple[str, str], ...]:
        """Other contexts of the feature: id and page."""
        if self.record.feature is None:
            return ()
        others = (id for id in self._opener.contexts_of[self.record.feature] if id != self.id)
        return tuple((id, self._opener.links.to("context", id)) for id in others)


class PhaseView(SubjectView):
    record: Phase

    def __init__(self, opener: Opener, record: Phase, photographs: Photographs) -> None:
        super().__init__(opener, Subject(level="phase", id=record.id), photographs)
        self.record = record
        self.years = opener.wording.years(record)

    @property
    def by_ubiquity(self) -> tuple[Tally, ...]:
        """Tallies, those in most samples first."""
        return tuple(sorted(self.found.tallies, key=lambda t: (-t.samples, -t.counted, t.written, t.part, t.condition)))

    @cached_property
    def contexts(self) -> tuple[ContextView, ...]:
        own = (context for context in self.edition.project.contexts if context.phase == self.record.id)
        return tuple(ContextView(self._opener, context, self._photographs) for context in own)


class SiteSubject(SubjectView):
    def __init__(self, opener: Opener, photographs: Photographs) -> None:
        super().__init__(opener, Subject(level="site", id=SITE), photographs)


class EvidenceView(SubjectView):
    """All evidence about one subject: claims with their arguments, measures and finds with their rows."""

    def __init__(self, opener: Opener, subject: Subject, photographs: Photographs) -> None:
        super().__init__(opener, subject, photographs)
        self.id = opener.keys[subject]

    @cached_property
    def tallies(self) -> tuple[tuple[Tally, str, RowSet | None], ...]:
        """What was found, with the name of its part and its rows."""
        rows, wording = self._opener.rows, self._opener.wording
        return tuple((tally, wording.part(tally.part), rows.behind(tally.places)) for tally in self.found.tallies)

    @cached_property
    def row_sets(self) -> tuple[RowSet, ...]:
        """Every set of rows that something on the page rests on and that is not quoted there, each once."""
        of_claims = (
            rows
            for claim in (*self.claims["holds"], *self._argued("cannot tell"), *self._argued("fails"))
            for rows in (claim.rows, *(one.rows for one in (*claim.arguments_for, *claim.arguments_against)))
        )
        records = self._opener.rows.behind(self.found.places.get("record", ()))
        every = (*of_claims, *(one.rows for one in self.measures), *(rows for _, _, rows in self.tallies), records)
        return tuple({rows.id: rows for rows in every if rows is not None and not rows.quoted}.values())

    def _argued(self, verdict: Verdict) -> Iterator[ClaimView]:
        """Claims of a verdict of which an argument holds: the others rest on no rows."""
        for one in self.edition.claims.outcomes(self.subject):
            claim = self.edition.claims.find(self.subject, one.statement) if one.is_argued else None
            if claim is not None and claim.verdict == verdict:
                yield self._opener.claim(claim)

    @cached_property
    def many_samples(self) -> tuple[RowGroup, ...]:
        """Samples whose rows are named so often that each is linked once for the page; empty where they are few."""
        groups = {group.label: group for rows in self.row_sets for group in rows.groups if group.target}
        return tuple(groups.values()) if len(groups) > LINKED_AT_MOST else ()

    @cached_property
    def balance(self) -> tuple[figures.FigureView, ...]:
        return figures.of_claims(self.edition.claims.holding(self.subject), self._opener.pictured)


def claims_by_verdict(opener: Opener, subject: Subject) -> Mapping[str, Sequence[ClaimView]]:
    """Claims that hold (firmest first), that cannot be told and that are not supported."""
    claims = opener.edition.claims
    found: dict[str, list[StatementId]] = {"cannot tell": [], "fails": []}
    for one in claims.outcomes(subject):
        if one.verdict != "holds":
            found[one.verdict].append(one.statement)
    holding = sorted(claims.holding(subject), key=lambda claim: (-claim.support, claim.id))
    others = {verdict: Late(len(ids), partial(_view, opener, subject, ids)) for verdict, ids in found.items()}
    return {"holds": tuple(opener.claim(claim) for claim in holding), **others}


def _view(opener: Opener, subject: Subject, statements: Sequence[StatementId], at: int) -> ClaimView:
    claim = opener.edition.claims.find(subject, statements[at])
    assert claim is not None, "it was judged, so that it can be made"
    return opener.claim(claim)
