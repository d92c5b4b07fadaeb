"""A project in which every text that a person can type is a payload."""

from __future__ import annotations

import csv
import io
import itertools
from pathlib import Path

import yaml
from PIL import Image

TAXA = ("Zea mays", "Chenopodium", "Carya", "Quercus", "Vitis", "Polygonum erectum", "Hordeum pusillum", "Rubus")


def hostile_project(folder: Path, payloads: list[str], contexts: int = 20) -> Path:
    """Payloads in turn fill every text of the project, of its contexts and samples and of their rows."""
    for name in ("records", "counts", "images", "narratives/public", "narratives/report"):
        (folder / name).mkdir(parents=True)
    Image.new("RGB", (40, 30), "tan").save(folder / "images" / "pit.png")
    text = itertools.cycle(payloads).__next__

    def picture() -> dict[str, str]:
        return {"file": "images/pit.png", "caption": text(), "credit": text(), "alt": text()}

    project = {
        "title": text(),
        "summary": text(),
        "region_packs": ["eastern-north-america"],
        "authors": [{"name": text(), "role": text()}, {"name": text(), "role": text()}],
        "report": {key: text() for key in ("permit", "archive", "aims", "laboratory", text(), text())},
        "phases": [
            {"id": id, "name": text(), "start": start, "end": start + 99, "dates": text(), "basis": text()}
            for id, start in ((f"early {_line(text())}", 950), ("late", 1050))
        ],
        "report_blocks": [{"block": "laboratory", "title": text(), "text": text()}],
        "report_checklist": [{"asks": text(), "report": text()}],
    }
    phases = [phase["id"] for phase in project["phases"]]
    dug, samples, rows = [], [], []
    for number in range(contexts):
        context = {
            "id": f"C{number} {_line(text())}",
            "kind": ("hearth", "pit", "midden", "floor")[number % 4],
            "feature": _line(text()),
            "phase": phases[number % 2],
            "description": text(),
            "note": text(),
            "location": {"spot": text()},
            "images": [picture()],
        }
        sample = {
            "id": f"S{number} {_line(text())}",
            "context": context["id"],
            "volume_l": 10,
            "method": "bucket",
            "size_classes": [{"name": _line(text()), "proportion_sorted": "1/2"}],
            "heavy_fraction": {"sorted": True, "finds": {text(): text()}},
            "images": [picture()],
            "note": text(),
        }
        dug.append(context)
        samples.append(sample)
        for place in range(3):
            taxon = TAXA[(number + place) % len(TAXA)]
            part = "kernel" if taxon == "Zea mays" else "nutshell" if taxon in ("Carya", "Quercus") else "seed"
            rows.append([sample["id"], taxon, part, str(3 + number % 7), text()])
        rows.append([sample["id"], f"{_line(text())} indet.", "seed", "2", ""])
    _dump(folder / "project.yaml", project)
    _dump(folder / "records" / "all.yaml", {"contexts": dug, "samples": samples})
    sheet = io.StringIO()
    written = csv.writer(sheet, lineterminator="\n", quoting=csv.QUOTE_ALL)
    written.writerow(["sample", "taxon", "part", "count", "note"])
    written.writerows(rows)
    (folder / "counts" / "light.csv").write_text(sheet.getvalue(), encoding="utf-8", newline="")
    return folder


def with_her_words(folder: Path, payloads: list[str]) -> None:
    """The analyst's own sentences: payloads in turn, three in each narrative, as Markdown."""
    # A line that begins so is refused as an unfinished merge, which has a test of its own.
    text = itertools.cycle(p for p in payloads if not p.startswith("<<<<<<<")).__next__
    for path in sorted((folder / "narratives").glob("*/*.md")):
        with path.open("a", encoding="utf-8") as file:
            file.writelines(f"\n{text()}\n" for _ in range(3))


def _line(payload: str) -> str:
    return " ".join(payload.split())[:80] or "x"


def _dump(path: Path, content: object) -> None:
    path.write_text(yaml.safe_dump(content, allow_unicode=True, sort_keys=False), encoding="utf-8")
