"""What the example project holds, read with nothing but csv and yaml."""

from __future__ import annotations

import csv
import statistics
from collections import Counter, defaultdict
from fractions import Fraction
from pathlib import Path

import pytest
import yaml

FOLDER = Path(__file__).parents[2] / "example_project"
SHEETS = ("light_fraction", "heavy_fraction", "wood")
NATIVE_CROPS = (
    "Chenopodium berlandieri",
    "Phalaris caroliniana",
    "Polygonum erectum",
    "Hordeum pusillum",
    "Iva annua",
    "Helianthus annuus",
)


@pytest.fixture(scope="module")
def project() -> dict:
    return yaml.safe_load((FOLDER / "project.yaml").read_text(encoding="utf-8"))


def _records(key: str) -> dict[str, dict]:
    found: dict[str, dict] = {}
    for path in sorted((FOLDER / "records").glob("**/*.yaml")):
        for record in yaml.safe_load(path.read_text(encoding="utf-8")).get(key, []):
            assert record["id"] not in found, f"{record['id']} is described twice"
            found[record["id"]] = record
    return found


@pytest.fixture(scope="module")
def contexts() -> dict[str, dict]:
    return _records("contexts")


@pytest.fixture(scope="module")
def samples() -> dict[str, dict]:
    return _records("samples")


@pytest.fixture(scope="module")
def rows() -> list[dict[str, str]]:
    found = []
    for sheet in SHEETS:
        with (FOLDER / "counts" / f"{sheet}.csv").open(encoding="utf-8", newline="") as file:
            found += [defaultdict(str, row) for row in csv.DictReader(file)]
    return found


def _is_charred(row: dict[str, str]) -> bool:
    return row["condition"] in ("", "charred", "partly charred")


def _number(row: dict[str, str]) -> int:
    return int(row["count"]) if row["count"].isdigit() else 0


def _items(rows: list[dict[str, str]], samples: dict[str, dict]) -> dict[str, int]:
    """Charred items but wood, as counted, of every sample."""
    total = dict.fromkeys(samples, 0)
    for row in rows:
        if _is_charred(row) and row["part"] != "wood":
            total[row["sample"]] += _number(row)
    return total


def _samples_of(samples: dict[str, dict], context: str) -> set[str]:
    return {id for id, sample in samples.items() if sample["context"] == context}


def _ubiquity(rows, samples, contexts, phase: str, taxa: tuple[str, ...]) -> float:
    members = {id for id, sample in samples.items() if contexts[sample["context"]].get("phase") == phase}
    holding = {r["sample"] for r in rows if r["taxon"] in taxa and r["part"] != "wood" and _is_charred(r)}
    return len(members & holding) / len(members)


def test_two_phases(project):
    """The project tells two phases apart, the early one first."""
    early, late = project["phases"]

    assert (early["id"], early["start"], early["end"]) == ("early", 950, 1050)
    assert (late["id"], late["start"], late["end"]) == ("late", 1250, 1350)


def test_as_many_contexts_and_samples_as_promised(contexts, samples):
    """There are at least 14 contexts and 36 samples, and every context has a sample."""
    assert len(contexts) >= 14
    assert len(samples) >= 36
    assert {sample["context"] for sample in samples.values()} == set(contexts)


@pytest.mark.parametrize(
    ("kind", "phase"),
    [
        ("hearth", "early"),
        ("hearth", "late"),
        ("smudge pit", "late"),
        ("earth oven", "early"),
        ("storage pit", "early"),
        ("storage pit", "late"),
        ("floor", "early"),
        ("floor", "late"),
        ("midden", "early"),
        ("midden", "late"),
        ("burned structure", "late"),
        ("posthole", "early"),
    ],
)
def test_kind_of_context_is_there(contexts, kind, phase):
    """Every kind of deposit that the example should show is there in its phase."""
    assert any(c["kind"] == kind and c.get("phase") == phase for c in contexts.values())


def test_every_row_belongs_to_a_sample_and_every_sample_but_the_sterile_one_has_rows(rows, samples):
    """Rows name known samples; only a sample called sterile is without rows."""
    sterile = {id for id, sample in samples.items() if sample.get("sterile")}

    assert len(sterile) == 1
    assert {row["sample"] for row in rows} == set(samples) - sterile


def test_no_row_is_there_twice(rows):
    """No sample has two rows of the same taxon, part, condition, completeness, size class and fraction."""
    columns = ("sample", "taxon", "part", "condition", "completeness", "size_class", "fraction")
    seen = Counter(tuple(row[column] for column in columns) for row in rows)

    assert [key for key, times in seen.items() if times > 1] == []


def test_every_count_is_a_whole_number_a_presence_mark_or_blank_with_a_mass(rows):
    """The count column holds what count columns hold."""
    odd = [r for r in rows if not (r["count"].isdigit() or r["count"] == "x" or (r["count"] == "" and r["mass_g"]))]

    assert odd == []


