"""Readers of fields by what they should hold. A value that is none is told with its place, and read as nothing."""

from __future__ import annotations

import difflib
import re
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field
from typing import Any

from narrate.model.ids import SourceKey
from narrate.problems import Place, ProblemList
from narrate.reading import yaml_nodes
from narrate.reading.numbers_written import fraction_number, number_help, plain_number, share_help, year_help
from narrate.reading.source_text import SourceText, shown, tell
from narrate.reading.yaml_nodes import Node, Refused, Scalar, Sequence

NEAR_MATCHES = 200
"""Near matches looked for per file: enough for a person, and bounded for a sheet with ten thousand slips."""


@dataclass(slots=True, kw_only=True)
class Asking:
    """The file that is read, where problems go, and the codes that its kind of file has."""

    source: SourceText
    problems: ProblemList
    missing: str = "N201"
    unknown: str = "N202"
    wrong: str = "N203"
    known_sources: Mapping[SourceKey, object] | None = None
    """None: source keys are not checked."""
    near_left: int = NEAR_MATCHES
    faults: int = 0
    """Problems told so far by the readers of this module."""

    def tell(self, node: Node, code: str, message: str, *, help: str = "", severity: str = "error") -> None:
        self.faults += severity == "error"
        width = node.width if isinstance(node, Scalar) else 1
        tell(
            self.source,
            self.problems,
            code,
            message,
            line=node.line,
            column=node.column,
            width=width,
            help=help,
            severity=severity,
        )

    def place(self, node: Node) -> Place:
        return self.source.place(node.line, node.column)

    def near(self, word: str, known: Iterable[str], cutoff: float = 0.6) -> str:
        """The known word that looks most like it; empty where none does."""
        if self.near_left <= 0 or len(word) > 80:
            return ""
        self.near_left -= 1
        return near(word, known, cutoff)


@dataclass(frozen=True, slots=True)
class Reads:
    """One kind of value: how messages name it, and the reader, which gives None for what it refuses."""

    expected: str
    take: Callable[[Node, Asking, str, str], Any]


@dataclass(frozen=True, slots=True, kw_only=True)
class Field:
    reads: Reads
    is_needed: bool = False
    into: str = ""
    """Name in the model where it is another."""


def near(word: str, known: Iterable[str], cutoff: float = 0.6) -> str:
    """
    The known word that looks most like it, whatever the case.

    >>> near("Glum base", ["glume base", "grain"]), near("xyz", ["grain"])
    ('glume base', '')
    """
    by_lower = {str(k).lower(): str(k) for k in known}
    found = difflib.get_close_matches(word.lower(), list(by_lower), n=1, cutoff=cutoff)
    return by_lower[found[0]] if found else ""


def offered(word: str) -> str:
    return f"; did you mean '{word}'?" if word else ""


def is_blank(node: Node) -> bool:
    """True for a field whose name is there and whose value was left empty."""
    return isinstance(node, Scalar) and node.text == "" and not node.is_quoted


def refuse(node: Node, asking: Asking, whose: str, name: str, expected: str, help: str = "") -> None:
    """Tells that a value is not what its field holds."""
    if not isinstance(node, Refused):
        asking.tell(node, asking.wrong, f"{whose}: {name} is {what(node)}, expected {expected}", help=help)


def what(node: Node) -> str:
    if isinstance(node, Scalar):
        return f"'{node.text}'" if node.is_quoted and _looks_like_number(node.text) else shown(node.text)
    return "a list" if isinstance(node, Sequence) else "a mapping"


# ---- single values


def text(expected: str = "a text", *, may_be_empty: bool = True) -> Reads:
    def take(node: Node, asking: Asking, whose: str, name: str) -> str | None:
        if isinstance(node, Scalar):
            found = node.text.strip()
            if found or may_be_empty:
                return found
        refuse(node, asking, whose, name, expected)
        return None

    return Reads(expected, take)


