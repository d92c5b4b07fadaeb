"""Numbers as readers take them: counts, rounding honest to the interval, ranges, shares, years."""

from __future__ import annotations

import math

from narrate.model.measurement import Measurement
from narrate.model.style import before_present

_WORDS = (
    "no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve",
)  # fmt: skip
_TIMES = {1: "once", 2: "twice"}
EN_DASH = "–"


def count(number: int, *, words_below: int = 10, thousands: str = ",") -> str:
    """
    A count in running text: a word where it is small, else a figure with its thousands set apart.

    >>> count(3), count(12), count(1402), count(1402, thousands="\u2009")
    ('three', '12', '1,402', '1\u2009402')
    """
    if 0 <= number < min(words_below, len(_WORDS)):
        return _WORDS[number]
    return f"{number:,}".replace(",", thousands)


def of_word(word: str) -> int:
    """
    The number that a word stands for; 0 where it is none below ten.

    >>> of_word("four"), of_word("many")
    (4, 0)
    """
    return _WORDS.index(word.lower()) if word.lower() in _WORDS else 0


def times(number: int) -> str:
    """
    How often.

    >>> times(1), times(2), times(5)
    ('once', 'twice', 'five times')
    """
    return _TIMES.get(number, f"{count(number)} times")


def decimals_for(low: float | None, high: float | None, value: float) -> int:
    """
    Decimal places that the interval allows: two figures of its width, never more than the value deserves.

    >>> decimals_for(6.9, 9.7, 8.222), decimals_for(0.07, 0.23, 0.125), decimals_for(110, 190, 148.3)
    (1, 2, 0)
    """
    if low is not None and high is not None and high > low:
        width = high - low
        # A narrow interval below 1 around a large value needs one figure only: 15.7 (15.2–16.1).
        figures = 0 if width < 1 and width < value / 10 else 1
        return max(-3, min(3, figures - math.floor(math.log10(width))))
    if value == 0:
        return 0
    # Without an interval: three figures at most, which is as well as anything here is weighed.
    return max(0, min(2, 2 - math.floor(math.log10(abs(value)))))


def figure(value: float, places: int, *, thousands: str = ",") -> str:
    """
    A value to so many decimal places; negative places round to tens and hundreds. Halves of a whole go up.

    >>> figure(8.222, 1), figure(1483.0, -1), figure(0.5, 2), figure(208.5, 0), figure(411.5, 0), figure(-0.5, 0)
    ('8.2', '1,480', '0.50', '209', '412', '-1')
    """
    rounded = round(value, places)
    if places <= 0:
        # Python rounds halves to the even number, so that 208.5 and 411.5 litres would go different ways.
        unit = 10 ** -places
        rounded = math.copysign(math.floor(abs(value) / unit + 0.5) * unit, value)
    return f"{rounded:,.{max(0, places)}f}".replace(",", thousands)


def measured(measurement: Measurement, *, thousands: str = ",") -> str:
    """
    The value of a measurement, as many figures as its interval allows.

    >>> measured(Measurement(measure="density", value=8.222, low=6.9, high=9.7))
    '8.2'
    """
    assert measurement.value is not None
    places = decimals_for(measurement.low, measurement.high, measurement.value)
    return figure(measurement.value, places, thousands=thousands)


def interval(
    measurement: Measurement, *, scale: float = 1.0, thousands: str = ",", dash: str = EN_DASH
) -> str:
    """
    The 95 % interval with an en dash; empty where there is none.

    >>> interval(Measurement(measure="density", value=8.222, low=6.91, high=9.68))
    '6.9–9.7'
    """
    if measurement.value is None or measurement.low is None:
        return ""
    low = measurement.low * scale
    if measurement.high is None:
        places = decimals_for(None, None, low)
        return f"at least {figure(low, places, thousands=thousands)}" if measurement.is_open_above else ""
    high = measurement.high * scale
    places = decimals_for(low, high, measurement.value * scale)
    return f"{figure(low, places, thousands=thousands)}{dash}{figure(high, places, thousands=thousands)}"


def percent(share: float) -> str:
    """
    A share as a whole per cent that does not round to a false all or nothing.

    >>> percent(0.453), percent(0.998), percent(0.002), percent(1.0)
    ('45%', 'over 99%', 'under 1%', '100%')
    """
    if 0 < share < 0.005:
        return "under 1%"
    if 0.995 <= share < 1:
        return "over 99%"
    return f"{round(share * 100)}%"


def about(number: float, *, thousands: str = ",") -> str:
    """
    A count for visitors: exact below a hundred, then rounded half up to the nearest ten and said to be so.

    >>> about(3), about(17), about(35), about(99), about(1402), about(100)
    ('three', '17', '35', '99', 'about 1,400', '100')
    """
    if number == int(number) and 0 <= number < 100:
        return count(int(number), words_below=11)
    rounded = 10 * math.floor(number / 10 + 0.5)
    text = f"{rounded:,}".replace(",", thousands)
    return text if rounded == number else f"about {text}"


