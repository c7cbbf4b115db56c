"""Writes a PNG file by hand (ISO/IEC 15948: signature, header, deflated rows, end), for a browser to read."""

import struct
import zlib

SIGNATURE = b"\x89PNG\r\n\x1a\n"


def png(picture):
    """The file's octets for an array of height by width by 3 octets."""
    high, wide, _ = picture.shape
    rows = b"".join(b"\0" + row.tobytes() for row in picture)  # 0: no filter
    header = struct.pack(">IIBBBBB", wide, high, 8, 2, 0, 0, 0)  # 8 bits a channel, red green blue
    parts = ((b"IHDR", header), (b"IDAT", zlib.compress(rows, 6)), (b"IEND", b""))
    return SIGNATURE + b"".join(chunk(*part) for part in parts)


def chunk(name, data):
    """One part of the file: length, name, data and checksum."""
    return struct.pack(">I", len(data)) + name + data + struct.pack(">I", zlib.crc32(name + data))
