"""
Builds one site in the words of one audience and nothing else, to be timed: `tell` has no such option.

    python -m tests.bench.one_audience FOLDER SITE

Everything is read, measured, judged, told, drawn and written anew, by as many processes as `tell` would take for it.
"""

from __future__ import annotations

import sys
from pathlib import Path

from narrate.pipeline.editions import edition_of, words_of
from narrate.pipeline.judged import judged, read
from narrate.pipeline.rubbish import seldom_looked_for
from narrate.web.build import build
from narrate.web.templates import templates_folder

AUDIENCE = "review"
"""Whose words are told, and the site that shows them."""


@seldom_looked_for()
def build_one(folder: Path, site: Path) -> None:
    """Writes the site; its pages of samples and contexts show the figures that they always do."""
    reading = read(folder)
    assert reading.project is not None and reading.packs is not None
    part = judged(reading.project, reading.packs)  # nothing that an earlier run kept is used
    words = words_of(folder, AUDIENCE, part, audiences=(AUDIENCE,))
    edition = edition_of(AUDIENCE, part, words.narratives, reading.problems, "bench")
    build(edition, templates_folder(), site, images=folder)


if __name__ == "__main__":
    build_one(Path(sys.argv[1]), Path(sys.argv[2]))
