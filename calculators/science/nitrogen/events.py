"""What the keeper does to the tank, each on its own day."""

from collections.abc import Sequence
from typing import NamedTuple

from calculators.science.conversions import DAYS_PER_WEEK
from calculators.science.nitrogen.budget import Ledger
from calculators.science.nitrogen.constants import LEACHED_SHARE, NITRATE_PER_N
from calculators.science.nitrogen.filter_food import with_plenty
from calculators.science.nitrogen.forecast_tank import Event, Rates, Tank
from calculators.science.nitrogen.model import (
    ALKALINITY,
    AMMONIUM,
    BURIED,
    FIRST_COHORT,
    LITTER,
    NITRATE,
    NITRITE,
    SOLIDS,
    Model,
)
from calculators.science.nitrogen.plant_constants import TRIM_AT_MOST
from calculators.science.nitrogen.solver_parts import State
from calculators.science.nitrogen.start import fate_of

IN_ORDER = (
    "lamp on",
    "change",
    "dose",
    "thin",
    "weekly trim",
    "trim",
    "feed",
    "die-off",
    "dark",
)  # on the same day
SAME_MOMENT_DAYS = 1e-9  # two times this near are one


class TimedEvent(NamedTuple):
    """An event, or one of the repeated works; values as in ``Event``."""

    day: float
    kind: str
    value: float


class Scene(NamedTuple):
    """The tank at one moment: its constants and its states."""

    model: Model
    state: State


def schedule(tank: Tank, events: Sequence[Event], days: float) -> list[TimedEvent]:
    """All that happens before the last day: repeated changes, weekly trims, single events."""
    last = days - SAME_MOMENT_DAYS
    planned = [TimedEvent(*event) for event in events if event.day < last and event.kind != "dark"]
    for start, end in dark_spells(events):
        planned.append(TimedEvent(start, "dark", end - start))
        planned.append(TimedEvent(end, "lamp on", 0.0))
    planned = [event for event in planned if event.day < last]
    if tank.change_percent > 0:
        for day in repeated(tank.change_every_days, days):
            planned.append(TimedEvent(day, "change", tank.change_percent))
    if tank.thin_to_percent is not None:
        for day in repeated(DAYS_PER_WEEK, days):
            planned.append(TimedEvent(day, "thin", tank.thin_to_percent))
    if tank.trimmings_g_week > 0:
        for day in repeated(DAYS_PER_WEEK, days):
            planned.append(TimedEvent(day, "weekly trim", tank.trimmings_g_week))
    return sorted(planned, key=lambda event: (event.day, IN_ORDER.index(event.kind)))


def dark_spells(events: Sequence[Event]) -> list[tuple[float, float]]:
    """Times without light, those that overlap joined: a pair each of the first day and the day of the end."""
    spells: list[tuple[float, float]] = []
    for event in sorted(one for one in events if one.kind == "dark" and one.value > 0):
        end = event.day + event.value
        if spells and event.day <= spells[-1][1]:
            spells[-1] = (spells[-1][0], max(end, spells[-1][1]))
        else:
            spells.append((event.day, end))
    return spells


def repeated(every: float, days: float) -> list[float]:
    """The days of something done again and again, from ``every`` on, before the last day."""
    return [every * number for number in range(1, int((days - SAME_MOMENT_DAYS) / every) + 1)]


def apply(event: TimedEvent, scene: Scene, tank: Tank, rates: Rates, ledger: Ledger) -> Scene:
    """The tank after an event; the ledger takes note of what came in and went out."""
    model, state = scene.model, list(scene.state)
    if event.kind == "change":
        change_water(state, event.value / 100, tank, ledger)
    elif event.kind == "dose":
        dosed = event.value / NITRATE_PER_N * tank.volume_l
        state[NITRATE] += dosed
        ledger.came_in += dosed
    elif event.kind == "thin":
        model = thin(model, state, event.value / 100, ledger)
    elif event.kind == "weekly trim":
        # a keeper cuts what has grown: a fixed weight off a hungry stand would end it
        grown = max(
            0.0,
            wet_mass(model, masses_of(model, state)) - sum(plant.wet_g for plant in tank.plants),
        )
        model = trim(model, state, min(event.value, grown), ledger)
    elif event.kind == "trim":
        model = trim(model, state, event.value, ledger)
    elif event.kind in ("dark", "lamp on"):
        model = with_plenty(model, rates)._replace(lamp=event.kind == "lamp on")
    elif event.kind == "die-off":
        model = die_off(with_plenty(model, rates), state, event.value / 100)
    else:
        model = with_plenty(model, rates)._replace(fate=fate_of(tank, rates, event.value))
    return Scene(model, state)


