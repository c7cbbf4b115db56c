"""In an answer that gives an amount, whom it can kill or harm is said before the amount."""

import pytest

from calculators.core.run import run

# calculator, inputs, words of the harm, words of the amount
CASES = [
    ("warmth", {"water_c": 25, "room_c": 17}, "A heater in water can kill you", " heaters of "),
    (
        "remineralise",
        {"start_gh_dh": 0, "start_kh_dh": 0, "target_kh_dh": 12},
        "some snails and shrimp",
        " g of ",
    ),
    ("chloride", {"nitrite_mg_n_l": 0.3, "chloride_mg_l": 0}, "shrimp", "g of plain salt"),
    ("conditioner", {"chlorine_mg_l": 3}, "can kill within hours", "Give "),
    ("medicine-volume", {}, "Look for copper on the label", "of its units"),
]


@pytest.mark.parametrize(("calculator", "given", "harm", "amount"), CASES)
def test_whom_it_harms_comes_before_the_amount(calculator, given, harm, amount):
    texts = [note["text"] for note in run(calculator, given)["notes"]]
    harmful = next(place for place, text in enumerate(texts) if harm in text)
    figures = [place for place, text in enumerate(texts) if amount in text]
    assert figures, texts
    assert harmful <= figures[0], texts


@pytest.mark.parametrize("chlorine_mg_l", [0.1, 1, 3, 6])
def test_water_that_kills_untreated_is_a_danger_and_not_a_remark(chlorine_mg_l):
    first = run("conditioner", {"chlorine_mg_l": chlorine_mg_l})["notes"][0]
    assert first["level"] == "danger"
    assert "can kill within hours" in first["text"]
