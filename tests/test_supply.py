"""What comes from others: named with version and licence, asked about, and the same bytes at each build."""

import json
import os
import re
import subprocess
import sys

import pytest

from scripts import audit
from scripts.setup import known_unsafe
from scripts.setup.known_unsafe import ProgramOutput, audits
from scripts.setup.node import browser_parts
from scripts.setup.paths import LOCKS, ROOT
from scripts.setup.say import Missing
from scripts.site.joined_scripts import graph_of, joined
from tests.effort import long_run

ABOUT = (ROOT / "docs" / "about.md").read_text(encoding="utf-8")
SERVED = {
    name.split(",")[0].split()[0].lower(): (version, licence)
    for name, version, licence in re.findall(r"^\| (.+?) \| ([\d.]+) \| (\S+) \|$", ABOUT, re.M)
}
PIP_CLEAN = {"dependencies": [{"name": "a", "version": "1", "vulns": []}], "fixes": []}
PIP_BAD = {
    "dependencies": [
        {"name": "a", "version": "1", "vulns": [{"id": "PYSEC-1", "fix_versions": ["2"]}]},
        {"name": "b", "skip_reason": "not on the index"},
    ]
}
NPM_CLEAN = {"vulnerabilities": {}}
NPM_BAD = {"vulnerabilities": {"ws": {"severity": "high", "range": "<8.24"}}}
NPM_UNREACHED = {"error": {"summary": "getaddrinfo ENOTFOUND", "detail": ""}}
# A small part of each kind of page and file, as text; what hangs on the order of a set would differ.
PART = """
import hashlib, json, sys
from scripts.pages.generated import makers
from scripts.records.load import load
made = makers(load())
names = [name for name in made if name.startswith(("assets/calculators/", "assets/shelf/"))]
names += sys.argv[1:]
print(json.dumps({name: hashlib.sha256(made[name]().encode()).hexdigest() for name in names}))
"""
PAGES = (
    "plants/lemna-minor.md", "animals/danio-rerio.md", "problems/heat.md", "names/duckweed.md",
    "guides/power-cuts.md", "calculators/pick.md", "calculators/dosing.md", "calculators/floaters.md",
)  # fmt: skip


def test_the_about_page_names_what_is_served_with_version_and_licence():
    lock = json.loads((LOCKS / "npm" / "package-lock.json").read_text(encoding="utf-8"))["packages"]
    packages = graph_of(joined()).packages
    assert packages
    for name in ("pyodide", *packages):
        entry = lock[f"node_modules/{name}"]
        assert SERVED[name] == (entry["version"], entry["license"]), name
    info = json.loads((browser_parts() / "pyodide" / "pyodide-lock.json").read_text())["info"]
    assert SERVED["cpython"] == (info["python"], "PSF-2.0")
    assert (
        f"emscripten_{SERVED['emscripten' + chr(39) + 's'][0].replace('.', '_')}"
        == info["platform"]
    )
    assert len(SERVED) == 3 + len(packages)


def test_every_locked_package_has_a_hash():
    for lock in LOCKS.glob("*.txt"):
        packages = re.split(r"\n(?=\S)", lock.read_text(encoding="utf-8").strip())
        assert packages
        assert all("--hash=sha256:" in one for one in packages if not one.startswith("#")), lock
    npm = json.loads((LOCKS / "npm" / "package-lock.json").read_text(encoding="utf-8"))["packages"]
    assert all(one["integrity"].startswith("sha512-") for name, one in npm.items() if name)


def answers(pip, npm):
    """Stands for both programs: an answer as data, a text that is none, or what it raises."""

    def run(command, folder):
        said = npm if command[0] == "npm" else pip
        if isinstance(said, Exception):
            raise said
        return ProgramOutput(
            said if isinstance(said, str) else json.dumps(said), "could not connect"
        )

    return run


@pytest.mark.parametrize(
    ("pip", "npm", "states", "status"),
    [
        (PIP_CLEAN, NPM_CLEAN, {"clean"}, 0),
        (PIP_BAD, NPM_CLEAN, {"found", "clean"}, 1),
        (PIP_CLEAN, NPM_BAD, {"clean", "found"}, 1),
        (PIP_CLEAN, NPM_UNREACHED, {"clean", "not asked"}, 2),
        ("", NPM_CLEAN, {"not asked", "clean"}, 2),
        (Missing("pip-audit is not installed"), NPM_CLEAN, {"not asked", "clean"}, 2),
        ("[]", "null", {"not asked"}, 2),
        (PIP_BAD, NPM_UNREACHED, {"found", "not asked"}, 1),
    ],
)
def test_what_was_not_reached_is_never_called_clean(pip, npm, states, status, monkeypatch, capsys):
    run = answers(pip, npm)
    results = list(audits(run))
    assert {one.state for one in results} == states
    assert len(results) == len(list(LOCKS.glob("*.txt"))) + 1
    monkeypatch.setattr(known_unsafe, "run_here", run)
    assert audit.main() == status
    said = capsys.readouterr().out
    assert ("not asked (" in said) == ("not asked" in states)
    if pip is PIP_BAD:
        assert "a 1: PYSEC-1, mended in 2" in said
        assert "b: not judged (not on the index)" in said


@long_run()
def test_the_same_sources_give_the_same_bytes_twice():
    """Pages and data in two processes whose sets and hashes are ordered otherwise; a bench builds all."""
    runs = [
        subprocess.Popen(
            [sys.executable, "-c", PART, *PAGES],
            cwd=ROOT,
            env={**os.environ, "PYTHONHASHSEED": seed, "PYTHONPATH": str(ROOT)},
            stdout=subprocess.PIPE,
            text=True,
        )
        for seed in ("1", "2")
    ]
    made = [json.loads(run.communicate()[0]) for run in runs]
    assert made[0] == made[1]
    assert len(made[0]) > 40


@long_run()
def test_the_wheel_for_the_browser_does_not_hang_on_the_clock(tmp_path):
    from scripts.runtime.wheel import build_wheel

    one, two = (build_wheel(tmp_path / name).read_bytes() for name in ("one", "two"))
    assert one == two
