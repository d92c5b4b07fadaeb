"""Texts that repeat what a pattern repeats, many times and with an end that it does not expect: the worst for it."""

from __future__ import annotations

import ast
import importlib
import pkgutil
import random
import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import narrate.reading

_parser = importlib.import_module("re._parser")
_BODY = {"MAX_REPEAT": 2, "MIN_REPEAT": 2, "POSSESSIVE_REPEAT": 2, "SUBPATTERN": -1}
_OF_KIND = {"DIGIT": "1", "NOT_DIGIT": "a", "SPACE": " ", "NOT_SPACE": "a", "WORD": "a", "NOT_WORD": "-"}
_CLASSES = {"DIGIT": r"\d", "NOT_DIGIT": r"\D", "SPACE": r"\s", "NOT_SPACE": r"\S", "WORD": r"\w", "NOT_WORD": r"\W"}
TIMES = 40
"""How often a piece stands in a text: twice as many ways each time are more than any machine tries."""
_PIECES = ("-", "- ", " ", "a", "a ", "1", "1 ", "I", ". ", ", ", "a-", "A.", "x,", "(", "()", "1/", "+")
PLAIN = [piece * TIMES for piece in _PIECES]


def patterns() -> Iterator[tuple[str, re.Pattern[str]]]:
    """Every pattern by which sheets and project files are read, with the module that has it."""
    known: set[tuple[str, int]] = set()
    for module in pkgutil.walk_packages(narrate.reading.__path__, "narrate.reading."):
        spec = importlib.import_module(module.name)
        written = ast.walk(ast.parse(Path(str(spec.__file__)).read_text(encoding="utf-8")))
        for pattern in (*_within(list(vars(spec).values())), *(found for node in written if (found := _called(node)))):
            if isinstance(pattern.pattern, str) and (pattern.pattern, pattern.flags) not in known:
                known.add((pattern.pattern, pattern.flags))
                yield module.name, pattern


def _within(value: object, depth: int = 0) -> Iterator[re.Pattern[Any]]:
    if isinstance(value, re.Pattern):
        yield value
    elif isinstance(value, (tuple, list, set, frozenset, dict)) and depth < 4:
        for one in value.items() if isinstance(value, dict) else value:
            yield from _within(one, depth + 1)


def _called(node: ast.AST) -> re.Pattern[str] | None:
    """The pattern that is written where it is used: re.fullmatch(r'...', text)."""
    if not isinstance(node, ast.Call) or not isinstance(node.func, ast.Attribute):
        return None
    first = node.args[0] if node.args else None
    is_used = ast.unparse(node.func.value) == "re" and node.func.attr not in ("escape", "compile")
    if not is_used or not isinstance(first, ast.Constant):
        return None
    given = " ".join(ast.unparse(one) for one in (*node.args[1:], *(word.value for word in node.keywords)))
    return re.compile(str(first.value), re.IGNORECASE if re.search(r"re\.I\b|re\.IGNORECASE", given) else 0)


def texts(pattern: re.Pattern[str], tries: int = 6) -> Iterator[str]:
    """Texts for one pattern: each of its repeats alone and within the rest of it, and pieces that suit none."""
    chance = random.Random(1)
    tree = _parser.parse(pattern.pattern, pattern.flags)
    yield from PLAIN
    for body in _repeats(tree):
        for _ in range(tries):
            yield _drawn(body, chance) * TIMES
            yield _drawn(tree, chance, body)


def _repeats(tree: Any) -> Iterator[Any]:
    """The bodies of repeats that can be cut in more ways than one: of several pieces, or of one that is repeated."""
    for kind, value in tree:
        if str(kind) in ("MAX_REPEAT", "MIN_REPEAT") and value[1] > TIMES // 4:
            if len(value[2]) > 1 or str(value[2][0][0]) not in ("IN", "ANY", "LITERAL"):
                yield value[2]
        for inner in _inner(str(kind), value):
            yield from _repeats(inner)


def _inner(kind: str, value: Any) -> list[Any]:
    if kind == "BRANCH":
        return list(value[1])
    if kind == "ATOMIC_GROUP":
        return [value]
    return [value[_BODY[kind]]] if kind in _BODY else []


def _drawn(tree: Any, chance: random.Random, pumped: Any = None) -> str:
    """A text of a pattern, or of a part of it; what is pumped stands in it many times."""
    said = ""
    for kind, value in ((str(kind), value) for kind, value in tree):
        inner = _inner(kind, value)
        if kind in ("MAX_REPEAT", "MIN_REPEAT", "POSSESSIVE_REPEAT"):
            is_pumped = inner[0] is pumped
            holds = pumped is not None and _holds(inner[0], pumped)
            times = TIMES if is_pumped else value[0] or (1 if holds else chance.choice((0, 1)))
            said += "".join(_drawn(inner[0], chance, None if is_pumped else pumped) for _ in range(times))
        elif kind == "BRANCH":
            with_it = [one for one in inner if pumped is not None and _holds(one, pumped)]
            said += _drawn(chance.choice(with_it or inner), chance, pumped)
        elif inner:
            said += _drawn(inner[0], chance, pumped)
        else:
            said += _letter(kind, value, chance)
    return said


def _holds(tree: Any, pumped: Any) -> bool:
    return tree is pumped or any(_holds(one, pumped) for kind, value in tree for one in _inner(str(kind), value))


def _letter(kind: str, value: Any, chance: random.Random) -> str:
    if kind == "LITERAL":
        return chr(value)
    if kind in ("ANY", "NOT_LITERAL"):
        return chance.choice("a -1")
    if kind != "IN":
        return ""  # places, looks ahead and behind, and groups named again
    if str(value[0][0]) == "NEGATE":
        letters = chance.sample("a1 -.,x/(", 9)
        return next((letter for letter in letters if not any(_is_of(letter, one) for one in value[1:])), "é")
    of, what = chance.choice(value)
    if str(of) == "CATEGORY":
        return _OF_KIND[str(what).removeprefix("CATEGORY_")]
    return chr(chance.choice(what) if isinstance(what, tuple) else what)


def _is_of(letter: str, one: Any) -> bool:
    of, what = str(one[0]), one[1]
    if of == "CATEGORY":
        return re.match(_CLASSES[str(what).removeprefix("CATEGORY_")], letter) is not None
    return what[0] <= ord(letter) <= what[1] if of == "RANGE" else ord(letter) == what
