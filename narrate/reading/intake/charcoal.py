"""Words for charcoal, which is charred by its nature, whatever the title over it says of other remains."""

# ruff: noqa: E501

from __future__ import annotations

import re

from narrate.reading.intake.written_names import WrittenName

# Common practice, no source.
_WORDS = re.compile(
    r"charcoal|houtskool|holzkohlen?|charbons?|carb[oó]n(?:es)?\b|carvão|carvões|carbon[ei] di legn[ao]|carboni\b|"
    r"węgiel drzewny|węgle drzewne|węgielk[ai]|węgielki|trækul|trekull|träkol|faszén|kömür|uhlík[ya]?|uhlíky|drveni ugljen|"
    r"oglje|уголь|угли|木炭|炭化材|charred wood|carbonised wood|carbonized wood|verkohltes holz|bois carbonisé|madera carbonizada",
    re.IGNORECASE,
)


def is_charcoal(name: WrittenName) -> bool:
    """Whether a name as written is of charcoal by its own words, with or without its wood: 'houtskool', 'oak charcoal'."""
    return name.part == "charcoal" and bool(_WORDS.search(name.identification.written))
