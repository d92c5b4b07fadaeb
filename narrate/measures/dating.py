"""Material for radiocarbon dating: short-lived, charred, from a secure context, away from old wood, heavy enough."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace

from narrate.model.counts import CountRow
from narrate.model.dating import DatingCandidate, DatingRanking
from narrate.model.packs import Packs
from narrate.model.project import Project
from narrate.model.sampling import Sample
from narrate.model.stratigraphy import Context

ENOUGH_G = 0.01
"""Grams of charred seed that most laboratories ask for; ask yours (common practice, no source)."""
ONE_SEASON = frozenset({"propagule", "edible", "cob", "chaff", "straw", "nutshell", "sprouted"})
FEW_YEARS = frozenset(
    {"twig", "bud", "leaf", "needle", "rind", "husk", "shank", "stalk", "culm", "culm node", "peduncle"}
)
_SECURITY = ("sealed", "open", "unknown", "disturbed")
_DEPOSIT = ("primary", "de facto", "secondary", "unknown", "tertiary")


def dating_candidates(project: Project, packs: Packs) -> DatingRanking:
    """
    Rows of the count sheets that would date well, best first.

    Ranked by, in this order: security of the context, deposit, how many years the part took to grow, whether the row is
    one item that can be dated by itself, whether it is heavy enough, certainty of the name, and mass.

    Left out, with their number: what is not charred, wood and other parts of many years, what cannot be named to a
    plant, disturbed contexts, and rows that hold nothing.
    Misleads: charred seeds move down root holes and burrows; a good rank is no proof that the item is of its context.
    Dating destroys it, and items from burials are for the descendants and the law to decide on.
    Source:   one entity at a time: Ashmore 1999, Antiquity 73:124–130 (from memory); short-lived material against old
              wood: common practice, no source.
    """
    contexts = {context.id: context for context in project.contexts}
    found_in = {sample.id: sample for sample in project.samples}
    refused: Counter[str] = Counter()
    kept: list[tuple[tuple, DatingCandidate]] = []
    for row in project.counts:
        sample = found_in[row.sample]
        context = contexts[sample.context]
        reason = _refusal(row, context, packs)
        if reason:
            refused[reason] += 1
            continue
        candidate = _candidate(row, sample, context, packs)
        kept.append((_order(row, candidate), candidate))
    kept.sort(key=lambda pair: (pair[0], str(pair[1].sample), pair[1].taxon, pair[1].part, pair[1].places))
    ranked, rank, last = [], 0, None
    for place, (order, candidate) in enumerate(kept, start=1):
        rank = rank if order == last else place
        last = order
        ranked.append(replace(candidate, rank=rank))
    return DatingRanking(candidates=tuple(ranked), refused=tuple(sorted(refused.items())))


def lifespan(part: str, packs: Packs) -> str:
    """
    How many years a part took to grow: one season, a few years, or many years.

    Source: common practice, no source.
    """
    roles = packs.words.parts[part].roles if part in packs.words.parts else frozenset()  # type: ignore[index]
    if part in FEW_YEARS:
        return "a few years"
    if "wood" not in roles and roles & ONE_SEASON and "dung" not in roles:
        return "one season"
    return "many years"


def _refusal(row: CountRow, context: Context, packs: Packs) -> str:
    if row.count.amount in ("looked for and absent", "not looked for") or (row.count.number == 0):
        return "nothing is there to date"
    if row.condition not in ("charred", "partly charred"):
        return "not charred"
    if lifespan(row.part, packs) == "many years":
        return "wood, or another part that took many years to grow or cannot be told"
    if row.identification.taxon is None and not row.identification.either:
        return "no plant that the packs know"
    if context.security == "disturbed":
        return "the context is disturbed"
    if "burial" in _traits(context, packs):
        return "from a burial: not for a list of candidates"
    return ""


def _candidate(row: CountRow, sample: Sample, context: Context, packs: Packs) -> DatingCandidate:
    name = row.identification
    years = lifespan(row.part, packs)
    items = row.count.number or 0
    merits = [f"it grew in {years}" if years == "one season" else f"it took {years} to grow"]
    merits += [f"the context is {context.security}"] if context.security == "sealed" else []
    merits += [f"the deposit is {context.deposit}"] if context.deposit in ("primary", "de facto") else []
    merits += ["it is one item"] if items == 1 else []
    doubts = [] if context.security == "sealed" else [f"the context is {context.security}"]
    doubts += [] if context.deposit in ("primary", "de facto") else [f"the deposit is {context.deposit}"]
    doubts += [] if name.is_certain else ["the name is not certain"]
    doubts += ["it was not weighed"] if row.mass_g is None else []
    if row.mass_g is not None and items and row.mass_g / items < ENOUGH_G:
        doubts.append(f"one item weighs about {row.mass_g / items:.3g} g, less than most laboratories ask for")
    worst = [k for k, amount in sample.modern_intrusions.items() if amount in ("some", "many")]
    doubts += [f"the sample holds {' and '.join(sorted(worst)).replace('_', ' ')}"] if worst else []
    taxa = [packs.taxa[t] for t in ((name.taxon,) if name.taxon else name.either) if t in packs.taxa]
    if any(t.status == "introduced" for t in taxa):
        doubts.append("the plant came from elsewhere, perhaps after the context was filled")
    return DatingCandidate(
        rank=0,
        sample=row.sample,
        context=context.id,
        taxon=str(name.taxon or "/".join(name.either)),
        part=row.part,
        items=items,
        mass_g=row.mass_g,
        lifespan=years,
        security=context.security,
        deposit=context.deposit,
        merits=tuple(merits),
        doubts=tuple(doubts),
        places=(row.place,),
    )


def _order(row: CountRow, candidate: DatingCandidate) -> tuple:
    mass = row.mass_g or 0.0
    one = mass / candidate.items if candidate.items else mass
    return (
        _SECURITY.index(candidate.security),
        _DEPOSIT.index(candidate.deposit),
        ("one season", "a few years").index(candidate.lifespan),
        not (candidate.items == 1 and one >= ENOUGH_G),
        one < ENOUGH_G,
        not row.identification.is_certain,
        -round(mass, 6),
    )


def _traits(context: Context, packs: Packs) -> frozenset[str]:
    kind = packs.words.context_kinds.get(context.kind)
    return kind.traits if kind is not None else frozenset()
