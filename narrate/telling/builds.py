"""How a reading and its reasons are built into one sentence or two: because, which, this, also."""

from __future__ import annotations

import re
from collections.abc import Sequence

from narrate.model.narrative import Sentence
from narrate.telling import english
from narrate.telling.citations import cited
from narrate.telling.frames import frame
from narrate.telling.page import Page
from narrate.telling.plan import Reading


def led(page: Page, items: Sequence[Reading], reasons: Sequence[str]) -> list[Sentence]:
    refs = [item.claim.id for item in items]
    builds = [_because, _which, _this] if not page.is_plain else [_so, _clause_because, _this, _clause_then_reason]
    turn = (page.position + len(page.said)) % len(builds)
    for build in builds[turn:] + builds[:turn]:
        texts = build(page, items, reasons)
        if texts and not any(page.worn(text) for text in texts):
            break
    else:
        texts = _because(page, items, reasons) or _clause_then_reason(page, items, reasons)
    behind = cited(page, items, reasons)
    texts = [*texts[:-1], english.in_last_brackets(texts[-1], behind)]
    return [sentence for text in texts for sentence in page.say(refs, text)]


def added(page: Page, items: Sequence[Reading], reasons: Sequence[str]) -> list[Sentence]:
    """Readings that follow others, with their reasons."""
    refs = [item.claim.id for item in items]
    also = frame(page, items, "also") or frame(page, items, "lead")
    if not also:
        return []
    if not reasons:
        return page.say(refs, also)
    joined = samples_once(english.clauses_joined(reasons, oxford=page.names.has_oxford))
    if page.is_plain:
        is_turn = (page.position + len(page.said)) % 3 == 2 and ", so " not in page.last
        so = _so(page, items, reasons) if is_turn else []
        if so and not page.worn(so[0]):
            return page.say(refs, so[0])
        because = f"{also}, because {named_once(also, ripe_then(also, joined))}"
        is_short = len(because.split()) <= LONG
        if page.worn(joined) or (is_short and (page.position + len(page.said)) % 2):
            return page.say(refs, because)
        return page.say(refs, also) + page.say(refs, joined)
    joined = english.in_last_brackets(joined, cited(page, items, reasons))
    texts = [f"{also}, since {joined}", f"{also}: {joined}"]
    if not also.endswith((" as food", " as fuel")):
        texts.append(f"{also}, as {joined}")
    return page.say(refs, *map(_season_once, texts))


def samples_once(text: str) -> str:
    """
    Two reasons in samples of one number, with the number once.

    >>> samples_once("nutshell was in 22 of 23 samples and maygrass was in 22 of 23 samples")
    'nutshell and maygrass were each in 22 of 23 samples'
    >>> samples_once("kernels were in 20 of 27 samples and nutshell was in 23 of 27 samples")
    'kernels were in 20 and nutshell in 23 of 27 samples'
    """
    text = _EACH.sub(r"\1 and \3 were each in \2", text)
    return _OF_ONE_NUMBER.sub(r"\1 \2 in \3 and \5 in \6 of \4 samples", text)


_EACH = re.compile(r"\b([\w ]+) (?:was|were) in (\d+ of \d+ samples) and ([\w ]+) (?:was|were) in \2")
_OF_ONE_NUMBER = re.compile(
    r"\b([\w ]+) (was|were) in (\d+) of (\d+) samples and ([\w ]+) (?:was|were) in (\d+) of \4 samples"
)


def _season_once(text: str) -> str:
    """
    A reading of a season whose reason names the same season: 'then' the second time.

    >>> _season_once("also consistent is gathering in autumn: maize and amaranth ripen in autumn")
    'also consistent is gathering in autumn: maize and amaranth ripen then'
    >>> _season_once("maize and amaranth ripen in autumn; this is consistent with use of a harvest of autumn")
    'maize and amaranth ripen in autumn; this is consistent with use of a harvest of that season'
    >>> _season_once("soft fruit of autumn was charred; this suggests the gathering of soft fruit in autumn")
    'soft fruit of autumn was charred; this suggests its gathering in autumn'
    """
    text = _FRUIT_TWICE.sub(r"\1its gathering in", text)
    if len(set(re.findall(_SEASON, text))) > 1:
        return text  # of two seasons 'then' names neither
    before = _GATHERING.search(text)
    if before is not None:
        ripe = rf"\b(ripens?) in {before[1]}\b"
        return text[: before.end()] + re.sub(ripe, r"\1 then", text[before.end() :])
    return _RIPE_BEFORE.sub(r"\1\3 that season", text)


_SEASON = r"(autumn|late summer|early summer)"
_WORK = r"(?:(?:harvesting and )?gathering|harvesting)(?: of soft fruit)? in|use of a harvest of"
_GATHERING = re.compile(rf"\b(?:{_WORK}) {_SEASON}(?=:|, (?:as|since|because)\b)")
_RIPE_BEFORE = re.compile(rf"(\bripens? in {_SEASON}[;,].*?)({_WORK}) \2$")
_FRUIT_TWICE = re.compile(r"(\bsoft fruit\b[^;]*; this [\w ]+ )the gathering of soft fruit in\b", re.IGNORECASE)


