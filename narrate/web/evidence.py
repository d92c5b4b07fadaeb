"""What stands behind a sentence: each reference opened into claims, figures and rows of the sheets."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import cached_property

from narrate.model.claims import Claim, Evidence, Rival
from narrate.model.edition import Edition
from narrate.model.findings import SubjectFindings, Tally
from narrate.model.ids import ContextId, RuleId, Subject
from narrate.model.refs import subject_keys
from narrate.model.rules import Bound, Verdict
from narrate.model.sampling import Sample
from narrate.web.claim_views import BALANCES, ClaimView, FigureView, RivalView, figure_view, measured_text
from narrate.web.criteria import leaves, measured_words
from narrate.web.links import Links, anchor
from narrate.web.plain import in_plain_words
from narrate.web.rows import Rows, RowSet
from narrate.web.wording import Wording
from narrate.web.writing import Writing, writing_of

_KEPT, _CLAIMS_KEPT = 4_000, 1_000
"""Figures and claims kept from page to page: more than one page shows, few of what a dig holds."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Behind:
    """One thing that a sentence rests on. `claim` is None for counts, measurements and records."""

    ref: str
    kind: str
    """claim, measure, found, record or words."""
    subject: str
    title: str
    text: str
    rows: RowSet | None
    claim: ClaimView | None = None
    measure: str = ""
    """The page of the manual that explains the number."""
    evidence: str = ""
    """The page of evidence where its rows are listed."""
    is_told: bool = False
    """Whether it stands in full further up on the same page."""


