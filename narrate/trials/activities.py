"""What people and animals do that leaves charred plants, and what fire leaves of it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from types import MappingProxyType
from typing import Literal

HEATS = ("low", "moderate", "high")
"""Heat of a fire: below about 250 °C, up to about 400 °C, above."""

HOT, WARM, COOL = (0.1, 0.4, 0.5), (0.2, 0.6, 0.2), (0.6, 0.35, 0.05)
"""Chances of each heat: a blaze, a cooking fire, parching or smouldering. Judgement."""
FIRE = MappingProxyType({"thermal": 1.0, "ash dump": 1.0})
"""Where fuel is burned."""
COOKING = MappingProxyType({"thermal": 1.0, "ash dump": 0.6, "surface": 0.15})
"""Where food falls into the fire."""

Stage = Literal["", "mixed", "winnowing", "coarse", "fine", "product"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Yield:
    """What one event brings to the fire of one sort of thing."""

    taxa: tuple[str, ...]
    part: str
    mean: float
    """Pieces in an event, before charring, of all the taxa that it brings together."""
    chosen: int = 1
    """How many of the taxa an event brings, on average."""
    spread: float = 1.0
    """Shape of the gamma spread between events: 1 is exponential, smaller is wilder."""
    fragments: float = 0.0
    """Share of pieces that break."""
    is_gathered: bool = True
    """Whether it was gathered or harvested in its months; fuel wood is not."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Activity:
    """
    Something done at a hamlet, again and again.

    at:      trait or kind of context -> how readily it happens there; `refuse` is where its sweepings go.
    rate:    events that reach one context over its life, before the place and the deposit are taken into account.
    true:    statements that are true of a deposit to which it gave remains.
    stage:   which weed seeds come with the crop; with `weeds`, their mean number in an event.
    """

    id: str
    at: Mapping[str, float]
    rate: float
    heat: tuple[float, float, float]
    yields: tuple[Yield, ...]
    true: tuple[str, ...]
    stage: Stage = ""
    weeds: float = 0.0
    condition: Literal["charred", "mineralised"] = "charred"


@dataclass(frozen=True, slots=True, kw_only=True)
class Region:
    """The life of one region: what was done there, where, and what may stray in."""

    name: str
    """Region of the packs."""
    kinds: Mapping[str, float]
    """Kinds of context and how often one is dug."""
    ends: tuple[int, ...]
    """Last years of phases, one drawn for each dig."""
    activities: tuple[Activity, ...]
    strays: tuple[str, ...]
    """Seeds that come in with roots, worms and wind, uncharred."""
    later: tuple[str, ...]
    """Plants that only later disturbance can have brought, sometimes charred."""
    sow: float
    """Chance that a dig's crops were sown in autumn."""
    preservation: str = "charred"


SURVIVAL: Mapping[str, tuple[float, float, float]] = MappingProxyType(
    {
        # Order: grain before glume bases before culm nodes (Boardman & Jones 1990, as quoted by Charles et al. 2009,
        # read). Kernels fail above some 250–300 °C where cupules hold (Goette et al. 1994; direction from memory).
        # Dense parts char well; leaves, flesh and oily seeds do not (Wright 2003; Märkle & Rösch 2008; from memory).
        # The figures are judgement.
        "grain": (0.60, 0.50, 0.20),
        "sprouted grain": (0.55, 0.40, 0.12),
        "kernel": (0.60, 0.40, 0.12),
        "cupule": (0.60, 0.60, 0.50),
        "cob": (0.30, 0.25, 0.15),
        "glume base": (0.40, 0.28, 0.08),
        "spikelet fork": (0.40, 0.28, 0.08),
        "rachis internode": (0.30, 0.18, 0.05),
        "detached sprout": (0.25, 0.15, 0.03),
        "culm node": (0.20, 0.10, 0.03),
        "culm base": (0.28, 0.18, 0.06),
        "nutshell": (0.80, 0.80, 0.65),
        "acorn shell": (0.50, 0.45, 0.30),
        "nutmeat": (0.30, 0.20, 0.06),
        "seed": (0.50, 0.38, 0.15),
        "achene": (0.40, 0.28, 0.10),
        "cotyledon": (0.50, 0.38, 0.12),
        "fruit stone": (0.60, 0.55, 0.40),
        "capsule": (0.25, 0.15, 0.05),
        "cone scale": (0.50, 0.45, 0.30),
        "needle": (0.30, 0.20, 0.05),
        "tuber": (0.35, 0.25, 0.10),
        "bulb": (0.25, 0.15, 0.05),
        "rhizome": (0.40, 0.30, 0.12),
        "leaf": (0.06, 0.03, 0.01),
        "stem": (0.15, 0.10, 0.03),
        "rind": (0.35, 0.28, 0.12),
        "twig": (0.80, 0.80, 0.60),
        "wood": (0.90, 0.90, 0.70),
        "bark scale": (0.60, 0.50, 0.30),
        "fungal sclerotium": (0.60, 0.50, 0.30),
        "dung": (0.40, 0.30, 0.12),
        "pod": (0.25, 0.15, 0.05),
        "peduncle": (0.30, 0.20, 0.08),
    }
)

OTHERWISE = (0.35, 0.25, 0.10)
"""Survival of parts that no line names."""

TRAITS_OF_ALL: Mapping[str, float] = MappingProxyType({"refuse": 0.35, "cut": 0.2, "any": 0.08})
"""Where sweepings of any activity end up: refuse first, open cuts next, anywhere a little. Judgement."""

STAGES: Mapping[str, Mapping[tuple[str, ...], float]] = MappingProxyType(
    {
        # Which of the six seed types stay with which by-product: G. Jones 1984, 1987 (from memory).
        "mixed": MappingProxyType({(): 1.0}),
        "winnowing": MappingProxyType({("small", "free", "light"): 1.0, ("big", "free", "light"): 0.8, (): 0.08}),
        "coarse": MappingProxyType(
            {("small", "headed", "light"): 1.0, ("small", "headed", "heavy"): 1.0, ("big", "headed", "heavy"): 1.0,
             ("big", "headed", "light"): 0.8, (): 0.1}
        ),
        "fine": MappingProxyType({("small", "free", "heavy"): 1.0, ("small",): 0.6, (): 0.12}),
        "product": MappingProxyType({("big", "free", "heavy"): 1.0, ("big",): 0.5, (): 0.05}),
    }
)  # fmt: skip
"""Share of each type of weed seed that a stage keeps; () is all the others."""


def survival(part: str) -> tuple[float, float, float]:
    """
    Share of pieces of a part that a fire of low, moderate and high heat leaves to be found.

    >>> survival("grain")[1] > survival("glume base")[1] > survival("culm node")[1]
    True
    """
    return SURVIVAL.get(part, OTHERWISE)


@dataclass(frozen=True, slots=True, kw_only=True)
class Trial:
    """What a run of simulated digs is made of; ranges are wide on purpose."""

    digs: int = 60
    contexts: int = 20
    """Contexts of each dig."""
    richness: float = 1.0
    """How much more (or less) of everything was lost than the tables say."""
    noise: float = 1.0
    """How much wider than usual the spread between events, contexts and samples is."""
    is_usual: bool = False
    """True makes every hamlet do everything as often as the tables say."""
    broken: frozenset[str] = field(default_factory=frozenset)
    """Assumptions that are broken on purpose; see `simulate.BREAKABLE`."""
