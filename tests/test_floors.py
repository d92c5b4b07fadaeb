"""Who may import whom: the table of rooms in DEVELOPERS.md holds for every import of the package."""

from __future__ import annotations

import ast
import re
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1]
PACKAGE = ROOT / "narrate"


def table_of_rooms(text: str) -> dict[str, tuple[frozenset[str], frozenset[str]]]:
    """Room -> (rooms it may import, third-party packages it may import), as DEVELOPERS.md says."""
    rooms: dict[str, tuple[frozenset[str], frozenset[str]]] = {}
    section = text.split("| room | may import from narrate |")[1].split("\n\n")[0]
    for line in section.splitlines()[2:]:
        _, room, inside, outside, _ = (cell.strip() for cell in line.split("|"))
        rooms[room.strip("`")] = (_words(inside), _words(outside))
    return rooms


def _words(cell: str) -> frozenset[str]:
    return frozenset(word.strip(" `") for word in cell.split(",") if word.strip(" `–"))


def room_of(path: Path, package: Path) -> str:
    inside = path.relative_to(package)
    return inside.parts[0] if len(inside.parts) > 1 else inside.stem


def breaches(path: Path, package: Path, rooms: dict[str, tuple[frozenset[str], frozenset[str]]]) -> Iterator[str]:
    """Every import of a file that the table does not allow, named."""
    room = room_of(path, package)
    where = path.relative_to(package.parent).as_posix()
    if room not in rooms:
        yield f"{where}: room '{room}' is not in the table"
        return
    inside, outside = rooms[room]
    for line, name, is_relative in imports(ast.parse(path.read_text(encoding="utf-8"))):
        top, _, rest = name.partition(".")
        if is_relative:
            yield f"{where}:{line}: a relative import hides the room it comes from"
        elif top == "narrate":
            target = rest.split(".")[0] or "__init__"
            target = target if target in rooms else "__init__"
            if target not in inside | {room}:
                yield f"{where}:{line}: {room} may not import {name}"
        elif top not in sys.stdlib_module_names and top not in outside:
            yield f"{where}:{line}: {room} may not import {name}"


def imports(tree: ast.Module) -> Iterator[tuple[int, str, bool]]:
    for node in ast.walk(tree):
        if isinstance(node, ast.Import):
            for alias in node.names:
                yield node.lineno, alias.name, False
        elif isinstance(node, ast.ImportFrom):
            if node.module == "narrate":
                for alias in node.names:
                    yield node.lineno, f"narrate.{alias.name}", False
            else:
                yield node.lineno, node.module or "", node.level > 0


ROOMS = table_of_rooms((ROOT / "DEVELOPERS.md").read_text(encoding="utf-8"))


@pytest.mark.parametrize("path", sorted(PACKAGE.rglob("*.py")), ids=lambda p: p.relative_to(PACKAGE).as_posix())
def test_every_import_is_allowed_by_the_table(path: Path) -> None:
    """No file imports from a room or a package that the plan does not give it."""
    assert list(breaches(path, PACKAGE, ROOMS)) == []


def test_every_room_of_the_table_exists_and_holds_code() -> None:
    """The plan names no room that is not built, and no room is an empty shell."""
    for room in ROOMS:
        files = [PACKAGE / f"{room}.py"] if (PACKAGE / f"{room}.py").is_file() else list((PACKAGE / room).rglob("*.py"))
        definitions = [
            node
            for file in files
            for node in ast.walk(ast.parse(file.read_text(encoding="utf-8")))
            if isinstance(node, ast.FunctionDef | ast.ClassDef)
        ]
        assert definitions or room in ("__init__", "__main__"), f"{room} holds no code"


@pytest.mark.parametrize(
    ("source", "told"),
    [
        ("from narrate.web.build import build\n", "narrate/telling/x.py:1: telling may not import narrate.web.build"),
        ("import matplotlib.pyplot\n", "narrate/telling/x.py:1: telling may not import matplotlib.pyplot"),
        ("from narrate import cli\n", "narrate/telling/x.py:1: telling may not import narrate.cli"),
        ("from . import english\n", "narrate/telling/x.py:1: a relative import hides the room it comes from"),
        (
            "def f():\n    from narrate.reading.folder import read_folder\n",
            "narrate/telling/x.py:2: telling may not import narrate.reading.folder",
        ),
    ],
)
def test_a_breach_is_named_with_its_place(tmp_path: Path, source: str, told: str) -> None:
    """An import that breaks the plan is named with file, line, room and what it imported."""
    room = tmp_path / "narrate" / "telling"
    room.mkdir(parents=True)
    (room / "x.py").write_text(source, encoding="utf-8")

    assert list(breaches(room / "x.py", tmp_path / "narrate", ROOMS)) == [told]


def test_importing_narrate_and_its_command_line_loads_no_heavy_package() -> None:
    """`narrate --help` is instant because nothing heavy is imported for it."""
    import subprocess

    heavy = ("numpy", "pandas", "matplotlib", "scipy", "jinja2", "yaml", "markdown_it")
    script = f"import sys, narrate, narrate.cli; print([m for m in {heavy!r} if m in sys.modules])"
    ran = subprocess.run([sys.executable, "-c", script], capture_output=True, text=True, check=True)

    assert ran.stdout.strip() == "[]"


def test_no_workplace_or_machine_is_named_in_the_repository() -> None:
    """The project speaks of the project alone: no absolute path of a machine stands in its files."""
    wrong = re.compile(r"(?<![\w.])(/home/\w+|/Users/\w+|/root/|/work/\w+|C:\\\\Users)")
    checked = [p for p in ROOT.rglob("*") if p.suffix in (".py", ".md", ".yaml", ".toml", ".html", ".css", ".csv")]
    skipped = {".venv", "node_modules", "out", "build", "dist", ".git"}
    told = [
        f"{path.relative_to(ROOT)}: {match[0]}"
        for path in checked
        if not skipped & set(path.relative_to(ROOT).parts) and path != Path(__file__)
        for match in [wrong.search(path.read_text(encoding="utf-8", errors="replace"))]
        if match
    ]

    assert told == []
