"""What the records say of sampling, recovery and laboratory work, in sentences; and what they do not say."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence

from narrate.documents.blocks import Block, Paragraph
from narrate.documents.certainty import certainty
from narrate.documents.dates import dates_told
from narrate.documents.design_questions import questions_answered
from narrate.documents.inline import literal
from narrate.documents.kernels_counted import kernels_told
from narrate.documents.leads import MOST_NAMED, is_shown
from narrate.documents.unwritten import missing, told_of
from narrate.model.claims import Claim
from narrate.model.edition import Edition
from narrate.model.ids import FILED, SITE, Subject
from narrate.model.report_blocks import BLOCKS, arranged
from narrate.model.sampling import Sample
from narrate.model.sorting_on_record import finer_than_classes, silent_on_sorting
from narrate.model.stratigraphy import Context
from narrate.model.work_left import ASKED, DATE_OWN, KEPT, SORT_HEAVY, LeftUndone, left_undone, own_dates, paying
from narrate.telling.numbers import count, years
from narrate.telling.one_feature import features_of
from narrate.telling.told_readings import told_readings

DATES_FROM = "work.date-candidate"
"""The statement that a context holds what can be dated."""


def introduction(edition: Edition) -> Iterator[Block]:
    project = edition.project
    site = edition.findings.of(Subject(level="site", id=SITE))
    items = site.measurements["items"].value
    sampled = len({sample.context for sample in project.samples})
    litres = "no recorded volume" if site.litres is None else f"{site.litres:,.4g} litres"
    yield Paragraph(
        text=f"The assemblage comes from {_many(len(project.samples), 'flotation sample')} ({litres}) of "
        f"{_many(sampled, 'context')}" + (f" and holds {items:,.0f} counted items besides wood." if items else ".")
    )
    kinds: dict[str, list[Context]] = {}
    for context in (c for c in project.contexts if project.samples_of(c.id)):
        kinds.setdefault(context.kind, []).append(context)
    parts = ", ".join(f"{literal(kind)} ({_contexts(found)})" for kind, found in sorted(kinds.items()))
    listed = " The samples are listed in {register}." if is_shown(edition, "register") else ""
    yield Paragraph(text=f"Sampled contexts by kind: {parts}.{listed}")
    for phase in project.phases:
        when = years(phase.start, phase.end, phase.dates)
        basis = f", on the basis of {literal(phase.basis.strip().rstrip('.'))}" if phase.basis else ""
        yield Paragraph(text=f"{literal(phase.name)}: {when or 'no years given'}{basis}.", kind="item")
    alone = [context for context in project.contexts if project.phase(context.phase) is None]
    if alone and project.phases:
        named = ", ".join(f"{literal(context.id)} ({literal(context.kind)})" for context in alone)
        stay = "belongs to no phase and stays" if len(alone) == 1 else "belong to no phase and stay"
        yield Paragraph(text=f"Without a phase: {named} {stay} out of every comparison of phases.", kind="item")
    yield from dates_told(edition)
    yield from _given(edition, "significance", "nature and significance of the assemblage for its period and region")
    yield from _given(edition, "aims", "aims of the plant study and the questions of the project design")
    yield Paragraph(text=_access(edition))


def _contexts(found: Sequence[Context]) -> str:
    """'3', and where some are of one feature '4 contexts of 3 features'."""
    features = len(features_of(found))
    return str(len(found)) if features == len(found) else f"{len(found)} contexts of {_many(features, 'feature')}"


def _access(edition: Edition) -> str:
    """What may not be released. An open copy does not say what it withholds, nor how much."""
    if edition.audience == "public":
        return "Access: what the project restricts stands in no open copy, and this is one."
    disclosure = edition.project.disclosure
    fields = ", ".join(sorted(disclosure.restricted_fields))
    hidden = len(disclosure.restricted_contexts)
    parts = [f"{count(hidden)} context{'s' * (hidden > 1)}"] if hidden else []
    parts += [f"the {literal(fields)} in every record"] if fields else []
    if not parts:
        return "Access: the project restricts nothing in its records."
    return f"Access: the project restricts {' and '.join(parts)}; nothing of that stands in an open copy."


def sampling(edition: Edition) -> Iterator[Block]:
    samples = edition.project.samples
    litres = sorted(s.volume_l for s in samples if s.volume_l is not None)
    if litres:
        middle = (litres[(len(litres) - 1) // 2] + litres[len(litres) // 2]) / 2
        is_each = len(litres) == len(samples)
        which = "Each sample has" if is_each else f"Of {len(samples):,} samples {len(litres):,} have"
        yield Paragraph(
            text=f"{which} a recorded volume, from {litres[0]:g} to {litres[-1]:g} litres (median {middle:g}), "
            f"{sum(litres):,.4g} litres in all."
        )
    methods = Counter(s.method or "not recorded" for s in samples)
    yield Paragraph(
        text="Method of flotation: " + "; ".join(f"{literal(m)} ({n})" for m, n in sorted(methods.items())) + "."
    )
    meshes = Counter(
        ", ".join(f"{name} fraction {mm:g} mm" for name, mm in sorted(s.mesh_mm.items(), reverse=True))
        or "not recorded"
        for s in samples
    )
    yield Paragraph(text="Mesh: " + "; ".join(f"{m} ({_many(n, 'sample')})" for m, n in sorted(meshes.items())) + ".")
    silent = silent_on_sorting(samples)
    in_part = [s for s in samples if any(c.proportion_sorted < 1 for c in s.size_classes)]
    heavy = Counter(None if s.heavy_fraction is None else s.heavy_fraction.sorted for s in samples)
    listed = "; the shares stand in {register}" if is_shown(edition, "register") else ""
    if in_part:
        first = f"A size class was sorted in part in {_many(len(in_part), 'sample')}{listed}."
    else:
        first = "No size class on record was sorted in part." + ("" if silent else " All were sorted in full.")
    sorted_or_not = [
        f"{said} {heavy[key]:,}"
        for key, said in ((True, "sorted in"), (False, "not sorted in"), (None, "not spoken of in the records of"))
        if heavy[key]
    ]
    heavy_told = f"Of {_many(len(samples), 'sample')} the heavy fraction was {_listed(sorted_or_not)}."
    yield Paragraph(text=f"{first} {heavy_told}" if samples else first)
    if unsaid := _unsaid_of_sorting(samples):
        yield Paragraph(text=unsaid)
    tests = [s for s in samples if s.recovery_test is not None]
    if tests:
        rates = "; ".join(
            f"{s.id} {s.recovery_test.recovered} of {s.recovery_test.added}"
            f" ({100 * s.recovery_test.recovered / s.recovery_test.added:.0f}%)"
            for s in tests
            if s.recovery_test
        )
        yield Paragraph(text=f"Recovery tests with marked charred seeds: {literal(rates)}.")
    else:
        yield Paragraph(text="No recovery test was recorded, so the loss in flotation is not known.")
    sterile = [s.id for s in samples if s.sterile]
    if sterile:
        listed = literal(", ".join(sterile))
        stays = "which stays" if len(sterile) == 1 else "which stay"
        yield Paragraph(text=f"Nothing was found in {listed}, {stays} in every share of samples.")
    yield from _given(edition, "sampling_strategy", "how contexts were chosen for sampling, and how much was taken")
    yield from _given(edition, "departures", "where the work departed from the plan, or that it did not")


def laboratory(edition: Edition) -> Iterator[Block]:
    project, packs = edition.project, edition.packs
    yield from _given(edition, "nomenclature", "the flora and the list of crops whose names are followed")
    parts = sorted({row.part for row in project.counts})
    rules = [(packs.words.parts[p].plural, packs.words.parts[p].counting) for p in parts if p in packs.words.parts]
    regions = ", ".join(region.replace("-", " ").title() for region in packs.regions)
    yield Paragraph(
        text=f"Names were matched with the lists of plants of {literal(regions)} that come with narrate "
        f"{edition.version}; each is also kept as it was written. 'cf.' stands before a name that the specimen "
        "resembles and that is not certain. Counts are of the share sorted; estimates for the unsorted share are named "
        "as such and no test uses them."
    )
    yield Paragraph(text="What one item is, by part:")
    for plural, counting in rules:
        if counting:
            yield Paragraph(text=f"{literal(plural)}: {literal(counting)}", kind="item")
    unsaid = [plural for plural, counting in rules if not counting]
    if unsaid:
        yield Paragraph(text=f"Without a rule of their own, each piece is one item: {literal(', '.join(unsaid))}.")
    yield from kernels_told(edition)
    other = Counter(
        r.condition for r in project.counts if r.condition not in packs.words.preservations[project.preservation]
    )
    if other:
        rows = ", ".join(f"{condition} ({_many(n, 'row')})" for condition, n in sorted(other.items()))
        yield Paragraph(text=f"In the count sheets, and not taken as evidence of the past: {literal(rows)}.")
    yield from _given(edition, "identification", "magnification, keys and atlases used, and who identified what")
    yield from _given(edition, "reference_collection", "the reference collection with which finds were compared")
    yield from certainty(edition)


def _given(edition: Edition, key: str, what: str) -> Iterator[Block]:
    """What the project says under a key of its report, or the place where it must be written."""
    said = told_of(edition.project.report, key)
    yield Paragraph(text=literal(" ".join(said.split()))) if said else missing(f"{what}. Give it as report: {key}.")


def _unsaid_of_sorting(samples: Sequence[Sample]) -> str:
    """Where the records do not say how far a sample was sorted: reckoned as sorted whole, and told as not known."""
    said = []
    silent = silent_on_sorting(samples)
    sterile = [sample.id for sample in samples if sample.sterile and not sample.size_classes]
    if silent:
        listed = _listed([literal(id) for id in silent])
        said.append(
            f"No size class is on record for {listed}; they are reckoned as sorted in full, which is not known."
        )
    if sterile:
        listed = _listed([literal(id) for id in sterile])
        either = " either" if silent else ""
        said.append(f"No size class is on record for {listed}{either}, in which nothing was found.")
    for one in finer_than_classes(samples):
        meshes = _listed([f"{mm:g}" for mm in one.meshes_mm])
        said.append(
            f"No size class below {one.smallest_mm:g} mm is on record for {_many(len(one.samples), 'sample')}, whose "
            f"mesh was finer ({meshes} mm): whether what lies between was sorted is not said, so that the smallest "
            "seeds may be under-represented."
        )
    return " ".join(said)


HELD_DOWN = (
    "What holds down the readings that the text tells as such, hints and what is left out apart, with the number of "
    "readings and what would lift it:"
)


def limits(edition: Edition) -> Iterator[Block]:
    """How the questions of the design stand, what holds the readings down, and the work that would do most."""
    yield from questions_answered(edition)
    found: Counter[tuple[str, str]] = Counter()
    for claim in told_readings(edition.project, edition.claims):
        found.update({(limit.says, limit.lifts) for limit in claim.limits})
    if found:
        yield Paragraph(text=HELD_DOWN)
    for (says, lifts), n in sorted(found.items(), key=lambda item: (-item[1], item[0]))[:12]:
        yield Paragraph(text=f"{literal(says)} ({_many(n, 'reading')}); lifted by {literal(lifts)}", kind="item")
    steps = [s for about in edition.claims.steps if about.level != "sample" for s in paying(edition.claims, about)]
    unique = {step.says: step for step in sorted(steps, key=lambda s: s.in_order()) if step.id != DATE_OWN}
    if unique:
        yield Paragraph(text="Work that would do most for its cost:")
    for says in list(unique)[:15]:
        about = unique[says].about
        where = f"{about.id}: " if about.level == "context" and about.id not in says else ""
        yield Paragraph(text=f"{literal(where + says)}", kind="item")
    dates, undone = own_dates(edition.claims), left_undone(edition.project, Subject(level="site", id=SITE))
    if dates:
        yield Paragraph(text="Finds of doubtful age that only a date of their own would settle:")
    for step in dates:
        yield Paragraph(text=literal(step.says), kind="item")
    if undone:
        yield Paragraph(text="Left undone, as the records say, whether or not a reading hangs on it:")
    for left in undone:
        yield Paragraph(text=_undone(left), kind="item")
    fit = [
        claim
        for claim in edition.claims.all_holding(FILED)
        if claim.statement == DATES_FROM and claim.about.level == "context"
    ]
    if fit:
        yield Paragraph(text=_datable(edition, fit))
    if not (found or unique or fit or dates or undone):
        yield Paragraph(text="No limit holds a reading down, and no further work would change one.")


def _undone(left: LeftUndone) -> str:
    """'the 0.5-1 mm class of S007 and S012: a quarter was sorted', 'the heavy fractions of S023 and S036', a note."""
    ids = literal(_listed([str(id) for id in left.samples]))
    if left.id == ASKED:
        return f"{ids}: the record asks, “{literal(left.quote)}”"
    if left.id == KEPT:
        return f"{ids}: the record notes “{literal(left.quote)}”, and no result of that is on record"
    if left.id == SORT_HEAVY:
        return f"the heavy fraction{'s' * (len(left.samples) > 1)} of {ids}: not sorted"
    return f"the {literal(left.size_class)} class of {ids}: {100 * left.proportion_sorted:.0f}% was sorted"


def _datable(edition: Edition, fit: Sequence[Claim]) -> str:
    """The contexts by name, or where the discussion has named them all."""
    told = edition.narrative("report", Subject(level="site", id=SITE))
    discussion = next((one for one in arranged(edition.project.report_blocks) if one.block == "discussion"), None)
    for section in told.sections if told and discussion else ():
        named = {ref for paragraph in section.paragraphs for sentence in paragraph for ref in sentence.refs}
        if section.heading and named.issuperset(claim.id for claim in fit):
            within = literal(discussion.title or BLOCKS["discussion"])  # type: ignore[union-attr]
            return f"What is fit for radiocarbon dating is named under '{section.heading}' of '{within}'."
    best = sorted(fit, key=lambda claim: (-claim.support, claim.about.id))
    named_here = ", ".join(literal(claim.about.id) for claim in best[:MOST_NAMED])
    more = f" and {len(best) - MOST_NAMED:,} more contexts" if len(best) > MOST_NAMED else ""
    return f"Short-lived charred material fit for radiocarbon dating lies in {named_here}{more}."


def archive(edition: Edition) -> Iterator[Block]:
    what = "where the material, records and digital archive are or will be kept, with accession numbers"
    yield from _given(edition, "archive", what)
    yield from _given(edition, "selection_strategy", "what was kept of the flots, residues and sorted remains, and why")
    if edition.project.licence:
        yield Paragraph(text=f"Licence of the open data package: {literal(edition.project.licence.rstrip('.'))}.")
    else:
        yield missing("the licence under which others may use the data. Give it as report: licence.")
    yield Paragraph(
        text="A data package made by narrate deposit holds the counts as written, the rules and the sources used, in "
        "an open and a restricted edition. Restricted contexts and locations are in neither the open edition nor the "
        "public pages."
    )


def _many(number: int, what: str) -> str:
    return f"{number:,} {what}{'s' * (number != 1)}"


def _listed(parts: Sequence[str]) -> str:
    """'a', 'a and b', 'a, b and c'."""
    return " and ".join(part for part in (", ".join(parts[:-1]), *parts[-1:]) if part)
