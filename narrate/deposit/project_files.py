"""The project written out again as a folder that narrate reads: nothing is scaled, named anew or left out."""

from __future__ import annotations

import csv
import io
import json
from collections.abc import Mapping
from dataclasses import fields, is_dataclass
from typing import Any

from narrate.model.project import Project
from narrate.model.sampling import Sample
from narrate.model.stratigraphy import Context


def project_files(project: Project) -> Mapping[str, str]:
    """
    Path -> text of project.yaml, the records and one count sheet.

    The YAML is JSON, which every reader of YAML takes; texts stay texts ('014'), and numbers stay as they are.
    """
    return {
        "project/project.yaml": _json(_project(project)),
        "project/records/contexts.yaml": _json({"contexts": [_context(c) for c in project.contexts]}),
        "project/records/samples.yaml": _json({"samples": [_sample(s) for s in project.samples]}),
        "project/counts/counts.csv": _counts(project),
    }


def _json(value: Any) -> str:
    return json.dumps(value, ensure_ascii=False, indent=1) + "\n"


def _said(value: Any, *left_out: str) -> dict[str, Any]:
    """The fields of a record that say something, without its place."""
    found: dict[str, Any] = {}
    for field in fields(value):
        one = getattr(value, field.name)
        if field.name not in ("place", *left_out) and one not in (None, "", (), {}, False):
            found[field.name] = _plain(one)
    return found


def _plain(value: Any) -> Any:
    if is_dataclass(value):
        return _said(value)
    if isinstance(value, (tuple, list)):
        return [_plain(one) for one in value]
    if isinstance(value, (set, frozenset)):
        return sorted(value)
    if isinstance(value, Mapping):
        return {key: _plain(one) for key, one in value.items()}
    return value


def _project(project: Project) -> dict[str, Any]:
    said = _said(project, "contexts", "samples", "counts", "is_withheld_in_part", "style", "disclosure", "phases")
    said["phases"] = [_said(phase) for phase in project.phases]
    style = _said(project.style)
    if "litre" in style:
        style["units"] = style.pop("litre")
    if style:
        said["style"] = style
    said["report_blocks"] = [{**_said(b), **({} if b.shown else {"shown": False})} for b in project.report_blocks]
    if not said["report_blocks"]:
        del said["report_blocks"]
    said["report_checklist"] = [_said(item) for item in project.report_checklist]
    if not said["report_checklist"]:
        del said["report_checklist"]
    said["disclosure"] = {
        "restricted_contexts": sorted(project.disclosure.restricted_contexts),
        "restricted_fields": sorted(project.disclosure.restricted_fields),
    }
    return said


def _context(context: Context) -> dict[str, Any]:
    return _said(context)


def _sample(sample: Sample) -> dict[str, Any]:
    said = _said(sample, "size_classes", "heavy_fraction", "recovery_test")
    if sample.size_classes:
        said["size_classes"] = [
            {"name": c.name, "proportion_sorted": c.written or c.proportion_sorted} for c in sample.size_classes
        ]
    if sample.heavy_fraction is not None:
        heavy: dict[str, Any] = {} if sample.heavy_fraction.sorted is None else {"sorted": sample.heavy_fraction.sorted}
        said["heavy_fraction"] = {**heavy, **({"finds": dict(f)} if (f := sample.heavy_fraction.finds) else {})}
    if sample.recovery_test is not None:
        said["recovery_test"] = {"added": sample.recovery_test.added, "recovered": sample.recovery_test.recovered}
    return said


def _counts(project: Project) -> str:
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\n")
    names = ("condition", "completeness", "size_class", "fraction", "note")
    writer.writerow(("sample", "taxon", "part", "count", "mass_g", *names))
    for row in project.counts:
        mass = "" if row.mass_g is None else repr(row.mass_g)
        kept = (row.sample, row.identification.written, row.part, row.count.written, mass)
        writer.writerow((*kept, *(getattr(row, name) for name in names)))
    return out.getvalue()
