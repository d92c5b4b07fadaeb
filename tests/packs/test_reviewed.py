"""A rule is called reviewed only where its basis was read."""

from __future__ import annotations

from narrate.reading.packs import read_packs


def test_reviewed_rules_rest_on_what_was_read() -> None:
    """No rule that rests on memory, convention or judgement is called reviewed, and some rules are."""
    packs, _ = read_packs(("eastern-north-america",))
    reviewed = [rule for rule in packs.rules.values() if rule.status == "reviewed"]

    assert len(reviewed) > 5
    assert [rule.id for rule in reviewed if rule.known != "read"] == []
