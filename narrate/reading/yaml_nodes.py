"""YAML as a tree of text that knows its lines. Nothing is turned into numbers, dates or yes and no here."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

import yaml

from narrate.problems import ProblemList
from narrate.reading.source_text import FORBIDDEN, SourceText, tell
from narrate.reading.yaml_faults import explain_fault

DEPTH = 40
"""Deeper than any record nests."""

FAST_LOADER: type = getattr(yaml, "CSafeLoader", yaml.SafeLoader)
PURE_LOADER: type = yaml.SafeLoader


@dataclass(frozen=True, slots=True)
class Scalar:
    """A text, whatever it looks like: 012, no, 2107.10 and 12:30 stay as they were written."""

    text: str
    line: int
    column: int
    width: int
    """Characters that it takes up in its line, quotation marks included."""
    is_quoted: bool


@dataclass(frozen=True, slots=True)
class Sequence:
    items: tuple[Node, ...]
    line: int
    column: int


@dataclass(frozen=True, slots=True)
class Mapping:
    entries: tuple[tuple[Scalar, Node], ...]
    line: int
    column: int


@dataclass(frozen=True, slots=True)
class Refused:
    """Stands where something was refused, so that it is not told again as missing."""

    line: int
    column: int


Node = Scalar | Sequence | Mapping | Refused


@dataclass(slots=True)
class _Open:
    """A list or mapping whose end has not been read yet."""

    is_mapping: bool
    line: int
    column: int
    nodes: list[Node]


def read_nodes(source: SourceText, problems: ProblemList, loader: type = FAST_LOADER) -> Node | None:
    """
    The one document of a YAML text.

    None where the file holds nothing, or where it cannot be read (then with a problem). Repeated keys, aliases, tags
    and merge keys are told and left out, so that whatever else is wrong in the file can be told too.
    """
    if FORBIDDEN.search(source.text):
        tell(source, problems, "N102", "the file holds a character that cannot be seen, expected plain text")
        return None
    builder = _Builder(source, problems)
    try:
        parser = loader(source.text)
        try:
            while builder.takes(parser.get_event()):
                pass
        finally:
            parser.dispose()
    except yaml.MarkedYAMLError as fault:
        explain_fault(source, fault, problems)
        return None
    except (yaml.YAMLError, ValueError, OverflowError):
        # The pure loader lets faults of escapes such as "\UFFFFFFFF" through as they are.
        tell(
            source,
            problems,
            "N103",
            "the YAML cannot be read: an escape after '\\' stands for no character",
            help="use single quotes, in which '\\' is an ordinary character",
        )
        return None
    return builder.document if builder.is_whole else None


def value_of(node: Node, name: str) -> Node | None:
    """The value of one field of a mapping; None where there is none."""
    if not isinstance(node, Mapping):
        return None
    return next((value for key, value in node.entries if key.text == name), None)


def within(node: Node, path: Iterable[str | int]) -> Node | None:
    """The value at the end of a path of field names and positions in lists; None where it leads nowhere."""
    found: Node | None = node
    for step in path:
        if isinstance(step, str):
            found = value_of(found, step) if found is not None else None
        else:
            found = found.items[step] if isinstance(found, Sequence) and step < len(found.items) else None
    return found


def written_id(node: Node, name: str = "id") -> str:
    """The id of a record in quotes, as messages name it; empty where it has none."""
    found = value_of(node, name)
    return f"'{' '.join(found.text.split())}'" if isinstance(found, Scalar) and found.text.strip() else ""


class _Builder:
    """Builds nodes from events without recursion, so that depth is bounded by us and not by the stack."""

    def __init__(self, source: SourceText, problems: ProblemList) -> None:
        self.source = source
        self.problems = problems
        self.document: Node | None = None
        self.is_whole = True
        self.open: list[_Open] = []
        self.documents = 0

    def takes(self, event: yaml.Event) -> bool:
        """Takes one event in; False once no more are wanted."""
        kind = type(event)
        if kind is yaml.ScalarEvent:
            self._add(self._scalar(event))
        elif kind is yaml.MappingStartEvent or kind is yaml.SequenceStartEvent:
            self._refuse_marks(event)
            mark = event.start_mark
            self.open.append(_Open(kind is yaml.MappingStartEvent, mark.line + 1, mark.column + 1, []))
            if len(self.open) > DEPTH:
                return self._too_deep(mark.line + 1, mark.column + 1)
        elif kind is yaml.MappingEndEvent or kind is yaml.SequenceEndEvent:
            self._add(self._closed(self.open.pop()))
        elif kind is yaml.AliasEvent:
            self._refuse_alias(event)
        elif kind is yaml.DocumentStartEvent:
            return self._starts_document(event)
        elif kind is yaml.StreamEndEvent:
            return False
        return True

    def _add(self, node: Node) -> None:
        if self.open:
            self.open[-1].nodes.append(node)
        else:
            self.document = node

    def _scalar(self, event: yaml.ScalarEvent) -> Node:
        start, end = event.start_mark, event.end_mark
        line, column, text = start.line + 1, start.column + 1, event.value
        if event.anchor is not None or event.tag is not None:
            self._refuse_marks(event)
            return Refused(line, column)
        style = event.style
        width = end.column - start.column if end.line == start.line else len(text.partition("\n")[0])
        if style == '"' and FORBIDDEN.search(text):
            tell(
                self.source,
                self.problems,
                "N103",
                "the text holds an escape for a character that cannot be seen, expected plain text",
                line=line,
                column=column,
                width=width,
                help="use single quotes, in which '\\' is an ordinary character",
            )
            return Refused(line, column)
        return Scalar(text, line, column, max(1, width), style is not None and style != "")

    def _closed(self, opened: _Open) -> Node:
        if not opened.is_mapping:
            return Sequence(tuple(opened.nodes), opened.line, opened.column)
        entries: list[tuple[Scalar, Node]] = []
        first: dict[str, int] = {}
        nodes = iter(opened.nodes)
        for key, value in zip(nodes, nodes, strict=True):
            if not isinstance(key, Scalar):
                self._refuse_key(key)
            elif key.text == "<<" and not key.is_quoted:
                self._tell("N105", "'<<' merges another mapping in, expected the fields written out", key)
            elif key.text in first:
                self._repeated(key, first[key.text])
            else:
                first[key.text] = key.line
                entries.append((key, value))
        return Mapping(tuple(entries), opened.line, opened.column)

    def _repeated(self, key: Scalar, first: int) -> None:
        self._tell(
            "N104",
            f"'{key.text}' is given twice in one mapping, first in line {first}, expected it once",
            key,
            help="delete one of the two",
        )

    def _refuse_key(self, key: Node) -> None:
        if not isinstance(key, Refused):
            what = "a list" if isinstance(key, Sequence) else "a mapping"
            self._tell("N103", f"the name of a field is {what}, expected a word", key, help="write 'name: value'")

    def _refuse_marks(self, event: yaml.NodeEvent) -> None:
        mark = event.start_mark
        at = Refused(mark.line + 1, mark.column + 1)
        if event.anchor is not None:
            help = f"if it belongs to the text, write the text in quotes; else delete '&{event.anchor}'"
            self._tell("N105", f"'&{event.anchor}' names a place in the file, expected plain values", at, help=help)
        if event.tag is not None:
            help = "if it belongs to the text, write the text in quotes; else delete the tag"
            self._tell(
                "N105", "a tag that begins with '!' stands before the value, expected plain values", at, help=help
            )

    def _refuse_alias(self, event: yaml.AliasEvent) -> None:
        at = Refused(event.start_mark.line + 1, event.start_mark.column + 1)
        self._tell(
            "N105",
            f"'*{event.anchor}' stands for a value elsewhere in the file, expected the value itself",
            at,
            help="write the value out; if the star belongs to the text, write the text in quotes",
        )
        self._add(at)

    def _starts_document(self, event: yaml.DocumentStartEvent) -> bool:
        self.documents += 1
        at = Refused(event.start_mark.line + 1, event.start_mark.column + 1)
        if event.tags:
            self._tell("N105", "'%TAG' is not read, expected plain values", at)
        if self.documents == 1:
            return True
        self._tell(
            "N103",
            "a second document begins with '---', expected one document a file",
            at,
            help="delete the '---', or move what follows to a file of its own",
        )
        return False

    def _too_deep(self, line: int, column: int) -> bool:
        at = Refused(line, column)
        self._tell("N107", f"lists or mappings lie more than {DEPTH} deep in one another, expected a few levels", at)
        self.is_whole = False
        return False

    def _tell(self, code: str, message: str, at: Node, *, help: str = "") -> None:
        width = at.width if isinstance(at, Scalar) else 1
        tell(self.source, self.problems, code, message, line=at.line, column=at.column, width=width, help=help)
