"""The count sheets in print: every entry once, where its sample, class and state say, and no empty rows."""

from __future__ import annotations

import re
from collections import Counter
from dataclasses import replace

from narrate.documents.blocks import Block, Heading, Paragraph, Table
from narrate.documents.inline import plain
from narrate.documents.outline import outline
from narrate.documents.raw_counts import MOST_COLUMNS, raw_counts, sheets
from narrate.measures.findings import find
from narrate.model.counts import CountRow
from narrate.model.edition import Edition
from narrate.model.sampling import Sample
from narrate.pipeline.editions import edition_of
from narrate.pipeline.judged import Judged
from tests.builders import a_row


def edition(judged: Judged, rows: tuple[CountRow, ...] | None = None, samples: tuple[Sample, ...] = ()) -> Edition:
    if rows is None:
        return edition_of("review", judged, {}, (), "test")
    project = replace(judged.project, counts=rows, samples=(*judged.project.samples, *samples))
    found = replace(judged, project=project, findings=find(project, judged.packs))
    return edition_of("review", found, {}, (), "test")


def tables(blocks: tuple[Block, ...]) -> list[Table]:
    return [block for block in blocks if isinstance(block, Table)]


def test_every_entry_of_the_sheets_is_printed_once(judged_example: Judged) -> None:
    """Read back from the tables: sample, class, name, part, state, count and mass of every row, and its note."""
    printed: Counter[tuple[str, ...]] = Counter()
    for table in tables(tuple(raw_counts(edition(judged_example)))):
        notes = dict(re.findall(r"\[(\d+)\] (.+?)\.(?= \[|$)", plain(table.note)))
        for row in table.rows:
            for head, cell in zip(table.columns[3:], row[3:], strict=True):
                sample, _, size = plain(head).partition(" ")
                for entry in plain(cell).split("; ") if cell != "–" else ():
                    text, _, noted = entry.partition(" [")
                    note = notes[noted.strip("]")] if noted else ""
                    printed[(sample, size, plain(row[0]), row[1], plain(row[2]), text, note)] += 1
    written: Counter[tuple[str, ...]] = Counter()
    for row in judged_example.project.counts:
        state = row.condition + ("" if row.completeness == "whole" else f", {row.completeness}")
        state += "" if row.fraction == "light" else "; heavy"
        mass = "" if row.mass_g is None else f"{row.mass_g:g} g"
        text = f"{row.count.written} ({mass})" if row.count.written and mass else row.count.written or mass
        size = row.size_class or "no class"
        key = (row.sample, size, row.identification.written, row.part, state, text, row.note)
        written[tuple(" ".join(part.replace("\u00a0", " ").split()) for part in key)] += 1
    spaced = Counter({tuple(part.replace("\u00a0", " ") for part in key): n for key, n in printed.items()})

    assert sum(written.values()) == len(judged_example.project.counts) > 900
    assert spaced == written


def test_a_plant_has_a_row_only_where_it_was_found(judged_example: Judged) -> None:
    """No row of a table is without an entry, and no column either."""
    for table in tables(tuple(raw_counts(edition(judged_example)))):
        assert all(any(cell != "–" for cell in row[3:]) for row in table.rows)
        assert all(any(row[n] != "–" for row in table.rows) for n in range(3, len(table.columns)))


def test_a_table_holds_whole_contexts_of_one_phase(judged_example: Judged) -> None:
    """At most twelve columns; a context is in one table, and tables follow the phases and contexts of the records."""
    whole = edition(judged_example)
    found = sheets(whole)
    phase_of = {context.id: context.phase for context in judged_example.project.contexts}
    order = [context for sheet in found for context in sheet.contexts]

    assert max(len(sheet.columns) for sheet in found) <= MOST_COLUMNS == 12
    assert len(order) == len(set(order)) == 22
    assert all(len({phase_of[context] for context in sheet.contexts}) == 1 for sheet in found)
    assert any(len(sheet.contexts) > 1 for sheet in found)
    assert order == sorted(order, key=lambda id: (["early", "late", None].index(phase_of[id]), id))  # type: ignore[arg-type]


def test_a_context_of_many_samples_is_parted_between_samples(judged_example: Judged) -> None:
    """Twenty samples of one context, two classes each: six samples a table, and none is torn."""
    first = judged_example.project.samples[0]
    more = tuple(replace(first, id=f"M{n:02}") for n in range(20))  # type: ignore[arg-type]
    row = a_row(sample="M00", taxon="Rhus sp.", part="seed", count=3)
    rows = tuple(replace(row, sample=s.id, size_class=size) for s in more for size in (">2 mm", "1-2 mm"))
    found = sheets(edition(judged_example, rows, more))

    assert [len(sheet.columns) for sheet in found] == [12, 12, 12, 4]
    assert all(len({s for s, _ in sheet.columns}) * 2 == len(sheet.columns) for sheet in found)


def test_what_is_in_doubt_stands_below_what_is_not(judged_example: Judged) -> None:
    """'cf. Iva annua' follows 'Iva annua' in place of standing under C."""
    first = tables(tuple(raw_counts(edition(judged_example))))[0]
    names = [plain(row[0]) for row in first.rows]

    assert names[names.index("cf. Iva annua") - 1] == "Iva annua"


def test_the_appendix_is_read_by_phase_and_has_one_key(judged_example: Judged) -> None:
    """A heading a phase, and what the signs mean once, with the samples that have no rows."""
    blocks = tuple(raw_counts(edition(judged_example)))
    headed = [block.text for block in blocks if isinstance(block, Heading)]
    (key,) = (block.text for block in blocks if isinstance(block, Paragraph))

    assert headed == ["Early hamlet", "Late hamlet", "Contexts without a phase"]
    assert key.endswith("S043: no rows in the sheets, and no column here.")


def test_every_context_leads_to_its_counts_as_written(judged_example: Judged) -> None:
    """The pointer below its heading names the table that holds it."""
    whole = edition(judged_example)
    where = {context: sheet.anchor for sheet in sheets(whole) for context in sheet.contexts}
    blocks = outline(whole)
    led = {
        block.text[:3]: blocks[n + 1 + block.text.startswith("C19 [restricted],")].text  # type: ignore[union-attr]
        for n, block in enumerate(blocks)
        if isinstance(block, Heading) and re.match(r"C\d\d(?: \[restricted\])?, ", block.text)
    }

    assert all(f"As written: {{{where[context]}}}." in text for context, text in led.items())  # type: ignore[index]
    assert len(led) == 22
