"""Pieces of a file that follow from one record each, as an earlier build made them where it is the same.

For a file that all records have a part in, and that takes long to make.
"""

from collections.abc import Callable
from typing import TypeVar

from scripts.records.followed import FOLLOWED
from scripts.records.kept_files import KeptFiles
from scripts.records.noted_reads import WHOLE
from scripts.setup.one_kept_file import KeptTogether

KIND = "pieces"

Piece = TypeVar("Piece")


class PiecesByRecord:
    """The pieces of a file, each made when it is asked for."""

    def of(self, kind: str, key: str, make: Callable[[], Piece], beside: str = "") -> Piece:
        """The piece that ``make`` makes of one record, by its kind and key, and of what ``beside`` says."""
        return make()

    def keep(self) -> None:
        """Keep those that were asked for."""


class KeptPieces(PiecesByRecord):
    """The same, each made only where its record has changed. They are what ``marshal`` can hold."""

    def __init__(self, known: KeptFiles, file: str) -> None:
        self.known = known
        self.kept = KeptTogether(KIND, f"{known.beside}\0{file}")

    def of(self, kind: str, key: str, make: Callable[[], Piece], beside: str = "") -> Piece:
        """As above; a piece of a kind that is not followed is made anew."""
        if kind not in FOLLOWED:
            return make()
        self.known.noted[kind, key].add(WHOLE)
        name = f"{kind} {key} {self.known.now.cells[kind][key][WHOLE]} {beside}"
        found: Piece | None = self.kept.get(name)
        if found is None:
            found = make()
            self.kept.put(name, found)
        return found

    def keep(self) -> None:
        """As above."""
        self.kept.keep()
