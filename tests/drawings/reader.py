"""Reads a drawing back with a reader of its own, so that the writer is not its own witness."""

import re
import xml.etree.ElementTree as ET
from functools import cache

import numpy as np

NAMES = {"M": 2, "l": 2, "c": 6, "s": 4, "h": 1, "v": 1, "H": 1, "V": 1, "z": 0}
NUMBER = re.compile(r"-?(?:\d+\.?\d*|\.\d+)")
IDENTITY = (1.0, 0.0, 0.0, 1.0, 0.0, 0.0)
NO_POINTS = np.empty((0, 2))


def matrix_of(element):
    """The transform of an element, as the three columns of its matrix in one row of six."""
    text = element.get("transform")
    if not text:
        return IDENTITY
    numbers = [float(one) for one in NUMBER.findall(text)]
    return (1.0, 0.0, 0.0, 1.0, *numbers) if text.startswith("translate") else tuple(numbers)


def moved(points, matrix):
    """Points after a transform."""
    a, b, c, d, e, f = matrix
    return points @ np.array([[a, b], [c, d]]) + (e, f)


@cache
def points_of(data):
    """Points on a path, a row each: ends of its pieces and five more on each curve."""
    return np.array(list(walked(data))).reshape(-1, 2)


def walked(data):
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
                shifted = [one + base for one, base in zip(part, across, strict=True)]
                x = shifted[0] if letter in "MlhH" else x
                y = shifted[-1] if letter in "MlvV" else y
                control = (x, y)
                start = (x, y) if letter == "M" else start
            yield (x, y)
        if letter == "z":
            x, y = start


def drawn_points(svg, group=None):
    """All points of a drawing, or of the group with a class, a row each, in the units of its viewBox."""
    root = ET.fromstring(svg)
    named = {one.get("id"): one for one in root.iter() if one.get("id")}
    copied = {}

    def copy_of(name):
        """What a copied part draws, in its own units: read once, however often it stands there."""
        if name not in copied:
            copied[name] = within(named[name])
        return copied[name]

    def within(element):
        if element.tag == "defs":
            return NO_POINTS
        parts = [NO_POINTS, *map(within, element)]
        if element.tag == "path":
            parts.append(points_of(element.get("d")))
        elif element.tag == "rect":
            left, top, width, height = (
                float(element.get(key)) for key in ("x", "y", "width", "height")
            )
            parts.append(np.array([(left, top), (left + width, top + height)]))
        elif element.tag == "use":
            parts.append(copy_of(element.get("href")[1:]))
        return moved(np.concatenate(parts), matrix_of(element))

    chosen = [one for one in root if group is None or group in element_classes(one)]
    return np.concatenate([NO_POINTS, *map(within, chosen)])


def element_classes(element):
    return element.get("class", "").split()


def box(points):
    return (*points.min(axis=0), *points.max(axis=0))


def view(svg):
    return [float(one) for one in ET.fromstring(svg).get("viewBox").split()]
