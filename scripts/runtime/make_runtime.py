"""Makes the runtime folder of the site, once for each state of what it is made from."""

import gzip
import hashlib
import io
import json
import shutil
import tempfile
import zipfile
from pathlib import Path
from typing import Any

from calculators.core.listing import load_all
from scripts.runtime.compile_here import can_compile_here, compile_here, slim_archive
from scripts.runtime.interpreter import FILES, small_interpreter
from scripts.runtime.pieces import LATER, in_pieces
from scripts.runtime.wheel import build_wheel
from scripts.setup.node import browser_parts, node
from scripts.setup.paths import BUILD, LOCKS, ROOT
from scripts.setup.say import Missing, step

HERE = Path(__file__).parent
STAND_INS = HERE / "stand_ins"
MADE = BUILD / "runtime"
# Pinned in scripts/locks/npm: with the processor slowed four times, 0.29 starts faster than the 314 line.
LOADER = "pyodide.mjs"


def make_runtime() -> Path:
    """The folder with the runtime's files, made anew only if something it depends on has changed."""
    stamp = MADE / "made-from.txt"
    sources_hash = made_from()
    if stamp.exists() and stamp.read_text(encoding="utf-8") == sources_hash:
        return MADE
    parts = browser_parts()
    interpreter = small_interpreter()
    with step("trimming and byte-compiling the browser's Python"):
        shutil.rmtree(MADE, ignore_errors=True)
        MADE.mkdir(parents=True)
        shutil.copyfile(parts / "pyodide" / LOADER, MADE / LOADER)
        for name in FILES:
            shutil.copyfile(interpreter / name, MADE / name)
        with tempfile.TemporaryDirectory() as folder:
            fill(Path(folder), parts / "pyodide", sources_hash)
        stamp.write_text(sources_hash, encoding="utf-8")
    return MADE


def fill(work: Path, pyodide: Path, sources_hash: str) -> None:
    """Write the trimmed library, the wheel and the list of parts into the runtime folder."""
    lock = json.loads((pyodide / "pyodide-lock.json").read_text(encoding="utf-8"))
    major, minor = map(int, lock["info"]["python"].split(".")[:2])
    wheel = build_wheel(work)
    library, calculators = work / "library.zip", work / "calculators.whl"
    here = can_compile_here((major, minor))
    stock = with_stand_ins(pyodide / "python_stdlib.zip", work / "python_stdlib.zip")
    used = trim(work, stock, wheel, None if here else (library, calculators))
    if here:
        compile_here(stock, used["library"], wheel, library, calculators)
        slim_archive(library, lines=False)
        slim_archive(calculators, lines=True, read=docstrings_read())
    pieces = in_pieces(calculators.read_bytes(), used["first"])
    listed: dict[str, Any] = {
        "lock": {"info": lock["info"], "packages": {}},
        "modules": used["library"],
        "tables": copy_tables(),
        "first": first_calculators(),
        "restAt": pieces.at,
        "library": write_pack("library", library.read_bytes()),
        "calculators": write_pack("calculators", pieces.first),
        "rest": write_pack("rest", pieces.rest),
    }
    counted = ("pyodide.asm.wasm", listed["library"], listed["calculators"])
    listed["bytes"] = sum((MADE / name).stat().st_size for name in counted)  # on the progress bar
    listed["image"] = f"image-{sources_hash[:12]}"  # the browser's own file, of this version
    (MADE / "parts.json").write_text(json.dumps(listed), encoding="utf-8")


def first_calculators() -> list[str]:
    """The names of those that the first piece answers. Raises ``Missing`` where one set apart is none."""
    names = list(load_all())
    if lost := LATER - set(names):
        raise Missing(f"no calculator is called {', '.join(sorted(lost))} any more.")
    return [name for name in names if name not in LATER]


def write_pack(key: str, octets: bytes) -> str:
    """Write a part into the runtime folder, packed; its file there, which its octets name."""
    data = packed(octets)
    name = f"{key}-{hashlib.sha256(data).hexdigest()[:12]}.pack"
    (MADE / name).write_bytes(data)
    return name


