"""Pages for visitors, read as they stand: no word of the laboratory or of statistics goes without an explanation."""

from __future__ import annotations

import re
from html import unescape
from pathlib import Path

import pytest

OF_THE_TRADE = (
    "log-odds", "prior", "Wilson", "Holm", "inertia", "φ", "taxa", "taxon", "cupules?", "achenes?", "ubiquity",
    "resampled", "redrawn", "redrawing", "not checked", "have yet to be checked", "drafts", "memory-[HML]",
)  # fmt: skip
STORIES = (
    "index.html", "story.html", "contexts/*.html", "phases/*.html", "year.html", "hearth-and-table.html", "fields.html",
    "labels/*.html",
)  # fmt: skip


def words_of(page: Path) -> str:
    """What is read on the page, pictures and their tables among it; rows of a sheet, quoted as written, are not."""
    text = page.read_text(encoding="utf-8")
    main = re.sub(r'(?s)<span class="rows">.*?</span>', "", text[text.index("<main") : text.index("</main>")])
    return unescape(re.sub(r"<[^>]+>", " ", main))


@pytest.mark.parametrize("word", OF_THE_TRADE)
def test_no_story_for_visitors_speaks_the_language_of_the_trade(told_example: Path, word: str) -> None:
    """Not in its text, not in a figure, not in the table behind a figure; the team's pages are free to."""
    public = told_example / "out" / "public"
    pages = [page for pattern in STORIES for page in sorted(public.glob(pattern))]
    found = [page.relative_to(public).as_posix() for page in pages if re.search(rf"(?i)\b{word}(?!\w)", words_of(page))]

    assert len(pages) > 40
    assert found == []


def test_sources_begin_with_a_work_that_has_an_author(told_example: Path) -> None:
    """Works whose author nobody has checked come last, and no square bracket stands for a title."""
    page = words_of(told_example / "out" / "public" / "sources.html")

    assert "[" not in page
    assert "Adair" in page[:600]


def test_a_visitor_is_not_told_which_draft_a_word_waits_for(told_example: Path) -> None:
    """That books have still to be looked up is said in plain words, once for each reading that it holds down."""
    held = [words_of(page) for page in sorted((told_example / "out" / "public" / "evidence").glob("*.html"))]

    assert any("the rules behind it have still to be checked against books" in page for page in held)
    assert not any("grade held at" in page for page in held)


def test_no_public_page_prepares_a_poisonous_plant(told_example: Path) -> None:
    """The page of pokeweed warns off touch and taste, and shows no shoots, no boiling and no changes of water."""
    page = words_of(told_example / "out" / "public" / "plants" / "phytolacca-americana.html")

    assert "Do not touch or taste this plant." in page
    assert not re.search(r"boil|cook|shoots|changes of water|raw|Greens|Dye", page)
    assert not re.search(r"[Ll]eaf|April", page)


def test_no_public_page_tells_of_rites(told_example: Path) -> None:
    """The pack has a use of red cedar in ceremony: that is for those to tell whom it concerns."""
    pages = [words_of(page) for page in (told_example / "out" / "public" / "plants").glob("*.html")]

    assert not [page[:60] for page in pages if re.search(r"\b(ritual|ceremony|ceremonies)\b", page, re.IGNORECASE)]


def test_uses_that_nobody_looked_up_are_no_uses_on_record(told_example: Path) -> None:
    """What is from memory stands under a heading of its own, and the record holds nothing from memory."""
    pages = [words_of(page) for page in (told_example / "out" / "public" / "plants").glob("*.html")]
    on_record = [page.split("Uses on record")[1] for page in pages if "Uses on record" in page]
    on_record = [re.split(r"Uses as we|Names\s+accepted", said)[0] for said in on_record]

    assert on_record and not [said for said in on_record if "from memory" in said]
    assert len([page for page in pages if "Uses as we remember them" in page]) > 10


