"""The built site as a usual host sends it: what is text goes out compressed, to whoever takes it so."""

import gzip
import io
from functools import lru_cache
from pathlib import Path
from typing import Any

from scripts.site.server import Handler

TEXTS = frozenset({".html", ".css", ".js", ".mjs", ".json", ".svg", ".webmanifest"})
REMEMBERED = 4_096  # files; a book has fewer


class CompressingHandler(Handler):
    """Serves text compressed; what the browser has already is not sent again."""

    packs = TEXTS  # the ends of names; hosts pack .wasm too, which here would be a wait for nothing

    def send_head(self) -> Any:
        """Send the headers; the body as a file to read, or nothing where there is none to send."""
        path = Path(self.translate_path(self.path))
        path = path / "index.html" if self.path.partition("?")[0].endswith("/") else path
        if path.suffix not in self.packs or not path.is_file() or not self.takes_gzip():
            return super().send_head()
        mark = mark_of(path)
        if self.headers.get("If-None-Match") == mark:
            self.send_response(304)
            self.send_header("ETag", mark)
            self.end_headers()
            return None
        body = compressed(path, mark)
        self.send_response(200)
        self.send_header("Content-Type", self.guess_type(str(path)))
        self.send_header("Content-Encoding", "gzip")
        self.send_header("Content-Length", str(len(body)))
        self.send_header("Vary", "Accept-Encoding")
        self.send_header("ETag", mark)
        self.end_headers()
        return io.BytesIO(body)

    def takes_gzip(self) -> bool:
        """Whether who asks says that it unpacks gzip."""
        return "gzip" in self.headers.get("Accept-Encoding", "")


def mark_of(path: Path) -> str:
    """What tells a file from what stood there before, as HTTP's entity tag."""
    found = path.stat()
    return f'"{found.st_mtime_ns:x}-{found.st_size:x}"'


@lru_cache(maxsize=REMEMBERED)
def compressed(path: Path, mark: str) -> bytes:
    """A file's octets, gzipped. A change is told by ``mark``."""
    return gzip.compress(path.read_bytes(), 9)
