"""Reasons for readings: which are given, in whose words, and how a place named before is referred back to."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from narrate.model.claims import Argument, Evidence
from narrate.model.ids import Subject
from narrate.telling import english, manner
from narrate.telling.behind import doubtful_left_out, remains_counted
from narrate.telling.cob_parts import cob_parts_told
from narrate.telling.foods import (
    chief_fruit,
    chief_of_months,
    chief_of_season,
    kinds_told,
    names_of_food,
    plants_of_two_seasons,
    plants_that_ripen,
)
from narrate.telling.how_widely import widely_told
from narrate.telling.intrusions import intrusions_named
from narrate.telling.like_sizes import held_like_with_like
from narrate.telling.noted_among import structure_among
from narrate.telling.own_place import of_its_place
from narrate.telling.page import Page
from narrate.telling.plan import Reading
from narrate.telling.same_event import is_event_told
from narrate.telling.spread import out_of_text, samples_of_phase

_PLACE = re.compile(r" in (?:a|the) (?:feature|place|pit) (?:made for|of) [a-z]+(?= |,|\)|$)")
_FIGURES = re.compile(r" ?\([^()]*\d[^()]*\)")
_ONLY_RIPE = re.compile(r"^(?:we found )?\w+ plants that ripen in (\w+(?: summer)?)(?: lie together)?$")

_FRUIT_RIPE = re.compile(r"^(?:we found )?seeds of fruit that ripens ((?:in|towards) \w+(?: summer)?)(?: were found)?$")
_RIPE_OVER_ALL = re.compile(
    r"(?:plants|fruit) (?:of|that ripens? in) (early summer|late summer|autumn)"
    r"(?= (?:were|was) in | turned up | nearly | in (?:all|nearly all|most|many|several|a few) of )"
)
_FRUIT_CHARRED = re.compile(
    r"^soft fruit that ripens (?:in|between) [a-z]+(?: summer| and [a-z]+)?(?= was charred)", re.IGNORECASE
)
_OF_OPEN_GROUND = re.compile(r"^\w+ (?:ruderal plants|plants of open, disturbed ground)(?= were charred)")
_NAMED = re.compile(r", (?:namely|chiefly|most widely|such as|among it) (?:(?:[^,()]+, )+and )?[^,()]+,(?= )")
_BEFORE_AUGUST = re.compile(r"^plants ripe before August \(")
_TWO_SEASONS = re.compile(r"^plants of early summer and of autumn lay together$")
"""Reasons for visitors in which plants may be named; a text of the packs that changes is told as it is."""

_SHELL = ("nutshell", "acorn shell")
"""Where more nuts are known by their shell, the meats of one of them are no first reason for all."""

_BY_RECORD = re.compile(r"^the record calls the (?:context|deposit) \w+(?:, and |$)")
"""What the record says is told as such, where the deposit is described, and is no reason for itself."""

_OF_THE_WHOLE = re.compile(
    r"\b(remains(?: are dense| are sparse| are thinly spread)?|than the usual scatter) "
    r"\(\d[\d.,]* items(?: per litre)?\)"
)
"""Number or density of all remains: the opening gives them, and a rule may count wood or names where that does not."""

_ALL = re.compile(r"\b(\w+) of \1 samples\b")
"""'Three of three samples': all three."""

_THOUSANDS = re.compile(r"(?<=\d),(?=\d{3}\b)")
"""The mark that judging sets into the figures of a reason, whatever the project chose."""

Portion = tuple[list[Reading], list[str]]
"""Readings told in one sentence, and the reasons told with them."""


def portions(page: Page, group: Sequence[Reading], *, at_most: int) -> list[Portion]:
    """
    Readings parted so that one sentence never lends a reading the reason of another.

    In each portion every reading has a reason of its own among those told, or all stand without any: readings whose
    reasons were given on the page before. at_most: reasons of one sentence.
    """
    # Foods come first where readings are put into one phrase, and so do their reasons.
    ordered = sorted(group, key=lambda item: not item.is_food)
    queues = [(item, [t for t in reason_texts(page, item) if not _is_told(page, t)]) for item in ordered]
    parts: list[Portion] = []
    bare = [item for item, queue in queues if not queue]
    for item, queue in ((item, queue) for item, queue in queues if queue):
        home = next((part for part in parts if any(text in part[1] for text in queue)), None)
        is_room = bool(parts) and len(parts[-1][1]) < at_most and _is_short([*parts[-1][1], queue[0]])
        if home is None and is_room and _belongs_with(item, parts[-1][0][0]):
            home = parts[-1]
        if home is None:
            home = ([], [])
            parts.append(home)
        home[0].append(item)
        if not any(text in home[1] for text in queue):
            home[1].append(queue[0])
    for items, reasons in parts:
        if len(items) == 1 and at_most > 1:
            queue = next(queue for item, queue in queues if item is items[0])
            longer = [queue[0], *(text for text in queue[1:] if not _are_twins(queue[0], text))][:2]
            if items[0].claim.grade == "strongly supports":
                # That grade needs two arguments, so both are told, the second without what explains it.
                longer = [*longer[:1], *(text.split(", where ")[0] for text in longer[1:])]
            reasons[:] = longer if _is_short(longer) and ", " not in "".join(longer) else reasons
    if bare:
        parts.append((bare, []))
    page.reasons_told.update(without_figures(text) for _, reasons in parts for text in reasons)
    return [(items, _referring_back(page, reasons)) for items, reasons in parts]


def _belongs_with(item: Reading, other: Reading) -> bool:
    """Whether two readings of unlike reasons go into one sentence: foods with foods, seasons with seasons."""
    return (
        item.is_food == other.is_food
        and item.claim.question == other.claim.question
        and (item.is_food or item.claim.question == "season")
    )


def reasons_for(page: Page, item: Reading, *, most: int) -> list[str]:
    """Reasons for one reading that the page has not given yet, the heaviest first."""
    chosen = [text for text in reason_texts(page, item) if not _is_told(page, text)][:most]
    if len(chosen) > 1 and (", " in "".join(chosen) or not _is_short(chosen) or _are_twins(*chosen[:2])):
        chosen = chosen[:1]
    page.reasons_told.update(without_figures(text) for text in chosen)
    return _referring_back(page, chosen)


def reason_texts(page: Page, item: Reading) -> list[str]:
    """What speaks for a reading in the audience's words, the heaviest first; plants of a season by their names."""
    texts, of_some_plants = [], []
    for argument in item.claim.held("for"):
        text = structure_among(page, argument, held_like_with_like(page, argument, page_text(page, argument)))
        text = _BY_RECORD.sub("", text)
        if not text:
            continue
        match, fruit = _ONLY_RIPE.match(text), _FRUIT_RIPE.match(text)
        counted = _of_what_it_counted(page, item, argument)
        named = plants_that_ripen(page, counted, f"in {match[1]}") if match else ""
        if fruit and page.is_plain:
            named = plants_that_ripen(page, counted, fruit[1], tag="fruit")
        if _TWO_SEASONS.match(text) and page.is_plain:
            named = plants_of_two_seasons(page, counted)
        if _BEFORE_AUGUST.match(text) and not page.is_plain:
            named = _by_their_chief(page, counted, text)
        if _is_of_meats(page, argument):
            meats = [t for t in item.behind if t.part == "nutmeat"]
            text = text.replace("nutmeats", f"nutmeats of {page.listed(names_of_food(page, meats))}", 1)
            if {t.taxon for t in item.behind if t.part in _SHELL} - {t.taxon for t in meats}:
                of_some_plants.append(text)
                continue
        texts.append(named or _without_doubtful(page, argument, _with_the_chief(page, counted, text)))
    return list(dict.fromkeys([*texts[:1], *of_some_plants, *texts[1:]]))