def test_size_classes_of_rows_are_those_of_their_samples(rows, samples):
    """A row names a size class only if its sample's record has it."""
    for row in rows:
        classes = {c["name"] for c in samples[row["sample"]].get("size_classes", [])}
        assert not row["size_class"] or row["size_class"] in classes, row


def test_smallest_class_is_sorted_by_a_quarter_in_some_rich_samples(samples, rows):
    """At least five samples have a quarter sorted of the smallest class, and rows in it."""
    quartered = {
        (id, c["name"])
        for id, sample in samples.items()
        for c in sample.get("size_classes", [])
        if Fraction(str(c["proportion_sorted"])) == Fraction(1, 4)
    }

    assert len(quartered) >= 5
    assert all(name == "0.5-1 mm" for _, name in quartered)
    assert len(quartered & {(row["sample"], row["size_class"]) for row in rows}) >= 4


def test_counts_are_overdispersed(rows, samples):
    """A few rich samples and many poor: variance of items per sample far above the mean, median below it."""
    items = list(_items(rows, samples).values())

    assert statistics.variance(items) > 20 * statistics.mean(items)
    assert statistics.median(items) < 0.6 * statistics.mean(items)


def test_densities_span_from_next_to_nothing_to_very_rich(rows, samples):
    """Items per litre, as counted, run from 0 over less than 1 to about a hundred."""
    density = {id: n / samples[id]["volume_l"] for id, n in _items(rows, samples).items()}

    assert min(density.values()) == 0
    assert sum(0 < value < 1 for value in density.values()) >= 3
    assert 90 < max(density.values()) < 160


def test_native_crops_give_way_to_maize(rows, samples, contexts):
    """Native seed crops fall from nearly all samples to a minority; maize rises from a minority to nearly all."""
    native = [_ubiquity(rows, samples, contexts, phase, NATIVE_CROPS) for phase in ("early", "late")]
    maize = [_ubiquity(rows, samples, contexts, phase, ("Zea mays",)) for phase in ("early", "late")]

    assert native[0] > 0.9 and native[1] < 0.5
    assert 0.1 < maize[0] < 0.4 and maize[1] > 0.8


def test_hickory_stays(rows, samples, contexts):
    """Hickory shell is in most samples of both phases."""
    early, late = (_ubiquity(rows, samples, contexts, phase, ("Carya sp.", "Carya")) for phase in ("early", "late"))

    assert early > 0.7 and late > 0.7


def test_fruits_of_old_fields_rise(rows, samples, contexts):
    """Maypop, bramble and elder are in more samples of the late phase than of the early one."""
    fruits = ("Passiflora incarnata", "Rubus sp.", "Sambucus canadensis", "Rubus")
    early, late = (_ubiquity(rows, samples, contexts, phase, fruits) for phase in ("early", "late"))

    assert late > 2 * early


def test_beans_are_late_and_few(rows, samples, contexts):
    """Beans are in one or two samples of the late phase and in none of the early one."""
    holding = {row["sample"] for row in rows if row["taxon"] == "Phaseolus vulgaris"}

    assert 1 <= len(holding) <= 2
    assert {contexts[samples[id]["context"]]["phase"] for id in holding} == {"late"}


def test_tobacco_is_in_two_samples(rows):
    """Tobacco seeds are in two samples."""
    assert len({row["sample"] for row in rows if row["taxon"].startswith("Nicotiana")}) == 2


def test_pine_rises_among_identified_wood(rows, samples, contexts):
    """Pine is a larger share of the identified wood in the late phase, oak and hickory a smaller one."""
    share = {}
    for phase in ("early", "late"):
        wood = Counter()
        for row in rows:
            is_of_phase = contexts[samples[row["sample"]]["context"]].get("phase") == phase
            if row["part"] == "wood" and is_of_phase:
                wood[row["taxon"].split()[0]] += _number(row)
        share[phase] = (wood["Pinus"] / wood.total(), (wood["Quercus"] + wood["Carya"]) / wood.total())

    assert share["late"][0] > 2 * share["early"][0]
    assert share["late"][1] < share["early"][1]


def _maize(rows, ids: set[str], part: str) -> int:
    return sum(_number(r) for r in rows if r["sample"] in ids and r["taxon"] == "Zea mays" and r["part"] == part)


def test_kernels_per_cupule_differ_by_deposit(rows, samples):
    """Hearth of cobs, hearth of kernels, smudge pit and burned ears differ in kernels per cupule."""

    def per_cupule(context: str) -> float:
        ids = _samples_of(samples, context)
        return _maize(rows, ids, "kernel") / _maize(rows, ids, "cupule")

    assert per_cupule("C11") < 0.2
    assert per_cupule("C12") > 8
    assert per_cupule("C13") < 0.05
    assert 1.5 < per_cupule("C17") < 2.5


