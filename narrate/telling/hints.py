"""Hints: what the remains suggest and another draw of the counts would undo, told as no more than that."""

from __future__ import annotations

from collections.abc import Sequence

from narrate.model.claims import GRADE_NAMES, Claim
from narrate.model.findings import Tally
from narrate.model.ids import Subject
from narrate.model.narrative import Sentence
from narrate.model.stratigraphy import Phase
from narrate.telling import english, numbers, setting
from narrate.telling.behind import remains_behind
from narrate.telling.frames import noun_of, that_clauses
from narrate.telling.page import Draw, Page
from narrate.telling.places_named import places_or_number
from narrate.telling.plan import POOR, Reading, standing
from narrate.telling.spread import ids_listed


def faint_sentences(page: Page, faint: Sequence[Reading]) -> list[Sentence]:
    """'The handling of tobacco is no more than a hint: …': all hints of a page or theme, each with its own doubt."""
    if not faint:
        return []
    ordered = sorted(faint, key=lambda r: (-(r.claim.stability or 0.0), r.claim.id))
    refs = [r.claim.id for r in ordered]
    if page.is_plain:
        clauses = that_clauses(page, ordered)
        foods, others = [r for r in ordered if r.is_food], [r for r in ordered if not r.is_food]
        if foods and others and len(clauses.split()) > LONG:
            said = page.say(refs, f"there are faint signs that {that_clauses(page, foods)}")
            rest = f"faint signs that {that_clauses(page, others)}"
            return said + page.say(
                refs,
                f"there are also {rest}; a few finds more or less would change all of this",
                f"we also see {rest}; all of this rests on too few finds to build on",
            )
        said = page.say(
            refs,
            *with_a_fresh_end(
                page,
                f"there are faint signs that {clauses}, but a few finds more or less would change that",
                f"we see faint signs that {clauses}, which a few finds more or less could undo",
            ),
        )
        return said + (few_finds_sentences(page, ordered[0].claim) if len(ordered) == 1 else [])
    said = page.say(refs, hints_told(page, [_piece(page, r) for r in ordered], _alone(page, ordered)))
    page.draws += [Draw(sentence=s, pieces=tuple(_piece(page, r) for r in ordered), is_hint=True) for s in said]
    return said


def with_a_fresh_end(page: Page, *wordings: str) -> list[str]:
    """Those of some wordings whose last words the page has not told; all of them where every end is worn."""
    ends = [" ".join(wording.split()[-4:]) for wording in wordings]
    fresh = [wording for wording, end in zip(wordings, ends, strict=True) if not page.has_told(end)]
    return fresh or list(wordings)


def few_finds_sentences(page: Page, claim: Claim) -> list[Sentence]:
    """For visitors: which finds a hint rests on, and where they lay, while they are a few of one or two kinds."""
    behind = [tally for tally in _behind(page, claim) if tally.counted]
    if not 0 < len(behind) <= KINDS or sum(tally.counted for tally in behind) > FEW:
        return []
    found = [f"{page.names.remains(t, latin=False)} from {page.count(t.samples, 'sample', 'samples')}" for t in behind]
    meant = {(t.taxon, t.part, t.condition) for t in behind}
    of_phase = [c for c in page.dig.project.contexts if claim.about.level == "site" or c.phase == claim.about.id]
    held = [(c.id, page.dig.found(Subject(level="context", id=c.id))) for c in of_phase]
    places = [id for id, of in held if of and any((t.taxon, t.part, t.condition) in meant for t in of.tallies)]
    where = f" ({places_or_number(page, places)})" if page.subject.level != "context" and places else ""
    is_one = len(behind) == 1 and behind[0].counted == 1
    return page.say(
        [claim.id, *(t.ref for t in behind if t.ref)],
        f"all we have to show for it {'is' if is_one else 'are'} {page.listed(found)}{where}",
    )


KINDS, FEW = 2, 10
"""Kinds and number of finds up to which visitors read what a hint rests on (judgement of the makers)."""

LONG = 20
"""Words from which faint signs of foods and of other things are told to visitors in two sentences."""


