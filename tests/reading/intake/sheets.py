"""Sheets as laboratories lay them out, written from one invented dig, so that what must be read back is known.

Everything here is invented. Each writer takes a dig and gives the sheets of a file as rows of cells.
"""

from __future__ import annotations

import csv
import io
import random
from collections.abc import Callable
from dataclasses import dataclass, field

Cells = list[list[object]]
Plant = tuple[str, str]

# Names that the shipped packs know and names that they do not, as sheets write them; invented choice.
PLANTS: tuple[tuple[str, str], ...] = (
    ("Zea mays", "kernel"), ("Zea mays", "cupule"), ("Chenopodium berlandieri", "seed"), ("Carya sp.", "nutshell"),
    ("Phalaris caroliniana", "grain"), ("Polygonum erectum", "achene"), ("Iva annua", "achene"), ("Vitis sp.", "seed"),
    ("Rubus sp.", "seed"), ("Triticum dicoccum", "glume base"), ("Hordeum vulgare", "grain"), ("Galium aparine", "seed"),
    ("cf. Setaria sp.", "grain"), ("Poaceae indet.", "grain"), ("Lens culinaris", "seed"), ("Rumex acetosella", "nutlet"),
    ("Bromus secalinus", "grain"), ("Vicia/Lathyrus", "seed"),
)  # fmt: skip
PHASES = ("Early", "Middle", "Late")


@dataclass(frozen=True)
class Dig:
    """What was counted, and what is known of the samples."""

    samples: tuple[str, ...]
    plants: tuple[tuple[str, str], ...]
    counts: dict[tuple[str, tuple[str, str]], int]
    context: dict[str, str]
    phase: dict[str, str]
    volume: dict[str, float]

    def of(self, sample: str, plant: tuple[str, str]) -> int:
        return self.counts.get((sample, plant), 0)

    def total(self, sample: str) -> int:
        return sum(self.of(sample, plant) for plant in self.plants)


@dataclass
class File:
    """One file as written: sheets by name, with merged ranges as a spreadsheet names them."""

    sheets: dict[str, Cells]
    merged: dict[str, list[str]] = field(default_factory=dict)


