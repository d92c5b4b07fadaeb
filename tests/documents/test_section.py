"""The interpretive section as Markdown: every sample, every narrative, tables that say what they hold."""

from __future__ import annotations

import re
from dataclasses import replace
from pathlib import Path

import pytest

from narrate.documents.account import archive
from narrate.documents.blocks import Heading, Paragraph, Table
from narrate.documents.inline import plain
from narrate.documents.markdown import markdown
from narrate.documents.outline import outline
from narrate.model.project import Project
from narrate.pipeline.editions import bare_edition
from narrate.pipeline.judged import Judged


@pytest.fixture(scope="module")
def section(told_example: Path) -> str:
    """The section of the example project, as `narrate report` writes it."""
    return (told_example / "out" / "report" / "section.md").read_text(encoding="utf-8")


def test_the_section_says_that_it_is_a_draft_for_signature(section: str) -> None:
    """Nobody may take the section for a signed report, and location and burials defer to law and consultation."""
    assert "This section is a draft for the signature of a qualified specialist." in section
    assert "follows the laws and consultation that apply" in section


def test_every_sample_stands_in_the_register(section: str, judged_example: Judged) -> None:
    """Sterile samples are in the register too."""
    rows = set(re.findall(r"^\| (S\d+)(?: \\\[restricted\\\])? \|", section, flags=re.MULTILINE))

    assert rows == {sample.id for sample in judged_example.project.samples}


def test_every_context_has_its_narrative_under_its_own_heading(section: str, judged_example: Judged) -> None:
    """One heading a context, with text beneath it."""
    for context in judged_example.project.contexts:
        is_restricted = context.id in judged_example.project.disclosure.restricted_contexts
        mark = r" \[restricted\]" if is_restricted else ""
        heading = f"#### {context.id}{mark}, {context.kind}\n\n"
        assert section.count(heading) == 1
        assert len(section.split(heading)[1].split("\n#")[0]) > 60


def test_the_table_of_counts_agrees_with_the_sheets(section: str, judged_example: Judged) -> None:
    """Maize cupules by context in the table are the sums over the rows of the count sheets."""
    contexts = {sample.id: sample.context for sample in judged_example.project.samples}
    sums: dict[str, int] = {}
    for row in judged_example.project.counts:
        if (
            row.identification.taxon == "Zea mays"
            and row.part == "cupule"
            and row.condition in ("charred", "partly charred")
        ):
            sums[contexts[row.sample]] = sums.get(contexts[row.sample], 0) + (row.count.number or 0)
    printed: dict[str, int] = {}
    header: list[str] = []
    for line in section.partition("## Appendix: counts by sample\n")[0].splitlines():
        cells = [cell.strip().removesuffix(" \\[restricted\\]") for cell in line.strip("| ").split(" | ")]
        header = cells if line.startswith("| Plant |") else header
        if line.startswith("| *Zea mays* | cupule |"):
            printed |= {id: int(n.strip("†")) for id, n in zip(header, cells, strict=True) if n.strip("†").isdigit()}

    # 'Total' stands once a phase; the last one read is that of the last table.
    assert {id: n for id, n in sums.items() if n} == {id: n for id, n in printed.items() if id != "Total"}


def test_sources_are_those_of_claims_that_hold(section: str) -> None:
    """References stand under their own heading, and works that were not seen are marked, which is said once."""
    listed = section.split("## References\n")[-1].split("\n## ")[0]

    assert "Wagner" in listed or "Miller" in listed
    works = [line for line in listed.splitlines() if line and "of the" not in line[:40]]
    works = [line.replace("\\", "") for line in works]
    unseen = [line for line in works if "[not seen" in line]
    unread = [line for line in works if line.endswith("entry from memory]")]
    assert f"'not seen' stands behind {len(unseen)} of the {len(works)} works" in listed
    assert f"'entry from memory' stands behind {len(unread)} of the {len(works)}: title, volume" in listed
    assert 0 < len(unread) < len(unseen) < len(works)
    assert "a default, check" not in listed and "memory-" not in listed and "not checked" not in listed