def test_the_genus_of_squash_warns_of_its_bitter_kinds(told_example: Path) -> None:
    """Bitter fruits have poisoned people (Pacific Northwest Pest Management Handbooks, on cucurbitacins)."""
    page = words_of(told_example / "out" / "public" / "plants" / "cucurbita.html")

    assert "Bitter gourds and squashes are poisonous." in page


@pytest.mark.parametrize("plant", ["prunus-americana", "quercus", "carya", "passiflora-incarnata", "vitis"])
def test_of_fruits_and_nuts_the_part_that_was_eaten_alone_is_food(told_example: Path, plant: str) -> None:
    """Packs name stones, seeds and shells as what is found of food; no page calls what it warns of food."""
    page = words_of(told_example / "out" / "public" / "plants" / f"{plant}.html")
    used = re.split("Uses on record|Uses as we remember them", page, maxsplit=1)[1].split("Where it was found")[0]
    food = re.split(";|Scarry|Moerman", used.split("Food")[1])[0]

    assert re.search(r"flesh of fruit|kernel of a nut", food)
    assert not re.search(r"\b(stone|seed|shell)s?\b", food), food


@pytest.mark.parametrize("plant", ["solanum-ptychanthum", "sambucus-canadensis", "physalis"])
def test_nobody_reads_of_eating_what_can_poison_from_memory_alone(told_example: Path, plant: str) -> None:
    """A use that was not looked up is none on record, and of a plant that can poison it is not printed."""
    pages = list((told_example / "out" / "public" / "plants").glob(f"{plant}*.html"))
    said = [words_of(page) for page in pages]

    assert pages
    assert not [text for text in said if "Uses on record" in text and "Food" in text.split("Uses on record")[1]]


def test_a_plant_page_says_what_the_texts_say_of_people(told_example: Path) -> None:
    """Tobacco is sacred to many, corn is grown today, and goosefoot was grown before it: on their own pages as well."""
    plants = told_example / "out" / "public" / "plants"

    assert "tobacco is a sacred plant." in words_of(plants / "nicotiana-rustica.html")
    assert "Native farmers still grow corn today." in words_of(plants / "zea-mays.html")
    assert "Native people grew goosefoot in this region" in words_of(plants / "chenopodium-berlandieri.html")


def test_each_public_page_says_whom_to_write_to(told_example: Path) -> None:
    """The contact of project.yaml stands in the foot, with what a descendant may write about."""
    pages = [page.read_text(encoding="utf-8") for page in (told_example / "out" / "public").glob("contexts/*.html")]

    assert pages and all("please write to the Valley Roads Office (invented)" in page for page in pages)


def test_the_poison_of_a_look_alike_is_named(told_example: Path) -> None:
    """Spotted spurge is easily taken for purslane: the page of purslane says what it is, and not in Latin alone."""
    page = words_of(told_example / "out" / "public" / "plants" / "portulaca-oleracea.html")

    assert re.search(r"Spotted spurge\s+Euphorbia maculata\s+\(poisonous\)", page)


def test_a_finding_stands_in_a_frame_of_its_grade(told_example: Path) -> None:
    """No finding on the first page is flatter than the texts; the firmest leads, and wood in fires is none."""
    page = (told_example / "out" / "public" / "index.html").read_text(encoding="utf-8")
    found = re.findall(r"<li><a[^>]*>([^<]*)</a>", page.split('id="findings"')[1].split("</ol>")[0])

    assert all(re.match(r"It |Our finds |As far as |There are ", text) for text in found), found
    assert "burned corn cobs" in found[0] and any("lost stored food to a fire" in text for text in found)
    assert not any("burned wood" in text for text in found)