def id_text(expected: str = "an id, which is a text of one line") -> Reads:
    """Ids stay as they were written: 012, no, 2107.10."""

    def take(node: Node, asking: Asking, whose: str, name: str) -> str | None:
        if isinstance(node, Scalar):
            found = node.text.strip()
            if found and "\n" not in found and len(found) <= 200:
                return found
        refuse(node, asking, whose, name, expected)
        return None

    return Reads(expected, take)


def number(
    *, above: float | None = None, at_least: float | None = None, at_most: float | None = None
) -> Reads:
    expected = "a number" + _range(above, at_least, at_most)

    def take(node: Node, asking: Asking, whose: str, name: str) -> float | None:
        found = plain_number(node.text.strip()) if isinstance(node, Scalar) else None
        if found is not None and _is_within(found, above, at_least, at_most):
            return found
        written = node.text.strip() if isinstance(node, Scalar) else ""
        refuse(node, asking, whose, name, expected, number_help(written))
        return None

    return Reads(expected, take)


def whole(*, at_least: int | None = None, at_most: int | None = None) -> Reads:
    expected = "a whole number" + _range(None, at_least, at_most)

    def take(node: Node, asking: Asking, whose: str, name: str) -> int | None:
        if isinstance(node, Scalar) and re.fullmatch(r"[+-]?\d{1,12}", node.text.strip(), re.ASCII):
            found = int(node.text)
            if _is_within(found, None, at_least, at_most):
                return found
        written = node.text.strip() if isinstance(node, Scalar) else ""
        refuse(node, asking, whose, name, expected, number_help(written))
        return None

    return Reads(expected, take)


def share() -> Reads:
    """A share above 0 and at most 1, written as 0.25 or 1/4; gives (share, as written)."""
    expected = "a number above 0 and at most 1"

    def take(node: Node, asking: Asking, whose: str, name: str) -> tuple[float, str] | None:
        written = node.text.strip() if isinstance(node, Scalar) else ""
        found = fraction_number(written)
        if found is not None and 0 < found <= 1:
            return found, written
        refuse(node, asking, whose, name, expected, share_help(written, found))
        return None

    return Reads(expected, take)


def year() -> Reads:
    expected = "a calendar year, negative for BC"

    def take(node: Node, asking: Asking, whose: str, name: str) -> int | None:
        written = node.text.strip() if isinstance(node, Scalar) else ""
        if re.fullmatch(r"[+-]?\d{1,6}", written, re.ASCII) and int(written) != 0:
            return int(written)
        refuse(node, asking, whose, name, expected, year_help(written))
        return None

    return Reads(expected, take)


def truth() -> Reads:
    def take(node: Node, asking: Asking, whose: str, name: str) -> bool | None:
        written = node.text.strip() if isinstance(node, Scalar) else ""
        if written.lower() in ("true", "false"):
            return written.lower() == "true"
        meant = {"yes": "true", "y": "true", "on": "true", "no": "false", "n": "false", "off": "false"}
        help = f"write {meant[written.lower()]}" if written.lower() in meant else "write true or false"
        refuse(node, asking, whose, name, "true or false", help)
        return None

    return Reads("true or false", take)


def one_of(words: Iterable[str], code: str = "") -> Reads:
    """One of a fixed list of words, whatever the case; the near match is offered."""
    by_lower = {word.lower(): word for word in words}
    expected = _listed(list(by_lower.values()))

    def take(node: Node, asking: Asking, whose: str, name: str) -> str | None:
        if isinstance(node, Scalar):
            found = by_lower.get(" ".join(node.text.lower().split()))
            if found is not None:
                return found
            meant = asking.near(node.text.strip(), by_lower.values())
            message = f"{whose}: {name} is {what(node)}, expected {expected}{offered(meant)}"
            asking.tell(node, code or asking.wrong, message, help=f"write '{meant}'" if meant else "")
            return None
        refuse(node, asking, whose, name, expected)
        return None

    return Reads(expected, take)


