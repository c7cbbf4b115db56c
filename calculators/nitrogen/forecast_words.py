"""What a forecast says in words: animals before leaves, the verdict first."""

from calculators.core.numbers import show_number as show
from calculators.core.result import Note
from calculators.core.wording import CHANGE_WITH_CARE, CUTTINGS
from calculators.nitrogen.animal_words import animals
from calculators.nitrogen.balance_words import FEED_IN_STEPS, HIGH_NITRATE_MG_L
from calculators.nitrogen.constants import PERCENT_TO_MG_PER_G
from calculators.nitrogen.outlook import Verdict
from calculators.nitrogen.plant_constants import HEALTHY_N_ROOTED
from calculators.nitrogen.simulate import Outcome
from calculators.nitrogen.tank import Tank

LEAST_SEEN_MG_L = 0.5
CLOSED_PERCENT = 80  # as in the floaters calculator
UNSURE = Note(
    "info",
    "A forecast from guesses: growth and rot are right within a factor of two at best. Choose low, "
    "middle and high to see how unsure it is, test once a week, and correct the doubling times until "
    "the curve meets your readings.",
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
