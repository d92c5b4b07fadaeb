"""`narrate preview`: both sites on this machine alone, built again as files change."""

from __future__ import annotations

import threading
import time
import traceback
from collections.abc import Callable, Iterable, Iterator, Mapping
from contextlib import suppress
from dataclasses import dataclass, field
from html import escape
from http import HTTPStatus
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path, PurePosixPath
from typing import cast
from urllib.parse import unquote

from narrate.pipeline.tell import tell
from narrate.problems import has_errors, written

HERE = "127.0.0.1"
"""The only address that is listened on: nobody else on the network can look."""
TYPES = {
    ".html": "text/html; charset=utf-8",
    ".css": "text/css; charset=utf-8",
    ".js": "text/javascript; charset=utf-8",
    ".svg": "image/svg+xml",
    ".png": "image/png",
    ".jpg": "image/jpeg",
    ".csv": "text/csv; charset=utf-8",
    ".json": "application/json",
    ".zip": "application/zip",
    ".xml": "application/xml",
    ".txt": "text/plain; charset=utf-8",
}
SITES = ("review", "public")
STATE, RELOADER = "/-state.js", "/-reload.js"
Snapshot = Mapping[Path, tuple[int, int]]


@dataclass(frozen=True, slots=True, kw_only=True)
class Built:
    """What came of a build, in words for the page; empty words where there is nothing to say."""

    says: str = ""
    wrote: Mapping[Path, str] = field(default_factory=dict)
    """Narratives as the build itself left them: they are no reason to build again."""


@dataclass(slots=True)
class Preview:
    """The state that the server shows and the watcher changes."""

    folder: Path
    build: Callable[[], Built]
    watched: tuple[Path, ...] = ()
    """Folders outside the project that are watched too, such as that of the templates."""
    number: int = 0
    """Builds so far; pages that show an older one ask for themselves anew."""
    last: Built = field(default_factory=lambda: Built(says="The first build is under way."))
    seen: Snapshot = field(default_factory=dict)

    def rebuild_if_changed(self) -> bool:
        """
        Builds if a file of the project or a template changed since the last look; tells whether it did.

        The look is taken before the build, so that what is edited meanwhile is built next. Nothing that goes wrong ends
        the preview: it is shown on the pages.
        """
        now = snapshot(self.folder, *self.watched)
        if self.number and now == self.seen:
            return False
        self.seen = now
        try:
            self.last = self.build()
        except Exception:
            self.last = Built(says=f"A fault of the program:\n{traceback.format_exc(limit=-3)}")
        self.seen = {**now, **_as_left(self.last.wrote)}
        self.number += 1
        return True


def building(folder: Path, version: str) -> Callable[[], Built]:
    """A build of both sites, with its problems in words."""

    def build() -> Built:
        wrote: dict[Path, str] = {}
        told = tell(folder, version=version, wrote=wrote.update)
        while told.is_busy:
            time.sleep(1)
            told = tell(folder, version=version, wrote=wrote.update)
        says = "\n".join(written(problem) for problem in told.problems)
        if not told.is_written:
            return Built(says=f"Nothing was built; what you see is older.\n{says}", wrote=wrote)
        return Built(says=says if has_errors(told.problems) else "", wrote=wrote)

    return build


def snapshot(folder: Path, *others: Path) -> Snapshot:
    """Time and size of every file that a build reads; what is built, and files that begin with a dot, are left out."""
    return _looks(path for root in (folder, *others) for path in _files(root, root / "out"))


def _as_left(wrote: Mapping[Path, str]) -> Snapshot:
    """A look at the files that are still as they were written: what somebody saved since is built next."""
    looks = _looks(wrote)
    return {path: look for path, look in looks.items() if path.read_bytes() == wrote[path].encode("utf-8")}


def _looks(paths: Iterable[Path]) -> dict[Path, tuple[int, int]]:
    found: dict[Path, tuple[int, int]] = {}
    for path in paths:
        with suppress(OSError):
            about = path.stat()
            found[path] = (about.st_mtime_ns, about.st_size)
    return found


def _files(folder: Path, left_out: Path) -> Iterator[Path]:
    if not folder.is_dir():
        return
    for path in sorted(folder.iterdir()):
        if path == left_out or path.name.startswith(".") or path.is_symlink():
            continue
        if path.is_dir():
            yield from _files(path, left_out)
        elif not path.name.endswith("~"):
            yield path


def served(preview: Preview, port: int) -> ThreadingHTTPServer:
    """A server of both sites on the loopback address; port 0 takes any that is free."""

    class Handler(_Handler):
        shown = preview

    server = ThreadingHTTPServer((HERE, port), Handler)
    server.daemon_threads = True
    return server


def watch(preview: Preview, stop: threading.Event, every_s: float = 1.0) -> None:
    """Looks for changes until it is told to stop."""
    while not stop.is_set():
        preview.rebuild_if_changed()
        stop.wait(every_s)


