"""Two hundred secrets of every kind are planted in a project; none is in any byte of the public site."""

from __future__ import annotations

import io
import re
import zipfile
import zlib
from base64 import b64encode
from collections.abc import Iterator
from html import escape
from itertools import groupby
from pathlib import Path
from urllib.parse import quote

import pytest
import yaml
from PIL import Image, PngImagePlugin

from narrate.pipeline.tell import tell

Record = dict[str, object]


class Planter:
    """Gives secrets, each a word that stands nowhere else, and remembers them by kind."""

    def __init__(self) -> None:
        self.planted: dict[str, str] = {}

    def word(self, kind: str) -> str:
        secret = f"Vq{len(self.planted):03d}zk"
        self.planted[secret] = kind
        return secret

    def place(self, metres: str, kind: str) -> str:
        self.planted[metres] = kind
        return metres


def jpeg(planter: Planter) -> bytes:
    notes = Image.Exif()
    notes[0x010E] = planter.word("exif description")
    notes[0x013B] = planter.word("exif artist")
    notes[0x8298] = planter.word("exif copyright")
    notes.get_ifd(0x8825)[0x001D] = planter.word("exif gps")
    kept = io.BytesIO()
    comment = planter.word("jpeg comment").encode()
    Image.new("RGB", (40, 30), "tan").save(kept, "JPEG", exif=notes, comment=comment)
    xmp = f"http://ns.adobe.com/xap/1.0/\0<x>{planter.word('xmp')}</x>".encode()
    iptc = f"Photoshop 3.0\0{planter.word('iptc')}".encode()
    more = b"".join(
        bytes([0xFF, marker]) + (len(said) + 2).to_bytes(2, "big") + said
        for marker, said in ((0xE1, xmp), (0xED, iptc))
    )
    after = planter.word("after the end of a jpeg").encode()
    return kept.getvalue()[:2] + more + kept.getvalue()[2:] + after


def png(planter: Planter) -> bytes:
    text = PngImagePlugin.PngInfo()
    text.add_text("Author", planter.word("png text"))
    text.add_text("Comment", planter.word("png compressed text"), zip=True)
    text.add_itxt("XML:com.adobe.xmp", planter.word("png xmp"))
    text.add(b"prVt", planter.word("png private chunk").encode())
    kept = io.BytesIO()
    Image.new("RGB", (40, 30), "tan").save(kept, "PNG", pnginfo=text)
    return kept.getvalue() + planter.word("after the end of a png").encode()


def image(file: str, caption: str = "A round pit", credit: str = "the team", alt: str = "A pit") -> Record:
    return {"file": file, "caption": caption, "credit": credit, "alt": alt}


def hidden_records(planter: Planter, number: int, images: Path) -> tuple[Record, Record, list[list[str]]]:
    """A restricted context with all that hangs on it: 26 secrets."""
    word = planter.word
    context, sample = word("id of a context"), word("id of a sample")
    files = [f"images/{word('file name')}.jpg", f"images/{word('file name')}.png"]
    (images.parent / files[0]).write_bytes(jpeg(Planter()))
    (images.parent / files[1]).write_bytes(png(Planter()))
    rows = [
        [sample, f"{word('name as written')} indet.", "seed", "3", word("note of a row")],
        [sample, "Zea mays", "kernel", "12", word("note of a row")],
    ]
    return (
        {
            "id": context,
            "feature": word("id of a feature"),
            "kind": "burial" if number == 0 else "pit",
            "phase": "early",
            "description": f"It held {word('description')} and {word('description')}.",
            "note": word("note of a context"),
            "location": {"easting": f"61{number}734.25", "spot": word("location in words")},
            "images": [image(files[0], word("caption"), word("credit"), word("alt text"))],
        },
        {
            "id": sample,
            "context": context,
            "volume_l": 10,
            "method": "bucket",
            "heavy_fraction": {"sorted": True, "finds": {f"sherds_{word('kind of find')}": word("find")}},
            "images": [image(files[1], word("caption"), word("credit"), word("alt text"))],
            "note": f"{word('note of a sample')}, {word('note of a sample')}",
        },
        rows,
    )


NOTATIONS = (
    "It lies at {e} east.",
    "Datum {e:,} / {n:,}.",
    "See grid {g}.",
    "Measured to {e}.4 and {n}.9 m.",
    "Peg at E{e} N{n}.",
)


