"""Parts of the section: photographs, classes of abundance, contexts without a text, the project's own checklist."""

from __future__ import annotations

import io
from dataclasses import replace
from pathlib import Path

import pytest
from click.testing import CliRunner, Result
from PIL import Image as Picture

from narrate.cli import commands
from narrate.documents.abundance import key_of_classes, signs_of_classes
from narrate.documents.blocks import Block, Figure, Heading, Paragraph, Table, Unfit
from narrate.documents.outline import outline
from narrate.documents.pdf import pdf, pictures
from narrate.documents.photographs import for_print
from narrate.documents.tables import counts_by_context
from narrate.documents.word import word
from narrate.measures.findings import find
from narrate.model.counts import Count
from narrate.model.edition import Edition
from narrate.model.ids import SITE, Subject
from narrate.model.narrative import Narrative, Section, Sentence
from narrate.model.report_blocks import ChecklistItem, ReportBlock
from narrate.pipeline.editions import edition_of
from narrate.pipeline.judged import Judged
from tests.builders import a_row


def edition(judged: Judged, **fields: object) -> Edition:
    return edition_of("review", replace(judged, project=replace(judged.project, **fields)), {}, (), "test")  # type: ignore[arg-type]


def jpeg(turned: int = 1) -> bytes:
    """Forty by twenty, held as the camera says."""
    notes = Picture.Exif()
    notes[0x0112] = turned
    notes[0x010E] = "a place"
    out = io.BytesIO()
    Picture.new("RGB", (40, 20), "navy").save(out, "JPEG", exif=notes)
    return out.getvalue()


def test_photographs_stand_with_their_context(judged_example: Judged) -> None:
    """Caption with record and credit, alternative text, under the heading of the context."""
    files = {image.file: jpeg() for sample in judged_example.project.samples for image in sample.images}
    blocks = outline(edition(judged_example), files)
    found = [b for b in blocks if isinstance(b, Figure) and b.photograph]
    kernel = next(b for b in found if "kernel" in b.caption)
    above = [b for b in blocks[: blocks.index(kernel)] if isinstance(b, Heading)][-1]
    sample = next(s for s in judged_example.project.samples if any("kernel" in i.file for i in s.images))

    assert len(found) == 3
    assert kernel.caption.startswith(f"{sample.id}: Charred maize kernel from the ash around the jar")
    assert kernel.caption.endswith("(drawing for the example).")
    assert kernel.alt == " ".join(sample.images[0].alt.split())
    assert above.text.startswith(f"{sample.context}, ")


def test_photographs_are_upright_and_bare() -> None:
    """Turned as the camera was held (EXIF 2.3, orientation 6: a quarter to the right), without its notes."""
    found, _ = for_print(jpeg(turned=6), "a.jpg")

    assert Picture.open(io.BytesIO(found)).size == (20, 40)
    assert not Picture.open(io.BytesIO(found)).getexif()
    assert b"a place" in jpeg() and b"a place" not in found


@pytest.mark.parametrize(("size", "width_mm"), [((1500, 1000), 75), ((1000, 1000), 55), ((1000, 2000), 27)])
def test_no_photograph_is_higher_than_a_quarter_of_a_page(size: tuple[int, int], width_mm: int) -> None:
    """55 mm of the 253 mm that an A4 page takes at most, at 300 dpi, in its own proportions."""
    raw = io.BytesIO()
    Picture.new("RGB", size).save(raw, "JPEG")
    found, width = for_print(raw.getvalue(), "a.jpg")
    picture = Picture.open(io.BytesIO(found))

    assert width == width_mm
    assert picture.height / picture.width * width <= 56
    assert picture.width / width * 25.4 == pytest.approx(300, rel=0.02)


