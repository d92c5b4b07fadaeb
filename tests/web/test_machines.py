"""What machines read. The vocabulary is that of schema.org, Open Graph (ogp.me) and sitemaps.org."""

from __future__ import annotations

import json
import re
import xml.etree.ElementTree as ET
from dataclasses import replace
from io import BytesIO

from PIL import Image

from narrate.web.pages import pages
from narrate.web.templates import templates_folder
from tests.web.editions import a_project, an_edition

ADDRESS = "https://example.org/dig"


def made(audience: str = "public", address: str = "") -> dict[str, bytes]:
    return pages(an_edition(audience, replace(a_project(), address=address)), templates_folder(), None)


def about(page: bytes) -> dict[str, object]:
    found = re.search(r'<script type="application/ld\+json">(.*?)</script>', page.decode("utf-8"))
    assert found is not None
    return json.loads(found[1])  # type: ignore[no-any-return]


def meta(page: bytes) -> dict[str, str]:
    return dict(re.findall(r'<meta property="([^"]*)" content="([^"]*)">', page.decode("utf-8")))


def test_the_dig_is_a_dataset_and_its_pages_are_articles() -> None:
    """The first page tells what there is to download and of which years; a page is part of that."""
    found = made(address=ADDRESS)
    dig, context = about(found["index.html"]), about(found["contexts/c1.html"])

    assert (dig["@context"], dig["@type"], dig["name"]) == ("https://schema.org", "Dataset", "A small dig")
    assert dig["temporalCoverage"] == "0950/1350"
    assert dig["distribution"][0]["contentUrl"] == f"{ADDRESS}/data/counts.csv"  # type: ignore[index]
    assert (context["@type"], context["url"]) == ("Article", f"{ADDRESS}/contexts/c1.html")


def test_every_page_has_one_address_where_one_is_configured() -> None:
    """The canonical address of a page, of a folder's first page the folder; the sitemap lists every page so."""
    found = made(address=ADDRESS)
    html = [name for name in found if name.endswith(".html")]
    listed = {node.text for node in ET.fromstring(found["sitemap.xml"]).iter() if node.tag.endswith("}loc")}

    assert f'<link rel="canonical" href="{ADDRESS}/contexts/">'.encode() in found["contexts/index.html"]
    assert listed == {re.findall(r'rel="canonical" href="([^"]*)"', found[name].decode())[0] for name in html}
    assert f"Sitemap: {ADDRESS}/sitemap.xml" in found["robots.txt"].decode()


def test_every_context_has_a_card_for_links() -> None:
    """The picture is a PNG of 1200 by 630 at the address that the page names, and has words for who cannot see it."""
    found = made(address=ADDRESS)
    said = meta(found["contexts/c1.html"])
    card = Image.open(BytesIO(found[said["og:image"].removeprefix(f"{ADDRESS}/")]))

    assert card.size == (1200, 630) == (int(said["og:image:width"]), int(said["og:image:height"]))
    assert said["og:image:alt"].startswith("Context C1")
    assert set(card.info) == {"dpi"}


def test_without_an_address_nothing_pretends_to_have_one() -> None:
    """No canonical address, no sitemap and no cards that nobody could fetch."""
    found = made()

    assert not any(name.startswith("cards/") or name == "sitemap.xml" for name in found)
    assert b"canonical" not in found["index.html"] and b"og:image" not in found["contexts/c1.html"]


def test_the_review_site_keeps_machines_away() -> None:
    """No card, no map, no description, even where an address is configured."""
    found = made("review", ADDRESS)

    assert found["robots.txt"] == b"User-agent: *\nDisallow: /\n"
    assert not any(name.startswith("cards/") or name == "sitemap.xml" for name in found)
    assert not any(b"ld+json" in page for page in found.values())
