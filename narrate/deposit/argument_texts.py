"""Arguments as `claims.json` gives them: made of what a person reads, or straight from the columns that were judged."""

from __future__ import annotations

import json
from collections.abc import Callable, Collection, Sequence
from json.encoder import encode_basestring as quoted

import numpy as np

from narrate.judging.claims_by_subject import ClaimsBySubject
from narrate.judging.claims_made import ClaimMaker
from narrate.judging.clauses import in_words, pieces
from narrate.judging.columns import StatementJudged
from narrate.judging.evidence import Asked, AskedValue
from narrate.judging.facts import HOLDS
from narrate.judging.weigh import VERDICTS
from narrate.model.claims import Argument, Claim, Evidence
from narrate.model.ids import Level, StatementId
from narrate.model.rules import Rule

_MOST_KEPT = 64
"""Pieces of text kept for one thing that is looked at; most units say one of a few."""
_BLOCK = 32
"""Units whose evidence is written at once, at most."""
_NONE = -1e308
"""Stands for a figure that there is none of, which must equal itself."""


def plain_argument(argument: Argument, *, with_evidence: bool = True) -> dict[str, object]:
    is_held = argument.verdict == "holds"
    return {
        "rule": argument.rule,
        "direction": argument.direction,
        "weight": argument.weight,
        "verdict": argument.verdict,
        "stability": argument.share_holding,
        "counted_with": argument.counted_with,
        "says": argument.says,
        "evidence": [_evidence(one, with_rows=is_held) for one in argument.evidence] if with_evidence else [],
    }


def _evidence(evidence: Evidence, *, with_rows: bool) -> dict[str, object]:
    return {
        "measure": evidence.measure,
        "value": _rounded(evidence.value),
        "low": _rounded(evidence.low),
        "high": _rounded(evidence.high),
        "unit": evidence.unit,
        "n": evidence.n,
        "text": evidence.text,
        "reason": evidence.reason,
        "verdict": evidence.verdict,
        "rows": list(dict.fromkeys(place.row for place in evidence.places)) if with_rows else [],
    }


def _rounded(value: float | None) -> float | None:
    """Six significant digits: enough for any reader, and the same on every machine."""
    return None if value is None else float(f"{value:.6g}")


class ArgumentTexts:
    """The text of `plain_argument` of all arguments of a claim, written from columns without making them."""

    def __init__(self, claims: ClaimsBySubject, cited: Collection[str]) -> None:
        """
        cited:  ids of claims whose arguments keep all their evidence, as do those of claims that hold.
        """
        self._place = claims.place
        # The rows of all levels are those of one table.
        rows = [quoted(place.row) for place in claims.makers["sample"].judged.look.units.table.places]
        self._levels: dict[Level, _OfLevel] = {
            level: _OfLevel(maker, cited, rows) for level, maker in claims.makers.items()
        }

    def of(self, claim: Claim) -> str:
        level, unit = self._place[claim.about]
        return self._levels[level].of(claim.statement, unit)


