"""Leaves that are cut into threads, lobes or leaflets, as pure functions of length and width."""

import math

from scripts.drawings.geometry import Path, Point, Run, curve, line, placed, polar
from scripts.drawings.outlines import outline

THREADS = 9  # pairs of threads on a feathery leaf
NATURAL = {"feathery": 0.55, "forked": 0.5, "fan": 1.2, "thallus": 0.7}  # width over length
ONLY_A_THREAD = 0.1  # a width below this share of the length is the thread's, not the leaf's


def full_width(shape: str, length: float, width: float) -> float:
    """The width over all, mm: some records give that of one thread."""
    return length * NATURAL[shape] if width < length * ONLY_A_THREAD else width


def feathery(
    length: float, width: float, pairs: int = THREADS, *, twice: bool = False
) -> list[Path]:
    """A midrib with threads on both sides, longest in the middle; ``twice``: the threads fork."""
    paths = [line((0.0, 0.0), (0.0, length))]
    for i in range(pairs):
        share = 0.12 + 0.8 * i / pairs
        reach = width / 2 * (math.sin(math.pi * (0.12 + 0.8 * share)) ** 0.7)
        base = (0.0, share * length)
        for side in (-1, 1):
            thread = (base, polar(side * 62, reach * 0.55, base), polar(side * 50, reach, base))
            paths.append(curve(*thread) if twice else line(base, thread[2]))
            if twice and reach > width / 5:
                fork = polar(side * 62, reach * 0.5, base)
                paths.append(line(fork, polar(side * 18, reach * 0.45, fork)))
    return paths


def forked(length: float, width: float, base: Point = (0.0, 0.0), turn: float = 0.0) -> list[Path]:
    """Stiff threads that fork twice."""
    spread = math.degrees(math.atan2(width / 2, length)) * 1.3
    stem = polar(turn, length * 0.35, base)
    paths = [line(base, stem)]
    for side in (-1, 1):
        fork = polar(turn + side * spread * 0.6, length * 0.3, stem)
        inner = polar(turn + side * spread * 0.15, length * 0.36, fork)
        outer = polar(turn + side * spread * 1.1, length * 0.36, fork)
        paths += [line(inner, fork, outer), line(stem, fork)]
    return paths


def fan(length: float, width: float) -> list[Path]:
    """Threads that fork again and again and end along a round edge."""
    half = min(math.degrees(math.atan2(width / 2, length * 0.55)), 80)
    base, paths = (0.0, length * 0.16), [line((0.0, 0.0), (0.0, length * 0.16))]
    for i in range(5):
        turn = half * (i - 2) / 2
        reach = length * 0.84 * (1 - 0.22 * abs(i - 2) / 2)
        fork = polar(turn, reach * 0.42, base)
        paths.append(line(base, fork))
        for side in (-1, 1):
            second = polar(turn + side * half * 0.16, reach * 0.3, fork)
            ends = [
                polar(turn + half * (side * 0.16 + twig), reach * 0.3, second)
                for twig in (-0.1, 0.1)
            ]
            paths.append(Path((Run((fork, second, ends[0]), False),)))
            paths.append(line(second, ends[1]))
    return paths


def pinnate(length: float, width: float, pairs: int = 6, *, wavy: bool = False) -> list[Path]:
    """Leaflets on both sides of a midrib, and one at its end."""
    leaflets = []
    for i in range(pairs):
        share = 0.14 + 0.68 * i / (pairs - 1)
        reach = width / 2 * (1.0 - 0.55 * abs(share - 0.36) / 0.5)
        for side in (-1, 1):
            place = placed((0.0, length * (share + side * 0.012)), side * (68 - 22 * share))
            leaflets.append(
                leaflet(reach, length * 0.62 / pairs * 1.08, wavy=wavy).mapped(place.at)
            )
    end = placed((0.0, length * 0.84), 0)
    leaflets.append(leaflet(length * 0.17, length * 0.1, wavy=wavy).mapped(end.at))
    return leaflets


def leaflet(length: float, width: float, *, wavy: bool) -> Path:
    """One leaflet."""
    shape, margin = ("lanceolate", "wavy") if wavy else ("leaflet", "smooth")
    return outline(shape, length, width, margin=margin)


def clover(length: float, width: float) -> list[Path]:
    """Four leaflets in a cross about the stalk's end (as in Marsilea)."""
    leaflet_outline = outline("obovate", length / 2, width * 0.42, tip="rounded")
    return [leaflet_outline.mapped(placed((0.0, 0.0), turn).at) for turn in (45, 135, 225, 315)]


def lobed(length: float, width: float) -> list[Path]:
    """An edge with round lobes: about the stalk where the leaf is broad, along it where long."""
    return [palmate(length, width) if width >= 0.8 * length else oak(length, width)]


def palmate(length: float, width: float, lobes: int = 5) -> Path:
    """Round lobes about the stalk's end, with a sinus at the stalk."""
    points: list[Point] = [(0.0, 0.0)]
    reach = 0.56
    for i in range(lobes * 2 + 1):
        turn = -140 + 280 * i / (lobes * 2)
        far = reach if i % 2 else reach * 0.74
        x, y = polar(turn, far)
        points.append((x * width * 0.9, y * length + length * 0.2))
    return Path((Run(tuple(points)), Run((points[-1], (0.0, 0.0)))), closed=True)


def oak(length: float, width: float, lobes: int = 4) -> Path:
    """Round lobes along both sides of the midrib."""
    right: list[Point] = [(0.0, 0.0), (width * 0.07, length * 0.1)]
    for i in range(lobes):
        share = 0.22 + 0.6 * i / (lobes - 1)
        reach = width / 2 * (1.0 - 0.5 * abs(share - 0.5) / 0.5)
        right += [(reach, length * (share + 0.03)), (reach * 0.42, length * (share + 0.11))]
    right.append((0.0, length))
    left = [(-x, y) for x, y in right[-2::-1]]
    return Path((Run((*right, *left)),), closed=True)


def thallus(
    length: float, width: float, turn: float = 0.0, base: Point = (0.0, 0.0), depth: int = 3
) -> list[Path]:
    """Bands that fork in two, again and again."""
    share = (0.4, 0.3, 0.3)[3 - depth]
    end = polar(turn, length * share, base)
    paths = [line(base, end)]
    if depth > 1:
        spread = math.degrees(math.atan2(width / 2, length)) * (1.5 if depth == 3 else 1.1)
        for side in (-1, 1):
            paths += thallus(length, width, turn + side * spread, end, depth - 1)
    return paths
