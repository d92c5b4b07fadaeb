"""A project's own rules, statements, plants and thresholds, through the command line."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from narrate.cli import commands
from tests.reading.folders import write


def run(*arguments: str) -> Result:
    return CliRunner().invoke(commands, list(arguments))


def a_project(folder: Path, **packs: str) -> Path:
    """A small whole project, from `begin`, with files in its packs/ ('__' stands for a slash)."""
    assert run("begin", str(folder)).exit_code == 0
    return write(folder, {f"packs/{path.replace('__', '/')}.yaml": text for path, text in packs.items()})


STATEMENT = """\
question: fuel
asked: What was burned?
statements:
  - id: fuel.kernels
    title: Kernels as fuel
    clause: kernels were burned as fuel
    noun: the use of kernels as fuel
    plain: people burned corn
    plain_noun: fires fed with corn
    rivals: [food.maize]
    sources: [pack-judgement]
"""
RULE = """\
id: fuel.many_kernels
title: Many kernels
status: draft
argues: {for: fuel.kernels}
about: [sample, context]
says: there were {n} kernels
says_plain: there was a lot of corn
why: A spoiled store may have been burned.
misleads_when: [Kernels are lost in cooking.]
sources: [pack-judgement]
known: judgement
needs:
  - {measure: items, of: {}, at_least: 1}
criteria:
  all:
    - {measure: items, name: n, of: {taxon: Zea mays, part: kernel}, at_least: 2}
weight: strong
examples:
  - {name: many, remains: [{taxon: Zea mays, part: kernel, count: 9}], expect: holds}
  - {name: one, remains: [{taxon: Zea mays, part: kernel, count: 1}], expect: fails}
  - {name: nothing, remains: [], expect: cannot tell}