def change_water(state: State, share: float, tank: Tank, ledger: Ledger) -> None:
    """Replace a share of the water with the tap's; mulm, soil and plants stay.

    The tap's carbonate hardness is the mark from which drift is counted.
    """
    for place in (AMMONIUM, NITRITE, NITRATE):
        ledger.went_out += share * state[place]
        state[place] *= 1 - share
    poured = share * tank.volume_l * tank.tap_nitrate_mg_l / NITRATE_PER_N
    state[NITRATE] += poured
    ledger.came_in += poured
    state[ALKALINITY] *= 1 - share


def trim(model: Model, state: State, wet_g: float, ledger: Ledger) -> Model:
    """Take out cuttings, from each plant its share of the mass that stands, and their nitrogen."""
    standing = wet_mass(model, masses_of(model, state))
    if standing <= 0:
        return model
    share = min(TRIM_AT_MOST, wet_g / standing)
    return cut(model, state, [share] * len(model.cohorts), ledger)


def thin(model: Model, state: State, cover: float, ledger: Ledger) -> Model:
    """Take out floaters down to a share of the surface. That share is ``cover``, 0 to 1."""
    covered = floating_layers(model, masses_of(model, state))
    if covered <= cover:
        return model
    share = min(TRIM_AT_MOST, 1 - cover / covered)
    shares = [share if cohort.floating else 0.0 for cohort in model.cohorts]
    return cut(model, state, shares, ledger)


def cut(model: Model, state: State, shares: Sequence[float], ledger: Ledger) -> Model:
    """Take a share of each cohort out of the tank, with its nitrogen."""
    for number, share in enumerate(shares):
        place = FIRST_COHORT + 2 * number + 1
        ledger.went_out += share * state[place]
        state[place] *= 1 - share
    left = (cohort.cut(share) for cohort, share in zip(model.cohorts, shares, strict=True))
    return model._replace(cohorts=tuple(left))


def die_off(model: Model, state: State, share: float) -> Model:
    """Let a share of each cohort die where it stands: its nitrogen joins the dead leaves.

    Where all die nothing is left to grow again, and the cohorts go.
    """
    dead = 0.0
    for number in range(len(model.cohorts)):
        place = FIRST_COHORT + 2 * number + 1
        dead += share * state[place]
        state[place] *= 1 - share
    back = (1 - model.refractory) * dead
    state[SOLIDS] += LEACHED_SHARE * back
    state[LITTER] += (1 - LEACHED_SHARE) * back
    state[BURIED] += model.refractory * dead
    if share >= 1:
        del state[FIRST_COHORT : FIRST_COHORT + 2 * len(model.cohorts)]
        return model._replace(cohorts=())
    return model._replace(cohorts=tuple(cohort.cut(share) for cohort in model.cohorts))


def masses_of(model: Model, state: State) -> list[float]:
    """Dry mass of each cohort, g."""
    return [
        cohort.mass(state[FIRST_COHORT + 2 * number]) for number, cohort in enumerate(model.cohorts)
    ]


def held_of(model: Model, state: State) -> Sequence[float]:
    """Nitrogen in each cohort, mg."""
    return state[FIRST_COHORT + 1 : FIRST_COHORT + 2 * len(model.cohorts) : 2]


def floating_layers(model: Model, masses: Sequence[float]) -> float:
    """How many closed layers the floaters make together, from the dry masses of the cohorts in g."""
    layers = sum(
        mass / cohort.layer
        for mass, cohort in zip(masses, model.cohorts, strict=True)
        if cohort.floating
    )
    return layers / model.surface_m2


def wet_mass(model: Model, masses: Sequence[float]) -> float:
    """Wet mass of all plants, g, from the dry masses of the cohorts in g."""
    pairs = zip(masses, model.cohorts, strict=True)
    return sum(mass / cohort.dry_share for mass, cohort in pairs)
