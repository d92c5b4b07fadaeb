"""
The reviewer's checklist: each item that a specialist report must hold, where it is met, what is missing.

The first items are those of the Chartered Institute for Archaeologists' toolkit for specialist reporting (checklist,
blocks on the whole project, document information and introduction), as far as they were read; in our words.
Three are of the standard definitions of report sections (isgap.org.uk, section 18). The others are named for what they
rest on; 'common practice' has no single source.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from narrate.documents import to_check
from narrate.documents.blocks import Block, Paragraph, Table
from narrate.documents.dates import dates_lacking
from narrate.documents.design_questions import unanswered
from narrate.documents.inline import literal
from narrate.documents.references import Entry, alike
from narrate.documents.unwritten import told_of
from narrate.model.edition import Edition
from narrate.model.report_blocks import BLOCKS, ChecklistItem, arranged
from narrate.model.sampling import Sample
from narrate.model.sorting_on_record import finer_than_classes, silent_on_sorting

CIFA = "CIfA specialist reporting"
SECTIONS = "ISGAP, section 18"
PRACTICE = "common practice"
DATES = "Millard 2014"
OWN = "the project"

Answer = str
"""Empty: met; otherwise what is missing."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Item:
    asks: str
    source: str
    block: str
    """Block in which it is met; empty for the title block."""
    lacks: Callable[[Edition], Answer] = lambda edition: ""
    lacks_in_list: Callable[[Edition, Sequence[Entry]], Answer] | None = None
    """In place of `lacks`, for what is asked of the works of the list."""


def _reported(*keys: str) -> Callable[[Edition], Answer]:
    return lambda edition: (
        "" if told_of(edition.project.report, *keys) else f"not given; write report: {keys[0]} in project.yaml"
    )


def _dated(key: str) -> Callable[[Edition], Answer]:
    """A date is one with a year in it."""

    def answer(edition: Edition) -> Answer:
        text = told_of(edition.project.report, key)
        if not text:
            return _reported(key)(edition)
        return "" if _YEAR.search(text) else f"no year in it; write one in report: {key} in project.yaml"

    return answer


_YEAR = re.compile(r"\b(?:1[5-9]|20|21)\d\d\b")


def _share(what: str, has: Callable[[Sample], bool]) -> Callable[[Edition], Answer]:
    def answer(edition: Edition) -> Answer:
        lacking = [sample.id for sample in edition.project.samples if not has(sample)]
        return f"{what} not recorded for {len(lacking)} of {len(edition.project.samples)} samples" if lacking else ""

    return answer


def _sorting(edition: Edition) -> Answer:
    """Silence of a record is no share: samples without size classes, and what is finer than the smallest class."""
    samples = edition.project.samples
    silent = silent_on_sorting(samples)
    said = [f"size classes not recorded for {len(silent)} of {len(samples)} samples"] if silent else []
    said += [
        f"no class below {one.smallest_mm:g} mm recorded for {len(one.samples)}, of a finer mesh"
        for one in finer_than_classes(samples)
    ]
    return "; ".join(said)


def _met(edition: Edition) -> Answer:
    return ""


def _weights(edition: Edition) -> Answer:
    return "" if any(row.mass_g is not None for row in edition.project.counts) else "no weights in the count sheets"


def _phases(edition: Edition) -> Answer:
    """A context may belong to no phase, which the introduction then says by name; a dig without phases lacks them."""
    undated = [phase.name for phase in edition.project.phases if phase.start is None]
    if not edition.project.phases:
        return "no phases; write them in project.yaml"
    return f"no years for {', '.join(undated)}; write start and end" if undated else ""


def _told(*levels: str) -> Callable[[Edition], Answer]:
    """In a copy of approved words alone, sentences that nobody has approved are not there."""

    def answer(edition: Edition) -> Answer:
        if not edition.approved_only:
            return ""
        told = [n for (a, s), n in edition.narratives.items() if a == "report" and s.level in levels]
        if not any(narrative.sentences() for narrative in told):
            return "no sentence of it was approved so far"
        waiting = sum(narrative.left_out for narrative in told)
        return f"{waiting:,} sentence{'s wait' if waiting > 1 else ' waits'} for approval" if waiting else ""

    return answer


