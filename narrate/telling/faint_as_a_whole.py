"""For visitors: readings that single places make and that their phase or dig, as a whole, only hints at."""

from __future__ import annotations

from collections.abc import Sequence

from narrate.model.claims import GRADE_NAMES, Claim
from narrate.model.ids import Subject
from narrate.model.narrative import Sentence
from narrate.model.stratigraphy import Context
from narrate.telling import setting
from narrate.telling.borne import Borne
from narrate.telling.carried_for_visitors import by_grade
from narrate.telling.frames import noun_of
from narrate.telling.hints import with_a_fresh_end
from narrate.telling.page import Page
from narrate.telling.plan import Reading, standing
from narrate.telling.spread import samples_of_phase


def is_borne(page: Page, contexts: Sequence[Context], hint: Reading) -> bool:
    """
    Whether places make a reading that the subject of a page only hints at: two of a phase, one of a dig of two phases.

    Of a dig of one phase or of three and more the places are told with all that they carry.
    """
    if page.subject.level not in ("phase", "site") or not page.is_plain:
        return False
    is_of_two = len([p for p in page.dig.project.phases if samples_of_phase(page.dig, p.id)]) == 2
    least = 2 if page.subject.level == "phase" else 1
    return (page.subject.level == "phase" or is_of_two) and len(_carried(page, contexts, hint)) >= least


def faint_as_a_whole(page: Page, contexts: Sequence[Context], hints: Sequence[Reading]) -> list[Sentence]:
    """'But for the Late hamlet as a whole, the signs of wild fruit as food are faint', of readings that places make."""
    borne = [hint for hint in hints if is_borne(page, contexts, hint)]
    if not borne:
        return []
    phase = next((p for p in page.dig.project.phases if page.subject == Subject(level="phase", id=p.id)), None)
    if phase is not None:
        noun, whole = noun_of(page, borne), f"{setting.phase_name(phase)} as a whole"
        refs = [hint.claim.id for hint in borne]
        return page.say(
            refs,
            *with_a_fresh_end(
                page,
                f"for {whole}, the signs of {noun} are faint, and a few finds more or less could undo them",
                f"for {whole}, the signs of {noun} are faint, and a few finds more or less would change that",
            ),
        )
    sentences: list[Sentence] = []
    for hint in borne:
        carried = _carried(page, contexts, hint)
        refs = [hint.claim.id, *(claim.id for _, claim in carried)]
        noun = page.in_own_words(hint.statement.plain_noun)
        one = Borne(statement=hint.claim.statement, noun=noun, carried=tuple(carried), against=(), refs=tuple(refs))
        faint = with_a_fresh_end(
            page,
            "but for the dig as a whole these are faint signs, which a few finds more or less could undo",
            "but for the dig as a whole these are faint signs, and a few finds more or less would change that",
        )
        sentences += page.say(refs, ", and ".join(by_grade(page, one))) + page.say([hint.claim.id], *faint)
    return sentences


def _carried(page: Page, contexts: Sequence[Context], hint: Reading) -> list[tuple[str, Claim]]:
    """Contexts that make a reading, the firmest first, each with its claim."""
    found = [(c.id, page.dig.claims.find(Subject(level="context", id=c.id), hint.claim.statement)) for c in contexts]
    held = [(id, c) for id, c in found if c is not None and c.verdict == "holds" and standing(c) == "reading"]
    held = [(id, c) for id, c in held if c.grade != "consistent with"]
    return sorted(held, key=lambda pair: -GRADE_NAMES.index(pair[1].grade))
