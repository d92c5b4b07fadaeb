"""A project's own packs with every fault at once: each is told with its place and its mend."""

from __future__ import annotations

from pathlib import Path

import pytest
from click.testing import CliRunner

from narrate.cli import commands

PROJECT = """title: Test
summary: A test.
region_packs: [eastern-north-america]
preservation: charred
authors: [{name: A. Analyst, role: archaeobotanist}]
phases: [{id: one, name: One, start: 950, end: 1050, dates: cal AD, basis: two dates}]
"""
RULE = """id: fuel.%(name)s
title: A test
status: draft
argues: {for: %(statement)s}
about: [sample, context]
says: cob parts lay here ({n})
says_plain: bits of cob lay here
why: Cobs burn well.
misleads_when: [Not always.]
sources: [%(source)s]
known: judgement
needs: [{measure: items, of: {taxon: Zea mays}, at_least: 1}]
criteria:
  all:
    - {measure: %(measure)s, name: n, of: {taxon: %(taxon)s, part: %(part)s}, at_least: 5%(more)s}
weight: weak
examples:
  - {name: cobs, remains: [{taxon: Zea mays, part: cupule, count: 60}], expect: holds}
  - {name: kernels, remains: [{taxon: Zea mays, part: kernel, count: 60}], expect: fails}
  - {name: none, remains: [{taxon: Carya, part: nutshell, count: 60}], expect: cannot tell}
"""
SOUND = {
    "statement": "fuel.maize-cob",
    "source": "pack-judgement",
    "measure": "items",
    "taxon": "Zea mays",
    "part": "cupule",
    "more": "",
}
SLIPS = {
    "no_measure": {"measure": "itmes"},
    "no_taxon": {"taxon": "Zea mais"},
    "no_part": {"part": "cupul"},
    "no_statement": {"statement": "fuel.maize-cobs"},
    "no_source": {"source": "pack-judgment"},
    "contradicts": {"more": ", at_most: 2"},
    "no_weight_source": {"source": ""},
    "cupules_outnumber_kernels": {},
}
RING = "question: fuel\nasked: What was burned?\nstatements:\n" + "".join(
    f"""  - id: fuel.ring-{own}
    title: Ring {own}
    clause: ring {own} was burned
    noun: the burning of ring {own}
    plain: people burned ring {own}
    plain_noun: fires of ring {own}
    means: Something burned.
    does_not_mean: Nothing else burned.
    rivals: [fuel.ring-{rival}]
    sources: [pack-judgement]
"""
    for own, rival in ("ab", "bc", "ca")
)


def written(folder: Path, slips: dict[str, dict[str, str]], statements: str = "") -> Path:
    (folder / "records").mkdir()
    (folder / "project.yaml").write_text(PROJECT, encoding="utf-8")
    (folder / "records" / "all.yaml").write_text(
        "contexts: [{id: C1, kind: hearth, phase: one, deposit: primary, security: sealed}]\n"
        "samples: [{id: S1, context: C1, volume_l: 10}]\n",
        encoding="utf-8",
    )
    (folder / "counts").mkdir()
    (folder / "counts" / "c.csv").write_text("sample,taxon,part,count\nS1,Zea mays,cupule,9\n", encoding="utf-8")
    rules = folder / "packs" / "rules" / "fuel"
    rules.mkdir(parents=True)
    for name, slip in slips.items():
        (rules / f"{name}.yaml").write_text(RULE % {"name": name, **SOUND, **slip}, encoding="utf-8")
    if statements:
        (folder / "packs" / "statements").mkdir()
        (folder / "packs" / "statements" / "fuel.yaml").write_text(statements, encoding="utf-8")
    return folder


def told(folder: Path) -> str:
    """What `narrate check` says."""
    done = CliRunner().invoke(commands, ["check", str(folder)])
    assert done.exit_code == 1
    return done.stderr


EXPECTED = (
    ("no_measure", "15:17", "N502", "measure 'itmes' is not known; did you mean 'items'?", "write 'items'"),
    ("no_taxon", "15:45", "N502", "taxon 'Zea mais' is not known; did you mean 'Zea mays'?", "write 'Zea mays'"),
    ("no_part", "15:61", "N502", "part 'cupul' is not known; did you mean 'cupule'?", "write 'cupule'"),
    (
        "no_statement",
        "4:15",
        "N502",
        "statement 'fuel.maize-cobs' is not known; did you mean 'fuel.maize-cob'?",
        "write 'fuel.maize-cob'",
    ),
    (
        "no_source",
        "10:11",
        "N405",
        "source 'pack-judgment' is not in sources.yaml; did you mean 'pack-judgement'?",
        "write 'pack-judgement'",
    ),
    (
        "contradicts",
        "15:7",
        "N505",
        "the same measure must be at least 5 and at most 2, expected bounds that something can meet",
        "change one of the bounds, or put the two under 'any'",
    ),
    (
        "no_weight_source",
        "10:10",
        "N501",
        "weight 'weak' has no source, expected at least one key of sources.yaml",
        "for a weight that is your own judgement write 'sources: [pack-judgement]'",
    ),
)


@pytest.fixture(scope="module")
def said(tmp_path_factory: pytest.TempPathFactory) -> str:
    return told(written(tmp_path_factory.mktemp("bad"), SLIPS, RING))


@pytest.mark.parametrize(("name", "at", "code", "what", "mend"), EXPECTED, ids=[e[0] for e in EXPECTED])
def test_each_fault_is_told_beside_all_others(said: str, name: str, at: str, code: str, what: str, mend: str) -> None:
    """Place, code, what was read and how to mend it, of each fault of a project that has all of them at once."""
    _, found, after = said.partition(f"packs/rules/fuel/{name}.yaml:{at}: error {code}: rule 'fuel.{name}': {what}\n")

    assert found, said
    assert after.splitlines()[2].strip() == f"help: {mend}"


def test_an_id_that_comes_with_narrate_is_not_defined_anew(said: str) -> None:
    """The message says where the first one stands and what to do instead."""
    assert (
        "packs/rules/fuel/cupules_outnumber_kernels.yaml:1:1: error N504: rule 'fuel.cupules_outnumber_kernels' is "
        "defined twice, first in narrate/packs/rules/fuel/cupules_outnumber_kernels.yaml:1, expected one definition"
    ) in said
    assert "help: give yours another name; what comes with narrate is retired or set otherwise in packs/changes" in said


def test_a_ring_of_rivals_is_told_with_the_rest(said: str) -> None:
    """Three statements that each name only the next are one problem, at the first of them."""
    assert (
        "packs/statements/fuel.yaml:4:5: error N501: statements 'fuel.ring-a' -> 'fuel.ring-b' -> 'fuel.ring-c' -> "
        "'fuel.ring-a' are rivals in a ring, each naming only the next, expected rivals that name each other"
    ) in said


def test_no_fault_is_told_twice_or_as_a_fault_of_narrate(said: str) -> None:
    """Nine faults are nine problems, and none of them a traceback."""
    assert said.count(": error N") == 9
    assert "Traceback" not in said
