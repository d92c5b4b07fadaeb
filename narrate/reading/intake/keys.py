"""The key of signs that a sheet itself gives: '+ = 1-5, ++ = 6-20', 'x: present', '- absent'."""

# ruff: noqa: E501

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import lru_cache
from typing import NamedTuple

from narrate.model.grids import Grid
from narrate.model.layouts import Marks
from narrate.reading.intake.brackets_said import BRACKETS, brackets_said
from narrate.reading.intake.pending import says_pending
from narrate.reading.intake.uncounted import narrow, says_uncounted

_MORE = r"more than|over|mehr als|über|plus de|más de|mas de|più di|meer dan|mais de|mere end|mer än|powyżej|ponad|więcej niż|oltre|superiore a|au[- ]dessus de|supérieur à|plus que|superior a|por encima de|acima de|boven"
_LESS = r"less than|fewer than|under|weniger als|unter|moins de|menos de|meno di|minder dan|mindre end|färre än|poniżej|mniej niż|sotto|inferiore a|au[- ]dessous de|inférieur à|inferior a|por debajo de|abaixo de|onder"
_OPEN_BEHIND = re.compile(
    rf"\(\s*(?:(?P<more>{_MORE})|(?P<less>{_LESS}))\s*(?P<number>\d+)"
    r"(?: ?(?:items?|specimens?|remains|seeds?|pieces?|stk|stück|reste|restes|restos|resti|resten|ex))?\.?\s*\)",
    re.IGNORECASE,
)
"""An open class in brackets behind its word: '(over 25)', and no '(over 2 mm)'."""
_UP_TO = r"up to|bis(?: zu)?|jusqu['’]? ?à|hasta|fino a|tot(?: en met)?|até|op til|upp till|do"
_ENTRY = re.compile(
    r"(?<![\w+])(?P<sign>\++|\*{1,5}|#{1,5}|x{1,5}|X{1,5}|[•●○◦■□▪▫◆◇★☆✔√]{1,5}|[-–—?]|\b(?:VA|VR|VF|[A-Za-z])(?:\*|\+|\b)|\b[nu]\.?[/ ]?[a-z]\b\.?(?=\s*[=:])|(?<!\S)\.(?=\s*=)|(?<![-.\d])(?:-?9{2,4}|-1)(?=\s*=))\s*(?:=|:|\s[-–]\s|\bis\b|\bmeans\b)\s*"
    rf"(?P<meaning>(?:{_MORE}|{_LESS}|{_UP_TO})\s*\d+|"
    r"(?:[<>≤≥]\s*)?\d+\s*(?:[-–]|to)\s*\d+|[<>≤≥]=?\s*\d+|\d+\s*\+|\d+|(?![A-Z])[^\W\d_](?:[^\W\d_]|[ /-])*)\s*(?P<more>\((?:[^()]*)\))?",
)
_PLAIN_ENTRY = re.compile(
    r"(?:^|[;,:.]\s*|key:?\s+)(?P<sign>\++|\*{1,5}|#{1,5}|x{1,5}|[-–—])\s+"
    rf"(?P<meaning>(?:{_MORE}|{_LESS}|{_UP_TO})\s*\d+|[<>]\s*\d+|\d+\s*(?:[-–]|to)\s*\d+|absent|present|rare|occasional|common|frequent|abundant|few|some|many|moderate|very [a-z]+)\s*(?P<more>\((?:[^()]*)\))?",
    re.IGNORECASE,
)
"""'+ rare (1-5); ++ common': a sign and its word without a sign between them."""
_PLAIN_ABROAD = re.compile(
    r"(?:^|[;,:.]\s*)(?P<sign>\++|\*{1,5}|#{1,5}|x{1,5})\s+(?P<meaning>[^\W\d_]{2,}(?: [^\W\d_]+)?)(?=\s*(?:[;,.(]|$))", re.IGNORECASE
)
"""The same in other languages: '+ nieliczne, ++ liczne'."""
_EAST_ASIAN = re.compile(
    r"(?P<sign>\++|\*{1,5}|[○◎●△]{1,3}|(?<![x×])[x×]{1,5})\s*(?:は|が|为|為|表示|[=:…-])\s*(?P<meaning>\d+\s*[-–—~〜～]\s*\d+|[<>≥≤]?\d+\+?|[\u3040-\u30ff\u3400-\u9fff]+)"
)
"""'＋は少量、＋＋は中量': signs and words of Japanese and Chinese keys."""
_IN_DOUBT = re.compile(
    r"(?P<sign>[(\[](?:x{1,3}|\+{1,4}|p|\d)[)\]])\s*(?:=|:|[-–])\s*(?:cf\b|prob|poss|uncertain|doubt|tentativ|wahrscheinlich|unsicher|incert|douteu|dudos|duvidos|dubbi|onzeker|os[aä]ker|usikker)",
    re.IGNORECASE,
)
"""'(x) = probable': a sign in brackets for a name in doubt."""
_NOT_LOOKED_FOR = re.compile(
    r"\bnot (?:looked for|sorted|examined|counted|analy[sz]ed|recorded)\b(?:[^.;()]|\((?!(?:shown|marked|given)))*?\(?(?:shown|marked|given|indicated|written)(?: as| by| with)?\s*[\"'(]?(?P<sign>[-–—]|n/?a|nd|[*x])(?=[\s\"').,;]|$)",
    re.IGNORECASE,
)
"""'Seeds are not looked for above 4 mm (shown -)'."""
_RANGE = re.compile(r"(?:[<>≤≥]=?\s*\d+|\d+\s*(?:[-–]|to|bis|tot|till?|do|al?|à)\s*\d+|\d+\s*(?:\+|o más|o più|ou mais|ou plus|et plus|or more|and more|und mehr|oder mehr|of meer|en meer|eller fler))", re.IGNORECASE)
_LETTERS = re.compile(
    r"tiental|honderd|enkele|duizend|veel|weinig|afwezig|aanwezig|vorhanden|selten|häufig|vereinzelt|einzeln|viele|présent|rares?|peu|abondant|quelques|nombreu|presente|ausente|escas|abundante|raro|enstaka|riklig|måttlig|liczn|"
    r"present|absent|rare|occasional|common|frequent|abundant|dominant|few|some|many|moderate|trace|\d", re.IGNORECASE
)

