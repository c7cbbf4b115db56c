"""Generated files as an earlier build made them, where nothing that they were made of has changed.

Beside what stands in every file's ingredients, a file follows from what its maker reads of the records.
That is noted as it reads, so that nobody has to say it.
"""

import json
from collections.abc import Callable
from copy import copy
from typing import Self

from scripts.records.cell_digests import CellDigests, Cells, gathered, reads_text
from scripts.records.load import Library
from scripts.records.noted_reads import Noted, noted_library
from scripts.setup.kept import keep, octets_of, recall_octets

KIND = "source-files"


class KeptFiles:
    """What is kept of the files of one site; makers have to read ``library``, which notes what they read.

    ``beside`` is a hash of all that a file may follow from, the followed records apart;
    ``cells`` are those of the library, where they are known.
    """

    def __init__(self, library: Library, beside: str, cells: Cells | None = None) -> None:
        self.noted = Noted()
        self.library = noted_library(library, self.noted)
        self.now = CellDigests(library, cells)
        self.beside = beside
        self.lacking: list[str] = []  # files that were asked for, and have to be made

    def beside_also(self, more: str) -> Self:
        """The same records, for files that follow from something more."""
        made = copy(self)
        made.beside = f"{self.beside} {more}"
        made.lacking = []
        return made

    def text(self, name: str, make: Callable[[], str]) -> str:
        """The file's text, made only where it has to be."""
        found = self.unchanged(name)
        return (self.made(name, make) if found is None else found).decode()

    def unchanged(self, name: str) -> bytes | None:
        """The file in UTF-8 where it would be made the same; None where it has to be made."""
        found = recall_octets(KIND, self.ingredients(name))
        if found is not None:
            reads, digest, octets = found.split(b"\n", 2)
            if self.now.of_reads(json.loads(reads)) == digest.decode():
                return octets
        self.lacking.append(name)
        return None

    def made(self, name: str, make: Callable[[], str | bytes]) -> bytes:
        """The file in UTF-8, made now and kept with what it was made of."""
        self.noted.clear()
        octets = octets_of(make())
        reads = gathered(self.noted)
        head = f"{reads_text(reads)}\n{self.now.of_reads(reads)}\n"
        keep(KIND, self.ingredients(name), head, octets)
        return octets

    def ingredients(self, name: str) -> str:
        """What names the file's place among what is kept; of each file there is one text."""
        return f"{self.beside}\0{name}"
