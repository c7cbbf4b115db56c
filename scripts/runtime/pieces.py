"""The calculators in two pieces: what most of them need comes first, the rest after the first answer."""

import io
import zipfile
from collections.abc import Collection
from typing import NamedTuple

from scripts.runtime.slim import stored

# Those with most code of their own: half of all octets. A page that opens one of them waits for both pieces.
LATER = frozenset(
    {
        *("diagnose", "identify", "pick", "stocking", "surface-cover", "trend"),
        *("nitrogen-balance", "nitrogen-forecast", "round", "standing"),
    }
)


class Pieces(NamedTuple):
    """A zip that serves by itself, and what makes it the whole one, put over its end from octet ``at`` on."""

    first: bytes
    rest: bytes
    at: int


def in_pieces(archive: bytes, names: Collection[str]) -> Pieces:
    """Divide a stored zip; ``names`` are the files of the first piece.

    Raises ``KeyError`` for a name that is not in it.
    """
    with zipfile.ZipFile(io.BytesIO(archive)) as source:
        rest = [name for name in source.namelist() if name not in names]
        first = stored({name: source.read(name) for name in sorted(names)})
        whole = stored({name: source.read(name) for name in [*sorted(names), *rest]})
    with zipfile.ZipFile(io.BytesIO(whole)) as made:
        at = made.getinfo(rest[0]).header_offset
    return Pieces(first, whole[at:], at)
