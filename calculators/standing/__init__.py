"""How a tank of the shelf stands."""
