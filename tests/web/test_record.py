"""The track record page, and the links of claims to it."""

from __future__ import annotations

import re
from pathlib import Path

from narrate.reading.packs import read_packs
from narrate.reading.track_record import shipped_track_record
from narrate.web.record import RecordView


def test_every_line_of_a_statement_has_an_address_of_its_own() -> None:
    """No two lines of statements share an anchor."""
    view = RecordView(shipped_track_record(), read_packs(("temperate-europe",))[0])
    anchors = [line.anchor for line in view.of_claims.values()]

    assert anchors
    assert len(anchors) == len(set(anchors))


def test_claims_of_the_team_lead_to_their_line_of_the_record(told_example: Path) -> None:
    """Every link to the record from a page of evidence names a line that stands there."""
    review = told_example / "out" / "review"
    page = (review / "track-record.html").read_text(encoding="utf-8")
    asked = {
        anchor
        for path in (review / "evidence").glob("*.html")
        for anchor in re.findall(r"track-record\.html#([\w-]+)", path.read_text(encoding="utf-8"))
    }

    assert asked
    assert [anchor for anchor in sorted(asked) if f'id="{anchor}"' not in page] == []


def test_visitors_see_no_track_record(told_example: Path) -> None:
    """The page is for the team; the public method page says in words what was tried."""
    public = told_example / "out" / "public"

    assert not (public / "track-record.html").exists()
    assert "and not with the past" in (public / "method.html").read_text(encoding="utf-8")
