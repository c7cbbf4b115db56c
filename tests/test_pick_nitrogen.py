"""The set for a nitrogen demand: its figures against the other calculators, its room, its minutes."""

import math
import random

import pytest

from calculators.core.run import run
from calculators.pick.plant_table import GUESS, RecordRange, book
from calculators.pick.together import MOST_BED, MOST_COVER, STEPS, areas
from calculators.pick.uptake import BED_SHARE_BETWEEN_TRIMS, FULL_BED_G_M2, doubling, uptake
from calculators.science.conversions import CM2_PER_M2
from calculators.science.nitrogen.steady import floating_uptake
from tests.effort import how_many

PLANTS = book().plants
SURFACE = 1_700.0


def pick(**given):
    return run("pick", {"surface_cm2": SURFACE} | given)


def rows(answer):
    return answer["outputs"]["together"] or []


@pytest.mark.parametrize("demand", [0.5, 2, 4, 8])
@pytest.mark.parametrize("light", ["low", "medium"])
def test_the_set_meets_the_demand_within_minutes_and_room(demand, light):
    answer = pick(demand_mg_n_day=demand, light_class=light, minutes_week=20)
    found = rows(answer)
    assert sum(row["n_mg_day"] for row in found) >= demand
    assert sum(row["minutes_week"] for row in found) <= 20
    assert answer["outputs"]["together_n_mg_day"] == pytest.approx(
        sum(r["n_mg_day"] for r in found)
    )
    beds = sum(row["area_cm2"] for row in found if PLANTS[row["plant"]].habit != "floater")
    cover = sum(row["area_cm2"] for row in found if PLANTS[row["plant"]].habit == "floater")
    assert beds <= SURFACE * MOST_BED / STEPS + 1e-6
    assert cover <= SURFACE * MOST_COVER / STEPS + 1e-6
    roles = {PLANTS[row["plant"]].role for row in found}
    assert "fast" in roles
    assert roles != {"fast"}, "a slower plant keeps standing when the fast one is cut"
    out = {row["plant"] for row in answer["outputs"]["excluded"]}
    assert not out & {row["plant"] for row in found}
    for row in found:
        assert row["low_n_mg_day"] < row["n_mg_day"] < row["high_n_mg_day"]
        assert row["unit"] == ("cm²" if PLANTS[row["plant"]].habit == "floater" else "g")


def test_a_demand_out_of_reach_is_null_and_says_how_far_it_gets():
    answer = pick(demand_mg_n_day=1_000)
    assert answer["outputs"]["together"] is None
    assert answer["outputs"]["together_n_mg_day"] is None
    text = next(n["text"] for n in answer["notes"] if "No set meets the demand" in n["text"])
    reached = float(text.split("reaches about ")[1].split()[0])
    assert pick(demand_mg_n_day=reached * 0.98)["outputs"]["together"]
    assert pick(demand_mg_n_day=reached * 1.02)["outputs"]["together"] is None


def test_no_demand_no_room_and_nothing_to_take():
    assert pick(demand_mg_n_day=None)["outputs"]["together"] is None
    assert pick(demand_mg_n_day=0)["outputs"]["together"] == []
    answer = run("pick", {"volume_l": None})
    assert answer["outputs"]["together"] is None
    assert any("plants need room" in note["text"] for note in answer["notes"])


def test_more_demand_never_takes_less_room():
    filled = []
    for demand in (1, 2, 4, 8):
        found = rows(pick(demand_mg_n_day=demand, habits=["floater", "stem"], count=2))
        filled.append(sum(row["area_cm2"] for row in found))
    assert filled == sorted(filled)


def test_a_floater_with_usual_tissue_takes_what_the_nitrogen_balance_says():
    """The nitrogen balance's own formula, from other code: 60 g dry a m², 3 % N, ln 2 over the doubling."""
    plant = PLANTS["salvinia-minima"]._replace(tissue_n_percent=None, dry_matter_percent=None)
    days = doubling(plant.doubling_days, plant.dli_mol, 2.0)
    assert uptake(plant, 2.0).mg_day_cm2 * 1_000 == pytest.approx(floating_uptake(1_000, days))


