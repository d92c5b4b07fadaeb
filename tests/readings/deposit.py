"""A single deposit as a handbook has it: common practice, no source; the counts are invented."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from tests.readings.reading import Place, Reading

PRACTICE = "common practice, no source"


def deposit(
    id: str,
    region: str,
    place: Place,
    holds: Mapping[str, str],
    must_not: Sequence[str] = (),
    at_most: Mapping[str, str] | None = None,
    years: tuple[int, int] = (950, 1050),
    preservation: str = "charred",
) -> Reading:
    return Reading(
        id=f"deposit-{id}",
        source=PRACTICE,
        known=PRACTICE,
        printed="Counts invented to show the practice.",
        concluded=f"{', '.join(holds)}; not {', '.join(must_not)}.",
        region=region,
        places=[place],
        holds=holds,
        must_not=must_not,
        at_most=at_most or {},
        years={"early": years},
        preservation=preservation,
    )
