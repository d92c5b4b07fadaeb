"""Lines of `claims.json` written from the columns that were judged, with what many claims share written once."""

from __future__ import annotations

import json
from collections.abc import Collection
from json.encoder import encode_basestring as quoted

from narrate.deposit.argument_texts import ArgumentTexts
from narrate.deposit.plain_claims import brief_step, dumped, plain_rival, plain_turning
from narrate.judging.claims_by_subject import ClaimsBySubject
from narrate.model.claims import Claim
from narrate.model.ids import StatementId
from narrate.model.next_steps import NextStep

_MOST_KEPT = 4_000
"""Texts of rivals and steps that are kept; most units say one of a few."""


class ClaimTexts:
    """The line of each claim, as `plain_claim` would say it."""

    def __init__(self, columns: ClaimsBySubject, cited: Collection[str]) -> None:
        self._columns = columns
        self._arguments = ArgumentTexts(columns, cited)
        self._lists: dict[tuple[str, ...], str] = {(): "[]"}
        self._rivals: dict[tuple[StatementId, StatementId, bytes, bytes], str] = {}
        self._steps: dict[NextStep, str] = {}

    def line(self, claim: Claim) -> str:
        about, limits = claim.about, claim.limits
        grade = quoted(claim.grade) if claim.verdict == "holds" else "null"
        turned_by = dumped([plain_turning(one) for one in claim.turnings]) if claim.turnings else "[]"
        return (
            f'{{"id": {quoted(claim.id)}, "about": {{"level": "{about.level}", "id": {quoted(about.id)}}}, '
            f'"question": {quoted(claim.question)}, "statement": {quoted(claim.statement)}, '
            f'"verdict": "{claim.verdict}", "support": {claim.support!r}, "grade": {grade}, '
            f'"stability": {json.dumps(claim.stability)}, "arguments": [{self._arguments.of(claim)}], '
            f'"limits": {self._list(tuple([one.says for one in limits]))}, '
            f'"lifts": {self._list(tuple([one.lifts for one in limits]))}, '
            f'"misleads_when": {self._list(claim.misleads_when)}, "alternatives": {self._list(claim.alternatives)}, '
            f'"sources": {self._list(claim.sources)}, "grade_without_limits": {json.dumps(claim.unlimited)}, '
            f'"rivals": [{self._rivals_of(claim)}], "turned_by": {turned_by}, '
            f'"next_step": {self._step(claim.next_step)}}}'
        )

    def _list(self, texts: tuple[str, ...]) -> str:
        found = self._lists.get(texts)
        if found is None:
            found = self._lists[texts] = dumped(list(texts))
        return found

    def _rivals_of(self, claim: Claim) -> str:
        """What is said of a rival hangs on how the rules of both came out, and on nothing else of the unit."""
        level, unit = self._columns.place[claim.about]
        maker, id = self._columns.makers[level], claim.statement
        others = maker.rival_ids(id, unit)
        if not others:
            return ""
        if len(self._rivals) > _MOST_KEPT:
            self._rivals.clear()
        begins, own = f'{{"claim": {quoted(maker.keys[claim.about])[:-1]}/', maker.code_bytes(id, unit)
        texts = []
        for at, other in enumerate(others):
            key = (id, other, own, maker.code_bytes(other, unit))
            text = self._rivals.get(key)
            if text is None:
                said = plain_rival(claim.rivals[at])
                said.pop("claim")
                text = self._rivals[key] = f"{quoted(other)[1:]}, {dumped(said)[1:]}"
            texts.append(begins + text)
        return ", ".join(texts)

    def _step(self, step: NextStep | None) -> str:
        if step is None:
            return "null"
        found = self._steps.get(step)
        if found is None:
            if len(self._steps) > _MOST_KEPT:
                self._steps.clear()
            found = self._steps[step] = dumped(brief_step(step))
        return found
