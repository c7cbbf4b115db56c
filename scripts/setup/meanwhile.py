"""A piece of work that another process does while this one goes on."""

import multiprocessing
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from multiprocessing.connection import Connection
from traceback import format_exc
from typing import TypeVar, cast

from scripts.setup import file_hash
from scripts.setup.cores import FORK, KILLED, can_share
from scripts.setup.rubbish import nothing_sought_in_copies
from scripts.setup.say import Missing

Result = TypeVar("Result")


@contextmanager
def begun_elsewhere(work: Callable[[], Result]) -> Iterator[Callable[[], Result]]:
    """Have a copy of this process do the work; the function that comes back waits for what it makes.

    What the copy learns of files this process knows then too. Where there is no second core, or no process
    can be forked, the work is done here, at once. The work and the function raise what ``work`` raises, and
    the function ``Missing`` where the other process is killed. Nothing of the work goes on in the end.
    """
    if not can_share():
        made_here = work()
        yield lambda: made_here
        return
    forked = multiprocessing.get_context(FORK)
    receiver, sender = forked.Pipe(duplex=False)
    process = forked.Process(target=do_and_tell, args=(work, sender), daemon=True)
    with nothing_sought_in_copies():
        process.start()
    sender.close()  # the copy's is the last one then
    del work  # which may hold much that nobody here needs any more

    def result() -> Result:
        try:
            made, wrong, learnt = receiver.recv()
        except EOFError:
            raise Missing(KILLED) from None
        file_hash.KNOWN.update(learnt)
        if wrong is not None:
            raise wrong
        return cast(Result, made)

    try:
        yield result
    finally:
        process.terminate()  # it has told all that is wanted of it
        process.join()
        receiver.close()


def do_and_tell(work: Callable[[], Result], sender: "Connection[object, object]") -> None:
    """The work, in the process that was forked for it."""
    before = file_hash.KNOWN.copy()
    made: Result | None = None
    wrong: Exception | None = None
    try:
        made = work()
    except KeyboardInterrupt:
        return  # the one that is asked for the result is interrupted too, and says so
    except Exception as fault:
        wrong = fault
        wrong.add_note(f"In the process that did this:\n{format_exc()}")  # which else is lost
    learnt = {state: one for state, one in file_hash.KNOWN.items() if state not in before}
    sender.send((made, wrong, learnt))
