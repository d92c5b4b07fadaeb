"""Phrases that share words at their head or tail, said with the shared words once."""

from __future__ import annotations

import re
from collections.abc import Sequence

from narrate.telling.english import _MAY_BEGIN_A_TAIL, _MAY_END_A_HEAD, listed


def gathered(phrases: Sequence[str], *, oxford: bool = True) -> str:
    """
    Phrases that share their beginning and end, told as one.

    >>> gathered(["the use of wood as fuel", "the use of maize cobs as fuel"])
    'the use of wood and maize cobs as fuel'
    >>> gathered(["burning in place", "the use of wood as fuel"])
    'burning in place and the use of wood as fuel'
    >>> gathered(["maize cobs were burned as fuel", "wood was burned as fuel"])
    'maize cobs were burned and wood was burned as fuel'
    """
    unique = list(dict.fromkeys(phrases))
    if len(unique) < 2:
        return "".join(unique)
    uses = _by_use(unique)
    if 1 < len(uses) < len(unique):
        return listed(gathered_apart(unique, oxford=oxford), oxford=oxford)
    words = [phrase.split() for phrase in unique]
    head = _shared(words)
    # A head must end, and a tail begin, where a list can stand: 'the use of …', '… as fuel'.
    while head and words[0][head - 1].lower() not in _MAY_END_A_HEAD:
        head -= 1
    tails = [list(reversed(w[head:])) for w in words]
    tail = _shared(tails)
    shortest = min(len(w) for w in words)
    tail = min(tail, shortest - head - 1)
    while tail and words[0][len(words[0]) - tail].lower() not in _MAY_BEGIN_A_TAIL:
        tail -= 1
    if not head and not tail:
        return listed(unique, oxford=oxford)
    middles = [" ".join(w[head : len(w) - tail]) for w in words]
    pieces = [" ".join(words[0][:head]), listed(middles, oxford=oxford), " ".join(words[0][len(words[0]) - tail :])]
    return " ".join(piece for piece in pieces if piece)


def gathered_apart(phrases: Sequence[str], *, oxford: bool = True) -> list[str]:
    """
    As `gathered`, but phrases that share nothing stay apart.

    >>> gathered_apart(["the use of maize as food", "burning in place", "the use of nuts as food"])
    ['the use of maize and nuts as food', 'burning in place']
    """
    unique = list(dict.fromkeys(phrases))
    groups = _by_use(unique)
    if len(groups) == len(unique):
        whole = gathered(unique, oxford=oxford)
        return [whole] if whole != listed(unique, oxford=oxford) else unique
    return [gathered(group, oxford=oxford) for group in groups]


def subjects_once(clauses: Sequence[str], *, oxford: bool = True) -> str:
    """
    Clauses of one subject joined, the subject said once.

    >>> subjects_once(["people used corn as food", "people had cleaned this seed"])
    'people used corn as food and had cleaned this seed'
    """
    if not clauses:
        return ""
    subject = clauses[0].split(" ", 1)[0]
    if len(clauses) > 1 and any(", " in clause or " and " in clause for clause in clauses):
        return ", and that ".join(clauses)
    short = [clauses[0], *(c.removeprefix(f"{subject} ") if subject == "people" else c for c in clauses[1:])]
    return listed(short, oxford=oxford)


def _by_use(phrases: Sequence[str]) -> list[list[str]]:
    """Phrases of the build 'the use of … as food' together, by what the use is; all others alone."""
    groups: dict[str, list[str]] = {}
    for phrase in phrases:
        words = phrase.split()
        is_use = words[:3] == ["the", "use", "of"] and len(words) > 5 and words[-2] == "as"
        groups.setdefault(" ".join(words[-2:]) if is_use else _long_head(words) or phrase, []).append(phrase)
    return list(groups.values())


def _long_head(words: Sequence[str]) -> str:
    """The beginning up to the last small word, if it is long enough to be worth sharing: 'the gathering of … in'."""
    ends = [i for i, word in enumerate(words[:-1]) if word in _MAY_END_A_HEAD]
    if season := _OF_A_SEASON.match(" ".join(words)):
        return season[0]
    return " ".join(words[: ends[-1] + 1]) if ends and ends[-1] >= 4 else ""


_OF_A_SEASON = re.compile(
    r"(?:use of a harvest of"
    r"|(?:the )?(?:repeated )?(?:(?:harvesting and )?gathering|harvesting)(?: of soft fruit)? in)(?= )"
)

_CHANGED = re.compile(r"^(.+) burned (more|less) widely than before$")


def changes_once(clauses: Sequence[str]) -> list[str]:
    """
    What changed, for visitors, with the comparison said once.

    >>> changes_once(["corn burned more widely than before", "nuts burned less widely than before"])
    ['corn burned more widely than before, and nuts less widely']
    """
    changed = [match for clause in clauses if (match := _CHANGED.match(clause))]
    if len(changed) < 2:
        return list(clauses)
    first, *rest = changed
    more = [f"{match[1]} {match[2]} widely" for match in rest]
    told = f"{first[0]}, {listed(more)}" if len(more) > 1 else f"{first[0]}, and {more[0]}"
    return [told, *(clause for clause in clauses if not _CHANGED.match(clause))]


def after(first: str, phrase: str) -> str:
    """
    A phrase in short after another of the same build.

    >>> after("the use of maize as food", "the use of nuts as food")
    'that of nuts'
    >>> after("the use of maize as food", "gathering in autumn")
    'gathering in autumn'
    """
    one, other = first.split(), phrase.split()
    if one[:3] == other[:3] == ["the", "use", "of"] and one[-2:] == other[-2:] and len(other) > 5:
        return f"that of {' '.join(other[3:-2])}"
    return phrase


def _shared(words: Sequence[Sequence[str]]) -> int:
    """How many words all sequences begin with; never a whole sequence."""
    shared = 0
    for column in zip(*(w[:-1] for w in words), strict=False):
        if len(set(column)) > 1:
            break
        shared += 1
    return shared
