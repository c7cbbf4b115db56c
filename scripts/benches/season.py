"""A season for the bench and the tests: ten invented tanks, 26 weeks, 2,000 entries, always the same."""

import random
from datetime import UTC, datetime, timedelta
from typing import Any

from calculators.shelf.shelf_file import FORMAT, VERSION

END = datetime(2026, 11, 28, 18, 0, tzinfo=UTC)
TODAY = "2026-11-28"
# Puts a file on the shelf of a page that is open.
PUT = """async (file) => {
  const { openShelf } = await import(new URL('assets/shelf/store.js', location.origin + '/'));
  const shelf = await openShelf();
  await shelf.merge(file);
}"""
WEEKS, TANKS, ENTRIES = 26, 10, 2_000
PLANTS = ("hygrophila-polysperma", "rotala-rotundifolia", "salvinia-auriculata", "anubias-barteri")
ANIMALS = ("paracheirodon-innesi", "neocaridina-davidi")
KINDS = (
    ("reading", "nitrate_mg_l", 5, 40), ("reading", "ph", 6.8, 7.6), ("reading", "kh_dh", 3, 6),
    ("reading", "ammonia_mg_n_l", 0, 0), ("reading", "cover_percent", 20, 80),
    ("reading", "temperature_c", 22, 26), ("change", None, 15, 40), ("trim", PLANTS[0], 20, 80),
    ("trim", PLANTS[1], 20, 60), ("thin", PLANTS[2], 10, 40), ("feed", None, 0.2, 1),
    ("top-up", None, 1, 4),
)  # fmt: skip


def season_file() -> dict[str, Any]:
    """The season as a file of the shelf."""
    tanks, entries = season()
    head = {"format": FORMAT, "version": VERSION, "saved": f"{TODAY}T18:00:00Z"}
    return {**head, "tanks": tanks, "entries": entries}


def season() -> tuple[list[dict[str, Any]], list[dict[str, Any]]]:
    """``(tanks, entries)`` as JSON has them."""
    dice = random.Random(26)
    tanks = [tank(number) for number in range(TANKS)]
    entries: list[dict[str, Any]] = []
    for number in range(ENTRIES):
        kind, what, low, high = dice.choice(KINDS)
        at = END - timedelta(minutes=dice.randint(0, WEEKS * 7 * 24 * 60))
        entries.append(
            {
                "id": f"entry-{number}",
                "tank": f"tank-{number % TANKS}",
                "at": at.strftime("%Y-%m-%dT%H:%M:%SZ"),
                "kind": kind,
                "what": what,
                "value": round(dice.uniform(low, high), 1),
            }
        )
    return tanks, sorted(entries, key=lambda entry: str(entry["at"]))


def tank(number: int) -> dict[str, Any]:
    """One invented tank."""
    return {
        "id": f"tank-{number}",
        "name": f"Tank {number}",
        "demo": True,
        "net_l": 60 + 20 * number,
        "soil_area_cm2": 1_800 + 300 * number,
        "flooded_on": "2025-01-04",
        "temperature_c": 24,
        "ph": 7.2,
        "tap": {"nitrate_mg_l": 5, "kh_dh": 4},
        "feed_g_week": 2 + number / 2,
        "protein_percent": 45,
        "change": {"percent": 25, "every_days": 7},
        "plants": [{"plant": plant, "wet_g": 60 + 10 * number} for plant in PLANTS],
        "animals": [{"animal": animal, "count": 10 + number} for animal in ANIMALS],
    }
