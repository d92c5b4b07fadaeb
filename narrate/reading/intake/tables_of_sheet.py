"""The tables of one sheet: each area read in every way, and the reading that explains most of its amounts taken."""

from __future__ import annotations

from dataclasses import dataclass, field, replace

from narrate.model.grids import Area, Grid
from narrate.model.layouts import Marks, Role, Shape, Table
from narrate.reading.intake.columns_explained import is_against_heads
from narrate.reading.intake.crossed_guess import Crossed, guess_crossed
from narrate.reading.intake.evidence import Look, plain_label
from narrate.reading.intake.forms_guess import guess_forms
from narrate.reading.intake.groups_of_presences import without_groups_of_presences
from narrate.reading.intake.halves import halves_of
from narrate.reading.intake.heads_mixed import with_heads_apart
from narrate.reading.intake.heads_split import split_heads
from narrate.reading.intake.ids_twice import ids_apart
from narrate.reading.intake.left_over import left_over
from narrate.reading.intake.lists_of_one_sample import named_after_file
from narrate.reading.intake.lists_of_presence import list_of_presence
from narrate.reading.intake.lists_of_shares import list_of_shares
from narrate.reading.intake.lists_under_lines import guess_lists_under_lines
from narrate.reading.intake.long_guess import guess_long
from narrate.reading.intake.long_table import Long
from narrate.reading.intake.pairs_guess import guess_pairs
from narrate.reading.intake.records_guess import guess_records
from narrate.reading.intake.same_ids_apart import apart_by_titles
from narrate.reading.intake.scores import meaning_of_numbers
from narrate.reading.intake.sections_guess import guess_sections
from narrate.reading.intake.sections_of_samples import with_sections_of_samples
from narrate.reading.intake.shares_unsaid import with_shares_unsaid
from narrate.reading.intake.sums_in_tables import IDS_JOINED, joins_ids, with_sums
from narrate.reading.intake.tables_apart import told_apart
from narrate.reading.intake.tables_of_ubiquity import gives_ubiquity
from narrate.reading.intake.titles_say import with_condition
from narrate.reading.intake.weights_under_heads import with_weights_under_heads

_MOST_TABLES = 12
_NEAR = 0.7
"""Share of the best score from which a second reading of a table is told."""
_NAMES_UNKNOWN = (
    "DOUBTFUL: few of the names are known as plants; look whether the role 'taxon' stands at the names"
)
_FEW_NAMES = 0.3
"""Mean likeness to names of plants under which a table is told to be doubtful."""


@dataclass(slots=True)
class Found:
    tables: list[Table] = field(default_factory=list)
    doubts: list[str] = field(default_factory=list)
    left_out: list[str] = field(default_factory=list)
    mend: dict[str, str] = field(default_factory=dict)
    explained: int = 0

    def take(self, other: Found) -> None:
        """Adds what was found in one more sheet."""
        self.tables += other.tables
        self.doubts += other.doubts
        self.left_out += other.left_out
        self.mend.update(other.mend)
        self.explained += other.explained


def whole(look: Look) -> Area:
    return Area(top=0, left=0, bottom=look.rows - 1, right=look.columns - 1)


