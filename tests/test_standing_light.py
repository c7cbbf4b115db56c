"""What floaters leave of a tank's light: between what a dense and a thin mat let through."""

import pytest

from calculators.core.run import run

TANK = {"id": "mine", "name": "Lobby", "dli_mol": 5}


def light_words(tank, *entries):
    given = {"tank": tank, "entries": list(entries), "today": "2026-11-29"}
    notes = [note["text"] for note in run("standing", given)["notes"]]
    return next((text for text in notes if text.startswith("Light at the surface")), None)


def cover(day, value):
    return {"id": day, "at": f"2026-{day}T09:00:00Z", "kind": "reading", "what": "cover_percent",
            "value": value}  # fmt: skip


def test_light_without_a_cover_is_the_tanks_own_and_none_is_made_up():
    assert light_words(TANK) == "Light at the surface: 5 mol/m² a day."
    assert light_words({**TANK, "dli_mol": None}, cover("11-25", 50)) is None


def test_a_cover_of_half_leaves_half_of_the_light_and_what_passes_the_mat():
    # By hand: 5 x (0.5 + 0.5 x 0.02) and 5 x (0.5 + 0.5 x 0.4)
    assert "Floaters cover 50 %, read 4 days ago: 2.55 to 3.5 of it" in light_words(
        TANK, cover("11-25", 50)
    )


def test_an_old_cover_does_not_count():
    assert "Floaters" not in light_words(TANK, cover("10-01", 50))


@pytest.mark.parametrize("value", [0, 100])
def test_none_and_all_of_it_covered(value):
    words = light_words(TANK, cover("11-25", value))
    assert ("5 to 5 of it" if value == 0 else "0.1 to 2 of it") in words
