"""Work spread over the cores: every job once, in order, by more than one process where that can be."""

import gc
import os
import signal
import threading
from functools import partial

import pytest

from scripts.setup import cores
from scripts.setup.cores import known_or_made, on_all_cores
from scripts.setup.rubbish import SELDOM, rubbish_seldom_sought
from scripts.setup.say import Missing

HERE = os.getpid()


def of_process(job):
    return job, os.getpid()


def refuse(limit, job):
    if job > limit:
        raise ValueError(f"{job} is over {limit}")
    return job


def test_every_job_is_done_once_and_in_order(two_cores, tmp_path):
    begun = tmp_path / "begun"

    def work(job):
        if os.getpid() != HERE:
            begun.touch()
        while not begun.exists():  # so that both have a part
            os.sched_yield()
        return job, os.getpid()

    done = list(on_all_cores(work, range(50)))
    assert [job for job, _ in done] == list(range(50))
    by = {process for _, process in done}
    assert HERE in by
    assert len(by) == 2


def test_what_the_work_holds_is_not_copied_with_each_job(two_cores):
    lock = threading.Lock()  # what cannot be copied into a message

    def work(job):
        with lock:
            return job + 1

    assert list(on_all_cores(work, [1, 2, 3])) == [2, 3, 4]


def test_what_goes_wrong_is_raised_here(two_cores):
    with pytest.raises(ValueError, match="4 is over 3"):
        list(on_all_cores(partial(refuse, 3), [1, 2, 3, 4]))


def test_what_goes_wrong_in_another_process_is_raised_here(two_cores):
    def refused_there(job):
        if os.getpid() != HERE:
            raise ValueError(f"{job} is refused")
        return job

    with pytest.raises(ValueError, match="0 is refused"):
        list(on_all_cores(refused_there, range(5)))


def test_a_process_that_is_killed_is_told_in_words(two_cores):
    def killed(job):
        if os.getpid() != HERE:
            os.kill(os.getpid(), signal.SIGKILL)

    with pytest.raises(Missing, match="memory"):
        list(on_all_cores(killed, [1, 2, 3]))


def test_one_job_or_one_core_needs_no_other_process(two_cores, monkeypatch):
    assert list(on_all_cores(of_process, ["only"])) == [("only", HERE)]
    monkeypatch.setattr(cores, "cores", lambda: 1)
    assert {process for _, process in on_all_cores(of_process, range(5))} == {HERE}


@pytest.mark.parametrize("lacks", [OSError, ImportError])
def test_a_machine_without_locks_between_processes_does_it_alone(monkeypatch, lacks):
    def none(*_given):
        raise lacks

    monkeypatch.setattr(cores, "cores", lambda: 2)
    monkeypatch.setattr(cores.threading, "active_count", lambda: 1)
    monkeypatch.setattr("multiprocessing.context.BaseContext.Lock", none)
    assert not cores.can_fork()
    assert {process for _, process in on_all_cores(of_process, range(5))} == {HERE}


def test_a_process_with_threads_is_not_forked(monkeypatch):
    monkeypatch.setattr(cores, "cores", lambda: 2)
    ended = threading.Event()
    thread = threading.Thread(target=ended.wait)
    thread.start()
    try:
        assert not cores.can_fork()
        assert {process for _, process in on_all_cores(of_process, range(5))} == {HERE}
    finally:
        ended.set()
        thread.join()


def test_rubbish_is_seldom_sought_until_the_work_is_done():
    before = gc.get_threshold()
    seen = []

    @rubbish_seldom_sought()
    def stopped():
        seen.append(gc.get_threshold())
        raise ValueError("stopped")

    with pytest.raises(ValueError, match="stopped"):
        stopped()
    assert seen == [SELDOM]
    assert gc.get_threshold() == before != SELDOM


def test_a_few_jobs_are_done_here_and_many_by_more_processes(two_cores, monkeypatch):
    monkeypatch.setattr(cores, "on_all_cores", lambda work, jobs: [None for _ in jobs])
    few, many = range(cores.FEW), range(cores.FEW + 1)
    nothing_known = {}.get
    assert list(known_or_made(nothing_known, str, few).values()) == list(map(str, few))
    assert set(known_or_made(nothing_known, str, many).values()) == {None}
    assert known_or_made({0: "known"}.get, str, few)[0] == "known"
