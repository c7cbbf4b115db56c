"""The vocabulary of measured things, shared by the calculators and the records.

One line a thing, so that a unit or a bound cannot drift between a page and a form.
A bound says what can exist in or around a freshwater aquarium, not what is wise.
"""

from typing import Annotated

from calculators.core.quantity import Quantity, UsUnit
from calculators.science.water.chemistry import MMOL_PER_DH

US_GALLON_L = 3.785411784  # exact, by definition: 231 cubic inches
INCH_CM = 2.54  # exact, by definition
POUND_KG = 0.45359237  # exact, by definition
OUNCE_G = POUND_KG * 1000 / 16

INCH = UsUnit("in", 1 / INCH_CM)
SQUARE_INCH = UsUnit("sq in", 1 / INCH_CM**2)
GALLON = UsUnit("US gal", 1 / US_GALLON_L)
FAHRENHEIT = UsUnit("°F", 1.8, 32.0)
OUNCE = UsUnit("oz", 1 / OUNCE_G)
POUND = UsUnit("lb", 1 / POUND_KG)
POUND_PER_SQUARE_FOOT = UsUnit("lb/sq ft", (12 * INCH_CM / 100) ** 2 / POUND_KG)
OUNCE_PER_SQUARE_FOOT = UsUnit("oz/sq ft", (12 * INCH_CM / 100) ** 2 / OUNCE_G)

# Water
Volume = Annotated[float, Quantity("Water volume", "L", (0.1, 100_000), us=GALLON)]
Litres = Annotated[float, Quantity("Litres", "L", (0, 10_000_000), us=GALLON)]
Temperature = Annotated[float, Quantity("Water temperature", "°C", (0, 45), us=FAHRENHEIT)]
PH = Annotated[float, Quantity("pH", "", (0, 14))]
# For general hardness a mmol/L is of calcium and magnesium; for carbonate hardness it can mean two things.
GeneralHardness = Annotated[
    float,
    Quantity("General hardness (GH)", "°dH", (0, 60), written=(("mmol/L", 1 / MMOL_PER_DH),)),
]
CarbonateHardness = Annotated[float, Quantity("Carbonate hardness (KH)", "°dH", (0, 60))]
Concentration = Annotated[float, Quantity("Concentration", "mg/L", (0, 10_000), least=0.0001)]
Nitrogen = Annotated[float, Quantity("Nitrogen", "mg N/L", (0, 1_000), least=0.0001)]
Pka = Annotated[float, Quantity("pKa", "", (0, 14), digits=5)]

# Light
DailyLight = Annotated[float, Quantity("Daily light (DLI)", "mol/m²/day", (0, 70))]
LightLeft = Annotated[float, Quantity("Light left", "%", (0, 100))]

# Room and surface
Length = Annotated[float, Quantity("Length", "cm", (0.1, 1_000), us=INCH)]
Height = Annotated[float, Quantity("Height", "cm", (0.1, 400), us=INCH)]
Area = Annotated[float, Quantity("Area", "cm²", (0, 1_000_000), us=SQUARE_INCH)]
Cover = Annotated[float, Quantity("Floating cover", "%", (0, 100))]

LeafSize = Annotated[float, Quantity("Leaf", "mm", (0.1, 3_000), us=UsUnit("in", 0.1 / INCH_CM))]

# Mass and make-up
WetMass = Annotated[float, Quantity("Wet mass", "g", (0, 100_000), us=OUNCE)]
DryMass = Annotated[float, Quantity("Dry mass", "g", (0, 100_000), us=OUNCE)]
FeedMass = Annotated[float, Quantity("Feed", "g", (0, 100_000))]
ElementMass = Annotated[float, Quantity("Mass", "mg", (0, 10_000_000))]
WetMassPerArea = Annotated[
    float, Quantity("Wet mass at full cover", "g/m²", (1, 20_000), us=OUNCE_PER_SQUARE_FOOT)
]
DryMassPerArea = Annotated[float, Quantity("Dry mass of a mat", "g/m²", (0.1, 2_000))]
DryMatter = Annotated[float, Quantity("Dry matter", "% of wet mass", (0.5, 60))]
TissueNitrogen = Annotated[float, Quantity("Tissue nitrogen", "% of dry mass", (0.1, 10))]
TissuePhosphorus = Annotated[float, Quantity("Tissue phosphorus", "% of dry mass", (0.01, 3))]
Protein = Annotated[float, Quantity("Protein in the feed", "%", (1, 90))]

# Time and growth
Days = Annotated[float, Quantity("Days", "days", (0, 36_500))]
DoublingTime = Annotated[float, Quantity("Doubling time", "days", (0.5, 1_000))]
Interval = Annotated[float, Quantity("Interval", "days", (0.25, 365))]
Minutes = Annotated[float, Quantity("Minutes", "min", (0, 600))]

# Plain numbers
Percent = Annotated[float, Quantity("Share", "%", (0, 100))]
Ratio = Annotated[float, Quantity("Ratio", "", (0, 1e9))]
Factor = Annotated[float, Quantity("Factor", "", (0, 1e9), digits=6)]
Count = Annotated[int, Quantity("Number", "", (0, 100_000))]

