"""The picture of a bag's ammonia: how much of it is toxic at each pH."""

from calculators.acclimate.bag_ammonia import Bag, Toxic
from calculators.core.result import Series
from calculators.science.animals.line_words import FREE_AMMONIA_LINES
from calculators.science.water.ammonia import unionised_share

LOWEST_PH, HIGHEST_PH, STEPS = 6.0, 8.6, 26
PICTURE = "Toxic ammonia in the bag, undiluted"


def pictures(
    bag: Bag, toxic: Toxic, tank_ph: float, tank_temperature_c: float
) -> dict[str, Series]:
    """Toxic ammonia of the bag's water against pH, with dots at the pH of bag, tank and open vessel."""
    ammonia = bag.ammonia_mg_n_l
    if not ammonia:
        return {}
    warmest = max(bag.temperature_c, tank_temperature_c)
    marked = sorted(ph for ph in (bag.ph, tank_ph, toxic.open_ph) if ph is not None)
    low, high = min(LOWEST_PH, marked[0]), max(HIGHEST_PH, marked[-1])
    steps = [low + (high - low) * step / STEPS for step in range(STEPS + 1)]

    def curve(label: str, short: str, at: list[float], dots: bool) -> Series:
        levels = [ammonia * unionised_share(ph, warmest) for ph in at]
        return Series(
            label, "mg N/L", "pH", "", at, levels, picture=PICTURE, short=short, dots=dots,
            lines=FREE_AMMONIA_LINES, subject="That of bag, tank and open vessel" if dots else "",
        )  # fmt: skip

    return {
        "nh3_by_ph": curve("Toxic ammonia at each pH", "curve", steps, False),
        "nh3_marked": curve("In bag, tank and open vessel", "dots", marked, True),
    }
