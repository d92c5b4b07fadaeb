"""From counts of charred plant remains to narratives that can be followed back to them."""

from __future__ import annotations

__version__ = "0.1.0"
