"""Problems given the line as written."""

from __future__ import annotations

from pathlib import Path

from narrate.problems import Place, Problem, written
from narrate.reading.pointing import pointed
from tests.reading.folders import write

RULE = "id: a\nargues: {for: fuel.maize-cobs}\ncriteria:\n  - measure: share\n    of: {taxon: Pinsu}\n"


def problem(message: str, line: int) -> Problem:
    return Problem(
        place=Place(path="packs/a.yaml", line=line, column=1), severity="error", code="N502", message=message
    )


def test_an_unknown_word_is_pointed_at_where_it_stands(tmp_path: Path) -> None:
    """In the line of its leaf or below, whatever its case; a whole word, not a part of one."""
    write(tmp_path, {"packs/a.yaml": RULE})
    found = pointed(
        tmp_path,
        [problem("rule 'a': taxon 'pinsu' is not known", 4), problem("rule 'a': taxon 'maize' is not known", 1)],
    )

    assert [written(p) for p in found] == [
        "packs/a.yaml:5:17: error N502: rule 'a': taxon 'pinsu' is not known\n"
        "    5 |     of: {taxon: Pinsu}\n"
        "                        ^^^^^",
        "packs/a.yaml:1:1: error N502: rule 'a': taxon 'maize' is not known\n    1 | id: a\n        ^",
    ]


def test_what_is_not_in_a_file_stays_as_it_is(tmp_path: Path) -> None:
    """A file that is gone, or a problem of a whole file, is told without a line."""
    gone = problem("rule 'a': the same measure must be at least 2 and at most 1", 3)

    assert pointed(tmp_path, [gone]) == (gone,)