def _interpreted(edition: Edition) -> Answer:
    return _told("site", "phase")(edition) or _reported("wider_context")(edition)


def _recovery(edition: Edition) -> Answer:
    tested = sum(s.recovery_test is not None for s in edition.project.samples)
    return "" if tested else "no recovery test"


def _summary(edition: Edition) -> Answer:
    return "" if edition.project.summary.strip() else "not given; write summary in project.yaml"


def _authors(edition: Edition) -> Answer:
    return "" if edition.project.authors else "no author given"


def _one_work(edition: Edition, works: Sequence[Entry]) -> Answer:
    twice = "; ".join(f"'{cited}'" for cited in alike(edition, works))
    help = "put a letter behind the year of the project's own, in report: references and in its words"
    return f"two works of the list are cited as {twice}; {help}" if twice else ""


ITEMS: tuple[Item, ...] = (
    Item(asks="Title with subject and project", source=CIFA, block="", lacks=_met),
    Item(asks="Author", source=CIFA, block="", lacks=_authors),
    Item(asks="Author's qualifications", source=CIFA, block="", lacks=_reported("qualifications")),
    Item(asks="Date of the data collection", source=CIFA, block="", lacks=_dated("fieldwork")),
    Item(asks="Date of the analysis or report", source=CIFA, block="", lacks=_dated("date")),
    Item(asks="Nature and significance", source=CIFA, block="introduction", lacks=_reported("significance")),
    Item(asks="Size of the assemblage: counts", source=CIFA, block="introduction", lacks=_met),
    Item(asks="Size of the assemblage: weights", source=CIFA, block="raw_counts", lacks=_weights),
    Item(asks="Aims", source=CIFA, block="introduction", lacks=_reported("aims")),
    Item(asks="Answers to the questions of the design", source=PRACTICE, block="limits", lacks=unanswered),
    Item(asks="Sampling strategy", source=CIFA, block="sampling", lacks=_reported("sampling_strategy")),
    Item(asks="Recovery strategy", source=CIFA, block="sampling", lacks=_share("method", lambda s: bool(s.method))),
    Item(asks="Selection strategy", source=CIFA, block="archive", lacks=_reported("selection_strategy")),
    Item(asks="Contexts and features in summary", source=CIFA, block="introduction", lacks=_met),
    Item(asks="Date range and phases", source=CIFA, block="introduction", lacks=_phases),
    Item(
        asks="Method, results, discussion, recommendations",
        source=CIFA,
        block="results",
        lacks=_told("phase", "context"),
    ),
    Item(asks="Interpretation, local and wider", source=CIFA, block="discussion", lacks=_interpreted),
    Item(asks="Place of the archive, with accession number", source=CIFA, block="archive", lacks=_reported("archive")),
    Item(asks="Summary in plain words", source=SECTIONS, block="summary", lacks=_summary),
    Item(asks="Restrictions on reporting and access", source=SECTIONS, block="introduction", lacks=_met),
    Item(asks="Departures from the plan", source=SECTIONS, block="sampling", lacks=_reported("departures")),
    Item(asks="Radiocarbon dates in full", source=DATES, block="introduction", lacks=dates_lacking),
    Item(
        asks="Volume of every sample",
        source=PRACTICE,
        block="register",
        lacks=_share("volume", lambda s: s.volume_l is not None),
    ),
    Item(
        asks="Mesh of every sample", source=PRACTICE, block="register", lacks=_share("mesh", lambda s: bool(s.mesh_mm))
    ),
    Item(
        asks="Flot of every sample",
        source=PRACTICE,
        block="register",
        lacks=_share("light fraction", lambda s: s.light_fraction is not None),
    ),
    Item(
        asks="Residue sorted or not",
        source=PRACTICE,
        block="register",
        lacks=_share("sorting of the heavy fraction", lambda s: s.heavy_fraction is not None),
    ),
    Item(asks="Share sorted of every size class", source=PRACTICE, block="register", lacks=_sorting),
    Item(asks="Recovery test", source=PRACTICE, block="sampling", lacks=_recovery),
    Item(asks="Magnification and keys", source=PRACTICE, block="laboratory", lacks=_reported("identification")),
    Item(
        asks="Reference collection",
        source=PRACTICE,
        block="laboratory",
        lacks=_reported("reference_collection"),
    ),
    Item(asks="Names followed", source=PRACTICE, block="laboratory", lacks=_reported("nomenclature")),
    Item(asks="Counting rules", source=PRACTICE, block="laboratory", lacks=_met),
    Item(asks="Uncharred and modern remains apart", source=PRACTICE, block="raw_counts", lacks=_met),
    Item(asks="Raw counts with condition and cf.", source=PRACTICE, block="raw_counts", lacks=_met),
    Item(asks="Density, and ubiquity with n", source=PRACTICE, block="results", lacks=_met),
    Item(asks="Intervals of measures", source=PRACTICE, block="measures", lacks=_met),
    Item(asks="Sources of every reading", source=PRACTICE, block="references", lacks=_met),
    Item(asks="Each citation leads to one work", source=PRACTICE, block="references", lacks_in_list=_one_work),
    Item(asks="Works checked before signing", source=PRACTICE, block="references", lacks_in_list=to_check.answer),
)