def _without_doubtful(page: Page, argument: Argument, text: str) -> str:
    """'beans were charred (11 seeds or halves; three named cf. are left out)', where the finds list all of them."""
    tallies = [t for t in page.found.tallies if t.condition in page.dig.ancient]
    number = doubtful_left_out(argument, page.dig.packs, tallies) if page.audience.shows_figures else 0
    if not number:
        return text
    are = english.agreed(number, "is", "are")
    return _IN_BRACKETS.sub(rf"(\1; {page.count(number)} named cf. {are} left out)", text, count=1)


_IN_BRACKETS = re.compile(r"\((\d[^()]*)\)")


def _of_what_it_counted(page: Page, item: Reading, argument: Argument) -> Reading:
    """The reading with the remains that one argument counted, so that no plant is named which is not in its figure."""
    counted = remains_counted(argument, page.dig.packs, item.behind)
    return replace(item, behind=counted) if counted else item


def _is_of_meats(page: Page, argument: Argument) -> bool:
    rule = page.dig.packs.rules.get(argument.rule)
    return rule is not None and rule.evidence == "nutmeats"


def _by_their_chief(page: Page, item: Reading, text: str) -> str:
    """'plants ripe before August (35 items, chiefly maygrass)': each half by the plants that are most of it."""
    early, late = (chief_of_months(page, item, months) for months in (range(1, 8), range(8, 13)))
    text = re.sub(r"(before August \([\d,\u202f]+ items)\)", rf"\1, chiefly {early})", text) if early else text
    return re.sub(r"(from August on \([\d,\u202f]+)\)", rf"\1, chiefly {late})", text) if late else text


