"""Every page and calculator names one share of the water to change where nitrite kills."""

import re

import pytest

from calculators.core.run import run
from calculators.science.animals.reading_lines import edge_of
from scripts.setup import paths

READING = {"nitrite_mg_n_l": 3.0, "ammonia_mg_n_l": 0.0, "ph": 7.2, "temperature_c": 24.0}
SHARES = re.compile(r"\b(?:a|one) (?:tenth|quarter|third|half)\b|\bhalf the water\b|\bhalf now\b")


def diagnosis():
    return run("diagnose", {"readings": READING})["outputs"]["first_action"]


def standing():
    entries = [
        {"id": key, "tank": "a", "at": "2026-11-30T08:00", "kind": "reading", "what": key, "value": value}
        for key, value in READING.items()
    ]  # fmt: skip
    given = {"tank": {"id": "a", "name": "A"}, "entries": entries, "today": "2026-11-30"}
    return " ".join(note["text"] for note in run("standing", given)["notes"])


def notes(name, **given):
    return " ".join(note["text"] for note in run(name, given)["notes"] if note["level"] == "danger")


def problem():
    text = (paths.SPECIES / "problems" / "nitrite-emergency.yml").read_text(encoding="utf-8")
    return next(line for line in text.splitlines() if line.startswith("first_action:"))


SAYS = {
    "diagnose": diagnosis,
    "standing": standing,
    "water-change": lambda: notes("water-change", what="nitrite", now_mg_l=3),
    "chloride": lambda: notes("chloride", nitrite_mg_n_l=3, chloride_mg_l=5),
    "the problem's page": problem,
}


@pytest.mark.parametrize("where", SAYS)
def test_where_nitrite_kills_a_third_is_changed_at_a_time(where):
    assert set(SHARES.findall(SAYS[where]())) == {"a third"}


def test_what_a_tap_rich_in_nitrate_means_is_the_same_on_every_page_by_the_one_line():
    deadly = f"From {edge_of('nitrate_mg_l', 'deadly_high'):g} mg/L"
    pages = {
        "problem": (paths.SPECIES / "problems" / "nitrite-emergency.yml").read_text(
            encoding="utf-8"
        ),
        "danger": (paths.DOCS / "danger.md").read_text(encoding="utf-8"),
        "water-change": " ".join(
            note["text"]
            for note in run("water-change", {"what": "nitrite", "now_mg_l": 0.3})["notes"]
        ),
    }
    for where, text in pages.items():
        assert "rich in nitrate is no reason to wait" in text, where
        assert deadly in text, where
