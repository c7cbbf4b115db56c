"""How many rings of one size lie side by side on a rectangular surface.

Rows of rings, set straight or staggered like bricks, along either side. For more than a handful of rings
there may be a wilder arrangement that holds one more; nobody lays rings so.
"""

import math

ROWS_TRIED = 100  # as many as the rings that can be asked for, one a row; more rows only take time
SLACK = 1e-9  # of a length: two rings of 40 cm fit in 80 cm, told in inches


def most_rings(length_cm: float, width_cm: float, diameter_cm: float) -> int:
    """The most rings that fit without overlapping, 0 where not even one; above 100 it may be more."""
    if diameter_cm > min(length_cm, width_cm) * (1 + SLACK):
        return 0
    return max(in_rows(length_cm, width_cm, diameter_cm), in_rows(width_cm, length_cm, diameter_cm))


def in_rows(along: float, across: float, diameter: float) -> int:
    """The most rings in rows that run along one side, for any number of rows.

    The sides ``along`` and ``across`` and the ``diameter`` are in one unit of length.
    """
    room = max(0.0, across - diameter)
    # In staggered rows a ring lies between two of the next row: sqrt(3)/2 of a diameter apart at least.
    most_rows = 1 + math.floor(room / (diameter * math.sqrt(3) / 2) + SLACK)
    tried = range(1, min(most_rows + 1, ROWS_TRIED) + 1)
    return max(with_rows(along, room, diameter, rows) for rows in tried)


def with_rows(along: float, room: float, diameter: float, rows: int) -> int:
    """The most rings in so many rows, evenly spread over the room across.

    Here ``along`` is a side of the tank, and ``room`` is the other less a ``diameter``, in one unit of
    length.
    """
    apart = room / (rows - 1) if rows > 1 else diameter
    straight = rows * fitting(along - diameter, diameter) if apart >= diameter * (1 - SLACK) else 0
    if rows > 2 and 2 * apart < diameter * (1 - SLACK):
        return 0  # every other row stands in the same columns
    half_pitch = max(math.sqrt(max(0.0, diameter**2 - apart**2)), diameter / 2)
    full = fitting(along - diameter, 2 * half_pitch)
    shifted = fitting(along - diameter - half_pitch, 2 * half_pitch)
    return max(straight, math.ceil(rows / 2) * full + rows // 2 * shifted)


def fitting(room: float, pitch: float) -> int:
    """How many middles stand in a row with such a room between the first and the last.

    Both ``room`` and ``pitch`` are in one unit of length.
    """
    return 1 + math.floor(room / pitch + SLACK) if room >= -SLACK * pitch else 0


def largest_ring(length_cm: float, width_cm: float, count: int) -> float:
    """The largest diameter in cm at which so many rings still fit; found by halving."""
    low, high = 0.0, min(length_cm, width_cm)
    if most_rings(length_cm, width_cm, high) >= count:
        return high
    for _ in range(40):
        middle = (low + high) / 2
        if most_rings(length_cm, width_cm, middle) >= count:
            low = middle
        else:
            high = middle
    return low
