"""The built site as a phone on a slow line has it: compressed by the host, all files over one narrow line."""

import functools
import threading
import time
from http.server import ThreadingHTTPServer
from pathlib import Path
from typing import Any

from scripts.site.compressing_server import TEXTS, CompressingHandler, compressed, mark_of
from scripts.site.server import Server

PIECE = 4_096  # bytes sent at a time


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


class NarrowHandler(CompressingHandler):
    """Serves files compressed, over the server's line."""

    line: SharedLine
    packs = TEXTS | {".wasm"}  # by usual hosts

    def copyfile(self, source: Any, outputfile: Any) -> None:
        """Send a body piece by piece, as fast as the line takes it."""
        while piece := source.read(PIECE):
            self.line.wait(len(piece))
            outputfile.write(piece)


def narrow_server(folder: Path, bits_per_second: float) -> tuple[ThreadingHTTPServer, SharedLine]:
    """A server for ``folder`` and its line."""
    line = SharedLine(bits_per_second)
    handler = type("OneLine", (NarrowHandler,), {"line": line})
    for path in (folder / "runtime").iterdir():  # not while somebody waits
        if path.suffix in NarrowHandler.packs:
            compressed(path, mark_of(path))
    return Server(("127.0.0.1", 0), functools.partial(handler, directory=str(folder))), line
