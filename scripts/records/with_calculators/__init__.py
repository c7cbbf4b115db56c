"""Checks of the records that ask the calculators. The tables must be made before."""
