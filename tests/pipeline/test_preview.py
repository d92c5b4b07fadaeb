"""The preview: who may look at it, what it gives away, and that nothing that goes wrong ends it."""

from __future__ import annotations

import os
import socket
import threading
from collections.abc import Iterator
from http.client import HTTPConnection, HTTPResponse
from pathlib import Path

import pytest

from narrate.pipeline.begin import begin
from narrate.pipeline.preview import Built, Preview, building, inside, served, snapshot

PAGE = '<!doctype html><html lang="en"><head></head><body class="review"><p>as built</p></body></html>'


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    project = tmp_path / "project"
    (project / "out" / "review").mkdir(parents=True)
    (project / "out" / "public").mkdir()
    (project / "out" / "review" / "index.html").write_text(PAGE, encoding="utf-8")
    (project / "out" / "claims.json").write_text("secret", encoding="utf-8")
    (project / "project.yaml").write_text("title: A dig\n", encoding="utf-8")
    return project


@pytest.fixture
def preview(folder: Path) -> Preview:
    return Preview(folder, Built)


@pytest.fixture
def port(preview: Preview) -> Iterator[int]:
    server = served(preview, 0)
    thread = threading.Thread(target=server.serve_forever, kwargs={"poll_interval": 0.05})
    thread.start()
    yield server.server_address[1]
    server.shutdown()
    server.server_close()
    thread.join()


def asked(port: int, path: str, host: str = "", method: str = "GET") -> tuple[HTTPResponse, str]:
    connection = HTTPConnection("127.0.0.1", port, timeout=10)
    connection.putrequest(method, path, skip_host=True)
    connection.putheader("Host", host or f"127.0.0.1:{port}")
    connection.endheaders()
    answer = connection.getresponse()
    text = answer.read().decode("utf-8")
    connection.close()
    return answer, text


def test_a_page_is_given_with_the_script_that_asks_for_it_anew(port: int) -> None:
    """A page comes as it was built, with one script of the preview's own address."""
    answer, text = asked(port, "/review/")

    assert answer.status == 200
    assert "as built" in text
    assert '<script src="/-reload.js" data-number="0" defer></script>' in text
    assert answer.headers["Cache-Control"] == "no-store"


def test_it_listens_on_the_loopback_address_alone(preview: Preview) -> None:
    """No other machine of the network can reach it."""
    server = served(preview, 0)
    address = server.server_address[0]
    server.server_close()

    assert address == "127.0.0.1"


@pytest.mark.parametrize(
    "host", ["example.org", "example.org:{port}", "127.0.0.1", "localhost.example.org:{port}", "[::1]"]
)
def test_other_names_of_this_machine_are_refused(port: int, host: str) -> None:
    """A page of elsewhere whose name was pointed at this machine reads nothing (DNS rebinding)."""
    answer, text = asked(port, "/review/index.html", host.format(port=port))

    assert answer.status == 403
    assert text == "This preview answers only to its own address on this machine.\n"


@pytest.mark.parametrize(
    "question",
    [
        "GET /review/index.html HTTP/1.1\r\nHost: 127.0.0.1:{port}\r\nHost: example.org\r\n\r\n",
        "GET /review/index.html HTTP/1.1\r\nHost: example.org\r\nHost: 127.0.0.1:{port}\r\n\r\n",
        "GET http://example.org/review/index.html HTTP/1.1\r\nHost: 127.0.0.1:{port}\r\n\r\n",
        "GET project.yaml HTTP/1.1\r\nHost: 127.0.0.1:{port}\r\n\r\n",
        "GET /review/index.html HTTP/1.1\r\n\r\n",
    ],
)
def test_a_question_that_does_not_name_this_address_once_is_refused(port: int, question: str) -> None:
    """Two names, another one in the address, or none: no page is given."""
    with socket.create_connection(("127.0.0.1", port), timeout=10) as line:
        line.sendall(question.format(port=port).encode("ascii"))
        answer = line.recv(4096).decode("utf-8")

    assert answer.split(" ")[1] == "403"
    assert "as built" not in answer