def test_a_hint_is_marked_as_one_in_the_tables(told_example: Path) -> None:
    """Tobacco in C15 and dug ground in C11 are faint signs in the texts; their cells say that they hang on little."""
    public = told_example / "out" / "public"
    cells = [
        cell
        for name in ("hearth-and-table", "fields")
        for cell in re.findall(r"<td[^>]*>.*?</td>", (public / f"{name}.html").read_text(encoding="utf-8"), re.DOTALL)
    ]
    marked = [cell for cell in cells if "hangs on a few finds" in cell]

    assert marked and all("suggests" in cell for cell in marked)
    assert any("suggests" in cell for cell in cells if cell not in marked)


def test_a_printed_label_says_what_its_specks_are_and_that_it_is_a_draft(told_example: Path) -> None:
    """Each of the labels is a sheet by itself, and none of the example is approved."""
    page = (told_example / "out" / "public" / "labels" / "index.html").read_text(encoding="utf-8")
    sheets = page.split('<article class="exhibit"')[1:]

    assert len(sheets) > 10
    assert all("chaff and cob" in sheet and "Nobody has approved these words yet" in sheet for sheet in sheets)


@pytest.mark.parametrize("word", ["smoke pit", "rubbish heap", "hamlet", "small-seeded crops", "sweetgum", "purslane"])
def test_the_glossary_has_the_words_of_the_pages(told_example: Path, word: str) -> None:
    """Visitors look up what they read, and not the word of the trade."""
    page = (told_example / "out" / "public" / "glossary.html").read_text(encoding="utf-8")

    assert f"<dt>{word}</dt>" in page
    assert "<dt>smudge pit</dt>" not in page and "<dt>midden</dt>" not in page


def test_plants_of_one_name_are_told_apart_in_the_year(told_example: Path) -> None:
    """Tobacco named to the species and to the genus are two rows of two counts."""
    page = words_of(told_example / "out" / "public" / "year.html")

    assert re.search(r"tobacco\s+Nicotiana rustica", page)
    assert "used when gathered" not in page


def test_what_all_hamlets_only_hint_at_is_a_hint_of_the_dig(told_example: Path) -> None:
    """Tobacco, fruit of old fields and wild fruit: the story calls them faint, and so does its table of claims."""
    page = words_of(told_example / "out" / "public" / "story.html")

    for title in ("Tobacco handled here", "Fruit picked in old fields and clearings", "Wild fruit as food"):
        assert re.search(rf"{title}\s+(?:\S+\s+)?suggests; hangs on a few finds", page), title


def test_places_hamlets_and_story_say_that_they_are_drafts(told_example: Path) -> None:
    """Nobody has approved the words of the example: not those of the labels, and not these."""
    public = told_example / "out" / "public"
    pages = [*public.glob("contexts/c??.html"), *public.glob("phases/*.html"), public / "story.html"]
    pages = [page for page in pages if 'class="story public"' in page.read_text(encoding="utf-8")]

    assert len(pages) > 20
    assert all("Draft. Nobody has approved these words yet." in words_of(page) for page in pages)


def test_litres_stand_as_the_story_has_them(told_example: Path) -> None:
    """411.5 litres were washed: the first page rounds them to no 412."""
    page = words_of(told_example / "out" / "public" / "index.html")

    assert re.search(r"litres floated\s+411\.5\s", page)


def test_a_burned_store_is_no_later_fill(told_example: Path) -> None:
    """Pit C05 holds the store that burned in it; of pit C04 it is said that what lies there may have come later."""
    contexts = told_example / "out" / "public" / "contexts"

    assert "what filled it later" not in words_of(contexts / "c05.html")
    assert "what filled it later" in words_of(contexts / "c04.html")


def test_a_site_begins_with_no_faint_sign(told_example: Path):
    """Wild fruit as food, which the story of the dig calls a faint sign of both times, is none of the five findings."""
    page = (told_example / "out" / "public" / "index.html").read_text(encoding="utf-8")
    found = page.split('id="findings"')[1].split("</ol>")[0]

    assert found.count("<li>") == 5
    assert "wild fruit as food" not in found
