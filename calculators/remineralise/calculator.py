"""Minerals that give purified water its hardness."""

from typing import Annotated, Literal

from calculators.core.declare import calculator
from calculators.core.form_hints import FINER
from calculators.core.leads import Lead
from calculators.core.quantities import CarbonateHardness, GeneralHardness, Ratio, Volume
from calculators.core.quantity import Assumed, Choices, Help, Label, Possible
from calculators.remineralise.aired_ph import aired_ph
from calculators.remineralise.mineral_salts import GYPSUM_G_L
from calculators.remineralise.outputs import Remineralise
from calculators.remineralise.recipe import Wish, recipe
from calculators.remineralise.words import RecipeWater, notes
from calculators.science.animals.reading_lines import LINES

PH_AT_C = 25.0
CalciumSalt = Annotated[
    Literal["cacl2_2h2o", "caso4_2h2o"],
    Choices(("calcium chloride, CaCl₂·2H₂O", "gypsum, CaSO₄·2H₂O")),
]
MagnesiumSalt = Annotated[
    Literal["mgso4_7h2o", "mgcl2_6h2o"],
    Choices(("magnesium sulfate, MgSO₄·7H₂O", "magnesium chloride, MgCl₂·6H₂O")),
]
CarbonateSalt = Annotated[
    Literal["nahco3", "khco3"],
    Choices(("sodium bicarbonate, NaHCO₃", "potassium bicarbonate, KHCO₃")),
]
LINE_SOURCES = tuple(LINES[reading].source for reading in ("potassium_mg_l", "chloride_mg_l"))


@calculator(
    "Minerals for purified water",
    sources=(
        "ciaaw-2021",
        "din-38409-6",
        "fao-water-glossary",
        "phreeqc",
        "lebedev-2017",
        "plummer-busenberg-1982",
        "farag-harper-2014",
        "harper-2014",
        "iso-6341",
        "nies-media",
        *LINE_SOURCES,
    ),
    leads_to=(
        Lead(
            "hardness",
            "What the water then reads",
            {"gh_dh": "reached_gh_dh", "kh_dh": "reached_kh_dh", "ph": "settled_ph"},
        ),
    ),
)
def remineralise(
    volume_l: Annotated[
        Volume, Label("Water to prepare"), Help("In the bucket or barrel, not in the tank.")
    ] = 20.0,
    start_gh_dh: Annotated[
        GeneralHardness,
        Label("General hardness before"),
        Help("Purified and rain water read 0; test yours."),
        Assumed(),
        FINER,
    ] = 0.0,
    start_kh_dh: Annotated[
        CarbonateHardness, Label("Carbonate hardness before"), Assumed(), FINER
    ] = 0.0,
    target_gh_dh: Annotated[
        GeneralHardness,
        Label("General hardness (GH) wanted"),
        Help("As the tank reads, or as its animals' pages say."),
    ] = 6.0,
    target_kh_dh: Annotated[CarbonateHardness, Label("Carbonate hardness (KH) wanted")] = 3.0,
    calcium_to_magnesium: Annotated[
        Ratio,
        Label("Calcium for each part of magnesium"),
        Possible(0.5, 100),
        Help("By mass, of what is added. 2 to 5 is common practice."),
        Assumed(),
        FINER,
    ] = 3.0,
    calcium_from: Annotated[CalciumSalt, Label("Calcium from"), Assumed()] = "caso4_2h2o",
    magnesium_from: Annotated[
        MagnesiumSalt, Label("Magnesium from"), Assumed(), FINER
    ] = "mgso4_7h2o",
    carbonate_from: Annotated[CarbonateSalt, Label("Carbonate from"), Assumed()] = "nahco3",
) -> Remineralise:
    """Find the grams of three salts that bring purified water to a wanted hardness.

    One German degree is 10 mg of calcium oxide a litre: 0.1783 mmol/L of calcium and magnesium
    together, and for carbonate hardness 0.3567 mmol/L of bicarbonate. The calcium and the magnesium
    salt make general hardness in the ratio asked for, the carbonate salt makes carbonate hardness.
    The grams are of pure crystals with the water that their formula names; another hydrate of the
    same salt needs another mass.

    Gypsum brings no chloride, but only 2.4 g of it dissolve in a litre, and slowly. Calcium chloride
    dissolves at once and warms the water. Sodium bicarbonate brings sodium, potassium bicarbonate
    potassium, of which water fleas bear little.

    The pH is worked out for water that has stood open in a room, as a geochemist's program counts
    it; straight from a purifier, gas may keep it lower for some hours.
    """
    gh_rise = None if start_gh_dh > target_gh_dh else target_gh_dh - start_gh_dh
    kh_rise = None if start_kh_dh > target_kh_dh else target_kh_dh - start_kh_dh
    wish = Wish(
        volume_l, gh_rise, kh_rise, calcium_to_magnesium, calcium_from, magnesium_from, carbonate_from
    )  # fmt: skip
    made = recipe(wish)
    gh, kh = max(start_gh_dh, target_gh_dh), max(start_kh_dh, target_kh_dh)
    gypsum = made.calcium_g if calcium_from == "caso4_2h2o" else None
    water = RecipeWater(wish, made, gh, kh, target_gh_dh, target_kh_dh)
    return Remineralise(
        calcium_salt_g=made.calcium_g,
        magnesium_salt_g=made.magnesium_g,
        carbonate_salt_g=made.carbonate_g,
        gypsum_water_l=None if gypsum is None else gypsum / GYPSUM_G_L,
        reached_gh_dh=gh,
        reached_kh_dh=kh,
        settled_ph=aired_ph(gh, kh, PH_AT_C),
        adds={str(ion): mg_l for ion, mg_l in made.adds.items()},
        dissolved_mg_l=made.dissolved_mg_l,
        notes=notes(water),
    )