def part_of(share: float) -> str:
    """
    A share for visitors.

    >>> [part_of(s) for s in (0.97, 0.74, 0.5, 0.33, 0.1, 0.02)]
    ['nearly all', 'about three quarters', 'about half', 'about a third', 'about a tenth', 'a small part']
    """
    for least, words in _PARTS:
        if share >= least:
            return words
    return "a small part"


_PARTS = (
    (0.999, "all"),
    (0.93, "nearly all"),
    (0.83, "most"),
    (0.71, "about three quarters"),
    (0.59, "about two thirds"),
    (0.54, "more than half"),
    (0.45, "about half"),
    (0.38, "less than half"),
    (0.29, "about a third"),
    (0.22, "about a quarter"),
    (0.15, "about a fifth"),
    (0.08, "about a tenth"),
)


def often(k: int, n: int) -> str:
    """
    k of n samples as visitors read it.

    >>> often(15, 20), often(0, 8), often(8, 8), often(1, 9)
    ('15 of the 20', 'none of the eight', 'all eight', 'one of the nine')
    """
    if k == 0:
        return f"none of the {count(n)}"
    if k == n:
        return "the only one" if n == 1 else "both" if n == 2 else f"all {count(n)}"
    small = n < 10
    return f"{count(k) if small else k} of the {count(n)}"


def years(start: int | None, end: int | None, dates: str = "", *, era: str = "AD", dash: str = EN_DASH) -> str:
    """
    A range of calendar years; negative is BC.

    era:  AD (with BC), CE (with BCE) or BP, years before AD 1950. Dates that are not calibrated keep AD under BP, for
          BP without 'cal' means radiocarbon years.

    >>> years(950, 1050, "cal AD"), years(-1200, -1100, "cal BC"), years(-100, 50), years(None, None)
    ('cal AD 950–1050', '1200–1100 cal BC', '100 BC–AD 50', '')
    >>> years(950, 1050, "cal AD", era="CE"), years(-1200, -1100, era="CE"), years(-100, 50, era="CE")
    ('950–1050 cal CE', '1200–1100 BCE', '100 BCE–50 CE')
    >>> years(950, 1050, "cal AD", era="BP"), years(-100, 50, "cal", era="BP"), years(950, 1050, "AD", era="BP")
    ('1000–900 cal BP', '2049–1900 cal BP', 'AD 950–1050')
    """
    if start is None and end is None:
        return ""
    is_calibrated = dates.lower().startswith("cal")
    if era == "BP" and not is_calibrated:
        era = "AD"
    calibrated = "cal " if is_calibrated else ""
    if start is None or end is None:
        only = start if start is not None else end
        assert only is not None
        return ("from " if end is None else "until ") + _year(only, calibrated, era)
    if era != "BP" and (start > 0) != (end > 0):
        return f"{_year(start, calibrated, era)}{dash}{_year(end, calibrated, era)}"
    ends = [str(_counted(year, era)) for year in (start, end)]
    span = ends[0] if ends[0] == ends[1] else dash.join(ends)
    return _with_era(span, calibrated, _era_of(start, era))


def _counted(year: int, era: str) -> int:
    return before_present(year) if era == "BP" else abs(year)


def _era_of(year: int, era: str) -> str:
    if era == "BP" or year > 0:
        return era
    return "BCE" if era == "CE" else "BC"


def _with_era(span: str, calibrated: str, era: str) -> str:
    """AD stands before its years, every other era behind them."""
    return f"{calibrated}AD {span}" if era == "AD" else f"{span} {calibrated}{era}"


def _year(year: int, calibrated: str, era: str) -> str:
    return _with_era(str(_counted(year, era)), calibrated, _era_of(year, era))


_TENS = ("", "", "twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety")
_TEENS = ("thirteen", "fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen")


def opening_in_words(text: str) -> str:
    """
    A sentence that would open with a figure, opened with the number in words; left alone from a hundred on.

    >>> opening_in_words("96 cupules lay there"), opening_in_words("14 seeds"), opening_in_words("1,402 items")
    ('ninety-six cupules lay there', 'fourteen seeds', 'In all, 1,402 items')
    """
    head, _, rest = text.partition(" ")
    if not head.isdecimal() or int(head) > 99:
        return f"In all, {text}"
    number = int(head)
    if number < len(_WORDS):
        return f"{_WORDS[number]} {rest}"
    if number < 20:
        return f"{_TEENS[number - 13]} {rest}"
    ones = f"-{_WORDS[number % 10]}" if number % 10 else ""
    return f"{_TENS[number // 10]}{ones} {rest}"
