"""The tank itself: volumes, areas, mass."""
