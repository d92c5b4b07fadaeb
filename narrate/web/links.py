"""Where each page lies, and how one page reaches another from the file system, a server or any depth of folders."""

from __future__ import annotations

import hashlib
import re
import unicodedata
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from functools import lru_cache
from posixpath import relpath
from urllib.parse import quote

LONGEST_SLUG = 60
_RESERVED = re.compile(r"index|con|prn|aux|nul|com\d|lpt\d")
"""Names that some file system keeps for itself, or that a folder's list page takes."""


def slugs(ids: Iterable[str]) -> dict[str, str]:
    """
    A file name without extension for each id: small Latin letters, digits and hyphens, no two alike.

    An id whose letters had to be given up, or that shares its plain name with another id, carries a mark made from
    the id itself, so that names do not depend on the order of ids.

    >>> slugs(["C12", "Zea mays", "../etc"])
    {'C12': 'c12', 'Zea mays': 'zea-mays', '../etc': 'etc'}
    >>> slugs(["c1", "C1"])
    {'c1': 'c1-d0f631ca', 'C1': 'c1-ab861dc1'}
    """
    wanted = tuple(dict.fromkeys(ids))
    plain = {id: plain_name(id) for id in wanted}
    alike: dict[str, int] = {}
    for name in plain.values():
        alike[name] = alike.get(name, 0) + 1
    taken = {name for name, times in alike.items() if times == 1}
    found: dict[str, str] = {}
    for id in wanted:
        name = plain[id]
        is_lossy = name == "" or len(name) > LONGEST_SLUG or bool(_RESERVED.fullmatch(name))
        if alike[name] > 1 or is_lossy:
            name = _marked(name[:LONGEST_SLUG].strip("-") or "x", id, taken)
        taken.add(name)
        found[id] = name
    return found


def plain_name(text: str) -> str:
    """
    The text in small unaccented Latin letters, digits and hyphens; empty if nothing is left.

    >>> plain_name("Grube 7/b"), plain_name("Ähre"), plain_name("土坑"), plain_name("a..b")
    ('grube-7-b', 'ahre', '', 'a-b')
    """
    decomposed = unicodedata.normalize("NFKD", text)
    letters = "".join(sign for sign in decomposed if not unicodedata.combining(sign))
    return re.sub(r"[^a-z0-9]+", "-", letters.lower()).strip("-")


def relative(target: str, page: str) -> str:
    """
    The way from one page of the site to another, as a browser takes it.

    >>> relative("samples/s1.html#row-3", "contexts/c1.html"), relative("contexts/c1.html", "contexts/c1.html")
    ('../samples/s1.html#row-3', 'c1.html')
    """
    path, mark, anchor = target.partition("#")
    if not path:
        return target
    return _way(path, page.rpartition("/")[0] or ".") + mark + anchor


@lru_cache(maxsize=65_536)
def _way(path: str, here: str) -> str:
    """The way from a folder to a file: the pages of one folder ask for the same again and again."""
    return quote(relpath(path, here))


@dataclass(frozen=True, slots=True)
class Links:
    """The path of each page by what it is about, such as ('context', 'C12')."""

    paths: Mapping[tuple[str, str], str] = field(default_factory=dict)

    def to(self, what: str, id: str = "", anchor: str = "") -> str:
        """The path of a page within the site; empty where the site has no such page."""
        path = self.paths.get((what, id), "")
        return f"{path}#{anchor}" if path and anchor else path


def anchor(text: str) -> str:
    """
    A fragment name made from any text, safe inside an address and unique to the text.

    >>> anchor("C12/fuel.maize-cob"), anchor("fuel.cobs_recur"), anchor("Ähre"), anchor("S 014")
    ('C12/fuel.maize-cob', 'fuel.cobs_recur', '~c4~hre', 'S~20~014')
    """
    return _UNSAFE.sub(lambda found: f"~{ord(found[0]):x}~", text)


_UNSAFE = re.compile(r"[^A-Za-z0-9._/-]")
"""What does not stand as it is: signs that an address would have to escape, and '~', which marks them."""


def _marked(name: str, id: str, taken: set[str]) -> str:
    digest = hashlib.sha256(id.encode("utf-8", "surrogatepass")).hexdigest()
    for length in range(8, len(digest) + 1):
        marked = f"{name}-{digest[:length]}"
        if marked not in taken:
            return marked
    raise ValueError(f"no file name of its own can be made for {id!r}")
