"""
What each part of a full build costs, in turn with the yardsticks that the goals for speed name.

    OMP_NUM_THREADS=1 python -m tests.bench.what_costs --samples 1000
    OMP_NUM_THREADS=1 python -m tests.bench.what_costs --rows 5 --samples 1250 5000 20000 --one-in 20

One site in the words of one audience is built on one core and timed step by step and, of its pages, kind by kind; then
what the yardsticks do is done with narrate's own parts (`bare`): narratives that are already written are made pages,
each with the two figures of its subject, and nothing is judged, told or followed back to counts. Seconds of the
processor, and how often they hold the seconds of the general text-only generator on the same narratives. Of several
sizes, each step is given for 1,000 samples as well, so that it shows what grows faster than the dig; with `--one-in 20`
judging is done once and not in three depths, and of pages of samples, contexts and evidence every twentieth is made,
its seconds times 20.
"""

from __future__ import annotations

import argparse
import os
import subprocess
import sys
import tempfile
import time
from collections import defaultdict
from collections.abc import Callable
from importlib.util import find_spec
from pathlib import Path

from jinja2 import DictLoader, Environment
from markdown_it import MarkdownIt

from narrate.charts import composition, months
from narrate.files import write
from narrate.judging.depth import Depth
from narrate.judging.judge import judge
from narrate.measures.findings import find
from narrate.model.ids import LEVELS
from narrate.pipeline.editions import edition_of, words_of
from narrate.pipeline.judged import Judged, read
from narrate.pipeline.rubbish import seldom_looked_for
from narrate.web.pages import Making
from narrate.web.templates import templates_folder
from tests.bench.one_audience import AUDIENCE
from tests.bench.run import MARKDOWN_ALONE, _plain_site
from tests.bench.synthetic import ROWS_A_SAMPLE, write_project

PAGE = """<!doctype html><html lang="en"><head><meta charset="utf-8"><title>{{ id }}</title></head>
<body><h1>{{ id }}</h1>{{ words }}{% for figure in figures %}<figure>{{ figure }}</figure>{% endfor %}</body></html>
"""

MANY = ("sample", "context", "evidence")
"""What there is a page of for each sample or context."""
DEPTHS = (
    ("judging: verdicts, grades, rivals, next steps", Depth(drawn=(), turned=())),
    ("judging: stability in 200 draws", Depth(drawn=LEVELS, turned=())),
    ("judging: smallest changes that turn a claim", Depth()),
)
"""Deeper from judgement to judgement: what a depth adds is the difference."""

Seconds = dict[str, float]


def main() -> None:
    asked = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    asked.add_argument("--samples", type=int, nargs="+", default=[1000])
    asked.add_argument("--rows", type=int, default=ROWS_A_SAMPLE, help="rows of each sample, at least 5")
    asked.add_argument("--one-in", type=int, default=1, help="of the pages of a kind one in so many is made")
    options = asked.parse_args()
    if sys.platform.startswith("linux"):
        os.sched_setaffinity(0, {min(os.sched_getaffinity(0))})
    for samples in options.samples:
        with tempfile.TemporaryDirectory() as scratch:
            folder = Path(scratch) / "dig"
            write_project(folder, samples, rows=options.rows)
            steps = whole(folder, Path(scratch) / "site", options.one_in)
            steps.update(bare(folder, Path(scratch) / "bare"))
            sticks = yardsticks(folder / "narratives" / AUDIENCE, Path(scratch) / "plain")
        _print(samples, options.rows, steps, sticks)


