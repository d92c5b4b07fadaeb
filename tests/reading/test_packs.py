"""Packs: words, taxa, statements, rules, audiences and sources, with their slips."""

from __future__ import annotations

import time
from dataclasses import fields
from pathlib import Path

import pytest

from narrate.model.rules import Bound, Example, Fact, Group, Selector
from narrate.problems import written
from narrate.reading.packs import read_packs
from narrate.reading.rules import _record_fields
from tests.reading.folders import (
    AMARANTHS,
    AUDIENCE,
    FUEL,
    GRASSES,
    KINDS,
    METHODS,
    PARTS,
    RULE,
    SOURCES,
    packs_in,
    reading_of,
    told,
    write,
)

REAL = ("eastern-north-america",)


def told_of(tmp_path: Path, **changed: str) -> str:
    _, problems = read_packs(("valley",), shipped=packs_in(tmp_path, **changed))
    return "\n".join(written(problem) for problem in problems)


def test_the_packs_that_come_with_narrate_have_no_problem() -> None:
    """Every shipped pack reads whole."""
    packs, problems = read_packs(REAL)

    assert "\n".join(map(written, problems)) == ""
    assert len(packs.taxa) >= 60
    assert len(packs.rules) >= 35
    assert len(packs.statements) >= 25


def test_all_packs_are_read_quickly() -> None:
    """Reading is a small part of every command; the bound is wide for busy machines, and counts processor time."""
    read_packs(REAL)
    before = time.process_time()
    packs, _ = read_packs(REAL)
    seconds = time.process_time() - before

    assert seconds < 1.5 + len(packs.taxa) / 400


def test_the_small_packs_read_whole(tmp_path: Path) -> None:
    """Nothing is told of packs in which nothing is wrong."""
    assert told_of(tmp_path) == ""


def test_a_rule_is_read_with_its_leaves_and_their_places(tmp_path: Path) -> None:
    """Bounds, facts and groups keep the line where they stand; one word stands for a list of one."""
    packs, _ = read_packs(("valley",), shipped=packs_in(tmp_path))
    rule = packs.rules["fuel.cobs"]  # type: ignore[index]
    group = rule.criteria
    assert isinstance(group, Group)
    bound, either = group.criteria

    assert (rule.direction, rule.statement, rule.about) == ("for", "fuel.maize-cob", ("sample", "context"))
    assert isinstance(bound, Bound)
    assert (bound.measure, bound.name, bound.at_least, bound.at_most) == ("ratio", "r", None, 0.5)
    assert (bound.of, bound.to) == (
        Selector(taxon=("Zea mays",), part=("kernel",)),  # type: ignore[arg-type]
        Selector(part=("cupule",)),  # type: ignore[arg-type]
    )
    assert (bound.place.row, bound.place.column) == ("shipped/rules/fuel/cobs.yaml:16", 7)
    assert isinstance(either, Group)
    assert [f.is_any_of for f in either.criteria if isinstance(f, Fact)] == [("thermal",), ()]
    assert [f.is_none_of for f in either.criteria if isinstance(f, Fact)] == [(), ("tertiary",)]
    example = rule.examples[2]
    assert (example.volume_l, example.recovery, example.proportion_sorted) == (5, (50, 46), 0.25)
    assert not rule.is_local


def test_records_of_examples_are_the_fields_of_the_model() -> None:
    """What an example may say of records is what the model holds."""
    of_the_model = {field.name for field in fields(Example)} - {"name", "remains", "region", "expect", "place"}

    assert set(_record_fields()) == of_the_model


def test_a_taxon_is_read_with_its_family_and_words_by_id(tmp_path: Path) -> None:
    """The family is that of the file; parts in uses and windows are given by id; names lead to the taxon."""
    packs, _ = read_packs(("valley",), shipped=packs_in(tmp_path))
    taxon = packs.taxa["Zea mays"]  # type: ignore[index]

    assert (taxon.family, taxon.region, taxon.earliest) == ("Poaceae", "valley", 600)
    assert (taxon.uses[0].part, taxon.windows[0].months) == ("kernel", (8, 9, 10))
    assert packs.taxon_lookup["zea mays ssp. mays"] == "Zea mays"
    assert taxon.place.row == "shipped/taxa/valley/poaceae.yaml:3"


def test_words_answer_to_plurals_case_and_hyphens(tmp_path: Path) -> None:
    """Lookups hold every spelling, so that sheets need not agree on one."""
    words = read_packs(("valley",), shipped=packs_in(tmp_path))[0].words

    assert [words.part_lookup[w] for w in ("glume bases", "corn kernels", "kernel")] == [
        "glume base",
        "kernel",
        "kernel",
    ]
    assert words.kind_lookup["fire place"] == "hearth"
    assert words.method_lookup["hand flotation"] == "bucket"