_UNCOUNTED = re.compile(
    r"(?:not|un|non|nicht|niet|no|sin|nie|pas) ?(?:counted|quantified|compt\w*|quantif\w*|gezählt|ausgezählt|quantifiziert|geteld|contad\w*|cuantific\w*|contat\w*|policz\w*|liczon\w*)",
    re.IGNORECASE,
)
"""'nc = not counted': what stands for a number that nobody has."""
# Common practice, no source: words of keys for slashes.
_PIECES = r"(?:frag|bruchst|bruch\b|trozos|pezzi|frammenti|pieces|broken|破片|碎片|ułam|zlom|kawałk|brokken|pedaz)"
_WHOLE = r"(?:(?:wholes?|complete|intact)(?: grains?| seeds?)?|ganz\w*|enti[eè]r\w*|enter[oa]s?|inter[oi]|hele)"


@dataclass(frozen=True, slots=True)
class Entry:
    """One sign and its meaning, with the cell that says so."""

    sign: str
    meaning: str
    at: tuple[int, int]


class _MarksIn(NamedTuple):
    """What one text says; empty where it says nothing."""

    slash: str
    brackets: str
    is_sure: bool
    """It says so of brackets whatever was said of them before."""
    blank: str


_PIECES_IN_BRACKETS = re.compile(
    rf"{BRACKETS}.{{0,40}}{_PIECES}|{_PIECES}.{{0,40}}{BRACKETS}|\d ?\(\d+\).{{0,40}}{_PIECES}|\(n?\) ?[=:].{{0,40}}{_PIECES}"
)
_OF_WHICH = re.compile(r"of which|of these|of them|thereof|included in|davon|dont\b|de los cuales|di cui|waarvan|dos quais")


@lru_cache(maxsize=4096)
def _marks_in(text: str) -> _MarksIn:
    lower = text.lower()
    slash = ""
    if len(lower) > 12 or "/" in lower:
        if re.search(rf"{_WHOLE}\s*/\s*{_PIECES}", lower):
            slash = "whole/fragment"
        elif re.search(rf"{_PIECES}\w*\s*/\s*{_WHOLE}", lower):
            slash = "fragment/whole"
    brackets, is_sure = brackets_said(text), False
    if _PIECES_IN_BRACKETS.search(narrow(lower)):
        brackets, is_sure = "fragment", True
    elif not brackets and re.search(BRACKETS, lower) and _OF_WHICH.search(lower):
        brackets, is_sure = "of which", True
    is_blank = re.search(r"blank.{0,30}not (?:looked|sorted|analysed|examined|counted)", lower)
    return _MarksIn(slash, brackets, is_sure, "not looked for" if is_blank else "")


