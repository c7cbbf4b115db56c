"""Edges of leaves: waves, frills, teeth and cuts put on a smooth edge."""

from scripts.drawings.geometry import Point, Run, controls

# Waves or teeth an edge, and how far each goes out, in widths of the blade. Drawn by eye.
WAVES = {"wavy": (4.5, 0.045), "crisped": (7.5, 0.07)}
TEETH, TOOTH = 9, 0.055
CUTS, CUT = 5, 0.5  # a cut goes half the way to the midrib


def edge(
    points: tuple[Point, ...], margin: str, width: float, *, inward: bool = False
) -> tuple[Run, ...]:
    """One edge from the stalk to the tip, with its margin; the ends stay.

    A wave starts outward, or ``inward``.
    """
    if margin in WAVES:
        count, reach = WAVES[margin]
        return (Run(wavy(points, count, -reach * width if inward else reach * width)),)
    if margin == "toothed":
        return (Run(toothed(points, width), False),)
    if margin == "cut":
        return (Run(deep(points)),)
    return (Run(points),)


def sampled(points: tuple[Point, ...], count: int) -> list[Point]:
    """Points at equal steps of the parameter along the smooth edge."""
    pieces = list(zip(points, controls(points), strict=False))
    samples = []
    for i in range(count + 1):
        place = min(i / count * len(pieces), len(pieces) - 1e-9)
        start, (first, second, end) = pieces[int(place)]
        t = place - int(place)
        weights = ((1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t * t * (1 - t), t**3)
        four = (start, first, second, end)
        samples.append(
            (
                sum(w * p[0] for w, p in zip(weights, four, strict=True)),
                sum(w * p[1] for w, p in zip(weights, four, strict=True)),
            )
        )
    return samples


def wavy(points: tuple[Point, ...], count: float, reach: float) -> tuple[Point, ...]:
    """The edge swinging out and in."""
    many = round(count * 2)
    line = sampled(points, many)
    moved = [
        (max(x + (reach if i % 2 else -reach) * min(1.0, 4 * (1 - i / many)), 0.0), y)
        for i, (x, y) in enumerate(line)
    ]
    return (points[0], *moved[1:-1], points[-1])


def toothed(points: tuple[Point, ...], width: float) -> tuple[Point, ...]:
    """The edge as a saw whose teeth point to the tip."""
    line = sampled(points, TEETH * 2)
    tip = points[-1][1]
    moved = list(line)
    for i in range(1, len(line) - 4, 2):
        (x, y), (_, after) = line[i], line[i + 1]
        moved[i] = (x + TOOTH * width, min(y + abs(after - y) * 0.6, tip))
    return (points[0], *moved[1:-1], points[-1])


def deep(points: tuple[Point, ...]) -> tuple[Point, ...]:
    """The edge cut towards the midrib between broad lobes."""
    line = sampled(points, CUTS * 3)
    moved = [(x * (1 - CUT) if i % 3 == 0 else x, y) for i, (x, y) in enumerate(line)]
    return (points[0], *moved[1:-1], points[-1])
