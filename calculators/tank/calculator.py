"""Volume, surface, soil, cap and weight of a tank."""

from typing import Annotated, NamedTuple

from calculators.core.declare import calculator
from calculators.core.form_hints import FINER, InRow
from calculators.core.leads import Lead
from calculators.core.numbers import show_number
from calculators.core.quantities import (
    Area,
    FloorLoad,
    GlassThickness,
    GroundPressure,
    HeavyMass,
    Height,
    Length,
    Litres,
    PackedDensity,
)
from calculators.core.quantity import (
    Assumed,
    Choices,
    Help,
    Label,
    OnlyWith,
    Possible,
    Quantity,
    WhenNone,
)
from calculators.core.result import Note, Refusal, Refused
from calculators.science.conversions import CM2_PER_M2
from calculators.science.water.chemistry import WATER_KG_L
from calculators.tank.plate import bending_stress_mpa, trade_glass_mm
from calculators.tank.tank_geometry import (
    Inside,
    Shape,
    box,
    cylinder,
    kilopascal,
    layer_l,
    pore_share,
)
from calculators.tank.words import about_glass, notes, verdict

THINNEST_PANE_MM = 1.0
TradeGlass = Annotated[float, Quantity("Glass", "mm", (0, 1_000), digits=2)]
Stress = Annotated[float, Quantity("Stress", "MPa", (0, 1e9), digits=2)]
ROUNDING_CM = 1e-9  # 33 cm of layers in 33 cm of water level, told in inches


class TankMeasures(NamedTuple):
    """What the tank holds, and what stands on the floor."""

    gross_l: Annotated[Litres, Label("Inside, full to the rim"), Help("With nothing in it.")]
    net_l: Annotated[
        Litres, Label("Free water"), Help("Above the cap, without hardscape. Dose for this.")
    ]
    surface_cm2: Annotated[Area, Label("Water surface")]
    soil_l: Annotated[Litres, Label("Soil")]
    cap_l: Annotated[Litres, Label("Cap")]
    cap_kg: Annotated[HeavyMass, Label("Cap, dry")]
    pore_water_l: Annotated[Litres, Label("Water in the pores of soil and cap")]
    water_kg: Annotated[HeavyMass, Label("Water, free and in pores")]
    glass_kg: Annotated[HeavyMass, Label("Glass")]
    mass_kg: Annotated[HeavyMass, Label("Everything together")]
    floor_kg_m2: Annotated[
        FloorLoad, Label("Load under the tank"), Help("Everything, over the tank's own footprint.")
    ]
    floor_kpa: Annotated[
        GroundPressure, Label("The same as pressure"), Help("The unit that building engineers use.")
    ]
    glass_trade_mm: Annotated[
        TradeGlass | None,
        Label("Thinnest glass in the trade"),
        Help("For walls with no rim and no brace. It proves no tank: a builder looks at it first."),
        WhenNone("not worked out for a round tank"),
    ]
    glass_stress_mpa: Annotated[
        Stress | None, Label("Bending of the longest wall"), OnlyWith("glass_trade_mm")
    ]
    notes: tuple[Note, ...]


SIZE_ROW = "Outside size"
INSIDE_ROW = "Soil, cap, stone and wood"


