"""A random dig, written in a random layout and kind of file, reads back as the same dig."""

from __future__ import annotations

import re
import tempfile
from collections import Counter
from pathlib import Path

from hypothesis import given, settings
from hypothesis import strategies as st

from narrate.pipeline.intake import intake
from narrate.pipeline.judged import read
from narrate.reading.intake.take_in import take_in
from tests.reading.intake.sheets import (
    LAYOUTS,
    RECORDED,
    Dig,
    a_dig,
    as_csv,
    as_xlsx,
    columns_plain,
    long_with_records,
    rows_plain,
)
from tests.reading.intake.test_layouts import counts_in, counts_of, packs, wrong_facts

DIGS = st.builds(
    a_dig, st.integers(0, 10_000), samples=st.integers(2, 9), plants=st.integers(3, 18), most=st.integers(5, 3_000)
)
SEPARATORS = {",": ".csv", ";": ".csv", "\t": ".tsv"}


@settings(max_examples=45, deadline=None, derandomize=True)
@given(
    layout=st.sampled_from(sorted(LAYOUTS)),
    seed=st.integers(0, 10_000),
    samples=st.integers(2, 9),
    plants=st.integers(3, 18),
    most=st.integers(5, 3_000),
    separator=st.sampled_from(sorted(SEPARATORS)),
    is_book=st.booleans(),
    has_mark=st.booleans(),
    ends_in_crlf=st.booleans(),
)
def test_a_random_dig_comes_back(
    layout: str,
    seed: int,
    samples: int,
    plants: int,
    most: int,
    separator: str,
    is_book: bool,
    has_mark: bool,
    ends_in_crlf: bool,
) -> None:
    """Counts, names, parts and records are the same, whatever the layout, the separator, the mark and the line ends."""
    dig = a_dig(seed, samples=samples, plants=plants, most=most)
    file = LAYOUTS[layout](dig)
    if is_book or len(file.sheets) > 1 or file.merged:
        content, ending = as_xlsx(file), ".xlsx"
    else:
        content, ending = as_csv(file, separator), SEPARATORS[separator]
        content = (b"\xef\xbb\xbf" if has_mark else b"") + (
            content.replace(b"\n", b"\r\n") if ends_in_crlf else content
        )
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / f"lab{ending}"
        path.write_bytes(content)
        found = take_in(path, packs())

    assert counts_of(found) == counts_in(dig)
    assert layout not in RECORDED or wrong_facts(found, dig) == []


@settings(max_examples=9, deadline=None, derandomize=True)
@given(dig=DIGS, is_long=st.booleans())
def test_records_and_counts_in_two_files_make_one_dig(dig: Dig, is_long: bool) -> None:
    """One file holds the counts by sample, the other what is known of the samples; the id joins them."""
    counts = long_with_records(dig) if is_long else columns_plain(dig)
    if is_long:
        counts.sheets["Sheet1"] = [[row[1], *row[4:]] for row in counts.sheets["Sheet1"]]
    records = rows_plain(dig)
    records.sheets["Sheet1"] = [row[:4] for row in records.sheets["Sheet1"]]
    with tempfile.TemporaryDirectory() as folder:
        (Path(folder) / "counts.csv").write_bytes(as_csv(counts))
        (Path(folder) / "records.csv").write_bytes(as_csv(records))
        (Path(folder) / "dig").mkdir()
        for name in ("counts.csv", "records.csv"):
            intake(Path(folder) / name, Path(folder) / "dig")
        project = read(Path(folder) / "dig").project

    assert project is not None
    got = {str(s.id): (str(s.context), s.volume_l) for s in project.samples}
    assert got == {s: (dig.context[s], dig.volume[s]) for s in dig.samples}
    assert {str(c.id): str(c.phase).lower() for c in project.contexts} == {
        dig.context[s]: dig.phase[s].lower() for s in dig.samples
    }
    assert sum(row.count.number or 0 for row in project.counts) == sum(dig.counts.values())


HEADERLESS = """format: narrate layout 1
tables:
  - shape: long
    rows: {{1-{last}: finds}}
    columns: {{A: note, B: sample, C: count, D: part, E: taxon}}
"""


@settings(max_examples=9, deadline=None, derandomize=True)
@given(dig=DIGS)
def test_a_long_file_without_heads_comes_back_by_a_layout_given(dig: Dig) -> None:
    """Nothing in the file says what its columns are; the layout beside it does."""
    lines = [["x", s, n, p[1], p[0]] for (s, p), n in dig.counts.items()]
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "lab.csv"
        path.write_bytes("".join(",".join(map(str, line)) + "\n" for line in lines).encode())
        path.with_name("lab.csv.layout.yaml").write_text(HEADERLESS.format(last=len(lines)), encoding="utf-8")
        found = take_in(path, packs())

    assert found.is_given
    assert counts_of(found) == counts_in(dig)


@settings(max_examples=9, deadline=None, derandomize=True)
@given(dig=DIGS, separator=st.sampled_from([" ", ",", "\t"]))
def test_a_long_table_of_a_statistical_program_comes_back(dig: Dig, separator: str) -> None:
    """Names of rows stand before each line and no head over them; words stand in quotation marks."""
    lines = [["sample", "taxon", "part", "n"]]
    lines += [
        [str(3 * n), s, p[0].replace(" ", "."), p[1], count] for n, ((s, p), count) in enumerate(dig.counts.items())
    ]
    text = "".join(
        separator.join(f'"{cell}"' if isinstance(cell, str) else str(cell) for cell in line) + "\n" for line in lines
    )
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "export.txt"
        path.write_text(text, encoding="utf-8")
        found = take_in(path, packs())

    assert without_points(counts_of(found)) == without_points(counts_in(dig))


def without_points(counts: Counter[tuple[str, str, str]]) -> dict[tuple[str, str, str], int]:
    """The same with blanks for points in names, which such programs write for blanks."""
    return {(s, re.sub("^(?:cf )+", "cf ", re.sub("[. ]+", " ", name)).strip(), part): n
            for (s, name, part), n in counts.items()}  # fmt: skip