def find_marks(grid: Grid) -> Marks:
    """What the notes and titles of a sheet say of its slashes, brackets, blanks and decimal mark, and of its signs."""
    slash = ""
    brackets = "note"
    blank = "absent"
    for cell in grid.cells.values():
        if cell.kind != "text" or len(cell.text) < 4:
            continue
        said = _marks_in(cell.text)
        slash = said.slash or slash
        if said.is_sure:
            brackets = said.brackets
        elif brackets == "note":
            brackets = said.brackets or "note"
        blank = said.blank or blank
    key: dict[str, str] = {}
    for entry in key_entries(grid):
        key.setdefault(entry.sign, entry.meaning)
    return Marks(key=key, slash=slash, brackets=brackets, blank=blank, decimal=_decimal(grid))  # type: ignore[arg-type]


def key_entries(grid: Grid) -> list[Entry]:
    """Every sign of abundance that a text of the sheet explains: '+ = 1-5', 'x: present', '- absent'."""
    return [
        Entry(sign, meaning, at)
        for at, cell in grid.cells.items() if cell.kind == "text" and len(cell.text) >= 4
        for sign, meaning in _explained_in(cell.text)
    ]  # fmt: skip


_CAPITALS = re.compile(r"(?<![A-Z])(?!X+(?![A-Z]))[A-Z]{3,}(?![A-Z])(?!\s*[=:])")
"""Words of a key that is all in capitals, as old programs print: '. = NONE'."""


@lru_cache(maxsize=4096)
def _explained_in(written: str) -> tuple[tuple[str, str], ...]:
    """The signs that one text explains, each with its meaning."""
    found: list[tuple[str, str]] = []
    text = re.sub(r"(?<=\d)(?:点|個|粒)?以上", "+", narrow(written))
    if text.isupper():
        text = _CAPITALS.sub(lambda match: match[0].lower(), text)
    said: set[str] = set()
    for match in (*_PLAIN_ENTRY.finditer(text), *_PLAIN_ABROAD.finditer(text), *_EAST_ASIAN.finditer(text)):
        meaning = _meaning(match, text)
        if meaning and match["sign"] not in said:
            said.add(match["sign"])
            found.append((match["sign"], meaning))
    found += [(match["sign"], "not looked for") for match in _NOT_LOOKED_FOR.finditer(text)]
    found += [(match["sign"], "present, in doubt") for match in _IN_DOUBT.finditer(text)]
    if "=" in text or ":" in text or re.search(r"\s[-–]\s", text):
        for match in _ENTRY.finditer(text):
            meaning = _meaning(match, text)
            is_letter = match["sign"].isalpha() and len(match["sign"]) == 1 and match["sign"].islower()
            is_letter = is_letter and not (match["sign"] == "x" and re.search(r"\bxx ?[=:]", text))
            if is_letter and (meaning.isdecimal() or len(re.findall(r"\b[a-z] ?[=:]", text)) < 2):
                continue  # one small letter before a word or a number is most often no key
            if meaning and (
                not match["sign"].isalpha()
                or match["sign"].lower().startswith("x")
                or _LETTERS.search(match["meaning"])
                or _UNCOUNTED.match(match["meaning"])
            ):
                found.append((match["sign"], meaning))
    return tuple(found)


_A_LITRE = re.compile(
    r"(?:^|[\d+])\s*[([]?(?:[^\W\d_]+\s*)?(?:(?:per|pro|par|por|je|na|al|op|每)\s?|/\s?)(?:10\s?)?(?:l\b|lt\b|lit(?:re|er|ro|r)s?\b|升)", re.IGNORECASE
)
"""'1-10 per litre': how many there are in a sample, nobody says."""


def _meaning(match: re.Match[str], text: str) -> str:
    """What an entry of a key says of its sign; of items a litre no more than that there are some."""
    meaning = meaning_of(match["meaning"], match.groupdict().get("more") or "")
    return "present" if meaning[:1] in "<>≤≥0123456789" and _A_LITRE.match(text, match.end("meaning") - 1) else meaning


