"""Byte-compiles with pyodide-build, where the machine's Python is of the browser's version.

Its ``py-compile`` uses the interpreter it runs in, so that elsewhere the bytecode would be refused with
"bad magic number"; there, ``trim.mjs`` compiles inside the browser's Python itself.
"""

import subprocess
import sys
import zipfile
from collections.abc import Mapping, Sequence
from pathlib import Path

from scripts.runtime.slim import slim_pyc, stored
from scripts.setup.environment import make
from scripts.setup.paths import BUILD, WINDOWS, python_of
from scripts.setup.say import Missing

ENVIRONMENT = BUILD / "pyodide-build-environment"


def can_compile_here(version: tuple[int, int]) -> bool:
    """Whether this interpreter writes the bytecode that the browser's Python reads.

    Its ``version`` is the pair of numbers before and after the first point; they count releases.
    """
    return sys.version_info[:2] == version and sys.implementation.name == "cpython"


def compile_here(stock: Path, files: list[str], wheel: Path, library: Path, target: Path) -> None:
    """Write the trimmed library and the wheel, both byte-compiled."""
    make(ENVIRONMENT, ("pyodide-build",))
    with zipfile.ZipFile(stock) as source, zipfile.ZipFile(library, "w") as trimmed:
        for name in files:
            trimmed.writestr(name, source.read(name))
    for archive in (library, wheel):  # the tool wants the wheel under its full name
        py_compile(archive)
    wheel.rename(target)


def py_compile(archive: Path) -> None:
    """Replace the sources in an archive by bytecode, the archive's name kept.

    Raises ``Missing`` where the compiler fails.
    """
    folder = archive.parent / f"{archive.stem}-compiled"
    folder.mkdir()
    source = folder / archive.name
    archive.rename(source)
    tool = python_of(ENVIRONMENT).with_name("pyodide.exe" if WINDOWS else "pyodide")
    command = [str(tool), "py-compile", "--silent", str(source)]
    done = subprocess.run(command, capture_output=True, text=True)
    made = sorted(folder.iterdir())  # a wheel's name is changed to that of its bytecode
    if done.returncode or len(made) != 1:
        raise Missing(f"pyodide py-compile failed on {archive.name}: {done.stdout}{done.stderr}")
    made[0].rename(archive)


def slim_archive(
    archive: Path, *, lines: bool, read: Mapping[str, Sequence[str]] | None = None
) -> None:
    """Make an archive's bytecode small, in place; ``read`` names functions whose docstrings stay, by file."""
    with zipfile.ZipFile(archive) as source:
        names = sorted(name for name in source.namelist() if ".dist-info/" not in name)
        files = {name: source.read(name) for name in names}
    for name in names:
        if name.endswith(".pyc"):
            keep = (read or {}).get(name.removesuffix("c"), ())
            files[name] = slim_pyc(files[name], lines=lines, keep=keep)
    archive.write_bytes(stored(files))
