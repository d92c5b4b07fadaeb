"""What machines read: the map of the site, and what a page is about as JSON-LD."""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping
from html import escape

from markupsafe import Markup

from narrate.model.edition import Edition


def machine_files(edition: Edition, paths: Iterable[str]) -> Mapping[str, bytes]:
    """
    robots.txt for both sites, and for the public one a sitemap where an address is configured.

    paths:  of all pages.
    """
    if edition.audience != "public":
        return {"robots.txt": b"User-agent: *\nDisallow: /\n"}
    base = edition.project.address
    if not base:
        return {"robots.txt": b"User-agent: *\nAllow: /\n"}
    entries = "".join(f"<url><loc>{escape(full(base, path))}</loc></url>\n" for path in sorted(paths))
    sitemap = (
        '<?xml version="1.0" encoding="UTF-8"?>\n'
        f'<urlset xmlns="http://www.sitemaps.org/schemas/sitemap/0.9">\n{entries}</urlset>\n'
    )
    robots = f"User-agent: *\nAllow: /\nSitemap: {full(base, 'sitemap.xml')}\n"
    return {"robots.txt": robots.encode("utf-8"), "sitemap.xml": sitemap.encode("utf-8")}


def full(base: str, path: str) -> str:
    """
    The whole address of a page; that of a folder's first page ends at the folder.

    >>> full("https://example.org/dig", "contexts/index.html"), full("https://example.org/dig/", "a.html")
    ('https://example.org/dig/contexts/', 'https://example.org/dig/a.html')
    """
    return f"{base.rstrip('/')}/{path}".removesuffix("index.html")


def described(edition: Edition, path: str, title: str, says: str, *, is_dig: bool) -> Markup:
    """
    What a page is about, as schema.org JSON-LD: the dig a Dataset, every other page an Article that is part of it.

    Every sign that could close the script, or begin a comment in it, is written as an escape.
    """
    project = edition.project
    people = [{"@type": "Person", "name": author.name} for author in project.authors]
    whole: dict[str, object] = {"@type": "Dataset", "name": project.title}
    said: dict[str, object] = {"@context": "https://schema.org"}
    if is_dig:
        said |= whole | {"description": says or project.title, "creator": people}
        said["distribution"] = [
            {"@type": "DataDownload", "encodingFormat": "text/csv", "name": name, "contentUrl": _url(edition, name)}
            for name in ("data/counts.csv", "data/samples.csv", "data/contexts.csv")
        ]
        said["temporalCoverage"] = _years(edition)
    else:
        said |= {"@type": "Article", "headline": title, "author": people, "isPartOf": whole}
        if says:
            said["description"] = says
    if project.address:
        said["url"] = full(project.address, path)
    text = json.dumps({key: value for key, value in said.items() if value}, ensure_ascii=False)
    for sign in "<>&\u2028\u2029":
        text = text.replace(sign, f"\\u{ord(sign):04x}")
    return Markup(text)


def _url(edition: Edition, path: str) -> str:
    return full(edition.project.address, path) if edition.project.address else path


def _years(edition: Edition) -> str:
    """As schema.org writes a stretch of years; empty where no phase is dated."""
    dated = [(p.start, p.end) for p in edition.project.phases if p.start is not None and p.end is not None]
    if not dated:
        return ""
    first, last = min(start for start, _ in dated), max(end for _, end in dated)
    return f"{_iso(first)}/{_iso(last)}"


def _iso(year: int) -> str:
    """
    A calendar year as ISO 8601 counts it, in which the year 0 stands for 1 BC.

    >>> _iso(950), _iso(-1200)
    ('0950', '-1199')
    """
    counted = year if year > 0 else year + 1
    return f"{'-' if counted < 0 else ''}{abs(counted):04d}"