def packed(octets: bytes) -> bytes:
    """One gzip stream, the same for the same octets; the page unpacks it as it comes.

    No host packs it again, and none unpacks it on the way, since its name tells no host what it is.
    """
    made = io.BytesIO()
    with gzip.GzipFile("", "wb", compresslevel=9, fileobj=made, mtime=0) as stream:
        stream.write(octets)
    return made.getvalue()


def docstrings_read() -> dict[str, list[str]]:
    """The functions whose docstrings the calculators read: those that declare one; ``{file: [function]}``."""
    functions = [spec.function for spec in load_all().values()]
    return {
        f"{function.__module__.replace('.', '/')}.py": [function.__name__] for function in functions
    }


def copy_tables() -> dict[str, dict[str, str]]:
    """Copy the tables that single calculators need; ``{calculator: {table: file in the runtime folder}}``."""
    listed: dict[str, dict[str, str]] = {}
    for spec in load_all().values():
        for table in spec.tables:
            data = (ROOT / "calculators" / "data" / f"{table}.json").read_bytes()
            name = f"{table}-{hashlib.sha256(data).hexdigest()[:12]}.json"
            (MADE / name).write_bytes(data)
            listed.setdefault(spec.name, {})[table] = name
    return listed


def with_stand_ins(stock: Path, target: Path) -> Path:
    """Write the stock library with our small modules in place of those that start much and do nothing for us.

    Raises ``Missing`` where a version of the runtime has no such module any more.
    """
    ours = {
        path.relative_to(STAND_INS).as_posix(): path.read_bytes()
        for path in sorted(STAND_INS.rglob("*.py"))
    }
    with zipfile.ZipFile(stock) as source, zipfile.ZipFile(target, "w") as whole:
        if lost := ours.keys() - set(source.namelist()):
            raise Missing(f"nothing of the library is called {', '.join(sorted(lost))} any more.")
        for name in source.namelist():
            whole.writestr(name, ours[name] if name in ours else source.read(name))
    return target


def trim(
    work: Path, stock: Path, wheel: Path, compile_to: tuple[Path, Path] | None
) -> dict[str, list[str]]:
    """Run trim.mjs under Node; the files that are needed: of the ``library``, and of ours ``first``.

    Raises ``Missing`` where it fails.
    """
    request = {
        "pyodide": str(browser_parts() / "pyodide"),
        "library": str(stock),
        "scripts": {name: str(HERE / name) for name in ("trim.py", "slim.py")},
        "wheel": str(wheel),
        "first": first_calculators(),
        "later": sorted(LATER),
        "read": docstrings_read(),
        "tables": {
            table: str(ROOT / "calculators" / "data" / f"{table}.json")
            for spec in load_all().values()
            for table in spec.tables
        },
        "compile": compile_to and {"library": str(compile_to[0]), "wheel": str(compile_to[1])},
        "list": str(work / "files.json"),
    }
    (work / "request.json").write_text(json.dumps(request), encoding="utf-8")
    done = node(str(HERE / "trim.mjs"), str(work / "request.json"))
    if done.returncode:
        raise Missing(f"the browser's Python could not be trimmed: {done.stdout}{done.stderr}")
    used: dict[str, list[str]] = json.loads((work / "files.json").read_text(encoding="utf-8"))
    return used


def made_from() -> str:
    """A hash of all that the runtime depends on."""
    sources = [
        LOCKS / "npm" / "package-lock.json",
        ROOT / "pyproject.toml",
        *sorted(HERE.rglob("*")),
        *sorted((ROOT / "calculators").rglob("*")),
    ]
    digest = hashlib.sha256()
    for path in sources:
        if path.is_file() and "__pycache__" not in path.parts:
            digest.update(f"{path.relative_to(ROOT).as_posix()}\0".encode())
            digest.update(hashlib.sha256(path.read_bytes()).digest())
    return digest.hexdigest()
