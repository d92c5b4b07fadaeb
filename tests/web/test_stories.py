"""Narratives on the page: what stands beneath a paragraph, and how firm its specks are."""

from __future__ import annotations

from dataclasses import replace

from narrate.model.ids import SampleId, Subject
from narrate.model.narrative import Narrative, Section, Sentence
from narrate.model.project import Project
from narrate.web.evidence import Opener
from narrate.web.links import Links
from narrate.web.stories import StoryView, story
from tests.web.editions import a_project, a_row, an_edition

C1 = Subject(level="context", id="C1")


def told(*sentences: Sentence, is_edited: bool = False, project: Project | None = None) -> StoryView:
    section = Section(id="one", heading="", paragraphs=(sentences,))
    narrative = Narrative(
        subject=C1, audience="review", title="", summary=None, sections=(section,), is_edited=is_edited
    )
    made = story(Opener(an_edition(project=project, narratives={("review", C1): narrative}), Links()), "review", C1)
    assert made is not None
    return made


def test_a_speck_is_as_full_as_the_firmest_claim() -> None:
    """Support of 0.85 reads 'supports', which fills three specks of four; counts alone have no speck."""
    paragraph = (
        told(
            Sentence(text="Cobs.", refs=("C1/measure.items", "C1/fuel.maize-cob")),
            Sentence(text="Counts.", refs=("C1/measure.items",)),
        )
        .sections[0]
        .paragraphs[0]
    )

    assert [sentence.strength for sentence in paragraph.sentences] == [3, None]


def test_a_panel_shows_each_thing_once() -> None:
    """What an earlier sentence of the paragraph rests on is pointed to and not repeated."""
    first, second = (
        told(
            Sentence(text="Cobs.", refs=("C1/fuel.maize-cob",)),
            Sentence(text="Cobs again.", refs=("C1/fuel.maize-cob", "C1/record")),
        )
        .sections[0]
        .paragraphs[0]
        .sentences
    )

    assert [one.ref for one in first.behind] == ["C1/fuel.maize-cob"]
    assert [one.ref for one in second.behind] == ["C1/record"]
    assert second.behind_before == (("Maize cobs as fuel (supports)", first.anchor),)


def test_neighbours_on_the_same_rows_show_them_once() -> None:
    """Items and items per litre rest on the same rows, which stand under the second of them."""
    (sentence,) = (
        told(Sentence(text="Much.", refs=("C1/measure.items", "C1/measure.density")))
        .sections[0]
        .paragraphs[0]
        .sentences
    )

    assert [bool(one.rows) for one in sentence.behind] == [False, True]


def test_words_of_the_analyst_rest_on_her() -> None:
    """A sentence that she wrote herself names her as what it rests on."""
    (sentence,) = told(Sentence(text="Mine.", refs=("C1/words",)), is_edited=True).sections[0].paragraphs[0].sentences

    assert [one.title for one in sentence.behind] == ["The analyst's own words"]


def test_numbers_of_sentences_run_through_the_narrative() -> None:
    """Sentences are counted from 1 over all paragraphs, and each has a fragment of its own."""
    section = Section(
        id="one",
        heading="",
        paragraphs=((Sentence(text="A.", refs=("C1/record",)),), (Sentence(text="B.", refs=("C1/record",)),)),
    )
    narrative = Narrative(subject=C1, audience="review", title="", summary=None, sections=(section, section))
    made = story(Opener(an_edition(narratives={("review", C1): narrative}), Links()), "review", C1)

    assert made is not None
    sentences = [s for part in made.sections for paragraph in part.paragraphs for s in paragraph.sentences]
    assert [sentence.number for sentence in sentences] == [1, 2, 3, 4]
    assert len({sentence.anchor for sentence in sentences}) == 4


def test_what_the_page_has_shown_already_is_told_in_short() -> None:
    """The second narrative of a page leads to the evidence of a claim that the first has shown with its arguments."""
    section = Section(id="one", heading="", paragraphs=((Sentence(text="Cobs.", refs=("C1/fuel.maize-cob",)),),))
    narratives = {
        (audience, C1): Narrative(
            subject=C1, audience=audience, title="", summary=None, sections=(section,), is_edited=False
        )
        for audience in ("review", "report")
    }
    opener = Opener(an_edition(narratives=narratives), Links())
    shown: set[str] = set()
    stories = [story(opener, audience, C1, shown) for audience in ("review", "report")]

    behind = [one.sections[0].paragraphs[0].sentences[0].behind for one in stories if one is not None]
    assert [[one.is_told for one in listed] for listed in behind] == [[False], [True]]


def test_many_things_behind_a_sentence_are_gathered_by_what_they_say() -> None:
    """Six references are told as one line a find and one a measure, each subject leading to its own place."""
    refs = (*(f"{key}/measure.items" for key in ("C1", "C2", "S1", "S2", "S3")), "C1/record")
    sentence = told(Sentence(text="Counts.", refs=refs)).sections[0].paragraphs[0].sentences[0]

    assert [(one.title, [name for name, _ in one.members]) for one in sentence.gathered] == [
        ("Items", ["C1", "C2", "S1", "S2", "S3"]),
        ("What the records say", ["C1"]),
    ]


def test_few_things_behind_a_sentence_are_shown_one_by_one() -> None:
    """Up to five stand each with what speaks for it."""
    sentence = told(Sentence(text="Counts.", refs=("C1/measure.items", "C2/measure.items"))).sections[0].paragraphs[0]

    assert sentence.sentences[0].gathered == ()


def test_hundreds_behind_a_sentence_are_named_and_then_counted() -> None:
    """Of four hundred finds of one plant the first lead to their places, the next are named, the rest are counted."""
    sample = a_project().samples[0]
    ids = [f"S{number}" for number in range(1, 401)]
    project = a_project(
        samples=tuple(replace(sample, id=SampleId(id)) for id in ids),
        counts=tuple(a_row(id, "Zea mays", "cupule", "4", line) for line, id in enumerate(ids, start=10)),
    )
    refs = tuple(f"{id}/found.zea-mays.cupule" for id in ids)
    found = told(Sentence(text="Cobs.", refs=refs), project=project).sections[0].paragraphs[0].sentences[0]

    (gathered,) = found.gathered
    assert [name for name, _ in gathered.members] == ids[:24]
    assert gathered.others == tuple(ids[24:300])
    assert gathered.further == 100
    assert found.refs.split() == list(refs[:10])


def test_a_sentence_on_many_plants_links_fewer_samples_of_each() -> None:
    """Of eight plants of twenty samples each, four samples a plant lead to their rows, and the others are named."""
    sample = a_project().samples[0]
    ids = [f"S{number}" for number in range(1, 21)]
    plants = ("achene", "bean", "berry", "cob", "cupule", "glume", "kernel", "seed")
    project = a_project(
        samples=tuple(replace(sample, id=SampleId(id)) for id in ids),
        counts=tuple(
            a_row(id, "Zea mays", part, "4", 10 + 20 * n + line)
            for n, part in enumerate(plants) for line, id in enumerate(ids)
        ),
    )  # fmt: skip
    refs = tuple(f"{id}/found.zea-mays.{part}" for part in plants for id in ids)
    found = told(Sentence(text="Plants.", refs=refs), project=project).sections[0].paragraphs[0].sentences[0]

    assert [len(gathered.members) for gathered in found.gathered] == [4] * 8
    assert all(gathered.others == tuple(ids[4:]) for gathered in found.gathered)
