"""All drawings on one page, to be looked at.

``python -m scripts.drawings.contact_sheet OUT.html [SAMPLES.yml]``

Without samples the page shows the records that have traits.
"""

import sys
from collections.abc import Mapping
from pathlib import Path
from typing import Any

import yaml

from scripts.drawings.above import above
from scripts.drawings.closeup import closeup
from scripts.drawings.draw import drawing
from scripts.records.load import load
from scripts.records.plant import Plant
from scripts.setup.paths import ROOT

STYLE = ROOT / "docs" / "assets" / "style.css"


def samples(path: Path) -> dict[str, Plant]:
    """Plants with the traits of a file of test data; the rest of each is borrowed from a record.

    Raises ``BadRecords`` where the records do not hold.
    """
    record = next(iter(load().plants.values())).model_dump(exclude_none=True)
    rows: dict[str, dict[str, Any]] = yaml.safe_load(path.read_text(encoding="utf-8"))
    return {
        slug: Plant.model_validate({**record, "name": slug.capitalize(), **row})
        for slug, row in rows.items()
    }


def sheet(plants: Mapping[str, Plant]) -> str:
    """The page."""
    figures = "".join(
        f"<h2>{slug}</h2>{''.join(filter(None, pictures(slug, plant)))}"
        for slug, plant in plants.items()
    )
    return (
        '<!doctype html><html lang="en"><meta charset="utf-8"><title>Drawings</title>'
        '<meta name="viewport" content="width=device-width"><meta name="color-scheme" content="light dark">'
        f'<link rel="stylesheet" href="{STYLE.as_uri()}"><main>{figures}</main></html>'
    )


def pictures(slug: str, plant: Plant) -> list[str | None]:
    """The pictures of one plant."""
    return [drawing(slug, plant), above(slug, plant), closeup(slug, plant)]


def main(arguments: list[str]) -> None:
    """Write the page. Raises ``BadRecords`` where the records do not hold."""
    target, *files = map(Path, arguments)
    plants = samples(files[0]) if files else load().plants
    target.write_text(sheet(plants), encoding="utf-8")


if __name__ == "__main__":
    main(sys.argv[1:])
