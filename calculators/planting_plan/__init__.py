"""How many stems to begin with, and how long the bed takes to fill."""
