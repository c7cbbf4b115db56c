"""Reads a drawing back with a reader of its own, so that the writer is not its own witness."""

import re
import xml.etree.ElementTree as ET

NAMES = {"M": 2, "l": 2, "c": 6, "s": 4, "h": 1, "v": 1, "H": 1, "V": 1, "z": 0}
NUMBER = re.compile(r"-?(?:\d+\.?\d*|\.\d+)")
IDENTITY = (1.0, 0.0, 0.0, 1.0, 0.0, 0.0)


def times(first, second):
    """The matrix that does ``second`` and then ``first``."""
    a, b, c, d, e, f = first
    g, h, i, j, k, m = second
    return (
        a * g + c * h, b * g + d * h, a * i + c * j, b * i + d * j,
        a * k + c * m + e, b * k + d * m + f,
    )  # fmt: skip


def matrix_of(element):
    text = element.get("transform")
    if not text:
        return IDENTITY
    numbers = [float(one) for one in NUMBER.findall(text)]
    return (1.0, 0.0, 0.0, 1.0, *numbers) if text.startswith("translate") else tuple(numbers)


def points_of(data):
    """Points on a path: ends of its pieces and five more on each curve."""
    x = y = 0.0
    control = start = (0.0, 0.0)
    for letter, body in re.findall(r"([A-Za-z])([^A-Za-z]*)", data):
        numbers = [float(one) for one in NUMBER.findall(body)]
        size = NAMES[letter]
        assert len(numbers) % size == 0 if size else not numbers, (letter, body)
        for i in range(0, len(numbers), size) if size else ():
            part = numbers[i : i + size]
            if letter in "cs":
                first = (2 * x - control[0], 2 * y - control[1])
                if letter == "c":
                    first, part = (x + part[0], y + part[1]), part[2:]
                second, end = (x + part[0], y + part[1]), (x + part[2], y + part[3])
                for k in range(1, 6):
                    t = k / 6
                    weights = ((1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t * t * (1 - t), t**3)
                    four = ((x, y), first, second, end)
                    yield tuple(
                        sum(w * p[axis] for w, p in zip(weights, four, strict=True))
                        for axis in (0, 1)
                    )
                (x, y), control = end, second
            else:
                across = {"M": (0, 0), "l": (x, y), "h": (x,), "H": (0,), "v": (y,), "V": (0,)}[
                    letter
                ]
                moved = [one + base for one, base in zip(part, across, strict=True)]
                x = moved[0] if letter in "MlhH" else x
                y = moved[-1] if letter in "MlvV" else y
                control = (x, y)
                start = (x, y) if letter == "M" else start
            yield (x, y)
        if letter == "z":
            x, y = start


def drawn_points(svg, group=None):
    """All points of a drawing, or of the group with a class, in the units of its viewBox."""
    root = ET.fromstring(svg)
    named = {one.get("id"): one for one in root.iter() if one.get("id")}

    def walk(element, matrix):
        matrix = times(matrix, matrix_of(element))
        if element.tag == "defs":
            return
        if element.tag == "path":
            found = points_of(element.get("d"))
        elif element.tag == "rect":
            left, top, width, height = (
                float(element.get(key)) for key in ("x", "y", "width", "height")
            )
            found = [(left, top), (left + width, top + height)]
        else:
            found = []
        a, b, c, d, e, f = matrix
        for x, y in found:
            yield (a * x + c * y + e, b * x + d * y + f)
        for child in element:
            yield from walk(child, matrix)
        if element.tag == "use":
            yield from walk(named[element.get("href")[1:]], matrix)

    for element in root:
        if group is None or group in element.get("class", "").split():
            yield from walk(element, IDENTITY)


def box(points):
    xs, ys = zip(*points, strict=True)
    return min(xs), min(ys), max(xs), max(ys)


def view(svg):
    return [float(one) for one in ET.fromstring(svg).get("viewBox").split()]
