"""
A package for an archive: data tables with their description, the project as records, readme, citation and checksums.

Standards: Frictionless Data Package and Table Schema (version 1), RO-Crate 1.1, Darwin Core terms as `rdfType`,
Citation File Format 1.2.0, BagIt 1.0 (RFC 8493) where a bag is asked for.
"""

from __future__ import annotations

import hashlib
import json
import re
from collections.abc import Iterable, Mapping, Sequence
from datetime import date
from typing import Any

from narrate.deposit.lessened import Lessened
from narrate.deposit.package_table import DWC, PackageTable
from narrate.deposit.package_tables import package_tables
from narrate.deposit.project_files import project_files
from narrate.model.claims import Claims
from narrate.model.findings import Findings
from narrate.model.packs import Packs
from narrate.model.project import Project

NOT_STATED = "Not stated. Ask the authors before you use the data."
NOT_RELEASED = "None: this edition is not for release."


def package(
    project: Project,
    packs: Packs,
    findings: Findings,
    claims: Claims,
    *,
    name: str,
    version: str,
    further: Mapping[str, bytes] | None = None,
    lessened: Lessened | None = None,
) -> Mapping[str, bytes]:
    """
    Path -> bytes of one edition.

    name:     'open' or 'restricted'. The open one must be given what may be disclosed and nothing else.
    further:  the project's own packs and photographs, path below project/ -> bytes.
    lessened: for the open edition, what its records hold less of than was recorded.
    """
    tables = package_tables(project, packs, findings, claims, lessened)
    texts: dict[str, str] = {f"data/{table.name}.csv": table.text() for table in tables}
    texts |= project_files(project)
    texts["datapackage.json"] = _json(_descriptor(project, tables, name, version))
    texts["README.md"] = _readme(project, tables, name, version)
    texts["CITATION.cff"] = _citation(project)
    others = {f"project/{path}": raw for path, raw in (further or {}).items()}
    texts["ro-crate-metadata.json"] = _json(_crate(project, (*texts, *others), tables, name))
    files = {path: text.encode("utf-8") for path, text in sorted(texts.items())} | others
    files["manifest-sha256.txt"] = checksums(files)
    return files


def checksums(files: Mapping[str, bytes]) -> bytes:
    """One line a file: its SHA-256 and its path, as sha256sum reads it."""
    lines = (f"{hashlib.sha256(raw).hexdigest()}  {path}\n" for path, raw in sorted(files.items()))
    return "".join(lines).encode("utf-8")


def bag(files: Mapping[str, bytes]) -> Mapping[str, bytes]:
    """The files laid out as a bag."""
    held = {f"data/{path}": raw for path, raw in files.items()}
    size = sum(len(raw) for raw in held.values())
    tags = {
        "bagit.txt": b"BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n",
        "bag-info.txt": f"Payload-Oxum: {size}.{len(held)}\n".encode(),
        "manifest-sha256.txt": checksums(held),
    }
    return {**held, **tags, "tagmanifest-sha256.txt": checksums(tags)}


def iso_date(written: str) -> str:
    """
    The date as ISO 8601 writes it; empty where it was written otherwise, since it is never guessed.

    >>> iso_date("2026-03-01"), iso_date("2026-03"), iso_date("2026"), iso_date("2026-02-30"), iso_date("March 2026")
    ('2026-03-01', '2026-03', '2026', '', '')
    """
    bare = written.strip()
    if not re.fullmatch(r"\d{4}(?:-\d{2}){0,2}", bare):
        return ""
    try:
        date.fromisoformat(f"{bare}-01-01"[:10])
    except ValueError:
        return ""
    return bare


def _json(value: Any) -> str:
    return json.dumps(value, ensure_ascii=False, indent=1, sort_keys=False) + "\n"


def _about(project: Project, name: str) -> str:
    left = " Restricted contexts, locations and other withheld fields are not in it." if name == "open" else ""
    kept = (
        " It holds restricted contexts and locations: not for release. The open edition counts without them; who holds "
        "both editions can subtract one from the other."
        if name == "restricted"
        else ""
    )
    summary = " ".join(project.summary.split())
    return f"Plant remains from flotation samples: {project.title}. {summary}{left}{kept}".strip()


def _licence(project: Project, name: str) -> str:
    """Of one edition: what the project states is for the open one, since the other is not released."""
    if name != "open":
        return NOT_RELEASED
    return project.licence or NOT_STATED


_NAME_OF_LICENCE = re.compile(r"[-a-zA-Z0-9._]+")
"""What the standard takes for a name; a licence in other words stands in the readme and the crate."""


def _descriptor(project: Project, tables: Sequence[PackageTable], name: str, version: str) -> dict[str, Any]:
    where: dict[str, Any] = {"homepage": project.address} if project.address else {}
    if name == "open" and _NAME_OF_LICENCE.fullmatch(project.licence):
        where["licenses"] = [{"name": project.licence}]
    return {
        **where,
        "profile": "tabular-data-package",
        "name": f"plant-remains-{name}",
        "title": f"Plant remains: {project.title} ({name} edition)",
        "description": _about(project, name),
        "contributors": [{"title": a.name, "role": "author"} for a in project.authors],
        "narrate_version": version,
        "resources": [_resource(table) for table in tables],
    }


