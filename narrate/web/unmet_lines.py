"""What does not hold, as lines of the page of evidence, each with what was wanting; no template loops over them."""

from __future__ import annotations

from markupsafe import Markup, escape

from narrate.model.claim_columns import Unmet
from narrate.model.ids import RuleId, StatementId, Subject
from narrate.model.rules import Verdict
from narrate.web.claim_views import ClaimView
from narrate.web.evidence import Opener
from narrate.web.filters import inline
from narrate.web.links import anchor, relative


class UnmetLines:
    """Writes the lines of the pages of one site. Most subjects want the same few things, so pieces are kept."""

    def __init__(self, opener: Opener) -> None:
        self._opener = opener
        self._claims = opener.edition.claims
        self._rules: dict[tuple[str, str], str] = {}

    def of(self, subject: Subject, verdict: Verdict, page: str) -> Markup:
        """
        A line for each claim about a subject with that verdict: its title, and of each argument that came out so the
        first thing that was wanting.
        """
        outcomes = self._claims.outcomes(subject)
        return Markup(
            "".join([self._line(subject, o.statement, verdict, page) for o in outcomes if o.verdict == verdict])
        )

    def listed(self, claim: ClaimView, verdict: Verdict) -> Markup:
        """Arguments of one claim that came out so, with all that was wanting; empty where there is none."""
        unmet = self._claims.unmet(claim.about, claim.statement, verdict)
        lines = [f"<li><em>{verdict}</em> {self._whole(one)}</li>\n" for one in unmet]
        return Markup(f'<ul class="open">\n{"".join(lines)}</ul>\n' if lines else "")

    def _line(self, subject: Subject, statement: StatementId, verdict: Verdict, page: str) -> str:
        unmet = self._claims.unmet(subject, statement, verdict, 1)
        said = "; ".join(
            [self._rule(one.rule, page) + "".join([f", {w}" for w in self._wanting(one)]) for one in unmet]
        )
        name = anchor(f"{self._opener.keys[subject]}/{statement}")
        title = escape(self._opener.wording.statement(statement))
        return f'<li id="claim-{name}"><b>{title}</b>{": " if said else ""}{said}</li>\n'

    def _whole(self, one: Unmet) -> str:
        title, wanting = escape(self._opener.wording.rule_title(one.rule)), "; ".join(self._wanting(one))
        return f"{title}: {wanting}" if wanting else title

    def _wanting(self, one: Unmet) -> list[str]:
        figures = [self._opener.figure(one.rule, one.of, at, evidence) for at, evidence in one.wanting]
        return [f"{inline(figure.title)} {escape(figure.text)}" for figure in figures]

    def _rule(self, rule: RuleId, page: str) -> str:
        """A rule with the way to it, which is the same from all pages of one folder."""
        key = (page.rpartition("/")[0], rule)
        if key not in self._rules:
            links = self._opener.links
            way = relative(links.to("rule", rule) or links.to("page", "rules"), page)
            self._rules[key] = f'<a href="{escape(way)}">{escape(self._opener.wording.rule_title(rule))}</a>'
        return self._rules[key]
