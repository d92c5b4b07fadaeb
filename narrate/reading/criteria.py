"""Selectors, bounds, facts and groups, as rules and shown measures write them."""

from __future__ import annotations

from narrate.model.plants import KEEPING
from narrate.model.rules import Bound, Criterion, Fact, Group, Selector
from narrate.model.stratigraphy import DEPOSITS, SECURITIES
from narrate.reading import yaml_nodes
from narrate.reading.asking import Asking, Field, Reads, refuse
from narrate.reading.fields import list_of, record
from narrate.reading.months import months
from narrate.reading.values import id_text, number, one_of, text, truth
from narrate.reading.yaml_nodes import Node, Sequence, value_of

EXPECTED = "a measure, a fact, or a group: all, any or none"
GROUPS = ("all", "any", "none")


def selector() -> Reads:
    """Which rows are meant; `{}` means all."""
    fields = _SELECTOR_FIELDS

    def take(node: Node, asking: Asking, whose: str, name: str) -> Selector | None:
        found = record(node, fields, asking, f"{whose}, {name}")
        return None if found is None else Selector(**found)

    return Reads("a selector such as {taxon: Zea mays, part: kernel}", take)


def criterion() -> Reads:
    """A leaf, or a group of criteria. Nesting is bounded by the depth that nodes may have."""
    return Reads(EXPECTED, _criterion)


def _criterion(node: Node, asking: Asking, whose: str, name: str) -> Criterion | None:
    if not isinstance(node, yaml_nodes.Mapping):
        refuse(node, asking, whose, name, EXPECTED)
        return None
    for key, take in _SHAPES:
        if value_of(node, key) is not None:
            return take(key, node, asking, whose, name)
    asking.tell(node, asking.wrong, f"{whose}: {name} names no measure, fact or group, expected {EXPECTED}")
    return None


def _group(kind: str, node: yaml_nodes.Mapping, asking: Asking, whose: str, name: str) -> Group | None:
    found = record(
        node, {kind: Field(reads=list_of(criterion(), at_least=1), is_needed=True)}, asking, f"{whose}, {name}"
    )
    inside = value_of(node, kind)
    if found is None or not isinstance(inside, Sequence) or len(found[kind]) != len(inside.items):
        return None
    return Group(kind=kind, criteria=found[kind], place=asking.place(node))  # type: ignore[arg-type]


def _bound(key: str, node: yaml_nodes.Mapping, asking: Asking, whose: str, name: str) -> Bound | None:
    found = record(node, _BOUND_FIELDS, asking, f"{whose}, {name}")
    if found is None:
        return None
    written = {key.text for key, _ in node.entries}
    if not written & {"at_least", "at_most"}:
        asking.tell(
            node,
            asking.missing,
            f"{whose}, {name}: measure '{found['measure']}' has no bound, expected at_least, at_most or both",
            help="add 'at_least: …' or 'at_most: …'",
        )
        return None
    # A selector or bound that could not be read must not widen what the leaf means.
    if any(part in written and part not in found for part in ("of", "to", "at_least", "at_most")):
        return None
    return Bound(**found, place=asking.place(node))


def _fact(key: str, node: yaml_nodes.Mapping, asking: Asking, whose: str, name: str) -> Fact | None:
    found = record(node, _FACT_FIELDS, asking, f"{whose}, {name}")
    if found is None:
        return None
    if not found.get("is_any_of") and not found.get("is_none_of"):
        asking.tell(
            node,
            asking.missing,
            f"{whose}, {name}: fact '{found['fact']}' is held against nothing, expected is or is_not",
            help="add 'is: […]' or 'is_not: […]'",
        )
        return None
    return Fact(**found, place=asking.place(node))


_FREE = (
    "taxon", "not_taxon", "family", "part", "role", "not_role", "tag", "not_tag", "use", "condition", "soil", "seed",
    "context_kind", "context_trait", "not_context_trait",
)  # fmt: skip
_CLOSED: dict[str, tuple[str, ...]] = {
    "status": ("crop", "native", "introduced", "either"),
    "field_weed": ("strong", "moderate", "weak", "none"),
    "keeping": KEEPING,
    "completeness": ("whole", "fragment"),
    "fraction": ("light", "heavy"),
    "sow": ("autumn", "spring", "both"),
    "height": ("low", "medium", "tall", "twining"),
    "life": ("annual", "biennial", "perennial"),
    "not_security": SECURITIES,
    "not_deposit": DEPOSITS,
    "habit": ("grass", "herb", "vine", "shrub", "tree", "aquatic", "fungus"),
}
"""Fields of selectors that take one word or a list of them: any words, and words of a closed list."""


def _selector_fields() -> dict[str, Field]:
    def listed(item: Reads) -> Field:
        return Field(reads=list_of(item, one_is_a_list=True, at_least=1))

    return {
        **{name: listed(id_text("a word")) for name in _FREE},
        **{name: Field(reads=months()) for name in ("ripens_within", "ripens_in")},
        **{name: listed(one_of(words)) for name, words in _CLOSED.items()},
        "any_condition": Field(reads=truth()),
        "certain": Field(reads=truth(), into="is_certain"),
        "later_than_phase": Field(reads=truth()),
    }


_SELECTOR_FIELDS = _selector_fields()
_BOUND_FIELDS = {
    "measure": Field(reads=id_text("the name of a measure"), is_needed=True),
    "of": Field(reads=selector()),
    "to": Field(reads=selector()),
    "at_least": Field(reads=number()),
    "at_most": Field(reads=number()),
    "name": Field(reads=id_text("a name")),
    "judged_on": Field(reads=one_of(("interval", "value"))),
}
_FACT_FIELDS = {
    "fact": Field(reads=id_text("the name of a fact"), is_needed=True),
    "is": Field(reads=list_of(text("a word"), one_is_a_list=True), into="is_any_of"),
    "is_not": Field(reads=list_of(text("a word"), one_is_a_list=True), into="is_none_of"),
}
_SHAPES = (
    *((kind, _group) for kind in GROUPS),
    ("measure", _bound),
    ("fact", _fact),
)
"""The key that tells what a criterion is, and its reader."""
