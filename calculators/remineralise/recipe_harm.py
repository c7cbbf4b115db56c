"""Where what the salts add, or the hardness itself, harms animals."""

from calculators.core.numbers import show_number
from calculators.core.result import Link, Note
from calculators.remineralise.mineral_salts import SALTS
from calculators.remineralise.recipe import Recipe
from calculators.science.animals.reading_lines import edge_of, standing
from calculators.science.water import chemistry

# Sodium bicarbonate, Ceriodaphnia: a fifth fewer young at 359 mg/L (farag-harper-2014), half dead in
# two days at 989 mg/L (harper-2014).
BICARBONATE_HARMS_MG_L = 359.0
BICARBONATE_KILLS_MG_L = 989.0
MUCH_SODIUM_MG_L = (
    50.0  # common practice, no source: above it soft-water animals and plants do worse
)
OTHER_SALT = {
    "potassium": "Take sodium bicarbonate for part of it, or a lower KH.",
    "chloride": "Take gypsum and magnesium sulfate, or a lower GH.",
}


def harms(made: Recipe, gh_dh: float, kh_dh: float) -> list[Note]:
    """Notes on ions and hardness at which animals come to harm, those that kill first."""
    notes = [*ions(made), *bicarbonate(made), *much_sodium(made), *hardness(gh_dh, kh_dh)]
    return sorted(notes, key=lambda note: note.level != "danger")


def ions(made: Recipe) -> list[Note]:
    """Potassium and chloride, by the one table of readings that harm."""
    notes = []
    for ion, advice in OTHER_SALT.items():
        amount = next(mg_l for key, mg_l in made.adds.items() if key == ion)
        level = standing(f"{ion}_mg_l", amount).level
        if level == "in-range":
            continue
        line = edge_of(f"{ion}_mg_l", "deadly_high" if level == "deadly" else "harmful_high")
        verb = "can kill" if level == "deadly" else "harms over time"
        text = (
            f"{show_number(amount)} mg/L of {ion} {verb}: the line for water fleas and their like is "
            f"{show_number(line)}. Do not use this water. {advice}"
        )
        notes.append(Note("danger" if level == "deadly" else "caution", text, True))
    return notes


def bicarbonate(made: Recipe) -> list[Note]:
    """Sodium bicarbonate in amounts that harmed animals in tests."""
    salt_mg_l = made.adds["sodium"] / chemistry.NA * SALTS["nahco3"].g_mol
    if salt_mg_l < BICARBONATE_HARMS_MG_L:
        return []
    if salt_mg_l >= BICARBONATE_KILLS_MG_L:
        text = (
            f"{show_number(salt_mg_l)} mg/L of sodium bicarbonate can kill: half of the water fleas in a "
            f"test died in two days at {BICARBONATE_KILLS_MG_L:g}. Do not use this water: choose a lower KH."
        )
        return [Note("danger", text, True)]
    text = (
        f"{show_number(salt_mg_l)} mg/L of sodium bicarbonate is much: at {BICARBONATE_HARMS_MG_L:g} water "
        "fleas bred a fifth less, and all animals that were tried suffered at 500 to 1,000. Choose a "
        "lower KH."
    )
    return [Note("caution", text, True)]


def hardness(gh_dh: float, kh_dh: float) -> list[Note]:
    """A hardness that is itself too low or too high for many animals."""
    notes = []
    side = standing("gh_dh", gh_dh).side
    if side == "low":
        text = (
            f"GH of {show_number(gh_dh)} °dH leaves shrimp and snails short of calcium for shell and "
            "moult."
        )
        notes.append(Note("caution", text, True))
    if side == "high":
        text = (
            f"GH of {show_number(gh_dh)} °dH troubles soft-water fish (common practice, no source)."
        )
        notes.append(Note("caution", text, True))
    if standing("kh_dh", kh_dh).side == "low":
        text = (
            f"KH of {show_number(kh_dh)} °dH is next to no buffer: pH can fall within days. Some soft-water "
            "shrimp are kept so on purpose; for others add carbonate."
        )
        links = (Link("How long carbonate hardness lasts", "calculators/kh-budget/"),)
        notes.append(Note("caution", text, True, links))
    return notes


def much_sodium(made: Recipe) -> list[Note]:
    """Sodium beyond what soft-water animals and plants bear well."""
    sodium = made.adds["sodium"]
    if sodium < MUCH_SODIUM_MG_L:
        return []
    text = f"It brings {show_number(sodium)} mg/L of sodium. That is much: s{WHOM_SODIUM_HARMS}"
    return [Note("caution", text, True)]


WHOM_SODIUM_HARMS = (
    "oft-water fish, some snails and shrimp, and tender plants do worse as sodium rises, above about "
    f"{MUCH_SODIUM_MG_L:g} mg/L (common practice, no source)."
)


def beside_carbonate(made: Recipe) -> list[Note]:
    """What the carbonate salt brings beside carbonate, where that harms nobody."""
    sodium, potassium = made.adds["sodium"], made.adds["potassium"]
    if 0 < sodium < MUCH_SODIUM_MG_L:
        text = f"It brings {show_number(sodium)} mg/L of sodium. S{WHOM_SODIUM_HARMS}"
        return [Note("info", text)]
    if potassium > 0 and standing("potassium_mg_l", potassium).level == "in-range":
        begins = show_number(edge_of("potassium_mg_l", "harmful_high"))
        text = (
            f"It brings {show_number(potassium)} mg/L of potassium, which plants take up. Any that you "
            f"dose comes on top: harm to water fleas begins at {begins}."
        )
        return [Note("info", text)]
    return []
