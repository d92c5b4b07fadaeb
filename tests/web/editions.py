"""A small dig for tests of the site: two contexts, three samples, one rule, narratives of one sentence each."""

from __future__ import annotations

from dataclasses import replace

from narrate.judging.judge import judge
from narrate.measures.findings import find
from narrate.model.counts import Count, CountRow
from narrate.model.edition import Edition
from narrate.model.ids import ContextId, PartId, PhaseId, RuleId, SampleId, SourceKey, StatementId, Subject, TaxonId
from narrate.model.narrative import Narrative, Section, Sentence
from narrate.model.packs import Packs, Source
from narrate.model.plants import Identification
from narrate.model.project import Author, Project
from narrate.model.refs import subject_keys, subjects
from narrate.model.rules import Bound, Limit, Rule, Selector, Statement
from narrate.model.sampling import HeavyFraction, RecoveryTest, Sample, SizeClass
from narrate.model.stratigraphy import Context, Phase
from narrate.problems import Place, Problem
from narrate.web.views import STORIES
from tests.small_packs import small_packs

FIRST = ("C1", "S1")
HERE = Place(path="packs/small.yaml", line=1)


def packs() -> Packs:
    """The small packs with one statement, one rule, one limit and one source."""
    maize = Selector(taxon=(TaxonId("Zea mays"),))
    cobs = Statement(
        id=StatementId("fuel.maize-cob"),
        question="fuel",
        title="Maize cobs as fuel",
        clause="maize cobs were burned as fuel",
        noun="the use of maize cobs as fuel",
        plain="people burned corn cobs",
        plain_noun="fires of corn cobs",
        does_not_mean="that the cobs were grown nearby",
        sources=(SourceKey("a-person-1999"),),
        place=HERE,
    )
    rule = Rule(
        id=RuleId("fuel.many_cupules"),
        title="Many cupules",
        status="draft",
        direction="for",
        statement=cobs.id,
        about=("sample", "context", "feature", "phase", "site"),
        says="there are {cupules} cupules",
        says_plain="there were many bits of cob",
        why="Cobs were thrown on the fire.",
        misleads_when=("Kernels break sooner.",),
        sources=(SourceKey("a-person-1999"),),
        known="memory-H",
        needs=(Bound(measure="items", of=maize, at_least=5, place=HERE),),
        criteria=Bound(
            measure="items", of=replace(maize, part=(PartId("cupule"),)), at_least=10, name="cupules", place=HERE
        ),
        weight="strong",
        examples=(),
        place=HERE,
    )
    limit = Limit(
        id="few", when="deposit is tertiary", grade="suggests", says="the deposit was moved", lifts="a sealed one"
    )
    return replace(
        small_packs(),
        statements={cobs.id: cobs},
        rules={rule.id: rule},
        limits=(limit,),
        questions={"fuel": "What was burned?"},
        sources={
            SourceKey("a-person-1999"): Source(
                key=SourceKey("a-person-1999"),
                authors="Person, A.",
                year="1999",
                title="An invented work for tests",
                container="Journal of Nothing 1",
                pages="1–2",
                place=HERE,
            )
        },
    )


def a_row(sample: str, taxon: str, part: str, written: str, line: int, **more: object) -> CountRow:
    number = int(written) if written.isdigit() else None
    count = Count(written=written, amount="noted as present" if number is None else "counted", number=number)
    known = taxon if taxon in packs().taxa else None
    return CountRow(
        sample=SampleId(sample),
        identification=Identification(written=taxon, taxon=TaxonId(known) if known else None),
        part=PartId(part),
        count=count,
        place=Place(path="counts/light.csv", line=line),
        **more,  # type: ignore[arg-type]
    )


def a_project(**changed: object) -> Project:
    """Two contexts in two phases; C2 is a moved deposit with a sterile second sample."""
    project = Project(
        title="A small dig",
        summary="Two pits in an invented field.",
        authors=(Author(name="A. Analyst", role="archaeobotanist"),),
        phases=(
            Phase(id=PhaseId("early"), name="Early", start=950, end=1050, dates="cal AD", place=_record(10)),
            Phase(id=PhaseId("late"), name="Late", start=1250, end=1350, dates="cal AD", place=_record(11)),
        ),
        contexts=(
            Context(id=ContextId("C1"), kind="hearth", phase=PhaseId("early"), deposit="primary", place=_record(1)),
            Context(id=ContextId("C2"), kind="pit", phase=PhaseId("late"), deposit="tertiary", place=_record(2)),
        ),
        samples=(
            Sample(
                id=SampleId("S1"),
                context=ContextId("C1"),
                volume_l=10.0,
                mesh_mm={"light": 0.25},
                size_classes=(SizeClass(name=">2 mm", proportion_sorted=0.25, written="1/4"),),
                heavy_fraction=HeavyFraction(sorted=True, finds={"sherds": "3"}),
                modern_intrusions={"rootlets": "few"},
                recovery_test=RecoveryTest(added=50, recovered=46),
                place=_record(3),
            ),
            Sample(id=SampleId("S2"), context=ContextId("C2"), volume_l=4.0, place=_record(4)),
            Sample(id=SampleId("S3"), context=ContextId("C2"), sterile=True, place=_record(5)),
        ),
        counts=(
            a_row("S1", "Zea mays", "cupule", "40", 2),
            a_row("S1", "Zea mays", "kernel", "4", 3),
            a_row("S1", "Carya", "nutshell", "x", 4),
            a_row("S2", "Zea mays", "cupule", "3", 5),
            a_row("S2", "Nonesuch indet.", "seed", "2", 6),
        ),
        place=Place(path="project.yaml", line=1),
    )
    return replace(project, **changed)  # type: ignore[arg-type]


def an_edition(audience: str = "review", project: Project | None = None, **changed: object) -> Edition:
    """Measured and judged, with a narrative for every subject that says what it found."""
    told = project or a_project()
    known = packs()
    findings, claims = find(told, known), judge(told, known, replicates=20)
    keys = subject_keys(told)
    narratives = {
        (voice, subject): _narrative(voice, subject, keys[subject], [claim.id for claim in claims.about(subject)])
        for voice in STORIES[audience]
        for subject in subjects(told)
        if subject.level != "feature"
    }
    edition = Edition(
        audience=audience,
        project=told,
        packs=known,
        findings=findings,
        claims=claims,
        narratives=narratives,
        problems=(
            Problem(place=_record(4), severity="warning", code="N207", message="sample 'S3': no volume", help="add it"),
        )
        if audience == "review"
        else (),
        version="0.0",
    )
    return replace(edition, **changed)  # type: ignore[arg-type]


def _narrative(voice: str, subject: Subject, key: str, claims: list[str]) -> Narrative:
    counted = Sentence(text="It held remains of *Zea mays*.", refs=(f"{key}/measure.items", f"{key}/record"))
    argued = Sentence(text="The remains are consistent with fires of cobs.", refs=tuple(claims) or (f"{key}/record",))
    section = Section(id="first", heading="What was found", paragraphs=((counted, argued),))
    return Narrative(subject=subject, audience=voice, title=subject.id, summary=counted, sections=(section,))


def _record(line: int) -> Place:
    return Place(path="records/all.yaml", line=line)