@lru_cache(maxsize=4096)
def meaning_of(meaning: str, more: str = "") -> str:
    """
    A range where the entry gives one, else present, absent or not looked for; empty for a word that says neither.

    >>> meaning_of("1-10"), meaning_of("more than 50"), meaning_of("1-10 per liter (scan)"), meaning_of("rare")
    ('1-10', '>50', 'present', 'present')
    >>> meaning_of("bis 10 Reste"), meaning_of("up to 5"), meaning_of("many", "(over 25)")
    ('1-10', '1-5', '>25')
    >>> meaning_of("11-50", "(over 3 samples)"), meaning_of("not looked for", "(under 2 mm)"), meaning_of("many", "(over 2 mm)")
    ('11-50', 'not looked for', 'present')
    """
    if re.match(r"[^\W\d_<>≤≥ ]*(?: than)? *[<>≤≥]?=?\s*\d", meaning.strip()) and _A_LITRE.search(meaning):
        return "present"
    if up_to := re.match(rf"(?:{_UP_TO})\s*(\d+)", meaning.strip(), re.IGNORECASE):
        return f"1-{up_to[1]}"
    open_end = re.match(rf"(?P<more>{_MORE})?(?P<less>{_LESS})?\s*(?P<number>\d+)", meaning.strip(), re.IGNORECASE)
    if open_end and (open_end["more"] or open_end["less"]):
        return f"{'>' if open_end['more'] else '<'}{open_end['number']}"
    found = _RANGE.search(meaning) or _RANGE.search(more)
    if found:
        flat = re.sub(r"(?<=\d) ?(?:o más|o più|ou mais|ou plus|et plus|or more|and more|und mehr|oder mehr|of meer|en meer|eller fler)", "+", found[0], flags=re.I)
        return re.sub(r"\s*(?:[-–]|to|bis|tot|till?|do|al?|à)\s*(?=\d)", "-", re.sub(r"\s+", " ", flat)).replace(" ", "")
    word = meaning.strip().lower()
    if re.match(r"absent|not present|none|not found|nil", word):
        return "absent"
    behind = _OPEN_BEHIND.fullmatch(more.strip())
    if behind and not word.startswith(("not ", "no ")):  # 'mange (over 25)'
        return f"{'>' if behind['more'] else '<'}{behind['number']}"
    if _UNCOUNTED.match(word.replace("-", " ")) or says_uncounted(re.split(r"[,;(]", word)[0]):
        return "present"
    if re.match(r"not (?:looked|sorted|examined|analysed|recorded)|no data", word):
        return "not looked for"
    if re.match(
        r"(?:a )?(?:present|presence|lots?|loads|plenty|handful|rare|occasional|common|frequent|abundant|dominant|few|some|many|moderate|trace|very|numerous|uncertain|possible|low|medium|high)",
        word,
    ):
        return "present"
    if says_pending(word):
        return "not looked for"
    if word.isdecimal():
        return word
    for pattern, found_word in _ABROAD:
        if re.match(pattern, word):
            return found_word
    return ""


# Common practice, no source: words of keys in other languages.
_ABROAD = (
    (r"afwezig|fehl(?:t|end)|nicht (?:vorhanden|nachgewiesen|gefunden)|no (?:hallado|encontrado)|niet gevonden|non trovat[oai]|absente?s?\b|ausente|assente|saknas|mangler|brak|nieobecn|hiányzik", "absent"),
    (r"(?:極)?(?:少|中|多|微)[量数]?(?:以上|程度)?$|普通|稀|やや.*|わずか|非常に.*|较[多少]|あり|有|检出|検出$", "present"),
    (r"なし|無|无|未検出|不検出|未发现", "absent"),
    (r"aanwezig|vorhanden|pr[eé]sent|förekommer|forekommer|til stede|obecn|jelen|enkele?|einzeln|vereinzelt|wenig|viele?\b|sehr|massenhaft|häufig|selten|"
     r"tiental|honderd|duizend|zeer|veel|weinig|vele|zeldzaam|quelques|rares?\b|peu\b|abondant|nombreu|très|fréquent|poc[oahi]|escas|abundante|much|raro|rari|molt|"
     r"matig|gemiddeld|mäßig|mittel|moyen|modér|moderad|mediament|średni|trochę|frequent|enstaka|måttlig|riklig|få\b|många|mange|nieliczn|liczn|bardzo|kevés|sok", "present"),
)  # fmt: skip


_UNIT_BEHIND = re.compile(r"\s*(?:g|gr|mg|kg|l|ml|%)\.?$", re.IGNORECASE)


def _decimal(grid: Grid) -> str:
    """The decimal mark: a comma where numbers carry commas that part no thousands, and no number carries a point."""
    commas = points = thousands = 0
    for cell in grid.cells.values():
        if cell.kind == "text" and len(cell.text) < 16 and ("," in cell.text or "." in cell.text):
            text = _UNIT_BEHIND.sub("", cell.text)
            if re.fullmatch(r"\d+,\d{1,2}|\d+,\d{4,}|0,\d+", text):
                commas += 1
            elif re.fullmatch(r"\d+\.\d{1,2}|\d+\.\d{4,}|0\.\d+", text):
                points += 1
            elif re.fullmatch(r"[1-9]\d{0,2}(?:\.\d{3}){2,}", text):
                thousands += 1  # '1.345.200'
    return "," if commas > points or (thousands and not points) else "."