def test_other_regions_are_not_read(tmp_path: Path) -> None:
    """Only the region packs in use give taxa."""
    packs, problems = read_packs((), shipped=packs_in(tmp_path))

    assert (dict(packs.taxa), problems) == ({}, ())


def test_a_rule_of_the_project_is_marked_as_its_own(tmp_path: Path) -> None:
    """Rules of the project's own packs are known as local; their audience and weights replace those of narrate."""
    own = write(
        tmp_path / "dig" / "packs",
        {
            "rules/fuel/own.yaml": RULE.replace("fuel.cobs", "fuel.own"),
            "audiences/review.yaml": AUDIENCE.replace("Team", "Our team"),
            "words/weights.yaml": "weights: {strong: 3}\nsources: [common-practice]\n",
        },
    )
    packs, problems = read_packs(("valley",), own, shipped=packs_in(tmp_path))

    assert problems == ()
    assert {rule.id: rule.is_local for rule in packs.rules.values()} == {"fuel.cobs": False, "fuel.own": True}
    assert packs.rules["fuel.own"].place.path == "packs/rules/fuel/own.yaml"  # type: ignore[index]
    assert packs.audiences["review"].title == "Our team"
    assert packs.weights == {"weak": 1.0, "moderate": 1.8, "strong": 3.0}


