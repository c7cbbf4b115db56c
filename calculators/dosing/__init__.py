"""Salts and bottles, and the doses that reach a level."""
