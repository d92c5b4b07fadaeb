"""
A key for each page of a sample, a context, the evidence about one, or a label: while the key stands, so does the page.

A key is a sum over everything that the page shows: what the subject holds, its claims, its words and what they rest on,
its rows and records, its neighbours in the menu of pages, and, as `ground`, what all pages share. It is made of whole
records rather than of what a template picks out of them, so that a template may show more of a record without being
told of here; a template that asks the site for something new is caught by a test. Where in doubt there is no key, and
the page is made.
"""

from __future__ import annotations

import hashlib

from narrate.model.claims import Claim
from narrate.model.ids import ContextId, FeatureId, SampleId, Subject
from narrate.model.narrative import Narrative
from narrate.telling.followed import sum_about, sum_found
from narrate.web.exhibit import LabelView
from narrate.web.rows import RowSet
from narrate.web.site import Site
from narrate.web.views import ContextView, EvidenceView, SampleView, SubjectView

KEYED = ("sample", "context", "evidence", "label")
"""Kinds of pages with keys: their number grows with the dig. All others are made each time."""
ASKED_OF_SITE = frozenset(
    {
        "card", "card_alt", "described", "edition.audience", "fared", "figure_file", "full", "is_drawn_as_png",
        "is_public", "is_review", "project.authors", "project.contact", "project.is_withheld_in_part", "title",
        "unmet_lines", "version", "wording.find", "wording.source",
    }
)  # fmt: skip
"""
What the templates of keyed pages may ask of the site: each follows from the ground, from the page or from its subject.
A figure lies as a file under the name of its own page.
"""


class PageKeys:
    """Keys of the pages of one site."""

    def __init__(self, site: Site, ground: str) -> None:
        self._site = site
        self._opener = site.opener
        self._edition = site.edition
        project, links = site.project, site.links
        shared = (
            ground,
            site.edition.audience,
            site.edition.version,
            site.edition.approved_only,
            project.is_withheld_in_part,
            sorted(links.paths.items()),
            list(self._opener.rows.by_sample),
        )
        self._ground = _sum(repr(shared))
        self._told: dict[Subject, list[Narrative]] = {}
        for (_, subject), narrative in sorted(site.edition.narratives.items(), key=lambda one: one[0][0]):
            self._told.setdefault(subject, []).append(narrative)
        self._refs: dict[str, str] = {}
        self._samples: dict[SampleId, str] = {}

    def of(self, it: object, page: tuple[object, ...]) -> str | None:
        """
        The key of the page of a view, None where the page has to be made.

        page:  what its template knows of the page itself: path, title, pages before and after.
        """
        if isinstance(it, LabelView):
            return _sum("\0".join((self._ground, repr(page), repr(it), sum_found(it.found).hex())))
        if not isinstance(it, SubjectView) or it.subject.level in ("site", "phase"):
            return None
        said = [self._ground, repr(page), type(it).__name__, self._about(it.subject)]
        if isinstance(it, EvidenceView):
            said += self._behind(it)
        elif isinstance(it, SampleView) and not it.record.images:
            said += [repr((it.context, it.record)), self._sample(it.record.id), *self._words(it)]
        elif isinstance(it, ContextView) and not it.record.images:
            said += [*self._context(it), *self._words(it)]
        else:
            return None
        return _sum("\0".join(said))

    def _behind(self, it: EvidenceView) -> list[str]:
        """Records and rows of all that the subject is made of."""
        opener = self._opener
        if it.subject.level == "sample":
            return [self._sample(SampleId(it.subject.id))]
        is_feature = it.subject.level == "feature"
        contexts = opener.contexts_of[FeatureId(it.subject.id)] if is_feature else (ContextId(it.subject.id),)
        said = []
        for id in contexts:
            said.append(repr(opener.contexts[id]))
            said += [self._sample(sample.id) for sample in opener.samples_of.get(id, ())]
        return said

    def _context(self, it: ContextView) -> list[str]:
        """Its record, its feature with what holds of it, and its samples with what is said of each in its list."""
        said = [repr(it.record), repr(it.phase), repr(it.feature_mates)]
        if it.feature_mates:
            said.append(self._about(Subject(level="feature", id=str(it.record.feature))))
        for sample in it.samples:
            said += [self._sample(sample.id), self._about(sample.subject), repr(sample.summary)]  # type: ignore[arg-type]
        return said

    def _words(self, it: SubjectView) -> list[str]:
        """
        Narratives of the subject for all audiences, and what each sentence of them rests on that is not of the subject:
        the rest follows from what was found of it and from its claims.
        """
        told = self._told.get(it.subject, ())
        refs = dict.fromkeys(ref for narrative in told for sentence in narrative.sentences() for ref in sentence.refs)
        own = self._opener.keys[it.subject]
        return [repr(told), *(self._ref(ref) for ref in refs if ref.partition("/")[0] != own)]

    def _ref(self, ref: str) -> str:
        if ref not in self._refs:
            one = self._opener.open(ref)
            about = (one.kind, one.subject, str(one.title), one.text, one.measure, one.evidence, _shown(one.rows))
            claim = self._edition.claims.by_id.get(ref)
            self._refs[ref] = _sum(repr(about)) + ("" if claim is None else self._claim(claim))
        return self._refs[ref]

    def _about(self, subject: Subject) -> str:
        """
        What was found of it and all that its claims say; which rows are behind them follows from the rules and the rows
        of the subject.
        """
        return sum_about(self._edition.findings, self._edition.claims, subject).hex()

    def _claim(self, claim: Claim) -> str:
        sums = self._edition.claims.sums
        return _sum(repr(claim)) if sums is None else sums.of(claim.about, claim.statement).hex()

    def _sample(self, id: SampleId) -> str:
        """The record of a sample and its rows, with the numbers under which they are shown."""
        if id not in self._samples:
            rows = self._opener.rows
            written = [(rows.numbers[row.place.row], row) for row in rows.by_sample.get(id, ())]
            self._samples[id] = _sum(repr((self._opener.samples[id], written)))
        return self._samples[id]


def _shown(rows: RowSet | None) -> object:
    """What a page shows of rows that a sentence rests on: a link to their list, or the rows themselves."""
    return None if rows is None else (rows.id, rows.says, rows.quoted)


def _sum(said: str) -> str:
    return hashlib.blake2b(said.encode("utf-8", "surrogatepass"), digest_size=16).hexdigest()