MESSAGES = {
    "a source that is not there": (
        {"fuel": FUEL.replace("[common-practice]", "[comon-practice]")},
        "shipped/statements/fuel.yaml:10:15: error N405: statement 'fuel.maize-cob': source 'comon-practice' is not in "
        "sources.yaml; did you mean 'common-practice'?\n"
        "    10 |     sources: [comon-practice]\n"
        "                       ^^^^^^^^^^^^^^\n"
        "      help: write 'common-practice'",
    ),
    "a source without a title": (
        {"sources": SOURCES + '  - {key: b, authors: B., year: "1988"}\n'},
        "shipped/sources.yaml:3:5: error N403: source 'b' has no 'title', expected a title\n"
        '    3 |   - {key: b, authors: B., year: "1988"}\n'
        "            ^\n"
        "      help: add 'title: …'",
    ),
    "a synonym of two taxa": (
        {"amaranthaceae": AMARANTHS.replace("synonyms: [cheno-am]", "synonyms: [cheno-am, Maize]")},
        "shipped/taxa/valley/poaceae.yaml:3:5: error N404: taxon 'Zea mays': the name 'maize', which is also taxon "
        "'Chenopodium/Amaranthus', is defined twice, first in shipped/taxa/valley/amaranthaceae.yaml:6, expected one "
        "definition\n"
        "    3 |   - id: Zea mays\n"
        "            ^\n"
        "      help: give one of them another name, or delete it",
    ),
    "months that are none": (
        {"poaceae": GRASSES.replace("Aug-Oct", "Aug-Okt")},
        "shipped/taxa/valley/poaceae.yaml:15:32: error N403: taxon 'Zea mays', windows: months is 'Aug-Okt', expected "
        "months such as May-Jul, Nov-Jan or [May, Sep]\n"
        "    15 |       - {part: kernel, months: Aug-Okt, keeping: [stored], sources: [common-practice]}\n"
        "                                        ^^^^^^^",
    ),
    "a tag that only looks like one": (
        {"poaceae": GRASSES.replace("tags: [crop, cereal]", "tags: [crop, cereals]")},
        "shipped/taxa/valley/poaceae.yaml:11:18: error N403: taxon 'Zea mays': tag 'cereals' is not known; did you "
        "mean "
        "'cereal'?\n"
        "    11 |     tags: [crop, cereals]\n"
        "                          ^^^^^^^\n"
        "      help: write 'cereal'",
    ),
    "a member that no pack has": (
        {
            "amaranthaceae": AMARANTHS.replace(
                "members: [Chenopodium, Amaranthus]", "members: [Chenopodium, Amaranthos]"
            )
        },
        "shipped/taxa/valley/amaranthaceae.yaml:6:78: error N403: taxon 'Chenopodium/Amaranthus': member "
        "'Amaranthos' is "
        "no taxon of the packs; did you mean 'amaranthus'?\n"
        "    6 |   - {id: Chenopodium/Amaranthus, rank: group, synonyms: [cheno-am], members: [Chenopodium, "
        "Amaranthos]}\n"
        "                                                                                     ^\n"
        "      help: write 'Amaranthus'",
    ),
    "a role that is none": (
        {"parts": PARTS.replace("roles: [nutshell]", "roles: [shell]")},
        "shipped/words/parts.yaml:6:87: error N403: part 'nutshell': roles is 'shell', expected edible, byproduct, "
        "wood, "
        "chaff, straw, cob, nutshell, propagule, underground, prepared, vegetative, dung, fungus or sprouted; did "
        "you mean "
        "'nutshell'?\n"
        "    6 |   - {id: nutshell, plural: nutshell, plain: nutshell, plain_plural: nutshell, roles: [shell]}\n"
        "                                                                                              ^^^^^\n"
        "      help: write 'nutshell'",
    ),
    "a word twice": (
        {"kinds": KINDS.replace("synonyms: [fire-place]", "synonyms: [pit]")},
        "shipped/words/kinds.yaml:2:5: error N404: kind of context 'hearth': the spelling 'pit' is defined twice, "
        "first in "
        "shipped/words/kinds.yaml:3, expected one definition\n"
        "    2 |   - {id: hearth, plural: hearths, plain: hearth, plain_plural: hearths, traits: [thermal], "
        "synonyms: [pit]}\n"
        "            ^\n"
        "      help: give one of them another name, or delete it",
    ),
    "a grade that is none": (
        {"methods": METHODS.replace("grade: suggests", "grade: suggest")},
        "shipped/words/methods.yaml:5:62: error N403: limit 'deposit.tertiary': grade is 'suggest', expected not "
        "supported, "
        "consistent with, suggests, supports or strongly supports; did you mean 'suggests'?\n"
        "    5 |   - {id: deposit.tertiary, when: deposit is tertiary, grade: suggest, says: it is tertiary, "
        "lifts: a primary deposit}\n"
        "                                                                     ^^^^^^^\n"
        "      help: write 'suggests'",
    ),
    "an id of another question": (
        {"fuel": FUEL.replace("id: fuel.maize-cob", "id: food.maize-cob")},
        "shipped/statements/fuel.yaml:4:9: error N501: statement 'food.maize-cob': id is 'food.maize-cob', expected "
        "'fuel.' "
        "and then words in lower case joined by hyphens\n"
        "    4 |   - id: food.maize-cob\n"
        "                ^^^^^^^^^^^^^^\n"
        "      help: write an id such as fuel.what-it-says",
    ),
    "a statement twice": (
        {"fuel": FUEL + FUEL.split("statements:\n")[1]},
        "shipped/statements/fuel.yaml:11:5: error N504: statement 'fuel.maize-cob' is defined twice, first in "
        "shipped/statements/fuel.yaml:4, expected one definition\n"
        "    11 |   - id: fuel.maize-cob\n"
        "             ^\n"
        "      help: give one of them another name, or delete it",
    ),
    "a field of a selector": (
        {"cobs": RULE.replace("to: {part: [cupule]}", "to: {parts: [cupule]}")},
        "shipped/rules/fuel/cobs.yaml:16:75: error N501: rule 'fuel.cobs', criteria, all, to has a field 'parts' "
        "that is "
        "not known; did you mean 'part'?\n"
        "    16 |     - {measure: ratio, name: r, of: {taxon: Zea mays, part: kernel}, to: {parts: [cupule]}, "
        "at_most: 0.5}\n"
        "                                                                                   ^^^^^\n"
        "      help: write 'part'",
    ),
    "a measure without a bound": (
        {"cobs": RULE.replace(", at_most: 0.5}", "}")},
        "shipped/rules/fuel/cobs.yaml:16:7: error N501: rule 'fuel.cobs', criteria, all: measure 'ratio' has no bound, "
        "expected at_least, at_most or both\n"
        "    16 |     - {measure: ratio, name: r, of: {taxon: Zea mays, part: kernel}, to: {part: [cupule]}}\n"
        "               ^\n"
        "      help: add 'at_least: …' or 'at_most: …'",
    ),
    "no example that fails": (
        {"cobs": RULE.replace("expect: fails", "expect: holds")},
        "shipped/rules/fuel/cobs.yaml:22:3: error N501: rule 'fuel.cobs': no example expects 'fails', expected at "
        "least one "
        "each of holds, fails and cannot tell\n"
        "    22 |   - {name: yes it does, remains: [{taxon: Zea mays, part: cupule, count: 60}], expect: holds}\n"
        "           ^\n"
        "      help: add an example with 'expect: fails'",
    ),
    "a weight without a source": (
        {"cobs": RULE.replace("sources: [common-practice]\nknown", "sources: []\nknown")},
        "shipped/rules/fuel/cobs.yaml:10:10: error N501: rule 'fuel.cobs': weight 'strong' has no source, expected at "
        "least one key of sources.yaml\n"
        "    10 | sources: []\n"
        "                  ^\n"
        "      help: for a weight that is your own judgement write 'sources: [pack-judgement]'",
    ),
    "weights without a source": (
        {"methods": METHODS.replace("sources: [common-practice]\n", "")},
        "shipped/words/methods.yaml:3:10: error N403: weights: no source is given for them, expected at least one key of "
        "sources.yaml\n"
        "    3 | weights: {weak: 1.0, moderate: 1.8, strong: 2.6}\n"
        "                 ^\n"
        "      help: for weights that are your own judgement add 'sources: [pack-judgement]' beside them",
    ),
    "a file of another name": (
        {"cobs": RULE.replace("id: fuel.cobs", "id: fuel.cob")},
        "shipped/rules/fuel/cobs.yaml:1:5: error N501: rule 'fuel.cob': the file is rules/fuel/cobs.yaml, expected "
        "rules/fuel/cob.yaml\n"
        "    1 | id: fuel.cob\n"
        "            ^^^^^^^^\n"
        "      help: ids are for ever: rename the file",
    ),
    "a rule that argues both ways": (
        {"cobs": RULE.replace("{for: fuel.maize-cob}", "{for: fuel.maize-cob, against: fuel.wood}")},
        "shipped/rules/fuel/cobs.yaml:4:9: error N501: rule 'fuel.cobs': argues is a mapping of 2, expected {for: …} "
        "or "
        "{against: …} with the id of a statement\n"
        "    4 | argues: {for: fuel.maize-cob, against: fuel.wood}\n"
        "                ^",
    ),
    "a frame without a place": (
        {"review": AUDIENCE.replace("this supports {noun}", "this supports {nown}")},
        "shipped/audiences/review.yaml:6:14: error N601: audience 'review', frames: frame 'this supports {nown}' "
        "fills in {nown}, expected one of {clause} and {noun}\n"
        '    6 |   supports: ["this supports {nown}"]\n'
        "                     ^^^^^^^^^^^^^^^^^^^^^^\n"
        "      help: a frame holds {clause} or {noun} once, and no other brace",
    ),
    "a question that nobody asks": (
        {"review": AUDIENCE.replace("plan: [fuel]", "plan: [fule]")},
        "shipped/audiences/review.yaml:14:8: error N601: audience 'review': plan names 'fule', which no statement "
        "asks; did "
        "you mean 'fuel'?\n"
        "    14 | plan: [fule]\n"
        "                ^^^^\n"
        "      help: write 'fuel'",
    ),
}


