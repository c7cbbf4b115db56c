"""How a part of the runtime is packed for the way to the page."""

import gzip
import io


def packed(octets: bytes) -> bytes:
    """One gzip stream, the same for the same octets; the page unpacks it as it comes.

    No host packs it again, and none unpacks it on the way, since its name tells no host what it is.
    """
    made = io.BytesIO()
    with gzip.GzipFile("", "wb", compresslevel=9, fileobj=made, mtime=0) as stream:
        stream.write(octets)
    return made.getvalue()
