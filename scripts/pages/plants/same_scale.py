"""Drawings in the tank, cut so that several side by side are to one scale."""

import re

from markupsafe import Markup

from scripts.drawings.glass_tank import SIDE
from scripts.drawings.size import TANK_HEIGHT_CM, frame

TALLEST = 1.3  # of what is shown above one another, in widths of the picture; the rest is cut off
VIEW = re.compile(r'viewBox="0 0 ([\d.]+) ([\d.]+)"')


def view_of(picture: str) -> str:
    """The view box of a drawing, cut to the tank and its rules, and not far above it."""
    view_box = VIEW.search(picture)
    assert view_box, "a drawing has a view box"
    width, height = map(float, view_box.groups())
    tank = frame(TANK_HEIGHT_CM)
    room = tank.width + 2 * tank.tank * SIDE
    shown = min(height, TALLEST * room)
    return f"{(width - room) / 2:.1f} {height - shown:.1f} {room:.1f} {shown:.1f}"


def with_view(picture: str) -> Markup:
    """The whole drawing, which carries the cut for the comparison's script."""
    return Markup(picture.replace("<svg ", f'<svg data-view="{view_of(picture)}" ', 1))


def cut(picture: str) -> Markup:
    """The drawing, cut."""
    return Markup(VIEW.sub(f'viewBox="{view_of(picture)}"', picture, count=1))
