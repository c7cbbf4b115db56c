"""Many small values that are kept in one file, since a file for each would take longer to find."""

import hashlib
import marshal
from typing import Any

from scripts.setup.kept import keep, recall_octets


class KeptTogether:
    """Values by the hash of their ingredients; those that this build did not ask for are not kept on.

    ``kind`` and ``of`` name the one file among what is kept. Values are what ``marshal`` can hold,
    which takes a fifth of the time of JSON.
    """

    def __init__(self, kind: str, of: str) -> None:
        self.kind, self.of = kind, of
        kept = recall_octets(kind, of)
        self.before: dict[str, Any] = {} if kept is None else marshal.loads(kept)
        self.asked: dict[str, Any] = {}

    def get(self, name: str) -> Any:
        """A value by the hash of its ingredients; None where none is there."""
        found = self.asked.get(name, self.before.get(name))
        if found is not None:
            self.asked[name] = found
        return found

    def put(self, name: str, value: Any) -> None:
        """Have a value kept."""
        self.asked[name] = value

    def keep(self) -> None:
        """Keep the values that were asked for, where they are others than were there."""
        if self.asked != self.before:
            keep(self.kind, self.of, marshal.dumps(self.asked))


def hash_of(*ingredients: str) -> str:
    """A name for what follows from ingredients."""
    return hashlib.sha256("\0".join(ingredients).encode()).hexdigest()
