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
from scripts.setup.paths import LOCKS, ROOT, VENV, python_of
from scripts.setup.python_version import check_python_version
from scripts.setup.say import Missing, say, step

STAMP = "mulmbook-stamp.txt"
VERSION = " ".join(sys.version.split())
CONNECTION = "check the connection to the package index, then run the command again."
INSIDE = (
    "MULMBOOK_INSIDE"  # set once the project's own interpreter runs, so that it enters only once
)
# No locked package has any; else each is asked for them, at every start.
NO_PLUGINS = {"PYDANTIC_DISABLE_PLUGINS": "1"}


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


def enter(locks: tuple[str, ...], module: str) -> None:
    """Run ``module`` in the project's environment, made or renewed from ``locks`` where needed.

    Returns only in the process that already runs inside it. In any other it ends with ``SystemExit``
    and the status of the inner one.
    """
    if os.environ.get(INSIDE) == str(VENV):
        return
    make(VENV, locks)
    command = [str(python_of(VENV)), "-m", module, *sys.argv[1:]]
    environment = {**os.environ, INSIDE: str(VENV), "PYTHONPATH": str(ROOT), **NO_PLUGINS}
    environment.pop("PYTHONHOME", None)
    raise SystemExit(run_attached(command, environment))


def run_attached(command: list[str], environment: dict[str, str]) -> int:
    """Run a command in the foreground; an interrupt from the keyboard is the command's to answer."""
    process = subprocess.Popen(command, env=environment, cwd=ROOT)
    while True:
        try:
            return process.wait()
        except KeyboardInterrupt:
            continue


def make(place: Path, locks: tuple[str, ...]) -> None:
    """Make the environment at ``place`` from lock files, unless it holds them already."""
    have = stamps(place)
    lacking = [lock for lock in locks if have.get(lock) != digest(lock)]
    usable = (
        python_of(place).exists()
        and have.get("python") == VERSION
        and count_files(place) >= int(have.get("files", 0))
    )
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
