"""What the forecast is told: a tank, its plants, what happens on which day."""

from typing import Annotated, Literal, NamedTuple, get_args

from calculators.core.form_hints import ByChoice, Step, Suggest
from calculators.core.quantities import Days, DoublingTime, Factor, WetMass
from calculators.core.quantity import Choices, Help, Label, Possible, PossibleBy
from calculators.science.conversions import CM2_PER_M2
from calculators.science.nitrogen.constants import (
    AMMONIA_DECAY_25,
    AMMONIA_HALF_MG_L,
    REFRACTORY_SHARE,
    RETAINED_PERCENT,
    SETTLED_SOIL_DAYS,
    SOIL_RELEASE_MG_M2_DAY,
    SURFACE_CM2_PER_L23,
)

Kind = Literal["change", "trim", "feed", "dose", "dark", "die-off"]
KINDS: tuple[Kind, ...] = get_args(Kind)
VALUES = PossibleBy(
    "kind",
    {
        "change": (0, 100),
        "trim": (0, 10_000),
        "feed": (0, 5_000),
        "dose": (0, 1_000),
        "dark": (0, 365),
        "die-off": (0, 100),
    },
)  # %, g wet, g a week, mg/L, days, %; feed and dose as wide as the inputs of those names


class StandingPlant(NamedTuple):
    """One kind of plant in the tank."""

    name: Annotated[
        str, Label("Plant"), Help("A name of the book fills in how it grows."), Suggest("plants")
    ]
    wet_g: Annotated[WetMass, Label("Wet mass now"), Help("Drained, as on a kitchen scale.")]
    doubling_days: Annotated[
        DoublingTime,
        Help("Well fed and uncrowded, in this tank's light: floaters 4-15, stems 10-30."),
    ]
    floating: Annotated[bool, Label("Floats")] = False


class Event(NamedTuple):
    """One thing that the keeper does on a day."""

    day: Annotated[Days, Label("Day"), Possible(0, 365), Step(1)]
    kind: Annotated[
        Kind,
        Label("What"),
        Choices(
            (
                "change water",
                "trim plants",
                "new feed a week",
                "dose nitrate",
                "no light",
                "plants die off",
            )
        ),
    ]
    value: Annotated[
        Factor,
        Label("How much"),
        Possible(0, 10_000),
        VALUES,
        Help(
            "Water changed: %. Plants cut: g wet. Dose: mg/L by which nitrate rises. New feed: g a "
            "week from that day on, until the next new feed. No light: days. Plants die off: % of them."
        ),
        ByChoice(
            "kind",
            KINDS,
            units=("%", "g, wet", "g a week", "mg/L NO₃", "days", "%"),
            steps=(5, 10, 0.5, 1, 1, 10),
        ),
    ]


class Rates(NamedTuple):
    """The rates that nobody knows well; the ensemble runs them low, middle and high."""

    growth: float = 1.0  # times what the plants' doubling times say
    retained_percent: float = RETAINED_PERCENT  # of the feed's nitrogen eaten, kept in the animals
    denitrification: float = 1.0  # times what was entered
    mineralisation: float = 1.0  # times the first-order rate
    soil_release: float = 1.0  # times what was entered
    ammonia_half: float = AMMONIA_HALF_MG_L
    ammonia_decay: float = AMMONIA_DECAY_25
    refractory: float = REFRACTORY_SHARE
    feed: float = 1.0  # times what was entered


def common_surface_cm2(volume_l: float) -> float:
    """The water surface of a common tank that holds so much, cm²."""
    surface: float = SURFACE_CM2_PER_L23 * volume_l ** (2 / 3)
    return surface


class Tank(NamedTuple):
    """All that the model needs, in the contract's units."""

    volume_l: float
    feed_g_week: float
    protein_percent: float
    plants: tuple[StandingPlant, ...]
    soil_area_cm2: float = 0.0
    denitrification_mg_n_m2_day: float = 0.0
    other_uptake_mg_n_day: float = 0.0
    trimmings_g_week: float = 0.0
    thin_to_percent: float | None = None  # of the surface, each week; None: never
    change_percent: float = 0.0
    change_every_days: float = 7.0
    tap_nitrate_mg_l: float = 0.0
    nitrate_mg_l: float = 0.0
    ammonia_mg_n_l: float = 0.0
    nitrite_mg_n_l: float = 0.0
    ph: float = 7.4
    temperature_c: float = 25.0
    filter_maturity_percent: float = 100.0
    uneaten_percent: float = 0.0
    soil_age_days: float | None = None
    soil_release_mg_n_m2_day: float = SOIL_RELEASE_MG_M2_DAY
    plant_nitrogen_percent: float = 2.5
    surface_cm2: float | None = None
    kh_dh: float | None = None  # None: not known, and then it limits nothing
    tap_kh_dh: float | None = None
    tap_ph: float | None = None
    gh_dh: float | None = None  # it moves nothing in the model: with the tap's it bounds a change
    tap_gh_dh: float | None = None
    usual_ph: float | None = None  # that the filter has had; None: as now
    dli_mol: float | None = None  # daily light at the surface; None: that of a middling lamp
    filter_load_mg_n_day: float | None = None  # that the filter is used to; None: this feed's

    @property
    def surface_m2(self) -> float:
        """The water surface; where it is not given, that of a common tank of this volume."""
        return (self.surface_cm2 or common_surface_cm2(self.volume_l)) / CM2_PER_M2

    @property
    def soil_age(self) -> float:
        """Days since the soil was flooded; a new filter stands for a new soil."""
        if self.soil_age_days is not None:
            return self.soil_age_days
        return SETTLED_SOIL_DAYS * self.filter_maturity_percent / 100
