"""A project folder read whole: what is there, what is not, and that nothing raises."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from narrate.disclosure import disclosed
from narrate.model.images import Image
from narrate.model.project import Disclosure
from narrate.model.sampling import HeavyFraction
from narrate.problems import has_errors
from narrate.reading.folder import read_folder
from narrate.reading.project_file import RESTRICTABLE
from tests.builders import HERE, a_context, a_project, a_sample
from tests.reading.folders import RECORDS, SHEET, WHOLE, packs_in, reading_of, told, write

AN_IMAGE = Image(file="images/a.png", caption="a", credit="b", alt="c", place=HERE)


def test_a_whole_small_project_is_read(tmp_path: Path) -> None:
    """Project, context, sample and row arrive as frozen values, and nothing is told."""
    reading = reading_of(tmp_path)
    project = reading.project

    assert told(reading) == ""
    assert project is not None
    assert [c.id for c in project.contexts] == ["C1"]
    assert project.samples[0].volume_l == 10
    assert project.counts[0].identification.taxon == "Zea mays"
    assert project.counts[0].place.row == "counts/light.csv:2"
    assert project.disclosure.restricted_fields == {"location"}


def test_the_real_packs_and_the_example_read_without_an_error() -> None:
    """The example project with the packs of narrate has no error."""
    reading = read_folder(Path(__file__).parents[2] / "example_project")

    assert not has_errors(reading.problems), told(reading)


def test_an_empty_folder_is_one_clear_problem(tmp_path: Path) -> None:
    """An empty folder is told as such, with how to begin."""
    (tmp_path / "dig").mkdir()

    assert told(read_folder(tmp_path / "dig")) == (
        "dig: error N101: the folder is empty, expected a project.yaml\n"
        "      help: 'narrate begin FOLDER' lays out a new project"
    )


def test_a_file_in_place_of_a_folder_is_one_clear_problem(tmp_path: Path) -> None:
    """A file is told as such."""
    (tmp_path / "dig").write_text("x", encoding="utf-8")

    assert told(read_folder(tmp_path / "dig")) == (
        f"dig: error N101: '{tmp_path / 'dig'}' is a file, expected a project folder\n"
        "      help: name the folder that holds project.yaml"
    )


def test_a_folder_that_is_not_there_is_one_clear_problem(tmp_path: Path) -> None:
    """A missing folder is told as such."""
    assert told(read_folder(tmp_path / "dig")) == (
        f"dig: error N101: '{tmp_path / 'dig'}' is not there, expected a project folder\n"
        "      help: 'narrate begin FOLDER' lays out a new project"
    )


def test_a_project_file_of_another_name_is_pointed_at(tmp_path: Path) -> None:
    """A project.yml is not taken for the project file, but it is offered."""
    folder = write(tmp_path / "dig", {"project.yml": "title: x", "records/a.yaml": RECORDS})

    assert told(read_folder(folder)) == (
        "project.yaml: error N101: there is no project.yaml in the folder, expected one; there is a 'project.yml'\n"
        "      help: rename 'project.yml' to project.yaml"
    )


def test_records_and_sheets_must_be_there(tmp_path: Path) -> None:
    """A project file alone is told to lack records and sheets."""
    folder = write(tmp_path / "dig", {"project.yaml": WHOLE["project.yaml"]})
    reading = read_folder(folder, shipped=packs_in(tmp_path))

    assert [(p.place.path, p.code) for p in reading.problems] == [("counts", "N101"), ("records", "N101")]


def test_an_unknown_region_is_told_with_the_near_match(tmp_path: Path) -> None:
    """A slip in the name of a region pack is pointed at."""
    project = WHOLE["project.yaml"].replace("[valley]", "[vally]")
    reading = reading_of(tmp_path, {"project.yaml": project})

    assert (
        "project.yaml:2:16: error N205: project: there is no region pack 'vally', expected one of valley; did you mean "
        "'valley'?\n"
        "    2 | region_packs: [vally]\n"
        "                       ^^^^^\n"
        "      help: write 'valley'"
    ) in told(reading)


def test_contexts_and_samples_stand_in_natural_order(tmp_path: Path) -> None:
    """S2 comes before S10, whatever the order of files and lines."""
    records = (
        "contexts: [{id: C10, kind: pit}, {id: C9, kind: pit}]\n"
        "samples: [{id: S10, context: C9, volume_l: 1, sterile: true}, {id: S2, context: C10, volume_l: 1, sterile: "
        "true}]\n"
    )
    project = reading_of(tmp_path, {"records/b.yaml": records}).project

    assert project is not None
    assert [c.id for c in project.contexts] == ["C1", "C9", "C10"]
    assert [s.id for s in project.samples] == ["S1", "S2", "S10"]


def test_odd_ids_meet_their_rows(tmp_path: Path) -> None:
    """Ids such as 012, no and 12:30 are the same text in records and in sheets."""
    ids = ("012", "no", "12:30", "2107.10", "1e3")
    records = "contexts: [{id: 007, kind: pit}]\nsamples:\n" + "".join(
        f"  - {{id: {id}, context: 007, volume_l: 1}}\n" for id in ids
    )
    sheet = "sample,taxon,part,count\n" + "".join(f"{id},Zea mays,kernel,1\n" for id in ids)
    reading = reading_of(tmp_path, {"records/all.yaml": records, "counts/light.csv": sheet})

    assert told(reading) == ""
    assert reading.project is not None
    assert {row.sample for row in reading.project.counts} == set(ids)


def test_a_workbook_without_a_layout_is_an_error_that_names_intake(tmp_path: Path) -> None:
    """Nobody should think that a workbook beside the sheets is in the figures."""
    reading = reading_of(tmp_path, {"counts/wood.xlsx": b"PK\x03\x04"})

    assert told(reading) == (
        "counts/wood.xlsx: error N311: the workbook has no layout beside it, and nothing in it is read; expected "
        "wood.xlsx.layout.yaml\n"
        "      help: run 'narrate intake counts/wood.xlsx', which works out how the sheet is laid out"
    )


def test_problems_of_all_files_are_told_at_once(tmp_path: Path) -> None:
    """Faults in the project file, in records, in sheets and in packs stand in one list."""
    reading = reading_of(
        tmp_path,
        {
            "project.yaml": WHOLE["project.yaml"] + "titel: x\n",
            "records/all.yaml": RECORDS.replace("volume_l: 10", "volume_l: ten"),
            "counts/light.csv": SHEET.replace("kernel", "kernl"),
            "packs/sources.yaml": "sources: [{key: a}]\n",
        },
    )

    assert {p.place.path for p in reading.problems} == {
        "counts/light.csv",
        "packs/sources.yaml",
        "project.yaml",
        "records/all.yaml",
    }


def test_a_broken_project_file_still_lets_records_be_checked(tmp_path: Path) -> None:
    """A fault of YAML in project.yaml does not hide those in the records."""
    reading = reading_of(
        tmp_path, {"project.yaml": "title: a: b\n", "records/all.yaml": RECORDS.replace("volume_l: 10", "volume_l: x")}
    )

    assert reading.project is None
    assert [p.code for p in reading.problems] == ["N113", "N103", "N203"]


def test_burials_are_restricted_without_being_named(tmp_path: Path) -> None:
    """A context of a kind whose word says burial is never public."""
    project = reading_of(tmp_path, {"records/all.yaml": RECORDS.replace("hearth", "burial")}).project

    assert project is not None
    assert project.disclosure.restricted_contexts == {"C1"}


def test_genera_that_packs_know_by_their_species_get_an_entry(tmp_path: Path) -> None:
    """'Hordeum sp.' is a genus of its family, without tags or uses, once a species of it is known."""
    reading = reading_of(
        tmp_path, {"counts/light.csv": SHEET + "S1,Hordeum sp.,seed,1\nS1,Amaranthaceae indet.,seed,2\n"}
    )

    assert told(reading) == ""
    assert reading.packs is not None
    assert (reading.packs.taxa["Hordeum"].rank, reading.packs.taxa["Hordeum"].family) == ("genus", "Poaceae")
    assert reading.packs.taxa["Hordeum"].tags == frozenset()
    assert reading.packs.taxa["Amaranthaceae"].rank == "family"
    assert reading.packs.taxon_lookup["hordeum"] == "Hordeum"


def test_a_projects_own_packs_are_read_after_those_of_narrate(tmp_path: Path) -> None:
    """A plant of the project's own packs is known in its sheets."""
    own = "family: Cannabaceae\ntaxa: [{id: Humulus lupulus, rank: species, name: hop, plural: hops}]\n"
    reading = reading_of(
        tmp_path, {"packs/taxa/own/hops.yaml": own, "counts/light.csv": SHEET + "S1,Humulus lupulus,seed,1\n"}
    )

    assert told(reading) == ""
    assert reading.packs is not None
    assert reading.packs.taxa["Humulus lupulus"].place.row == "packs/taxa/own/hops.yaml:2"


