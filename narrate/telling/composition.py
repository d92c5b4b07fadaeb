"""What a deposit is made of: plants by number, wood charcoal, and what is set aside as modern."""

from __future__ import annotations

from collections.abc import Sequence

from narrate.model.findings import Tally
from narrate.model.narrative import Sentence
from narrate.telling import english, numbers
from narrate.telling.names import total
from narrate.telling.page import Page


def ancient_tallies(page: Page) -> list[Tally]:
    """Tallies in the conditions that are old under the project's preservation, most items first."""
    return [tally for tally in page.found.tallies if tally.condition in page.dig.ancient]


def plant_tallies(page: Page) -> list[Tally]:
    """Old remains other than wood."""
    return [tally for tally in ancient_tallies(page) if not is_wood(page, tally)]


def is_wood(page: Page, tally: Tally) -> bool:
    part = page.dig.packs.words.parts.get(tally.part)
    return part is not None and "wood" in part.roles


def main_sentences(page: Page) -> list[Sentence]:
    """What makes up the assemblage, the commonest plant first."""
    tallies = [t for t in plant_tallies(page) if t.counted or t.mass_g is not None or t.is_noted]
    if not tallies:
        return []
    groups = _by_plant(tallies)
    shown = groups[:4]
    refs = [tally.ref for group in shown for tally in group if tally.ref] or [page.ref("items")]
    counted = total(tallies)
    first_share = total(groups[0]) / counted if counted else 0.0
    if page.is_plain:
        return _for_visitors(page, groups, refs, first_share)
    texts = page.names.grouped([t for group in shown for t in group], at_most=4, with_mass=True)
    rest = groups[4:]
    tail, rest_refs = _smaller_numbers(page, rest)
    refs += rest_refs
    if first_share >= 0.5 and len(texts) > 1:
        others = page.listed(texts[1:])
        share = numbers.percent(first_share)
        return page.say(
            refs,
            f"most of the remains other than wood are {texts[0]} ({share}); with them came {others}{tail}",
            f"{texts[0]} make up {share} of the remains other than wood, followed by {others}{tail}",
            f"among the remains other than wood, {texts[0]} prevail ({share}), with {others}{tail}",
        )
    everything = page.listed(texts)
    if not rest:
        return page.say(
            refs,
            f"these were {everything}",
            f"apart from wood there were {everything}",
            f"the remains other than wood are {everything}",
        )
    return page.say(
        refs,
        f"they include {everything}{tail}",
        f"among them are {everything}{tail}",
        f"chief among them are {everything}{tail}",
    )


def wood_sentences(page: Page) -> list[Sentence]:
    """How much wood charcoal there was and of which trees."""
    mass = page.measure("wood_mass")
    woods = [tally for tally in ancient_tallies(page) if is_wood(page, tally)]
    named = [tally for tally in woods if tally.counted and tally.taxon is not None]
    if page.is_plain:
        trees = [page.names.plant(t.taxon, t.written) for t in named if t.counted >= 2][:3]
        if not trees:
            return []
        return page.say(
            [t.ref for t in named if t.ref][:3] or [page.ref("wood_mass")],
            f"we could name some of the charcoal: it came from {page.listed(trees)}",
            f"the charcoal we could name came from {page.listed(trees)}",
        )
    refs = ([page.ref("wood_mass")] if mass else []) + [t.ref for t in named if t.ref]
    if not refs or (not mass and not named) or (mass is not None and not mass.value and not named):
        return []
    per_litre = page.measure("wood_mass_per_l")
    weight = ""
    if mass is not None and mass.value:
        weight = f"{page.figure(mass)} g" + (f" ({page.figure(per_litre)} g per litre)" if per_litre else "")
    trees_text, fragments = _trees(page, named), total(named)
    if weight and trees_text:
        identified = page.count(fragments, "identified fragment", "identified fragments")
        verb = english.agreed(fragments, "is", "are")
        return page.say(
            refs,
            f"wood charcoal weighed {weight}; the {identified} {verb} of {trees_text}",
            f"there were {weight} of wood charcoal, in which {trees_text} were identified",
            f"to this must be added {weight} of wood charcoal, identified as {trees_text}",
        )
    if weight:
        return page.say(refs, f"wood charcoal weighed {weight}", f"there were also {weight} of wood charcoal")
    return page.say(refs, f"identified wood charcoal was of {trees_text}", f"the charcoal identified is of {trees_text}")


