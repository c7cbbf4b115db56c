"""A medicine's dose for the true volume: sums, copper by its lines, and the cautions in every case."""

import pytest

from calculators.core.result import BadInput
from calculators.core.run import compute, run


def asked(**given):
    found = compute("medicine-volume", given)
    return found.answer["outputs"], found.notes, " ".join(note.text for note in found.notes)


@pytest.mark.parametrize(
    ("copper", "level"),
    # Arthur and Leonard 1970: 4.6 micrograms a litre let young amphipods grow up, 20 killed half
    [(None, "caution"), (0, "caution"), (2, "caution"), (4.7, "danger"), (20, "danger"), (500, "danger")],
)  # fmt: skip
def test_copper_is_said_first_in_every_case(copper, level):
    out, notes, text = asked(copper_mg_per_unit=copper, label_amount=1, label_for_l=1000)
    assert out["copper_ug_l"] == (None if copper is None else pytest.approx(copper))
    assert notes[0].level == level
    assert "shrimp" in notes[0].text.lower()
    if copper:
        assert "Do not give it in a tank with shrimp or snails" in notes[0].text
        assert "soft water" in notes[0].text
    assert (level == "danger") == ("can kill shrimp" in text or "harms shrimp" in text)


@pytest.mark.parametrize("copper", [None, 0, 2, 50])
@pytest.mark.parametrize("displaced", [0, 24, 110])
@pytest.mark.parametrize("change", [0, 25, 100])
def test_the_vet_the_label_and_air_are_named_whatever_is_asked(copper, displaced, change):
    _, _, text = asked(
        copper_mg_per_unit=copper, displaced_l=displaced, change_percent=change, gross_l=120
    )
    for words in (
        "A vet who treats fish, and the label, come before", "Never mix medicines", "carbon",
        "Add air before the first drop", "only where the label says so", "drain outdoors",
    ):  # fmt: skip
        assert words in text
    assert ("Nothing is taken off for soil" in text) == (displaced == 0)


def test_dose_and_redose_follow_the_water_that_is_there():
    half_full, full = asked(gross_l=60)[0], asked(gross_l=120)[0]
    assert half_full["net_l"] == 36
    assert half_full["dose"] == pytest.approx(3.6)
    assert full["dose"] > 2 * half_full["dose"]
    assert half_full["overdose_percent"] == pytest.approx(100 * 24 / 36)
    assert asked(change_percent=0)[0]["redose_after_change"] == 0
    whole = asked(change_percent=100)[0]
    assert whole["redose_after_change"] == pytest.approx(whole["dose"])


def test_copper_does_not_hang_on_the_volume():
    given = {"copper_mg_per_unit": 3}
    assert asked(gross_l=60, **given)[0]["copper_ug_l"] == pytest.approx(
        asked(gross_l=600, **given)[0]["copper_ug_l"]
    )


@pytest.mark.parametrize("displaced", [120, 119.95, 500])
def test_a_tank_full_of_stones_is_refused_by_name(displaced):
    with pytest.raises(BadInput) as bad:
        run("medicine-volume", {"gross_l": 120, "displaced_l": displaced})
    assert bad.value.problems[0][0] == "displaced_l"
    assert "119.9" in bad.value.problems[0][1]


@pytest.mark.parametrize(
    ("amount", "litres", "odd"),
    # The two figures of usual labels (common practice, no source), as they stand and swapped.
    [(10, 100, False), (1, 2, False), (1, 1, False), (100, 10, True), (2, 1, True), (40, 5, True)],
)
@pytest.mark.parametrize("copper", [None, 0.5])
def test_a_label_that_hardly_can_be_is_questioned_before_any_dose(amount, litres, odd, copper):
    _, notes, text = asked(label_amount=amount, label_for_l=litres, copper_mg_per_unit=copper)
    assert ("its two figures stand in their places" in notes[0].text) == odd
    assert ("L of water take" in text) != odd
    assert ("give that only if the label, read again, says so" in text) == odd
    if odd:
        assert notes[0].level == "danger"
        assert "shrimp" in notes[1].text.lower()
