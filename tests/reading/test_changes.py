"""packs/changes.yaml: rules, statements and plants retired, bounds, weights and limits set otherwise."""

from __future__ import annotations

from pathlib import Path

import pytest

from narrate.judging.check_rules import check_rules
from narrate.model.packs import Packs
from narrate.model.rules import Bound, Group
from narrate.problems import written
from narrate.reading.packs import read_packs
from tests.reading.folders import packs_in, write

LIMITS = """\
limits:
  - {id: items.few, when: few items, grade: supports, says: fewer than 30 items, lifts: more, threshold: 30}
"""


def read(folder: Path, changes: str) -> tuple[Packs, list[str]]:
    """The small packs with a project's changes, and the problems of reading and of checking them as a person sees them."""
    shipped = packs_in(folder)
    write(folder / "shipped", {"words/more_limits.yaml": LIMITS})
    local = write(folder / "dig" / "packs", {"changes.yaml": changes})
    packs, problems = read_packs(("valley",), local, shipped=shipped)
    return packs, [written(problem) for problem in (*problems, *check_rules(packs, only_local=True))]


def ratio_of(packs: Packs) -> Bound:
    """The bound on kernels per cupule of the small packs' one rule."""
    criteria = packs.rules["fuel.cobs"].criteria  # type: ignore[index]
    assert isinstance(criteria, Group) and isinstance(criteria.criteria[0], Bound)
    return criteria.criteria[0]


def test_a_rule_is_retired_with_its_reason(tmp_path: Path) -> None:
    """A retired rule is no longer in force, and the reason is kept."""
    packs, told = read(tmp_path, "retire:\n  - {rule: fuel.cobs, because: Ears here are of another kind.}\n")
    change = packs.changes[0]

    assert told == []
    assert not packs.in_force(packs.rules["fuel.cobs"])  # type: ignore[index]
    assert (change.of, change.id, change.what, change.because) == (
        "rule", "fuel.cobs", "retired", "Ears here are of another kind.",
    )  # fmt: skip
    assert str(change.place) == "packs/changes.yaml:2:5"


def test_a_statement_is_retired_with_its_rules(tmp_path: Path) -> None:
    """No rule may argue for a statement that the project does without."""
    packs, told = read(tmp_path, "retire:\n  - {statement: fuel.maize-cob, because: No maize was grown here.}\n")

    assert told == []
    assert "fuel.maize-cob" not in packs.statements
    assert packs.rules["fuel.cobs"].status == "retired"  # type: ignore[index]


def test_a_retired_plant_is_meant_by_no_name_and_no_group(tmp_path: Path) -> None:
    """A plant that cannot have grown there goes with its synonyms, and groups may be it no longer."""
    packs, told = read(tmp_path, "retire:\n  - {taxon: Amaranthus, because: Absent from this valley.}\n")

    assert told == []
    assert "amaranthus" not in packs.taxon_lookup
    assert packs.taxa["Chenopodium/Amaranthus"].members == ("Chenopodium",)  # type: ignore[index]


def test_a_bound_is_set_by_its_name(tmp_path: Path) -> None:
    """A threshold of a rule is set otherwise; the rule keeps its id, its other criteria and the reason."""
    packs, told = read(
        tmp_path,
        "set:\n  - {rule: fuel.cobs, bound: r, at_most: 0.3, because: Long ears., sources: [common-practice]}\n",
    )

    assert told == []
    assert ratio_of(packs).at_most == 0.3
    assert packs.rules["fuel.cobs"].changed == "Long ears."  # type: ignore[index]
    assert packs.changes[0].what == "at_most of r is 0.3, was 0.5"


def test_a_need_is_set_by_its_measure(tmp_path: Path) -> None:
    """A bound without a name is meant by its measure where no other bound has it."""
    packs, told = read(
        tmp_path,
        "set:\n  - {rule: fuel.cobs, bound: items, at_least: 20, because: Small counts., sources: [common-practice]}\n",
    )
    need = packs.rules["fuel.cobs"].needs[0]  # type: ignore[index]

    assert told == []
    assert isinstance(need, Bound) and need.at_least == 20


def test_weight_and_limit_are_set(tmp_path: Path) -> None:
    """A project may weigh a rule otherwise and ask for more items; the limit then says the new number."""
    packs, told = read(
        tmp_path,
        "set:\n"
        "  - {rule: fuel.cobs, weight: weak, because: Cobs were traded., sources: [common-practice]}\n"
        "  - {limit: items.few, threshold: 50, because: Coarse mesh., sources: [common-practice]}\n",
    )
    limit = next(limit for limit in packs.limits if limit.id == "items.few")

    assert told == []
    assert packs.rules["fuel.cobs"].weight == "weak"  # type: ignore[index]
    assert (limit.threshold, limit.says) == (50, "fewer than 50 items")
    assert [change.what for change in packs.changes] == ["weight is weak, was strong", "threshold is 50, was 30"]


def test_a_changed_rule_is_tested_with_its_own_examples(tmp_path: Path) -> None:
    """A bound under which an example of the rule comes out otherwise is told, with the way to say that it is meant."""
    _, told = read(
        tmp_path,
        "set:\n  - {rule: fuel.cobs, bound: items, at_least: 100, because: Few., sources: [common-practice]}\n",
    )

    assert told == [
        "shipped/rules/fuel/cobs.yaml:22:5: error N503: rule 'fuel.cobs', example 'yes it does': "
        "the rule says 'cannot tell', expected 'holds'\n"
        "      help: add 'answers: {yes it does: cannot tell}' to its entry in packs/changes.yaml if that is meant",
        "shipped/rules/fuel/cobs.yaml:23:5: error N503: rule 'fuel.cobs', example 'it does not': "
        "the rule says 'cannot tell', expected 'fails'\n"
        "      help: add 'answers: {it does not: cannot tell}' to its entry in packs/changes.yaml if that is meant",
    ]


