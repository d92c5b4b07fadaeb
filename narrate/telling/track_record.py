"""The record on simulated digs, in lines for a terminal."""

from __future__ import annotations

from narrate.model.claims import GRADES
from narrate.model.packs import Packs
from narrate.model.track_record import Hits, TrackRecord

TABLES = (
    ("grade", "By grade"),
    ("items", "By items counted in the context, wood left out"),
    ("litres", "By litres floated"),
    ("sorted", "By the share of the light fraction that was sorted"),
    ("deposit", "By how the deposit truly formed"),
    ("support", "By support"),
    ("elsewhere", "On digs drawn otherwise"),
    ("broken", "With one assumption of the model broken"),
)


def track_record_text(record: TrackRecord, packs: Packs) -> str:
    """What was simulated, how often claims were right, and the statements that fell short of their grade."""
    bands = dict(GRADES)
    lines = [
        f"{record.contexts:,} contexts of simulated digs; {record.claims:,} claims, of which "
        f"{record.false_claims:,} were false: {record.false_claims / max(record.contexts, 1):.2f} a context.",
        "This measures how well the rules agree with a model of how plants come to be found, not with the past.",
    ]
    for table, title in TABLES:
        lines += ["", title]
        lines += [f"  {' · '.join(filter(None, (n.name, n.grade))):52s} {hits_text(n.hits)}" for n in record.of(table)]
    short = [n for n in record.of("statement") if n.hits.claims >= 20 and n.hits.rate < bands[n.grade]]  # type: ignore[index]
    lines += ["", "Statements that were right less often than their grade promises"]
    lines += [f"  {packs.statements[n.name].title + ' · ' + n.grade:52s} {hits_text(n.hits)}" for n in short]  # type: ignore[index]
    if not short:
        lines.append("  none of those with twenty claims or more")
    return "\n".join(lines)


def hits_text(hits: Hits) -> str:
    """'1,420 of 1,500 claims right, 95 % (93–96)'."""
    if hits.claims == 0:
        return "no claims"
    ends = f"({100 * hits.low:.0f}–{100 * hits.high:.0f})"
    return f"{hits.right:,} of {hits.claims:,} claims right, {100 * hits.rate:.0f} % {ends}"