def test_smudge_pit_is_dense_and_holds_little_food(rows, samples):
    """The smudge pit is nearly all maize cob, with more than 50 items a litre."""
    ids = _samples_of(samples, "C13")
    total = sum(_items(rows, samples)[id] for id in ids)
    cob = sum(_maize(rows, ids, part) for part in ("cupule", "cob", "glume", "shank", "stalk"))

    assert cob / total > 0.9
    assert total / sum(samples[id]["volume_l"] for id in ids) > 50


def test_one_pit_holds_early_summer_and_autumn_together(rows, samples):
    """Every sample of the second storage pit holds maygrass, little barley, strawberry, goosefoot and hickory."""
    for id in _samples_of(samples, "C06"):
        taxa = {row["taxon"] for row in rows if row["sample"] == id}
        assert {"Phalaris caroliniana", "Hordeum pusillum", "Fragaria virginiana"} <= taxa
        assert {"Chenopodium berlandieri", "Diospyros virginiana"} <= taxa
        assert taxa & {"Carya sp.", "Carya"}


def test_disturbed_context_is_full_of_uncharred_seeds(rows, samples, contexts):
    """In the disturbed context uncharred seeds far outnumber charred items, and roots are many."""
    (disturbed,) = [id for id, context in contexts.items() if context.get("security") == "disturbed"]
    ids = _samples_of(samples, disturbed)
    fresh = sum(_number(row) for row in rows if row["sample"] in ids and row["condition"] == "uncharred")

    assert fresh > 5 * sum(_items(rows, samples)[id] for id in ids)
    assert all(samples[id]["modern_intrusions"]["rootlets"] == "many" for id in ids)


def test_recovery_tests_include_one_poor(samples):
    """Most recovery tests went well; one got back less than half."""
    tests = [s["recovery_test"] for s in samples.values() if "recovery_test" in s]
    poor = [t for t in tests if t["recovered"] < t["added"] / 2]

    assert len(tests) >= 4
    assert len(poor) == 1
    assert all(t["recovered"] <= t["added"] == 50 for t in tests)


@pytest.mark.parametrize(
    ("what", "is_it"),
    [
        ("a name with cf.", lambda r: r["taxon"].startswith("cf. ")),
        ("a presence mark", lambda r: r["count"] == "x"),
        ("something weighed but not counted", lambda r: not r["count"] and r["mass_g"] and r["part"] != "wood"),
        ("a partly charred row", lambda r: r["condition"] == "partly charred"),
        ("an uncharred row", lambda r: r["condition"] == "uncharred"),
        ("a fragment", lambda r: r["completeness"] == "fragment"),
        ("a find of the heavy fraction", lambda r: r["fraction"] == "heavy"),
        ("a note", lambda r: bool(r["note"])),
        ("acorn", lambda r: r["part"] == "acorn shell"),
        ("prepared food", lambda r: r["part"] == "porridge or bread crumb"),
    ],
)
def test_sheets_hold(rows, what, is_it):
    """The sheets hold every kind of row that real sheets hold."""
    assert any(is_it(row) for row in rows), what


def test_wood_is_weighed_once_and_identified_in_about_twenty_fragments(rows, samples):
    """Every sample with wood has one row of mass; identified samples have at most 20 fragments, mostly 20."""
    wood = [row for row in rows if row["part"] == "wood"]
    weighed = Counter(row["sample"] for row in wood if row["mass_g"])
    fragments: Counter[str] = Counter()
    for row in wood:
        fragments[row["sample"]] += _number(row)
    identified = [n for n in fragments.values() if n > 2]

    assert set(weighed.values()) == {1}
    assert set(fragments) <= set(weighed)
    assert max(identified) == 20 == statistics.median(identified)


def test_nothing_tells_of_the_restricted_context(project, contexts, samples):
    """The restricted context is of kind other, undescribed, and no other text names it, its feature or its samples."""
    (restricted,) = project["disclosure"]["restricted_contexts"]
    record = contexts[restricted]
    own = {restricted, record["feature"], *_samples_of(samples, restricted)}
    others = [r for r in (*contexts.values(), *samples.values()) if r["id"] not in own]
    texts = [str(other) for other in others] + [(FOLDER / "README.md").read_text(encoding="utf-8")]

    assert record["kind"] == "other" and "description" not in record
    assert len(_samples_of(samples, restricted)) == 2
    assert [id for id in own for text in texts if id in text] == []


def test_images_are_drawings_with_caption_credit_and_alt_text(samples):
    """Every listed image exists and says that it is a drawing."""
    images = [image for sample in samples.values() for image in sample.get("images", [])]

    assert len(images) >= 2
    for image in images:
        assert (FOLDER / image["file"]).read_bytes().startswith(b"\x89PNG")
        assert "Drawing" in image["caption"] and "Drawing" in image["alt"]
        assert image["credit"] == "drawing for the example"