def test_an_example_may_answer_otherwise_if_it_is_said(tmp_path: Path) -> None:
    """With the new answers written down the changed rule is sound."""
    _, told = read(
        tmp_path,
        "set:\n"
        "  - rule: fuel.cobs\n"
        "    bound: items\n"
        "    at_least: 100\n"
        "    because: Few.\n"
        "    sources: [common-practice]\n"
        "    answers: {yes it does: cannot tell, it does not: cannot tell}\n",
    )

    assert told == []


AT = "packs/changes.yaml:2:"


@pytest.mark.parametrize(
    ("changes", "expected"),
    [
        (
            "retire:\n  - {rule: fuel.cob, because: x}\n",
            f"{AT}12: error N502: changes of packs: rule 'fuel.cob' is not known; did you mean 'fuel.cobs'?\n"
            "    2 |   - {rule: fuel.cob, because: x}\n"
            "                   ^^^^^^^^\n"
            "      help: write 'fuel.cobs'",
        ),
        (
            "retire:\n  - {rule: fuel.cobs}\n",
            f"{AT}5: error N501: changes of packs, retire has no 'because', expected the reason\n"
            "    2 |   - {rule: fuel.cobs}\n"
            "            ^\n"
            "      help: add 'because: …'",
        ),
        (
            "retire:\n  - {because: x}\n",
            f"{AT}15: error N501: changes of packs: an entry to retire names 0 of rule, statement and taxon, expected one\n"
            "    2 |   - {because: x}\n"
            "                      ^\n"
            "      help: write an entry for each",
        ),
        (
            "set:\n  - {rule: fuel.cobs, weight: weak, because: x}\n",
            f"{AT}5: error N501: changes of packs, set has no 'sources', expected a list; each of it a key of sources.yaml\n"
            "    2 |   - {rule: fuel.cobs, weight: weak, because: x}\n"
            "            ^\n"
            "      help: add 'sources: …'",
        ),
        (
            "set:\n  - {rule: fuel.cobs, because: x, sources: [common-practice]}\n",
            f"{AT}12: error N501: changes of packs: rule 'fuel.cobs' is given neither a weight nor a bound, "
            "expected one of them\n"
            "    2 |   - {rule: fuel.cobs, because: x, sources: [common-practice]}\n"
            "                   ^^^^^^^^^\n"
            "      help: add 'weight: …', or 'bound: …' with at_least or at_most",
        ),
        (
            "set:\n  - {rule: fuel.cobs, bound: share, at_most: 1, because: x, sources: [common-practice]}\n",
            f"{AT}30: error N502: changes of packs: rule 'fuel.cobs' has no bound 'share', expected one of items, r\n"
            "    2 |   - {rule: fuel.cobs, bound: share, at_most: 1, because: x, sources: [common-practice]}\n"
            "                                     ^^^^^\n"
            "      help: name a bound by its name, or by its measure where only one has it",
        ),
        (
            "set:\n  - {rule: fuel.cobs, bound: r, at_least: 1, because: x, sources: [common-practice]}\n",
            f"{AT}43: error N501: changes of packs: bound 'r' of rule 'fuel.cobs' has at_most, "
            "expected a new value for that\n"
            "    2 |   - {rule: fuel.cobs, bound: r, at_least: 1, because: x, sources: [common-practice]}\n"
            "                                                  ^\n"
            "      help: to ask something else, write a rule of your own and retire this one",
        ),
        (
            "set:\n  - {limit: deposit.tertiary, threshold: 5, because: x, sources: [common-practice]}\n",
            f"{AT}13: error N501: changes of packs: limit 'deposit.tertiary' has no threshold to set, "
            "expected a limit with a threshold and its new value\n"
            "    2 |   - {limit: deposit.tertiary, threshold: 5, because: x, sources: [common-practice]}\n"
            "                    ^^^^^^^^^^^^^^^^\n"
            "      help: limits with a threshold are items.few",
        ),
        (
            "set:\n  - {rule: fuel.cobs, weight: weak, because: x, sources: [common-practise]}\n",
            f"{AT}59: error N405: changes of packs, set: source 'common-practise' is not in sources.yaml; "
            "did you mean 'common-practice'?\n"
            "    2 |   - {rule: fuel.cobs, weight: weak, because: x, sources: [common-practise]}\n"
            "                                                                  ^^^^^^^^^^^^^^^\n"
            "      help: write 'common-practice'",
        ),
    ],
)
def test_a_faulty_change_is_told_and_changes_nothing(tmp_path: Path, changes: str, expected: str) -> None:
    """Each fault is one problem with its place and its mend; the packs stay as they came."""
    packs, told = read(tmp_path, changes)

    assert told == [expected]
    assert packs.rules["fuel.cobs"].weight == "strong" or "weight: weak" in changes  # type: ignore[index]


def test_what_is_retired_is_not_changed_as_well(tmp_path: Path) -> None:
    """Only one of the two can be meant."""
    _, told = read(
        tmp_path,
        "retire:\n  - {rule: fuel.cobs, because: x}\n"
        "set:\n  - {rule: fuel.cobs, weight: weak, because: x, sources: [common-practice]}\n",
    )

    assert told == [
        "packs/changes.yaml:2:12: error N501: changes of packs: rule 'fuel.cobs' is changed as well as retired, or retired "
        "twice, expected one change\n"
        "    2 |   - {rule: fuel.cobs, because: x}\n"
        "                   ^^^^^^^^^\n"
        "      help: delete one of the two"
    ]
