"""Nitrogen day by day, in words and pictures; the model itself is in science/nitrogen."""
