"""Makes the runtime folder of the site, once for each state of what it is made from."""

import hashlib
import json
import shutil
from pathlib import Path
from typing import Any

from calculators.core.listing import load_all
from scripts.runtime.bytecode import (
    Bytecode,
    bytecode_with_tables,
    first_calculators,
    sources,
)
from scripts.runtime.interpreter import FILES, small_interpreter
from scripts.runtime.pack import packed
from scripts.runtime.pieces import in_pieces
from scripts.runtime.start_image import start_image
from scripts.setup.file_hash import hash_of_files
from scripts.setup.node import browser_parts
from scripts.setup.paths import BUILD, ROOT

MADE = BUILD / "runtime"
STAMP = "made-from.txt"  # the file that says of what the folder was made
# Pinned in scripts/locks/npm: with the processor slowed four times, 0.29 starts faster than the 314 line.
LOADER = "pyodide.mjs"


def make_runtime() -> Path:
    """The folder with the runtime's files, made anew only if something it depends on has changed."""
    if made := made_runtime():
        return made
    sources_hash = made_from()
    parts = browser_parts()
    interpreter, bytecode = small_interpreter(), bytecode_with_tables()
    shutil.rmtree(MADE, ignore_errors=True)
    MADE.mkdir(parents=True)
    shutil.copyfile(parts / "pyodide" / LOADER, MADE / LOADER)
    for name in FILES:
        shutil.copyfile(interpreter / name, MADE / name)
    fill(bytecode, parts / "pyodide", sources_hash)
    (MADE / STAMP).write_text(sources_hash, encoding="utf-8")
    return MADE


def made_runtime() -> Path | None:
    """The folder where it stands as it would be made now."""
    stamp = MADE / STAMP
    if stamp.exists() and stamp.read_text(encoding="utf-8") == made_from():
        return MADE
    return None


def fill(bytecode: Bytecode, pyodide: Path, sources_hash: str) -> None:
    """Write the trimmed library, the calculators and the list of parts into the runtime folder."""
    lock = json.loads((pyodide / "pyodide-lock.json").read_text(encoding="utf-8"))
    pieces = in_pieces(bytecode.calculators, bytecode.first)
    listed: dict[str, Any] = {
        "lock": {"info": lock["info"], "packages": {}},
        "modules": bytecode.modules,
        "ahead": write("ahead", json.dumps(bytecode.later).encode(), "json"),
        "tables": copy_tables(),
        "first": first_calculators(),
        "restAt": pieces.at,
        "library": write_pack("library", bytecode.library),
        "calculators": write_pack("calculators", pieces.first),
        "rest": write_pack("rest", pieces.rest),
    }
    counted = ("pyodide.asm.wasm", listed["library"], listed["calculators"])
    listed["bytes"] = sum((MADE / name).stat().st_size for name in counted)  # on the progress bar
    listed["image"] = f"image-{sources_hash[:12]}"  # the browser's own file, of this version
    write_list(listed)
    image = start_image(MADE)  # made with what the list names so far
    file = write("start", image.octets, "pack")
    write_list(listed | {"start": {"file": file, "bytes": len(image.octets), "words": image.words}})


def write_list(listed: dict[str, Any]) -> None:
    """Write the list of parts that the page's worker reads."""
    (MADE / "parts.json").write_text(json.dumps(listed), encoding="utf-8")


def write_pack(key: str, octets: bytes) -> str:
    """Write a part into the runtime folder, packed; its file there, which its octets name."""
    return write(key, packed(octets), "pack")


def write(key: str, data: bytes, ending: str) -> str:
    """Write a part as it is into the runtime folder; its file there, which its octets name."""
    name = f"{key}-{hashlib.sha256(data).hexdigest()[:12]}.{ending}"
    (MADE / name).write_bytes(data)
    return name


def copy_tables() -> dict[str, dict[str, str]]:
    """Copy the tables that single calculators need; ``{calculator: {table: file in the runtime folder}}``."""
    listed: dict[str, dict[str, str]] = {}
    for spec in load_all().values():
        for table in spec.tables:
            data = (ROOT / "calculators" / "data" / f"{table}.json").read_bytes()
            listed.setdefault(spec.name, {})[table] = write(table, data, "json")
    return listed


def made_from() -> str:
    """A hash of all that the runtime depends on."""
    return hash_of_files(sources())