def checklist(edition: Edition, works: Sequence[Entry]) -> Iterator[Block]:
    """The page: a sentence that sums it up, and one row an item."""
    shown = {one.block: one.title or BLOCKS[one.block] for one in arranged(edition.project.report_blocks)}
    said = {one.block for one in edition.project.report_blocks if one.text.strip()}
    rows, lacking = [], 0
    for item in ITEMS:
        where = "Title block" if not item.block else shown.get(item.block, "")
        found_lacking = item.lacks_in_list(edition, works) if item.lacks_in_list else item.lacks(edition)
        lacks = found_lacking if where else f"the block '{BLOCKS[item.block]}' is switched off"
        lacking += bool(lacks)
        by_hand = " See the text of the block by hand." if lacks and item.block in said else ""
        rows.append((item.asks, item.source, where or "–", f"missing: {lacks}.{by_hand}" if lacks else "met"))
    own = [_own_row(item, edition, shown) for item in edition.project.report_checklist]
    yield Paragraph(
        text=f"{len(ITEMS) - lacking} of {len(ITEMS)} items are met"
        + (
            "; {checklist} says what is missing and where to give it, and a text that is missing is marked 'To be "
            "written' where it belongs. "
            if lacking
            else "; {checklist} says where. "
        )
        + "'CIfA specialist reporting' is the checklist of the Chartered "
        "Institute for Archaeologists, and 'ISGAP, section 18' the definitions of report sections that stand there, "
        "both in our words, as far as they were read; 'common practice' has no single source."
    )
    if own:
        found = Counter(answer.partition(":")[0] for *_, answer in own)
        yield Paragraph(
            text=f"Of the {len(own)} {'items' if len(own) > 1 else 'item'} of the project's own list, {found['met']} "
            f"{'are' if found['met'] != 1 else 'is'} met, {found['missing']} missing, and {found['look']} for a person "
            "to look at."
        )
    yield Table(
        caption="Items that a specialist report must hold.",
        columns=("Item", "Asked by", "Where", "Met or missing"),
        rows=tuple(tuple(map(literal, row)) for row in (*rows, *own)),
        anchor="checklist",
        widths=(28, 22, 22, 28),
    )
    yield from to_check.table(works)


def _own_row(item: ChecklistItem, edition: Edition, shown: Mapping[str, str]) -> tuple[str, str, str, str]:
    """An item of the project's own list; what no program can see is left to a person, and that is said."""
    where = shown.get(item.block, "") if item.block else ""
    if item.block and not where:
        answer = f"missing: the block '{BLOCKS[item.block]}' is switched off."
    elif item.report:
        lacks = _reported(item.report)(edition)
        answer = f"missing: {lacks}." if lacks else "met"
    else:
        answer = "look: nothing in the records can answer it."
    return item.asks, OWN, where or "–", answer
