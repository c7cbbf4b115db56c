"""Runs inside the browser's own Python, under Node: what do the calculators import, and its bytecode.

Exercises every calculator in every way a page can ask, then looks at which modules of the standard
library are loaded. ``trim.mjs`` calls ``used`` and ``compiled``.
"""

import json
import sys
from typing import Any

LIBRARY = "/lib/python{}{}.zip".format(*sys.version_info[:2])
# The interpreter loads these by itself to decode text or show an error: no run is sure to need them.
ALSO = ("encodings.ascii", "encodings.latin_1", "encodings.utf_8", "traceback", "linecache")


def used(first: list[str], later: list[str]) -> dict[str, list[str]]:
    """Ask every calculator; the files needed: of the ``library`` for all, of ours for those ``first``.

    Beside them the modules that those asked ``later`` need more, each behind those that it imports.
    """
    exercise(first)
    ours, before = our_files(), set(sys.modules)
    exercise(later)
    more = [name for name in sys.modules if name not in before]  # put there anew as each was done
    ask_what_is_none()
    return {"library": library_files(), "first": ours, "later": more}


def exercise(names: list[str]) -> None:
    """Ask every calculator for its example, in both systems of units, and for what it must refuse."""
    from calculators.bridge import answer

    for name in names:
        for given in ({}, {"no-such-input": "1"}, {"temperature_c": "x"}):
            for units, given_in in (("metric", "metric"), ("us", "us"), ("us", "metric")):
                asked = {"calculator": name, "given": given, "units": units, "given_in": given_in}
                answer(json.dumps(asked))
    if "diagnose" in names:
        answer(
            json.dumps({"calculator": "diagnose", "given": {}, "questioning": {"place": "stem"}})
        )
    if "standing" in names:
        ask_the_shelf()


def ask_what_is_none() -> None:
    """Ask a calculator that is none, and show the error."""
    from calculators.bridge import answer

    try:
        answer(json.dumps({"calculator": "no-such-calculator", "given": {}}))
    except LookupError:
        import traceback

        traceback.format_exc()


def ask_the_shelf() -> None:
    """Ask what the shelf's pages ask beside calculators, of a tank and a file, and of broken ones."""
    from calculators.bridge import answer

    entry = {"id": "1", "tank": "a", "at": "2026-11-20T18:00:00Z", "kind": "note", "text": "x"}
    file = {"format": "mulmbook-tanks", "version": 1, "saved": "2026-11-28T18:00:00Z"}
    tank = {"id": "a", "name": "A", "flooded_on": "2026-01-01"}
    whole = {**file, "tanks": [tank], "entries": [entry]}
    of_tank = {"tank": tank, "entries": [entry], "today": "2026-11-28"}
    days = {"from": "2026-11-29", "to": "2026-12-05"}
    for asked in (
        *({"message": "check-shelf-file", "text": text} for text in ("{", json.dumps(whole))),
        {"message": "fill", "calculator": "free-ammonia", **of_tank},
        {"message": "redate", "file": whole, "today": "2027-01-01"},
        *(
            {"message": "paper", "kind": kind, **of_tank, **days}
            for kind in ("card", "holiday", "x")
        ),
    ):
        answer(json.dumps(asked))


def our_files() -> list[str]:
    """The files of the calculators that are loaded or read now, as they are shipped."""
    from calculators.core.data import tables_read

    names = [
        name.replace(".", "/") + ("/__init__" if hasattr(module, "__path__") else "")
        for name, module in sys.modules.items()
        if name.partition(".")[0] == "calculators"
    ]
    tables = [f"calculators/data/{name}.json" for name in tables_read()]
    return sorted([*(f"{name}.pyc" for name in names), *tables])


def library_files() -> list[str]:
    """The files of the stock library that are loaded now, and those that must be there all the same."""
    for name in ALSO:
        __import__(name)
    loaded = set()
    for module in list(sys.modules.values()):
        file = getattr(module, "__file__", None) or ""
        if file.startswith(f"{LIBRARY}/"):
            loaded.add(file.removeprefix(f"{LIBRARY}/"))
    return sorted(loaded)


def compiled(
    archive: str, names: list[str] | None = None, read: dict[str, list[str]] | None = None
) -> bytes:
    """A zip of bytecode made from the sources in ``archive``: all of them, or those in ``names``.

    Of the calculators, asked for whole, assertions and lines stay: an error says where it was. ``read`` names
    the functions whose docstrings a page is made of, by file.
    """
    import zipfile  # here and below, so that what this tool alone needs is not counted as needed

    from scripts.runtime.slim import slim_pyc, stored

    made = {}
    with zipfile.ZipFile(archive) as source:
        whole = [
            name for name in source.namelist() if ".dist-info/" not in name
        ]  # nobody installs it
        for name in sorted(names if names is not None else whole):
            data = source.read(name)
            if name.endswith(".py"):
                keep = (read or {}).get(name, ())
                ours = names is None
                pyc = bytecode(data, name, 0 if ours else 2)
                data, name = slim_pyc(pyc, lines=ours, keep=keep), f"{name}c"
            made[name] = data
    return stored(made)


def bytecode(source: bytes, name: str, optimize: int) -> bytes:
    """A hash-based, unchecked pyc; ``optimize`` counts as ``compile`` does: 2 leaves assertions out."""
    import importlib._bootstrap_external as external
    from importlib.util import source_hash

    code = compile(source, name, "exec", dont_inherit=True, optimize=optimize)
    made: Any = getattr(external, "_code_to_hash_pyc")(code, source_hash(source), checked=False)  # noqa: B009
    return bytes(made)
