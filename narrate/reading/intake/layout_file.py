"""NAME.layout.yaml read: the layout that a text describes, with what is wrong in it."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Any

from narrate.model.grids import column_number
from narrate.model.layouts import ROLES, Layout, Marks, Role, Table
from narrate.problems import Place, ProblemList
from narrate.reading import yaml_nodes
from narrate.reading.asking import near, offered
from narrate.reading.source_text import SourceText, shown, tell
from narrate.reading.yaml_nodes import Node, Refused, Scalar, Sequence, read_nodes

FORMAT = "narrate layout 1"
SHAPES = ("crossed", "long", "records")
_TABLE_KEYS = ("sheet", "shape", "rows", "columns", "cells", "parts", "condition", "about", "ids")
_CELL_KEYS = ("key", "footnotes", "blank", "decimal", "slash", "brackets", "estimates", "halves")
STATES = ("uncharred", "charred", "partly charred", "mineralised", "waterlogged", "desiccated")
CHOICES: Mapping[str, tuple[str, ...]] = {
    "blank": ("absent", "not looked for"),
    "decimal": (".", ","),
    "slash": ("", "whole/fragment", "fragment/whole"),
    "brackets": (
        "note", "fragment", "more", "aside", "in doubt", "of which", *STATES, *(f"of which {state}" for state in STATES),
    ),
    "estimates": ("counted", "present"),
    "halves": ("", "fragment"),
}
_MOST_LINES = 1_048_576














def read_layout(source: SourceText, problems: ProblemList) -> Layout | None:
    """The layout that a text describes; None, with problems, where it cannot be obeyed."""
    node = read_nodes(source, problems)
    before = len([p for p in problems.found if p.severity == "error"])
    if node is None or isinstance(node, Refused):
        return None
    reader = _Reader(source, problems)
    layout = reader.layout(node)
    after = len([p for p in problems.found if p.severity == "error"])
    return layout if after == before else None


class _Reader:
    def __init__(self, source: SourceText, problems: ProblemList) -> None:
        self.source = source
        self.problems = problems

    def layout(self, node: Node) -> Layout:
        found = self.fields(node, ("format", "tables", "names", "conditions", "mend", "left_out"), "layout")
        if "tables" not in found:
            self.tell(
                node, "the layout has no 'tables', expected a list of them", "run 'narrate intake' to work one out"
            )
        said = found.get("format")
        if isinstance(said, Scalar) and said.text.strip() != FORMAT:
            self.tell(said, f"format is {shown(said.text)}, expected {FORMAT}", f"write '{FORMAT}'")
        tables = []
        listed = found.get("tables")
        if isinstance(listed, Sequence):
            tables = [self.table(item, n) for n, item in enumerate(listed.items, start=1)]
        elif listed is not None and not (isinstance(listed, Scalar) and not listed.text):
            self.tell(listed, "tables is no list, expected a list of tables", "begin each with '- shape: …'")
        return Layout(
            tables=tuple(table for table in tables if table is not None),
            names=self.texts(found.get("names"), "names"),
            conditions=self.texts(found.get("conditions"), "conditions"),
            mend=self.texts(found.get("mend"), "mend"),
            left_out=self.words(found.get("left_out")),
            place=Place(path=self.source.path, line=1),
        )

    def table(self, node: Node, number: int) -> Table | None:
        whose = f"table {number}"
        found = self.fields(node, _TABLE_KEYS, whose)
        shape = self.text(found.get("shape"))
        if shape not in SHAPES:
            at = found.get("shape") or node
            self.tell(at, f"{whose}: shape is {shown(shape)}, expected {', '.join(SHAPES[:-1])} or {SHAPES[-1]}", "")
        rows = self.roles(found.get("rows"), whose, "rows", _row_range)
        columns = self.roles(found.get("columns"), whose, "columns", _column_range)
        cells = self.fields(found["cells"], _CELL_KEYS, f"{whose}, cells") if found.get("cells") else {}
        chosen: dict[str, Any] = {}
        for name, choices in CHOICES.items():
            if name in cells:
                said = self.text(cells[name])
                if said not in choices:
                    self.tell(cells[name], f"{whose}, cells: {name} is {shown(said)}, expected {_or(choices)}", "")
                else:
                    chosen[name] = said
        table = Table(
            sheet=self.text(found.get("sheet")),
            shape=shape if shape in SHAPES else "crossed",  # type: ignore[arg-type]
            rows=rows,
            columns=columns,
            marks=Marks(
                key=self.texts(cells.get("key"), "key"),
                footnotes=self.texts(cells.get("footnotes"), "footnotes"),
                **chosen,
            ),
            parts=self.texts(found.get("parts"), "parts"),
            condition=self.text(found.get("condition")) or "charred",
            about=self.texts(found.get("about"), "about"),
            ids=self.texts(found.get("ids"), "ids"),
        )
        self.check(table, node, whose)
        return table

    def check(self, table: Table, node: Node, whose: str) -> None:
        """A table must say where samples, names and counts stand."""
        names = [name for role in (*table.rows.values(), *table.columns.values()) for name in role.names]
        names += [key.split(",")[0].strip() for key in table.about]
        needed: list[tuple[str, tuple[str, ...]]] = [("sample", ("sample",))]
        if table.shape == "records":
            needed = [("sample or context", ("sample", "context")), ("finds", ("finds",))]
        elif table.shape == "long":
            needed += [
                ("taxon", ("taxon", "genus", "code", "common name")),
                ("count or mass", ("count", "mass")),
                ("finds", ("finds",)),
            ]
        else:
            needed += [("taxon", ("taxon", "genus", "code", "common name")), ("counts", ("counts",))]
        for said, wanted in needed:
            if not set(wanted) & set(names):
                self.tell(
                    node,
                    f"{whose} gives no row or column the role '{said}', expected one",
                    f"write which it is, such as 'A: {said}'",
                )

    def roles(self, node: Node | None, whose: str, name: str, numbers: Any) -> dict[int, Role]:
        found: dict[int, Role] = {}
        if not isinstance(node, yaml_nodes.Mapping):
            if node is not None:
                self.tell(
                    node, f"{whose}: {name} is no mapping, expected entries such as 'A: taxon' or '5-20: counts'", ""
                )
            return found
        for key, value in node.entries:
            span = numbers(key.text.strip())
            if span is None:
                what = "row numbers such as 4 or 5-20" if name == "rows" else "column letters such as A or C-K"
                self.tell(key, f"{whose}: {name} has an entry {shown(key.text)}, expected {what}", "")
                continue
            role = parse_role(self.text(value))
            for word in role.names:
                if word not in ROLES:
                    meant = near(word, ROLES)
                    self.tell(
                        value if isinstance(value, Scalar) else key,
                        f"{whose}: {name} {key.text} has the role {shown(word)}, which is not known{offered(meant)}",
                        f"write '{meant}'" if meant else f"known are {', '.join(ROLES)}",
                    )
            for number in range(span[0], span[1] + 1):
                if number in found:
                    self.tell(key, f"{whose}: {name} {key.text} gives a role to what has one already, expected one", "")
                    break
                found[number] = role
        return found

    def fields(self, node: Node, known: tuple[str, ...], whose: str) -> dict[str, Node]:
        if not isinstance(node, yaml_nodes.Mapping):
            if not isinstance(node, Refused):
                self.tell(node, f"{whose} is no mapping, expected fields such as {known[0]} and {known[1]}", "")
            return {}
        found: dict[str, Node] = {}
        for key, value in node.entries:
            if key.text not in known:
                meant = near(key.text, known)
                message = f"{whose} has a field {shown(key.text)} that is not known{offered(meant)}"
                self.tell(key, message, f"write '{meant}'" if meant else f"known are {', '.join(known)}")
            else:
                found[key.text] = value
        return found

    def texts(self, node: Node | None, name: str) -> dict[str, str]:
        if node is None or (isinstance(node, Scalar) and not node.text):
            return {}
        if not isinstance(node, yaml_nodes.Mapping):
            self.tell(node, f"{name} is no mapping, expected entries such as '\"+\": 1-5'", "")
            return {}
        return {key.text: value.text for key, value in node.entries if isinstance(value, Scalar)}

    def words(self, node: Node | None) -> tuple[str, ...]:
        return tuple(item.text for item in node.items if isinstance(item, Scalar)) if isinstance(node, Sequence) else ()

    def text(self, node: Node | None) -> str:
        return node.text.strip() if isinstance(node, Scalar) else ""

    def tell(self, node: Node, message: str, help: str) -> None:
        width = node.width if isinstance(node, Scalar) else 1
        tell(self.source, self.problems, "N311", message, line=node.line, column=node.column, width=width, help=help)


def parse_role(text: str) -> Role:
    """
    A role as a layout writes it.

    >>> parse_role("volume, ml").qualifiers, parse_role("sample and context, filled").names
    (('ml',), ('sample', 'context'))
    """
    first, *rest = [piece.strip() for piece in text.split(",")]
    names = tuple(piece.strip() for piece in first.split(" and "))
    filled = "filled" in rest
    return Role(name=names[0], also=names[1:], qualifiers=tuple(r for r in rest if r and r != "filled"), filled=filled)


def _row_range(text: str) -> tuple[int, int] | None:
    match = re.fullmatch(r"(\d{1,7})(?:\s*[-–]\s*(\d{1,7}))?", text)
    if not match:
        return None
    first, last = int(match[1]), int(match[2] or match[1])
    return (first - 1, last - 1) if 1 <= first <= last <= _MOST_LINES else None


def _column_range(text: str) -> tuple[int, int] | None:
    match = re.fullmatch(r"([A-Za-z]{1,3})(?:\s*[-–]\s*([A-Za-z]{1,3}))?", text)
    if not match:
        return None
    first, last = column_number(match[1]), column_number(match[2] or match[1])
    return (first, last) if first <= last < 16_384 else None


def _or(words: tuple[str, ...]) -> str:
    return " or ".join(repr(word) for word in words)
