"""Lists, mappings and records: values made of values. What cannot be read is told, and read as nothing."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any

from narrate.reading import yaml_nodes
from narrate.reading.asking import Asking, Field, Reads, is_blank, listed_words, offered, refuse, what
from narrate.reading.source_text import shown
from narrate.reading.yaml_nodes import Node, Refused, Scalar, Sequence


def list_of(item: Reads, *, one_is_a_list: bool = False, at_least: int = 0) -> Reads:
    """A list; where `one_is_a_list` a single value stands for a list of one."""
    expected = f"a list; each of it {item.expected}"

    def take(node: Node, asking: Asking, whose: str, name: str) -> tuple[Any, ...] | None:
        if isinstance(node, Scalar) and one_is_a_list:
            nodes: tuple[Node, ...] = (node,)
        elif isinstance(node, Sequence):
            nodes = node.items
        else:
            is_simple = not item.expected.startswith(("fields", "a mapping", "a phase"))
            help = f"write [{node.text}]" if isinstance(node, Scalar) and node.text and is_simple else ""
            if not help:
                help = "begin each entry with '- ', in a line of its own"
            refuse(node, asking, whose, name, expected, help)
            return None
        if len(nodes) < at_least:
            refuse(node, asking, whose, name, f"a list of at least {at_least}")
            return None
        found = [item.take(one, asking, whose, name) for one in nodes]
        return tuple(value for value in found if value is not None)

    return Reads(expected, take)


def mapping_of(value: Reads) -> Reads:
    """A mapping with names of the person's own choice."""
    expected = f"fields of your own; each of them {value.expected}"

    def take(node: Node, asking: Asking, whose: str, name: str) -> dict[str, Any] | None:
        if not isinstance(node, yaml_nodes.Mapping):
            refuse(node, asking, whose, name, expected, "write {name: value, name: value} with names of your own")
            return None
        found: dict[str, Any] = {}
        for key, inside in node.entries:
            got = None if is_blank(inside) else value.take(inside, asking, f"{whose}, {name}", key.text)
            if got is not None:
                found[key.text] = got
        return found

    return Reads(expected, take)


def record_of(fields: Mapping[str, Field], make: Callable[..., Any], *, has_place: bool = False) -> Reads:
    """A mapping with known fields, made into a value; nothing is made where a needed field cannot be read."""
    expected = f"fields such as {listed_words([f'{name}' for name in list(fields)[:3]], ' and ')}"

    def take(node: Node, asking: Asking, whose: str, name: str) -> Any:
        found = record(node, fields, asking, f"{whose}, {name}" if name else whose)
        if found is None:
            return None
        if has_place:
            found["place"] = asking.place(node)
        return make(**found)

    return Reads(expected, take)


def record(node: Node, fields: Mapping[str, Field], asking: Asking, whose: str) -> dict[str, Any] | None:
    """
    What could be read of a mapping with known fields, by the names of the model.

    None where it is no mapping or where a needed field is missing or unreadable. Unknown fields are told.
    """
    if not isinstance(node, yaml_nodes.Mapping):
        if not isinstance(node, Refused):
            expected = f"a mapping with fields such as {listed_words(list(fields)[:3], ' and ')}"
            needed = [name for name, known in fields.items() if known.is_needed] or list(fields)[:1]
            help = f"write {{{', '.join(f'{name}: …' for name in needed)}}}"
            asking.tell(node, asking.wrong, f"{whose} is {what(node)}, expected {expected}", help=help)
        return None
    found, is_whole = partial_record(node, fields, asking, whose)
    return found if is_whole else None


def partial_record(
    node: yaml_nodes.Mapping, fields: Mapping[str, Field], asking: Asking, whose: str
) -> tuple[dict[str, Any], bool]:
    """The same, but what could be read is given even where a needed field could not; then False stands with it."""
    found: dict[str, Any] = {}
    is_whole = True
    seen: set[str] = set()
    for key, value in node.entries:
        known = fields.get(key.text)
        if known is None:
            _unknown_field(key, fields, asking, whose, {k.text for k, _ in node.entries})
            continue
        if is_blank(value) and not known.is_needed:
            continue
        seen.add(key.text)
        if is_blank(value):
            got = None
            message = f"{whose}: {key.text} is empty, expected {known.reads.expected}"
            asking.tell(value, asking.missing, message, help=f"fill in '{key.text}'")
        else:
            got = known.reads.take(value, asking, whose, key.text)
        if got is not None:
            found[known.into or key.text] = got
        elif known.is_needed:
            is_whole = False
    for name, known in fields.items():
        if known.is_needed and name not in seen:
            is_whole = False
            message = f"{whose} has no '{name}', expected {known.reads.expected}"
            asking.tell(node, asking.missing, message, help=f"add '{name}: …'")
    return found, is_whole


def _unknown_field(key: Scalar, fields: Mapping[str, Field], asking: Asking, whose: str, given: set[str]) -> None:
    meant = asking.near(key.text, [name for name in fields if name not in given])
    message = f"{whose} has a field {shown(key.text)} that is not known{offered(meant)}"
    help = f"write '{meant}'" if meant else f"known are {listed_words(list(fields), ' and ')}"
    asking.tell(key, asking.unknown, message, help=help)
