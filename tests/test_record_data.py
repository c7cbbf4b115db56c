"""Data of the records, read again as plain YAML: references, ranges, and the trade's own figures."""

import statistics

import pytest

from scripts.records.claim import COMMON_PRACTICE, Claim
from scripts.records.written import source_keys
from scripts.setup.paths import ROOT
from tests.plain_yaml import read_yaml

SPECIES = ROOT / "species"
FILES = [*sorted(SPECIES.glob("*/*.yml")), SPECIES / "findings.yml", SPECIES / "places.yml"]

# What can be at all, by key: wide limits of water, plants and keepers; judgement, not from a source.
BOUNDS = {
    "dli_mol": (0.0, 30.0),
    "temperature_c": (0.0, 40.0),
    "ph": (4.0, 10.0),
    "gh_dh": (0.0, 40.0),
    "height_cm": (0.1, 200.0),
    "spread_cm": (0.05, 200.0),
    "doubling_days": (
        1.0,
        730.0,
    ),  # fastest duckweed 1.34 days (Ziegler et al. 2015); anubias two years
    "trim_every_days": (2.0, 400.0),
    "trim_minutes": (0.5, 120.0),
    "tissue_n_percent": (0.2, 8.0),  # critical 1.3, duckweeds to 6 or so
    "dry_matter_percent": (2.0, 40.0),
    "leaf_length_mm": (0.1, 2000.0),
    "leaf_width_mm": (0.05, 600.0),
}


def walk(value, key=""):
    """Every mapping below a value with the key that it stands under."""
    if isinstance(value, dict):
        yield key, value
        for name, part in value.items():
            yield from walk(part, name)
    elif isinstance(value, list):
        for part in value:
            yield from walk(part, key)


@pytest.fixture(scope="module")
def raw():
    """Every record as plain data, by path below species/."""
    return {path.relative_to(SPECIES).as_posix(): read_yaml(path) for path in FILES}


def test_every_reference_resolves(raw):
    sources = read_yaml(SPECIES / "sources.yml")
    count = 0
    for path, record in raw.items():
        for under, part in walk(record):
            # A calculator's inputs may have a key of that name, for a salt.
            keys = [] if under == "inputs" else part.get("source", [])
            for key in [keys] if isinstance(keys, str) else keys:
                assert key == COMMON_PRACTICE or key in sources, f"{path}: {key}"
                count += 1
            for name, folder in (("problem", "problems"), ("plant", "plants")):
                if isinstance(slug := part.get(name), str):
                    assert (SPECIES / folder / f"{slug}.yml").exists(), f"{path}: {slug}"
    assert count > 5_000


def test_every_range_is_ordered_and_in_bounds(raw):
    seen = dict.fromkeys(BOUNDS, 0)
    for path, record in raw.items():
        for key, part in walk(record):
            if not {"low", "high"} <= part.keys():
                continue
            assert part["low"] <= part["high"], f"{path}: {key}"
            if path.startswith("plants/") and key in BOUNDS:
                least, most = BOUNDS[key]
                assert least <= part["low"], f"{path}: {key} {part}"
                assert part["high"] <= most, f"{path}: {key} {part}"
                seen[key] += 1
    few = {key: count for key, count in seen.items() if count < 5}
    assert set(few) <= {"tissue_n_percent"}, few


def test_what_is_called_well_documented_was_read(raw):
    """One source of it at least must be one whose passage was read: no abstract, no other's word."""
    seen = {key: one["seen"] for key, one in read_yaml(SPECIES / "sources.yml").items()}
    unread = []
    for path, record in raw.items():
        for _, part in walk(record):
            keys = source_keys(part) if part.get("sure") == "well-documented" else []
            if keys and "document" not in {seen.get(key) for key in keys}:
                unread.append(f"{path}: {keys}")
    assert not unread, "call it reported: " + "; ".join(unread)


def test_what_rests_on_common_practice_alone_has_a_grade_of_its_own():
    def grade(source, sure):
        return Claim.model_validate({"source": source, "sure": sure}).grade

    assert grade(COMMON_PRACTICE, "reported") == "keepers-say"
    assert grade([COMMON_PRACTICE], "reported") == "keepers-say"
    assert grade(COMMON_PRACTICE, "uncertain") == "uncertain"
    assert grade([COMMON_PRACTICE, "fao-x6862e"], "reported") == "reported"
    assert grade("fao-x6862e", "well-documented") == "well-documented"


class TestTrimmingIntervals:
    """Common practice, no source: which plants are trimmed more often than which."""

    def middle(self, library, role=None, habit=None):
        """Median of the shorter interval, days."""
        return statistics.median(
            plant.growth.trim_every_days.low
            for plant in library.offered().values()
            if plant.growth.trim_every_days
            and role in (None, plant.nitrogen.role.value)
            and habit in (None, plant.habit)
        )

    def test_fast_takers_more_often_than_steady_and_steady_than_slow(self, library):
        fast, steady, slow = (self.middle(library, role) for role in ("fast", "steady", "slow"))
        assert fast < steady < slow
        assert fast <= 14
        assert slow >= 30

    def test_floaters_weekly_or_so_and_epiphytes_every_few_months(self, library):
        assert 3 <= self.middle(library, habit="floater") <= 10
        assert self.middle(library, habit="epiphyte") >= 60

    def test_no_plant_is_trimmed_long_before_it_could_have_grown_back(self, library):
        """A trim takes about half: the interval is near the doubling time, and never under a quarter."""
        for slug, plant in library.plants.items():
            trim, doubling = plant.growth.trim_every_days, plant.growth.doubling_days
            if trim and doubling:
                assert trim.high >= doubling.low / 4, slug
