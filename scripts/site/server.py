"""A small server for the built site, on this machine alone, with the right types."""

import functools
import socket
import sys
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path

from scripts.setup.say import Missing, say

# Named here since a machine's own table may lack them; wasm of another type does not start.
TYPES = {
    ".html": "text/html; charset=utf-8",
    ".css": "text/css; charset=utf-8",
    ".js": "text/javascript; charset=utf-8",
    ".mjs": "text/javascript; charset=utf-8",
    ".json": "application/json",
    ".wasm": "application/wasm",
    ".webmanifest": "application/manifest+json",
    ".svg": "image/svg+xml",
    ".whl": "application/zip",
    ".pack": "application/octet-stream",
}


# What every host should send, with every file: the recipe in README.md quotes these. Pages carry a tighter
# policy themselves; a worker takes that of its own file's header alone, and nobody may frame the book.
HEADERS = {
    "Content-Security-Policy": (
        "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; img-src 'self'; "
        "font-src 'self'; connect-src 'self'; worker-src 'self'; manifest-src 'self'; base-uri 'none'; "
        "form-action 'self'; frame-ancestors 'none'"
    ),
    "X-Content-Type-Options": "nosniff",
    "Referrer-Policy": "no-referrer",
}

END_SEEN_WITHIN_S = 0.05  # of a server in the background; the library looks twice a second


class Handler(SimpleHTTPRequestHandler):
    """Serves files; the site's own page for what is not there."""

    extensions_map = {**SimpleHTTPRequestHandler.extensions_map, **TYPES}
    protocol_version = "HTTP/1.1"
    # A reply leaves at once, in one piece: of two small ones the second waits 40 ms for a receipt.
    disable_nagle_algorithm = True
    wbufsize = -1

    def log_message(self, format: str, *args: object) -> None:
        """Nothing: the terminal shows the address, not each file."""

    def end_headers(self) -> None:
        """Ask the browser to look again each time, since the site may be built anew."""
        self.send_header("Cache-Control", "no-cache")
        for name, value in HEADERS.items():
            self.send_header(name, value)
        super().end_headers()

    def send_error(self, code: int, message: str | None = None, explain: str | None = None) -> None:
        """Answer a missing page with 404.html, as static hosts do."""
        page = Path(self.directory) / "404.html"
        if code != 404 or not page.exists():
            super().send_error(code, message, explain)
            return
        body = page.read_bytes()
        self.send_response(404)
        self.send_header("Content-Type", TYPES[".html"])
        self.send_header("Content-Length", str(len(body)))
        self.end_headers()
        if self.command != "HEAD":
            self.wfile.write(body)


class Server(ThreadingHTTPServer):
    """Says nothing when a browser hangs up in the middle of a file, as browsers do."""

    daemon_threads = True

    def handle_error(self, request: object, client_address: object) -> None:
        """Show any error but a hung-up connection."""
        if not isinstance(sys.exception(), ConnectionError):
            super().handle_error(request, client_address)  # type: ignore[arg-type]


def make_server(folder: Path, port: int, handler: type[Handler] = Handler) -> ThreadingHTTPServer:
    """A server for ``folder`` on 127.0.0.1; port 0 takes a free one. Raises ``Missing`` if it is taken."""
    here = functools.partial(handler, directory=str(folder))
    try:
        return Server(("127.0.0.1", port), here)
    except OSError as wrong:
        raise Missing(
            f"port {port} cannot be used ({wrong.strerror}); try --port {free_port()}"
        ) from None


def check_port(port: int) -> None:
    """See that a port can be used, before a long build. Raises ``Missing`` if it is taken."""
    make_server(Path(), port).server_close()


def free_port() -> int:
    """A port that nobody uses now."""
    with socket.socket() as trial:
        trial.bind(("127.0.0.1", 0))
        return int(trial.getsockname()[1])


def serve(folder: Path, port: int, handler: type[Handler] = Handler) -> None:
    """Serve until interrupted."""
    with make_server(folder, port, handler) as server:
        say(f"Serving on http://127.0.0.1:{server.server_address[1]}/ - stop with Ctrl+C")
        server.serve_forever()


@contextmanager
def serving(folder: Path) -> Iterator[str]:
    """The address of a folder that is served."""
    with started(make_server(folder, 0)) as base:
        yield base


@contextmanager
def started(server: ThreadingHTTPServer) -> Iterator[str]:
    """The address of a server while it runs."""
    threading.Thread(target=server.serve_forever, args=(END_SEEN_WITHIN_S,), daemon=True).start()
    yield f"http://127.0.0.1:{server.server_address[1]}/"
    server.shutdown()
    server.server_close()
