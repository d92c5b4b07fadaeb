"""Rules that call a ratio 'as in whole ears' hold at the lines of `words/whole_ears.yaml`."""

from __future__ import annotations

from pathlib import Path

import pytest
import yaml

from narrate.judging.criteria import leaves
from narrate.model.rules import Bound
from tests.readings.reading import packs_of

LINES = yaml.safe_load(Path("narrate/packs/words/whole_ears.yaml").read_text(encoding="utf-8"))["whole_ears"]

AS_IN_EARS = (
    ("processing.ears_of_barley", "Hordeum vulgare", "rachis internode"),
    ("processing.ears_of_rye", "Secale cereale", "rachis internode"),
    ("processing.ears_of_bread_wheat", "Triticum aestivum", "rachis internode"),
    ("processing.spikelets_of_hulled_wheat", "Triticum dicoccum", "glume base"),
    ("processing.spikelets_of_hulled_wheat", "Triticum spelta", "glume base"),
    ("processing.spikelets_of_einkorn", "Triticum monococcum", "glume base"),
)


@pytest.mark.parametrize(("rule", "crop", "part"), AS_IN_EARS)
def test_a_rule_of_whole_ears_spans_the_line_of_its_crop(rule: str, crop: str, part: str) -> None:
    """The pieces of chaff to one grain in an ear lie within every bound of the rule, so the two cannot drift apart."""
    line = next(line for line in LINES if line["crop"] == crop and part in line["byproduct"])
    bounds = [
        leaf
        for leaf in leaves((packs_of("temperate-europe").rules[rule].criteria,))
        if isinstance(leaf, Bound) and leaf.measure == "chaff_ratio"
    ]

    assert bounds
    assert [b for b in bounds if b.at_least > line["low"] or b.at_most < line["high"]] == []
