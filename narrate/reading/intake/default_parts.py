"""The part that is taken where a sheet names none."""

# ruff: noqa: E501

from __future__ import annotations

import re
from collections.abc import Mapping

from narrate.reading.intake.written_names import NameReader, WrittenName


def default_part(name: WrittenName, parts: Mapping[str, str], names: NameReader) -> str:
    """The part that is taken where a sheet names none: by taxon, by tag of the packs, else the one for any."""
    id = name.identification.taxon
    taxon = names.packs.taxa.get(id) if id is not None else None
    if taxon is not None:
        for key in (str(taxon.id), taxon.genus, taxon.family, *sorted(taxon.tags)):
            if key in parts:
                return parts[key]
    if re.search(r"\bchaff\b", name.identification.written, re.IGNORECASE):
        return "indeterminate"
    if "cereal" in parts and CEREALS.search(name.identification.written):
        return parts["cereal"]
    return parts.get("any", "indeterminate")


CEREALS = re.compile(
    r"^(?:cf\.? ?)?(?:triticum|hordeum|secale|avena|panicum|setaria|oryza|sorghum|pennisetum|eleusine|cerealia|echinochloa)\b|"
    r"\b(?:wheat|barley|rye|oats?|millet|emmer|einkorn|spelt|cereals?|rice|sorghum)\b",
    re.IGNORECASE,
)
"""Cereals by name, where no pack knows them. Common practice, no source."""
