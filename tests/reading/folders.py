"""Project folders and packs on disk, small enough to see through."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

from narrate.problems import ProblemList, written
from narrate.reading.folder import Reading, read_folder
from narrate.reading.pack_files import PackFolder

PROJECT = """\
title: Wend Hollow
region_packs: [valley]
phases:
  - {id: early, name: Early hamlet, start: 950, end: 1050}
"""
RECORDS = """\
contexts:
  - {id: C1, kind: hearth, phase: early}
samples:
  - id: S1
    context: C1
    volume_l: 10
"""
SHEET = "sample,taxon,part,count\nS1,Zea mays,kernel,3\n"
WHOLE: Mapping[str, str] = {"project.yaml": PROJECT, "records/all.yaml": RECORDS, "counts/light.csv": SHEET}

PARTS = """\
parts:
  - {id: kernel, plural: kernels, plain: kernel, plain_plural: kernels, roles: [edible], synonyms: [corn kernel]}
  - {id: cupule, plural: cupules, plain: cob bit, plain_plural: cob bits, roles: [cob, byproduct]}
  - {id: seed, plural: seeds, plain: seed, plain_plural: seeds, roles: [propagule]}
  - {id: glume base, plural: glume bases, plain: husk bit, plain_plural: husk bits, roles: [chaff, byproduct]}
  - {id: nutshell, plural: nutshell, plain: nutshell, plain_plural: nutshell, roles: [nutshell]}
"""
CONDITIONS = """\
conditions:
  - {id: charred, ancient_at_dry_sites: true, synonyms: [carbonised, burnt]}
  - {id: uncharred, ancient_at_dry_sites: false}
preservations:
  charred: [charred]
"""
KINDS = """\
kinds:
  - {id: hearth, plural: hearths, plain: hearth, plain_plural: hearths, traits: [thermal], synonyms: [fire-place]}
  - {id: pit, plural: pits, plain: pit, plain_plural: pits, traits: [cut]}
  - {id: burial, plural: burials, plain: grave, plain_plural: graves, traits: [burial]}
"""
METHODS = """\
methods:
  - {id: bucket, synonyms: [hand flotation], explained: In a bucket.}
weights: {weak: 1.0, moderate: 1.8, strong: 2.6}
limits:
  - {id: deposit.tertiary, when: deposit is tertiary, grade: suggests, says: it is tertiary, lifts: a primary deposit}
shown:
  - {name: items, title: Items, measure: items, of: {}}
sources: [common-practice]
"""
SOURCES = """\
sources:
  - {key: common-practice, kind: practice, authors: "", year: "", title: Common practice, known: convention}
"""
GRASSES = """\
family: Poaceae
taxa:
  - id: Zea mays
    authority: L.
    rank: species
    name: corn
    plural: corn
    synonyms: [maize, Zea mays ssp. mays]
    status: crop
    earliest: 600
    tags: [crop, cereal]
    uses:
      - {use: food, part: kernels, sources: [common-practice], known: memory-H}
    windows:
      - {part: kernel, months: Aug-Oct, keeping: [stored], sources: [common-practice]}
    ecology: {habitat: fields, life: annual, height: tall}
    sources: [common-practice]
  - {id: Hordeum pusillum, rank: species, name: little barley, plural: little barley}
"""
AMARANTHS = """\
family: Amaranthaceae
taxa:
  - {id: Chenopodium, rank: genus, name: goosefoot, plural: goosefoot}
  - {id: Amaranthus, rank: genus, name: pigweed, plural: pigweed}
  - {id: Chenopodium berlandieri, rank: species, name: goosefoot, plural: goosefoot}
  - {id: Chenopodium/Amaranthus, rank: group, synonyms: [cheno-am], members: [Chenopodium, Amaranthus]}
"""
FUEL = """\
question: fuel
asked: What was burned?
statements:
  - id: fuel.maize-cob
    title: Cobs as fuel
    clause: cobs were burned
    noun: the burning of cobs
    plain: people burned cobs
    plain_noun: cob fires
    sources: [common-practice]
"""
RULE = """\
id: fuel.cobs
title: Cobs
status: draft
argues: {for: fuel.maize-cob}
about: [sample, context]
says: cob parts outnumber kernels ({r.to} to {r.of})
says_plain: there were more bits of cob than kernels
why: Cobs burn.
misleads_when: [Kernels break.]
sources: [common-practice]
known: convention
needs:
  - {measure: items, of: {taxon: Zea mays}, at_least: 10}
criteria:
  all:
    - {measure: ratio, name: r, of: {taxon: Zea mays, part: kernel}, to: {part: [cupule]}, at_most: 0.5}
    - any:
        - {fact: trait, is: thermal}
        - {fact: deposit, is_not: [tertiary]}
weight: strong
examples:
  - {name: yes it does, remains: [{taxon: Zea mays, part: cupule, count: 60}], expect: holds}
  - {name: it does not, remains: [{taxon: Zea mays, part: kernel, count: 60}], expect: fails}
  - {name: few, remains: [], records: {volume_l: 5, recovery: [50, 46], proportion_sorted: 1/4}, expect: cannot tell}
"""
AUDIENCE = """\
id: review
title: Team
register: trade
frames:
  strongly supports: ["this strongly supports {noun}"]
  supports: ["this supports {noun}"]
  suggests: ["this suggests that {clause}"]
  consistent with: ["this is consistent with {noun}"]
shows_figures: true
shows_intervals: true
shows_latin: lead
shows_doubts_first: true
discloses: everything
plan: [fuel]
"""
PACKS: Mapping[str, str] = {
    "words/parts.yaml": PARTS,
    "words/conditions.yaml": CONDITIONS,
    "words/kinds.yaml": KINDS,
    "words/methods.yaml": METHODS,
    "sources.yaml": SOURCES,
    "taxa/valley/poaceae.yaml": GRASSES,
    "taxa/valley/amaranthaceae.yaml": AMARANTHS,
    "statements/fuel.yaml": FUEL,
    "rules/fuel/cobs.yaml": RULE,
    "audiences/review.yaml": AUDIENCE,
}


def write(folder: Path, files: Mapping[str, str | bytes]) -> Path:
    """Writes files, making the folders they need; a text is written as UTF-8 with its line ends as they are."""
    for path, content in files.items():
        target = folder / path
        target.parent.mkdir(parents=True, exist_ok=True)
        wanted = content.encode("utf-8") if isinstance(content, str) else content
        if not target.is_file() or target.read_bytes() != wanted:
            target.write_bytes(wanted)
    return folder


def packs_in(folder: Path, **changed: str) -> PackFolder:
    """The small packs, written below `folder`; `changed` replaces files by the stem of their name."""
    files = {path: changed.get(Path(path).stem, text) for path, text in PACKS.items()}
    write(folder / "shipped", files)
    return PackFolder(root=folder, base="shipped")


def reading_of(folder: Path, changed: Mapping[str, str | bytes] | None = None) -> Reading:
    """What is read of the small whole project with some files changed, with the small packs."""
    project = write(folder / "dig", {**WHOLE, **(changed or {})})
    return read_folder(project, shipped=packs_in(folder))


def told(reading: Reading) -> str:
    """All problems of a reading as a person reads them."""
    return "\n".join(written(problem) for problem in reading.problems)


def told_by(problems: ProblemList) -> str:
    return "\n".join(written(problem) for problem in problems.sorted())
