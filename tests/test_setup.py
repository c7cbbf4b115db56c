"""Setting up a fresh machine: what is missing is said in one line; a second start does nothing."""

import ast
import os
import re
import socket
import subprocess
import sys
from pathlib import Path

import pytest

from scripts.setup import chromium, environment, node
from scripts.setup import enter as entering
from scripts.setup.failed_step_advice import advice
from scripts.setup.paths import LOCKS, ROOT, WINDOWS
from scripts.setup.python_version import check_python_version
from scripts.setup.say import Missing


@pytest.mark.parametrize("version", [(2, 7, 18), (3, 6, 15), (3, 8, 18), (3, 10, 13)])
def test_an_old_python_is_refused_with_the_way_out(version):
    have = ".".join(map(str, version))
    with pytest.raises(SystemExit, match=rf"Python 3\.11 or newer is needed, this is {have}; "):
        check_python_version(version)
    check_python_version((3, 11, 0))


@pytest.mark.parametrize("name", ["serve.py", "test.py", "bench.py"])
def test_what_an_old_python_reads_before_the_check_is_readable_for_it(name):
    """Down to the check nothing is newer than Python 3.4, the oldest that the parser can stand for."""
    text = (ROOT / "scripts" / name).read_text(encoding="utf-8")
    before, check, _ = text.partition("check_python_version()\n")
    assert check
    imported = re.findall(r"^from (\S+) import|^import (\S+)", before, re.MULTILINE)
    assert imported == [("", "os"), ("", "sys"), ("scripts.setup.python_version", "")]
    own = (ROOT / "scripts" / "setup" / "python_version.py").read_text(encoding="utf-8")
    ast.parse(own, feature_version=(3, 4))
    if name != "bench.py":  # the two commands are launchers, readable as a whole
        ast.parse(text, feature_version=(3, 4))
    assert not re.search(r"^def .*->|\bf[\"']", own, re.MULTILINE)


def old_pythons():
    """The interpreters of other versions that this machine happens to have."""
    return [
        path for path in sorted(Path.home().glob(".pyenv/versions/*/bin/python")) if path.exists()
    ]


@pytest.mark.parametrize("name", ["serve.py", "test.py"])
def test_old_pythons_on_this_machine_say_it_in_one_line(name):
    for python in old_pythons():
        asked = [str(python), "-c", "import sys; print(sys.version_info >= (3, 11))"]
        if subprocess.run(asked, capture_output=True, text=True).stdout.strip() != "False":
            continue
        done = subprocess.run(
            [str(python), str(ROOT / "scripts" / name)], capture_output=True, text=True
        )
        assert done.returncode == 1
        assert done.stderr.count("\n") == 1
        assert "3.11 or newer" in done.stderr


def test_a_terminal_that_lacks_letters_gets_marks_in_their_place():
    program = (
        "from scripts.setup.say import say, write_what_the_terminal_cannot as w;"
        "w(); say('\u00b7 making \u2026')"
    )
    done = subprocess.run(
        [sys.executable, "-c", program], cwd=ROOT, capture_output=True, text=True,
        env={**os.environ, "PYTHONIOENCODING": "ascii", "PYTHONPATH": str(ROOT)},
    )  # fmt: skip
    assert done.stdout == "? making ?\n"
    assert done.returncode == 0


def test_an_interrupt_ends_in_one_line(monkeypatch, capsys):
    def interrupted(locks, module, find_out):
        raise KeyboardInterrupt

    monkeypatch.setattr(entering, "enter", interrupted)
    with pytest.raises(SystemExit) as end:
        entering.enter_or_stop(("build",), "scripts.serve")
    assert end.value.code == 130
    assert capsys.readouterr().err == "stopped: interrupted; the same command goes on from here\n"


INTERRUPTED_INSIDE = """
import signal
signal.signal(signal.SIGINT, signal.default_int_handler)  # a command in the background ignores it
from scripts.setup.enter import interrupt_told
with interrupt_told():
    try:
        signal.raise_signal(signal.SIGINT)
    except KeyboardInterrupt as inside:
        raise ValueError("as code in C may have it") from inside
"""


