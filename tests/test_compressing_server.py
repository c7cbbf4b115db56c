"""The server of the built site: text goes out packed to whoever takes it, once for each version of a file."""

import gzip
import os
import urllib.error
import urllib.request

import pytest

from scripts.site.compressing_server import CompressingHandler
from scripts.site.server import HEADERS, make_server, started

TEXT = "<p>" + "soil under a cap " * 200
PACKED = {"Accept-Encoding": "gzip"}


@pytest.fixture
def folder(tmp_path):
    (tmp_path / "index.html").write_text(TEXT, encoding="utf-8")
    (tmp_path / "letters.woff2").write_bytes(b"wOF2" * 100)
    (tmp_path / "plants").mkdir()
    (tmp_path / "plants" / "index.html").write_text(TEXT, encoding="utf-8")
    (tmp_path / "404.html").write_text("not here", encoding="utf-8")
    return tmp_path


@pytest.fixture
def address(folder):
    with started(make_server(folder, 0, CompressingHandler)) as base:
        yield base


def ask(address, **headers):
    request = urllib.request.Request(address, headers=headers)
    try:
        with urllib.request.urlopen(request) as reply:
            return reply.status, reply.headers, reply.read()
    except urllib.error.HTTPError as other:
        return other.code, other.headers, other.read()


@pytest.mark.parametrize("path", ["", "index.html", "plants/", "?q=ambulia"])
def test_text_comes_packed_and_with_every_header(address, path):
    status, headers, body = ask(f"{address}{path}", **PACKED)
    assert (status, headers["Content-Encoding"]) == (200, "gzip")
    assert gzip.decompress(body).decode() == TEXT
    assert len(body) < len(TEXT) / 10
    assert all(headers[name] == value for name, value in HEADERS.items())


def test_who_does_not_unpack_has_it_as_it_is(address):
    _, headers, body = ask(address)
    assert headers["Content-Encoding"] is None
    assert body.decode() == TEXT


def test_what_is_packed_already_goes_out_as_it_is(address):
    _, headers, body = ask(f"{address}letters.woff2", **PACKED)
    assert headers["Content-Encoding"] is None
    assert body == b"wOF2" * 100


def test_a_file_is_sent_again_only_once_it_has_changed(address, folder):
    _, headers, _ = ask(address, **PACKED)
    known = {**PACKED, "If-None-Match": headers["ETag"]}
    assert ask(address, **known)[0] == 304
    (folder / "index.html").write_text("anew", encoding="utf-8")
    os.utime(folder / "index.html", ns=(1, 1))
    status, _, body = ask(address, **known)
    assert (status, gzip.decompress(body)) == (200, b"anew")


def test_what_is_missing_and_a_folder_without_its_stroke_are_as_before(address):
    status, _, body = ask(f"{address}nowhere/", **PACKED)
    assert (status, body) == (404, b"not here")
    with urllib.request.urlopen(f"{address}plants") as reply:
        assert reply.url == f"{address}plants/"