def hints_told(page: Page, pieces: Sequence[str], alone: str = "") -> str:
    """'No more than hints, by the share of counts drawn anew …, are A (12 items, 79%) and B (72%)'; alone: of one."""
    if len(pieces) == 1 and alone:
        return alone
    listed = page.listed(pieces) if len(pieces) < 3 else f"{'; '.join(pieces[:-1])}; and {pieces[-1]}"
    return f"no more than hints, by the share of {DRAWS} that uphold each, are {listed}"


def _alone(page: Page, hints: Sequence[Reading], where: str = "") -> str:
    items = _items(page, hints[0])
    rests = f"it rests on {items}, and " if items else ""
    noun = noun_of(page, hints[:1])
    own = _by_itself(page, hints[0])
    where = " of the dig as a whole" if own and not where else where
    return (
        f"{noun} is no more than a hint{where}: {rests}{DRAWS} uphold it in {_share(hints[0])} of cases"
        f"{f', though {own}' if own else ''}"
    )


def _piece(page: Page, hint: Reading) -> str:
    own = _by_itself(page, hint)
    return f"{noun_of(page, [hint])} ({_basis(page, hint)}{f' for the dig as a whole; {own}' if own else ''})"


def _by_itself(page: Page, hint: Reading) -> str:
    """'C06 by itself bears it out': contexts that support what the dig as a whole only hints at."""
    if hint.claim.about.level != "site":
        return ""
    claims = [
        page.dig.claims.find(Subject(level="context", id=context.id), hint.claim.statement)
        for context in page.dig.project.contexts
    ]
    ids = [
        str(claim.about.id)
        for claim in claims
        if claim is not None and claim.verdict == "holds" and GRADE_NAMES.index(claim.grade) > _SUGGESTS
        and standing(claim) == "reading"
    ]  # fmt: skip
    if not ids:
        return ""
    does = english.agreed(len(ids), "by itself bears it out", "by themselves bear it out")
    return f"{ids_listed(page, ids, at_most=4)} {does}"


_SUGGESTS = GRADE_NAMES.index("suggests")


def _basis(page: Page, hint: Reading) -> str:
    """'two items, 64%'."""
    items = _items(page, hint)
    return f"{items + ', ' if items else ''}{_share(hint)}"


DRAWS = "counts drawn anew at random"


def _items(page: Page, hint: Reading) -> str:
    """'12 items' where few items are what makes it a hint, else nothing."""
    counted = sum(tally.counted for tally in hint.behind)
    return page.count(counted, "item", "items") if 0 < counted < POOR else ""


def _share(hint: Reading) -> str:
    return numbers.percent(hint.claim.stability or 0.0)


def hints_of_phases(page: Page, hints: Sequence[tuple[Phase, Claim]]) -> list[Sentence]:
    """Of the dig: what its phases only hint at, in the words that the phases themselves have for it."""
    sentences: list[Sentence] = []
    for statement in dict.fromkeys(claim.statement for _, claim in hints):
        alike = [(setting.phase_name(phase), claim) for phase, claim in hints if claim.statement == statement]
        refs = [claim.id for _, claim in alike]
        known = page.dig.packs.statements[statement]
        held = [Reading(claim=claim, statement=known, behind=_behind(page, claim)) for _, claim in alike]
        shares = [f"in {name} ({_basis(page, reading)})" for (name, _), reading in zip(alike, held, strict=True)]
        piece = f"{noun_of(page, held[:1])} {page.listed(shares)}"
        text = hints_told(page, [piece], _alone(page, held, f" in {alike[0][0]}") if len(held) == 1 else "")
        said = page.say(refs, text)
        page.draws += [Draw(sentence=sentence, pieces=(piece,), is_hint=True) for sentence in said]
        sentences += said
    return sentences


def _behind(page: Page, claim: Claim) -> tuple[Tally, ...]:
    found = page.dig.found(claim.about)
    tallies = [t for t in found.tallies if t.condition in page.dig.ancient] if found is not None else []
    return remains_behind(claim, page.dig.packs, tallies)