FILES = st.sampled_from(
    ["project.yaml", "records/all.yaml", "counts/light.csv", "packs/rules/fuel/a.yaml", "packs/sources.yaml"]
)
LIKELY = st.text(
    alphabet=st.sampled_from("aS1C,:;-\n\t[]{}'\"&*!|>%x0.+é\u2028 ") | st.characters(codec="utf-8"), max_size=120
)


@settings(max_examples=80, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(file=FILES, content=st.binary(max_size=120) | LIKELY)
def test_no_content_of_any_file_raises(tmp_path: Path, file: str, content: str | bytes) -> None:
    """Any bytes in any file of a project give problems, and never a traceback."""
    reading = reading_of(tmp_path, {file: content})

    assert isinstance(told(reading), str)


VALUES = st.recursive(
    st.sampled_from(["", "~", "S1", "C1", "ten", "1/4", "-1", "1e999", "no", '"a b"', "true", "0", "x/y"]),
    lambda inner: (
        st.lists(inner, max_size=3).map(lambda items: "[" + ", ".join(i or '""' for i in items) + "]")
        | st.dictionaries(
            st.sampled_from(["id", "context", "name", "all", "measure", "taxon", "months"]), inner, max_size=3
        ).map(lambda d: "{" + ", ".join(f"{k}: {v}" for k, v in d.items()) + "}")
    ),
    max_leaves=5,
)
SHAPES = {
    "project.yaml": [
        *("title", "summary", "region_packs", "preservation", "authors", "report", "phases", "disclosure"),
        *("style", "approved_only", "audiences", "address"),
    ],
    "records/all.yaml": ["contexts", "samples", "other"],
    "packs/sources.yaml": ["sources"],
    "packs/rules/fuel/a.yaml": ["id", "argues", "about", "needs", "criteria", "examples", "sources", "weight"],
    "packs/taxa/own/a.yaml": ["family", "taxa"],
    "packs/words/a.yaml": ["parts", "conditions", "preservations", "kinds", "methods", "weights", "limits", "shown"],
    "packs/statements/a.yaml": ["question", "asked", "statements"],
    "packs/audiences/a.yaml": ["id", "title", "register", "frames", "plan", "headings", "words"],
}


@pytest.mark.parametrize("file", SHAPES)
@settings(max_examples=25, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(drawn=st.data())
def test_no_shape_of_any_file_raises(tmp_path: Path, file: str, drawn: st.DataObject) -> None:
    """Any value under any known field gives problems, and never a traceback."""
    fields = drawn.draw(st.dictionaries(st.sampled_from(SHAPES[file]), VALUES, max_size=5))
    text = "".join(f"{name}: {value}\n" for name, value in fields.items())
    reading = reading_of(tmp_path, {file: text})

    assert isinstance(told(reading), str)


RECORD_FIELDS = (
    "id",
    "context",
    "kind",
    "phase",
    "volume_l",
    "mesh_mm",
    "size_classes",
    "heavy_fraction",
    "images",
    "recovery_test",
    "location",
    "modern_intrusions",
    "light_fraction",
    "sterile",
)


@settings(max_examples=50, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(
    kind=st.sampled_from(["contexts", "samples"]),
    fields=st.dictionaries(
        st.sampled_from(RECORD_FIELDS),
        VALUES,
        max_size=6,
    ),
)
def test_no_shape_of_a_record_raises(tmp_path: Path, kind: str, fields: dict[str, str]) -> None:
    """Any value under any field of a record gives problems, and never a traceback."""
    text = f"{kind}:\n  - note: a\n" + "".join(f"    {name}: {value}\n" for name, value in fields.items())
    reading = reading_of(tmp_path, {"records/more.yaml": text})

    assert isinstance(told(reading), str)


@pytest.mark.parametrize("field", RESTRICTABLE)
def test_every_field_that_may_be_restricted_is_withheld(tmp_path: Path, field: str) -> None:
    """What `restricted_fields` takes is what disclosure takes out: nobody is promised more than is done."""
    context = a_context(
        feature="F1", description="d", note="n", location={"easting": "1"}, images=(AN_IMAGE,), phase=None
    )
    sample = a_sample(
        method="bucket", note="n", images=(AN_IMAGE,), heavy_fraction=HeavyFraction(sorted=True, finds={"sherds": "1"})
    )
    project = a_project([context], [sample], phases=())
    withheld = replace(project, disclosure=Disclosure(restricted_fields=frozenset({field})))
    bare = disclosed(withheld)

    attribute = {"finds": "heavy_fraction"}.get(field, field)
    holders = [(context, bare.contexts[0]), (sample, bare.samples[0])]
    had = [(before, after) for before, after in holders if getattr(before, attribute, None)]
    assert had
    assert all(getattr(before, attribute) != getattr(after, attribute) for before, after in had)


def test_a_hundred_thousand_letters_for_a_name_are_no_trouble(tmp_path: Path) -> None:
    """A cell of many words is kept as it was written, and soon."""
    sheet = "sample,taxon,part,count\nS1," + "A " * 50_000 + ",kernel,1\n"
    reading = reading_of(tmp_path, {"counts/light.csv": sheet})

    assert [p.code for p in reading.problems] == ["N401"]


def test_a_record_file_that_cannot_be_read_is_one_error(tmp_path: Path) -> None:
    """Rows, samples and restricted contexts whose records may stand in it are not told to be unknown."""
    project = WHOLE["project.yaml"] + "disclosure: {restricted_contexts: [C1]}\n"
    reading = reading_of(tmp_path, {"project.yaml": project, "records/all.yaml": "samples: {id: a: b}\n"})

    assert [p.code for p in reading.problems] == ["N113", "N103"]


def test_a_sheet_that_cannot_be_read_is_one_error(tmp_path: Path) -> None:
    """Samples whose rows may stand in it are not told to have none."""
    assert [p.code for p in reading_of(tmp_path, {"counts/light.csv": b"\x00"}).problems] == ["N113", "N102"]


def test_a_sample_whose_row_was_refused_is_not_told_to_have_none(tmp_path: Path) -> None:
    """One slip in a row is one problem."""
    reading = reading_of(tmp_path, {"counts/light.csv": SHEET.replace("kernel", "kernl")})

    assert [p.code for p in reading.problems] == ["N402"]