@calculator(
    "Tank",
    sources=(
        "teos-10",
        "soil-bulk-density",
        "us-live-load",
        "timoshenko-plates",
        "roark-plates",
        "en-16612",
    ),
    leads_to=(
        Lead(
            "warmth",
            "Heater, power cut, cost",
            {
                "length_cm": "length_cm",
                "width_cm": "width_cm",
                "height_cm": "height_cm",
                "glass_mm": "glass_mm",
                "net_l": "net_l",
            },
            needs=("length_cm", "width_cm"),
        ),
        Lead(
            "soil",
            "Soil and cap to buy",
            {
                "length_cm": "length_cm",
                "width_cm": "width_cm",
                "soil_depth_cm": "soil_depth_cm",
                "cap_depth_cm": "cap_depth_cm",
            },
            needs=("length_cm", "soil_depth_cm"),
        ),
        Lead("dosing", "Dose for this water", {"volume_l": "net_l"}, needs=("net_l",)),
        Lead(
            "nitrogen-balance",
            "Where the nitrogen of its feed goes",
            {"volume_l": "net_l", "soil_area_cm2": "surface_cm2"},
            needs=("net_l", "soil_depth_cm"),
        ),
        Lead(
            "pick",
            "Plants for this water",
            {"volume_l": "net_l", "surface_cm2": "surface_cm2"},
            needs=("net_l",),
        ),
    ),
)
def tank(
    shape: Annotated[Shape, Label("Shape"), Choices(("box", "round"))] = "box",
    length_cm: Annotated[
        Length | None,
        Label("Length, outside"),
        Help("Leave it empty for a round tank."),
        InRow(SIZE_ROW, "Length"),
    ] = 80.0,
    width_cm: Annotated[
        Length | None,
        Label("Width, outside"),
        Help("Leave it empty for a round tank."),
        InRow(SIZE_ROW, "Width"),
    ] = 35.0,
    height_cm: Annotated[Height, Label("Height, outside"), InRow(SIZE_ROW, "Height")] = 45.0,
    diameter_cm: Annotated[
        Length | None,
        Label("Diameter, outside"),
        Help("For a round tank; else left aside."),
        InRow(SIZE_ROW, "Diameter"),
    ] = 40.0,
    water_level_cm: Annotated[
        Height, Label("Water level"), Help("From the inside of the bottom, soil and cap included.")
    ] = 41.0,
    glass_mm: Annotated[
        GlassThickness,
        Label("Glass, thickness"),
        Possible(THINNEST_PANE_MM, 60),
        Help("Measure it at the top edge of a wall."),
    ] = 8.0,
    soil_depth_cm: Annotated[
        Height, Label("Soil, depth"), Possible(0, 400), InRow(INSIDE_ROW, "Soil")
    ] = 3.0,
    cap_depth_cm: Annotated[
        Height, Label("Cap, depth"), Possible(0, 400), InRow(INSIDE_ROW, "Cap")
    ] = 3.0,
    hardscape_l: Annotated[
        Litres,
        Label("Stone and wood"),
        Help("Measure it by the water it displaces in a bucket."),
        InRow(INSIDE_ROW, "Stone"),
    ] = 3.0,
    stand_kg: Annotated[HeavyMass, Label("Stand, lid, lamp and filter"), Assumed(), FINER] = 25.0,
    soil_dry_g_ml: Annotated[
        PackedDensity,
        Label("Dry soil, density as it lies"),
        Help("In kg a litre the same. Loam 1.2 to 1.5, peaty soil under 1."),
        FINER,
        Assumed(),
    ] = 1.2,
    cap_dry_g_ml: Annotated[
        PackedDensity,
        Label("Dry cap, density as it lies"),
        Help("Sand and fine gravel 1.5 to 1.7."),
        FINER,
        Assumed(),
    ] = 1.6,
    hardscape_g_ml: Annotated[
        PackedDensity,
        Label("Stone and wood, density"),
        Possible(0.1, 8),
        Help("Stone 2.6, lava 1.5 to 2, sunken wood 1.1."),
        FINER,
        Assumed(),
    ] = 2.6,
) -> TankMeasures:
    """Find what a tank holds and what it weighs, with soil, cap, stone and the water between grains.

    Soil and cap displace water: the free water is what stands above the cap less stone and wood.
    The pores of both layers fill with water too; that water counts for the weight, and not for dosing.

    Glass is taken as panes of one thickness, without braces and trim. The load is a mean over the
    tank's own footprint. A stand on feet presses far harder under each foot.

    The longest wall is taken as a plate that bottom and sides support, with a free top edge, under
    water (Timoshenko, Roark), with the stress and the margin that the aquarium trade uses. That
    can show glass as too thin. It can show none as strong enough: seams, chips, the stand and the
    bottom pane count as much.
    """
    inside, wall_cm = measured(shape, length_cm, width_cm, diameter_cm, height_cm, glass_mm)
    check_glass(inside, shape, glass_mm)
    layers = soil_depth_cm + cap_depth_cm
    check_levels(inside, layers, water_level_cm, hardscape_l)
    soil = layer_l(inside.floor_cm2, soil_depth_cm)
    cap = layer_l(inside.floor_cm2, cap_depth_cm)
    net = layer_l(inside.floor_cm2, water_level_cm - layers) - hardscape_l
    pores = soil * pore_share(soil_dry_g_ml) + cap * pore_share(cap_dry_g_ml)
    water_kg = (net + pores) * WATER_KG_L
    grains_kg = soil * soil_dry_g_ml + cap * cap_dry_g_ml + hardscape_l * hardscape_g_ml
    least_mm = trade_glass_mm(wall_cm, water_level_cm) if wall_cm else None
    mass = water_kg + grains_kg + inside.glass_kg + stand_kg
    return TankMeasures(
        gross_l=layer_l(inside.floor_cm2, inside.height_cm),
        net_l=max(0.0, net),
        surface_cm2=inside.floor_cm2,
        soil_l=soil,
        cap_l=cap,
        cap_kg=cap * cap_dry_g_ml,
        pore_water_l=pores,
        water_kg=water_kg,
        glass_kg=inside.glass_kg,
        mass_kg=mass,
        floor_kg_m2=mass / (inside.footprint_cm2 / CM2_PER_M2),
        floor_kpa=kilopascal(mass, inside.footprint_cm2),
        glass_trade_mm=least_mm,
        glass_stress_mpa=(
            bending_stress_mpa(wall_cm, water_level_cm, glass_mm) if wall_cm and glass_mm else None
        ),
        notes=(
            about_glass(glass_mm, least_mm),
            verdict(max(0.0, net), mass),
            *notes(mass, soil_depth_cm, cap_depth_cm),
        ),
    )


