"""Criteria of rules in words, as markdown: what is measured, of what, and where the bound lies."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from narrate.model.rules import Bound, Criterion, Fact, Group, Selector
from narrate.web.filters import whole_months

ALL_BUT_WOOD = frozenset({"edible", "byproduct", "propagule"})
MEASURES = {
    "items": "count of {of}",
    "density": "density of {of}",
    "mass": "grams of {of}",
    "mass_per_l": "grams of {of} per litre",
    "taxa": "kinds of plants among {of}",
    "taxa_at_30": "kinds of plants to expect among thirty of {of}",
    "presence": "presence of {of}",
    "share": "share of {of} among {to}",
    "ratio": "ratio of {of} to {to}",
    "chaff_ratio": "pieces of chaff per grain: {of} to {to}",
    "mass_ratio": "grams of {of} per gram of {to}",
    "dominance": "share of the commonest plant and part among {of}",
    "plant_dominance": "share of the commonest plant, all its parts together, among {of}",
    "samples": "samples",
    "samples_with": "samples with {of}",
    "ubiquity": "share of samples with {of}",
    "ubiquity_change": "change from the first phase to the last in the share of samples with {of}",
    "ubiquity_p": "chance of so large a change in the share of samples with {of}, if there were none",
    "samples_of": "samples taken there: {of}",
    "ubiquity_apart": "share of samples with {of}, less that with {to}",
    "ubiquity_apart_p": "chance that samples with {of} and with {to} differ so much, if at random",
    "phases_apart": "how far phases differ in samples with {of}, from 0 to 1",
    "phases_apart_p": "chance that phases differ so much in samples with {of}, if at random",
    "kinds_apart": "how far kinds of context differ in samples with {of}, from 0 to 1",
    "kinds_apart_p": "chance that kinds of context differ so much in samples with {of}, if at random",
    "areas_apart": "how far areas differ in samples with {of}, from 0 to 1",
    "areas_apart_p": "chance that areas differ so much in samples with {of}, if at random",
    "richest_share": "share of {of} that the richest sample holds",
    "richest_context_share": "share of {of} that the richest context holds",
    "times_median_density": "density of {of}, times the median",
    "phase_end": "last year of the phase",
    "litres": "litres floated",
    "recovery": "marked seeds recovered",
    "intrusions": "worst modern intrusion, from 0 (none) to 3 (many)",
    "sorted_share": "smallest share of a size class that was sorted",
    "minimum_number": "least number of individuals of {of}",
    "scaled_up": "{of}, scaled up for the unsorted share",
    "items_with_classes": "{of}, classes and marks by their ends",
    "log_ratio": "powers of ten of {of} per {to}",
    "items_per_g": "{of} per gram of {to}",
    "acorn_to_hickory": "acorn to hickory as foods, by their shells",
    "chaff_against_ear": "{of} to {to}, times what whole ears hold",
    "shannon": "Shannon's index of {of}",
    "simpson": "chance that two of {of} are of different taxa",
    "evenness": "evenness of {of}",
    "chao1": "least number of taxa of {of}, those not seen included",
    "coverage": "coverage of {of}",
    "taxa_against_pool": "taxa of {of}, more or fewer than their number explains",
    "items_wanting": "items of {of} still to count",
    "new_taxa_if_sorted": "new taxa of {of} if the rest were sorted",
    "width_if_sorted": "width left of the share of {of} among {to} if the rest were sorted",
    "density_width_if_sorted": "width left of the density of {of} if the rest were sorted",
    "scaled_up_width_if_sorted": "width left of {of} scaled up if the rest were sorted",
    "ratio_width_if_sorted": "width left of the ratio of {of} to {to} if the rest were sorted",
    "log_ratio_width_if_sorted": "width left of the powers of ten of {of} per {to} if the rest were sorted",
    "chaff_ratio_width_if_sorted": "width left of the pieces of chaff per grain, {of} to {to}, if the rest were sorted",
    "chaff_against_ear_width_if_sorted": "width left of {of} to {to} against whole ears if the rest were sorted",
    "items_per_g_width_if_sorted": "width left of {of} per gram of {to} if the rest were sorted",
    "dominance_width_if_sorted": "width left of the share of the commonest of {of} if the rest were sorted",
    "shannon_width_if_sorted": "width left of Shannon's index of {of} if the rest were sorted",
    "simpson_width_if_sorted": "width left of Simpson's index of {of} if the rest were sorted",
    "chao1_width_if_sorted": "width left of the least number of taxa of {of} if the rest were sorted",
    "coverage_width_if_sorted": "width left of the coverage of {of} if the rest were sorted",
    "taxa_against_pool_width_if_sorted": "width left of the taxa of {of} against the pool if the rest were sorted",
    "taxa_in_last_ten": "taxa that the last ten of {of} added",
    "gatherings": "fewest gatherings of {of}",
    "one_gathering_share": "share of {of} that one gathering could have given",
}
ROLES = {
    "edible": "edible parts",
    "byproduct": "by-products",
    "cob": "cob parts",
    "propagule": "seeds and fruits",
    "underground": "roots and tubers",
    "prepared": "prepared food",
    "vegetative": "vegetative parts",
    "sprouted": "sprouted grain",
}


def leaves(criteria: Iterable[Criterion]) -> tuple[Bound | Fact, ...]:
    """Every leaf once, in the order in which evidence lists them."""
    found: dict[Bound | Fact, None] = {}
    for criterion in criteria:
        if isinstance(criterion, Group):
            found.update(dict.fromkeys(leaves(criterion.criteria)))
        else:
            found[criterion] = None
    return tuple(found)


def criterion_lines(criterion: Criterion, called: Called | None = None, depth: int = 0) -> tuple[str, ...]:
    """A criterion in words, one line a leaf; groups say how their lines go together."""
    indent = "– " * depth
    if isinstance(criterion, Group):
        heading = {"all": "all of:", "any": "any of:", "none": "none of:"}[criterion.kind]
        inner = [line for part in criterion.criteria for line in criterion_lines(part, called, depth + 1)]
        return (indent + heading, *inner)
    return (indent + (fact_words(criterion) if isinstance(criterion, Fact) else bound_words(criterion, called)),)


def bound_words(bound: Bound, called: Called | None = None) -> str:
    """
    A bound in words.

    >>> from narrate.problems import Place
    >>> maize = Selector(taxon=("Zea mays",), part=("kernel", "cupule"))
    >>> bound_words(Bound(measure="items", of=maize, at_least=10, place=Place(path="x")))
    'count of kernel or cupule of *Zea mays*: at least 10'
    """
    bounds = [f"at least {bound.at_least:g}"] if bound.at_least is not None else []
    bounds += [f"at most {bound.at_most:g}"] if bound.at_most is not None else []
    doubt = ", read off the value" if bound.judged_on == "value" else ""
    return f"{measured_words(bound, called)}: {' and '.join(bounds)}{doubt}"


def measured_words(bound: Bound, called: Called | None = None) -> str:
    """What a bound measures, without its limits. `called`: how plants and parts are called; left out: by their ids."""
    of, to = (selector_words(selector or Selector(), called) for selector in (bound.of, bound.to))
    return MEASURES.get(bound.measure, bound.measure.replace("_", " ")).format(of=of, to=to)


def fact_words(fact: Fact) -> str:
    """
    A fact in words.

    >>> from narrate.problems import Place
    >>> fact_words(Fact(fact="deposit", is_any_of=("primary", "de facto"), place=Place(path="x")))
    'deposit on record is primary or de facto'
    """
    if fact.fact == "noted":
        return f"noted: {_any(fact.is_any_of)}" if fact.is_any_of else f"not noted: {_any(fact.is_none_of)}"
    name = f"{fact.fact.replace('_', ' ')} on record"
    if fact.is_any_of:
        return f"{name} is {_any(fact.is_any_of)}"
    return f"{name} is not {_any(fact.is_none_of)}"


@dataclass(frozen=True, slots=True)
class Called:
    """How some readers call plants and parts, both by id; what is not in it goes by its id."""

    plants: Mapping[str, str]
    parts: Mapping[str, str]

    def plant(self, id: str) -> str:
        return self.plants.get(id) or _latin(id)

    def part(self, id: str) -> str:
        return self.parts.get(id) or id


BY_ID = Called({}, {})


def selector_words(selector: Selector, called: Called | None = None) -> str:
    """
    Which remains are meant.

    >>> selector_words(Selector()), selector_words(Selector(tag=("native-crop",), role=("propagule",)))
    ('remains', 'seeds and fruits of native crop plants')
    >>> selector_words(Selector(taxon=("Zea mays",), not_tag=("wild",), condition=("uncharred",)))
    'uncharred remains of *Zea mays*, without wild plants'
    >>> corn = Called({"Zea mays": "corn"}, {"cupule": "bits of corn cob"})
    >>> selector_words(Selector(taxon=("Zea mays",), part=("cupule",)), corn)
    'bits of corn cob'
    >>> selector_words(Selector(taxon=("Zea mays",), part=("kernel",)), corn)
    'kernel of corn'
    """
    called = called or BY_ID
    roles = "remains other than wood" if set(selector.role) == ALL_BUT_WOOD else _any(map(_role, selector.role))
    noun = _any(map(called.part, selector.part)) or roles or "remains"
    named = [name for name in map(called.plant, selector.taxon) if f" {name} " not in f" {noun} "]
    plants = _any([*named, *selector.family, *map(_tagged, selector.tag)])
    kind = " ".join(filter(None, (_any(selector.condition), "firmly named" if selector.is_certain else "", noun)))
    return kind + (f" of {plants}" if plants else "") + "".join(f", {said}" for said in _further(selector, called))


def _further(selector: Selector, called: Called) -> list[str]:
    """What narrows the remains besides plant and part."""
    unwanted = [*map(called.plant, selector.not_taxon), *map(_tagged, selector.not_tag), *map(_role, selector.not_role)]
    said = {
        "in any condition": selector.any_condition,
        f"without {_any(unwanted)}": unwanted,
        f"of {_any(map(_status, selector.status))}": selector.status,
        f"of {_any(selector.field_weed)} weeds of fields": selector.field_weed,
        f"used as {_any(selector.use)}": selector.use,
        f"ripe within {whole_months(selector.ripens_within)}": selector.ripens_within,
        f"ripe in {whole_months(selector.ripens_in)}": selector.ripens_in,
        f"keeping: {_any(selector.keeping)}": selector.keeping,
        f"of plants sown in {_any(selector.sow)}": selector.sow,
        f"of plants of {_any(selector.soil)} soil": selector.soil,
        f"of {_any(selector.height)} plants": selector.height,
        f"{_any(selector.seed)} in form": selector.seed,
        f"of {_any(selector.life)} plants": selector.life,
        f"of plants that are {_any(selector.habit)}": selector.habit,
        f"{_any(selector.completeness)} only": selector.completeness,
        f"{_any(selector.fraction)} fraction only": selector.fraction,
        f"from {_any(selector.context_kind)}": selector.context_kind,
        f"from {_any(map(_place, selector.context_trait))}": selector.context_trait,
        f"from elsewhere than {_any(map(_place, selector.not_context_trait))}": selector.not_context_trait,
        f"not from {_any(selector.not_security)} contexts": selector.not_security,
        f"not from contexts of {_any(selector.not_deposit)} deposit": selector.not_deposit,
        "known in the region only later": selector.later_than_phase,
    }
    return [text for text, is_asked in said.items() if is_asked]


PLACES = {
    "thermal": "places of fire", "storage": "places for keeping", "refuse": "refuse", "structure": "buildings",
    "cut": "pits and cuts", "surface": "floors and surfaces", "burial": "burials", "water": "wet places",
}  # fmt: skip
"""Traits of kinds of context, as places."""


STATUSES = {
    "crop": "crops",
    "native": "plants of the region",
    "introduced": "plants brought in later",
    "either": "plants that may be either",
}
"""Whether a plant was grown, as plants."""


def _place(trait: str) -> str:
    return PLACES.get(trait, trait)


def _status(status: str) -> str:
    return STATUSES.get(status, status)


def _role(role: str) -> str:
    return ROLES.get(role, role)


def _latin(name: str) -> str:
    """The name marked as pages expect Latin names in markdown."""
    return f"*{name}*"


def _tagged(tag: str) -> str:
    return f"{tag.replace('-', ' ')} plants"


def _any(words: Iterable[str]) -> str:
    listed = list(words)
    return " or ".join([", ".join(listed[:-1]), listed[-1]] if len(listed) > 1 else listed)
