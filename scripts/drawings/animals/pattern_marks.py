"""Stripes, bars and spots on an outline, within its own depth."""

from collections.abc import Iterator

from scripts.drawings.animals.outline import BodyOutline, closed, extent, pointed
from scripts.drawings.geometry import Path

BARS = (0.2, 0.34, 0.48, 0.62, 0.73)
SPOTS = (0.2, 0.3, 0.4, 0.5, 0.6, 0.7)
ROWS = (0.3, 0.52, 0.72)  # of the depth, from below


def marks(outline: BodyOutline, kind: str) -> list[Path]:
    """The marks as shapes; none on a plain animal."""
    makers = {"stripe": stripe, "bars": bars, "spots": spots, "blotch": blotch}
    return list(makers[kind](outline.body)) if kind in makers else []


def stripe(body: Path) -> Iterator[Path]:
    """One line along the side."""
    along = [(x, ends) for x in (0.16, 0.3, 0.45, 0.6, 0.74) if (ends := extent(body, x))]
    upper = [(x, low + 0.64 * (high - low)) for x, (low, high) in along]
    lower = [(x, low + 0.48 * (high - low)) for x, (low, high) in reversed(along)]
    yield closed(*upper, *lower)


def bars(body: Path) -> Iterator[Path]:
    """Bands from the back to the belly."""
    for x in BARS:
        front, hind = extent(body, x - 0.02), extent(body, x + 0.03)
        if front and hind:
            yield pointed(
                (x - 0.02, 0.86 * front[1]),
                (x + 0.03, 0.86 * hind[1]),
                (x + 0.03, 0.86 * hind[0]),
                (x - 0.02, 0.86 * front[0]),
            )


def spots(body: Path) -> Iterator[Path]:
    """Small dots in rows, every second one moved."""
    for number, x in enumerate(SPOTS):
        if ends := extent(body, x):
            low, high = ends
            for row in ROWS:
                y = low + (row + (0.1 if number % 2 else 0)) * (high - low)
                yield closed((x - 0.012, y), (x, y + 0.05), (x + 0.012, y), (x, y - 0.05))


def blotch(body: Path) -> Iterator[Path]:
    """One dark patch on the hind half."""
    if (front := extent(body, 0.44)) and (hind := extent(body, 0.72)):
        yield pointed(
            (0.42, 0.7 * front[1]),
            (0.74, 0.5 * hind[1]),
            (0.74, 0.5 * hind[0]),
            (0.46, 0.5 * front[0]),
        )
