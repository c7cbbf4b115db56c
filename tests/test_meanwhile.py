"""A piece of work goes on in another process; what it makes, and what goes wrong in it, arrives here."""

import hashlib
import os
import signal
import threading
import time
import weakref
from functools import partial

import pytest

from scripts.setup import cores, file_hash
from scripts.setup.meanwhile import begun_elsewhere
from scripts.setup.say import Missing

HERE = os.getpid()


def test_the_work_is_done_elsewhere_before_it_is_asked_for(two_cores, tmp_path):
    done = tmp_path / "done"
    lock = threading.Lock()  # what cannot be copied into a message

    def work():
        with lock:
            done.touch()
        return os.getpid()

    with begun_elsewhere(work) as result:
        while not done.exists():
            os.sched_yield()
        assert result() not in (HERE, None)


def refused():
    raise FileExistsError("it stands there already")


def test_what_goes_wrong_there_is_raised_here_with_its_place(two_cores):
    with (
        begun_elsewhere(refused) as result,
        pytest.raises(FileExistsError, match="it stands there already") as wrong,
    ):
        result()
    assert "in refused" in "".join(wrong.value.__notes__)


def test_a_process_that_is_killed_is_told_in_words(two_cores):
    with (
        begun_elsewhere(lambda: os.kill(os.getpid(), signal.SIGKILL)) as result,
        pytest.raises(Missing, match="memory"),
    ):
        result()


def test_where_this_process_goes_wrong_nothing_of_the_work_goes_on(two_cores, tmp_path):
    sign = tmp_path / "sign"

    def long_work():
        sign.write_text(str(os.getpid()))
        time.sleep(600)

    def wrong_meanwhile():
        with begun_elsewhere(long_work):
            while not sign.exists() or not sign.read_text():
                os.sched_yield()
            raise ValueError("something here")

    with pytest.raises(ValueError, match="something here"):
        wrong_meanwhile()
    with pytest.raises(ProcessLookupError):
        os.kill(int(sign.read_text()), 0)


def test_what_is_done_there_is_shared_no_further(two_cores):
    with begun_elsewhere(lambda: list(cores.on_all_cores(lambda _: os.getpid(), [1, 2]))) as result:
        assert len(set(result()) | {HERE}) == 2


def test_what_the_work_needs_is_not_held_here(two_cores):
    class Held:
        """What can be watched."""

    held = Held()
    seen = weakref.ref(held)
    with begun_elsewhere(partial(id, held)) as result:
        del held
        assert seen() is None
        result()


def test_what_is_learnt_of_files_there_is_known_here(two_cores, tmp_path, monkeypatch):
    path = str(tmp_path / "made there")
    with begun_elsewhere(lambda: file_hash.write_known(path, b"octets")) as result:
        result()
    monkeypatch.setattr("builtins.open", None)  # none is read
    assert file_hash.digest_of(path, just_made=True) == hashlib.sha256(b"octets").digest()


@pytest.mark.parametrize("lacks", ["cores", "can_fork"])
def test_with_one_core_or_no_fork_it_is_done_here_at_once(two_cores, monkeypatch, lacks):
    monkeypatch.setattr(cores, lacks, lambda: False)
    seen = []
    with begun_elsewhere(lambda: seen.append(os.getpid()) or "made") as result:
        assert seen == [HERE]
        assert result() == "made"
    assert seen == [HERE]