def tables_of(look: Look, marks: Marks, found: Found) -> int:
    """Adds the count tables of one sheet; gives their number."""
    waiting = [whole(look)]
    made = 0
    first = len(found.tables)
    while waiting and made < _MOST_TABLES:
        area = _trimmed(look, waiting.pop(0))
        if area is None:
            continue
        last, said = list_of_shares(look, area)
        if said:
            before = f"sheet {look.grid.sheet}: " if look.grid.sheet else ""
            found.left_out.append(before + said)
            waiting.append(Area(top=last + 1, left=area.left, bottom=area.bottom, right=area.right))
            continue
        if (listed := list_of_presence(look, area)) is not None:
            found.tables.append(table_of(look.grid, listed, marks, "long"))
            found.doubts.extend(listed.doubts)
            found.explained += listed.explained
            made += 1
            below = listed.area.bottom + 1
            waiting.append(Area(top=below, left=area.left, bottom=area.bottom, right=area.right))
            continue
        forms = guess_forms(look, area) or guess_lists_under_lines(look, area)
        if forms:
            found.tables.extend(
                replace(table_of(look.grid, one.found, marks, _shape_of(one.found)), about=one.about) for one in forms
            )
            found.doubts.extend(doubt for one in forms for doubt in one.found.doubts)
            before = f"{look.grid.sheet}!" if look.grid.sheet else ""
            found.mend.update({f"{before}{cell}": id for one in forms for cell, id in one.mend.items()})
            found.explained += sum(one.found.explained for one in forms)
            made += len(forms)
            continue
        halves = [half for one in with_heads_apart(look, area) if (half := _best(one, area)) is not None]
        if len(halves) == 2:
            for guess, _ in halves:
                found.tables.append(_guessed(look.grid, guess, marks))
                found.doubts.extend(guess.doubts)
                found.explained += guess.explained
            made += 2
            below = max(used.bottom for _, used in halves) + 1
            waiting.append(Area(top=below, left=area.left, bottom=area.bottom, right=area.right))
            continue
        lists = guess_pairs(look, area)
        if not lists:
            sections = guess_sections(look, area)
            lists = list(sections.tables)
            before = f"{look.grid.sheet}!" if look.grid.sheet else ""
            found.mend.update({f"{before}{cell}": id for cell, id in sections.mend.items()})
        if lists:
            found.tables.extend(table_of(look.grid, one, marks, "crossed") for one in lists)
            found.doubts.extend(doubt for one in lists for doubt in one.doubts)
            found.explained += sum(one.explained for one in lists)
            made += len(lists)
            below = max(one.area.bottom for one in lists) + 1
            waiting.append(Area(top=below, left=area.left, bottom=area.bottom, right=area.right))
            continue
        best = _best(look, area)
        if best is None:
            continue
        guess, used = best
        if said := gives_ubiquity(look, guess, used):
            found.left_out.append(said)
            waiting.append(Area(top=used.bottom + 1, left=area.left, bottom=area.bottom, right=area.right))
            continue
        table = _guessed(look.grid, guess, marks)
        key, told = meaning_of_numbers(look, table)
        if key:
            table = replace(table, marks=replace(table.marks, key={**marks.key, **key}))
            found.doubts.append(told)
            table, drawn = without_groups_of_presences(look, table) if set(key) == {"1"} else (table, [])
            found.doubts.extend(drawn)
        table, mend, doubt = named_after_file(look, table)
        found.mend.update(mend)
        found.tables.append(table)
        found.doubts.extend([doubt] if doubt else [])
        found.doubts.extend(guess.doubts)
        found.explained += guess.explained
        made += 1
        if used.bottom < area.bottom:
            waiting.append(Area(top=used.bottom + 1, left=area.left, bottom=area.bottom, right=area.right))
        if used.top > area.top:
            waiting.append(Area(top=area.top, left=area.left, bottom=used.top - 1, right=area.right))
        if used.left > area.left:
            waiting.append(Area(top=area.top, left=area.left, bottom=area.bottom, right=used.left - 1))
        if used.right < area.right:
            waiting.append(
                Area(top=area.top, left=used.right + 1, bottom=min(used.bottom, area.bottom), right=area.right)
            )
    for n, table in enumerate(found.tables[first:], first):
        found.tables[n], mend, doubts = split_heads(look, table)
        found.mend.update(mend)
        found.doubts.extend(doubts)
        found.tables[n], doubts = with_weights_under_heads(look, found.tables[n])
        found.doubts.extend(doubts)
        found.tables[n], said = with_condition(look.grid, found.tables[n])
        found.doubts.extend([said] if said else [])
    summed = [with_sums(look, table) for table in found.tables[first:]]
    found.doubts.extend(doubt for _, said in summed for doubt in said)
    apart, doubts = told_apart(look, [table for table, _ in summed])
    apart, joined = apart_by_titles(look, apart)
    found.tables[first:] = apart = [with_sections_of_samples(look, table, found.doubts) for table in apart]
    found.doubts.extend([*doubts, *joined])
    made_of = [with_shares_unsaid(look, table) for table in apart]
    found.tables[first:] = apart = [table for table, _ in made_of]
    found.doubts.extend(doubt for _, said in made_of for doubt in said)
    if not any(map(joins_ids, apart)):
        found.doubts[:] = [doubt for doubt in found.doubts if not doubt.startswith(IDS_JOINED)]
    mend, doubts = ids_apart(look, apart)
    found.mend.update({at: id for at, id in mend.items() if at not in found.mend})
    found.doubts.extend(doubts)
    found.doubts.extend(left_over(look, apart))
    return made


