"""Into the project's environment, or an end in one line."""

from scripts.setup.environment import enter
from scripts.setup.say import Missing, stop, write_what_the_terminal_cannot


def enter_or_stop(locks: tuple[str, ...], module: str) -> None:
    """Go on inside the environment made from ``locks``, or say why not and end.

    An interrupt from the keyboard ends it in one line too.
    """
    write_what_the_terminal_cannot()
    try:
        enter(locks, module)
    except Missing as missing:
        stop(str(missing))
    except KeyboardInterrupt:
        stop("interrupted; the same command goes on from here", status=130)
