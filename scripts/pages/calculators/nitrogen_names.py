"""What the page about the nitrogen model is called, for it and for those that lead to it."""

TITLE = "How the nitrogen model works"
DESCRIPTION = "Every equation, constant and state of the nitrogen forecast, with units and sources."
OTHER_NAMES = ["equations", "constants", "Monod", "Michaelis-Menten", "Droop", "nitrification"]
ADDRESS = "nitrogen-model/"