def test_nothing_but_marks_and_the_checklist_speaks_to_the_author(section: str) -> None:
    """What is to be given under which key stands in the list of what is missing, and nowhere above a signature."""
    listed, _, rest = section.partition("## Reviewer's checklist\n")[2].partition("\n## ")
    rest = "\n".join(line for line in rest.splitlines() if not line.startswith("To be written:"))

    # Works may stay unseen when it is signed: then the list says so, and no key (README.md names it).
    assert "works are cited from memory, as the next table lists" in listed and "works\\_checked" not in listed
    assert re.findall(r"project\.yaml|\breport: [a-z]|narrate measure|author to say|before signing", rest) == []


def test_works_of_other_regions_are_said_to_be_analogies(section: str) -> None:
    """In the text and in the list of works by question; those of the project's own region are cited plainly."""
    by_question = section.partition("### Works behind the readings\n")[2].partition("\n## ")[0]

    assert "Adams et al. 2007 (the Southwest)" in by_question and "Gremillion 1998;" in by_question
    assert "Adams et al. 2007, by analogy from the Southwest" in section
    bare = re.findall(r"\(see [^()]*Adams et al\. 2007(?!, by analogy from the Southwest)[^()]*\)", section)
    assert bare == []


def test_each_sign_means_one_thing(section: str) -> None:
    """† and ‡ are signs of the tables of plants alone, whose note is their key; the references say it in words."""
    tables, _, rest = section.partition("## References\n")

    assert "†: some of them come from a class that was sorted in part" in tables
    assert "‡: some of them are 'cf.' or one of two taxa" in tables
    assert "†" not in rest and "‡" not in rest


def test_titles_of_books_and_journals_are_in_italics(section: str) -> None:
    """The journal of an article, the book of a chapter, and a book itself; Latin in a title the other way round."""
    listed = section.split("## References\n")[-1].split("\n## ")[0]

    assert "Quantifying macroscopic plant remains. *Review of Palaeobotany and Palynology* 73, 117–132." in listed
    assert "In Hastorf, C. A. & Popper, V. S. (eds), *Current Paleoethnobotany*, 72–85." in listed
    assert "*Formation Processes of the Archaeological Record*. Albuquerque: University of New Mexico Press." in listed
    assert "maypops (*Passiflora incarnata* L.)" in listed
    assert "*Utilization of* Hordeum pusillum *(little barley)" in listed


def test_every_work_that_the_text_names_is_listed(section: str) -> None:
    """Each 'Author year' in the brackets of the text has an entry of that author and year."""
    body, _, rest = section.partition("## References\n")
    entries = rest.split("\n## ")[0].replace("*", "").splitlines()
    bracketed = re.findall(r"\bsee ((?:[^()]|\([^()]*\))*)\)", body)
    named = {one.strip() for text in bracketed for one in text.split(";")}
    works = {found.groups() for one in named if (found := re.fullmatch(r"(.*?)(?: and .*| et al\.)? (\d{4})", one))}

    assert len(works) > 20
    assert {work for work in works if not any(work[0] in line and work[1] in line for line in entries)} == set()


def test_works_that_the_project_cites_itself_are_listed(section: str) -> None:
    """What stands under `report: references` is among the references, in its place by the author."""
    listed = section.split("## References\n")[-1].split("\n## ")[0]

    own = listed.index("Reimer, P. J. et al. 2020.")
    assert listed.index("Popper, V. S. 1988") < own < listed.index("Scarry, C. M. 2003")


