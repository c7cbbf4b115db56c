"""Un-ionised ammonia, and the criteria that say how much of it animals stand."""

from typing import Literal

from calculators.science.animals.reading_lines import edge_of

WATCH_NH3_MG_N_L = edge_of("nh3_mg_n_l", "harmful_high")
ACT_NH3_MG_N_L = edge_of("nh3_mg_n_l", "deadly_high")
WATCH_SHARE_OF_CHRONIC = 0.5

Rating = Literal["low", "watch", "act"]  # low is no promise: a settled tank reads zero

CELSIUS_TO_KELVIN_1975 = 273.2  # as the source rounds it; 273.15 would miss its table by 0.3 %


def ammonium_pka(temperature_c: float) -> float:
    """pKa of ammonium at infinite dilution, 0 to 30 °C (Emerson and others 1975).

    Some public copies misprint 2729.92 as 2727.92; at 25 °C and pH 8 the share is 5.38 %, not 5.45 %.
    """
    return 0.09018 + 2729.92 / (CELSIUS_TO_KELVIN_1975 + temperature_c)


def unionised_share(ph: float, temperature_c: float) -> float:
    """The share of total ammonia that is NH3, from 0 to 1."""
    return 1 / (1 + 10 ** (ammonium_pka(temperature_c) - ph))


def acute_limit_mg_n_l(ph: float, temperature_c: float) -> float:
    """US EPA 2013 acute criterion (one-hour mean), mg total ammonia nitrogen per litre.

    Unionid mussels present; the lower of that form and the one for salmonids.
    """
    salmonids = 0.275 / (1 + 10 ** (7.204 - ph)) + 39.0 / (1 + 10 ** (ph - 7.204))
    shape = 0.0114 / (1 + 10 ** (7.204 - ph)) + 1.6181 / (1 + 10 ** (ph - 7.204))
    mussels = 0.7249 * shape * 23.12 * 10 ** (0.036 * (20 - temperature_c))
    return min(salmonids, mussels)


def chronic_limit_mg_n_l(ph: float, temperature_c: float) -> float:
    """US EPA 2013 chronic criterion (30-day mean), mg total ammonia nitrogen per litre."""
    shape = 0.0278 / (1 + 10 ** (7.688 - ph)) + 1.1994 / (1 + 10 ** (ph - 7.688))
    return 0.8876 * shape * 2.126 * 10 ** (0.028 * (20 - max(temperature_c, 7)))


# Two questions, and the same answer only in alkaline water. What is deadly (``ammonia_grade``) counts the
# acute criterion for the total too, which acid water reaches while hardly any of it is free. Whether a change
# is hurried, at some cost of hardness or pH, hangs on the free part alone: in that acid water a quick change
# would free what it is meant to take out, so that there it stays slow and the ammonia is bound.
def free_kills(unionised_mg_n_l: float) -> bool:
    """Whether so much free ammonia can kill by itself."""
    return unionised_mg_n_l >= ACT_NH3_MG_N_L


def rate(chronic_ratio: float, unionised_mg_n_l: float) -> Rating:
    """Rate a reading by the chronic criterion and by our working lines for NH3."""
    if chronic_ratio >= 1 or free_kills(unionised_mg_n_l):
        return "act"
    if chronic_ratio >= WATCH_SHARE_OF_CHRONIC or unionised_mg_n_l >= WATCH_NH3_MG_N_L:
        return "watch"
    return "low"
