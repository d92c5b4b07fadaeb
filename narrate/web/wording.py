"""How things are named on the pages of one audience: contexts, phases, statements, parts, plants."""

from __future__ import annotations

from dataclasses import dataclass, field, replace

from markupsafe import Markup

from narrate.model.claims import Argument, LimitInForce
from narrate.model.edition import Edition
from narrate.model.findings import Tally
from narrate.model.ids import Subject
from narrate.model.measurement import Measurement
from narrate.model.plants import Taxon
from narrate.model.rules import Limit, ShownMeasure
from narrate.model.stratigraphy import Context, Phase
from narrate.telling.citations import cited_as, letter_of
from narrate.telling.how_widely import widely_told
from narrate.telling.names import Names
from narrate.web.criteria import BY_ID, Called
from narrate.web.filters import inline, known, latin, title_of_work, upper_first
from narrate.web.writing import Writing, writing_of

KNOWN_PLAINLY = {
    "read": "looked up in the work",
    "memory-H": "from memory, not looked up yet",
    "memory-M": "from memory, not looked up yet",
    "memory-L": "from memory and unsure, not looked up yet",
    "calc": "worked out here",
    "convention": "common practice, no one source",
    "judgement": "our own judgement",
}
"""How well something is known, for visitors."""


@dataclass(frozen=True, slots=True)
class Wording:
    edition: Edition
    _cited: dict[str, str] = field(default_factory=dict, repr=False, compare=False)
    """Sources as they are cited, so that each is looked up among the others once."""

    @property
    def is_public(self) -> bool:
        return self.edition.audience == "public"

    def kind(self, context: Context) -> str:
        kind = self.edition.packs.words.context_kinds.get(context.kind)
        return kind.plain if kind is not None and self.is_public and kind.plain else context.kind

    def kind_explained(self, context: Context) -> str:
        kind = self.edition.packs.words.context_kinds.get(context.kind)
        return kind.explained if kind is not None else ""

    def part(self, id: str) -> str:
        part = self.edition.packs.words.parts.get(id)  # type: ignore[call-overload]
        return part.plain if part is not None and self.is_public and part.plain else id

    def taxon_name(self, taxon: Taxon | None) -> str:
        """The common name for this audience; empty where the plant has none."""
        if taxon is None:
            return ""
        return taxon.name if self.is_public else taxon.trade_name or taxon.name

    def statement(self, id: str) -> str:
        statement = self.edition.packs.statements.get(id)  # type: ignore[call-overload]
        if statement is None:
            return id
        return upper_first(statement.plain_noun) if self.is_public and statement.plain_noun else statement.title

    def measure(self, shown: ShownMeasure) -> str:
        """The title of a shown measure."""
        return self.writing.unit(shown.plain if self.is_public and shown.plain else shown.title)

    def limit(self, limit: LimitInForce) -> str:
        """What holds a grade down; for visitors without the grade, which stands beside it."""
        if not self.is_public:
            return limit.says
        known = next((one for one in self.edition.packs.limits if one.id == limit.limit), None)
        return limit.says if known is None else self.limit_known(known)

    def limit_known(self, limit: Limit) -> str:
        return limit.plain if self.is_public and limit.plain else limit.says

    @property
    def called(self) -> Called:
        """What plants and parts are called where criteria are put in words: for the team by their ids."""
        if not self.is_public:
            return BY_ID
        packs = self.edition.packs
        return Called(
            {id: taxon.name for id, taxon in packs.taxa.items()},
            {id: part.plain for id, part in packs.words.parts.items()},
        )

    def says(self, argument: Argument) -> str:
        plain = widely_told(argument.says_plain, argument.evidence) if self.is_public else ""
        text = plain or argument.says
        return text or self.rule_title(argument.rule)

    def rule_title(self, id: str) -> str:
        rule = self.edition.packs.rules.get(id)  # type: ignore[call-overload]
        return id if rule is None else rule.title

    def phase(self, phase: Phase | None) -> str:
        return "" if phase is None else phase.name

    def years(self, phase: Phase) -> str:
        return self.writing.years(phase)

    @property
    def writing(self) -> Writing:
        return writing_of(self.edition)

    def subject(self, subject: Subject) -> str:
        """
        The subject in two or three words, such as 'Context C12'.

        The whole dig is told as such, a phase by its name.
        """
        if subject.level == "site":
            return "The whole dig"
        if subject.level == "phase":
            phase = self.edition.project.phase(subject.id)  # type: ignore[arg-type]
            return subject.id if phase is None else phase.name
        return f"{subject.level.capitalize()} {subject.id}"

    def known(self, word: str) -> str:
        """How well something is known, in words."""
        return KNOWN_PLAINLY.get(word, word) if self.is_public else known(word)

    def part_of(self, taxon_id: str, part: str) -> Markup:
        """'*Zea mays* cupule'; for visitors 'corn: bit of corn cob'."""
        taxon = self.edition.packs.taxa.get(taxon_id)  # type: ignore[call-overload]
        if not self.is_public or taxon is None or not taxon.name:
            return Markup("{} {}").format(latin(taxon_id), self.part(part))
        return Markup("{}: {}").format("unidentified" if is_unnamed(taxon) else taxon.name, self.part(part))

    def measurement(self, found: Measurement) -> Measurement:
        """A measurement in the units of these readers: visitors count kinds, not taxa."""
        return replace(found, unit="kinds") if self.is_public and found.unit == "taxa" else found

    def find(self, tally: Tally) -> Markup:
        """What was found by its name as written; for visitors the common name with the scientific one behind it."""
        written = latin(tally.written)
        taxon = self.edition.packs.taxa.get(tally.taxon) if tally.taxon is not None else None
        if not self.is_public or taxon is None or not taxon.name:
            return written
        if is_unnamed(taxon):
            return Markup("unidentified")
        doubt = "probably " if tally.only_cf else ""
        if taxon.name.lower() in taxon.id.lower():
            return Markup("{}{}").format(doubt, taxon.name)
        return Markup('{}{} <span class="small">{}</span>').format(doubt, taxon.name, latin(taxon.id))

    def find_with_part(self, tally: Tally) -> Markup:
        """Plant and part: '*Zea mays*, cupule', for visitors 'bits of corn cob'."""
        audience = self.edition.packs.audiences.get(self.edition.audience)
        if self.is_public and audience is not None:
            named = Names(audience=audience, packs=self.edition.packs).part_of_plant(tally, plural=True)
            return inline(upper_first(named))
        return Markup("{}, {}").format(latin(tally.written), self.part(tally.part))

    def source(self, key: str) -> str:
        """A source as author and year."""
        if key not in self._cited:
            source = self.edition.packs.sources.get(key)  # type: ignore[call-overload]
            among = self.edition.packs.sources.values()
            named = key if source is None else cited_as(source, among, joined=" & ") or title_of_work(source.title)
            self._cited[key] = named
        return self._cited[key]

    def letter(self, key: str) -> str:
        """The letter behind the year of a source, where two works would read alike."""
        sources = self.edition.packs.sources
        return letter_of(sources[key], sources.values())  # type: ignore[index]


def is_unnamed(taxon: Taxon) -> bool:
    """Whether the taxon stands for what nobody could name."""
    return taxon.id.lower().startswith(("indeterminate", "unidentified", "unknown"))
