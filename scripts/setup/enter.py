"""Into the project's environment, or an end in one line. Standard library only."""

import os
import signal
import subprocess
import sys
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from io import FileIO
from types import FrameType

from scripts.setup.environment import is_whole, make, was_made
from scripts.setup.paths import ROOT, VENV, WINDOWS, python_of
from scripts.setup.say import Missing, stop, write_what_the_terminal_cannot

INSIDE = (
    "MULMBOOK_INSIDE"  # set once the project's own interpreter runs, so that it enters only once
)
WORD = "MULMBOOK_WAITS_AT"  # the file's number where the inner process hears that it may go on
# No locked package has any; else each is asked for them, at every start.
NO_PLUGINS = {"PYDANTIC_DISABLE_PLUGINS": "1"}
HEARS: list[FileIO] = []  # where an inner process hears what the outer one has found out for it


def enter_or_stop(locks: tuple[str, ...], module: str, find_out: str = "") -> None:
    """Go on inside the environment made from ``locks``, or say why not and end.

    ``find_out`` names a function as ``module:function``, which the outer process calls while Python starts in
    the inner one; this gets the octets that it returns by ``found_out``. An interrupt from the keyboard ends
    it in one line too.
    """
    write_what_the_terminal_cannot()
    with interrupt_told():
        try:
            enter(locks, module, find_out)
        except Missing as missing:
            stop(str(missing))


@contextmanager
def interrupt_told() -> Iterator[None]:
    """Say an interrupt from the keyboard in one line, and end. Raises ``SystemExit``.

    Also where code in C has made another error of it.
    """
    heard = []

    def hear(number: int, frame: FrameType | None) -> None:
        """Note the interrupt, and raise it."""
        heard.append(number)
        signal.default_int_handler(number, frame)

    listens = signal.getsignal(signal.SIGINT) is signal.default_int_handler
    if listens:
        signal.signal(signal.SIGINT, hear)
    try:
        yield
    except (KeyboardInterrupt, Exception) as wrong:
        if heard or isinstance(wrong, KeyboardInterrupt):
            stop("interrupted; the same command goes on from here", status=130)
        raise
    finally:
        if listens:
            signal.signal(signal.SIGINT, signal.default_int_handler)


def enter(locks: tuple[str, ...], module: str, find_out: str = "") -> None:
    """Run ``module`` in the project's environment, made or renewed from ``locks`` where needed.

    Returns only in the process that already runs inside it. In any other it ends with ``SystemExit``
    and the status of the inner one.
    """
    if os.environ.get(INSIDE) == str(VENV):
        return wait_for_the_word()
    command = [str(python_of(VENV)), "-m", module, *sys.argv[1:]]
    environment = {**os.environ, INSIDE: str(VENV), "PYTHONPATH": str(ROOT), **NO_PLUGINS}
    environment.pop("PYTHONHOME", None)
    status = None
    if was_made(VENV, locks) and not WINDOWS:  # which hands no open file on
        status = status_where_whole(command, environment, find_out)
    if status is None:
        make(VENV, locks)
        status = status_of(subprocess.Popen(command, env=environment, cwd=ROOT))
    raise SystemExit(status)


def status_where_whole(
    command: list[str], environment: dict[str, str], find_out: str = ""
) -> int | None:
    """Run a command while the files of its environment are counted, which takes as long as Python's start.
    Then it is told what ``find_out`` finds out.

    Its exit status; None where files are gone, and the command has stopped before it needed any.
    """
    hears, tells = os.pipe()
    process = subprocess.Popen(
        command, env={**environment, WORD: str(hears)}, pass_fds=(hears,), cwd=ROOT
    )
    os.close(hears)
    gone = False
    with FileIO(tells, "w") as line:
        try:
            gone = not is_whole(VENV)
            if not gone:
                with suppress(OSError):  # it has ended by itself, or will meet what cannot be read
                    write_all(line, b".")
                    write_all(line, called(find_out))
        except KeyboardInterrupt:
            pass  # the command is interrupted too, and says so
    status = status_of(process)
    return None if gone else status


def called(find_out: str) -> bytes:
    """What a function returns that is named as ``module:function``; nothing where none is named.

    Raises what it raises.
    """
    if not find_out:
        return b""
    from pkgutil import resolve_name  # and what it names: the command is on its way by now

    octets: bytes = resolve_name(find_out)()
    return octets


def write_all(line: FileIO, octets: bytes) -> None:
    """Write into a pipe, which may take them in parts. Raises ``BrokenPipeError``."""
    left = memoryview(octets)
    while left:
        left = left[line.write(left) :]


def wait_for_the_word() -> None:
    """Go on once the environment is known to be whole; ends where it is not. Raises ``SystemExit``."""
    number = os.environ.pop(WORD, None)
    if number is not None:
        word = FileIO(int(number))  # stays open: more may follow on it
        if not word.read(1):
            raise SystemExit(1)
        HEARS.append(word)


def found_out() -> bytes:
    """What the outer process has found out; nothing where there is none, or it found out nothing."""
    if not HEARS:
        return b""
    with HEARS.pop() as line:
        return line.read()


def status_of(process: "subprocess.Popen[bytes]") -> int:
    """The exit status of a command in the foreground; an interrupt from the keyboard is its to answer."""
    while True:
        try:
            return process.wait()
        except KeyboardInterrupt:
            continue
