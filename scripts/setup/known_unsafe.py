"""Known unsafe versions among those that are locked, by pip-audit and npm audit. Standard library only."""

import json
import shutil
import subprocess
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any, Literal, NamedTuple

from scripts.setup.paths import LOCKS
from scripts.setup.say import Missing

State = Literal["clean", "found", "not asked"]
MOST_SECONDS = 300
PIP_AUDIT = (
    "pip-audit",
    "--disable-pip",
    "--require-hashes",
    "--progress-spinner=off",
    "--format=json",
)
NPM_AUDIT = ("npm", "audit", "--json", "--package-lock-only")


class Audit(NamedTuple):
    """What is known of one lock; ``why`` says why nothing is, where it could not be asked."""

    lock: str
    state: State
    found: tuple[str, ...] = ()
    why: str = ""


class ProgramOutput(NamedTuple):
    """What a program said."""

    output: str
    errors: str


Run = Callable[[tuple[str, ...], Path], ProgramOutput]


def audits(run: Run | None = None) -> Iterator[Audit]:
    """One for each lock of Python packages, and one for npm's."""
    asked = run or run_here
    for lock in sorted(LOCKS.glob("*.txt")):
        yield audit_of_lock(lock.name, (*PIP_AUDIT, "-r", lock.name), LOCKS, asked, of_pip)
    yield audit_of_lock("npm/package-lock.json", NPM_AUDIT, LOCKS / "npm", asked, of_npm)


def run_here(command: tuple[str, ...], folder: Path) -> ProgramOutput:
    """Run a program. Raises ``Missing`` where it is not installed or does not end."""
    if not shutil.which(command[0]):
        raise Missing(f"{command[0]} is not installed")
    try:
        done = subprocess.run(
            command, cwd=folder, capture_output=True, text=True, timeout=MOST_SECONDS
        )
    except subprocess.TimeoutExpired:
        raise Missing(f"{command[0]} did not end within {MOST_SECONDS} s") from None
    return ProgramOutput(done.stdout, done.stderr)


def audit_of_lock(
    lock: str, command: tuple[str, ...], folder: Path, run: Run, read: Callable[[Any], list[str]]
) -> Audit:
    """Ask about one lock. An answer that cannot be read is none: then nothing is known."""
    try:
        said = run(command, folder)
    except Missing as missing:
        return Audit(lock, "not asked", why=str(missing))
    try:
        found = tuple(read(json.loads(said.output)))
    except (ValueError, KeyError, TypeError, AttributeError):
        lines = (said.errors.strip() or said.output.strip() or "no answer").splitlines()
        return Audit(lock, "not asked", why=f"its data could not be reached: {lines[0][:200]}")
    return Audit(lock, "found" if found else "clean", found)


def of_pip(answer: Any) -> list[str]:
    """The findings of pip-audit; a package that it skipped counts as one, since nobody judged it."""
    found = []
    for package in answer["dependencies"]:
        if "skip_reason" in package:
            found.append(f"{package['name']}: not judged ({package['skip_reason']})")
            continue
        for one in package["vulns"]:
            mended = ", ".join(one["fix_versions"]) or "no version yet"
            found.append(f"{package['name']} {package['version']}: {one['id']}, mended in {mended}")
    return found


def of_npm(answer: Any) -> list[str]:
    """The findings of npm audit."""
    return [
        f"{name}: {one['severity']}, versions {one['range']}"
        for name, one in answer["vulnerabilities"].items()
    ]