@pytest.mark.parametrize(
    "path",
    [
        "/claims.json",
        "/../project.yaml",
        "/review/../claims.json",
        "/review/%2e%2e/claims.json",
        "/review/..%2fclaims.json",
        "/review/..\\claims.json",
        "//etc/passwd",
        "/review//etc/passwd",
        "/review/%00",
        "/review/.narrate-site.json",
        "/elsewhere/index.html",
        f"/review/{'a' * 5000}.html",
        f"/review/{'a/' * 3000}",
    ],
)
def test_nothing_but_the_two_sites_is_given(port: int, path: str) -> None:
    """No way of writing a path climbs out of the sites."""
    answer, text = asked(port, path)

    assert answer.status == 404
    assert "secret" not in text and "A dig" not in text


def test_a_link_out_of_the_site_is_not_followed(folder: Path) -> None:
    """A symbolic link within the site that leads elsewhere gives nothing."""
    os.symlink(folder / "project.yaml", folder / "out" / "review" / "there.txt")

    assert inside(folder / "out", "/review/there.txt") is None
    assert inside(folder / "out", "/review/index.html") is not None


def test_a_change_of_a_record_is_built_and_told(folder: Path, port: int, preview: Preview) -> None:
    """A build follows each change and none where nothing changed; the number that pages ask for goes up."""
    built = [preview.rebuild_if_changed(), preview.rebuild_if_changed()]
    (folder / "project.yaml").write_text("title: Another dig\n", encoding="utf-8")
    built.append(preview.rebuild_if_changed())

    assert built == [True, False, True]
    assert asked(port, "/-state.js")[1] == "narrateState(2);\n"


def test_drafts_that_a_build_writes_are_not_taken_for_a_change(tmp_path: Path) -> None:
    """The first build of a project writes its drafts and is the last; one that the analyst saves is built again."""
    begin(tmp_path / "dig")
    preview = Preview(tmp_path / "dig", building(tmp_path / "dig", "0"))

    built = [preview.rebuild_if_changed(), preview.rebuild_if_changed()]
    draft = next((tmp_path / "dig" / "narratives").rglob("*.md"))
    draft.write_text(draft.read_text(encoding="utf-8") + "\nSeen again.\n", encoding="utf-8")
    built.append(preview.rebuild_if_changed())

    assert built == [True, False, True]


def test_what_is_built_is_not_taken_for_a_change(folder: Path) -> None:
    """Files of out/ and hidden files are not watched; a template elsewhere is."""
    templates = folder.parent / "templates"
    templates.mkdir()
    before = snapshot(folder, templates)
    (folder / "out" / "review" / "new.html").write_text(PAGE, encoding="utf-8")
    (folder / ".hidden").write_text("x", encoding="utf-8")
    unchanged = snapshot(folder, templates)
    (templates / "base.html").write_text("x", encoding="utf-8")

    assert unchanged == before
    assert set(snapshot(folder, templates)) - set(before) == {templates / "base.html"}


def test_problems_stand_on_the_page(folder: Path, port: int, preview: Preview) -> None:
    """What stands in the way of a build is shown, as text, above the pages of the last one."""
    preview.build = building(folder, "0")
    (folder / "project.yaml").write_text("title: <b>A dig\nregion_packs: nowhere\n", encoding="utf-8")
    preview.rebuild_if_changed()
    text = asked(port, "/review/index.html")[1]

    assert '<pre role="alert" class="preview-says">Nothing was built; what you see is older.' in text
    assert "project.yaml:2:" in text
    assert "as built" in text
    assert "<b>" not in text


def test_a_fault_of_the_program_does_not_end_it(port: int, preview: Preview) -> None:
    """An exception is shown on the page, and the next change is built again."""

    def fails() -> Built:
        raise RuntimeError("it rained in")

    preview.build = fails
    preview.rebuild_if_changed()
    answer, text = asked(port, "/review/index.html")

    assert answer.status == 200
    assert "A fault of the program:" in text and "it rained in" in text


def test_only_reading_is_answered(port: int) -> None:
    """HEAD comes without a body; anything that would write is refused."""
    answer, text = asked(port, "/review/index.html", method="HEAD")

    assert (answer.status, text) == (200, "")
    assert asked(port, "/review/index.html", method="POST")[0].status == 501
