"""The worked cases in the docstrings of the room come out as written."""

from __future__ import annotations

import doctest
import importlib
import pkgutil

import pytest

import narrate.telling

MODULES = sorted(f"narrate.telling.{module.name}" for module in pkgutil.iter_modules(narrate.telling.__path__))


@pytest.mark.parametrize("name", MODULES)
def test_worked_cases_hold(name: str):
    """Each case in a docstring gives what it says."""
    assert doctest.testmod(importlib.import_module(name)).failed == 0
