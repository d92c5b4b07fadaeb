"""The blocks of the interpretive section, and what a project says of them."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

BLOCKS: Mapping[str, str] = {
    "summary": "Summary",
    "contents": "Contents",
    "checklist": "Reviewer's checklist",
    "introduction": "Introduction and aims",
    "sampling": "Samples and recovery",
    "laboratory": "Laboratory method",
    "results": "Results by phase and context",
    "discussion": "Discussion",
    "limits": "Limits and recommendations",
    "archive": "Archive",
    "references": "References",
    "register": "Appendix: sample register",
    "raw_counts": "Appendix: counts by sample",
    "measures": "Appendix: measures with intervals",
    "rules": "Appendix: rules held, failed and undecided",
}
"""Id of a block -> its heading, in the order of the section. The title block always comes first."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ReportBlock:
    """What a project says of one block."""

    block: str
    title: str = ""
    """Empty: the heading of `BLOCKS`."""
    text: str = ""
    """The analyst's own paragraphs, set before what narrate writes; blank lines part them."""
    shown: bool = True


REPORT_TEXTS = frozenset(
    {
        "aims", "answers", "archive", "departures", "identification", "nomenclature", "qualifications", "radiocarbon",
        "reference_collection", "references", "sampling_strategy", "selection_strategy", "significance",
        "wider_context", "works_checked",
    }
)  # fmt: skip
"""Keys under `report:` whose texts stand in the section; pages of a site leave them to it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ChecklistItem:
    """What a project itself asks of its section, beside the published list."""

    asks: str
    block: str = ""
    """Block in which it must stand; empty: not said."""
    report: str = ""
    """Key under `report:` that must be given; empty: somebody has to look."""


def arranged(said: Sequence[ReportBlock]) -> tuple[ReportBlock, ...]:
    """
    Every block that is shown, in order.

    Blocks that the project names exchange places among themselves into the order named; the others stay where they are.

    >>> [b.block for b in arranged((ReportBlock(block="references"), ReportBlock(block="summary")))][:2]
    ['references', 'contents']
    """
    named = {one.block: one for one in said}
    waiting = iter(said)
    order = [next(waiting) if id in named else ReportBlock(block=id) for id in BLOCKS]
    return tuple(one for one in order if one.shown)
