"""Short forms of conditions beside a part or a name, with and without a key. Invented; common practice, no source."""

# ruff: noqa: E501

from pathlib import Path

import pytest

from narrate.reading.intake.take_in import take_in
from tests.reading.intake.test_blind import packs


def read(folder: Path, lines: list[str]) -> list[tuple[str, str, str]]:
    (folder / "sheet.csv").write_text("\n".join(lines) + "\n", encoding="utf-8")
    found = take_in(folder / "sheet.csv", packs())
    assert not [problem for problem in found.problems if problem.code == "N402"]
    return [(row.part, row.condition, row.completeness) for row in found.rows]


BESIDE = (
    ("pépin min.", "seed", "mineralised", "whole"), ("akène min", "achene", "mineralised", "whole"),
    ("noyau, min.", "fruit stone", "mineralised", "whole"), ("min. semence", "seed", "mineralised", "whole"),
    ("semence (min.)", "seed", "mineralised", "whole"), ("semence [min.]", "seed", "mineralised", "whole"),
    ("pépin min. fragment", "seed", "mineralised", "fragment"), ("pépin frag. min.", "seed", "mineralised", "fragment"),
    ("seed carb.", "seed", "charred", "whole"), ("fruit stone uncharr.", "fruit stone", "uncharred", "whole"),
    ("seed - unch", "seed", "uncharred", "whole"), ("carb. glume base", "glume base", "charred", "whole"),
    ("Same verk.", "seed", "charred", "whole"), ("Steinkern unverk.", "fruit stone", "uncharred", "whole"),
)  # fmt: skip


@pytest.mark.parametrize(("written", "part", "condition", "completeness"), BESIDE)
def test_a_part_carries_the_short_form_of_its_condition(
    tmp_path: Path, written: str, part: str, condition: str, completeness: str
) -> None:
    """In a column of parts beside the names; the part is read without it."""
    found = read(tmp_path, [
        "Sample,,P1,P2", "Context,,14,15", "Volume (L),,12,10", "Taxon,Part,,", "Hordeum vulgare,grain,31,24",
        f'Vitis vinifera,"{written}",4,7', "Triticum spelta,glume base,11,2", "Vicia faba,seed,2,1",
    ])  # fmt: skip
    assert found[2:4] == [(part, condition, completeness)] * 2
    assert {state for n, (_, state, _) in enumerate(found) if n not in (2, 3)} == {"charred"}


KEYED = ("seed w", "seed w.", "seed, w", "seed (w)", "w seed", "seed-w")


@pytest.mark.parametrize("written", KEYED)
def test_a_letter_of_the_key_beside_a_part_is_its_condition(tmp_path: Path, written: str) -> None:
    """'c = charred, w = waterlogged' under the table holds for a letter before or behind the part."""
    found = read(tmp_path, [
        "Sample,,P1,P2", "Context,,14,15", "Taxon,Part,,", "Hordeum vulgare,grain,31,24", f'Sambucus nigra,"{written}",4,7',
        "Triticum spelta,glume base,11,2", "Vicia faba,seed,2,1", "", '"Key: c = charred, w = waterlogged"',
    ])  # fmt: skip
    assert found[2:4] == [("seed", "waterlogged", "whole")] * 2


NAMES = (
    ("Vitis vinifera pépin min.", "seed"), ("Vitis vinifera (pépin min.)", "seed"), ("Vitis vinifera, pépin min.", "seed"),
    ("Vitis vinifera pépin (min.)", "seed"), ("Vitis vinifera seed min.", "seed"), ("Ficus carica, akène, min.", "achene"),
    ("Ficus carica (akène) min.", "achene"),
)  # fmt: skip


@pytest.mark.parametrize(("name", "part"), NAMES)
def test_a_name_with_its_part_carries_the_short_form_too(tmp_path: Path, name: str, part: str) -> None:
    """The part and the condition stand behind the name in one cell."""
    found = read(tmp_path, [
        "Sample,P1,P2", "Context,14,15", "Hordeum vulgare grain,31,24", f'"{name}",4,7', "Triticum spelta glume base,11,2",
        "Vicia faba seed,2,1", "Avena sp. grain,2,1",
    ])  # fmt: skip
    assert found[2:4] == [(part, "mineralised", "whole")] * 2


def test_a_name_carries_a_short_form_of_the_key_without_a_part(tmp_path: Path) -> None:
    """'min. = mineralised' said once; then 'Ficus carica min.' needs no part."""
    found = read(tmp_path, [
        '"Charred, but min. = mineralised"', "Sample,P1,P2", "Context,14,15", "Hordeum vulgare grain,31,24",
        "Ficus carica min.,4,7", "Triticum spelta glume base,11,2", "Vicia faba seed,2,1",
    ])  # fmt: skip
    assert [condition for _, condition, _ in found[2:4]] == ["mineralised"] * 2


@pytest.mark.parametrize("name", ["Lemna min.", "Plantago maj.", "Euphorbia cf. min."])
def test_a_short_epithet_is_no_condition(tmp_path: Path, name: str) -> None:
    """'Lemna min.' is Lemna minor, where no key says otherwise."""
    found = read(tmp_path, [
        "Sample,P1,P2", "Context,14,15", "Hordeum vulgare grain,31,24", f"{name},4,7", "Triticum spelta glume base,11,2",
        "Vicia faba seed,2,1",
    ])  # fmt: skip
    assert [condition for _, condition, _ in found[2:4]] == ["charred"] * 2


@pytest.mark.parametrize("name", ["Sambucus nigra (w)", "Sambucus nigra, w", "Sambucus nigra seed w", "Sambucus nigra [w]"])
def test_a_letter_of_the_key_behind_a_name_is_its_condition(tmp_path: Path, name: str) -> None:
    """In brackets, behind a comma, or behind the part."""
    found = read(tmp_path, [
        "Sample,P1,P2", "Context,14,15", "Hordeum vulgare grain,31,24", f'"{name}",4,7', "Triticum spelta glume base,11,2",
        "Vicia faba seed,2,1", "", '"Key: c = charred, w = waterlogged"',
    ])  # fmt: skip
    assert found[2:4] == [("seed", "waterlogged", "whole")] * 2
