"""What a text of a sheet says of numbers in brackets: 'numbers in parentheses are uncharred', 'charred (uncharred)'."""

# ruff: noqa: E501

from __future__ import annotations

import re

from narrate.reading.intake.remarks import conditions_at, telling

# Common practice, no source: the word for brackets, and words that put what is in them among what stands before them.
BRACKETS = (
    r"(?:brackets?|bracketed|parenthes[ei]s|parenthesi[sz]ed|klammern?|eingeklammerte?|parenthèses?|paréntesis|parentesi|parênteses|haakjes|nawias\w*|parentes|parantes"
    r"|závork\w*|括弧|カッコ|括号|\(\s*\)内?)"
)
_OF_WHICH = re.compile(
    r"of which|of these|of them|thereof|included in|davon|dont\b|de los cuales|di cui|waarvan|dos quais|w tym\b", re.IGNORECASE
)
_SHOWN = re.compile(r"[(\[]\s*(?:n|no\.?|x|#|\d{1,3}|\.{2,3}|…)?\s*[)\]]\s*(?:=|:|[-–—]|are|is|means?|sind|bedeutet|sont|son|sono|zijn|to)\s*", re.IGNORECASE)
"""'(n) = uncharred', '( ): modern'."""
_MODERN = re.compile(r"\b(?:modern[aeio]?s?|recent[eis]*|intrusive|rezent[e]?|récents?|récentes?|recientes?|recenti|współczesn\w*)\b", re.IGNORECASE)

_DOUBT = re.compile(
    r"\bcf\b|\b(?:uncertain|tentative|doubtful|possible|probable)\b|\b(?:unsicher|fraglich|incertain|douteu|insegur|inciert|dudos|incert|dubbi|onzeker|niepewn)\w*",
    re.IGNORECASE,
)


def brackets_said(text: str) -> str:
    """
    The condition of what stands in brackets behind a count, 'of which' before it where it is among that, or 'in doubt'.

    >>> brackets_said("Counts are of charred items; numbers in parentheses are uncharred and considered modern")
    'uncharred'
    >>> brackets_said("Charred remains, with uncharred seeds in brackets"), brackets_said("n: verkohlt (unverkohlt)")
    ('uncharred', 'uncharred')
    >>> brackets_said("In brackets: of which mineralised"), brackets_said("Fragments in brackets"), brackets_said("(n) = modern")
    ('of which mineralised', '', 'uncharred')
    >>> brackets_said("Numbers in brackets are cf. identifications"), brackets_said("(n) = weights")
    ('in doubt', '')
    """
    for clause in re.split(r"[.;\n]\s+|[;\n]", text):
        found = _in_clause(clause)
        if found:
            return f"of which {found}" if _OF_WHICH.search(clause) else found
        if re.search(BRACKETS, clause, re.IGNORECASE) and _DOUBT.search(clause):
            return "in doubt"
    return ""


def without_brackets_said(text: str) -> str:
    """
    A text without what it says of numbers in brackets, which holds for those alone.

    >>> without_brackets_said("Restos por contexto; entre paréntesis: restos no carbonizados").strip()
    'Restos por contexto'
    """
    clauses = re.split(r"(?<=[.;\n])\s+|(?<=[;\n])", text)
    return " ".join(one for one in clauses if not brackets_said(one) or _named(_before_brackets(one))).rstrip(" ;")


def _before_brackets(clause: str) -> str:
    """What stands before the words on brackets, where that is a piece of its own: 'Charred remains, uncharred in …'."""
    word = re.search(BRACKETS, clause, re.IGNORECASE)
    start = word.start() if word is not None else 0
    return clause[: max(clause.rfind(",", 0, start), clause.rfind("(", 0, start), 0)]


def _in_clause(clause: str) -> str:
    word = re.search(BRACKETS, clause, re.IGNORECASE)
    shown = _SHOWN.search(clause)
    if word is None and shown is None:
        return _side_by_side(clause)
    start, end = (word.start(), word.end()) if word is not None else (shown.start(), shown.end())  # type: ignore[union-attr]
    before = max(clause.rfind(",", 0, start), clause.rfind("(", 0, start)) + 1
    behind = min((n for n in (clause.find(",", end), clause.find(")", end), len(clause)) if n >= 0), default=len(clause))
    after = _named(clause[end:behind])
    if after or word is None:
        return after[0] if after else ""
    named = _named(clause[before:start])
    return named[-1] if named else ""


def _named(text: str) -> list[str]:
    """The conditions that a text names, in its order; what is modern is uncharred."""
    found = [(at, condition) for at, condition in conditions_at(text)]
    found += [(match.start(), "uncharred") for match in _MODERN.finditer(text)]
    return [condition for _, condition in sorted(found)]


def _side_by_side(clause: str) -> str:
    """'charred (uncharred)': the two conditions of two numbers that are written so."""
    for match in re.finditer(r"[(\[]([^()\[\]]{3,24})[)\]]", clause):
        inside, before = conditions_at(match[1]), conditions_at(clause[max(0, match.start() - 24) : match.start()])
        words = re.findall(r"[^\W\d_]+", match[1])
        if inside and before and len(telling([before[-1][1], inside[0][1]])) == 1:
            continue  # 'uncharred (waterlogged)': what has kept them, and no second number
        if len(inside) == 1 and before and len(words) <= 2 and before[-1][1] != inside[0][1]:
            ends = clause[: match.start()].rstrip()
            last = conditions_at(ends.split()[-1]) if ends else []
            if last:
                return inside[0][1]
    return ""