def test_a_jpeg_is_set_in_word_and_pdf() -> None:
    """Both kinds of picture are taken by both engines."""
    blocks: tuple[Block, ...] = (
        Heading(level=1, text="T"),
        Figure(caption="c", alt="a", photograph=jpeg(), anchor="p"),
    )

    assert pdf(blocks, pictures(blocks)).startswith(b"%PDF")
    assert word(blocks, pictures(blocks)).startswith(b"PK")


def test_what_is_no_picture_is_refused() -> None:
    """The message names the file."""
    with pytest.raises(Unfit, match=r"the photograph images/a\.png cannot be read as a picture"):
        for_print(b"no picture", "images/a.png")


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    path = tmp_path / "dig"
    assert CliRunner().invoke(commands, ["begin", str(path)]).exit_code == 0
    return path


def reported(folder: Path) -> Result:
    return CliRunner().invoke(commands, ["report", str(folder)])


@pytest.mark.parametrize(
    ("alt", "is_there", "said"),
    [
        (", alt: a cob", False, "is not there, expected a picture in the project"),
        ("", True, "has no alt, expected words for what is to be seen"),
    ],
)
def test_a_photograph_that_cannot_be_set_leaves_the_old_output(
    folder: Path, alt: str, is_there: bool, said: str
) -> None:
    """A photograph that is missing, or that nobody described, is an error with its place; what stood before stays."""
    assert reported(folder).exit_code == 0
    section = folder / "out" / "report" / "section.md"
    before = section.read_bytes()
    (folder / "images").mkdir(exist_ok=True)
    if is_there:
        (folder / "images" / "cob.jpg").write_bytes(jpeg())
    records = folder / "records" / "more.yaml"
    records.write_text(
        "contexts:\n  - id: C77\n    kind: pit\n    images:\n"
        f"      - {{file: images/cob.jpg, caption: c, credit: d{alt}}}\n",
        encoding="utf-8",
    )

    result = reported(folder)

    assert result.exit_code == 1
    assert f"error N119: the photograph 'images/cob.jpg' of C77 {said}" in result.stderr, result.output + result.stderr
    assert "records/more.yaml:5" in result.stderr
    assert section.read_bytes() == before


def test_a_context_without_a_text_says_so(judged_example: Judged) -> None:
    """Its heading stands, and a sentence in place of a narrative."""
    blocks = outline(edition(judged_example))
    at = next(n for n, b in enumerate(blocks) if isinstance(b, Heading) and b.text.startswith("C01, "))

    assert blocks[at + 1] == Paragraph(
        text="Samples: S001, S002 ({register}). Counts: {counts-early-1}. As written: {raw-counts-early-1}. Items per "
        "litre: {density}.",
        kind="pointer",
    )
    assert blocks[at + 2] == Paragraph(text="Nothing is told of this context: no samples, or no remains in them.")


def test_classes_of_abundance_keep_their_sign_and_have_a_key(judged_example: Judged) -> None:
    """A class is printed as its sign, never as x and never as a number; the key says its ends."""
    sign = Count(written="++", amount="noted as present", at_least=6, at_most=20, scale="four points")
    project = judged_example.project
    row = replace(a_row(sample="S001", taxon="Carya sp.", part="nutshell"), count=sign)
    project = replace(project, counts=(*(r for r in project.counts if r.sample != "S001"), row))
    found = replace(judged_example, project=project, findings=find(project, judged_example.packs))
    whole = edition_of("review", found, {}, (), "test")
    context = next(s.context for s in project.samples if s.id == "S001")
    table = next(t for t in counts_by_context(whole) if context in t.columns)
    cells = [r[table.columns.index(context)] for r in table.rows if r[1] == "nutshell" and "Carya" in r[0]]

    assert any("++" in cell for cell in cells)
    assert "Classes of abundance are signs and are never summed. Scale 'four points': ++: 6 to 20 items." in table.note
    assert key_of_classes(whole, ["C99"]) == ""
    assert list(signs_of_classes(whole).values()) == [("++",)]


