"""What the public may know: nothing restricted is left in the project, in any field."""

from __future__ import annotations

from dataclasses import replace

from narrate.disclosure import Guard, disclosed, disclosed_narrative
from narrate.model.ids import ContextId, FeatureId, SampleId, Subject
from narrate.model.images import Image
from narrate.model.narrative import Narrative, Section, Sentence
from narrate.model.project import Disclosure, Project
from tests.measures.digs import HERE, a_dig, a_row


def an_image(file: str, caption: str) -> Image:
    return Image(file=file, caption=caption, credit="drawing", alt="a drawing", place=HERE)


def a_guarded_dig() -> Project:
    """Three contexts with one sample each; C2 and its sample S2 are restricted and named where they should not be."""
    dig = a_dig(
        [[("Zea mays", "kernel", 3)], [("Zea mays", "kernel", 5)], [("Carya", "nutshell", 7)]],
        rows=[replace(a_row("S3", "Chenopodium", "seed", 2), note="same as in s2")],
    )
    contexts = (
        replace(
            dig.contexts[0],
            description="Cut by C2, which lies above.",
            note="plain note",
            location={"easting": "4417", "northing": "9923"},
        ),
        replace(dig.contexts[1], description="secret", feature=FeatureId("F9"), location={"easting": "77"}),
        replace(dig.contexts[2], description="C20 is another thing, and F10 too."),
    )
    samples = (
        replace(dig.samples[0], note="compare F9", images=(an_image("images/c1.jpg", "Kernel beside C2"),)),
        dig.samples[1],
        replace(dig.samples[2], images=(an_image("images/c3.jpg", "Nutshell"),)),
    )
    return replace(
        dig,
        summary="A hamlet; C2 is kept out.",
        report={"number": "WH-7", "client": "see S2"},
        contexts=contexts,
        samples=samples,
        disclosure=Disclosure(restricted_contexts=frozenset({ContextId("C2")})),
    )


def test_the_restricted_context_and_all_that_hangs_on_it_is_gone() -> None:
    """Context, feature, sample and counts of C2 are not in what is disclosed."""
    public = disclosed(a_guarded_dig())

    assert [c.id for c in public.contexts] == ["C1", "C3"]
    assert [s.id for s in public.samples] == ["S1", "S3"]
    assert {row.sample for row in public.counts} == {SampleId("S1"), SampleId("S3")}
    assert public.is_withheld_in_part


def test_no_text_that_names_it_is_left_and_other_text_stays() -> None:
    """Prose that names C2, its sample or its feature is withheld, in any case of letters; C20 and F10 are not."""
    public = disclosed(a_guarded_dig())

    assert public.contexts[0].description == ""
    assert public.contexts[0].note == "plain note"
    assert public.contexts[1].description == "C20 is another thing, and F10 too."
    assert public.samples[0].note == "" and public.samples[0].images == ()
    assert public.samples[1].images[0].file == "images/c3.jpg"
    assert public.summary == ""
    assert public.report == {"number": "WH-7", "client": ""}
    assert [row.note for row in public.counts if row.note] == []


def test_nothing_of_it_is_left_in_any_field() -> None:
    """The whole disclosed project, written out, does not hold the words."""
    text = repr(disclosed(a_guarded_dig()))

    for secret in ("'C2'", "S2", "F9", "secret", "4417", "9923", "'77'"):
        assert secret not in text


def test_locations_are_restricted_even_if_nobody_says_so() -> None:
    """Easting and northing never pass, whatever the project lists."""
    dig = replace(a_guarded_dig(), disclosure=Disclosure(restricted_fields=frozenset()))

    assert all(not context.location for context in disclosed(dig).contexts)


def test_restricted_fields_are_emptied_everywhere() -> None:
    """A field named in disclosure is empty in every record."""
    dig = replace(
        a_guarded_dig(), disclosure=Disclosure(restricted_fields=frozenset({"description", "note", "images"}))
    )
    public = disclosed(dig)

    assert {c.description + c.note for c in public.contexts} == {""}
    assert {s.note for s in public.samples} == {""} and all(not s.images for s in public.samples)


def test_a_project_without_secrets_loses_only_its_locations() -> None:
    """Nothing restricted: contexts, samples and counts are all there."""
    dig = a_dig([[("Zea mays", "kernel", 3)], []])
    public = disclosed(dig)

    assert (public.contexts, public.samples, public.counts) == (dig.contexts, dig.samples, dig.counts)
    assert not public.is_withheld_in_part


def test_edited_words_that_name_it_do_not_reach_the_public() -> None:
    """A sentence that the analyst wrote for visitors and that names the restricted context is left out."""
    sentences = tuple(
        Sentence(text=text, refs=("C1/words",)) for text in ("Plain words.", "Close to C2.", "At 4417 east.")
    )
    narrative = Narrative(
        subject=Subject(level="context", id="C1"),
        audience="public",
        title="C1",
        summary=None,
        sections=(Section(id="a", heading="", paragraphs=(sentences,)),),
        is_edited=True,
    )

    assert disclosed_narrative(narrative, a_guarded_dig()).text == "Plain words."


def test_prose_that_tells_a_place_is_withheld_in_every_notation() -> None:
    """Metres in groups or with decimals, the last five figures of a grid, degrees with decimals or minutes."""
    dig = a_guarded_dig()
    place = {"easting": "512345.2", "northing": "4312345", "latitude": "38.90471", "spot": "north of the ford"}
    guard = Guard.of(replace(dig, contexts=(replace(dig.contexts[0], location=place), *dig.contexts[1:])))
    told = (
        "at 512345 east", "at 512 345", "at 512,345.25", "E512345", "17S 12345 98765", "512345 4312345",
        "4 312 345 N", "38.9047 north", "38,904", "38° 54′ 16″ N", "38 deg 54.3 min", "North of the ford.",
    )  # fmt: skip

    assert [text for text in told if not guard.names(text)] == []
    assert not any(guard.names(text) for text in ("about AD 1050", "12 340 seeds of 9", "38 litres", "", "5,402 items"))


def test_a_summary_that_names_it_is_left_out() -> None:
    """The one sentence for lists and cards is kept to the same rule as the text."""
    narrative = Narrative(
        subject=Subject(level="context", id="C1"),
        audience="public",
        title="C1",
        summary=Sentence(text="Close to C2.", refs=("C1/words",)),
        sections=(),
        is_edited=True,
    )

    assert disclosed_narrative(narrative, a_guarded_dig()).summary is None
