"""Tables of the plants and the woods that were tested between the first phase and the last."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from narrate.documents.blocks import Table
from narrate.documents.inline import literal
from narrate.documents.latin import name_with_latin
from narrate.documents.leads import is_shown
from narrate.model.edition import Edition
from narrate.model.plant_groups import PlantChange
from narrate.telling.changes_listed import compared, probability

PLANTS, WOODS = "plants-tested", "woods-tested"


def changes_tested(edition: Edition) -> Iterator[Table]:
    """One table of plants and one of woods; none without two phases that hold samples, or finds enough."""
    found = compared(edition.project, edition.findings)
    if found is None:
        return
    names = (found.first.name, found.last.name)
    if found.plants:
        yield _table(edition, found.plants, names, PLANTS, "Plants", "named at least to genus (wood left aside)")
    if found.woods:
        of = "whose wood was looked at"
        yield _table(edition, found.woods, names, WOODS, "Woods", "named at least to genus", of)


def led_to_tests(edition: Edition) -> str:
    """'All plants that were tested stand in Table 9, and all woods in Table 10.'; empty where nothing was tested."""
    if not is_shown(edition, "results"):
        return ""
    whats = {PLANTS: "all plants that were tested stand", WOODS: "all woods that were tested stand"}
    led = " and ".join(f"{whats[table.anchor]} in {{{table.anchor}}}" for table in changes_tested(edition))
    return f"{led[0].upper()}{led[1:]}." if led else ""


def _table(
    edition: Edition, changes: Sequence[PlantChange], names: tuple[str, str], anchor: str, what: str, which: str,
    of: str = "",
) -> Table:  # fmt: skip
    early, late = map(literal, names)
    (n, m), ((_, before), (_, after)) = changes[0].of_samples, changes[0].contexts
    note = (
        f"{what} {which} and found in five samples or more of the two phases{f', of those {of}' if of else ''} "
        f"({changes[0].tested}). p: Fisher's exact test, two-sided; corrected: after Holm, for all of them. "
        "Undone without: contexts of which leaving out any single one brings the corrected p by samples to 0.05 or "
        "more; –: none, or it is that already. Samples of one context are not independent of each other, so that p by "
        "contexts is the stricter."
    )
    return Table(
        caption=f"{what} tested between {early} and {late}.",
        columns=(
            what[:-1], f"{early}, samples of {n}", f"{late}, samples of {m}", "p", "p corrected",
            f"{early}, contexts of {before}", f"{late}, contexts of {after}", "p by contexts",
            "p by contexts, corrected", "Undone without (n contexts)",
        ),
        rows=tuple(_row(edition, change) for change in changes),
        note=note,
        anchor=anchor,
        numbers=tuple(range(1, 10)),
        is_wide=True,
    )  # fmt: skip


def _row(edition: Edition, change: PlantChange) -> tuple[str, ...]:
    (a, b), ((c, _), (d, _)) = change.with_it, change.contexts
    tests = (change.p, change.p_holm), (change.p_contexts, change.p_contexts_holm)
    by_samples, by_contexts = (tuple(probability(p).replace("under ", "<") for p in pair) for pair in tests)
    undone = str(len(change.hangs_on)) if change.hangs_on else "–"
    return (_name(edition, change), str(a), str(b), *by_samples, str(c), str(d), *by_contexts, undone)


def _name(edition: Edition, change: PlantChange) -> str:
    """Latin, and the common name by which the text tells it."""
    known = edition.packs.taxa[change.taxon]
    common = known.trade_name or known.name
    latin = f"*{literal(known.id)}*" if known.rank in ("species", "genus") else name_with_latin(known.id, ())
    return f"{latin} ({literal(common)})" if common else latin