def test_an_interrupt_of_which_another_error_was_made_ends_in_one_line_too():
    done = subprocess.run(
        [sys.executable, "-c", INTERRUPTED_INSIDE],
        cwd=ROOT, capture_output=True, text=True, env={**os.environ, "PYTHONPATH": str(ROOT)},
    )  # fmt: skip
    assert done.stderr == "stopped: interrupted; the same command goes on from here\n"
    assert done.returncode == 130
    without = INTERRUPTED_INSIDE.replace(
        "signal.raise_signal(signal.SIGINT)", "raise KeyboardInterrupt"
    )
    other = subprocess.run(
        [sys.executable, "-c", without], cwd=ROOT, capture_output=True, text=True
    )
    assert "ValueError: as code in C may have it" in other.stderr  # nobody has interrupted it


@pytest.mark.parametrize(
    ("said", "way"),
    [
        ("ERROR: Could not install: [Errno 28] No space left on device", "disk is full"),
        ("npm error code ENOSPC", "disk is full"),
        ("OSError: [Errno 30] Read-only file system: '.venv'", "read-only"),
        ("npm error EACCES: permission denied, mkdir", "may not be written"),
        ("THESE PACKAGES DO NOT MATCH THE HASHES", "not the one that was locked"),
        ("Could not find a version", "check the connection"),
    ],
)
def test_a_failed_step_is_told_with_its_own_way_out(said, way):
    assert way in advice(said, "check the connection")


def test_pip_is_kept_from_installing_elsewhere(monkeypatch):
    monkeypatch.setenv("PIP_USER", "1")
    monkeypatch.setenv("PIP_TARGET", "/elsewhere")
    monkeypatch.setenv("PIP_INDEX_URL", "https://index.example/simple")
    kept = environment.without_places()
    assert not {"PIP_USER", "PIP_TARGET"} & kept.keys()
    assert kept["PIP_INDEX_URL"] == "https://index.example/simple"


def test_a_half_deleted_environment_is_made_again(monkeypatch, tmp_path):
    made = []

    def create(place):
        place.mkdir()
        made.append(place)

    monkeypatch.setattr(environment, "create", create)
    monkeypatch.setattr(environment, "install", lambda *a: None)
    python = environment.python_of(tmp_path)
    python.parent.mkdir(parents=True)
    python.touch()
    package = tmp_path / "package.py"
    package.touch()
    have = {"python": environment.VERSION, "build": environment.digest("build"), "files": "2"}
    environment.write_stamps(tmp_path, have)
    environment.make(tmp_path, ("build",))
    assert made == []
    package.unlink()
    environment.make(tmp_path, ("build",))
    assert made == [tmp_path]


@pytest.mark.skipif(WINDOWS, reason="no open file is handed on there")
@pytest.mark.parametrize(("whole", "status"), [(True, 7), (False, None)])
def test_a_command_goes_on_only_in_a_whole_environment(monkeypatch, tmp_path, whole, status):
    monkeypatch.setattr(entering, "is_whole", lambda place: whole)
    gone_on = tmp_path / "gone-on"
    program = (
        "import os, sys; from scripts.setup.enter import wait_for_the_word as w; w();"
        f"open({str(gone_on)!r}, 'w').close(); sys.exit(7 + ({entering.WORD!r} in os.environ))"
    )
    command = [sys.executable, "-c", program]
    environment = {**os.environ, "PYTHONPATH": str(ROOT)}
    assert entering.status_where_whole(command, environment) == status
    assert gone_on.exists() == whole


