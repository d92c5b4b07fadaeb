"""The samples of a table: their ids, ids that stand twice, and what is said of each."""

# ruff: noqa: E501

from __future__ import annotations

import re
from collections.abc import Mapping
from functools import cached_property

from narrate.model.grids import address, at_of
from narrate.model.layouts import SAMPLE_ROLES
from narrate.problems import Place
from narrate.reading.intake.heads_by_content import SIZES
from narrate.reading.intake.ids_made_dates import typed_ids
from narrate.reading.intake.lines_of_table import Lines
from narrate.reading.intake.said import Line, Said
from narrate.reading.intake.shares_drafted import with_scale
from narrate.reading.intake.shares_in_heads import SORTED, size_and_share
from narrate.reading.intake.sheet_finds import SORTED_OF_CLASS


class SampleLines(Lines):
    """The same with the samples that the lines are of."""

    def _sample_ids(
        self, by_row: dict[int, Line], by_column: dict[int, Line], rows: list[int], columns: list[int]
    ) -> dict[tuple[str, int], str]:
        found: dict[tuple[str, int], str] = {}
        in_rows = any("sample" in line for line in by_row.values()) or any(
            "sample" in role.names for role in self.table.columns.values()
        )
        lines = by_row if in_rows else by_column
        mark = "r" if in_rows else "c"
        for at, line in lines.items():
            said = line.get("sample") or self._context_as_id(at, lines, rows, columns, in_rows)
            if not said:
                if self._has_any(at, rows, columns, in_rows):
                    place = self._place_of_missing(at, in_rows)
                    self.told.error(
                        "N314", f"no sample {mark}{at}", place,
                        f"{'row' if in_rows else 'column'} "
                        f"{address(at, at).lstrip('ABCDEFGHIJKLMNOPQRSTUVWXYZ') if in_rows else re.sub(r'[0-9]', '', address(0, at))} "
                        "holds counts and has no sample id; it is not read, expected an id",
                        f'say it under \'mend\' in the layout: "{place.cell}": the id; or give it another role there',
                    )  # fmt: skip
                continue
            line["sample"] = said
            self._tell_without_own_id(at, said, in_rows)
            self._tell_dates(said)
            id = self._joined(said)
            found[mark, at] = id
            self._facts(line, id)
        if self.table.shape == "crossed":
            self._tell_repeated_ids({at: id for (_, at), id in found.items()}, lines, by_column)
        return found

    def _context_as_id(
        self, at: int, lines: dict[int, Line], rows: list[int], columns: list[int], in_rows: bool
    ) -> list[Said]:
        """The context or feature of counts without a sample id, where no others are of it; empty for any other line."""
        role = next((role for role in ("context", "feature") if role in lines[at]), "context")
        said = lines[at].get(role, [])
        others = {one.text for n, line in lines.items() if n != at for one in (*line.get(role, ()), *line.get("sample", ()))}
        is_plain = self.table.shape == "crossed" and len(said) == 1 and said[0].text not in others
        if not is_plain or not self._has_any(at, rows, columns, in_rows):
            return []
        self.told.warning(
            "N314", f"{role} for id", self._place_of_missing(at, in_rows),
            f"the counts of {role} '{said[0].text}' have no sample id; the {role} is taken for it, expected an id",
            f'if it has one, say it under \'mend\' in the layout: "{self._place_of_missing(at, in_rows).cell}": the id; '
            f"where the {role} is part of all ids, give it the role 'sample and {role}'",
        )  # fmt: skip
        return said

    @cached_property
    def _own_and_joined(self) -> dict[bool, tuple[list[int], list[int]]]:
        """Of columns (True) and of rows: which hold ids of samples alone, and which a context or feature that is part of ids."""
        sides = {True: self.table.columns, False: self.table.rows}
        return {
            of_columns: (
                [n for n, role in roles.items() if role.names == ("sample",)],
                [n for n, role in roles.items() if {"context", "feature"} & set(role.names) and "sample" in role.names],
            )
            for of_columns, roles in sides.items()
        }

    def _tell_without_own_id(self, at: int, said: list[Said], in_rows: bool) -> None:
        """A line whose own id is blank, so that only the context or feature, which is a piece of the ids, stands for it."""
        own, others = self._own_and_joined[in_rows]
        if not own or not others or not said:
            return
        places = {n: self.grid.place(at, n) if in_rows else self.grid.place(n, at) for n in (*own, *others)}
        if {one.place for one in said} <= {places[n] for n in others}:
            place, id = places[own[0]], self._joined(said)
            self.told.warning(
                "N314", f"without own id {id}", place,
                f"no sample id stands here; '{id}', which stands beside it, is taken for it, expected an id",
                f'if it has one, say it under \'mend\' in the layout: "{place.cell}": the id',
            )  # fmt: skip

    def _joined(self, said: list[Said]) -> str:
        """The id of a line, of two rows or columns with '/' between them; context 5 and its sample 5 are 5/5."""
        pieces: list[str] = []
        places: set[Place] = set()
        for one in said:
            is_again = one.place in places or at_of(one.place) not in self.grid.cells or not one.text.isdecimal()
            if not (one.text in pieces and is_again):
                pieces.append(one.text)
            places.add(one.place)
        whole = "/".join(pieces)
        return self.table.ids.get(whole) or "/".join(self.table.ids.get(text, text) for text in pieces)

    def _tell_dates(self, said: list[Said]) -> None:
        """Ids that a spreadsheet has made dates of."""
        for one in said:
            cell = self.cells.get(at_of(one.place))
            typed = typed_ids(one.text) if cell is not None else ()
            if typed:
                self.told.warning(
                    "N314", f"date {one.place}", one.place,
                    f"the sample id is the date {one.text}, probably made of {' or '.join(typed)} by the spreadsheet; "
                    "it is kept as it is shown, expected the id that was typed",
                    f'say it under \'mend\' in the layout: "{one.place.cell}": "{typed[-1]}"',
                )  # fmt: skip

    def _tell_repeated_ids(
        self, ids: Mapping[int, str], lines: dict[int, Line], by_column: dict[int, Line]
    ) -> None:
        """An id over two lines that nothing else tells apart, and ids that differ by a star alone."""
        first: dict[tuple[object, ...], int] = {}
        for at, id in ids.items():
            line = lines[at]
            apart = ("quantity", "size class", "fraction", "part", "condition", "completeness", "taxon", "cf")
            own = self.table.columns.get(at) if lines is by_column else self.table.rows.get(at)
            said_of_line = (own.name, *own.qualifiers) if own is not None else ()
            key = (id, said_of_line, *(tuple(said.text for said in line.get(role, ())) for role in apart))
            place = line["sample"][0].place
            before = first.setdefault(key, at)
            # One heading written over several columns means one sample.
            if before != at and place != lines[before]["sample"][0].place:
                self.told.warning(
                    "N314", f"twice {id}", place,
                    f"the sample id '{id}' stands here and in {lines[before]['sample'][0].place.cell}; their "
                    "counts are added and their "
                    "litres are not, expected each id once",
                    f'if they are two samples, say so under \'mend\' in the layout: "{place.cell}": "{id} (2)"',
                )  # fmt: skip
            bare = id.rstrip("*†' ")
            if bare != id and bare in ids.values():
                self.told.warning(
                    "N314", f"starred {id}", place,
                    f"the sample ids '{id}' and '{bare}' differ by a sign alone; they are kept as two samples, "
                    "expected ids that tell why",
                    f"if {id} is sample {bare} floated again, say so under 'mend' in the layout: "
                    f'"{place.cell}": "{bare}"',
                )  # fmt: skip

    @cached_property
    def _has_shares_in_heads(self) -> bool:
        """Whether a head of a sieve class says what was sorted of it: of the others all was."""
        at = {n for n, role in (*self.table.rows.items(), *self.table.columns.items()) if "size class" in role.names}
        return any((r in at or c in at) and size_and_share(cell.text)[1] for (r, c), cell in self.grid.cells.items())

    def _shares_of_columns(self, columns: list[int]) -> None:
        """What was sorted of each sieve class, where heads of columns of counts say so: it holds for all samples."""
        said = {}
        for column in columns:
            role = self.table.columns[column]
            share = next((text.removeprefix(SORTED) for text in role.qualifiers if text.startswith(SORTED)), "")
            size = next((text for text in role.qualifiers if SIZES.fullmatch(text)), "")
            if size:
                said[column] = (size, share)
        if not any(share for _, share in said.values()):
            return
        head = next((r for r, role in self.table.rows.items() if role.name == "header"), min(self.table.rows))
        for id in dict.fromkeys(self.out.sample_ids.values()):
            facts = self.out.facts.setdefault(id, {})
            for column, (size, share) in said.items():
                facts.setdefault(SORTED_OF_CLASS, []).append(Said(share or "1", self.grid.place(head, column), size))

    def _has_any(self, at: int, rows: list[int], columns: list[int], in_rows: bool) -> bool:
        places = ((at, c) for c in columns) if in_rows else ((r, at) for r in rows)
        return any(place in self.cells for place in places)

    def _place_of_missing(self, at: int, in_rows: bool) -> Place:
        roles = self.table.columns if in_rows else self.table.rows
        other = next((n for n, role in roles.items() if "sample" in role.names), 0)
        return self.grid.place(at, other) if in_rows else self.grid.place(other, at)

    def _facts(self, line: Line, id: str) -> None:
        if not id:
            said = line.get("sample") or line.get("context")
            if not said:
                return
            id = self._joined(said) if line.get("sample") else "\x00" + said[0].text
        facts = self.out.facts.setdefault(id, {})
        sizes, shares = line.get("size class"), line.get("sorted")
        if sizes and shares:
            # Each sieve class may have been sorted to a share of its own.
            facts.setdefault(SORTED_OF_CLASS, []).append(Said(with_scale(shares[0]), shares[0].place, sizes[0].text))
        elif sizes and size_and_share(sizes[0].text)[1]:
            size, share = size_and_share(sizes[0].text)
            facts.setdefault(SORTED_OF_CLASS, []).append(Said(share, sizes[0].place, size))
        elif sizes and self._has_shares_in_heads:
            facts.setdefault(SORTED_OF_CLASS, []).append(Said("1", sizes[0].place, sizes[0].text))
        for role in SAMPLE_ROLES:
            said = line.get(role, [])
            own = {one.text for one in line.get("sample", ())}
            if role == "context" and len(said) > 1 and not own & {one.text for one in said}:
                # A unit and its level name a context together.
                by_place = {one.place: one.text for one in said}
                said = [Said(" ".join(by_place.values()), said[0].place, said[0].unit)]
            if said:
                facts.setdefault(role, []).extend(said)
