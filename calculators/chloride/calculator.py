"""Chloride against nitrite, and the salt for it."""

from typing import Annotated

from calculators.chloride import words
from calculators.chloride.outputs import ChlorideAgainstNitrite
from calculators.chloride.salt import HARMS_MG_L, salt_for, too_much
from calculators.core.declare import calculator
from calculators.core.form_hints import FINER
from calculators.core.leads import Lead, Value
from calculators.core.quantities import Concentration, Nitrogen, Ratio
from calculators.core.quantities import Volume as TankVolume
from calculators.core.quantity import Assumed, Help, Label, Possible
from calculators.core.result import Line, Series

PICTURE_STEPS = 20


@calculator(
    "Chloride against nitrite",
    sources=(
        "tomasso-1979",
        "tomasso-1986",
        "srac-nitrite",
        "bc-nitrite",
        "epa-1988-chloride",
        "gillis-2011",
        "haller-1974",
        "james-hart-1993",
        "ciaaw-2021",
    ),
    leads_to=(
        Lead(
            "water-change",
            "Changes that bring the nitrite down",
            {"what": Value("nitrite"), "now_mg_l": "nitrite_mg_n_l", "volume_l": "volume_l"},
        ),
    ),
)
def chloride(
    nitrite_mg_n_l: Annotated[
        Nitrogen,
        Label("Nitrite, as nitrogen"),
        Possible(0, 100),
        Help("Where the kit counts NO₂, divide its figure by 3.3."),
    ] = 0.5,
    volume_l: Annotated[TankVolume, Help("Water in the tank, without soil and stones.")] = 96.0,
    chloride_mg_l: Annotated[
        Concentration,
        Label("Chloride in the tank now"),
        Help("From a test, or the supplier's report. It counts, and salt may not be needed."),
        Assumed(),
    ] = 0.0,
    ratio: Annotated[
        Ratio,
        Label("Chloride to nitrite nitrogen, by mass"),
        Possible(1, 200),
        Help("40.5 is 16 ions to 1, as tested on catfish; fish farms go from 33."),
        FINER,
        Assumed(),
    ] = 40.5,
) -> ChlorideAgainstNitrite:
    """Find how much chloride stands against a nitrite reading, and the salt for it.

    Nitrite enters many fish at the gills by the door that is meant for chloride, and turns the blood
    brown. Where there is much chloride it finds the door taken. In channel catfish 16 ions of
    chloride to one of nitrite kept it out; that is 40.5 to 1 by mass of nitrite nitrogen. Fish farms
    keep at least 10 to 1 by mass of nitrite, which is 33 to 1 of its nitrogen.

    It is first aid for some fish, not a cure. A change of water takes nitrite out; salt does not, and
    it stays until changes take it out too. It does not help every fish: largemouth bass were as easily
    poisoned with it as without. Nothing shows that it helps shrimp.

    Where the chloride would reach 230 mg/L, the United States' line over days, no salt is worked out:
    then only changes of water are left.
    """
    salt = salt_for(nitrite_mg_n_l, chloride_mg_l, ratio)
    refused = too_much(salt, chloride_mg_l)
    here = words.ChlorideReading(nitrite_mg_n_l, chloride_mg_l, ratio, volume_l, salt, refused)
    return ChlorideAgainstNitrite(
        chloride_wanted_mg_l=salt.wanted_mg_l,
        chloride_missing_mg_l=salt.missing_mg_l,
        salt_g=None if refused else salt.salt_mg_l * volume_l / 1000,
        salt_mg_l=None if refused else salt.salt_mg_l,
        sodium_mg_l=None if refused else salt.sodium_mg_l,
        notes=words.notes(here),
        series={"chloride_wanted": against_nitrite(ratio)},
    )


def against_nitrite(ratio: float) -> Series:
    """The chloride for this ratio, up to a little above where it harms."""
    most = 1.2 * HARMS_MG_L / ratio
    steps = [most * step / PICTURE_STEPS for step in range(PICTURE_STEPS + 1)]
    return Series(
        label="Chloride for this ratio",
        unit="mg/L",
        x_label="Nitrite",
        x_unit="mg N/L",
        x=steps,
        y=[nitrite * ratio for nitrite in steps],
        lines=(Line("harms over days: no salt", HARMS_MG_L, always=True),),
    )
