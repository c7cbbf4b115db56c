"""Generated files as an earlier build made them, where nothing that they were made of has changed.

Beside what stands in every file's ingredients, a file follows from what its maker reads of the records.
That is noted as it reads, so that nobody has to say it.
"""

import json
from collections.abc import Callable, Iterable
from copy import copy
from typing import Self

from scripts.records.cell_digests import CellDigests, Cells, gathered, reads_text
from scripts.records.load import Library
from scripts.records.noted_reads import Noted, noted_library
from scripts.setup.kept import is_there, keep, octets_of, place_of, recall_octets, throw_away
from scripts.setup.one_kept_file import KeptTogether

KIND = "source-files"
READS = "reads-of-files"


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
        # By file: what it was made of, in one line, and a line with the hash that this had then.
        self.reads = KeptTogether(READS, beside)

    def beside_also(self, more: str) -> Self:
        """The same records, for files that follow from something more."""
        made = copy(self)
        made.beside = f"{self.beside} {more}"
        made.reads = KeptTogether(READS, made.beside)
        return made

    def text(self, name: str, make: Callable[[], str]) -> str:
        """The file's text, made only where it has to be."""
        found = self.unchanged(name)
        return (self.made(name, make) if found is None else found).decode()

    def unchanged(self, name: str) -> bytes | None:
        """The file in UTF-8 where it would be made the same; None where it has to be made."""
        return recall_octets(KIND, self.ingredients(name)) if self.would_be_same(name) else None

    def places_of_unchanged(self, names: Iterable[str]) -> dict[str, str]:
        """Those files that would be made the same, and where each of them is kept."""
        same = [name for name in names if self.would_be_same(name)]
        of_same = {name: place_of(KIND, self.ingredients(name)) for name in same}
        return {name: place for name, place in of_same.items() if is_there(place)}

    def would_be_same(self, name: str) -> bool:
        """Whether all that a file was made of is as it was then."""
        known: str | None = self.reads.get(name)
        if known is None:
            return False
        reads, digest = known.split("\n")
        return self.now.of_reads(json.loads(reads)) == digest

    def made(self, name: str, make: Callable[[], str | bytes]) -> bytes:
        """The file in UTF-8, made now and kept; what it was made of is noted."""
        self.noted.clear()
        octets = octets_of(make())
        reads = gathered(self.noted)
        self.reads.put(name, f"{reads_text(reads)}\n{self.now.of_reads(reads)}")
        keep(KIND, self.ingredients(name), octets)
        return octets

    def ingredients(self, name: str) -> str:
        """What names a file's place among what is kept: all that it was made of."""
        return f"{self.beside}\0{name}\0{self.reads.asked[name]}"

    def keep(self) -> None:
        """Keep what the files were made of; of each file no other text stays."""
        self.reads.keep()
        for name, known in self.reads.before.items():
            if self.reads.asked.get(name) != known:
                throw_away(KIND, f"{self.beside}\0{name}\0{known}")