def measured(
    shape: Shape,
    length_cm: float | None,
    width_cm: float | None,
    diameter_cm: float | None,
    height_cm: float,
    glass_mm: float,
) -> tuple[Inside, float | None]:
    """The inside, and the longest flat wall in cm (None for a round tank).

    Raises ``Refused`` where a measure is missing that the shape needs.
    """
    needs = {"diameter_cm": diameter_cm} if shape == "cylinder" else {}
    needs = needs or {"length_cm": length_cm, "width_cm": width_cm}
    missing = [key for key, value in needs.items() if value is None]
    if missing:
        raise Refused(
            *(Refusal(key, "fill in this measure of the tank", 0.1, 1_000) for key in missing)
        )
    if shape == "cylinder":
        return cylinder(diameter_cm or 0.0, height_cm, glass_mm), None
    length, width = length_cm or 0.0, width_cm or 0.0
    return box(length, width, height_cm, glass_mm), max(length, width)


def check_glass(inside: Inside, shape: Shape, glass_mm: float) -> None:
    """Refuse panes that leave no room between them. Raises ``Refused``."""
    if inside.floor_cm2 <= 0 or inside.height_cm <= 0:
        key = "length_cm" if shape == "box" else "diameter_cm"
        why = f"panes of {show_number(glass_mm)} mm leave no room inside these measures"
        raise Refused(Refusal("glass_mm", why, THINNEST_PANE_MM, 60), Refusal(key, why, 0.1, 1_000))


def check_levels(inside: Inside, layers: float, level: float, hardscape: float) -> None:
    """Refuse layers above the water, water above the rim, and more stone than there is room for.

    The depth of the ``layers`` and the ``level`` of the water are in cm, ``hardscape`` is in litres.
    Raises ``Refused`` with every field that is wrong.
    """
    wrong = []
    if level > inside.height_cm + ROUNDING_CM:
        why = "the water would stand above the rim"
        wrong.append(Refusal("water_level_cm", why, 0.1, inside.height_cm))
    if layers > level + ROUNDING_CM:
        why = "soil and cap together would stand above the water"
        wrong += [Refusal(key, why, 0, level) for key in ("soil_depth_cm", "cap_depth_cm")]
    room = layer_l(inside.floor_cm2, level - layers)
    if not wrong and hardscape > room + ROUNDING_CM:
        wrong.append(Refusal("hardscape_l", "there is no room for so much above the cap", 0, room))
    if wrong:
        raise Refused(*wrong)
