"""What holds of every page holds for digs made up at random, with seeds that stay the same."""

from __future__ import annotations

import random
import re
from collections import Counter

import pytest

from narrate.model.claims import GRADE_NAMES, Claim, Claims
from narrate.model.ids import Subject
from narrate.model.packs import Packs
from narrate.model.project import Project
from narrate.telling.page import OPENINGS_AT_MOST, opening
from narrate.telling.tell import narratives

PARTS_OF = {
    "Zea mays": ("kernel", "cupule"),
    "Chenopodium berlandieri": ("seed",),
    "Carya": ("nutshell", "wood"),
    "cf. Passiflora incarnata": ("seed",),
    "Poaceae": ("seed",),
    "Nomen ignotum": ("seed",),
    "Indeterminate": ("seed",),
    "Zea mays/Poaceae": ("kernel",),
}
HOLE = re.compile(r"  |\{|\}|\bNone\b|\(\)| ,| \.|,,|;,|\bnan\b|\.\.$|\bthe the\b|\ba a\b|: \.|, \.| and and ")


def remains_at_random(dice: random.Random, project: Project) -> dict[str, list]:
    made: dict[str, list] = {}
    for sample in project.samples:
        rows = []
        for taxon, parts in PARTS_OF.items():
            for part in parts:
                if dice.random() < 0.4:
                    number = dice.choice([1, 1, 2, 3, 12, 96, 1402])
                    condition = "uncharred" if part == "seed" and dice.random() < 0.2 else "charred"
                    rows.append(
                        (taxon, part, condition, number, round(dice.random() * 9, 2) if part == "wood" else None)
                    )
        if rows and dice.random() < 0.9:
            made[sample.id] = rows
    return made


def claims_at_random(dice: random.Random, project: Project, packs: Packs, make: object) -> Claims:
    subjects = [Subject(level="context", id=c.id) for c in project.contexts]
    subjects += [Subject(level="phase", id=p.id) for p in project.phases] + [Subject(level="site", id="site")]
    by_subject: dict[Subject, tuple[Claim, ...]] = {}
    for subject in subjects:
        claims = []
        for id, statement in packs.statements.items():
            verdict = dice.choice(["holds", "fails", "cannot tell"])
            grade = dice.choice(GRADE_NAMES[1:]) if verdict == "holds" else "not supported"
            arguments = (
                [make(f"r.{id}", f"reason {id} ({dice.randint(1, 99)})", f"we saw {id}")] if dice.random() < 0.8 else []
            )
            claims.append(
                Claim(
                    id=f"{subject.id}/{id}", about=subject, question=statement.question, statement=id, verdict=verdict,
                    support=dice.random(), grade=grade, stability=dice.choice([None, 0.5, 0.99]),
                    arguments=tuple(arguments), alternatives=statement.rivals,
                )
            )  # fmt: skip
        by_subject[subject] = tuple(claims)
    return Claims(by_id={c.id: c for group in by_subject.values() for c in group}, by_subject=by_subject)


@pytest.mark.parametrize("seed", range(12))
@pytest.mark.parametrize("audience", ["report", "review", "public"])
def test_pages_of_any_dig_are_whole(seed: int, audience: str, project: Project, packs: Packs, makers):
    """No hole, no sentence twice, no worn opening, a reference for each sentence, whatever was found and judged."""
    dice = random.Random(seed)
    findings = makers.findings(project, packs, remains_at_random(dice, project))
    claims = claims_at_random(dice, project, packs, makers.said)
    for narrative in narratives(project, packs, findings, claims, audience).values():
        texts = [sentence.text for sentence in narrative.sentences()]
        worn = Counter(opening(text) for text in texts)
        assert len(texts) == len(set(texts))
        assert all(times <= OPENINGS_AT_MOST for times in worn.values()), (narrative.title, worn.most_common(2))
        for sentence in narrative.sentences():
            assert sentence.refs
            assert not HOLE.search(sentence.text), sentence.text
            assert re.match(r"[“*(]?[A-Z]", sentence.text), sentence.text
