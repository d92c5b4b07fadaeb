"""A random dig, written in a random layout and kind of file, reads back as the same dig."""

from __future__ import annotations

import tempfile
from pathlib import Path

from hypothesis import given, settings
from hypothesis import strategies as st

from narrate.reading.intake.take_in import take_in
from tests.reading.intake.sheets import LAYOUTS, RECORDED, a_dig, as_csv, as_xlsx
from tests.reading.intake.test_layouts import counts_in, counts_of, packs, wrong_facts

SEPARATORS = {",": ".csv", ";": ".csv", "\t": ".tsv"}


@settings(max_examples=60, deadline=None, derandomize=True)
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