def test_a_floater_takes_what_its_growth_holds_by_the_trimmings_calculator():
    """A day's growth of 1,000 cm² of one layer, weighed and put into the trimmings calculator.

    The layer is the record's, 6 to 17 g dry a square metre, at 6 % dry matter.
    """
    plant = PLANTS["lemna-minor"]
    layer_wet_g_m2 = math.sqrt(6 * 17) / 0.06
    days = doubling(plant.doubling_days, plant.dli_mol, 20.0)
    grown_g = layer_wet_g_m2 * 1_000 / CM2_PER_M2 * math.log(2) / days
    held = run("trimmings", {"wet_g": grown_g, "dry_matter_percent": 6.0, "tissue_n_percent": 3.0})
    assert uptake(plant, 20.0).mg_day_cm2 * 1_000 == pytest.approx(held["outputs"]["n_mg"])


def test_a_stem_takes_a_part_of_what_its_growth_holds():
    """The same for a trimmed bed of a plant that draws on water and soil: seven tenths from the water."""
    plant = PLANTS["rotala-rotundifolia"]
    found = uptake(plant, 1.0)
    days = doubling(plant.doubling_days, plant.dli_mol, 1.0)
    wet = found.wet_g_cm2 * 1_000
    assert wet * 0.08 == pytest.approx(FULL_BED_G_M2 * BED_SHARE_BETWEEN_TRIMS * 0.1)
    held = run(
        "trimmings",
        {"wet_g": wet * math.log(2) / days, "dry_matter_percent": 8, "tissue_n_percent": 2.5},
    )
    assert found.mg_day_cm2 * 1_000 == pytest.approx(0.7 * held["outputs"]["n_mg"])


# Nitrogen taken from rich water outdoors in Florida, mg a square metre and day: small floaters 90 to 460
# (yields times protein, Reddy and DeBusk 1985), Egeria 186 to 408 (Reddy, Tucker and DeBusk 1987).
OUTDOORS = {"lemna-minor": (90, 460), "spirodela-polyrhiza": (90, 460), "egeria-densa": (186, 408)}


@pytest.mark.parametrize(("key", "published"), OUTDOORS.items())
def test_in_strong_light_a_bed_takes_what_was_measured_outdoors(key, published):
    """The middle lies under the most that was ever measured, and the range meets the published one."""
    found = uptake(PLANTS[key], 20.0)
    middle = found.mg_day_cm2 * CM2_PER_M2
    assert middle < published[1]
    assert middle * found.spread > published[0]
    assert middle / found.spread < published[1]


def test_a_full_bed_holds_no_more_than_a_measured_standing_crop():
    """Full ponds in Florida held 161 g dry a m² of hydrilla and 200 of vallisneria (Haller 1974, thesis)."""
    assert 161.4 / 2 < FULL_BED_G_M2 < 161.4


def test_nitrogen_in_small_floaters_lies_in_the_published_span():
    """Reddy and DeBusk 1985: 3.2 to 5.3 % of dry mass; Gerloff and Krombholz 1966: 1.3 % is critical.

    Devlamynck and others 2021: 5.4 % in common duckweed that was fed well.
    """
    for key, most in (("lemna-minor", 5.4), ("spirodela-polyrhiza", 5.3)):
        tissue = PLANTS[key].tissue_n_percent
        assert 1.3 < tissue.low < 5.3
        assert 3.2 < tissue.high <= most


def test_the_shade_of_floaters_slows_the_beds_and_not_the_floaters():
    bed, mat = uptake(PLANTS["rotala-rotundifolia"], 1.0), uptake(PLANTS["lemna-minor"], 1.0)
    assert bed.under(0.0) == pytest.approx(bed.mg_day_cm2)
    assert bed.under(0.5) < bed.under(0.2) < bed.under(0.0)
    assert mat.under(0.5) == mat.mg_day_cm2


def test_less_light_grows_slower():
    span, needs = RecordRange(10, 40, GUESS), RecordRange(1, 4, GUESS)
    assert doubling(span, needs, 0.5) == pytest.approx(40)
    assert doubling(span, needs, 4.0) == pytest.approx(10)
    assert doubling(span, needs, 2.5) == pytest.approx(20)  # half-way: the geometric mean
    assert doubling(span, None, 2.5) == doubling(span, needs, None) == pytest.approx(20)