@seldom_looked_for()
def whole(folder: Path, site: Path, one_in: int) -> Seconds:
    """Seconds of each step of one site; leaves the drafts in the project's folder."""
    took: Seconds = {}
    reading = _timed(took, "reading records, sheets and packs", lambda: read(folder))
    project, packs = reading.project, reading.packs
    assert project is not None and packs is not None
    findings = _timed(took, "measures of every subject", lambda: find(project, packs))
    before, claims = 0.0, None
    for name, depth in DEPTHS if one_in == 1 else (("judging", Depth()),):
        claims = _timed(took, name, lambda depth=depth: judge(project, packs, depth=depth))  # type: ignore[misc]
        took[name], before = took[name] - before, took[name]
    assert claims is not None
    part = Judged(project=project, packs=packs, findings=findings, claims=claims)
    words = _timed(took, "words", lambda: words_of(folder, AUDIENCE, part, audiences=(AUDIENCE,)))
    for path, one in words.files.items():
        write(path, one.text)
    edition = edition_of(AUDIENCE, part, words.narratives, reading.problems, "bench")
    making = _Timed(edition, templates_folder(), folder)
    making.one_in = one_in
    _timed(took, "pages: whole", lambda: making.make(lambda path, content: write(site / path, content)))
    others = took.pop("pages: whole") - sum(making.took.values())
    for kind, seconds in making.took.items():
        took[f"pages: {kind} ({making.many[kind]:,})"] = seconds * (one_in if kind in MANY else 1)
    took["pages: addresses, writing"] = others
    _timed(
        took,
        "tables, pictures and search to take away",
        lambda: [write(site / name, content()) for name, content in making.others.items()],
    )
    return took


class _Timed(Making):
    """Makes pages and sums up how long each kind takes."""

    took: Seconds
    many: dict[str, int]
    one_in = 1

    def make(self, *of, **further):  # type: ignore[no-untyped-def]
        self.took, self.many = defaultdict(float), defaultdict(int)
        return super().make(*of, **further)

    def _made(self, template, page, it):  # type: ignore[no-untyped-def]
        kind = template.one_per if template.one_per in MANY else "all others"
        self.many[kind] += 1
        if kind in MANY and self.many[kind] % self.one_in:
            return b""
        began = time.process_time()
        content = super()._made(template, page, it)
        self.took[kind] += time.process_time() - began
        return content


def bare(folder: Path, site: Path) -> Seconds:
    """Pages of narratives that are already written, each with the two figures of its subject, and nothing else."""
    began = time.process_time()
    reading = read(folder)
    assert reading.project is not None and reading.packs is not None
    findings = find(reading.project, reading.packs)
    markdown = MarkdownIt("commonmark").enable("table")
    page = Environment(loader=DictLoader({"page": PAGE}), autoescape=False).get_template("page")
    drawn = {subject.id: found for subject, found in findings.subjects.items()}
    for path in sorted((folder / "narratives" / AUDIENCE).rglob("*.md")):
        found = drawn.get(path.stem)
        figures = [] if found is None else [one.draw(found, reading.packs, "x") for one in (composition, months)]
        shown = [figure.svg for figure in figures if figure is not None]
        words = markdown.render(path.read_text(encoding="utf-8"))
        write(site / f"{path.stem}.html", page.render(id=path.stem, words=words, figures=shown).encode())
    return {"bare": time.process_time() - began}


def yardsticks(words: Path, site: Path) -> Seconds:
    """Seconds of the clock on one core: markdown-it-py alone, and the general generator where it is installed."""
    took: Seconds = {}
    runs: dict[str, tuple[str, ...]] = {"markdown-it-py alone": ("-c", MARKDOWN_ALONE, str(words))}
    if find_spec("mkdocs"):
        _plain_site(words, site)
        runs["general generator"] = ("-m", "mkdocs", "build", "-q", "-f", str(site / "mkdocs.yml"))
    environment = {**os.environ, "OMP_NUM_THREADS": "1", "NO_MKDOCS_2_WARNING": "1"}
    for name, arguments in runs.items():
        began = time.perf_counter()
        subprocess.run([sys.executable, *arguments], check=True, capture_output=True, env=environment)
        took[name] = time.perf_counter() - began
    return took


def _timed(took: Seconds, name: str, run: Callable[[], object]):  # type: ignore[no-untyped-def]
    began = time.process_time()
    given = run()
    took[name] = time.process_time() - began
    return given


def _print(samples: int, rows: int, steps: Seconds, sticks: Seconds) -> None:
    unit = sticks.get("general generator")
    print(f"{samples:,} samples of {rows} rows, one site, one audience, one core; seconds of the processor")
    for name, seconds in {**steps, **sticks}.items():
        times = "" if unit is None else f"{seconds / unit:8.2f} x generator"
        print(f"  {name:55} {seconds:8.2f} s {seconds * 1000 / samples:8.2f} s for 1,000 {times}", flush=True)


if __name__ == "__main__":
    main()
