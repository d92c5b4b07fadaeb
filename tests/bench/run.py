"""
How fast narrate is on invented projects, against yardsticks in the same run. Prints ratios of medians:

    OMP_NUM_THREADS=1 python -m tests.bench.run --samples 1000 --times 3

All is run in turns, each command in a process of its own, so that a busy machine slows all of them alike. `tell` builds
both sites, in the words of four audiences, and all its files; `one audience` builds one site in the words of one
(`tests/bench/one_audience.py`), and the yardsticks render the narratives of the same audience and draw nothing. The
general site generator is measured where it is installed: `pip install 'narrate[bench]'`. With `--whole-once`, the whole
of `tell` is timed in the first run alone, whose memory is looked at and which writes the drafts: no goal is set for it,
and at 5,000 samples it takes half of a round. Every time is printed as it is taken, to standard error.
"""

from __future__ import annotations

import argparse
import os
import shutil
import statistics
import subprocess
import sys
import tempfile
import threading
import time
from collections.abc import Callable
from importlib.util import find_spec
from pathlib import Path

from tests.bench.one_audience import AUDIENCE
from tests.bench.synthetic import write_project

Run = Callable[[], object]

MARKDOWN_ALONE = """
import sys
from pathlib import Path
from markdown_it import MarkdownIt
markdown = MarkdownIt("commonmark").enable("table")
for path in sorted(Path(sys.argv[1]).rglob("*.md")):
    markdown.render(path.read_text(encoding="utf-8"))
"""


def main() -> None:
    asked = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    asked.add_argument("--samples", type=int, default=1000)
    asked.add_argument("--times", type=int, default=3)
    asked.add_argument("--whole-once", action="store_true")
    options = asked.parse_args()
    with tempfile.TemporaryDirectory() as scratch:
        folder = Path(scratch) / "dig"
        write_project(folder, options.samples)
        first: dict[str, float] = {}
        began = time.perf_counter()
        peak = peak_pss_mb(["tell", str(folder)])
        if options.whole_once:
            first["tell, whole"] = time.perf_counter() - began
        _narrate("tell", str(folder))  # reads the drafts that the first run wrote
        runs = {name: run for name, run in _runs(folder, Path(scratch)).items() if name not in first}
        taken = first | in_turns(runs, options.times)
        pages = len(list((folder / "out").rglob("*.html")))
    _print(options.samples, pages, peak, taken)
    _print_figures(options.times)


def _runs(folder: Path, scratch: Path) -> dict[str, Run]:
    """What is timed, in the order in which it is run."""
    words = folder / "narratives" / AUDIENCE
    runs: dict[str, Run] = {
        "python -c pass": lambda: _python("-c", "pass"),
        "narrate --help": lambda: _narrate("--help"),
        "markdown-it-py alone": lambda: _python("-c", MARKDOWN_ALONE, str(words)),
        "tell, whole": lambda: (shutil.rmtree(folder / "out"), _narrate("tell", str(folder))),
        "tell, nothing changed": lambda: _narrate("tell", str(folder)),
        "tell, one sample edited": lambda: (_edit(folder), _narrate("tell", str(folder))),
        # Not timed against anything: reads the drafts that the edit changed, so that the next round begins alike.
        "tell, drafts read again": lambda: _narrate("tell", str(folder)),
    }
    one = scratch / "one"
    runs["one audience, whole"] = lambda: (
        shutil.rmtree(one, ignore_errors=True),
        _python("-m", "tests.bench.one_audience", str(folder), str(one)),
    )
    if find_spec("mkdocs"):
        site = scratch / "plain"
        build = ("-m", "mkdocs", "build", "-q", "-f", str(site / "mkdocs.yml"))
        runs["general generator, whole"] = lambda: (_plain_site(words, site), _python(*build))
        runs["general generator, nothing changed"] = lambda: _python(*build, "--dirty")
        runs["general generator, one page edited"] = lambda: (_touch_one(site), _python(*build, "--dirty"))
    return runs


def in_turns(runs: dict[str, Run], times: int) -> dict[str, float]:
    """Median seconds of each run, all of them run in turns."""
    taken: dict[str, list[float]] = {name: [] for name in runs}
    for _ in range(times):
        for name, run in runs.items():
            began = time.perf_counter()
            run()
            taken[name].append(time.perf_counter() - began)
            print(f"{name}: {taken[name][-1]:.3f} s", file=sys.stderr, flush=True)
    return {name: statistics.median(own) for name, own in taken.items()}


