"""Finds the page templates, reads the header that each page begins with, and sets up how templates are filled."""

from __future__ import annotations

import difflib
import re
from dataclasses import dataclass
from pathlib import Path

from jinja2 import Environment, FileSystemLoader, StrictUndefined

from narrate.model.report_blocks import REPORT_TEXTS
from narrate.problems import Place, Problem, ProblemList
from narrate.web.compiled import Compiled
from narrate.web.filters import FILTERS, MONTHS
from narrate.web.lists import MOST_SHOWN
from narrate.web.refusal import Refused
from narrate.web.writing import Writing

LISTS = ("contexts", "samples")
"""What a template can make one page per stretch of: lists too long for one page go on upon the next."""
ONE_PER = ("site", "context", "sample", "phase", "taxon", "measure", "question", "evidence", "label", *LISTS)
"""What a template can make one page per; `evidence` stands for every subject that claims are about."""
AUDIENCES = ("review", "public")
_KEYS = ("one per", "title", "path", "menu", "under", "audiences")
_NEEDED = ("one per", "title", "path", "audiences")
_HEADER = re.compile(r"\A\{#-?\n(.*?)\n-?#\}", re.DOTALL)


@dataclass(frozen=True, slots=True, kw_only=True)
class PageTemplate:
    """A template in `pages/` and what its header says."""

    name: str
    """Name for the environment, such as 'pages/context.html'."""
    one_per: str
    title: str
    """May hold {it.…} and {site.…}."""
    path: str
    """Where the page lies within the site; may hold {slug}."""
    menu: str = ""
    """What the menu calls it; empty: not in the menu."""
    order: int = 0
    """Place in the menu, from left to right."""
    under: str = ""
    """Entry of the menu that is marked while the page is shown."""
    audiences: tuple[str, ...] = AUDIENCES
    place: Place

    @property
    def first_path(self) -> str:
        """Where the menu leads: the page, or the first of its stretches."""
        return self.path.format(slug="index") if self.one_per in LISTS else self.path


def templates_folder() -> Path:
    """
    Where the templates lie: inside the installed package, or beside the package in a checkout.

    Raises Refused with both paths where neither is there.
    """
    package = Path(__file__).resolve().parents[1]
    installed, checkout = package / "_templates", package.parent / "site_templates"
    for folder in (installed, checkout):
        if (folder / "base.html").is_file():
            return folder
    problem = Problem(
        place=Place(path="site_templates"),
        severity="error",
        code="N701",
        message=f"no page templates were found, expected base.html in '{installed}' or in '{checkout}'",
        help="install the package again",
    )
    raise Refused(problem)


def environment(folder: Path, writing: Writing | None = None) -> Environment:
    """Misspelt names raise, everything that is filled in is escaped, and only what is passed in can be reached."""
    writing = writing or Writing()
    filled = Environment(
        loader=FileSystemLoader(folder),
        bytecode_cache=Compiled(writing),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        keep_trailing_newline=True,
    )
    filled.filters.update(FILTERS)
    filled.filters.update(writing.filters)
    filled.globals["month_names"] = MONTHS
    filled.globals["most"] = MOST_SHOWN
    filled.globals["report_texts"] = REPORT_TEXTS
    return filled


def page_templates(folder: Path) -> tuple[PageTemplate, ...]:
    """
    Every template in `pages/`, in the order of their names.

    Raises Refused with all problems of all headers.
    """
    problems = ProblemList()
    found: list[PageTemplate] = []
    for path in sorted((folder / "pages").glob("*.html")):
        place = Place(path=f"{folder.name}/pages/{path.name}", line=1)
        template = _page_template(path, place, problems)
        if template is not None:
            found.append(template)
    if not found and not problems.found:
        problems.error(Place(path=f"{folder.name}/pages"), "N701", "no page template is there, expected at least one")
    if problems.found:
        raise Refused(*problems.sorted())
    return tuple(found)


def _page_template(path: Path, place: Place, problems: ProblemList) -> PageTemplate | None:
    match = _HEADER.match(path.read_text(encoding="utf-8"))
    if match is None:
        problems.error(
            place,
            "N701",
            "the template has no header, expected a comment of 'key: value' lines as its first lines",
            help="begin the file with '{#', a line each for 'one per', 'title', 'path' and 'audiences', then '#}'",
        )
        return None
    before = len(problems.found)
    said = _header(match[1], place, problems)
    if len(problems.found) > before:
        return None
    order, _, menu = said.get("menu", "").partition(" ")
    return PageTemplate(
        name=f"pages/{path.name}",
        one_per=said["one per"],
        title=said["title"],
        path=said["path"],
        menu=menu,
        order=int(order) if order else 0,
        under=said.get("under", menu),
        audiences=tuple(re.split(r"[,\s]+", said["audiences"])),
        place=place,
    )


def _header(text: str, place: Place, problems: ProblemList) -> dict[str, str]:
    said: dict[str, str] = {}
    for number, line in enumerate(text.splitlines(), start=2):
        here = Place(path=place.path, line=number)
        key, colon, value = (part.strip() for part in line.partition(":"))
        if key not in _KEYS or not colon:
            near = difflib.get_close_matches(key, _KEYS, n=1)
            problems.error(here, "N701", f"header: unknown key '{key}', expected {', '.join(_KEYS)}{_near(near)}")
        said[key] = value
    for key in _NEEDED:
        if not said.get(key):
            problems.error(place, "N701", f"header: '{key}' is missing")
    for problem in _cannot_be_done(said):
        problems.error(place, "N701", f"header: {problem}")
    return said


def _cannot_be_done(said: dict[str, str]) -> list[str]:
    found: list[str] = []
    one_per, path = said.get("one per", ""), said.get("path", "")
    if one_per and one_per not in ONE_PER:
        found.append(f"one per: '{one_per}', expected {', '.join(ONE_PER)}")
    if path and (path.startswith("/") or ".." in path or not path.endswith(".html")):
        found.append(f"path: '{path}', expected a path within the site that ends in .html")
    if path and one_per in ONE_PER[1:] and "{slug}" not in path:
        found.append(f"path: '{path}', expected {{slug}} in it, because there is one page per {one_per}")
    if said.get("menu") and not re.fullmatch(r"\d+ \S.*", said["menu"]):
        found.append(f"menu: '{said['menu']}', expected a number for its place and a name, such as '20 Contexts'")
    for audience in re.split(r"[,\s]+", said.get("audiences", "")):
        if audience and audience not in AUDIENCES:
            found.append(f"audiences: '{audience}', expected {' or '.join(AUDIENCES)}")
    return found


def _near(near: list[str]) -> str:
    return f"; did you mean '{near[0]}'?" if near else ""
