"""The audience's frames around readings, and the phrases that fill them."""

from __future__ import annotations

import re
from collections.abc import Sequence

from narrate.telling import english, shared_words
from narrate.telling.foods import foods_told
from narrate.telling.harvest import in_word_of_season
from narrate.telling.page import Page, opening
from narrate.telling.plan import Reading
from narrate.telling.seasons_kept import is_of_fresh_alone


def frame(page: Page, group: Sequence[Reading], kind: str) -> str:
    """
    The audience's frame for the group's grade, filled; empty where the audience has none of that kind.

    kind: 'lead', 'which' (follows its reasons as a relative clause), 'so' (follows them in one sentence), 'this' (a new
          sentence after them) or 'also'.
    """
    chosen = _chosen(page, group[0].claim.grade, kind)
    if not chosen:
        return ""
    noun = noun_of(page, group, in_short=" is {noun}" not in chosen and not chosen.startswith("{noun}"))
    if len(_nouns(page, group)) > 1:
        chosen = chosen.replace(" is {noun}", " are {noun}")
    return chosen.replace("{noun}", noun).replace("{clause}", clause_of(page, group))


def framed(page: Page, grade: str, clause: str, kind: str = "lead") -> str:
    """A clause in the audience's frame for a grade; in one that opens a sentence where there is none of the kind."""
    chosen = _chosen(page, grade, kind) or _chosen(page, grade, "lead")
    return chosen.replace("{clause}", clause)


def _chosen(page: Page, grade: str, kind: str) -> str:
    """The frame of a kind whose opening is least worn on the page; empty where there is none."""
    frames = [text for text in page.audience.frames.get(grade, ()) if frame_kind(text) == kind]  # type: ignore[call-overload]
    if kind in ("lead", "also") and frames:
        start = (page.position + len(page.said)) % len(frames)
        frames = frames[start:] + frames[:start]
        # The opening least worn goes first, of those alike the one whose turn it is.
        before = opening(page.last)
        starts = {text: opening(english.finished(text)) for text in frames}
        frames.sort(key=lambda text: (starts[text] == before, page.openings[starts[text]]))
    return frames[0] if frames else ""


def frame_kind(text: str) -> str:
    """
    What a frame is for, by its first words.

    >>> [frame_kind(t) for t in ("which supports …", "this supports …", "so it …", "it also …", "the …")]
    ['which', 'this', 'so', 'also', 'lead']
    """
    first = text.split(" ", 1)[0]
    if first in ("which", "this", "so"):
        return first
    return "also" if "also " in text else "lead"


def noun_of(page: Page, group: Sequence[Reading], *, in_short: bool = False) -> str:
    """
    The readings as one noun phrase, foods by their plants.

    in_short: whether foods may drop 'the use of', once the page has said it in full. Never as a subject: 'nuts as
              food is' would need another verb.
    """
    nouns = _nouns(page, group, in_short=in_short)
    if len(nouns) == 2 and " as " in nouns[0]:
        # The comma keeps the second from being read as part of the first.
        return f"{nouns[0]}, and {nouns[1]}"
    return page.listed(nouns)


def _nouns(page: Page, group: Sequence[Reading], *, in_short: bool = False) -> list[str]:
    """The readings as noun phrases, those of one build told as one."""
    foods = [item for item in group if item.is_food]
    others = [item for item in group if not item.is_food]
    phrases = _of_seasons(page, others, [page.in_own_words(_noun(page, item)) for item in others])
    nouns = shared_words.gathered_apart(phrases, oxford=page.names.has_oxford)
    for ending in (" as food", " as fuel") if in_short else ():
        if page.has_told(ending):
            nouns = [text.removeprefix("the use of ") if text.endswith(ending) else text for text in nouns]
    if foods:
        wording = page.audience.words.get("food_noun", "the use of {plants} as food")
        if in_short and page.has_told(" as food"):
            wording = page.audience.words.get("food_noun_again", wording)
        nouns.insert(0, wording.replace("{plants}", foods_told(page, foods)))
    return nouns


