"""What intake prints: the picture of each table, what was read, what was left out, what is taken for granted."""

from __future__ import annotations

from collections import Counter

from narrate.reading.intake.take_in import TakenIn

_MEND = "where it is wrong, change the roles of rows and columns in the layout and run intake again"


def summary(taken: TakenIn, notes: tuple[str, ...] = ()) -> str:
    """All that intake understood, in words and pictures."""
    if taken.layout is None:
        return "Nothing could be read; see the problems."
    blocks = list(taken.pictures)
    rows = taken.rows
    samples = {row.sample for row in rows} | {id for id in taken.facts if not id.startswith("\x00")}
    names = {row.identification.written for row in rows}
    amounts = Counter(row.count.amount for row in rows)
    words = ", ".join(f"{n} {amount}" for amount, n in amounts.most_common())
    blocks.append(f"Read: {len(rows)} finds of {len(names)} names in {len(samples)} samples ({words or 'no finds'}).")
    signs = {row.count.written for row in rows if row.count.amount == "noted as present"}
    if rows and all(row.count.number is None for row in rows):
        blocks.append("Nothing in it was counted, so there is no density and no diversity; presence gives ubiquity.")
    elif signs:
        blocks.append(f"Signs and classes that are no counts: {', '.join(sorted(signs)[:12])}.")
    if taken.doubts:
        # What is doubtful comes before what is left out, and says where it is mended.
        loud = sorted(taken.doubts, key=lambda doubt: not doubt.startswith("DOUBTFUL"))
        mend = "" if taken.is_given else f"\n  {_MEND}"
        blocks.append("To look at:\n" + "\n".join(f"  {doubt}" for doubt in loud) + mend)
    left = [*taken.left_out, *taken.layout.left_out]
    if left:
        blocks.append("Left out:\n" + "\n".join(f"  {line}" for line in left))
    blocks += notes
    return "\n\n".join(blocks)

