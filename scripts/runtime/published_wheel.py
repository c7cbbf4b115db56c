"""The wheel that people install: the calculators with every table, made once for each state of sources."""

import base64
import hashlib
import shutil
import tempfile
import zipfile
from pathlib import Path

from scripts.runtime.make_runtime import STAMP, made_from
from scripts.runtime.wheel import build_wheel
from scripts.setup.paths import BUILD, ROOT

MADE = BUILD / "wheel"
TABLES = "calculators/data"


def make_wheel() -> Path:
    """The wheel's file; made anew only if something that it depends on has changed."""
    if made := made_wheel():
        return made
    state = made_from()
    shutil.rmtree(MADE, ignore_errors=True)
    MADE.mkdir(parents=True)
    with tempfile.TemporaryDirectory() as folder:
        whole = with_every_table(build_wheel(Path(folder)), MADE)
    (MADE / STAMP).write_text(state, encoding="utf-8")
    return whole


def made_wheel() -> Path | None:
    """The wheel's file where it stands as it would be made now."""
    there, stamp = sorted(MADE.glob("*.whl")), MADE / STAMP
    if there and stamp.exists() and stamp.read_text(encoding="utf-8") == made_from():
        return there[0]
    return None


def with_every_table(wheel: Path, target: Path) -> Path:
    """Copy a wheel into ``target`` with the tables that the browser's copy goes without.

    The list of its files, RECORD, gains a line for each: path, hash and length by the wheel's standard.
    """
    made = target / wheel.name
    with zipfile.ZipFile(wheel) as stock, zipfile.ZipFile(made, "w", zipfile.ZIP_DEFLATED) as whole:
        names = set(stock.namelist())
        missing = {
            f"{TABLES}/{path.name}": path.read_bytes()
            for path in sorted((ROOT / TABLES).glob("*.json"))
            if f"{TABLES}/{path.name}" not in names
        }
        for entry in stock.infolist():
            data = stock.read(entry)
            if entry.filename.endswith(".dist-info/RECORD"):
                data += "".join(line(name, octets) for name, octets in missing.items()).encode()
            whole.writestr(entry, data)
        like = stock.infolist()[0]
        for name, octets in missing.items():
            added = zipfile.ZipInfo(name, like.date_time)
            added.external_attr, added.compress_type = like.external_attr, zipfile.ZIP_DEFLATED
            whole.writestr(added, octets)
    return made


def line(name: str, octets: bytes) -> str:
    """A file's line in RECORD."""
    digest = base64.urlsafe_b64encode(hashlib.sha256(octets).digest()).rstrip(b"=").decode()
    return f"{name},sha256={digest},{len(octets)}\n"
