"""What a build follows from beside our files: Python, the packages that are there, the day."""

import os
import sys
import sysconfig
from datetime import date
from functools import cache
from pathlib import Path

DATED_BY = "SOURCE_DATE_EPOCH"  # what the site builder takes for the time where it is set


@cache
def packages() -> str:
    """Python and the packages beside it, with their versions."""
    folder = Path(sysconfig.get_path("purelib"))
    return " ".join([sys.version, *sorted(path.name for path in folder.glob("*.dist-info"))])


def surroundings() -> str:
    """Python, its packages, and the day, after which law lists are called old."""
    return f"{packages()} {date.today()} {os.environ.get(DATED_BY, '')}"
