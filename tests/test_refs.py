"""The words before the slash of a reference: one for each subject, whatever its id."""

from __future__ import annotations

import re

from hypothesis import given
from hypothesis import strategies as st

from narrate.model.refs import ref_in_keys, subject_keys
from tests.builders import a_context, a_phase, a_project, a_sample

IDS = st.lists(st.text(alphabet="ab_/ ~:", min_size=1, max_size=5).map(str.strip).filter(bool), unique=True, max_size=6)


def test_an_id_with_white_space_gives_way_to_a_plain_one() -> None:
    """`a_b` keeps its own word wherever it stands; `a b` and `a/b` get others."""
    dig = a_project([a_context("a b"), a_context("a/b")], [a_sample("a_b", context="a b")], phases=())

    assert {(s.level, s.id): key for s, key in subject_keys(dig).items()} == {
        ("context", "a b"): "context:a_b",
        ("context", "a/b"): "context:a_b~",
        ("sample", "a_b"): "a_b",
        ("site", "site"): "site",
    }


def test_of_two_plain_ids_the_earlier_level_has_the_word() -> None:
    """Context 1 and sample 1 are told apart by the level of the later one."""
    dig = a_project([a_context("1")], [a_sample("1", context="1")], phases=())

    assert [(s.level, key) for s, key in subject_keys(dig).items()][:2] == [("context", "1"), ("sample", "sample:1")]


@given(contexts=IDS, samples=IDS, phases=IDS)
def test_words_are_unique_and_plain_ids_keep_theirs(contexts: list[str], samples: list[str], phases: list[str]) -> None:
    """No two subjects share a word, none holds a slash, and the first with a plain id is called by it."""
    dig = a_project(
        [a_context(id, phase=None) for id in contexts],
        [a_sample(id, context=(contexts or ["C1"])[0]) for id in samples],
        phases=tuple(a_phase(id) for id in phases),
    )
    keys = subject_keys(dig)
    plain = {s.id for s in keys if not re.search(r"[\s/]", s.id)}

    assert len(set(keys.values())) == len(keys)
    assert not any("/" in key or " " in key for key in keys.values())
    assert all(key not in plain or key == subject.id for subject, key in keys.items())
    assert plain <= set(keys.values())


def test_a_reference_with_the_id_as_written_is_understood() -> None:
    """The longest id or word that the reference begins with counts; what names nothing stays as it is."""
    dig = a_project([a_context("a"), a_context("a/b"), a_context("Größe №5")], [a_sample("a b", context="a")], phases=())
    written = ["a/record", "a/b/record", "Größe №5/record", "a b/measure.items", "a_b/record", "x/record"]

    assert [ref_in_keys(dig, ref) for ref in written] == [
        "a/record",
        "a_b/record",
        "Größe_№5/record",
        "sample:a_b/measure.items",
        "a_b/record",
        "x/record",
    ]