def modern_sentences(page: Page) -> list[Sentence]:
    """Uncharred seeds, told as modern and set aside; nothing where there are none."""
    modern = page.measure("modern_seeds")
    number = int(modern.value) if modern is not None and modern.value else 0
    if not number or page.dig.project.preservation != "charred":
        return []
    claim = page.dig.claims.find(page.subject, "integrity.modern-seeds")
    refs = [page.ref("modern_seeds")] + ([claim.id] if claim is not None else [])
    if claim is not None:
        page.told.add(claim.id)
    if page.is_plain:
        seeds = f"{numbers.about(number)} {english.agreed(number, 'seed', 'seeds')}"
        return page.say(
            refs,
            f"{seeds} in this soil had never been burned: we take them to be modern and leave them out",
            f"we also met {seeds} that no fire had touched, and we set them aside as modern",
        )
    return page.say(
        refs,
        f"a further {page.count(number, 'uncharred seed', 'uncharred seeds')} "
        f"{english.agreed(number, 'is', 'are')} taken as modern intrusion and left out of what follows",
        f"not counted among them {english.agreed(number, 'is', 'are')} "
        f"{page.count(number, 'uncharred seed', 'uncharred seeds')}, taken as modern intrusion",
    )


def _for_visitors(page: Page, groups: Sequence[Sequence[Tally]], refs: list[str], first_share: float) -> list[Sentence]:
    texts = page.names.grouped([t for group in groups[:4] for t in group], at_most=4)
    if len(texts) == 1:
        return page.say(refs, f"they were {texts[0]}", f"all of it was {texts[0]}", f"we found {texts[0]} there")
    if first_share >= 0.5:
        first = page.say(refs, f"most were {texts[0]}", f"what we met most was {texts[0]}", f"most of all we saw {texts[0]}")
        others = page.listed(texts[1:])
        return first + page.say(refs, f"we also found {others}", f"with them came {others}", f"next came {others}")
    everything = page.listed(texts)
    return page.say(refs, f"among them were {everything}", f"we could name {everything}", f"they were {everything}")


def _smaller_numbers(page: Page, groups: Sequence[Sequence[Tally]]) -> tuple[str, list[str]]:
    """', and smaller numbers of maypop, grape, and three other taxa' with its refs."""
    if not groups:
        return "", []
    named = groups[:3] if len(groups) != 4 else groups[:4]
    names = []
    for group in named:
        tally = group[0]
        doubt = "probable " if all(t.only_cf for t in group) else ""
        plant = page.names.plant(tally.taxon, tally.written, plural=True)
        if plant == "unidentified" or tally.taxon is None:
            names.append(page.names.part_of_plant(tally, plural=True))
        else:
            names.append(f"{doubt}{plant}{page.names.latin_once(tally.taxon, only_cf=bool(doubt))}")
    if len(groups) > len(named):
        names.append(f"{page.count(len(groups) - len(named), 'other plant', 'other plants')}")
    refs = [tally.ref for group in groups for tally in group if tally.ref]
    return f", and smaller numbers of {page.listed(names)}", refs


def _by_plant(tallies: Sequence[Tally]) -> list[list[Tally]]:
    groups: dict[str, list[Tally]] = {}
    for tally in tallies:
        groups.setdefault(f"{tally.taxon or tally.written}", []).append(tally)
    return sorted(groups.values(), key=lambda group: -total(group))


def _trees(page: Page, named: Sequence[Tally]) -> str:
    counts: dict[str, int] = {}
    for tally in named:
        tree = page.names.plant(tally.taxon, tally.written)
        latin = page.names.latin_once(tally.taxon)
        counts[f"{tree}{latin}"] = counts.get(f"{tree}{latin}", 0) + tally.counted
    ordered = sorted(counts.items(), key=lambda pair: (-pair[1], pair[0]))
    texts = [_with_count(page, tree, number) for tree, number in ordered[:5]]
    if len(ordered) > 5:
        texts.append(page.count(len(ordered) - 5, "other taxon", "other taxa"))
    return page.listed(texts)


def _with_count(page: Page, tree: str, number: int) -> str:
    return f"{tree[:-1]}, {page.count(number)})" if tree.endswith(")") else f"{tree} ({page.count(number)})"

