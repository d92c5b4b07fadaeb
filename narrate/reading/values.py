"""Single values of fields, by what they should be: texts, numbers, shares, years, words of a list."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping

from narrate.model.ids import SourceKey
from narrate.reading.asking import Asking, Reads, listed_words, offered, refuse, what
from narrate.reading.numbers_written import fraction_number, number_help, plain_number, share_help, year_help
from narrate.reading.yaml_nodes import Node, Scalar


def text(expected: str = "a text", *, may_be_empty: bool = True) -> Reads:
    def take(node: Node, asking: Asking, whose: str, name: str) -> str | None:
        if isinstance(node, Scalar):
            found = node.text.strip()
            if found or may_be_empty:
                return found
        refuse(node, asking, whose, name, expected)
        return None

    return Reads(expected, take)


def web_address() -> Reads:
    """An address at which a site may stand: http or https, a host, no question and no fragment."""
    expected = "a web address such as https://example.org/dig/"

    def take(node: Node, asking: Asking, whose: str, name: str) -> str | None:
        if isinstance(node, Scalar):
            found = node.text.strip()
            if re.fullmatch(r"https?://[^\s/?#\"'<>]+(/[^\s?#\"'<>]*)?", found):
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


LARGEST = 1e12
"""No litres, grams or years of a dig come near it; larger numbers are slips, and sums of them have no end."""


def number(*, above: float | None = None, at_least: float | None = None, at_most: float | None = None) -> Reads:
    expected = "a number" + _range(above, at_least, at_most)

    def take(node: Node, asking: Asking, whose: str, name: str) -> float | None:
        found = plain_number(node.text.strip()) if isinstance(node, Scalar) else None
        if found is not None and abs(found) <= LARGEST and _is_within(found, above, at_least, at_most):
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
    expected = listed_words(list(by_lower.values()))

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


def spelled(words: Mapping[str, str]) -> Reads:
    """One of a few spellings, each with what it stands for; case counts only where two spellings differ by it."""
    by_lower = {word.lower(): meant for word, meant in reversed(list(words.items()))}
    expected = listed_words(list(words))

    def take(node: Node, asking: Asking, whose: str, name: str) -> str | None:
        if isinstance(node, Scalar):
            found = " ".join(node.text.split())
            if found in words or found.lower() in by_lower:
                return words.get(found) or by_lower[found.lower()]
            near = asking.near(found, words)
            message = f"{whose}: {name} is {what(node)}, expected {expected}{offered(near)}"
            asking.tell(node, asking.wrong, message, help=f"write '{near}'" if near else "")
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
            help = f"write '{lookup[meant]}'" if meant else "add it to packs/words/ of the project, or write another"
            asking.tell(node, "N402", message, help=help)
        return found

    return Reads(f"a word of the list of {list_name}", take)


def find_word(lookup: Mapping[str, str], written: str) -> str | None:
    """The id behind a spelling; case, spaces, hyphens and underscores do not matter."""
    flat = " ".join(written.lower().replace("i\u0307", "i").split())  # the Turkish capital with a point
    return lookup.get(flat) or lookup.get(re.sub(r"[\s_-]+", " ", flat).strip())


def source_key() -> Reads:
    def take(node: Node, asking: Asking, whose: str, name: str) -> SourceKey | None:
        if not isinstance(node, Scalar) or not node.text.strip():
            refuse(node, asking, whose, name, "a key of sources.yaml")
            return None
        key = SourceKey(node.text.strip())
        if asking.known_sources is not None and key not in asking.known_sources:
            meant = asking.near(key, asking.known_sources, 0.8)
            message = f"{whose}: source '{key}' is not in sources.yaml{offered(meant)}"
            help = f"write '{meant}'" if meant else "add the work to packs/sources.yaml"
            asking.tell(node, "N405", message, help=help)
        return key

    return Reads("a key of sources.yaml", take)


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
