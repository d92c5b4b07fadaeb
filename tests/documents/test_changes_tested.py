"""Tables of plants and woods that were tested between phases: each cell counted again from the sheets."""

from __future__ import annotations

from dataclasses import replace

import pytest
from scipy.stats import fisher_exact

from narrate.documents.blocks import Heading, Paragraph, Table
from narrate.documents.changes_tested import changes_tested
from narrate.documents.outline import outline
from narrate.measures.findings import find
from narrate.model.edition import Edition
from narrate.pipeline.editions import edition_of
from narrate.pipeline.judged import Judged
from narrate.telling.tell import narratives


@pytest.fixture(scope="module")
def whole(judged_example: Judged) -> Edition:
    w = judged_example
    told = {("report", s): n for s, n in narratives(w.project, w.packs, w.findings, w.claims, "report").items()}
    return edition_of("review", w, told, (), "test")


@pytest.fixture(scope="module")
def tables(whole: Edition) -> dict[str, Table]:
    return {table.anchor: table for table in changes_tested(whole)}


def row(table: Table, latin: str) -> tuple[str, ...]:
    return next(cells for cells in table.rows if cells[0].startswith(f"*{latin}*"))


def test_samples_and_contexts_are_those_of_the_sheets(tables: dict[str, Table], judged_example: Judged):
    """Black locust is in no early context and in seven of 11 later ones, counted from the rows of wood."""
    project = judged_example.project
    phase = {s.id: (project.context(s.context).phase, s.context) for s in project.samples}
    held = {r.sample for r in project.counts if r.identification.taxon == "Robinia pseudoacacia" and r.part == "wood"}
    samples = [sum(phase[s][0] == p for s in held) for p in ("early", "late")]
    contexts = [len({phase[s][1] for s in held if phase[s][0] == p}) for p in ("early", "late")]

    cells = row(tables["woods-tested"], "Robinia pseudoacacia")
    assert [int(cells[1]), int(cells[2])] == samples
    assert [int(cells[5]), int(cells[6])] == contexts == [0, 7]


def test_p_of_each_row_is_that_of_scipy(tables: dict[str, Table]):
    """Fisher's exact test by scipy of the numbers that stand in the row and in the heads of its columns."""
    for table in tables.values():
        of = [int(head.rpartition(" ")[2]) for head in table.columns if " of " in head]
        for cells in table.rows:
            k = [int(cells[i]) for i in (1, 2, 5, 6)]
            for pair, total, told in ((k[:2], of[:2], cells[3]), (k[2:], of[2:], cells[7])):
                p = fisher_exact([[x, n - x] for x, n in zip(pair, total, strict=True)])[1]
                assert p < 0.0001 if told == "<0.0001" else float(told) == pytest.approx(p, rel=0.06), (cells, p, of)


def test_all_that_were_tested_stand_in_the_tables(tables: dict[str, Table], judged_example: Judged):
    """21 plants and 12 woods; none is left out because it did not change."""
    found = judged_example.findings

    assert len(tables["plants-tested"].rows) == len(found.plants) == 21
    assert len(tables["woods-tested"].rows) == len(found.woods) == 12


def test_the_change_leads_to_the_tables(whole: Edition):
    """Right below the heading of the change, a small line says where the figures stand."""
    blocks = list(outline(whole, {}))
    at = next(i for i, b in enumerate(blocks) if isinstance(b, Heading) and b.text == "Change through time")
    lead = blocks[at + 1]

    assert isinstance(lead, Paragraph) and lead.kind == "pointer"
    assert "{plants-tested}" in lead.text and "{woods-tested}" in lead.text


def test_a_dig_of_one_phase_has_no_such_tables(judged_example: Judged):
    """Nothing is compared where there is but one phase."""
    project = judged_example.project
    kept = tuple(c for c in project.contexts if c.phase == "late")
    ids = {s.id for s in project.samples if s.context in {c.id for c in kept}}
    alone = replace(
        project, contexts=kept, samples=tuple(s for s in project.samples if s.id in ids),
        counts=tuple(r for r in project.counts if r.sample in ids),
        phases=tuple(p for p in project.phases if p.id == "late"),
    )  # fmt: skip
    one = replace(judged_example, project=alone, findings=find(alone, judged_example.packs))

    assert list(changes_tested(edition_of("review", one, {}, (), "test"))) == []


def test_what_contexts_do_not_uphold_is_seen_in_its_row(tables: dict[str, Table]):
    """Maize: five of 10 contexts, then 10 of 11; scipy.stats.fisher_exact gives 0.063."""
    assert row(tables["plants-tested"], "Zea mays")[5:8] == ("5", "10", "0.063")