def test_a_name_that_no_pack_knows_is_in_italics_where_it_is_latin(section: str) -> None:
    """The plant of a wet bank that stands in no pack, in the table of its phase and in the counts as written."""
    assert "| *Ammannia coccinea* | seed |" in section
    assert "| *Ammannia coccinea* | seed | charred |" in section
    assert "| *Carya* sp. |" in section and "| cf. *Phalaris caroliniana* |" in section


def test_shares_are_spelled_alike_in_text_tables_and_figures(section: str) -> None:
    """'95%' everywhere, as the narratives write it; the charts of the sites set a space before the sign."""
    assert "95%" in section
    assert not re.search(r"\d[ \u00a0\u202f]%", section)


def test_cells_cannot_break_a_table() -> None:
    """A bar or a line break in a cell is text."""
    table = Table(caption="c", columns=("a|b", "c"), rows=(("one\ntwo", "x \\ y"),))

    assert markdown([Heading(level=2, text="T"), table, Paragraph(text="end")]).splitlines() == [
        "## T",
        "",
        "Table\u00a01. c",
        "",
        "| a\\|b | c |",
        "| --- | --- |",
        "| one two | x \\\\ y |",
        "",
        "end",
        "",
        "---",
        "",
        "Draft for a specialist's signature.",
    ]


def test_contexts_of_one_feature_are_told_apart_from_features(section: str) -> None:
    """Four sampled contexts are fills of three storage pits, for two of them lie in one pit."""
    assert "storage pit (4 contexts of 3 features)" in section
    assert "midden (2 contexts of 1 feature)" in section


def test_the_summary_has_figures_and_grades_and_not_the_voice_for_visitors(section: str) -> None:
    """What a client reads first says how firm a reading is and on how many samples it rests."""
    summary = section.split("## Summary\n")[1].split("\n## ")[0]

    assert re.search(r"\bsupports?\b", summary)
    assert re.search(r"in\s+22\s+of\s+23\s+and\s+later\s+in\s+7\s+of\s+27", summary)
    assert "interval" not in summary and "percentage" not in summary and "%" not in summary
    assert "people used" not in summary and "we found" not in summary.lower()


def test_the_archive_statement_says_the_licence_or_asks_for_it(judged_example: Judged) -> None:
    """A data package that nobody may use is no archive: the licence stands there, or that it is still to be written."""
    stated = replace(judged_example.project, report={**judged_example.project.report, "licence": "CC0-1.0"})
    silent = replace(judged_example.project, report={})
    told = [plain(b.text) for b in _archive(judged_example, stated)]
    asked = [plain(b.text) for b in _archive(judged_example, silent)]

    assert "Licence of the open data package: CC0-1.0." in told
    assert "To be written: the licence under which others may use the data. Give it as report: licence." in asked


def test_the_first_page_gives_the_number_of_unchecked_works_and_no_list(judged_example: Judged) -> None:
    """Each is marked in the references and listed once; the notice at the head leads there."""
    edition = bare_edition("review", judged_example, {}, (), "test")
    notices = [plain(b.text) for b in outline(edition) if isinstance(b, Paragraph) and b.kind == "notice"]
    (unchecked,) = [text for text in notices if text.startswith("Works to be checked")]

    assert "each is marked in the list of references and listed in" in unchecked
    assert "(1)" not in unchecked


def test_what_stands_upright_comes_before_wide_tables(judged_example: Judged) -> None:
    """Wide tables begin a page: figures and narrow tables fill the page on which the text of the results ends."""
    edition = bare_edition("review", judged_example, {}, (), "test")
    blocks = outline(edition)
    at = {getattr(block, "anchor", ""): place for place, block in enumerate(blocks)}
    wide = [place for anchor, place in at.items() if anchor.startswith("counts-")]

    assert max(at["composition"], at["wood"], at["density"]) < min(wide)


def _archive(judged: Judged, project: Project) -> list[Paragraph]:
    edition = bare_edition("review", replace(judged, project=project), {}, (), "test")
    return [block for block in archive(edition) if isinstance(block, Paragraph)]
