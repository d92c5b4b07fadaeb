"""The archive package: described, whole, read by others, and read back into an equal project."""

from __future__ import annotations

import csv
import hashlib
import io
import json
import re
import shutil
import subprocess
import sys
import warnings
from collections.abc import Mapping
from dataclasses import fields, is_dataclass, replace
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner

from narrate.cli import commands
from narrate.deposit.lessened import lessened
from narrate.deposit.package import NOT_STATED, bag, package
from narrate.deposit.package_table import PackageField, PackageTable
from narrate.deposit.package_tables import package_tables
from narrate.disclosure import disclosed
from narrate.model.claims import Claims
from narrate.model.findings import Findings
from narrate.pipeline.judged import Judged
from narrate.problems import Place
from narrate.reading.folder import read_folder


@pytest.fixture(scope="module")
def packages(example_copy: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """out/deposit of a copy of the example, as `narrate deposit` writes it."""
    folder = tmp_path_factory.mktemp("deposit") / "example"
    shutil.copytree(example_copy, folder, ignore=shutil.ignore_patterns("out"))
    result = CliRunner().invoke(commands, ["deposit", str(folder), "--bag"])
    assert result.exit_code == 0, result.output
    return folder / "out" / "deposit"


def placeless(value: Any) -> Any:
    """The value without where it was written; a package has files of its own."""
    if is_dataclass(value):
        return {f.name: placeless(getattr(value, f.name)) for f in fields(value) if f.name != "place"}
    if isinstance(value, (tuple, list)):
        return [placeless(one) for one in value]
    if isinstance(value, Mapping):
        return {key: placeless(one) for key, one in value.items()}
    return None if isinstance(value, Place) else value


def test_the_restricted_edition_reads_back_into_an_equal_project(packages: Path, judged_example: Judged) -> None:
    """Everything that was recorded comes back: phases, contexts, samples, every row in its order, and all signs."""
    read = read_folder(packages / "restricted" / "project").project

    assert placeless(read) == placeless(judged_example.project)


def test_the_open_edition_reads_back_into_what_may_be_disclosed(packages: Path, judged_example: Judged) -> None:
    """The same of the open edition; that something was withheld is said by the edition and not by the records."""
    read = placeless(read_folder(packages / "open" / "project").project)
    told = placeless(disclosed(judged_example.project))

    assert {**read, "is_withheld_in_part": True} == told


def test_the_open_edition_holds_nothing_restricted(packages: Path, judged_example: Judged) -> None:
    """Neither the restricted context and its samples nor a coordinate stands in any file of it."""
    project = judged_example.project
    hidden = project.disclosure.restricted_contexts
    secrets = {*hidden, *(s.id for s in project.samples if s.context in hidden)}
    secrets |= {text for context in project.contexts for text in context.location.values()}
    assert len(secrets) > 10

    for edition in ("open", "open-bag"):
        for path in (p for p in (packages / edition).rglob("*") if p.is_file()):
            text = path.read_bytes().decode("utf-8", errors="replace")
            assert [secret for secret in secrets if secret in text] == [], path


def test_the_restricted_edition_holds_what_the_open_one_does_not(packages: Path) -> None:
    """Otherwise the test above would prove nothing."""
    assert "C19" in (packages / "restricted" / "data" / "contexts.csv").read_text(encoding="utf-8")


@pytest.mark.parametrize("edition", ["open", "restricted"])
def test_foreign_keys_and_required_fields_hold(packages: Path, edition: str) -> None:
    """Table Schema (Frictionless, version 1): keys are unique, references are found, required cells are filled."""
    described = json.loads((packages / edition / "datapackage.json").read_text(encoding="utf-8"))
    tables = {}
    for resource in described["resources"]:
        raw = (packages / edition / resource["path"]).read_bytes()
        assert resource["hash"] == f"sha256:{hashlib.sha256(raw).hexdigest()}"
        rows = list(csv.DictReader(io.StringIO(raw.decode("utf-8"))))
        tables[resource["name"]] = rows
        schema = resource["schema"]
        assert not rows or list(rows[0]) == [field["name"] for field in schema["fields"]]
        for field in schema["fields"]:
            cells = [row[field["name"]] for row in rows]
            limits = field.get("constraints", {})
            assert not limits.get("required") or all(cells)
            assert set(cells) <= {*limits.get("enum", cells), ""}
            if field["type"] in ("number", "integer"):
                assert all({"number": float, "integer": int}[field["type"]](cell) is not None for cell in cells if cell)
        assert len({tuple(row[name] for name in schema["primaryKey"]) for row in rows}) == len(rows)
    for resource in described["resources"]:
        for key in resource["schema"].get("foreignKeys", ()):
            there = {row[key["reference"]["fields"][0]] for row in tables[key["reference"]["resource"]]}
            assert {row[key["fields"][0]] for row in tables[resource["name"]]} - {""} <= there


def test_every_kind_of_data_has_its_table_and_every_amount_its_unit(packages: Path) -> None:
    """Contexts to sources, counts as written beside counts as read; litres, millimetres, grams and items declared."""
    described = json.loads((packages / "open" / "datapackage.json").read_text(encoding="utf-8"))
    tables = {r["name"]: {f["name"]: f for f in r["schema"]["fields"]} for r in described["resources"]}
    measured = re.compile(r"volume|mass|mesh|added|recovered|proportion")
    bare = [
        (table, name)
        for table, fields in tables.items()
        for name, field in fields.items()
        if field["type"] in ("number", "integer") and measured.search(name) and not field.get("unit")
    ]

    assert {"contexts", "samples", "counts", "taxa", "measures", "claims", "rules", "sources"} <= set(tables)
    assert {"name_as_written", "taxon", "count_as_written", "count"} <= set(tables["counts"])
    assert bare == []
    for name in ("README.md", "CITATION.cff", "manifest-sha256.txt"):
        assert (packages / "open" / name).stat().st_size > 100


@pytest.mark.parametrize(
    ("stated", "read", "named"),
    [
        ({"licence": "CC-BY-4.0"}, "CC-BY-4.0", [{"name": "CC-BY-4.0"}]),
        ({"license": "by letter to the museum"}, "by letter to the museum", None),
        ({}, NOT_STATED, None),
    ],
)
def test_the_licence_stands_where_people_and_programs_look(
    judged_example: Judged, stated: dict[str, str], read: str, named: object
) -> None:
    """In readme and crate in any words, or that none is stated; in the description where it is a name (its pattern)."""
    of_dig = replace(judged_example.project, report=stated)
    judged = (judged_example.packs, judged_example.findings, judged_example.claims)
    files = package(of_dig, *judged, name="open", version="test")
    crate = json.loads(files["ro-crate-metadata.json"])["@graph"]

    assert f"Licence: {read}\n" in files["README.md"].decode("utf-8")
    assert next(node for node in crate if node["@id"] == "./")["license"] == read
    assert json.loads(files["datapackage.json"]).get("licenses") == named


def test_the_restricted_edition_is_under_no_licence(judged_example: Judged) -> None:
    """What the project states lets others use the open edition; the other is not released, and says what both reveal."""
    of_dig = replace(judged_example.project, report={"licence": "CC-BY-4.0"})
    judged = (judged_example.packs, judged_example.findings, judged_example.claims)
    files = package(of_dig, *judged, name="restricted", version="test")
    readme = files["README.md"].decode("utf-8")

    assert "Licence: None: this edition is not for release.\n" in readme
    assert "who holds both editions can subtract one from the other" in readme
    assert "licenses" not in json.loads(files["datapackage.json"])


def test_every_field_says_what_it_holds(packages: Path) -> None:
    """Who opens a table in fifty years has the descriptions alone; verdicts, levels and amounts are told in full."""
    described = json.loads((packages / "open" / "datapackage.json").read_text(encoding="utf-8"))
    fields = {(r["name"], f["name"]): f for r in described["resources"] for f in r["schema"]["fields"]}

    assert [name for name, field in fields.items() if not field.get("description")] == []
    assert fields["claims", "verdict"]["constraints"]["enum"] == ["holds", "fails", "cannot tell"]
    assert "memory-H" in fields["sources", "known"]["description"]


@pytest.mark.parametrize("edition", ["open", "restricted"])
def test_frictionless_finds_the_package_valid(packages: Path, edition: str) -> None:
    """The reference validator of the standard ends with 0."""
    command = [sys.executable, "-m", "frictionless", "validate", "datapackage.json"]
    found = subprocess.run(command, cwd=packages / edition, capture_output=True, text=True)

    assert found.returncode == 0, found.stdout + found.stderr


def test_frictionless_finds_a_broken_package(packages: Path, tmp_path: Path) -> None:
    """The validator that finds ours valid refuses one whose counts name a sample that is not there."""
    shutil.copytree(packages / "open", tmp_path / "open")
    counts = tmp_path / "open" / "data" / "counts.csv"
    counts.write_text(counts.read_text(encoding="utf-8").replace(",S001,", ",S999,", 1), encoding="utf-8")
    command = [sys.executable, "-m", "frictionless", "validate", "datapackage.json"]

    found = subprocess.run(command, cwd=tmp_path / "open", capture_output=True, text=True)

    assert found.returncode != 0
    assert "foreign-key" in found.stdout or "ForeignKey" in found.stdout.replace(" ", "")


def test_text_that_a_spreadsheet_would_calculate_is_text_in_the_tables() -> None:
    """Signs of a laboratory, numbers and years before Christ stay as they are, and so does what is no formula."""
    fields = (PackageField(name="name"), PackageField(name="value"))
    rows = (("=HYPERLINK(0)", "+++"), ("@x", -0.5), ("-2+3", "-"), ("\tZea", -300), ("Zea", None))

    text = PackageTable(name="t", about="", fields=fields, rows=rows).text()

    assert text == "name,value\n'=HYPERLINK(0),+++\n'@x,-0.5\n'-2+3,-\n'\tZea,-300\nZea,\n"


def test_what_the_open_edition_leaves_out_is_said_beside_it(judged_example: Judged) -> None:
    """dataGeneralizations names the note that was emptied; informationWithheld stands where a place was recorded."""
    first = judged_example.project.samples[0]
    whole = replace(
        judged_example.project, samples=(replace(first, note="beside C19"), *judged_example.project.samples[1:])
    )
    part = disclosed(whole)
    less = lessened(whole, part)
    found = {
        t.name: t
        for t in package_tables(
            part, judged_example.packs, Findings(subjects={}), Claims(by_id={}, by_subject={}), less
        )
    }
    samples = {row[0]: row[-1] for row in found["samples"].rows}
    withheld = {row[0]: row[-2] for row in found["contexts"].rows}
    placed = {c.id for c in whole.contexts if c.location}

    assert samples[first.id] == "Left out or shortened, against the records: note."
    assert [id for id, text in samples.items() if text] == [first.id]
    assert {id for id, text in withheld.items() if text} == placed - {"C19"}


def test_terms_are_those_of_darwin_core(packages: Path) -> None:
    """Names of terms as the Darwin Core quick reference (dwc.tdwg.org/terms) lists them, from memory."""
    described = json.loads((packages / "open" / "datapackage.json").read_text(encoding="utf-8"))
    used = {f["rdfType"] for r in described["resources"] for f in r["schema"]["fields"] if "rdfType" in f}
    names = ("organismQuantityType", "samplingProtocol", "identificationQualifier", "informationWithheld", "dataGeneralizations")  # fmt: skip  # noqa: E501

    assert {f"http://rs.tdwg.org/dwc/terms/{name}" for name in names} <= used


@pytest.mark.parametrize("edition", ["open", "restricted"])
def test_a_reader_of_ro_crate_finds_every_file(packages: Path, edition: str) -> None:
    """The library rocrate reads the metadata; every file of the package but the checksums is described."""
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        from rocrate.rocrate import ROCrate

        crate = ROCrate(str(packages / edition))
    described = {entity.id for entity in crate.data_entities}
    present = {p.relative_to(packages / edition).as_posix() for p in (packages / edition).rglob("*") if p.is_file()}

    assert described == present - {"manifest-sha256.txt", "ro-crate-metadata.json"}
    assert crate.name == f"Plant remains: Wend Hollow road improvement ({edition} edition)"


@pytest.mark.parametrize(("written", "published"), [("2026-03-01", "2026-03-01"), ("spring of 2026", None)])
def test_the_date_of_a_crate_is_iso_8601_or_not_there(
    judged_example: Judged, written: str, published: str | None
) -> None:
    """RO-Crate 1.1, root data entity: datePublished is a date of ISO 8601; words are no date and none is guessed."""
    report = {**judged_example.project.report, "date": written}
    project = replace(judged_example.project, report=report)
    files = package(
        project, judged_example.packs, judged_example.findings, judged_example.claims, name="open", version="test"
    )
    (root,) = (e for e in json.loads(files["ro-crate-metadata.json"])["@graph"] if e["@id"] == "./")

    assert root.get("datePublished") == published
    assert (b"date-released: 2026-03-01" in files["CITATION.cff"]) == bool(published)


def test_checksums_cover_every_file(packages: Path) -> None:
    """The manifest names each file of the edition with the digest that hashlib works out."""
    folder = packages / "restricted"
    lines = (folder / "manifest-sha256.txt").read_text(encoding="utf-8").splitlines()
    found = {path: digest for digest, path in (line.split("  ", 1) for line in lines)}
    present = {p.relative_to(folder).as_posix(): p for p in folder.rglob("*") if p.is_file()}

    assert set(found) == set(present) - {"manifest-sha256.txt"}
    assert all(hashlib.sha256(present[path].read_bytes()).hexdigest() == digest for path, digest in found.items())


def test_a_bag_is_laid_out_as_its_standard_says() -> None:
    """RFC 8493: declaration, payload under data/, Payload-Oxum as bytes and files, manifests."""
    found = bag({"a.txt": b"abc", "b/c.txt": b"de"})

    assert found["bagit.txt"] == b"BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n"
    assert found["bag-info.txt"] == b"Payload-Oxum: 5.2\n"
    assert {path for path in found if path.startswith("data/")} == {"data/a.txt", "data/b/c.txt"}
    digest = hashlib.sha256(b"abc").hexdigest()
    assert f"{digest}  data/a.txt\n".encode() in found["manifest-sha256.txt"]


def test_a_package_that_is_read_only_or_open_stays(packages: Path, tmp_path: Path) -> None:
    """One file of one edition was made read-only, another is open elsewhere: neither edition is replaced."""
    from narrate.pipeline.deposit import _refuse_in_use

    shutil.copytree(packages / "open", tmp_path / "open")
    _refuse_in_use(tmp_path / "open")
    counts = tmp_path / "open" / "data" / "counts.csv"
    lock = counts.with_name(".~lock.counts.csv#")
    lock.write_bytes(b"")
    with pytest.raises(OSError, match=re.escape("data/counts.csv: another program has it open")):
        _refuse_in_use(tmp_path / "open")
    lock.unlink()
    counts.chmod(0o444)
    with pytest.raises(OSError, match=re.escape("data/counts.csv: it is read-only")):
        _refuse_in_use(tmp_path / "open")


def test_what_narrate_did_not_make_is_left_alone(example_copy: Path, tmp_path: Path) -> None:
    """A folder of the same name that holds no package is not replaced."""
    from narrate.pipeline.deposit import _put

    (tmp_path / "open").mkdir()
    (tmp_path / "open" / "mine.txt").write_text("keep")

    with pytest.raises(OSError, match="something that narrate did not make stands there"):
        _put(tmp_path / "open", {"datapackage.json": b"{}"})
    assert [path.name for path in tmp_path.iterdir()] == ["open"]
    assert (tmp_path / "open" / "mine.txt").read_text() == "keep"
