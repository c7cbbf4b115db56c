"""Refuses a Python that is too old. Written so that even Python 2 reads it, and says so in one line."""

import sys

OLDEST = (3, 11)


def check_python_version(version=sys.version_info[:3]):
    # type: (tuple[int, ...]) -> None
    """End with one line where ``version`` is older than OLDEST. It raises ``SystemExit``."""
    if tuple(version[:2]) < OLDEST:
        have = ".".join(str(part) for part in version[:3])
        raise SystemExit(
            "stopped: Python 3.11 or newer is needed, this is %s; " % have  # noqa: UP031
            + "install it, then run the command with it."
        )