def _with_the_chief(page: Page, item: Reading, text: str) -> str:
    """'plants of early summer, chiefly maygrass, were in 21 of 51 samples': one or two plants by name."""
    match = _RIPE_OVER_ALL.search(text)
    plants, stand = chief_of_season(page, item, match[1]) if match else ("", "chiefly")
    if match is None and (match := _FRUIT_CHARRED.match(text)):
        plants, stand = chief_fruit(page, item)
    if match is None and not page.is_plain and (match := _OF_OPEN_GROUND.match(text)):
        stand, plants = kinds_told(page, item)
    if match is None or not plants:
        return text
    such_as = "such as" if page.is_plain and stand != "namely" else stand
    return f"{text[: match.end()]}, {such_as} {plants},{text[match.end() :]}"


def is_reason_of(page: Page, argument: Argument, reasons: Sequence[str]) -> bool:
    """Whether an argument is among the reasons told, be a place in it told as 'there' or not."""
    text = without_figures(_BY_RECORD.sub("", page_text(page, argument)))
    told = {_PLACE.sub(" there", without_figures(_NAMED.sub("", reason))) for reason in reasons}
    return bool(text) and bool({_PLACE.sub(" there", told_as) for told_as in (text, text.split(", where ")[0])} & told)


def _is_told(page: Page, text: str) -> bool:
    return without_figures(text) in page.reasons_told or is_event_told(page, text)


TWINS = 2
"""Words by which two reasons may differ that say the same."""


def _are_twins(one: str, other: str) -> bool:
    """
    Whether two reasons say the same, one perhaps with a word or two more.

    >>> _are_twins("grain in quantity (79 items) lay in a fill", "grain (79 items) lay in a fill")
    True
    """
    first, second = (set(re.findall(r"[a-z]+", without_figures(text).lower())) for text in (one, other))
    return len(first & second) > TWINS and len(first ^ second) <= TWINS


def _is_short(reasons: Sequence[str]) -> bool:
    return sum(len(reason.split()) for reason in reasons) <= 30


