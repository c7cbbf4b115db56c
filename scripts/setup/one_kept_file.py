"""Many small values that are kept in one file, since a file for each would take longer to find."""

import hashlib
import json
from typing import Any

from scripts.setup.kept import keep, recall


class KeptTogether:
    """Values by the hash of their ingredients; those that this build did not ask for are not kept on.

    ``kind`` and ``of`` name the one file among what is kept. Values are what JSON can hold.
    """

    def __init__(self, kind: str, of: str) -> None:
        self.kind, self.of = kind, of
        self.before: dict[str, Any] = json.loads(recall(kind, of) or "{}")
        self.asked: dict[str, Any] = {}

    def get(self, name: str) -> Any:
        """A value by the hash of its ingredients; None where none is kept."""
        found = self.before.get(name)
        if found is not None:
            self.asked[name] = found
        return found

    def put(self, name: str, value: Any) -> None:
        """Have a value kept."""
        self.asked[name] = value

    def keep(self) -> None:
        """Keep the values that were asked for, where they are others than were there."""
        if self.asked.keys() != self.before.keys():
            keep(self.kind, self.of, json.dumps(self.asked, ensure_ascii=False, allow_nan=False))


def hash_of(*ingredients: str) -> str:
    """A name for what follows from ingredients."""
    return hashlib.sha256("\0".join(ingredients).encode()).hexdigest()