def looked_up(lookup: Mapping[str, str], list_name: str) -> Reads:
    """A word of the word lists, in any of its spellings; gives the word's id (N402 where there is none)."""

    def take(node: Node, asking: Asking, whose: str, name: str) -> str | None:
        if not isinstance(node, Scalar) or not node.text.strip():
            refuse(node, asking, whose, name, f"a word of the list of {list_name}")
            return None
        found = find_word(lookup, node.text)
        if found is None:
            meant = asking.near(node.text.strip(), lookup)
            message = f"{whose}: {name} {what(node)} is not in the list of {list_name}{offered(meant)}"
            help = f"write '{lookup[meant]}'" if meant else f"add it to packs/words/ of the project, or write another"
            asking.tell(node, "N402", message, help=help)
        return found

    return Reads(f"a word of the list of {list_name}", take)


def find_word(lookup: Mapping[str, str], written: str) -> str | None:
    """The id behind a spelling; case, spaces, hyphens and underscores do not matter."""
    flat = " ".join(written.lower().split())
    return lookup.get(flat) or lookup.get(re.sub(r"[\s_-]+", " ", flat).strip())


def source_key() -> Reads:
    def take(node: Node, asking: Asking, whose: str, name: str) -> SourceKey | None:
        if not isinstance(node, Scalar) or not node.text.strip():
            refuse(node, asking, whose, name, "a key of sources.yaml")
            return None
        key = SourceKey(node.text.strip())
        if asking.known_sources is not None and key not in asking.known_sources:
            meant = asking.near(key, asking.known_sources)
            message = f"{whose}: source '{key}' is not in sources.yaml{offered(meant)}"
            help = f"write '{meant}'" if meant else "add the work to packs/sources.yaml"
            asking.tell(node, "N405", message, help=help)
        return key

    return Reads("a key of sources.yaml", take)


# ---- values made of values


def list_of(item: Reads, *, one_is_a_list: bool = False, at_least: int = 0) -> Reads:
    """A list; where `one_is_a_list` a single value stands for a list of one."""
    expected = f"a list; each of it {item.expected}"

    def take(node: Node, asking: Asking, whose: str, name: str) -> tuple[Any, ...] | None:
        if isinstance(node, Scalar) and one_is_a_list:
            nodes: tuple[Node, ...] = (node,)
        elif isinstance(node, Sequence):
            nodes = node.items
        else:
            help = f"write [{node.text}]" if isinstance(node, Scalar) and node.text else ""
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
            refuse(node, asking, whose, name, expected)
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
    expected = f"fields such as {_listed([f'{name}' for name in list(fields)[:3]], ' and ')}"

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
            expected = f"a mapping with fields such as {_listed(list(fields)[:3], ' and ')}"
            asking.tell(node, asking.wrong, f"{whose} is {what(node)}, expected {expected}")
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


def _unknown_field(
    key: Scalar, fields: Mapping[str, Field], asking: Asking, whose: str, given: set[str]
) -> None:
    meant = asking.near(key.text, [name for name in fields if name not in given])
    message = f"{whose} has a field {shown(key.text)} that is not known{offered(meant)}"
    help = f"write '{meant}'" if meant else f"known are {_listed(list(fields), ' and ')}"
    asking.tell(key, asking.unknown, message, help=help)


def _range(above: float | None, at_least: float | None, at_most: float | None) -> str:
    parts = [
        *([f"above {above:g}"] if above is not None else []),
        *([f"of at least {at_least:g}"] if at_least is not None else []),
        *([f"at most {at_most:g}"] if at_most is not None else []),
    ]
    return f" {' and '.join(parts)}" if parts else ""


def _is_within(found: float, above: float | None, at_least: float | None, at_most: float | None) -> bool:
    return (
        (above is None or found > above)
        and (at_least is None or found >= at_least)
        and (at_most is None or found <= at_most)
    )


def _looks_like_number(written: str) -> bool:
    return plain_number(written.strip()) is not None


def _listed(words: list[str], last: str = " or ") -> str:
    if len(words) < 2:
        return "".join(words)
    return ", ".join(words[:-1]) + last + words[-1]
