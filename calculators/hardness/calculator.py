"""Hardness in other units, carbon dioxide from carbonate hardness and pH, and mixing two waters."""

from typing import Annotated, NamedTuple

from calculators.core.declare import calculator
from calculators.core.form_hints import Part
from calculators.core.leads import Lead
from calculators.core.quantities import (
    PH,
    Alkalinity,
    CarbonateAsCaco3,
    CarbonateHardness,
    Concentration,
    GeneralHardness,
    Litres,
    Pka,
    Temperature,
    Volume,
)
from calculators.core.quantity import AnswersTo, Help, Label, Possible
from calculators.core.result import Note, Series
from calculators.hardness.words import (
    about_gas,
    about_general,
    about_mix,
    about_readings,
    misfit,
    verdict,
)
from calculators.science.animals.reading_words import reading_notes
from calculators.science.water.carbonate import (
    air_co2_mg_l,
    co2_mg_l,
    ideal_co2_mg_l,
    pk1,
    pure_gas_co2_mg_l,
)
from calculators.science.water.chemistry import CACO3_MG_PER_DH, MEQ_PER_DH
from calculators.science.water.mixing import mixed, share_of_second
from calculators.science.water.readings_fit import KH_ERROR_DH, PH_ERROR, fit_together, misfit_words

MIX = Part("Mixing with a second water", closed=True)
MIXING = AnswersTo(("mix_gh_dh", "target_gh_dh"))


class Hardness(NamedTuple):
    """The same hardness in other units, the gas that goes with it, and the mix."""

    gh_mg_l_caco3: Annotated[CarbonateAsCaco3, Label("General hardness")]
    kh_mg_l_caco3: Annotated[CarbonateAsCaco3, Label("Carbonate hardness")]
    kh_meq_l: Annotated[Alkalinity, Label("Carbonate hardness as alkalinity")]
    co2_mg_l: Annotated[
        Concentration | None,
        Label("Carbon dioxide in the water"),
        Help("Corrected for the salts that the two hardness readings stand for."),
    ]
    co2_low_mg_l: Annotated[Concentration | None, Label("Carbon dioxide, low end")]
    co2_high_mg_l: Annotated[Concentration | None, Label("Carbon dioxide, high end")]
    co2_ideal_mg_l: Annotated[
        Concentration,
        Label("Carbon dioxide by the simple formula"),
        Help("As in most tables: no correction for salts, 3 to 16 % too high, more above pH 8.5."),
    ]
    co2_air_mg_l: Annotated[
        Concentration, Label("Carbon dioxide that outdoor air would give"), Help("At sea level.")
    ]
    pk1: Annotated[Pka, Label("pK of carbonic acid at this temperature")]
    mix_litres: Annotated[Litres | None, Label("Of the second water"), MIXING]
    first_litres: Annotated[Litres | None, Label("Of the first water"), MIXING]
    mixed_kh_dh: Annotated[CarbonateHardness | None, Label("Carbonate hardness of the mix"), MIXING]
    notes: tuple[Note, ...]
    series: dict[str, Series]