@pytest.fixture(scope="module")
def planted(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, Planter]:
    folder = tmp_path_factory.mktemp("secrets")
    planter = Planter()
    word = planter.word
    for name in ("records", "counts", "images", "narratives/public"):
        (folder / name).mkdir(parents=True)
    contexts: list[Record] = []
    samples: list[Record] = []
    rows: list[list[str]] = []
    for number in range(5):
        context, sample, own = hidden_records(planter, number, folder / "images")
        contexts.append(context)
        samples.append(sample)
        rows += own
    gone = [str(context["id"]) for context in contexts] + [str(sample["id"]) for sample in samples]
    gone += [str(context["feature"]) for context in contexts]
    for number, notation in enumerate(NOTATIONS):
        e, n = 418203 + number * 1117, 4371905 + number * 1313
        for metres in (str(e), f"{e:,}", str(n), f"{n:,}", f"{e} {n}"):
            planter.place(metres, "coordinate")
        # Linked to a restricted record by its id, and unlinked: told in passing in an open one.
        tail = word("words beside an id")
        contexts.append(
            {
                "id": f"C{number}",
                "kind": "hearth",
                "phase": "early",
                "deposit": "primary",
                "location": {
                    "easting": e,
                    "northing": n,
                    "latitude": f"38.9{number}4717",
                    "spot": word("location in words"),
                },
                "description": notation.format(e=e, n=n, g=f"{e % 100000} {n % 100000}") + word("words beside a place"),
                "note": f"Cut by {gone[number].lower()}, {tail}.",
                "images": [image(f"images/open{number}.jpg"), image(f"images/open{number}.png")],
            }
        )
        (folder / f"images/open{number}.jpg").write_bytes(jpeg(planter))
        (folder / f"images/open{number}.png").write_bytes(png(planter))
        samples.append(
            {
                "id": f"S{number}",
                "context": f"C{number}",
                "volume_l": 10,
                "method": "bucket",
                "note": f"Same bag as {gone[-1 - number]}: {word('words beside an id')}",
                "heavy_fraction": {"sorted": True, "finds": {"sherds": word("restricted field")}},
                "images": [
                    image(f"images/open{number}.jpg", f"Beside {gone[5 + number]}: {word('caption beside an id')}")
                ],
            }
        )
        rows += [
            [
                f"S{number}",
                "Zea mays",
                "cupule",
                "40",
                f"as in {gone[5 + number]} {word('note of a row beside an id')}",
            ],
            [
                f"S{number}",
                "Zea mays",
                "kernel",
                "4",
                f"38°5{4 + (number * 6) // 10}' north, {word('row beside a place')}",
            ],
            [f"S{number}", "Carya", "nutshell", "12", ""],
        ]
    (folder / "project.yaml").write_text(
        yaml.safe_dump(
            {
                "title": "A dig",
                "summary": f"A hamlet, apart from {gone[0]} and {word('summary')}.",
                "region_packs": ["eastern-north-america"],
                "authors": [{"name": "A. Analyst"}],
                "report": {
                    "number": "WH-7",
                    "client": word("restricted key of the report"),
                    "box": f"{gone[1]} {word('box')}",
                },
                "phases": [
                    {"id": "early", "name": "Early", "start": 950, "end": 1050, "basis": f"{gone[6]}: {word('basis')}"}
                ],
                "disclosure": {
                    "restricted_contexts": [context["id"] for context in contexts[1:5]],
                    "restricted_fields": ["location", "finds", "client"],
                },
                "address": "https://example.org/dig/",
            },
            sort_keys=False,
        ),
        encoding="utf-8",
    )
    hidden_file = word("file of records")
    dump = yaml.safe_dump({"contexts": contexts[:5], "samples": samples[:5]}, sort_keys=False)
    (folder / f"records/{hidden_file}.yaml").write_text(dump, encoding="utf-8")
    dump = yaml.safe_dump({"contexts": contexts[5:], "samples": samples[5:]}, sort_keys=False)
    (folder / f"records/{word('file of open records')}.yaml").write_text(dump, encoding="utf-8")
    text = "sample,taxon,part,count,note\n" + "".join(",".join(f'"{cell}"' for cell in row) + "\n" for row in rows)
    (folder / f"counts/{word('file of counts')}.csv").write_text(text, encoding="utf-8")
    told = tell(folder, version="test")
    assert told.is_written, told.problems
    draft = folder / "narratives/public/C1.md"
    written = draft.read_text(encoding="utf-8")
    first = re.search(r"^[A-Z][^\n]*\.", written, re.MULTILINE)
    assert first is not None
    own = f"It touches {gone[2]}, {word('words of the analyst')}. "
    own += f"It is at {418203 + 1117}, {word('words of the analyst')}."
    draft.write_text(written.replace(first.group(), own, 1), encoding="utf-8")
    told = tell(folder, version="test")
    assert told.is_written, told.problems
    return folder / "out", planter


