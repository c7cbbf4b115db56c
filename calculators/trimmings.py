"""What a bucket of cuttings took out of the tank."""

from typing import Annotated, NamedTuple

from calculators.core.declare import calculator
from calculators.core.figures import figure
from calculators.core.form_hints import FINER
from calculators.core.leads import Lead
from calculators.core.numbers import show_number
from calculators.core.quantities import (
    Concentration,
    DryMass,
    DryMatter,
    ElementMass,
    FeedMass,
    Protein,
    TissueNitrogen,
    TissuePhosphorus,
    Volume,
    WetMass,
)
from calculators.core.quantity import Assumed, Digits, Help, Label, Valid
from calculators.core.result import Note
from calculators.core.wording import CUTTINGS
from calculators.science.animals.feeding import feed_nitrogen_g
from calculators.science.conversions import MG_PER_G, PERCENT_TO_MG_PER_G
from calculators.science.nitrogen.plant_constants import CRITICAL_N_PERCENT
from calculators.science.water import chemistry

CRITICAL_P_PERCENT = 0.13  # of dry mass; Gerloff and Krombholz 1966


# Dry matter and tissue nitrogen are known within a factor of two, so two figures are plenty.
Mass = Annotated[ElementMass, Digits(2)]
Feed = Annotated[FeedMass, Digits(2)]
Level = Annotated[Concentration, Digits(2)]


class Trimmings(NamedTuple):
    """What the cuttings held, and what it is equal to."""

    dry_g: Annotated[DryMass, Digits(2)]
    n_mg: Annotated[Mass, Label("Nitrogen taken out")]
    p_mg: Annotated[Mass, Label("Phosphorus taken out")]
    nitrate_equivalent_mg_l: Annotated[
        Level, Label("As nitrate in this tank"), Help("What the water would read more.")
    ]
    phosphate_equivalent_mg_l: Annotated[Level, Label("As phosphate in this tank")]
    feed_equivalent_g: Annotated[
        Feed, Label("Feed that holds as much nitrogen"), Help("All of the feed's nitrogen.")
    ]
    notes: tuple[Note, ...]


@calculator(
    "Trimmings",
    sources=("organic-waste-recycling", "fao-x6862e", "gerloff-krombholz-1966", "ciaaw-2021"),
    leads_to=(
        Lead(
            "nitrogen-balance",
            "Set it against the feed",
            {
                "trimmings_g_week": "wet_g",
                "volume_l": "volume_l",
                "protein_percent": "protein_percent",
            },
        ),
    ),
)
def trimmings(
    wet_g: Annotated[
        WetMass,
        Label("Cuttings, wet"),
        Help("Shake or spin the water off, then weigh. Dripping plants weigh up to twice as much."),
    ] = 100.0,
    dry_matter_percent: Annotated[
        DryMatter,
        Valid(5, 16),
        Assumed(),
        Help(
            "Submerged plants 5 to 16, floating plants 5 to 10. 8 is a fair guess for stems, 6 for floaters."
        ),
        FINER,
    ] = 8.0,
    tissue_n_percent: Annotated[
        TissueNitrogen,
        Valid(0.6, 5.3),
        Assumed(),
        Help(f"Hungry plants {show_number(CRITICAL_N_PERCENT)} or less, well fed ones 2 to 4."),
        FINER,
    ] = 2.5,
    tissue_p_percent: Annotated[TissuePhosphorus, Valid(0.03, 1.1), Assumed(), FINER] = 0.3,
    volume_l: Volume = 120.0,
    protein_percent: Annotated[
        Protein, Help("From the label of the feed."), FINER, Assumed()
    ] = 45.0,
) -> Trimmings:
    """Find how much nitrogen and phosphorus left the tank with a bucket of cuttings.

    Wet mass times dry matter times the share of each element in dry mass. The same nitrogen is
    then shown as nitrate in the tank's water, and as the feed that brings as much (protein is 16 %
    nitrogen). What plants hold is the largest store that a keeper can lift out by hand.

    Dry matter and tissue nitrogen differ by plant and by how well it is fed; take the answer as
    right within a factor of two until you have dried and weighed some of your own.
    """
    dry_g = wet_g * dry_matter_percent / 100
    n_mg = dry_g * tissue_n_percent * PERCENT_TO_MG_PER_G
    p_mg = dry_g * tissue_p_percent * PERCENT_TO_MG_PER_G
    feed_g = n_mg / MG_PER_G / feed_nitrogen_g(1.0, protein_percent)
    return Trimmings(
        dry_g=dry_g,
        n_mg=n_mg,
        p_mg=p_mg,
        nitrate_equivalent_mg_l=n_mg / volume_l * chemistry.NITRATE_PER_N,
        phosphate_equivalent_mg_l=p_mg / volume_l * chemistry.PHOSPHATE_PER_P,
        feed_equivalent_g=feed_g,
        notes=(verdict(n_mg, feed_g), *notes(tissue_n_percent, tissue_p_percent)),
    )


def verdict(n_mg: float, feed_g: float) -> Note:
    """The answer in plain words."""
    nitrogen, feed = figure(Mass, n_mg), figure(Feed, feed_g)
    text = f"About {nitrogen} mg of nitrogen left the tank, as much as {feed} g of feed bring."
    return Note("info", text, True)


def notes(tissue_n_percent: float, tissue_p_percent: float) -> list[Note]:
    """Whether the tissue itself says that the plants are short of something."""
    short = [
        (tissue_n_percent <= CRITICAL_N_PERCENT, "nitrogen", CRITICAL_N_PERCENT),
        (tissue_p_percent <= CRITICAL_P_PERCENT, "phosphorus", CRITICAL_P_PERCENT),
    ]
    short_notes = [
        Note(
            "caution",
            f"At {show_number(critical)} % {element} or less a water plant's growth is held back by it.",
        )
        for is_short, element, critical in short
        if is_short
    ]
    return [*short_notes, CUTTINGS]
