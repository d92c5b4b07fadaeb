"""Phases that a sheet names, added to the project file that is there: every line, comment and space of it stays."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

import yaml

from narrate.reading.intake.records_draft import quoted


@dataclass(frozen=True, slots=True, kw_only=True)
class PhasesAdded:
    """The project file with phases added; without text where it cannot be done safely."""

    text: str = ""
    why_not: str = ""
    lines: str = ""
    """What is to be added by hand, in the form that the file needs."""


def known_phases(text: str) -> set[str]:
    """Ids of the phases that a project file gives; none where it cannot be read."""
    try:
        root = yaml.compose(text, Loader=yaml.SafeLoader)
    except (yaml.YAMLError, RecursionError):
        return set()
    node = _phases(root)
    items = node.value if isinstance(node, yaml.SequenceNode) else []
    pairs = [pair for item in items if isinstance(item, yaml.MappingNode) for pair in item.value]
    return {value.value for key, value in pairs if key.value == "id" and isinstance(value, yaml.ScalarNode)}


def add_phases(text: str, phases: Iterable[str]) -> PhasesAdded:
    """
    A project file with phases added behind those that it has. Nothing in it is changed.

    >>> print(add_phases("title: A  # mine\\nphases:\\n  - {id: a, name: A}  # first\\nstyle: {}\\n", ["b"]).text)
    title: A  # mine
    phases:
      - {id: a, name: A}  # first
      - {id: "b", name: "b"}
    style: {}
    <BLANKLINE>
    """
    phases = list(phases)
    items = [f"{{id: {quoted(phase)}, name: {quoted(phase)}}}" for phase in phases]
    by_hand = "".join(f"  - {item}\n" for item in items)
    try:
        root = yaml.compose(text, Loader=yaml.SafeLoader)
    except (yaml.YAMLError, RecursionError):
        return PhasesAdded(why_not="it cannot be read as YAML", lines=by_hand)
    if not isinstance(root, yaml.MappingNode) or root.flow_style:
        return PhasesAdded(why_not="it is no list of fields, one a line", lines="phases:\n" + by_hand)
    keys = [key.value for key, _ in root.value]
    if len(keys) != len(set(keys)):
        return PhasesAdded(why_not="a field of it is given twice", lines=by_hand)
    node = _phases(root)
    end = "\r\n" if "\r\n" in text else "\n"
    made = _with(text, node, items, end)
    lines = by_hand if node is not None else "phases:\n" + by_hand
    if not made or not _is_the_same_but_for(text, made, phases):
        return PhasesAdded(why_not="its phases are written in a way that it is not safe to add to", lines=lines)
    return PhasesAdded(text=made)


def _phases(root: yaml.Node | None) -> yaml.Node | None:
    if not isinstance(root, yaml.MappingNode):
        return None
    return next((value for key, value in root.value if key.value == "phases"), None)


def _with(text: str, node: yaml.Node | None, items: list[str], end: str) -> str:
    """The text with the items put in; empty where there is no safe place for them."""
    if node is None:
        gap = "" if text.endswith("\n") else end
        return text + gap + f"phases:{end}" + "".join(f"  - {item}{end}" for item in items)
    if isinstance(node, yaml.ScalarNode) and node.value in ("", "~", "null") and not node.style:
        if node.value:
            return ""
        return _behind_line(text, node.start_mark.line, "".join(f"  - {item}{end}" for item in items), end)
    if not isinstance(node, yaml.SequenceNode):
        return ""
    if node.flow_style:
        at = node.end_mark.index - 1
        before = text[:at].rstrip()
        comma = "" if before.endswith(("[", ",")) else ", "
        if "#" in _last_line(before):
            return ""
        return before + comma + ", ".join(items) + text[len(before) :]
    if not node.value:
        return ""
    indent = " " * node.start_mark.column
    last = _last_leaf(node.value[-1])
    if isinstance(last, yaml.ScalarNode) and last.style in ("|", ">"):
        return ""
    return _behind_line(text, last.end_mark.line, "".join(f"{indent}- {item}{end}" for item in items), end)


def _last_leaf(node: yaml.Node) -> yaml.Node:
    """The node that ends last in the text: a block is taken to end where its last value does."""
    if isinstance(node, yaml.SequenceNode | yaml.MappingNode) and node.value and not node.flow_style:
        last = node.value[-1]
        return _last_leaf(last[1] if isinstance(last, tuple) else last)
    return node


def _behind_line(text: str, line: int, added: str, end: str) -> str:
    lines = text.splitlines(keepends=True)
    if line >= len(lines):
        return ""
    head = "".join(lines[: line + 1])
    return head + ("" if head.endswith("\n") else end) + added + "".join(lines[line + 1 :])


def _last_line(text: str) -> str:
    return text.rsplit("\n", 1)[-1]


def _is_the_same_but_for(text: str, made: str, phases: list[str]) -> bool:
    """Whether all else reads as before, and the new text is the old one with something put in at one place."""
    try:
        old, new = yaml.load(text, yaml.BaseLoader), yaml.load(made, yaml.BaseLoader)
    except (yaml.YAMLError, RecursionError):
        return False
    if not isinstance(old, dict) or not isinstance(new, dict):
        return False
    was, now = old.pop("phases", None) or [], new.pop("phases", None)
    added = [{"id": phase, "name": phase} for phase in phases]
    kept = next((n for n, (a, b) in enumerate(zip(text, made, strict=False)) if a != b), len(text))
    return old == new and now == [*was, *added] and made[kept:].endswith(text[kept:])
