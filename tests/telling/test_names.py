"""What remains and plants are called, for each audience."""

from __future__ import annotations

from dataclasses import replace

import pytest

from narrate.model.findings import Tally
from narrate.model.packs import Packs
from narrate.telling.names import Names


def a_tally(written: str, part: str, packs: Packs, **more: object) -> Tally:
    taxon = packs.taxon_lookup.get(written.removeprefix("cf. ").lower())
    counted = more.pop("counted", 12)
    return Tally(
        taxon=taxon, written=written, part=part, condition="charred", counted=counted, estimated=float(counted),
        only_cf=written.startswith("cf. "), **more,
    )  # type: ignore[arg-type] # fmt: skip


def names_for(audience: str, packs: Packs) -> Names:
    return Names(audience=packs.audiences[audience], packs=packs)


SHELL, WOOD, TREE = "hickory nutshell", "hickory charcoal", "from a tree with hard-shelled nuts"


@pytest.mark.parametrize(
    ("written", "part", "counted", "report", "public"),
    [
        ("Zea mays", "kernel", 12, "12 maize kernels (*Zea mays*)", "12 corn kernels"),
        ("Zea mays", "kernel", 1, "one maize kernel (*Zea mays*)", "one corn kernel"),
        ("Zea mays", "cupule", 96, "96 maize cupules (*Zea mays*)", "96 bits of corn cob"),
        ("Carya", "nutshell", 9, f"nine pieces of {SHELL} (*Carya* sp.)", f"nine bits of {SHELL} ({TREE})"),
        ("Carya", "wood", 5, f"five fragments of {WOOD} (*Carya* sp.)", f"five fragments of {WOOD} ({TREE})"),
        ("Quercus", "acorn shell", 1, "one piece of acorn shell (*Quercus* sp.)", "one bit of acorn shell"),
        ("Poaceae", "seed", 2, "two grass seeds (Poaceae)", "two grass seeds"),
        ("Indeterminate", "seed", 3, "three unidentified seeds", "three unidentified seeds"),
        ("Zea mays/Poaceae", "seed", 2, "two maize or grass seeds", "two corn or grass seeds"),
        ("Nomen *ignotum*", "seed", 2, r"two seeds recorded as “Nomen \*ignotum\*”", "two other seeds"),
        (
            "cf. Passiflora incarnata", "seed", 1, "one probable maypop seed (cf. *Passiflora incarnata*)",
            "one probable maypop seed (from a sweet fruit of a wild vine)",
        ),
    ],
)
def test_finds_are_named_for_their_readers(
    written: str, part: str, counted: int, report: str, public: str, packs: Packs
):
    """Trade names with Latin for specialists, plain names with a gloss for visitors; numbers agree."""
    tally = a_tally(written, part, packs, counted=counted)

    assert names_for("report", packs).remains(tally) == report
    assert names_for("public", packs).remains(tally) == public


def test_latin_is_given_once(packs: Packs):
    """The second time a plant is named on a page, its Latin is left out."""
    names = names_for("report", packs)
    tally = a_tally("Zea mays", "kernel", packs)
    names.remains(tally)

    assert names.remains(tally) == "12 maize kernels"


def test_weighed_and_noted_finds_have_no_number(packs: Packs):
    """A find that was only weighed is told by its mass, one only noted as present is told so."""
    names = names_for("report", packs)
    weighed = a_tally("Carya", "nutshell", packs, counted=0, mass_g=3.4)
    noted = replace(a_tally("Zea mays", "cupule", packs, counted=0), is_noted=True)

    assert names.remains(weighed) == "3.4 g of hickory nutshell (*Carya* sp.)"
    assert names.remains(noted) == "maize cupules (*Zea mays*, noted as present)"


def test_parts_of_one_plant_are_grouped(packs: Packs):
    """Cupules and kernels are told together, with the plant named once."""
    names = names_for("report", packs)
    tallies = [a_tally("Zea mays", "cupule", packs, counted=96), a_tally("Zea mays", "kernel", packs, counted=1)]

    assert names.grouped(tallies, at_most=3) == ["96 cupules and one kernel of maize (*Zea mays*)"]


@pytest.mark.parametrize(
    ("written", "food"),
    [("Carya", "hickory nuts"), ("Quercus", "acorns"), ("Zea mays", "maize"), ("Passiflora incarnata", "maypop")],
)
def test_plants_as_food(written: str, food: str, packs: Packs):
    """Nut trees are named by their nuts."""
    assert names_for("report", packs).food(packs.taxon_lookup[written.lower()]) == food


@pytest.mark.parametrize(
    ("counted", "fragments", "doubtful", "both", "told"),
    [
        (12, 0, 0, 0, ""),
        (12, 3, 0, 0, "three of them fragments"),
        (12, 0, 2, 0, "two of them cf."),
        (12, 1, 1, 1, "one of them a fragment named cf."),
        (12, 2, 2, 2, "two of them fragments named cf."),
        (14, 7, 3, 3, "seven of them fragments, three of these cf."),
        (14, 7, 1, 0, "seven of them fragments, one other cf."),
        (14, 7, 3, 2, "seven of them fragments, two of these cf., one other cf."),
        (14, 2, 5, 2, "two of them fragments, these and three others cf."),
        (6, 6, 2, 2, "all of them fragments, two of them cf."),
    ],
)
def test_fragments_named_cf_are_told_as_one_thing(
    counted: int, fragments: int, doubtful: int, both: int, told: str, packs: Packs
):
    """What is broken and in doubt is one find; what is in doubt among the whole ones is another."""
    tally = a_tally(
        "Zea mays", "kernel", packs, counted=counted, fragments=fragments, doubtful=doubtful, doubtful_fragments=both
    )

    assert names_for("report", packs).doubts(tally) == told