def _referring_back(page: Page, reasons: Sequence[str]) -> list[str]:
    """Reasons in which a place named before is 'there': 'wood charcoal lay in a feature made for fire'."""
    short: list[str] = []
    for reason in (cob_parts_told(page, reason) for reason in reasons):
        match = _PLACE.search(reason)
        before = match is not None and any(match[0] in text for text in (*page.here, *short))
        short.append(reason[: match.start()] + " there" + reason[match.end() :] if match and before else reason)
    return short


def page_text(page: Page, argument: Argument, *, contexts: Sequence[str] = ()) -> str:
    """What an argument saw, in the audience's words; contexts: those it is of, where a page is of several."""
    text = widely_told(argument.says_plain, argument.evidence) if page.is_plain else argument.says
    text = english.lowered((text or argument.says).strip().rstrip("."))
    text = text if page.is_plain else _with_pieces(intrusions_named(page, argument) or text, argument.evidence)
    text = _OF_THE_WHOLE.sub(r"\1", re.sub(r"\s%", "%", text))
    text = of_its_place(page, _of_each_phase(page, text), contexts)
    text = _ALL.sub(r"all \1 samples", english.small_numbers_in_words(text))
    text = _THOUSANDS.sub(manner.thousands(page.audience), text)
    text = page.in_own_words(text)
    return text if page.audience.shows_figures else _FIGURES.sub("", text)


def _with_pieces(text: str, evidence: Sequence[Evidence]) -> str:
    """'(273, of them 153 pieces, to 17)' for '(273 to 17)' where most of the first are pieces, and so no like units."""
    for entry in evidence:
        if entry.pieces and entry.of is not None and entry.to is not None:
            of, to = f"{round(entry.of):,}", f"{round(entry.to):,}"
            pair = re.compile(rf"(?<![\w,.])({of}(?: [a-z]+)?) to ({to})(?![\w,.]\d)")
            if pair.search(text):
                return pair.sub(rf"\1, of them {entry.pieces:,} pieces, to \2", text, count=1)
    return text


def _of_each_phase(page: Page, text: str) -> str:
    """'pine wood was in 6 of 23 samples of the first phase and in 21 of 27 of the last' for a share that changed."""
    match = _SHARES.search(text)
    if match is None:
        return text
    in_time = sorted(page.dig.project.phases, key=lambda phase: (phase.start is None, phase.start or 0))
    sizes = [n for phase in in_time if (n := len(samples_of_phase(page.dig, phase.id)))]
    found = [page.dig.findings.subjects.get(Subject(level="phase", id=phase.id)) for phase in in_time]
    of_wood = [each.samples_with_named_wood or 0 for each in found if each is not None]
    of_wood = [number for number in of_wood if number]
    a, b, both = (int(match[name].replace(",", "")) for name in ("first", "last", "all"))
    looked = ""
    if len(of_wood) > 1 and sum(of_wood[:: len(of_wood) - 1]) == both and text.startswith(_OF_WOOD):
        sizes, looked = of_wood, " whose wood was looked at"
    if len(sizes) < 2 or sizes[0] + sizes[-1] != both or a > sizes[0] or b > sizes[-1]:
        return text
    was = "was" if match["was"] == "is" else "were"
    first, last = out_of_text(a, sizes[0]), out_of_text(b, sizes[-1])
    of_the_first = f"samples{looked} in the first phase" if looked else "samples of the first phase"
    told = f"{was} in {first} {of_the_first} and in {last} {'in' if looked else 'of'} the last"
    return text[: match.start()] + told + text[match.end() :]


_OF_WOOD = ("pine wood",)
"""Subjects of reasons whose share is of the samples whose wood was looked at."""

_SHARES = re.compile(
    r"(?P<was>is|are) in a (?:larger|smaller) share of the samples of the last phase than of the first "
    r"\((?P<first>[\w,]+) samples of the first, (?P<last>[\w,]+) of the last, "
    r"out of (?P<all>[\d,]+) in the two phases together\)"
)


def without_figures(text: str) -> str:
    """A reason without the figures it has in brackets, to tell whether it was given before."""
    return _FIGURES.sub("", text)
