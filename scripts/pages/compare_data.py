"""The data of the comparison: one compact file, fetched on the comparison's page alone.

Its pieces are ready HTML; the page's script puts them into place and does no more.
"""

import json
import re
from typing import Any

from scripts.drawings.draw import TANK_HEIGHT_CM, drawing
from scripts.drawings.size import frame
from scripts.drawings.tank import SIDE
from scripts.pages.cite import Citations
from scripts.pages.side_by_side import Desk, all_rows
from scripts.pages.side_parts import mark, text
from scripts.pages.template import environment
from scripts.records.load import Library
from scripts.records.plant import Plant

TALLEST = 1.3  # of what is shown above one another, in widths of the picture; the rest is cut off
VIEW = re.compile(r'viewBox="0 0 ([\d.]+) ([\d.]+)"')


def compare_data(library: Library) -> str:
    """``{rows, plants, sources}`` as JSON; every text in it is escaped HTML but the names."""
    cite = Citations(library.sources)
    rows = all_rows()
    plants = {
        slug: one_plant(Desk(slug, plant, cite, library.vocabulary, library.rules), rows)
        for slug, plant in library.plants.items()
    }
    module: Any = environment().get_template("parts.j2").module
    sources = {
        reference.key: [reference.number, plain_source(str(module.source(reference.source)))]
        for reference in cite.references()
    }
    data = {
        "rows": [[row.group, row.key, row.label] for row in rows],
        "plants": plants,
        "sources": sources,
    }
    return json.dumps(data, ensure_ascii=False, separators=(",", ":"))


def one_plant(desk: Desk, rows: Any) -> dict[str, Any]:
    """Name, cells and words of one plant, its look-alikes, and how its record tells them apart."""
    cells = [row.cell(desk) for row in rows]
    apart: dict[str, str] = {}
    for one in desk.plant.look_alikes:
        if one.plant and one.plant != desk.slug:
            said = text(one.tell_apart) + " " + mark(one, desk)
            apart[one.plant] = f"{apart[one.plant]}<br>{said}" if one.plant in apart else said
    return {
        "name": desk.plant.name,
        "trade": desk.plant.trade_names[:1],
        "view": same_scale(desk.slug, desk.plant),
        "cells": [str(cell.html) for cell in cells],
        "words": [list(cell.words) if cell.words is not None else None for cell in cells],
        "apart": apart,
    }


def same_scale(slug: str, plant: Plant) -> str | None:
    """The part of a plant's drawing that is one tank wide, so that all are to one scale."""
    picture = drawing(slug, plant)
    return None if picture is None else view_of(picture)


def view_of(picture: str) -> str:
    """The view box of a drawing, cut to the tank and its rules, and not far above it."""
    found = VIEW.search(picture)
    assert found, "a drawing has a view box"
    width, height = map(float, found.groups())
    tank = frame(TANK_HEIGHT_CM)
    room = tank.width + 2 * tank.tank * SIDE
    shown = min(height, TALLEST * room)
    return f"{(width - room) / 2:.1f} {height - shown:.1f} {room:.1f} {shown:.1f}"


def plain_source(line: str) -> str:
    """A source as the templates write it, its Markdown emphasis as HTML."""
    return re.sub(r"(?<![\w*])\*([^*]+)\*(?!\w)", r"<em>\1</em>", line)


__all__ = ["compare_data", "same_scale", "view_of"]
