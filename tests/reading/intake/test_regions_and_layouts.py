"""What a project is drafted with: packs that fit alike, and layouts that differ, are told. All sheets are invented."""

from __future__ import annotations

from pathlib import Path

import pytest

from narrate.pipeline.intake import Intake, intake


def taken(folder: Path, plants: str) -> Intake:
    path = folder / "lab.csv"
    path.write_text(f"Taxon,S1,S2\n{plants}", encoding="utf-8")
    return intake(path, folder / "dig")


def region(folder: Path) -> str:
    return (folder / "dig" / "project.yaml").read_text(encoding="utf-8").splitlines()[1]


@pytest.mark.parametrize(
    ("plants", "pack"),
    [("Zea mays kernel,3,4\nCarya nutshell,1,2\n", "eastern-north-america"),
     ("Hordeum vulgare grain,2,3\nTriticum spelta glume base,2,3\n", "temperate-europe")],
)  # fmt: skip
def test_the_pack_that_knows_most_of_the_plants_is_taken(tmp_path: Path, plants: str, pack: str) -> None:
    """There is nothing to tell."""
    found = taken(tmp_path, plants)

    assert region(tmp_path) == f"region_packs: [{pack}]"
    assert "alike" not in found.text


def test_packs_that_know_the_plants_alike_are_all_named(tmp_path: Path) -> None:
    """Maize and wheat are grown in every region: the alphabet alone would settle it, so the analyst is asked."""
    found = taken(tmp_path, "Zea mays kernel,3,4\nTriticum aestivum grain,1,2\n")

    assert region(tmp_path).endswith(
        "# or eastern-north-america, temperate-europe: they know the plants of the sheet alike"
    )
    assert (
        "the packs arid-southwest, eastern-north-america and temperate-europe know the plants of the sheet alike; "
        "arid-southwest stands in project.yaml until you have named the region of the dig there"
    ) in found.text


def differing(found: Intake) -> list[str]:
    return [f"{p.severity} {p.place.path}: {p.message}" for p in found.problems if "differs from" in p.message]


def test_a_layout_beside_the_sheet_that_differs_from_that_of_the_project_is_told(tmp_path: Path) -> None:
    """The one in the project is obeyed, and which it is is said."""
    plants = "Zea mays kernel,3,4\nCarya nutshell,1,2\n"
    taken(tmp_path, plants)
    obeyed = tmp_path / "dig" / "counts" / "lab.csv.layout.yaml"
    own = tmp_path / "lab.csv.layout.yaml"
    own.write_bytes(obeyed.read_bytes())
    same = differing(taken(tmp_path, plants))
    own.write_text(obeyed.read_text(encoding="utf-8").replace("charred", "uncharred"), encoding="utf-8")
    found = taken(tmp_path, plants)

    assert same == []
    assert differing(found) == [
        f"warning {own}: this layout differs from '{obeyed}', which is obeyed; this one is not read, expected one "
        "layout"
    ]
    assert {row.condition for row in found.taken.rows} == {"charred"}


def test_two_layouts_beside_one_sheet_that_differ_are_told(tmp_path: Path) -> None:
    """'lab.csv.layout.yaml' is obeyed before 'lab.layout.yaml'."""
    path = tmp_path / "lab.csv"
    path.write_text("Taxon,S1,S2\nZea mays kernel,3,4\nCarya nutshell,1,2\n", encoding="utf-8")
    intake(path)
    first, other = tmp_path / "lab.csv.layout.yaml", tmp_path / "lab.layout.yaml"
    other.write_text(first.read_text(encoding="utf-8").replace("charred", "uncharred"), encoding="utf-8")

    assert differing(intake(path)) == [
        f"warning {other}: this layout differs from '{first}', which is obeyed; this one is not read, expected one "
        "layout"
    ]
