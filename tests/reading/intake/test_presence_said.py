"""
A word beside each amount says what it is, and a line without a find keeps its sample.

Invented; common practice, no source.
"""

from pathlib import Path

import pytest

from narrate.reading.intake.take_in import TakenIn, take_in
from tests.reading.intake.test_blind import packs


def taken(folder: Path, head: str, lines: list[str]) -> TakenIn:
    (folder / "deposit.csv").write_text("\n".join((head, *lines)) + "\n", encoding="utf-8")
    return take_in(folder / "deposit.csv", packs())


def amounts(found: TakenIn) -> list[tuple[str, int | None, str]]:
    return [(row.count.amount, row.count.number, row.note) for row in found.rows]


HEAD = "sample,context,volume_l,taxon,part,{amount},{kind}"
WORDS = (
    ("count", "count_type", "exact", "estimate", "present"),
    ("n", "quantification", "counted", "approx.", "presence"),
    ("number", "type of count", "actual", "estimated", "noted as present"),
    ("Anzahl", "Mengenart", "gezählt", "geschätzt", "vorhanden"),
    ("Anzahl", "Einheit", "exakt", "Schätzung", "nachgewiesen"),
    ("nombre", "type de comptage", "exact", "estimation", "présent"),
    ("número", "tipo de conteo", "exacto", "estimado", "presente"),
    ("numero", "tipo di conteggio", "esatto", "stima", "presenza"),
    ("aantal", "soort telling", "geteld", "schatting", "aanwezig"),
    ("liczba", "rodzaj liczby", "dokładna", "szacunkowa", "obecny"),
)


@pytest.mark.parametrize(("amount", "kind", "exact", "estimate", "present"), WORDS)
def test_a_word_beside_a_blank_amount_says_that_it_was_there(
    tmp_path: Path, amount: str, kind: str, exact: str, estimate: str, present: str
) -> None:
    """'present' without a number is presence, an estimate keeps that it is one, and a count is a count."""
    lines = [
        f"001,102,20,Triticum spelta,grain,12,{exact}", f"001,102,20,Hordeum vulgare,grain,50,{estimate}",
        f"001,102,20,Corylus avellana,nutshell,,{present}", f"002,104,10,Avena sp.,grain,3,{exact}",
        f"002,104,10,Galium aparine,seed,4,{exact}", f"002,104,10,Triticum spelta,glume base,,{present}",
    ]  # fmt: skip
    found = taken(tmp_path, HEAD.format(amount=amount, kind=kind), lines)
    assert amounts(found) == [
        ("counted", 12, ""), ("counted", 50, "an estimate"), ("noted as present", None, ""), ("counted", 3, ""),
        ("counted", 4, ""), ("noted as present", None, ""),
    ]  # fmt: skip
    assert not found.problems


@pytest.mark.parametrize(
    ("value", "amount"),
    [
        ("1", "noted as present"), ("present", "noted as present"), ("NA", "noted as present"),
        ("0", "looked for and absent"),
    ],
)
def test_a_number_that_stands_for_presence_is_no_count(tmp_path: Path, value: str, amount: str) -> None:
    """A 1 beside 'presence' says that it was there, a 0 that it was not; neither is one seed."""
    lines = [
        "001,102,20,Triticum spelta,grain,12,count", "001,102,20,Hordeum vulgare,grain,5,count",
        f"001,102,20,Corylus avellana,nutshell,{value},presence", "002,104,10,Avena sp.,grain,3,count",
    ]  # fmt: skip
    found = amounts(taken(tmp_path, HEAD.format(amount="quantity", kind="quantity_type"), lines))
    assert found[2][:2] == (amount, None)


def test_a_blank_beside_absent_is_absence(tmp_path: Path) -> None:
    """The column of kinds may say it too."""
    lines = [
        "001,102,20,Triticum spelta,grain,12,exact", "001,102,20,Hordeum vulgare,grain,,absent",
        "001,102,20,Avena sp.,grain,3,exact", "001,102,20,Galium aparine,seed,,present",
    ]  # fmt: skip
    found = amounts(taken(tmp_path, HEAD.format(amount="count", kind="count_type"), lines))
    assert [amount for amount, _, _ in found] == ["counted", "looked for and absent", "counted", "noted as present"]


def test_a_weight_beside_present_stays_a_weight(tmp_path: Path) -> None:
    """What is weighed is there: the word adds no second find."""
    lines = [
        "001,102,20,Triticum spelta,grain,12,exact,", "001,102,20,Charcoal,,,present,0.84",
        "001,102,20,Corylus avellana,nutshell,,present,", "001,102,20,Prunus spinosa,fruit stone,2,exact,0.3",
    ]  # fmt: skip
    found = taken(tmp_path, HEAD.format(amount="count", kind="count_type") + ",weight_g", lines)
    assert [(row.count.amount, row.mass_g) for row in found.rows] == [
        ("counted", None), ("weighed only", 0.84), ("noted as present", None), ("counted", 0.3),
    ]  # fmt: skip


STERILE = (
    ("no plant remains", True), ("sterile", True), ("keine Pflanzenreste", True), ("", True),
    ("pas de restes végétaux", True), ("not sorted", False), ("en cours", False), ("noch nicht ausgelesen", False),
)  # fmt: skip


@pytest.mark.parametrize(("comment", "is_kept"), STERILE)
def test_a_line_of_a_sample_without_a_find_keeps_the_sample(tmp_path: Path, comment: str, is_kept: bool) -> None:
    """Its litres are of the sample that held nothing; one that waits to be sorted is none of these."""
    lines = [
        "001,102,20,Triticum spelta,grain,12,", "001,102,20,Hordeum vulgare,grain,5,", f"008,131,40,,,,{comment}",
        "009,135,5,Avena sp.,grain,3,", "009,135,5,Galium aparine,seed,3,",
    ]  # fmt: skip
    found = taken(tmp_path, "sample_no,context_no,volume_l,taxon,element,count,comment", lines)
    assert ("008" in found.facts) == is_kept
    assert {str(row.sample) for row in found.rows} == {"001", "009"}
    if is_kept:
        assert [said.text for said in found.facts["008"]["volume"]] == ["40"]


def test_a_footnote_below_a_list_is_no_sample(tmp_path: Path) -> None:
    """A line of words in the column of the ids names no sample."""
    lines = [
        "001,102,20,Triticum spelta,grain,12", "002,104,20,Hordeum vulgare,grain,5", "All remains are charred.,,,,,",
        "* 40 litres were taken,,,,,",
    ]  # fmt: skip
    assert set(taken(tmp_path, "sample,context,volume_l,taxon,part,count", lines).facts) == {"001", "002"}
