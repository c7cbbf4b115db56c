"""Floaters seen from above: rings, and cover counted in a photograph."""
