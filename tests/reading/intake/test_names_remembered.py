"""Names accepted once, and known to every sheet of the project."""

# ruff: noqa: E501

from __future__ import annotations

from pathlib import Path

from narrate.pipeline.intake import intake
from narrate.reading.folder import read_folder

SHEET = "Taxon,Part,S1,S2\nChenopodum berlandieri,seed,3,2\nZea mays,kernel,4,\nCarya sp.,nutshell,,4\n"
MISSPELT = "taxon 'Chenopodum berlandieri' is in no taxon pack in use"


def a_project(folder: Path) -> Path:
    """A project with a sheet of one misspelt name, taken in."""
    project = folder / "dig"
    project.mkdir()
    (project / "project.yaml").write_text(
        "title: Trial\nregion_packs: [eastern-north-america]\npreservation: charred\n", encoding="utf-8"
    )
    (folder / "lab.csv").write_text(SHEET, encoding="utf-8")
    intake(folder / "lab.csv", project)
    return project


def accept(project: Path, line: str) -> None:
    """Does what an analyst does: writes a name under 'names' in the layout."""
    layout = project / "counts" / "lab.csv.layout.yaml"
    layout.write_text(layout.read_text(encoding="utf-8").replace("names: {}", f"names:\n  {line}"), encoding="utf-8")


def told(project: Path) -> list[str]:
    return [p.message for p in read_folder(project).problems if p.code in ("N401", "N403", "N404")]


def test_a_near_match_is_offered_and_not_taken(tmp_path: Path) -> None:
    """Before the analyst speaks, the name is unknown, and nothing is remembered."""
    project = a_project(tmp_path)

    assert any(message.startswith(MISSPELT) and "did you mean" in message for message in told(project))
    assert not (project / "packs" / "names.yaml").exists()


def test_an_accepted_name_is_remembered_in_the_project(tmp_path: Path) -> None:
    """Taken in again with the accepted name, the sheet adds it to packs/names.yaml and says so."""
    project = a_project(tmp_path)
    accept(project, "Chenopodum berlandieri: Chenopodium berlandieri")
    found = intake(project / "counts" / "lab.csv", project)

    names = (project / "packs" / "names.yaml").read_text(encoding="utf-8")
    assert names.splitlines()[-1] == "Chenopodum berlandieri: Chenopodium berlandieri"
    assert "Remembered for all sheets of the project in packs/names.yaml: Chenopodum berlandieri." in found.text
    assert told(project) == []


def test_every_sheet_of_the_project_is_read_with_it(tmp_path: Path) -> None:
    """Another laboratory sheet and a plain count sheet know the name too, with its qualifiers."""
    project = a_project(tmp_path)
    accept(project, "Chenopodum berlandieri: Chenopodium berlandieri")
    intake(project / "counts" / "lab.csv", project)
    (tmp_path / "second.csv").write_text(SHEET.replace("S1,S2", "S3,S4"), encoding="utf-8")
    intake(tmp_path / "second.csv", project)
    (project / "counts" / "plain.csv").write_text(
        "sample,taxon,part,count\nS1,cf. Chenopodum berlandieri,seed,1\n", encoding="utf-8"
    )

    reading = read_folder(project)
    assert reading.project is not None
    rows = [r for r in reading.project.counts if "Chenopodum" in r.identification.written]
    assert {(str(r.sample), r.identification.taxon, r.identification.qualifier) for r in rows} == {
        ("S1", "Chenopodium berlandieri", ""), ("S2", "Chenopodium berlandieri", ""),
        ("S3", "Chenopodium berlandieri", ""), ("S4", "Chenopodium berlandieri", ""),
        ("S1", "Chenopodium berlandieri", "cf."),
    }  # fmt: skip


def test_what_an_analyst_wrote_in_the_file_stays(tmp_path: Path) -> None:
    """Comments and entries are kept; new names stand behind them."""
    project = a_project(tmp_path)
    mine = "# my own words\nGoosefood seedz: Chenopodium   # see the notebook"
    (project / "packs").mkdir()
    (project / "packs" / "names.yaml").write_text(mine, encoding="utf-8")
    accept(project, "Chenopodum berlandieri: Chenopodium berlandieri")
    intake(project / "counts" / "lab.csv", project)

    names = (project / "packs" / "names.yaml").read_text(encoding="utf-8")
    assert names == f"{mine}\nChenopodum berlandieri: Chenopodium berlandieri\n"


def test_a_file_of_another_form_is_left_alone(tmp_path: Path) -> None:
    """Where no line can be added the names are told instead."""
    project = a_project(tmp_path)
    (project / "packs").mkdir()
    (project / "packs" / "names.yaml").write_text("{Goosefut: Chenopodium}\n", encoding="utf-8")
    accept(project, "Chenopodum berlandieri: Chenopodium berlandieri")
    found = intake(project / "counts" / "lab.csv", project)

    assert (project / "packs" / "names.yaml").read_text(encoding="utf-8") == "{Goosefut: Chenopodium}\n"
    assert (
        "packs/names.yaml has a form to which no line can be added, and was left as it is; add there: "
        "Chenopodum berlandieri: Chenopodium berlandieri"
    ) in found.text


def test_a_code_stays_with_its_sheet(tmp_path: Path) -> None:
    """Another laboratory may mean another plant by it."""
    project = a_project(tmp_path)
    accept(project, "CHEBER: Chenopodium berlandieri")
    intake(project / "counts" / "lab.csv", project)

    assert not (project / "packs" / "names.yaml").exists()


def test_a_remembered_name_of_no_taxon_is_told(tmp_path: Path) -> None:
    """With the near match."""
    project = a_project(tmp_path)
    (project / "packs").mkdir()
    (project / "packs" / "names.yaml").write_text("Maiz: Zea mayz\n", encoding="utf-8")

    assert told(project)[-1] == (
        "name 'Maiz' stands for 'Zea mayz', which is no taxon of the packs in use; did you mean 'Zea mays'?"
    )


def test_a_remembered_name_cannot_rename_a_plant_of_the_packs(tmp_path: Path) -> None:
    """What the packs know keeps its meaning."""
    project = a_project(tmp_path)
    (project / "packs").mkdir()
    (project / "packs" / "names.yaml").write_text("Zea mays: Carya\n", encoding="utf-8")

    assert told(project)[-1] == (
        "name 'Zea mays' stands for 'Carya' here, and the packs know it as 'Zea mays', expected a name that they do not "
        "know"
    )
