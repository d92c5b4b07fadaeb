"""Writes an invented project folder of any size, the same on every machine, to measure how long builds take."""

from __future__ import annotations

import random
from pathlib import Path

ROWS_A_SAMPLE = 25
SAMPLES_A_CONTEXT = 3
CONTEXTS_A_SHEET = 40
"""Contexts that share one file of records and one count sheet."""

KINDS = ("hearth", "storage pit", "midden", "floor", "refuse pit", "earth oven", "smudge pit", "posthole")
DEPOSITS = ("primary", "secondary", "secondary", "de facto", "tertiary", "unknown")
SECURITIES = ("sealed", "sealed", "open", "disturbed", "unknown")

Thing = tuple[str, str, str, int]
"""A plant as written, its part, whole or fragment, and about how many items a sample of its kind has."""

EVERYWHERE: tuple[Thing, ...] = (
    ("Quercus sp.", "wood", "", 7),
    ("Carya sp.", "wood", "", 6),
    ("Ulmus sp.", "wood", "", 2),
    ("Juglans sp.", "wood", "", 2),
    ("Pinus sp.", "wood", "", 2),
    ("Fraxinus sp.", "wood", "", 1),
    ("Hardwood indet.", "wood", "", 3),
    ("Carya sp.", "nutshell", "fragment", 12),
    ("Quercus sp.", "acorn shell", "fragment", 4),
    ("Juglans nigra", "nutshell", "fragment", 2),
    ("Chenopodium berlandieri", "seed", "", 9),
    ("Polygonum erectum", "achene", "", 5),
    ("Phalaris caroliniana", "grain", "", 5),
    ("Hordeum pusillum", "grain", "", 1),
    ("Iva annua", "achene", "", 1),
    ("Helianthus annuus", "achene", "", 1),
    ("Cucurbita sp.", "rind", "fragment", 2),
    ("Diospyros virginiana", "seed", "fragment", 1),
    ("Prunus americana", "fruit stone", "fragment", 1),
    ("Rubus sp.", "seed", "", 2),
    ("Poaceae indet.", "grain", "", 1),
    ("Indeterminate", "seed", "", 3),
    ("cf. Iva annua", "achene", "fragment", 1),
    ("Phaseolus vulgaris", "cotyledon", "", 1),
    ("Acer sp.", "wood", "", 2),
    ("Juniperus virginiana", "wood", "", 1),
    ("Castanea dentata", "wood", "", 1),
    ("Portulaca oleracea", "seed", "", 3),
    ("Amaranthus sp.", "seed", "", 3),
    ("Mollugo verticillata", "seed", "", 2),
    ("Acalypha virginica", "seed", "", 1),
    ("Setaria sp.", "grain", "", 1),
)
MAIZE: tuple[Thing, ...] = (
    ("Zea mays", "kernel", "fragment", 14),
    ("Zea mays", "cupule", "", 20),
    ("Zea mays", "cob", "fragment", 2),
)


def write_project(folder: Path, samples: int, seed: int = 1, rows: int = ROWS_A_SAMPLE) -> None:
    """Lays out a project of so many samples of so many rows each, three samples to a context, in two phases."""
    draw = random.Random(seed)
    (folder / "records").mkdir(parents=True)
    (folder / "counts").mkdir()
    (folder / "project.yaml").write_text(PROJECT, encoding="utf-8")
    ids = [f"S{number:05}" for number in range(1, samples + 1)]
    contexts = [ids[at : at + SAMPLES_A_CONTEXT] for at in range(0, samples, SAMPLES_A_CONTEXT)]
    for sheet, at in enumerate(range(0, len(contexts), CONTEXTS_A_SHEET), start=1):
        group = {f"C{at + k + 1:05}": own for k, own in enumerate(contexts[at : at + CONTEXTS_A_SHEET])}
        kinds = {id: draw.choice(KINDS) for id in group}
        records = _records(group, kinds, draw)
        (folder / "records" / f"area-{sheet:03}.yaml").write_text(records, encoding="utf-8")
        counts = ["sample,taxon,part,count,mass_g,completeness,size_class"]
        for id, own in group.items():
            counts += [row for sample in own for row in _rows(sample, kinds[id], _is_late(id), draw, rows)]
        (folder / "counts" / f"area-{sheet:03}.csv").write_text("\n".join(counts) + "\n", encoding="utf-8")


