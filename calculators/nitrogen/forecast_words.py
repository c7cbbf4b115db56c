"""What a forecast says in words: animals before leaves, the verdict first."""

from calculators.core.numbers import show_number as show
from calculators.core.result import Note
from calculators.core.wording import CHANGE_WITH_CARE, CUTTINGS, FISH_IN_TROUBLE
from calculators.free_ammonia import rate
from calculators.nitrogen.balance_words import FEED_IN_STEPS, HIGH_NITRATE_MG_L
from calculators.nitrogen.constants import PERCENT_TO_MG_PER_G
from calculators.nitrogen.first_hour import next_hour
from calculators.nitrogen.outlook import NITRITE_ACT_MG_N_L, NITRITE_WATCH_MG_N_L, Verdict
from calculators.nitrogen.plant_constants import HEALTHY_N_ROOTED
from calculators.nitrogen.record import Peak, Record
from calculators.nitrogen.simulate import Outcome
from calculators.nitrogen.tank import Tank
from calculators.water.ammonia import acute_limit_mg_n_l, chronic_limit_mg_n_l, unionised_share

LEAST_SEEN_MG_L = 0.5
CLOSED_PERCENT = 80  # as in the floaters calculator
ANIMALS_FIRST = Note(
    "danger", "Animals first: this tank is heading for ammonia or nitrite that harms them."
)
UNSURE = Note(
    "info",
    "A forecast from guesses: growth and rot are right within a factor of two at best. Choose low, "
    "middle and high to see how unsure it is, test once a week, and correct the doubling times until "
    "the curve meets your readings.",
)
CHLORIDE = (
    "How much nitrite harms depends on chloride in the water, which competes with it at the gills, "
    "and on the animal: some fish are not protected at all."
)


def notes(
    verdict: Verdict, outcome: Outcome, tank: Tank, days: float, calm: float | None
) -> list[Note]:
    """All that is to be said about one run."""
    danger = [note._replace(first=True) for note in animals(outcome.record, tank, calm)]
    said = [*danger] if any(note.level == "danger" for note in danger) else []
    said.append(verdict_note(verdict, outcome, days)._replace(first=True))
    said += [] if said[0] in danger else danger
    if verdict == "running-short":
        said.append(FEED_IN_STEPS)
    said += water(outcome)
    return [*said, UNSURE, CHANGE_WITH_CARE, CUTTINGS]


def verdict_note(verdict: Verdict, outcome: Outcome, days: float) -> Note:
    """The verdict in plain words."""
    hunger, nitrate = outcome.record.hunger, level(outcome.last.nitrate)
    if verdict == "running-short":
        return Note(
            "caution",
            f"Running short: from about day {hunger.first_day or 0:.0f} the store of "
            f"{names(hunger.names)} is below the line at which leaves brown, and it does not come "
            f"back within {days:.0f} days. The feed does not bring what the plants use.",
        )
    back = ""
    if hunger.first_day is not None:
        healthy = (
            " New growth is not healthy yet on the last day."
            if hunger.healthy_day is None
            else f" New growth is healthy by about day {hunger.healthy_day:.0f}."
        )
        back = (
            f" {names(hunger.names)} ran short about day {hunger.first_day:.0f} and had enough "
            f"again from day {hunger.recovery_day or 0:.0f}.{healthy}"
        )
    if verdict == "building":
        return Note("info", f"Building: nitrate climbs between changes, to {nitrate}.{back}")
    store = outcome.last.plant_nitrogen_percent
    if outcome.last.nitrate < LEAST_SEEN_MG_L and store < HEALTHY_N_ROOTED / PERCENT_TO_MG_PER_G:
        return Note(
            "info",
            f"Steady but lean: the plants take all that comes and grow as slowly as it allows. The "
            f"hungriest hold {show(store, 2)} % nitrogen; leaves brown below 1.3 %.{back}",
        )
    return Note("info", f"Steady: plants and water keep level, nitrate ends at {nitrate}.{back}")


def level(nitrate_mg_l: float) -> str:
    """A nitrate in words; what no kit can see is next to none."""
    return (
        "next to none" if nitrate_mg_l < LEAST_SEEN_MG_L else f"about {show(nitrate_mg_l, 2)} mg/L"
    )


def names(found: tuple[str, ...]) -> str:
    """Plants in a sentence, a long list cut short."""
    if len(found) > 3:
        return f"{', '.join(found[:2])} and {len(found) - 2} more"
    return " and ".join(found) if found else "the plants"


def animals(record: Record, tank: Tank, calm: float | None) -> list[Note]:
    """Ammonia and nitrite that harm, and what to do."""
    said = ammonia_notes(record, tank) + nitrite_notes(record)
    if not said:
        return []
    if any(note.level == "danger" for note in said):
        said = [ANIMALS_FIRST, next_hour(record, tank), *said, FISH_IN_TROUBLE]
    when = (
        "Neither ammonia nor nitrite is forecast to stay low before the last day."
        if calm is None
        else f"Both are forecast to stay low from about day {calm:.0f}. Trust your tests, not the day."
    )
    return [*said, Note("caution", f"Put in no animals before that is over. {when}")]


def ammonia_notes(record: Record, tank: Tank) -> list[Note]:
    """How the peak of ammonia stands against the limits."""
    peak = record.ammonia
    toxic = peak.value * unionised_share(tank.ph, tank.temperature_c)
    chronic = chronic_limit_mg_n_l(tank.ph, tank.temperature_c)
    rating = rate(peak.value / chronic, toxic)
    if rating == "safe":
        return []
    text = f"Ammonia {peaks(peak)} {show(peak.value, 2)} mg N/L, {show(toxic, 2)} of it toxic."
    if peak.value > acute_limit_mg_n_l(tank.ph, tank.temperature_c):
        return [Note("danger", f"{text} Above the acute limit animals can die within hours.")]
    if rating == "act":
        return [Note("danger", f"{text} That harms animals that stay in it.")]
    return [Note("caution", f"{text} Test daily around then.")]


def peaks(peak: Peak) -> str:
    """When it is highest: a peak at the start is what the keeper reads now."""
    return "is highest now, at" if peak.day < 0.1 else f"peaks about day {peak.day:.0f} at"


def nitrite_notes(record: Record) -> list[Note]:
    """How the peak of nitrite stands against the guideline."""
    peak = record.nitrite
    text = f"Nitrite {peaks(peak)} {show(peak.value, 2)} mg N/L. {CHLORIDE}"
    if peak.value >= NITRITE_ACT_MG_N_L:
        return [Note("danger", text)]
    return [Note("caution", text)] if peak.value >= NITRITE_WATCH_MG_N_L else []


def water(outcome: Outcome) -> list[Note]:
    """Nitrate, hardness and shade worth a word."""
    said = []
    top = max(line.nitrate for line in outcome.record.lines)
    if top > HIGH_NITRATE_MG_L:
        said.append(
            Note(
                "caution",
                f"Nitrate reaches about {show(top, 2)} mg/L; over time that can harm animals.",
            )
        )
    if outcome.last.kh_drift < -1:
        said.append(
            Note(
                "caution",
                f"Carbonate hardness falls by about {show(-outcome.last.kh_drift, 2)} °dH against the "
                "tap's. In soft water pH can drop with it: test KH each month.",
            )
        )
    if outcome.last.floating_cover > CLOSED_PERCENT:
        said.append(
            Note(
                "caution",
                "The floaters close the surface: plants below starve for light and the water for "
                "air. Thin them each week.",
            )
        )
    return said
