"""What a person can do about a failed step, from what the failing program said."""

WAYS_OUT = (
    (
        ("no space left", "disk quota", "enospc"),
        "the disk is full: free some space, then run it again.",
    ),
    (
        ("read-only file system", "erofs"),
        "the folder is read-only: copy the project elsewhere.",
    ),
    (
        ("permission denied", "eacces", "operation not permitted"),
        "the folder may not be written: run it as the owner of the folder, or copy the project elsewhere.",
    ),
    (
        ("hashes", "eintegrity"),
        "a package is not the one that was locked: do not go on; try another index.",
    ),
)


def advice(said: str, otherwise: str) -> str:
    """The way out for what ``said`` names, else ``otherwise``."""
    lower = said.lower()
    for signs, way in WAYS_OUT:
        if any(sign in lower for sign in signs):
            return way
    return otherwise
