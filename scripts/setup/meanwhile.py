"""A piece of work that another process does while this one goes on."""

import multiprocessing
from collections.abc import Callable
from multiprocessing.connection import Connection
from typing import TypeVar, cast

from scripts.setup.cores import FORK, KILLED, can_share
from scripts.setup.rubbish import nothing_sought_in_copies
from scripts.setup.say import Missing

Result = TypeVar("Result")


def begun_elsewhere(work: Callable[[], Result]) -> Callable[[], Result]:
    """Have a copy of this process do the work; the function that comes back waits for what it makes.

    Where there is no second core, or no process can be forked, the work is done when it is asked for. The
    function raises what ``work`` raises, and ``Missing`` where the other process is killed.
    """
    if not can_share():
        return work
    forked = multiprocessing.get_context(FORK)
    receiver, sender = forked.Pipe(duplex=False)
    process = forked.Process(target=do_and_tell, args=(work, sender), daemon=True)
    with nothing_sought_in_copies():
        process.start()
    sender.close()  # the copy's is the last one then

    def result() -> Result:
        try:
            made, wrong = receiver.recv()
        except EOFError:
            raise Missing(KILLED) from None
        finally:
            process.join()
        if wrong is not None:
            raise wrong
        return cast(Result, made)

    return result


def do_and_tell(work: Callable[[], Result], sender: "Connection[object, object]") -> None:
    """The work, in the process that was forked for it."""
    try:
        sender.send((work(), None))
    except KeyboardInterrupt:
        return  # the one that is asked for the result is interrupted too, and says so
    except Exception as wrong:
        sender.send((None, wrong))