def ripe_then(lead: str, reason: str) -> str:
    """
    The reason of a reading for visitors that names the season already named.

    >>> lead = "people gathered plants that ripen in autumn"
    >>> ripe_then(lead, "we found grapes and plums, which ripen towards autumn")
    'we found grapes and plums, which ripen then'
    >>> ripe_then(lead, "we found plants that ripen in autumn, such as figs, often")
    'we found such plants, figs among them, often'
    """
    season = _RIPE_PLANTS.search(lead)
    if season is None:
        return reason
    reason = re.sub(rf"\bplants that ripen in {season[1]}, such as ([^,]+),", r"such plants, \1 among them,", reason)
    return re.sub(rf"\bripen (?:in|towards) {season[1]}$", "ripen then", reason)


def named_once(lead: str, reason: str) -> str:
    """
    The reason of a reading for visitors, what the reading has named already told as 'they'.

    >>> named_once("it looks as if small-seeded crops served as food", "small-seeded crops turned up in most samples")
    'they turned up in most samples'
    """
    match = re.match(r"([a-z-]+(?: [a-z-]+)?s) (turned up|lay)\b", reason)
    # Only what the reading is said of: 'people burned shells, because they lay there' would be the people.
    is_subject = match is not None and re.search(rf"\b(?:that|if|tell,) {match[1]}\b", lead)
    return f"they {reason[match.start(2):]}" if match is not None and is_subject else reason


def _of_that_season(reason: str, after: str) -> str:
    """
    A reading for visitors behind a reason that has named its season.

    >>> _of_that_season("we found plums, which ripen in autumn", "people gathered plants that ripen in autumn")
    'people gathered plants of that season'
    """
    season = _RIPE_PLANTS.search(after)
    is_named = season is not None and re.search(rf"\bripens? (?:in|towards) {season[1]}", reason)
    return _RIPE_PLANTS.sub("plants of that season", after) if is_named else after


_RIPE_PLANTS = re.compile(rf"\bplants that ripen in {_SEASON}")


def _because(page: Page, group: Sequence[Reading], reasons: Sequence[str]) -> list[str]:
    lead = frame(page, group, "lead")
    if not lead:
        return []
    if not reasons:
        return [lead]
    joined = samples_once(english.clauses_joined(reasons, oxford=page.names.has_oxford))
    joined = ripe_then(lead, joined) if page.is_plain else joined
    because = f"{lead}, because {joined}"
    return [because if page.is_plain else _season_once(because)]


def _which(page: Page, group: Sequence[Reading], reasons: Sequence[str]) -> list[str]:
    relative = frame(page, group, "which")
    # After a comma of the reason's own, 'which' would seem to point at its last words.
    if not relative or not reasons or any("," in reason for reason in reasons):
        return []
    return [_season_once(f"{samples_once(english.clauses_joined(reasons, oxford=page.names.has_oxford))}, {relative}")]


def _this(page: Page, group: Sequence[Reading], reasons: Sequence[str]) -> list[str]:
    after = frame(page, group, "this")
    if not after or not reasons:
        return []
    if page.is_plain:
        return [*reasons[:1], _of_that_season(reasons[0], after)]
    return [_season_once(f"{samples_once(english.clauses_joined(reasons, oxford=page.names.has_oxford))}; {after}")]


def _so(page: Page, group: Sequence[Reading], reasons: Sequence[str]) -> list[str]:
    """'nutshells turned up in most of the samples, so it looks as if people used nuts as food'."""
    after = frame(page, group, "so")
    if not after or len(reasons) != 1 or ", so " in page.last or len(reasons[0].split()) > SHORT or "," in reasons[0]:
        return []
    text = f"{reasons[0]}, {_of_that_season(reasons[0], after)}"
    return [text] if len(text.split()) <= LONG else []


SHORT, LONG = 15, 28
"""Words of a reason behind which the reading still finds room in one sentence for visitors, and of such a sentence."""


def _clause_then_reason(page: Page, group: Sequence[Reading], reasons: Sequence[str]) -> list[str]:
    lead = frame(page, group, "lead")
    return [lead, *reasons[:1]] if lead else []


def _clause_because(page: Page, group: Sequence[Reading], reasons: Sequence[str]) -> list[str]:
    lead = frame(page, group, "lead")
    if not lead or not reasons:
        return []
    # 'As far as we can tell' is no reason's other half.
    because = ": " if lead.startswith(_BY_ITSELF) else ", because "
    text = f"{lead}{because}{named_once(lead, ripe_then(lead, reasons[0]))}"
    return [text] if len(text.split()) <= LONG else []


_BY_ITSELF = "as far as we can tell"
