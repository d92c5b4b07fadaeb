"""How the tests are shared out: the files that take longest begin first."""

from __future__ import annotations

from types import SimpleNamespace

import pytest

from tests.conftest import LONG, ROOT, pytest_collection_modifyitems


def test_long_files_are_there_and_named_once() -> None:
    """A file that was renamed is renamed in the list too."""
    assert [name for name in LONG if not (ROOT / name).is_file()] == []
    assert len(set(LONG)) == len(LONG)


@pytest.mark.parametrize("is_worker", [True, False])
def test_long_files_begin_first_on_workers_alone(is_worker: bool) -> None:
    """In one process the order stays as it is; on a worker files change places and tests of one file do not."""
    names = ["tests/a.py::b", f"{LONG[1]}::z", f"{LONG[1]}::a", "tests/a.py::a", f"{LONG[0]}::x"]
    items = [SimpleNamespace(nodeid=name) for name in names]
    config = SimpleNamespace(workerinput={}) if is_worker else SimpleNamespace()
    pytest_collection_modifyitems(config, items)  # type: ignore[arg-type]

    sorted_first = [f"{LONG[0]}::x", f"{LONG[1]}::z", f"{LONG[1]}::a", "tests/a.py::b", "tests/a.py::a"]
    assert [item.nodeid for item in items] == (sorted_first if is_worker else names)
