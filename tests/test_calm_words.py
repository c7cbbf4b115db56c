"""No word that calms stands beside what endangers: animals that fight or eat each other, salts that pile up,
leaves that poison.
"""

import pytest

from calculators.core.run import run
from calculators.science.animals.animal_table import ANIMALS
from calculators.science.animals.reading_lines import edge_of
from tests.own_records import own_records

CALMS = "No line of ours is reached"
MG_L_CALCIUM_PER_DH = 7.15  # DIN: 1 °dH is 10 mg/L of calcium oxide, 40.08 / 56.08 of it calcium


def stocked(volume_l, **counts):
    animals = [
        {"kind": kind.replace("_", "-"), "count": count, "mean_length_mm": 20}
        for kind, count in counts.items()
    ]
    return [
        note["text"]
        for note in run("stocking", {"animals": animals, "volume_l": volume_l})["notes"]
    ]


def test_one_kind_in_a_large_tank_is_still_answered_calmly():
    assert any(CALMS in text for text in stocked(200, neocaridina_davidi=10))


@pytest.mark.parametrize(
    ("counts", "first"),
    [
        ({"carinotetraodon_travancoricus": 6, "neocaridina_davidi": 20}, "its company"),
        ({"betta_splendens": 2}, "one to a tank, as more fight"),
    ],
)
def test_animals_that_hurt_each_other_come_first_and_nothing_calms(counts, first):
    texts = stocked(400, **counts)
    own = [text for text in texts if not text.startswith(("Assumed:", "From the worked example"))]
    assert first in own[0], own
    assert not any(CALMS in text for text in texts)


def test_whatever_is_said_of_company_is_said_once():
    kinds = [key for key, kind in ANIMALS.items() if kind.company][:6]
    texts = stocked(400, **{kind.replace("-", "_"): 6 for kind in kinds})
    assert len(texts) == len(set(texts))


def dosing(**given):
    return [note["text"] for note in run("dosing", {"volume_l": 100, **given})["notes"]]


GYPSUM = {"source": "caso4_2h2o", "nutrient": "calcium", "change_percent": 0, "schedule": "daily"}


def test_hardness_that_piles_up_is_judged_by_the_line_of_hardness():
    """After eight weeks of 7 mg/L a day on 40 mg/L: 57 doses, the first of them at once."""
    texts = dosing(**GYPSUM, rise_mg_l=7, now_mg_l=40)
    [said] = [text for text in texts if "comes to a hardness of" in text]
    dh = float(said.split("hardness of ")[1].split(" ")[0])
    assert dh == pytest.approx((40 + 57 * 7) / MG_L_CALCIUM_PER_DH, rel=0.03)


@pytest.mark.parametrize(("share", "said"), [(0.97, False), (1.03, True)])
def test_the_line_is_the_one_that_readings_are_judged_by(share, said):
    level = edge_of("gh_dh", "harmful_high") * MG_L_CALCIUM_PER_DH * share
    texts = dosing(**(GYPSUM | {"schedule": "once"}), rise_mg_l=5, now_mg_l=level - 5)
    assert any("comes to a hardness of" in text for text in texts) == said


@pytest.mark.parametrize("tap", [0, 40])
def test_no_settled_level_is_called_the_highest_whatever_the_new_water_holds(tap):
    texts = dosing(schedule="weekly", change_percent=30, change_every_days=7, tap_mg_l=tap)
    assert any("the highest with this new water" in text for text in texts)
    assert not any("the highest it can be" in text for text in texts)
    assert any("test it, since what it holds comes on top" in text for text in texts) == (tap == 0)


@pytest.mark.parametrize(("habits", "said"), [(["marginal"], True), (["floater"], False)])
def test_plants_in_reach_of_those_who_chew_are_not_offered_without_a_word(habits, said):
    found = run("pick", {"habits": habits})
    ranked = {row["plant"] for row in found["outputs"]["ranked"]}
    warned = [note for note in found["notes"] if "poisonous to chew" in note["text"]]
    assert bool(warned) == said
    assert all(note["level"] == "caution" for note in warned)
    marginal = [
        slug
        for slug, plant in own_records().plants.items()
        if plant.habit == "marginal" and "oisonous" in plant.model_dump_json()
    ]
    assert bool(ranked & set(marginal)) == said
