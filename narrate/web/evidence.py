"""What stands behind a sentence: each reference opened into claims, figures and rows of the sheets."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from markupsafe import Markup

from narrate.model.claims import Argument, Claim, Evidence, Rival
from narrate.model.edition import Edition
from narrate.model.findings import SubjectFindings, Tally
from narrate.model.ids import RuleId, Subject
from narrate.model.refs import subject_keys
from narrate.model.rules import Bound
from narrate.web.criteria import leaves, measured_words
from narrate.web.filters import latin
from narrate.web.links import Links, anchor
from narrate.web.rows import Rows, RowSet, rows_of
from narrate.web.wording import Wording
from narrate.web.writing import Writing, writing_of

BALANCES = {
    "this": "the remains favour this reading",
    "rival": "the remains favour the other reading",
    "undecided": "the remains do not decide between the two",
    "neither holds": "neither holds",
}
"""How two rivals stand to each other, in words."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FigureView:
    """One value or recorded fact that an argument looked at."""

    title: str
    text: str
    verdict: str
    measure: str = ""
    """The page of the manual that explains the number; empty for recorded facts."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ArgumentView:
    rule: str
    title: str
    direction: str
    verdict: str
    weight: str
    says: str
    figures: tuple[FigureView, ...]
    rows: RowSet | None
    """All rows that its figures look at, each once; None where it does not hold."""
    counted_with: str = ""
    """Title of the heavier argument of the same remains that is added in its stead; empty: it is added itself."""


@dataclass(frozen=True, slots=True, kw_only=True)
class RivalView:
    """A rival reading beside the claim, with what speaks for and against it."""

    title: str
    page: str
    standing: str
    """'supports, 0.84' or the verdict."""
    balance: str
    speak_for: tuple[str, ...]
    speak_against: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class ClaimView:
    id: str
    subject: str
    target: str
    """The page of what it is about."""
    page: str
    """The place on that page where the claim stands with all its arguments."""
    question: str
    statement: str
    title: str
    plain: str
    verdict: str
    grade: str
    support: str
    stability: float | None
    arguments_for: tuple[ArgumentView, ...]
    """Those that hold, heaviest first."""
    arguments_against: tuple[ArgumentView, ...]
    open_arguments: tuple[ArgumentView, ...]
    """Those that cannot tell."""
    failed_arguments: tuple[ArgumentView, ...]
    limits: tuple[tuple[str, str], ...]
    """What holds the grade down, and what lifts it."""
    misleads_when: tuple[str, ...]
    alternatives: tuple[str, ...]
    does_not_mean: str
    sources: tuple[str, ...]
    """Keys of the works it rests on."""
    unlimited: str = ""
    """The grade without limits; empty where none holds it down."""
    rivals: tuple[RivalView, ...] = ()
    """Rivals of which at least one of the two holds."""
    turned_by: tuple[tuple[str, str], ...] = ()
    """Changes in counts that would turn the verdict, and to what."""
    next_step: str = ""
    rows: RowSet | None = None
    """All rows that its arguments look at."""

    @property
    def evidence(self) -> str:
        """The page of evidence on which it stands."""
        return self.page.partition("#")[0]


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
        self.rows: Rows = rows_of(edition.project, links, self.writing, is_public=edition.audience == "public")
        self.keys: Mapping[Subject, str] = subject_keys(edition.project)
        self._subjects: Mapping[str, Subject] = {k: s for s, k in self.keys.items()}
        self.members = Counter(context.feature for context in edition.project.contexts)
        """How many contexts each feature has."""
        self._titles = {shown.name: shown.title for shown in edition.packs.shown}
        self._claims: dict[str, ClaimView] = {}
        self._asked: dict[RuleId, tuple[str, ...]] = {}

    def behind(self, refs: Iterable[str]) -> tuple[Behind, ...]:
        return tuple(self.open(ref) for ref in dict.fromkeys(refs))

    def open(self, ref: str) -> Behind:
        """
        What a reference names.

        Raises LookupError where it names nothing: a sentence that rests on nothing is a fault of ours.
        """
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
        return self._of_subject(ref, what, subject, found)

    def claim(self, claim: Claim) -> ClaimView:
        if claim.id not in self._claims:
            self._claims[claim.id] = self._claim_view(claim)
        return self._claims[claim.id]

    def target(self, subject: Subject) -> str:
        """The page of a subject; a feature is told on the page of its first context."""
        if subject.level == "site":
            return self.links.to("site")
        if subject.level == "feature":
            members = [c.id for c in self.edition.project.contexts if c.feature == subject.id]
            return self.links.to("context", members[0]) if members else ""
        return self.links.to(subject.level, subject.id)

    def evidence_page(self, subject: Subject) -> str:
        """The page of all evidence about a subject; a feature of one context has none beside that of the context."""
        if subject.level == "feature" and self.members[subject.id] < 2:  # type: ignore[index]
            first = next((c.id for c in self.edition.project.contexts if c.feature == subject.id), None)
            return self.links.to("evidence", self.keys[Subject(level="context", id=first)]) if first else ""
        return self.links.to("evidence", self.keys[subject])

    def _claim_page(self, claim: Claim) -> str:
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
            measurement = found.measurements[rest]
            rows = self.rows.behind(found.places.get(rest, ()))
            title = self.writing.unit(self._titles.get(rest, rest))
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
                title = Markup("{}, {}").format(latin(tally.written), self.wording.part(tally.part))
                return Behind(
                    ref=ref, kind="found", subject=name, title=title, text=tally_text(tally, self.writing), rows=rows,
                    evidence=page,
                )
        if what == "record":
            rows = self.rows.behind(found.places.get("record", ()))
            title = "What the records say"
            return Behind(ref=ref, kind="record", subject=name, title=title, text="", rows=rows, evidence=page)
        if what == "words":
            return Behind(ref=ref, kind="words", subject=name, title="The analyst's own words", text="", rows=None)
        raise LookupError(f"'{ref}' names no measurement, find or record of {name}")

    def _claim_view(self, claim: Claim) -> ClaimView:
        statement = self.edition.packs.statements.get(claim.statement)
        by_outcome = {
            outcome: tuple(self._argument(a) for a in claim.arguments if a.verdict == outcome)
            for outcome in ("cannot tell", "fails")
        }
        return ClaimView(
            id=claim.id,
            subject=self.wording.subject(claim.about),
            target=self.target(claim.about),
            page=self._claim_page(claim),
            question=claim.question,
            statement=claim.statement,
            title=self.wording.statement(claim.statement),
            plain="" if statement is None else statement.plain,
            verdict=claim.verdict,
            grade=claim.grade,
            support=f"{claim.support:.2f}",
            stability=claim.stability,
            arguments_for=tuple(self._argument(argument) for argument in claim.held("for")),
            arguments_against=tuple(self._argument(argument) for argument in claim.held("against")),
            open_arguments=by_outcome["cannot tell"],
            failed_arguments=by_outcome["fails"],
            limits=tuple((limit.says, limit.lifts) for limit in claim.limits),
            misleads_when=claim.misleads_when,
            alternatives=tuple(self.wording.statement(id) for id in claim.alternatives),
            does_not_mean="" if statement is None else statement.does_not_mean,
            sources=claim.sources,
            unlimited=claim.unlimited or "" if claim.limits else "",
            rivals=tuple(self._rival(r) for r in claim.rivals if r.balance != "neither holds"),
            turned_by=tuple((turning.says, turning.verdict) for turning in claim.turnings),
            next_step=claim.next_step.says if claim.next_step else "",
            rows=self.rows.behind(
                place
                for argument in claim.arguments
                if argument.verdict == "holds"
                for evidence in argument.evidence
                for place in evidence.places
            ),
        )

    def _rival(self, rival: Rival) -> RivalView:
        holds = rival.verdict == "holds"
        return RivalView(
            title=self.wording.statement(rival.statement),
            page=self._claim_page(self.edition.claims.by_id[rival.claim]),
            standing=f"{rival.grade}, {rival.support:.2f}" if holds else rival.verdict,
            balance=BALANCES[rival.balance],
            speak_for=tuple(self.wording.rule_title(rule) for rule in rival.speak_for),
            speak_against=tuple(self.wording.rule_title(rule) for rule in rival.speak_against),
        )

    def _argument(self, argument: Argument) -> ArgumentView:
        holds = argument.verdict == "holds"
        places = [place for evidence in argument.evidence for place in evidence.places] if holds else []
        return ArgumentView(
            rule=argument.rule,
            title=self.wording.rule_title(argument.rule),
            direction=argument.direction,
            verdict=argument.verdict,
            weight=f"{argument.weight:.1f}",
            says=self.writing.retold(self.wording.says(argument)) if holds else self.wording.rule_title(argument.rule),
            figures=self._figures(argument),
            rows=self.rows.behind(places),
            counted_with=self.wording.rule_title(argument.counted_with) if argument.counted_with else "",
        )

    def _figures(self, argument: Argument) -> tuple[FigureView, ...]:
        """What the rule looked at, in the words of its criteria."""
        titles = self._asked.get(argument.rule)
        if titles is None:
            titles = self._asked[argument.rule] = self._measured(argument.rule)
        if len(titles) != len(argument.evidence):
            titles = ("",) * len(argument.evidence)
        return tuple(
            FigureView(
                title=self.writing.unit(title or evidence_title(evidence)),
                text=self.writing.retold(evidence_text(evidence)),
                verdict=evidence.verdict,
                measure="" if evidence.measure.startswith("record.") else evidence.measure.partition(".")[0],
            )
            for evidence, title in zip(argument.evidence, titles, strict=True)
        )

    def _measured(self, rule_id: RuleId) -> tuple[str, ...]:
        """What each criterion of a rule measures, in words; empty for facts."""
        rule = self.edition.packs.rules.get(rule_id)
        asked = () if rule is None else leaves((*rule.needs, rule.criteria))
        return tuple(measured_words(leaf) if isinstance(leaf, Bound) else "" for leaf in asked)


def evidence_title(evidence: Evidence) -> str:
    """
    What was looked at, in words.

    >>> evidence_title(Evidence(measure="ratio.kernels_per_cupule", name="kernels_per_cupule", verdict="holds"))
    'kernels per cupule'
    >>> evidence_title(Evidence(measure="record.context_kind", verdict="holds"))
    'context kind on record'
    """
    measure, _, of = evidence.measure.partition(".")
    if measure == "record":
        return f"{of.replace('_', ' ')} on record"
    return (evidence.name or measure).replace("_", " ")


def evidence_text(evidence: Evidence) -> str:
    """The value with its interval and n, what the record says, or why there is no value."""
    if evidence.measure.startswith("record."):
        return evidence.text or "not recorded"
    if evidence.value is None:
        return f"no value: {evidence.reason}"
    value = evidence.text or f"{evidence.value:.4g}"
    unit = f" {evidence.unit}" if evidence.unit and not evidence.measure.startswith(("items", "taxa")) else ""
    n = None if evidence.n == evidence.value else evidence.n
    return measured_text(value if unit.strip() in value else value + unit, _doubt(evidence, value), n, "")


def _doubt(evidence: Evidence, value: str) -> str:
    """The interval, in per cent where the value is told so."""
    if evidence.low is None:
        return ""
    is_percent = value.endswith("%")
    low, high = (None if end is None else f"{end:.3g}" for end in (evidence.low, evidence.high))
    if is_percent:
        low, high = (
            None if end is None else f"{end:.1%}".replace("%", "\u00a0%") for end in (evidence.low, evidence.high)
        )
    return f"{low} to {high or 'open above'}"


def measured_text(value: str, doubt: str, n: int | None, reason: str, writing: Writing | None = None) -> str:
    r"""
    A value with its doubt in brackets.

    >>> measured_text("8.2 items/l", "6.9–9.7", 120, ""), measured_text("–", "", None, "no volume was recorded")
    ('8.2 items/l (95\xa0% interval 6.9–9.7; n\xa0=\xa0120)', 'no value: no volume was recorded')
    """
    if reason:
        return f"no value: {reason}" + (f" ({doubt})" if doubt else "")
    inside = [f"95\u00a0% interval {doubt}"] if doubt else []
    if n is not None:
        inside.append(f"n\u00a0=\u00a0{(writing or Writing()).whole(n)}")
    return value + (f" ({'; '.join(inside)})" if inside else "")


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
    return ", ".join([*parts, f"in {tally.samples} of {tally.of_samples} samples"])