@pytest.mark.parametrize("case", MESSAGES)
def test_each_slip_in_a_pack_is_told_whole(tmp_path: Path, case: str) -> None:
    """Place, whose, what was read, what was expected, the line with a pointer, how to mend it."""
    changed, expected = MESSAGES[case]

    assert told_of(tmp_path, **changed) == expected


def test_regions_that_share_plants_can_be_used_together() -> None:
    """A dig on the border names two region packs: the one named first speaks of what both know."""
    from narrate.reading.packs import read_packs

    east, _ = read_packs(("eastern-north-america",))
    both, problems = read_packs(("eastern-north-america", "arid-southwest"))

    assert [problem.message for problem in problems] == []
    assert both.taxa["Zea mays"] == east.taxa["Zea mays"]  # type: ignore[index]
    assert "Yucca" in both.taxa and "Iva annua" in both.taxa


def test_a_pack_file_where_nobody_looks_is_told(tmp_path: Path) -> None:
    """A rule in a folder of another name is not in use, and its writer should know; so with an empty file."""
    files = {"packs/rule/fuel/a.yaml": RULE, "packs/taxa/a.yaml": GRASSES, "packs/rules/b.yaml": ""}
    reading = reading_of(tmp_path, files)

    assert told(reading) == (
        "packs/rule/fuel/a.yaml: warning N403: the file lies where no pack is looked for, and nothing in it is read, "
        "expected words, taxa, statements, rules, audiences, languages, sources.yaml, changes.yaml or names.yaml; did you mean 'rules'?\n"
        "      help: move it there\n"
        "packs/rules/b.yaml:1: warning N501: the file holds nothing, expected 'name: value'\n"
        "      help: write what it is for, or delete the file\n"
        "packs/taxa/a.yaml: warning N403: the file lies where no pack is looked for, and nothing in it is read, "
        "expected a folder for its region, such as taxa/own/\n"
        "      help: move it there"
    )