def test_the_own_list_of_a_project_is_answered_item_by_item(judged_example: Judged) -> None:
    """What is given is met, what is not, or stands in a block switched off, is missing; a person looks at the rest."""
    asked = (
        ChecklistItem(asks="Number", report="number"),
        ChecklistItem(asks="Permit", report="permit"),
        ChecklistItem(asks="Archive", block="archive"),
        ChecklistItem(asks="Signed"),
    )
    off = (ReportBlock(block="archive", shown=False),)
    blocks = outline(edition(judged_example, report_checklist=asked, report_blocks=off))
    table = next(b for b in blocks if isinstance(b, Table) and b.anchor == "checklist")
    said = [b.text for b in blocks if isinstance(b, Paragraph) and "own list" in b.text]

    assert [row for row in table.rows if row[1] == "the project"] == [
        ("Number", "the project", "–", "met"),
        ("Permit", "the project", "–", "missing: not given; write report: permit in project.yaml."),
        ("Archive", "the project", "–", "missing: the block 'Archive' is switched off."),
        ("Signed", "the project", "–", "look: nothing in the records can answer it."),
    ]
    assert said == ["Of the 4 items of the project's own list, 1 is met, 2 missing, and 1 for a person to look at."]


def test_a_copy_of_approved_words_says_where_none_was_approved(judged_example: Judged) -> None:
    """A context whose sentences all wait is not said to hold nothing, and the checklist misses its readings."""
    subject = Subject(level="context", id="C01")
    waits = Narrative(subject=subject, audience="report", title="C01", summary=None, sections=(), left_out=12)
    told = {("report", subject): waits}
    blocks = outline(edition_of("review", judged_example, told, (), "test", approved_only=True))
    at = next(n for n, b in enumerate(blocks) if isinstance(b, Heading) and b.text.startswith("C01, "))
    table = next(b for b in blocks if isinstance(b, Table) and b.anchor == "checklist")
    missing = {row[0] for row in table.rows if row[3] == "missing: no sentence of it was approved so far."}

    assert blocks[at + 2] == Paragraph(text="Nothing that is told of this context was approved so far.")
    assert missing == {"Method, results, discussion, recommendations", "Interpretation, local and wider"}


def test_what_can_be_dated_is_named_once(judged_example: Judged) -> None:
    """The discussion names the contexts, and the recommendations lead there; without such a sentence they name them."""
    claims = [c for c in judged_example.claims.all_holding() if c.statement == "work.date-candidate"]
    ids = tuple(claim.id for claim in claims if claim.about.level == "context")
    said = Sentence(text="Material to date lies in C01 and elsewhere.", refs=ids)
    site = Subject(level="site", id=SITE)

    def told(*sentences: Sentence, **fields: object) -> list[str]:
        section = Section(id="next", heading="What could be done", paragraphs=(sentences,))
        narrative = Narrative(subject=site, audience="report", title="", summary=None, sections=(section,))
        whole = replace(judged_example, project=replace(judged_example.project, **fields))  # type: ignore[arg-type]
        blocks = outline(edition_of("review", whole, {("report", site): narrative}, (), "test"))
        return [b.text for b in blocks if isinstance(b, Paragraph) and "fit for radiocarbon dating" in b.text]

    by_name = ["Short-lived charred material fit for radiocarbon dating lies in C"]
    off = (ReportBlock(block="discussion", shown=False),)
    assert len(ids) > 5
    assert told(said) == ["What is fit for radiocarbon dating is named under 'What could be done' of 'Discussion'."]
    assert told(said, report_blocks=(ReportBlock(block="discussion", title="Reading"),)) == [
        "What is fit for radiocarbon dating is named under 'What could be done' of 'Reading'."
    ]
    assert [text[: len(by_name[0])] for text in told(replace(said, refs=ids[1:]))] == by_name
    assert [text[: len(by_name[0])] for text in told(said, report_blocks=off)] == by_name
