"""Which pages a site has, where each lies, and the bytes of each."""

from __future__ import annotations

import gc
import re
from collections.abc import Callable, Iterable, Mapping, Sequence
from copy import copy
from dataclasses import dataclass, replace
from functools import cached_property, partial
from pathlib import Path
from typing import Protocol

from jinja2 import Environment

from narrate.model.edition import Edition
from narrate.problems import Problem
from narrate.web.downloads import Content
from narrate.web.exhibit import label_names
from narrate.web.links import Links, anchor, relative, slugs
from narrate.web.lists import list_names
from narrate.web.machines import machine_files
from narrate.web.method import asked_questions
from narrate.web.page_keys import KEYED, PageKeys
from narrate.web.photographs import Photographs
from narrate.web.plants import found_taxa
from narrate.web.refusal import Refused
from narrate.web.site import Site, told_subjects
from narrate.web.templates import PageTemplate, environment, page_templates
from narrate.web.writing import writing_of


@dataclass(frozen=True, slots=True, kw_only=True)
class Page:
    """One page as its own template sees it."""

    path: str
    title: str
    under: str
    template: PageTemplate
    before: tuple[str, str] | None = None
    """Title and path of the page of the same kind before it, in natural order."""
    after: tuple[str, str] | None = None

    @property
    def about(self) -> tuple[object, ...]:
        """All that a template is told of the page itself."""
        return self.path, self.title, self.under, self.template, self.before, self.after


@dataclass(frozen=True, slots=True, kw_only=True)
class Made:
    """What became of the pages of a site."""

    standing: frozenset[str]
    """Pages that stand as they have to be."""
    keys: Mapping[str, str]
    """Keys of the pages that have one."""


def pages(edition: Edition, templates: Path, images: Path | None) -> Mapping[str, bytes]:
    """Every file of the site by its path within it, in the order of the paths."""
    making = Making(edition, templates, images)
    found = {name: content() for name, content in making.others.items()}
    making.make(found.__setitem__)
    return dict(sorted(found.items()))


class Making:
    """One site as it is made: all its files are known by name before the first page is, and no page is kept."""

    def __init__(self, edition: Edition, templates: Path, images: Path | None) -> None:
        self._edition = edition
        self._assets = templates / "assets"
        self._wanted = [t for t in page_templates(templates) if edition.audience in t.audiences]
        self._names = {what: slugs(ids) for what, ids in _ids(edition).items()}
        self._names.update({what: list_names(len(self._names[one])) for what, one in LISTED.items()})
        links = with_rules(_links(self._wanted, self._names), asked_questions(edition))
        self._site = Site(edition, links, Photographs(images, is_public=edition.audience == "public"))
        self._jinja = environment(templates, writing_of(edition))
        self._jinja.filters["known"] = self._site.wording.known
        self._menu = _menu(self._wanted)
        self._many_made = 0

    @cached_property
    def paths(self) -> tuple[str, ...]:
        """All pages by their path within the site."""
        every = (path for template in self._wanted for path in _paths(template, self._names).values())
        return tuple(sorted(set(every)))

    @cached_property
    def others(self) -> Mapping[str, Content]:
        """What gives each file that is no page, by its path within the site."""
        site, found = self._site, dict[str, Content]()
        for asset in sorted(path for path in self._assets.rglob("*") if path.is_file()):
            found[f"assets/{asset.relative_to(self._assets).as_posix()}"] = asset.read_bytes
        every = [*(context.images for context in site.project.contexts), *(s.images for s in site.project.samples)]
        for images in every:
            site.photographs.of(images)
        made = {**site.photographs.found, **site.search_parts, **machine_files(self._edition, list(self.paths))}
        found.update((path, partial(bytes, content)) for path, content in made.items())
        return {**found, **site.data_files, **site.cards}

    def make(
        self, put: Callable[[str, bytes], object], ground: str = "", standing: Mapping[str, str] | None = None
    ) -> Made:
        """
        Makes every page that does not stand already, and gives each away as soon as it is made.

        ground:    a sum over all that pages may show and that is not part of the edition; without it pages have no
                   keys.
        standing:  keys of the pages that stand as an earlier build made them.
        """
        keys: dict[str, str] = {}
        left: set[str] = set()
        known = PageKeys(self._site, ground) if ground else None
        for template in self._wanted:
            things = list(_things(self._site, template.one_per, self._names))
            in_order = [_page(template, self._site, it, slug) for it, slug in things]
            for (it, _), page in zip(things, _in_a_row(in_order), strict=True):
                key = known.of(it, page.about) if known and template.one_per in KEYED else None
                if key is not None:
                    keys[page.path] = key
                if key is not None and standing and standing.get(page.path) == key:
                    left.add(page.path)
                else:
                    put(page.path, self._made(template, page, it))
        return Made(standing=frozenset(left), keys=keys)

    def _made(self, template: PageTemplate, page: Page, it: object) -> bytes:
        # What a page works out would stay with its view, and that as long as the environment of the templates does.
        shown = copy(it) if template.one_per in KEYED else it
        content = _rendered(self._jinja, self._site, page, shown, self._menu)
        if shown is not it:
            vars(shown).clear()
        else:
            self._site.forget()
        self._site.opener.forget()
        self._many_made += 1
        if self._many_made % _BETWEEN_LOOKS == 0:
            gc.collect(1)
        return content


