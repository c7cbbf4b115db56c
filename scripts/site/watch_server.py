"""The server of the watching mode: as the plain one, and tells open pages what has changed.

The policy of the site stays as it is: the script that listens comes from the same host, and the line
that loads it is put into a page on its way out, never into a file.
"""

import json
import queue
import threading
from pathlib import Path
from typing import Any
from urllib.parse import parse_qs, urlsplit

from scripts.setup.say import Missing
from scripts.site.server import Handler, Server

SCRIPT = Path(__file__).resolve().parents[1] / "javascript" / "watch-reload.js"
SCRIPT_ADDRESS, NEWS_ADDRESS, WORKER_ADDRESS = (
    "/watch-reload.js",
    "/watch-news",
    "/service-worker.js",
)
LINE = f'<script type="module" src="{SCRIPT_ADDRESS}"></script>\n</head>'
STILL_HERE = 15.0  # seconds between signs of life, which find out who has gone

# An offline copy from an earlier visit would hide every change: this worker takes its place and goes.
NO_WORKER = """self.addEventListener("install", () => self.skipWaiting());
self.addEventListener("activate", (event) => event.waitUntil((async () => {
  for (const name of await caches.keys()) await caches.delete(name);
  await self.registration.unregister();
  for (const page of await self.clients.matchAll({ type: "window" })) page.navigate(page.url);
})()));
"""


class News:
    """Who listens, on which page, and what they are told."""

    def __init__(self) -> None:
        self.lock = threading.Lock()
        self.listeners: dict[queue.Queue[dict[str, Any]], str] = {}

    def join(self, address: str) -> "queue.Queue[dict[str, Any]]":
        """Listen from the page at an address."""
        box: queue.Queue[dict[str, Any]] = queue.Queue()
        with self.lock:
            self.listeners[box] = address
        return box

    def leave(self, box: "queue.Queue[dict[str, Any]]") -> None:
        """Listen no longer."""
        with self.lock:
            self.listeners.pop(box, None)

    def open_pages(self) -> set[str]:
        """Addresses below the site's root of the pages that are open now."""
        with self.lock:
            return set(self.listeners.values())

    def tell(self, **what: Any) -> None:
        """Tell every open page."""
        with self.lock:
            for box in self.listeners:
                box.put(what)


class WatchHandler(Handler):
    """Serves the site with a listening script in every page."""

    news: News

    def do_GET(self) -> None:
        """Answer with a file, the script, or the stream of news."""
        path = urlsplit(self.path).path
        if path == NEWS_ADDRESS:
            self.stream()
        elif path == SCRIPT_ADDRESS:
            self.send_body(SCRIPT.read_bytes(), ".js")
        elif path == WORKER_ADDRESS:
            self.send_body(NO_WORKER.encode(), ".js")
        elif (page := self.page(path)) is not None:
            self.send_body(page.replace("</head>", LINE, 1).encode(), ".html")
        else:
            super().do_GET()

    def page(self, path: str) -> str | None:
        """The text of the page at a path, if there is one."""
        file = Path(self.translate_path(path))
        file = file / "index.html" if path.endswith("/") else file
        return (
            file.read_text(encoding="utf-8") if file.suffix == ".html" and file.is_file() else None
        )

    def send_body(self, body: bytes, kind: str) -> None:
        """Send a body of a kind, which is a file's ending."""
        self.send_response(200)
        self.send_header("Content-Type", self.extensions_map[kind])
        self.send_header("Content-Length", str(len(body)))
        self.end_headers()
        self.wfile.write(body)

    def stream(self) -> None:
        """Pass news on until the page is left."""
        asked = parse_qs(urlsplit(self.path).query)
        box = self.news.join(asked.get("page", [""])[0])
        self.close_connection = True
        try:
            self.send_response(200)
            self.send_header("Content-Type", "text/event-stream")
            self.end_headers()
            while True:
                try:
                    line = f"data: {json.dumps(box.get(timeout=STILL_HERE))}\n\n"
                except queue.Empty:
                    line = ": still here\n\n"
                self.wfile.write(line.encode())
                self.wfile.flush()
        except ConnectionError:
            pass
        finally:
            self.news.leave(box)


def make_watch_server(folder: Path, port: int, news: News) -> Server:
    """A watching server for ``folder`` on 127.0.0.1. Raises ``Missing`` if the port is taken."""

    class Here(WatchHandler):
        """The handler with this server's folder and news."""

        def __init__(self, *arguments: Any) -> None:
            super().__init__(*arguments, directory=str(folder))

    Here.news = news
    try:
        return Server(("127.0.0.1", port), Here)
    except OSError as wrong:
        raise Missing(
            f"port {port} cannot be used ({wrong.strerror}); try another --port"
        ) from None
