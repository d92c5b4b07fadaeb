"""How charts name plants, subjects, numbers and months."""

from __future__ import annotations

import re
from collections.abc import Iterable

from narrate.charts.frame import clean
from narrate.charts.marks import ITALIC, ROMAN
from narrate.model.findings import Tally
from narrate.model.ids import Subject
from narrate.model.packs import Packs

MONTHS = ("Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec")

MONTH_NAMES = (
    "January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November",
    "December",
)  # fmt: skip

_NUMBERS = ("no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve")


def plant(tally: Tally, packs: Packs) -> str:
    """Common name with part, such as 'maize cupules'; the written name where no pack knows the plant."""
    return _with_part(tally, packs, common_name(tally, packs))


def plant_in_italics(tally: Tally, packs: Packs) -> str:
    """As `plant`, with the marks for italics around a Latin genus or species that has no common name."""
    known = packs.taxa.get(tally.taxon) if tally.taxon is not None else None
    name = common_name(tally, packs)
    is_latin = known is not None and known.rank in ("species", "genus") and name == clean(known.id)
    return _with_part(tally, packs, f"{ITALIC}{name}{ROMAN}" if is_latin else name)


def common_name(tally: Tally, packs: Packs) -> str:
    known = packs.taxa.get(tally.taxon) if tally.taxon is not None else None
    name = (known.trade_name or known.name or known.id) if known is not None else (tally.taxon or tally.written)
    return clean(name) or "unnamed"


def latin(tally: Tally) -> str:
    """The accepted name, or the name as written where no pack knows it."""
    return clean(tally.taxon or tally.written)


def part_word(tally: Tally, packs: Packs) -> str:
    part = packs.words.parts.get(tally.part)
    return clean(part.plural if part is not None else tally.part)


def subject_name(subject: Subject) -> str:
    """Such as 'context C07' or 'the whole dig'."""
    return "the whole dig" if subject.level == "site" else f"{subject.level} {clean(subject.id)}"


def ancient_conditions(packs: Packs, preservation: str) -> frozenset[str]:
    """Conditions that are ancient under the preservation; those of dry sites where the words do not name it."""
    named = packs.words.preservations.get(preservation)
    if named is not None:
        return frozenset(named)
    return frozenset(c.id for c in packs.words.conditions.values() if c.is_ancient_at_dry_sites)


def capitalised(text: str) -> str:
    return text[:1].upper() + text[1:]


def in_words(number: int) -> str:
    return _NUMBERS[number] if 0 <= number < len(_NUMBERS) else str(number)


def several(number: int, singular: str, plural: str = "") -> str:
    """Such as '1 item' or '1,312 items'."""
    return f"{number:,} {singular if number == 1 else plural or singular + 's'}"


def listed(names: Iterable[str]) -> str:
    """Such as 'a, b and c'."""
    given = list(names)
    return given[0] if len(given) == 1 else f"{', '.join(given[:-1])} and {given[-1]}"


def as_recorded(number: float | None) -> str:
    """A recorded or summed number without the dust of binary fractions; empty where there is none."""
    return "" if number is None else format(number, ".10g")


def three_figures(number: float) -> str:
    """A worked-out number with three figures at most, two below 1: 0.021, 4.52, 41.3, 1350."""
    if number == 0:
        return "0"
    places = 0 if abs(number) >= 99.95 else 1 if abs(number) >= 9.995 else 2 if abs(number) >= 0.1 else 0
    text = f"{number:.{places}f}" if abs(number) >= 0.1 else f"{number:.2g}" if abs(number) >= 1e-4 else f"{number:.1e}"
    return text.rstrip("0").rstrip(".") if "." in text and "e" not in text else text


def percent(share: float) -> str:
    """Such as '72%', '<1%'; never 100% or 0% for less than all or more than none."""
    if 0 < share < 0.01:
        return "<1%"
    if 0.99 < share < 1:
        return ">99%"
    return f"{share * 100:.0f}%"


def months_in_words(months: Iterable[int]) -> str:
    """Such as 'August to October', 'September and October' or 'April, September and October'."""
    said: list[str] = []
    for run in runs(months):
        names = [MONTH_NAMES[month - 1] for month in run]
        said += names if len(names) < 3 else [f"{names[0]} to {names[-1]}"]
    return listed(said)


def runs(months: Iterable[int]) -> list[list[int]]:
    """Months as runs without a gap; December runs on into January."""
    found: list[list[int]] = []
    for month in months:
        if found and month == found[-1][-1] % 12 + 1:
            found[-1].append(month)
        else:
            found.append([month])
    if len(found) > 1 and found[-1][-1] == 12 and found[0][0] == 1:
        found[-1].extend(found.pop(0))
    return found


def _with_part(tally: Tally, packs: Packs, name: str) -> str:
    """Name and part; 'cf.' leads where no row of it is certain, and nothing is said twice."""
    whole = of_plant(name, part_word(tally, packs))
    is_said = name.replace(ITALIC, "").casefold().startswith("cf.")
    return f"cf. {whole}" if tally.only_cf and not is_said else whole


def of_plant(name: str, part: str) -> str:
    """
    The part of a plant, no word said twice.

    >>> of_plant("hickory", "nutshell"), of_plant("corn", "bits of corn cob"), of_plant("bean", "halves of seeds")
    ('hickory nutshell', 'bits of corn cob', 'halves of bean seeds')
    """
    bare = name.replace(ITALIC, "").replace(ROMAN, "").casefold()
    if bare.endswith(part.casefold()):
        return name
    if f" {bare} " in f" {part.casefold()} ":
        return part
    pieces = _PIECES.match(part)
    return f"{pieces[1]}{name} {pieces[2]}" if pieces else f"{name} {part}"


_PIECES = re.compile(r"(\w+ of (?:an? )?)(.+)")
"""'halves of seeds': the plant goes before the last part."""