@pytest.mark.skipif(WINDOWS, reason="no open file is handed on there")
@pytest.mark.parametrize(
    "program",
    [
        "from scripts.setup.enter import found_out; sys.exit(len(found_out()) == 300_000)",
        "sys.exit(1)",  # it ends before it has asked
    ],
)
def test_a_command_is_told_what_was_found_out_meanwhile(monkeypatch, program):
    monkeypatch.setattr(entering, "is_whole", lambda place: True)
    entered = "import sys; from scripts.setup.enter import wait_for_the_word as w; w();"
    command = [sys.executable, "-c", entered + program]
    environment = {**os.environ, "PYTHONPATH": str(ROOT)}
    found = "tests.test_setup:more_than_a_pipe_holds"
    assert entering.status_where_whole(command, environment, found) == 1


def more_than_a_pipe_holds():
    return bytes(300_000)


def unreadable():
    raise PermissionError("a file that nobody may read")


def test_where_nothing_was_found_out_there_is_nothing():
    assert entering.found_out() == b""


@pytest.mark.skipif(WINDOWS, reason="no open file is handed on there")
def test_what_cannot_be_read_meanwhile_is_left_to_the_command(monkeypatch):
    monkeypatch.setattr(entering, "is_whole", lambda place: True)
    program = (
        "import sys; from scripts.setup import enter; enter.wait_for_the_word();"
        "sys.exit(7 + len(enter.found_out()))"
    )
    environment = {**os.environ, "PYTHONPATH": str(ROOT)}
    command = [sys.executable, "-c", program]
    assert entering.status_where_whole(command, environment, "tests.test_setup:unreadable") == 7


@pytest.mark.skipif(WINDOWS, reason="no open file is handed on there")
def test_a_command_that_ends_before_its_environment_is_known_keeps_its_status(monkeypatch):
    ended = subprocess.Popen([sys.executable, "-c", "raise SystemExit(3)"])
    monkeypatch.setattr(entering, "is_whole", lambda place: ended.wait() == 3)
    monkeypatch.setattr(entering.subprocess, "Popen", lambda *a, **k: ended)
    assert entering.status_where_whole([], {}) == 3


def test_half_deleted_browser_parts_are_seen(tmp_path):
    modules = tmp_path / "node_modules"
    modules.mkdir()
    (modules / "one.js").touch()
    (tmp_path / node.COUNT).write_text("1", encoding="utf-8")
    assert node.is_whole(modules)
    (modules / "one.js").unlink()
    assert not node.is_whole(modules)


def test_a_port_in_use_is_said_before_the_build():
    with socket.socket() as taken:
        taken.bind(("127.0.0.1", 0))
        taken.listen()
        port = taken.getsockname()[1]
        done = subprocess.run(
            [sys.executable, "-m", "scripts.serve", "--port", str(port)],
            cwd=ROOT, capture_output=True, text=True, timeout=60,
        )  # fmt: skip
    assert done.returncode == 1
    assert done.stderr.startswith(f"stopped: port {port} cannot be used")
    assert done.stdout == ""  # nothing was built


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


@pytest.mark.parametrize("lock", ["build", "test", "node", "pyodide-build", "successor"])
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
    monkeypatch.setattr(chromium, "find_chromium", lambda **_: None)
    monkeypatch.setattr(chromium, "install_commands", lambda package: [])
    with pytest.raises(Missing, match="browser tests need Chromium"):
        chromium.ensure_chromium()


@pytest.mark.parametrize(
    ("there", "windowless", "taken"),
    [
        (("chromium", chromium.SHELL), True, chromium.SHELL),
        (("chromium", chromium.SHELL), False, "chromium"),
        (("chromium",), True, "chromium"),
        ((chromium.SHELL,), False, chromium.SHELL),
    ],
)
def test_the_engine_alone_is_taken_where_it_is_there_and_asked_for(
    monkeypatch, tmp_path, there, windowless, taken
):
    for name in there:
        (tmp_path / name).write_text("#!/bin/sh\nexit 0\n", encoding="utf-8")
        (tmp_path / name).chmod(0o755)
    monkeypatch.setenv("PATH", str(tmp_path))
    monkeypatch.delenv("CHROMIUM", raising=False)
    assert chromium.find_chromium(windowless=windowless) == str(tmp_path / taken)


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