def _resource(table: PackageTable) -> dict[str, Any]:
    raw = table.text().encode("utf-8")
    schema: dict[str, Any] = {"fields": [_field(f) for f in table.fields], "missingValues": [""]}
    if table.key:
        schema["primaryKey"] = list(table.key)
    if table.refers:
        schema["foreignKeys"] = [
            {"fields": [field], "reference": {"resource": other, "fields": [there]}}
            for field, other, there in table.refers
        ]
    return {
        "name": table.name,
        "path": f"data/{table.name}.csv",
        "profile": "tabular-data-resource",
        "description": table.about,
        "format": "csv",
        "mediatype": "text/csv",
        "encoding": "utf-8",
        "bytes": len(raw),
        "hash": f"sha256:{hashlib.sha256(raw).hexdigest()}",
        "schema": schema,
    }


def _field(field: Any) -> dict[str, Any]:
    found: dict[str, Any] = {"name": field.name, "type": field.type}
    if field.about:
        found["description"] = field.about
    if field.unit:
        found["unit"] = field.unit
    if field.term:
        found["rdfType"] = DWC + field.term
    limits: dict[str, Any] = {"required": True} if field.is_needed else {}
    limits |= {"enum": list(field.values)} if field.values else {}
    if limits:
        found["constraints"] = limits
    return found


def _crate(project: Project, paths: Iterable[str], tables: Sequence[PackageTable], name: str) -> dict[str, Any]:
    about = {f"data/{table.name}.csv": table.about for table in tables}
    files = sorted({*paths, "ro-crate-metadata.json"} - {"ro-crate-metadata.json"})
    people = [{"@id": f"#author-{n}", "@type": "Person", "name": a.name} for n, a in enumerate(project.authors, 1)]
    kinds = {
        "csv": "text/csv",
        "png": "image/png",
        "jpg": "image/jpeg",
        "json": "application/json",
        "md": "text/markdown",
        "yaml": "application/yaml",
    }
    root = {
        "@id": "./",
        "@type": "Dataset",
        "name": f"Plant remains: {project.title} ({name} edition)",
        "description": _about(project, name),
        "license": _licence(project, name),
        "author": [{"@id": person["@id"]} for person in people],
        "hasPart": [{"@id": path} for path in files],
    }
    published = iso_date(project.report.get("date", ""))
    if published:
        root["datePublished"] = published
    parts = [
        {
            "@id": path,
            "@type": "File",
            "name": about.get(path, path),
            "encodingFormat": kinds.get(path.rpartition(".")[2], "text/plain"),
        }
        for path in files
    ]
    descriptor = {
        "@id": "ro-crate-metadata.json",
        "@type": "CreativeWork",
        "about": {"@id": "./"},
        "conformsTo": {"@id": "https://w3id.org/ro/crate/1.1"},
    }
    return {"@context": "https://w3id.org/ro/crate/1.1/context", "@graph": [descriptor, root, *people, *parts]}


def _readme(project: Project, tables: Sequence[PackageTable], name: str, version: str) -> str:
    lines = [
        f"# Plant remains: {project.title}",
        "",
        f"The {name} edition, written by narrate {version}. {_about(project, name)}",
        "",
        "Interpretations in it are drafts for the signature of a qualified specialist. Location and burial "
        "information follows the laws and consultation that apply where the work was done.",
        "",
        f"Licence: {_licence(project, name)}",
        "",
        "| File | Holds | Rows |",
        "| --- | --- | --- |",
        *(f"| data/{table.name}.csv | {table.about} | {len(table.rows)} |" for table in tables),
        "",
        "`datapackage.json` describes every field, its unit and its keys. `project/` holds the same records as a "
        "folder that `narrate check` and `narrate tell` read. An empty cell is a missing value, never "
        "0. Counts are as counted; nothing is scaled up for the unsorted share. Text in `data/` that a spreadsheet would "
        "take for a formula has an apostrophe before it; in `project/` it stands as it was written. "
        "`sha256sum -c manifest-sha256.txt` proves the files whole.",
        "",
    ]
    return "\n".join(lines)


def _citation(project: Project) -> str:
    def quoted(text: str) -> str:
        return json.dumps(" ".join(text.split()), ensure_ascii=False)

    authors = [f"  - name: {quoted(author.name)}" for author in project.authors] or ['  - name: "Not stated"']
    lines = [
        "cff-version: 1.2.0",
        'message: "Cite these data as below."',
        "type: dataset",
        f"title: {quoted(f'Plant remains: {project.title}')}",
        "authors:",
        *authors,
    ]
    published = iso_date(project.report.get("date", ""))
    if len(published) == len("2026-03-01"):
        lines.append(f"date-released: {published}")
    return "\n".join(lines) + "\n"
