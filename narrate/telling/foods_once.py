"""Food readings that would tell the same plants twice: one rule for every audience and for all comparisons."""

from __future__ import annotations

from narrate.model.claims import GRADE_NAMES, Claim
from narrate.model.ids import TaxonId
from narrate.telling.behind import remains_behind
from narrate.telling.last_asked import LastAsked
from narrate.telling.page import Dig

TAGS = {
    "food.cereal": "cereal",
    "food.pulse": "pulse",
    "food.oil-seed": "oily-seed",
    "food.nut": "nut",
    "food.fruit": "fruit",
    "food.small-seed": "small-seed",
    "food.native-seed-crops": "native-crop",
}
"""Food statements and the tag that their plants bear; a rule may look at other plants as well."""

LISTED = 4
"""Plants of one reading that are all named; of more, the chief two are."""

CHIEF = 2

WILD_SEEDS = 10
"""Fewer small seeds of wild plants than this are no reading beside the native crops (judgement of the makers)."""


def is_told_with_another_food(dig: Dig, claim: Claim) -> bool:
    """
    Whether a food would be told twice, because a firmer reading of the same subject tells its plants.

    Sumpweed is an oily seed and a native crop. Where the crops are read and the oily seeds are only in keeping with
    that, the second says nothing; where they are suggested by themselves and the first names other crops as its chief
    plants, it does.
    """
    if claim.statement not in TAGS:
        return False
    known, asked = _KNOWN.about(dig.packs, dig.findings, dig.claims), (claim.id, dig.ancient)
    if asked not in known:
        known[asked] = _is_told_with_another(dig, claim)
    return bool(known[asked])


_KNOWN = LastAsked()


def _is_told_with_another(dig: Dig, claim: Claim) -> bool:
    if claim.statement == "food.small-seed" and _is_native_crops(dig, claim):
        return True
    firmer = [other for other in dig.claims.holding(claim.about) if _is_firmer(other, claim)]
    own = _plants(dig, claim) if firmer else {}
    for other in firmer if own else ():
        theirs = _plants(dig, other)
        named = list(theirs) if len(theirs) <= LISTED else list(theirs)[:CHIEF]
        if own.keys() <= theirs.keys() and (_rank(claim) < _SUGGESTS or next(iter(own)) in named):
            return True
    return False


def _is_native_crops(dig: Dig, claim: Claim) -> bool:
    """
    Whether small seeds are the native seed crops, whose own reading is as firm.

    Chenopod, maygrass and their like are small seeds and crops at once; only seeds beside them are another food.
    """
    crops = dig.claims.find(claim.about, "food.native-seed-crops")
    if crops is None or crops.verdict != "holds" or _rank(crops) < _rank(claim):
        return False
    taxa = dig.packs.taxa
    wild = {taxon: counted for taxon, counted in _plants(dig, claim).items() if "native-crop" not in taxa[taxon].tags}
    return sum(wild.values()) < WILD_SEEDS


_SUGGESTS = GRADE_NAMES.index("suggests")


def _rank(claim: Claim) -> int:
    return GRADE_NAMES.index(claim.grade)


def _is_firmer(other: Claim, claim: Claim) -> bool:
    if other.statement not in TAGS or other.statement == claim.statement or other.verdict != "holds":
        return False
    return (_rank(other), other.support, other.statement) > (_rank(claim), claim.support, claim.statement)


def _plants(dig: Dig, claim: Claim) -> dict[TaxonId, int]:
    """Plants of the statement's own sort behind a claim, and how many of each, the commonest first."""
    held, taxa = dig.found(claim.about), dig.packs.taxa
    tallies = [t for t in held.tallies if t.condition in dig.ancient and t.taxon in taxa] if held is not None else []
    found: dict[TaxonId, int] = {}
    for tally in remains_behind(claim, dig.packs, tallies):
        if tally.taxon is not None and TAGS[claim.statement] in taxa[tally.taxon].tags:
            found[tally.taxon] = found.get(tally.taxon, 0) + tally.counted
    return dict(sorted(found.items(), key=lambda pair: (-pair[1], pair[0])))
