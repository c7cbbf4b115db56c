"""The kinds of records of which a build follows what is read of them; also fields of the library.

A change to any other source has every file made anew that may follow from it. Standard library only.
"""

import os
from pathlib import Path

FOLLOWED = ("plants", "animals", "problems", "names", "sources", "findings")


def is_followed(path: str, species: Path) -> bool:
    """Whether a file of the records in ``species`` holds some of these kinds: one, or all of a kind."""
    below = path.removeprefix(f"{species}{os.sep}")
    return below != path and below.split(os.sep)[0].removesuffix(".yml") in FOLLOWED