_BETWEEN_LOOKS = 50
"""Pages after which values are looked for that templates leave behind in rings, a tenth of a megabyte a page."""


LISTED: Mapping[str, str] = {"contexts": "context", "samples": "sample"}
"""Lists that may go over several pages, and what they list."""


def _in_a_row(made: list[Page]) -> Iterable[Page]:
    """Each page with those before and after it."""
    for number, page in enumerate(made):
        before = made[number - 1] if number else None
        after = made[number + 1] if number + 1 < len(made) else None
        yield replace(
            page,
            before=None if before is None else (before.title, before.path),
            after=None if after is None else (after.title, after.path),
        )


def _ids(edition: Edition) -> Mapping[str, Iterable[str]]:
    project = edition.project
    return {
        "context": [context.id for context in project.contexts],
        "sample": [sample.id for sample in project.samples],
        "phase": [phase.id for phase in project.phases],
        "taxon": list(found_taxa(edition)),
        "measure": [page.id for page in edition.manual],
        "question": list(asked_questions(edition)),
        "evidence": list(told_subjects(project).values()),
        "label": list(label_names(edition)),
    }


def _links(templates: list[PageTemplate], names: Mapping[str, Mapping[str, str]]) -> Links:
    """Paths of all pages; pages of the whole site go by their template's name, its first page by ''."""
    paths: dict[tuple[str, str], str] = {}
    owners: dict[str, PageTemplate] = {}
    for template in templates:
        made = _paths(template, names)
        for path in set(made.values()):
            if path in owners:
                raise Refused(_clash(template, owners[path], path))
            owners[path] = template
        paths.update({key: path for key, path in made.items() if key not in paths})
    return Links(paths)


def _paths(template: PageTemplate, names: Mapping[str, Mapping[str, str]]) -> dict[tuple[str, str], str]:
    """Paths of the pages of one template by what they are about."""
    stem = template.name.removeprefix("pages/").removesuffix(".html")
    if template.one_per == "site":
        made = {("page", stem): template.path}
        if template.path == "index.html":
            made[("site", "")] = template.path
        return made
    made = {(template.one_per, id): template.path.format(slug=slug) for id, slug in names[template.one_per].items()}
    if template.one_per in LISTED:
        made[("page", stem)] = template.first_path
    return made


def with_rules(links: Links, questions: Mapping[str, tuple[str, ...]]) -> Links:
    """Links that know where each rule stands on the page of its question."""
    rules = {
        ("rule", id): f"{path}#{anchor(id)}"
        for question, ids in questions.items()
        if (path := links.to("question", question))
        for id in ids
    }
    return Links({**links.paths, **rules})


class _Named(Protocol):
    """What a page may be about."""

    @property
    def id(self) -> str: ...


def _things(site: Site, one_per: str, names: Mapping[str, Mapping[str, str]]) -> Iterable[tuple[object, str]]:
    if one_per == "site":
        return [(site.dig, "")]
    listed: Mapping[str, Sequence[_Named]] = {
        "context": site.contexts,
        "sample": site.samples,
        "phase": site.phases,
        "taxon": site.taxa,
        "measure": site.manual,
        "question": site.rules,
        "evidence": site.evidence,
        "label": site.labels,
        "contexts": site.context_lists,
        "samples": site.sample_lists,
    }
    return [(it, names[one_per][it.id]) for it in listed[one_per]]


def _page(template: PageTemplate, site: Site, it: object, slug: str) -> Page:
    title = template.title.format(it=it, site=site)
    if template.one_per in LISTED and slug != "index":
        title = f"{title}, {slug.replace('-', ' ')}"
    return Page(path=template.path.format(slug=slug), title=title, under=template.under, template=template)


def _menu(templates: list[PageTemplate]) -> tuple[PageTemplate, ...]:
    return tuple(sorted((t for t in templates if t.menu), key=lambda template: (template.order, template.name)))


def _rendered(jinja: Environment, site: Site, page: Page, it: object, menu: tuple[PageTemplate, ...]) -> bytes:
    href = partial(relative, page=page.path)
    # Templates ask for a page by what it is about and get the way to it from here.
    text = jinja.get_template(page.template.name).render(
        site=site, page=page, it=it, menu=menu, href=href, to=lambda *what: href(site.links.to(*what))
    )
    # Indentation of templates is for their authors; in thousands of lines it is weight.
    return _INDENTED.sub("\n", text).encode("utf-8")


_INDENTED = re.compile(r"\n\s+")


def _clash(template: PageTemplate, other: PageTemplate, path: str) -> Problem:
    return Problem(
        place=template.place,
        severity="error",
        code="N701",
        message=f"header: path: '{path}' is also the path of a page of '{other.name}', expected a path of its own",
    )
