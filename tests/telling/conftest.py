"""A small hand-made dig for telling: packs, records, findings and claims, with nothing read or judged."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from functools import cache
from itertools import product
from pathlib import Path
from types import SimpleNamespace
from typing import TYPE_CHECKING

import pytest
import yaml

from narrate.measures.spread import spread_changes, spread_of
from narrate.model.audiences import Audience
from narrate.model.claims import Argument, Claim, Claims, Evidence, LimitInForce
from narrate.model.findings import Findings, SubjectFindings, Tally
from narrate.model.ids import Subject
from narrate.model.measurement import Measurement
from narrate.model.narrative import Narrative
from narrate.model.packs import Packs, Words
from narrate.model.plant_groups import GroupSpread, PlantGroup
from narrate.model.plants import Condition, ContextKind, Ecology, Part, Taxon
from narrate.model.project import Project
from narrate.model.rules import Bound, Limit, Rule, Selector, Statement
from narrate.model.sampling import RecoveryTest, Sample, SizeClass
from narrate.model.stratigraphy import Context, Phase
from narrate.problems import Place
from narrate.reading.packs import read_packs
from narrate.telling.behind import is_meant
from narrate.telling.tell import narratives
from tests.telling.told_once import ToldOnce

if TYPE_CHECKING:
    from narrate.pipeline.judged import Judged

HERE = Place(path="made-by-hand.yaml", line=1)

# ---- Packs


def _part(id: str, plural: str, plain: str, plain_plural: str, *roles: str) -> Part:
    return Part(id=id, plural=plural, plain=plain, plain_plural=plain_plural, roles=frozenset(roles))


PARTS = [
    _part("kernel", "kernels", "kernel", "kernels", "edible", "propagule"),
    _part("cupule", "cupules", "bit of corn cob", "bits of corn cob", "byproduct", "cob"),
    _part("seed", "seeds", "seed", "seeds", "propagule"),
    _part("nutshell", "nutshell", "bit of nutshell", "bits of nutshell", "byproduct", "nutshell"),
    _part("acorn shell", "acorn shell", "bit of acorn shell", "bits of acorn shell", "byproduct", "nutshell"),
    _part("wood", "wood", "piece of wood", "pieces of wood", "wood"),
    _part("rind", "rind", "bit of rind", "bits of rind", "byproduct"),
]


def _taxon(id: str, name: str, plural: str, *tags: str, **more: object) -> Taxon:
    rank = more.pop("rank", "species" if " " in id else "genus")
    family = str(more.pop("family", "Fam"))
    return Taxon(id=id, rank=rank, family=family, name=name, plural=plural, tags=frozenset(tags), place=HERE, **more)


TAXA = [
    _taxon(
        "Zea mays",
        "corn",
        "corn",
        "crop",
        "tropical-crop",
        "cereal",
        trade_name="maize",
        status="crop",
        family="Poaceae",
    ),
    _taxon(
        "Chenopodium berlandieri", "goosefoot", "goosefoot", "native-crop", "starchy-seed", "small-seed", status="crop"
    ),
    _taxon("Phalaris caroliniana", "maygrass", "maygrass", "native-crop", "starchy-seed", status="crop"),
    _taxon("Carya", "hickory", "hickories", "nut", "wood"),
    _taxon("Quercus", "oak", "oaks", "nut", "wood"),
    _taxon("Passiflora incarnata", "maypop", "maypops", "fruit"),
    _taxon("Diospyros virginiana", "persimmon", "persimmons", "fruit"),
    _taxon("Amaranthus", "pigweed", "pigweed", "greens", "small-seed", ecology=Ecology(field_weed="strong")),
    _taxon("Mollugo verticillata", "carpetweed", "carpetweed", "ruderal", ecology=Ecology(field_weed="moderate")),
    _taxon("Poaceae", "grass", "grasses", "small-seed", rank="family", family="Poaceae"),
]

KINDS = [
    ContextKind(id="hearth", plural="hearths", plain="hearth", plain_plural="hearths", traits=frozenset({"thermal"})),
    ContextKind(
        id="smudge pit",
        plural="smudge pits",
        plain="smoke pit",
        plain_plural="smoke pits",
        traits=frozenset({"thermal", "cut"}),
        explained="A small pit in which damp fuel was made to smoulder for its smoke.",
    ),
    ContextKind(
        id="storage pit",
        plural="storage pits",
        plain="storage pit",
        plain_plural="storage pits",
        traits=frozenset({"storage", "cut"}),
        explained="A pit dug to keep food in.",
    ),
    ContextKind(
        id="posthole",
        plural="postholes",
        plain="posthole",
        plain_plural="postholes",
        traits=frozenset({"structure", "cut"}),
        explained="A hole dug to hold a post upright.",
    ),
    ContextKind(
        id="midden", plural="middens", plain="rubbish heap", plain_plural="rubbish heaps", traits=frozenset({"refuse"})
    ),
]


def _statement(id: str, clause: str, noun: str, plain: str, plain_noun: str, rivals: tuple[str, ...] = ()) -> Statement:
    return Statement(
        id=id,
        question=id.split(".")[0],
        title=noun,
        clause=clause,
        noun=noun,
        plain=plain,
        plain_noun=plain_noun,
        rivals=rivals,
        place=HERE,
    )


STATEMENTS = [
    _statement("fuel.wood", "wood was burned as fuel", "the use of wood as fuel", "people burned wood", "wood fires"),
    _statement(
        "fuel.maize-cob",
        "maize cobs were burned as fuel",
        "the use of maize cobs as fuel",
        "people burned corn cobs in their fires",
        "fires fed with corn cobs",
        ("processing.shelling-waste",),
    ),
    _statement(
        "fuel.nutshell",
        "nutshell was burned as fuel",
        "the use of nutshell as fuel",
        "people threw nutshells on the fire",
        "nutshells as fuel",
    ),
    _statement(
        "fuel.smudge",
        "cobs were smouldered for smoke",
        "a smudge fire",
        "people let corn cobs smoulder to make smoke",
        "a smoky fire",
    ),
    _statement(
        "processing.shelling-waste",
        "maize was shelled nearby and the cobs discarded",
        "waste from the shelling of maize",
        "people took the kernels off the cob close by",
        "leftovers from taking kernels off the cob",
        ("fuel.maize-cob",),
    ),
    _statement(
        "food.maize", "maize was eaten", "the use of maize as food", "people used corn as food", "meals with corn"
    ),
    _statement("food.nut", "nuts were eaten", "the use of nuts as food", "people used nuts as food", "meals with nuts"),
    _statement(
        "food.fruit",
        "fruits were eaten",
        "the use of fleshy fruits as food",
        "people ate wild fruits",
        "meals with fruit",
    ),
    _statement(
        "food.small-seed",
        "small seeds were eaten",
        "the use of small seeds as food",
        "people ate small seeds",
        "meals with small seeds",
    ),
    _statement(
        "food.burned-store",
        "a store burned",
        "the burning of a store",
        "stored food caught fire",
        "a store that burned",
    ),
    _statement(
        "field.weeds-with-crop",
        "weeds came in with the crop",
        "weeds brought in with the crop",
        "weeds came home with the harvest",
        "weeds among the crops",
    ),
    _statement(
        "season.early-summer",
        "plants of early summer were gathered",
        "gathering in early summer",
        "people gathered plants in early summer",
        "work in early summer",
    ),
    _statement(
        "season.autumn",
        "plants of autumn were gathered",
        "gathering in autumn",
        "people gathered plants in autumn",
        "work in autumn",
    ),
    _statement(
        "deposit.burned-in-place",
        "the remains were burned where they were found",
        "burning in place",
        "this fire burned right here",
        "a fire on this very spot",
    ),
    _statement(
        "deposit.redeposited",
        "the remains were moved here from elsewhere",
        "redeposition",
        "the burned bits were moved here from elsewhere",
        "rubbish moved from elsewhere",
    ),
    _statement(
        "integrity.modern-seeds",
        "the uncharred seeds are modern",
        "modern intrusion of uncharred seeds",
        "some seeds came in lately",
        "seeds of our own time",
    ),
    _statement(
        "integrity.disturbed",
        "the deposit was disturbed",
        "disturbance of the deposit",
        "the soil was stirred up",
        "stirred-up soil",
    ),
    _statement(
        "work.finish-sorting",
        "finishing the sorting would firm up the readings",
        "the finishing of the sorting",
        "we should look through the rest",
        "more sorting",
    ),
]

OF_RULE = {
    "fuel.cupules_outnumber_kernels": Selector(taxon=("Zea mays",), part=("cupule",)),
    "fuel.wood_present": Selector(role=("wood",)),
    "food.kernels_present": Selector(taxon=("Zea mays",), part=("kernel",)),
    "food.nutshell_present": Selector(tag=("nut",), role=("nutshell",)),
    "food.fruit_present": Selector(tag=("fruit",), role=("propagule",)),
    "food.small_seeds": Selector(tag=("native-crop",), role=("propagule",)),
}


def _rule(id: str, of: Selector) -> Rule:
    return Rule(
        id=id,
        title=id,
        status="draft",
        direction="for",
        statement="fuel.wood",
        about=("context",),
        says="",
        says_plain="",
        why="",
        misleads_when=(),
        sources=(),
        known="judgement",
        weight="weak",
        examples=(),
        place=HERE,
        criteria=Bound(measure="items", of=of, at_least=1, place=HERE),
    )


def made_packs(audiences: Mapping[str, Audience]) -> Packs:
    words = Words(
        parts={p.id: p for p in PARTS},
        conditions={"charred": Condition(id="charred", is_ancient_at_dry_sites=True)},
        context_kinds={k.id: k for k in KINDS},
        methods={"bucket": "…"},
        preservations={"charred": ("charred", "partly charred")},
    )
    return Packs(
        plant_groups=_plant_groups(),
        words=words,
        taxa={t.id: t for t in TAXA},
        taxon_lookup={t.id.lower(): t.id for t in TAXA},
        statements={s.id: s for s in STATEMENTS},
        rules={id: _rule(id, of) for id, of in OF_RULE.items()},
        audiences=audiences,
        sources={},
        weights={"weak": 0.6, "moderate": 1.2, "strong": 1.8},
        limits=(
            Limit(
                id="deposit.secondary",
                when="deposit is secondary",
                grade="supports",
                says="deposit is secondary",
                lifts="Remains of the same kind from a primary or sealed deposit",
            ),
        ),
        shown=(),
        questions={"fuel": "What was burned?", "food": "What was eaten?"},
    )


AUDIENCES = Path(__file__).parents[2] / "narrate" / "packs" / "audiences"


def made_audiences() -> dict[str, Audience]:
    """The shipped audience files, read as plain YAML."""
    audiences = {}
    for path in sorted(AUDIENCES.glob("*.yaml")):
        read = yaml.safe_load(path.read_text(encoding="utf-8"))
        read["frames"] = {grade: tuple(frames) for grade, frames in read["frames"].items()}
        audiences[read["id"]] = Audience(**{**read, "plan": tuple(read["plan"])}, place=HERE)
    return audiences


# ---- Records and what was found

Row = tuple[str, str, str, int, float | None]
"""Taxon, part, condition, count, mass."""


def made_project(contexts: tuple[Context, ...], samples: tuple[Sample, ...], phases: tuple[Phase, ...]) -> Project:
    return Project(
        title="Wend Hollow",
        phases=phases,
        contexts=contexts,
        samples=samples,
        region_packs=("eastern-north-america",),
        place=HERE,
    )


def made_findings(project: Project, packs: Packs, remains: Mapping[str, list[Row]]) -> Findings:
    """Findings of every subject, summed from the remains of its samples."""
    of_context = {s.id: s.context for s in project.samples}
    phase = {c.id: c.phase for c in project.contexts}
    groups: dict[Subject, list[Sample]] = {Subject(level="sample", id=s.id): [s] for s in project.samples}
    for context in project.contexts:
        groups[Subject(level="context", id=context.id)] = [s for s in project.samples if s.context == context.id]
    for feature in project.features():
        groups[Subject(level="feature", id=feature.id)] = [s for s in project.samples if s.context in feature.contexts]
    for one in project.phases:
        groups[Subject(level="phase", id=one.id)] = [s for s in project.samples if phase[of_context[s.id]] == one.id]
    groups[Subject(level="site", id="site")] = list(project.samples)
    subjects = {subject: _found(subject, samples, remains, packs) for subject, samples in groups.items()}
    spread = _spreads(project, packs, subjects)
    return Findings(subjects=subjects, spreads=spread, changes=spread_changes(project, spread))


@cache
def _plant_groups() -> tuple[PlantGroup, ...]:
    """The groups that come with narrate."""
    return read_packs(())[0].plant_groups


def _spreads(project: Project, packs: Packs, subjects: Mapping[Subject, SubjectFindings]) -> tuple[GroupSpread, ...]:
    """Samples with each plant group of the packs, by phase and kind of context."""
    context = {c.id: c for c in project.contexts}
    phases, kinds = (None, *(p.id for p in project.phases)), ("", *sorted({c.kind for c in project.contexts}))
    made = []
    for group, phase, kind in product(packs.plant_groups, phases, kinds):
        samples = [
            s.id
            for s in project.samples
            if phase in (None, context[s.context].phase) and kind in ("", context[s.context].kind)
        ]
        tallies = [subjects[Subject(level="sample", id=id)].tallies for id in samples]
        held = [[t.ref for t in own if t.condition == "charred" and is_meant(group.of, t, packs)] for own in tallies]
        refs = tuple(own[0] for own in held if own)
        made.append(spread_of(group.id, (phase, kind), len(refs), len(samples), refs))
    return tuple(made)


def _found(subject: Subject, samples: list[Sample], remains: Mapping[str, list[Row]], packs: Packs) -> SubjectFindings:
    summed: dict[tuple[str, str, str], list] = {}
    for sample in samples:
        for taxon, part, condition, number, mass in remains.get(sample.id, []):
            entry = summed.setdefault((taxon, part, condition), [0, None, set()])
            entry[0] += number
            entry[1] = mass if entry[1] is None else entry[1] + (mass or 0)
            entry[2].add(sample.id)
    tallies = []
    for (written, part, condition), (number, mass, where) in summed.items():
        taxon = packs.taxon_lookup.get(written.removeprefix("cf. ").lower())
        tallies.append(
            Tally(
                taxon=taxon,
                written=written,
                part=part,
                condition=condition,
                counted=number,
                estimated=float(number),
                mass_g=mass,
                only_cf=written.startswith("cf. "),
                samples=len(where),
                of_samples=len(samples),
                ref=f"{subject.id}/found.{taxon or written}.{part}",
            )
        )
    tallies.sort(key=lambda t: (-t.counted, t.written, t.part))
    litres = sum(s.volume_l or 0 for s in samples) or None
    return SubjectFindings(
        subject=subject,
        samples=len(samples),
        samples_with_remains=sum(1 for s in samples if remains.get(s.id)),
        litres=litres,
        tallies=tuple(tallies),
        measurements=_measured(tallies, litres, samples, remains),
    )


def _measured(
    tallies: list[Tally], litres: float | None, samples: list[Sample], remains: Mapping[str, list[Row]]
) -> dict[str, Measurement]:
    old = [t for t in tallies if t.condition == "charred"]
    items = sum(t.counted for t in old if t.part != "wood")
    measured = {
        "items": Measurement(measure="items", value=float(items)),
        "taxa": Measurement(measure="taxa", value=float(len({t.taxon for t in old if t.taxon}))),
        "modern_seeds": Measurement(
            measure="items", value=float(sum(t.counted for t in tallies if t.condition == "uncharred"))
        ),
        "wood_mass": Measurement(measure="mass", value=sum(t.mass_g or 0 for t in old if t.part == "wood"), unit="g"),
    }
    if litres:
        half = 1.96 * items**0.5
        measured["density"] = Measurement(
            measure="density",
            value=items / litres,
            low=max(0.0, items - half) / litres,
            high=(items + half) / litres,
            n=items,
        )
    each = [sum(r[3] for r in remains.get(s.id, []) if r[2] == "charred" and r[1] != "wood") for s in samples]
    if items:
        measured["richest_share"] = Measurement(measure="richest_share", value=max(each) / items, n=items)
    kernels = sum(t.counted for t in old if t.part == "kernel")
    cupules = sum(t.counted for t in old if t.part == "cupule")
    if cupules:
        ratio = kernels / cupules
        measured["kernels_per_cupule"] = Measurement(
            measure="ratio", value=ratio, low=ratio / 2, high=ratio * 2, n=kernels + cupules
        )
    return measured


# ---- Claims

SUPPORT = {"consistent with": 0.55, "suggests": 0.7, "supports": 0.85, "strongly supports": 0.95, "not supported": 0.2}


def said(rule: str, says: str, plain: str = "", direction: str = "for", verdict: str = "holds") -> Argument:
    """One argument as it came out."""
    return Argument(
        rule=rule,
        direction=direction,
        weight=1.2,
        verdict=verdict,
        says=says,
        says_plain=plain or says,
        evidence=(Evidence(measure="items", value=1.0, verdict=verdict),),
    )


def a_claim(
    level: str,
    id: str,
    statement: str,
    grade: str,
    *arguments: Argument,
    verdict: str = "holds",
    limits: tuple[LimitInForce, ...] = (),
    misleads: tuple[str, ...] = (),
    rivals: tuple[str, ...] = (),
    stability: float | None = 0.98,
) -> Claim:
    return Claim(
        id=f"{id}/{statement}",
        about=Subject(level=level, id=id),
        question=statement.split(".")[0],
        statement=statement,
        verdict=verdict,
        support=SUPPORT[grade],
        grade=grade,
        stability=stability,
        arguments=arguments,
        limits=limits,
        misleads_when=misleads,
        alternatives=rivals,
    )


def made_claims(*claims: Claim) -> Claims:
    by_subject: dict[Subject, tuple[Claim, ...]] = {}
    for claim in claims:
        by_subject[claim.about] = (*by_subject.get(claim.about, ()), claim)
    return Claims(by_id={c.id: c for c in claims}, by_subject=by_subject)


# ---- The dig

PHASES = (
    Phase(id="early", name="Early hamlet", start=950, end=1050, dates="cal AD", place=HERE),
    Phase(id="late", name="Late hamlet", start=1250, end=1350, dates="cal AD", place=HERE),
)
CONTEXTS = (
    Context(id="C03", kind="storage pit", phase="early", deposit="secondary", security="sealed", place=HERE),
    Context(id="C05", kind="hearth", phase="early", deposit="primary", security="sealed", place=HERE),
    Context(id="C09", kind="posthole", phase="early", deposit="secondary", security="disturbed", place=HERE),
    Context(id="C10", kind="posthole", phase="early", deposit="unknown", security="unknown", place=HERE),
    Context(id="C12", kind="hearth", phase="late", feature="F4", deposit="primary", security="sealed", place=HERE),
    Context(id="C13", kind="hearth", phase="late", feature="F4", deposit="primary", security="sealed", place=HERE),
    Context(id="C15", kind="smudge pit", phase="late", deposit="primary", security="sealed", place=HERE),
    Context(id="C18", kind="posthole", phase="late", deposit="secondary", security="open", place=HERE),
)


def _samples() -> tuple[Sample, ...]:
    made = []
    plan = {"C03": 4, "C05": 3, "C09": 1, "C10": 1, "C12": 2, "C13": 3, "C15": 2, "C18": 1}
    number = 1
    for context, many in plan.items():
        for _ in range(many):
            made.append(
                Sample(
                    id=f"S{number:03}",
                    context=context,
                    volume_l=9.0,
                    size_classes=(SizeClass(name="0.5-1 mm", proportion_sorted=0.25),) if context == "C12" else (),
                    recovery_test=RecoveryTest(added=50, recovered=31) if context == "C05" else None,
                    sterile=context == "C10",
                    place=HERE,
                )
            )
            number += 1
    return tuple(made)


MAIZE, GOOSEFOOT, MAYGRASS = "Zea mays", "Chenopodium berlandieri", "Phalaris caroliniana"
REMAINS: dict[str, list[Row]] = {
    "S001": [
        (GOOSEFOOT, "seed", "charred", 60, None),
        (MAYGRASS, "seed", "charred", 41, None),
        ("Carya", "nutshell", "charred", 22, 3.1),
    ],
    "S002": [(GOOSEFOOT, "seed", "charred", 18, None), ("Passiflora incarnata", "seed", "charred", 2, None)],
    "S003": [(MAYGRASS, "seed", "charred", 9, None), ("Amaranthus", "seed", "charred", 4, None)],
    "S004": [(GOOSEFOOT, "seed", "charred", 7, None), (MAIZE, "cupule", "charred", 1, None)],
    "S005": [
        ("Quercus", "wood", "charred", 14, 8.2),
        ("Carya", "wood", "charred", 6, 3.0),
        (GOOSEFOOT, "seed", "charred", 9, None),
    ],
    "S006": [("Carya", "nutshell", "charred", 11, 1.2), (GOOSEFOOT, "seed", "charred", 5, None)],
    "S007": [(MAYGRASS, "seed", "charred", 3, None)],
    "S008": [("Mollugo verticillata", "seed", "uncharred", 143, None), (MAIZE, "kernel", "charred", 1, None)],
    "S010": [
        (MAIZE, "cupule", "charred", 60, None),
        (MAIZE, "kernel", "charred", 7, None),
        ("Carya", "nutshell", "charred", 12, 2.2),
        ("Quercus", "wood", "charred", 12, 6.1),
        ("Carya", "wood", "charred", 5, 3.4),
    ],
    "S011": [
        (MAIZE, "cupule", "charred", 36, None),
        (MAIZE, "kernel", "charred", 5, None),
        (GOOSEFOOT, "seed", "charred", 22, None),
        ("Carya", "nutshell", "charred", 6, 1.2),
        ("Passiflora incarnata", "seed", "charred", 2, None),
        ("cf. Diospyros virginiana", "seed", "charred", 1, None),
    ],
    "S012": [(MAIZE, "cupule", "charred", 9, None), (MAIZE, "kernel", "charred", 4, None)],
    "S013": [(MAIZE, "cupule", "charred", 6, None), ("Carya", "nutshell", "charred", 4, 0.5)],
    "S014": [(MAIZE, "kernel", "charred", 5, None)],
    "S015": [(MAIZE, "cupule", "charred", 340, None), (MAIZE, "kernel", "charred", 4, None)],
    "S016": [(MAIZE, "cupule", "charred", 212, None), ("Poaceae", "seed", "charred", 1, None)],
    "S017": [(MAIZE, "cupule", "charred", 1, None), (GOOSEFOOT, "seed", "charred", 2, None)],
}

COBS = "Kernels puff and break at high heat sooner than cupules, which lowers the ratio without any human choice."


def _claims() -> Claims:
    cob = said(
        "fuel.cupules_outnumber_kernels",
        "cob parts outnumber kernels (12 to 96)",
        "there were many more bits of cob than kernels",
    )
    hearth = said("fuel.from_fireplace", "the remains come from a sealed hearth", "they lay in a fireplace")
    secondary = LimitInForce(
        limit="deposit.secondary",
        says="deposit is secondary: grade held at 'supports'",
        lifts="Remains of the same kind from a primary or sealed deposit",
        grade="supports",
    )
    maize = said("food.kernels_present", "kernels were found (12)", "we found kernels of corn")
    nut = said("food.nutshell_present", "hickory nutshell was present (18)", "there were shells of hickory nuts")
    fruit = said("food.fruit_present", "maypop seeds lay in the same fill", "there were seeds of maypop too")
    seeds = said(
        "food.small_seeds", "seeds of native crops were numerous (126)", "there were many seeds of garden crops"
    )
    return made_claims(
        a_claim(
            "context",
            "C12",
            "fuel.maize-cob",
            "strongly supports",
            cob,
            hearth,
            misleads=(COBS,),
            rivals=("processing.shelling-waste",),
        ),
        a_claim(
            "context",
            "C12",
            "processing.shelling-waste",
            "suggests",
            cob,
            said(
                "p.x",
                "kernels are far fewer than the two to a cupule of a whole ear",
                "a whole ear has two kernels for each bit of cob",
            ),
        ),
        a_claim(
            "context",
            "C12",
            "fuel.wood",
            "supports",
            said("fuel.wood_present", "wood charcoal was weighed at 9.5 g", "there was wood charcoal"),
        ),
        a_claim(
            "context",
            "C12",
            "fuel.nutshell",
            "consistent with",
            said("fuel.n", "nutshell lay in the ash", "there were shells in the ash"),
        ),
        a_claim("context", "C12", "food.maize", "supports", maize),
        a_claim("context", "C12", "food.nut", "supports", nut),
        a_claim("context", "C12", "food.fruit", "supports", fruit, stability=0.74),
        a_claim(
            "context",
            "C12",
            "season.autumn",
            "suggests",
            said(
                "season.a", "hickory nuts and goosefoot ripen from September to November", "hickory nuts fall in autumn"
            ),
        ),
        a_claim(
            "context",
            "C12",
            "deposit.burned-in-place",
            "supports",
            said("deposit.p", "the deposit is primary and lies in a fireplace", "the ash lay where the fire was"),
        ),
        a_claim(
            "context",
            "C12",
            "field.weeds-with-crop",
            "not supported",
            said("field.x", "weeds were few", verdict="cannot tell"),
            verdict="cannot tell",
        ),
        a_claim(
            "context",
            "C12",
            "work.finish-sorting",
            "supports",
            said("work.s", "only a quarter of the smallest class was sorted", ""),
        ),
        a_claim(
            "context",
            "C13",
            "fuel.maize-cob",
            "suggests",
            said(
                "fuel.cupules_outnumber_kernels",
                "cob parts outnumber kernels (9 to 15)",
                "there were more bits of cob than kernels",
            ),
            stability=0.81,
        ),
        a_claim(
            "context",
            "C13",
            "food.maize",
            "suggests",
            said("food.kernels_present", "kernels were found (9)", "we found kernels of corn"),
        ),
        a_claim(
            "context",
            "C15",
            "fuel.smudge",
            "strongly supports",
            said(
                "fuel.cupules_outnumber_kernels",
                "nearly all of the fill is cob (552 cupules)",
                "nearly all of it was corn cob",
            ),
            hearth,
        ),
        a_claim(
            "context",
            "C15",
            "fuel.maize-cob",
            "supports",
            said(
                "fuel.cupules_outnumber_kernels",
                "cob parts outnumber kernels (4 to 552)",
                "there were far more bits of cob than kernels",
            ),
        ),
        a_claim("context", "C03", "food.small-seed", "supports", seeds, limits=(secondary,)),
        a_claim("context", "C03", "food.nut", "suggests", nut, limits=(secondary,)),
        a_claim("context", "C03", "food.fruit", "suggests", fruit, limits=(secondary,)),
        a_claim(
            "context",
            "C03",
            "season.early-summer",
            "suggests",
            said("season.e", "maygrass ripens in May and June", "maygrass ripens in early summer"),
        ),
        a_claim(
            "context",
            "C03",
            "season.autumn",
            "suggests",
            said("season.a", "goosefoot and hickory nuts ripen in autumn", "goosefoot ripens in autumn"),
        ),
        a_claim(
            "context",
            "C03",
            "deposit.redeposited",
            "suggests",
            said("deposit.q", "the deposit is secondary", "the soil was thrown in"),
        ),
        a_claim(
            "context",
            "C05",
            "fuel.wood",
            "supports",
            said("fuel.wood_present", "wood charcoal was plentiful (11.2 g)", "there was much wood charcoal"),
        ),
        a_claim(
            "context",
            "C05",
            "food.small-seed",
            "not supported",
            said("food.small_seeds", "seeds were few", verdict="cannot tell"),
            verdict="cannot tell",
        ),
        a_claim(
            "context",
            "C05",
            "season.autumn",
            "not supported",
            said("season.a", "few plants", verdict="cannot tell"),
            verdict="cannot tell",
        ),
        a_claim(
            "context",
            "C09",
            "integrity.modern-seeds",
            "strongly supports",
            said("integrity.m", "143 seeds are uncharred", "many seeds were never burned"),
        ),
        a_claim(
            "context",
            "C09",
            "integrity.disturbed",
            "supports",
            said("integrity.d", "rodent signs were many", "animals had dug here"),
        ),
        a_claim(
            "phase",
            "early",
            "food.small-seed",
            "supports",
            said(
                "food.small_seeds",
                "seeds of native crops occur in seven of nine samples",
                "seeds of garden crops were in most samples",
            ),
        ),
        a_claim(
            "phase",
            "late",
            "fuel.maize-cob",
            "strongly supports",
            said(
                "fuel.cupules_outnumber_kernels",
                "cupules outnumber kernels in all thermal features",
                "bits of cob were in every fireplace",
            ),
        ),
        a_claim(
            "phase",
            "late",
            "food.maize",
            "supports",
            said("food.kernels_present", "kernels occur in five samples", "kernels of corn were in five samples"),
        ),
        a_claim("site", "site", "food.maize", "supports", maize),
        a_claim("site", "site", "food.nut", "supports", nut),
        a_claim(
            "site",
            "site",
            "fuel.maize-cob",
            "strongly supports",
            said(
                "fuel.cupules_outnumber_kernels",
                "cupules outnumber kernels (31 to 665)",
                "there were far more bits of cob than kernels",
            ),
        ),
        a_claim(
            "sample",
            "S010",
            "fuel.maize-cob",
            "strongly supports",
            said(
                "fuel.cupules_outnumber_kernels",
                "cob parts outnumber kernels (7 to 60)",
                "bits of cob outnumber kernels",
            ),
        ),
    )


Told = dict[Subject, Narrative]


@pytest.fixture(scope="session")
def packs() -> Packs:
    return made_packs(made_audiences())


@pytest.fixture(scope="session")
def project() -> Project:
    return made_project(CONTEXTS, _samples(), PHASES)


@pytest.fixture(scope="session")
def findings(project: Project, packs: Packs) -> Findings:
    return made_findings(project, packs, REMAINS)


@pytest.fixture(scope="session")
def claims() -> Claims:
    return _claims()


@pytest.fixture(scope="session")
def told(project: Project, packs: Packs, findings: Findings, claims: Claims) -> Callable[[str], Told]:
    """Narratives of the small dig for an audience."""
    cache: dict[str, Told] = {}

    def tell(audience: str) -> Told:
        if audience not in cache:
            cache[audience] = narratives(project, packs, findings, claims, audience)
        return cache[audience]

    return tell


@pytest.fixture(scope="session")
def makers() -> SimpleNamespace:
    """What makes findings and arguments by hand, for tests that make up digs of their own."""
    return SimpleNamespace(findings=made_findings, said=said)


if __name__ == "__main__":
    import sys

    shipped = made_packs(made_audiences())
    dig = made_project(CONTEXTS, _samples(), PHASES)
    for narrative in narratives(dig, shipped, made_findings(dig, shipped, REMAINS), _claims(), sys.argv[1]).values():
        print(
            f"=== {narrative.subject.level} {narrative.title} | {narrative.summary.text if narrative.summary else ''}"
        )
        print(narrative.text, end="\n\n")


@pytest.fixture(scope="session")
def open_example(judged_example: Judged) -> Judged:
    """What may be disclosed of the example, judged from that alone."""
    from narrate.pipeline.judged import disclosed_part

    return disclosed_part(judged_example)


@pytest.fixture(scope="session")
def told_of_example(judged_example: Judged) -> ToldOnce:
    """All narratives of the example, by audience."""
    return ToldOnce(judged_example)


@pytest.fixture(scope="session")
def told_of_open(open_example: Judged) -> ToldOnce:
    """All narratives of what may be disclosed of the example, by audience."""
    return ToldOnce(open_example)
