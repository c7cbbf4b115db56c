"""Virtual environments made from lock files with hashes. Standard library only.

An environment is made once; a stamp inside it holds the hash of what it was made from, so that a second
start only compares two strings.
"""

import hashlib
import os
import shutil
import subprocess
import sys
from contextlib import suppress
from pathlib import Path

from scripts.setup.failed_step_advice import advice
from scripts.setup.paths import LOCKS, python_of
from scripts.setup.python_version import check_python_version
from scripts.setup.say import Missing, say, step

STAMP = "mulmbook-stamp.txt"
VERSION = " ".join(sys.version.split())
CONNECTION = "check the connection to the package index, then run the command again."


def check_python() -> None:
    """Refuse a Python that is too old, or one without what makes environments.

    Raises ``Missing`` with what to install.
    """
    check_python_version()
    try:
        import ensurepip  # noqa: F401
        import venv  # noqa: F401
    except ImportError:
        raise Missing(
            "Python's venv module is missing; on Debian or Ubuntu: apt-get install python3-venv"
        ) from None


def make(place: Path, locks: tuple[str, ...]) -> None:
    """Make the environment at ``place`` from lock files, unless it holds them already."""
    have = stamps(place)
    lacking = lacking_locks(have, locks)
    usable = is_of_this_python(place, have) and is_whole(place)
    if usable and not lacking:
        return
    check_python()
    if not usable:
        with step(f"making the virtual environment {place.name}"):
            shutil.rmtree(place, ignore_errors=True)
            create(place)
        have, lacking = {"python": VERSION}, list(locks)
    for lock in lacking:
        with step(f"installing the packages of {lock}.txt, versions and hashes locked"):
            install(place, lock)
        have |= {lock: digest(lock), "files": str(count_files(place))}
        write_stamps(place, have)


def was_made(place: Path, locks: tuple[str, ...]) -> bool:
    """Whether the environment was made from lock files; not whether all of it is there still."""
    have = stamps(place)
    return is_of_this_python(place, have) and not lacking_locks(have, locks)


def lacking_locks(have: dict[str, str], locks: tuple[str, ...]) -> list[str]:
    """The lock files that an environment with these stamps does not hold as they are now."""
    return [lock for lock in locks if have.get(lock) != digest(lock)]


def is_of_this_python(place: Path, have: dict[str, str]) -> bool:
    """Whether an environment with these stamps has an interpreter, and is of the one that asks."""
    return python_of(place).exists() and have.get("python") == VERSION


def is_whole(place: Path) -> bool:
    """Whether no file of an environment has gone since its packages were installed."""
    return count_files(place) >= int(stamps(place).get("files", 0))


def count_files(place: Path) -> int:
    """How many files an environment holds, bytecode and stamp aside: fewer after a half deletion."""
    count, folders = 0, [os.fspath(place)]
    while folders:
        with suppress(OSError), os.scandir(folders.pop()) as entries:
            for entry in entries:
                if not entry.is_dir(follow_symlinks=False):
                    count += not entry.name.endswith((".pyc", STAMP))
                elif entry.name != "__pycache__":  # half of all there is
                    folders.append(entry.path)
    return count


def create(place: Path) -> None:
    """Make an empty environment with pip in it. Raises ``Missing`` with what to do."""
    done = subprocess.run(
        [sys.executable, "-m", "venv", str(place)], capture_output=True, text=True
    )
    if done.returncode:
        otherwise = "on Debian or Ubuntu: apt-get install python3-venv"
        said = done.stdout + done.stderr
        raise Missing(
            f"the virtual environment could not be made ({last_line(done)}); "
            f"{advice(said, otherwise)}"
        )


def install(place: Path, lock: str) -> None:
    """Install one lock file, showing each package as it comes.

    No build isolation: what must be built from source is built with the locked setuptools. Raises
    ``Missing`` with what went wrong.
    """
    command = [
        *(str(python_of(place)), "-m", "pip", "install", "--disable-pip-version-check"),
        *(
            "--no-input",
            "--no-user",  # whatever the person's own settings say
            "--require-hashes",
            "--no-build-isolation",
            "-r",
            str(LOCKS / f"{lock}.txt"),
        ),
    ]
    process = subprocess.Popen(
        command, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True, env=without_places()
    )
    assert process.stdout
    assert process.stderr
    for line in process.stdout:
        if line.startswith(("Collecting", "Installing")):
            say(f"    {package_line(line)}")
    trouble = process.stderr.read().strip()
    if process.wait():
        raise Missing(
            f"pip could not install {lock}.txt ({(trouble.splitlines() or ['no reason given'])[-1]}); "
            + advice(trouble, CONNECTION)
        )


def without_places() -> dict[str, str]:
    """The environment's variables without those that make pip install elsewhere."""
    elsewhere = ("PIP_USER", "PIP_TARGET", "PIP_PREFIX", "PIP_ROOT", "PYTHONHOME", "PYTHONPATH")
    return {name: value for name, value in os.environ.items() if name not in elsewhere}


def package_line(line: str) -> str:
    """What pip says of a package, without the file that asked for it."""
    return line.split(" (from ")[0].strip()[:100]


def digest(lock: str) -> str:
    """The hash of a lock file."""
    return hashlib.sha256((LOCKS / f"{lock}.txt").read_bytes()).hexdigest()


def stamps(place: Path) -> dict[str, str]:
    """What an environment was made from: one ``name=value`` a line."""
    file = place / STAMP
    if not file.exists():
        return {}
    lines = file.read_text(encoding="utf-8").splitlines()
    return dict(line.split("=", 1) for line in lines if "=" in line)


def write_stamps(place: Path, have: dict[str, str]) -> None:
    """Write them down, so that an interrupted install is seen as lacking."""
    lines = [f"{name}={value}" for name, value in have.items()]
    (place / STAMP).write_text("\n".join(lines) + "\n", encoding="utf-8")


def last_line(done: subprocess.CompletedProcess[str]) -> str:
    """The last thing a command said."""
    lines = (done.stdout + done.stderr).strip().splitlines()
    return lines[-1] if lines else "no reason given"