def _best(look: Look, area: Area) -> tuple[Crossed | Long, Area] | None:
    """The reading of an area that explains most of its amounts, and the part of it that was used."""
    options: list[tuple[float, int, Crossed | Long, Area]] = []
    long = guess_long(look, area)
    if long is not None:
        options.append((long.score, 2, long, long.area))
    down = guess_crossed(look, area)
    if down is not None and not is_against_heads(down, long):
        options.append((down.score, 1, down, down.area))
    turned = look.turned()
    across = guess_crossed(turned, Area(top=area.left, left=area.top, bottom=area.right, right=area.bottom))
    if across is not None:
        used = across.area
        back = Area(top=used.left, left=used.top, bottom=used.right, right=used.bottom)
        options.append((across.score, 0, across, back))
    options = [option for option in options if option[0] > 0]
    records = guess_records(look, area)
    if (
        records is not None
        and not any(_has_names(option[0], option[2]) for option in options)
        and not _may_hold_counts(look, records)
    ):
        # Words that nobody knows as plants, under a head that speaks of samples.
        return None
    if not options:
        return None
    options.sort(key=lambda option: (option[0], option[1]), reverse=True)
    score, _, guess, used = options[0]
    if guess.explained < (3 if isinstance(guess, Crossed) and not guess.named else 1):
        return None  # a number or two beside words that name no plant: a line of prose with commas
    if len(options) > 1 and options[1][0] >= _NEAR * score:
        guess.doubts.insert(0, f"DOUBTFUL: it could nearly as well be read with {_said(options[1][2])}")
    if isinstance(guess, Crossed) and guess.named < _FEW_NAMES:
        guess.doubts.insert(0, _NAMES_UNKNOWN)
    return guess, used


def _may_hold_counts(look: Look, records: Long) -> bool:
    """Whether records are outnumbered by columns of whole numbers under words, some of which name plants."""
    head = next(r for r, role in records.rows.items() if role.name == "header")
    lines = [r for r, role in records.rows.items() if role.name == "finds"]
    unknown = [c for c, role in records.columns.items() if role.name == "ignored" and plain_label(look.text(head, c))]
    counted = []
    for c in unknown:
        texts = [look.text(r, c) for r in lines if look.text(r, c)]
        if texts and all(look.is_amount(r, c) for r in lines if look.text(r, c)) and not any("." in t for t in texts):
            counted.append(c)
    named = sum(look.name_score(head, c) >= 0.45 for c in counted)
    return len(counted) >= 4 and 2 * len(counted) >= len(records.columns) and named >= 0.3 * len(counted)


def _said(guess: Crossed | Long) -> str:
    if isinstance(guess, Long):
        return "one row for each find"
    return "samples as rows" if guess.look.is_turned else "samples as columns"


def _has_names(score: float, guess: Crossed | Long) -> bool:
    """Whether a reading is borne out by names of plants, and not by any words beside numbers."""
    if isinstance(guess, Crossed) and guess.named >= 0.5 and score >= 0.2 * guess.explained:
        return True
    if isinstance(guess, Crossed) and score >= 0.05 * guess.explained and _is_mostly_counts(guess):
        return True  # codes of a laboratory's own
    return score >= guess.explained * 0.4


def _is_mostly_counts(guess: Crossed) -> bool:
    """Whether most lines hold whole numbers under labels of their own, and few say something of samples."""
    lines = [r for r, role in guess.rows.items() if role.name == "counts"]
    others = [r for r, role in guess.rows.items() if role.name not in ("counts", "blank", "total", "title", "section")]
    columns = [c for c, role in guess.columns.items() if role.name == "counts"]
    texts = [guess.look.text(r, c) for r in lines for c in columns]
    given = [text for text in texts if text]
    whole = sum(text.isdecimal() or text == "-" for text in given)
    labels = {tuple(guess.look.text(r, c) for c in guess.columns if c not in columns) for r in lines}
    if len(labels) < 0.8 * len(lines):
        return False
    return len(lines) >= 5 and len(lines) >= 1.5 * len(others) and bool(given) and whole >= 0.9 * len(given)


def _trimmed(look: Look, area: Area) -> Area | None:
    """The area without empty edges; None where nothing is in it."""
    inside = [(r, c) for r, c in look.own if area.holds(r, c)]
    if not inside:
        return None
    return Area(
        top=min(r for r, _ in inside), left=min(c for _, c in inside),
        bottom=max(r for r, _ in inside), right=max(c for _, c in inside),
    )  # fmt: skip


def _guessed(grid: Grid, guess: Crossed | Long, marks: Marks) -> Table:
    if isinstance(guess, Long):
        return table_of(grid, guess, marks, "long")
    return table_of(grid, guess, marks, "crossed", is_turned=guess.look.is_turned)


def table_of(grid: Grid, guess: Crossed | Long, marks: Marks, shape: Shape, *, is_turned: bool = False) -> Table:
    rows, columns = (guess.columns, guess.rows) if is_turned else (guess.rows, guess.columns)
    if is_turned:
        rows = {r: _as_row(role) for r, role in rows.items()}
    return Table(
        sheet=grid.sheet,
        shape=shape,
        rows=dict(sorted(rows.items())),
        columns=dict(sorted(columns.items())),
        marks=replace(marks, halves=halves_of(grid, rows, columns, marks.decimal)),  # type: ignore[arg-type]
    )


def _shape_of(found: Long) -> Shape:
    return "records" if found.shape == "records" else "long"


def _as_row(role: Role) -> Role:
    return role