def every_byte(site: Path) -> Iterator[tuple[str, bytes]]:
    """Every file, what is packed into it, and its name."""
    for path in sorted(site.rglob("*")):
        if path.is_dir():
            continue
        name, raw = path.relative_to(site).as_posix(), path.read_bytes()
        yield name, raw + name.encode()
        if path.suffix == ".zip":
            with zipfile.ZipFile(path) as archive:
                for member in archive.namelist():
                    yield f"{name}/{member}", archive.read(member) + member.encode()
        if path.suffix == ".png":
            for start in (found.end() for found in re.finditer(b"zTXt|iTXt|iCCP|IDAT", raw)):
                for skip in range(40):
                    try:
                        yield f"{name} unpacked", zlib.decompressobj().decompress(raw[start + skip :], 1 << 20)
                        break
                    except zlib.error:
                        continue


def in_every_spelling(secret: str) -> set[bytes]:
    return {
        secret.encode(),
        secret.lower().encode(),
        secret.encode("utf-16-le"),
        secret.encode("utf-16-be"),
        escape(secret).encode(),
        quote(secret).encode(),
        b64encode(secret.encode())[:-4],
        secret.encode().hex().encode(),
    }


def one_of(words: list[bytes]) -> bytes:
    """A pattern for any of these sorted words, letter by letter: side by side, all would be tried at every byte."""
    ways = []
    for first, those in groupby(words, key=lambda word: word[:1]):
        rest = [word[1:] for word in those]
        ways.append(re.escape(first) + (b"" if b"" in rest else one_of(rest)))
    return ways[0] if len(ways) == 1 else b"(?:" + b"|".join(ways) + b")"


def test_the_pattern_finds_each_word_and_no_other() -> None:
    """Each of the words is found between other bytes, and what is one byte short of a word is not."""
    words = sorted(spelling for number in range(20) for spelling in in_every_spelling(f"Vq{number:03d}zk"))
    pattern = re.compile(one_of(words))

    assert [word for word in words if pattern.search(b"x" + word + b"x") is None] == []
    assert [word for word in words if pattern.fullmatch(word[:-1]) is not None] == []


def test_two_hundred_secrets_are_planted_and_the_team_sees_them(planted: tuple[Path, Planter]) -> None:
    """The planting is real: the review site and its pictures hold nearly all of them."""
    out, planter = planted
    seen = b"\n".join(raw for _, raw in every_byte(out / "review")).lower()
    in_sight = [secret for secret in planter.planted if secret.lower().encode() in seen]

    assert len(planter.planted) >= 200
    assert len(in_sight) > 150


def test_no_secret_is_in_any_byte_of_the_public_site(planted: tuple[Path, Planter]) -> None:
    """Neither pages nor pictures, search index, tables, archives, cards, site map nor names of files hold one."""
    out, planter = planted
    spelled = {spelling: secret for secret in planter.planted for spelling in in_every_spelling(secret)}
    any_of_them = re.compile(one_of(sorted(spelled)))
    told = {
        f"{planter.planted[spelled[found.group()]]} in {name}"
        for name, raw in every_byte(out / "public")
        for found in any_of_them.finditer(raw)
    }
    kinds = {path.suffix for path in (out / "public").rglob("*") if path.is_file()}

    assert told == set()
    assert {".html", ".js", ".csv", ".zip", ".jpg", ".png", ".xml", ".txt", ".svg"} <= kinds


def test_every_page_says_that_something_is_withheld_and_rows_show_no_gap(planted: tuple[Path, Planter]) -> None:
    """The public is told that there is more, not what; numbers of rows run without a gap within each sample."""
    out, _ = planted
    for page in sorted((out / "public").rglob("*.html")):
        assert "Some things that were recorded are left out of this site on purpose." in page.read_text(
            encoding="utf-8"
        )
    for page in sorted((out / "public" / "samples").glob("s[0-9].html")):
        numbers = [int(found) for found in re.findall(r'id="row-(\d+)"', page.read_text(encoding="utf-8"))]
        assert numbers == list(range(1, len(numbers) + 1)) and numbers
