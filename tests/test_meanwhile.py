"""A piece of work goes on in another process; what it makes, and what goes wrong in it, arrives here."""

import os
import signal
import threading

import pytest

from scripts.setup import cores
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

    result = begun_elsewhere(work)
    while not done.exists():
        os.sched_yield()
    assert result() not in (HERE, None)


def test_what_goes_wrong_there_is_raised_here(two_cores):
    def refused():
        raise FileExistsError("it stands there already")

    result = begun_elsewhere(refused)
    with pytest.raises(FileExistsError, match="it stands there already"):
        result()


def test_a_process_that_is_killed_is_told_in_words(two_cores):
    result = begun_elsewhere(lambda: os.kill(os.getpid(), signal.SIGKILL))
    with pytest.raises(Missing, match="memory"):
        result()


@pytest.mark.parametrize("lacks", ["cores", "can_fork"])
def test_with_one_core_or_no_fork_it_is_done_here_when_it_is_asked_for(
    two_cores, monkeypatch, lacks
):
    monkeypatch.setattr(cores, lacks, lambda: False)
    seen = []
    result = begun_elsewhere(lambda: seen.append(os.getpid()))
    assert seen == []
    result()
    assert seen == [HERE]
