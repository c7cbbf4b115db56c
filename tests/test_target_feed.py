"""What is fed to hold a target of nitrate is judged as if it were fed, and so is the target itself."""

import random

import pytest

from calculators.core.run import run
from tests.effort import how_many


def target_feed(**given):
    """The feed for a target, the notes of the answer, and those where it is fed."""
    answer = run("nitrogen-balance", given)
    feed = answer["outputs"]["feed_for_target_g_week"]
    fed = run("nitrogen-balance", given | {"feed_g_week": feed or 0.0})
    return feed, answer["notes"], fed["notes"]


SMALL = {
    "volume_l": 30, "feed_g_week": 1, "plant_uptake_mg_n_day": 5, "floater_area_cm2": 0,
    "trimmings_g_week": 0, "change_percent": 50, "change_every_days": 7, "tap_nitrate_mg_l": 0,
    "nitrate_mg_l": 10,
}  # fmt: skip


def test_a_feed_that_the_water_cannot_carry_is_never_named_without_its_danger():
    feed, notes, fed = target_feed(**SMALL, target_nitrate_mg_l=40)
    [danger] = [note["text"] for note in notes if note["level"] == "danger"]
    assert danger.startswith(f"Never feed for that target: {feed:.2g} g a week")
    [fed_danger] = [note["text"] for note in fed if note["level"] == "danger"]
    assert fed_danger.startswith("Too much for this water.")


def test_in_any_tank_the_feed_for_a_target_is_judged_as_if_it_were_fed():
    draw, judged = random.Random(11), set()
    for _ in range(how_many(1_500)):
        given = {
            "volume_l": draw.uniform(15, 150), "feed_g_week": draw.uniform(0.3, 4),
            "floater_area_cm2": draw.uniform(0, 1_500), "trimmings_g_week": draw.uniform(0, 80),
            "change_percent": draw.uniform(5, 60), "change_every_days": draw.choice((3, 7, 14)),
            "tap_nitrate_mg_l": draw.uniform(0, 15), "nitrate_mg_l": draw.uniform(0, 40),
            "target_nitrate_mg_l": draw.uniform(5, 40),
        }  # fmt: skip
        feed, notes, fed = target_feed(**given)
        if feed is None or feed <= given["feed_g_week"]:
            continue
        said = " ".join(note["text"] for note in notes)
        when_fed = " ".join(note["text"] for note in fed)
        for verdict, words in (
            ("Too much for this water.", "Never feed for that target"),
            ("Heavy load.", "is a heavy load."),
        ):
            assert (verdict in when_fed) == (words in said), (given, feed)
            judged |= {verdict} if verdict in when_fed else set()
        assert "Never feed" in said or "Feed more only if" in said, given
    assert judged


@pytest.mark.parametrize(("target", "level"), [(43, None), (44, "caution"), (250, "danger")])
@pytest.mark.parametrize("calculator", ["nitrogen-balance", "nitrogen-forecast"])
def test_a_target_that_harms_is_told_to_be_none(calculator, target, level):
    """The lines of nitrate, 44 and 250 mg/L, are those of the table of readings (Camargo and others 2005)."""
    notes = run(calculator, {"target_nitrate_mg_l": target})["notes"]
    found = [note["level"] for note in notes if note["text"].startswith("No target")]
    assert found == ([level] if level else [])
