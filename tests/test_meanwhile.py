"""A piece of work goes on in another process, step by step; what goes wrong in it arrives here."""

import hashlib
import os
import signal
import subprocess
import sys
import threading
import time

import pytest

from scripts.setup import cores, file_hash
from scripts.setup.meanwhile import begun_elsewhere
from scripts.setup.paths import ROOT
from scripts.setup.say import Missing

pytestmark = pytest.mark.usefixtures("two_cores")
HERE = os.getpid()


def until(is_so):
    """Wait for what another process does."""
    while not is_so():
        os.sched_yield()


def is_there(process):
    """Whether a process is there, by its number."""
    try:
        os.kill(process, 0)
    except ProcessLookupError:
        return False
    return True


def test_the_work_begins_at_once_and_goes_on_where_it_is_told(tmp_path):
    begun, told = tmp_path / "begun", tmp_path / "told"
    lock = threading.Lock()  # what cannot be copied into a message

    def work(wait):
        with lock:
            begun.write_text(str(os.getpid()))
        told.write_text(f"{wait()} {wait()}")

    with begun_elsewhere(work) as other:
        until(lambda: begun.exists() and begun.read_text())
        assert int(begun.read_text()) != HERE
        other.tell("one")
        assert not told.exists()
        other.tell("two")
        other.result()
        assert told.read_text() == "one two"


def refused(_wait):
    raise FileExistsError("it stands there already")


def test_what_goes_wrong_there_is_raised_here_with_its_place():
    with (
        begun_elsewhere(refused) as other,
        pytest.raises(FileExistsError, match="it stands there already") as wrong,
    ):
        other.result()
    assert "in refused" in "".join(wrong.value.__notes__)


def test_what_went_wrong_there_is_raised_where_it_is_told_to_go_on():
    with begun_elsewhere(refused) as other:
        other.process.join()
        with pytest.raises(FileExistsError, match="it stands there already"):
            other.tell("go on")


@pytest.mark.parametrize("ask", ["result", "tell"])
def test_a_process_that_is_killed_is_told_in_words(ask):
    with begun_elsewhere(lambda _wait: os.kill(os.getpid(), signal.SIGKILL)) as other:
        other.process.join()
        with pytest.raises(Missing, match="memory"):
            other.result() if ask == "result" else other.tell("go on")


@pytest.mark.parametrize("end", ["by itself", "wrong"])
def test_nothing_of_the_work_goes_on_where_this_process_is_done_with_it(tmp_path, end):
    sign = tmp_path / "sign"

    def long_work(_wait):
        sign.write_text(str(os.getpid()))
        time.sleep(600)

    def done_with_it():
        with begun_elsewhere(long_work) as other:
            until(lambda: sign.exists() and sign.read_text())
            if end == "wrong":
                raise ValueError("something here")
            other.end()
            other.end()  # which may be said twice

    if end == "wrong":
        with pytest.raises(ValueError, match="something here"):
            done_with_it()
    else:
        done_with_it()
    assert not is_there(int(sign.read_text()))


FIRST = """
import os, sys, time
from pathlib import Path
from scripts.setup.meanwhile import begun_elsewhere
def work(wait):
    Path(sys.argv[1]).write_text(str(os.getpid()))
    wait() if sys.argv[2] == "waits" else time.sleep(600)
with begun_elsewhere(work):
    time.sleep(600)
"""


@pytest.mark.parametrize("other", ["waits", "works"])
def test_where_the_first_process_is_killed_the_other_ends_and_says_nothing(tmp_path, other):
    sign = tmp_path / "sign"
    first = subprocess.Popen(
        [sys.executable, "-c", FIRST, str(sign), other],
        cwd=ROOT,
        stderr=subprocess.PIPE,
        text=True,
    )
    until(lambda: sign.exists() and sign.read_text())
    first.kill()
    _, said = first.communicate()  # which waits until the other has closed it too
    assert said == ""
    until(lambda: not is_there(int(sign.read_text())))


def test_what_is_done_there_is_shared_no_further(tmp_path):
    done = tmp_path / "done"

    def work(_wait):
        processes = set(cores.on_all_cores(lambda _: os.getpid(), [1, 2]))
        done.write_text(" ".join(map(str, processes)))

    with begun_elsewhere(work) as other:
        other.result()
        assert done.read_text() == str(other.process.pid)


def test_what_either_learns_of_files_the_other_knows(tmp_path, monkeypatch):
    here, there = tmp_path / "here", tmp_path / "there"

    def work(wait):
        file_hash.write_known(str(there), b"made there")
        wait()
        with pytest.MonkeyPatch.context() as patch:
            patch.setattr("builtins.open", None)  # none is read
            assert known(here) == hashlib.sha256(b"made here").digest()

    def known(path):
        return file_hash.digest_of(str(path), just_made=True)

    with begun_elsewhere(work) as other:
        file_hash.write_known(str(here), b"made here")
        other.tell(None)
        other.result()
    monkeypatch.setattr("builtins.open", None)
    assert known(there) == hashlib.sha256(b"made there").digest()
