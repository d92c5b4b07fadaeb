"""Time of simulating, measuring and judging 5,000 contexts: `OMP_NUM_THREADS=1 python -m tests.benchmarks.trials`."""

from __future__ import annotations

import time

from narrate.reading.packs import read_packs
from narrate.trials.activities import Trial
from narrate.trials.run import REGIONS, claims_of

DIGS = 84
"""In each of three regions; 20 contexts each: 5,040 contexts."""


def main() -> None:
    packs = {name: read_packs((name,))[0] for name in REGIONS}
    for seed in (1, 2, 3):
        began = time.process_time()
        found = claims_of(packs, Trial(digs=DIGS), seed)
        print(
            f"{found.contexts:,} contexts, {found.grade.size:,} claims: {time.process_time() - began:.1f} s of one core"
        )


if __name__ == "__main__":
    main()