def run(folder: Path, *, version: str, port: int, say: Callable[[str], None]) -> None:
    """
    Serves until it is interrupted.

    Raises OSError where the port cannot be used.
    """
    from narrate.web.templates import templates_folder

    preview = Preview(folder, building(folder, version), watched=(templates_folder(),))
    server = served(preview, port)
    say(f"http://{HERE}:{server.server_address[1]}/  (Ctrl-C ends it)")
    stop = threading.Event()
    watcher = threading.Thread(target=watch, args=(preview, stop), daemon=True)
    watcher.start()
    try:
        server.serve_forever()
    except KeyboardInterrupt:
        say("Ended.")
    finally:
        stop.set()
        server.server_close()


class _Handler(BaseHTTPRequestHandler):
    shown: Preview
    server_version = "narrate"
    sys_version = ""

    def do_GET(self) -> None:
        self._answer(with_body=True)

    def do_HEAD(self) -> None:
        self._answer(with_body=False)

    def _answer(self, *, with_body: bool) -> None:
        status, kind, body = self._found()
        self.send_response(status)
        self.send_header("Content-Type", kind)
        self.send_header("Content-Length", str(len(body)))
        self.send_header("Cache-Control", "no-store")
        self.send_header("X-Content-Type-Options", "nosniff")
        self.send_header("Cross-Origin-Resource-Policy", "same-origin")
        self.end_headers()
        if with_body:
            self.wfile.write(body)

    def _found(self) -> tuple[HTTPStatus, str, bytes]:
        if not self._is_asked_here():
            return _plain(HTTPStatus.FORBIDDEN, "This preview answers only to its own address on this machine.")
        path = unquote(self.path.partition("?")[0])
        if path == STATE:
            script = f"narrateState({self.shown.number});\n"
            return HTTPStatus.OK, TYPES[".js"], script.encode()
        if path == RELOADER:
            return HTTPStatus.OK, TYPES[".js"], _RELOADER.encode()
        if path == "/":
            return HTTPStatus.OK, TYPES[".html"], self._with_state(_DOOR).encode("utf-8")
        file = inside(self.shown.folder / "out", path)
        body = None if file is None else _content(file)
        if file is None or body is None:
            return self._missing()
        kind = TYPES.get(file.suffix, "application/octet-stream")
        if file.suffix == ".html":
            body = self._with_state(body.decode("utf-8")).encode("utf-8")
        return HTTPStatus.OK, kind, body

    def _is_asked_here(self) -> bool:
        """
        Refuses other names for this machine, so that no page of elsewhere can read what is shown here; and a question
        that names two, or names one in its address, because it is not plain which of them is meant.
        """
        port = cast(tuple[str, int], self.server.server_address)[1]
        named = self.headers.get_all("Host") or []
        return self.path.startswith("/") and len(named) == 1 and named[0] in (f"{HERE}:{port}", f"localhost:{port}")

    def _missing(self) -> tuple[HTTPStatus, str, bytes]:
        page = self._with_state(_DOOR.replace("<h1>Preview</h1>", "<h1>There is no such page</h1>"))
        return HTTPStatus.NOT_FOUND, TYPES[".html"], page.encode("utf-8")

    def _with_state(self, page: str) -> str:
        """The page with what went wrong at its top, and the script that asks for it anew after a build."""
        says = self.shown.last.says
        panel = f'<pre role="alert" class="preview-says">{escape(says)}</pre>' if says else ""
        script = f'<script src="{RELOADER}" data-number="{self.shown.number}" defer></script>'
        head, mark, rest = page.partition("<body")
        if not mark:
            return page
        opened, _, rest = rest.partition(">")
        return f"{head}{mark}{opened}>{panel}{script}{rest}"

    def log_message(self, format: str, *values: object) -> None:
        """Silent: what is asked for is no news."""


def inside(out: Path, path: str) -> Path | None:
    """The file of one of the two sites that a path names; None where it names anything else."""
    if "\\" in path or "\0" in path or not path.startswith("/"):
        return None
    parts = PurePosixPath(path).parts[1:]
    if not parts or parts[0] not in SITES or ".." in path.split("/") or any(part.startswith(".") for part in parts):
        return None
    try:
        root = (out / parts[0]).resolve()
        file = out.joinpath(*parts).resolve()
        if file.is_dir():
            file = file / "index.html"
        return file if file.is_relative_to(root) and file.is_file() else None
    except OSError:  # a name longer than the disk allows, links in a ring
        return None


def _content(file: Path) -> bytes | None:
    """None where the file went since it was found, as in the middle of a build."""
    with suppress(OSError):
        return file.read_bytes()
    return None


def _plain(status: HTTPStatus, text: str) -> tuple[HTTPStatus, str, bytes]:
    return status, TYPES[".txt"], f"{text}\n".encode()


_DOOR = """<!doctype html>
<html lang="en"><head><meta charset="utf-8"><title>Preview</title></head>
<body><h1>Preview</h1><ul><li><a href="/review/index.html">For the team</a></li>
<li><a href="/public/index.html">For visitors</a></li></ul></body></html>
"""

# Pages allow scripts of their own address and nothing else, so the state is asked for as a script.
_RELOADER = """(function () {
  "use strict";
  var number = Number(document.currentScript.dataset.number);
  window.narrateState = function (now) { if (now !== number) { location.reload(); } };
  setInterval(function () {
    var ask = document.createElement("script");
    ask.src = "/-state.js?" + Date.now();
    ask.onload = ask.onerror = function () { ask.remove(); };
    document.head.append(ask);
  }, 1000);
}());
"""
