"""Which measure of the manual explains the numbers of a column in the tables behind charts."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

MEASURE_OF: Mapping[str, str] = MappingProxyType(
    {
        "Counted (items)": "items",
        "Items counted": "items",
        "Kernels (items)": "items",
        "Cupules (items)": "items",
        "Pieces and seeds (n)": "items",
        "Items drawn": "items",
        "Items per litre": "density",
        "95% interval, from (items per litre)": "density",
        "95% interval, to (items per litre)": "density",
        "Sediment (litres)": "litres",
        "Kernels per cupule": "ratio",
        "Samples with it": "samples_with",
        "Samples": "samples",
        "Share of samples (%)": "ubiquity",
        "95% interval, from (%)": "ubiquity",
        "95% interval, to (%)": "ubiquity",
        "Taxa to expect": "taxa_at_30",
        "Kinds of plant to expect": "taxa_at_30",
        "Bits of cob (items)": "items",
        "Kernels per bit of cob": "ratio",
        "Grain (%)": "share",
        "Chaff or cob (%)": "share",
        "Weed seeds (%)": "share",
    }
)
"""Column -> measure. A column that no measure explains (a name, a month, a test) is left out."""
