"""A change between phases put to the test: what stands against it, and whether the way of flotation could make it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from narrate.model.ids import Subject
from narrate.model.narrative import Sentence
from narrate.model.plant_groups import PlantGroup
from narrate.model.sampling import Sample
from narrate.model.stratigraphy import Context, Phase
from narrate.telling import english, numbers, setting
from narrate.telling.amounts_told import per_litre_sentences
from narrate.telling.behind import is_meant
from narrate.telling.lots import FOOD_GROUPS
from narrate.telling.mixing import between_fills
from narrate.telling.observations import notes_of
from narrate.telling.page import Page
from narrate.telling.spread import ids_listed, name_of, out_of_text, samples_of_phase
from narrate.telling.through_time import ENOUGH, Pair, changed_groups

EXCEPTIONS = 3
"""Groups of plants whose exceptions are told."""


def tested_sentences(page: Page, first: Phase, last: Phase) -> list[Sentence]:
    """Where the plants that changed lie in the phase that holds few of them, and whether recovery explains it."""
    changed, _ = changed_groups(page, first, last)
    if page.is_plain or not changed:
        return []
    sentences: list[Sentence] = []
    for pair in changed[:EXCEPTIONS]:
        sentences += _exception(page, pair, first, last)
    return sentences + _recovery(page, changed, first, last)


def amount_sentences(page: Page, first: Phase, last: Phase) -> list[Sentence]:
    """
    Items per litre of the plants that changed; nutshell by weight per litre in the two phases, and what is left of it
    without the deposit that holds most.

    Presence in samples says how often a thing was found and nothing of how much there was.
    """
    sentences = per_litre_sentences(page, changed_groups(page, first, last)[0], first, last)
    told = [_shell(page, phase) for phase in (first, last)]
    if page.is_plain or any(one is None for one in told):
        return sentences
    before, after = told[0], told[1]
    assert before is not None and after is not None
    larger = "more" if after.per_l > before.per_l else "less"
    names = [setting.phase_name(phase) for phase in (first, last)]
    unit = f"g per {page.litre}"
    text = (
        f"by weight there was {larger} nutshell in {names[1]}, {_weight(after.per_l)} {unit} against "
        f"{_weight(before.per_l)} in {names[0]}"
    )
    if max(before.share, after.share) > 0.5:
        # Like with like: what is left out of the one phase is left out of the other as well.
        text += (
            f"; without the richest context of each ({after.richest} and {before.richest}) it is "
            f"{_weight(after.without)} against {_weight(before.without)}"
        )
    unweighed = _unweighed_shell(page, (first, last))
    were = english.agreed(unweighed, "was", "were")
    least = (
        f"; {page.count(unweighed, 'piece', 'pieces')} {were} not weighed, so that both are minima, and"
        if unweighed
        else ";"
    )
    open_to_chance = "weights have no interval here, so that chance is not ruled out"
    return sentences + page.say([*before.refs, *after.refs], f"{text}{least} {open_to_chance}")


def _unweighed_shell(page: Page, phases: Sequence[Phase]) -> int:
    """Pieces of nutshell of the phases in rows of the count sheets without a weight."""
    parts = page.dig.packs.words.parts
    contexts = {c.id for phase in phases for c in _contexts(page, phase)}
    samples = {s.id for s in page.dig.project.samples if s.context in contexts}
    rows = [
        row for row in page.dig.project.counts
        if row.sample in samples and row.mass_g is None and row.condition in page.dig.ancient
    ]  # fmt: skip
    return sum(row.count.number or 0 for row in rows if "nutshell" in getattr(parts.get(row.part), "roles", ()))


def _weight(value: float) -> str:
    return numbers.figure(value, 2 if value >= 0.01 else 3)


@dataclass(frozen=True, slots=True, kw_only=True)
class Shell:
    """Grams of nutshell per litre of a phase, and what is left without the context that holds most of it."""

    per_l: float
    without: float
    richest: str
    share: float
    """Of the nutshell of the phase that lay in its richest context."""
    refs: tuple[str, ...]


def _shell(page: Page, phase: Phase) -> Shell | None:
    """The nutshell of a phase by weight; None where none was weighed, or in one context alone."""
    subject = Subject(level="phase", id=phase.id)
    found = page.dig.found(subject)
    whole = found.measurements.get("nutshell_mass_per_l") if found is not None else None
    if whole is None or whole.value is None:
        return None
    refs = [page.dig.measure_ref(subject, "nutshell_mass_per_l")]
    masses = []
    for context in _contexts(page, phase):
        own = page.dig.found(Subject(level="context", id=context.id))
        mass = own.measurements.get("nutshell_mass") if own is not None else None
        if own is not None and mass is not None and mass.value is not None and own.litres:
            masses.append((mass.value, own.litres, context))
    total, litres = sum(m for m, _, _ in masses), sum(n for _, n, _ in masses)
    if not masses or not total:
        return None
    most, soil, richest = max(masses, key=lambda one: one[0])
    if litres <= soil:
        return None
    refs.append(page.dig.measure_ref(Subject(level="context", id=richest.id), "nutshell_mass"))
    return Shell(
        per_l=whole.value, without=(total - most) / (litres - soil), richest=setting.context_name(page, richest),
        share=most / total, refs=tuple(refs),
    )  # fmt: skip


# What stands against the change


def _exception(page: Page, pair: Pair, first: Phase, last: Phase) -> list[Sentence]:
    a, b = pair
    poor, phase, other = (a, first, last) if a.share < b.share else (b, last, first)
    if not poor.k or poor.k * 2 > poor.n:
        return []
    holders = [(c, items) for c in _contexts(page, phase) if (items := _items(page, c, poor.group))]
    found = page.dig.found(Subject(level="phase", id=phase.id))
    everything = found.measurements.get("items") if found is not None else None
    if not holders or len(holders) > 6 or everything is None or not everything.value:
        return []
    total = sum(items for _, items in holders)
    share = numbers.percent(total / everything.value) if total / everything.value >= 0.01 else "under 1%"
    where = page.listed(_items_of(c, items, i == 0) for i, (c, items) in enumerate(holders))
    name = name_of(page, poor.group)
    verb = "is" if poor.group.is_singular else "are"
    few = page.count(total, "item", "items")
    refs = [*poor.refs, page.dig.measure_ref(Subject(level="phase", id=phase.id), "items")]
    samples = page.count(poor.k, "sample", "samples")
    hold = english.agreed(poor.k, "holds", "hold")
    of_all, sure = f"{share} of what the phase holds besides wood", _how_sure(page, holders, other)
    return page.say(
        refs,
        f"{samples} of {setting.phase_name(phase)} {hold} {name}, {few} in all and {of_all}: {where}{sure}",
        f"in {setting.phase_name(phase)} {name} {verb} confined to {where}, with {few} in all, {of_all}{sure}",
    ) + _noted_against(page, [c for c, _ in holders], poor.group)


def _items_of(context: Context, items: int, is_first: bool) -> str:
    """'C01 (1 item)', then 'C04 (2)'."""
    of = f" {english.agreed(items, 'item', 'items')}" if is_first else ""
    return f"{english.literal(context.id)} ({items}{of})"


def _noted_against(page: Page, holders: Sequence[Context], group: PlantGroup) -> list[Sentence]:
    """What the laboratory noted of such finds that does not agree with their being what the group says."""
    statements = {statement for statement, of in FOOD_GROUPS.items() if of == group.id}
    for context in holders:
        for note in notes_of(page, context):
            if note.observation.noted_of == "find" and statements & set(note.observation.against):
                means = f" ({note.observation.means})" if note.observation.means else ""
                who, quote = f"{note.who} ({english.literal(context.id)})", english.literal(note.quote)
                return page.say(
                    [note.ref, page.dig.record_ref(Subject(level="context", id=context.id))],
                    f"of {who} the laboratory notes “{quote}”{means}, so that not all of these need be of a crop",
                )
    return []


def _how_sure(page: Page, holders: Sequence[tuple[Context, int]], other: Phase) -> str:
    """'; C16 shares feature F7 with C08 of the Early hamlet, so that older seeds in it are possible'."""
    contexts = page.dig.project.contexts
    for context, _ in holders:
        met = [
            c.id for c in contexts if context.feature and c.feature == context.feature and c.phase == other.id
        ]  # fmt: skip
        if met:
            age = "older" if (other.start or 0) < (_start(page, context) or 0) else "later"
            feature = english.literal(str(context.feature))
            return (
                f"; {english.literal(context.id)} shares feature {feature} with {ids_listed(page, met)} of "
                f"{setting.phase_name(other)}, so that {age} finds in it cannot be ruled out"
                f"{between_fills(page, [context, *(c for c in contexts if c.id in met)])}"
            )
    loose = [c.id for c, _ in holders if c.security in ("open", "disturbed", "unknown") or c.deposit == "tertiary"]
    if not loose:
        return "; all of these deposits were recorded as sealed" if len(holders) > 1 else ""
    if len(loose) == len(holders):
        return "; none of these deposits was recorded as sealed, so that strays cannot be ruled out"
    return f"; of these {ids_listed(page, loose)} {english.agreed(len(loose), 'was', 'were')} not sealed"


def _start(page: Page, context: Context) -> int | None:
    phase = page.dig.project.phase(context.phase)
    return phase.start if phase is not None else None


def _contexts(page: Page, phase: Phase) -> list[Context]:
    return [c for c in page.dig.project.contexts if c.phase == phase.id]


def _items(page: Page, context: Context, group: PlantGroup) -> int:
    found = page.dig.found(Subject(level="context", id=context.id))
    tallies = [t for t in found.tallies if t.condition in page.dig.ancient] if found is not None else []
    return sum(t.counted for t in tallies if is_meant(group.of, t, page.dig.packs))


# Whether recovery explains it


def _recovery(page: Page, changed: Sequence[Pair], first: Phase, last: Phase) -> list[Sentence]:
    """The change looked for among samples of one method of flotation alone, and marked seeds that came back."""
    before, after = samples_of_phase(page.dig, first.id), samples_of_phase(page.dig, last.id)
    methods = {s.method for s in (*before, *after) if s.method}
    refs = [ref for a, b in changed for ref in (*a.refs, *b.refs)]
    marked = _marked(page, before, after)
    if len(methods) < 2:
        return page.say(refs, f"recovery is no cause of it that can be seen: {marked}") if marked else []
    groups = [a.group for a, _ in changed[:2]]
    texts, ways = [], []
    for method in sorted(methods):
        sides = [[s for s in samples if s.method == method] for samples in (before, after)]
        if min(map(len, sides)) < ENOUGH:
            continue
        told = []
        for group, (a, b) in zip(groups, changed, strict=False):
            k, m = (sum(_holds(page, s, group) for s in side) for side in sides)
            ways.append((m / len(sides[1]) > k / len(sides[0])) == (b.share > a.share))
            shares = [out_of_text(n, len(side)) for n, side in zip((k, m), sides, strict=True)]
            verb = "was" if group.is_singular else "were"
            told.append(f"{name_of(page, group)} {verb} in {shares[0]} samples and later in {shares[1]}")
        texts.append(f"among samples floated by {english.literal(method)}, {', and '.join(told)}")
    if not texts:
        if {s.method for s in before} & {s.method for s in after}:
            return []
        unlike = "the phases were floated by other methods, so that recovery cannot be ruled out as a cause of it"
        return page.say([page.record], unlike)
    said = "; ".join(texts) + (f"; {marked}" if marked else "")
    if all(ways):
        return page.say(refs, f"the way of flotation does not account for the change: {said}")
    return page.say(refs, f"recovery may have a part in the change, for the methods of flotation do not agree: {said}")


def _holds(page: Page, sample: Sample, group: PlantGroup) -> bool:
    found = page.dig.found(Subject(level="sample", id=sample.id))
    tallies = [t for t in found.tallies if t.condition in page.dig.ancient] if found is not None else []
    return any(is_meant(group.of, t, page.dig.packs) for t in tallies)


def _marked(page: Page, before: Sequence[Sample], after: Sequence[Sample]) -> str:
    """'marked seeds came back at 86–96% in the one phase and 42–94% in the other'."""
    spans = []
    for samples in (before, after):
        shares = [t.recovered / t.added for s in samples if (t := s.recovery_test) is not None and t.added]
        if not shares:
            return ""
        low, high = numbers.percent(min(shares)), numbers.percent(max(shares))
        tests = page.count(len(shares), "test", "tests")
        spans.append(f"{low} ({tests})" if low == high else f"{low} to {high} ({tests})")
    return f"of the marked seeds, tests returned {spans[0]} in the first phase and {spans[1]} in the last"
