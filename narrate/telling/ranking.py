"""The ranking laid out for a terminal."""

from __future__ import annotations

from collections.abc import Sequence

from narrate.model.next_steps import COSTS
from narrate.model.strength import LEAVE_IT, MOST_POINTS, Ranking, Strength

FULL, EMPTY = "●", "·"


def ranking_text(ranking: Ranking) -> str:
    """A table a level, then what each part means and what the whole dig would gain by."""
    blocks = [_table(level, rows, ranking) for level, rows in ranking.by_level]
    blocks.append(_legend(ranking))
    if ranking.of_dig:
        blocks.append(
            "\n".join(["For the whole dig", *(f"  {step.says} ({COSTS[step.cost - 1]})" for step in ranking.of_dig)])
        )
    return "\n\n".join(blocks)


def marks(points: int) -> str:
    """
    >>> marks(2)
    '●●·'
    """
    return FULL * points + EMPTY * (MOST_POINTS - points)


def step_text(strength: Strength) -> str:
    """The next step with its rough cost, or that the subject is best left."""
    step = strength.next_step
    return LEAVE_IT if step is None else f"{step.says} ({COSTS[step.cost - 1]}; {', '.join(step.questions)})"


def _table(level: str, rows: Sequence[Strength], ranking: Ranking) -> str:
    head = [level, "kind", *(part.title for part in ranking.meant), "sum", "next step"]
    body = [
        [
            strength.subject.id,
            strength.kind,
            *(f"{part.text} {marks(part.points)}" for part in strength.parts),
            f"{strength.points} of {ranking.most}",
            step_text(strength),
        ]
        for strength in rows
    ]
    widths = [max(len(row[i]) for row in [head, *body]) for i in range(len(head) - 1)]
    return "\n".join(_line(row, widths) for row in [head, *body])


def _line(cells: Sequence[str], widths: Sequence[int]) -> str:
    """Figures to the right so that their marks stand below each other; words to the left."""
    words = [cell.ljust(width) for cell, width in zip(cells[:2], widths[:2], strict=True)]
    figures = [cell.rjust(width) for cell, width in zip(cells[2:-1], widths[2:], strict=True)]
    return "  ".join([*words, *figures, cells[-1]]).rstrip()


_OF_STEPS = (
    "The next step is what serves most questions for its cost; in brackets the rough cost and the questions. "
    "'Leave it': no work that is known here would firm up or settle anything."
)


def _legend(ranking: Ranking) -> str:
    width = max(len(part.title) for part in ranking.meant)
    lines = [f"  {part.title.ljust(width)}  {part.explained}" for part in ranking.meant]
    return "\n".join(["The sum is that of the marks; what each part gives them for:", *lines, "", _OF_STEPS])