"""


def test_an_own_statement_with_an_own_rule_is_judged(tmp_path: Path) -> None:
    """A rule written in YAML alone is checked, judged and told like those that come with narrate."""
    folder = a_project(tmp_path / "dig", statements__fuel=STATEMENT, rules__fuel__many_kernels=RULE)
    checked, told = run("check", str(folder)), run("tell", str(folder))
    claims = json.loads((folder / "out" / "claims.json").read_text(encoding="utf-8"))["claims"]
    own = [claim for claim in claims if claim["statement"] == "fuel.kernels"]

    assert (checked.exit_code, told.exit_code) == (0, 0), checked.stderr + told.stderr
    assert own and {claim["about"]["level"] for claim in own} == {"sample", "context"}
    assert all(claim["rivals"][0]["statement"] == "food.maize" for claim in own)


def test_a_retired_rule_argues_no_longer(tmp_path: Path) -> None:
    """A rule that the project retires stands under no claim."""
    change = "retire:\n  - {rule: fuel.many_kernels, because: A slip of ours.}\n"
    folder = a_project(tmp_path / "dig", statements__fuel=STATEMENT, rules__fuel__many_kernels=RULE, changes=change)
    told = run("tell", str(folder))
    claims = json.loads((folder / "out" / "claims.json").read_text(encoding="utf-8"))["claims"]

    assert told.exit_code == 0, told.stderr
    assert [claim["id"] for claim in claims if claim["statement"] == "fuel.kernels"] == []


FAULTS = {
    "measure": (
        RULE.replace("measure: items, name: n", "measure: itms, name: n"),
        "packs/rules/fuel/many_kernels.yaml:16:17: error N502: rule 'fuel.many_kernels': measure 'itms' is not known; "
        "did you mean 'items'?",
    ),
    "taxon": (
        RULE.replace("of: {taxon: Zea mays, part", "of: {taxon: Zea mais, part"),
        "packs/rules/fuel/many_kernels.yaml:16:45: error N502: rule 'fuel.many_kernels': taxon 'Zea mais' is not known; "
        "did you mean 'Zea mays'?",
    ),
    "part": (
        RULE.replace("part: kernel}, at_least", "part: kernal}, at_least"),
        "packs/rules/fuel/many_kernels.yaml:16:61: error N502: rule 'fuel.many_kernels': part 'kernal' is not known; "
        "did you mean 'kernel'?",
    ),
    "statement": (
        RULE.replace("fuel.kernels}", "fuel.kernals}"),
        "packs/rules/fuel/many_kernels.yaml:4:15: error N502: rule 'fuel.many_kernels': statement 'fuel.kernals' is not "
        "known; did you mean 'fuel.kernels'?",
    ),
    "source": (
        RULE.replace("sources: [pack-judgement]", "sources: [pack-judgment]"),
        "packs/rules/fuel/many_kernels.yaml:10:11: error N405: rule 'fuel.many_kernels': source 'pack-judgment' is not in "
        "sources.yaml; did you mean 'pack-judgement'?",
    ),
    "kind of context": (
        RULE.replace("  all:\n", "  all:\n    - {fact: context_kind, is: [heart]}\n"),
        "packs/rules/fuel/many_kernels.yaml:16:33: error N502: rule 'fuel.many_kernels': context_kind 'heart' is not known; "
        "did you mean 'hearth'?",
    ),
    "region": (
        RULE.replace("weight: strong", "weight: strong\nregions: [eastern-nort-america]"),
        "packs/rules/fuel/many_kernels.yaml:18:10: error N502: rule 'fuel.many_kernels': region 'eastern-nort-america' is no "
        "taxon pack; did you mean 'eastern-north-america'?",
    ),
    "criteria": (
        RULE.replace("part: kernel}, at_least: 2}", "part: kernel}, at_least: 2, at_most: 1}"),
        "packs/rules/fuel/many_kernels.yaml:16:7: error N505: rule 'fuel.many_kernels': the same measure must be at least 2 "
        "and at most 1, expected bounds that something can meet",
    ),
    "example": (
        RULE.replace("count: 9", "count: 1"),
        "packs/rules/fuel/many_kernels.yaml:19:5: error N503: rule 'fuel.many_kernels', example 'many': the rule says "
        "'fails', expected 'holds'",
    ),
    "built-in rule": (
        RULE.replace("id: fuel.many_kernels", "id: fuel.cobs_widespread"),
        "packs/rules/fuel/cobs_widespread.yaml:1:1: error N504: rule 'fuel.cobs_widespread' is defined twice, first in "
        "narrate/packs/rules/fuel/cobs_widespread.yaml:1, expected one definition",
    ),
}


def _own(fault: str, text: str) -> str:
    """The text with the rule of one fault under a name of its own."""
    return text.replace("many_kernels", f"many_kernels_{sorted(FAULTS).index(fault)}")


@pytest.fixture(scope="module")
def checked(tmp_path_factory: pytest.TempPathFactory) -> Result:
    """One project with a rule for each of the faults, checked."""
    rules = {}
    for fault, (text, _) in FAULTS.items():
        name = "cobs_widespread" if fault == "built-in rule" else _own(fault, "many_kernels")
        rules[f"rules__fuel__{name}"] = _own(fault, text)
    return run("check", str(a_project(tmp_path_factory.mktemp("faults") / "dig", statements__fuel=STATEMENT, **rules)))


@pytest.mark.parametrize("fault", FAULTS)
def test_a_fault_in_an_own_rule_has_its_place_and_its_mend(checked: Result, fault: str) -> None:
    """Each is one problem with the line, what was read, what was expected, and a way to mend it; none is a traceback."""
    expected = _own(fault, FAULTS[fault][1])
    lines = checked.stderr.splitlines()
    errors = [n for n, line in enumerate(lines) if line.startswith(expected.partition(":")[0]) and ": error N" in line]

    assert checked.exit_code == 1
    assert [lines[n] for n in errors] == [expected]
    assert any(line.strip().startswith("help:") for line in lines[errors[0] + 1 : errors[0] + 6])


def test_a_built_in_id_is_changed_and_not_defined_anew(tmp_path: Path) -> None:
    """The mend of a statement that redefines a built-in one names the file in which it can be changed."""
    text = STATEMENT.replace("fuel.kernels", "fuel.maize-cob").replace("    rivals: [food.maize]\n", "")
    result = run("check", str(a_project(tmp_path / "dig", statements__fuel=text)))

    assert (
        "N504: statement 'fuel.maize-cob' is defined twice, first in narrate/packs/statements/fuel.yaml:"
        in result.stderr
    )
    assert (
        "help: give yours another name; what comes with narrate is retired or set otherwise in packs/changes.yaml"
        in result.stderr
    )
