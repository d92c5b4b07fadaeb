"""The words over a column of stored results, where they stand in two rows."""

from __future__ import annotations

from narrate.reading.intake.header_words import quantity
from narrate.reading.intake.stored_ledger import Ledger


def head_with_unit(ledger: Ledger, column: int) -> str:
    """The head of a column, with the small one under it where that says that grams stand there: 'Total, Wt (g)'."""
    head = ledger.head(column, of_taxa=False)
    smalls = [
        ledger.cells[row, column].text for row, role in ledger.table.rows.items()
        if role.name == "header" and (row, column) in ledger.cells
    ]  # fmt: skip
    return next((f"{head}, {small}" for small in smalls if small != head and quantity(small) == "mass"), head)
