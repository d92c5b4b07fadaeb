"""Works out the record that ships with the packs, and fits the strength table: `python -m tests.trials.refresh`."""

from __future__ import annotations

import sys
import time

import numpy as np

from narrate.deposit.track_record_file import track_record_json
from narrate.reading.packs import read_packs
from narrate.reading.track_record import SHIPPED
from narrate.trials.activities import Trial
from narrate.trials.fit import fitted, log_loss, readings
from narrate.trials.run import REGIONS, judged_run, track_record

DIGS = 150
"""Usual digs of 20 contexts in each region: 9,000 contexts."""
FITTED_ON, HELD_OUT = 100, 200
"""Seeds of the two halves of the worlds on which the strength table is tried."""
QUESTIONS = frozenset({"fuel", "food", "processing", "field", "season", "deposit"})


def main() -> None:
    packs = {name: read_packs((name,))[0] for name in REGIONS}
    began = time.process_time()
    record = track_record(packs, digs=DIGS, progress=lambda step: print(f"… {step}", file=sys.stderr))
    SHIPPED.write_text(track_record_json(record), encoding="utf-8")
    print(f"{record.contexts:,} usual contexts and others: {time.process_time() - began:.0f} s of one core")
    for line in record.of("grade"):
        print(f"{line.grade:20s} {line.hits.right:6d} of {line.hits.claims:6d}  {line.hits.rate:.3f}")
    halves = [
        readings(
            [judged_run(REGIONS[n], packs[n], Trial(digs=120), seed + i) for i, n in enumerate(sorted(packs))],
            QUESTIONS,
        )
        for seed in (FITTED_ON, HELD_OUT)
    ]
    given = next(iter(packs.values())).weights
    found = fitted(halves[0], given)
    before = [*(given[w] for w in found.weights), 0.0]
    after = [*found.weights.values(), found.shift]
    print("weights given", dict(given), "fitted", {w: round(v, 2) for w, v in found.weights.items()}, "shift of priors",
          round(found.shift, 2))  # fmt: skip
    for name, table in (("given", before), ("fitted", after)):
        losses = [log_loss(half, np.array(table)) for half in halves]
        print(f"{name}: log loss {losses[0]:.4f} where fitted, {losses[1]:.4f} on the other half")


if __name__ == "__main__":
    main()
