"""The mass of one closed layer: by what was measured of the plant, and said where nothing was."""

import math

from calculators.science.growth.floating_layers import layer_dry_g_m2
from calculators.science.nitrogen.plant_constants import FLOATING_LAYER_G_M2


def layers(library):
    """The records that have a closed layer, by key."""
    return {
        key: plant.growth.layer_dry_g_m2
        for key, plant in library.plants.items()
        if plant.growth and plant.growth.layer_dry_g_m2
    }


def test_no_plant_has_the_figure_of_another(library):
    """Two records with the same two ends would be one measure, said twice."""
    ends = [(one.low, one.high) for one in layers(library).values()]
    assert len(ends) >= 4
    assert len(set(ends)) == len(ends)


def test_what_was_not_measured_of_the_plant_itself_is_uncertain_and_says_so(library):
    found = layers(library)
    unmeasured = {key for key, one in found.items() if "No measure of this plant" in one.note}
    assert unmeasured == {"landoltia-punctata", "wolffia-arrhiza"}
    assert all(found[key].grade == "uncertain" for key in unmeasured)


def test_common_duckweed_is_what_its_fronds_weigh_over_their_area():
    """Twelve samples of pure stands, mm² a mg (Couture and others 2025), at 5 to 10 % dry matter."""
    area_mm2_mg = [
        7.200, 7.707, 8.398, 6.076, 6.628, 5.978, 6.241, 8.518, 6.962, 7.528, 7.521, 7.481,
    ]  # fmt: skip
    wet_g_m2 = [1_000 / one for one in area_mm2_mg]
    low, high = 0.05 * min(wet_g_m2), 0.10 * max(wet_g_m2)
    assert (round(low), round(high)) == (6, 17)
    assert low < layer_dry_g_m2("Lemna minor") < high
    assert math.isclose(layer_dry_g_m2("duckweed"), math.sqrt(6 * 17))


def test_a_floater_that_nobody_weighed_has_the_common_guess():
    assert layer_dry_g_m2("Red root floater") == FLOATING_LAYER_G_M2
