"""Values of the model, built by naming only what matters to a test."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from narrate.model.counts import Count, CountRow
from narrate.model.ids import ContextId, PartId, PhaseId, SampleId, TaxonId
from narrate.model.plants import Identification
from narrate.model.project import Disclosure, Project
from narrate.model.sampling import RecoveryTest, Sample, SizeClass
from narrate.model.stratigraphy import Context, Phase
from narrate.problems import Place

HERE = Place(path="tests/built.yaml", line=1)


def a_phase(id: str = "early", start: int | None = 950, end: int | None = 1050, **fields: Any) -> Phase:
    return Phase(**{"id": PhaseId(id), "name": id.capitalize(), "start": start, "end": end, "place": HERE, **fields})


def a_context(id: str = "C1", kind: str = "hearth", **fields: Any) -> Context:
    """A sealed primary hearth of the phase 'early' unless said otherwise."""
    known = {"phase": PhaseId("early"), "deposit": "primary", "security": "sealed", "place": HERE}
    return Context(**{"id": ContextId(id), "kind": kind, **known, **fields})


def a_sample(id: str = "S1", context: str = "C1", volume_l: float | None = 10.0, **fields: Any) -> Sample:
    """Ten litres from C1, sorted whole. `proportion_sorted=0.25` gives it one size class sorted to a quarter."""
    share = fields.pop("proportion_sorted", None)
    if share is not None:
        fields["size_classes"] = (SizeClass(name="all", proportion_sorted=share),)
    recovery = fields.pop("recovery", None)
    if recovery is not None:
        fields["recovery_test"] = RecoveryTest(added=recovery[0], recovered=recovery[1])
    return Sample(**{"id": SampleId(id), "context": ContextId(context), "volume_l": volume_l, "place": HERE, **fields})


def a_count(written: str = "1") -> Count:
    """What a whole number, 'x' or nothing in the count column means."""
    if not written:
        return Count(written="", amount="weighed only")
    if not written.isdigit():
        return Count(written=written, amount="noted as present")
    number = int(written)
    if number == 0:
        return Count(written="0", amount="looked for and absent")
    return Count(written=written, amount="counted", number=number)


def a_name(written: str = "Zea mays", **fields: Any) -> Identification:
    """An identification of the taxon as written; 'cf. ' before it makes it uncertain."""
    bare = written.removeprefix("cf. ")
    qualifier = "cf." if bare != written else ""
    return Identification(**{"written": written, "taxon": TaxonId(bare), "qualifier": qualifier, **fields})


def a_row(
    sample: str = "S1", taxon: str = "Zea mays", part: str = "kernel", count: int | str = 1, **fields: Any
) -> CountRow:
    """One row of a count sheet; line numbers are the caller's matter (`line=7`)."""
    line = fields.pop("line", 2)
    place = Place(path="counts/built.csv", line=line)
    return CountRow(
        **{
            "sample": SampleId(sample),
            "identification": a_name(taxon),
            "part": PartId(part),
            "count": a_count(str(count)),
            "place": place,
            **fields,
        }
    )


def a_project(
    contexts: Iterable[Context] | None = None,
    samples: Iterable[Sample] | None = None,
    counts: Iterable[CountRow] = (),
    restricted: Iterable[str] = (),
    **fields: Any,
) -> Project:
    """One phase, one context, one sample, and the rows given."""
    return Project(
        **{
            "title": "Wend Hollow",
            "region_packs": ("eastern-north-america",),
            "phases": (a_phase(),),
            "contexts": tuple(contexts) if contexts is not None else (a_context(),),
            "samples": tuple(samples) if samples is not None else (a_sample(),),
            "counts": tuple(counts),
            "disclosure": Disclosure(restricted_contexts=frozenset(ContextId(id) for id in restricted)),
            "place": Place(path="project.yaml", line=1),
            **fields,
        }
    )