def _of_seasons(page: Page, items: Sequence[Reading], phrases: Sequence[str]) -> list[str]:
    """The phrases, those of seasons with the word that their plants ask for."""
    seasons = [item.claim for item in items if item.claim.question == "season"]
    alone = [claim for claim in seasons if is_of_fresh_alone(page, claim)]
    kept = [claim for claim in seasons if claim not in alone]
    told = []
    for item, text in zip(items, phrases, strict=True):
        of = [item.claim] if item.claim in alone else kept if item.claim in kept else []
        told.append(in_word_of_season(page, text, of) if of else text)
    return told


def _noun(page: Page, item: Reading) -> str:
    return item.statement.plain_noun if page.is_plain else item.statement.noun


def that_clauses(page: Page, group: Sequence[Reading]) -> str:
    """The readings as clauses behind 'signs that', those of foods as one: '… used nuts as food, and that people …'."""
    foods = [item for item in group if item.is_food]
    texts = [clause_of(page, foods)] if foods else []
    others = [r for r in group if not r.is_food]
    plain = [in_word_of_season(page, page.in_own_words(r.statement.plain), [r.claim]) for r in others]
    return food_again(page, clauses_joined(page, texts + plain))


def food_again(page: Page, clause: str) -> str:
    """For visitors: 'corn served as food', where the page has said before that people used something as food."""
    wording = page.audience.words.get("food_clause_again", "")
    is_of_many = page.subject.level in ("phase", "site")
    if not wording or not page.is_plain or not is_of_many or not page.has_told(" as food"):
        return clause
    return re.sub(r"\bpeople used ([^()]+?) as food\b", lambda found: wording.replace("{plants}", found[1]), clause)


def clauses_joined(page: Page, texts: Sequence[str]) -> str:
    """Clauses behind 'signs that': 'people used nuts and fruit as food, and that people cracked nuts'."""
    used = [(text, match[1]) for text in texts if (match := _USED.match(text))]
    if len(used) > 1:
        together = f"people used {page.listed([plants for _, plants in used])} as food"
        texts = [together, *(text for text in texts if text not in [one for one, _ in used])]
    return ", and that ".join(texts)


_USED = re.compile(r"people used ([^()]+) as food$")


def _clause(page: Page, item: Reading) -> str:
    """The reading as a clause; 'this crop' by its name, where the reading rests on one plant above all."""
    if not page.is_plain:
        return item.statement.clause
    counted = sorted(item.behind, key=lambda tally: -tally.counted)[:1]
    if "this crop" not in item.statement.plain or not counted or counted[0].taxon is None:
        return item.statement.plain
    # Its seeds may be of several tallies; what lay between them is no crop.
    of_it = sum(tally.counted for tally in item.behind if tally.taxon == counted[0].taxon)
    is_chief = of_it * 2 > sum(tally.counted for tally in item.behind)
    name = page.names.food(counted[0].taxon, counted[0].written)
    return item.statement.plain.replace("this crop", f"the {name}") if is_chief else item.statement.plain


def clause_of(page: Page, group: Sequence[Reading]) -> str:
    """The readings as one clause, foods by their plants."""
    foods = [item for item in group if item.is_food]
    others = [item for item in group if not item.is_food]
    phrases = [page.in_own_words(_clause(page, item)) for item in others]
    phrases = shared_words.changes_once(_of_seasons(page, others, phrases))
    gathered = [shared_words.gathered(phrases, oxford=page.names.has_oxford)] if phrases else []
    # 'People lived beside dug or cleared ground, and picked fruit': who did it is said once.
    gathered = [re.sub(r"[;,]? and people ", ", and ", text) for text in gathered]
    if foods:
        wording = page.audience.words.get("food_clause", "{plants} were used as food")
        if page.subject.level in ("phase", "site") and page.has_told(" as food"):
            wording = page.audience.words.get("food_clause_again", wording)
        gathered.insert(0, wording.replace("{plants}", foods_told(page, foods)))
    return shared_words.subjects_once(gathered, oxford=page.names.has_oxford)