class _OfLevel:
    """The arguments of one level, written for a block of units at once."""

    def __init__(self, maker: ClaimMaker, cited: Collection[str], rows: Sequence[str]) -> None:
        """rows: as they are written, by their numbers."""
        self._maker = maker
        self._cited = cited
        self._keys = [maker.keys[subject] for subject in maker.judged.subjects()]
        self._width = len(maker.judged.look.units.ids)
        self._rows = rows
        self._at = range(0)
        self._block: dict[StatementId, list[list[str]]] = {}
        self._values: dict[AskedValue, _ValueTexts] = {}

    def of(self, id: StatementId, unit: int) -> str:
        if unit not in self._at:
            # Whoever asks for the next unit again and again is given ever more at once; a single one with few others.
            many = min(4 * len(self._at), _BLOCK) if unit == self._at.stop and self._at else 4
            self._at = range(unit, min(unit + many, self._width))
            self._lay()
        texts, at = self._block[id], unit - self._at.start
        return ", ".join([texts[i][at] for i in self._maker.order(self._maker.judged.statements[id], unit)])

    def _lay(self) -> None:
        evidence: dict[Asked, Callable[[int], str]] = {}
        rows: dict[tuple[Asked, int], str] = {}
        self._block = {}
        for id, judged in self._maker.judged.statements.items():
            is_followed = [
                code == HOLDS or f"{self._keys[unit]}/{id}" in self._cited
                for unit, code in zip(self._at, judged.outcome[self._at.start : self._at.stop].tolist(), strict=True)
            ]
            self._block[id] = [
                self._arguments(judged, number, is_followed, evidence, rows) for number in range(len(judged.rules))
            ]

    def _arguments(
        self,
        judged: StatementJudged,
        number: int,
        is_followed: list[bool],
        evidence: dict[Asked, Callable[[int], str]],
        rows: dict[tuple[Asked, int], str],
    ) -> list[str]:
        rule, at = judged.rules[number], self._at
        asked = self._maker.looked_at.asked(rule)
        for one in asked:
            if one not in evidence:
                evidence[one] = self._evidence(one)
        begins = json.dumps(
            {"rule": rule.id, "direction": rule.direction, "weight": self._maker.packs.weights[rule.weight]}
        )
        same = ["null"] * len(at)
        if judged.same is not None:
            same = [repr(round(share, 4)) for share in judged.same[number, at.start : at.stop].tolist()]
        found = []
        told = zip(
            at,
            judged.codes[number, at.start : at.stop].tolist(),
            same,
            self._says(rule, asked),
            is_followed,
            strict=True,
        )
        for unit, code, share, says, is_whole in told:
            other = judged.stands_for.get((number, unit))
            texts = [evidence[one](unit) for one in asked] if is_whole or code == HOLDS else []
            if code == HOLDS:
                texts = [text + self._rows_behind(one, unit, rows) for one, text in zip(asked, texts, strict=True)]
            found.append(
                f'{begins[:-1]}, "verdict": "{VERDICTS[code]}", "stability": {share}, '
                f'"counted_with": {"null" if other is None else quoted(other)}, "says": "{says}", '
                f'"evidence": [{", ".join([f"{text}]}}" for text in texts])}]}}'
            )
        return found

    def _says(self, rule: Rule, asked: tuple[Asked, ...]) -> list[str]:
        """The clause of a rule with its figures, for every unit of the block."""
        named = {one.bound.name: one for one in asked if isinstance(one, AskedValue) and one.bound.name}
        parts: list[list[str]] = []
        for text, name, figure in pieces(rule.says):
            parts.append([quoted(text)[1:-1]] * len(self._at))
            if name in named:
                parts.append(self._texts(named[name]).quoted(figure, self._at))
            elif name:
                parts.append([f"{{{name}{figure and '.' + figure}}}"] * len(self._at))
        return ["".join(of_unit) for of_unit in zip(*parts, strict=True)]

    def _texts(self, asked: AskedValue) -> _ValueTexts:
        if asked not in self._values:
            self._values[asked] = _ValueTexts(asked)
        return self._values[asked]

    def _evidence(self, asked: Asked) -> Callable[[int], str]:
        """Gives the evidence up to the rows, for a unit of the block."""
        if isinstance(asked, AskedValue):
            return self._texts(asked).evidence(self._at)
        look, begins = self._maker.judged.look, f'{{"measure": {quoted(asked.measure)}, "value": null, '
        return lambda unit: (
            f'{begins}"low": null, "high": null, "unit": "", "n": null, "text": {quoted(asked.text(look, unit))}, '
            f'"reason": "", "verdict": "{VERDICTS[asked.codes.item(unit)]}", "rows": ['
        )

    def _rows_behind(self, asked: Asked, unit: int, kept: dict[tuple[Asked, int], str]) -> str:
        found = kept.get((asked, unit))
        if found is None:
            looked_at = self._maker.looked_at
            rows = looked_at.rows(unit, asked.selectors) if isinstance(asked, AskedValue) else []
            texts = [self._rows[row] for row in rows] or [quoted(place.row) for place in looked_at.records(unit)]
            found = kept[asked, unit] = ", ".join(dict.fromkeys(texts))
        return found


class _ValueTexts:
    """A measure that rules ask for, as evidence and as clauses quote it. Most units say one of a few things."""

    def __init__(self, asked: AskedValue) -> None:
        self._asked = asked
        self._kept: dict[tuple[float, ...], str] = {}
        self._begins = f'{{"measure": {quoted(asked.measure)}, "value": '
        self._unit = quoted(asked.unit_of)
        self._reason = quoted(asked.reason)

    def evidence(self, units: range) -> Callable[[int], str]:
        if len(self._kept) > _MOST_KEPT:
            self._kept.clear()
        codes = self._asked.codes[units.start : units.stop].tolist()
        keys = list(zip(codes, *(_numbers(part, units) for part in self._asked.figures[:4]), strict=True))

        def text(unit: int) -> str:
            key = keys[unit - units.start]
            return self._kept.get(key) or self._written(key)

        return text

    def quoted(self, figure: str, units: range) -> list[str]:
        part = self._asked.figures[_FIGURES.index(figure)]
        measure = self._asked.bound.measure if figure in ("", "low", "high") else "items"
        numbers = _numbers(part, units)
        if figure == "n":
            numbers = [number if number == _NONE else round(number) for number in numbers]
        words = {number: in_words(measure, _or_none(number)) for number in set(numbers)}
        return [words[number] for number in numbers]

    def _written(self, key: tuple[float, ...]) -> str:
        code, value, low, high, n = key
        has_value = value != _NONE
        said = in_words(self._asked.bound.measure, _or_none(value))
        reason = '""' if has_value else self._reason
        text = self._kept[key] = (
            f'{self._begins}{_number(value)}, "low": {_number(low)}, "high": {_number(high)}, "unit": {self._unit}, '
            f'"n": {"null" if n == _NONE else int(round(n))}, "text": {quoted(said)}, "reason": {reason}, '
            f'"verdict": "{VERDICTS[int(code)]}", "rows": ['
        )
        return text


_FIGURES = ("", "low", "high", "n", "of", "to")
"""What a clause may quote of a value, in the order of `AskedValue.figures`."""


def _numbers(part: np.ndarray | None, units: range) -> list[float]:
    if part is None:
        return [_NONE] * len(units)
    numbers = part[0, units.start : units.stop].astype(float)
    return np.nan_to_num(numbers, nan=_NONE, posinf=_NONE, neginf=_NONE).tolist()  # type: ignore[no-any-return]


def _or_none(value: float) -> float | None:
    return None if value == _NONE else value


def _number(value: float) -> str:
    return "null" if value == _NONE else repr(_rounded(value))
