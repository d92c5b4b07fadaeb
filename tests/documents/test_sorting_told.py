"""What the section says of how far samples were sorted, where the records say it and where they are silent."""

from __future__ import annotations

from narrate.documents.account import sampling
from narrate.documents.blocks import Paragraph, Table
from narrate.documents.inline import plain
from narrate.documents.outline import outline
from narrate.model.sampling import SizeClass
from narrate.model.sorting_on_record import finer_than_classes, silent_on_sorting
from narrate.pipeline.editions import bare_edition
from narrate.pipeline.judged import Judged
from tests.builders import a_sample

WHOLE = (SizeClass(name="1-2 mm", proportion_sorted=1), SizeClass(name="0.5-1 mm", proportion_sorted=1))


def test_a_sample_without_size_classes_is_silent():
    """Nothing was written, which is not the same as all of it; common practice, no source."""
    samples = [a_sample("S1"), a_sample("S2", size_classes=WHOLE), a_sample("S3", sterile=True)]

    assert silent_on_sorting(samples) == ("S1",)


def test_a_mesh_finer_than_the_smallest_class_is_found():
    """What lies between 0.3 and 0.5 mm stands in no class; common practice, no source."""
    (found,) = finer_than_classes([a_sample("S1", size_classes=WHOLE, mesh_mm={"light": 0.3})])

    assert (found.smallest_mm, found.meshes_mm, found.samples) == (0.5, (0.3,), ("S1",))


def test_a_class_open_below_leaves_nothing_out():
    """'<0.5 mm' holds all that the mesh caught."""
    size_classes = (*WHOLE, SizeClass(name="<0.5 mm", proportion_sorted=1))

    assert finer_than_classes([a_sample("S1", size_classes=size_classes, mesh_mm={"light": 0.3})]) == ()


def test_the_account_of_sampling_says_where_sorting_is_not_on_record(judged_example: Judged):
    """The samples without size classes by name, and the mesh that was finer than every class."""
    edition = bare_edition("review", judged_example, {}, (), "test")
    text = " ".join(block.text for block in sampling(edition) if isinstance(block, Paragraph))

    assert (
        "No size class is on record for S004, S006, S021, S034, S044, S045, S046 and S049; they are reckoned "
        "as sorted in full, which is not known."
    ) in text
    assert "No size class is on record for S043 either, in which nothing was found." in text
    assert "No size class below 0.5 mm is on record for " in text
    assert "whose mesh was finer (0.25 and 0.3 mm)" in text


def test_the_register_says_not_recorded_and_not_no(judged_example: Judged):
    """'no' stands where every class of a sample is on record as sorted."""
    blocks = outline(bare_edition("review", judged_example, {}, (), "test"))
    register = next(block for block in blocks if isinstance(block, Table) and block.anchor == "register")
    at = register.columns.index("Sorted in part")
    said = {plain(row[0]): plain(row[at]) for row in register.rows}

    assert (said["S004"], said["S001"], said["S002"]) == ("not recorded", "no", "0.5-1\u00a0mm: 1/4")
    assert said["S043"] == "not recorded"  # Sterile; its record has no size class either.
