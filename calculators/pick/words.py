"""What the picker says beside its lists."""

from collections.abc import Sequence

from calculators.core import quantities as q
from calculators.core.numbers import show_number
from calculators.core.result import Note
from calculators.core.wording import CUTTINGS
from calculators.pick.judge import Judged
from calculators.pick.part import figure
from calculators.pick.picked_rows import minutes_sum
from calculators.pick.together import PlantSet
from calculators.pick.wishes import Wishes
from calculators.science.animals.animal_table import ANIMALS, shown_name
from calculators.science.animals.own_water import own_water
from calculators.science.animals.reading_words import reading_notes
from calculators.science.light.lamps import LightClass

FEW = 3  # a list as short as this is meant to be taken whole

ORDER = Note(
    "info",
    "The score is an order, not a measurement: the figures behind it are mostly what keepers report, and "
    "where one is not known it counts half. Each plant's page says how sure its figures are.",
)


IN_REACH = Note(
    "caution",
    "Leaves in the air are within reach of children and pets, and several of these plants are poisonous "
    "to chew or burn the mouth. Read each plant's page before you buy; if some was eaten, ring a doctor, a "
    "poisons line or a vet.",
)


def light_notes(wishes: Wishes, dli: float | None, light: LightClass | None) -> list[Note]:
    """Which light was taken, and what was worked out from it."""
    if wishes.dli_mol is None:
        text = "Nothing is said about the light on the soil, so plants are not judged by it."
        return [Note("caution", text)]
    notes = []
    if dli is not None and light is not None:
        text = (
            f"The daily light of {figure(q.DailyLight, dli)} is used; the class ({light}) is not."
        )
        notes.append(Note("info", text))
    elif light is not None:
        text = f"The class of light ({light}) is taken as {figure(q.DailyLight, wishes.dli_mol)} on the soil."
        notes.append(Note("info", text))
    if wishes.surface_worked_out and wishes.surface_mol is not None:
        text = (
            f"Floaters are judged by about {figure(q.DailyLight, wishes.surface_mol)} at the surface, worked "
            "out from the depth in slightly yellow water."
        )
        notes.append(Note("info", text))
    return notes


def animal_notes(wishes: Wishes) -> list[Note]:
    """Whether the water suits the animals: they come before plants."""
    value = wishes.temperature_c
    found = reading_notes(ph=wishes.ph)
    # where it is not deadly a kind's own range says more, and plants of cool water are no mistake
    found += [one for one in reading_notes(temperature_c=value) if one.level == "danger"]
    found += own_water(wishes.animals, ph=wishes.ph, gh_dh=wishes.gh_dh)
    if value is None:
        return found
    return found + [
        Note(
            "caution",
            f"{shown_name(key)} is kept at "
            f"{figure(q.Temperature, kind.temperature_low, kind.temperature_high)}; "
            f"{figure(q.Temperature, value)} is outside. Put that right first.",
        )
        for key in wishes.animals
        for kind in [ANIMALS[key]]
        if not kind.temperature_low <= value <= kind.temperature_high
    ]


def list_notes(
    fit: Sequence[Judged], chosen: Sequence[Judged], wishes: Wishes, others: int
) -> list[Note]:
    """Notes on wishes that no plant of the list meets, and on the minutes a week that its plants ask for.

    So many ``others``, a count, were not judged.
    """
    notes = []
    if not fit:
        text = "Nothing fits. Look at the reasons of what was left out, and change what you can."
        notes.append(Note("caution", text))
    missing = [habit for habit in wishes.habits if habit not in {each.plant.habit for each in fit}]
    if fit and missing:
        notes.append(Note("caution", f"Nothing fits of the kind: {', '.join(missing)}."))
    equal = sum(candidate.score == chosen[0].score for candidate in chosen)
    if equal > 1:
        text = f"The first {equal} suit equally well: the surer figures and the lesser work stand first."
        notes.append(Note("info", text))
    if others:
        text = f"{others} plants of another kind or look were not judged."
        notes.append(Note("info", text))
    takes = minutes_sum(chosen)
    if takes is not None and wishes.minutes_week is not None and len(chosen) <= FEW:
        over = takes > wishes.minutes_week
        text = (
            f"Trimming all of these takes about {show_number(takes, 2)} of your "
            f"{show_number(wishes.minutes_week)} minutes a week."
        )
        notes.append(Note("caution" if over else "info", text))
    return notes


def in_reach_notes(chosen: Sequence[Judged], best: PlantSet | None) -> list[Note]:
    """A caution where a plant of the lists has its leaves in the air, within reach of those who chew."""
    members = [candidate.judged for candidate in best.members] if best else []
    in_air = [one for one in (*chosen, *members) if one.plant.habit == "marginal"]
    return [IN_REACH] if in_air else []


def set_notes(best: PlantSet | None, most: float, wishes: Wishes) -> list[Note]:
    """Why there is no set, or how to take the one there is.

    The ``most`` that any set takes is in mg N a day.
    """
    demand = wishes.demand_mg_n_day
    if demand is None:
        text = "Give a nitrogen demand, as the nitrogen balance finds it, and a set is put together for it."
        return [Note("info", text)]
    if wishes.surface_cm2 is None:
        text = "No set: give the water volume or the surface, since plants need room."
        return [Note("caution", text)]
    if demand <= 0:
        return [Note("info", "No nitrogen has to be taken up, so no set is needed.")]
    if best is None:
        reached = (
            f"The best set that fits reaches about {show_number(most, 3)} of {show_number(demand)} mg N a "
            "day. Feed less, change more water, or allow more light, minutes or kinds of plants."
            if most
            else "No two plants that fit make a set with a fast taker in it and a slower one beside it."
        )
        return [Note("caution", f"No set meets the demand. {reached}")]
    text = (
        "The set takes nitrogen only while it grows: what you trim must leave the tank, and for some weeks "
        "after planting it takes less. Fast takers starve first when the tank runs lean."
    )
    return [Note("info", text)]


def closing() -> list[Note]:
    """What holds for every list."""
    return [ORDER, CUTTINGS]
