"""Accounts of contexts open with what matters most in the deposit, and not all in one mould."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Mapping
from dataclasses import replace
from typing import TYPE_CHECKING

import pytest

from narrate.model.ids import ContextId, Subject
from narrate.model.narrative import Narrative
from narrate.telling.tell import narratives

if TYPE_CHECKING:
    from narrate.pipeline.judged import Judged


@pytest.fixture(scope="module")
def first(judged_example: Judged) -> Mapping[str, str]:
    """First sentences of the report, by context."""
    whole = judged_example
    told = narratives(whole.project, whole.packs, whole.findings, whole.claims, "report", ("context",))
    return {subject.id: narrative.sentences()[0].text for subject, narrative in told.items()}


def test_a_disturbed_deposit_opens_with_that(first: Mapping[str, str]):
    """The pit that a drain cut is doubted before anything of it is told."""
    assert first["C20"].startswith("Little can rest on pit C20 ")
    assert ", which was recorded as disturbed: " in first["C20"]


def test_the_richest_deposit_opens_with_that(first: Mapping[str, str], judged_example: Judged):
    """The lens of seed, the densest of all contexts, is told as the richest, and no other is."""
    found = judged_example.findings.subjects
    contexts = {s.id: f.measurements for s, f in found.items() if s.level == "context"}
    density = {id: known["density"].value or 0.0 for id, known in contexts.items() if "density" in known}
    richest = max(density, key=lambda id: density[id])

    assert [id for id, text in first.items() if "richest" in text] == [richest] == ["C05"]


def test_a_deposit_full_of_one_thing_opens_with_it(first: Mapping[str, str]):
    """Cobs, kernels, maize and hickory shell open the accounts of what was full of them."""
    full = {"C03": "Hickory nutshell", "C11": "maize cupules", "C12": "Maize kernels", "C17": "maize"}

    assert all(thing in first[id].split(": ")[0] for id, thing in full.items())


def test_the_most_kinds_open_one_account(first: Mapping[str, str], judged_example: Judged):
    """Two pits of 21 kinds do not say so; with a kind less in one of them the other does, and only that one."""
    whole = judged_example
    one, other = (Subject(level="context", id=ContextId(id)) for id in ("C06", "C14"))
    found = whole.findings.subjects[one]
    taxa = found.measurements["taxa"]
    less = replace(found, measurements={**found.measurements, "taxa": replace(taxa, value=20.0)})
    findings = replace(whole.findings, subjects={**whole.findings.subjects, one: less})
    told = narratives(whole.project, whole.packs, findings, whole.claims, "report", ("context",))

    assert taxa.value == 21 and not [id for id, text in first.items() if "kinds of plants" in text]
    assert [s for s, n in told.items() if "kinds of plants" in n.sentences()[0].text] == [other]


def test_poor_floors_and_shared_features_are_told_as_such(first: Mapping[str, str]):
    """Floors with half the usual density open as poor; the two middens of feature F7 name each other."""
    assert "few" in first["C02"] and "poor" in first["C15"]
    assert "feature F7" in first["C08"] and "C16" in first["C08"] and "C08" in first["C16"]


def test_openings_are_of_many_builds(first: Mapping[str, str]):
    """Without names, figures and brackets no build opens more than four of the accounts, and there are ten or more."""
    bare = [re.sub(r"\([^()]*(?:\([^()]*\))?[^()]*\)", "", text) for text in first.values()]
    kinds = r"hearth|floor|(earth |refuse |storage |smudge )?(oven|pit)|midden|burned structure|layer|context"
    named = re.compile(rf"\b({kinds}) C\d+|C\d+|F\d+|\d[\d,.]*", re.IGNORECASE)
    builds = Counter(named.sub("_", text).split(": ")[0][:40] for text in bare)

    assert len(builds) >= 10
    assert max(builds.values()) <= 4


@pytest.mark.parametrize("level", ["context"])
def test_the_same_figures_stand_in_every_opening(first: Mapping[str, str], judged_example: Judged, level: str):
    """However it opens, an account gives samples, litres, items and density."""
    for id, text in first.items():
        items = judged_example.findings.subjects[Subject(level=level, id=id)].measurements["items"].value or 0
        if items >= 10:
            assert re.search(r"samples?\b|sampled", text), text
            # What is a minimum has no interval.
            assert re.search(r"per litre \(95% interval|at least [\d.,]+ items per litre", text), text
            assert f"{items:,.0f} charred items" in text, text


def test_visitors_meet_places_in_more_than_two_ways(judged_example: Judged):
    """No wording opens more than a third of the visitors' accounts."""
    whole = judged_example
    told = narratives(whole.project, whole.packs, whole.findings, whole.claims, "public", ("context",))
    firsts = [narrative.sentences()[0].text for narrative in told.values() if isinstance(narrative, Narrative)]
    builds = Counter(re.sub(r"[a-z ]* ?\bC\d+", "_", text, flags=re.I)[:24] for text in firsts)

    assert max(builds.values()) * 3 <= len(firsts)
