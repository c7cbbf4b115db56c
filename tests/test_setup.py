"""Setting up a fresh machine: what is missing is said in one line; a second start does nothing."""

import subprocess
import sys
from pathlib import Path

import pytest

from scripts.setup import chromium, environment, node
from scripts.setup.paths import LOCKS, ROOT
from scripts.setup.say import Missing


def test_an_old_python_is_refused_with_the_way_out(monkeypatch):
    monkeypatch.setattr(sys, "version_info", (3, 9, 1))
    with pytest.raises(Missing, match=r"Python 3\.11 or newer is needed, this is 3\.9\.1"):
        environment.check_python()


def test_the_commands_are_readable_for_an_old_python():
    """The files that run before the check may use nothing newer than it can tell of."""
    import ast

    for name in ("serve.py", "test.py", "setup/environment.py", "setup/say.py", "setup/paths.py"):
        ast.parse((ROOT / "scripts" / name).read_text(encoding="utf-8"), feature_version=(3, 8))


def test_a_missing_venv_module_is_said(monkeypatch, tmp_path):
    failed = subprocess.CompletedProcess([], 1, "", "ensurepip is not available")
    monkeypatch.setattr(environment.subprocess, "run", lambda *a, **k: failed)
    with pytest.raises(Missing, match="apt-get install python3-venv"):
        environment.create(tmp_path / "venv")


def test_an_environment_that_holds_its_locks_is_left_alone(monkeypatch, tmp_path):
    monkeypatch.setattr(environment, "create", lambda place: pytest.fail("made again"))
    monkeypatch.setattr(environment, "install", lambda *a: pytest.fail("installed again"))
    python = environment.python_of(tmp_path)
    python.parent.mkdir(parents=True)
    python.touch()
    environment.write_stamps(
        tmp_path, {"python": environment.VERSION, "build": environment.digest("build")}
    )
    environment.make(tmp_path, ("build",))


def test_a_changed_lock_is_installed_again(monkeypatch, tmp_path):
    installed = []
    monkeypatch.setattr(environment, "install", lambda place, lock: installed.append(lock))
    python = environment.python_of(tmp_path)
    python.parent.mkdir(parents=True)
    python.touch()
    environment.write_stamps(
        tmp_path,
        {"python": environment.VERSION, "build": "another", "test": environment.digest("test")},
    )
    environment.make(tmp_path, ("build", "test"))
    assert installed == ["build"]
    assert environment.stamps(tmp_path)["build"] == environment.digest("build")


def test_a_failed_install_is_said_and_not_stamped(monkeypatch, tmp_path):
    class Process:
        stdout, returncode = iter(()), 1

        class stderr:
            @staticmethod
            def read():
                return "ERROR: No matching distribution found for mkdocs"

        def wait(self):
            return 1

    monkeypatch.setattr(environment.subprocess, "Popen", lambda *a, **k: Process())
    with pytest.raises(Missing, match=r"No matching distribution.*check the connection"):
        environment.install(tmp_path, "build")


@pytest.mark.parametrize("lock", ["build", "test", "node", "pyodide-build"])
def test_every_locked_package_has_hashes(lock):
    lines = (LOCKS / f"{lock}.txt").read_text(encoding="utf-8").splitlines()
    packages = [number for number, line in enumerate(lines) if "==" in line]
    assert packages
    for number in packages:
        assert lines[number].endswith("\\"), lines[number]
        assert lines[number + 1].strip().startswith("--hash=sha256:"), lines[number]


def test_no_lock_names_a_host():
    for path in LOCKS.rglob("*"):
        if path.is_file() and path.suffix != ".md":
            assert "http" not in path.read_text(encoding="utf-8"), path.name


def test_no_chromium_anywhere_is_a_plain_word(monkeypatch):
    monkeypatch.setattr(chromium, "find_chromium", lambda: None)
    monkeypatch.setattr(chromium, "ways", lambda: [])
    with pytest.raises(Missing, match="browser tests need Chromium"):
        chromium.ensure_chromium()


def test_a_chromium_that_does_not_start_is_none(tmp_path):
    shim = tmp_path / "chromium"
    shim.write_text("#!/bin/sh\nexit 1\n", encoding="utf-8")
    shim.chmod(0o755)
    assert not chromium.starts(str(shim))
    assert not chromium.starts(str(tmp_path / "nothing"))


def test_no_node_and_none_to_install_is_a_plain_word(monkeypatch, tmp_path):
    node.node_environment.cache_clear()
    monkeypatch.setattr(node, "machine_has_node", lambda: False)
    monkeypatch.setattr(node, "CARRIER", tmp_path)
    monkeypatch.setattr(node, "make", lambda *a: None)
    with pytest.raises(Missing, match=r"install Node\.js 18 or newer"):
        node.node_environment()
    node.node_environment.cache_clear()


def test_a_bad_port_is_refused():
    done = subprocess.run(
        [sys.executable, "-m", "scripts.serve", "--port", "70000"],
        cwd=ROOT,
        capture_output=True,
        text=True,
    )
    assert done.returncode == 2
    assert "allowed is 0 to 65535" in done.stderr


def test_nothing_committed_names_a_path_of_this_machine():
    listed = subprocess.run(
        ["git", "ls-files", "-z"], cwd=ROOT, capture_output=True, text=True
    ).stdout
    home = str(Path.home())
    for name in filter(None, listed.split("\0")):
        data = (ROOT / name).read_bytes()
        assert str(ROOT).encode() not in data, name
        assert home == "/" or f"{home}/".encode() not in data, name
