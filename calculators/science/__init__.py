"""Formulas and figures that several calculators share, by field."""