@calculator(
    "Hardness and carbon dioxide",
    sources=(
        "plummer-busenberg-1982",
        "phreeqc",
        "pyco2sys",
        "davies-1962",
        "ciaaw-2021",
        "arithmetic",
    ),
    leads_to=(
        Lead(
            "remineralise",
            "Minerals in place of a second water",
            {
                "volume_l": "volume_l",
                "start_gh_dh": "mix_gh_dh",
                "start_kh_dh": "mix_kh_dh",
                "target_gh_dh": "target_gh_dh",
            },
            needs=("target_gh_dh",),
        ),
    ),
)
def hardness(
    gh_dh: Annotated[GeneralHardness, Help("1 °dH is 17.8 mg/L as CaCO₃.")] = 14.0,
    kh_dh: Annotated[CarbonateHardness, Help("Alkalinity, as a drop kit counts it.")] = 9.0,
    ph: Annotated[
        PH, Possible(4, 10), Help("Lowest just before the lamp comes on: measure then.")
    ] = 7.6,
    temperature_c: Temperature = 24.0,
    mix_gh_dh: Annotated[
        GeneralHardness | None,
        Label("General hardness of a second water"),
        Help("Rain or purified water reads 0; test it."),
        MIX,
    ] = 0.0,
    mix_kh_dh: Annotated[
        CarbonateHardness | None, Label("Carbonate hardness of the second water"), MIX
    ] = 0.0,
    target_gh_dh: Annotated[
        GeneralHardness | None, Label("General hardness wanted in the mix"), MIX
    ] = 8.0,
    volume_l: Annotated[
        Volume | None, Label("Water wanted, mixed"), Help("Both waters together."), MIX
    ] = 60.0,
) -> Hardness:
    """Find hardness in other units, carbon dioxide from hardness and pH, and how to mix two waters.

    Carbon dioxide follows from carbonate hardness, pH and temperature where carbonate is the only
    buffer. The constants are those of Plummer and Busenberg; ions hinder each other (Davies) and
    calcium holds some bicarbonate, as a geochemist's program counts it. The simple formula without
    that stands beside it.

    It does not hold where peat, wood, leaf litter or phosphate lower the pH: then the true figure
    is lower. A pH wrong by 0.1 changes it by a quarter. Where it comes out as more than open water can
    hold, the two readings do not fit together, and the answer says so.

    Mixing: of the volume wanted, so many litres are the second water and the rest the first. Both
    hardnesses of a mix are means by volume.
    """
    gh_meq, kh_meq = gh_dh * MEQ_PER_DH, kh_dh * MEQ_PER_DH
    gas = co2_mg_l(gh_meq, kh_meq, ph, temperature_c)
    low, high = span(gh_meq, kh_dh, ph, temperature_c)
    air = air_co2_mg_l(temperature_c)
    mixing = mix_gh_dh is not None and target_gh_dh is not None
    share = share_of_second(gh_dh, mix_gh_dh or 0.0, target_gh_dh or 0.0) if mixing else None
    has_volume = share is not None and volume_l is not None
    known_kh = share is not None and mix_kh_dh is not None
    mixed_kh = mixed(kh_dh, mix_kh_dh or 0.0, share or 0.0) if known_kh else None
    return Hardness(
        gh_mg_l_caco3=gh_dh * CACO3_MG_PER_DH,
        kh_mg_l_caco3=kh_dh * CACO3_MG_PER_DH,
        kh_meq_l=kh_meq,
        co2_mg_l=gas,
        co2_low_mg_l=low if gas is not None else None,
        co2_high_mg_l=high if gas is not None else None,
        co2_ideal_mg_l=ideal_co2_mg_l(kh_meq, ph, temperature_c),
        co2_air_mg_l=air,
        pk1=pk1(temperature_c),
        mix_litres=(share or 0.0) * (volume_l or 0.0) if has_volume else None,
        first_litres=(1 - (share or 0.0)) * (volume_l or 0.0) if has_volume else None,
        mixed_kh_dh=mixed_kh,
        notes=(
            *reading_notes(ph=ph, temperature_c=temperature_c),
            *(
                [
                    *([] if gas is None else [verdict(gas, low or 0.0, high or 0.0)]),
                    *about_gas(gas, high or 0.0, pure_gas_co2_mg_l(temperature_c), air),
                ]
                if fit_together(ph, kh_dh, temperature_c)
                else misfit(misfit_words(ph, kh_dh, temperature_c))
            ),
            *about_readings(kh_dh, ph),
            *about_general(gh_dh),
            *(
                about_mix(share, gh_dh, mix_gh_dh or 0.0, target_gh_dh or 0.0, mixed_kh)
                if mixing
                else ()
            ),
        ),
        series={"co2_by_ph": against_ph(gh_meq, kh_meq, temperature_c)},
    )


def span(
    gh_meq_l: float, kh_dh: float, ph: float, temperature_c: float
) -> tuple[float | None, float | None]:
    """The least and the most carbon dioxide that the errors of the kits leave open, mg/L."""
    least = max(0.0, kh_dh - KH_ERROR_DH) * MEQ_PER_DH
    most = (kh_dh + KH_ERROR_DH) * MEQ_PER_DH
    low = co2_mg_l(gh_meq_l, least, ph + PH_ERROR, temperature_c)
    return low or 0.0, co2_mg_l(gh_meq_l, most, ph - PH_ERROR, temperature_c)


def against_ph(gh_meq_l: float, kh_meq_l: float, temperature_c: float) -> Series:
    """Carbon dioxide of this water at other pH readings."""
    steps = [6.0 + 0.1 * step for step in range(26)]
    gas = [co2_mg_l(gh_meq_l, kh_meq_l, ph, temperature_c) or 0.0 for ph in steps]
    return Series("Carbon dioxide", "mg/L", "pH", "", steps, gas)
