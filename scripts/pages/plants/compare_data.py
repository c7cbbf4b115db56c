"""The data of the comparison: one compact file, fetched on the comparison's page alone.

Its pieces are ready HTML; the page's script puts them into place and does no more.
"""

import json
import re
from io import BytesIO
from typing import Any

from scripts.pages.cite import Citations
from scripts.pages.plants.all_plants_table import NEVER_PLANTED
from scripts.pages.plants.side_by_side import ComparedPlant
from scripts.pages.plants.side_parts import mark, text
from scripts.pages.plants.side_rows import ROWS
from scripts.pages.template import environment
from scripts.records.load import Library
from scripts.records.plant import Plant


def compare_data(library: Library) -> bytes:
    """``{rows, plants, sources}`` as JSON in UTF-8; every text in it is escaped HTML but the names."""
    cite = Citations(library.sources)
    rows = [[row.group, row.key, row.label] for row in ROWS]
    # As octets, one plant at a time: all of them as values would be the most memory of a build.
    made = BytesIO()
    made.write(f'{{"rows":{compact(rows)},"plants":{{'.encode())
    for place, (slug, plant) in enumerate(library.plants.items()):
        cells = plant_data(compared(slug, plant, cite, library), ROWS)
        made.write(f"{',' if place else ''}{compact(slug)}:{compact(cells)}".encode())
    module: Any = environment().get_template("parts.j2").module
    sources = {
        reference.key: [reference.number, plain_source(str(module.source(reference.source)))]
        for reference in cite.references()
    }
    made.write(f'}},"sources":{compact(sources)}}}'.encode())
    return made.getvalue()


def compared(slug: str, plant: Plant, cite: Citations, library: Library) -> ComparedPlant:
    """A plant with what its cells are made of."""
    return ComparedPlant(slug, plant, cite, library.vocabulary, library.rules)


def compact(value: Any) -> str:
    """A value as JSON without blanks."""
    return json.dumps(value, ensure_ascii=False, separators=(",", ":"))


def plant_data(plant_shown: ComparedPlant, rows: Any) -> dict[str, Any]:
    """Name, cells and words of one plant, its look-alikes, and how its record tells them apart."""
    cells = [row.cell(plant_shown) for row in rows]
    apart: dict[str, str] = {}
    for alike in plant_shown.plant.look_alikes:
        if alike.plant and alike.plant != plant_shown.slug:
            difference = text(alike.tell_apart) + " " + mark(alike, plant_shown)
            apart[alike.plant] = (
                f"{apart[alike.plant]}<br>{difference}" if alike.plant in apart else difference
            )
    return {
        "name": plant_shown.plant.name,
        "trade": plant_shown.plant.trade_names[:1],
        "never": "" if plant_shown.plant.offered else NEVER_PLANTED,
        "cells": [str(cell.html) for cell in cells],
        "words": [list(cell.words) if cell.words is not None else None for cell in cells],
        "apart": apart,
    }


def plain_source(line: str) -> str:
    """A source as the templates write it, its Markdown emphasis as HTML."""
    return re.sub(r"(?<![\w*])\*([^*]+)\*(?!\w)", r"<em>\1</em>", line)
