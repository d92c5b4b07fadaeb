"""Which plants a food reading is about, and how several such readings are told as one."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping, Sequence

from narrate.model.findings import Tally
from narrate.model.ids import Subject, TaxonId
from narrate.telling.behind import is_within
from narrate.telling.foods_once import LISTED, TAGS
from narrate.telling.page import Page
from narrate.telling.plan import Reading

_CLASS = re.compile(r"^(?:the use of|people used) (.+) as food$")


def foods_told(page: Page, foods: Sequence[Reading]) -> str:
    """Plants of the readings: 'maize, hickory nuts, and native seed crops (chiefly chenopod and maygrass)'."""
    phrases: list[str] = []
    for item in foods:
        plants = _plants_once(page, item)
        by_one = _is_of_one(page, item, plants) and not page.is_plain
        if (len(foods) == 1 and len(plants) <= LISTED and not by_one) or len(plants) <= 2:
            told = _above_all(page, item, plants) or plants
            phrases += [plant for plant in told if plant not in phrases]
        else:
            chiefly, most = ("such as", plants[:2]) if page.is_plain else _most_of(page, item, plants)
            by_name = f"{_class_of(page, item)} ({chiefly} {page.listed(most)})"
            phrases.append(_class_of(page, item) if page.has_told(by_name) else by_name)
    return page.listed(phrases)


ABOVE_ALL = 0.9
"""Share of the seeds from which one plant is told above all (judgement of the makers)."""


def _above_all(page: Page, item: Reading, plants: Sequence[str]) -> list[str]:
    """['goosefoot above all, with some knotweed and maygrass'] where one plant is nearly all; for visitors."""
    if not page.is_plain or not _is_of_one(page, item, plants):
        return []
    return [f"{plants[0]} above all, with some {page.listed(plants[1:])},"]


def _is_of_one(page: Page, item: Reading, plants: Sequence[str]) -> bool:
    """Whether one of three or more plants is nearly all, so that a list of them would name a seed beside hundreds."""
    numbers = _numbers(page, item.behind)
    of = sum(numbers.get(plant, 0) for plant in plants)
    is_of_seeds = item.claim.statement == "food.native-seed-crops"  # pieces of shell do not count nuts
    return is_of_seeds and len(plants) >= 3 and numbers.get(plants[0], 0) >= ABOVE_ALL * of


def lead_of_seeds(page: Page, item: Reading) -> TaxonId | None:
    """The plant that nearly all the seeds behind a reading of native seed crops are of."""
    if item.claim.statement != "food.native-seed-crops":
        return None
    found: dict[TaxonId, int] = {}
    for tally in page.found.tallies:
        if tally.taxon is not None and tally.condition in page.dig.ancient and _has_tag(page, tally, "native-crop"):
            found[tally.taxon] = found.get(tally.taxon, 0) + tally.counted
    lead = max(found, key=lambda taxon: found[taxon], default=None)
    return lead if lead is not None and len(found) > 2 and found[lead] >= ABOVE_ALL * sum(found.values()) else None


def plants_of(page: Page, item: Reading) -> list[str]:
    """The plants behind one food reading by their names as food, commonest first."""
    tallies = [t for t in item.behind if not _is_wood(page, t)]
    tag = TAGS.get(item.claim.statement)
    own = [t for t in tallies if _has_tag(page, t, tag)] if tag else [t for t in tallies if _is_maize(page, t)]
    if tag == "small-seed":
        # Small seeds that are native crops, or may be, are told as such.
        crops = {page.names.food(t.taxon, t.written) for t in page.found.tallies if _has_tag(page, t, "native-crop")}
        own = [t for t in own if page.names.food(t.taxon, t.written) not in crops] or own
    chosen = own or tallies
    for is_kept in (lambda t: not t.only_cf, lambda t: _is_named(page, t)):
        chosen = [t for t in chosen if is_kept(t)] or chosen
    return names_of_food(page, chosen)


def names_of_food(page: Page, tallies: Iterable[Tally]) -> list[str]:
    """Plants by their names as food, commonest first."""
    numbers: dict[str, int] = {}
    for tally in tallies:
        name = page.names.food(tally.taxon, tally.written, only_cf=tally.only_cf)
        numbers[name] = numbers.get(name, 0) + tally.counted
    return sorted(numbers, key=lambda name: (-numbers[name], name))


EARLY, LATE = frozenset((5, 6)), frozenset((9, 10, 11))
"""Months of early summer and of autumn, as plants are gathered."""


def plants_of_two_seasons(page: Page, item: Reading) -> str:
    """'maygrass, which ripens in early summer, lay with goosefoot and hickory nuts, which ripen in autumn'."""
    sure = [t for t in item.behind if t.counted and not t.only_cf and _is_named(page, t)]
    sides = []
    for months, most in ((EARLY, 1), (LATE, 2)):
        ripe = sorted((t for t in sure if _ripens(page, t, months)), key=lambda t: -t.counted)
        names = list(dict.fromkeys(page.names.food(t.taxon, t.written) for t in ripe))[:most]
        if not names:
            return ""
        sides.append((page.listed(names), "ripen" if len(names) > 1 else _ripen(names[0])))
    (early, one), (late, other) = sides
    return f"{early}, which {one} in early summer, lay with {late}, which {other} in autumn"


SEASONS = {"early summer": EARLY, "late summer": frozenset((7, 8)), "autumn": LATE}


def chief_of_season(page: Page, item: Reading, season: str) -> tuple[str, str]:
    """'hickory nuts and chenopod': the two plants of a season that a reading rests on most, and how they stand."""
    word, names = chief_of_several(page, _ripe_within(page, item, SEASONS[season])) or ("chiefly", [])
    return page.listed(names), word


def chief_of_months(page: Page, item: Reading, months: Iterable[int]) -> str:
    """The plant or two that a reading rests on most, of those that ripen within some months."""
    return page.listed(chief(_ripe_within(page, item, months)))


def _ripe_within(page: Page, item: Reading, months: Iterable[int]) -> dict[str, int]:
    sure = [t for t in item.behind if t.counted and not t.only_cf and _is_named(page, t) and not _is_wood(page, t)]
    return _numbers(page, (t for t in sure if _ripens(page, t, frozenset(months))))


def chief(numbers: Mapping[str, int]) -> list[str]:
    """
    The plants that most of a number is of, two at most: a second that is a grain or two beside many is not most of it.

    >>> chief({"maygrass": 16, "little barley": 1}), chief({"hickory nuts": 9, "acorns": 4, "walnuts": 1})
    (['maygrass'], ['hickory nuts', 'acorns'])
    """
    ordered = sorted(numbers, key=lambda name: -numbers[name])
    least = max(2.0, SECOND * sum(numbers.values()))
    return [name for i, name in enumerate(ordered[:2]) if not i or numbers[name] >= least]


SECOND = 0.1
"""Share of a number from which a second plant is told as one of the chief (judgement of the makers)."""


def _numbers(page: Page, tallies: Iterable[Tally]) -> dict[str, int]:
    found: dict[str, int] = {}
    for tally in tallies:
        name = page.names.food(tally.taxon, tally.written)
        found[name] = found.get(name, 0) + tally.counted
    return found


def _most_of(page: Page, item: Reading, plants: Sequence[str]) -> tuple[str, list[str]]:
    """'chiefly' and the plants that most of the remains behind a reading are of, or 'most widely' and those."""
    numbers = _numbers(page, item.behind)
    return chief_of_several(page, {plant: numbers.get(plant, 0) for plant in plants}) or ("chiefly", list(plants[:2]))


def kinds_told(page: Page, item: Reading) -> tuple[str, str]:
    """('namely', 'amaranth, bedstraw, and dock') where few kinds are behind a reading; of many the chief ones."""
    taxa = page.dig.packs.taxa
    own = [t for t in item.behind if t.counted and not t.only_cf and t.taxon in taxa]
    numbers = _numbers(page, (t for t in own if t.taxon is not None and taxa[t.taxon].rank in ("species", "genus")))
    ordered = sorted(numbers, key=lambda name: (-numbers[name], name))
    return ("namely", page.listed(ordered)) if len(ordered) <= LISTED else ("chiefly", page.listed(ordered[:2]))


def chief_of_several(page: Page, numbers: Mapping[str, int]) -> tuple[str, list[str]] | None:
    """
    The chief plants of a phase or dig, and the word they stand behind.

    One deposit makes no chief plant of a phase: where one of them comes from a single context, the two that lie in most
    contexts are told as the most widespread; where none lies in several, the context is named.
    """
    names = chief(numbers)
    if not names:
        return None
    found = _contexts_holding(page)
    if page.subject.level not in ("phase", "site") or all(len(found.get(name, ())) > 1 for name in names):
        return "chiefly", names
    wide = sorted((n for n in numbers if len(found.get(n, ())) > 1), key=lambda n: (-len(found[n]), -numbers[n]))
    if wide:
        return "most widely", wide[:2]
    return "chiefly", [f"{name} of {found[name][0]} alone" if found.get(name) else name for name in names]


def _contexts_holding(page: Page) -> dict[str, list[str]]:
    """Names as food -> the contexts of the phase or dig in which they were found."""
    held: dict[str, list[str]] = {}
    for context in page.dig.project.contexts if page.subject.level in ("phase", "site") else ():
        if page.subject.level == "phase" and context.phase != page.subject.id:
            continue
        own = page.dig.found(Subject(level="context", id=context.id))
        sure = [t for t in own.tallies if t.counted and t.condition in page.dig.ancient] if own is not None else []
        for name in {page.names.food(t.taxon, t.written) for t in sure}:
            held.setdefault(name, []).append(context.id)
    return held


def chief_fruit(page: Page, item: Reading) -> tuple[str, str]:
    """
    'grape and persimmon', and how they stand to the seeds that were counted: 'namely', 'chiefly' or 'among it'.

    item: of the remains that the argument itself counted. Berries that nobody eats may be among them: then the fruits
    are some of it, not its chief; and where nothing else was counted, the fruits named are all of it.
    """
    sure = (t for t in item.behind if t.counted and not t.only_cf and _is_named(page, t))
    seeds = _numbers(page, (t for t in sure if _has_tag(page, t, "fruit")))
    names = sorted(seeds, key=lambda name: -seeds[name])[:2]
    told, counted = sum(seeds[name] for name in names), sum(t.counted for t in item.behind)
    return page.listed(names), "namely" if told == counted else "chiefly" if told * 2 > counted else "among it"


def _ripens(page: Page, tally: Tally, months: frozenset[int]) -> bool:
    """Whether all months in which a part is gathered are of a season."""
    taxon = page.dig.packs.taxa.get(tally.taxon) if tally.taxon is not None else None
    windows = [window for window in taxon.windows if window.part == tally.part] if taxon is not None else []
    return bool(windows) and all(set(window.months) <= months for window in windows)


def _ripen(name: str) -> str:
    return "ripen" if name.endswith("s") and not name.endswith("ss") else "ripens"


def plants_that_ripen(page: Page, item: Reading, season: str, *, tag: str = "") -> str:
    """
    'hickory nuts, chenopod, and persimmon, among others, ripen in autumn'; empty where too few have a name.

    Visitors read of a fruit by its name though it be the only one.
    """
    named = [t for t in item.behind if not _is_wood(page, t) and not t.only_cf and _is_named(page, t) and t.counted]
    named = [t for t in named if not tag or _has_tag(page, t, tag)]
    plants = _numbers(page, named)
    # Of plants alike in number the first found leads, whatever an audience calls it.
    ordered = sorted(plants, key=lambda name: -plants[name])
    if len(ordered) < (1 if page.is_plain and tag == "fruit" else 2):
        return ""
    among = ", among others," if len(ordered) > 3 else ""
    if page.is_plain:
        of = "seeds" if tag == "fruit" and all(is_seed(page, t) for t in named) else "remains"
        return f"we found {of} of {page.listed(ordered[:3])}{among.rstrip(',')}, which ripen {season}"
    return f"{page.listed(ordered[:3])}{among} ripen {season}"


def name_plants(page: Page, held: Iterable[Reading]) -> None:
    """Settles by which plants each food reading is told: the firmest first, whatever the page tells first."""
    place = {statement: i for i, statement in enumerate(page.dig.packs.statements)}
    foods = [item for item in held if item.is_food]
    for item in sorted(foods, key=lambda item: (-item.rank, place[item.claim.statement])):
        _plants_once(page, item)


def _plants_once(page: Page, item: Reading) -> list[str]:
    """Plants of a reading without those that another reading of the page has named, unless none would be left."""
    if item.claim.id not in page.foods:
        taken = {plant for plants in page.foods.values() for plant in plants}
        plants = plants_of(page, item)
        page.foods[item.claim.id] = tuple([plant for plant in plants if plant not in taken] or plants)
    return list(page.foods[item.claim.id])


def _class_of(page: Page, item: Reading) -> str:
    text = page.in_own_words(item.statement.plain if page.is_plain else item.statement.noun)
    match = _CLASS.match(text)
    return match[1] if match else text


def _has_tag(page: Page, tally: Tally, tag: str | None) -> bool:
    taxon = page.dig.packs.taxa.get(tally.taxon) if tally.taxon is not None else None
    return taxon is not None and tag in taxon.tags


def _is_maize(page: Page, tally: Tally) -> bool:
    taxon = page.dig.packs.taxa.get(tally.taxon) if tally.taxon is not None else None
    return is_within(taxon, "Zea mays", page.dig.packs)


def _is_named(page: Page, tally: Tally) -> bool:
    taxon = page.dig.packs.taxa.get(tally.taxon) if tally.taxon is not None else None
    return taxon is not None and taxon.rank in ("species", "genus", "group")


def is_seed(page: Page, tally: Tally) -> bool:
    """Whether seeds or stones of a plant were found, and no flesh: a grape seed is no grape."""
    part = page.dig.packs.words.parts.get(tally.part)
    return part is not None and "propagule" in part.roles and part.id not in ("fruit", "kernel", "grain")


def _is_wood(page: Page, tally: Tally) -> bool:
    part = page.dig.packs.words.parts.get(tally.part)
    return part is not None and "wood" in part.roles
