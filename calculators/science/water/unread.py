"""What stands in for a reading that the keeper has not taken: values on the animals' side; judgement.

The more alkaline and the warmer the water, the more of its ammonia is toxic.
"""

HIGH_PH = 8.0  # of a common tank late in the day
HIGHEST_PH = 8.5  # of a planted tank late on a bright day in summer
WARM_C = 28.0
# For how many days a reading of ammonia or nitrite may be gone by. Common practice, no source.
TOXIC_USE_DAYS = 7
# Where a sentence needs an example of warm, alkaline water rather than the worst.
EXAMPLE_PH = 8.0
EXAMPLE_TEMPERATURE_C = 25.0
