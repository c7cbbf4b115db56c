"""Each reading that harms, in a sentence: how much, when, and what it does."""

from collections.abc import Sequence

from calculators.core.numbers import show_number as show
from calculators.core.result import Level, Note
from calculators.core.wording import joined
from calculators.nitrogen_forecast.run_harm import HarmfulReading
from calculators.science.animals.reading_lines import LINES
from calculators.science.nitrogen.forecast_tank import Tank
from calculators.science.water.ammonia import acute_limit_mg_n_l, unionised_share

NAMES = {
    "ammonia": "ammonia",
    "nitrite": "nitrite",
    "nitrate_mg_l": "nitrate",
    "temperature_c": "the temperature",
    "ph": "the pH",
}
SOON_DAYS = 0.95  # up to here a peak comes "within a day"
CHLORIDE = (
    "How much nitrite harms depends on chloride in the water, which competes with it at the gills, "
    "and on the animal: some fish are not protected at all."
)


def headline(harms: Sequence[HarmfulReading]) -> Note:
    """The verdict for the animals, what is read now before what is forecast."""
    now = [harm for harm in harms if harm.is_now]
    shown = now or list(harms)
    kinds = list(dict.fromkeys(NAMES[harm.reading] for harm in shown))
    what = joined(kinds)
    does = "harm" if len(kinds) > 1 else "harms"
    if any(harm.band == "deadly" for harm in shown):
        does = "can kill"
    if now:
        return Note("danger", f"Animals first: {what} that you read now {does} them.")
    return Note("danger", f"Animals first: this tank is heading for {what} that {does} them.")


def detail(harm: HarmfulReading, tank: Tank) -> Note:
    """One harm with its figure and its day."""
    level: Level = "danger" if harm.is_danger else "caution"
    if harm.reading == "ammonia":
        return Note(level, ammonia(harm, tank))
    if harm.reading == "nitrite":
        return Note(level, f"Nitrite {when(harm)} {show(harm.value, 2)} mg N/L. {CHLORIDE}")
    if harm.reading == "nitrate_mg_l":
        return Note(level, nitrate(harm))
    return Note(level, fixed(harm))


def at_the_edge(harm: HarmfulReading, tank: Tank) -> Note:
    """One harm of the unsure edge: no verdict, but no peace either."""
    text = (
        "It may turn out worse than the middle of this forecast. At the edge of what is not known: "
        f"{detail(harm, tank).text} Test before that day comes."
    )
    return Note("caution", text, first=True)


def when(harm: HarmfulReading) -> str:
    """Whether a figure is read now or is a peak ahead."""
    return "is now at" if harm.is_now else f"peaks {on_day(harm)} at"


def on_day(harm: HarmfulReading) -> str:
    """The day of a peak ahead; one that comes within hours is not called day 0."""
    return "within a day" if harm.day < SOON_DAYS else f"about day {harm.day:.0f}"


def ammonia(harm: HarmfulReading, tank: Tank) -> str:
    """Total ammonia, its toxic part, and what that does."""
    toxic = harm.value * unionised_share(tank.ph, tank.temperature_c)
    text = f"Ammonia {when(harm)} {show(harm.value, 2)} mg N/L, {show(toxic, 2)} of it toxic."
    if harm.value > acute_limit_mg_n_l(tank.ph, tank.temperature_c):
        return f"{text} Above the acute limit animals can die within hours."
    if harm.band == "deadly":
        return f"{text} So much can kill animals that stay in it."
    if harm.band == "harmful":
        return f"{text} That harms animals that stay in it."
    return f"{text} Test daily around then."


def nitrate(harm: HarmfulReading) -> str:
    """Nitrate, and what it does over how long."""
    amount = f"{show(harm.value, 2)} mg/L"
    text = f"Nitrate is {amount} now" if harm.is_now else f"Nitrate reaches about {amount}"
    text += "" if harm.is_now else f" {on_day(harm)}"
    if harm.band == "deadly":
        return f"{text}: so much can kill sensitive animals within days."
    return f"{text}: over time that can harm animals."


def fixed(harm: HarmfulReading) -> str:
    """Temperature or pH, which the forecast takes to stay as they are."""
    lines = LINES[harm.reading]
    edge = lines.harmful_high if harm.side == "high" else lines.harmful_low
    beyond = "above" if harm.side == "high" else "below"
    what = f"{show(harm.value)} °C" if harm.reading == "temperature_c" else f"pH {show(harm.value)}"
    does = "kills many" if harm.band == "deadly" else "harms many"
    return (
        f"{what} {does} fish and shrimp; {beyond} {show(edge or 0)} it begins. Where the book has "
        "your animals, their own pages say what they live well in."
    )