def peak_pss_mb(arguments: list[str]) -> float:
    """The most memory that a command and all its processes held at once: proportional set sizes, in MB."""
    most = 0.0
    with subprocess.Popen(
        [sys.executable, "-m", "narrate", *arguments], stderr=subprocess.DEVNULL, stdout=subprocess.DEVNULL
    ) as run:
        while run.poll() is None:
            most = max(most, sum(_pss_mb(id) for id in _with_children(run.pid)))
            time.sleep(0.05)
    return most


def _with_children(process: int) -> list[int]:
    try:
        below = Path(f"/proc/{process}/task/{process}/children").read_text(encoding="ascii").split()
    except OSError:
        return []
    return [process, *(id for child in below for id in _with_children(int(child)))]


def _pss_mb(process: int) -> float:
    try:
        said = Path(f"/proc/{process}/smaps_rollup").read_text(encoding="ascii")
    except OSError:
        return 0.0
    return next((int(line.split()[1]) / 1024 for line in said.splitlines() if line.startswith("Pss:")), 0.0)


def _edit(folder: Path) -> None:
    """One more item in the last row of the first sheet that counts any."""
    sheet = min((folder / "counts").glob("*.csv"))
    lines = sheet.read_text(encoding="utf-8").splitlines()
    cells = lines[-1].split(",")
    cells[3] = str(int(cells[3]) + 1)
    sheet.write_text("\n".join([*lines[:-1], ",".join(cells)]) + "\n", encoding="utf-8")


def _plain_site(words: Path, site: Path) -> None:
    shutil.rmtree(site, ignore_errors=True)
    shutil.copytree(words, site / "docs", ignore=shutil.ignore_patterns(".*"))
    (site / "docs" / "index.md").write_text("# Narratives\n", encoding="utf-8")
    (site / "mkdocs.yml").write_text("site_name: Narratives\nnav: [index.md]\n", encoding="utf-8")


def _touch_one(site: Path) -> None:
    page = min((site / "docs").glob("C*.md"))
    page.write_text(page.read_text(encoding="utf-8") + "\nOne more sentence.\n", encoding="utf-8")


def _narrate(*arguments: str) -> None:
    _python("-m", "narrate", *arguments)


def _python(*arguments: str) -> None:
    environment = {**os.environ, "OMP_NUM_THREADS": "1", "NO_MKDOCS_2_WARNING": "1"}
    subprocess.run([sys.executable, *arguments], check=True, capture_output=True, env=environment)


def _print(samples: int, pages: int, peak: float, taken: dict[str, float]) -> None:
    print(f"{samples:,} samples, {pages:,} pages; peak memory of all processes {peak:.0f} MB (PSS)")
    for name, seconds in taken.items():
        print(f"  {name:38} {seconds:9.3f} s")
    for name, yardstick in (
        ("narrate --help", "python -c pass"),
        ("tell, nothing changed", "python -c pass"),
        ("one audience, whole", "markdown-it-py alone"),
        ("one audience, whole", "general generator, whole"),
        ("tell, whole", "markdown-it-py alone"),
        ("tell, one sample edited", "tell, whole"),
        ("tell, whole", "general generator, whole"),
        ("tell, nothing changed", "general generator, nothing changed"),
        ("tell, one sample edited", "general generator, one page edited"),
    ):
        if yardstick in taken:
            print(f"  {name} : {yardstick} = {taken[name] / taken[yardstick]:.2f}")


def _print_figures(times: int) -> None:
    """Milliseconds of one core for one figure of the example project, and of one that is drawn the usual way."""
    from tests.bench.figures import kinds, usual

    runs = {**kinds(), "usual": usual}
    taken: dict[str, list[float]] = {name: [] for name in runs}
    for _ in range(times):
        for name, run in runs.items():
            began, threads = time.process_time(), threading.active_count()
            drawn = sum(run() for _ in range(3))
            assert threads == threading.active_count()
            taken[name].append((time.process_time() - began) * 1000 / drawn)
    usual_ms = statistics.median(taken.pop("usual"))
    print(f"one figure drawn the usual way, with tight layout: {usual_ms:.1f} ms")
    for name, own in taken.items():
        ms = statistics.median(own)
        print(f"  {name:22} {ms:6.2f} ms = 1/{usual_ms / ms:.0f}")


if __name__ == "__main__":
    main()