PROJECT = """\
title: Long Meadow, an invented hamlet
summary: A made-up dig that is as large as the measurement wants.
region_packs: [eastern-north-america]
preservation: charred
authors: [{name: A. Analyst, role: archaeobotanist}]
phases:
  - {id: early, name: Early hamlet, start: 950, end: 1050, dates: cal AD, basis: two radiocarbon dates}
  - {id: late, name: Late hamlet, start: 1150, end: 1250, dates: cal AD, basis: two radiocarbon dates}
"""


def _is_late(context: str) -> bool:
    return int(context[1:]) % 2 == 0


def _records(group: dict[str, list[str]], kinds: dict[str, str], draw: random.Random) -> str:
    lines = ["contexts:"]
    for number, id in enumerate(group):
        lines += [
            f"  - id: {id}",
            f"    feature: F{int(id[1:]):05}",
            f"    kind: {kinds[id]}",
            f"    phase: {'late' if _is_late(id) else 'early'}",
            f"    deposit: {draw.choice(DEPOSITS)}",
            f"    security: {draw.choice(SECURITIES)}",
            f"    description: Fill {number + 1} of the area, dark and greasy, with small charcoal.",
            f"    location: {{easting: {1000 + draw.randrange(5000) / 100},"
            f" northing: {2000 + draw.randrange(5000) / 100}}}",
        ]
    lines.append("samples:")
    for id, own in group.items():
        for sample in own:
            lines += [
                f"  - id: {sample}",
                f"    context: {id}",
                f"    volume_l: {draw.choice((4.0, 5.0, 8.5, 10.0))}",
                "    method: machine",
                "    mesh_mm: {light: 0.25, heavy: 1.0}",
                f"    light_fraction: {{mass_g: {draw.randrange(10, 90) / 10}, volume_ml: {draw.randrange(6, 60)}}}",
                "    size_classes:",
                '      - {name: ">2 mm", proportion_sorted: 1}',
                '      - {name: "1-2 mm", proportion_sorted: 1}',
                f'      - {{name: "0.5-1 mm", proportion_sorted: {draw.choice(("1", "1", "1/2", "1/4"))}}}',
                f"    heavy_fraction: {{sorted: true, finds: {{sherds: {draw.randrange(9)},"
                f" debitage: {draw.randrange(20)}}}}}",
                f"    modern_intrusions: {{rootlets: {draw.choice(('none', 'few', 'some'))},"
                " insects: none, worm_casts: none, rodent_signs: none}",
            ]
    return "\n".join(lines) + "\n"


def _rows(sample: str, kind: str, is_late: bool, draw: random.Random, many: int) -> list[str]:
    """The rows of a sample: late ones and cooking places hold maize; rich and poor samples differ much."""
    maize = MAIZE if is_late or kind in ("smudge pit", "earth oven") else ()
    others = draw.sample(EVERYWHERE, many - 1 - len(maize))
    richness = draw.lognormvariate(0, 0.8) * (2 if kind in ("midden", "earth oven", "smudge pit") else 1)
    rows = [f"{sample},Indeterminate,wood,,{round(draw.lognormvariate(0, 1), 2) + 0.01:.2f},,>2 mm"]
    for taxon, part, completeness, usual in (*maize, *others):
        count = 1 + int(draw.expovariate(1 / (usual * richness)))
        size = (
            ">2 mm"
            if part in ("wood", "nutshell", "acorn shell", "rind", "cob")
            else draw.choice(("1-2 mm", "0.5-1 mm"))
        )
        rows.append(f"{sample},{taxon},{part},{count},,{completeness},{size}")
    return rows
