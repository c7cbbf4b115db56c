"""From feed to nitrogen. Masses in grams of dry feed and of nitrogen, over any one span of time.

Shared by everything that asks what a week's feed brings, so that all agree.
"""

from calculators.science.water.chemistry import NITROGEN_SHARE_OF_PROTEIN

# g of total ammonia nitrogen that animals give off for each g of protein fed: Timmons and Ebeling,
# P_TAN = F × PC × 0.092 over a feeding day. The figure was seen in two public programs for fish
# farms, not in the book. It is 57.5 % of the nitrogen fed; their own measurements spread widely.
AMMONIA_N_PER_PROTEIN = 0.092


def feed_nitrogen_g(feed_g: float, protein_percent: float) -> float:
    """All the nitrogen in a feed, g: 16 % of its protein (the customary factor 6.25)."""
    return feed_g * protein_percent / 100 * NITROGEN_SHARE_OF_PROTEIN


def excreted_ammonia_n_g(feed_g: float, protein_percent: float) -> float:
    """Nitrogen that eaten feed gives off as total ammonia, g (P_TAN of Timmons and Ebeling)."""
    return feed_g * protein_percent / 100 * AMMONIA_N_PER_PROTEIN


def daily_feed_g(living_mass_g: float, percent_of_mass: float) -> float:
    """Feed a day for animals that are given a share of their living mass, g."""
    return living_mass_g * percent_of_mass / 100


def living_mass_g(length_cm: float, a: float, b: float) -> float:
    """Mass of one animal from its length, g: W = a L^b, L in cm."""
    mass: float = a * length_cm**b
    return mass
