"""
Makes the tables beside it from general-purpose tables that Debian packages carry. Run by hand; the tests only read the CSV.

    apt-get download r-cran-vegan r-cran-ca; dpkg-deb -x each into FOLDER; pip install rdata; python make_tables.py FOLDER

Sources: Debian packages r-cran-vegan 2.6-4+dfsg-1 (dune, BCI, mite: community tables; BCI cut to its first 60 species)
and r-cran-ca 0.71.1-2 (author: letters counted in books).
"""

from __future__ import annotations

import csv
import lzma
import struct
import sys
import zlib
from pathlib import Path

VEGAN, CA = "usr/lib/R/site-library/vegan/data", "usr/lib/R/site-library/ca/data"


def main(folder: Path, target: Path) -> None:
    import rdata

    for name in ("dune", "mite", "BCI"):
        table = rdata.read_rda(folder / VEGAN / f"{name}.rda")[name].iloc[:, :60]
        _write(target / f"{name}.csv", [str(n) for n in table.index], [str(n) for n in table.columns], table.to_numpy())
    author = _from_database(folder / CA / "Rdata", "author")
    books, letters = (list(author.coords[dimension].values) for dimension in author.dims)
    _write(target / "author.csv", [str(n) for n in books], [str(n) for n in letters], author.values)


def _from_database(base: Path, name: str) -> object:
    import rdata

    index = rdata.read_rds(base.with_suffix(".rdx"))
    offset, length = (int(n) for n in index["variables"][name])
    chunk = base.with_suffix(".rdb").read_bytes()[offset : offset + length]
    (size,) = struct.unpack(">I", chunk[:4])
    try:
        raw = zlib.decompress(chunk[4:])
    except zlib.error:
        raw = lzma.decompress(chunk[5:])
    assert len(raw) == size
    return rdata.conversion.convert(rdata.parser.parse_data(raw))


def _write(path: Path, rows: list[str], columns: list[str], values: object) -> None:
    with path.open("w", encoding="utf-8", newline="") as out:
        writer = csv.writer(out, lineterminator="\n")
        writer.writerow(["", *columns])
        for name, line in zip(rows, values, strict=True):  # type: ignore[call-overload]
            writer.writerow([name, *(int(v) for v in line)])


if __name__ == "__main__":
    main(Path(sys.argv[1]), Path(__file__).parent)
