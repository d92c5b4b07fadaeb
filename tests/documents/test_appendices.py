"""Appendices: what measures are, which rules stand in the table, and how kernels were counted."""

from __future__ import annotations

import pytest

from narrate.documents.absent_things import is_of_what_is_absent
from narrate.documents.appendices import measures, measures_meant, rules
from narrate.documents.kernels_counted import kernels_told
from narrate.documents.tables import counts_by_context
from narrate.model.edition import Edition
from narrate.model.ids import SITE, Subject
from narrate.pipeline.editions import bare_edition
from narrate.pipeline.judged import Judged


@pytest.fixture(scope="module")
def edition(judged_example: Judged) -> Edition:
    return bare_edition("review", judged_example, {}, (), "test")


def test_no_title_of_a_rule_stands_without_what_it_argues(edition: Edition):
    """'Goosefoot alone' is no finding: the row says that it argues against native seed crops as food."""
    row = next(row for row in rules(edition).rows if row[0] == "Goosefoot alone")

    assert row[1] == "against: the use of native seed crops as food"
    assert all(row[1].startswith(("for: ", "against: ")) for row in rules(edition).rows)


def test_rules_on_what_the_dig_has_not_are_left_out(edition: Edition):
    """The example has no cess pit and no roots; how many rules are left out stands once, in the note."""
    table = rules(edition)
    titles = " ".join(row[0] + row[1] for row in table.rows)

    assert not [word for word in ("cess", "tubers", "Wild rice") if word in titles]
    assert "Rules are left out: " in table.note and "on things that the dig has not" in table.note


def test_drafts_alone_carry_no_reading_above_supports_but_for_what_the_note_spares(edition: Edition):
    """C20 is strongly told to be disturbed by rules that are all drafts: no other question goes as far."""
    known = edition.packs.rules
    firm = [c for c in edition.claims.all_holding() if c.grade == "strongly supports"]
    of_drafts = [c for c in firm if all(known[a.rule].status == "draft" for a in c.held("for"))]

    assert "integrity" in {c.question for c in of_drafts} <= {"integrity", "work"}
    assert "never carry a reading above 'supports', but for the state of a deposit" in rules(edition).note


def test_a_rule_that_held_is_never_left_out(edition: Edition):
    """Each rule that speaks for a reading and held somewhere has its row."""
    known = edition.packs.rules
    held = {a.rule for a in edition.claims.came_out() if a.verdict == "holds" and a.direction == "for"
            and a.about.level in ("site", "phase", "context")}  # fmt: skip

    assert held and {known[id].title for id in held} <= {row[0].replace("\\", "") for row in rules(edition).rows}
    assert sum(row[3] != "–" for row in rules(edition).rows) >= len(held)


def test_a_dig_with_a_cess_pit_keeps_its_rules(edition: Edition, judged_example: Judged):
    """What is absent is worked out from the dig: of the smudge pit of the example no rule is held to be absent."""
    of_smudge = [id for id in judged_example.packs.rules if "smudge" in id]
    of_cess = [id for id in judged_example.packs.rules if "bran" in id and "cess" in id]

    assert of_smudge and not [id for id in of_smudge if is_of_what_is_absent(edition, id)]
    assert all(is_of_what_is_absent(edition, id) for id in of_cess)


def test_no_internal_id_stands_in_the_table(edition: Edition):
    """Rules of one title are told apart by what they argue."""
    assert not [row[0] for row in rules(edition).rows if "." in row[0] or "_" in row[0]]


def test_every_measure_of_the_table_is_explained(edition: Edition):
    """The note leads to a table with the words of the packs for each measure that has a value."""
    explained = dict(measures_meant(edition).rows)

    assert "{measures-meant}" in measures(edition).note
    assert {row[1] for row in measures(edition).rows} <= set(explained)
    assert "Tobacco is left out" in explained["Native seed crops among seeds of crops"]


def test_wheat_and_tobacco_are_no_crops_of_the_ratio(judged_example: Judged):
    """Late hamlet, from the sheets: 13 seeds of native crops beside 608 kernels, without 2 tobacco and a wheat."""
    project, packs = judged_example.project, judged_example.packs
    late = {s.id for s in project.samples if project.context(s.context).phase == "late"}
    seeds = [
        r for r in project.counts
        if r.sample in late and r.condition in ("charred", "partly charred") and r.identification.taxon in packs.taxa
        and "propagule" in packs.words.parts[r.part].roles
    ]  # fmt: skip
    native = sum(r.count.number or 0 for r in seeds if "native-crop" in packs.taxa[r.identification.taxon].tags)
    maize = sum(r.count.number or 0 for r in seeds if r.identification.taxon == "Zea mays")
    share = judged_example.findings.of(Subject(level="phase", id="late")).measurements["native_crop_share"]

    assert (native, maize) == (13, 608)
    assert (share.n, share.value) == (621, pytest.approx(13 / 621))


def test_both_ratios_of_kernels_are_told(edition: Edition):
    """
    C12: 273 kernels to 17 cupules, 120 whole ones to 11; C16: 29 to 25, and 9 to 21; C22: 13 to 13, and 5 to 10; C17:
    234 to 112, and 106 to 79 (light and heavy fractions).
    """
    (paragraph,) = kernels_told(edition)

    assert f"C12 {273 / 17:.1f} and {120 / 11:.1f}" in paragraph.text
    assert f"C16 {29 / 25:.2f} and {9 / 21:.2f}" in paragraph.text
    assert "cupules outnumber kernels in C16 and C22, which they do not by all" in paragraph.text
    assert "In C17 whole ones alone fall below the 2 kernels to a cupule of whole ears" in paragraph.text


def test_what_was_noted_beside_a_count_stands_in_its_cell(edition: Edition):
    """Culms of grass in C17: 22 in one sample, and an x in two others; the cell says both, as the total does."""
    table = next(t for t in counts_by_context(edition) if "C17" in t.columns)
    row = next(row for row in table.rows if row[0] == "Poaceae" and row[1] == "culm")

    assert row[table.columns.index("C17")] == "22 and x"


def test_all_samples_have_the_measure(edition: Edition):
    """The whole dig stands first in the table of measures."""
    assert edition.findings.of(Subject(level="site", id=SITE)).measurements["whole_kernels_per_cupule"].value
