"""What is worked out of the whole dig for the pages of both sites."""

from __future__ import annotations

from functools import partial

from narrate.judging.kept_units import KeptUnits
from narrate.measures.studies import studies
from narrate.model.studies import Studies
from narrate.pipeline.judged import Judged
from narrate.pipeline.side_by_side import side_by_side


def studied(whole: Judged, public: Judged, kept: KeptUnits) -> dict[str, Studies]:
    """
    By site; worked out once where both sites know the same of what was counted.

    kept:  what was worked out before; what is worked out now is added to it.
    """
    if public.findings is whole.findings:
        found = studies(whole.project, whole.packs, kept)
        return {"review": found, "public": found}
    jobs = [partial(_of_one, public, kept), partial(_of_one, whole, kept)]
    (of_public, added), (of_whole, _) = side_by_side(jobs, is_large=whole.is_large)
    kept.now.update(added)
    return {"review": of_whole, "public": of_public}


def _of_one(part: Judged, kept: KeptUnits) -> tuple[Studies, dict[bytes, bytes]]:
    """What is worked out of one part of the dig, and what of it to keep: a copy of the process adds it in vain."""
    before = set(kept.now)
    found = studies(part.project, part.packs, kept)
    return found, {key: value for key, value in kept.now.items() if key not in before}
