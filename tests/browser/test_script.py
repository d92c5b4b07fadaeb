"""What script adds to the pages, and that they do without it: search, filters, order, taking away, policy."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page


@pytest.fixture
def page(browser: Browser) -> Iterator[Page]:
    context = browser.new_context(viewport={"width": 1280, "height": 900}, accept_downloads=True)
    opened = context.new_page()
    faults: list[str] = []
    opened.on("pageerror", lambda error: faults.append(str(error)))
    opened.on("console", lambda message: faults.append(message.text))
    yield opened
    context.close()
    assert faults == []


def found(page: Page) -> list[str]:
    page.wait_for_function("/found$/.test(document.getElementById('told').textContent)")
    return page.locator("#found > li").all_inner_texts()


def test_words_find_contexts_plants_and_findings_from_the_file_system(page: Page, sites: Path) -> None:
    """Typing a word lists what holds it, and the first entry leads to a page that is there."""
    page.goto((sites / "public/search.html").as_uri())
    page.fill("#words", "zea mays")
    listed = found(page)
    page.locator("#found a").first.click()

    assert [entry.split()[0] for entry in listed] == ["plant"]
    assert page.title().startswith("Corn (Zea mays)")


def test_a_search_has_an_address_and_the_back_button_returns_to_it(page: Page, sites: Path) -> None:
    """What was asked stands in the address, so that a link or the way back asks it again."""
    page.goto((sites / "public/search.html").as_uri())
    page.fill("#words", "c13")
    first = found(page)
    page.locator("#found a").first.click()
    page.wait_for_url("**/contexts/c13.html")
    page.go_back()

    assert page.url.endswith("search.html#q=c13")
    assert found(page) == first


def test_search_is_narrowed_by_what_phase_kind_question_and_grade(page: Page, sites: Path) -> None:
    """Each filter leaves only what it names."""
    page.goto((sites / "review/search.html").as_uri())
    page.wait_for_selector("#of-question option:nth-child(2)", state="attached")
    page.select_option("#of-what", "finding")
    page.select_option("#of-kind", "hearth")
    every = len(found(page))
    page.select_option("#of-grade", "strongly supports")
    page.select_option("#of-question", "What was burned?")
    firm = found(page)

    assert 0 < len(firm) < every
    assert all("What was burned? · strongly supports" in entry for entry in firm)


def test_a_finding_leads_to_its_claim_opened(page: Page, sites: Path) -> None:
    """The address of a claim opens the card on which all its arguments stand."""
    page.goto((sites / "public/search.html").as_uri())
    page.wait_for_selector("#of-what option[value=finding]", state="attached")
    page.select_option("#of-what", "finding")
    page.fill("#words", "context c13")
    found(page)
    page.locator("#found a").first.click()
    page.wait_for_selector("details.claim[open] .inside:target .argument", state="visible")

    assert "/evidence/c13.html#claim-" in page.url


def test_contexts_are_put_in_order_by_any_column(page: Page, sites: Path) -> None:
    """A click on a head sorts by its numbers, another turns the order, and the head says which."""
    page.goto((sites / "public/contexts/index.html").as_uri())
    head = page.locator("th", has_text="Items").first
    numbers = "[...document.querySelectorAll('table.wide tbody tr')].map(r => +r.cells[5].textContent.replace(',', ''))"
    head.locator("button").click()
    rising = page.evaluate(numbers)
    was = head.get_attribute("aria-sort")
    head.locator("button").click()

    assert rising == sorted(rising) and len(set(rising)) > 5
    assert (was, head.get_attribute("aria-sort")) == ("ascending", "descending")
    assert page.evaluate(numbers) == sorted(rising, reverse=True)


def test_contexts_are_narrowed_by_kind_and_the_count_is_told(page: Page, sites: Path) -> None:
    """Choosing a kind leaves the rows of that kind, and a live region says how many."""
    page.goto((sites / "public/contexts/index.html").as_uri())
    page.get_by_label("Kind").select_option("hearth")
    kinds = page.evaluate(
        "[...document.querySelectorAll('table.wide tbody tr:not([hidden])')].map(r => r.cells[1].textContent)"
    )

    assert set(kinds) == {"hearth"}
    assert page.locator("[role=status]").inner_text() == f"{len(kinds)} of 21 shown"


def test_order_and_filters_are_reached_by_keyboard(page: Page, sites: Path) -> None:
    """A head takes the focus, and Enter sorts by it."""
    page.goto((sites / "public/contexts/index.html").as_uri())
    page.locator("th .sorts").nth(6).focus()
    page.keyboard.press("Enter")

    assert page.locator("th[aria-sort=ascending]").inner_text().startswith("Per litre")


def test_the_slash_key_leads_to_search(page: Page, sites: Path) -> None:
    """One key from any page, unless somebody is writing."""
    page.goto((sites / "public/contexts/c13.html").as_uri())
    page.keyboard.press("/")
    page.wait_for_url("**/search.html")


@pytest.mark.parametrize(("words", "start"), [("SVG", b"<svg"), ("PNG", b"\x89PNG\r\n\x1a\n")])
def test_a_figure_is_taken_away(page: Page, sites: Path, words: str, start: bytes) -> None:
    """A button gives the picture as it is drawn, without a colour that only the page knows."""
    page.goto((sites / "public/year.html").as_uri())
    with page.expect_download() as given:
        page.locator("figure.chart").first.get_by_text(words, exact=True).click()
    raw = Path(given.value.path()).read_bytes()

    assert raw.startswith(start)
    assert len(raw) > 5000
    assert b"var(" not in raw


def test_a_figure_and_its_table_are_taken_away_without_script(browser: Browser, sites: Path) -> None:
    """Plain links lead to the picture as SVG, of the whole dig as PNG too, and to its table as CSV."""
    context = browser.new_context(java_script_enabled=False)
    opened = context.new_page()
    opened.goto((sites / "public/contexts/c13.html").as_uri())
    links = opened.locator("figure.chart").first.locator("a.take")
    ways = [(link.inner_text(), link.get_attribute("href") or "") for link in links.all()]
    opened.goto((sites / "public/year.html").as_uri())
    of_the_dig = {link.inner_text(): link.get_attribute("href") for link in opened.locator("#ring a.take").all()}
    context.close()
    files = {word: (sites / "public/contexts" / way).read_bytes() for word, way in ways}

    assert list(files) == ["SVG", "CSV"]
    assert list(of_the_dig) == ["SVG", "PNG", "CSV"]
    assert (sites / "public" / str(of_the_dig["PNG"])).read_bytes().startswith(b"\x89PNG")
    assert files["SVG"].startswith(b"<svg") and b"var(" not in files["SVG"]
    assert b"bits of corn cob" in files["CSV"]


def test_labels_are_printed_one_a_sheet(browser: Browser, sites: Path) -> None:
    """The page of all labels prints as many sheets as there are labels, and a label with its figure takes one."""
    page = browser.new_page()
    sheets = []
    for name in ("index", "c13"):
        page.goto((sites / f"public/labels/{name}.html").as_uri())
        sheets.append((page.locator("article.exhibit").count(), page.pdf(format="Letter").count(b"/Type /Page\n")))
    page.close()

    assert sheets[0][0] >= 20
    assert all(labels == pages for labels, pages in sheets)


def test_on_paper_heads_are_words_and_claims_lie_open(page: Page, sites: Path) -> None:
    """Before printing, columns are headed by words and claims opened; afterwards all is as it was."""
    told = []
    for name, what in (
        ("public/contexts/index.html", ".sorts"),
        ("public/evidence/c13.html", "details.claim:not([open])"),
    ):
        page.goto((sites / name).as_uri())
        counts = [page.locator(what).count()]
        for event in ("beforeprint", "afterprint"):
            page.evaluate(f"dispatchEvent(new Event('{event}'))")
            counts.append(page.locator(what).count())
        told.append((counts[0] > 3, counts[1], counts[2] == counts[0]))

    assert told == [(True, 0, True), (True, 0, True)]


def test_a_search_is_begun_by_what_is_offered(page: Page, sites: Path) -> None:
    """A word beneath the field is searched for when it is pressed."""
    page.goto((sites / "public/search.html").as_uri())
    page.get_by_role("button", name="corn").click()

    assert len(found(page)) > 5
    assert page.url.endswith("search.html#q=corn")


def test_a_table_that_is_too_wide_says_so(browser: Browser, sites: Path) -> None:
    """On a phone a line above the table tells that it goes on; where all of it is seen there is no such line."""
    told = []
    for width in (360, 1440):
        page = browser.new_page(viewport={"width": width, "height": 800})
        page.goto((sites / "public/contexts/index.html").as_uri())
        told.append(page.locator(".sideways + .scroll > table").count())
        page.close()

    assert told == [1, 0]


def test_mentions_of_rows_become_links(page: Page, sites: Path) -> None:
    """Where a page names many samples, script links each mention to the first of its rows, which is there."""
    page.goto((sites / "public/evidence/site.html").as_uri())
    mention = page.locator(".row-sets a[href*='#row-']").first
    name = mention.inner_text()
    mention.click()
    page.wait_for_url("**/samples/*")

    assert page.title().startswith(f"Sample {name}")
    assert page.locator("tr:target").count() == 1


def test_a_table_is_taken_away_as_csv(page: Page, sites: Path) -> None:
    """Every cell as it is read, one line a row."""
    page.goto((sites / "public/contexts/index.html").as_uri())
    with page.expect_download() as given:
        page.locator("button.take").first.click()
    lines = Path(given.value.path()).read_text(encoding="utf-8-sig").splitlines()

    assert lines[0].startswith("Context,Kind,What it held,Firmest reading,Phase,Items,")
    assert lines[1].startswith("C01,hearth,")
    assert len(lines) == 22


def test_without_script_every_list_is_there(browser: Browser, sites: Path) -> None:
    """Search says that it needs script and gives the lists; tables and evidence need none."""
    context = browser.new_context(java_script_enabled=False)
    opened = context.new_page()
    opened.goto((sites / "public/search.html").as_uri())
    shown = [opened.locator(what).is_visible() for what in ("#unscripted", "#search")]
    opened.locator("#unscripted a").first.click()
    rows = opened.locator("table.wide tbody tr").count()
    opened.locator("table.wide tbody a").first.click()
    opened.locator("details.evidence summary").first.click()
    is_open = opened.locator("details.evidence .inside").first.is_visible()
    context.close()

    assert shown == [True, False]
    assert rows == 21
    assert is_open


def test_the_policy_stops_scripts_and_pictures_of_elsewhere(browser: Browser, sites: Path) -> None:
    """An inline script does not run, and nothing is asked of another address."""
    opened = browser.new_page()
    asked: list[str] = []
    held: list[str] = []
    opened.on("request", lambda request: asked.append(request.url))
    opened.on("requestfailed", lambda request: held.append(f"{request.failure} {request.url}"))
    opened.goto((sites / "public/index.html").as_uri())
    stopped = opened.evaluate(
        """async () => {
          const stopped = [];
          document.addEventListener("securitypolicyviolation", e => stopped.push(e.effectiveDirective));
          const script = document.createElement("script");
          script.textContent = "window.ran = true";
          document.body.append(script);
          new Image().src = "https://example.org/a.png";
          await fetch("https://example.org/").catch(() => 0);
          const far = document.createElement("script");
          far.src = "https://example.org/a.js";
          document.head.append(far);
          await new Promise(done => setTimeout(done, 300));
          return [window.ran === undefined, stopped.sort()];
        }"""
    )
    opened.close()

    assert stopped == [True, ["connect-src", "img-src", "script-src-elem", "script-src-elem"]]
    assert {f"csp {url}" for url in asked if not url.startswith("file:")} == set(held)


def test_before_and_after_go_in_natural_order(page: Page, sites: Path) -> None:
    """From C09 the way goes to C10, from its samples page to the next sample."""
    page.goto((sites / "public/contexts/c09.html").as_uri())
    after = page.locator("a[rel=next]").get_attribute("href")

    assert (page.locator("a[rel=prev]").get_attribute("href"), after) == ("c08.html", "c10.html")


def test_motion_is_only_for_those_who_want_it(browser: Browser, sites: Path) -> None:
    """Where less motion is asked for, a way within the page jumps."""
    told = []
    for wish in ("no-preference", "reduce"):
        context = browser.new_context(reduced_motion=wish)  # type: ignore[arg-type]
        opened = context.new_page()
        opened.goto((sites / "public/index.html").as_uri())
        told.append(opened.evaluate("getComputedStyle(document.documentElement).scrollBehavior"))
        context.close()

    assert told == ["smooth", "auto"]