def a_dig(seed: int, samples: int = 6, plants: int = 9, most: int = 60) -> Dig:
    """An invented dig; the same seed gives the same one. Every sample and every plant has at least one find."""
    chance = random.Random(seed)
    ids = tuple(f"S{n:03d}" for n in chance.sample(range(1, 400), samples))
    ids = tuple(sorted(ids))
    chosen = tuple(chance.sample(PLANTS, min(plants, len(PLANTS))))
    counts: dict[tuple[str, tuple[str, str]], int] = {}
    for id in ids:
        for plant in chosen:
            if chance.random() < 0.5:
                counts[id, plant] = chance.randint(1, most)
    for n, plant in enumerate(chosen):
        counts.setdefault((ids[n % len(ids)], plant), chance.randint(1, most))
    for n, id in enumerate(ids):
        counts.setdefault((id, chosen[n % len(chosen)]), chance.randint(1, most))
    contexts = [f"C{n}" for n in chance.sample(range(10, 90), max(2, samples // 2))]
    in_context = {id: contexts[n * len(contexts) // len(ids)] for n, id in enumerate(ids)}
    return Dig(
        samples=ids,
        plants=chosen,
        counts=counts,
        context=in_context,
        phase={id: PHASES[contexts.index(in_context[id]) % 3] for id in ids},
        volume={id: float(chance.randint(4, 40)) / 2 for id in ids},
    )


def _name(plant: tuple[str, str]) -> str:
    return f"{plant[0]} {plant[1]}"


def _blank(number: int) -> object:
    return number or None


# ---- layouts: samples as columns


def columns_plain(dig: Dig) -> File:
    return File(
        {
            "Sheet1": [
                ["Taxon", "Part", *dig.samples],
                *([p[0], p[1], *(_blank(dig.of(s, p)) for s in dig.samples)] for p in dig.plants),
            ]
        }
    )


def columns_with_records_above(dig: Dig) -> File:
    rows: Cells = [
        ["Plant remains from an invented hamlet"],
        [],
        ["Sample no.", None, *dig.samples],
        ["Context", None, *(dig.context[s] for s in dig.samples)],
        ["Phase", None, *(dig.phase[s] for s in dig.samples)],
        ["Volume (l)", None, *(dig.volume[s] for s in dig.samples)],
        ["Taxon", "Part"],
        *([p[0], p[1], *(_blank(dig.of(s, p)) for s in dig.samples)] for p in dig.plants),
    ]
    return File({"Sheet1": rows})


def columns_with_records_below(dig: Dig) -> File:
    rows: Cells = [
        ["Species", *dig.samples],
        *([_name(p), *(dig.of(s, p) for s in dig.samples)] for p in dig.plants),
        [],
        ["Volume floated (litres)", *(dig.volume[s] for s in dig.samples)],
        ["Context", *(dig.context[s] for s in dig.samples)],
        ["Period", *(dig.phase[s] for s in dig.samples)],
    ]
    return File({"Sheet1": rows})


def columns_sections_and_totals(dig: Dig) -> File:
    half = len(dig.plants) // 2
    groups = (("CEREALS AND NUTS", dig.plants[:half]), ("WILD PLANTS", dig.plants[half:]))
    rows: Cells = [
        ["Sample", *dig.samples, "Total", "%", "Ubiquity (%)"],
        ["Litres", *(dig.volume[s] for s in dig.samples)],
    ]
    whole = sum(dig.total(s) for s in dig.samples)
    for head, plants in groups:
        rows.append([head])
        for p in plants:
            values = [dig.of(s, p) for s in dig.samples]
            rows.append(
                [_name(p), *(_blank(v) for v in values), sum(values), round(100 * sum(values) / whole, 1),
                 round(100 * sum(v > 0 for v in values) / len(values), 1)]
            )  # fmt: skip
        sub = [sum(dig.of(s, p) for p in plants) for s in dig.samples]
        rows.append(["Subtotal", *sub, sum(sub)])
    rows.append(["Total", *(dig.total(s) for s in dig.samples), whole])
    rows.append(["Items per litre", *(round(dig.total(s) / dig.volume[s], 2) for s in dig.samples)])
    return File({"Sheet1": rows})


def columns_filled_to_the_right(dig: Dig) -> File:
    """Five head rows; context and phase are written once and mean the columns to their right."""
    order = sorted(dig.samples, key=lambda s: (dig.phase[s], dig.context[s]))

    def once(of: Callable[[str], str]) -> list[object]:
        return [of(s) if n == 0 or of(order[n - 1]) != of(s) else None for n, s in enumerate(order)]

    rows: Cells = [
        ["Phase", *once(lambda s: dig.phase[s])],
        ["Context", *once(lambda s: f"{dig.context[s]}")],
        ["Sample", *order],
        ["Soil volume (L)", *(dig.volume[s] for s in order)],
        ["% flot sorted", *(100 for _ in order)],
        *([_name(p), *(_blank(dig.of(s, p)) for s in order)] for p in dig.plants),
    ]
    return File({"Sheet1": rows})


def columns_counts_and_weights(dig: Dig) -> File:
    """Pairs of n and g under one merged sample."""
    head: list[object] = ["Taxon", "Part"]
    second: list[object] = [None, None]
    merged = []
    for n, s in enumerate(dig.samples):
        head += [s, None]
        second += ["n", "wt (g)"]
        merged.append(f"{_letters(2 + 2 * n)}1:{_letters(3 + 2 * n)}1")
    rows: Cells = [head, second]
    for p in dig.plants:
        row: list[object] = [p[0], p[1]]
        for s in dig.samples:
            row += [_blank(dig.of(s, p)), round(dig.of(s, p) * 0.01, 2) or None]
        rows.append(row)
    return File({"Sheet1": rows}, {"Sheet1": merged})


def columns_parts_below_names(dig: Dig) -> File:
    """A blank name means the name above; the part tells the rows apart."""
    rows: Cells = [["Family", "Taxon", "Plant part", *dig.samples]]
    before = ""
    for p in sorted(dig.plants):
        rows.append([None, p[0] if p[0] != before else None, p[1], *(_blank(dig.of(s, p)) for s in dig.samples)])
        before = p[0]
    return File({"Sheet1": rows})


def columns_genus_and_epithet(dig: Dig) -> File:
    rows: Cells = [["cf.", "Genus", "Species", "Part", *dig.samples]]
    for name, part in dig.plants:
        bare = name.removeprefix("cf. ")
        genus, _, epithet = bare.partition(" ")
        rows.append(
            [
                "cf." if bare != name else None,
                genus,
                epithet or None,
                part,
                *(_blank(dig.of(s, (name, part))) for s in dig.samples),
            ]
        )
    return File({"Sheet1": rows})


def columns_names_on_the_right(dig: Dig) -> File:
    rows: Cells = [[*dig.samples, "Total", "Taxon"]]
    for p in dig.plants:
        values = [dig.of(s, p) for s in dig.samples]
        rows.append([*(_blank(v) for v in values), sum(values), _name(p)])
    return File({"Sheet1": rows})


# ---- layouts: samples as rows


def rows_plain(dig: Dig) -> File:
    rows: Cells = [
        ["Sample", "Context", "Phase", "Vol. (L)", *(_name(p) for p in dig.plants)],
        *(
            [s, dig.context[s], dig.phase[s], dig.volume[s], *(_blank(dig.of(s, p)) for p in dig.plants)]
            for s in dig.samples
        ),
    ]
    return File({"Sheet1": rows})


def rows_three_heads(dig: Dig) -> File:
    """Group, taxon, part over the columns; group and taxon are written once."""
    plants = sorted(dig.plants)
    half = len(plants) // 2
    group: list[object] = [None, None] + [
        ("Group A" if n == 0 else "Group B" if n == half else None) for n in range(len(plants))
    ]
    names: list[object] = ["Sample ID", "Volume (l)"] + [p[0] for p in plants]
    parts: list[object] = [None, None] + [p[1] for p in plants]
    rows: Cells = [group, names, parts, *([s, dig.volume[s], *(dig.of(s, p) for p in plants)] for s in dig.samples)]
    return File({"Sheet1": rows})


def rows_records_on_the_right(dig: Dig) -> File:
    rows: Cells = [
        ["Flot no.", *(_name(p) for p in dig.plants), "Total", "Density (items/l)", "Soil vol (l)", "Context", "Date"],
        *(
            [s, *(_blank(dig.of(s, p)) for p in dig.plants), dig.total(s), round(dig.total(s) / dig.volume[s], 2),
             dig.volume[s], dig.context[s], dig.phase[s]]
            for s in dig.samples
        ),
        ["Total", *(sum(dig.of(s, p) for s in dig.samples) for p in dig.plants)],
    ]  # fmt: skip
    return File({"Sheet1": rows})


def rows_sieve_classes(dig: Dig) -> File:
    """Each sample stands in two rows, one for each sieve; its litres are repeated."""
    rows: Cells = [["Sample", "Sieve (mm)", "Volume (l)", *(_name(p) for p in dig.plants)]]
    for s in dig.samples:
        large = [dig.of(s, p) // 3 for p in dig.plants]
        rows.append([s, ">2", dig.volume[s], *(_blank(v) for v in large)])
        rows.append(
            [s, "1-2", dig.volume[s], *(_blank(dig.of(s, p) - v) for p, v in zip(dig.plants, large, strict=True))]
        )
    return File({"Sheet1": rows})


def rows_contexts_written_once(dig: Dig) -> File:
    rows: Cells = [["Phase", "Context", "Sample", *(_name(p) for p in dig.plants)]]
    before: tuple[str, str] = ("", "")
    for s in sorted(dig.samples, key=lambda s: (dig.phase[s], dig.context[s])):
        now = (dig.phase[s], dig.context[s])
        rows.append(
            [
                now[0] if now[0] != before[0] else None,
                now[1] if now != before else None,
                s,
                *(_blank(dig.of(s, p)) for p in dig.plants),
            ]
        )
        before = now
    return File({"Sheet1": rows})


# ---- long forms


def _long_rows(dig: Dig) -> list[tuple[str, str, str, int]]:
    return [(s, p[0], p[1], dig.of(s, p)) for s in dig.samples for p in dig.plants if dig.of(s, p)]


def long_odd_heads(dig: Dig) -> File:
    rows: Cells = [["Sample_ID", "Species", "Element", "N", "Wt (g)", "Remarks"]]
    rows += [[s, name, part, n, round(n * 0.01, 2), None] for s, name, part, n in _long_rows(dig)]
    return File({"Sheet1": rows})


def long_with_records(dig: Dig) -> File:
    rows: Cells = [["Context", "Sample Number", "Volume (L)", "Period", "Taxon", "Plant part", "Count"]]
    rows += [[dig.context[s], s, dig.volume[s], dig.phase[s], name, part, n] for s, name, part, n in _long_rows(dig)]
    return File({"Sheet1": rows})


def long_written_once(dig: Dig) -> File:
    """The sample is written in its first row only."""
    rows: Cells = [["Sample", "Taxon", "Part", "No. of items"]]
    before = ""
    for s, name, part, n in _long_rows(dig):
        rows.append([s if s != before else None, name, part, n])
        before = s
    return File({"Sheet1": rows})


def long_counts_by_sieve(dig: Dig) -> File:
    rows: Cells = [["Sample", "Taxon", "Part", ">2 mm", "1-2 mm"]]
    rows += [[s, name, part, _blank(n // 3), n - n // 3] for s, name, part, n in _long_rows(dig)]
    return File({"Sheet1": rows})


# ---- several tables


def two_tables_stacked(dig: Dig) -> File:
    half = len(dig.samples) // 2
    rows: Cells = []
    for n, samples in enumerate((dig.samples[:half], dig.samples[half:]), start=1):
        rows.append([f"Table {n}. Samples of the invented hamlet, part {n}"])
        rows.append(["Taxon", *samples])
        rows += [[_name(p), *(_blank(dig.of(s, p)) for s in samples)] for p in dig.plants]
        rows.append([])
    return File({"Sheet1": rows})


def two_tables_of_rows(dig: Dig) -> File:
    half = len(dig.plants) // 2
    rows: Cells = []
    for plants in (dig.plants[:half], dig.plants[half:]):
        rows.append(["Sample", "Volume (l)", *(_name(p) for p in plants)])
        rows += [[s, dig.volume[s], *(_blank(dig.of(s, p)) for p in plants)] for s in dig.samples]
        rows.append([])
    return File({"Sheet1": rows})


def count_sheet_is_not_the_first(dig: Dig) -> File:
    readme: Cells = [
        ["Notes on this workbook"],
        ["All samples were floated with a bucket."],
        ["Sorted in the laboratory, invented"],
    ]
    records: Cells = [
        ["Sample", "Context", "Phase", "Litres"],
        *([s, dig.context[s], dig.phase[s], dig.volume[s]] for s in dig.samples),
    ]
    return File({"Read me": readme, "Samples": records, "Flots": columns_plain(dig).sheets["Sheet1"]})


def columns_shares_beside(dig: Dig) -> File:
    """Pairs of n and % under one merged sample."""
    head, second = ["Taxon"], [None]
    for s in dig.samples:
        head, second = [*head, s, None], [*second, "n", "%"]
    rows: Cells = [head, second]
    for p in dig.plants:
        row: list[object] = [_name(p)]
        for s in dig.samples:
            row += [_blank(dig.of(s, p)), round(100 * dig.of(s, p) / dig.total(s), 1) if dig.of(s, p) else None]
        rows.append(row)
    merged = [f"{_letters(1 + 2 * n)}1:{_letters(2 + 2 * n)}1" for n in range(len(dig.samples))]
    return File({"Sheet1": rows}, {"Sheet1": merged})


def rows_subtotals_among_columns(dig: Dig) -> File:
    """Two groups of taxa, each with its sum behind it, and shares and ubiquities below."""
    half = len(dig.plants) // 2
    groups = (dig.plants[:half], dig.plants[half:])
    rows: Cells = [["Sample", "Litres", *(c for g in groups for c in (*map(_name, g), "Subtotal")), "Total"]]
    for s in dig.samples:
        row: list[object] = [s, dig.volume[s]]
        for g in groups:
            row += [*(dig.of(s, p) for p in g), sum(dig.of(s, p) for p in g)]
        rows.append([*row, dig.total(s)])
    everything = sum(map(dig.total, dig.samples))

    def over(of: Callable[[tuple[Plant, ...]], object], one: Callable[[Plant], object]) -> list[object]:
        return [c for g in groups for c in (*map(one, g), of(g))]

    def total(p: Plant) -> int:
        return sum(dig.of(s, p) for s in dig.samples)

    def ubiquity(p: Plant) -> float:
        return round(100 / len(dig.samples) * sum(dig.of(s, p) > 0 for s in dig.samples), 1)

    rows.append(["Total", None, *over(lambda g: sum(map(total, g)), total), everything])
    rows.append(["%", None, *over(lambda g: None, lambda p: round(100 * total(p) / everything, 1))])
    rows.append(["Ubiquity %", None, *over(lambda g: None, ubiquity)])
    return File({"Sheet1": rows})


def forms_of_the_bench(dig: Dig) -> File:
    """One list for each sample, under a line that says which."""
    rows: Cells = []
    for s in dig.samples:
        rows.append([f"Sample {s}", dig.context[s], f"{dig.volume[s]} litres"])
        rows.append(["Taxon", "Part", "Count"])
        rows += [[p[0], p[1], dig.of(s, p)] for p in dig.plants if dig.of(s, p)]
        rows.append([])
    return File({"Sheet1": rows})


def sheets_joined_by_keys(dig: Dig) -> File:
    """Finds that give numbers for their taxon and their sample, and two lists that say what those mean."""
    names = sorted({name for name, _ in dig.plants})
    keys = {name: n for n, name in enumerate(names, start=11)}
    of = {s: n for n, s in enumerate(dig.samples, start=501)}
    finds: Cells = [["sample_key", "taxon_key", "part", "n"]]
    finds += [[of[s], keys[name], part, n] for s, name, part, n in _long_rows(dig)]
    taxa: Cells = [["taxon_key", "latin name"], *([keys[name], name] for name in names)]
    samples: Cells = [["sample_key", "sample no", "context", "phase", "litres"]]
    samples += [[of[s], s, dig.context[s], dig.phase[s], dig.volume[s]] for s in dig.samples]
    return File({"Taxa": taxa, "Finds": finds, "Samples": samples})


LAYOUTS: dict[str, Callable[[Dig], File]] = {
    f.__name__: f
    for f in (
        columns_plain, columns_with_records_above, columns_with_records_below, columns_sections_and_totals,
        columns_filled_to_the_right, columns_counts_and_weights, columns_parts_below_names, columns_genus_and_epithet,
        columns_names_on_the_right, rows_plain, rows_three_heads, rows_records_on_the_right, rows_sieve_classes,
        rows_contexts_written_once, long_odd_heads, long_with_records, long_written_once, long_counts_by_sieve,
        two_tables_stacked, two_tables_of_rows, count_sheet_is_not_the_first, columns_shares_beside,
        rows_subtotals_among_columns, forms_of_the_bench, sheets_joined_by_keys,
    )
}  # fmt: skip
RECORDED = frozenset(
    {
        "columns_with_records_above", "columns_with_records_below", "columns_filled_to_the_right", "rows_plain",
        "rows_records_on_the_right", "long_with_records", "count_sheet_is_not_the_first",
        "sheets_joined_by_keys",
    }
)  # fmt: skip
"""Layouts that carry context, phase and volume of each sample."""


def as_csv(file: File, separator: str = ",") -> bytes:
    """The one sheet of a file as text; merged cells stand in their first cell only."""
    (rows,) = file.sheets.values()
    width = max(len(row) for row in rows)
    out = io.StringIO()
    writer = csv.writer(out, delimiter=separator, lineterminator="\n")
    for row in rows:
        writer.writerow(["" if cell is None else cell for cell in [*row, *[None] * (width - len(row))]])
    return out.getvalue().encode("utf-8")


def as_xlsx(file: File) -> bytes:
    import openpyxl

    book = openpyxl.Workbook()
    book.remove(book.active)
    for name, rows in file.sheets.items():
        sheet = book.create_sheet(name)
        for row in rows:
            sheet.append(row)
        for reference in file.merged.get(name, ()):
            sheet.merge_cells(reference)
    out = io.BytesIO()
    book.save(out)
    return out.getvalue()


def _letters(column: int) -> str:
    return chr(65 + column) if column < 26 else chr(64 + column // 26) + chr(65 + column % 26)
