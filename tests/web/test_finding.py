"""The search index and long lists."""

from __future__ import annotations

import json
import re
from dataclasses import replace

from narrate.model.ids import ContextId, SampleId
from narrate.web.downloads import as_csv
from narrate.web.finding import PART, Entry, parts
from narrate.web.lists import AT_ONCE, cut, list_names
from narrate.web.pages import pages
from narrate.web.templates import templates_folder
from tests.web.editions import a_project, a_row, an_edition


def an_entry(number: int, title: str = "S1, sample of C1") -> Entry:
    return ("sample", title, f"samples/s{number}.html", "hearth", "Early", "hearth", "", "")


def read(part: bytes) -> tuple[int, list[list[str]]]:
    found = re.fullmatch(r"narrateFound\((\d+),(.*)\);\n", part.decode("utf-8"), re.DOTALL)
    assert found is not None
    return int(found[1]), json.loads(found[2])


def test_the_index_of_five_thousand_samples_comes_in_parts() -> None:
    """12,000 entries are eight files of some 150 KB, in order, and none is lost."""
    made = parts(an_entry(number) for number in range(12_000))
    whole = [entry for name in made for entry in read(made[name])[1]]

    assert list(made) == [f"search/part-{number}.js" for number in range(1, 9)]
    assert max(len(part) for part in made.values()) < 200_000
    assert [entry[2] for entry in whole] == [f"samples/s{number}.html" for number in range(12_000)]
    assert len(read(made["search/part-1.js"])[1]) == PART


def test_no_word_of_an_entry_closes_the_script() -> None:
    """Markup and line separators are written as escapes, and read back as they were."""
    title = "</script><script>alert(1)</script>\u2028"
    made = parts([an_entry(1, title)])["search/part-1.js"]

    assert b"<" not in made and "\u2028".encode() not in made
    assert read(made)[1][0][1] == title


def test_every_entry_leads_to_a_page_and_a_place_on_it() -> None:
    """Contexts, samples, plants and findings of the small dig, each at an address that is there."""
    made = pages(an_edition("public"), templates_folder(), None)
    entries = read(made["search/part-1.js"])[1]

    assert {entry[0] for entry in entries} == {"context", "plant", "sample", "finding"}
    for entry in entries:
        path, _, fragment = entry[2].partition("#")
        assert path in made
        assert not fragment or f'id="{fragment}"'.encode() in made[path]


def test_five_thousand_samples_are_listed_on_twenty_pages() -> None:
    """Every sample once, in order, at most 250 on a page."""
    lists = cut([f"S{number:04}" for number in range(5000)])

    assert [one.id for one in lists] == list(list_names(5000)) and len(lists) == 20
    assert all(len(one.items) == AT_ONCE for one in lists)
    assert [name for one in lists for name in one.items] == [f"S{number:04}" for number in range(5000)]


def test_a_table_keeps_commas_quotes_and_what_is_missing() -> None:
    """As RFC 4180 writes them."""
    assert as_csv(("a", "b"), [('x "y", z', None), (1, 0.25)]) == b'a,b\n"x ""y"", z",\n1,0.25\n'


def test_a_table_over_a_hundred_contexts_shows_those_that_say_most() -> None:
    """Of 110 contexts with a reading the matrix shows 100, says so, and leads to the search for the others."""
    places = [f"C{number}" for number in range(1, 111)]
    context, sample = a_project().contexts[0], a_project().samples[0]
    project = a_project(
        contexts=tuple(replace(context, id=ContextId(id)) for id in places),
        samples=tuple(replace(sample, id=SampleId(f"S{id}"), context=ContextId(id)) for id in places),
        counts=tuple(a_row(f"S{id}", "Zea mays", "cupule", "40", line) for line, id in enumerate(places, start=10)),
    )
    page = pages(an_edition(project=project), templates_folder(), None)["hearth-and-table.html"].decode("utf-8")

    assert page.count('<th scope="row"><a href="contexts/') == 100
    assert "100 of 110 contexts, those with the firmest readings." in page
