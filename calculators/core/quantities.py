"""The vocabulary of measured things, shared by the calculators and the records.

One line a thing, so that a unit or a bound cannot drift between a page and a form.
A bound says what can exist in or around a freshwater aquarium, not what is wise.
"""

from typing import Annotated

from calculators.core.quantity import Quantity, UsUnit

US_GALLON_L = 3.785411784  # exact, by definition: 231 cubic inches
INCH_CM = 2.54  # exact, by definition
POUND_KG = 0.45359237  # exact, by definition
OUNCE_G = POUND_KG * 1000 / 16

INCH = UsUnit("in", 1 / INCH_CM)
SQUARE_INCH = UsUnit("sq in", 1 / INCH_CM**2)
GALLON = UsUnit("US gal", 1 / US_GALLON_L)
FAHRENHEIT = UsUnit("°F", 1.8, 32.0)
OUNCE = UsUnit("oz", 1 / OUNCE_G)
OUNCE_PER_SQUARE_FOOT = UsUnit("oz/sq ft", (12 * INCH_CM / 100) ** 2 / OUNCE_G)

# Water
Volume = Annotated[float, Quantity("Water volume", "L", (0.1, 100_000), us=GALLON)]
Litres = Annotated[float, Quantity("Litres", "L", (0, 10_000_000), us=GALLON)]
Temperature = Annotated[float, Quantity("Water temperature", "°C", (0, 45), us=FAHRENHEIT)]
PH = Annotated[float, Quantity("pH", "", (0, 14))]
GeneralHardness = Annotated[float, Quantity("General hardness (GH)", "°dH", (0, 60))]
CarbonateHardness = Annotated[float, Quantity("Carbonate hardness (KH)", "°dH", (0, 60))]
Concentration = Annotated[float, Quantity("Concentration", "mg/L", (0, 10_000))]
Nitrogen = Annotated[float, Quantity("Nitrogen", "mg N/L", (0, 1_000))]
Pka = Annotated[float, Quantity("pKa", "", (0, 14), digits=5)]

# Light
DailyLight = Annotated[float, Quantity("Daily light (DLI)", "mol/m²/day", (0, 70))]
LightLeft = Annotated[float, Quantity("Light left", "%", (0, 100))]

# Room and surface
Length = Annotated[float, Quantity("Length", "cm", (0.1, 1_000), us=INCH)]
Height = Annotated[float, Quantity("Height", "cm", (0.1, 400), us=INCH)]
Area = Annotated[float, Quantity("Area", "cm²", (0, 1_000_000), us=SQUARE_INCH)]
Cover = Annotated[float, Quantity("Floating cover", "%", (0, 100))]

# Mass and make-up
WetMass = Annotated[float, Quantity("Wet mass", "g", (0, 100_000), us=OUNCE)]
DryMass = Annotated[float, Quantity("Dry mass", "g", (0, 100_000), us=OUNCE)]
FeedMass = Annotated[float, Quantity("Feed", "g", (0, 100_000))]
ElementMass = Annotated[float, Quantity("Mass", "mg", (0, 10_000_000))]
WetMassPerArea = Annotated[
    float, Quantity("Wet mass at full cover", "g/m²", (1, 20_000), us=OUNCE_PER_SQUARE_FOOT)
]
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

# Nitrogen over time
NitrogenFlow = Annotated[float, Quantity("Nitrogen", "mg N/day", (0, 10_000_000))]
ArealNitrogenFlow = Annotated[float, Quantity("Nitrogen", "mg N/m²/day", (0, 1_000))]
HardnessDrift = Annotated[float, Quantity("Drift of hardness", "°dH", (-100_000, 100_000))]
