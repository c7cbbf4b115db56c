"""The library and the calculators as bytecode of the browser's Python, before any table is new.

What is loaded, and the bytecode, follow from code alone: a record that changes a table changes neither. So
they are made once for each state of the code, and a table takes its place in what was made.
"""

import io
import json
import os
import shutil
import tempfile
import zipfile
from pathlib import Path
from typing import NamedTuple

from calculators.core.listing import load_all
from scripts.runtime.compile_here import can_compile_here, compile_here, slim_archive
from scripts.runtime.pieces import LATER
from scripts.runtime.slim import stored
from scripts.runtime.wheel import build_wheel
from scripts.setup.file_hash import files_below, hash_of_files
from scripts.setup.node import browser_parts, node
from scripts.setup.paths import BUILD, LOCKS, ROOT, TABLES
from scripts.setup.say import Missing, step

HERE = Path(__file__).parent
STAND_INS = HERE / "stand_ins"
MADE = BUILD / "bytecode"
LIBRARY, CALCULATORS, USED = "library.zip", "calculators.zip", "used.json"
TABLES_THERE = f"{TABLES.relative_to(ROOT).as_posix()}/"  # in the archive of the calculators


class Bytecode(NamedTuple):
    """Two zips, and which of their files are needed: of the library for all, of ours for those ``first``.

    ``later`` are the modules that the other calculators need more, in an order to import them one by one.
    """

    library: bytes
    calculators: bytes
    modules: list[str]
    first: list[str]
    later: list[str]


def bytecode_with_tables() -> Bytecode:
    """The bytecode, with the tables as they are now. Raises ``Missing`` where it cannot be made."""
    stamp, state = MADE / "made-from.txt", code_state()
    if not stamp.exists() or stamp.read_text(encoding="utf-8") != state:
        with step("trimming and byte-compiling the browser's Python"):
            shutil.rmtree(MADE, ignore_errors=True)
            MADE.mkdir(parents=True)
            make_bytecode(MADE)
            stamp.write_text(state, encoding="utf-8")
    used = json.loads((MADE / USED).read_text(encoding="utf-8"))
    calculators = with_tables((MADE / CALCULATORS).read_bytes())
    library = (MADE / LIBRARY).read_bytes()
    return Bytecode(library, calculators, used["library"], used["first"], used["later"])


def make_bytecode(target: Path) -> None:
    """Write the two zips, and what is needed of them. Raises ``Missing``."""
    parts = browser_parts()
    pyodide = parts / "pyodide"
    lock = json.loads((pyodide / "pyodide-lock.json").read_text(encoding="utf-8"))
    major, minor = map(int, lock["info"]["python"].split(".")[:2])
    with tempfile.TemporaryDirectory() as folder:
        work = Path(folder)
        wheel = build_wheel(work)
        library, calculators = target / LIBRARY, target / CALCULATORS
        here = can_compile_here((major, minor))
        stock = with_stand_ins(pyodide / "python_stdlib.zip", work / "python_stdlib.zip")
        used = trim(work, stock, wheel, None if here else (library, calculators))
        if here:
            compile_here(stock, used["library"], wheel, library, calculators)
            slim_archive(library, lines=False)
            slim_archive(calculators, lines=True, read=docstrings_read())
    (target / USED).write_text(json.dumps(used), encoding="utf-8")


def with_tables(archive: bytes) -> bytes:
    """A stored zip of the calculators with each table in it as it is now; all else as it was."""
    with zipfile.ZipFile(io.BytesIO(archive)) as source:
        files = {name: source.read(name) for name in source.namelist()}
    return stored({name: table_now(name) or data for name, data in files.items()})


def table_now(name: str) -> bytes | None:
    """The octets of a table by its file's name in the archive; None for what is no table."""
    if not name.startswith(TABLES_THERE):
        return None
    return (TABLES / name.removeprefix(TABLES_THERE)).read_bytes()


def first_calculators() -> list[str]:
    """The names of those that the first piece answers. Raises ``Missing`` where one set apart is none."""
    names = list(load_all())
    if lost := LATER - set(names):
        raise Missing(f"no calculator is called {', '.join(sorted(lost))} any more.")
    return [name for name in names if name not in LATER]


def docstrings_read() -> dict[str, list[str]]:
    """The functions whose docstrings the calculators read: those that declare one; ``{file: [function]}``."""
    functions = [spec.function for spec in load_all().values()]
    return {
        f"{function.__module__.replace('.', '/')}.py": [function.__name__] for function in functions
    }


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


def code_state() -> str:
    """A hash of all that the bytecode follows from: the code and the tools, and which tables there are."""
    files = [path for path in sources() if os.path.dirname(path) != str(TABLES)]
    names = sorted(path.name for path in TABLES.glob("*.json"))
    return f"{hash_of_files(files)} {' '.join(names)}"


def sources() -> list[str]:
    """The files that the runtime is made from."""
    return [
        str(LOCKS / "npm" / "package-lock.json"),
        str(ROOT / "pyproject.toml"),
        *files_below(HERE),
        *files_below(ROOT / "calculators"),
    ]
