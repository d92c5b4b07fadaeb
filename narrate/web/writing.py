"""How the pages of one edition write years, numbers and units: as its told words do."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace

from narrate.model.edition import Edition
from narrate.model.measurement import Measurement
from narrate.model.stratigraphy import Phase
from narrate.telling import manner, numbers


@dataclass(frozen=True, slots=True, kw_only=True)
class Writing:
    """Marks and words for figures; what is recorded is never passed through it."""

    thousands: str = ","
    dash: str = numbers.EN_DASH
    litre: str = "litre"
    litres: str = "litres"
    era: str = "AD"

    def whole(self, number: float | None) -> str:
        """
        A count with its thousands set apart; a dash where there is none.

        >>> Writing().whole(1041), Writing(thousands="").whole(1041), Writing().whole(None)
        ('1,041', '1041', '–')
        """
        return "–" if number is None else numbers.figure(number, 0, thousands=self.thousands)

    def unit(self, text: str) -> str:
        """
        A unit, or a title with one in it, with the litre as the project writes it.

        >>> Writing(litre="L", litres="L").unit("Wood charcoal per litre (g/l)")
        'Wood charcoal per L (g/L)'
        >>> Writing(litre="liter", litres="liters").unit("Litres floated")
        'Liters floated'
        """
        if self.litre == "litre":
            return text
        text = re.sub(r"\blitres\b", self.litres, text)
        text = re.sub(r"\blitre\b", self.litre, text)
        text = re.sub(r"\bLitre(s?)\b", self._leading, text)
        return re.sub(r"/l\b", f"/{self.litre}", text) if len(self.litre) == 1 else text

    def _leading(self, found: re.Match[str]) -> str:
        word = self.litres if found[1] else self.litre
        return word if len(word) == 1 else word.capitalize()

    def figure(self, measurement: Measurement) -> str:
        """
        The value with its unit, as many figures as its interval allows; a dash where there is none.

        >>> Writing().figure(Measurement(measure="density", value=8.222, low=6.9, high=9.7, unit="items/l"))
        '8.2 items/l'
        >>> Writing().figure(Measurement(measure="mass_per_l", value=0.0027, unit="g per litre"))
        '0.0027 g per litre'
        """
        if measurement.value is None:
            return "–"
        text = self._value(float(measurement.value), measurement)
        return f"{text} {self.unit(measurement.unit)}" if measurement.unit else text

    def _value(self, value: float, measurement: Measurement) -> str:
        """Never nought for what is not nought."""
        if measurement.low is None:
            if measurement.measure == "litres" and (value * 10).is_integer():
                # Litres are summed as they were recorded, and lose none where they are many.
                return numbers.figure(value, 0 if value.is_integer() else 1, thousands=self.thousands)
            is_whole = abs(value) >= 100 or value.is_integer()
            return self.whole(value) if is_whole else f"{value:.3g}"
        text = numbers.measured(measurement, thousands=self.thousands)
        return f"{value:.1g}" if value and not text.strip("-0.") else text

    def bare(self, measurement: Measurement) -> str:
        """The value without its unit, for columns whose head names it."""
        return self.figure(replace(measurement, unit=""))

    def interval(self, measurement: Measurement) -> str:
        """The 95% interval; for a ratio without a value the bound that is known; else empty."""
        if measurement.value is None and measurement.low is not None and measurement.is_open_above:
            return f"at least {measurement.low:.3g}"
        return numbers.interval(measurement, thousands=self.thousands, dash=self.dash)

    def retold(self, text: str) -> str:
        """
        A text that was worded without knowledge of the project's style, such as what a rule found.

        Only marks within figures, dashes between them and the word for a litre are changed.

        >>> Writing(thousands="", dash="-", litre="L").retold("1,041 items, 95 (89–101) per litre")
        '1041 items, 95 (89-101) per L'
        """
        if self.thousands != ",":
            text = _GROUPED.sub(lambda found: found[0].replace(",", self.thousands), text)
        if self.dash != numbers.EN_DASH:
            text = _SPAN.sub(self.dash, text)
        return self.unit(text)

    def year(self, year: int) -> str:
        """
        One calendar year of a source, negative before Christ.

        >>> Writing().year(600), Writing(era="BP").year(-500)
        ('AD 600', '2449 cal BP')
        """
        return numbers.years(year, year, "cal" if self.era == "BP" else "", era=self.era)

    def years(self, phase: Phase) -> str:
        """The span of a phase with 'cal' where its dates are calibrated; empty where it has no dates."""
        return numbers.years(phase.start, phase.end, phase.dates, era=self.era, dash=self.dash)

    @property
    def filters(self) -> Mapping[str, Callable[..., object]]:
        """What templates call them."""
        return {
            "bare": self.bare,
            "figure": self.figure,
            "interval": self.interval,
            "retold": self.retold,
            "unit": self.unit,
            "whole": self.whole,
            "year": self.year,
        }


_GROUPED = re.compile(r"(?<![\d,.])\d{1,3}(?:,\d{3})+(?![\d,])")
_SPAN = re.compile(r"(?<=\d)\u2013(?=\d)")


def writing_of(edition: Edition) -> Writing:
    """How the audience of an edition writes, the project's own choices going first."""
    audience = edition.packs.audiences.get(edition.audience)
    if audience is None:
        return Writing()
    audience = manner.in_style(audience, edition.project.style)
    return Writing(
        thousands=manner.thousands(audience),
        dash=manner.dash(audience),
        litre=manner.litre(audience),
        litres=manner.litre(audience, plural=True),
        era=audience.words.get("era", "AD"),
    )
