"""The built site as a phone on a slow line has it: compressed by the host, all files over one narrow line."""

import functools
import gzip
import io
import threading
import time
from http.server import ThreadingHTTPServer
from pathlib import Path
from typing import Any

from scripts.site.server import Handler, Server

PIECE = 4_096  # bytes sent at a time
COMPRESSED = {
    ".html",
    ".css",
    ".js",
    ".mjs",
    ".json",
    ".wasm",
    ".svg",
    ".webmanifest",
}  # by usual hosts


class SharedLine:
    """A line that all connections share; counts what went over it."""

    def __init__(self, bits_per_second: float) -> None:
        """``bits_per_second`` of bodies, headers left out."""
        self.bytes_per_second = bits_per_second / 8
        self.sent = 0
        self.lock = threading.Lock()
        self.free_at = 0.0

    def wait(self, octets: int) -> None:
        """Take the time that so many bytes need."""
        with self.lock:
            self.free_at = max(self.free_at, time.monotonic()) + octets / self.bytes_per_second
            until = self.free_at
            self.sent += octets
        time.sleep(max(0.0, until - time.monotonic()))


class NarrowHandler(Handler):
    """Serves files compressed, over the server's line."""

    line: SharedLine

    def send_head(self) -> Any:
        """Send the headers; the body as a file to read, or nothing where there is none to send."""
        path = Path(self.translate_path(self.path))
        path = path / "index.html" if path.is_dir() else path
        if path.suffix not in COMPRESSED or not path.is_file():
            return super().send_head()
        body = compressed(path)
        self.send_response(200)
        self.send_header("Content-Type", self.guess_type(str(path)))
        self.send_header("Content-Encoding", "gzip")
        self.send_header("Content-Length", str(len(body)))
        self.end_headers()
        return io.BytesIO(body)

    def copyfile(self, source: Any, outputfile: Any) -> None:
        """Send a body piece by piece, as fast as the line takes it."""
        while piece := source.read(PIECE):
            self.line.wait(len(piece))
            outputfile.write(piece)


@functools.cache
def compressed(path: Path) -> bytes:
    """A file's octets, gzipped."""
    return gzip.compress(path.read_bytes(), 9)


def narrow_server(folder: Path, bits_per_second: float) -> tuple[ThreadingHTTPServer, SharedLine]:
    """A server for ``folder`` and its line."""
    line = SharedLine(bits_per_second)
    handler = type("OneLine", (NarrowHandler,), {"line": line})
    for path in (folder / "runtime").iterdir():  # not while somebody waits
        if path.suffix in COMPRESSED:
            compressed(path)
    return Server(("127.0.0.1", 0), functools.partial(handler, directory=str(folder))), line
