"""One piece of work for many jobs, spread over the machine's cores."""

import multiprocessing
import os
import threading
from collections.abc import Callable, Hashable, Iterable, Sequence
from typing import Any, Final, TypeVar

from scripts.setup.rubbish import nothing_sought_in_copies
from scripts.setup.say import Missing

Job = TypeVar("Job")
Name = TypeVar("Name", bound=Hashable)
Result = TypeVar("Result")

FORK: Final = "fork"
FEW = 8  # jobs of a site that are done here sooner than another process is there
KILLED = "one of the processes that shared the work was killed; is memory short?"
WORK: list[Callable[[Any], Any]] = []  # of this process, where it is one of those that share some


def on_all_cores(work: Callable[[Job], Result], jobs: Sequence[Job]) -> Iterable[Result]:
    """The results in the order of the jobs; long ones are best put first.

    ``work`` and all that it holds come to the other processes by the fork, so that only jobs and results
    are copied. Where a process cannot be forked, or has threads that a fork would cut off, this one does
    it all. Raises what ``work`` raises, and ``Missing`` where a process is killed.
    """
    if len(jobs) < 2 or not can_share():
        return map(work, jobs)
    return shared(work, jobs, min(cores(), len(jobs)))


def known_or_made(
    known: Callable[[Name], Result | None], make: Callable[[Name], Result], names: Sequence[Name]
) -> dict[Name, Result]:
    """By name what is known of it, in this process, or what is made, on all cores where it is much. In the
    order of the names.

    Handing a job over takes longer than to find that its result is known. Raises as ``on_all_cores``.
    """
    results = {name: known(name) for name in names}
    lacking = [name for name, result in results.items() if result is None]
    do_all = map if len(lacking) <= FEW else on_all_cores
    made = dict(zip(lacking, do_all(make, lacking), strict=True))
    return {name: made[name] if result is None else result for name, result in results.items()}


def shared(work: Callable[[Job], Result], jobs: Sequence[Job], count: int) -> list[Result]:
    """The results, by so many processes. Raises ``Missing`` where one is killed.

    This process is one of them: a copy more of all that it holds would be a third of the memory on two
    cores. It takes jobs from the end, where the others have not come.
    """
    from concurrent.futures import ProcessPoolExecutor  # which a build of a few files goes without
    from concurrent.futures.process import BrokenProcessPool

    forked = multiprocessing.get_context(FORK)
    own: dict[int, Result] = {}
    try:
        with (
            nothing_sought_in_copies(),
            ProcessPoolExecutor(
                count - 1, forked, initializer=WORK.append, initargs=(work,)
            ) as processes,
        ):
            try:
                given = [processes.submit(do, job) for job in jobs]
                for place in reversed(range(len(jobs))):
                    if not given[place].cancel():
                        break
                    own[place] = work(jobs[place])
                return [
                    own[place] if place in own else one.result() for place, one in enumerate(given)
                ]
            finally:
                processes.shutdown(cancel_futures=True)
    except BrokenProcessPool:
        raise Missing(KILLED) from None


def do(job: Any) -> Any:
    """One job, in a process that has the work."""
    return WORK[-1](job)


def cores() -> int:
    """How many cores this process may use."""
    if hasattr(os, "sched_getaffinity"):
        return len(os.sched_getaffinity(0))
    return os.cpu_count() or 1


def can_share() -> bool:
    """Whether another process can do a part of the work, and has a core to do it on.

    Not where this process does a part itself: the core is taken, and Python lets it start no other.
    """
    return cores() > 1 and can_fork() and not multiprocessing.current_process().daemon


def can_fork() -> bool:
    """Whether a copy of this process would run on as it does, and could be spoken to."""
    if FORK not in all_ways() or threading.active_count() > 1:
        return False
    try:
        multiprocessing.get_context(FORK).Lock()
    except (ImportError, OSError):  # a machine that is shut in may lack what locks lie in
        return False
    return True


def all_ways() -> list[str]:
    """How this machine can start a process of Python's."""
    return multiprocessing.get_all_start_methods()