# Readings over time, air and animals
ChangeRate = Annotated[float, Quantity("Change", "mg/L a week", (-100_000, 100_000))]
HardnessAWeek = Annotated[
    float, Quantity("Hardness", "°dH a week", (-100_000, 100_000), digits=2, least=0.001)
]
WaterAWeek = Annotated[
    float,
    Quantity(
        "Water", "L a week", (0, 10_000), us=UsUnit("US gal a week", 1 / US_GALLON_L), least=0.001
    ),
]
DailyChange = Annotated[float, Quantity("Change", "mg/L a day", (-100_000, 100_000))]
Pressure = Annotated[float, Quantity("Air pressure", "hPa", (400, 1_100), digits=4)]
Oxygen = Annotated[float, Quantity("Oxygen", "mg/L", (0, 50))]
OxygenSaturation = Annotated[float, Quantity("Oxygen saturation", "%", (0, 1_000))]
OxygenDemand = Annotated[float, Quantity("Oxygen demand", "mg/h", (0, 1e9))]
BodyLength = Annotated[float, Quantity("Body length", "mm", (1, 600))]
BodyMass = Annotated[float, Quantity("Living mass", "g", (0, 1e9))]
FeedRate = Annotated[float, Quantity("Feed a day", "% of living mass", (0, 20))]
NitrogenLoad = Annotated[float, Quantity("Nitrogen", "mg N/L a day", (0, 100_000))]

# Light from the lamp down
PhotonFlux = Annotated[float, Quantity("Light (PPFD)", "µmol/m²/s", (0, 2_500))]
LuminousFlux = Annotated[float, Quantity("Lamp", "lm", (1, 1_000_000))]
HoursADay = Annotated[float, Quantity("Hours a day", "h", (0, 24))]
Attenuation = Annotated[float, Quantity("Attenuation of the water", "per m", (0, 50))]

# Hardness in other units
CarbonateAsCaco3 = Annotated[float, Quantity("Hardness", "mg/L as CaCO₃", (0, 1_100))]
Alkalinity = Annotated[float, Quantity("Alkalinity", "meq/L", (0, 25))]

# The tank as a thing that stands on a floor
GlassThickness = Annotated[float, Quantity("Glass", "mm", (0, 60))]
HeavyMass = Annotated[float, Quantity("Mass", "kg", (0, 1_000_000), us=POUND)]
FloorLoad = Annotated[float, Quantity("Load", "kg/m²", (0, 100_000), us=POUND_PER_SQUARE_FOOT)]
GroundPressure = Annotated[float, Quantity("Pressure", "kPa", (0, 1_000))]
PackedDensity = Annotated[float, Quantity("Density", "g/mL", (0.1, 3))]

# Upkeep and planting
MinutesAWeek = Annotated[float, Quantity("Time", "min a week", (0, 10_000))]
Weeks = Annotated[float, Quantity("Weeks", "weeks", (0, 5_000))]
Seconds = Annotated[float, Quantity("Seconds", "s", (0, 86_400))]

# Dosing
Millilitres = Annotated[float, Quantity("Volume", "mL", (0, 1e9))]
SaltMass = Annotated[float, Quantity("Salt", "g", (0, 1e9))]
Strength = Annotated[float, Quantity("Strength", "g/L", (0, 10_000))]
LabelShare = Annotated[float, Quantity("Share by weight", "%", (0, 100))]
Density = Annotated[float, Quantity("Density", "g/mL", (0.5, 3))]

# Nitrogen over time
NitrogenFlow = Annotated[float, Quantity("Nitrogen", "mg N/day", (0, 10_000_000))]
ArealNitrogenFlow = Annotated[float, Quantity("Nitrogen", "mg N/m²/day", (0, 1_000))]
HardnessAhead = Annotated[
    float, Quantity("Carbonate hardness (KH) ahead", "°dH", (0, 60), digits=2)
]
HardnessDrift = Annotated[
    float, Quantity("Drift of hardness", "°dH", (-100_000, 100_000), digits=2)
]

# What a forecast comes to: right within a factor of two at best, so two figures are plenty
FeedAhead = Annotated[float, Quantity("Feed", "g", (0, 100_000), digits=2)]
DayAhead = Annotated[float, Quantity("Day", "", (0, 36_500), digits=2)]
DaysAhead = Annotated[float, Quantity("Days", "days", (0, 36_500), digits=2)]
NitrogenAhead = Annotated[float, Quantity("Nitrogen", "mg N/L", (0, 1_000), digits=2, least=0.001)]
WeeksAhead = Annotated[float, Quantity("Weeks", "weeks", (0, 1e9), digits=2)]
HoursAhead = Annotated[float, Quantity("Hours", "h", (0, 1e9), digits=2)]
OxygenAhead = Annotated[float, Quantity("Oxygen", "mg/L", (0, 50), digits=2)]
TimesGrown = Annotated[float, Quantity("Growth", "times", (0, 1e9), digits=2)]
LevelAhead = Annotated[float, Quantity("Concentration", "mg/L", (0, 10_000), digits=2, least=0.1)]

# A photograph of the surface, and rings on it
RingCount = Annotated[int, Quantity("Rings", "", (1, 100))]
PictureSide = Annotated[int, Quantity("Picture's side", "px", (16, 320))]
ShareMoved = Annotated[float, Quantity("Moved", "%", (-100, 100))]
