"""How a tank keeps its warmth, and what a heater must give."""
