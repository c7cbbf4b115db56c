"""A piece of work that another process does beside this one, step by step."""

import multiprocessing
import os
import threading
from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from multiprocessing.connection import Connection
from multiprocessing.process import BaseProcess
from traceback import format_exc
from typing import Any, TypeAlias

from scripts.setup import file_hash
from scripts.setup.cores import FORK, KILLED
from scripts.setup.file_hash import FileState, Known
from scripts.setup.rubbish import nothing_sought_in_copies
from scripts.setup.say import Missing

Line: TypeAlias = "Connection[Any, Any]"


class OtherProcess:
    """A copy of this process at its work. What either learns of files, the other knows from then on."""

    def __init__(self, process: BaseProcess, line: Line) -> None:
        self.process, self.line = process, line
        self.files = Learnt()

    def tell(self, value: object) -> None:
        """Have the work go on from where it waits, with a value. Raises as ``result``."""
        try:
            self.line.send((value, self.files.since_last()))
        except ConnectionError:  # it has ended before, and says why
            self.result()
            raise

    def result(self) -> None:
        """Wait until the work is done. Raises what it raises, and ``Missing`` where its process is killed."""
        try:
            wrong, learnt = self.line.recv()
        except (EOFError, ConnectionError):
            raise Missing(KILLED) from None
        self.files.add(learnt)
        if wrong is not None:
            raise wrong

    def end(self) -> None:
        """Have nothing of the work go on; it may be done, or have been ended before."""
        if not self.line.closed:
            self.process.terminate()
            self.process.join()
            self.line.close()


@contextmanager
def begun_elsewhere(work: Callable[[Callable[[], Any]], None]) -> Iterator[OtherProcess]:
    """Have a copy of this process begin a piece of work. What ``work`` gets is a function that waits for
    what this process tells it. Nothing of the work goes on in the end.

    To be asked where ``can_share`` says that a process can be copied.
    """
    forked = multiprocessing.get_context(FORK)
    here, there = forked.Pipe()
    ends, lives = forked.Pipe(duplex=False)
    process = forked.Process(
        target=do_and_tell, args=(work, there, ends, (here, lives)), daemon=True
    )
    with nothing_sought_in_copies():
        process.start()
    for line in (there, ends):
        line.close()  # the copy's is the last one then
    other = OtherProcess(process, here)
    try:
        yield other
    finally:
        other.end()
        lives.close()


def do_and_tell(
    work: Callable[[Callable[[], Any]], None],
    there: Line,
    ends: Line,
    of_the_first: tuple[Line, Line],
) -> None:
    """The work, in the process that was forked for it."""
    for line in of_the_first:
        line.close()  # so that it shows where the first process has gone
    threading.Thread(target=end_with_the_first, args=(ends,), daemon=True).start()
    files = Learnt()

    def wait() -> Any:
        """What the first process tells. Raises ``EOFError`` where it has gone."""
        try:
            value, learnt = there.recv()
        except ConnectionError:
            raise EOFError from None
        files.add(learnt)
        return value

    wrong: Exception | None = None
    try:
        work(wait)
    except (EOFError, KeyboardInterrupt):
        return  # nobody is there to hear of it, or the first process is interrupted too and says so
    except Exception as fault:
        wrong = fault
        wrong.add_note(f"In the process that did this:\n{format_exc()}")  # which else is lost
    with suppress(ConnectionError):
        there.send((wrong, files.since_last()))


def end_with_the_first(ends: Line) -> None:
    """End this process where the first one was killed: it would write into what another build has begun."""
    ends.poll(None)
    os._exit(1)


class Learnt:
    """What this process has learnt of files that another has not been told."""

    def __init__(self) -> None:
        self.told = set(file_hash.KNOWN)

    def since_last(self) -> dict[FileState, Known]:
        """What is new since this was asked last."""
        new = {state: file_hash.KNOWN[state] for state in file_hash.KNOWN.keys() - self.told}
        self.told.update(new)
        return new

    def add(self, learnt: dict[FileState, Known]) -> None:
        """Take what the other process has learnt."""
        file_hash.KNOWN.update(learnt)
        self.told.update(learnt)
