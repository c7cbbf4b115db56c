"""Pieces of a file that follow from one record each, as an earlier build made them where it is the same.

For a file that all records have a part in, and that takes long to make.
"""

from collections.abc import Callable, Sequence
from typing import TypeVar

from scripts.records.followed import FOLLOWED
from scripts.records.kept_files import KeptFiles
from scripts.records.noted_reads import THERE, WHOLE
from scripts.setup.one_kept_file import KeptTogether

KIND = "pieces"
ALL_FIELDS = (WHOLE,)

Piece = TypeVar("Piece")


class PiecesByRecord:
    """The pieces of a file, each made when it is asked for."""

    def of(
        self,
        kind: str,
        key: str,
        make: Callable[[], Piece],
        fields: Sequence[str] = ALL_FIELDS,
        beside: str = "",
    ) -> Piece:
        """The piece that ``make`` makes of the ``fields`` of one record, by its kind and key, and of what
        ``beside`` says.
        """
        return make()

    def keep(self) -> None:
        """Keep those that were asked for."""


def each_made(_file: str) -> PiecesByRecord:
    """The pieces of a file where none is kept."""
    return PiecesByRecord()


class KeptPieces(PiecesByRecord):
    """The same, each made only where its record has changed. They are what ``marshal`` can hold."""

    def __init__(self, known: KeptFiles, file: str) -> None:
        self.known = known
        self.kept = KeptTogether(KIND, f"{known.beside}\0{file}")

    def of(
        self,
        kind: str,
        key: str,
        make: Callable[[], Piece],
        fields: Sequence[str] = ALL_FIELDS,
        beside: str = "",
    ) -> Piece:
        """As above; a piece of a kind that is not followed is made anew.

        Raises ``ValueError`` where a piece reads another field than those.
        """
        if kind not in FOLLOWED:
            return make()
        cells = self.known.now.cells[kind][key]
        name = f"{kind} {key} {' '.join([cells[field] for field in fields])} {beside}"
        found: Piece | None = self.kept.get(name)
        if found is None:
            found = self.made(kind, key, make, fields)
            self.kept.put(name, found)
        self.known.noted[kind, key].update(fields)
        return found

    def made(self, kind: str, key: str, make: Callable[[], Piece], fields: Sequence[str]) -> Piece:
        """A piece, made now. Raises ``ValueError`` where it reads another field than those."""
        before = self.known.noted.pop((kind, key), set())
        piece = make()
        read = self.known.noted[kind, key]
        unnamed = read - {THERE, *fields}
        if unnamed and WHOLE not in fields:
            raise ValueError(f"a piece of {kind} {key} reads {', '.join(sorted(unnamed))} too")
        read |= before
        return piece

    def keep(self) -> None:
        """As above."""
        self.kept.keep()
