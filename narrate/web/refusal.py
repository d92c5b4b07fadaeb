"""
What a site cannot be built from or into, as problems that a person can mend.

Exception
└── Refused: carries the problems; nothing was written
"""

from __future__ import annotations

from narrate.problems import Problem, written


class Refused(Exception):
    """A site was not built. `problems` says why; the first is also `problem`."""

    def __init__(self, *problems: Problem) -> None:
        super().__init__("\n".join(written(problem) for problem in problems))
        self.problems = problems

    @property
    def problem(self) -> Problem:
        return self.problems[0]
