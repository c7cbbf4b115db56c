"""Addresses of pages, and the links between them."""

import posixpath


def address_of(name: str) -> str:
    """The address of a page of the source, below the site's root: ``plants/index.md`` is ``plants/``."""
    stem = name.removesuffix(".md")
    return (
        f"{stem}/".removesuffix("index/")
        if stem == "index" or stem.endswith("/index")
        else f"{stem}/"
    )


def relative(target: str, page: str) -> str:
    """The link from a page's address to another address, both below the site's root."""
    base = [part for part in page.split("/")[:-1] if part]
    parts = [part for part in posixpath.normpath(target or ".").split("/") if part != "."]
    common = 0
    while common < min(len(base), len(parts)) and base[common] == parts[common]:
        common += 1
    link = "/".join([".."] * (len(base) - common) + parts[common:]) or "."
    return f"{link}/" if target.endswith("/") else link
