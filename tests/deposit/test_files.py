"""claims.json and the tables of measures: shape, nulls, and nothing that a spreadsheet would run."""

from __future__ import annotations

import csv
import io
import json
from dataclasses import replace

from narrate.deposit.claims_file import LEFT_OUT, claims_json
from narrate.deposit.measures_file import COLUMNS, measure_tables
from narrate.deposit.plain_claims import plain_claim
from narrate.judging.judge import judge
from narrate.measures.findings import find
from narrate.model.ids import ContextId, Subject
from narrate.pipeline.judged import Judged
from tests.judging.rules import a_rule, packs_with
from tests.measures.digs import a_dig
from tests.small_packs import small_packs


def test_claims_json_has_the_shape_of_the_interface() -> None:
    """Every key that scripts rely on is there, with evidence down to file and line."""
    data = json.loads(claims_json(judge(a_dig([[("Zea mays", "cupule", 60)]]), packs_with(a_rule()))))
    claim = next(c for c in data["claims"] if c["id"] == "C1/fuel.maize-cob")
    ratio = next(e for e in claim["arguments"][0]["evidence"] if e["measure"] == "ratio.kpc")

    assert data["format"] == "narrate claims 1"
    assert claim["about"] == {"level": "context", "id": "C1"}
    assert {"question", "statement", "verdict", "support", "grade", "stability", "arguments", "limits"} <= claim.keys()
    assert {"misleads_when", "alternatives", "sources"} <= claim.keys()
    assert {"grade_without_limits", "rivals", "turned_by", "next_step"} <= claim.keys()
    assert {"rule", "direction", "weight", "verdict", "evidence"} <= claim["arguments"][0].keys()
    assert (ratio["value"], ratio["low"], ratio["unit"], ratio["rows"]) == (0.0, 0.0, "", ["counts/test.csv:2"])


def test_an_open_interval_is_null_and_not_infinity() -> None:
    """JSON has no infinity: an interval that is open above has a null high end, and the text stays valid JSON."""
    claims = judge(a_dig([[("Zea mays", "kernel", 60)]]), packs_with(a_rule()))
    text = claims_json(claims, ["C1/fuel.maize-cob"])
    data = json.loads(text, parse_constant=lambda name: (_ for _ in ()).throw(ValueError(name)))
    claim = next(c for c in data["claims"] if c["id"] == "C1/fuel.maize-cob")
    ratio = next(e for e in claim["arguments"][0]["evidence"] if e["measure"] == "ratio.kpc")

    assert ratio["value"] is None and ratio["high"] is None and ratio["low"] > 10
    assert ratio["reason"] == "nothing of the second was found"


def test_no_claims_is_still_a_document() -> None:
    """A project without rules writes an empty list."""
    assert json.loads(claims_json(judge(a_dig([[]]), small_packs()))) == {"format": "narrate claims 1", "claims": []}


def test_measures_are_one_row_a_subject_and_measure() -> None:
    """A table a level; blank is 'no value' and says why."""
    dig = a_dig([[("Zea mays", "kernel", 6)], []], litres=None)
    rows = list(csv.DictReader(io.StringIO(measure_tables(find(dig, small_packs()), small_packs())["samples.csv"])))
    density = next(r for r in rows if r["subject"] == "S1" and r["measure"] == "density")

    assert tuple(rows[0]) == COLUMNS
    assert (density["value"], density["reason"]) == ("", "no volume was recorded, or it was noted and not counted")


def test_an_id_that_looks_like_a_formula_is_not_one_in_the_table() -> None:
    """A context called '=1+1' is written so that a spreadsheet shows it."""
    dig = a_dig([[]])
    dig = replace(dig, contexts=(replace(dig.contexts[0], id=ContextId("=1+1")),))
    dig = replace(dig, samples=tuple(replace(s, context=ContextId("=1+1")) for s in dig.samples))
    table = measure_tables(find(dig, small_packs()), small_packs())["contexts.csv"]

    assert "\n'=1+1,items" in table


def test_claims_json_says_what_would_turn_a_claim() -> None:
    """Each change has its words, its number, the plant and part, the sample and the verdict it would bring."""
    data = json.loads(claims_json(judge(a_dig([[("Zea mays", "cupule", 12)]]), packs_with(a_rule()), replicates=0)))
    claim = next(c for c in data["claims"] if c["id"] == "S1/fuel.maize-cob")

    assert claim["verdict"] == "holds"
    assert claim["turned_by"][0] == {
        "says": "three fewer maize cupules",
        "items": -3,
        "taxon": "Zea mays",
        "part": "cupule",
        "condition": "charred",
        "sample": "S1",
        "verdict": "cannot tell",
    }


def test_claims_json_from_columns_is_that_of_the_claims_made(judged_example: Judged) -> None:
    """Straight from the columns that were judged, every claim of the example reads as the claim made of them does."""
    cited = {claim.id for i, claim in enumerate(judged_example.claims) if i % 5 == 0}
    lines = claims_json(judged_example.claims, cited).split("\n")[2:-2]

    assert [json.loads(line.rstrip(",")) for line in lines] == [
        plain_claim(claim, cited) for claim in judged_example.claims
    ]


def test_evidence_that_nobody_follows_back_is_left_out_and_the_head_says_so() -> None:
    """An argument that fails for a claim that does not hold has no evidence, unless a narrative cites the claim."""
    claims = judge(a_dig([[("Zea mays", "cupule", 12), ("Zea mays", "kernel", 30)]]), packs_with(a_rule()))
    bare, cited = json.loads(claims_json(claims)), json.loads(claims_json(claims, ["C1/fuel.maize-cob"]))
    of_context = [next(c for c in data["claims"] if c["id"] == "C1/fuel.maize-cob") for data in (bare, cited)]

    assert [claim["verdict"] for claim in of_context] == ["fails", "fails"]
    assert [[len(a["evidence"]) for a in claim["arguments"]] for claim in of_context] == [[0], [2]]
    assert bare["left_out"] == LEFT_OUT
    assert of_context[1] == plain_claim(claims.find(Subject(level="context", id="C1"), "fuel.maize-cob"))
