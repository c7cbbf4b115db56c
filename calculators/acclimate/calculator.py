"""From the bag to the tank: by drops, or better not."""

from typing import Annotated

from calculators.acclimate import words
from calculators.acclimate.bag_ammonia import Bag, TankWater, aired_ph, may_drip, toxic_parts
from calculators.acclimate.bag_picture import pictures
from calculators.acclimate.first_words import Arrival, can_kill
from calculators.acclimate.outputs import Acclimate, DripRate, HoursInBag
from calculators.acclimate.vessel import at_end, full_vessel_l, minutes_to
from calculators.core.declare import calculator
from calculators.core.form_hints import FINER, InRow
from calculators.core.leads import Lead, Value
from calculators.core.quantities import (
    PH,
    CarbonateHardness,
    GeneralHardness,
    Nitrogen,
    Percent,
    Temperature,
)
from calculators.core.quantities import Volume as BagVolume
from calculators.core.quantity import Assumed, Help, Label, Possible

WARMTH_ROW = "Temperature"


@calculator(
    "From the bag to the tank",
    sources=(
        "arithmetic",
        "emerson-1975",
        "plummer-busenberg-1982",
        "epa-2013-ammonia",
        "teo-1989",
        "piper-1982",
    ),
    leads_to=(
        Lead(
            "free-ammonia",
            "How toxic the bag's ammonia is in the tank",
            {
                "ammonia_mg_l": "bag_ammonia_mg_n_l",
                "reported_as": Value("nitrogen"),
                "ph": "tank_ph",
                "temperature_c": "tank_temperature_c",
            },
            needs=("bag_ammonia_mg_n_l",),
        ),
    ),
)
def acclimate(
    hours_in_bag: Annotated[
        HoursInBag, Label("Hours in the closed bag"), Help("From when it was tied until now.")
    ] = 1.0,
    bag_l: Annotated[BagVolume, Label("Water in the bag"), Possible(0.1, 1_000)] = 1.0,
    bag_temperature_c: Annotated[
        Temperature,
        Label("Temperature in the bag"),
        Possible(0, 40),
        InRow(WARMTH_ROW, "In the bag"),
    ] = 22.0,
    tank_temperature_c: Annotated[
        Temperature,
        Label("Temperature of the tank"),
        Possible(0, 40),
        InRow(WARMTH_ROW, "Of the tank"),
    ] = 25.0,
    tank_ph: Annotated[PH, Label("pH of the tank"), Possible(4, 11)] = 7.2,
    bag_ammonia_mg_n_l: Annotated[
        Nitrogen | None,
        Label("Ammonia in the bag, as nitrogen"),
        Possible(0, 200),
        Help("In total, as a kit reads it, from a few mL. Empty: the hours in the bag decide."),
    ] = 0.2,
    bag_ph: Annotated[
        PH | None, Label("pH in the bag"), Possible(4, 11), Help("At once as it is opened."), FINER
    ] = 7.0,
    bag_kh_dh: Annotated[
        CarbonateHardness | None,
        Label("Carbonate hardness (KH) in the bag"),
        Help("It tells how far its pH rises once it is open."),
        FINER,
    ] = 6.0,
    tank_kh_dh: Annotated[
        CarbonateHardness | None, Label("Carbonate hardness (KH) of the tank"), FINER
    ] = 4.0,
    bag_gh_dh: Annotated[GeneralHardness | None, Label("Hardness (GH) in the bag"), FINER] = 12.0,
    tank_gh_dh: Annotated[GeneralHardness | None, Label("Hardness (GH) of the tank"), FINER] = 7.0,
    tank_share_percent: Annotated[
        Percent, Label("Tank water in the vessel at the end"), Possible(1, 99), FINER, Assumed()
    ] = 75.0,
    drip_ml_min: Annotated[
        DripRate,
        Label("Drops"),
        Help("Count into a measure for a minute: 20 drops are about 1 mL."),
        FINER,
        Assumed(),
    ] = 50.0,
) -> Acclimate:
    """Find whether to drip new animals over, how long it takes, and when not to.

    The vessel fills: bag water stays in it, and tank water comes by drops. Hardness and warmth of the
    mix go by its shares. Air and walls are not counted for the warmth.

    In a closed bag animals breathe out carbon dioxide, which holds the pH down, and give off ammonia,
    most of it then harmless ammonium. Open the bag and the gas leaves, within minutes where the water
    moves; the pH rises, and the ammonia turns toxic, whatever the tank's pH is. So a bag of long
    travel is not dripped. The pH in the open follows from the carbonate hardness of bag and tank on the
    way, as in the calculator for changes where ammonia shows; where one is not given, 10 °dH is taken.

    Dripping is advised where the bag's ammonia, undiluted, stays under 0.02 mg N/L of toxic ammonia
    at the tank's pH and as it is, and the mix under 0.05 and the acute criterion as it stands open. Without
    a reading of ammonia, two hours in the bag are the limit: common practice. Where hardness differs by
    more than 10 °dH, or the pH of both waters without their gas by more than 1.5, no hour of drops
    bridges it: our judgement.
    """
    bag = Bag(bag_ammonia_mg_n_l, bag_ph, bag_kh_dh, bag_temperature_c, hours_in_bag)
    share = tank_share_percent / 100
    tank = TankWater(tank_ph, tank_kh_dh, tank_temperature_c, share)
    toxic = toxic_parts(bag, tank)
    unfit = can_kill(tank_ph, tank_temperature_c)
    drip = may_drip(bag, toxic, tank) and not unfit
    minutes = minutes_to(bag_l, share, drip_ml_min)
    hardness = None if bag_gh_dh is None or tank_gh_dh is None else (bag_gh_dh, tank_gh_dh)
    here = Arrival(
        bag, toxic, drip, minutes, full_vessel_l(bag_l, share), tank_share_percent, tank_ph,
        tank_temperature_c, hardness, unfit, tank_kh_dh, drip_ml_min,
        (aired_ph(bag_ph, bag_kh_dh, bag_temperature_c), aired_ph(tank_ph, tank_kh_dh, tank_temperature_c)),
    )  # fmt: skip
    return Acclimate(
        drip=drip,
        minutes=minutes,
        vessel_l=here.vessel_l,
        gh_end_dh=None if hardness is None else at_end(*hardness, share),
        temperature_end_c=at_end(bag_temperature_c, tank_temperature_c, share),
        nh3_bag_mg_n_l=toxic.in_bag,
        nh3_at_tank_ph_mg_n_l=toxic.at_tank_ph,
        nh3_opened_mg_n_l=toxic.opened,
        open_ph=toxic.open_ph,
        notes=words.notes(here),
        series=pictures(bag, toxic, tank_ph, tank_temperature_c),
    )