def test_a_floater_that_lives_on_the_air_takes_nothing():
    """Azolla's partner fixes nitrogen: its record calls it slow, and it is in no set."""
    assert uptake(PLANTS["azolla-filiculoides"], 4.0).mg_day_cm2 == 0
    answer = pick(light_class="high", habits=["floater"], demand_mg_n_day=3, dli_surface_mol=5)
    assert "azolla-filiculoides" not in {row["plant"] for row in rows(answer)}


def test_every_way_to_share_the_room_is_tried_once():
    for floats in ((False,), (True,), (True, False), (False, False, False), (False, True, False)):
        ways = list(areas(floats))
        assert len(ways) == len(set(ways))
        beds = sum(not one for one in floats)
        rooted = math.comb(MOST_BED, beds)  # positive whole numbers with a sum of at most seven
        assert len(ways) == rooted * MOST_COVER ** sum(floats)


def test_the_best_set_is_the_best_of_all_by_brute_force():
    """A second search, written apart: every pair and triple, every area, the same worth."""
    from itertools import combinations, product

    from calculators.pick.choose import fitting
    from calculators.pick.judge import judge_all
    from calculators.pick.together import best_set, members, planted
    from calculators.pick.wishes import Wishes

    want = Wishes(1.0, 1.5, False, 30, 24, 7, 8, 12, demand_mg_n_day=5.0, surface_cm2=SURFACE)
    fit = fitting(judge_all(want, book()))
    choice, best, most = members(fit, want), -math.inf, 0.0
    for size in (2, 3):
        for group in combinations(choice, size):
            floaters = sum(one.uptake.floats for one in group)
            fast = sum(one.judged.plant.role == "fast" for one in group)
            if floaters > 1 or fast in (0, size) or sum(one.minutes for one in group) > 12:
                continue
            for steps in product(range(1, MOST_BED + 1), repeat=size):
                pairs = list(zip(group, steps, strict=True))
                if sum(step for one, step in pairs if one.uptake.floats) > MOST_COVER:
                    continue
                if sum(step for one, step in pairs if not one.uptake.floats) > MOST_BED:
                    continue
                found = planted(group, steps, SURFACE)
                most = max(most, found.total)
                if found.total >= 5.0:
                    best = max(best, found.worth)
    found, reach = best_set(fit, want, SURFACE)
    assert found.worth == pytest.approx(best)
    assert reach == pytest.approx(most)


def test_random_tanks_give_sound_answers():
    dice = random.Random(2026)
    keys = {
        "animals": list(book().appetites),
        "habits": ["stem", "rosette", "epiphyte", "carpet", "floater", "moss"],
    }
    sets = 0
    for _ in range(how_many(2_000)):
        given = {
            "dli_mol": dice.choice([None, dice.uniform(0, 10)]),
            "light_class": dice.choice([None, "low", "medium", "high"]),
            "height_cm": dice.choice([None, dice.uniform(5, 80)]),
            "temperature_c": dice.choice([None, dice.uniform(10, 32)]),
            "ph": dice.choice([None, dice.uniform(5, 9)]),
            "gh_dh": dice.choice([None, dice.uniform(0, 30)]),
            "minutes_week": dice.choice([None, 0, dice.uniform(0, 60)]),
            "place": dice.choice(["us", "eu", "gb", "au", "nz", "other"]),
            "animals": dice.sample(keys["animals"], dice.randint(0, 5)),
            "habits": dice.sample(keys["habits"], dice.randint(0, 6)),
            "demand_mg_n_day": dice.choice([None] * 8 + [0, 10 ** dice.uniform(-2, 3)]),
            "count": dice.randint(1, 40),
        }  # fmt: skip
        outputs = run("pick", given)["outputs"]
        chosen = [row["plant"] for row in outputs["ranked"]]
        gone = {row["plant"] for row in outputs["excluded"]}
        assert len(chosen) == len(set(chosen)) == min(given["count"], outputs["fitting_count"])
        assert not gone & set(chosen)
        assert all(row["because"] for row in (*outputs["ranked"], *outputs["excluded"]))
        if outputs["together"]:
            sets += 1
            assert sum(row["n_mg_day"] for row in outputs["together"]) >= given[
                "demand_mg_n_day"
            ] * (1 - 1e-6)
            assert not gone & {row["plant"] for row in outputs["together"]}
    assert sets > how_many(2_000) / 50