class Opener:
    """Opens references of one edition."""

    def __init__(self, edition: Edition, links: Links) -> None:
        self.edition = edition
        self.links = links
        self.wording = Wording(edition)
        self.writing: Writing = writing_of(edition)
        self.rows: Rows = Rows(edition.project, links, self.writing, is_public=edition.audience == "public")
        self.keys: Mapping[Subject, str] = subject_keys(edition.project)
        self._subjects: Mapping[str, Subject] = {k: s for s, k in self.keys.items()}
        self.contexts = {context.id: context for context in edition.project.contexts}
        self.samples = {sample.id: sample for sample in edition.project.samples}
        self.contexts_of = {feature.id: feature.contexts for feature in edition.project.features()}
        """The contexts of each feature, in the order of the project."""
        self.members = {id: len(contexts) for id, contexts in self.contexts_of.items()}
        """How many contexts each feature has."""
        self.samples_of: dict[ContextId, list[Sample]] = {}
        """The samples of each context that has any."""
        for sample in edition.project.samples:
            self.samples_of.setdefault(sample.context, []).append(sample)
        self._titles = {shown.name: self.wording.measure(shown) for shown in edition.packs.shown}
        self._claims: dict[str, ClaimView] = {}
        self._opened: dict[str, Behind] = {}
        self._asked: dict[RuleId, tuple[str, ...]] = {}
        self._figures: dict[tuple[RuleId, int, Verdict, tuple[object, ...]], FigureView] = {}

    @cached_property
    def pictured(self) -> Edition:
        """The edition that figures are drawn of: for visitors in their words."""
        return in_plain_words(self.edition) if self.edition.audience == "public" else self.edition

    def behind(self, refs: Iterable[str]) -> tuple[Behind, ...]:
        return tuple(self.open(ref) for ref in dict.fromkeys(refs))

    def open(self, ref: str) -> Behind:
        """
        What a reference names.

        Raises LookupError where it names nothing: a sentence that rests on nothing is a fault of ours.
        """
        known = self._opened.get(ref)
        if known is not None:
            return known
        claim = self.edition.claims.by_id.get(ref)
        if claim is not None:
            view = self.claim(claim)
            return Behind(
                ref=ref,
                kind="claim",
                subject=view.subject,
                title=view.title,
                text="",
                rows=view.rows,
                claim=view,
                evidence=view.evidence,
            )
        key, _, what = ref.partition("/")
        subject = self._subjects.get(key)
        found = None if subject is None else self.edition.findings.subjects.get(subject)
        if subject is None or found is None:
            raise LookupError(f"no subject of this edition is named by '{ref}'")
        # Many pages rest on the same measures, such as the densities of all contexts.
        opened = self._opened[ref] = self._of_subject(ref, what, subject, found)
        return opened

    def claim(self, claim: Claim) -> ClaimView:
        if claim.id not in self._claims:
            self._claims[claim.id] = ClaimView(self, claim)
        return self._claims[claim.id]

    def target(self, subject: Subject) -> str:
        """The page of a subject; a feature is told on the page of its first context."""
        if subject.level == "site":
            return self.links.to("site")
        if subject.level == "feature":
            members = self.contexts_of.get(subject.id, ())  # type: ignore[call-overload]
            return self.links.to("context", members[0]) if members else ""
        return self.links.to(subject.level, subject.id)

    def evidence_page(self, subject: Subject) -> str:
        """The page of all evidence about a subject; a feature of one context has none beside that of the context."""
        if subject.level == "feature" and self.members.get(subject.id, 0) < 2:  # type: ignore[call-overload]
            members = self.contexts_of.get(subject.id, ())  # type: ignore[call-overload]
            return self.links.to("evidence", self.keys[Subject(level="context", id=members[0])]) if members else ""
        return self.links.to("evidence", self.keys[subject])

    def claim_page(self, claim: Claim) -> str:
        """
        Where a claim stands with all its arguments: its address for good.

        A feature of one context tells nothing that the context does not tell, and visitors are told what holds.
        """
        path = self.evidence_page(claim.about)
        is_told = claim.verdict == "holds" or self.edition.audience != "public"
        if claim.about.level == "feature":
            is_told = is_told and self.members[claim.about.id] > 1  # type: ignore[index]
        return f"{path}#claim-{anchor(claim.id)}" if path and is_told else path

    def _of_subject(self, ref: str, what: str, subject: Subject, found: SubjectFindings) -> Behind:
        name, page = self.wording.subject(subject), self.evidence_page(subject)
        kind, _, rest = what.partition(".")
        if kind == "measure" and rest in found.measurements:
            measurement = self.wording.measurement(found.measurements[rest])
            rows = self.rows.behind(found.places.get(rest, ()))
            title = self._titles.get(rest, rest)
            value, doubt = self.writing.figure(measurement), self.writing.interval(measurement)
            text = measured_text(value, doubt, measurement.n, measurement.reason, self.writing)
            return Behind(
                ref=ref,
                kind="measure",
                subject=name,
                title=title,
                text=text,
                rows=rows,
                measure=measurement.measure,
                evidence=page,
            )
        if kind == "found":
            tally = next((tally for tally in found.tallies if tally.ref == ref), None)
            if tally is not None:
                rows = self.rows.behind(tally.places)
                title = self.wording.find_with_part(tally)
                return Behind(
                    ref=ref,
                    kind="found",
                    subject=name,
                    title=title,
                    text=tally_text(tally, self.writing),
                    rows=rows,
                    evidence=page,
                )
        if what == "record":
            rows = self.rows.behind(found.places.get("record", ()))
            title = "What the records say"
            return Behind(ref=ref, kind="record", subject=name, title=title, text="", rows=rows, evidence=page)
        if what == "words":
            return Behind(ref=ref, kind="words", subject=name, title="The analyst's own words", text="", rows=None)
        raise LookupError(f"'{ref}' names no measurement, find or record of {name}")

    def rival(self, rival: Rival) -> RivalView:
        """A rival of a claim, as the pages set it beside."""
        holds = rival.verdict == "holds"
        return RivalView(
            title=self.wording.statement(rival.statement),
            page=self.claim_page(self.edition.claims.by_id[rival.claim]),
            standing=f"{rival.grade}, {rival.support:.2f}" if holds else rival.verdict,
            balance=BALANCES[rival.balance],
            speak_for=tuple(self.wording.rule_title(rule) for rule in rival.speak_for),
            speak_against=tuple(self.wording.rule_title(rule) for rule in rival.speak_against),
        )

    def asked(self, rule: RuleId, many: int) -> tuple[str, ...]:
        """What each of so many criteria of a rule measures, in words; empty for facts, and where that is not known."""
        if rule not in self._asked:
            self._asked[rule] = self._measured(rule)
        titles = self._asked[rule]
        return titles if len(titles) == many else ("",) * many

    def figure(self, rule: RuleId, many: int, at: int, evidence: Evidence) -> FigureView:
        """One of so many things that a rule looked at; most subjects show the same few, which are kept in words."""
        said = (evidence.value, evidence.low, evidence.high, evidence.n, evidence.text, evidence.reason)
        key = (rule, at, evidence.verdict, said)
        view = self._figures.get(key)
        if view is None:
            view = self._figures[key] = figure_view(self, evidence, self.asked(rule, many)[at])
        return view

    def forget(self) -> None:
        """Called between pages: drops what was made for those before, where it comes to much."""
        for kept in (self._figures, self._opened):
            if len(kept) > _KEPT:
                kept.clear()
        if len(self._claims) > _CLAIMS_KEPT or self.rows.are_many:
            self._claims.clear()  # claims hold the rows behind them
            self._opened.clear()
            self.rows.forget()

    def _measured(self, rule_id: RuleId) -> tuple[str, ...]:
        rule = self.edition.packs.rules.get(rule_id)
        asked = () if rule is None else leaves((*rule.needs, rule.criteria))
        return tuple(measured_words(leaf, self.wording.called) if isinstance(leaf, Bound) else "" for leaf in asked)


def tally_text(tally: Tally, writing: Writing | None = None) -> str:
    """
    How much of it there is, in how many samples.

    >>> tally_text(Tally(taxon=None, written="Zea mays", part="kernel", condition="charred", counted=12,
    ...     estimated=12.0, samples=2, of_samples=3))
    '12 counted, in 2 of 3 samples'
    """
    whole = (writing or Writing()).whole
    is_counted = tally.counted or not tally.is_noted
    parts = [f"{whole(tally.counted)} counted" if is_counted else "noted as present, not counted"]
    if tally.counted and abs(tally.estimated - tally.counted) > 1e-9:
        parts.append(f"about {whole(tally.estimated)} with the unsorted share")
    if tally.mass_g is not None:
        parts.append(f"{tally.mass_g:g} g")
    if tally.condition != "charred":
        parts.append(tally.condition)
    if tally.only_cf:
        parts.append("every one of them 'cf.'")
    if tally.of_samples > 1:
        parts.append(f"in {tally.samples} of {tally.of_samples} samples")
    return ", ".join(parts)
