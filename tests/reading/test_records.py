"""Contexts and samples: what is read, and what is told."""

from __future__ import annotations

from pathlib import Path

import pytest

from narrate.model.sampling import HeavyFraction, LightFraction, RecoveryTest, SizeClass
from tests.reading.folders import RECORDS, reading_of, told

FULL = """\
contexts:
  - id: C1
    feature: F4
    kind: fire place
    phase: early
    deposit: de facto
    security: sealed
    description: Ash.
    location: {easting: 1081.77, northing: "2233.88"}
samples:
  - id: S1
    context: C1
    volume_l: 10.0
    method: Hand-flotation
    mesh_mm: {light: 0.25, heavy: 1.0}
    light_fraction: {mass_g: 12.4, volume_ml: 60}
    size_classes:
      - {name: ">2 mm", proportion_sorted: 1}
      - {name: "0.5-1 mm", proportion_sorted: 1/4}
    heavy_fraction: {sorted: true, finds: {sherds: 3, bone_g: 2.1}}
    modern_intrusions: {rootlets: few, insects: none}
    recovery_test: {added: 50, recovered: 46}
    wood_fragments_identified: 20
    note: Floated clean.
"""


def test_every_field_of_a_record_is_read(tmp_path: Path) -> None:
    """Words are read in any of their spellings; what colleagues found stays text."""
    project = reading_of(tmp_path, {"records/all.yaml": FULL}).project
    assert project is not None
    context, sample = project.contexts[0], project.samples[0]

    assert (context.kind, context.feature, context.deposit) == ("hearth", "F4", "de facto")
    assert context.location == {"easting": "1081.77", "northing": "2233.88"}
    assert (context.place.line, context.place.column) == (2, 5)
    assert (sample.volume_l, sample.method, sample.mesh_mm) == (10, "bucket", {"light": 0.25, "heavy": 1})
    assert sample.light_fraction == LightFraction(mass_g=12.4, volume_ml=60)
    assert sample.size_classes == (
        SizeClass(name=">2 mm", proportion_sorted=1, written="1"),
        SizeClass(name="0.5-1 mm", proportion_sorted=0.25, written="1/4"),
    )
    assert sample.heavy_fraction == HeavyFraction(sorted=True, finds={"sherds": "3", "bone_g": "2.1"})
    assert sample.recovery_test == RecoveryTest(added=50, recovered=46)
    assert sample.modern_intrusions == {"rootlets": "few", "insects": "none"}
    assert sample.wood_fragments_identified == 20


def test_a_field_left_empty_is_not_given(tmp_path: Path) -> None:
    """'note:' with nothing behind it is as good as no note."""
    reading = reading_of(tmp_path, {"records/all.yaml": RECORDS + "    note:\n    method:\n"})

    assert told(reading) == ""


MESSAGES = {
    "volume in words": (
        RECORDS.replace("volume_l: 10", "volume_l: ten"),
        "records/all.yaml:6:15: error N203: sample 'S1': volume_l is 'ten', expected a number above 0\n"
        "    6 |     volume_l: ten\n"
        "                      ^^^\n"
        "      help: write 10",
    ),
    "share in percent": (
        RECORDS + "    size_classes: [{name: all, proportion_sorted: 25}]\n",
        "records/all.yaml:7:51: error N203: sample 'S1', size_classes: proportion_sorted is 25, expected a number "
        "above "
        "0 and at most 1\n"
        "    7 |     size_classes: [{name: all, proportion_sorted: 25}]\n"
        "                                                          ^^\n"
        "      help: write 0.25 if 25 % was sorted",
    ),
    "slip in a field": (
        RECORDS.replace("volume_l", "volum_l"),
        "records/all.yaml:6:5: error N202: sample 'S1' has a field 'volum_l' that is not known; did you mean "
        "'volume_l'?\n"
        "    6 |     volum_l: 10\n"
        "            ^^^^^^^\n"
        "      help: write 'volume_l'",
    ),
    "slip in a kind": (
        RECORDS.replace("hearth", "heart"),
        "records/all.yaml:2:20: error N402: context 'C1': kind 'heart' is not in the list of kinds of context; did you "
        "mean 'hearth'?\n"
        "    2 |   - {id: C1, kind: heart, phase: early}\n"
        "                           ^^^^^\n"
        "      help: write 'hearth'",
    ),
    "no context": (
        RECORDS.replace("    context: C1\n", ""),
        "records/all.yaml:4:5: error N201: sample 'S1' has no 'context', expected the id of a context\n"
        "    4 |   - id: S1\n"
        "            ^\n"
        "      help: add 'context: …'",
    ),
    "same id twice": (
        RECORDS + "  - {id: S1, context: C1, volume_l: 2}\n",
        "records/all.yaml:7:10: error N204: sample 'S1' is described twice, first in records/all.yaml:4, expected each "
        "id once\n"
        "    7 |   - {id: S1, context: C1, volume_l: 2}\n"
        "                 ^^\n"
        "      help: give one of them another id, or put the two together",
    ),
    "amount of roots": (
        RECORDS + "    modern_intrusions: {rootlets: lots}\n",
        "records/all.yaml:7:35: error N203: sample 'S1', modern_intrusions: rootlets is 'lots', expected none, few, "
        "some "
        "or many\n"
        "    7 |     modern_intrusions: {rootlets: lots}\n"
        "                                          ^^^^",
    ),
    "sample without an id": (
        RECORDS + "  - {context: C1, volume_l: 2}\n",
        "records/all.yaml:7:5: error N201: sample 2 of this file has no 'id', expected the id of the sample\n"
        "    7 |   - {context: C1, volume_l: 2}\n"
        "            ^\n"
        "      help: add 'id: …'",
    ),
}


@pytest.mark.parametrize("case", MESSAGES)
def test_each_slip_in_a_record_is_told_whole(tmp_path: Path, case: str) -> None:
    """Place, whose, what was read, what was expected, the line with a pointer, how to mend it."""
    records, expected = MESSAGES[case]

    assert told(reading_of(tmp_path, {"records/all.yaml": records})) == expected


def test_a_sample_with_a_slip_is_still_known_to_its_rows(tmp_path: Path) -> None:
    """Rows of a sample whose record has an error are not told to be without a record."""
    records = RECORDS.replace("    context: C1\n", "")
    reading = reading_of(tmp_path, {"records/all.yaml": records})

    assert [p.code for p in reading.problems] == ["N201"]


def test_a_record_file_without_lists_is_told(tmp_path: Path) -> None:
    """A file that begins with a list says what it should begin with."""
    assert told(reading_of(tmp_path, {"records/more.yaml": "- id: S9\n"})) == (
        "records/more.yaml:1:1: error N203: the record file does not begin with 'contexts:' or 'samples:', expected "
        "one "
        "of them, or both\n"
        "    1 | - id: S9\n"
        "        ^\n"
        "      help: write 'samples:' in a line of its own and indent the records under it"
    )
